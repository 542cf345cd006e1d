//! The section across a machine: its key, and what it shows to whoever does not see it.

use super::Words;
use crate::advice::machine::{Model, Setting, Work};
use crate::picture::machine::{KeyLine, KeyMark};
use crate::record::Machine;
use fluent::fluent_args;

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
        let ridge = setting.ground.value().filter(|ground| ground.ridge_mm > 0 && machine.legs > 1);
        key.extend(ridge.map(|ground| {
            let args = fluent_args!["ridge" => self.depth(ground.ridge_mm)];
            line(KeyMark::Ridge, self.say_with("section-ridge", &args))
        }));
        key.extend(work.layer.map(|layer| {
            let args = fluent_args!["depths" => self.depth_range(layer.top_mm, layer.bottom_mm)];
            line(KeyMark::Layer, self.say_with("section-layer", &args))
        }));
        let range = self.depth_range(setting.critical.lo_mm, setting.critical.hi_mm);
        let critical = self.say_with("section-critical", &fluent_args!["range" => range]);
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
        let args = fluent_args![
            "range" => self.depth_range_spoken(setting.critical.lo_mm, setting.critical.hi_mm),
            "place" => self.of(setting.place),
        ];
        said.push(self.say_with("section-described_critical", &args));
        said.push(self.loosened(setting));
        if work.layer.is_some() {
            said.push(self.layer_broken(work.layer, setting));
        }
        said.join(" ")
    }
}
