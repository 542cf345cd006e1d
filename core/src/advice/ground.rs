//! The ground zone by zone: what is to be worked, what that takes, and what is saved against working all of it.

use super::machine::{Estimate, Model, Setting, Terms, WhyNot, set, work_in_zone};
use super::{FieldAdvice, TipDepth, ZoneCall};
use crate::error::Fault;
use crate::place::{FieldMap, ZoneArea};
use crate::record::{Call, Field, Machine, Zone};

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// A field's ground by zones.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct GroundWork {
    /// All of it, hectares; `None` without an outline.
    pub whole_ha: Option<f64>,
    /// Its zones in the order of [`Zone::ALL`].
    pub zones: Vec<ZoneWork>,
    /// Work on the harmed ground whose area is known; `None` where there is none.
    pub harmed: Option<Spent>,
    /// Work on the whole field, at the deepest tip depth of any zone; `None` where nothing is to be worked.
    pub everything: Option<Spent>,
    /// The one less the other; ground not yet known is counted as worked.
    pub saved: Option<Spent>,
    /// Zones to be worked whose area is not known; they are in none of the sums.
    pub unmeasured: Vec<Zone>,
    /// Hectares of zones that no pit has been dug in, or whose pits give no call yet.
    pub unknown_ha: f64,
}

/// One zone of it.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ZoneWork {
    /// Which.
    pub zone: Zone,
    /// Hectares; `None` where the outline or the widths do not give them.
    pub area_ha: Option<f64>,
    /// Its call; `None` where no pit was dug.
    pub call: Option<Call>,
    /// Tip depth, where it is to be loosened now or once dry.
    pub tip: Option<TipDepth>,
    /// What loosening it takes.
    pub spent: Option<Spent>,
}

/// What working some ground takes.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Spent {
    /// Hectares.
    pub area_ha: f64,
    /// Hours in the field.
    pub hours: Model<f64>,
    /// Litres of fuel.
    pub fuel_l: Model<Estimate>,
    /// Money.
    pub cost: Model<Estimate>,
}

impl Spent {
    /// `area_ha` worked by this setting; without one nothing but the area is known.
    fn of(area_ha: f64, setting: Result<&Setting, WhyNot>) -> Self {
        match setting {
            Ok(setting) => Self {
                area_ha,
                hours: setting.ha_per_hour.map(|rate| area_ha / rate.mid),
                fuel_l: setting.fuel.map(|fuel| fuel.litres_per_ha.map(|litres| litres * area_ha)),
                cost: setting.cost_per_ha.map(|cost| cost.map(|cost| cost * area_ha)),
            },
            Err(why) => {
                let none = Model::DoesNotApply(why);
                Self { area_ha, hours: Model::DoesNotApply(why), fuel_l: none, cost: none }
            }
        }
    }

    /// Two pieces of ground worked one after the other.
    fn and(self, other: Self) -> Self {
        Self {
            area_ha: self.area_ha + other.area_ha,
            hours: both(self.hours, other.hours, |one, other| one + other),
            fuel_l: both(self.fuel_l, other.fuel_l, add),
            cost: both(self.cost, other.cost, add),
        }
    }

    /// Returns what is left of it when part of the ground is not worked.
    fn less(self, other: Self) -> Self {
        Self {
            area_ha: self.area_ha - other.area_ha,
            hours: both(self.hours, other.hours, |all, part| all - part),
            fuel_l: both(self.fuel_l, other.fuel_l, less),
            cost: both(self.cost, other.cost, less),
        }
    }
}

/// The soil is the same in both, so that what one has too much the other has too: the ends go together.
fn add(one: Estimate, other: Estimate) -> Estimate {
    Estimate { lo: one.lo + other.lo, mid: one.mid + other.mid, hi: one.hi + other.hi }
}

fn less(all: Estimate, part: Estimate) -> Estimate {
    Estimate { lo: all.lo - part.lo, mid: all.mid - part.mid, hi: all.hi - part.hi }
}

fn both<T>(one: Model<T>, other: Model<T>, join: impl FnOnce(T, T) -> T) -> Model<T>
where
    T: Copy,
{
    one.and_then(|one| match other {
        Model::Applies(other) | Model::AppliesIfAboveCritical(other) => Ok(join(one, other)),
        Model::DoesNotApply(why) => Err(why),
    })
}

/// The areas of a field, as far as they are known.
#[derive(Debug, Clone, PartialEq)]
pub struct Areas {
    /// All of it, square metres.
    pub whole_m2: Option<f64>,
    /// Its zones; together the whole.
    pub zones: Vec<ZoneArea>,
}

impl Areas {
    /// As the map gives them.
    pub fn of(map: &FieldMap) -> Self {
        Self { whole_m2: map.whole_m2(), zones: map.areas() }
    }
}

/// The ground of a field zone by zone, worked with `machine` where one is given.
///
/// # Errors
/// Everything in machine or terms that cannot be so.
pub fn ground_work(
    field: &Field,
    advice: &FieldAdvice,
    areas: &Areas,
    machine: Option<&Machine>,
    terms: &Terms,
) -> Result<GroundWork, Vec<Fault>> {
    let call_of = |zone: Zone| advice.zones.iter().find(|call| call.zone == zone);
    let area_of =
        |zone: Zone| areas.zones.iter().find(|area| area.zone == zone).map(|area| area.area_m2 / HECTARE_M2);
    let settings = |call: &ZoneCall| setting(field, call, machine, terms);
    let mut zones = Vec::new();
    for &zone in Zone::ALL {
        let (call, area_ha) = (call_of(zone), area_of(zone));
        if call.is_none() && area_ha.is_none() {
            continue;
        }
        let to_work = call.filter(|call| is_worked(call));
        let setting = to_work.map(settings).transpose()?;
        let spent =
            setting.zip(area_ha).map(|(setting, ha)| Spent::of(ha, setting.as_ref().map_err(|why| *why)));
        zones.push(ZoneWork {
            zone,
            area_ha,
            call: call.map(|call| call.call),
            tip: to_work.and_then(|call| call.tip),
            spent,
        });
    }
    let whole_ha = areas.whole_m2.map(|m2| m2 / HECTARE_M2);
    let unknown = |zone: &&ZoneWork| zone.call.is_none_or(|call| call == Call::DigAgain);
    let unknown_ha = zones.iter().filter(unknown).filter_map(|zone| zone.area_ha).sum();
    let unmeasured = zones.iter().filter(|zone| zone.tip.is_some() && zone.area_ha.is_none());
    let unmeasured = unmeasured.map(|zone| zone.zone).collect();
    let harmed = zones.iter().filter_map(|zone| zone.spent).reduce(Spent::and);
    // Whoever loosens everything runs at the depth that the worst ground needs.
    let deepest =
        advice.zones.iter().filter(|call| is_worked(call)).max_by_key(|call| call.tip.map(|tip| tip.hi_mm));
    let deepest = deepest.map(settings).transpose()?;
    let at_deepest = |ha: f64| deepest.as_ref().map(|set| Spent::of(ha, set.as_ref().map_err(|why| *why)));
    let everything = whole_ha.and_then(at_deepest);
    let saved = everything.zip(harmed).zip(at_deepest(unknown_ha)).map(|((all, part), unknown)| {
        let worked = if unknown_ha > 0.0 { part.and(unknown) } else { part };
        all.less(worked)
    });
    Ok(GroundWork { whole_ha, zones, harmed, everything, saved, unmeasured, unknown_ha })
}

/// Returns whether a zone is loosened, now or once it is dry enough.
const fn is_worked(call: &ZoneCall) -> bool {
    matches!(call.call, Call::Loosen | Call::Wait) && call.tip.is_some()
}

/// The machine set for a zone, or why it cannot be.
fn setting(
    field: &Field,
    call: &ZoneCall,
    machine: Option<&Machine>,
    terms: &Terms,
) -> Result<Result<Setting, WhyNot>, Vec<Fault>> {
    let Some(machine) = machine else { return Ok(Err(WhyNot::NoMachine)) };
    match work_in_zone(field, call, machine, terms) {
        Ok(work) => set(machine, &work).map(Ok),
        Err(why) => Ok(Err(why)),
    }
}
