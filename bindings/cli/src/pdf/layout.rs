//! Blocks of a page laid out in units: how large the type is, where lines break, what stands beside what.

use super::flow::{Flow, Piece, Unit, What, beside};
use super::font::Fonts;
use super::tree::{TagNumber, Tree};
use krilla::tagging::{ListNumbering, Tag, TagKind};
use pitface_core::picture::Drawing;
use pitface_core::report::{Block, Group, Line};
use std::num::NonZeroU16;

/// Height of a line of text as a share of its size, and its base line below its upper edge.
const LINE: f32 = 1.27;
const BASE: f32 = 1.0;
/// Between columns, points.
const GAP: f32 = 17.0;
/// A paragraph of more lines may be parted.
const LINES_TOGETHER: usize = 8;
/// How many pits stand beside each other.
const PITS: usize = 3;
/// Greatest heights of drawings, points: beside each other, on a card, of a pit, over the years, of a hole behind the machine.
const PICTURES_HEIGHT: f32 = 250.0;
const CARD_HEIGHT: f32 = 200.0;
const PIT_HEIGHT: f32 = 160.0;
const YEARS_HEIGHT: f32 = 340.0;
const HOLE_HEIGHT: f32 = 204.0;
/// Width of a part beside drawings, in theirs.
const PART_WEIGHT: f32 = 1.25;

/// Lays out a part of a page.
pub struct Layout<'l> {
    pub fonts: &'l Fonts,
    pub tree: &'l mut Tree,
    /// Size of plain text, points.
    pub size: f32,
    /// Height of a leaf, points.
    pub height: f32,
}

/// How a line of text is set.
#[derive(Clone, Copy)]
pub struct Set {
    pub size: f32,
    pub strong: bool,
}

impl Set {
    /// Height of a line, points.
    pub fn line(self) -> f32 {
        self.size * LINE
    }
}

impl Layout<'_> {
    /// A part of the page as it follows down the leaves.
    pub fn part<'a>(&mut self, part: &'a Block, width: f32) -> Vec<Flow<'a>> {
        let Block::Group(group, blocks) = part else {
            return self.block(part, width, PICTURES_HEIGHT, None).into_iter().map(Flow::Unit).collect();
        };
        let tag = self.tree.add(None, tag_of(group));
        let figures = if *group == Group::Card { CARD_HEIGHT } else { PICTURES_HEIGHT };
        blocks.iter().flat_map(|block| self.inner(block, width, figures, tag)).collect()
    }

    fn inner<'a>(&mut self, block: &'a Block, width: f32, figures: f32, above: TagNumber) -> Vec<Flow<'a>> {
        let rows = match block {
            Block::Group(Group::Columns, blocks) => {
                let tag = self.tree.add(Some(above), Tag::Div);
                let column = (width - GAP) / 2.0;
                let units = blocks.iter().flat_map(|block| self.block(block, column, figures, Some(tag)));
                return vec![Flow::Columns(units.collect(), column + GAP)];
            }
            Block::Group(Group::Pictures, blocks) => vec![(blocks.as_slice(), figures, weights(blocks))],
            Block::Group(Group::Pits, blocks) => {
                let row = |blocks: &'a [Block]| (blocks, PIT_HEIGHT, vec![1.0; PITS]);
                blocks.chunks(PITS).map(row).collect()
            }
            _ => return self.block(block, width, figures, Some(above)).into_iter().map(Flow::Unit).collect(),
        };
        let tag = self.tree.add(Some(above), Tag::Div);
        rows.into_iter()
            .flat_map(|(blocks, figures, weights)| self.row(blocks, width, figures, &weights, tag))
            .collect()
    }

    /// Blocks beside each other; below each other where they are higher than a leaf.
    fn row<'a>(
        &mut self,
        blocks: &'a [Block],
        width: f32,
        figures: f32,
        weights: &[f32],
        tag: TagNumber,
    ) -> Vec<Flow<'a>> {
        let share = (width - GAP * (weights.len() as f32 - 1.0)) / weights.iter().sum::<f32>();
        let mut x = 0.0;
        let mut cells = Vec::new();
        for (block, weight) in blocks.iter().zip(weights) {
            let units = self.block(block, share * weight, figures, Some(tag));
            cells.push((x, units));
            x += share * weight + GAP;
        }
        let height = |units: &[Unit]| units.iter().map(|unit| unit.above + unit.height).sum::<f32>();
        if cells.iter().any(|(_, units)| height(units) > self.height) {
            return cells.into_iter().flat_map(|(_, units)| units).map(Flow::Unit).collect();
        }
        vec![Flow::Unit(beside(cells, self.size))]
    }

    /// A block in a column.
    fn block<'a>(
        &mut self,
        block: &'a Block,
        width: f32,
        figures: f32,
        above: Option<TagNumber>,
    ) -> Vec<Unit<'a>> {
        match block {
            Block::Group(group, blocks) => {
                let tag = self.tree.add(above, tag_of(group));
                let figures = match group {
                    Group::Years => YEARS_HEIGHT,
                    Group::Hole | Group::HoleAlone => HOLE_HEIGHT,
                    _ => figures,
                };
                let room = if *group == Group::Closing { self.size * 0.9 } else { 0.0 };
                let boxes = *group == Group::Boxes;
                let mut units = Vec::new();
                for block in blocks {
                    units.extend(match block {
                        Block::Table { caption, heads, rows } if boxes => {
                            self.table(caption, heads, rows, width, Some(tag), true)
                        }
                        _ => self.block(block, width, figures, Some(tag)),
                    });
                }
                if let Some(first) = units.first_mut() {
                    first.above = first.above.max(room);
                }
                units
            }
            Block::Text(line, text) => self.line(*line, text, width, above),
            Block::List(lines) => self.list(lines, width, above),
            Block::Table { caption, heads, rows } => self.table(caption, heads, rows, width, above, false),
            Block::Figure { drawing, photo, title, description, caption } => {
                let spoken = format!("{title}. {description}");
                vec![self.figure((drawing, photo.as_deref()), &spoken, caption, (width, figures), above)]
            }
        }
    }

    fn line<'a>(&mut self, line: Line, text: &str, width: f32, above: Option<TagNumber>) -> Vec<Unit<'a>> {
        let (times, strong, room, rank) = match line {
            Line::Title => (1.7, true, 0.0, Some(1)),
            Line::Heading => (1.04, true, 0.65, Some(2)),
            Line::PitHeading => (1.04, true, 0.65, Some(3)),
            Line::Sentence => (1.3, true, 0.45, None),
            Line::Meta => (0.94, false, 0.2, None),
            Line::Plain => (1.0, false, 0.3, None),
        };
        let set = Set { size: self.size * times, strong };
        let kind: TagKind = match rank.and_then(NonZeroU16::new) {
            Some(rank) => Tag::Hn(rank, Some(text.to_owned())).into(),
            None => Tag::P.into(),
        };
        let tag = self.tree.add(above, kind);
        let mut units = self.paragraph(text, set, width, tag);
        if let Some(first) = units.first_mut() {
            first.above = room * self.size;
            if let Some(rank) = rank {
                let what = What::Heading { rank, text: text.to_owned() };
                first.pieces.insert(0, Piece { x: 0.0, y: 0.0, tag: None, what });
            }
        }
        for unit in &mut units {
            unit.keeps |= rank.is_some();
        }
        units
    }

    /// A text in lines, together as long as it is short.
    fn paragraph<'a>(&self, text: &str, set: Set, width: f32, tag: TagNumber) -> Vec<Unit<'a>> {
        let lines = self.fonts.wrapped(text, set.size, set.strong, width);
        let at_once = if lines.len() <= LINES_TOGETHER { lines.len() } else { 1 };
        lines.chunks(at_once.max(1)).map(|lines| set_lines(lines, set, 0.0, tag)).collect()
    }

    fn list<'a>(&mut self, lines: &[String], width: f32, above: Option<TagNumber>) -> Vec<Unit<'a>> {
        let set = Set { size: self.size, strong: false };
        let list = self.tree.add(above, Tag::L(ListNumbering::Disc));
        let indent = self.size;
        let items = lines.iter().flat_map(|line| {
            let item = self.tree.add(Some(list), Tag::LI);
            let (label, body) = (self.tree.add(Some(item), Tag::Lbl), self.tree.add(Some(item), Tag::LBody));
            let mut units = self.paragraph(line, set, width - indent, body);
            for piece in units.iter_mut().flat_map(|unit| &mut unit.pieces) {
                piece.x += indent;
            }
            if let Some(first) = units.first_mut() {
                first.above = self.size * 0.15;
                let what = What::Text { text: "•".to_owned(), size: set.size, strong: false };
                first.pieces.insert(0, Piece { x: 0.0, y: set.size * BASE, tag: Some(label), what });
            }
            units
        });
        items.collect()
    }

    fn figure<'a>(
        &mut self,
        (drawing, photo): (&'a Drawing, Option<&'a [u8]>),
        spoken: &str,
        caption: &str,
        (width, height): (f32, f32),
        above: Option<TagNumber>,
    ) -> Unit<'a> {
        let tag = self.tree.add(above, Tag::Figure(Some(spoken.to_owned())));
        let (wide, high) = (drawing.width as f32, drawing.height as f32);
        let scale = (width / wide).min(height / high);
        let what = What::Figure { drawing, photo, scale };
        let mut unit = vec![Unit {
            height: high * scale,
            pieces: vec![Piece { x: 0.0, y: 0.0, tag: Some(tag), what }],
            ..Unit::default()
        }];
        if !caption.is_empty() {
            let tag = self.tree.add(Some(tag), Tag::Caption);
            let set = Set { size: self.size * 0.94, strong: false };
            unit.extend(self.paragraph(caption, set, width, tag));
        }
        beside(vec![(0.0, unit)], self.size * 0.4)
    }
}

/// Lines below each other, each marked as a line of its tag.
pub fn set_lines<'a>(lines: &[String], set: Set, x: f32, tag: TagNumber) -> Unit<'a> {
    let piece = |(index, line): (usize, &String)| Piece {
        x,
        y: index as f32 * set.line() + set.size * BASE,
        tag: Some(tag),
        what: What::Text { text: line.clone(), size: set.size, strong: set.strong },
    };
    let pieces = lines.iter().enumerate().map(piece).collect();
    Unit { height: lines.len() as f32 * set.line(), pieces, ..Unit::default() }
}

/// How wide drawings and a part stand beside each other.
fn weights(blocks: &[Block]) -> Vec<f32> {
    let weight = |block: &Block| if matches!(block, Block::Figure { .. }) { 1.0 } else { PART_WEIGHT };
    blocks.iter().map(weight).collect()
}

fn tag_of(group: &Group) -> TagKind {
    match group {
        Group::Article | Group::Card | Group::Details => Tag::Article.into(),
        Group::Section | Group::Years | Group::Hole | Group::HoleAlone | Group::Boxes => Tag::Section.into(),
        Group::Head | Group::Pictures | Group::Columns | Group::Pits | Group::Closing | Group::Anchor(_) => {
            Tag::Div.into()
        }
    }
}
