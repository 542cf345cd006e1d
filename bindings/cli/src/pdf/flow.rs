//! Pieces, units of them that stay together, and how units follow each other down leaves and columns.

use super::tree::TagNumber;
use pitface_core::picture::Drawing;

/// Something to be drawn; `x` and `y` in points from the left upper corner of what it stands in.
pub struct Piece<'a> {
    pub x: f32,
    pub y: f32,
    /// Structure element it belongs to; ornaments have none.
    pub tag: Option<TagNumber>,
    pub what: What<'a>,
}

/// Content of one drawn thing.
pub enum What<'a> {
    /// A line of text, `y` its base line. An empty one marks an empty cell.
    Text { text: String, size: f32, strong: bool },
    /// A heading of this rank begins here.
    Heading { rank: u16, text: String },
    /// A drawing over its photo, by so much smaller.
    Figure { drawing: &'a Drawing, photo: Option<&'a [u8]>, scale: f32 },
    /// A stroke from here to so far right and down.
    Stroke { right: f32, down: f32, width: f32 },
}

/// Pieces that are never parted.
#[derive(Default)]
pub struct Unit<'a> {
    /// Room above, points; left out at the top of a leaf or column.
    pub above: f32,
    /// Height, points.
    pub height: f32,
    /// The next unit follows on the same leaf.
    pub keeps: bool,
    pub pieces: Vec<Piece<'a>>,
}

/// Units that follow each other down a leaf.
pub enum Flow<'a> {
    Unit(Unit<'a>),
    /// Units through two columns, the second so far to the right.
    Columns(Vec<Unit<'a>>, f32),
}

/// Units beside each other, by how far each stands to the right, as one.
pub fn beside(cells: Vec<(f32, Vec<Unit<'_>>)>, above: f32) -> Unit<'_> {
    let mut row = Unit { above, ..Unit::default() };
    for (x, units) in cells {
        let mut y = 0.0;
        for unit in units {
            y += if y > 0.0 { unit.above } else { 0.0 };
            row.pieces.extend(unit.pieces.into_iter().map(|piece| moved(piece, x, y)));
            y += unit.height;
        }
        row.height = row.height.max(y);
    }
    row
}

fn moved(piece: Piece, right: f32, down: f32) -> Piece {
    Piece { x: piece.x + right, y: piece.y + down, ..piece }
}

/// Leaves being filled.
pub struct Leaves<'a> {
    height: f32,
    y: f32,
    filled: Vec<Vec<Piece<'a>>>,
}

impl<'a> Leaves<'a> {
    /// One empty leaf of this height.
    pub fn new(height: f32) -> Self {
        Self { height, y: 0.0, filled: vec![Vec::new()] }
    }

    /// Fills the leaves.
    pub fn filled(mut self, flow: Vec<Flow<'a>>) -> Vec<Vec<Piece<'a>>> {
        let mut waiting: Vec<Unit> = Vec::new();
        for next in flow {
            match next {
                Flow::Unit(unit) => {
                    let keeps = unit.keeps;
                    waiting.push(unit);
                    if !keeps {
                        self.together(std::mem::take(&mut waiting));
                    }
                }
                Flow::Columns(units, right) => {
                    self.together(std::mem::take(&mut waiting));
                    self.columns(units, right);
                }
            }
        }
        self.together(waiting);
        self.filled
    }

    /// Units on one leaf, if they go on one at all.
    fn together(&mut self, units: Vec<Unit<'a>>) {
        let needed: f32 = units.iter().map(|unit| unit.above + unit.height).sum();
        if !units.is_empty() && self.y > 0.0 && self.y + needed > self.height {
            self.turn();
        }
        for unit in units {
            if self.y > 0.0 && self.y + unit.above + unit.height > self.height {
                self.turn();
            }
            self.y += if self.y > 0.0 { unit.above } else { 0.0 };
            self.put(unit.pieces, 0.0, self.y);
            self.y += unit.height;
        }
    }

    /// Two columns as low as can be; what does not go on this leaf goes on the next.
    fn columns(&mut self, units: Vec<Unit<'a>>, right: f32) {
        let mut groups: Vec<Vec<Unit>> = Vec::new();
        let mut open = false;
        for unit in units {
            let keeps = unit.keeps;
            match groups.last_mut() {
                Some(group) if open => group.push(unit),
                _ => groups.push(vec![unit]),
            }
            open = keeps;
        }
        let mut groups: Vec<Unit> = groups
            .into_iter()
            .map(|group| {
                let above = group.first().map_or(0.0, |unit| unit.above);
                beside(vec![(0.0, group)], above)
            })
            .collect();
        while !groups.is_empty() {
            let gap = if self.y > 0.0 { groups[0].above } else { 0.0 };
            let room = self.height - self.y - gap;
            let low = lowest(&groups).filter(|low| *low <= room);
            let (first, second) = filled_to(&groups, low.unwrap_or(room));
            if first == 0 && self.y > 0.0 {
                self.turn();
                continue;
            }
            let rest = groups.split_off((first + second).max(1));
            let top = self.y + gap;
            let mut reached = top;
            for (index, unit) in std::mem::replace(&mut groups, rest).into_iter().enumerate() {
                let in_second = index >= first.max(1);
                self.y = if index == 0 || index == first.max(1) { top } else { self.y + unit.above };
                self.put(unit.pieces, if in_second { right } else { 0.0 }, self.y);
                self.y += unit.height;
                reached = reached.max(self.y);
            }
            self.y = reached;
            if !groups.is_empty() {
                self.turn();
            }
        }
    }

    fn put(&mut self, pieces: Vec<Piece<'a>>, x: f32, y: f32) {
        if let Some(leaf) = self.filled.last_mut() {
            leaf.extend(pieces.into_iter().map(|piece| moved(piece, x, y)));
        }
    }

    fn turn(&mut self) {
        self.filled.push(Vec::new());
        self.y = 0.0;
    }
}

/// How many units go into a column of this height, and how many of the rest into a second.
fn filled_to(units: &[Unit], height: f32) -> (usize, usize) {
    let column = |units: &[Unit]| {
        let mut y = 0.0;
        let fits = |unit: &&Unit| {
            y += if y > 0.0 { unit.above } else { 0.0 } + unit.height;
            y <= height + 0.01
        };
        units.iter().take_while(fits).count()
    };
    let first = column(units);
    (first, column(&units[first..]))
}

/// The least height of two columns that hold all units.
fn lowest(units: &[Unit]) -> Option<f32> {
    let mut y = 0.0;
    let ends = units.iter().map(|unit| {
        y += if y > 0.0 { unit.above } else { 0.0 } + unit.height;
        y
    });
    let ends: Vec<f32> = ends.collect();
    // A second column may be the taller one: its heights count from where it begins.
    let begins = units.iter().enumerate().map(|(index, unit)| ends[index] - unit.height);
    let whole = *ends.last()?;
    let heights = ends.iter().copied().chain(begins.map(|begin| whole - begin));
    let holds = |height: &f32| {
        let (first, second) = filled_to(units, *height);
        first + second == units.len()
    };
    heights.filter(holds).min_by(f32::total_cmp)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn units(heights: &[f32]) -> Vec<Unit<'static>> {
        let stroke = || What::Stroke { right: 1.0, down: 0.0, width: 1.0 };
        let piece = || Piece { x: 0.0, y: 0.0, tag: None, what: stroke() };
        let unit = |&height| Unit { above: 1.0, height, keeps: false, pieces: vec![piece()] };
        heights.iter().map(unit).collect()
    }

    fn places(leaves: &[Vec<Piece>]) -> Vec<Vec<(f32, f32)>> {
        leaves.iter().map(|leaf| leaf.iter().map(|piece| (piece.x, piece.y)).collect()).collect()
    }

    #[test]
    fn columns_end_alike_and_go_on_overleaf() {
        let on = |height, heights: &[f32]| {
            places(&Leaves::new(height).filled(vec![Flow::Columns(units(heights), 50.0)]))
        };
        assert_eq!(on(100.0, &[10.0, 10.0, 10.0]), [[(0.0, 0.0), (0.0, 11.0), (50.0, 0.0)]]);
        assert_eq!(on(12.0, &[10.0, 10.0, 10.0]), [vec![(0.0, 0.0), (50.0, 0.0)], vec![(0.0, 0.0)]]);
        assert_eq!(on(5.0, &[10.0, 10.0]).len(), 2, "a unit higher than a leaf stands alone on one");
    }

    #[test]
    fn a_heading_is_never_left_at_the_foot_of_a_leaf() {
        let mut all = units(&[10.0, 2.0, 10.0]);
        all[1].keeps = true;
        let leaves = Leaves::new(16.0).filled(all.into_iter().map(Flow::Unit).collect());
        assert_eq!(places(&leaves), [vec![(0.0, 0.0)], vec![(0.0, 0.0), (0.0, 3.0)]]);
    }
}
