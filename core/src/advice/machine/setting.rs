//! A machine set for a depth: everything there is to say of it, each figure with its range or the reason it is missing.

use super::critical::{
    CriticalDepth, CriticalPlace, CriticalShift, FootWidth, critical_shifts, deepest_above_critical_mm,
    foot_width_for,
};
use super::draught::{Estimate, draught_kn};
use super::fuel::{Fuel, FuelFormula};
use super::geometry::{Loosened, Tines};
use super::model::{Model, WhyNot};
use super::money::{Price, break_even_t_per_ha};
use super::power::{TractorFit, drawbar_kw, pto_kw, rated_pto_kw, tractor_fit};
use super::rate::ha_per_hour;
use super::spacing::{LeadingRange, SpacingFit, SpacingRange, leading_ranges};
use super::table::{DraughtSoil, FIELD_EFFICIENCY, LEADING, SIDE_SLOPE_DEGREES, Surface};
use crate::advice::Caution;
use crate::error::Fault;
use crate::record::{Foot, Machine, RollOutcome};

/// A layer to be broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct LayerDepths {
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom.
    pub bottom_mm: u32,
}

/// What a machine is to do, and in what ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Work {
    /// Tip depth.
    pub tip_mm: u32,
    /// The layer to be broken.
    pub layer: Option<LayerDepths>,
    /// Soil for the draught.
    pub soil: DraughtSoil,
    /// Ground under the wheels.
    pub surface: Surface,
    /// Speed, km/h.
    pub speed_kmh: f64,
    /// Roll test at tip depth.
    pub roll: Option<RollOutcome>,
    /// Slope of the loosened ground's sides, degrees.
    pub slope_degrees: f64,
    /// Share of the time in the field spent working, 0 to 1.
    pub field_efficiency: f64,
    /// Formula for the fuel.
    pub fuel: FuelFormula,
    /// What it is paid by.
    pub price: Option<Price>,
    /// Price of the grain, money a tonne.
    pub grain_price_per_t: Option<f64>,
}

impl Work {
    /// Work at a depth and speed, everything else as usual: on stubble (firm), no layer, nothing rolled, no prices.
    pub const fn new(tip_mm: u32, soil: DraughtSoil, speed_kmh: f64) -> Self {
        Self {
            tip_mm,
            layer: None,
            soil,
            surface: Surface::Firm,
            speed_kmh,
            roll: None,
            slope_degrees: SIDE_SLOPE_DEGREES,
            field_efficiency: FIELD_EFFICIENCY,
            fuel: FuelFormula::PartLoad,
            price: None,
            grain_price_per_t: None,
        }
    }

    /// Everything that cannot be so.
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        let mut check = |good: bool, at: &str, todo: &str| {
            if !good {
                faults.push(Fault::new(at, "this cannot be so", todo));
            }
        };
        check((50..=1_200).contains(&self.tip_mm), "tip_mm", "give the tip depth, 50 to 1200 mm");
        let layer = self.layer.unwrap_or(LayerDepths { top_mm: 0, bottom_mm: 1 });
        check(layer.top_mm < layer.bottom_mm, "layer", "give the top first, then a bottom below it");
        check(self.speed_kmh > 0.0 && self.speed_kmh <= 20.0, "speed_kmh", "give a speed up to 20 km/h");
        check((20.0..=80.0).contains(&self.slope_degrees), "slope_degrees", "give 20 to 80 degrees");
        check((0.1..=1.0).contains(&self.field_efficiency), "field_efficiency", "give a share, 0.1 to 1");
        let prices = match self.price {
            Some(Price::PerHectare { cost }) => vec![cost],
            Some(Price::PerHour { cost, fuel_per_litre }) => vec![cost, fuel_per_litre],
            None => Vec::new(),
        };
        let sound = prices.iter().all(|price| price.is_finite() && *price >= 0.0);
        check(sound, "price", "give an amount, 0 or more");
        let sound = self.grain_price_per_t.is_none_or(|price| price.is_finite() && price > 0.0);
        check(sound, "grain_price_per_t", "give an amount above 0");
        faults
    }
}

/// The published spacing and the fitted one against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct SpacingAnswer {
    /// The range.
    pub range: SpacingRange,
    /// The fitted spacing.
    pub fit: SpacingFit,
}

/// Whether a layer is broken over the full width, by the figure only: the second dig settles it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct LayerBreak {
    /// Whether the loosened ground of neighbours meets at the layer's bottom.
    pub full_width: bool,
    /// The widest spacing at which it does, at this tip depth.
    pub widest_spacing_mm: u32,
    /// The shallowest tip at which it does, with these tines; `None` where that is not held to stay above critical
    /// depth.
    pub shallowest_tip_mm: Option<u32>,
}

/// The tractor and what is asked of it.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Traction {
    /// PTO power needed, kW.
    pub needed_pto_kw: Estimate,
    /// PTO power it has, kW.
    pub rated_pto_kw: f64,
    /// One against the other.
    pub fit: TractorFit,
}

/// A machine set for a depth. "Spacing within its range" and "layer broken over the full width" are two results.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Setting {
    /// Tip depth.
    pub tip_mm: u32,
    /// Whether the machine reaches it; `None` if its reach is not known.
    pub within_reach: Option<bool>,
    /// Whether the speed is one of the machine's.
    pub within_speed: Option<bool>,
    /// Critical depth of its foot.
    pub critical: CriticalDepth,
    /// Tip depth against it.
    pub place: CriticalPlace,
    /// What moves it.
    pub shifts: Vec<CriticalShift>,
    /// Deepest tip of this machine held to stay above critical depth.
    pub deepest_above_critical_mm: u32,
    /// Foot width this depth takes.
    pub foot_width: FootWidth,
    /// Spacing.
    pub spacing: Model<SpacingAnswer>,
    /// What the tines loosen.
    pub ground: Model<Loosened>,
    /// The layer.
    pub layer: Model<LayerBreak>,
    /// Where leading tines should run, if it has any.
    pub leading: Option<[LeadingRange; LEADING.len()]>,
    /// Pull, kN.
    pub draught_kn: Estimate,
    /// Power at the drawbar, kW.
    pub drawbar_kw: Estimate,
    /// The tractor.
    pub traction: Option<Traction>,
    /// Fuel.
    pub fuel: Model<Fuel>,
    /// Work rate, ha/h.
    pub ha_per_hour: f64,
    /// Cost, money a hectare.
    pub cost_per_ha: Model<Estimate>,
    /// Extra yield that pays for it, t/ha.
    pub break_even_t_per_ha: Model<Estimate>,
    /// Cautions that apply.
    pub cautions: Vec<Caution>,
}

/// The tines of a machine in the figure of the loosened ground.
pub fn tines(machine: &Machine, work: &Work) -> Tines {
    Tines {
        lifting_width_mm: machine.lifting_width_mm(),
        tip_mm: work.tip_mm,
        spacing_mm: machine.spacing_mm,
        slope_degrees: work.slope_degrees,
    }
}

/// Sets a machine for a depth.
///
/// # Errors
/// Everything in machine or work that cannot be so.
pub fn set(machine: &Machine, work: &Work) -> Result<Setting, Vec<Fault>> {
    let faults = [machine.faults(), work.faults()].concat();
    if !faults.is_empty() {
        return Err(faults);
    }
    let critical = CriticalDepth::of_foot(machine.foot_width_mm);
    let place = critical.place(work.tip_mm);
    let tines = tines(machine, work);
    // What the models stand on: soil that breaks, lifted from above critical depth.
    let breaks = match (work.roll, place) {
        (Some(RollOutcome::Thread), _) => Model::DoesNotApply(WhyNot::TooWet),
        (_, CriticalPlace::Above) => Model::Applies(tines),
        (_, CriticalPlace::Uncertain) => Model::AppliesIfAboveCritical(tines),
        (_, CriticalPlace::Below) => Model::DoesNotApply(WhyNot::BelowCriticalDepth),
    };
    let draught_kn = draught_kn(machine, work.tip_mm, work.speed_kmh, work.soil);
    let drawbar_kw = drawbar_kw(draught_kn, work.speed_kmh);
    let traction = machine.tractor.map(|tractor| {
        let needed_pto_kw = pto_kw(drawbar_kw, tractor.drive, work.surface);
        let fit = tractor_fit(&tractor, needed_pto_kw);
        Traction { needed_pto_kw, rated_pto_kw: rated_pto_kw(&tractor), fit }
    });
    let ha_per_hour = ha_per_hour(work.speed_kmh, machine.width_mm(), work.field_efficiency);
    let fuel = match traction {
        None => Err(WhyNot::NoTractor),
        Some(Traction { fit: TractorFit::NotEnough, .. }) => Err(WhyNot::NotEnoughPower),
        Some(traction) => Ok(Fuel::of(work.fuel, traction.needed_pto_kw, traction.rated_pto_kw, ha_per_hour)),
    };
    let litres_per_ha = fuel.map(|fuel| fuel.litres_per_ha);
    let cost_per_ha: Model<Estimate> = match work.price {
        None => Err(WhyNot::NotGiven),
        Some(Price::PerHour { .. }) if litres_per_ha.is_err() => litres_per_ha,
        Some(price) => price.per_ha(ha_per_hour, litres_per_ha.ok()).ok_or(WhyNot::NotGiven),
    }
    .into();
    Ok(Setting {
        tip_mm: work.tip_mm,
        within_reach: machine.reach_mm.map(|reach_mm| work.tip_mm <= reach_mm),
        within_speed: machine.speed.map(|speed| (speed.lo_kmh..=speed.hi_kmh).contains(&work.speed_kmh)),
        critical,
        place,
        shifts: critical_shifts(machine),
        deepest_above_critical_mm: deepest_above_critical_mm(machine),
        foot_width: foot_width_for(work.tip_mm),
        spacing: breaks.and_then(|tines| {
            let range = SpacingRange::at(work.tip_mm, machine.foot()).ok_or(WhyNot::NoPublishedRange)?;
            Ok(SpacingAnswer { range, fit: range.fit(tines.spacing_mm) })
        }),
        ground: breaks.map(|tines| tines.loosened()),
        layer: match work.layer {
            None => Model::DoesNotApply(WhyNot::NoLayer),
            Some(layer) => breaks.and_then(|tines| layer_break(&tines, layer, critical)),
        },
        leading: machine.leading.map(|leading| leading_ranges(work.tip_mm, leading.depth_mm)),
        draught_kn,
        drawbar_kw,
        traction,
        fuel: fuel.into(),
        ha_per_hour,
        cost_per_ha,
        break_even_t_per_ha: cost_per_ha
            .and_then(|cost| Ok(break_even_t_per_ha(cost, work.grain_price_per_t.ok_or(WhyNot::NotGiven)?))),
        cautions: vec![
            Caution::MachineStopped,
            Caution::AskBeforeDigging,
            Caution::TrialStrip,
            Caution::EstimatesOnly,
        ],
    })
}

fn layer_break(tines: &Tines, layer: LayerDepths, critical: CriticalDepth) -> Result<LayerBreak, WhyNot> {
    let widest_spacing_mm = tines.widest_spacing_mm(layer.bottom_mm).ok_or(WhyNot::TipAboveLayerBottom)?;
    let tip_mm = tines.shallowest_tip_mm(layer.bottom_mm);
    Ok(LayerBreak {
        full_width: tines.spacing_mm <= widest_spacing_mm,
        widest_spacing_mm,
        shallowest_tip_mm: Some(tip_mm).filter(|&tip_mm| critical.place(tip_mm) == CriticalPlace::Above),
    })
}

/// What a depth takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct Needed {
    /// Foot width that keeps it above critical depth.
    pub foot_width: FootWidth,
    /// Spacing for this foot; `None` where no range is published.
    pub spacing: Option<SpacingRange>,
    /// Widest spacing that breaks the layer over its full width by the figure, for a foot or wings of this width; `None`
    /// where the tip does not run below the layer's bottom.
    pub full_width_spacing_mm: Option<u32>,
}

/// What a tip depth takes: foot width, spacing, and the spacing that breaks a layer over its full width with feet or
/// wings of this width.
pub fn needed_for(work: &Work, foot: Foot, lifting_width_mm: u32) -> Needed {
    let tines =
        Tines { lifting_width_mm, tip_mm: work.tip_mm, spacing_mm: 0, slope_degrees: work.slope_degrees };
    Needed {
        foot_width: foot_width_for(work.tip_mm),
        spacing: SpacingRange::at(work.tip_mm, foot),
        full_width_spacing_mm: work.layer.and_then(|layer| tines.widest_spacing_mm(layer.bottom_mm)),
    }
}
