//! Ground filled by its call: patterns that are told apart in black and white, and the tone under them.

use crate::picture::shape::{Point, Role, Shape};
use crate::record::Call;

/// What ground is filled with.
enum Pattern {
    /// Lines in these directions, degrees from the horizontal, so many points apart.
    Lines { along_deg: &'static [f64], apart: f64, role: Role },
    /// Dots so many points apart.
    Dots { apart: f64, radius: f64 },
}

/// The pattern of a call, our judgement by eye at phone width: what is left alone is bare, what is loosened is heaviest.
const fn pattern(call: Call) -> Option<Pattern> {
    Some(match call {
        Call::LeaveIt => return None,
        Call::RootsFirst => Pattern::Lines { along_deg: &[90.0], apart: 8.0, role: Role::HatchFirm },
        Call::Loosen => Pattern::Lines { along_deg: &[-45.0], apart: 6.5, role: Role::HatchTight },
        Call::Wait => Pattern::Lines { along_deg: &[45.0], apart: 13.0, role: Role::HatchFirm },
        Call::DrainFirst => Pattern::Lines { along_deg: &[0.0], apart: 5.0, role: Role::HatchFirm },
        Call::DigAgain => Pattern::Dots { apart: 9.0, radius: 1.1 },
        Call::AskSpecialist => {
            Pattern::Lines { along_deg: &[45.0, -45.0], apart: 11.0, role: Role::HatchFirm }
        }
    })
}

/// The tone under the pattern; `None` = not dug.
pub(super) const fn tone(call: Option<Call>) -> Role {
    match call {
        Some(Call::LeaveIt) => Role::Paper,
        Some(Call::Loosen) => Role::SoilFirm,
        Some(_) => Role::SoilOpen,
        None => Role::SoilPlain,
    }
}

/// Fills what lies within rings, a ring in a ring being a hole, with the pattern of a call.
pub(super) fn fill(rings: &[Vec<Point>], call: Option<Call>, shapes: &mut Vec<Shape>) {
    match call.and_then(pattern) {
        None => {}
        Some(Pattern::Lines { along_deg, apart, role }) => {
            for along_deg in along_deg {
                for (from, to) in stretches(rings, *along_deg, apart) {
                    shapes.push(Shape::Line { role, from, to });
                }
            }
        }
        Some(Pattern::Dots { apart, radius }) => {
            for (from, to) in stretches(rings, 0.0, apart) {
                // Every other row is shifted by half a step.
                let shift = (from.y / apart).round().rem_euclid(2.0) * apart / 2.0;
                let mut x = ((from.x - shift) / apart).ceil() * apart + shift;
                while x <= to.x {
                    let centre = Point::new(x, from.y);
                    shapes.push(Shape::Circle { role: Role::HatchOpen, centre, radius });
                    x += apart;
                }
            }
        }
    }
}

/// The stretches inside the rings of parallel lines through the whole drawing.
fn stretches(rings: &[Vec<Point>], along_deg: f64, apart: f64) -> Vec<(Point, Point)> {
    let (sin, cos) = along_deg.to_radians().sin_cos();
    // Turned so that the lines lie level, and back.
    let turned = |at: &Point| Point::new(at.x * cos + at.y * sin, at.y * cos - at.x * sin);
    let back = |x: f64, y: f64| Point::new(x * cos - y * sin, x * sin + y * cos);
    let rings: Vec<Vec<Point>> = rings.iter().map(|ring| ring.iter().map(turned).collect()).collect();
    let heights = || rings.iter().flatten().map(|at| at.y);
    let (lo, hi) = (heights().fold(f64::INFINITY, f64::min), heights().fold(f64::NEG_INFINITY, f64::max));
    let mut found = Vec::new();
    if !(lo.is_finite() && hi.is_finite()) {
        return found;
    }
    let mut y = (lo / apart).ceil() * apart;
    while y <= hi {
        let mut crossings: Vec<f64> = rings.iter().flat_map(|ring| crossings(ring, y)).collect();
        crate::order::sort_numbers(&mut crossings);
        for pair in crossings.chunks_exact(2) {
            found.push((back(pair[0], y), back(pair[1], y)));
        }
        y += apart;
    }
    found
}

/// Where a level line crosses the sides of a ring.
fn crossings(ring: &[Point], y: f64) -> Vec<f64> {
    let next = |index: usize| ring[(index + 1) % ring.len()];
    let sides = ring.iter().enumerate().map(|(index, from)| (*from, next(index)));
    let crossed = sides.filter(|(from, to)| (from.y > y) != (to.y > y));
    crossed.map(|(from, to)| from.x + (to.x - from.x) * (y - from.y) / (to.y - from.y)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(lo: f64, hi: f64) -> Vec<Point> {
        [(lo, lo), (hi, lo), (hi, hi), (lo, hi)].map(|(x, y)| Point::new(x, y)).to_vec()
    }

    #[test]
    fn a_ring_in_a_ring_is_a_hole() {
        let found = stretches(&[square(0.0, 30.0), square(10.0, 20.0)], 0.0, 15.0);
        let ends: Vec<_> = found.iter().map(|(from, to)| (from.x, to.x, from.y)).collect();
        assert_eq!(ends, [(0.0, 30.0, 0.0), (0.0, 10.0, 15.0), (20.0, 30.0, 15.0)]);
    }

    #[test]
    fn lines_at_a_slant_stay_inside() {
        for (from, to) in stretches(&[square(3.0, 40.0)], -45.0, 6.5) {
            for at in [from, to] {
                assert!((3.0 - 1e-9..=40.0 + 1e-9).contains(&at.x), "{at:?}");
                assert!((3.0 - 1e-9..=40.0 + 1e-9).contains(&at.y), "{at:?}");
            }
            assert!((to.y - from.y + to.x - from.x).abs() < 1e-9, "{from:?} {to:?}");
        }
    }
}
