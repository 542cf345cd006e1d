"""Pages of the demo against axe-core in headless Chromium: sheet, card and overview, on a narrow and a wide window by day and in
the dark, and as they are printed.

Without Chromium, or where npm cannot fetch axe-core, nothing is looked at, and that is said.
"""

import json
import re
import shutil
import subprocess
from html import escape
from pathlib import Path

import pytest
from conftest import ROOT
from made_tables import asked
from test_pages import CHROMIUM

VERSION = "4.14.1"
PAGES = ["lapwing_ground", "mere_piece-card", "index"]
# Width of the window, and the media that hold in it.
LOOKS = {
    "narrow": (360, None),
    "narrow in the dark": (360, "(prefers-color-scheme:dark)"),
    "wide": (1280, None),
    "wide in the dark": (1280, "(prefers-color-scheme:dark)"),
    "printed": (718, "print"),
}
# A drawing is one image with a text instead of it; what stands inside is held to its contrast in `core/tests/picture_colour.rs`.
ASKS = """
addEventListener('load', () => axe.run({include: document, exclude: ['svg > *']}).then(
  told => parent.postMessage({name: NAME, broken: told.violations, passed: told.passes.length}, '*'),
  error => parent.postMessage({name: NAME, broken: [{id: String(error)}]}, '*')))
"""


def axe_core() -> str:
    """The library as npm's own client fetches it, once."""
    file = ROOT / ".venv/node_modules/axe-core/axe.min.js"
    if not file.exists() or f"axe v{VERSION}" not in file.read_text(encoding="utf-8")[:200]:
        if shutil.which("npm") is None:
            pytest.skip("SKIPPED: no npm, so axe-core was not fetched and no page was looked at with it")
        fetch = ["npm", "install", "--no-save", "--no-audit", "--no-fund", "--ignore-scripts", f"--prefix={ROOT / '.venv'}", f"axe-core@{VERSION}"]
        if subprocess.run(fetch, capture_output=True, timeout=120).returncode != 0:
            pytest.skip("SKIPPED: axe-core could not be fetched, so no page was looked at with it")
    return file.read_text(encoding="utf-8")


def shown(page: str, media: str | None) -> str:
    """The page as it looks where these media hold."""
    if media is None:
        return page
    assert f"@media {media}" in page
    return page.replace(f"@media {media}", "@media all")


def looked_at(place: Path, pages: dict[str, tuple[str, int]]) -> dict[str, dict]:
    """What axe-core says of pages, each in a frame of its width; all in one browser."""
    library = axe_core()
    frames = []
    for name, (page, width) in pages.items():
        asks = ASKS.replace("NAME", json.dumps(name))
        scripts = f"<script>{library}</script><script>{asks}</script></head>"
        (place / f"{len(frames)}.html").write_text(page.replace("</head>", scripts, 1), encoding="utf-8")
        frames.append(f'<iframe title="{escape(name)}" src="{len(frames)}.html" width="{width}" height="1200"></iframe>')
    listens = "addEventListener('message', told => { told_of.textContent += JSON.stringify(told.data).replaceAll('<', '\\\\u003c') + '\\n' })"
    around = place / "around.html"
    around.write_text(f"<!DOCTYPE html><title>-</title><pre id=told_of></pre><script>{listens}</script>{''.join(frames)}", encoding="utf-8")
    browser = [CHROMIUM, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={place / 'browser'}", "--virtual-time-budget=60000"]
    command = [*browser, "--window-size=1400,1200", "--dump-dom", around.as_uri()]
    dumped = subprocess.run(command, capture_output=True, text=True, check=True, timeout=300).stdout
    (told,) = re.findall(r"<pre id=\"?told_of\"?>(.*?)</pre>", dumped, re.S)
    told = told.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
    return {one["name"]: one for one in map(json.loads, told.splitlines())}


def broken(told: dict) -> list[tuple]:
    return [(rule["id"], [node["html"][:120] for node in rule.get("nodes", [])][:3]) for rule in told["broken"]]


@pytest.mark.skipif(CHROMIUM is None, reason="SKIPPED: no Chromium, so no page was looked at with axe-core")
@pytest.mark.parametrize("language", ["en", "de"])
def test_every_page_can_be_used_by_everybody(tmp_path, language):
    asked(tmp_path, "demo", "--out", "out", "--language", language)
    pages = {}
    for page in PAGES:
        text = (tmp_path / "out" / f"{page}.html").read_text(encoding="utf-8")
        assert f'lang="{language}"' in text
        for look, (width, media) in LOOKS.items():
            pages[f"{page}, {look}"] = (shown(text, media), width)
    # One page that is known to be wrong, so that silence means something.
    wrong = '<!DOCTYPE html><html lang="en"><head><title>-</title></head><body><main><h1>x</h1><p style="color:#aaa;background:#bbb">hard to read</p></main></body></html>'
    pages["wrong"] = (wrong, 360)
    told = looked_at(tmp_path, pages)
    assert told.keys() == pages.keys()
    assert [rule for rule, _ in broken(told.pop("wrong"))] == ["color-contrast"]
    for name, said in told.items():
        assert broken(said) == [], name
        assert said["passed"] > 10, name
