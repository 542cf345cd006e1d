//! The ground of the plan: field, headland strip, parts, tramlines, what lies buried; and the words written on it.

use super::fill::{fill, tone};
use super::frame::Frame;
use super::room::{Room, Side, around, middle, nearby};
use super::{PlanPicture, Spot, text_room};
use crate::picture::icon::{ICON_SIDE, Icon, icon};
use crate::picture::layout::Area;
use crate::picture::pieces::{moved, patterned};
use crate::picture::shape::{Point, Role, Shape};
use crate::record::{Buried, Call, Zone};

/// Dashes and gaps of each kind of line, points: long, dotted, long and dotted by turns.
pub(super) const fn pattern(kind: Buried) -> &'static [f64] {
    match kind {
        Buried::Drain => &[9.0, 5.0],
        Buried::MoleDrain => &[1.0, 4.5],
        Buried::Service => &[12.0, 4.5, 1.0, 4.5],
    }
}

/// Dashes of the inner edge of the headland.
pub(super) const HEADLAND_EDGE: [f64; 2] = [4.0, 4.0];

/// A text with its room.
pub(super) type Label = (Area, String);

/// A text with its room and the sign of a call before it.
pub(super) struct Signed {
    area: Area,
    text: String,
    sign: Option<Call>,
}

/// Draws field, headland, parts and lines.
pub(super) fn draw(picture: &PlanPicture, frame: &Frame, shapes: &mut Vec<Shape>) {
    let ring = |spots: &[Spot]| {
        let points = spots.iter().map(|&spot| frame.point(spot));
        points.filter(|at| at.x.is_finite() && at.y.is_finite()).collect::<Vec<Point>>()
    };
    let filled = picture.calls.is_some();
    let outer = ring(&picture.outline);
    let inner: Vec<Vec<Point>> =
        picture.headland.iter().filter(|inner| inner.len() > 2).map(|inner| ring(inner)).collect();
    let inside = picture.call(Zone::Open).or_else(|| picture.call(Zone::Whole));
    if outer.len() > 2 {
        let role = match (filled, inner.is_empty()) {
            (false, true) => Role::Paper,
            (false, false) => Role::SoilPlain,
            (true, true) => tone(inside),
            (true, false) => tone(picture.call(Zone::Headland)),
        };
        shapes.push(Shape::Polygon { role, points: outer.clone() });
    }
    for inner in &inner {
        let role = if filled { tone(inside) } else { Role::Paper };
        shapes.push(Shape::Polygon { role, points: inner.clone() });
    }
    if inner.is_empty() {
        fill(std::slice::from_ref(&outer), inside, shapes);
    } else {
        let strip: Vec<Vec<Point>> = std::iter::once(&outer).chain(&inner).cloned().collect();
        fill(&strip, picture.call(Zone::Headland), shapes);
        fill(&inner, inside, shapes);
    }
    for tramline in &picture.tramlines {
        for points in frame.line(tramline) {
            shapes.push(Shape::Polyline { role: Role::FaintInk, points });
        }
    }
    for inner in &picture.headland {
        for points in frame.line(&closed(inner)) {
            patterned(Role::Boundary, &points, &HEADLAND_EDGE, shapes);
        }
    }
    for part in picture.parts.iter().filter(|part| part.ring.len() > 2) {
        let points = ring(&part.ring);
        if points.iter().all(|at| within(frame.area, *at)) {
            let call = picture.call(part.zone);
            let role = if filled { tone(call) } else { part_tone(part.zone) };
            shapes.push(Shape::Polygon { role, points: points.clone() });
            fill(&[points], call, shapes);
        }
        for points in frame.line(&closed(&part.ring)) {
            shapes.push(Shape::Polyline { role: Role::Boundary, points });
        }
    }
    for points in frame.line(&closed(&picture.outline)) {
        shapes.push(Shape::Polyline { role: Role::Outline, points });
    }
    for points in frame.line(&picture.corners) {
        shapes.push(Shape::Polyline { role: Role::Outline, points });
    }
    for centre in picture.corners.iter().map(|&corner| frame.point(corner)) {
        if within(frame.area, centre) {
            shapes.push(Shape::Circle { role: Role::Ink, centre, radius: CORNER });
        }
    }
    for line in &picture.buried {
        for points in frame.line(&line.along) {
            shapes.push(Shape::Polyline { role: Role::Casing, points: points.clone() });
            patterned(Role::Ink, &points, pattern(line.kind), shapes);
        }
    }
}

/// Radius of a corner's dot, points.
const CORNER: f64 = 4.0;

/// Tone of a marked part: another than that of the headland it often lies on.
pub(super) const fn part_tone(zone: Zone) -> Role {
    match zone {
        Zone::Gateway => Role::SoilFirm,
        _ => Role::SoilOpen,
    }
}

fn closed(ring: &[Spot]) -> Vec<Spot> {
    ring.iter().chain(ring.first()).copied().collect()
}

fn within(area: Area, at: Point) -> bool {
    (area.left..=area.right).contains(&at.x) && (area.top..=area.bottom).contains(&at.y)
}

/// A letter on every line of what lies buried, two on long ones; lines of a kind that lie close share one.
pub(super) fn letters(picture: &PlanPicture, frame: &Frame, size: f64, room: &mut Room) -> Vec<Label> {
    let letter = |kind: Buried| picture.words.letters.iter().find(|(of, _)| *of == kind);
    let mut labels: Vec<Label> = Vec::new();
    for line in &picture.buried {
        let Some((_, text)) = letter(line.kind) else { continue };
        let (width, height) = text_room(text, size, true);
        for piece in frame.line(&line.along) {
            let length = length(&piece);
            let wanted = if length > LONG { 2 } else { 1 };
            // From the first and the third quarter, or from the middle, outwards.
            for index in 0..wanted {
                let share = (f64::from(index) + 0.5) / f64::from(wanted);
                let free =
                    tried(share).map(|share| around(along(&piece, share * length), (width + 2.0, height)));
                let Some(area) = free.into_iter().find(|&area| room.is_free(area)) else { continue };
                let near = |(other, told): &Label| told == text && distance(*other, area) < SHARED;
                if !labels.iter().any(near) {
                    room.take(area);
                    labels.push((area, text.clone()));
                }
            }
        }
    }
    labels
}

/// Keeps the texts that come after this off the lines.
pub(super) fn keep_off(picture: &PlanPicture, frame: &Frame, room: &mut Room) {
    /// Between the places kept along a line, points.
    const STEP: f64 = 5.0;
    for points in picture.buried.iter().flat_map(|line| frame.line(&line.along)) {
        let steps = (length(&points) / STEP).ceil() as u32;
        for step in 0..=steps {
            room.take(around(along(&points, f64::from(step) * STEP), (STEP, STEP)));
        }
    }
}

/// A line longer than this has two letters, points.
const LONG: f64 = 240.0;

/// Lines nearer than this share a letter, points.
const SHARED: f64 = 45.0;

fn distance(one: Area, other: Area) -> f64 {
    let (from, to) = (middle(one), middle(other));
    (to.x - from.x).hypot(to.y - from.y)
}

/// Shares of a line's length at which its letter is tried.
fn tried(share: f64) -> [f64; 19] {
    let mut shares = [0.0; 19];
    for (index, slot) in shares.iter_mut().enumerate() {
        let step = 0.05 * index.div_ceil(2) as f64;
        let way = if index % 2 == 0 { step } else { -step };
        *slot = (share + way).clamp(0.02, 0.98);
    }
    shares
}

fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|pair| (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y)).sum()
}

fn along(points: &[Point], mut far: f64) -> Point {
    for pair in points.windows(2) {
        let step = length(pair);
        if far <= step && step > 0.0 {
            let share = far / step;
            let between = |from: f64, to: f64| from + (to - from) * share;
            return Point::new(between(pair[0].x, pair[1].x), between(pair[0].y, pair[1].y));
        }
        far -= step;
    }
    points.last().copied().unwrap_or(Point::new(0.0, 0.0))
}

/// The label of each part, on it or as near as there is room.
pub(super) fn part_labels(picture: &PlanPicture, frame: &Frame, size: f64, room: &mut Room) -> Vec<Signed> {
    let mut labels = Vec::new();
    for part in picture.parts.iter().filter(|part| !part.label.is_empty()) {
        let points: Vec<Point> = part.ring.iter().map(|&spot| frame.point(spot)).collect();
        let Some(extent) = extent(&points).filter(|extent| within(frame.area, middle(*extent))) else {
            continue;
        };
        let (width, height) = text_room(&part.label, size, false);
        let sign = picture.call(part.zone);
        let width = width + sign_room(sign, size);
        let size_of_label = (width + 4.0, height);
        let on_it = (width < extent.width()).then(|| around(middle(extent), size_of_label));
        let beside = [Side::Right, Side::Below, Side::Above, Side::Left];
        let beside = beside.map(|side| side.beside(extent, size_of_label));
        let farther = nearby(middle(extent), FARTHEST).map(|at| around(at, size_of_label));
        let free = on_it.into_iter().chain(beside).chain(farther).find(|&area| room.claim(area));
        labels.extend(free.map(|area| Signed { area, text: part.label.clone(), sign }));
    }
    labels
}

/// How far from its part a label may stand, points.
const FARTHEST: f64 = 84.0;

fn extent(points: &[Point]) -> Option<Area> {
    points.iter().fold(None, |extent: Option<Area>, at| {
        let Area { left, top, right, bottom } =
            extent.unwrap_or(Area { left: at.x, top: at.y, right: at.x, bottom: at.y });
        Some(Area {
            left: left.min(at.x),
            top: top.min(at.y),
            right: right.max(at.x),
            bottom: bottom.max(at.y),
        })
    })
}

/// The words of the zones, each wholly on its own ground and where nothing else stands; left out where there is no
/// such place.
pub(super) fn zone_labels(picture: &PlanPicture, frame: &Frame, size: f64, room: &mut Room) -> Vec<Signed> {
    let rings = |rings: &[Vec<Spot>]| -> Vec<Vec<Point>> {
        rings.iter().map(|ring| ring.iter().map(|&spot| frame.point(spot)).collect()).collect()
    };
    let outline = rings(std::slice::from_ref(&picture.outline));
    let (inner, parts) = (rings(&picture.headland), picture.parts.iter().map(|part| part.ring.clone()));
    let parts = rings(&parts.collect::<Vec<_>>());
    let inside = |rings: &[Vec<Point>], area: Area| rings.iter().any(|ring| holds(ring, area));
    let clear_of = |rings: &[Vec<Point>], area: Area| !rings.iter().any(|ring| touches(ring, area));
    let mut labels = Vec::new();
    for (zone, text) in &picture.words.zones {
        let (width, height) = text_room(text, size, true);
        let on_its_ground = |area: Area| match zone {
            Zone::Headland if inner.is_empty() => false,
            Zone::Headland => inside(&outline, area) && clear_of(&inner, area),
            Zone::Open if !inner.is_empty() => inside(&inner, area) && clear_of(&parts, area),
            Zone::Open | Zone::Whole => inside(&outline, area) && clear_of(&parts, area),
            Zone::Wheelings | Zone::Gateway | Zone::Patch => false,
        };
        let sign = picture.call(*zone);
        let from = middle(frame.area);
        let free = |size: (f64, f64), clear: f64| {
            let places = std::iter::once(from).chain(nearby(from, frame.area.width() + frame.area.height()));
            let mut areas = places.map(|at| around(at, size));
            areas.find(|&area| room.is_free(area) && on_its_ground(wider(area, clear)))
        };
        let worded = free((width + sign_room(sign, size) + 6.0, height), CLEAR);
        let worded = worded.map(|area| Signed { area, text: text.clone(), sign });
        // On a strip too narrow for the word its sign stands alone.
        let alone = || {
            let area = free((size * SIGN, size * SIGN), 0.0)?;
            Some(Signed { area, text: String::new(), sign: Some(sign?) })
        };
        if let Some(label) = worded.or_else(alone) {
            room.take(label.area);
            labels.push(label);
        }
    }
    labels
}

/// Room for the sign of a call before its word.
fn sign_room(sign: Option<Call>, size: f64) -> f64 {
    if sign.is_some() { size * SIGN + SIGN_GAP } else { 0.0 }
}

/// Height of a sign against that of its word.
const SIGN: f64 = 1.2;

/// Between a sign and its word, points.
const SIGN_GAP: f64 = 3.0;

/// Draws words with their signs on the ground, each on a light plate.
pub(super) fn draw_signed(labels: &[Signed], size: f64, strong: bool, shapes: &mut Vec<Shape>) {
    for Signed { area, text, sign } in labels {
        shapes.push(crate::picture::pieces::rectangle(Role::Casing, *area));
        let (width, _) = text_room(text, size, strong);
        let sign_side = size * SIGN;
        let room = if text.is_empty() { sign_side } else { sign_room(*sign, size) };
        let left = middle(*area).x - f64::midpoint(width, room);
        if let Some(call) = sign {
            let top = middle(*area).y - sign_side / 2.0;
            let sign = icon(Icon::from(*call)).shapes.into_iter();
            shapes.extend(sign.map(|shape| moved(shape, Point::new(left, top), sign_side / ICON_SIDE)));
        }
        if !text.is_empty() {
            shapes.push(super::text(Role::Ink, left + room, area.top, size, strong, text));
        }
    }
}

/// A box with the space that keeps its text off an edge.
fn wider(area: Area, by: f64) -> Area {
    Area { left: area.left - by, top: area.top - by, right: area.right + by, bottom: area.bottom + by }
}

/// Between the text of a zone and the zone's edge, points.
const CLEAR: f64 = 3.0;

/// Points of a box close enough together that no ring of a field slips between them.
fn sampled(area: Area) -> impl Iterator<Item = Point> {
    let across = (area.width() / 6.0).ceil().max(1.0) as u32;
    let down = (area.height() / 6.0).ceil().max(1.0) as u32;
    (0..=across).flat_map(move |column| {
        (0..=down).map(move |row| {
            let (x, y) = (f64::from(column) / f64::from(across), f64::from(row) / f64::from(down));
            Point::new(area.left + x * area.width(), area.top + y * area.height())
        })
    })
}

fn holds(ring: &[Point], area: Area) -> bool {
    sampled(area).all(|at| contains(ring, at))
}

fn touches(ring: &[Point], area: Area) -> bool {
    sampled(area).any(|at| contains(ring, at))
}

/// Returns whether a point lies in a ring: an upright line up from it crosses the ring an odd number of times.
fn contains(ring: &[Point], at: Point) -> bool {
    let last = ring.len().wrapping_sub(1);
    let sides =
        ring.iter().enumerate().map(|(index, to)| (ring[if index == 0 { last } else { index - 1 }], *to));
    sides
        .filter(|(from, to)| {
            (from.x > at.x) != (to.x > at.x)
                && at.y > from.y + (to.y - from.y) * (at.x - from.x) / (to.x - from.x)
        })
        .count()
        % 2
        == 1
}

/// Draws words on the ground, each on a light plate.
pub(super) fn draw_labels(labels: &[Label], role: Role, size: f64, strong: bool, shapes: &mut Vec<Shape>) {
    for (area, text) in labels {
        let (width, _) = text_room(text, size, strong);
        shapes.push(crate::picture::pieces::rectangle(Role::Casing, *area));
        shapes.push(super::text(role, middle(*area).x - width / 2.0, area.top, size, strong, text));
    }
}
