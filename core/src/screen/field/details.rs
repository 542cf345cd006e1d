//! What is known of a field as a whole, in rows; each leads to its buttons.

use super::super::bar::blank;
use super::super::part::{way, ways_under};
use super::super::{Headline, Place, Row, Screen, ScreenKind, World};
use crate::reading::Clue;
use crate::record::{Field, OrganicMatter, RecordId, TextureNote};
use crate::words::{Caption, Detail, DetailText, Words};

/// The rows, under their headings.
const GROUPS: [(DetailText, &[Detail]); 3] = [
    (
        DetailText::Ground,
        &[Detail::Name, Detail::Headland, Detail::Tramline, Detail::WheelTrack, Detail::Tyre, Detail::Slope],
    ),
    (
        DetailText::Buried,
        &[
            Detail::Drains,
            Detail::MoleDrains,
            Detail::Clearance,
            Detail::Services,
            Detail::ServicesClearance,
            Detail::ServicesAsked,
            Detail::ServicesAskedOn,
            Detail::ServicesLeave,
        ],
    ),
    (
        DetailText::Use,
        &[
            Detail::Texture,
            Detail::OrganicMatter,
            Detail::CropNow,
            Detail::LastCrop,
            Detail::LastLoosened,
            Detail::LastTraffic,
            Detail::ControlledTraffic,
            Detail::LastRain,
            Detail::NextCrop,
            Detail::NextSown,
            Detail::Tillage,
            Detail::Stony,
            Detail::PlatesSoft,
            Detail::Reach,
            Detail::DeepClay,
            Detail::Remark,
        ],
    ),
];

pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let place = Place::Details { field };
    let mut shown = blank(place, ScreenKind::Field, words.name(&notes.field.name), world);
    let line = words.label(DetailText::NotNone);
    shown.answer = Some(Headline { line, ..Headline::new(words.label(DetailText::Known)) });
    for (heading, details) in GROUPS {
        let row = |&detail: &Detail| {
            let now = value_or_not(&notes.field, detail, words);
            way(None, words.label(detail), now, Place::Detail { field, detail })
        };
        let lines = (heading == DetailText::Buried).then(|| lines_row(&notes.field, words));
        shown.blocks.extend(ways_under(words.label(heading), details.iter().map(row).chain(lines)));
    }
    Some(shown)
}

fn lines_row(field: &Field, words: &Words) -> Row {
    let marked = match field.lines.len() {
        0 => words.label(Caption::NotNoted),
        count => words.lines_marked(count),
    };
    way(None, words.label(DetailText::Lines), marked, Place::Lines { field: field.id, line: None })
}

/// Returns what is noted, or that nothing is.
pub(super) fn value_or_not(field: &Field, detail: Detail, words: &Words) -> String {
    value(field, detail, words).unwrap_or_else(|| words.label(Caption::NotNoted))
}

/// Returns what is noted of a detail, in words.
fn value(field: &Field, detail: Detail, words: &Words) -> Option<String> {
    match detail {
        Detail::Name => Some(words.name(&field.name)),
        Detail::Headland | Detail::Tramline => length_of(field, detail).map(|mm| words.width(mm)),
        Detail::WheelTrack
        | Detail::Tyre
        | Detail::Drains
        | Detail::MoleDrains
        | Detail::Services
        | Detail::Clearance
        | Detail::ServicesClearance
        | Detail::Tillage
        | Detail::Reach => length_of(field, detail).map(|mm| words.depth(mm)),
        Detail::Texture => field.texture.map(|noted| match noted {
            TextureNote::Class(texture) => words.label(texture.class),
            TextureNote::Group(group) => words.answer(Clue::Texture, group as usize),
        }),
        Detail::OrganicMatter => field.organic_matter.map(|noted| match noted {
            OrganicMatter::Level(level) => words.answer(Clue::OrganicMatter, level as usize),
            OrganicMatter::Percent(percent) => words.percentage(percent),
        }),
        Detail::CropNow => field.crop_now.clone(),
        Detail::LastCrop => field.last_crop.clone(),
        Detail::NextCrop => field.next_crop.clone(),
        Detail::Remark => field.remark.as_ref().map(|remark| words.line(remark)),
        Detail::Stony => field.stony.map(|stony| words.label(yes_no(stony))),
        Detail::PlatesSoft => field.plates_soft.map(|soft| words.label(yes_no(soft))),
        Detail::LastLoosened => field.last_loosened.map(|day| words.date(day)),
        Detail::LastTraffic => field.last_traffic.map(|day| words.date(day)),
        Detail::ControlledTraffic => field.controlled_traffic.map(|yes| words.label(yes_no(yes))),
        Detail::LastRain => field.last_rain.map(|day| words.date(day)),
        Detail::NextSown => field.next_sown.map(|day| words.date(day)),
        Detail::Slope => field.slope_percent.map(|percent| words.slope(percent)),
        Detail::ServicesAsked => field.services_asked.clone(),
        Detail::ServicesAskedOn => field.services_asked_on.map(|day| words.date(day)),
        Detail::ServicesLeave => field.services_leave.map(|leave| words.label(leave_given(leave))),
        Detail::DeepClay => field.deep_clay_anyway.map(|anyway| words.label(held_to(anyway))),
    }
}

/// Yes or no.
pub(super) const fn yes_no(yes: bool) -> Caption {
    if yes { Caption::Yes } else { Caption::No }
}

/// How the answer to deep clay is called.
pub(super) const fn held_to(anyway: bool) -> DetailText {
    if anyway { DetailText::HeldTo } else { DetailText::NotHeldTo }
}

/// How the answer to leave is called.
pub(super) const fn leave_given(leave: bool) -> DetailText {
    if leave { DetailText::LeaveGiven } else { DetailText::LeaveNotGiven }
}

/// The length of a detail that is one.
pub(super) const fn length_of(field: &Field, detail: Detail) -> Option<u32> {
    match detail {
        Detail::Headland => field.headland_mm,
        Detail::Tramline => field.tramline_mm,
        Detail::WheelTrack => field.wheel_track_mm,
        Detail::Tyre => field.tyre_mm,
        Detail::Drains => field.drains_mm,
        Detail::MoleDrains => field.mole_drains_mm,
        Detail::Services => field.services_mm,
        Detail::Clearance => field.clearance_mm,
        Detail::ServicesClearance => field.services_clearance_mm,
        Detail::Tillage => field.tillage_mm,
        Detail::Reach => field.reach_mm,
        _ => None,
    }
}
