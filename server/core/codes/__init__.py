"""Codes that are read off things: our labels, the maker's symbols, trouble codes, vehicle numbers.

Each module takes a text apart and says what it holds, or what is wrong with it; none knows the log.
Public: `labels` (codes that survive a slip of the pen, and the text of a QR code), `maker_symbol.read`,
`troublecode.look`, `vin.look`.
"""
