//! What a weighed ring and a pushed cone say.

use super::Words;
use crate::soil::density::{AERATION_LIMIT, Packing, RootRoom};
use crate::soil::resistance::{ConeReading, ConeSays, Loosening, ROOT_MARK_MPA, psi_from_mpa};
use crate::soil::ring::{Moisture, RingReading, RootReading};
use crate::units::LengthUnit;
use fluent::fluent_args;

impl Words {
    /// Everything a ring says, a sentence each: density, pores and air, roots, packing, and what it cannot say.
    pub fn ring(&self, ring: &RingReading) -> Vec<String> {
        let density = |g_per_cm3| self.density(g_per_cm3);
        let mut said = vec![match ring.stones {
            Some(stones) => {
                let args = fluent_args![
                    "whole" => density(ring.whole_g_per_cm3),
                    "stones" => self.percent(stones.share),
                    "fine" => density(ring.fine_g_per_cm3),
                ];
                self.say_with("sample-density_stones", &args)
            }
            None => {
                self.say_with("sample-density", &fluent_args!["density" => density(ring.whole_g_per_cm3)])
            }
        }];
        said.extend(self.pores(ring.pores, ring.moisture.as_ref()));
        said.extend(match &ring.roots {
            Some(roots) => self.roots(roots),
            None => vec![self.say("sample-roots_unknown")],
        });
        said.extend(ring.packing.iter().map(|packing| self.packing(packing)));
        if ring.packing.len() > 1 {
            said.push(self.say("sample-packing_apart"));
        }
        if ring.clay_may_hide {
            said.push(self.say("sample-clay_hides"));
        }
        said.push(self.say("sample-no_call"));
        said
    }

    fn pores(&self, pores: f64, moisture: Option<&Moisture>) -> Vec<String> {
        let percent = |share: f64| self.percentage(share * 100.0);
        let mut args = fluent_args!["pores" => percent(pores)];
        let Some(moisture) = moisture else { return vec![self.say_with("sample-pores", &args)] };
        args.set("water", percent(moisture.by_volume));
        args.set("mass", percent(moisture.by_mass));
        args.set("air", percent(moisture.air.share));
        let enough = if moisture.air.roots_lack_air { "sample-air_short" } else { "sample-air_enough" };
        let limit = fluent_args!["limit" => self.percent(AERATION_LIMIT)];
        vec![self.say_with("sample-pores_filled", &args), self.say_with(enough, &limit)]
    }

    fn roots(&self, roots: &RootReading) -> Vec<String> {
        let args = fluent_args![
            "size" => self.of(roots.particle_size),
            "from" => self.density(roots.limits.restricted_from),
            "above" => self.density(roots.limits.limiting_above),
        ];
        let id = match roots.room {
            RootRoom::Free => "sample-roots_free",
            RootRoom::Restricted => "sample-roots_restricted",
            RootRoom::Limiting => "sample-roots_limiting",
        };
        let settles = roots.settles_when_wetted.then(|| self.say("sample-settles"));
        [self.say_with(id, &args)].into_iter().chain(settles).collect()
    }

    fn packing(&self, packing: &Packing) -> String {
        let args = fluent_args![
            "value" => self.density(packing.g_per_cm3),
            "formula" => self.of(packing.formula),
            "class" => self.say(packing_class(packing.class.class)),
        ];
        self.say_with("sample-packing", &args)
    }

    /// Everything a cone says, a sentence each.
    pub fn cone(&self, cone: &ConeReading) -> Vec<String> {
        let args = fluent_args!["found" => self.pressure(cone.mpa), "mark" => self.pressure(ROOT_MARK_MPA)];
        let id = match cone.says {
            ConeSays::HardForRoots => "sample-cone_hard",
            ConeSays::RootsCanPush => "sample-cone_soft",
            ConeSays::TooDry => "sample-cone_dry",
            ConeSays::TooWet => "sample-cone_wet",
            ConeSays::Stony => "sample-cone_stony",
            ConeSays::MoistureNotKnown => "sample-cone_moisture",
        };
        let loosening = cone.loosening.as_ref().map(|loosening| self.loosening(loosening));
        [self.say_with(id, &args)].into_iter().chain(loosening).collect()
    }

    fn loosening(&self, loosening: &Loosening) -> String {
        let (least, most) = loosening.limits_mpa;
        let range = fluent_args!["lo" => self.pressure_number(least), "hi" => self.pressure_number(most)];
        let args = fluent_args![
            "range" => self.pressure_of(&self.say_with("range-written", &range)),
            "need" => self.of(loosening.need),
        ];
        self.say_with("sample-loosening", &args)
    }

    /// A density: `1.45 g/cm³`.
    fn density(&self, g_per_cm3: f64) -> String {
        self.say_with("sample-g_per_cm3", &fluent_args!["number" => self.decimal(g_per_cm3, 2)])
    }

    /// A pressure: `2.4 MPa`, or `348 psi` for those who read inches.
    fn pressure(&self, mpa: f64) -> String {
        self.pressure_of(&self.pressure_number(mpa))
    }

    fn pressure_number(&self, mpa: f64) -> String {
        match self.unit() {
            LengthUnit::Centimetres => self.decimal(mpa, 1 + usize::from((mpa * 10.0).fract().abs() > 1e-6)),
            LengthUnit::Inches => self.decimal(psi_from_mpa(mpa), 0),
        }
    }

    fn pressure_of(&self, number: &str) -> String {
        let unit = match self.unit() {
            LengthUnit::Centimetres => "MPa",
            LengthUnit::Inches => "psi",
        };
        self.say_with("measure-length", &fluent_args!["number" => number, "unit" => unit])
    }
}

/// The message of a class of packing; of one that has none, empty braces, which tests look for.
fn packing_class(class: &str) -> &'static str {
    const CLASSES: [&str; 8] = [
        "packing_class-low",
        "packing_class-medium",
        "packing_class-high",
        "packing_class-class_1",
        "packing_class-class_2",
        "packing_class-class_3",
        "packing_class-class_4",
        "packing_class-class_5",
    ];
    let of = |id: &&&str| id.split_once('-').is_some_and(|(_, its)| its == class);
    CLASSES.iter().find(of).copied().unwrap_or_default()
}
