"""The job record: what the contractor wrote down."""
