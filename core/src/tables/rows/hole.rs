//! Pits, and what was noted and read in them.

use super::ground::call;
use super::{Columns, FieldTold, Line, Plan, lines, of_field, point};
use crate::RULES;
use crate::advice::{ZoneCall, stands_for};
use crate::reading::LayerReading;
use crate::record::{ComesAway, FaceMoisture, Pit, RecordId, Resistance, Roll, Sign, Step, Zone, remark};
use crate::soil::texture::TextureGroup;
use crate::tables::{Shapes, Table};

pub fn tables(told: &[FieldTold]) -> [Table; 4] {
    [pits(told), steps(told), layers(told), rolls(told)]
}

/// Something with its number, from 1.
struct Numbered<T> {
    number: usize,
    it: T,
}

fn numbered<T>(list: impl IntoIterator<Item = T>) -> Vec<Numbered<T>> {
    list.into_iter().zip(1..).map(|(it, number)| Numbered { number, it }).collect()
}

/// The call of the zone that a pit stands for.
fn call_of<'a>(line: &Line<'a, Numbered<&'a Pit>>) -> Option<&'a ZoneCall> {
    let zone = stands_for(&line.field.answer.map, line.item.it)?;
    line.field.answer.advice.zones.iter().find(|call| call.zone == zone)
}

fn pits(told: &[FieldTold]) -> Table {
    let columns = of_field::<Numbered<&Pit>>()
        .count("pit", |line| Some(line.item.number))
        .text("pit_id", |line| line.id(line.item.it.id))
        .code("place", &["place"], |line| Some(line.item.it.place.code()))
        .code("zone", &["zone"], |line| stands_for(&line.field.answer.map, line.item.it).map(Zone::code))
        .number("accuracy_m", |line| line.item.it.at?.accuracy_m)
        .time("dug", |line| line.item.it.dug)
        .text("by", |line| line.item.it.by.clone())
        .mm("dug_to_mm", |line| line.item.it.dug_to_mm)
        .code("face", &["face"], |line| line.item.it.face.map(FaceMoisture::code))
        .text("remark", |line| line.item.it.remark.clone());
    let columns = call(columns, |line: &Line<Numbered<&Pit>>| call_of(line));
    let plan = Plan { name: "pits", shapes: Some(Shapes::Points), within: &[], columns };
    plan.fill(
        &lines(told, |field| numbered(&field.answer.notes.pits)),
        |line| Some(line.item.it.id),
        |line| point(line.item.it.at),
        |_| None,
    )
}

/// Something in a pit.
struct InPit<T> {
    /// Number of the pit in its field.
    pit: usize,
    /// Place of the pit among all.
    row: usize,
    it: Numbered<T>,
}

/// Returns what the pits of all fields have in them, with their place among all pits.
fn in_pits<'a, T>(
    told: &'a [FieldTold<'a>],
    items: impl Fn(&'a FieldTold<'a>, usize) -> Vec<T>,
) -> Vec<Line<'a, InPit<T>>> {
    let mut pits = lines(told, |field| (0..field.answer.notes.pits.len()).collect());
    let all = pits.drain(..).enumerate().flat_map(|(row, Line { field, number, item: index })| {
        let inside = numbered(items(field, index)).into_iter();
        inside.map(move |it| Line { field, number, item: InPit { pit: index + 1, row, it } })
    });
    all.collect()
}

fn of_pit<'a, T: 'a>() -> Columns<'a, Line<'a, InPit<T>>> {
    of_field::<InPit<T>>().count("pit", |line| Some(line.item.pit)).links()
}

fn steps(told: &[FieldTold]) -> Table {
    let columns = of_pit::<&Step>()
        .count("step", |line| Some(line.item.it.number))
        .mm("to_mm", |line| Some(line.item.it.it.to_mm))
        .code("comes_away", &["comes_away"], |line| line.item.it.it.comes_away.map(ComesAway::code))
        .code("resistance", &["resistance"], |line| line.item.it.it.resistance.map(Resistance::code));
    let plan = Plan { name: "steps", shapes: None, within: &["pits"], columns };
    plan.fill(
        &in_pits(told, |field, index| field.answer.notes.pits[index].walk.iter().collect()),
        |line| Some(line.item.it.it.id),
        |_| None,
        |line| Some(("pits", line.item.row)),
    )
}

fn layers(told: &[FieldTold]) -> Table {
    let columns = of_pit::<&LayerReading>()
        .count("layer", |line| Some(line.item.it.number))
        .mm("top_mm", |line| Some(line.item.it.it.top_mm))
        .mm("bottom_mm", |line| Some(line.item.it.it.bottom_mm));
    let columns = Sign::ALL.iter().fold(columns, |columns, &sign| {
        let seen = move |line: &Line<InPit<&LayerReading>>| line.item.it.it.signs.get(sign);
        let list = std::slice::from_ref(&Sign::CODES[sign as usize]);
        columns.code(sign.code(), list, move |line| seen(line).map(|answer| sign.answers()[answer]))
    });
    let columns = columns
        .code("texture_group", &["texture"], |line| line.item.it.it.texture.map(TextureGroup::code))
        .text("remark", |line| {
            let read = line.item.it.it;
            let pit = &line.field.answer.notes.pits[line.item.pit - 1];
            let all: Vec<&str> = remark::of_layer(pit, read.top_mm, read.bottom_mm).collect();
            (!all.is_empty()).then(|| all.join("\n"))
        })
        .code("condition", &["condition"], |line| Some(line.item.it.it.condition.code()))
        .code("cause", &["cause"], |line| Some(line.item.it.it.cause.code()))
        .number("share", |line| Some(line.item.it.it.share))
        .code("rules", &[], |_| Some(RULES));
    let plan = Plan { name: "layers", shapes: None, within: &["pits"], columns };
    plan.fill(
        &in_pits(told, |field, index| {
            field.answer.reading.pits.get(index).map_or(Vec::new(), |read| read.layers.iter().collect())
        }),
        |_| None,
        |_| None,
        |line| Some(("pits", line.item.row)),
    )
}

/// A roll test: in a pit, or on the day of a pass.
struct RollTold<'a> {
    pit: Option<usize>,
    pass: Option<usize>,
    of: (&'static str, usize),
    roll: &'a Roll,
}

fn rolls(told: &[FieldTold]) -> Table {
    let columns = of_field::<RollTold>()
        .count("pit", |line| line.item.pit)
        .count("pass", |line: &Line<RollTold>| line.item.pass)
        .text("roll_id", |line| line.id(line.item.roll.id))
        .mm("depth_mm", |line| Some(line.item.roll.depth_mm))
        .code("roll", &["roll"], |line| Some(line.item.roll.roll.code()));
    let in_pits = in_pits(told, |field, index| field.answer.notes.pits[index].rolls.iter().collect());
    let in_pits = in_pits.into_iter().map(|Line { field, number, item: InPit { pit, row, it } }| {
        let item = RollTold { pit: Some(pit), pass: None, of: ("pits", row), roll: it.it };
        Line { field, number, item }
    });
    let passes = lines(told, |field| numbered(&field.answer.notes.passes));
    let of_passes = passes.into_iter().enumerate().flat_map(|(row, Line { field, number, item })| {
        item.it.rolls.iter().map(move |roll| {
            let item = RollTold { pit: None, pass: Some(item.number), of: ("passes", row), roll };
            Line { field, number, item }
        })
    });
    let plan = Plan { name: "rolls", shapes: None, within: &["pits", "passes"], columns };
    let all: Vec<_> = in_pits.chain(of_passes).collect();
    plan.fill(&all, |line| Some(line.item.roll.id), |_| None, |line| Some(line.item.of))
}

/// The number of a pit in its field, from 1.
pub fn pit_number(told: &FieldTold, id: RecordId) -> Option<usize> {
    told.answer.notes.pits.iter().position(|pit| pit.id == id).map(|index| index + 1)
}
