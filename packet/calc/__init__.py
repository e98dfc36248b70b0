"""Pure calculators: no files, no clock, no record.

Beside each calculator stands its formula, as arithmetic in the calculator's own argument names, under the
calculator's name in capitals. A working prints that formula; the tests evaluate it against the function.
"""
