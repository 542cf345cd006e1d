//! The ground of the plan: field, headland strip, parts, tramlines, what lies buried; and the words written on it.

use super::frame::Frame;
use super::room::{Room, Side, around, middle, nearby};
use super::{PlanPicture, Spot, text_room};
use crate::picture::layout::Area;
use crate::picture::pieces::patterned;
use crate::picture::shape::{Point, Role, Shape};
use crate::record::{Buried, Zone};

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

/// Draws field, headland, parts and lines.
pub(super) fn draw(picture: &PlanPicture, frame: &Frame, shapes: &mut Vec<Shape>) {
    let ring = |spots: &[Spot]| {
        let points = spots.iter().map(|&spot| frame.point(spot));
        points.filter(|at| at.x.is_finite() && at.y.is_finite()).collect::<Vec<Point>>()
    };
    if picture.outline.len() > 2 {
        let role = if picture.headland.is_empty() { Role::Paper } else { Role::SoilPlain };
        shapes.push(Shape::Polygon { role, points: ring(&picture.outline) });
    }
    for inner in picture.headland.iter().filter(|inner| inner.len() > 2) {
        shapes.push(Shape::Polygon { role: Role::Paper, points: ring(inner) });
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
            shapes.push(Shape::Polygon { role: part_tone(part.zone), points });
        }
        for points in frame.line(&closed(&part.ring)) {
            shapes.push(Shape::Polyline { role: Role::Boundary, points });
        }
    }
    for points in frame.line(&closed(&picture.outline)) {
        shapes.push(Shape::Polyline { role: Role::Outline, points });
    }
    for line in &picture.buried {
        for points in frame.line(&line.along) {
            shapes.push(Shape::Polyline { role: Role::Casing, points: points.clone() });
            patterned(Role::Ink, &points, pattern(line.kind), shapes);
        }
    }
}

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
pub(super) fn part_labels(picture: &PlanPicture, frame: &Frame, size: f64, room: &mut Room) -> Vec<Label> {
    let mut labels = Vec::new();
    for part in picture.parts.iter().filter(|part| !part.label.is_empty()) {
        let points: Vec<Point> = part.ring.iter().map(|&spot| frame.point(spot)).collect();
        let Some(extent) = extent(&points).filter(|extent| within(frame.area, middle(*extent))) else {
            continue;
        };
        let (width, height) = text_room(&part.label, size, false);
        let size_of_label = (width + 4.0, height);
        let on_it = (width < extent.width()).then(|| around(middle(extent), size_of_label));
        let beside = [Side::Right, Side::Below, Side::Above, Side::Left];
        let beside = beside.map(|side| side.beside(extent, size_of_label));
        let farther = nearby(middle(extent), FARTHEST).map(|at| around(at, size_of_label));
        let free = on_it.into_iter().chain(beside).chain(farther).find(|&area| room.claim(area));
        labels.extend(free.map(|area| (area, part.label.clone())));
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
pub(super) fn zone_labels(picture: &PlanPicture, frame: &Frame, size: f64, room: &mut Room) -> Vec<Label> {
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
        let from = middle(frame.area);
        let places = std::iter::once(from).chain(nearby(from, frame.area.width() + frame.area.height()));
        let mut areas = places.map(|at| around(at, (width + 6.0, height)));
        let free = areas.find(|&area| room.is_free(area) && on_its_ground(wider(area)));
        if let Some(area) = free {
            room.take(area);
            labels.push((area, text.clone()));
        }
    }
    labels
}

/// A box with the space that keeps its text off an edge.
fn wider(area: Area) -> Area {
    Area {
        left: area.left - CLEAR,
        top: area.top - CLEAR,
        right: area.right + CLEAR,
        bottom: area.bottom + CLEAR,
    }
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

/// Whether a point lies in a ring: an upright line up from it crosses the ring an odd number of times.
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
