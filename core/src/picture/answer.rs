//! A small drawing for each answer that can be drawn, so that a question is answered by looking.
//!
//! Shapes of our own, in the strokes of the face. Coordinates are points in the drawing's own frame.

use super::layout::Area;
use super::living::{Life, life};
use super::shape::{Drawing, Point, Role, Shape};
use crate::reading::Clue;
use crate::record::{
    ChannelsSeen, ClodInWater, ComesAway, Patches, PoresSeen, Resistance, RollOutcome, RootsSeen,
};

/// Width of an answer's drawing, points.
pub const ANSWER_WIDTH: f64 = 96.0;
/// Height of an answer's drawing, points.
pub const ANSWER_HEIGHT: f64 = 64.0;

/// The drawing of an answer to a clue, by its index in [`Clue::answers`]; `None` for what cannot be drawn, such
/// as a smell, and for an index past the list.
pub fn answer(clue: Clue, answer: usize) -> Option<Drawing> {
    let mut sheet = Sheet::default();
    let known = answer < clue.answers().len();
    match clue {
        _ if !known => return None,
        Clue::ComesAway => sheet.comes_away(ComesAway::ALL[answer]),
        Clue::Resistance => sheet.resistance(Resistance::ALL[answer]),
        Clue::Pores => sheet.pores(PoresSeen::ALL[answer]),
        Clue::Channels => sheet.channels(ChannelsSeen::ALL[answer]),
        Clue::Roots => sheet.roots(RootsSeen::ALL[answer]),
        Clue::Patches => sheet.patches(Patches::ALL[answer]),
        Clue::ClodInWater => sheet.clod_in_water(ClodInWater::ALL[answer]),
        _ => return None,
    }
    Some(sheet.done())
}

/// The drawing of an outcome of the roll test.
pub fn roll(outcome: RollOutcome) -> Drawing {
    let mut sheet = Sheet::default();
    sheet.roll(outcome);
    sheet.done()
}

/// An irregular crumb about the origin, its farthest points at a distance of about 1.
const CRUMB: [(f64, f64); 9] = [
    (1.0, 0.1),
    (0.7, 0.7),
    (0.05, 0.95),
    (-0.65, 0.75),
    (-1.0, 0.05),
    (-0.75, -0.65),
    (-0.1, -1.0),
    (0.5, -0.75),
    (0.9, -0.45),
];

/// Pores at `(x, y, radius)`, spread so that any number of them, from the first on, lies even.
const PORES: [(f64, f64, f64); 22] = [
    (47.0, 31.0, 2.4),
    (28.0, 20.0, 1.9),
    (68.0, 42.0, 2.2),
    (66.0, 19.0, 1.8),
    (27.0, 44.0, 2.3),
    (48.0, 48.0, 1.7),
    (47.0, 15.0, 2.2),
    (18.0, 31.0, 1.7),
    (77.0, 30.0, 2.1),
    (36.0, 31.0, 1.6),
    (58.0, 31.0, 1.7),
    (38.0, 40.0, 2.0),
    (57.0, 39.0, 1.6),
    (37.0, 13.0, 1.6),
    (57.0, 22.0, 2.0),
    (19.0, 22.0, 1.6),
    (38.0, 51.0, 1.8),
    (58.0, 52.0, 2.0),
    (76.0, 20.0, 1.6),
    (37.0, 22.0, 1.8),
    (67.0, 31.0, 1.5),
    (27.0, 33.0, 1.8),
];

/// The face of a layer with ground above it, where roots and channels come from.
const ABOVE: Area = Area { left: 10.0, top: 5.0, right: 86.0, bottom: 23.0 };
const LAYER: Area = Area { left: 10.0, top: 23.0, right: 86.0, bottom: 59.0 };
const WHOLE: Area = Area { left: 10.0, top: 5.0, right: 86.0, bottom: 59.0 };

#[derive(Default)]
struct Sheet {
    shapes: Vec<Shape>,
}

impl Sheet {
    fn done(mut self) -> Drawing {
        let (width, height) = (ANSWER_WIDTH, ANSWER_HEIGHT);
        self.shapes.insert(0, Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width, height });
        Drawing { width, height, shapes: self.shapes }
    }

    /// A piece of soil: filled, with an edge.
    fn piece(&mut self, points: &[(f64, f64)]) {
        let mut points: Vec<Point> = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polygon { role: Role::SoilTight, points: points.clone() });
        points.extend(points.first().copied());
        self.shapes.push(Shape::Polyline { role: Role::Outline, points });
    }

    fn stroke(&mut self, role: Role, points: &[(f64, f64)]) {
        let points = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polyline { role, points });
    }

    /// Crumbs at `(x, y, size)`, each turned another way.
    fn crumbs(&mut self, crumbs: &[(f64, f64, f64)]) {
        for (index, &(x, y, size)) in crumbs.iter().enumerate() {
            let (flip, swap) = (if index % 2 == 0 { 1.0 } else { -1.0 }, index % 3 == 1);
            let points: Vec<(f64, f64)> = CRUMB
                .iter()
                .map(|&(right, down)| if swap { (down, right) } else { (right, down) })
                .map(|(right, down)| (x + size * right * flip, y + size * down * 0.9))
                .collect();
            self.piece(&points);
        }
    }

    /// Single grains at these places.
    fn grains(&mut self, grains: &[(f64, f64)]) {
        self.shapes.extend(grains.iter().map(|&(x, y)| Shape::Circle {
            role: Role::Outline,
            centre: Point::new(x, y),
            radius: 1.5,
        }));
    }

    /// A heap of grains on a base line, `rows` high.
    fn heap(&mut self, middle: f64, base: f64, rows: usize) {
        for row in 0..rows {
            let count = 2 * (rows - row);
            let y = base - 4.2 * row as f64;
            let grains: Vec<(f64, f64)> = (0..count)
                .map(|grain| {
                    let off = if (grain + row) % 3 == 0 { 0.8 } else { -0.4 };
                    (middle + (grain as f64 - (count as f64 - 1.0) / 2.0) * 5.2 + off, y + off)
                })
                .collect();
            self.grains(&grains);
        }
    }

    fn comes_away(&mut self, seen: ComesAway) {
        match seen {
            ComesAway::Crumbs => self.crumbs(&[
                (34.0, 20.0, 4.5),
                (47.0, 14.0, 5.5),
                (61.0, 19.0, 4.0),
                (25.0, 34.0, 5.5),
                (39.0, 33.0, 6.0),
                (53.0, 29.0, 5.0),
                (66.0, 33.0, 6.0),
                (17.0, 50.0, 5.0),
                (30.0, 49.0, 6.5),
                (45.0, 47.0, 5.5),
                (58.0, 48.0, 6.5),
                (72.0, 48.0, 5.0),
                (82.0, 52.0, 4.0),
            ]),
            ComesAway::RoundedLumps => {
                for (x, y, size) in
                    [(31.0, 20.0, 12.0), (59.0, 18.0, 11.0), (20.0, 45.0, 12.5), (47.0, 44.0, 14.0)]
                {
                    self.lump(x, y, size);
                }
                self.lump(76.0, 44.0, 13.0);
            }
            ComesAway::SharpBlocks => {
                self.piece(&[(13.0, 9.0), (39.0, 6.0), (42.0, 27.0), (17.0, 31.0)]);
                self.piece(&[(43.0, 6.0), (68.0, 9.0), (65.0, 30.0), (46.0, 27.0)]);
                self.piece(&[(72.0, 9.0), (86.0, 13.0), (83.0, 34.0), (69.0, 31.0)]);
                self.piece(&[(11.0, 36.0), (34.0, 32.0), (31.0, 57.0), (14.0, 55.0)]);
                self.piece(&[(38.0, 32.0), (61.0, 34.0), (58.0, 58.0), (35.0, 57.0)]);
                self.piece(&[(65.0, 35.0), (85.0, 39.0), (80.0, 57.0), (62.0, 58.0)]);
            }
            ComesAway::FlatPlates => {
                for (left, right, y) in [
                    (16.0, 62.0, 9.0),
                    (30.0, 84.0, 19.0),
                    (10.0, 58.0, 29.0),
                    (26.0, 86.0, 39.0),
                    (12.0, 70.0, 49.0),
                ] {
                    self.piece(&[
                        (left, y + 4.0),
                        (left + 5.0, y),
                        (right - 9.0, y - 0.5),
                        (right, y + 3.0),
                        (right - 6.0, y + 7.0),
                        (left + 8.0, y + 7.5),
                    ]);
                }
            }
            ComesAway::OneMass => {
                self.piece(&[
                    (10.0, 16.0),
                    (24.0, 7.0),
                    (52.0, 5.0),
                    (78.0, 8.0),
                    (87.0, 20.0),
                    (85.0, 46.0),
                    (74.0, 58.0),
                    (40.0, 59.0),
                    (16.0, 56.0),
                    (9.0, 40.0),
                ]);
                // The knife's marks: it leaves no other lines.
                self.stroke(Role::Boundary, &[(26.0, 17.0), (30.0, 26.0), (31.0, 36.0)]);
                self.stroke(Role::Boundary, &[(34.0, 16.0), (38.0, 26.0), (39.0, 38.0)]);
            }
            ComesAway::LooseGrains => self.heap(48.0, 56.0, 9),
        }
    }

    /// A lump with no edges: an evenly rounded outline.
    fn lump(&mut self, x: f64, y: f64, size: f64) {
        // A circle's points at steps of 22.5°, of which a quarter is written out.
        const QUARTER: [(f64, f64); 4] = [(1.0, 0.0), (0.924, 0.383), (0.707, 0.707), (0.383, 0.924)];
        let turned = |quarter: usize| {
            QUARTER.iter().map(move |&(right, down)| match quarter {
                0 => (right, down),
                1 => (-down, right),
                2 => (-right, -down),
                _ => (down, -right),
            })
        };
        let points: Vec<(f64, f64)> =
            (0..4).flat_map(turned).map(|(right, down)| (x + size * right, y + size * 0.88 * down)).collect();
        self.piece(&points);
    }

    fn ground(&mut self, area: Area) {
        let (left, top, width, height) = (area.left, area.top, area.width(), area.height());
        self.shapes.push(Shape::Rectangle { role: Role::SoilPlain, left, top, width, height });
    }

    fn frame(&mut self, area: Area) {
        let Area { left, top, right, bottom } = area;
        self.stroke(
            Role::Outline,
            &[(left, top), (right, top), (right, bottom), (left, bottom), (left, top)],
        );
    }

    /// A layer with what lives in it, and the ground above with what comes down from there.
    fn layer(&mut self, above: Life, here: Life) {
        self.ground(ABOVE);
        let (left, top, width, height) = (LAYER.left, LAYER.top, LAYER.width(), LAYER.height());
        self.shapes.push(Shape::Rectangle { role: Role::SoilFirm, left, top, width, height });
        self.stroke(Role::Boundary, &[(left, top), (LAYER.right, top)]);
        life(above, Life::default(), ABOVE, 0.0, &mut self.shapes);
        life(here, above, LAYER, ABOVE.height(), &mut self.shapes);
        self.frame(WHOLE);
    }

    fn roots(&mut self, seen: RootsSeen) {
        let with = |roots| Life { roots: Some(roots), ..Life::default() };
        let above = if seen == RootsSeen::NoneToJudge { seen } else { RootsSeen::Through };
        self.layer(with(above), with(seen));
    }

    fn channels(&mut self, seen: ChannelsSeen) {
        let with = |channels| Life { channels: Some(channels), ..Life::default() };
        let above = match seen {
            ChannelsSeen::CutOff => ChannelsSeen::Many,
            other => other,
        };
        self.layer(with(above), with(seen));
    }

    fn patches(&mut self, seen: Patches) {
        self.ground(WHOLE);
        life(Life { patches: Some(seen), ..Life::default() }, Life::default(), WHOLE, 0.0, &mut self.shapes);
        self.frame(WHOLE);
    }

    fn pores(&mut self, seen: PoresSeen) {
        self.piece(&[
            (11.0, 13.0),
            (34.0, 6.0),
            (63.0, 8.0),
            (85.0, 16.0),
            (82.0, 45.0),
            (66.0, 58.0),
            (30.0, 57.0),
            (13.0, 46.0),
        ]);
        let count = match seen {
            PoresSeen::Many => PORES.len(),
            PoresSeen::Some => 9,
            PoresSeen::Few => 3,
            PoresSeen::None => 0,
        };
        self.shapes.extend(PORES.iter().take(count).map(|&(x, y, radius)| Shape::Circle {
            role: Role::Outline,
            centre: Point::new(x, y),
            radius,
        }));
    }

    /// The knife against the face, going down as far as it does.
    fn resistance(&mut self, seen: Resistance) {
        let soil = Area { left: 10.0, top: 30.0, right: 86.0, bottom: 60.0 };
        self.ground(soil);
        self.frame(soil);
        let tip = match seen {
            Resistance::SlipsIn => 56.0,
            Resistance::FirmPush => 47.0,
            Resistance::HardPush => 38.0,
            Resistance::Stops => 30.0,
        };
        let blade =
            [(45.0, tip - 26.0), (51.0, tip - 26.0), (51.0, tip - 5.0), (48.0, tip), (45.0, tip - 5.0)];
        let points = blade.map(|(x, y)| Point::new(x, y)).to_vec();
        self.shapes.push(Shape::Polygon { role: Role::Paper, points });
        self.stroke(Role::Outline, &[blade[0], blade[1], blade[2], blade[3], blade[4], blade[0]]);
        let top = (tip - 44.0).max(2.0);
        let height = tip - 26.0 - top;
        self.shapes.push(Shape::Rectangle { role: Role::Outline, left: 44.0, top, width: 8.0, height });
        // Strokes beside the blade: none where it slips in, more the harder it goes.
        let strain = seen as usize;
        for mark in 0..strain {
            let off = 9.0 + 5.0 * mark as f64;
            let y = (tip - 3.0).max(soil.top + 1.0);
            for side in [-1.0, 1.0] {
                self.stroke(
                    Role::Boundary,
                    &[(48.0 + side * off, y + 1.0), (48.0 + side * (off - 2.5), y + 7.0)],
                );
            }
        }
    }

    fn clod_in_water(&mut self, seen: ClodInWater) {
        match seen {
            ClodInWater::Holds => self.crumbs(&[(48.0, 44.0, 12.0)]),
            ClodInWater::FallsApart => {
                self.crumbs(&[(39.0, 51.0, 4.5), (50.0, 49.0, 5.5), (59.0, 52.0, 3.5)]);
                self.grains(&[
                    (32.0, 53.0),
                    (65.0, 53.0),
                    (36.0, 42.0),
                    (45.0, 39.0),
                    (55.0, 40.0),
                    (62.0, 44.0),
                    (50.0, 32.0),
                    (41.0, 33.0),
                    (58.0, 33.0),
                ]);
            }
        }
        self.stroke(Role::Outline, &[(24.0, 8.0), (27.0, 57.0), (69.0, 57.0), (72.0, 8.0)]);
        self.stroke(
            Role::Boundary,
            &[(25.4, 24.0), (34.0, 22.6), (43.0, 24.6), (52.0, 22.6), (61.0, 24.6), (70.6, 23.0)],
        );
    }

    /// A piece of a rolled thread with broken ends.
    fn rolled(&mut self, left: f64, right: f64, y: f64, half: f64) {
        let sag = |x: f64| y + (x - 48.0) * (x - 48.0) / 900.0;
        let count = ((right - left) / 8.0).ceil().max(1.0);
        let along = |index: usize| left + (right - left) * index as f64 / count;
        let last = count as usize;
        let upper = (0..=last).map(|index| (along(index), sag(along(index)) - half));
        let lower = (0..=last).rev().map(|index| (along(index), sag(along(index)) + half));
        let (end, start) = ((right + half * 0.7, sag(right)), (left - half * 0.7, sag(left)));
        let points: Vec<(f64, f64)> = upper.chain([end]).chain(lower).chain([start]).collect();
        self.piece(&points);
    }

    fn roll(&mut self, outcome: RollOutcome) {
        match outcome {
            RollOutcome::Thread => self.rolled(9.0, 87.0, 28.0, 2.6),
            RollOutcome::ShortLengths => {
                for (left, right, y) in
                    [(9.0, 25.0, 29.0), (31.0, 45.0, 27.0), (51.0, 66.0, 29.0), (72.0, 86.0, 27.0)]
                {
                    self.rolled(left, right, y, 4.2);
                    let middle = f64::midpoint(left, right);
                    let top = y + (middle - 48.0) * (middle - 48.0) / 900.0 - 4.2;
                    self.stroke(
                        Role::Boundary,
                        &[(middle, top), (middle - 1.5, top + 2.5), (middle + 0.5, top + 4.5)],
                    );
                }
            }
            RollOutcome::Crumbles => self.crumbs(&[
                (22.0, 31.0, 6.5),
                (37.0, 29.0, 8.0),
                (54.0, 30.0, 6.5),
                (68.0, 31.0, 7.5),
                (80.0, 34.0, 3.5),
                (45.0, 19.0, 4.0),
                (29.0, 20.0, 3.0),
                (62.0, 19.0, 3.5),
                (13.0, 36.0, 2.5),
            ]),
            RollOutcome::WillNotHold => {
                self.heap(48.0, 37.0, 5);
                self.grains(&[(14.0, 36.0), (80.0, 35.0), (86.0, 38.0), (10.0, 39.0)]);
            }
        }
        // The hollow of the hand.
        self.stroke(
            Role::Ink,
            &[
                (4.0, 38.0),
                (14.0, 45.0),
                (30.0, 49.0),
                (48.0, 50.0),
                (66.0, 49.0),
                (82.0, 45.0),
                (92.0, 38.0),
            ],
        );
        self.stroke(Role::Boundary, &[(24.0, 54.0), (40.0, 57.0), (56.0, 57.0), (72.0, 54.0)]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Sign;

    #[test]
    fn every_sign_that_can_be_seen_has_a_drawing_for_each_answer() {
        for &sign in Sign::ALL {
            for index in 0..sign.answers().len() {
                assert_eq!(answer(sign.into(), index).is_some(), sign != Sign::Smell, "{sign:?} {index}");
            }
            assert_eq!(answer(sign.into(), sign.answers().len()), None);
        }
        assert_eq!(answer(Clue::Place, 0), None);
    }
}
