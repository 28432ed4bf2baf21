### La página que funciona cuando la aplicación no arranca. Sin argumentos.

plain-heading = Guardar lo que hay en este teléfono
plain-lead = Esta página funciona sin el resto de la aplicación. No cambia nada de lo registrado.
plain-looking = Mirando qué hay en este teléfono
plain-nothing = En este teléfono no se registró nada.
plain-no-storage = No se puede abrir lo que guarda este teléfono. Cierra las demás pestañas de la aplicación y carga esta página de nuevo.
plain-unsent = Sin enviar
plain-all = Todo lo que hay en este teléfono
plain-entries = anotaciones
plain-pictures = fotos
plain-save-unsent = Guardar lo que no se envió
plain-save-all = Guardarlo todo
plain-made = El archivo está listo. Lo acepta cualquier teléfono con Swaptrail, y también el servidor.
plain-damaged = Se dejan fuera las fotos que cambiaron en este teléfono.
plain-not-made = No se pudo hacer el archivo.
plain-pass-on = Pasarlo a otro
plain-start = Abrir la aplicación
plain-no-script = Permite JavaScript en esta página y cárgala de nuevo.
