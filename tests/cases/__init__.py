"""Short job records whose file name is the sentence they stand for."""
