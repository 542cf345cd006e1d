//! What is said of merging: whole in both languages, values as people read them.

use chrono::NaiveDate;
use ciborium::Value;
use pitface_core::merge::plan::Missing;
use pitface_core::merge::{Damage, DeviceId};
use pitface_core::record::RecordId;
use pitface_core::store::{Belongs, Cell, Kind, Leaving, Partner, TakenIn, Vouched, Vouching, Waiting};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words, Wrote};
use std::collections::BTreeSet;

const ANN: DeviceId = DeviceId([0x1a; 16]);
const BEN: DeviceId = DeviceId([0x2b; 16]);

fn everywhere(check: impl Fn(&Words)) {
    for language in Language::ALL {
        check(&Words::new(*language, LengthUnit::Centimetres));
    }
}

fn english() -> Words {
    Words::new(Language::English, LengthUnit::Centimetres)
}

fn bytes(value: &Value) -> Vec<u8> {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).unwrap();
    bytes
}

fn wrote(device: DeviceId, holder: &str) -> Wrote<'_> {
    Wrote {
        device,
        holder,
        when: NaiveDate::from_ymd_opt(2026, 5, 4).and_then(|day| day.and_hms_opt(7, 5, 0)),
    }
}

/// A cell of a store by the name it has there.
fn cell(name: &str) -> Cell {
    Cell::ALL
        .iter()
        .find(|(_, other)| *other == name)
        .map(|(number, _)| Cell::known(*number))
        .unwrap()
        .unwrap()
}

#[test]
fn every_cell_has_a_name_in_both_languages() {
    everywhere(|words| {
        for (number, name) in Cell::ALL {
            let told = words.cell(Cell::known(*number).unwrap());
            assert!(!told.is_empty() && !told.contains(['{', '_']), "{name}: {told}");
        }
    });
    assert_eq!(Cell::known(9999), None);
}

#[test]
fn values_are_told_as_people_read_them() {
    let words = english();
    let list = |items: &[u32]| Value::Array(items.iter().map(|item| Value::from(*item)).collect());
    let place = || Value::Array(vec![2.5.into(), 54.5.into()]);
    let ring = Value::Array(vec![place(), place(), place()]);
    let cases = [
        ("pit.dug_to_mm", Value::from(460), "46\u{a0}cm"),
        ("field.headland_mm", Value::from(16_000), "16\u{a0}m"),
        ("machine.working_width_mm", Value::from(3_500), "3.5\u{a0}m"),
        ("after_dig.firm_mm", list(&[300, 310]), "30\u{a0}cm, 31\u{a0}cm"),
        ("layer.signs.roots", "sideways".into(), "turned sideways"),
        ("layer.signs.roots", "of_a_newer_version".into(), "of_a_newer_version"),
        ("pit.dug", "2026-05-04".into(), "4 May 2026"),
        ("field.name", "Long Sedge".into(), "Long Sedge"),
        ("field.texture", "medium".into(), "medium"),
        ("field.texture", Value::Array(vec!["usda".into(), "loam".into()]), "loam"),
        ("field.organic_matter", Value::Float(4.0), "4\u{a0}%"),
        ("field.outline", ring.clone(), "3 places"),
        ("part.shape", Value::Array(vec!["ring".into(), ring]), "3 places"),
        ("field.deep_clay_anyway", true.into(), "yes"),
        ("pit.dug_to_mm", Value::Null, "not looked"),
        ("pass.machine", Value::Bytes(vec![1; 16]), "another record"),
    ];
    for (name, value, told) in cases {
        assert_eq!(words.cell_value(cell(name), &bytes(&value)), told, "{name}");
    }
    assert_eq!(words.cell_value(cell("pit.by"), &[0xff]), "something of a newer version");
}

#[test]
fn who_and_when_and_where() {
    let words = english();
    let line = words.version(2, cell("pit.dug_to_mm"), &bytes(&460.into()), &wrote(ANN, "Ann"), true);
    assert_eq!(
        line,
        "2: 46\u{a0}cm, written by Ann (1a1a-1a1a-1a1a-1a1a-1a1a) on 4 May 2026, 07:05; this one is shown"
    );
    let line = words.version(1, cell("pit.by"), &bytes(&"Ben".into()), &wrote(BEN, ""), false);
    assert_eq!(line, "1: Ben, written by device 2b2b-2b2b-2b2b-2b2b-2b2b on 4 May 2026, 07:05");
    let record = RecordId::new(1, [1; 10]);
    let layer = Belongs {
        record,
        field: Some(record),
        field_name: "Long Sedge".into(),
        pit: Some(record),
        pit_number: Some(3),
        kinds: vec![Kind::Field, Kind::Pit, Kind::Layer],
    };
    assert_eq!(words.belongs(&layer), "Long Sedge, pit 3, layer");
    let deleted = Belongs { pit_number: None, ..layer.clone() };
    assert_eq!(words.belongs(&deleted), "Long Sedge, pit, layer (deleted)");
    let field = Belongs { pit: None, pit_number: None, kinds: vec![Kind::Field], ..layer };
    assert_eq!(words.belongs(&field), "Long Sedge");
    assert_eq!(
        words.regretted_line(1, "Long Sedge, pit", &wrote(ANN, ""), &[(cell("pit.face"), wrote(BEN, "Ben"))]),
        "1. Long Sedge, pit: deleted by device 1a1a-1a1a-1a1a-1a1a-1a1a on 4 May 2026, 07:05, \
         changed by Ben (2b2b-2b2b-2b2b-2b2b-2b2b) on 4 May 2026, 07:05 (moisture of the face)"
    );
}

#[test]
fn each_trouble_says_what_to_do() {
    let words = english();
    let range = Missing { device: ANN, first: 121, last: 180 };
    let files = BTreeSet::from(["forged.pitb".to_owned()]);
    for (told, what, todo) in [
        (words.stranger(ANN, ""), "Device 1a1a-1a1a-1a1a-1a1a-1a1a is not known", "Compare"),
        (words.copied(ANN, "Ann"), "Ann (1a1a-1a1a-1a1a-1a1a-1a1a) exists twice", "Let only one"),
        (words.clock_wrong(ANN, "Ann"), "The clock of Ann (1a1a-1a1a-1a1a-1a1a-1a1a)", "set its clock"),
        (
            words.vouches(ANN, "Ann", BEN),
            "answers for edits of device 2b2b-2b2b-2b2b-2b2b-2b2b",
            "whether they are believed",
        ),
        (
            words.edits_missing(&range, ""),
            "Of device 1a1a-1a1a-1a1a-1a1a-1a1a, edits 121 to 180 are missing",
            "Ask anybody",
        ),
        (words.edits_missing(&Missing { first: 180, ..range }, ""), "edit 180 is missing", "Ask anybody"),
        (
            words.checked_damaged(&range, "Ann"),
            "edits 121 to 180 are not as they were written",
            "take in bundles",
        ),
        (words.checked_photo("0123456789", false), "Photo 01234567 is damaged", "Repair"),
        (words.photo_wrong("0123456789", &BTreeSet::new(), false).concat(), "photo 01234567", "Fetch it"),
        (words.photo_wrong("0123456789", &files, false).concat(), "since forged.pitb came", "Fetch it"),
        (words.photo_wrong("0123456789", &files, true).concat(), "Photo 01234567 is here", "forged.pitb"),
        (words.bundle_held(), "newer version", "after an update"),
        (words.photos_unnamed(2), ": 2.", "Take the file in again"),
        (words.checked_photos_missing(2), ": 2.", "Take in a bundle"),
    ] {
        assert!(told.contains(what) && told.contains(todo), "{told}");
    }
}

#[test]
fn all_of_it_is_said_whole() {
    let range = Missing { device: ANN, first: 1, last: 2 };
    let partner = |accepted, own, edits| Partner {
        device: ANN,
        holder: String::new(),
        accepted,
        edits,
        copied: false,
        clock_wrong: false,
        own,
        refused_ms: None,
    };
    let waiting = Waiting { bundles: 2, files: 1, bytes: 5000 };
    everywhere(|words| {
        let mut said = vec![
            words.stranger(ANN, "Ann"),
            words.copied(ANN, ""),
            words.clock_wrong(ANN, ""),
            words.vouches(ANN, "", BEN),
            words.edits_missing(&range, ""),
            words.bundle_held(),
            words.nothing_to_hand_over(),
            words.handed_over_locked(),
            words.handed_over_chosen(),
            words.key_set_aside("key.unreadable-1"),
            words.bundle_wrong_word(),
            words.taken_out("Long Sedge: name", 3),
            words
                .photos_leaving(&Leaving { stripped: 2, stay: vec![[1; 32]], ..Leaving::default() })
                .join(" "),
            words.locked_inside(),
            words.gathered(0),
            words.gathered(3),
            words.not_carried(0),
            words.not_carried(7),
            words.photos_here(3, 4),
            words.photos_came_in(3),
            words.bundle_inside(&wrote(ANN, "Ann"), 1, 7, "pitface 1"),
            words.bundle_inside(&wrote(ANN, "Ann"), 8, 7, "pitface 1"),
            words.unknown_inside(40_000, 5000),
            words.gap_inside(&range, ""),
            words.no_gap_inside(),
            words.checked_sound(1, 2, 3),
            words.checked_cells(),
            words.edits_damaged(&range, "Ann"),
            words.checked_photo("0123456789", true),
            words.settled_on("Long Sedge", Cell::FIELD_NAME, &bytes(&"Sedge".into())),
            words.regret_settled("Long Sedge", true),
            words.regret_settled("Long Sedge", false),
            words.accepted(ANN, "Ann"),
            words.bundle_locked(),
            words.too_much_waits(),
            words.same_fingerprint(),
            words.refused_now(ANN, "Ann", 2),
            words.believed_now(ANN, "Ann", BEN),
            words.waits(&waiting).unwrap(),
            words.emptied(&waiting),
        ];
        assert!(words.this_device("").ends_with(':') && words.this_device("Ann").ends_with(':'));
        let standings =
            [Vouched::Believed, Vouched::Asks, Vouched::ThisDevice, Vouched::Accepted, Vouched::WentOn];
        let vouching = |standing| Vouching { signer: ANN, device: BEN, last: 7, standing };
        said.extend(standings.map(|standing| words.vouching(&vouching(standing), &[])));
        let devices = || BTreeSet::from([ANN]);
        let taken =
            TakenIn { refused: devices(), no_room: devices(), unknown_parts: 1, ..TakenIn::default() };
        said.extend(words.came(&taken.into(), &[]).split_off(1));
        said.extend([1, 2].map(|count| words.not_shown(count)));
        said.extend([1, 2].map(|count| words.photos_damaged(count)));
        said.extend([(0, 0), (1, 0), (2, 3)].map(|(photos, damaged)| words.bundle_ready(photos, damaged)));
        let refused =
            [Damage::NotABundle, Damage::CutOff, Damage::Damaged(""), Damage::TooLarge(""), Damage::Forged];
        said.extend(refused.iter().map(|damage| words.bundle_refused(damage)));
        said.extend([0, 1, 2].map(|count| words.came_in(count)));
        said.extend([0, 1, 2].map(|count| words.handed_over(count, 2)));
        said.extend(
            [None, Some(true), Some(false)].map(|holds| words.photo_inside("01234567", 7, [1, 1], holds)),
        );
        let partners = [partner(true, true, 1), partner(true, false, 0), partner(false, false, 2)];
        said.extend(partners.iter().map(|partner| words.partner(partner, false, false)));
        said.push(words.partner(&partners[0], true, false));
        for told in &said {
            assert!(
                told.ends_with('.') && !told.contains('{') && !told.starts_with(char::is_lowercase),
                "{told}"
            );
        }
        for count in 0..3 {
            assert!(
                words.versions(count).ends_with([':', '.']) && words.regretted(count).ends_with([':', '.'])
            );
        }
        let mut once = said.clone();
        once.sort();
        once.dedup();
        assert_eq!(once.len(), said.len(), "each says something of its own");
    });
}
