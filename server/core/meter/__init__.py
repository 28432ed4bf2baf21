"""What a meter shows: figures as they are typed, what copper has, and the limits of the checks of a circuit.

`figure` reads a typed figure exactly, in millionths of a volt or ohm; `copper` knows the resistance of a wire
by size, length and temperature; `limits` says which reading a figure stands for; `sound` has the speed of
sound and judges distances by it. None knows the log.
Public: `figure.read`, `figure.with_thousands`, `figure.offered`, `figure.unit_told`, `copper.resistance`,
`copper.called`, `limits.AtMost`, `limits.Beside`, `limits.judge`, `sound.speed`, `sound.echo`,
`sound.judged`.
"""
