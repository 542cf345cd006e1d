//! Which room on the plan is taken, so that no mark and no text lies over another.

use crate::picture::layout::Area;
use crate::picture::shape::Point;

/// The rooms taken inside an area.
pub(super) struct Room {
    pub area: Area,
    taken: Vec<Area>,
}

/// Places around a mark where its text may stand, the best first.
#[derive(Debug, Clone, Copy)]
pub(super) enum Side {
    Right,
    Left,
    Above,
    Below,
}

impl Side {
    pub const ALL: [Self; 4] = [Self::Right, Self::Left, Self::Above, Self::Below];

    /// The box of a size at this side of another.
    pub fn beside(self, mark: Area, (width, height): (f64, f64)) -> Area {
        let middle = middle(mark);
        let (x, y) = match self {
            Self::Right => (mark.right + GAP + width / 2.0, middle.y),
            Self::Left => (mark.left - GAP - width / 2.0, middle.y),
            Self::Above => (middle.x, mark.top - GAP - height / 2.0),
            Self::Below => (middle.x, mark.bottom + GAP + height / 2.0),
        };
        around(Point::new(x, y), (width, height))
    }
}

/// Between a mark and its text, points.
const GAP: f64 = 2.0;

impl Room {
    pub const fn new(area: Area) -> Self {
        Self { area, taken: Vec::new() }
    }

    pub fn is_free(&self, room: Area) -> bool {
        let inside = room.left >= self.area.left
            && room.right <= self.area.right
            && room.top >= self.area.top
            && room.bottom <= self.area.bottom;
        inside && !self.taken.iter().any(|taken| overlap(*taken, room))
    }

    pub fn take(&mut self, room: Area) {
        self.taken.push(room);
    }

    /// Takes the room if it is free.
    pub fn claim(&mut self, room: Area) -> bool {
        let free = self.is_free(room);
        if free {
            self.take(room);
        }
        free
    }

    /// Gives back the room taken last that is just this.
    pub fn give_back(&mut self, room: Area) {
        let same = |taken: &Area| {
            taken.left.to_bits() == room.left.to_bits() && taken.top.to_bits() == room.top.to_bits()
        };
        if let Some(index) = self.taken.iter().rposition(same) {
            self.taken.remove(index);
        }
    }
}

pub(super) fn overlap(one: Area, other: Area) -> bool {
    one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
}

/// The box of a size around its middle.
pub(super) fn around(middle: Point, (width, height): (f64, f64)) -> Area {
    Area {
        left: middle.x - width / 2.0,
        top: middle.y - height / 2.0,
        right: middle.x + width / 2.0,
        bottom: middle.y + height / 2.0,
    }
}

pub(super) fn middle(area: Area) -> Point {
    Point::new(f64::midpoint(area.left, area.right), f64::midpoint(area.top, area.bottom))
}

/// Places around a point, ever farther away, up to a distance.
pub(super) fn nearby(at: Point, farthest: f64) -> impl Iterator<Item = Point> {
    /// Between the rings of places, points, and places on each.
    const STEP: f64 = 7.0;
    const PLACES: u32 = 16;
    let rings = (1..).map(|ring: u32| f64::from(ring) * STEP).take_while(move |&far| far <= farthest);
    rings.flat_map(move |far| {
        (0..PLACES).map(move |place| {
            let (down, right) = (std::f64::consts::TAU * f64::from(place) / f64::from(PLACES)).sin_cos();
            Point::new(at.x + far * right, at.y + far * down)
        })
    })
}
