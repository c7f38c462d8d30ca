"""The commands by what they are for; `assistant.cli` gathers them."""
