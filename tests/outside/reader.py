"""A reader of bundles (`*.pitb`), written from core/src/merge/FORMAT.md alone: nothing of the Rust code is in it.

`read(data)` gives the parts of a file, or raises `Damaged` or `TooNew`. Run by hand it prints the edits of the files
named: `python tests/outside/reader.py some.pitb`.
"""

import hashlib
import io
import json
import sys
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

import cbor2
import zstandard
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

LARGEST_PART = 80 << 20
MOST_UNKNOWN = 1 << 20
LARGEST_SECTION = 64 << 20
MOST_EDITS = 262_144
PIECE = 1 << 20


class Damaged(Exception):
    """What was read is not what was written."""


class TooNew(Exception):
    """A newer program wrote it; the file is left as it is."""


@dataclass
class Edit:
    device: bytes
    sequence: int
    clock: int
    record: bytes
    field: int
    predecessors: list  # of (device, sequence, entry of the witness or 0)
    value: bytes | None  # None: redacted
    value_hash: bytes


@dataclass
class Edits:
    """A part of kind 1."""

    header: dict
    vouched: bool
    edits: list[Edit]


@dataclass
class Piece:
    """A part of kind 2."""

    photo: bytes
    size: int
    offset: int
    content: bytes = field(repr=False)


@dataclass
class Unknown:
    """A part of a kind at or above 0x8000."""

    kind: int
    content: bytes = field(repr=False)


def check(holds: bool, what: str) -> None:
    if not holds:
        raise Damaged(what)


def sha(data: bytes) -> bytes:
    return hashlib.sha256(data).digest()


def number(data: bytes) -> int:
    return int.from_bytes(data, "big")


def cbor(data: bytes):
    """One item that fills the bytes."""
    stream = io.BytesIO(data)
    try:
        item = cbor2.CBORDecoder(stream).decode()
    except Exception as refused:
        raise Damaged(f"not CBOR: {refused}") from None
    check(stream.tell() == len(data), "bytes after a CBOR item")
    return item


class Column:
    """The bytes of one column, taken from the front."""

    def __init__(self, data: bytes):
        check(isinstance(data, bytes), "a column is not a byte string")
        self.data, self.at = data, 0

    def take(self, count: int) -> bytes:
        check(count <= len(self.data) - self.at, "a column is too short")
        self.at += count
        return self.data[self.at - count : self.at]

    def varint(self) -> int:
        value = 0
        for place in range(10):
            (byte,) = self.take(1)
            value |= (byte & 0x7F) << (7 * place)
            if byte < 0x80:
                check(value < 1 << 64, "a varint beyond 64 bits")
                return value
        raise Damaged("a varint of more than ten bytes")

    def signed(self) -> int:
        value = self.varint()
        return value >> 1 ^ -(value & 1)

    def over(self) -> bool:
        return self.at == len(self.data)


def read(data: bytes) -> list[Edits | Piece | Unknown]:
    """All parts of a file but its ends, in order; nothing is given before all of it was checked."""
    parts, hashes, at = [], [], 0
    check(len(data) > 0, "an empty file")
    while at < len(data):
        check(len(data) - at >= 16 and data[at : at + 4] == b"PITB", "no part begins here")
        kind, length = number(data[at + 6 : at + 8]), number(data[at + 8 : at + 16])
        check(length <= LARGEST_PART, "a part is too large")
        end = at + 16 + length
        check(end + 32 <= len(data), "the file is cut")
        check(sha(data[at:end]) == data[end : end + 32], "the hash of a part")
        if data[at + 4] != 1:
            raise TooNew(f"major version {data[at + 4]}")
        content = data[at + 16 : end]
        if kind == 3:
            whole = cbor2.dumps([len(hashes), sha(b"".join(hashes))], canonical=True)
            check(content == whole, "an end part tells of other parts")
            hashes = []
        else:
            hashes.append(data[end : end + 32])
            parts.append(part(kind, content))
        at = end + 32
    check(not hashes, "no end part closes the file")
    return parts


def part(kind: int, content: bytes) -> Edits | Piece | Unknown:
    if kind == 1:
        return edits_part(content)
    if kind == 2:
        check(len(content) >= 48, "a piece of a photo is too short")
        piece = Piece(content[:32], number(content[32:40]), number(content[40:48]), content[48:])
        check(piece.offset % PIECE == 0 and piece.offset < piece.size, "where a piece of a photo begins")
        check(len(piece.content) == min(PIECE, piece.size - piece.offset), "the length of a piece of a photo")
        return piece
    if kind >= 0x8000:
        return Unknown(kind, content)
    raise TooNew(f"kind of part {kind}")


def edits_part(content: bytes) -> Edits:
    check(len(content) >= 4 + 64, "a part of edits is too short")
    length = number(content[:4])
    check(4 + length + 64 <= len(content), "a header longer than its part")
    raw_header, signature = content[4 : 4 + length], content[-64:]
    header = cbor(raw_header)
    check(isinstance(header, dict) and all(key in header for key in range(1, 12)), "a header without its keys")
    try:
        Ed25519PublicKey.from_public_bytes(header[2]).verify(signature, b"pitb1\0\0\0" + sha(raw_header))
    except (InvalidSignature, ValueError, TypeError):
        raise Damaged("the signature") from None
    device, first, last, before, after = (header[key] for key in (1, 3, 4, 5, 6))
    check(len(device) == 16 and len(before) == len(after) == 32, "the lengths of identity and chain")
    check(first >= 1 and first - 1 <= last < 1 << 62, "the range of the edits")
    if first == 1:
        check(before == sha(b"pitb1 chain" + device), "the chain at the beginning of a line")

    sections, at, unknown = [], 4 + length, 0
    for kind, flags, codec, stored, raw, digest in header[11]:
        check(at + stored <= len(content) - 64, "a section longer than its part")
        section = content[at : at + stored]
        check(sha(section) == digest, "the hash of a section")
        if kind == 1:
            sections.append(unpacked(codec, section, raw))
        elif flags & 1:
            raise TooNew(f"section of type {kind}")
        else:
            unknown += stored
        at += stored
    check(at == len(content) - 64, "bytes between sections and signature")
    check(unknown <= MOST_UNKNOWN, "more of unknown sections than a reader keeps")
    check(len(sections) == 1, "not one section of edits")

    edits = list(columns(header, cbor(sections[0])))
    chain = before
    for edit in edits:
        told = [edit.sequence, edit.clock, edit.record, edit.field, [[name, number] for name, number, _ in edit.predecessors], edit.value_hash]
        chain = sha(chain + cbor2.dumps(told, canonical=True))
    check(chain == after, "the chain")
    return Edits(header, device != sha(header[2])[:16], edits)


def unpacked(codec: int, stored: bytes, raw_length: int) -> bytes:
    check(raw_length <= LARGEST_SECTION, "a section is too large")
    if codec == 1:
        try:
            # The size in the frame is checked before anything is unpacked: a small frame may tell of gigabytes.
            check(zstandard.frame_content_size(stored) == raw_length, "the raw length of a section")
            stored = zstandard.ZstdDecompressor().decompress(stored, max_output_size=raw_length)
        except zstandard.ZstdError as refused:
            raise Damaged(f"Zstandard: {refused}") from None
    elif codec != 0:
        raise TooNew(f"codec {codec}")
    check(len(stored) == raw_length, "the raw length of a section")
    return stored


def columns(header: dict, raw: list):
    """The edits of the eleven columns."""
    check(isinstance(raw, list) and len(raw) == 11, "not eleven columns")
    all_columns = [Column(one) for one in raw]
    times, rest, save_times, counters, runs, indexes, fields, counts, through, distances, values = all_columns
    first, count = header[3], header[4] - header[3] + 1
    check(count <= MOST_EDITS, "too many edits")

    clocks, milliseconds = [], 0
    while len(clocks) < count:
        milliseconds += save_times.signed()
        counter, run = counters.varint(), runs.varint()
        check(0 <= milliseconds < 1 << 47 and counter < 1 << 16, "the clock of a save")
        clock = milliseconds << 16 | counter
        check(0 < clock and 0 < run <= count - len(clocks), "the saves")
        clocks += [clock] * run
    check(len(raw[1]) % 10 == 0, "the records")
    distinct = len(raw[1]) // 10
    seventh, ninth = rest.take(distinct), rest.take(distinct)
    check(all(one >> 4 == 7 for one in seventh), "a record that is no UUID of version 7")
    known, index, of_record, of_field, of_predecessors = [], 0, [], [], []
    for place in range(count):
        index += indexes.signed()
        check(0 <= index <= len(known) and index < distinct, "an index into the records")
        if index == len(known):
            born = (clocks[place] >> 16) + times.signed()
            check(0 <= born < 1 << 48, "the time of a record")
            chance = rest.take(8)
            known.append(born.to_bytes(6, "big") + seventh[index : index + 1] + chance[:1] + ninth[index : index + 1] + chance[1:])
        of_record.append(known[index])
        of_field.append(fields.varint())
        check(of_field[-1] < 1 << 16, "the number of a field")
        named = [predecessor(through, distances, header, first + place) for _ in range(counts.varint())]
        check(all(one < next_one for one, next_one in pairwise(named)), "predecessors out of order")
        of_predecessors.append(named)
    check(len(known) == distinct, "a record that is not used")
    of_value = {}
    for place in sorted(range(count), key=lambda place: (of_field[place], place)):
        length = values.varint()
        value = values.take(length) if length else None
        if value is not None:
            cbor(value)
        of_value[place] = (value, sha(value) if value is not None else values.take(32))
    check(all(one.over() for one in all_columns), "bytes left in a column")
    for place in range(count):
        yield Edit(
            header[1], first + place, clocks[place], of_record[place], of_field[place], of_predecessors[place], *of_value[place]
        )


def predecessor(lines: Column, distances: Column, header: dict, own: int) -> tuple[bytes, int, int]:
    through, distance = lines.varint(), distances.varint()
    if through == 0:
        check(distance > 0, "an edit that replaces itself")
        device, sequence = header[1], own - distance
    else:
        check(through <= len(header[7]), "a predecessor without its witness")
        device, sequence = header[7][through - 1][0], header[7][through - 1][1] - distance
    check(sequence >= 1, "a predecessor before the first edit")
    return device, sequence, through


def as_json(edit: Edit) -> dict:
    return {
        "device": edit.device.hex(),
        "sequence": edit.sequence,
        "clock": str(edit.clock),
        "record": edit.record.hex(),
        "field": edit.field,
        "predecessors": [[name.hex(), number, through] for name, number, through in edit.predecessors],
        "value": None if edit.value is None else edit.value.hex(),
        "value_hash": edit.value_hash.hex(),
    }


if __name__ == "__main__":
    for name in sys.argv[1:]:
        for one in read(Path(name).read_bytes()):
            for edit in getattr(one, "edits", []):
                print(json.dumps(as_json(edit)))
