//! Files for map programs and terminals that only the command line writes.
//!
//! | module | what |
//! |---|---|
//! | `photos` | photos of the pits on their way into the GeoPackage |
//! | `shapefile` | zones with their depth as a zipped shapefile |
//! | `task_data` | zones with their depth as ISO 11783-10 task data |
//! | `archive` | files zipped together |

mod archive;
pub mod photos;
pub mod shapefile;
pub mod task_data;

use crate::field::FieldRead;
use pitface_core::tables::{Prescribed, prescribed, unmarked};

/// A field with its zones, for a terminal.
pub struct ForTerminal<'a> {
    /// The field.
    pub field: &'a FieldRead,
    /// Its number among those asked for, from 1.
    pub number: usize,
    /// Its zones that have ground.
    pub zones: Vec<Prescribed<'a>>,
}

impl<'a> ForTerminal<'a> {
    /// The fields of which some ground is to be loosened.
    pub fn of(fields: &'a [FieldRead]) -> Vec<Self> {
        let all = (1..).zip(fields).map(|(number, field)| Self { field, number, zones: prescribed(field) });
        all.filter(|its| its.zones.iter().any(|zone| zone.depth_mm.is_some()) || its.runs_unmarked())
            .collect()
    }
}

impl ForTerminal<'_> {
    /// Some zone is to be loosened, and nobody noted where it lies, as with wheelings.
    pub fn runs_unmarked(&self) -> bool {
        unmarked(self.field, &self.zones)
    }
}

/// A text cut to so many letters.
fn shortened(text: &str, letters: usize) -> String {
    text.chars().take(letters).collect::<String>().trim_end().to_owned()
}
