//! Lengths as numbers side by side, step by step as on a rule: every length of the window is one tap, and each stands at the
//! same place from one question to the next.

use super::bar::{act_button, tool};
use super::step::Notch;
use super::{Act, Block, Button};
use crate::picture::Icon;
use crate::units::LengthUnit;
use crate::words::{Listed, Words};

/// Numbers at once: three rows.
const TILES: u32 = 18;
/// Numbers in a row.
const COLUMNS: u8 = 6;
/// Steps below what is likely that are still shown: ground is read a sight deeper than it was meant to be. Our judgement.
const BEYOND: u32 = 3;

/// A window of lengths.
#[derive(Debug, Clone, Copy)]
pub(super) struct Grid {
    notch: Notch,
    unit: LengthUnit,
    /// First length, in steps.
    first: u32,
    /// Longest length that can be, in steps.
    most: u32,
}

/// What is marked among the numbers of a [`Grid`].
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Marked {
    /// The answer given.
    pub chosen_mm: Option<u32>,
    /// The likeliest.
    pub likely_mm: Option<u32>,
}

impl Grid {
    /// The window that ends a few steps beyond `likely_mm`, moved so that `given_mm` lies in it; or the one that begins at
    /// `from_mm`, where somebody has moved it.
    pub fn new(
        (notch, unit): (Notch, LengthUnit),
        most_mm: u32,
        likely_mm: u32,
        given_mm: Option<u32>,
        from_mm: Option<u32>,
    ) -> Self {
        let most = notch.whole(most_mm, unit).max(TILES);
        let last_first = most - TILES + 1;
        let steps = |mm| notch.whole(mm, unit);
        let first = from_mm.map_or_else(
            || {
                let first = (steps(likely_mm) + BEYOND + 1).saturating_sub(TILES);
                let given = given_mm.map(steps);
                given.map_or(first, |given| first.clamp((given + 2).saturating_sub(TILES), given.max(2) - 1))
            },
            steps,
        );
        Self { notch, unit, first: first.clamp(1, last_first), most }
    }

    fn lengths(self) -> impl Iterator<Item = u32> {
        (self.first..self.first + TILES).map(move |steps| self.notch.at(steps, self.unit))
    }

    /// The numbers as answers; `of` names what a number answers, for whoever hears it alone.
    pub fn question(self, marked: Marked, of: &str, words: &Words, act: impl Fn(u32) -> Act) -> Block {
        let same = |mm: u32, other: Option<u32>| {
            other.is_some_and(|other| self.notch.whole(other, self.unit) == self.notch.whole(mm, self.unit))
        };
        let button = |mm: u32| Button {
            about: words.named(of, &words.depth(mm)),
            chosen: same(mm, marked.chosen_mm),
            strong: same(mm, marked.likely_mm),
            ..act_button(words.length_number(mm), act(mm))
        };
        Block::Question {
            text: String::new(),
            columns: COLUMNS,
            answers: self.lengths().map(button).collect(),
        }
    }

    /// The two tools that move the window; each where there is somewhere to move it.
    pub fn moved(
        self,
        [less, more]: [impl Listed; 2],
        words: &Words,
        to: impl Fn(u32) -> Act,
    ) -> Vec<Button> {
        let less_from = self.first.saturating_sub(TILES - 2).max(1);
        let more_from = (self.first + TILES - 2).min(self.most - TILES + 1);
        let move_to = |icon: Icon, label: String, first: u32| {
            tool(icon, label, to(self.notch.at(first, self.unit))).enabled_if(first != self.first)
        };
        vec![
            move_to(Icon::Less, words.label(less), less_from),
            move_to(Icon::More, words.label(more), more_from),
        ]
    }
}
