### The page *You and this phone*.

## The choice of language: as the phone has it, or a language by its own name.

you-language-heading = Idioma
you-language-phone = Como en el teléfono
you-language-lacks = { $language } no está aún en este teléfono. Elígelo otra vez cuando haya red.
you-language-after = Cambia primero a la versión nueva.
