"""The packet on paper: a PDF of each copy and a roof card, typeset from the copy, words and drawings."""
