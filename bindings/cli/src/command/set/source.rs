//! A notes file as the source of machine, depth, layer, soil and roll test.

use super::Job;
use super::run::Run;
use crate::argument::code_of;
use crate::asked::OfStore;
use crate::field::FieldRead;
use crate::machine::machine_of;
use crate::trouble::Trouble;
use clap::Args;
use pitface_core::advice::ZoneCall;
use pitface_core::advice::machine::{Terms, work_in_zone};
use pitface_core::error::Fault;
use pitface_core::record::Zone;
use std::path::PathBuf;

/// Where machine and work come from, if not from the options alone.
#[derive(Args)]
pub struct Source {
    /// Take machine, tip depth, layer, soil and roll test from this notes file; options given beside it go before.
    #[arg(id = "from", long = "from", value_name = "FIELD.notes.json", conflicts_with_all = ["store", "field"])]
    file: Option<PathBuf>,
    #[command(flatten)]
    kept: OfStore,
    /// The machine, by its name in the notes; needed where there are several.
    #[arg(long, value_name = "NAME")]
    machine: Option<String>,
    /// The zone whose depth is meant; needed where several are to be loosened.
    #[arg(long, value_parser = code_of!(Zone))]
    zone: Option<Zone>,
}

impl Source {
    /// The job as file or store have it; `None` without either.
    pub fn job(&self, options: &Run) -> Result<Option<Job>, Trouble> {
        let field = self.kept.or_of(self.file.as_deref())?;
        if field.is_none() && (self.machine.is_some() || self.zone.is_some()) {
            let wrong = "machine and zone are looked for in notes";
            let fault = Fault::new("", wrong, "give --from or --store with --machine and --zone");
            return Err(Trouble::of_arguments(fault));
        }
        field.map(|field| self.job_in(&field, options)).transpose()
    }

    fn job_in(&self, field: &FieldRead, options: &Run) -> Result<Job, Trouble> {
        let machine = machine_of(field, self.machine.as_deref())?;
        let calls: Vec<&ZoneCall> = field.advice.zones.iter().filter(|call| call.tip.is_some()).collect();
        let listed = || calls.iter().map(|call| call.zone.code()).collect::<Vec<_>>().join(", ");
        let fault = |at: &str, wrong: &str, todo: String| {
            Trouble::one(&field.origin.called, Fault::new(at, wrong, todo))
        };
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
