"""Working load limits: of a piece, of what goes together, and of a whole tie-down."""
