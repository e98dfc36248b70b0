"""The packet on paper: a PDF of each copy and the cards, typeset from the copy, words and drawings."""
