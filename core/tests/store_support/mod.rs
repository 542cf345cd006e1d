//! Notes to keep in a store: one written out, and any by chance.

pub mod passes;

use chrono::{DateTime, FixedOffset, NaiveDate};
use pitface_core::record::{
    ChannelsSeen, ClodInWater, ComesAway, FaceMoisture, Field, FieldNotes, Layer, OrganicMatter,
    OrganicMatterLevel, Patches, Person, Photo, PhotoMark, Pit, PlaceKind, PoresSeen, Position, RecordId,
    Resistance, Roll, RollOutcome, RootsSeen, Signs, Smell, Step, TextureNote, Unknown, Zone,
};
use pitface_core::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use pitface_core::store::{DeviceId, Store, StoreError};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;
use std::path::PathBuf;
use tempfile::TempDir;

pub const DEVICE: DeviceId = DeviceId(*b"phone of walker.");
/// Some time in autumn 2026.
pub const NOW_MS: u64 = 1_790_000_000_000;

pub fn id(number: u64) -> RecordId {
    let mut random = [0; 10];
    random[2..].copy_from_slice(&number.to_be_bytes());
    RecordId::new(NOW_MS, random)
}

/// A folder for one test, and the path of a store in it.
pub fn place() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ellmoor.store");
    (folder, path)
}

/// A store in a folder of its own.
pub fn new_store() -> (TempDir, Store) {
    let (folder, path) = place();
    let store = Store::create_or_open(&path, DEVICE).unwrap();
    (folder, store)
}

pub fn is_missing(result: &Result<FieldNotes, StoreError>) -> bool {
    matches!(result, Err(StoreError::RecordNotFound { .. }))
}

pub fn step(number: u64, to_mm: u32, comes_away: ComesAway) -> Step {
    let (comes_away, resistance) = (Some(comes_away), None);
    Step { id: id(number), to_mm, comes_away, resistance, unknown: Unknown::new() }
}

/// Keys of another program.
fn keys(text: &str) -> Unknown {
    serde_json::from_str(text).unwrap()
}

fn ellmoor_field() -> Field {
    Field {
        id: id(1),
        name: "Long Acre".into(),
        outline: vec![[-4.25, 54.5], [-4.24, 54.5], [-4.24, 54.51]],
        headland_mm: Some(24_000),
        tramline_mm: Some(24_000),
        wheel_track_mm: Some(1_800),
        tyre_mm: Some(710),
        controlled_traffic: Some(true),
        parts: passes::parts(),
        lines: passes::lines(),
        texture: Some(TextureNote::Class(Texture {
            scheme: TextureScheme::Uk,
            class: TextureClass::SandySiltLoam,
        })),
        organic_matter: Some(OrganicMatter::Percent(2.7)),
        crop_now: Some("winter wheat".into()),
        last_crop: Some("oilseed rape".into()),
        last_loosened: NaiveDate::from_ymd_opt(2022, 9, 1),
        last_traffic: NaiveDate::from_ymd_opt(2026, 8, 20),
        drains_mm: Some(750),
        mole_drains_mm: Some(0),
        services_mm: Some(900),
        clearance_mm: Some(100),
        services_clearance_mm: Some(650),
        services_asked: Some("the water company".into()),
        services_asked_on: NaiveDate::from_ymd_opt(2026, 8, 1),
        services_leave: Some(true),
        last_rain: NaiveDate::from_ymd_opt(2026, 8, 19),
        reach_mm: Some(400),
        tillage_mm: Some(250),
        stony: Some(false),
        plates_soft: Some(true),
        next_crop: Some("spring barley".into()),
        next_sown: NaiveDate::from_ymd_opt(2027, 3, 20),
        slope_percent: Some(4),
        deep_clay_anyway: Some(false),
        remark: Some("Old gateway in the north corner,\nmoved in 1998.".into()),
        unknown: keys(r#"{"soil_map_sheet": "12", "b": {"z": 1, "a": [null, 2.5, -0.0]}}"#),
    }
}

/// A field of the Ellmoor estate with two pits, two machines and two passes; everything in it is filled in somewhere.
pub fn ellmoor() -> FieldNotes {
    let at = |text: &str| DateTime::parse_from_rfc3339(text).unwrap();
    let concern = Pit {
        id: id(10),
        place: PlaceKind::Headland,
        zone: Some(Zone::Patch),
        at: Some(Position {
            longitude_deg: -4.241_234_567_890_1,
            latitude_deg: 54.500_000_1,
            accuracy_m: Some(3.2),
        }),
        dug: Some(at("2026-09-21T15:04:05.123456789+02:00")),
        by: Some("walker".into()),
        dug_to_mm: Some(520),
        face: Some(FaceMoisture::Moist),
        walk: vec![
            step(11, 150, ComesAway::Crumbs),
            Step {
                resistance: Some(Resistance::HardPush),
                unknown: keys(r#"{"tool": "knife"}"#),
                ..step(12, 300, ComesAway::FlatPlates)
            },
        ],
        layers: vec![Layer {
            id: id(13),
            top_mm: 240,
            bottom_mm: 300,
            signs: Signs {
                comes_away: Some(ComesAway::FlatPlates),
                resistance: Some(Resistance::Stops),
                pores: Some(PoresSeen::None),
                channels: Some(ChannelsSeen::CutOff),
                roots: Some(RootsSeen::Sideways),
                patches: Some(Patches::Few),
                smell: Some(Smell::Earthy),
                clod_in_water: Some(ClodInWater::FallsApart),
            },
            texture: Some(TextureNote::Group(TextureGroup::Heavy)),
            remark: Some("a seam of ash at its top".into()),
            unknown: Unknown::new(),
        }],
        rolls: vec![Roll {
            id: id(14),
            depth_mm: 0,
            roll: RollOutcome::ShortLengths,
            unknown: Unknown::new(),
        }],
        photos: vec![Photo {
            id: id(15),
            sha256: "0123456789abcdef".repeat(4),
            size_bytes: 2_345_678,
            media_type: "image/jpeg".into(),
            taken: Some(at("2026-09-21T13:04:05Z")),
            depth_mm: Some(270),
            marks: vec![
                PhotoMark { from_left: 4_200, from_top: 800, depth_mm: 0 },
                PhotoMark { from_left: 4_350, from_top: 9_120, depth_mm: 500 },
            ],
            unknown: Unknown::new(),
        }],
        remark: Some("water stood here until April".into()),
        unknown: Unknown::new(),
    };
    let reference = Pit {
        id: id(20),
        place: PlaceKind::Reference,
        zone: None,
        at: None,
        dug: None,
        by: None,
        dug_to_mm: None,
        face: None,
        walk: vec![],
        layers: vec![],
        rolls: vec![],
        photos: vec![],
        remark: None,
        unknown: keys(r#"{"weather": "Niesel, 9 °C"}"#),
    };
    FieldNotes {
        unknown: keys(r#"{"written_by": "hand"}"#),
        machines: passes::machines(),
        passes: passes::passes(),
        ..FieldNotes::new(ellmoor_field(), vec![concern, reference])
    }
}

/// Notes by chance: everything a record may hold, everything it may lack, lists in any order of depth.
pub fn any_notes() -> impl Strategy<Value = FieldNotes> {
    let machines = vec(passes::any_machine(), 0..3);
    let passes = vec(passes::any_pass(), 0..3);
    (any_field().boxed(), vec(any_pit().boxed(), 0..4), machines, passes, any_keys()).prop_map(
        |(field, pits, machines, passes, unknown)| {
            let mut notes = FieldNotes { machines, passes, unknown, ..FieldNotes::new(field, pits) };
            number(&mut notes);
            notes
        },
    )
}

/// Gives each record an id of its own; ids go down, so that their order is not that of the lists.
fn number(notes: &mut FieldNotes) {
    let mut last = 10_000;
    let mut next = || {
        last -= 1;
        id(last)
    };
    notes.field.id = next();
    notes.field.parts.iter_mut().for_each(|part| part.id = next());
    notes.field.lines.iter_mut().for_each(|line| line.id = next());
    notes.machines.iter_mut().for_each(|machine| machine.id = next());
    for pass in &mut notes.passes {
        pass.id = next();
        pass.rolls.iter_mut().for_each(|roll| roll.id = next());
        pass.after_digs.iter_mut().for_each(|dig| dig.id = next());
    }
    for pit in &mut notes.pits {
        pit.id = next();
        pit.walk.iter_mut().for_each(|step| step.id = next());
        pit.layers.iter_mut().for_each(|layer| layer.id = next());
        pit.rolls.iter_mut().for_each(|roll| roll.id = next());
        pit.photos.iter_mut().for_each(|photo| photo.id = next());
    }
}

fn code<T: Copy + std::fmt::Debug + 'static>(all: &'static [T]) -> impl Strategy<Value = Option<T>> {
    of(select(all))
}

fn any_time() -> impl Strategy<Value = DateTime<FixedOffset>> {
    (0..4_000_000_000_i64, 0..1_000_000_000_u32, -50_000..50_000_i32).prop_map(|(seconds, nanos, offset)| {
        let offset = FixedOffset::east_opt(offset).unwrap();
        DateTime::from_timestamp(seconds, nanos).unwrap().with_timezone(&offset)
    })
}

fn any_day() -> impl Strategy<Value = Option<NaiveDate>> {
    of((-1_000_000..3_000_000_i32).prop_map(|day| NaiveDate::from_num_days_from_ce_opt(day).unwrap()))
}

fn any_texture() -> impl Strategy<Value = Option<TextureNote>> {
    let class = (select(TextureScheme::ALL), select(TextureClass::ALL));
    of(prop_oneof![
        select(TextureGroup::ALL).prop_map(TextureNote::Group),
        class.prop_map(|(scheme, class)| TextureNote::Class(Texture { scheme, class })),
    ])
}

fn any_keys() -> impl Strategy<Value = Unknown> {
    let leaf = prop_oneof![
        Just(serde_json::Value::Null),
        any::<bool>().prop_map(Into::into),
        any::<i64>().prop_map(Into::into),
        any::<u64>().prop_map(Into::into),
        any::<f64>().prop_filter("JSON has finite numbers only", |x| x.is_finite()).prop_map(Into::into),
        any::<String>().prop_map(Into::into),
    ];
    let value = leaf.prop_recursive(2, 8, 3, |inner| {
        prop_oneof![
            vec(inner.clone(), 0..3).prop_map(Into::into),
            vec((any::<String>(), inner), 0..3).prop_map(|pairs| pairs.into_iter().collect()),
        ]
    });
    vec((any::<String>(), value), 0..3).prop_map(|pairs| pairs.into_iter().collect())
}

fn any_name() -> impl Strategy<Value = String> {
    any::<String>().prop_filter("never empty", |name| !name.trim().is_empty())
}

fn any_field() -> impl Strategy<Value = Field> {
    let organic = prop_oneof![
        select(OrganicMatterLevel::ALL).prop_map(OrganicMatter::Level),
        (0.0..=100.0).prop_map(OrganicMatter::Percent),
    ];
    let outline = vec((-180.0..=180.0, -90.0..=90.0).prop_map(|(lon, lat)| [lon, lat]), 0..4);
    let depths = proptest::array::uniform11(of(any::<u32>()));
    let crops = proptest::array::uniform5(of(any::<String>()));
    let days = proptest::array::uniform4(any_day());
    let marked = (vec(passes::any_part(), 0..3), vec(passes::any_line(), 0..3));
    let words = (any_name(), crops);
    (
        words,
        outline,
        depths,
        any_texture(),
        of(organic),
        days,
        proptest::array::uniform4(of(any::<bool>())),
        marked,
        any_keys(),
    )
        .prop_map(|(words, outline, depths, texture, organic_matter, days, flags, marked, unknown)| {
            let (name, crops) = words;
            let (parts, lines) = marked;
            let [
                headland_mm,
                tramline_mm,
                wheel_track_mm,
                tyre_mm,
                drains_mm,
                mole_drains_mm,
                services_mm,
                clearance_mm,
                services_clearance_mm,
                reach_mm,
                tillage_mm,
            ] = depths;
            let [crop_now, last_crop, services_asked, next_crop, remark] = crops;
            let [last_loosened, last_traffic, services_asked_on, last_rain] = days;
            let [deep_clay_anyway, services_leave, stony, plates_soft] = flags;
            Field {
                id: id(0),
                name,
                outline,
                headland_mm,
                tramline_mm,
                wheel_track_mm,
                tyre_mm,
                parts,
                lines,
                texture,
                organic_matter,
                crop_now,
                last_crop,
                last_loosened,
                last_traffic,
                drains_mm,
                mole_drains_mm,
                services_mm,
                clearance_mm,
                services_clearance_mm,
                services_asked,
                services_asked_on,
                services_leave,
                last_rain,
                reach_mm,
                tillage_mm,
                stony,
                plates_soft,
                next_crop,
                next_sown: last_rain,
                slope_percent: tillage_mm,
                controlled_traffic: deep_clay_anyway.map(|anyway| !anyway),
                deep_clay_anyway,
                remark,
                unknown,
            }
        })
}

fn any_position() -> impl Strategy<Value = Position> {
    (-180.0..=180.0, -90.0..=90.0, of(0.0..1e6)).prop_map(|(longitude_deg, latitude_deg, accuracy_m)| {
        Position { longitude_deg, latitude_deg, accuracy_m }
    })
}

fn any_pit() -> impl Strategy<Value = Pit> {
    let head = (select(PlaceKind::ALL), code(Zone::ALL), of(any_position()), of(any_time()));
    let more = (
        proptest::array::uniform2(of(any::<String>())),
        of(any::<u32>()),
        code(FaceMoisture::ALL),
        any_keys(),
    );
    let lists = (
        vec(any_step(), 0..5),
        vec(any_layer(), 0..3),
        vec(any_roll(), 0..3),
        vec(any_photo().boxed(), 0..2),
    );
    (head, more, lists).prop_map(
        |((place, zone, at, dug), ([by, remark], dug_to_mm, face, unknown), lists)| {
            let (walk, layers, rolls, photos) = lists;
            Pit {
                id: id(0),
                place,
                zone,
                at,
                dug,
                by,
                dug_to_mm,
                face,
                walk,
                layers,
                rolls,
                photos,
                remark,
                unknown,
            }
        },
    )
}

pub fn any_step() -> impl Strategy<Value = Step> {
    (any::<u32>(), code(ComesAway::ALL), code(Resistance::ALL), any_keys()).prop_map(
        |(to_mm, comes_away, resistance, unknown)| Step { id: id(0), to_mm, comes_away, resistance, unknown },
    )
}

fn any_signs() -> impl Strategy<Value = Signs> {
    let first = (code(ComesAway::ALL), code(Resistance::ALL), code(PoresSeen::ALL), code(ChannelsSeen::ALL));
    let second = (code(RootsSeen::ALL), code(Patches::ALL), code(Smell::ALL), code(ClodInWater::ALL));
    (first, second).prop_map(|(first, second)| {
        let (comes_away, resistance, pores, channels) = first;
        let (roots, patches, smell, clod_in_water) = second;
        Signs { comes_away, resistance, pores, channels, roots, patches, smell, clod_in_water }
    })
}

pub fn any_layer() -> impl Strategy<Value = Layer> {
    (0..2000_u32, 1..500_u32, any_signs(), any_texture(), of(any::<String>()), any_keys()).prop_map(
        |(top_mm, thick_mm, signs, texture, remark, unknown)| {
            let bottom_mm = top_mm + thick_mm;
            Layer { id: id(0), top_mm, bottom_mm, signs, texture, remark, unknown }
        },
    )
}

fn any_roll() -> impl Strategy<Value = Roll> {
    (any::<u32>(), select(RollOutcome::ALL), any_keys()).prop_map(|(depth_mm, roll, unknown)| Roll {
        id: id(0),
        depth_mm,
        roll,
        unknown,
    })
}

fn any_photo() -> impl Strategy<Value = Photo> {
    let mark = (0..=PhotoMark::WHOLE, 0..=PhotoMark::WHOLE, any::<u32>());
    let mark = mark.prop_map(|(from_left, from_top, depth_mm)| PhotoMark { from_left, from_top, depth_mm });
    let marks = prop::collection::vec(mark, 0..=PhotoMark::MOST);
    ("[0-9a-f]{64}", any::<u64>(), any::<String>(), of(any_time()), of(any::<u32>()), marks, any_keys())
        .prop_map(|(sha256, size_bytes, media_type, taken, depth_mm, marks, unknown)| Photo {
            id: id(0),
            sha256,
            size_bytes,
            media_type,
            taken,
            depth_mm,
            marks,
            unknown,
        })
}

pub fn person() -> Person {
    Person { id: id(900), name: "walker".into(), left_handed: Some(true), unknown: Unknown::new() }
}
