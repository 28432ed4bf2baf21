### What is refused, and why.

refusals-bad-input = { $field }: hay { $found }, se espera { $wanted }

## What was found, where it is no text.

refusals-found-nothing = nada
refusals-found-decimals = un número con decimales
refusals-found-list = una lista de { $count }
refusals-found-object = un objeto con { $count } claves
refusals-found-else = otra cosa
