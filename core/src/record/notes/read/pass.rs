//! Reads the passes of a file, and the holes dug behind them.

use super::machine::Named;
use super::pit::{position, roll};
use crate::record::notes::cursor::{Book, Object, found};
use crate::record::notes::guess::nearest_name;
use crate::record::notes::json::below;
use crate::record::notes::length;
use crate::record::notes::value::Node;
use crate::record::{
    AfterDig, Clods, Extent, FeetSeen, Lift, Pass, Pit, PlaceKind, PlatesLeft, Profile, RecordId, RootsSeen,
    Smear, Zone,
};

/// Where the deepest reading to firm soil lies above this, the readings are centimetres: the first and the last lie in
/// a tine line, which no machine of this kind draws so shallow. Our judgement.
const SHALLOWEST_TINE_LINE_MM: u32 = 60;

/// What passes may refer to.
pub struct Known {
    /// The machines that have a name.
    machines: Vec<Named>,
    /// Whether these are all that the file has.
    all_machines: bool,
    /// The pits as told, `None` where one could not be read; no list where they are told as something else.
    pits: Option<Vec<Option<(RecordId, PlaceKind)>>>,
}

impl Known {
    /// From what was read, and how many the file tells.
    pub fn new(
        machines: Vec<Named>,
        machines_told: Option<usize>,
        pits: &[Option<Pit>],
        pits_told: Option<usize>,
    ) -> Self {
        let all_machines = machines_told == Some(machines.len());
        let mut read: Vec<_> = pits.iter().map(|pit| pit.as_ref().map(|pit| (pit.id, pit.place))).collect();
        let pits = pits_told.map(|told| {
            read.resize(told, None);
            read
        });
        Self { machines, all_machines, pits }
    }

    /// The machine that a pass names; an id of a machine elsewhere is taken as it is.
    fn machine(&self, node: Node) -> Option<RecordId> {
        let word = node.value.as_str().map(str::trim).unwrap_or_default();
        if let Some(id) = RecordId::parse(word) {
            return Some(id);
        }
        if word.is_empty() {
            return node.text().and(None);
        }
        let called: Vec<&Named> = self.machines.iter().filter(|machine| machine.name == word).collect();
        match called[..] {
            [machine] => return Some(machine.id),
            // The name meant may be the one that could not be read.
            [] if !self.all_machines => return None,
            [] => {}
            _ => {
                // Without ids their names are a fault already.
                if called.iter().all(|machine| machine.has_id) {
                    let wrong = format!("{} machines are called `{word}`", called.len());
                    node.fault(wrong, "write the id of the one that is meant");
                }
                return None;
            }
        }
        let names: Vec<&str> = self.machines.iter().map(|machine| machine.name.as_str()).collect();
        let todo = if names.is_empty() {
            "list the machine under \"machines\", or leave it out".into()
        } else {
            let meant = nearest_name(word, &names);
            let meant = meant.map_or(String::new(), |name| format!("did you mean {name}? "));
            format!("{meant}use one of: {}", names.join(", "))
        };
        node.fault(format!("no machine of this file is called {}", found(&node.value)), todo);
        None
    }

    /// The pit of a number as told, from 1; an id of a pit elsewhere is taken as it is.
    fn pit(&self, node: &Node) -> Option<RecordId> {
        if let Some(id) = node.value.as_str().and_then(RecordId::parse) {
            return Some(id);
        }
        let number = node.value.as_f64().filter(|number| number.fract() == 0.0);
        let pits = self.pits.as_deref()?;
        let last = pits.len();
        if let Some(number) = number.filter(|number| (1.0..=last as f64).contains(number)) {
            return pits[number as usize - 1].map(|(id, _)| id);
        }
        let told = pits.iter().enumerate().map(|(place, pit)| match pit {
            Some((_, kind)) => format!("{} ({})", place + 1, kind.code()),
            None => (place + 1).to_string(),
        });
        let todo = if last == 0 {
            "list the pit under \"pits\", or leave this out".into()
        } else {
            format!("pits count from 1 as told: use one of: {}", told.collect::<Vec<_>>().join(", "))
        };
        node.fault(format!("{} is no pit of this file", found(&node.value)), todo);
        None
    }
}

/// The passes of a file.
pub fn passes<'a>(file: &mut Object<'a>, known: &Known, book: &'a Book<'a>) -> Vec<Pass> {
    file.objects("passes").into_iter().map(|object| pass(object, known, book)).collect()
}

fn pass<'a>(mut pass: Object<'a>, known: &Known, book: &'a Book<'a>) -> Pass {
    let at = pass.at.clone();
    let read = Pass {
        id: pass.id(),
        machine: pass.take("machine").and_then(|node| known.machine(node)),
        zone: pass.take("zone").and_then(|node| node.choice(Zone::CODES, Zone::ALL)),
        extent: pass.take("extent").and_then(|node| node.choice(Extent::CODES, Extent::ALL)),
        done: pass.take("done").and_then(Node::day),
        tip_mm: pass.take("tip_mm").and_then(|node| node.mm(&length::TIP)),
        speed_kmh: pass.take("speed_kmh").and_then(Node::speed_kmh),
        driven_on: pass.take("driven_on").and_then(Node::day),
        remark: pass.take("remark").and_then(Node::remark),
        rolls: pass.objects("rolls").into_iter().filter_map(roll).collect(),
        after_digs: pass
            .objects("after_digs")
            .into_iter()
            .map(|object| after_dig(object, known, book))
            .collect(),
        unknown: pass.rest(),
    };
    for fault in read.faults() {
        book.fault(below(&at, &fault.at), fault.wrong, fault.todo);
    }
    read
}

fn after_dig<'a>(mut dig: Object<'a>, known: &Known, book: &'a Book<'a>) -> AfterDig {
    let at = dig.at.clone();
    let read = AfterDig {
        id: dig.id(),
        at: position(&mut dig, book),
        dug: dig.take("dug").and_then(Node::time),
        by: dig.take("by").and_then(Node::text),
        before: dig.take("before").and_then(|node| known.pit(&node)),
        firm_mm: dig.take("firm_mm").and_then(|node| node.all_mm(&length::FIRM)).unwrap_or_default(),
        slots_mm: dig.take("slots_mm").and_then(|node| node.all_mm(&length::TIP)).unwrap_or_default(),
        profile: dig.take("profile").and_then(|node| node.choice(Profile::CODES, Profile::ALL)),
        smear: dig.take("smear").and_then(|node| node.choice(Smear::CODES, Smear::ALL)),
        lift: dig.take("lift").and_then(|node| node.choice(Lift::CODES, Lift::ALL)),
        clods: dig.take("clods").and_then(|node| node.choice(Clods::CODES, Clods::ALL)),
        subsoil_up: dig.take("subsoil_up").and_then(Node::flag),
        plates: dig.take("plates").and_then(|node| node.choice(PlatesLeft::CODES, PlatesLeft::ALL)),
        feet: dig.take("feet").and_then(|node| node.choice(FeetSeen::CODES, FeetSeen::ALL)),
        old_slots: dig.take("old_slots").and_then(Node::flag),
        roots: dig.take("roots").and_then(|node| node.choice(RootsSeen::CODES, RootsSeen::ALL)),
        unknown: dig.rest(),
    };
    let faults = read.faults();
    let enough = faults.is_empty();
    for fault in faults {
        book.fault(below(&at, &fault.at), fault.wrong, fault.todo);
    }
    if let Some(&deepest) = read.firm_mm.iter().max().filter(|mm| enough && **mm < SHALLOWEST_TINE_LINE_MM) {
        let wrong = format!("{deepest} mm is the deepest reading, and too shallow for a tine line");
        let todo =
            format!("lengths are whole millimetres: did you mean {}, from {deepest} cm?", deepest * 10);
        book.fault(below(&at, "firm_mm"), wrong, todo);
    }
    read
}
