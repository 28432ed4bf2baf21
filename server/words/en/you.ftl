### The page *You and this phone*.

## The choice of language: as the phone has it, or a language by its own name.

you-language-heading = Language
# at most 24 characters
you-language-phone = As the phone has it
# $language: Español
you-language-lacks = { $language } is not on this phone yet. Choose it again with a network.
you-language-after = Change over to the new version first.
