//! What a zone's call asks of a machine.

use super::fuel::FuelFormula;
use super::model::WhyNot;
use super::money::Price;
use super::setting::{LayerDepths, Work};
use super::table::{DraughtSoil, Surface, USUAL_SPEED_KMH};
use crate::advice::{What, ZoneCall};
use crate::record::{Call, Field, Machine};

/// What field and pits do not say of a piece of work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Terms {
    /// Speed, km/h; where not given the middle of the machine's range, else [`USUAL_SPEED_KMH`].
    pub speed_kmh: Option<f64>,
    /// Soil, for the draught; where not given that of the field's texture.
    pub soil: Option<DraughtSoil>,
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
        Self { speed_kmh: None, soil: None, surface, fuel, price: None, grain_price_per_t: None }
    }
}

impl Terms {
    /// Speed of a machine, km/h.
    fn speed_of(&self, machine: &Machine) -> f64 {
        let middle = machine.speed.map(|speed| f64::midpoint(speed.lo_kmh, speed.hi_kmh));
        self.speed_kmh.or(middle).unwrap_or(USUAL_SPEED_KMH)
    }
}

/// A depth in the middle of a range, on the whole centimetre where one lies near it.
const fn middle_mm(lo_mm: u32, hi_mm: u32) -> u32 {
    let middle_mm = u32::midpoint(lo_mm, hi_mm);
    let whole_mm = (middle_mm + 5) / 10 * 10;
    if lo_mm <= whole_mm && whole_mm <= hi_mm { whole_mm } else { middle_mm }
}

/// The layer that a zone's call is to break: from the top its reasons name to the bottom its tip depth clears.
pub fn layer_of(call: &ZoneCall) -> Option<LayerDepths> {
    let bottom_mm = call.tip?.bottom_mm;
    call.reasons.iter().find_map(|why| match why.what {
        What::Layer { top_mm, .. } if top_mm < bottom_mm => Some(LayerDepths { top_mm, bottom_mm }),
        _ => None,
    })
}

/// The work that a zone's call asks for: tips in the middle of their range, the layer that decided, the roll test that
/// decided.
///
/// # Errors
/// [`WhyNot::NoLayer`] where the call names no tip depth, [`WhyNot::NoTexture`] where neither terms nor field tell the soil.
pub fn work_in_zone(
    field: &Field,
    call: &ZoneCall,
    machine: &Machine,
    terms: &Terms,
) -> Result<Work, WhyNot> {
    let tip = call.tip.ok_or(WhyNot::NoLayer)?;
    let noted = field.texture.map(|texture| texture.group().into());
    let soil = terms.soil.or(noted).ok_or(WhyNot::NoTexture)?;
    let rolled = |what: &What| match *what {
        What::Rolled { roll, surface: false, .. } => Some(roll),
        _ => None,
    };
    Ok(Work {
        layer: layer_of(call),
        roll: call.reasons.iter().find_map(|why| rolled(&why.what)),
        forbidden: call.call != Call::Loosen,
        surface: terms.surface,
        fuel: terms.fuel,
        price: terms.price,
        grain_price_per_t: terms.grain_price_per_t,
        ..Work::new(middle_mm(tip.lo_mm, tip.hi_mm), soil, terms.speed_of(machine))
    })
}
