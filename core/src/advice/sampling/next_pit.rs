//! Where the next pit tells most: the zone with most at stake, then a clear place in it far from earlier pits.

use super::site::place_in;
use super::{Count, Plan, PlanFault, Settled, usual_area_ha};
use crate::record::Zone;

/// Distance kept from the lines of drains and services when a pit is dug: a marked line may lie some 3 m off, and the
/// position shown another 2 m. Our judgement; it never stands for asking before digging.
pub const DIG_CLEARANCE_M: f64 = 5.0;
/// A field as far as it matters for the next pit. Places are `[longitude, latitude]` in degrees.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// Ring of the field (see [`crate::place::Outline`] for what makes it valid); empty where it is not known.
    pub outline: Vec<[f64; 2]>,
    /// Width of the headland, where there is one.
    pub headland_mm: Option<u32>,
    /// The zones to be called.
    pub zones: Vec<ZoneGround>,
    /// Places of the pits already dug, the reference pit's too.
    pub dug: Vec<[f64; 2]>,
    /// Whether a reference pit has been dug.
    pub reference_dug: bool,
    /// Lines of drains and services.
    pub buried: Vec<Vec<[f64; 2]>>,
    /// Distance to keep from these lines.
    pub clearance_m: f64,
}

/// One zone of a field.
#[derive(Debug, Clone, PartialEq)]
pub struct ZoneGround {
    /// Which.
    pub zone: Zone,
    /// Its pits.
    pub count: Count,
    /// Its area; [`usual_area_ha`] is taken where it is not known.
    pub area_ha: Option<f64>,
    /// Rings around its parts where it is marked; empty to take it from the outline and the headland's width.
    pub rings: Vec<Vec<[f64; 2]>>,
}

impl ZoneGround {
    /// How far the plan holds it settled.
    pub fn verdict(&self, plan: &Plan) -> Settled {
        plan.verdict(self.count, self.area_ha())
    }

    pub(in crate::advice) fn area_ha(&self) -> f64 {
        self.area_ha
            .filter(|area| area.is_finite() && *area >= 0.0)
            .unwrap_or_else(|| usual_area_ha(self.zone))
    }
}

/// What to do next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Next {
    /// Dig the reference pit, where the soil looks good: away from wheelings, headland and edge. Its place is chosen
    /// by eye.
    Reference,
    /// Dig in this zone.
    Pit {
        /// The zone with most at stake.
        zone: Zone,
        /// Where in it.
        at: At,
        /// Expected regret of its call as it stands, in hectares of loosening.
        at_stake_ha: f64,
        /// Pits still to be expected in this zone, this one counted.
        still_expected: f64,
    },
    /// Dig behind the machine that ran over this zone.
    Behind {
        /// The zone.
        zone: Zone,
    },
    /// No zone is left where another pit would pay.
    Stop,
}

/// Where in a zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum At {
    /// Here, `[longitude, latitude]` in degrees; for wheelings the nearest wheeling to it.
    Place([f64; 2]),
    /// Choose by eye: the zone is not marked and there is no outline to take it from.
    ByEye,
    /// Nowhere: every place of the zone lies too near to a drain or service.
    NowhereClear,
}

/// Returns what to do next on a field by its counts alone: where the share of the ground harmed is not settled.
///
/// # Errors
/// A figure of the plan that cannot be worked with.
pub fn next_pit(ground: &Ground, plan: &Plan) -> Result<Next, PlanFault> {
    plan.check()?;
    if !ground.reference_dug {
        return Ok(Next::Reference);
    }
    let mut best: Option<(f64, &ZoneGround)> = None;
    for zone in &ground.zones {
        let area_ha = zone.area_ha();
        let at_stake_ha = plan.regret_ha(zone.count, area_ha).least();
        let open = zone.verdict(plan) == Settled::DigOn;
        if open && best.is_none_or(|(most, _)| at_stake_ha > most) {
            best = Some((at_stake_ha, zone));
        }
    }
    Ok(best.map_or(Next::Stop, |(at_stake_ha, zone)| Next::Pit {
        zone: zone.zone,
        at: place_in(zone, ground),
        at_stake_ha,
        still_expected: plan.still_expected(zone.count, zone.area_ha()),
    }))
}
