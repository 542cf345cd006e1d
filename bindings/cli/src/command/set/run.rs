//! The machine and its work as options: over what a notes file says, or all of it.

use super::{Job, in_arguments};
use crate::amount::amount_of;
use crate::argument::{code_of, millimetres};
use crate::trouble::Trouble;
use clap::{Args, FromArgMatches};
use pitface_core::advice::machine::{DraughtSoil, FuelFormula, LayerDepths, Price, SideSlope, Surface, Work};
use pitface_core::error::Fault;
use pitface_core::record::{Drive, LeadingTines, Machine, RecordId, RollOutcome, SpeedRange, Tractor, Wings};
use serde_json::Map;

/// A machine and its work. A bare length is millimetres, other bare numbers are metric. Without `--from` the first six
/// are needed.
#[derive(Args, Clone)]
pub struct Run {
    /// Tip depth.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    pub tip: Option<u32>,
    /// Width of the foot without wings.
    #[arg(long, value_name = "WIDTH", value_parser = millimetres)]
    foot: Option<u32>,
    /// Number of legs.
    #[arg(long, value_name = "N")]
    legs: Option<u32>,
    /// From leg to leg; for a single leg, from run to run.
    #[arg(long, value_name = "WIDTH", value_parser = millimetres)]
    spacing: Option<u32>,
    /// Speed: 6, 6km/h or 4mph.
    #[arg(long, value_name = "SPEED", value_parser = amount_of!(Speed))]
    pub speed: Option<f64>,
    /// Soil, for the draught.
    #[arg(long, value_parser = code_of!(DraughtSoil))]
    pub soil: Option<DraughtSoil>,
    /// Top and bottom of the layer to be broken.
    #[arg(long, value_names = ["TOP", "BOTTOM"], num_args = 2, value_parser = millimetres)]
    layer: Option<Vec<u32>>,
    /// Width over the wings.
    #[arg(long, value_name = "WIDTH", value_parser = millimetres)]
    wings: Option<u32>,
    /// Lift of the wings.
    #[arg(long, value_name = "HEIGHT", value_parser = millimetres)]
    lift: Option<u32>,
    /// Depth of the leading tines.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    leading: Option<u32>,
    /// Width worked in one run, in m or ft; legs times spacing if left out.
    #[arg(long, value_name = "WIDTH", value_parser = amount_of!(Width))]
    width: Option<f64>,
    /// Slowest and fastest speed the machine is worked at.
    #[arg(long, value_names = ["SLOWEST", "FASTEST"], num_args = 2, value_parser = amount_of!(Speed))]
    speeds: Option<Vec<f64>>,
    /// Deepest tip depth the machine reaches.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    reach: Option<u32>,
    /// Ground under the wheels; firm if left out.
    #[arg(long, value_parser = code_of!(Surface))]
    surface: Option<Surface>,
    /// Roll test at tip depth.
    #[arg(long, value_parser = code_of!(RollOutcome))]
    roll: Option<RollOutcome>,
    /// Rated engine power of the tractor: 120, 120kW or 160hp.
    #[arg(long, value_name = "POWER", value_parser = amount_of!(Power))]
    tractor: Option<f64>,
    /// Mass of the tractor as it works: 7400, 7400kg or 16300lb.
    #[arg(long, value_name = "MASS", value_parser = amount_of!(Mass))]
    tractor_mass: Option<f64>,
    /// Pull over the tractor's weight, where it was measured, such as 0.45.
    #[arg(long, value_name = "SHARE")]
    grip: Option<f64>,
    /// What pulls.
    #[arg(long, value_parser = code_of!(Drive))]
    drive: Option<Drive>,
    /// Formula for the fuel; `part_load` if left out.
    #[arg(long, value_parser = code_of!(FuelFormula))]
    fuel_formula: Option<FuelFormula>,
    /// Share of the time in the field spent working; 0.85 if left out.
    #[arg(long, value_name = "SHARE")]
    efficiency: Option<f64>,
    /// Slope of the loosened ground's sides, degrees, where it was measured; 45 to 60 if left out.
    #[arg(long, value_name = "DEGREES")]
    slope: Option<f64>,
    #[command(flatten)]
    prices: Prices,
    /// What `--against` takes away.
    #[arg(skip)]
    without: Vec<String>,
}

/// What it is paid by.
#[derive(Args, Clone)]
pub struct Prices {
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
    pub grain_price: Option<f64>,
}

impl Prices {
    /// The price, if one is given.
    pub fn price(&self) -> Option<Price> {
        let by_time = self.cost_per_hour.zip(self.fuel_price);
        let by_time = by_time.map(|(cost, fuel_per_litre)| Price::PerHour { cost, fuel_per_litre });
        self.cost.map(|cost| Price::PerHectare { cost }).or(by_time)
    }

    /// Returns what does not stand together.
    pub fn faults(&self) -> Vec<Fault> {
        let by_half = self.cost_per_hour.is_some() != self.fuel_price.is_some();
        let twice = self.cost.is_some() && self.cost_per_hour.is_some();
        let faults = [
            by_half.then(|| apart("cost-per-hour", "give --cost-per-hour and --fuel-price")),
            twice.then(|| apart("cost", "give --cost or --cost-per-hour")),
        ];
        faults.into_iter().flatten().collect()
    }
}

fn apart(at: &str, todo: &str) -> Fault {
    Fault::new(at, "this does not stand so with the other options", todo)
}

impl Run {
    /// Itself, if options that need each other are there together.
    pub fn checked(self) -> Result<Self, Trouble> {
        in_arguments(self.prices.faults()).or(self)
    }

    /// These options over what a notes file gives.
    pub fn over(&self, from: Option<&Job>) -> Result<Job, Trouble> {
        let mut job = from.cloned().map_or_else(|| self.bare(), Ok)?;
        let faults = self.set_machine(&mut job.machine);
        self.set_work(&mut job.work);
        in_arguments(faults).or(job)
    }

    /// A job of nothing but what must be given.
    fn bare(&self) -> Result<Job, Trouble> {
        let mut faults = Vec::new();
        let machine = Machine {
            id: RecordId::new(0, [0; 10]),
            name: "set".into(),
            legs: need("legs", self.legs, 1, &mut faults),
            spacing_mm: need("spacing", self.spacing, 0, &mut faults),
            foot_width_mm: need("foot", self.foot, 0, &mut faults),
            wings: None,
            leading: None,
            working_width_mm: None,
            speed: None,
            reach_mm: None,
            tractor: None,
            tractor_mass_kg: None,
            unknown: Map::new(),
        };
        let tip_mm = need("tip", self.tip, 0, &mut faults);
        let soil = need("soil", self.soil, DraughtSoil::Medium, &mut faults);
        let speed_kmh = need("speed", self.speed, 0.0, &mut faults);
        in_arguments(faults).or(Job { machine, work: Work::new(tip_mm, soil, speed_kmh) })
    }

    fn set_machine(&self, machine: &mut Machine) -> Vec<Fault> {
        let mut faults = Vec::new();
        let is_gone = |part: &str| self.without.iter().any(|gone| gone == part);
        replace(&mut machine.legs, self.legs);
        replace(&mut machine.spacing_mm, self.spacing);
        replace(&mut machine.foot_width_mm, self.foot);
        if self.legs.is_some() || self.spacing.is_some() {
            machine.working_width_mm = None;
        }
        machine.wings = machine.wings.filter(|_| !is_gone("wings"));
        machine.leading = machine.leading.filter(|_| !is_gone("leading"));
        machine.working_width_mm = machine.working_width_mm.filter(|_| !is_gone("width"));
        let lift_mm = self.lift.or(machine.wings.and_then(|wings| wings.lift_mm));
        let width_mm = self.wings.or(machine.wings.map(|wings| wings.width_mm));
        machine.wings = width_mm.map(|width_mm| Wings { width_mm, lift_mm });
        if self.lift.is_some() && machine.wings.is_none() {
            faults.push(apart("lift", "give --wings with it"));
        }
        or_keep(&mut machine.leading, self.leading.map(|depth_mm| LeadingTines { depth_mm: Some(depth_mm) }));
        or_keep(&mut machine.working_width_mm, self.width.map(|metres| (metres * 1000.0).round() as u32));
        let speeds = self.speeds.as_deref().and_then(|speeds| <[f64; 2]>::try_from(speeds).ok());
        or_keep(&mut machine.speed, speeds.map(|[lo_kmh, hi_kmh]| SpeedRange { lo_kmh, hi_kmh }));
        or_keep(&mut machine.reach_mm, self.reach);
        let power_kw = self.tractor.or(machine.tractor.map(|tractor| tractor.power_kw));
        let drive = self.drive.or(machine.tractor.map(|tractor| tractor.drive));
        if power_kw.is_some() != drive.is_some() {
            faults.push(apart("tractor", "give --tractor and --drive"));
        }
        or_keep(&mut machine.tractor_mass_kg, self.tractor_mass.map(|kg| kg.round() as u32));
        machine.tractor = power_kw.zip(drive).map(|(power_kw, drive)| Tractor { power_kw, drive });
        faults
    }

    fn set_work(&self, work: &mut Work) {
        replace(&mut work.tip_mm, self.tip);
        replace(&mut work.soil, self.soil);
        replace(&mut work.speed_kmh, self.speed);
        replace(&mut work.surface, self.surface);
        replace(&mut work.fuel, self.fuel_formula);
        replace(&mut work.field_efficiency, self.efficiency);
        replace(&mut work.slope, self.slope.map(SideSlope::known));
        or_keep(&mut work.grip, self.grip);
        let layer = self.layer.as_deref().and_then(|depths| <[u32; 2]>::try_from(depths).ok());
        or_keep(&mut work.layer, layer.map(|[top_mm, bottom_mm]| LayerDepths { top_mm, bottom_mm }));
        work.roll = work.roll.filter(|_| !self.without.iter().any(|gone| gone == "roll"));
        or_keep(&mut work.roll, self.roll);
        or_keep(&mut work.price, self.prices.price());
        or_keep(&mut work.grain_price_per_t, self.prices.grain_price);
    }

    /// The same with some options given anew, each read as on the command line; `none` takes one away.
    pub fn changed(&self, changes: &[(String, String)]) -> Result<Self, Trouble> {
        let mut other = self.clone();
        let mut options = Vec::new();
        for (name, value) in changes {
            if value == "none" && ["wings", "leading", "width", "roll"].contains(&name.as_str()) {
                match name.as_str() {
                    "wings" => (other.wings, other.lift) = (None, None),
                    "leading" => other.leading = None,
                    "width" => other.width = None,
                    _ => other.roll = None,
                }
                other.without.push(name.clone());
            } else {
                options.push(format!("--{name}={value}"));
            }
        }
        // Read as changes only: what is not named keeps its value.
        let command = Self::augment_args_for_update(clap::Command::new("against").no_binary_name(true))
            .mut_args(|argument| argument.required(false));
        let matches =
            command.try_get_matches_from(options).map_err(|unclear| Trouble::arguments(&unclear))?;
        other.update_from_arg_matches(&matches).map_err(|unclear| Trouble::arguments(&unclear))?;
        other.checked()
    }
}

/// Returns what was given; else a fault, and anything of the kind to go on with until all faults are found.
fn need<T>(name: &str, given: Option<T>, otherwise: T, faults: &mut Vec<Fault>) -> T {
    given.unwrap_or_else(|| {
        let todo = format!("give --{name}, or a notes file with --from");
        faults.push(Fault::new(name, "this is missing", todo));
        otherwise
    })
}

fn replace<T>(kept: &mut T, given: Option<T>) {
    if let Some(given) = given {
        *kept = given;
    }
}

fn or_keep<T>(kept: &mut Option<T>, given: Option<T>) {
    if given.is_some() {
        *kept = given;
    }
}
