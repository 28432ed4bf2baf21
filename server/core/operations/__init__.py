"""What the host can be asked, one concern a module: each is a class whose methods `op_NAME` are operations.

`host.Host` is all of them together and turns text into a call; whoever adds an operation writes one method
in the module of its concern. `held` is what they share: the folded log and its conclusions. `log` takes
entries in, `kept` hands the state to a phone's storage, `views` answers screens, `record`, `counter` and
`labels` theirs, `questions` what needs no log. What few operations need they import inside the method: a
phone gets those modules after all others.
Public: the class of each module.
"""
