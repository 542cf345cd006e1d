//! A page as PDF for paper and for keeping: tagged (PDF/UA-1, ISO 14289-1), the same bytes at every run.
//!
//! On the command line only. On a phone the platform prints the HTML, and the library stays as small as it is.

mod fit;
mod flow;
mod font;
mod layout;
mod paint;
mod table;
mod tree;

use pitface_core::report::{Block, Page};

/// How a PDF begins (ISO 32000-1, 7.5.2).
pub const BEGINS: &[u8] = b"%PDF-";
/// The program that writes it, as the file tells.
const PRODUCER: &str = "Pitface";
/// Marks a PDF as one of ours; it stands near the end.
pub const PRODUCED: &str = "<pdf:Producer>Pitface</pdf:Producer>";

/// The size of the paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8½ × 11 in.
    Letter,
}

impl Paper {
    /// Their codes.
    pub const CODES: &[&str] = &["a4", "letter"];

    /// The paper of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        [Self::A4, Self::Letter]
            .into_iter()
            .zip(Self::CODES)
            .find_map(|(it, its)| (*its == code).then_some(it))
    }

    /// Width and height in points.
    const fn size(self) -> (f32, f32) {
        match self {
            Self::A4 => (595.276, 841.89),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// The page as PDF.
///
/// # Errors
/// The fault that keeps it from being a PDF/UA-1 file.
pub fn pdf(page: &Page, paper: Paper) -> Result<Vec<u8>, String> {
    let fonts = font::Fonts::new().ok_or("the font cannot be read")?;
    let mut tree = tree::Tree::default();
    let mut leaves = Vec::new();
    for part in parts(&page.blocks) {
        leaves.append(&mut fit::leaves(part, paper.size(), &fonts, &mut tree));
    }
    paint::painted(page, paper.size(), &leaves, &fonts, tree)
}

/// Returns what begins on a leaf of its own.
fn parts(blocks: &[Block]) -> Vec<&Block> {
    let within = |block| match block {
        &Block::Group(pitface_core::report::Group::Anchor(_), ref blocks) => parts(blocks),
        _ => vec![block],
    };
    blocks.iter().flat_map(within).collect()
}
