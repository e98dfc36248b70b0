"""Record, reference and calculators meet here and become figures; one module a topic."""
