"""A redacted closeout becomes pages, and pages become a site that opens without a network."""
