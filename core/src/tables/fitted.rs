//! Rows fitted to whoever reads them: words beside codes, other units, places told less exactly.

use super::{Cell, Column, Holds, Row, Shape, Table};
use crate::record::codes::codes;
use crate::units::{Quantity, UnitSystem};

/// Steps of a degree that a coarse place is told in: about a kilometre north and south. Our judgement: a parish can be told from
/// it, a field cannot.
pub const COARSE_DEG: f64 = 0.01;

codes!(
    /// How exactly places are told.
    Positions {
        /// As noted.
        Exact = "exact",
        /// Single places in steps of [`COARSE_DEG`]; no lines and no ground, whose form would give the place away.
        Coarse = "coarse",
        /// Not at all.
        None = "none",
    }
);

/// Puts a column of words behind every column of codes, named after it with `_label`. `label` gives the word of a list for a code.
pub fn labelled(tables: &mut [Table], label: impl Fn(&str, &str) -> Option<String>) {
    for table in tables {
        for at in (0..table.columns.len()).rev() {
            let Column { name, links, lists, .. } = &table.columns[at];
            if lists.is_empty() {
                continue;
            }
            let (lists, links) = (*lists, *links);
            let column =
                Column { name: format!("{name}_label").into(), holds: Holds::Text, links, lists: &[] };
            table.columns.insert(at + 1, column);
            for row in &mut table.rows {
                let word = match &row.cells[at] {
                    Cell::Text(code) => lists.iter().find_map(|list| label(list, code)),
                    _ => None,
                };
                row.cells.insert(at + 1, word.map_or(Cell::Empty, Cell::Text));
            }
        }
    }
}

/// What a measure is called at the end of a name in metric units and in US customary ones, what it is, and how many of its metric
/// unit one is.
const MEASURES: [(&str, &str, Quantity, f64); 4] = [
    ("_mm", "_in", Quantity::Length, 1.0),
    ("_m2", "_acres", Quantity::Ground, 1e-4),
    ("_m", "_ft", Quantity::Width, 1.0),
    ("_kmh", "_mph", Quantity::Speed, 1.0),
];
/// Decimals of a measure in US customary units: with two, an inch gives its millimetre back.
const DECIMALS: i32 = 2;

/// Gives measures in these units; the unit at the end of a column's name is changed along.
pub fn in_units(tables: &mut [Table], system: UnitSystem) {
    if system == UnitSystem::Metric {
        return;
    }
    let told = |quantity, metric: f64| {
        let scale = 10_f64.powi(DECIMALS);
        (system.from_metric(quantity, metric) * scale).round() / scale
    };
    for table in tables {
        for (at, column) in table.columns.iter_mut().enumerate() {
            let measure = MEASURES.iter().find(|(metric, ..)| column.name.ends_with(metric));
            let Some(&(metric, customary, quantity, factor)) = measure else { continue };
            let stem = column.name.strip_suffix(metric).unwrap_or(&column.name);
            column.name = format!("{stem}{customary}").into();
            column.holds = if column.holds == Holds::Lengths { Holds::Text } else { Holds::Number };
            for row in &mut table.rows {
                let cell = &mut row.cells[at];
                *cell = match std::mem::replace(cell, Cell::Empty) {
                    Cell::Whole(whole) => Cell::Number(told(quantity, whole as f64 * factor)),
                    Cell::Number(number) => Cell::Number(told(quantity, number * factor)),
                    Cell::Lengths(all) => {
                        let all = all.iter().map(|&mm| told(quantity, f64::from(mm)).to_string());
                        Cell::Text(all.collect::<Vec<_>>().join(" "))
                    }
                    other => other,
                };
            }
        }
    }
}

/// Column that says how exact a place is; it says nothing of one that is told less exactly.
const ACCURACY: &str = "accuracy_m";

/// Tells places as exactly as wanted.
pub fn placed(tables: &mut [Table], positions: Positions) {
    if positions == Positions::Exact {
        return;
    }
    for table in tables {
        let accuracy = table.columns.iter().position(|column| column.name == ACCURACY);
        for Row { shape, cells, .. } in &mut table.rows {
            *shape = match shape.take() {
                Some(Shape::Point(place)) if positions == Positions::Coarse => {
                    let steps = 1.0 / COARSE_DEG;
                    Some(Shape::Point(place.map(|degrees| (degrees * steps).round() / steps + 0.0)))
                }
                _ => None,
            };
            if let Some(at) = accuracy {
                cells[at] = Cell::Empty;
            }
        }
    }
}
