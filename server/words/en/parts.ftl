### What sorts of part are called: PART($sort, form: "the-many") in a message picks a form. Each language has the forms it needs.

part-parking-sensor =
    .one = sensor
    .many = sensors
    .a = a sensor
    .the = the sensor
    .the-many = the sensors
    .full-many = parking sensors
    .system = parking aid
    .shares-a-feed = bumper
