"""Whether a file is a GeoPackage: checks written from the published standard (OGC 12-128r19, version 1.4), by requirement.

They share nothing with the program that writes the files. `faults` gives every breach it finds, as text.
"""

import math
import re
import sqlite3
import struct
from pathlib import Path

import shapely

APPLICATION_ID = 0x47504B47
TYPES = re.compile(r"BOOLEAN|TINYINT|SMALLINT|MEDIUMINT|INT|INTEGER|FLOAT|DOUBLE|REAL|TEXT(\(\d+\))?|BLOB(\(\d+\))?|DATE|DATETIME")
SHAPES = {"POINT": "Point", "MULTILINESTRING": "MultiLineString", "MULTIPOLYGON": "MultiPolygon"}
CHANGED = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z")
DAY = re.compile(r"\d{4}-\d\d-\d\d")
# Columns of the tables that every file has: name, type, not null, part of the key (tables 3, 4 and 6).
FRAME = {
    "gpkg_spatial_ref_sys": [
        ("srs_name", "TEXT", 1, 0),
        ("srs_id", "INTEGER", 1, 1),
        ("organization", "TEXT", 1, 0),
        ("organization_coordsys_id", "INTEGER", 1, 0),
        ("definition", "TEXT", 1, 0),
        ("description", "TEXT", 0, 0),
    ],
    "gpkg_contents": [
        ("table_name", "TEXT", 1, 1),
        ("data_type", "TEXT", 1, 0),
        ("identifier", "TEXT", 0, 0),
        ("description", "TEXT", 0, 0),
        ("last_change", "DATETIME", 1, 0),
        ("min_x", "DOUBLE", 0, 0),
        ("min_y", "DOUBLE", 0, 0),
        ("max_x", "DOUBLE", 0, 0),
        ("max_y", "DOUBLE", 0, 0),
        ("srs_id", "INTEGER", 0, 0),
    ],
    "gpkg_geometry_columns": [
        ("table_name", "TEXT", 1, 1),
        ("column_name", "TEXT", 1, 2),
        ("geometry_type_name", "TEXT", 1, 0),
        ("srs_id", "INTEGER", 1, 0),
        ("z", "TINYINT", 1, 0),
        ("m", "TINYINT", 1, 0),
    ],
}


def shape_of(blob: bytes):
    """The geometry of a blob, its reference system, and the extent that its header tells (clause 2.1.3)."""
    magic, version, flags = blob[:2], blob[2], blob[3]
    if magic != b"GP" or version != 0 or flags & 0b11100000:
        raise ValueError("requirement 19: no header of a GeoPackage")
    order = "<" if flags & 1 else ">"
    (reference,) = struct.unpack_from(f"{order}i", blob, 4)
    doubles = {0: 0, 1: 4, 2: 6, 3: 6, 4: 8}[flags >> 1 & 7]
    extent = struct.unpack_from(f"{order}{doubles}d", blob, 8)
    return shapely.from_wkb(blob[8 + 8 * doubles :]), reference, extent


def faults(path: Path) -> list[str]:
    found: list[str] = []

    def expect(good: bool, said: str) -> None:
        if not good:
            found.append(said)

    with path.open("rb") as file:
        expect(file.read(16) == b"SQLite format 3\0", "requirement 1: no SQLite file")
    if found:
        return found
    base = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    try:
        ask = lambda text, *values: base.execute(text, values).fetchall()
        expect(ask("PRAGMA application_id") == [(APPLICATION_ID,)], "requirement 2: application id")
        expect(ask("PRAGMA user_version") == [(10400,)], "requirement 2: user version")
        expect(path.suffix == ".gpkg", "requirement 3: the ending")
        expect(ask("PRAGMA integrity_check") == [("ok",)], "requirement 6: integrity check")
        expect(ask("PRAGMA foreign_key_check") == [], "requirement 7: foreign keys")
        tables = {name for (name,) in ask("SELECT name FROM sqlite_master WHERE type = 'table'")}
        for name, columns in FRAME.items():
            held = [(row[1], row[2].upper(), row[3], row[5]) for row in ask(f"PRAGMA table_info({name})")]
            expect(held == columns, f"requirements 10, 13, 21: columns of {name}: {held}")
        if found:
            return found
        systems = {row[0]: row[1:] for row in ask("SELECT srs_id, organization, organization_coordsys_id FROM gpkg_spatial_ref_sys")}
        expect(systems.get(-1, ("",))[0].upper() == "NONE", "requirement 11: row -1")
        expect(systems.get(0, ("",))[0].upper() == "NONE", "requirement 11: row 0")
        expect(systems.get(4326) is not None and systems[4326][0].upper() == "EPSG" and systems[4326][1] == 4326, "requirement 11: row 4326")
        contents = ask("SELECT table_name, data_type, last_change, min_x, min_y, max_x, max_y, srs_id FROM gpkg_contents")
        told = {row[0] for row in contents}
        # Tables of an extension are told there (requirement 58), not among the contents.
        extended = {name for (name,) in ask("SELECT table_name FROM gpkg_extensions")} if "gpkg_extensions" in tables else set()
        own = {name for name in tables if not name.startswith(("gpkg_", "sqlite_", "rtree_"))} - extended
        expect(told == own, f"requirement 14: tables told and there: {told ^ own}")
        geometries = {row[0]: row[1:] for row in ask("SELECT * FROM gpkg_geometry_columns")}
        for name, kind, changed, west, south, east, north, reference in contents:
            if name not in tables:
                continue
            expect(kind in ("features", "attributes"), f"{name}: data type {kind}")
            expect(CHANGED.fullmatch(changed or "") is not None, f"requirement 15: {name} changed {changed}")
            columns = {row[1]: row for row in ask(f'PRAGMA table_info("{name}")')}
            keys = [row for row in columns.values() if row[5]]
            expect(len(keys) == 1 and keys[0][2].upper() == "INTEGER", f"requirements 29, 119: key of {name}")
            shape = geometries.get(name, (None,))[0]
            expect((kind == "features") == (shape is not None), f"requirement 22: geometry column of {name}")
            for column, row in columns.items():
                if column != shape:
                    expect(TYPES.fullmatch(row[2].upper()) is not None, f"requirement 5: {name}.{column} is {row[2]}")
                if row[2].upper() == "DATE":
                    days = ask(f'SELECT "{column}" FROM "{name}" WHERE "{column}" IS NOT NULL')
                    expect(all(DAY.fullmatch(day) for (day,) in days), f"requirement 5: days of {name}.{column}")
                if row[2].upper() in ("INTEGER", "BOOLEAN", "DOUBLE", "TEXT", "DATE"):
                    kinds = {"INTEGER": "integer", "BOOLEAN": "integer", "DOUBLE": "real"}
                    right = kinds.get(row[2].upper(), "text")
                    others = ask(f'SELECT DISTINCT typeof("{column}") FROM "{name}"')
                    expect({kind for (kind,) in others} <= {right, "null"}, f"{name}.{column} holds {others}")
            if shape is None or shape not in columns:
                expect(shape is None, f"requirement 24: {name} has no column {shape}")
                continue
            _, named, system, z, m = geometries[name]
            expect(columns[shape][2].upper() == named, f"requirement 31: type of {name}.{shape}")
            expect(named in SHAPES, f"requirement 25: {named}")
            expect(system in systems and system == reference, f"requirements 26, 146: reference of {name}")
            expect((z, m) == (0, 0), f"requirements 27, 28: z and m of {name}")
            around = [math.inf, math.inf, -math.inf, -math.inf]
            for (blob,) in ask(f'SELECT "{shape}" FROM "{name}" WHERE "{shape}" IS NOT NULL'):
                try:
                    geometry, its, extent = shape_of(blob)
                except (ValueError, KeyError, IndexError, struct.error, shapely.errors.GEOSException) as error:
                    found.append(f"requirement 19: a blob of {name}: {error}")
                    continue
                expect(its == system, f"requirement 33: reference {its} in {name}")
                expect(geometry.geom_type == SHAPES.get(named), f"requirement 32: {geometry.geom_type} in {name}")
                least_x, least_y, most_x, most_y = bounds = geometry.bounds
                expect(extent in ((), (least_x, most_x, least_y, most_y)), f"requirement 19: extent in {name}")
                expect(abs(least_x) <= 180 and abs(most_x) <= 180 and abs(least_y) <= 90 and abs(most_y) <= 90, f"{name}: off the globe")
                around = [*map(min, around[:2], bounds[:2]), *map(max, around[2:], bounds[2:])]
            here = [west, south, east, north]
            expect(here == around or (here == [None] * 4 and math.isinf(around[0])), f"extent of {name}: {here}, {around}")
    except sqlite3.DatabaseError as error:
        found.append(f"requirement 6: {error}")
    finally:
        base.close()
    return found
