"""PDFs of the demo against outside readers: a checker of PDF/UA-1, qpdf, and Poppler's reading of text and tags.

The checker is page-validation, which follows the Matterhorn Protocol (PDF Association, 1.1). Without qpdf or Poppler the
tests that need them are skipped, and say so.
"""

import json
import re
import shutil
import subprocess
from pathlib import Path

import page
import pytest
from made_tables import ESTATE, asked

POPPLER = all(shutil.which(tool) for tool in ("pdfinfo", "pdftotext"))
WORDS = {"en": ("Rule set", "The pits in detail"), "de": ("Regeln, Version", "Die Gruben im Einzelnen")}


@pytest.fixture(scope="module", params=["en", "de"])
def made(request, tmp_path_factory) -> tuple[str, Path]:
    """Every field of the estate, a card and an overview; German ones on letter."""
    language, place = request.param, tmp_path_factory.mktemp("pdf")
    how = ["--language", language, *(["--paper", "letter"] if language == "de" else [])]
    asked(place, "demo", "--out", "out")
    for notes in ESTATE:
        asked(place, "page", f"out/{notes.name}", "--out", notes.name.replace(".notes.json", ".pdf"), *how)
    asked(place, "page", "out/mere_piece.notes.json", "--card", "--out", "card.pdf", *how)
    asked(place, "page", *(f"out/{notes.name}" for notes in ESTATE), "--out", "estate.pdf", *how)
    return language, place


def told(*command) -> str:
    # Poppler prints what a tag tells of itself (the summary of a table) as it stands in the file, in UTF-16 where it is not ASCII.
    done = subprocess.run([str(part) for part in command], capture_output=True, check=True, timeout=60)
    return done.stdout.decode("utf-8", errors="replace")


def test_every_pdf_is_pdf_ua_1(made):
    _, place = made
    files = sorted(place.glob("*.pdf"))
    assert len(files) == len(ESTATE) + 2
    for file in files:
        report = page.validate_pdf(str(file), profile=page.ValidationProfile.PDF_UA_1)
        assert report.is_compliant, [(failure.rule_id, failure.message) for failure in report.failures]
        assert report.rules.total > 100


@pytest.mark.skipif(not shutil.which("qpdf"), reason="SKIPPED: no qpdf")
def test_qpdf_finds_no_fault(made):
    for file in sorted(made[1].glob("*.pdf")):
        assert "No syntax or stream encoding errors" in told("qpdf", "--check", file), file.name


@pytest.mark.skipif(not POPPLER, reason="SKIPPED: no Poppler, so no PDF was read")
def test_the_sheet_is_one_leaf_with_tags_and_text_in_the_order_of_the_html(made):
    language, place = made
    rules, details = WORDS[language]
    for notes in ESTATE:
        file = place / notes.name.replace(".notes.json", ".pdf")
        info = told("pdfinfo", file)
        title = notes.name.replace(".notes.json", "").replace("_", " ").title()
        assert re.search(r"^Tagged: +yes", info, re.M) and re.search(rf"^Title: +{title}$", info, re.M), info
        assert re.search("^Page size: .*" + ("letter" if language == "de" else "A4"), info, re.M), info
        face = told("pdftotext", "-f", "1", "-l", "1", file, "-")
        assert face.startswith(title) and details not in face, file.name
        assert rules in face or len(json.loads(notes.read_text(encoding="utf-8"))["pits"]) > 6, file.name
        # The text by its tags says all that the HTML says, word by word, but for what stands in drawings.
        html = file.with_suffix(".html")
        asked(place, "page", f"out/{notes.name}", "--out", html.name, "--language", language)
        plain = re.findall(r"<(?:h1|h2|h3|p|li|th|td)\b[^>]*>([^<]+)</", html.read_text(encoding="utf-8"))
        structure = told("pdfinfo", "-struct-text", file)
        read = "".join(re.findall(r'^ +"(.*)"$', structure, re.M))
        squeezed = re.sub(r"\s", "", read)
        at = 0
        for text in plain:
            text = text.replace("&amp;", "&").replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", '"').replace("&#39;", "'")
            found = squeezed.find(re.sub(r"\s", "", text), at)
            assert found >= 0, (file.name, text)
            at = found
        for tag in ("H1", "H2", "H3", "Table", "TH", "LBody", "Figure"):
            assert re.search(rf"^ *{tag}\b", structure, re.M), (file.name, tag)


def test_the_same_bytes_at_every_run(made):
    language, place = made
    paper = ["--paper", "letter"] if language == "de" else []
    asked(place, "page", "out/mere_piece.notes.json", "--out", "again.pdf", "--language", language, *paper)
    assert (place / "again.pdf").read_bytes() == (place / "mere_piece.pdf").read_bytes()
    (place / "again.pdf").unlink()
