"""The pages in a real browser, on a phone and on a desk, with nothing reachable but the shop."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from typing import Literal
from urllib.parse import urlsplit

import pytest
from demonstration import FOLDER
from searching import demo_index, demo_search

pytest.importorskip("playwright.sync_api")
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, Route, expect, sync_playwright

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine")
QUIET = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
SIZES = {"phone": (320, 640), "desk": (1280, 900)}
DONT_KNOW = "I don't know"


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Where a process of its own serves the demonstration shop."""
    demo_search()
    shop, state = tmp_path_factory.mktemp("shop"), tmp_path_factory.mktemp("state")
    shutil.copytree(FOLDER / "knowledge", shop / "knowledge")
    shutil.copytree(demo_index(), shop / "index")  # so that the server need not build one
    command = [sys.executable, "-m", "assistant", "serve", "--port", "0", "--state", str(state)]
    command += ["--shop", str(shop)]
    command += ["--per-minute", "1000"]
    with subprocess.Popen(command, stderr=subprocess.PIPE, text=True) as server:
        assert server.stderr is not None
        told = []
        for line in server.stderr:
            told.append(line)
            if found := re.search(r"http://\S+/", line):
                break
        else:
            raise AssertionError("".join(told))
        yield found[0]
        server.terminate()


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with sync_playwright() as started:
        made = started.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        yield made
        made.close()


@pytest.fixture(params=SIZES)
def page(request: pytest.FixtureRequest, browser: Browser, address: str) -> Iterator[Page]:
    """An opened page from which nothing but the shop is reached, and on which nothing fails."""
    width, height = SIZES[request.param]
    context = browser.new_context(viewport={"width": width, "height": height})
    elsewhere: list[str] = []
    faults: list[str] = []

    def only_here(route: Route) -> None:
        if urlsplit(route.request.url).hostname == "127.0.0.1":
            route.continue_()
        else:
            elsewhere.append(route.request.url)
            route.abort()

    context.route("**/*", only_here)
    opened = context.new_page()
    opened.on("pageerror", lambda error: faults.append(str(error)))
    opened.on("console", lambda told: faults.append(told.text) if told.type == "error" else None)
    opened.goto(address)
    yield opened
    opened.wait_for_load_state()  # a page without its style sheet yet is wider
    fits = opened.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    context.close()
    assert (elsewhere, faults, fits) == ([], [], True)


def press(page: Page, words: str) -> None:
    """Presses the last button of these words, and waits for the answer."""
    answers = page.locator("article.ours").count()
    page.get_by_role("button", name=words).last.click()
    expect(page.locator("article.ours")).to_have_count(answers + 1)


def last(page: Page) -> str:
    return page.locator("article.ours").last.inner_text()


def test_a_customer_reaches_the_part_in_words(page: Page) -> None:
    page.get_by_label("Write to the counter").fill("Quellwick Tamsel, stamped 1988. Which flapper?")
    press(page, "Send")
    assert "PBK-6230 fits the Quellwick Tamsel" in last(page)
    assert page.title().startswith("Your answer")
    assert page.evaluate("document.activeElement.id") == "turn-2"  # where a screen reader goes on
    page.reload()
    assert "PBK-6230" in last(page)


def test_a_customer_reaches_the_part_by_pictures_and_presses_alone(page: Page) -> None:
    press(page, "Flapper with a ring round the tube")
    wanted = ["The maker is Pembrill", "The model is Orsavel"]
    while wanted:
        offered = page.locator("form.choices button").all_inner_texts()
        assert offered, last(page)
        press(page, wanted.pop(0) if wanted[0] in offered else DONT_KNOW)
    assert "The seal for the Pembrill Orsavel made from 1964 to 1991 is PBK-5164" in last(page)


def test_dont_know_all_the_way_ends_with_a_person(page: Page) -> None:
    press(page, "Flapper on pegs")
    while page.get_by_role("button", name=DONT_KNOW).count():
        press(page, DONT_KNOW)
    assert re.search("person|photograph", last(page))
    assert "PBK-" not in last(page)


def test_the_keyboard_alone_does(page: Page) -> None:
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Skip to the writing field"
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.keyboard.type("Overlisk, 1998. Which flapper?")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator("article.ours")).to_have_count(1)
    for _ in range(2):
        page.keyboard.press("Tab")  # the answer has the focus; its first choice, then the second
    page.keyboard.press("Enter")
    expect(page.locator("article.ours")).to_have_count(2)
    assert "Gorvek Overlisk" in last(page)


def test_start_over_begins_anew_and_the_answer_prints(page: Page) -> None:
    page.get_by_label("Write to the counter").fill("Quellwick Tamsel, stamped 1988. Which flapper?")
    press(page, "Send")
    page.get_by_role("link", name="Print or save this answer").click()
    expect(page.get_by_role("button", name="Print")).to_be_visible()
    assert "PBK-6230" in page.locator("main").inner_text()
    page.get_by_role("link", name="Back to the conversation").click()
    page.get_by_role("button", name="Start over").click()
    expect(page.get_by_role("heading", name="Lift the lid")).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nothing_stands_in_anybodys_way(page: Page, scheme: Literal["light", "dark"]) -> None:
    """WCAG 2.2, level AA, as far as axe-core can see it: contrast, names, landmarks, order."""
    page.emulate_media(color_scheme=scheme)

    def faults() -> list[str]:
        return [found["id"] for found in Axe().run(page).response["violations"]]

    assert faults() == []
    page.get_by_label("Write to the counter").fill("Overlisk, 1998. Which flapper?")
    press(page, "Send")
    press(page, "The maker is Gorvek")
    assert faults() == []
    page.get_by_role("link", name="Print or save this answer").last.click()
    assert faults() == []
