//! Tables: how wide the columns are, rows with lines beneath them, boxes to be written into.

use super::flow::{Piece, Unit, What, beside};
use super::layout::{Layout, Set, set_lines};
use super::tree::TagNumber;
use krilla::tagging::{TableHeaderScope, Tag, TagKind};
use pitface_core::report::Row;

/// Room between cells, and above and below a line of text, points.
const BETWEEN: f32 = 6.0;
const PADDING: f32 = 1.6;
/// Height of a box to be written into, points: 8 mm.
const BOX: f32 = 22.7;
const STROKE: f32 = 0.5;

impl Layout<'_> {
    /// A table, a unit a row; `boxes` have strokes around and are all of one width.
    pub fn table<'a>(
        &mut self,
        caption: &str,
        heads: &[String],
        rows: &[Row],
        width: f32,
        above: Option<TagNumber>,
        boxes: bool,
    ) -> Vec<Unit<'a>> {
        let set = Set { size: self.size, strong: false };
        let cells: Vec<&[String]> =
            std::iter::once(heads).chain(rows.iter().map(|row| row.cells.as_slice())).collect();
        let widths = if boxes {
            vec![width / heads.len() as f32 - BETWEEN; heads.len()]
        } else {
            self.widths(&cells, set.size, width)
        };
        let table = self.tree.add(above, Tag::Table.with_summary(Some(caption.to_owned())));
        let head = self.tree.add(Some(table), Tag::THead);
        let body = self.tree.add(Some(table), Tag::TBody);
        let row = |(index, cells): (usize, &&[String])| {
            let tag = self.tree.add(Some(if index == 0 { head } else { body }), Tag::TR);
            let mut x = if boxes { BETWEEN / 2.0 } else { 0.0 };
            let mut laid = Vec::new();
            for (at, (cell, &wide)) in cells.iter().zip(&widths).enumerate() {
                let heads_row = at == 0 && !cell.is_empty();
                let kind: TagKind = match index {
                    0 => Tag::TH(TableHeaderScope::Column).into(),
                    _ if heads_row => Tag::TH(TableHeaderScope::Row).into(),
                    _ => Tag::TD.into(),
                };
                let set = Set { strong: index == 0 || heads_row, ..set };
                let tag = self.tree.add(Some(tag), kind);
                let lines = self.fonts.wrapped(cell, set.size, set.strong, wide);
                laid.push((x, vec![set_lines(&lines, set, 0.0, tag)]));
                x += wide + BETWEEN;
            }
            let mut unit = beside(laid, 0.0);
            for piece in &mut unit.pieces {
                piece.y += PADDING;
            }
            unit.height += 2.0 * PADDING;
            if boxes && index > 0 {
                unit.height = unit.height.max(BOX);
            }
            unit.pieces.extend(strokes(&widths, unit.height, width, boxes, index == 0));
            // The heads stay with their first row, and no row is left alone at the end.
            unit.keeps = index == 0 || index + 2 == cells_len(rows);
            unit
        };
        let mut units: Vec<Unit> = cells.iter().enumerate().map(row).collect();
        if let Some(first) = units.first_mut() {
            first.above = self.size * 0.5;
        }
        units
    }

    /// Widths of columns: as wide as their text where there is room, else wide words first.
    fn widths(&self, rows: &[&[String]], size: f32, width: f32) -> Vec<f32> {
        let columns = rows.first().map_or(0, |heads| heads.len());
        let room = width - BETWEEN * columns.saturating_sub(1) as f32;
        // Bold is the wider cut: heads stand in it.
        let widest = |measure: &dyn Fn(&str, bool) -> f32| -> Vec<f32> {
            let of = |at: usize| {
                let cells = rows.iter().enumerate().filter_map(|(row, cells)| Some((row, cells.get(at)?)));
                cells.map(|(row, cell)| measure(cell, row == 0 || at == 0)).fold(1.0, f32::max)
            };
            (0..columns).map(of).collect()
        };
        let whole = widest(&|cell, strong| self.fonts.width(cell, size, strong));
        let least = widest(&|cell, strong| self.fonts.widest_word(cell, size, strong));
        let (sum, least_sum) = (whole.iter().sum::<f32>(), least.iter().sum::<f32>());
        if sum <= room {
            let more = (room - sum) / columns as f32;
            return whole.iter().map(|wide| wide + more).collect();
        }
        if least_sum >= room {
            return least.iter().map(|wide| wide * room / least_sum).collect();
        }
        let share = (room - least_sum) / (sum - least_sum);
        whole.iter().zip(&least).map(|(wide, least)| least + (wide - least) * share).collect()
    }
}

/// How many rows there are with the heads.
const fn cells_len(rows: &[Row]) -> usize {
    rows.len() + 1
}

/// The line beneath a row, or the box around each of its cells.
fn strokes<'a>(widths: &[f32], height: f32, width: f32, boxes: bool, first: bool) -> Vec<Piece<'a>> {
    let stroke = |x, y, right, down| {
        let what = What::Stroke { right, down, width: STROKE };
        Piece { x, y, tag: None, what }
    };
    let mut strokes = vec![stroke(0.0, height, width, 0.0)];
    if boxes {
        strokes.extend(first.then(|| stroke(0.0, 0.0, width, 0.0)));
        let mut x = 0.0;
        strokes.push(stroke(x, 0.0, 0.0, height));
        for wide in widths {
            x += wide + BETWEEN;
            strokes.push(stroke(x, 0.0, 0.0, height));
        }
    }
    strokes
}
