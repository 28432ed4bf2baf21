### Resguardos que imprime una impresora del mostrador: los dice el servidor.

slips-no-printer = { $found } no nombra ninguna impresora. Se escribe zpl:LUGAR o escpos:LUGAR; LUGAR es un fichero, un dispositivo o tcp://HOST:PORT.
slips-no-escpos = ESC/POS necesita el paquete python-escpos. Instala swaptrail con él: pip install 'swaptrail[escpos]'
slips-no-address = { $found } no es la dirección de una impresora. Se escribe tcp://HOST:PORT; la mayoría escucha en 9100.
slips-no-folder = No se puede imprimir en { $place }: no hay carpeta { $folder }.
slips-is-folder = { $place } es una carpeta. Nombra un fichero o un dispositivo dentro.
slips-not-writable = Este usuario no puede escribir en { $place }.
slips-is-disk = { $place } es un disco, no una impresora.
slips-none = Este servidor no tiene impresora: arráncalo con --printer.
slips-decided-wanted = el id de un sensor sobre el que se decidió en el mostrador
slips-too-many = menos resguardos en espera; mira la impresora
slips-part = Pieza { $part }
slips-serial = Serie { $serial }
slips-why = Por: { $why }
slips-signed = { $name }, { $moment }
