//! Passes of the machine, and the holes dug behind them.

use super::hole::pit_number;
use super::{FieldTold, Plan, lines, of_field, point};
use crate::RULES;
use crate::advice::after_dig::{DigAdvice, PassAdvice, Verdict};
use crate::record::{
    AfterDig, Clods, Extent, FeetSeen, Lift, Machine, Pass, PlatesLeft, Profile, RecordId, RootsSeen, Smear,
    Zone,
};
use crate::tables::{Shapes, Table};

pub fn tables(told: &[FieldTold]) -> [Table; 2] {
    [passes(told), after_digs(told)]
}

/// A pass with its number in the field.
struct PassTold<'a> {
    number: usize,
    pass: &'a Pass,
    said: &'a PassAdvice,
}

fn passes_of<'a>(told: &'a FieldTold<'a>) -> Vec<PassTold<'a>> {
    let both = told.answer.notes.passes.iter().zip(&told.answer.passes).zip(1..);
    both.map(|((pass, said), number)| PassTold { number, pass, said }).collect()
}

fn machine_of<'a>(told: &'a FieldTold<'a>, id: Option<RecordId>) -> Option<&'a Machine> {
    told.answer.notes.machines.iter().find(|machine| Some(machine.id) == id)
}

fn passes(told: &[FieldTold]) -> Table {
    let columns = of_field::<PassTold>()
        .count("pass", |line| Some(line.item.number))
        .text("pass_id", |line| line.id(line.item.pass.id))
        .text("machine", |line| machine_of(line.field, line.item.pass.machine).map(|it| it.name.clone()))
        .code("zone", &["zone"], |line| line.item.pass.zone.map(Zone::code))
        .code("extent", &["extent"], |line| line.item.pass.extent.map(Extent::code))
        .day("done", |line| line.item.pass.done)
        .mm("tip_mm", |line| line.item.pass.tip_mm)
        .number("speed_kmh", |line| line.item.pass.speed_kmh)
        .day("driven_on", |line| line.item.pass.driven_on)
        .text("remark", |line| line.item.pass.remark.clone())
        .code("verdict", &["verdict"], |line| line.item.said.verdict.map(Verdict::code))
        .code("next", &["next_step"], |line| Some(line.item.said.next.code()))
        .code("rules", &[], |_| Some(RULES));
    let plan = Plan { name: "passes", shapes: None, within: &[], columns };
    plan.fill(&lines(told, passes_of), |line| Some(line.item.pass.id), |_| None, |_| None)
}

/// An after-dig, numbered over all passes of the field, as it is told.
struct DigTold<'a> {
    number: usize,
    pass: usize,
    dig: &'a AfterDig,
    said: &'a DigAdvice,
}

fn digs_of<'a>(told: &'a FieldTold<'a>) -> Vec<DigTold<'a>> {
    let passes = passes_of(told).into_iter();
    let digs = passes.flat_map(|PassTold { number: pass, pass: noted, said }| {
        noted.after_digs.iter().zip(&said.digs).map(move |(dig, said)| (pass, dig, said))
    });
    digs.zip(1..).map(|((pass, dig, said), number)| DigTold { number, pass, dig, said }).collect()
}

fn after_digs(told: &[FieldTold]) -> Table {
    let columns = of_field::<DigTold>()
        .count("after_dig", |line| Some(line.item.number))
        .text("after_dig_id", |line| line.id(line.item.dig.id))
        .count("pass", |line| Some(line.item.pass))
        .count("before", |line| pit_number(line.field, line.item.dig.before?))
        .number("accuracy_m", |line| line.item.dig.at?.accuracy_m)
        .time("dug", |line| line.item.dig.dug)
        .text("by", |line| line.item.dig.by.clone())
        .lengths("firm_mm", |line| line.item.dig.firm_mm.clone())
        .lengths("slots_mm", |line| line.item.dig.slots_mm.clone())
        .code("profile", &["profile"], |line| line.item.dig.profile.map(Profile::code))
        .code("smear", &["smear"], |line| line.item.dig.smear.map(Smear::code))
        .code("lift", &["lift"], |line| line.item.dig.lift.map(Lift::code))
        .code("clods", &["clods"], |line| line.item.dig.clods.map(Clods::code))
        .flag("subsoil_up", |line| line.item.dig.subsoil_up)
        .code("plates", &["plates"], |line| line.item.dig.plates.map(PlatesLeft::code))
        .code("feet", &["feet"], |line| line.item.dig.feet.map(FeetSeen::code))
        .flag("old_slots", |line| line.item.dig.old_slots)
        .code("roots", &["roots"], |line| line.item.dig.roots.map(RootsSeen::code))
        .code("verdict", &["verdict"], |line| Some(line.item.said.verdict.code()))
        .number("loosened_share", |line| line.item.said.share.value().copied())
        .number("layer_broken_share", |line| line.item.said.layer_broken.value().copied())
        .mm("ridge_mm", |line| line.item.said.ridge_mm.value().copied())
        .code("cause", &["failure_cause"], |line| Some(line.item.said.causes.first()?.cause.code()))
        .number("cause_share", |line| Some(line.item.said.causes.first()?.share))
        .code("rules", &[], |_| Some(RULES));
    let plan = Plan { name: "after_digs", shapes: Some(Shapes::Points), within: &[], columns };
    plan.fill(&lines(told, digs_of), |line| Some(line.item.dig.id), |line| point(line.item.dig.at), |_| None)
}
