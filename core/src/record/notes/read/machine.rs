//! Reads the machines of a file.

use crate::record::notes::cursor::{Book, Object};
use crate::record::notes::json::below;
use crate::record::notes::length;
use crate::record::notes::value::Node;
use crate::record::{Drive, LeadingTines, Machine, RecordId, SpeedRange, Tractor, Unknown, Wings};

/// A machine by what passes call it.
pub struct Named {
    /// Its name, without blanks around it.
    pub name: String,
    /// Its id.
    pub id: RecordId,
    /// Where it stands in the file.
    at: String,
    /// Whether the file gives the id.
    pub has_id: bool,
}

/// The machines of a file, and those that have a name, whether they could be read or not.
pub fn machines<'a>(file: &mut Object<'a>, book: &'a Book<'a>) -> (Vec<Machine>, Vec<Named>) {
    let (machines, named) = (file.objects("machines").into_iter().map(|object| machine(object, book))).fold(
        (Vec::new(), Vec::<Named>::new()),
        |(mut machines, mut all), (named, read)| {
            machines.extend(read);
            all.extend(named);
            (machines, all)
        },
    );
    for (place, one) in named.iter().enumerate() {
        let first = named[..place].iter().find(|first| first.name == one.name);
        // A machine set anew keeps its name: two ids in the file tell the two apart.
        if let Some(first) = first.filter(|first| !(first.has_id && one.has_id)) {
            let wrong = format!("`{}` is also the name at {}", one.name, below(&first.at, "name"));
            let todo = "give each machine a name of its own; one that is set anew is another machine";
            book.fault(below(&one.at, "name"), wrong, todo);
        }
    }
    (machines, named)
}

fn machine<'a>(mut machine: Object<'a>, book: &'a Book<'a>) -> (Option<Named>, Option<Machine>) {
    let (at, has_id) = (machine.at.clone(), machine.has("id"));
    let id = machine.id();
    let name = machine.need("name", "the machine's name").and_then(Node::needed_text);
    let legs = machine.need("legs", "the number of legs").and_then(|node| node.count("a number of legs"));
    let spacing = machine.need("spacing_mm", "the distance between two legs");
    let spacing_mm = spacing.and_then(|node| node.mm(&length::SPACING));
    let foot_width = machine.need("foot_width_mm", "the width of the foot");
    let foot_width_mm = foot_width.and_then(|node| node.mm(&length::FOOT));
    let mut inner = Unknown::new();
    let wings = part(&mut machine, "wings", &mut inner, wings);
    let leading = part(&mut machine, "leading", &mut inner, |leading| {
        Some(LeadingTines { depth_mm: leading.take("depth_mm").and_then(|node| node.mm(&length::LEADING)) })
    });
    let working_width_mm = machine.take("working_width_mm").and_then(|node| node.mm(&length::WORKING_WIDTH));
    let speed = part(&mut machine, "speed", &mut inner, speed);
    let reach_mm = machine.take("reach_mm").and_then(|node| node.mm(&length::MACHINE_REACH));
    let tractor = part(&mut machine, "tractor", &mut inner, tractor);
    let tractor_mass_kg = tractor.and_then(|(_, mass_kg)| mass_kg);
    let mut unknown = machine.rest();
    unknown.extend(inner);
    let named = name.as_deref().map(|name| Named { name: name.trim().into(), id, at: at.clone(), has_id });
    let read = || {
        Some(Machine {
            id,
            name: name?,
            legs: u32::try_from(legs?).unwrap_or(u32::MAX),
            spacing_mm: spacing_mm?,
            foot_width_mm: foot_width_mm?,
            wings,
            leading,
            working_width_mm,
            speed,
            reach_mm,
            tractor: tractor.map(|(tractor, _)| tractor),
            tractor_mass_kg,
            unknown,
        })
    };
    let read = read();
    for fault in read.iter().flat_map(Machine::faults) {
        book.fault(below(&at, &fault.at), fault.wrong, fault.todo);
    }
    (named, read)
}

/// A part of the machine that is an object without an id; keys of it that nobody knows are kept under its own.
fn part<'a, T>(
    machine: &mut Object<'a>,
    key: &str,
    unknown: &mut Unknown,
    read: impl FnOnce(&mut Object<'a>) -> Option<T>,
) -> Option<T> {
    let mut object = machine.take(key).and_then(Node::object)?;
    let part = read(&mut object);
    let rest = object.rest();
    if !rest.is_empty() {
        unknown.insert(key.into(), rest.into());
    }
    part
}

fn wings(wings: &mut Object) -> Option<Wings> {
    let width = wings.need("width_mm", "the width over both wings");
    let width_mm = width.and_then(|node| node.mm(&length::WINGS));
    let lift_mm = wings.take("lift_mm").and_then(|node| node.mm(&length::LIFT));
    Some(Wings { width_mm: width_mm?, lift_mm })
}

fn speed(speed: &mut Object) -> Option<SpeedRange> {
    let lo_kmh = speed.need("lo_kmh", "the slowest speed").and_then(Node::speed_kmh);
    let hi_kmh = speed.need("hi_kmh", "the fastest speed").and_then(Node::speed_kmh);
    Some(SpeedRange { lo_kmh: lo_kmh?, hi_kmh: hi_kmh? })
}

/// A tractor, and its mass.
fn tractor(tractor: &mut Object) -> Option<(Tractor, Option<u32>)> {
    let power_kw = tractor.need("power_kw", "the power of the engine").and_then(Node::power_kw);
    let drive = tractor.need("drive", "what pulls");
    let drive = drive.and_then(|node| node.choice(Drive::CODES, Drive::ALL));
    let mass_kg = tractor.take("mass_kg").and_then(|node| node.count("a mass in kilograms"));
    let mass_kg = mass_kg.map(|kg| u32::try_from(kg).unwrap_or(u32::MAX));
    Some((Tractor { power_kw: power_kw?, drive: drive? }, mass_kg))
}
