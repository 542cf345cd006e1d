//! The section across a machine: its key, and what it shows to whoever does not see it.

use super::Words;
use crate::advice::machine::{LoosenedRange, Model, Setting, SideSlope, Work};
use crate::picture::machine::{BehindPicture, BehindWords, KeyLine, KeyMark, PairWords};
use crate::record::Machine;
use fluent::{FluentArgs, fluent_args};

impl Words {
    /// Name of the section across a machine.
    pub fn section_title(&self) -> String {
        self.say("section-title")
    }

    /// The key of the section: what is drawn, from the surface down.
    pub fn section_key(&self, machine: &Machine, work: &Work, setting: &Setting) -> Vec<KeyLine> {
        let line = |mark, text| KeyLine { mark, text };
        let tip = fluent_args!["tip" => self.depth(setting.tip_mm)];
        let mut key = vec![line(KeyMark::Tip, self.say_with("section-tip", &tip))];
        match &setting.ground {
            Model::Applies(_) => key.push(line(KeyMark::Loosened, self.say("section-loosened"))),
            Model::AppliesIfAboveCritical(_) => {
                key.push(line(KeyMark::LoosenedIfAbove, self.say("section-loosened_if_above")));
            }
            Model::DoesNotApply(_) => {}
        }
        if setting.ground.value().is_some() && work.slope.flat < work.slope.steep {
            let text = self.say_with("section-hangs_on_slope", &self.slopes(work.slope));
            key.push(line(KeyMark::HangsOnSlope, text));
        }
        let ridge = setting.ground.value().filter(|ground| ground.least.ridge_mm > 0 && machine.legs > 1);
        key.extend(ridge.map(|LoosenedRange { least, most }| {
            let text = if most.ridge_mm == least.ridge_mm {
                self.say_with("section-ridge", &fluent_args!["ridge" => self.depth(least.ridge_mm)])
            } else {
                let args = fluent_args!["ridge" => self.depth_range(most.ridge_mm, least.ridge_mm)];
                self.say_with("section-ridge_range", &args)
            };
            line(KeyMark::Ridge, text)
        }));
        key.extend(work.layer.map(|layer| {
            let args = fluent_args!["depths" => self.depth_range(layer.top_mm, layer.bottom_mm)];
            line(KeyMark::Layer, self.say_with("section-layer", &args))
        }));
        let critical = setting.critical;
        let critical = if let Some(hi_mm) = critical.hi_mm {
            let range = self.depth_range(critical.lo_mm, hi_mm);
            self.say_with("section-critical", &fluent_args!["range" => range])
        } else {
            let from = self.depth(critical.lo_mm);
            self.say_with("section-critical_winged", &fluent_args!["from" => from])
        };
        key.push(line(KeyMark::Critical, critical));
        let leading = machine.leading.and_then(|leading| leading.depth_mm);
        key.extend(leading.map(|depth_mm| {
            let args = fluent_args!["depth" => self.depth(depth_mm)];
            line(KeyMark::Leading, self.say_with("section-leading", &args))
        }));
        if let Model::DoesNotApply(why) = setting.ground {
            let text = self.say_with("section-no_ground", &fluent_args!["why" => self.of(why)]);
            key.push(line(KeyMark::Note, text));
        }
        key
    }

    /// The section, to be spoken by a screen reader.
    pub fn describe_section(&self, machine: &Machine, work: &Work, setting: &Setting) -> String {
        let args = fluent_args![
            "legs" => machine.legs,
            "spacing" => self.depth(machine.spacing_mm),
            "tip" => self.depth(setting.tip_mm),
        ];
        let mut said = vec![self.say_with("section-described", &args)];
        said.extend(work.layer.map(|layer| {
            let args = fluent_args!["depths" => self.depth_range_spoken(layer.top_mm, layer.bottom_mm)];
            self.say_with("section-described_layer", &args)
        }));
        let critical = setting.critical;
        let mut args = fluent_args!["place" => self.of(setting.place)];
        let id = if let Some(hi_mm) = critical.hi_mm {
            args.set("range", self.depth_range_spoken(critical.lo_mm, hi_mm));
            "section-described_critical"
        } else {
            args.set("from", self.depth(critical.lo_mm));
            "section-described_critical_winged"
        };
        said.push(self.say_with(id, &args));
        said.push(self.loosened(work, setting));
        if setting.ground.value().is_some() && work.slope.flat < work.slope.steep {
            said.push(self.say_with("section-described_slope", &self.slopes(work.slope)));
        }
        if work.layer.is_some() {
            said.push(self.layer_broken(work.layer, setting));
        }
        said.join(" ")
    }

    /// The ends of a range of slopes, by themselves.
    fn slopes(&self, SideSlope { flat, steep }: SideSlope) -> FluentArgs<'static> {
        fluent_args!["flat" => self.sides(SideSlope::known(flat)), "steep" => self.sides(SideSlope::known(steep))]
    }

    /// Name of the section behind a machine.
    pub fn behind_title(&self) -> String {
        self.say("section_behind-title")
    }

    /// All words of a section behind a machine; those the picture has so far are not looked at.
    pub fn behind_words(&self, picture: &BehindPicture) -> BehindWords {
        let measured = picture.readings_mm.len() > 1;
        BehindWords {
            numbers: picture.readings_mm.iter().map(|&mm| self.number(mm)).collect(),
            narrower: if measured { self.say("section_behind-narrower") } else { String::new() },
            key: self.behind_key(picture),
        }
    }

    fn behind_key(&self, picture: &BehindPicture) -> Vec<KeyLine> {
        let line = |mark, text| KeyLine { mark, text };
        let mut key = Vec::new();
        if picture.readings_mm.len() > 1 {
            let readings = self.listed_depths(&picture.readings_mm);
            let floor = self.say_with("section_behind-floor", &fluent_args!["readings" => readings]);
            key.push(line(KeyMark::Floor, floor));
            key.push(line(KeyMark::Loosened, self.say("section_behind-loosened")));
            if picture.stayed_beside_layer() {
                let args = fluent_args!["target" => self.depth(picture.target_mm)];
                key.push(line(KeyMark::Stayed, self.say_with("section_behind-stayed", &args)));
            }
            key.extend(picture.layer.map(|layer| {
                let args = fluent_args!["depths" => self.depth_range(layer.top_mm, layer.bottom_mm)];
                if picture.layer_left() {
                    line(KeyMark::LayerLeft, self.say_with("section_behind-layer_left", &args))
                } else {
                    line(KeyMark::Note, self.say_with("section_behind-layer_gone", &args))
                }
            }));
            key.extend(picture.ridge().map(|ridge| {
                let args = fluent_args!["ridge" => self.depth(ridge.height_mm)];
                line(KeyMark::Ridge, self.say_with("section_behind-ridge", &args))
            }));
        }
        key.extend(picture.tip_mm.map(|tip_mm| {
            let args = fluent_args!["tip" => self.depth(tip_mm)];
            line(KeyMark::Tip, self.say_with("section_behind-tip", &args))
        }));
        if !picture.slots_mm.is_empty() {
            let args = fluent_args!["slots" => self.listed_depths(&picture.slots_mm)];
            key.push(line(KeyMark::Slots, self.say_with("section_behind-slots", &args)));
        }
        key
    }

    /// The section behind a machine, to be spoken by a screen reader.
    pub fn describe_behind(&self, picture: &BehindPicture) -> String {
        let mut said = Vec::new();
        if picture.readings_mm.len() < 2 {
            said.push(self.say("section_behind-described_none"));
        } else {
            let args = fluent_args![
                "spacing" => self.depth(picture.spacing_mm),
                "readings" => self.listed_depths(&picture.readings_mm),
            ];
            said.push(self.say_with("section_behind-described", &args));
            said.push(match picture.ridge() {
                Some(ridge) => {
                    let place = match ridge.at {
                        ..0.4 => "section_behind-ridge_left",
                        0.6.. => "section_behind-ridge_right",
                        _ => "section_behind-ridge_middle",
                    };
                    let args =
                        fluent_args!["ridge" => self.depth(ridge.height_mm), "place" => self.say(place)];
                    self.say_with("section_behind-described_ridge", &args)
                }
                None => self.say("section_behind-described_no_ridge"),
            });
            let id = if picture.stayed() {
                "section_behind-described_stayed"
            } else {
                "section_behind-described_clear"
            };
            said.push(self.say_with(id, &fluent_args!["target" => self.depth(picture.target_mm)]));
            said.extend(picture.layer.map(|layer| {
                if picture.layer_left() {
                    let depths = self.depth_range_spoken(layer.top_mm, layer.bottom_mm);
                    self.say_with("section_behind-described_layer_left", &fluent_args!["depths" => depths])
                } else {
                    let depths = self.depth_range(layer.top_mm, layer.bottom_mm);
                    self.say_with("section_behind-layer_gone", &fluent_args!["depths" => depths])
                }
            }));
        }
        said.extend(picture.tip_mm.map(|tip_mm| {
            self.say_with("section_behind-described_tip", &fluent_args!["tip" => self.depth(tip_mm)])
        }));
        if !picture.slots_mm.is_empty() {
            let args = fluent_args!["slots" => self.listed_depths(&picture.slots_mm)];
            said.push(self.say_with("section_behind-described_slots", &args));
        }
        said.join(" ")
    }

    /// Name of the drawing of before and after.
    pub fn pair_title(&self) -> String {
        self.say("pair-title")
    }

    /// The words above the two.
    pub fn pair_words(&self) -> PairWords {
        PairWords { before: self.say("pair-title_before"), after: self.say("pair-title_after") }
    }

    /// Before and after, to be spoken: the description of the pit and that of the section behind the machine.
    pub fn describe_pair(&self, before: &str, after: &str) -> String {
        self.say_with("pair-described", &fluent_args!["before" => before, "after" => after])
    }

    /// Depths in their order with the unit once: `35, 33, 20, 34, 35 cm`.
    fn listed_depths(&self, depths_mm: &[u32]) -> String {
        let numbers: Vec<String> = depths_mm.iter().map(|&mm| self.number(mm)).collect();
        self.with_unit(self.comma(&numbers))
    }
}
