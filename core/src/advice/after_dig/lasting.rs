//! After the day of the pass: wheels on loosened ground, and whether it has held a season on.

use super::codes::Lasting;
use super::{DigAdvice, Held, TRAFFIC_DAYS, TrafficWarning};
use crate::record::{AfterDig, Field, Pass, RootsSeen};
use chrono::{Months, NaiveDate};

/// Share of what was loosened that is still loose where it has held. Our judgement: two readings' slack.
const HELD: f64 = 0.85;
/// Share below which it is lost. Our judgement.
const LOST: f64 = 0.5;

/// Months after which the benefit of a loosening can be gone without controlled traffic (Farming Ahead, "Deep ripping
/// after summer rain"; GRDC 2017).
const WITHOUT_MONTHS: u32 = 12;
/// Months it lasts with controlled traffic, and more: 2 to 3 years (same sources).
const CONTROLLED_MONTHS: (u32, u32) = (24, 36);

/// How long a loosening may be expected to last, by the wheels that run on the field.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct Lasts {
    /// Whether traffic is controlled; `None` = not noted.
    pub controlled_traffic: Option<bool>,
    /// Months from which it can be gone.
    pub least_months: u32,
    /// Months it may last.
    pub most_months: u32,
}

impl Lasts {
    /// In a field.
    pub const fn of(field: &Field) -> Self {
        let (least_months, most_months) = match field.controlled_traffic {
            Some(true) => CONTROLLED_MONTHS,
            Some(false) => (WITHOUT_MONTHS, WITHOUT_MONTHS),
            None => (WITHOUT_MONTHS, CONTROLLED_MONTHS.1),
        };
        Self { controlled_traffic: field.controlled_traffic, least_months, most_months }
    }

    /// Returns whether a loosening of one day lasts on another; `None` where that hangs on what is not known.
    pub fn until(self, loosened: NaiveDate, on: NaiveDate) -> Option<bool> {
        let after = |months| Some(on >= loosened.checked_add_months(Months::new(months))?);
        match (after(self.least_months)?, after(self.most_months)?) {
            (_, true) => Some(false),
            (false, _) => Some(true),
            (true, false) => self.controlled_traffic.map(|_| true),
        }
    }
}

/// Wheels within [`TRAFFIC_DAYS`] of the pass: as noted for it, or for the field on a later day.
pub fn traffic(pass: &Pass, field: &Field) -> Option<TrafficWarning> {
    let loosened = pass.done?;
    // Noted for the field, the day itself is that of the tractor before the machine.
    let of_field = field.last_traffic.filter(|day| *day > loosened);
    let days = |day: &NaiveDate| day.signed_duration_since(loosened).num_days();
    let driven_on = pass.driven_on.into_iter().chain(of_field).filter(|day| days(day) >= 0).min()?;
    let days = days(&driven_on);
    (days <= TRAFFIC_DAYS).then_some(TrafficWarning { loosened, driven_on, days })
}

/// Holes a season on against the first ones; `None` without one.
pub fn held(pass: &Pass, digs: &[DigAdvice]) -> Option<Held> {
    let (later, first): (Vec<&DigAdvice>, Vec<&DigAdvice>) = digs.iter().partition(|dig| dig.season_on);
    if later.is_empty() {
        return None;
    }
    // One measure for both: the layer where every hole with readings has one, told in the same way; else the section.
    let measured = || first.iter().chain(&later).filter(|dig| dig.share.value().is_some());
    let with_top = measured().filter(|dig| dig.layer_top_mm.is_some()).count();
    let by_layer = measured().count() > 0
        && measured().all(|dig| dig.layer_broken.value().is_some())
        && (with_top == 0 || with_top == measured().count());
    let mean = |digs: &[&DigAdvice]| {
        let values = digs
            .iter()
            .filter_map(|dig| if by_layer { dig.layer_broken.value() } else { dig.share.value() }.copied());
        let mut values: Vec<f64> = values.collect();
        crate::order::sort_numbers(&mut values);
        (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
    };
    let (then, now) = (mean(&first), mean(&later));
    let is_later = |dig: &&AfterDig| later.iter().any(|advice| advice.dig == dig.id);
    let roots = pass.after_digs.iter().filter(is_later).filter_map(|dig| dig.roots);
    let roots = roots.filter(|roots| *roots != RootsSeen::NoneToJudge).max();
    let lasting = match then.zip(now) {
        Some((then, now)) if then > 0.0 && now >= HELD * then => match roots {
            Some(RootsSeen::Sideways | RootsSeen::Stopped) => Lasting::Partly,
            _ => Lasting::Held,
        },
        Some((then, now)) if then > 0.0 && now >= LOST * then => Lasting::Partly,
        Some((then, _)) if then > 0.0 => Lasting::Lost,
        _ => Lasting::CannotSay,
    };
    Some(Held { lasting, then, now, roots })
}
