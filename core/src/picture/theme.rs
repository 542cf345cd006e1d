//! Colours and stroke widths of the roles.
//!
//! All values are our judgement. What they hold to is tested: text and lines stand at 7 : 1 or more on every
//! ground they are drawn on (WCAG 2.2, contrast formula), and neighbouring soil tones stay apart in lightness,
//! also as people with deuteranopia or protanopia see them. Print is black on white: patterns carry all.

use super::shape::Role;
use std::fmt::{self, Write as _};

/// Whose colours a drawing is painted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Theme {
    /// Dark on light, for the day.
    Light,
    /// Light on dark.
    Dark,
    /// Black on white.
    Print,
    /// Colours are left to the page the drawing stands in, see [`style_sheet`].
    Page,
}

/// A colour in sRGB, opaque. Shown as `#rrggbb`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[expect(missing_docs, reason = "fields say what they are: 0 to 255")]
pub struct Colour {
    pub red: u8,
    pub green: u8,
    pub blue: u8,
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }
}

/// A row: role, colour by day, colour in the dark, colour in print, stroke width in points.
type Row = (Role, u32, u32, u32, f64);

const BLACK: u32 = 0x00_0000;
const WHITE: u32 = 0xFF_FFFF;

/// In the order of [`Role::ALL`]. Stroke widths of roles that are only filled are 0.
const TABLE: [Row; Role::ALL.len()] = [
    (Role::Paper, 0xFB_F8F2, 0x10_0E0B, WHITE, 0.0),
    (Role::Ink, 0x17_110C, 0xF8_F3EA, BLACK, 1.6),
    (Role::FaintInk, 0x4A_4036, 0xC9_BFB0, BLACK, 1.0),
    (Role::SoilPlain, 0xEC_E5D8, 0x2E_2B27, WHITE, 0.0),
    (Role::SoilOpen, 0xF7_E9CB, 0x5C_4E33, WHITE, 0.0),
    (Role::SoilFirm, 0xE8_CC98, 0x49_3A22, WHITE, 0.0),
    (Role::SoilTight, 0xD6_AC78, 0x37_2618, WHITE, 0.0),
    (Role::SoilShut, 0xC3_9578, 0x23_130A, WHITE, 0.0),
    (Role::HatchOpen, 0x17_110C, 0xF8_F3EA, BLACK, 0.0),
    (Role::HatchFirm, 0x17_110C, 0xE4_D8C3, BLACK, 0.9),
    (Role::HatchTight, 0x17_110C, 0xCB_BCA3, BLACK, 1.6),
    (Role::HatchShut, 0x17_110C, 0xB5_A48B, BLACK, 0.0),
    (Role::Outline, 0x17_110C, 0xF8_F3EA, BLACK, 1.4),
    (Role::Boundary, 0x17_110C, 0xF8_F3EA, BLACK, 1.0),
    (Role::Casing, 0xFB_F8F2, 0x10_0E0B, WHITE, 4.6),
    (Role::Root, 0x17_110C, 0xF8_F3EA, BLACK, 1.8),
    (Role::ChannelWall, 0x17_110C, 0xF8_F3EA, BLACK, 1.1),
    (Role::ChannelHollow, 0xFB_F8F2, 0x10_0E0B, WHITE, 0.0),
    (Role::PatchRust, 0x9A_3B12, 0xC4_622C, WHITE, 0.0),
    (Role::PatchGrey, 0x8E_9AA0, 0x7D_8A91, WHITE, 0.0),
    (Role::PatchEdge, 0x17_110C, 0xF8_F3EA, BLACK, 1.0),
    (Role::Ruler, 0x17_110C, 0xF8_F3EA, BLACK, 1.2),
    (Role::Leader, 0x4A_4036, 0xC9_BFB0, BLACK, 0.9),
    (Role::Tip, 0x0B_2C55, 0xBF_E0FF, BLACK, 2.6),
    (Role::Measured, 0x17_110C, 0xF8_F3EA, BLACK, 2.8),
];

impl Role {
    /// Width of a line in this role, points; 0 for roles that are only filled.
    pub const fn stroke_width(self) -> f64 {
        TABLE[self as usize].4
    }
}

impl Theme {
    /// Colour of a role. [`Theme::Page`] answers as [`Theme::Light`].
    pub const fn colour(self, role: Role) -> Colour {
        let (_, light, dark, print, _) = TABLE[role as usize];
        let rgb = match self {
            Self::Light | Self::Page => light,
            Self::Dark => dark,
            Self::Print => print,
        };
        let [_, red, green, blue] = rgb.to_be_bytes();
        Colour { red, green, blue }
    }

    /// Returns what the SVG writer puts as a paint.
    pub(super) fn paint(self, role: Role) -> String {
        match self {
            Self::Page => format!("var(--{})", role.code()),
            _ => self.colour(role).to_string(),
        }
    }
}

/// Style sheet for a page with drawings in [`Theme::Page`]: one CSS variable a role, by day, in the dark where
/// the reader's device asks for it, and in print.
pub fn style_sheet() -> String {
    let variables = |theme: Theme| {
        Role::ALL.iter().fold(String::new(), |mut css, &role| {
            let _ = write!(css, "--{}:{};", role.code(), theme.colour(role));
            css
        })
    };
    format!(
        ":root{{color-scheme:light dark;{}}}\n\
         @media (prefers-color-scheme:dark){{:root{{{}}}}}\n\
         @media print{{:root{{color-scheme:light;{}}}}}\n",
        variables(Theme::Light),
        variables(Theme::Dark),
        variables(Theme::Print),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_stands_in_the_order_of_the_roles() {
        for (row, &role) in TABLE.iter().zip(Role::ALL) {
            assert_eq!(row.0, role);
        }
    }
}
