"""Pages of the demo against outside readers: a strict HTML parser, and headless Chromium printing them to PDF.

Without Chromium or Poppler's pdfinfo and pdftotext the counting of sides is skipped, and says so.
"""

import re
import shutil
import subprocess
from pathlib import Path

import html5lib
import pytest
from made_tables import asked

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
PRINTS = CHROMIUM is not None and all(shutil.which(tool) for tool in ("pdfinfo", "pdftotext"))
# Fields of the demo with up to six pits; their sheet is one leaf.
SMALL = ["far_drove", "fox_heath", "heron_close", "kiln_ground", "long_sedge", "mere_piece", "sluice_ground", "withy_bottom"]

# What a side is known by: the order of the overview, the rules, the pits in detail, the card and its room for readings.
WORDS = {
    "en": ("In order of urgency", "Rule set", "The pits in detail", "Driver's card", "Depth to firm soil"),
    "de": ("Nach Dringlichkeit geordnet", "Regeln, Version", "Die Gruben im Einzelnen", "Fahrerkarte", "Tiefe bis zum festen Boden"),
}


@pytest.fixture(scope="module")
def demo(tmp_path_factory) -> Path:
    place = tmp_path_factory.mktemp("pages")
    asked(place, "demo", "--out", "out")
    return place / "out"


def test_every_page_is_html_without_an_error(demo):
    pages = sorted(demo.glob("*.html"))
    assert len(pages) > 9
    for page in pages:
        parser = html5lib.HTMLParser(strict=True)
        document = parser.parse(page.read_text(encoding="utf-8"))
        names = [element.tag.rpartition("}")[2] for element in document.iter() if isinstance(element.tag, str)]
        assert "main" in names and "script" not in names, page.name


def printed(page: Path, paper: str, place: Path) -> Path:
    """The page on a paper of this size: the page itself names none."""
    text = page.read_text(encoding="utf-8")
    assert "size:" not in re.sub(r"[a-z]-size:", "", text.partition("<style>")[2].partition("</style>")[0])
    on_paper = place / f"{page.stem}-{paper}.html"
    on_paper.write_text(text.replace("</style>", f"@page{{size:{paper}}}</style>", 1), encoding="utf-8")
    pdf = on_paper.with_suffix(".pdf")
    browser = [CHROMIUM, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={place / 'browser'}"]
    command = [*browser, "--no-pdf-header-footer", f"--print-to-pdf={pdf}", on_paper.as_uri()]
    subprocess.run(command, capture_output=True, check=True, timeout=120)
    return pdf


def sides(pdf: Path) -> list[str]:
    count = int(re.search(r"^Pages:\s+(\d+)", told("pdfinfo", pdf), re.M)[1])
    return [told("pdftotext", "-f", str(side), "-l", str(side), pdf, "-") for side in range(1, count + 1)]


def told(*command) -> str:
    return subprocess.run([str(part) for part in command], capture_output=True, text=True, check=True, timeout=60).stdout


@pytest.mark.skipif(not PRINTS, reason="SKIPPED: no Chromium or no Poppler, so no page was printed and no side counted")
@pytest.mark.parametrize(("paper", "language"), [("A4", "de"), ("letter", "de"), ("letter", "en")])
def test_a_field_is_one_leaf_and_a_card_one_side(demo, tmp_path, paper, language):
    order, rules, details, card_of, readings = WORDS[language]
    estate, card = tmp_path / "estate.html", tmp_path / "card.html"
    asked(demo, "page", *(f"{field}.notes.json" for field in SMALL), "--out", str(estate), "--language", language)
    asked(demo, "page", "mere_piece.notes.json", "--card", "--out", str(card), "--language", language)
    overview, *leaves = sides(printed(estate, paper, tmp_path))
    assert order in overview
    assert len(leaves) == 2 * len(SMALL)
    for field, face, back in zip(SMALL, leaves[::2], leaves[1::2]):
        # What is said stands on the face, to its last line; the pits stand on the back.
        assert face.startswith(field.replace("_", " ").title()), face
        assert rules in face and details not in face, field
        assert back.startswith(details), field
    (side,) = sides(printed(card, paper, tmp_path))
    assert f"{card_of}: Mere Piece" in side and readings in side
