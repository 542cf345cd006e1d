//! From metres to points: which ground the plan shows, at which scale, and where.

use super::{PlanPicture, Spot};
use crate::picture::layout::Area;
use crate::picture::shape::Point;

/// How far beyond the field a pit may lie and still be shown, as a share of the field's longer side. Our judgement:
/// a pit with a wrong position must not make the field small.
const BEYOND: f64 = 0.15;
/// Least ground shown either way, metres.
const LEAST_M: f64 = 30.0;

/// A box on the ground, metres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    pub lo: Spot,
    pub hi: Spot,
}

impl Bounds {
    fn around(spots: impl Iterator<Item = Spot>) -> Option<Self> {
        let finite = spots.filter(|spot| spot.iter().all(|metres| metres.is_finite()));
        finite.fold(None, |bounds: Option<Self>, spot| {
            let Self { lo, hi } = bounds.unwrap_or(Self { lo: spot, hi: spot });
            Some(Self {
                lo: [lo[0].min(spot[0]), lo[1].min(spot[1])],
                hi: [hi[0].max(spot[0]), hi[1].max(spot[1])],
            })
        })
    }

    pub fn size(&self) -> [f64; 2] {
        [self.hi[0] - self.lo[0], self.hi[1] - self.lo[1]]
    }

    fn wider(self, by: f64) -> Self {
        Self { lo: self.lo.map(|metres| metres - by), hi: self.hi.map(|metres| metres + by) }
    }

    pub fn holds(&self, spot: Spot) -> bool {
        (0..2).all(|axis| (self.lo[axis]..=self.hi[axis]).contains(&spot[axis]))
    }
}

/// The field itself: its outline, or what has been marked and dug where there is none.
pub(super) fn extent(picture: &PlanPicture) -> Bounds {
    let marked = || {
        let parts = picture.parts.iter().flat_map(|part| part.ring.iter().copied());
        let pits = picture.pits.iter().filter_map(|pit| pit.at);
        let digs = picture.after_digs.iter().filter_map(|dig| dig.at);
        let lines = picture.tramlines.iter().flatten().copied();
        let corners = picture.corners.iter().copied();
        parts.chain(pits).chain(digs).chain(picture.next).chain(lines).chain(corners)
    };
    Bounds::around(picture.outline.iter().copied())
        .or_else(|| Bounds::around(marked()))
        .unwrap_or(Bounds { lo: [0.0; 2], hi: [0.0; 2] })
}

/// The ground on which things are shown.
pub(super) fn bounds(picture: &PlanPicture) -> Bounds {
    let field = extent(picture);
    let [east, north] = field.size();
    let wider = field.wider((east.max(north) * BEYOND).max(LEAST_M / 2.0));
    let Some(around) = around(picture) else { return wider };
    Bounds::around([wider.lo, wider.hi, around.lo, around.hi].into_iter()).unwrap_or(wider)
}

/// The ground that is to be shown in any case.
fn around(picture: &PlanPicture) -> Option<Bounds> {
    let (at, metres) = picture.around?;
    Some(Bounds { lo: at, hi: at }.wider(metres))
}

/// The part of the paper that holds the plan, with its scale.
pub(super) struct Frame {
    pub area: Area,
    middle: Spot,
    pub points_per_m: f64,
}

impl Frame {
    /// A frame for everything shown, `width` wide from `left` and no taller than `tallest`, with room for marks around.
    pub fn of(picture: &PlanPicture, left: f64, top: f64, width: f64, tallest: f64, least: f64) -> Self {
        let limit = bounds(picture);
        let pits = picture.pits.iter().filter_map(|pit| pit.at);
        let digs = picture.after_digs.iter().filter_map(|dig| dig.at);
        let parts = picture.parts.iter().flat_map(|part| part.ring.iter().copied());
        let shown = pits.chain(digs).chain(picture.next).chain(parts).filter(|&spot| limit.holds(spot));
        let field = extent(picture);
        let around = around(picture).into_iter().flat_map(|around| [around.lo, around.hi]);
        // A field of which nothing has a place is not shown at the middle of its plane.
        let placed = !picture.outline.is_empty() || picture.around.is_none();
        let field_ends = placed.then_some([field.lo, field.hi]).into_iter().flatten();
        let shown = Bounds::around(shown.chain(field_ends).chain(around)).unwrap_or(field);
        let [east, north] = shown.size();
        let (room, high) = (width - 2.0 * EDGE, tallest - 2.0 * EDGE);
        let points_per_m = (room / east.max(LEAST_M)).min(high / north.max(LEAST_M));
        let height = (north * points_per_m + 2.0 * EDGE).max(least);
        Self {
            area: Area { left, top, right: left + width, bottom: top + height },
            middle: [0, 1].map(|axis| f64::midpoint(shown.lo[axis], shown.hi[axis])),
            points_per_m,
        }
    }

    /// Where a place lies on the paper.
    pub fn point(&self, [east, north]: Spot) -> Point {
        let (x, y) =
            (f64::midpoint(self.area.left, self.area.right), f64::midpoint(self.area.top, self.area.bottom));
        Point::new(
            x + (east - self.middle[0]) * self.points_per_m,
            y - (north - self.middle[1]) * self.points_per_m,
        )
    }

    /// Where the middle of the plane, `[0, 0]`, lies on the paper.
    pub fn origin(&self) -> Point {
        self.point([0.0, 0.0])
    }

    /// A line on the paper: its pieces inside the frame.
    pub fn line(&self, spots: &[Spot]) -> Vec<Vec<Point>> {
        let mut pieces: Vec<Vec<Point>> = Vec::new();
        let told = |spot: &Spot| spot.iter().all(|metres| metres.is_finite());
        for pair in spots.windows(2).filter(|pair| pair.iter().all(told)) {
            let Some((from, to)) = clip(self.point(pair[0]), self.point(pair[1]), self.area) else {
                continue;
            };
            match pieces.last_mut() {
                Some(piece) if piece.last() == Some(&from) => piece.push(to),
                _ => pieces.push(vec![from, to]),
            }
        }
        pieces
    }
}

/// Room around the field for marks that stand on its edge, points.
const EDGE: f64 = 14.0;

/// The part of a straight line inside a box (Liang and Barsky 1984).
fn clip(from: Point, to: Point, area: Area) -> Option<(Point, Point)> {
    let (right, down) = (to.x - from.x, to.y - from.y);
    let sides = [
        (-right, from.x - area.left),
        (right, area.right - from.x),
        (-down, from.y - area.top),
        (down, area.bottom - from.y),
    ];
    let (mut start, mut end) = (0.0_f64, 1.0_f64);
    for (towards, room) in sides {
        if towards == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if towards < 0.0 {
            start = start.max(room / towards);
        } else {
            end = end.min(room / towards);
        }
    }
    let at = |share: f64| match share {
        0.0 => from,
        1.0 => to,
        _ => Point::new(from.x + right * share, from.y + down * share),
    };
    (start < end).then(|| (at(start), at(end)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOX: Area = Area { left: 0.0, top: 0.0, right: 10.0, bottom: 10.0 };

    #[test]
    fn a_line_is_cut_at_the_box() {
        let cut = |from: (f64, f64), to: (f64, f64)| {
            clip(Point::new(from.0, from.1), Point::new(to.0, to.1), BOX)
                .map(|(from, to)| [(from.x, from.y), (to.x, to.y)])
        };
        assert_eq!(cut((-5.0, 5.0), (15.0, 5.0)), Some([(0.0, 5.0), (10.0, 5.0)]));
        assert_eq!(cut((2.0, 2.0), (8.0, 4.0)), Some([(2.0, 2.0), (8.0, 4.0)]));
        assert_eq!(cut((-5.0, 12.0), (15.0, 12.0)), None);
        assert_eq!(cut((-4.0, 8.0), (4.0, 16.0)), None);
    }
}
