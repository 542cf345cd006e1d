//! What lives and flows in a layer: roots, worm channels, rust and grey patches.

use super::curve::smooth;
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
/// Wanted distance between two root strands, and how many there may be.
const LANE: f64 = 30.0;
const STRANDS: (f64, f64) = (2.0, 6.0);
/// Half the width of a channel.
const BORE: f64 = 2.7;
/// How far a strand or channel that ends at a layer's top is drawn into the ground above.
const STUB: f64 = 12.0;
/// Height of one bend of a root or channel.
const BEND: f64 = 9.0;
/// Sideways offsets of the bends.
const WOBBLE: [f64; 8] = [0.6, -0.9, 1.0, -0.3, -1.0, 0.8, 0.2, -0.7];
/// Radius of the thickened end of a stopped root.
const CLUB: f64 = 2.6;

/// Draws the life of one layer. `above` is the layer above it, `room_above` how far up from the layer's top
/// there is something to draw into. The strokes of the roots go into a list of their own, to be painted when all
/// layers are done: the band under a root must not cut the root it goes on from.
pub(super) fn life(
    here: Life,
    above: Life,
    area: Area,
    room_above: f64,
    shapes: &mut Vec<Shape>,
    strokes: &mut Vec<Shape>,
) {
    if let Some(seen) = here.patches {
        patches(seen, area, shapes);
    }
    if let Some(seen) = here.channels {
        channels(seen, above.channels, area, room_above, shapes);
    }
    if let Some(seen) = here.roots {
        let strands = strands(seen, above.roots, area, room_above);
        let lines = |role| strands.iter().map(move |points| Shape::Polyline { role, points: points.clone() });
        shapes.extend(lines(Role::Casing));
        strokes.extend(lines(Role::Root));
        if seen == RootsSeen::Stopped {
            let clubs = strands.iter().filter_map(|strand| strand.last());
            strokes.extend(clubs.map(|&centre| Shape::Circle { role: Role::Root, centre, radius: CLUB }));
        }
    }
}

/// Where strands run down a face of this width; the same for every layer of it.
pub(super) fn lanes(area: Area) -> impl Iterator<Item = f64> {
    let count = (area.width() / LANE).round().clamp(STRANDS.0, STRANDS.1);
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
    let bends: Vec<Point> =
        (0..=last).map(|index| Point::new(x + bend(index), top + index as f64 * step)).collect();
    smooth(&bends)
}

/// The roots of a layer, each as a line.
fn strands(seen: RootsSeen, above: Option<RootsSeen>, area: Area, room_above: f64) -> Vec<Vec<Point>> {
    let from_above = match above {
        Some(RootsSeen::Through | RootsSeen::InCracks) => 0.0,
        _ => STUB.min(room_above),
    };
    let strand = |(lane, x): (usize, f64)| match seen {
        RootsSeen::NoneToJudge => Vec::new(),
        RootsSeen::Through => downward(x, area.top, area.bottom, lane, 1.6),
        RootsSeen::InCracks => angular(x, area, lane),
        RootsSeen::Sideways => turned(x, area, lane, area.top - from_above),
        RootsSeen::Stopped => {
            vec![Point::new(x, area.top - from_above.max(CLUB * 2.0)), Point::new(x, area.top - CLUB)]
        }
    };
    lanes(area).enumerate().map(strand).filter(|strand| !strand.is_empty()).collect()
}

/// Down by straight pieces and sharp corners, as along the faces of blocks.
fn angular(x: f64, area: Area, lane: usize) -> Vec<Point> {
    /// Corners to the side of the strand's way, and the way down between them against the usual.
    const CORNERS: [(f64, f64); 7] =
        [(5.5, 1.3), (-3.0, 0.8), (-5.5, 1.2), (4.0, 1.0), (1.0, 0.7), (6.0, 1.2), (-4.5, 0.8)];
    const DROP: f64 = 10.0;
    let mut points = vec![Point::new(x, area.top)];
    let mut y = area.top;
    let mut index = 3 * lane;
    loop {
        let (side, drop) = CORNERS[index % CORNERS.len()];
        y += drop * DROP;
        if y > area.bottom - DROP / 2.0 {
            break;
        }
        points.push(Point::new(x + side, y));
        index += 1;
    }
    points.push(Point::new(x, area.bottom));
    points
}

/// In at the top, then along it.
fn turned(x: f64, area: Area, lane: usize, from: f64) -> Vec<Point> {
    let deep = (4.0 + 3.5 * (lane % 2) as f64).min(area.height() * 0.45);
    let y = area.top + deep;
    let end = (x + LANE * 0.72).min(area.right - 2.0);
    let round = 2.5_f64.min(deep);
    vec![
        Point::new(x, from),
        Point::new(x, y - round),
        Point::new(x + round * 0.3, y - round * 0.3),
        Point::new(x + round, y),
        Point::new(end, y),
    ]
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
                // Drawn a little into the ground above, so that no line shows where two layers meet.
                let mouth = [BORE, -BORE].map(|by| Point::new(x + by, area.top - 0.6_f64.min(room_above)));
                let hollow = left.iter().chain(right.iter().rev()).chain(&mouth).copied().collect();
                shapes.push(Shape::Polygon { role: Role::ChannelHollow, points: hollow });
                shapes.push(Shape::Polyline { role: Role::ChannelWall, points: left });
                shapes.push(Shape::Polyline { role: Role::ChannelWall, points: right });
            }
            ChannelsSeen::CutOff => {
                let joins = matches!(above, Some(ChannelsSeen::Many | ChannelsSeen::Some));
                let from = area.top - if joins { 4.0 } else { STUB }.min(room_above);
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

/// Rust and grey blotches.
pub(super) fn patches(seen: Patches, area: Area, shapes: &mut Vec<Shape>) {
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
    // Steps, as shares of the way across and down, that keep 2 to 16 blotches apart in layers thick and thin (found
    // by search; our judgement).
    const ACROSS: (f64, f64) = (0.435, 0.640);
    const DOWN: (f64, f64) = (0.759, 0.231);
    let most = area.width() * area.height() / 420.0;
    let count = match seen {
        Patches::None => 0.0,
        Patches::Few => (most / 4.0).clamp(2.0, 4.0),
        Patches::Clear => most.clamp(5.0, 16.0),
    };
    for index in 0..count as usize {
        let size = (4.2 + WOBBLE[index % WOBBLE.len()] * 1.2).min(area.height() / 2.0 - 0.5).max(0.5);
        let place = |(first, step): (f64, f64)| (first + (index + 1) as f64 * step).fract();
        let x = area.left + 1.6 * size + place(ACROSS) * (area.width() - 3.2 * size).max(0.0);
        let y = area.top + size + place(DOWN) * (area.height() - 2.0 * size).max(0.0);
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
