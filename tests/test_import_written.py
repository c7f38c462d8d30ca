"""A table's text: quotes, line endings and columns of the shop's own stay as they were written."""

from __future__ import annotations

import pytest

from assistant.importing.written import written
from assistant.records.rows import Brand

TEXT = 'shelf,brand,aliases\r\n"2",Ulm,"Ulmb"\r\n\r\n3,"Vos, quith",Vos\r\n'


@pytest.mark.parametrize(
    ("cells", "line"),
    [
        ({"aliases": "Ulmbr"}, '"2",Ulm,"Ulmbr"\r\n'),  # it was quoted before
        ({"aliases": 'the "old" one'}, '"2",Ulm,"the ""old"" one"\r\n'),
        ({"brand": "Ulmo"}, '"2",Ulmo,"Ulmb"\r\n'),
        ({"brand": "Ulm, again"}, '"2","Ulm, again","Ulmb"\r\n'),
    ],
)
def test_in_a_changed_row_only_the_changed_cell_is_another(
    cells: dict[str, str], line: str
) -> None:
    table = written(TEXT, Brand).with_cells({"Ulm": cells})
    assert table.text == TEXT.replace('"2",Ulm,"Ulmb"\r\n', line)


def test_a_new_row_comes_last_with_the_files_own_line_ending() -> None:
    table = written(TEXT, Brand).with_rows([{"brand": "Zett", "aliases": "Z; Zed"}])
    assert table.text == TEXT + ",Zett,Z; Zed\r\n"


def test_where_every_cell_has_quotes_a_new_row_has_them_too() -> None:
    text = '"brand","aliases"\n"Ulm",""\n'
    table = written(text, Brand).with_rows([{"brand": "Zett"}])
    assert table.text == text + '"Zett",""\n'


def test_a_file_whose_last_line_does_not_end_keeps_it_so() -> None:
    table = written("brand,aliases\nUlm,", Brand).with_rows([{"brand": "Zett"}, {"brand": "Yps"}])
    assert table.text == "brand,aliases\nUlm,\nZett,\nYps,"


def test_a_row_is_found_by_its_id_whatever_lies_between() -> None:
    table = written(TEXT, Brand)
    assert table.at == {"Ulm": 1, "Vos, quith": 3}
    assert table.cell("Vos, quith", "aliases") == "Vos"
