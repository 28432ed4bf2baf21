### What is read before the words have come: the page itself carries it, in every language. No arguments.

## The language by its own name.

begin-language = Español

begin-purpose = Encuentra el sensor defectuoso intercambiándolo y guarda la comprobación.
begin-reading = Leyendo lo que hay en este teléfono
begin-as-it-was = Así estaba. Comprobándolo ahora.
begin-broken-heading = La aplicación no llegó entera
begin-broken = Se cortó la línea. Lo registrado sigue intacto.
begin-again = Cargarla de nuevo
begin-plain = Guardar lo que hay en este teléfono
begin-long = Esto tarda mucho. Lo registrado sigue a salvo.
begin-no-script = Swaptrail funciona en el navegador y necesita JavaScript. Permítelo en esta página y cárgala de nuevo.
