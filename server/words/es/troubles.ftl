### Qué salió mal en el teléfono y qué hacer.

troubles-no-start-heading = Swaptrail no pudo empezar
troubles-no-start = Lo registrado sigue intacto. Cierra la aplicación y ábrela otra vez. ({ $error })
troubles-no-record = Swaptrail no puede registrar aquí
troubles-not-secure = Esta dirección no es segura: el navegador no deja usar la cámara ni el almacenamiento, y no se podría registrar nada. Abre la aplicación por su dirección https.
troubles-too-old = Este navegador es demasiado antiguo para guardar tus registros. Actualízalo, o usa otro.

troubles-full = No guardado: este teléfono está lleno
troubles-not-written = No guardado: este teléfono no pudo escribir
troubles-not-written-do = Lo que escribiste sigue aquí. Guarda otra vez; si falla de nuevo, cierra la aplicación y ábrela.
