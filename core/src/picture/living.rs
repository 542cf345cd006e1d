//! What lives and flows in a layer: roots, worm channels, rust and grey patches.

use super::layout::Area;
use super::shape::{Point, Role, Shape};
use crate::record::{ChannelsSeen, Patches, RootsSeen};

/// What is drawn into one layer; `None` = not looked, nothing is drawn.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Life {
    pub roots: Option<RootsSeen>,
    pub channels: Option<ChannelsSeen>,
    pub patches: Option<Patches>,
}

// Lengths in points, our judgement, by eye at phone width.
/// Wanted distance between two root strands.
const LANE: f64 = 30.0;
/// Half the width of a channel.
const BORE: f64 = 2.7;
/// How far a strand or channel that ends at a layer's top is drawn into the ground above.
const STUB: f64 = 12.0;
/// Height of one bend of a root or channel.
const BEND: f64 = 8.0;
/// Sideways offsets of the bends.
const WOBBLE: [f64; 8] = [0.6, -0.9, 1.0, -0.3, -1.0, 0.8, 0.2, -0.7];
/// Radius of the thickened end of a stopped root.
const CLUB: f64 = 2.6;

/// Draws the life of one layer. `above` is the layer above it, `room_above` how far up from the layer's top
/// there is something to draw into.
pub(super) fn life(here: Life, above: Life, area: Area, room_above: f64, shapes: &mut Vec<Shape>) {
    if let Some(seen) = here.patches {
        patches(seen, area, shapes);
    }
    if let Some(seen) = here.channels {
        channels(seen, above.channels, area, room_above, shapes);
    }
    if let Some(seen) = here.roots {
        roots(seen, above.roots, area, room_above, shapes);
    }
}

/// Where strands run down a face of this width; the same for every layer of it.
pub(super) fn lanes(area: Area) -> impl Iterator<Item = f64> {
    let count = (area.width() / LANE).round().max(2.0);
    (0..count as usize).map(move |lane| area.left + (lane as f64 + 0.5) * area.width() / count)
}

/// A path down from one depth to another, straight at both ends so that it joins what is above and below.
fn downward(x: f64, top: f64, bottom: f64, lane: usize, sway: f64) -> Vec<Point> {
    let count = ((bottom - top) / BEND).floor().max(1.0);
    let step = (bottom - top) / count;
    let last = count as usize;
    let bend = |index: usize| {
        if index < 2 || index + 2 > last { 0.0 } else { WOBBLE[(index + 3 * lane) % WOBBLE.len()] * sway }
    };
    (0..=last).map(|index| Point::new(x + bend(index), top + index as f64 * step)).collect()
}

fn roots(seen: RootsSeen, above: Option<RootsSeen>, area: Area, room_above: f64, shapes: &mut Vec<Shape>) {
    let from_above = match above {
        Some(RootsSeen::Through | RootsSeen::InCracks) => 0.0,
        _ => STUB.min(room_above),
    };
    // In cracks there are fewer; what follows below them goes on from the same ones.
    let few = seen == RootsSeen::InCracks || above == Some(RootsSeen::InCracks);
    let strands: Vec<(usize, f64)> = lanes(area)
        .enumerate()
        .filter(|(lane, _)| !few || seen == RootsSeen::Through || lane.is_multiple_of(2))
        .collect();
    let paths: Vec<Vec<Point>> = match seen {
        RootsSeen::NoneToJudge => return,
        RootsSeen::Through => {
            strands.iter().map(|&(lane, x)| downward(x, area.top, area.bottom, lane, 1.5)).collect()
        }
        RootsSeen::InCracks => strands.iter().map(|&(lane, x)| angular(x, area, lane)).collect(),
        RootsSeen::Sideways => {
            strands.iter().map(|&(lane, x)| turned(x, area, lane, area.top - from_above)).collect()
        }
        RootsSeen::Stopped => strands
            .iter()
            .map(|&(_, x)| {
                vec![Point::new(x, area.top - from_above.max(CLUB * 2.0)), Point::new(x, area.top - CLUB)]
            })
            .collect(),
    };
    // All casings first: a root must not cut the one it crosses.
    for role in [Role::Casing, Role::Root] {
        shapes.extend(paths.iter().map(|points| Shape::Polyline { role, points: points.clone() }));
    }
    if seen == RootsSeen::Stopped {
        shapes.extend(paths.iter().filter_map(|path| path.last()).map(|&centre| Shape::Circle {
            role: Role::Root,
            centre,
            radius: CLUB,
        }));
    }
}

/// Down by straight pieces and sharp corners, as along the faces of blocks.
fn angular(x: f64, area: Area, lane: usize) -> Vec<Point> {
    const SIDE: f64 = 8.0;
    const DROP: f64 = 13.0;
    let count = (area.height() / DROP).round().max(1.0);
    let step = area.height() / count;
    let mut side = if lane.is_multiple_of(4) { SIDE } else { -SIDE };
    let mut points = vec![Point::new(x, area.top)];
    let mut at = x;
    for corner in 0..count as usize {
        let y = area.top + corner as f64 * step;
        let next = if corner + 1 == count as usize { x } else { x + side };
        points.push(Point::new(at, y + step * 0.55));
        points.push(Point::new(next, y + step));
        at = next;
        side = -side;
    }
    points
}

/// In at the top, then along it.
fn turned(x: f64, area: Area, lane: usize, from: f64) -> Vec<Point> {
    let deep = (3.5 + 4.0 * (lane % 2) as f64).min(area.height() * 0.45);
    let y = area.top + deep;
    let run = LANE * 0.85;
    let end =
        if lane.is_multiple_of(2) { (x + run).min(area.right - 3.0) } else { (x - run).max(area.left + 3.0) };
    vec![Point::new(x, from), Point::new(x, y), Point::new(end, y)]
}

fn channels(
    seen: ChannelsSeen,
    above: Option<ChannelsSeen>,
    area: Area,
    room_above: f64,
    shapes: &mut Vec<Shape>,
) {
    let between: Vec<f64> = lanes(area).collect();
    let few =
        seen == ChannelsSeen::Some || (seen == ChannelsSeen::CutOff && above == Some(ChannelsSeen::Some));
    let places = between.windows(2).map(|pair| f64::midpoint(pair[0], pair[1])).enumerate();
    for (lane, x) in places.filter(|(lane, _)| !few || lane.is_multiple_of(2)) {
        match seen {
            ChannelsSeen::None => {}
            ChannelsSeen::Many | ChannelsSeen::Some => {
                let middle = downward(x, area.top, area.bottom, lane + 5, 2.6);
                let side = |by: f64| middle.iter().map(|at| Point::new(at.x + by, at.y)).collect::<Vec<_>>();
                let (left, right) = (side(-BORE), side(BORE));
                let hollow = left.iter().chain(right.iter().rev()).copied().collect();
                shapes.push(Shape::Polygon { role: Role::ChannelHollow, points: hollow });
                shapes.push(Shape::Polyline { role: Role::ChannelWall, points: left });
                shapes.push(Shape::Polyline { role: Role::ChannelWall, points: right });
            }
            ChannelsSeen::CutOff => {
                let from = area.top - STUB.min(room_above);
                // A blind end, its lowest point on the layer's top.
                let end = [(-BORE, 2.6), (-1.7, 0.9), (0.0, 0.5), (1.7, 0.9), (BORE, 2.6)];
                let mut points = vec![Point::new(x - BORE, from)];
                points.extend(end.map(|(right, up)| Point::new(x + right, area.top - up)));
                points.push(Point::new(x + BORE, from));
                shapes.push(Shape::Polygon { role: Role::ChannelHollow, points: points.clone() });
                shapes.push(Shape::Polyline { role: Role::ChannelWall, points });
            }
        }
    }
}

fn patches(seen: Patches, area: Area, shapes: &mut Vec<Shape>) {
    /// A blotch about the origin, its farthest points at a distance of 1.
    const BLOTCH: [(f64, f64); 10] = [
        (1.0, 0.0),
        (0.7, 0.5),
        (0.35, 0.55),
        (0.1, 0.9),
        (-0.5, 0.75),
        (-0.65, 0.3),
        (-1.0, 0.05),
        (-0.7, -0.55),
        (-0.1, -0.6),
        (0.55, -0.75),
    ];
    let most = area.width() * area.height() / 420.0;
    let count = match seen {
        Patches::None => 0.0,
        Patches::Few => (most / 4.0).clamp(2.0, 4.0),
        Patches::Clear => most.clamp(5.0, 16.0),
    };
    for index in 0..count as usize {
        let size = (4.2 + WOBBLE[index % WOBBLE.len()] * 1.2).min(area.height() / 2.0 - 0.5).max(0.5);
        // Multiples of irrational numbers fill a field evenly without a grid (Roberts's sequence, value from memory).
        let place = |factor: f64| (0.37 + (index + 1) as f64 * factor).fract();
        let x = area.left + 1.6 * size + place(0.754_877_7) * (area.width() - 3.2 * size).max(0.0);
        let y = area.top + size + place(0.569_840_3) * (area.height() - 2.0 * size).max(0.0);
        let turn = if index % 2 == 0 { 1.0 } else { -1.0 };
        let mut points: Vec<Point> = BLOTCH
            .iter()
            .map(|&(right, down)| Point::new(x + 1.5 * size * right * turn, y + size * down))
            .collect();
        let role = if index % 3 == 2 { Role::PatchGrey } else { Role::PatchRust };
        shapes.push(Shape::Polygon { role, points: points.clone() });
        points.push(points[0]);
        shapes.push(Shape::Polyline { role: Role::PatchEdge, points });
    }
}
