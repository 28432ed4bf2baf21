"""Labels on paper: codes issued once, symbols, sheets and rolls, and what became of each label."""
