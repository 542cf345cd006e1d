//! After the day of the pass: wheels on loosened ground, and whether it has held a season on.

use super::codes::Lasting;
use super::{DigAdvice, Held, TRAFFIC_DAYS, TrafficWarning};
use crate::record::{AfterDig, Field, Pass, RootsSeen};

/// Share of what was loosened that is still loose where it has held. Our judgement: two readings' slack.
const HELD: f64 = 0.85;
/// Share below which it is lost. Our judgement.
const LOST: f64 = 0.5;

/// Wheels within [`TRAFFIC_DAYS`] of the pass: as noted for it, or for the field on a later day.
pub fn traffic(pass: &Pass, field: &Field) -> Option<TrafficWarning> {
    let loosened = pass.done?;
    // Noted for the field, the day itself is that of the tractor before the machine.
    let of_field = field.last_traffic.filter(|day| *day > loosened);
    let days = |day: &chrono::NaiveDate| day.signed_duration_since(loosened).num_days();
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
    // One measure for both: the layer where every hole with readings has one, else the section.
    let measured = || first.iter().chain(&later).filter(|dig| dig.share.value().is_some());
    let by_layer = measured().count() > 0 && measured().all(|dig| dig.layer_broken.value().is_some());
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
