"""What happens while phones look: new entries, and who is at which step of a job. In memory, never on record.

`routes` is what a phone asks, again and again while somebody looks at it: the answer is kept back until there
is something to tell, and no thread waits with it. `board` knows who waits for what and who is where; `sync`
tells it of entries that came in.
"""
