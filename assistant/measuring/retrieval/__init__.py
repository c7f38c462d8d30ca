"""How well passages are found: runs of each ranking, measured against graded judgements."""
