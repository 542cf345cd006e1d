//! Reads the field, and what is marked on it.

use crate::place::{Outline, OutlineFault};
use crate::record::notes::cursor::{Book, Object, found};
use crate::record::notes::json::below;
use crate::record::notes::length;
use crate::record::notes::value::Node;
use crate::record::{
    Buried, BuriedLine, Field, LineSort, OrganicMatter, OrganicMatterLevel, Part, PartShape, TextureNote,
    Zone,
};
use crate::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};

/// The field, and the texture scheme its layers are in where they do not say.
pub fn field<'a>(mut field: Object<'a>, book: &'a Book<'a>) -> (Field, TextureScheme) {
    let (texture, scheme) = texture(&mut field, TextureScheme::Usda);
    let read = Field {
        id: field.id(),
        name: field.need("name", "the field's name").and_then(Node::needed_text).unwrap_or_default(),
        outline: field.take("outline").map(|node| outline(node, book)).unwrap_or_default(),
        headland_mm: field.take("headland_mm").and_then(|node| node.mm(&length::WIDTH)),
        tramline_mm: field.take("tramline_mm").and_then(|node| node.mm(&length::WIDTH)),
        wheel_track_mm: field.take("wheel_track_mm").and_then(|node| node.mm(&length::WHEEL_TRACK)),
        tyre_mm: field.take("tyre_mm").and_then(|node| node.mm(&length::TYRE)),
        parts: field.objects("parts").into_iter().filter_map(|object| part(object, book)).collect(),
        lines: field.objects("lines").into_iter().filter_map(|object| line(object, book)).collect(),
        texture,
        organic_matter: field.take("organic_matter").and_then(|node| organic_matter(&node)),
        crop_now: field.take("crop_now").and_then(Node::text),
        last_crop: field.take("last_crop").and_then(Node::text),
        last_loosened: field.take("last_loosened").and_then(Node::day),
        last_traffic: field.take("last_traffic").and_then(Node::day),
        drains_mm: field.take("drains_mm").and_then(|node| node.mm(&length::DRAINS)),
        mole_drains_mm: field.take("mole_drains_mm").and_then(|node| node.mm(&length::MOLE_DRAINS)),
        services_mm: field.take("services_mm").and_then(|node| node.mm(&length::SERVICES)),
        clearance_mm: field.take("clearance_mm").and_then(|node| node.mm(&length::CLEARANCE)),
        services_clearance_mm: field
            .take("services_clearance_mm")
            .and_then(|node| node.mm(&length::SERVICES_CLEARANCE)),
        services_asked: field.take("services_asked").and_then(Node::text),
        services_asked_on: field.take("services_asked_on").and_then(Node::day),
        services_leave: field.take("services_leave").and_then(Node::flag),
        last_rain: field.take("last_rain").and_then(Node::day),
        reach_mm: field.take("reach_mm").and_then(|node| node.mm(&length::REACH)),
        tillage_mm: field.take("tillage_mm").and_then(|node| node.mm(&length::TILLAGE)),
        stony: field.take("stony").and_then(Node::flag),
        plates_soft: field.take("plates_soft").and_then(Node::flag),
        next_crop: field.take("next_crop").and_then(Node::text),
        next_sown: field.take("next_sown").and_then(Node::day),
        slope_percent: field.take("slope_percent").and_then(|node| slope(&node)),
        controlled_traffic: field.take("controlled_traffic").and_then(Node::flag),
        deep_clay_anyway: field.take("deep_clay_anyway").and_then(Node::flag),
        remark: field.take("remark").and_then(Node::remark),
        unknown: field.rest(),
    };
    (read, scheme)
}

/// A slope in whole percent, up to that of one in one.
fn slope(node: &Node) -> Option<u32> {
    let percent = node.value.as_u64().filter(|percent| *percent <= 100);
    if percent.is_none() {
        let todo = "write metres of fall in 100 m as a whole number from 0 to 100, or leave it out where it is not known";
        node.fault("this is no slope of a field", todo);
    }
    percent.map(|percent| percent as u32)
}

/// The outline; none where the list is empty.
fn outline(node: Node, book: &Book) -> Vec<[f64; 2]> {
    let at = node.at.clone();
    let (ring, fault) = ring(node);
    if let Some(fault) = fault.filter(|_| !ring.is_empty()) {
        book.fault(at, fault.wrong(), fault.todo());
    }
    ring
}

/// A ring without its closing repeat, and what is wrong with it where its places are good.
fn ring(node: Node) -> (Vec<[f64; 2]>, Option<OutlineFault>) {
    let count = node.value.as_array().map(Vec::len);
    let mut ring: Vec<[f64; 2]> = node.list().into_iter().filter_map(Node::position).collect();
    let all_good = Some(ring.len()) == count;
    if ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    let fault = if all_good { Outline::new(&ring).err() } else { None };
    (ring, fault)
}

/// Zones that are marked on a field.
const MARKED: [&str; 2] = [Zone::Gateway.code(), Zone::Patch.code()];

fn part<'a>(mut part: Object<'a>, book: &'a Book<'a>) -> Option<Part> {
    let at = part.at.clone();
    let id = part.id();
    let name = part.take("name").and_then(Node::text);
    let zone = part.need("zone", "the zone that the part is").and_then(|node| {
        let zone = node.value.as_str().and_then(Zone::from_code);
        if zone.is_none() {
            node.not_one_of(&MARKED);
        }
        zone
    });
    let shape = shape(&mut part, book);
    let unknown = part.rest();
    let read = Part { id, name, zone: zone?, shape: shape?, unknown };
    for fault in read.faults() {
        let radius_m = match read.shape {
            PartShape::Circle { radius_m, .. } if fault.at == "radius_m" => radius_m,
            _ => 0.0,
        };
        // A circle of a part of a field has 1 to 100 m, as a rule.
        let meant = (1_000.0..=100_000.0).contains(&radius_m);
        let meant = if meant {
            format!("did you mean {}, from {radius_m} mm? ", radius_m / 1_000.0)
        } else {
            String::new()
        };
        book.fault(below(&at, &fault.at), fault.wrong, format!("{meant}{}", fault.todo));
    }
    Some(read)
}

/// A ring, or a middle with a radius: one of the two.
fn shape<'a>(part: &mut Object<'a>, book: &'a Book<'a>) -> Option<PartShape> {
    const EITHER: &str = "give either \"ring\", or \"at\" with \"radius_m\"";
    let (has_ring, has_at, has_radius) = (part.has("ring"), part.has("at"), part.has("radius_m"));
    if has_ring {
        if has_at || has_radius {
            let key = if has_at { "at" } else { "radius_m" };
            book.fault(part.below(key), "the part is drawn as a ring already", EITHER);
        }
        let _ = (part.take("at"), part.take("radius_m"));
        let node = part.take("ring")?;
        let at = node.at.clone();
        let (ring, fault) = ring(node);
        match fault {
            Some(OutlineFault::TooFew { points }) => {
                let wrong = format!("{points} different points enclose no part of a field");
                book.fault(at, wrong, "give at least three in walking order, or \"at\" with \"radius_m\"");
            }
            Some(fault) => book.fault(at, fault.wrong(), fault.todo()),
            None => {}
        }
        return Some(PartShape::Ring(ring));
    }
    if !has_at && !has_radius {
        book.fault(part.below("ring"), "where the part lies is missing", EITHER);
        return None;
    }
    let middle = part.need("at", "the middle of the part").and_then(Node::position);
    let radius_m = part.need("radius_m", "the radius round the middle").and_then(Node::radius_m);
    Some(PartShape::Circle { middle: middle?, radius_m: radius_m? })
}

fn line<'a>(mut line: Object<'a>, book: &'a Book<'a>) -> Option<BuriedLine> {
    let at = line.at.clone();
    let id = line.id();
    let kind = line.need("kind", "what lies along the line");
    let kind = kind.and_then(|node| node.choice(Buried::CODES, Buried::ALL));
    let course = line.need("along", "the course of the line");
    let told = course.as_ref().and_then(|node| node.value.as_array()).map(Vec::len);
    let along: Vec<[f64; 2]> =
        course.map(Node::list).unwrap_or_default().into_iter().filter_map(Node::position).collect();
    let depth_mm = line.take("depth_mm").and_then(|node| node.mm(depth_of(kind)));
    let sort = line.take("sort").and_then(|node| node.choice(LineSort::CODES, LineSort::ALL));
    let unknown = line.rest();
    let all_good = told == Some(along.len());
    let read = BuriedLine { id, kind: kind?, along, depth_mm, sort, unknown };
    for fault in read.faults().into_iter().filter(|fault| all_good || fault.at != "along") {
        book.fault(below(&at, &fault.at), fault.wrong, fault.todo);
    }
    Some(read)
}

/// Depths that can be meant of what lies along a line.
const fn depth_of(kind: Option<Buried>) -> &'static length::Length {
    match kind {
        Some(Buried::MoleDrain) => &length::MOLE_DRAINS,
        Some(Buried::Drain) => &length::DRAINS,
        Some(Buried::Service) | None => &length::SERVICES,
    }
}

/// Reads `texture` and `texture_scheme`; also gives the scheme in force.
pub fn texture(object: &mut Object, default: TextureScheme) -> (Option<TextureNote>, TextureScheme) {
    let scheme = object.take("texture_scheme");
    let scheme =
        scheme.and_then(|node| node.choice(TextureScheme::CODES, TextureScheme::ALL)).unwrap_or(default);
    let note = object.take("texture").and_then(|node| {
        let word = node.value.as_str().unwrap_or_default();
        let group = TextureGroup::from_code(word).filter(|_| GROUPS.contains(&word)).map(TextureNote::Group);
        let note = group.or(Texture::parse(scheme, word).map(TextureNote::Class));
        if note.is_none() {
            let classes = TextureClass::ALL.iter().filter(|&&class| scheme.has(class));
            let words: Vec<_> = classes.map(|class| class.code()).chain(GROUPS).collect();
            if TextureClass::CODES.contains(&word) {
                let wrong = format!("`{word}` is not a class of the scheme {}", scheme.code());
                let todo = format!("set \"texture_scheme\", or use one of: {}", words.join(", "));
                node.fault(wrong, todo);
            } else {
                node.not_one_of(&words);
            }
        }
        note
    });
    (note, scheme)
}

/// The groups that may stand for a class.
const GROUPS: [&str; 3] =
    [TextureGroup::Light.code(), TextureGroup::Medium.code(), TextureGroup::Heavy.code()];

fn organic_matter(node: &Node) -> Option<OrganicMatter> {
    let Some(percent) = node.value.as_f64() else {
        let level = node.value.as_str().and_then(OrganicMatterLevel::from_code);
        if level.is_none() {
            let todo =
                format!("use one of: {}; or a number in percent", OrganicMatterLevel::CODES.join(", "));
            node.fault(format!("{} is no amount of organic matter", found(&node.value)), todo);
        }
        return level.map(OrganicMatter::Level);
    };
    if (0.0..=100.0).contains(&percent) {
        return Some(OrganicMatter::Percent(percent));
    }
    node.fault(format!("{percent} percent of organic matter cannot be"), "write percent by mass, 0 to 100");
    None
}
