//! How large the type of a part is: as large as it can be without a further leaf.

use super::flow::{Flow, Leaves, Piece};
use super::font::Fonts;
use super::layout::Layout;
use super::tree::Tree;
use pitface_core::report::Block;

/// Sizes of plain text, points, the largest first. The least is as large as 8.5 points of a narrow face: our judgement.
const SIZES: [f32; 5] = [9.5, 9.0, 8.5, 8.0, 7.5];
/// Edge of a leaf that stays empty, points: 10 mm.
pub const MARGIN: f32 = 28.35;
/// Height kept for the foot of a leaf, points.
pub const FOOT: f32 = 12.0;

/// A part of a page on leaves of this size.
pub fn leaves<'a>(part: &'a Block, size: (f32, f32), fonts: &Fonts, tree: &mut Tree) -> Vec<Vec<Piece<'a>>> {
    let (width, height) = (size.0 - 2.0 * MARGIN, size.1 - 2.0 * MARGIN - FOOT);
    let laid = |size: f32, tree: &mut Tree| {
        let flow: Vec<Flow> = Layout { fonts, tree, size, height }.part(part, width);
        Leaves::new(height).filled(flow)
    };
    let mark = tree.mark();
    let least = SIZES[SIZES.len() - 1];
    let fewest = laid(least, tree).len();
    for size in SIZES {
        tree.back_to(mark);
        let leaves = laid(size, tree);
        if leaves.len() <= fewest {
            return leaves;
        }
    }
    tree.back_to(mark);
    laid(least, tree)
}
