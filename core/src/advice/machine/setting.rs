//! A machine set for a depth: everything there is to say of it, each figure with its range or the reason it is missing.

use super::critical::{
    CriticalDepth, CriticalPlace, CriticalShift, FootWidth, critical_shifts, deepest_above_critical_mm,
    foot_width_for,
};
use super::draught::{Estimate, draught_kn};
use super::fuel::{Fuel, FuelFormula};
use super::geometry::{LoosenedRange, SideSlope, Tines};
use super::model::{Model, WhyNot};
use super::money::{Price, break_even_t_per_ha};
use super::power::{
    Grip, TractorFit, available_drawbar_kw, drawbar_kw, held_kmh, pto_kw, rated_pto_kw, tractor_fit,
};
use super::rate::ha_per_hour;
use super::spacing::{LeadingRange, SpacingFit, SpacingRange, leading_ranges};
use super::table::{
    DRAUGHT_WINGS_MM, DraughtSoil, FIELD_EFFICIENCY, LEADING, SIDE_SLOPE_DEGREES, SLOWEST_KMH, Surface,
};
use crate::advice::Caution;
use crate::error::Fault;
use crate::record::{Foot, Machine, RollOutcome, Tractor};

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
    /// Slope of the loosened ground's sides.
    pub slope: SideSlope,
    /// Pull over the tractor's weight, where it was measured, 0 to 1.
    pub grip: Option<f64>,
    /// The call for this ground is not to loosen it now.
    pub forbidden: bool,
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
            slope: SIDE_SLOPE_DEGREES,
            grip: None,
            forbidden: false,
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
        let slopes = [self.slope.flat, self.slope.steep];
        let sound = slopes.iter().all(|degrees| (20.0..=80.0).contains(degrees)) && slopes[0] <= slopes[1];
        check(sound, "slope", "give 20 to 80 degrees");
        let sound = self.grip.is_none_or(|grip| (0.05..=1.2).contains(&grip));
        check(sound, "grip", "give pull over weight, 0.05 to 1.2");
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
    /// Whether the loosened ground of neighbours meets at the layer's bottom, however steep its sides are.
    pub full_width: bool,
    /// Whether it does with the flattest sides.
    pub full_width_if_flat: bool,
    /// The widest spacing at which it does, at this tip depth, with the steepest sides.
    pub widest_spacing_mm: u32,
    /// The same with the flattest.
    pub widest_if_flat_mm: u32,
    /// The shallowest tip at which it does, with these tines and the steepest sides; `None` where that is not held to stay above critical
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
    /// One against the other, at the speed asked for.
    pub fit: TractorFit,
    /// Speed that it can hold, km/h: the one asked for, or less.
    pub held_kmh: Estimate,
    /// What its wheels can pull.
    pub grip: Model<Grip>,
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
    /// Why this is not to be worked; where there is a reason no figure is told without it.
    pub not_to_be_worked: Vec<WhyNot>,
    /// Spacing.
    pub spacing: Model<SpacingAnswer>,
    /// What the tines loosen.
    pub ground: Model<LoosenedRange>,
    /// The layer.
    pub layer: Model<LayerBreak>,
    /// Where leading tines should run, if it has any.
    pub leading: Option<[LeadingRange; LEADING.len()]>,
    /// Pull, kN, at the speed asked for.
    pub draught_kn: Estimate,
    /// Width over the wings in the draught's source, where these are wider: they pull more than is told.
    pub wider_than_source_mm: Option<u32>,
    /// Power at the drawbar, kW.
    pub drawbar_kw: Estimate,
    /// The tractor.
    pub traction: Option<Traction>,
    /// Fuel.
    pub fuel: Model<Fuel>,
    /// Work rate, ha/h, at the speed that is held.
    pub ha_per_hour: Model<Estimate>,
    /// Cost, money a hectare.
    pub cost_per_ha: Model<Estimate>,
    /// Extra yield that pays for it, t/ha.
    pub break_even_t_per_ha: Model<Estimate>,
    /// Cautions that apply.
    pub cautions: Vec<Caution>,
}

/// The tines of a machine in the figure of the loosened ground, with the flattest sides and with the steepest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TinesRange {
    /// With the flattest.
    pub flat: Tines,
    /// With the steepest.
    pub steep: Tines,
}

impl TinesRange {
    /// Of a machine at a tip depth.
    pub fn of(machine: &Machine, tip_mm: u32, slope: SideSlope) -> Self {
        let tines = |slope_degrees| Tines {
            lifting_width_mm: machine.lifting_width_mm(),
            tip_mm,
            spacing_mm: machine.spacing_mm,
            slope_degrees,
        };
        Self { flat: tines(slope.flat), steep: tines(slope.steep) }
    }

    /// Returns what they loosen.
    pub fn loosened(&self) -> LoosenedRange {
        LoosenedRange { least: self.steep.loosened(), most: self.flat.loosened() }
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
    let critical = CriticalDepth::of(machine);
    let place = critical.place(work.tip_mm);
    let tines = TinesRange::of(machine, work.tip_mm, work.slope);
    // What the models stand on: soil that breaks, lifted from above critical depth.
    let breaks = match (work.roll, place) {
        (Some(RollOutcome::Thread), _) => Model::DoesNotApply(WhyNot::TooWet),
        (_, CriticalPlace::Above) => Model::Applies(tines),
        (_, CriticalPlace::Uncertain) => Model::AppliesIfAboveCritical(tines),
        (_, CriticalPlace::Below) => Model::DoesNotApply(WhyNot::BelowCriticalDepth),
    };
    let draught_kn = draught_kn(machine, work.tip_mm, work.speed_kmh, work.soil);
    let drawbar_kw = drawbar_kw(draught_kn, work.speed_kmh);
    let traction = machine.tractor.map(|tractor| traction(machine, &tractor, work, draught_kn));
    let rate = rate(machine, work, traction.as_ref());
    let fuel = match (traction, rate) {
        (None, _) => Err(WhyNot::NoTractor),
        (_, Err(why)) => Err(why),
        (Some(traction), Ok(rate)) => {
            let needed_pto_kw = pto_at_held(machine, work, &traction);
            Ok(Fuel::of(work.fuel, needed_pto_kw, traction.rated_pto_kw, rate))
        }
    };
    let litres_per_ha = fuel.map(|fuel| fuel.litres_per_ha);
    let cost_per_ha: Model<Estimate> = match (work.price, rate) {
        (None, _) => Err(WhyNot::NotGiven),
        (Some(Price::PerHectare { cost }), _) => Ok(Estimate::around(cost, 0.0)),
        (Some(_), Err(why)) => Err(why),
        (Some(_), _) if litres_per_ha.is_err() => litres_per_ha,
        (Some(price), Ok(rate)) => price.per_ha(rate, litres_per_ha.ok()).ok_or(WhyNot::NotGiven),
    }
    .into();
    let not_to_be_worked = [
        (work.forbidden, WhyNot::CallForbids),
        (work.roll == Some(RollOutcome::Thread), WhyNot::TooWet),
        (place == CriticalPlace::Below, WhyNot::BelowCriticalDepth),
    ];
    let wings_mm = machine.wings.map_or(0, |wings| wings.width_mm);
    Ok(Setting {
        tip_mm: work.tip_mm,
        within_reach: machine.reach_mm.map(|reach_mm| work.tip_mm <= reach_mm),
        within_speed: machine.speed.map(|speed| (speed.lo_kmh..=speed.hi_kmh).contains(&work.speed_kmh)),
        critical,
        place,
        shifts: critical_shifts(machine),
        deepest_above_critical_mm: deepest_above_critical_mm(machine),
        foot_width: foot_width_for(work.tip_mm, machine.foot()),
        not_to_be_worked: not_to_be_worked.into_iter().filter_map(|(is, why)| is.then_some(why)).collect(),
        spacing: breaks.and_then(|tines| {
            let range = SpacingRange::at(work.tip_mm, machine.foot()).ok_or(WhyNot::NoPublishedRange)?;
            Ok(SpacingAnswer { range, fit: range.fit(tines.flat.spacing_mm) })
        }),
        ground: breaks.map(|tines| tines.loosened()),
        layer: match work.layer {
            None => Model::DoesNotApply(WhyNot::NoLayer),
            Some(layer) => breaks.and_then(|tines| layer_break(&tines, layer, critical)),
        },
        leading: machine.leading.map(|leading| leading_ranges(work.tip_mm, leading.depth_mm)),
        draught_kn,
        wider_than_source_mm: Some(DRAUGHT_WINGS_MM).filter(|&source_mm| wings_mm > source_mm),
        drawbar_kw,
        traction,
        fuel: fuel.into(),
        ha_per_hour: rate.into(),
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

/// The tractor against a machine's pull.
fn traction(machine: &Machine, tractor: &Tractor, work: &Work, draught_kn: Estimate) -> Traction {
    let drawbar_kw = drawbar_kw(draught_kn, work.speed_kmh);
    let needed_pto_kw = pto_kw(drawbar_kw, tractor.drive, work.surface);
    let available_kw = available_drawbar_kw(tractor, work.surface);
    let held = |end: fn(Estimate) -> f64| {
        let pull = |kmh| end(super::draught::draught_kn(machine, work.tip_mm, kmh, work.soil));
        held_kmh(pull, available_kw, work.speed_kmh)
    };
    let grip = machine.tractor_mass_kg.ok_or(WhyNot::NotWeighed);
    Traction {
        needed_pto_kw,
        rated_pto_kw: rated_pto_kw(tractor),
        fit: tractor_fit(tractor, needed_pto_kw),
        held_kmh: Estimate { lo: held(|pull| pull.hi), mid: held(|pull| pull.mid), hi: held(|pull| pull.lo) },
        grip: grip
            .map(|mass_kg| super::power::grip(mass_kg, tractor.drive, work.surface, work.grip, draught_kn))
            .into(),
    }
}

/// The slowest speed at which a machine works.
fn slowest_kmh(machine: &Machine, work: &Work) -> f64 {
    machine.speed.map_or(SLOWEST_KMH, |speed| speed.lo_kmh).min(work.speed_kmh)
}

/// Ground worked in an hour at the speed held. Slower than the machine works at all is no work.
fn rate(machine: &Machine, work: &Work, traction: Option<&Traction>) -> Result<Estimate, WhyNot> {
    let at = |kmh| ha_per_hour(kmh, machine.width_mm(), work.field_efficiency);
    let Some(traction) = traction else { return Ok(Estimate::around(at(work.speed_kmh), 0.0)) };
    let (held, slowest_kmh) = (traction.held_kmh, slowest_kmh(machine, work));
    if held.mid < slowest_kmh {
        return Err(WhyNot::NotEnoughPower);
    }
    Ok(Estimate { lo: at(held.lo.max(slowest_kmh)), mid: at(held.mid), hi: at(held.hi) })
}

/// PTO power that each end of the pull takes at the speed held with it.
fn pto_at_held(machine: &Machine, work: &Work, traction: &Traction) -> Estimate {
    let at = |kmh: f64| draught_kn(machine, work.tip_mm, kmh, work.soil);
    let Some(tractor) = machine.tractor else { return traction.needed_pto_kw };
    let takes = |kn: f64, kmh: f64| {
        pto_kw(drawbar_kw(Estimate::around(kn, 0.0), kmh), tractor.drive, work.surface).mid
    };
    let held = traction.held_kmh;
    let slow = held.lo.max(slowest_kmh(machine, work));
    Estimate {
        lo: takes(at(held.hi).lo, held.hi),
        mid: takes(at(held.mid).mid, held.mid),
        hi: takes(at(slow).hi, slow),
    }
}

fn layer_break(
    tines: &TinesRange,
    layer: LayerDepths,
    critical: CriticalDepth,
) -> Result<LayerBreak, WhyNot> {
    let widest = |tines: &Tines| tines.widest_spacing_mm(layer.bottom_mm).ok_or(WhyNot::TipAboveLayerBottom);
    let (widest_spacing_mm, widest_if_flat_mm) = (widest(&tines.steep)?, widest(&tines.flat)?);
    let tip_mm = tines.steep.shallowest_tip_mm(layer.bottom_mm);
    let spacing_mm = tines.flat.spacing_mm;
    Ok(LayerBreak {
        full_width: spacing_mm <= widest_spacing_mm,
        full_width_if_flat: spacing_mm <= widest_if_flat_mm,
        widest_spacing_mm,
        widest_if_flat_mm,
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

/// Returns what a tip depth takes: foot width, spacing, and the spacing that breaks a layer over its full width with feet or
/// wings of this width.
pub fn needed_for(work: &Work, foot: Foot, lifting_width_mm: u32) -> Needed {
    let tines =
        Tines { lifting_width_mm, tip_mm: work.tip_mm, spacing_mm: 0, slope_degrees: work.slope.steep };
    Needed {
        foot_width: foot_width_for(work.tip_mm, foot),
        spacing: SpacingRange::at(work.tip_mm, foot),
        full_width_spacing_mm: work.layer.and_then(|layer| tines.widest_spacing_mm(layer.bottom_mm)),
    }
}
