//! Smooth lines as short straight pieces, so that nobody who draws has to know curves.

use super::shape::Point;

/// Pieces between two points given.
const PIECES: usize = 4;

/// A smooth line through these points (Catmull and Rom 1974, uniform).
pub(super) fn smooth(points: &[Point]) -> Vec<Point> {
    let at = |index: usize| points[index.min(points.len() - 1)];
    let mut line = Vec::with_capacity(points.len() * PIECES);
    for index in 0..points.len().saturating_sub(1) {
        let around = [at(index.saturating_sub(1)), at(index), at(index + 1), at(index + 2)];
        line.extend((0..PIECES).map(|piece| between(around, piece as f64 / PIECES as f64)));
    }
    line.extend(points.last().copied());
    line
}

/// A smooth closed outline through these points; the last one joins the first, which is not repeated.
pub(super) fn smooth_outline(points: &[Point]) -> Vec<Point> {
    let count = points.len();
    let at = |index: usize| points[index % count];
    (0..count)
        .flat_map(|index| {
            let around = [at(index + count - 1), at(index), at(index + 1), at(index + 2)];
            (0..PIECES).map(move |piece| between(around, piece as f64 / PIECES as f64))
        })
        .collect()
}

/// The point a share of the way from the second to the third of four.
fn between([before, from, to, after]: [Point; 4], share: f64) -> Point {
    let along = |before: f64, from: f64, to: f64, after: f64| {
        let (slope_from, slope_to) = ((to - before) / 2.0, (after - from) / 2.0);
        let (square, cube) = (share * share, share * share * share);
        (2.0 * cube - 3.0 * square + 1.0) * from
            + (cube - 2.0 * square + share) * slope_from
            + (3.0 * square - 2.0 * cube) * to
            + (cube - square) * slope_to
    };
    Point::new(along(before.x, from.x, to.x, after.x), along(before.y, from.y, to.y, after.y))
}
