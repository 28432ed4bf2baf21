"""Photos: they travel apart from the events that name them, each under the hash of its bytes.

`routes` is PUT, HEAD and GET; `small` draws the small version that every phone keeps;
`store` keeps a photo whole or not at all, and takes only one that `jpeg`
finds to be a plain picture without a place in it; `sweep` takes away what no entry names.
`rounds` looks at every photo while the folder is served; one that is missing or damaged is `lost`, until a
phone has sent it again.
"""
