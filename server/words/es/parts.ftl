### What sorts of part are called: PART($sort, form: "the-many") in a message picks a form. Each language has the forms it needs.

part-parking-sensor =
    .one = sensor
    .many = sensores
    .a = un sensor
    .the = el sensor
    .the-many = los sensores
    .full-many = sensores de aparcamiento
    .system = ayuda de aparcamiento
    .the-system = la ayuda de aparcamiento
    .shares-a-feed = parachoques
    .a-new = un sensor nuevo
    .the-new = el sensor nuevo
    .the-old = el sensor viejo
    .new-many = sensores nuevos
    .another = otro sensor
    .none = ningún sensor
