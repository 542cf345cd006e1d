//! `pitface set`: a machine and a tip depth in, or a notes file that has them; how it is set, what it takes and what it
//! loosens out.

mod run;
mod source;

use super::draw::ThemeArgument;
use crate::Answer;
use crate::argument::Shown;
use crate::json::merged;
use crate::trouble::Trouble;
use crate::write::Folder;
use clap::Args;
use pitface_core::RULES;
use pitface_core::advice::machine::{NarrowTine, Setting, TineForce, Work, compare, set};
use pitface_core::error::Fault;
use pitface_core::picture::machine::{SectionPicture, section};
use pitface_core::picture::{Ruler, Spoken, svg};
use pitface_core::record::Machine;
use pitface_core::words::{Heading, Words};
pub use run::Prices;
use run::Run;
use serde_json::json;
use source::Source;
use std::path::{Path, PathBuf};

/// A machine and what it is to do.
#[derive(Clone)]
struct Job {
    machine: Machine,
    work: Work,
}

/// The machine, what it is to do, and in what ground.
#[derive(Args)]
pub struct Set {
    #[command(flatten)]
    source: Source,
    #[command(flatten)]
    one: Run,
    /// The same with these changed, side by side: `spacing=40cm wings=none speed=5`; the names are those of the
    /// options.
    #[arg(long, value_name = "NAME=VALUE", num_args = 1.., value_parser = change)]
    against: Vec<(String, String)>,
    /// Draw a section across the machine into this SVG file.
    #[arg(long, value_name = "FILE.svg")]
    draw: Option<PathBuf>,
    /// Colours of the drawing.
    #[arg(long, value_enum, default_value_t)]
    theme: ThemeArgument,
    #[command(flatten)]
    tine: TineArguments,
}

/// For those who measured cohesion and friction: the draught of one plain tine after `McKyes` and Ali 1977.
#[derive(Args)]
#[command(next_help_heading = "One plain tine in soil that was measured")]
struct TineArguments {
    /// Cohesion, kPa.
    #[arg(long, value_name = "KPA", requires = "friction")]
    cohesion: Option<f64>,
    /// Internal friction, degrees.
    #[arg(long, value_name = "DEGREES", requires = "cohesion")]
    friction: Option<f64>,
    /// Rake of the tine against the level, degrees.
    #[arg(long, value_name = "DEGREES", default_value_t = 45.0)]
    rake: f64,
    /// Friction of soil on the tine, degrees.
    #[arg(long, value_name = "DEGREES", default_value_t = 20.0)]
    soil_metal: f64,
    /// Unit weight of the soil, kN/m³.
    #[arg(long, value_name = "KN", default_value_t = 15.0)]
    unit_weight: f64,
}

fn change(text: &str) -> Result<(String, String), String> {
    let (name, value) = text.split_once('=').ok_or("write NAME=VALUE, such as spacing=40cm")?;
    Ok((name.trim().to_owned(), value.trim().to_owned()))
}

impl Set {
    /// Sets it.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let one = self.one.checked()?;
        let from = self.source.job(&one)?;
        let Job { machine, work } = one.over(from.as_ref())?;
        let setting = set(&machine, &work).map_err(in_arguments)?;
        let mut lines = words.setting(&machine, &work, &setting);
        let mut json = json!({ "rules": RULES, "setting": setting });
        if !self.against.is_empty() {
            let other = one.changed(&self.against)?.over(from.as_ref())?;
            let other = set(&other.machine, &other.work).map_err(in_arguments)?;
            let rows = compare(&setting, &other);
            lines.push(String::new());
            // A draught of what must not be worked never stands without that word.
            lines.extend(words.not_to_be_worked(&other));
            lines.extend(words.compared(&rows));
            json = merged(json, json!({ "other": other, "compared": rows }));
        }
        if let Some(force) = self.tine.of(&machine, &work)? {
            lines.push(words.tine_force(&force));
            json = merged(json, json!({ "tine": force }));
        }
        lines.extend([String::new(), words.label(Heading::Cautions)]);
        lines.extend(setting.cautions.iter().map(|&caution| format!("  {}", words.of(caution))));
        if let Some(path) = &self.draw {
            let drawn = drawn(&words, &machine, &work, &setting, self.theme);
            let written = write(path, &drawn)?;
            lines.extend([String::new(), written.clone()]);
            json = merged(json, json!({ "written": [written] }));
        }
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }
}

fn in_arguments(faults: Vec<Fault>) -> Trouble {
    Trouble::of_file(Path::new("arguments"), faults)
}

fn drawn(words: &Words, machine: &Machine, work: &Work, setting: &Setting, theme: ThemeArgument) -> String {
    let key = words.section_key(machine, work, setting);
    let picture = SectionPicture::of(machine, work, setting, key, |depth_mm| {
        Ruler::down_to(depth_mm, words.unit(), words.unit_sign())
    });
    let (title, description) = (words.section_title(), words.describe_section(machine, work, setting));
    let spoken = Spoken { language: words.language().code(), title: &title, description: &description };
    svg(&section(&picture), theme.into(), &spoken)
}

/// Writes the drawing whole or not at all; where it is.
fn write(path: &Path, drawn: &str) -> Result<String, Trouble> {
    let Some(name) = path.file_name() else {
        let fault = Fault::new("draw", "this names no file", "name a file, such as section.svg");
        return Err(Trouble::of_arguments(fault));
    };
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut folder = Folder::open(folder)?;
    folder.add(&name.to_string_lossy(), drawn.as_bytes())?;
    folder.finish()?;
    Ok(path.display().to_string())
}

impl TineArguments {
    fn of(&self, machine: &Machine, work: &Work) -> Result<Option<TineForce>, Trouble> {
        let Some((cohesion_kpa, friction_degrees)) = self.cohesion.zip(self.friction) else {
            return Ok(None);
        };
        let tine = NarrowTine {
            width_mm: machine.foot_width_mm,
            tip_mm: work.tip_mm,
            rake_degrees: self.rake,
            soil_metal_degrees: self.soil_metal,
            friction_degrees,
            cohesion_kpa,
            unit_weight_kn_m3: self.unit_weight,
            surcharge_kpa: 0.0,
        };
        tine.force().map(Some).map_err(in_arguments)
    }
}
