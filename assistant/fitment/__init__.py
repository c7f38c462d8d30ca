"""Which seals can close which flush valve, and what is still to be asked."""
