//! Outlines and lines in files of other programs: what there is to choose from, and what was taken.

use super::Words;
use crate::boundary::{Area, Course, Format, FromFile, System};
use crate::record::Buried;
use crate::units::Quantity;
use fluent::fluent_args;

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// Says what a kind of file is called; the same in every language.
const fn called(format: Format) -> &'static str {
    match format {
        Format::GeoJson => "GeoJSON",
        Format::Kml => "KML",
        Format::Kmz => "KMZ",
        Format::Gpx => "GPX",
        Format::Shapefile => "Shapefile",
        Format::GeoPackage => "GeoPackage",
    }
}

impl Words {
    /// Kind and reference system of a file: `GeoJSON, degrees on WGS 84.`
    pub fn boundary_file(&self, file: &FromFile) -> String {
        let system = match file.system {
            _ if !file.system_stated => "boundary_system-unstated",
            System::Wgs84 => "boundary_system-wgs84",
            System::Etrs89 => "boundary_system-etrs89",
            System::Metres(_) => "boundary_system-metres",
            System::EtrsMetres(_) => "boundary_system-etrs_metres",
        };
        self.say_with(
            "boundary-file",
            &fluent_args!["format" => called(file.format), "system" => self.say(system)],
        )
    }

    /// Says what a file holds, a line each, numbered as they are named when one is taken: areas under their heading, then lines, then how many points were
    /// left out.
    pub fn boundary_lines(&self, file: &FromFile) -> Vec<String> {
        let mut lines = Vec::new();
        lines.extend((!file.areas.is_empty()).then(|| self.say("boundary-areas")));
        lines.extend(
            (1..).zip(&file.areas).map(|(number, area)| format!("{number}. {}", self.boundary_area(area))),
        );
        lines.extend((!file.lines.is_empty()).then(|| self.say("boundary-lines")));
        lines.extend(
            (1..).zip(&file.lines).map(|(number, line)| format!("{number}. {}", self.boundary_line(line))),
        );
        let points = fluent_args!["points" => file.points];
        lines.extend((file.points > 0).then(|| self.say_with("boundary-points", &points)));
        lines
    }

    /// An area in a clause: `Mere Piece, 12.4 ha, 57 corners`.
    pub fn boundary_area(&self, area: &Area) -> String {
        let mut said = vec![self.boundary_name(area.name.as_deref())];
        said.extend(area.part.map(|(part, parts)| {
            self.say_with("boundary-part", &fluent_args!["part" => part, "parts" => parts])
        }));
        said.push(self.amount(Quantity::Ground, area.area_m2 / HECTARE_M2));
        said.push(self.say_with("boundary-corners", &fluent_args!["corners" => area.ring.len()]));
        said.extend(area.from_line.then(|| self.say("boundary-from_line")));
        said.extend((area.holes > 0).then(|| {
            let area = fluent_args!["holes" => area.holes, "area" => self.amount(Quantity::Ground, area.holes_m2 / HECTARE_M2)];
            self.say_with("boundary-holes", &area)
        }));
        said.join(", ")
    }

    /// A line in a clause: `Drain west, 234 m, 5 places`.
    pub fn boundary_line(&self, line: &Course) -> String {
        let places = self.say_with("boundary-places", &fluent_args!["places" => line.along.len()]);
        [self.boundary_name(line.name.as_deref()), self.amount(Quantity::Width, line.length_m), places]
            .join(", ")
    }

    /// The outline of a field was taken from a file; `before_m2` is the area of the one before, if there was one.
    pub fn boundary_outline_taken(&self, field: &str, area: &Area, before_m2: Option<f64>) -> String {
        let ground = |m2: f64| self.amount(Quantity::Ground, m2 / HECTARE_M2);
        let args = fluent_args![
            "field" => self.name(field),
            "area" => ground(area.area_m2),
            "before" => before_m2.map(ground).unwrap_or_default(),
        ];
        self.say_with(if before_m2.is_some() { "boundary-replaced" } else { "boundary-taken" }, &args)
    }

    /// All lines of a file in a clause: `All 12 lines at once, 2,300 m`.
    pub fn all_lines(&self, lines: &[Course]) -> String {
        self.say_with(
            "boundary-all_lines",
            &fluent_args!["lines" => lines.len(), "length" => self.length_of(lines)],
        )
    }

    /// Lines of what lies buried were taken from a file.
    pub fn boundary_lines_taken(&self, field: &str, kind: Buried, lines: &[Course]) -> String {
        let kind_key = match kind {
            Buried::Drain => "boundary_kind-drain",
            Buried::MoleDrain => "boundary_kind-mole_drain",
            Buried::Service => "boundary_kind-service",
        };
        let args = fluent_args![
            "lines" => lines.len(),
            "field" => self.name(field),
            "kind" => self.say(kind_key),
            "length" => self.length_of(lines),
        ];
        self.say_with("boundary-line_taken", &args)
    }

    fn length_of(&self, lines: &[Course]) -> String {
        self.amount(Quantity::Width, lines.iter().map(|line| line.length_m).sum())
    }

    fn boundary_name(&self, name: Option<&str>) -> String {
        name.map_or_else(|| self.say("boundary-unnamed"), |name| self.name(name))
    }
}
