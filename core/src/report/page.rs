//! What a page says, in blocks, before it is HTML or PDF: both are drawn from the same.

use crate::picture::Drawing;
use crate::screen::Pictured;
use crate::words::{Language, Words};

/// A page for people: the sheet of a field, the driver's card or an overview.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Language of all its words.
    pub language: Language,
    /// Its title.
    pub title: String,
    /// What it says, in the order it is read.
    pub blocks: Vec<Block>,
}

/// A piece of a page. No text and no list is empty.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// Blocks that belong together.
    Group(Group, Vec<Block>),
    /// A heading, a paragraph.
    Text(Line, String),
    /// A list, a line an item.
    List(Vec<String>),
    /// A table.
    Table {
        /// What it is about; read out, not shown.
        caption: String,
        /// The heads of its columns.
        heads: Vec<String>,
        /// Its rows.
        rows: Vec<Row>,
    },
    /// A drawing.
    Figure {
        /// The drawing, in points.
        drawing: Drawing,
        /// The photo it is drawn over, as large as the drawing: a JPEG without notes.
        photo: Option<Vec<u8>>,
        /// Its title.
        title: String,
        /// What it shows, read out to whoever does not see it.
        description: String,
        /// The line under it; may be empty.
        caption: String,
    },
}

/// A row of a table. The first cell is its head, if it says something.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Where its head leads: the address of a sheet.
    pub address: Option<String>,
    /// Its cells; may be empty.
    pub cells: Vec<String>,
}

/// Why blocks belong together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Group {
    /// What begins on a leaf of its own: the face of a sheet, an overview.
    Article,
    /// The driver's card.
    Card,
    /// The pits in detail, on further leaves.
    Details,
    /// Name of the field and what is told beneath it.
    Head,
    /// A heading and what stands under it.
    Section,
    /// A zone over the years.
    Years,
    /// A hole behind the machine, with its key.
    Hole,
    /// The only one: its key stands beside it.
    HoleAlone,
    /// A table to be written into by hand.
    Boxes,
    /// Drawings beside each other, with a part beside them.
    Pictures,
    /// Parts that run through two columns.
    Columns,
    /// Pits beside each other, three on paper.
    Pits,
    /// What comes before all that is said here.
    Closing,
    /// A sheet that an overview leads to, by its name.
    Anchor(String),
}

/// How a line of text is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Line {
    /// The title; one a sheet.
    Title,
    /// The heading of a part.
    Heading,
    /// The heading of a pit.
    PitHeading,
    /// What is to be done, in a sentence.
    Sentence,
    /// What is told in second rank.
    Meta,
    /// A paragraph.
    Plain,
}

/// Blocks being put together.
#[derive(Debug, Default)]
pub(super) struct Blocks(Vec<Block>);

impl Blocks {
    /// A group of what `within` adds.
    pub fn within(&mut self, group: Group, within: impl FnOnce(&mut Self)) {
        let mut blocks = Self::default();
        within(&mut blocks);
        self.0.push(Block::Group(group, blocks.0));
    }

    /// A line; nothing for an empty text.
    pub fn text(&mut self, line: Line, text: &str) {
        if !text.is_empty() {
            self.0.push(Block::Text(line, text.to_owned()));
        }
    }

    /// A part with a heading and a list; nothing without lines.
    pub fn part(&mut self, heading: &str, lines: &[String]) {
        if !lines.is_empty() {
            self.within(Group::Section, |page| {
                page.text(Line::Heading, heading);
                page.list(lines);
            });
        }
    }

    /// A list; nothing without lines.
    pub fn list(&mut self, lines: &[String]) {
        if !lines.is_empty() {
            self.0.push(Block::List(lines.iter().filter(|line| !line.is_empty()).cloned().collect()));
        }
    }

    /// A table whose rows lead nowhere.
    pub fn table(&mut self, caption: &str, heads: &[String], rows: Vec<Vec<String>>) {
        self.table_of(caption, heads, rows.into_iter().map(|cells| Row { address: None, cells }).collect());
    }

    /// A table.
    pub fn table_of(&mut self, caption: &str, heads: &[String], rows: Vec<Row>) {
        self.0.push(Block::Table { caption: caption.to_owned(), heads: heads.to_vec(), rows });
    }

    /// A drawing with a line under it; the line may be empty.
    pub fn figure(&mut self, pictured: Pictured, caption: &str) {
        self.figure_of(pictured, None, caption);
    }

    /// The same over a photo.
    pub fn figure_of(&mut self, pictured: Pictured, photo: Option<Vec<u8>>, caption: &str) {
        let Pictured { drawing, title, description } = pictured;
        self.0.push(Block::Figure { drawing, photo, title, description, caption: caption.to_owned() });
    }

    /// The whole page.
    pub fn page(self, words: &Words, title: &str) -> Page {
        Page { language: words.language(), title: title.to_owned(), blocks: self.0 }
    }
}
