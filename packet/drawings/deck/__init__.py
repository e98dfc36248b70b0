"""The deck nailing plan: new deck of one plane, as one stands facing the slope."""
