//! What marks on a photo give: which depth a place in the picture shows, and where a depth lies in it.

use super::PhotoSize;
use super::plane::{Map, dot};
use crate::picture::Point;
use crate::record::{Photo, PhotoMark};

/// Two marks of one plumb line lie at least this share of the picture's shorter side apart: a thumb misses by a
/// fiftieth of it. Our judgement.
const LEAST_APART: f64 = 0.1;
/// The corners that four marks make hold at least this share of the picture each, as triangles. Our judgement.
const LEAST_CORNER: f64 = 0.005;
/// No depth is read beyond this; no pit is dug deeper by hand. Our judgement.
const DEEPEST_MM: f64 = 3_000.0;
/// A line of equal depth ends where the plane runs away from the camera to this share of its nearness at the marks.
/// Our judgement.
const FARTHEST: f64 = 0.05;

/// A photo whose depths are known.
#[derive(Debug, Clone, PartialEq)]
pub struct Scale {
    size: [f64; 2],
    /// From `[across, depth in mm]` on the face to the drawing; `across` is 0 along the first two marks, and counts in mm
    /// with two marks, in distances to the other plumb line with four.
    to_picture: Map,
    to_face: Map,
    tilt_deg: f64,
    pixel_mm: f64,
}

/// Why marks give no scale. Marks count from 0 in the order touched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ScaleFault {
    /// Neither two nor four.
    Count {
        /// How many there are.
        marks: usize,
    },
    /// The picture has no size, or a mark is not in it.
    Outside,
    /// Two marks of one plumb line show the same depth.
    SameDepth {
        /// The first of them.
        mark: usize,
    },
    /// Two marks of one plumb line lie too close together.
    TooClose {
        /// The first of them.
        mark: usize,
    },
    /// Three of four marks lie on one line, or nearly.
    OnOneLine,
    /// Four marks that are not two plumb lines beside each other.
    Crossed,
}

impl Scale {
    /// From two marks along a tape, or two along each of two plumb lines, the deeper one of a line first or last.
    ///
    /// # Errors
    /// What is wrong with the marks.
    pub fn of(size: PhotoSize, marks: &[PhotoMark]) -> Result<Self, ScaleFault> {
        if !matches!(marks.len(), 2 | 4) {
            return Err(ScaleFault::Count { marks: marks.len() });
        }
        let outside = |mark: &PhotoMark| mark.from_left.max(mark.from_top) > PhotoMark::WHOLE;
        if size.width_px == 0 || size.height_px == 0 || marks.iter().any(outside) {
            return Err(ScaleFault::Outside);
        }
        let [width, height] = size.drawn();
        let mut touched = [([0.0; 2], 0.0); 4];
        for (place, mark) in touched.iter_mut().zip(marks) {
            let share = |part: u32| f64::from(part) / f64::from(PhotoMark::WHOLE);
            let at = [share(mark.from_left) * width, share(mark.from_top) * height];
            *place = (at, f64::from(mark.depth_mm));
        }
        for (line, pair) in touched[..marks.len()].chunks_exact_mut(2).enumerate() {
            let mark = line * 2;
            if pair[0].1.total_cmp(&pair[1].1).is_eq() {
                return Err(ScaleFault::SameDepth { mark });
            }
            if distance(pair[0].0, pair[1].0) < LEAST_APART * width.min(height) {
                return Err(ScaleFault::TooClose { mark });
            }
            if pair[0].1 > pair[1].1 {
                pair.swap(0, 1);
            }
        }
        let to_picture = if marks.len() == 2 { squarely(touched) } else { seen(touched, width * height)? };
        let to_face = to_picture.back().ok_or(ScaleFault::OnOneLine)?;
        let [(upper, upper_mm), (lower, lower_mm), ..] = touched;
        let drawn_mm = (lower_mm - upper_mm) / distance(upper, lower);
        Ok(Self {
            size: [width, height],
            to_picture,
            to_face,
            tilt_deg: (upper[0] - lower[0]).atan2(lower[1] - upper[1]).to_degrees(),
            pixel_mm: drawn_mm * width / f64::from(size.width_px),
        })
    }

    /// How far the first plumb line stands from upright in the picture, degrees clockwise seen from its upper end, -180 to
    /// 180; 0 where depth grows straight down.
    pub fn tilt_deg(&self) -> f64 {
        self.tilt_deg
    }

    /// Millimetres of depth a pixel along the first plumb line, in the mean between its marks.
    pub fn pixel_mm(&self) -> f64 {
        self.pixel_mm
    }

    /// Width and height of a drawing over the photo, points.
    pub(super) fn drawn(&self) -> [f64; 2] {
        self.size
    }

    /// The depth that a place in the picture shows, from its left and upper edge in ten-thousandths of its width and
    /// height. `None` above the surface, deeper than any pit, and where the plane of the face does not reach.
    pub fn depth_mm(&self, from_left: u32, from_top: u32) -> Option<u32> {
        let share = |part: u32| f64::from(part) / f64::from(PhotoMark::WHOLE);
        let depth =
            self.depth_at(Point::new(share(from_left) * self.size[0], share(from_top) * self.size[1]))?;
        // Half a millimetre above the surface is the surface.
        (-0.5..=DEEPEST_MM).contains(&depth).then(|| depth.round().max(0.0) as u32)
    }

    /// The depth under a place of the drawing, negative above the surface; `None` beyond the face's horizon.
    pub(super) fn depth_at(&self, at: Point) -> Option<f64> {
        let [_, depth, before] = self.to_face.of([at.x, at.y, 1.0]);
        (before > 0.0).then(|| depth / before)
    }

    /// Where a depth lies along the first plumb line; `None` where the camera did not see it.
    pub(super) fn on_tape(&self, depth_mm: f64) -> Option<Point> {
        let [x, y, before] = self.to_picture.of([0.0, depth_mm, 1.0]);
        let at = Point::new(x / before, y / before);
        let inside = (0.0..=self.size[0]).contains(&at.x) && (0.0..=self.size[1]).contains(&at.y);
        (before > 0.0 && inside).then_some(at)
    }

    /// The line of a depth across the drawing, its left end first; `None` where the picture does not show it.
    pub(super) fn line_of(&self, depth_mm: f64) -> Option<[Point; 2]> {
        let Map([_, depth, before]) = self.to_face;
        // All places with this depth: `depth - depth_mm * before = 0`.
        let line: [f64; 3] = std::array::from_fn(|at| depth[at] - depth_mm * before[at]);
        let [width, height] = self.size;
        let upright = [0.0, width].map(|x| Point::new(x, -(line[0] * x + line[2]) / line[1]));
        let level = [0.0, height].map(|y| Point::new(-(line[1] * y + line[2]) / line[0], y));
        let slack = 1e-9 * width.max(height);
        let inside = |at: &Point| {
            (-slack..=width + slack).contains(&at.x) && (-slack..=height + slack).contains(&at.y)
        };
        let ends: Vec<Point> = upright.into_iter().chain(level).filter(inside).collect();
        let apart = |one: &Point, other: &Point| distance([one.x, one.y], [other.x, other.y]);
        let one = *ends.first()?;
        let other = *ends.iter().max_by(|near, far| apart(&one, near).total_cmp(&apart(&one, far)))?;
        let nearness = |at: Point| dot(before, [at.x, at.y, 1.0]);
        let (here, there) = (nearness(one) - FARTHEST, nearness(other) - FARTHEST);
        let between =
            |share: f64| Point::new(one.x + (other.x - one.x) * share, one.y + (other.y - one.y) * share);
        let [one, other] = match (here >= 0.0, there >= 0.0) {
            (true, true) => [one, other],
            (true, false) => [one, between(here / (here - there))],
            (false, true) => [between(here / (here - there)), other],
            (false, false) => return None,
        };
        let in_turn = if one.x <= other.x { [one, other] } else { [other, one] };
        (apart(&one, &other) > 1.0).then_some(in_turn)
    }
}

/// The record of a photo with other marks; none take its scale away.
///
/// # Errors
/// Why they give no scale.
pub fn marked(photo: &Photo, size: PhotoSize, marks: Vec<PhotoMark>) -> Result<Photo, ScaleFault> {
    if !marks.is_empty() {
        Scale::of(size, &marks)?;
    }
    Ok(Photo { marks, ..photo.clone() })
}

/// The map of two marks: as if the camera had looked at the face squarely.
fn squarely([(upper, upper_mm), (lower, lower_mm), ..]: [([f64; 2], f64); 4]) -> Map {
    let down = [0, 1].map(|axis| (lower[axis] - upper[axis]) / (lower_mm - upper_mm));
    let surface = [0, 1].map(|axis| upper[axis] - down[axis] * upper_mm);
    Map([[down[1], down[0], surface[0]], [-down[0], down[1], surface[1]], [0.0, 0.0, 1.0]])
}

/// The map of four marks, scaled so that the last row is positive at the marks, and one of them has 1.
fn seen(touched: [([f64; 2], f64); 4], picture: f64) -> Result<Map, ScaleFault> {
    let [one_top, one_end, other_top, other_end] = touched.map(|(at, _)| at);
    // Round the four: down one line and up the other.
    let round = [one_top, one_end, other_end, other_top];
    let corner = |at: usize| {
        let [before, here, after] = [round[at], round[(at + 1) % 4], round[(at + 2) % 4]];
        ((here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])) / 2.0
    };
    let corners = [0, 1, 2, 3].map(corner);
    if corners.iter().any(|corner| corner.abs() < LEAST_CORNER * picture) {
        return Err(ScaleFault::OnOneLine);
    }
    if corners.iter().any(|corner| corner.signum() != corners[0].signum()) {
        return Err(ScaleFault::Crossed);
    }
    let across = [0.0, 0.0, 1.0, 1.0];
    let on_face = std::array::from_fn(|mark| [across[mark], touched[mark].1]);
    let map = Map::between(on_face, touched.map(|(at, _)| at)).ok_or(ScaleFault::OnOneLine)?;
    let nearness = map.of([0.0, touched[0].1, 1.0])[2];
    Ok(Map(map.0.map(|row| row.map(|number| number / nearness))))
}

fn distance(one: [f64; 2], other: [f64; 2]) -> f64 {
    (one[0] - other[0]).hypot(one[1] - other[1])
}
