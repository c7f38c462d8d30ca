"""The dense index: FAISS over unit vectors, exact while they are few."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import faiss
import numpy as np
from numpy.typing import NDArray

Vectors = NDArray[np.float32]
EXACT_UP_TO = 100_000  # vectors; an exact search among them takes a few milliseconds
FEW_ALLOWED = 0.2  # share of the vectors
TRAINING = 40  # vectors for each cell when the cells are learnt; more changes little


def index_of(vectors: Vectors) -> faiss.Index:
    """An index by inner product of vectors of shape `(n, dimensions)` and length 1.

    Exact for few. For many, an inverted file: the vectors are sorted into cells, and a query
    looks into the nearest fifth of them only.
    """
    count, dimensions = len(vectors), max(1, vectors.shape[1])  # no note at all is no fault
    if count <= EXACT_UP_TO:
        exact = faiss.IndexFlatIP(dimensions)
        if count:
            exact.add(vectors)
        return exact
    cells = 4 * round(math.sqrt(count))
    inverted = faiss.IndexIVFScalarQuantizer(
        faiss.IndexFlatIP(dimensions),
        dimensions,
        cells,
        faiss.ScalarQuantizer.QT_fp16,  # half the memory to read; only near ties may swap
        faiss.METRIC_INNER_PRODUCT,
    )
    inverted.cp.max_points_per_centroid = TRAINING
    inverted.cp.min_points_per_centroid = 1
    inverted.cp.niter = 10
    inverted.train(vectors)
    inverted.add(vectors)
    inverted.nprobe = max(16, cells // 5)
    inverted.make_direct_map()  # so that a vector can be had by its place
    return inverted


def nearest(
    index: faiss.Index, query: Vectors, count: int, allowed: NDArray[np.bool_] | None = None
) -> tuple[NDArray[np.int64], Vectors]:
    """The places and inner products of the `count` nearest, best first.

    `query` has shape `(dimensions,)`; `allowed`, of shape `(n,)`, leaves some out.
    """
    count = min(count, index.ntotal if allowed is None else int(allowed.sum()))
    if count == 0:
        return np.zeros(0, dtype=np.int64), np.zeros(0, dtype=np.float32)
    parameters = None if allowed is None else _only(index, allowed)
    products, places = index.search(query.reshape(1, -1), count, params=parameters)
    found = places[0] >= 0
    return places[0][found], products[0][found]


def _only(index: faiss.Index, allowed: NDArray[np.bool_]) -> Any:
    """Search parameters that leave out what is not allowed; FAISS's own stubs do not know them."""
    bits = np.packbits(allowed, bitorder="little")
    selector: Any = faiss.IDSelectorBitmap(bits)  # type: ignore[arg-type,call-arg]
    if isinstance(index, faiss.IndexIVF):
        few = allowed.mean() < FEW_ALLOWED  # whose cells may lie anywhere
        probes = index.nlist if few else index.nprobe
        return faiss.SearchParametersIVF(sel=selector, nprobe=probes)  # type: ignore[call-arg]
    return faiss.SearchParameters(sel=selector)  # type: ignore[call-arg]


def save(index: faiss.Index, path: Path) -> None:
    """Writes an index to a file."""
    path.write_bytes(faiss.serialize_index(index).tobytes())


def load(path: Path) -> faiss.Index:
    """The index in a file; raises `RuntimeError` where it holds none."""
    index = faiss.deserialize_index(np.frombuffer(path.read_bytes(), dtype=np.uint8))
    if isinstance(index, faiss.IndexIVF):
        index.make_direct_map()
    return index


def all_of(index: faiss.Index) -> Vectors:
    """Every vector of an index in the order added, shape `(n, dimensions)`."""
    found: Vectors = index.reconstruct_n(0, index.ntotal)
    return found
