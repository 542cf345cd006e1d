//! A small drawing for each answer that can be drawn, so that a question is answered by looking.
//!
//! Shapes of our own, in the strokes of the face. Coordinates are points in the drawing's own frame.

use super::layout::Area;
use super::living::{Life, life, patches};
use super::shape::{Drawing, Point, Role, Shape};
use super::sheet::Sheet;
use crate::reading::Clue;
use crate::record::{
    ChannelsSeen, ClodInWater, ComesAway, Patches, PoresSeen, Resistance, RollOutcome, RootsSeen,
};

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

/// How the roll test is made: soil between a hand that holds still and one that goes to and fro over it.
pub fn how_to_roll() -> Drawing {
    let mut sheet = Sheet::default();
    sheet.hand();
    sheet.rolled(10.0, 85.0, 2.6);
    sheet.hand_above();
    sheet.there_and_back();
    sheet.done()
}

/// A lump without edges about the origin, about 1 in half width and half height.
const LUMP: [(f64, f64); 8] = [
    (1.0, 0.08),
    (0.72, 0.74),
    (0.0, 1.0),
    (-0.74, 0.72),
    (-1.0, -0.06),
    (-0.68, -0.76),
    (0.06, -0.96),
    (0.76, -0.68),
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

impl Sheet {
    fn comes_away(&mut self, seen: ComesAway) {
        match seen {
            ComesAway::Crumbs => self.crumbs(&[
                (33.0, 20.0, 5.5),
                (46.0, 13.0, 6.5),
                (60.0, 19.0, 5.5),
                (22.0, 33.0, 5.0),
                (36.0, 33.0, 7.0),
                (51.0, 29.0, 6.0),
                (65.0, 33.0, 7.0),
                (77.0, 38.0, 4.5),
                (14.0, 50.0, 5.0),
                (28.0, 49.0, 7.0),
                (43.0, 47.0, 6.0),
                (57.0, 49.0, 7.0),
                (71.0, 51.0, 5.5),
                (83.0, 52.0, 5.0),
            ]),
            ComesAway::RoundedLumps => {
                for (x, y, wide, high) in [
                    (31.0, 19.0, 13.0, 10.5),
                    (60.0, 17.0, 12.0, 11.0),
                    (18.0, 45.0, 11.5, 12.0),
                    (46.0, 43.0, 15.0, 13.0),
                    (76.0, 44.0, 13.5, 12.0),
                ] {
                    let at = |right: f64, down: f64| (x + wide * right, y + high * down);
                    self.round_piece(&LUMP.map(|(right, down)| at(right, down)));
                    self.curve(Role::Boundary, &[at(-0.55, 0.3), at(-0.25, 0.58), at(0.15, 0.64)]);
                }
            }
            ComesAway::SharpBlocks => self.blocks(),
            ComesAway::FlatPlates => {
                for (left, right, y) in [
                    (18.0, 71.0, 6.0),
                    (13.0, 50.0, 15.0),
                    (53.0, 84.0, 15.5),
                    (9.0, 77.0, 24.5),
                    (17.0, 60.0, 33.5),
                    (63.0, 88.0, 34.0),
                    (11.0, 82.0, 42.5),
                    (20.0, 74.0, 51.5),
                ] {
                    self.piece(&[
                        (left + 2.5, y + 0.5),
                        (left + 14.0, y),
                        (right - 8.0, y + 0.6),
                        (right - 1.5, y + 0.2),
                        (right, y + 3.6),
                        (right - 3.0, y + 6.6),
                        (left + 10.0, y + 7.0),
                        (left + 1.0, y + 6.2),
                        (left, y + 2.8),
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

    fn blocks(&mut self) {
        // Each an outline and the corner at which three of its faces meet.
        let blocks = [
            (
                [(11.0, 15.0), (26.0, 6.0), (41.0, 11.0), (39.0, 26.0), (24.0, 33.0), (12.0, 28.0)],
                (26.0, 18.0),
            ),
            (
                [(46.0, 10.0), (58.0, 5.0), (69.0, 9.0), (67.0, 25.0), (56.0, 31.0), (46.0, 24.0)],
                (57.0, 14.0),
            ),
            (
                [(73.0, 12.0), (83.0, 8.0), (89.0, 17.0), (86.0, 31.0), (77.0, 34.0), (71.0, 27.0)],
                (79.0, 19.0),
            ),
            (
                [(8.0, 41.0), (18.0, 36.0), (31.0, 39.0), (32.0, 52.0), (20.0, 59.0), (9.0, 54.0)],
                (19.0, 45.0),
            ),
            (
                [(36.0, 39.0), (50.0, 35.0), (64.0, 38.0), (63.0, 53.0), (48.0, 60.0), (37.0, 54.0)],
                (50.0, 44.0),
            ),
            (
                [(68.0, 41.0), (77.0, 38.0), (88.0, 42.0), (86.0, 53.0), (75.0, 59.0), (67.0, 52.0)],
                (77.0, 46.0),
            ),
        ];
        for (outline, corner) in blocks {
            self.piece(&outline);
            for end in [0, 2, 4] {
                self.stroke(Role::Boundary, &[corner, outline[end]]);
            }
        }
    }

    /// A layer with what lives in it, and the ground above with what comes down from there.
    fn layer(&mut self, above: Life, here: Life) {
        self.ground(ABOVE);
        let (left, top, width, height) = (LAYER.left, LAYER.top, LAYER.width(), LAYER.height());
        self.shapes.push(Shape::Rectangle { role: Role::SoilFirm, left, top, width, height });
        self.stroke(Role::Boundary, &[(left, top), (LAYER.right, top)]);
        let mut roots = Vec::new();
        life(above, Life::default(), ABOVE, 0.0, &mut self.shapes, &mut roots);
        life(here, above, LAYER, ABOVE.height(), &mut self.shapes, &mut roots);
        self.shapes.append(&mut roots);
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
        patches(seen, WHOLE, &mut self.shapes);
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

    /// What the blade does to the soil: it parts it, heaves it up, breaks it open, or bends on it.
    fn resistance(&mut self, seen: Resistance) {
        let soil = Area { left: 6.0, top: 31.0, right: 90.0, bottom: 62.0 };
        match seen {
            Resistance::SlipsIn => {
                self.ground(soil);
                self.frame(soil);
                self.knife(59.0);
            }
            Resistance::FirmPush => {
                self.soil(&[
                    (6.0, 33.0),
                    (22.0, 32.0),
                    (34.0, 24.0),
                    (41.0, 23.0),
                    (44.0, 31.0),
                    (52.0, 31.0),
                    (55.0, 23.0),
                    (62.0, 24.0),
                    (74.0, 32.0),
                    (90.0, 33.0),
                ]);
                for side in [-1.0, 1.0] {
                    let at = |right: f64, y: f64| (48.0 + side * right, y);
                    self.curve(Role::Boundary, &[at(9.0, 34.0), at(13.0, 42.0), at(9.0, 52.0)]);
                }
                self.knife(48.0);
            }
            Resistance::HardPush => {
                self.soil(&[
                    (6.0, 36.0),
                    (18.0, 35.0),
                    (25.0, 25.0),
                    (40.0, 29.0),
                    (48.0, 40.0),
                    (56.0, 29.0),
                    (71.0, 25.0),
                    (78.0, 35.0),
                    (90.0, 36.0),
                ]);
                for side in [-1.0, 1.0] {
                    let at = |right: f64, y: f64| (48.0 + side * right, y);
                    self.stroke(
                        Role::Outline,
                        &[at(0.0, 40.0), at(12.0, 42.0), at(20.0, 38.0), at(30.0, 36.0)],
                    );
                    self.stroke(Role::Outline, &[at(0.0, 40.0), at(10.0, 50.0), at(24.0, 53.0)]);
                }
                self.stroke(Role::Outline, &[(48.0, 40.0), (45.0, 48.0), (50.0, 55.0), (47.0, 61.0)]);
                self.crumbs(&[(12.0, 27.0, 4.0), (86.0, 27.0, 4.5), (30.0, 16.0, 3.5)]);
                self.knife(39.0);
            }
            Resistance::Stops => {
                let (left, top, width, height) = (soil.left, soil.top, soil.width(), soil.height());
                self.shapes.push(Shape::Rectangle { role: Role::Outline, left, top, width, height });
                // The blade bows, and leaves no more than a scratch.
                let edge = [(30.0, 30.0), (42.0, 25.0), (50.0, 16.0), (54.0, 8.0)];
                let back = [(60.0, 10.0), (56.0, 19.0), (47.0, 28.0)];
                let blade: Vec<(f64, f64)> = edge.into_iter().chain(back).collect();
                self.blade(&blade);
                self.handle(&[(53.0, 7.0), (61.0, 9.5), (64.0, 0.0), (56.0, 0.0)]);
            }
        }
    }

    /// Soil with its surface from left to right.
    fn soil(&mut self, surface: &[(f64, f64)]) {
        let mut edge = surface.to_vec();
        edge.extend([(90.0, 62.0), (6.0, 62.0)]);
        let mut points: Vec<Point> = edge.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polygon { role: Role::SoilPlain, points: points.clone() });
        points.extend(points.first().copied());
        self.shapes.push(Shape::Polyline { role: Role::Outline, points });
    }

    /// An upright knife, its point at a height; what of it would stand above the sheet is cut.
    fn knife(&mut self, tip: f64) {
        const BLADE: f64 = 30.0;
        const HALF: f64 = 4.5;
        let hilt = tip - BLADE;
        let (left, right) = (48.0 - HALF, 48.0 + HALF);
        self.blade(&[(left, hilt), (right, hilt), (right, tip - 8.0), (48.0, tip), (left, tip - 8.0)]);
        let (top, left, right) = ((hilt - 26.0).max(0.0), left - 2.0, right + 2.0);
        self.handle(&[(left, top), (right, top), (right, hilt), (left, hilt)]);
    }

    fn blade(&mut self, corners: &[(f64, f64)]) {
        let mut points: Vec<Point> = corners.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polygon { role: Role::Paper, points: points.clone() });
        points.extend(points.first().copied());
        self.shapes.push(Shape::Polyline { role: Role::Outline, points });
    }

    fn handle(&mut self, corners: &[(f64, f64)]) {
        let points = corners.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polygon { role: Role::Outline, points });
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
        self.curve(
            Role::Boundary,
            &[(25.4, 24.0), (34.0, 22.6), (43.0, 24.6), (52.0, 22.6), (61.0, 24.6), (70.6, 23.0)],
        );
    }

    fn roll(&mut self, outcome: RollOutcome) {
        self.hand();
        match outcome {
            RollOutcome::Thread => self.rolled(10.0, 85.0, 2.2),
            RollOutcome::ShortLengths => {
                for (left, right) in [(11.0, 24.0), (31.0, 42.0), (50.0, 63.0), (71.0, 81.0)] {
                    self.rolled(left, right, 3.2);
                }
            }
            RollOutcome::Crumbles => self.crumbs(&[
                (20.0, 38.0, 5.0),
                (32.0, 37.5, 6.5),
                (46.0, 39.5, 6.0),
                (59.0, 38.5, 7.0),
                (72.0, 38.0, 4.5),
                (39.0, 27.0, 4.5),
                (52.0, 26.5, 5.0),
                (10.0, 40.5, 2.5),
                (82.0, 37.0, 3.0),
            ]),
            RollOutcome::WillNotHold => {
                self.heap(46.0, 43.0, 5);
                self.grains(&[
                    (15.0, 41.5),
                    (76.0, 40.5),
                    (82.0, 38.0),
                    (9.0, 41.0),
                    (70.0, 41.5),
                    (21.0, 41.5),
                ]);
            }
        }
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
