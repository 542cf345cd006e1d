//! What a zone's call asks of a machine.

use super::fuel::FuelFormula;
use super::model::WhyNot;
use super::money::Price;
use super::setting::{LayerDepths, Work};
use super::table::{DraughtSoil, Surface, USUAL_SPEED_KMH};
use crate::advice::{What, ZoneCall};
use crate::record::{Field, Machine};

/// What field and pits do not say of a piece of work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Terms {
    /// Speed, km/h; where not given the middle of the machine's range, else [`USUAL_SPEED_KMH`].
    pub speed_kmh: Option<f64>,
    /// Ground under the wheels.
    pub surface: Surface,
    /// Formula for the fuel.
    pub fuel: FuelFormula,
    /// What it is paid by.
    pub price: Option<Price>,
    /// Price of the grain, money a tonne.
    pub grain_price_per_t: Option<f64>,
}

impl Default for Terms {
    fn default() -> Self {
        let (surface, fuel) = (Surface::Firm, FuelFormula::PartLoad);
        Self { speed_kmh: None, surface, fuel, price: None, grain_price_per_t: None }
    }
}

/// The work that a zone's call asks for: tips in the middle of their range, the layer that decided, the roll test that
/// decided.
///
/// # Errors
/// [`WhyNot::NoLayer`] where the call names no tip depth, [`WhyNot::NoTexture`] where the field's texture is not noted.
pub fn work_in_zone(
    field: &Field,
    call: &ZoneCall,
    machine: &Machine,
    terms: &Terms,
) -> Result<Work, WhyNot> {
    let tip = call.tip.ok_or(WhyNot::NoLayer)?;
    let soil = DraughtSoil::from(field.texture.ok_or(WhyNot::NoTexture)?.group());
    let named = |what: &What| match *what {
        What::Layer { top_mm, .. } if top_mm < tip.bottom_mm => Some(top_mm),
        _ => None,
    };
    let rolled = |what: &What| match *what {
        What::Rolled { roll, surface: false, .. } => Some(roll),
        _ => None,
    };
    let reasons = || call.reasons.iter().map(|why| &why.what);
    let middle = |speed: crate::record::SpeedRange| f64::midpoint(speed.lo_kmh, speed.hi_kmh);
    let speed_kmh = terms.speed_kmh.or(machine.speed.map(middle)).unwrap_or(USUAL_SPEED_KMH);
    Ok(Work {
        layer: reasons().find_map(named).map(|top_mm| LayerDepths { top_mm, bottom_mm: tip.bottom_mm }),
        roll: reasons().find_map(rolled),
        surface: terms.surface,
        fuel: terms.fuel,
        price: terms.price,
        grain_price_per_t: terms.grain_price_per_t,
        ..Work::new(u32::midpoint(tip.lo_mm, tip.hi_mm), soil, speed_kmh)
    })
}
