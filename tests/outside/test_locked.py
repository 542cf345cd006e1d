"""Locked bundles, opened and made by the reference program of the age format (Debian's `age`, written in Go), which shares nothing with ours."""

import os
import pty
import shutil
import subprocess
from pathlib import Path

import pytest
from conftest import ROOT, built_into
from reader import read

WORD = "turf lark beet mill"
GOLDEN = ROOT / "tests/vectors/bundles/version_1"

pytestmark = pytest.mark.skipif(shutil.which("age") is None, reason="Debian's age is not installed")


def age(*arguments: str | Path, answers: int) -> int:
    """Runs `age` and types the word as often as it asks for it; it asks at a terminal and nowhere else."""
    child, terminal = pty.fork()
    if child == 0:
        os.execvp("age", ["age", *map(str, arguments)])
    said = b""
    while True:
        try:
            said += os.read(terminal, 1024)
        except OSError:  # The other end is closed.
            break
        if answers and said.rstrip().endswith(b":"):
            os.write(terminal, WORD.encode() + b"\n")
            said, answers = b"", answers - 1
    os.close(terminal)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


@pytest.fixture
def pitface(tmp_path):
    """Our program with settings of its own and the word in a file; what it printed, if it ended as expected."""
    program = os.environ.get("PITFACE") or built_into() / "pitface"
    word = tmp_path / "word"
    word.write_text(WORD + "\n")
    environment = os.environ | {"XDG_CONFIG_HOME": str(tmp_path / "settings")}

    def run(*arguments, code=0):
        command = [program, *arguments, "--team-word-file", word] if arguments[0] != "read" else [program, *arguments]
        ran = subprocess.run(command, cwd=tmp_path, env=environment, capture_output=True, text=True, timeout=120)
        assert ran.returncode == code, ran.stderr
        return ran.stdout + ran.stderr

    return run


def test_what_pitface_locked_age_opens(pitface, tmp_path):
    notes = next((ROOT / "bindings/cli/demo").glob("*.notes.json"))
    pitface("read", notes, "--store", "kept.pitface")
    pitface("hand-over", "kept.pitface", "--out", "clear.pitb", "--open")
    pitface("hand-over", "kept.pitface", "--out", "locked.pitb", "--locked")
    assert age("-d", "-o", tmp_path / "opened.pitb", tmp_path / "locked.pitb", answers=1) == 0
    opened = (tmp_path / "opened.pitb").read_bytes()
    # Nothing was noted in between, so the two hold the same to the byte.
    assert opened == (tmp_path / "clear.pitb").read_bytes()
    assert len(read(opened)) >= 1


@pytest.mark.parametrize("name", ["two_devices", "photo"])
def test_what_age_locked_pitface_takes_in(pitface, tmp_path, name):
    bundle = GOLDEN / f"{name}.pitb"
    locked = tmp_path / f"{name}.pitb.age"
    # `-p` asks for the word and for the word again.
    assert age("-p", "-o", locked, bundle, answers=2) == 0
    assert locked.read_bytes().startswith(b"age-encryption.org/v1\n")
    locked_says = pitface("look", locked)
    assert pitface("look", bundle) in locked_says
    assert "locked" in locked_says
    came = pitface("take-in", "one.pitface", locked)
    assert pitface("take-in", "other.pitface", bundle) == came.replace("one.pitface", "other.pitface")
    damaged = bytearray(locked.read_bytes())
    damaged[-1] ^= 1
    (tmp_path / "damaged.pitb").write_bytes(damaged)
    assert "damaged" in pitface("take-in", "one.pitface", "damaged.pitb", code=2)


def test_what_age_locked_for_a_key_is_told(pitface, tmp_path):
    if shutil.which("age-keygen") is None:
        pytest.skip("age-keygen is not installed")
    made = subprocess.run(["age-keygen", "-o", tmp_path / "key"], capture_output=True, text=True, check=True)
    key = made.stderr.split()[-1]
    locked = tmp_path / "for_a_key.pitb"
    subprocess.run(["age", "-r", key, "-o", locked, GOLDEN / "photo.pitb"], check=True)
    assert "with a key and not with a team word" in pitface("look", locked, code=2)
