"""HTTP as every route shares it, and the phone app's files as a server sends them.

`shell` reads the app's files once (`shell_pages` its pages, `core_files` the core), `assets` sends them,
`help_pages` renders the help among them. `errors`
is the one shape of every refusal, `bodies` what may come in, `answers` how JSON goes out, `database` lends
each request a connection, `security` the headers and the one name, `forwarded` what a proxy in front says.
No route of the job is here: those stand in the folders of what they are about, and `server/app.py` puts
all together.
"""
