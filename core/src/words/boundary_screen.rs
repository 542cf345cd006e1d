//! A file with the edges of fields on a phone: what is asked of what is in it, and why nothing of it can be taken.

use super::{Words, capital};
use crate::boundary::{Area, Trouble};
use crate::units::Quantity;
use fluent::fluent_args;

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

impl Words {
    fn hectares(&self, m2: f64) -> String {
        self.amount(Quantity::Ground, m2 / HECTARE_M2)
    }

    /// The way to a file, and the title of what is in one.
    pub fn edge_from_file(&self) -> String {
        capital(self.say("edge-from_file"))
    }

    /// How many areas are in a file.
    pub fn edges_in_file(&self, areas: usize) -> String {
        self.say_with("edge-in_file", &fluent_args!["areas" => areas])
    }

    /// Says what a tap on an area does: in an open field, or where none is open.
    pub fn edge_how(&self, field: Option<&str>) -> String {
        field.map_or_else(
            || self.say("edge-how_new"),
            |field| self.say_with("edge-how", &fluent_args!["field" => self.name(field)]),
        )
    }

    /// An area on one line, by the name it would have: `Mere Piece, 21.9 ha`.
    pub fn edge_named(&self, name: &str, area: &Area) -> String {
        let name = if name.is_empty() { self.say("boundary-unnamed") } else { self.name(name) };
        let part = area.part.map(|(part, parts)| {
            self.say_with("boundary-part", &fluent_args!["part" => part, "parts" => parts])
        });
        [Some(name), part, Some(self.hectares(area.area_m2))]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// How far from here an area lies, metres; 0 for where one stands in it.
    pub fn edge_away(&self, metres: f64) -> String {
        if metres > 0.0 { self.away(metres) } else { self.say("edge-here") }
    }

    /// Only some of the areas or lines are shown.
    pub fn edges_left_out(&self, shown: usize, all: usize) -> String {
        self.say_with("edge-left_out", &fluent_args!["shown" => shown, "all" => all])
    }

    /// Lines in a file can be taken only into a field.
    pub fn lines_need_a_field(&self, lines: usize) -> String {
        self.say_with("edge-lines_need_field", &fluent_args!["lines" => lines])
    }

    /// Says whether an area is to be the edge, in place of one or not.
    pub fn edge_asked(&self, replaces: bool) -> String {
        self.say(if replaces { "edge-replace_asked" } else { "edge-take_asked" })
    }

    /// The area in a file beside the one that the edge of now encloses, where it encloses one.
    pub fn edge_compared(&self, area: &Area, before_m2: Option<f64>) -> String {
        let now = before_m2.map(|before| {
            let args = fluent_args!["before" => self.hectares(before), "area" => self.hectares(area.area_m2)];
            self.say_with("edge-compared", &args)
        });
        now.unwrap_or_default()
    }

    /// The tap that takes an area as the edge.
    pub fn edge_take(&self, replaces: bool) -> String {
        capital(self.say(if replaces { "edge-replace" } else { "edge-take" }))
    }

    /// An area or a line lies far from everything noted of a field.
    pub fn edge_far(&self, field: &str, metres: f64) -> String {
        let args = fluent_args!["field" => self.name(field), "distance" => self.distance(metres)];
        self.say_with("edge-far", &args)
    }

    /// Sides of an area cross: it can be no edge.
    pub fn edge_crossed(&self) -> String {
        self.say("edge-crossed")
    }

    /// Latitude stands before longitude in a file, which was read so.
    pub fn edge_swapped(&self) -> String {
        self.say("edge-swapped")
    }

    /// Says what lies along so many lines of a file.
    pub fn line_asked(&self, lines: usize) -> String {
        self.say_with("edge-line_asked", &fluent_args!["lines" => lines])
    }

    /// Why nothing of a file can be taken, and what to do.
    pub fn boundary_trouble(&self, trouble: Trouble) -> String {
        self.say(match trouble {
            Trouble::UnknownKind => "boundary_trouble-unknown_kind",
            Trouble::PartOfShapefile => "boundary_trouble-part_of_shapefile",
            Trouble::TooLarge => "boundary_trouble-too_large",
            Trouble::Empty => "boundary_trouble-empty",
            Trouble::OtherSystem => "boundary_trouble-other_system",
            Trouble::Swapped => "boundary_trouble-swapped",
            Trouble::Damaged => "boundary_trouble-damaged",
        })
    }
}
