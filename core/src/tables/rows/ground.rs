//! Fields, their zones with the calls, and what is marked on them.

use super::{Columns, FieldTold, Line, Plan, lines, of_field, texture};
use crate::RULES;
use crate::advice::ZoneCall;
use crate::place::{Outline, Rings, circle_of, ground_of, line_of};
use crate::record::{Buried, BuriedLine, Field, LineSort, OrganicMatter, Part, PartShape, Zone};
use crate::tables::{Shape, Shapes, Table};

pub fn tables(told: &[FieldTold]) -> [Table; 4] {
    [fields(told), zones(told), parts(told), buried(told)]
}

/// These columns and what is called for, which zones, fields and pits share.
pub fn call<'a, T: 'a>(columns: Columns<'a, T>, get: fn(&T) -> Option<&'a ZoneCall>) -> Columns<'a, T> {
    columns
        .code("call", &["call"], move |item| Some(get(item)?.call.code()))
        .number("share", move |item| Some(get(item)?.share))
        .code("sure", &["sureness"], move |item| Some(get(item)?.sure.code()))
        .number("ground_share", move |item| Some(get(item)?.ground.share))
        .code("ground_sure", &["sureness"], move |item| Some(get(item)?.ground.sure.code()))
        .mm("tip_least_mm", move |item| Some(get(item)?.tip?.lo_mm))
        .mm("tip_most_mm", move |item| Some(get(item)?.tip?.hi_mm))
        .number("cleared_share", move |item| Some(get(item)?.tip?.cleared_share))
        .code("rules", &[], move |item| get(item).map(|_| RULES))
}

fn grounds(pieces: Vec<Rings>) -> Option<Shape> {
    (!pieces.is_empty()).then_some(Shape::Ground(pieces))
}

fn fields(told: &[FieldTold]) -> Table {
    fn of<'a>(line: &Line<'a, ()>) -> &'a Field {
        &line.field.answer.notes.field
    }
    let columns = of_field::<()>()
        .mm("headland_mm", |line| of(line).headland_mm)
        .mm("tramline_mm", |line| of(line).tramline_mm)
        .mm("wheel_track_mm", |line| of(line).wheel_track_mm)
        .mm("tyre_mm", |line| of(line).tyre_mm)
        .code("texture", &["texture_class", "texture"], |line| of(line).texture.map(|note| texture(note).0))
        .code("texture_scheme", &["texture_scheme"], |line| of(line).texture.and_then(|note| texture(note).1))
        .code("organic_matter", &["organic_matter"], |line| match of(line).organic_matter {
            Some(OrganicMatter::Level(level)) => Some(level.code()),
            _ => None,
        })
        .number("organic_matter_percent", |line| match of(line).organic_matter {
            Some(OrganicMatter::Percent(percent)) => Some(percent),
            _ => None,
        })
        .text("crop_now", |line| of(line).crop_now.clone())
        .text("last_crop", |line| of(line).last_crop.clone())
        .day("last_loosened", |line| of(line).last_loosened)
        .day("last_traffic", |line| of(line).last_traffic)
        .mm("drains_mm", |line| of(line).drains_mm)
        .mm("mole_drains_mm", |line| of(line).mole_drains_mm)
        .mm("services_mm", |line| of(line).services_mm)
        .mm("clearance_mm", |line| of(line).clearance_mm)
        .mm("services_clearance_mm", |line| of(line).services_clearance_mm)
        .text("services_asked", |line| of(line).services_asked.clone())
        .day("services_asked_on", |line| of(line).services_asked_on)
        .flag("services_leave", |line| of(line).services_leave)
        .day("last_rain", |line| of(line).last_rain)
        .mm("reach_mm", |line| of(line).reach_mm)
        .mm("tillage_mm", |line| of(line).tillage_mm)
        .flag("stony", |line| of(line).stony)
        .flag("plates_soft", |line| of(line).plates_soft)
        .text("next_crop", |line| of(line).next_crop.clone())
        .day("next_sown", |line| of(line).next_sown)
        .count("slope_percent", |line| of(line).slope_percent.map(|percent| percent as usize))
        .flag("controlled_traffic", |line| of(line).controlled_traffic)
        .flag("deep_clay_anyway", |line| of(line).deep_clay_anyway)
        .text("remark", |line| of(line).remark.clone())
        .number("area_m2", |line| line.field.answer.map.whole_m2())
        .count("pits", |line| Some(line.field.answer.notes.pits.len()));
    let columns = call(columns, |line: &Line<()>| Some(&line.field.answer.advice.whole));
    let plan = Plan { name: "fields", shapes: Some(Shapes::Grounds), within: &[], columns };
    plan.fill(
        &lines(told, |_| vec![()]),
        |line| Some(of(line).id),
        // An edge that is not walked all round yet encloses nothing.
        |line| grounds(Outline::new(&of(line).outline).map_or(Vec::new(), |_| ground_of(&of(line).outline))),
        |_| None,
    )
}

/// A zone that has ground or a call.
struct ZoneTold<'a> {
    zone: Zone,
    ground: Vec<Rings>,
    area_m2: Option<f64>,
    call: Option<&'a ZoneCall>,
}

fn zones_of<'a>(told: &'a FieldTold<'a>) -> Vec<ZoneTold<'a>> {
    let mut grounds = told.answer.map.zones_on_globe();
    let areas = told.answer.map.areas();
    let zone = |&zone: &Zone| {
        let ground = grounds.iter_mut().find(|(its, _)| *its == zone);
        let area_m2 = areas.iter().find(|area| area.zone == zone).map(|area| area.area_m2);
        let call = told.answer.advice.zones.iter().find(|call| call.zone == zone);
        (area_m2.is_some() || call.is_some()).then(|| ZoneTold {
            zone,
            ground: ground.map(|(_, ground)| std::mem::take(ground)).unwrap_or_default(),
            area_m2,
            call,
        })
    };
    Zone::ALL.iter().filter_map(zone).collect()
}

fn zones(told: &[FieldTold]) -> Table {
    let columns = of_field::<ZoneTold>()
        .code("zone", &["zone"], |line| Some(line.item.zone.code()))
        .number("area_m2", |line| line.item.area_m2)
        .count("pits", |line| Some(line.item.call?.pits));
    let columns = call(columns, |line: &Line<ZoneTold>| line.item.call);
    let plan = Plan { name: "zones", shapes: Some(Shapes::Grounds), within: &[], columns };
    plan.fill(&lines(told, zones_of), |_| None, |line| grounds(line.item.ground.clone()), |_| None)
}

fn parts(told: &[FieldTold]) -> Table {
    fn circle(line: &Line<&Part>) -> Option<([f64; 2], f64)> {
        match line.item.shape {
            PartShape::Circle { middle, radius_m } => Some((middle, radius_m)),
            PartShape::Ring(_) => None,
        }
    }
    let columns = of_field::<&Part>()
        .text("part_id", |line| line.id(line.item.id))
        .text("name", |line| line.item.name.clone())
        .code("zone", &["zone"], |line| Some(line.item.zone.code()))
        .number("radius_m", |line| circle(line).map(|(_, radius_m)| radius_m));
    let plan = Plan { name: "parts", shapes: Some(Shapes::Grounds), within: &[], columns };
    plan.fill(
        &lines(told, |field| field.answer.notes.field.parts.iter().collect()),
        |line| Some(line.item.id),
        |line| {
            if !line.item.faults().is_empty() {
                return None;
            }
            grounds(match &line.item.shape {
                PartShape::Ring(ring) => Outline::new(ring).map_or(Vec::new(), |_| ground_of(ring)),
                PartShape::Circle { middle, radius_m } => ground_of(&circle_of(*middle, *radius_m)),
            })
        },
        |_| None,
    )
}

fn buried(told: &[FieldTold]) -> Table {
    let columns = of_field::<&BuriedLine>()
        .text("line_id", |line| line.id(line.item.id))
        .code("kind", &["buried"], |line| Some(Buried::code(line.item.kind)))
        .mm("depth_mm", |line| line.item.depth_mm)
        .code("sort", &["line_sort"], |line| line.item.known().map(LineSort::code));
    let plan = Plan { name: "lines", shapes: Some(Shapes::Lines), within: &[], columns };
    plan.fill(
        &lines(told, |field| field.answer.notes.field.lines.iter().collect()),
        |line| Some(line.item.id),
        |line| Some(line_of(&line.item.along)).filter(|pieces| !pieces.is_empty()).map(Shape::Line),
        |_| None,
    )
}
