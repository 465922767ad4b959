"""Pictures of finished results; decides nothing."""
