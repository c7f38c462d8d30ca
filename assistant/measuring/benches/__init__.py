"""One module a benchmark; `BENCHES` in `bench.py` lists them."""
