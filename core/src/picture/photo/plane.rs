//! Maps between two planes seen by a camera, in homogeneous coordinates.

/// A place in homogeneous coordinates: x, y, and what both are divided by.
pub(super) type Place = [f64; 3];

/// A map of a plane to another, three rows of three.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Map(pub [[f64; 3]; 3]);

impl Map {
    /// Where a place comes to lie.
    pub fn of(&self, place: Place) -> Place {
        self.0.map(|row| dot(row, place))
    }

    /// The way back, up to a factor; `None` where the map flattens the plane.
    pub fn back(&self) -> Option<Self> {
        let [a, b, c] = self.0;
        // Columns of the inverse: the cross products of the rows.
        let columns = [cross(b, c), cross(c, a), cross(a, b)];
        let whole = dot(a, columns[0]);
        let size = self.0.iter().flatten().fold(0.0_f64, |most, one| most.max(one.abs()));
        let flat = !whole.is_finite() || whole.abs() <= f64::EPSILON * size.powi(3);
        (!flat).then(|| Self(std::array::from_fn(|row| columns.map(|column| column[row] / whole))))
    }

    /// This map after another.
    fn after(&self, first: &Self) -> Self {
        let column = |column: usize| self.of(first.0.map(|row| row[column]));
        let columns = [column(0), column(1), column(2)];
        Self(std::array::from_fn(|row| columns.map(|column| column[row])))
    }

    /// The map that brings four places of one plane to four of another, no three of either on one line; `None` where
    /// some are. By way of the plane whose axes and unit they are (projective basis; any textbook of projective geometry).
    pub fn between(from: [[f64; 2]; 4], to: [[f64; 2]; 4]) -> Option<Self> {
        Some(basis(to)?.after(&basis(from)?.back()?))
    }
}

/// The map that brings the axes and the unit of a plane to four places.
fn basis(places: [[f64; 2]; 4]) -> Option<Map> {
    let [first, second, third, unit] = places.map(|[x, y]| [x, y, 1.0]);
    let columns = Map(std::array::from_fn(|row| [first[row], second[row], third[row]]));
    let shares = columns.back()?.of(unit);
    Some(Map(columns.0.map(|row| std::array::from_fn(|column| row[column] * shares[column]))))
}

pub(super) fn dot(one: Place, other: Place) -> f64 {
    one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
}

fn cross(one: Place, other: Place) -> Place {
    [
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    ]
}
