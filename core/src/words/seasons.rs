//! A zone over the years: what stands below each thing drawn, and all of it told.

use super::{Words, capital};
use crate::answer::{HeldOn, Loosened};
use crate::reading::PitReading;
use crate::record::{Call, Condition, Zone};
use fluent::fluent_args;

impl Words {
    /// `Headland over the years`
    pub fn seasons_title(&self, zone: Zone) -> String {
        self.say_with("seasons-title", &fluent_args!["zone" => self.label(zone)])
    }

    /// Says what harms in a pit, layer by layer: `Shut 20–28 cm`; else that nothing does.
    pub fn seasons_found(&self, pit: &PitReading) -> String {
        let harmed = pit.layers.iter().filter(|layer| layer.condition >= Condition::Tight);
        let told = harmed.map(|layer| {
            let depths = self.depth_range(layer.top_mm, layer.bottom_mm);
            self.say_with(
                "seasons-layer",
                &fluent_args!["condition" => self.of(layer.condition), "depths" => depths],
            )
        });
        let told: Vec<String> = told.collect();
        capital(if told.is_empty() { self.say("seasons-sound") } else { self.comma(&told) })
    }

    /// Says what a machine did: `Loosened to 33 cm: done`.
    pub fn seasons_loosened(&self, done: Loosened) -> String {
        let id = match (done.strip, done.tip_mm.is_some()) {
            (false, true) => "seasons-loosened",
            (false, false) => "seasons-loosened_unknown",
            (true, true) => "seasons-strip",
            (true, false) => "seasons-strip_unknown",
        };
        let tip = done.tip_mm.map(|mm| self.depth(mm)).unwrap_or_default();
        let loosened = self.say_with(id, &fluent_args!["tip" => tip]);
        capital(match done.verdict {
            Some(verdict) => {
                let args = fluent_args!["loosened" => loosened, "verdict" => self.of(verdict)];
                self.say_with("seasons-done", &args)
            }
            None => loosened,
        })
    }

    /// Says what holes a season on say: `It has held, loose to 30 cm on average`.
    pub fn seasons_held(&self, held: HeldOn) -> String {
        let lasting = self.of(held.lasting);
        capital(match held.firm_mm {
            Some(mm) => {
                let args = fluent_args!["lasting" => lasting, "depth" => self.depth(mm)];
                self.say_with("seasons-loose", &args)
            }
            None => lasting,
        })
    }

    /// A year, told: `2025: called Loosen; the worst of 3 pits: Shut 20–28 cm; Loosened to 33 cm: done.` `pits` is how many
    /// were dug.
    pub fn seasons_year(&self, year: i32, call: Option<Call>, pits: usize, seen: &[String]) -> String {
        let call =
            call.map(|call| self.say_with("seasons-called", &fluent_args!["call" => self.label(call)]));
        let worst = (pits > 1).then(|| self.say_with("seasons-worst", &fluent_args!["pits" => pits]));
        let seen = match (worst, seen) {
            (Some(worst), [found, rest @ ..]) => {
                std::iter::once(self.says_of(&worst, found)).chain(rest.iter().cloned()).collect()
            }
            _ => seen.to_vec(),
        };
        let told = call.into_iter().chain(seen).collect::<Vec<_>>().join("; ");
        self.say_with("seasons-year", &fluent_args!["year" => year.to_string(), "told" => told])
    }
}
