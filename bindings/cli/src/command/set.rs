//! `pitface set`: a machine and a tip depth in; how it is set, what it takes and what it loosens out.

use super::draw::ThemeArgument;
use crate::Answer;
use crate::amount::amount_of;
use crate::argument::{Shown, code_of, millimetres};
use crate::json::merged;
use crate::trouble::Trouble;
use crate::write::Folder;
use clap::{Args, FromArgMatches};
use pitface_core::RULES;
use pitface_core::advice::machine::{
    DraughtSoil, FIELD_EFFICIENCY, FuelFormula, LayerDepths, NarrowTine, Price, SIDE_SLOPE_DEGREES, Setting,
    Surface, TineForce, Work, compare, set,
};
use pitface_core::error::Fault;
use pitface_core::picture::machine::{SectionPicture, section};
use pitface_core::picture::{Ruler, Spoken, svg};
use pitface_core::record::{Drive, LeadingTines, Machine, RecordId, RollOutcome, Tractor, Wings};
use pitface_core::words::{Heading, Words};
use serde_json::{Map, json};
use std::path::{Path, PathBuf};

/// The machine, what it is to do, and in what ground.
#[derive(Args)]
pub struct Set {
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

/// A machine and its work. A bare length is millimetres, other bare numbers are metric.
#[derive(Args, Clone)]
struct Run {
    /// Tip depth.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    tip: u32,
    /// Top and bottom of the layer to be broken.
    #[arg(long, value_names = ["TOP", "BOTTOM"], num_args = 2, value_parser = millimetres)]
    layer: Option<Vec<u32>>,
    /// Width of the foot without wings.
    #[arg(long, value_name = "WIDTH", value_parser = millimetres)]
    foot: u32,
    /// Width over the wings.
    #[arg(long, value_name = "WIDTH", value_parser = millimetres)]
    wings: Option<u32>,
    /// Lift of the wings.
    #[arg(long, value_name = "HEIGHT", value_parser = millimetres)]
    lift: Option<u32>,
    /// Depth of the leading tines.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    leading: Option<u32>,
    /// Number of legs.
    #[arg(long, value_name = "N")]
    legs: u32,
    /// From leg to leg; for a single leg, from run to run.
    #[arg(long, value_name = "WIDTH", value_parser = millimetres)]
    spacing: u32,
    /// Width worked in one run, in m or ft; legs times spacing if left out.
    #[arg(long, value_name = "WIDTH", value_parser = amount_of!(Width))]
    width: Option<f64>,
    /// Deepest tip depth the machine reaches.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    reach: Option<u32>,
    /// Speed: 6, 6km/h or 4mph.
    #[arg(long, value_name = "SPEED", value_parser = amount_of!(Speed))]
    speed: f64,
    /// Soil, for the draught.
    #[arg(long, value_parser = code_of!(DraughtSoil))]
    soil: DraughtSoil,
    /// Ground under the wheels.
    #[arg(long, default_value = "firm", value_parser = code_of!(Surface))]
    surface: Surface,
    /// Roll test at tip depth.
    #[arg(long, value_parser = code_of!(RollOutcome))]
    roll: Option<RollOutcome>,
    /// Rated engine power of the tractor: 120, 120kW or 160hp.
    #[arg(long, value_name = "POWER", value_parser = amount_of!(Power))]
    tractor: Option<f64>,
    /// What pulls.
    #[arg(long, value_parser = code_of!(Drive))]
    drive: Option<Drive>,
    /// Formula for the fuel.
    #[arg(long, default_value = "part_load", value_parser = code_of!(FuelFormula))]
    fuel_formula: FuelFormula,
    /// Share of the time in the field spent working.
    #[arg(long, value_name = "SHARE", default_value_t = FIELD_EFFICIENCY)]
    efficiency: f64,
    /// Slope of the loosened ground's sides, degrees.
    #[arg(long, value_name = "DEGREES", default_value_t = SIDE_SLOPE_DEGREES)]
    slope: f64,
    /// Cost by area, fuel included: 79.47, 79.47/ha or 32.16/ac.
    #[arg(long, value_name = "MONEY", value_parser = amount_of!(CostPerArea))]
    cost: Option<f64>,
    /// Cost by the hour, fuel beside it.
    #[arg(long, value_name = "MONEY")]
    cost_per_hour: Option<f64>,
    /// Price of the fuel: 0.70, 0.70/l or 3.20/gal.
    #[arg(long, value_name = "MONEY", value_parser = amount_of!(PricePerVolume))]
    fuel_price: Option<f64>,
    /// Price of the grain: 160, 160/t or 0.08/lb.
    #[arg(long, value_name = "MONEY", value_parser = amount_of!(PricePerMass))]
    grain_price: Option<f64>,
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
        let (machine, work) = (one.machine(), one.work());
        let setting = set(&machine, &work).map_err(in_arguments)?;
        let mut lines = words.setting(&machine, &work, &setting);
        let mut json = json!({ "rules": RULES, "setting": setting });
        if !self.against.is_empty() {
            let other = one.changed(&self.against)?;
            let other = set(&other.machine(), &other.work()).map_err(in_arguments)?;
            let rows = compare(&setting, &other);
            lines.push(String::new());
            lines.extend(words.compared(&rows));
            json = merged(json, json!({ "other": other, "compared": rows }));
        }
        if let Some(force) = self.tine.of(&one)? {
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

impl Run {
    fn machine(&self) -> Machine {
        Machine {
            id: RecordId::new(0, [0; 10]),
            name: "set".into(),
            legs: self.legs,
            spacing_mm: self.spacing,
            foot_width_mm: self.foot,
            wings: self.wings.map(|width_mm| Wings { width_mm, lift_mm: self.lift }),
            leading: self.leading.map(|depth_mm| LeadingTines { depth_mm: Some(depth_mm) }),
            working_width_mm: self.width.map(|metres| (metres * 1000.0).round() as u32),
            speed: None,
            reach_mm: self.reach,
            tractor: self.tractor.zip(self.drive).map(|(power_kw, drive)| Tractor { power_kw, drive }),
            unknown: Map::new(),
        }
    }

    fn work(&self) -> Work {
        let layer = self.layer.as_deref();
        let by_area = self.cost.map(|cost| Price::PerHectare { cost });
        let by_time = self.cost_per_hour.zip(self.fuel_price);
        Work {
            tip_mm: self.tip,
            layer: layer.and_then(|depths| {
                Some(LayerDepths { top_mm: *depths.first()?, bottom_mm: *depths.get(1)? })
            }),
            soil: self.soil,
            surface: self.surface,
            speed_kmh: self.speed,
            roll: self.roll,
            slope_degrees: self.slope,
            field_efficiency: self.efficiency,
            fuel: self.fuel_formula,
            price: by_area.or(by_time.map(|(cost, fuel_per_litre)| Price::PerHour { cost, fuel_per_litre })),
            grain_price_per_t: self.grain_price,
        }
    }

    /// The same with some options given anew, each read as on the command line; `none` takes one away.
    fn changed(&self, changes: &[(String, String)]) -> Result<Self, Trouble> {
        let mut other = self.clone();
        let mut options = Vec::new();
        for (name, value) in changes {
            match (name.as_str(), value.as_str()) {
                ("wings", "none") => (other.wings, other.lift) = (None, None),
                ("leading", "none") => other.leading = None,
                ("width", "none") => other.width = None,
                ("roll", "none") => other.roll = None,
                _ => options.push(format!("--{name}={value}")),
            }
        }
        // Read as changes only: what is not named keeps its value, a default too.
        let command = Self::augment_args_for_update(clap::Command::new("against").no_binary_name(true))
            .mut_args(|argument| argument.required(false).default_value(None::<&str>));
        let matches =
            command.try_get_matches_from(options).map_err(|unclear| Trouble::arguments(&unclear))?;
        other.update_from_arg_matches(&matches).map_err(|unclear| Trouble::arguments(&unclear))?;
        other.checked()
    }

    /// Itself, if options that need each other are there together.
    fn checked(self) -> Result<Self, Trouble> {
        let apart = [
            ("lift", self.lift.is_some() && self.wings.is_none(), "give --wings with it"),
            ("tractor", self.tractor.is_some() != self.drive.is_some(), "give --tractor and --drive"),
            (
                "cost-per-hour",
                self.cost_per_hour.is_some() != self.fuel_price.is_some(),
                "give --cost-per-hour and --fuel-price",
            ),
            ("cost", self.cost.is_some() && self.cost_per_hour.is_some(), "give --cost or --cost-per-hour"),
        ];
        let faults = apart.into_iter().filter(|(_, wrong, _)| *wrong);
        let faults =
            faults.map(|(at, _, todo)| Fault::new(at, "this does not stand so with the other options", todo));
        in_arguments(faults.collect()).or(self)
    }
}

impl TineArguments {
    fn of(&self, run: &Run) -> Result<Option<TineForce>, Trouble> {
        let Some((cohesion_kpa, friction_degrees)) = self.cohesion.zip(self.friction) else {
            return Ok(None);
        };
        let tine = NarrowTine {
            width_mm: run.foot,
            tip_mm: run.tip,
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
