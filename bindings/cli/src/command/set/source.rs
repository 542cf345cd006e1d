//! A notes file as the source of machine, depth, layer, soil and roll test.

use super::Job;
use super::run::Run;
use crate::argument::code_of;
use crate::field::FieldRead;
use crate::keep;
use crate::machine::machine_of;
use crate::trouble::Trouble;
use clap::Args;
use pitface_core::advice::ZoneCall;
use pitface_core::advice::machine::{Terms, work_in_zone};
use pitface_core::error::Fault;
use pitface_core::record::Zone;
use std::path::{Path, PathBuf};

/// Where machine and work come from, if not from the options alone.
#[derive(Args)]
pub struct Source {
    /// Take machine, tip depth, layer, soil and roll test from this notes file; options given beside it go before.
    #[arg(id = "from", long = "from", value_name = "FIELD.notes.json")]
    file: Option<PathBuf>,
    /// The machine, by its name in the file; needed where there are several.
    #[arg(long, value_name = "NAME", requires = "from")]
    machine: Option<String>,
    /// The zone whose depth is meant; needed where several are to be loosened.
    #[arg(long, requires = "from", value_parser = code_of!(Zone))]
    zone: Option<Zone>,
}

impl Source {
    /// The job as the file has it; `None` without a file.
    pub fn job(&self, options: &Run) -> Result<Option<Job>, Trouble> {
        let Some(file) = &self.file else { return Ok(None) };
        let fields = keep::of_files(std::slice::from_ref(file))?;
        fields.first().map(|field| self.job_in(field, file, options)).transpose()
    }

    fn job_in(&self, field: &FieldRead, file: &Path, options: &Run) -> Result<Job, Trouble> {
        let machine = machine_of(&field.notes, self.machine.as_deref(), file)?;
        let calls: Vec<&ZoneCall> = field.advice.zones.iter().filter(|call| call.tip.is_some()).collect();
        let listed = || calls.iter().map(|call| call.zone.code()).collect::<Vec<_>>().join(", ");
        let fault = |at: &str, wrong: &str, todo: String| Trouble::one(file, Fault::new(at, wrong, todo));
        let call = match (self.zone, calls.as_slice()) {
            (Some(zone), _) => calls.iter().copied().find(|call| call.zone == zone),
            (None, [call]) => Some(*call),
            (None, []) => None,
            (None, _) => {
                let todo = format!("name one with --zone: {}", listed());
                return Err(fault("pits", "several zones are to be loosened", todo));
            }
        };
        let terms = Terms { speed_kmh: options.speed, soil: options.soil, ..Terms::default() };
        let Some(call) = call else {
            let todo = if calls.is_empty() {
                "no zone is to be loosened: see `pitface read` for the calls".to_owned()
            } else {
                format!("name one with --zone: {}", listed())
            };
            return Err(fault("pits", "there is no tip depth to set the machine for", todo));
        };
        let work = work_in_zone(&field.notes.field, call, &machine, &terms).map_err(|_| {
            let todo = "add \"texture\" to the field, or give --soil".to_owned();
            fault("field.texture", "the texture is not noted", todo)
        })?;
        Ok(Job { machine, work })
    }
}
