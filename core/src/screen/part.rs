//! Pieces that screens are put together from.

use super::{Act, Ask, Block, Button, Does, Place, Row, Section, World};
use crate::picture::{Icon, icon};
use crate::words::{Listed, PitText};

/// A button that goes somewhere.
pub(super) fn go(label: impl Into<String>, place: Place) -> Button {
    Button::new(label, Does::Act(Act::Go(place)))
}

impl Button {
    /// The same, marked as the answer given.
    #[must_use]
    pub(super) fn chosen_if(self, chosen: bool) -> Self {
        Self { chosen, ..self }
    }

    /// The same, to be tapped only where it can be.
    #[must_use]
    pub(super) fn enabled_if(self, enabled: bool) -> Self {
        Self { enabled, ..self }
    }

    /// The same with what it answers, for whoever does not see the question.
    #[must_use]
    pub(super) fn about(self, about: String) -> Self {
        Self { about, ..self }
    }

    /// The same with what is seen.
    #[must_use]
    pub(super) fn drawn(self, drawing: Option<crate::picture::Drawing>) -> Self {
        Self { drawing, ..self }
    }
}

/// Rows that lead somewhere, without a heading; nothing where there are none.
pub(super) fn ways(rows: impl IntoIterator<Item = Row>) -> Vec<Block> {
    ways_under(String::new(), rows)
}

/// The same under a heading.
pub(super) fn ways_under(heading: String, rows: impl IntoIterator<Item = Row>) -> Vec<Block> {
    let rows: Vec<Row> = rows.into_iter().collect();
    if rows.is_empty() { Vec::new() } else { vec![Block::Ways { heading, rows }] }
}

/// A row that goes somewhere.
pub(super) fn way(of: Option<Icon>, title: String, line: String, place: Place) -> Row {
    let lines = Some(line).filter(|line| !line.is_empty()).into_iter().collect();
    Row { icon: of.map(icon), title, lines, does: Does::Act(Act::Go(place)) }
}

/// A part of what is folded, under the heading of a list; nothing where it has no line.
pub(super) fn more(world: &World, heading: impl Listed, lines: Vec<String>) -> Option<Section> {
    (!lines.is_empty()).then(|| Section { heading: world.words.label(heading), lines })
}

/// The position as it stands, in a line.
pub(super) fn position_line(world: &World) -> String {
    match world.fix {
        Some(fix) => world.words.position_so_far(fix),
        None if world.position_refused => world.words.of(PitText::PositionRefused),
        None => world.words.of(PitText::NoPosition),
    }
}

/// The way to allow the position, where it was refused.
pub(super) fn allow_position(world: &World) -> Vec<Block> {
    let row = || Row {
        icon: None,
        title: world.words.label(PitText::AllowPosition),
        lines: Vec::new(),
        does: Does::Ask(Ask::AllowPosition),
    };
    ways(world.position_refused.then(row))
}
