//! What a machine set for a depth is told.

use super::Words;
use crate::advice::machine::{
    Compared, CriticalShift, Estimate, LayerDepths, Loosened, Measure, Model, Setting, TineForce, Work,
};
use crate::record::Machine;
use crate::units::Quantity;
use fluent::fluent_args;

impl Words {
    /// Everything a setting says, a sentence or two each: depth first, money last. Cautions are apart.
    pub fn setting(&self, machine: &Machine, work: &Work, setting: &Setting) -> Vec<String> {
        let mut said = vec![self.say_with("set-tip", &fluent_args!["tip" => self.depth(setting.tip_mm)])];
        said.extend(self.limits(machine, work, setting));
        said.extend(self.critical(setting));
        said.push(self.spacing(machine, setting));
        said.push(self.loosened(setting));
        said.push(self.layer_broken(work.layer, setting));
        said.extend(self.leading(machine, setting));
        said.extend(self.power(setting));
        said.extend(self.money(setting));
        said
    }

    /// Two settings measure by measure.
    pub fn compared(&self, rows: &[Compared]) -> Vec<String> {
        let side = |measure, value: &Model<Estimate>| match value {
            Model::Applies(value) => self.measured(measure, *value),
            Model::AppliesIfAboveCritical(value) => {
                self.say_with("compare-if", &fluent_args!["value" => self.measured(measure, *value)])
            }
            Model::DoesNotApply(why) => self.say_with("compare-none", &fluent_args!["why" => self.of(*why)]),
        };
        let row = |row: &Compared| {
            let args = fluent_args![
                "measure" => self.of(row.measure),
                "one" => side(row.measure, &row.one),
                "other" => side(row.measure, &row.other),
            ];
            self.say_with("compare-row", &args)
        };
        rows.iter().map(row).collect()
    }

    /// The draught of a single tine in soil that was measured.
    pub fn tine_force(&self, force: &TineForce) -> String {
        let draught = self.amount(Quantity::Force, force.draught_kn);
        self.say_with("tine-force", &fluent_args!["draught" => draught])
    }

    fn measured(&self, measure: Measure, value: Estimate) -> String {
        let quantity = match measure {
            Measure::Share => return self.percent(value.mid),
            Measure::Ridge => return self.depth(value.mid.round() as u32),
            Measure::Draught => Quantity::Force,
            Measure::PtoPower => Quantity::Power,
            Measure::WorkRate => Quantity::WorkRate,
            Measure::Fuel => Quantity::FuelPerArea,
            Measure::Cost => Quantity::CostPerArea,
            Measure::BreakEven => Quantity::Yield,
        };
        self.estimate(quantity, value)
    }

    /// What the machine cannot do.
    fn limits(&self, machine: &Machine, work: &Work, setting: &Setting) -> Vec<String> {
        let reach = machine.reach_mm.filter(|_| setting.within_reach == Some(false)).map(|reach_mm| {
            let args = fluent_args!["reach" => self.depth(reach_mm), "tip" => self.depth(setting.tip_mm)];
            self.say_with("set-reach", &args)
        });
        let speed = machine.speed.filter(|_| setting.within_speed == Some(false)).map(|speed| {
            let kmh = |kmh| self.amount(Quantity::Speed, kmh);
            let args = fluent_args![
                "speed" => kmh(work.speed_kmh), "slowest" => kmh(speed.lo_kmh), "fastest" => kmh(speed.hi_kmh),
            ];
            self.say_with("set-speed", &args)
        });
        reach.into_iter().chain(speed).collect()
    }

    fn critical(&self, setting: &Setting) -> Vec<String> {
        let critical = setting.critical;
        let args = fluent_args![
            "range" => self.depth_range(critical.lo_mm, critical.hi_mm), "place" => self.of(setting.place),
        ];
        let mut said = vec![self.say_with("set-critical", &args)];
        let shifts = |deeper| -> Vec<String> {
            let shifts =
                setting.shifts.iter().copied().filter(|shift: &CriticalShift| shift.deeper() == deeper);
            shifts.map(|shift| self.of(shift)).collect()
        };
        for (id, shifts) in [("set-shallower", shifts(false)), ("set-deeper", shifts(true))] {
            if !shifts.is_empty() {
                said.push(self.say_with(id, &fluent_args!["shifts" => self.and(&shifts)]));
            }
        }
        let depth = self.depth(setting.deepest_above_critical_mm);
        said.push(self.say_with("set-deepest", &fluent_args!["depth" => depth]));
        let foot = fluent_args![
            "tip" => self.depth(setting.tip_mm),
            "sure" => self.depth(setting.foot_width.sure_mm),
            "least" => self.depth(setting.foot_width.least_mm),
        ];
        said.push(self.say_with("set-foot", &foot));
        said
    }

    pub(super) fn spacing(&self, machine: &Machine, setting: &Setting) -> String {
        self.modelled(&setting.spacing, "set-no_spacing", |spacing| {
            let args = fluent_args![
                "spacing" => self.depth(machine.spacing_mm),
                "fit" => self.of(spacing.fit),
                "range" => self.depth_range(spacing.range.lo_mm, spacing.range.hi_mm),
            ];
            self.say_with("set-spacing", &args)
        })
    }

    /// How much is loosened, or why that is not told.
    pub(super) fn loosened(&self, setting: &Setting) -> String {
        self.modelled(&setting.ground, "set-no_ground", |ground: &Loosened| {
            let share = self.percent(ground.share);
            let all = if ground.meets {
                let args = fluent_args!["share" => share, "ridge" => self.depth(ground.ridge_mm)];
                self.say_with("set-ground", &args)
            } else {
                self.say_with("set-ground_apart", &fluent_args!["share" => share])
            };
            let single = fluent_args![
                "area" => self.amount(Quantity::Area, ground.single_area_m2),
                "width" => self.depth(ground.surface_width_mm),
            ];
            format!("{all} {}", self.say_with("set-single", &single))
        })
    }

    /// Whether the layer is broken over the full width, or why that is not told.
    pub(super) fn layer_broken(&self, layer: Option<LayerDepths>, setting: &Setting) -> String {
        self.modelled(&setting.layer, "set-no_layer", |broken| {
            let bottom = self.depth(layer.map_or(0, |layer| layer.bottom_mm));
            let args = fluent_args!["bottom" => bottom, "widest" => self.depth(broken.widest_spacing_mm)];
            let id = if broken.full_width { "set-layer_full" } else { "set-layer_part" };
            let mut said = vec![self.say_with(id, &args)];
            let tip = broken.shallowest_tip_mm.filter(|_| !broken.full_width);
            said.extend(
                tip.map(|tip_mm| self.say_with("set-layer_tip", &fluent_args!["tip" => self.depth(tip_mm)])),
            );
            said.push(self.say("set-layer_dig"));
            said.join(" ")
        })
    }

    fn leading(&self, machine: &Machine, setting: &Setting) -> Option<String> {
        let [first, second] = setting.leading?.map(|range| self.depth_range(range.lo_mm, range.hi_mm));
        let mut said =
            vec![self.say_with("set-leading", &fluent_args!["first" => first, "second" => second])];
        let fitted = machine.leading.and_then(|leading| leading.depth_mm);
        said.extend(fitted.map(|depth_mm| {
            self.say_with("set-leading_fitted", &fluent_args!["depth" => self.depth(depth_mm)])
        }));
        Some(said.join(" "))
    }

    fn power(&self, setting: &Setting) -> Vec<String> {
        let args = fluent_args![
            "draught" => self.estimate(Quantity::Force, setting.draught_kn),
            "power" => self.estimate(Quantity::Power, setting.drawbar_kw),
        ];
        let mut said = vec![self.say_with("set-draught", &args)];
        said.extend(setting.traction.map(|traction| {
            let args = fluent_args![
                "has" => self.amount(Quantity::Power, traction.rated_pto_kw),
                "needed" => self.estimate(Quantity::Power, traction.needed_pto_kw),
                "fit" => self.of(traction.fit),
            ];
            self.say_with("set-tractor", &args)
        }));
        said.push(self.modelled(&setting.fuel, "set-no_fuel", |fuel| {
            let args = fluent_args![
                "area" => self.estimate(Quantity::FuelPerArea, fuel.litres_per_ha),
                "hour" => self.estimate(Quantity::FuelPerHour, fuel.litres_per_hour),
                "formula" => self.of(fuel.formula),
            ];
            self.say_with("set-fuel", &args)
        }));
        said
    }

    /// Ground worked in an hour, and the money where prices were given.
    fn money(&self, setting: &Setting) -> Vec<String> {
        let done = self.amount(Quantity::WorkRate, setting.ha_per_hour);
        let mut said = vec![self.say_with("set-work", &fluent_args!["done" => done])];
        said.extend(setting.cost_per_ha.value().map(|&cost| {
            self.say_with("set-cost", &fluent_args!["cost" => self.estimate(Quantity::CostPerArea, cost)])
        }));
        said.extend(setting.break_even_t_per_ha.value().map(|&grain| {
            let grain = self.estimate(Quantity::Yield, grain);
            self.say_with("set-break_even", &fluent_args!["yield" => grain])
        }));
        said
    }

    /// A figure told, with what it hangs on, or the reason it is not told by the message `none`.
    pub(super) fn modelled<T>(&self, model: &Model<T>, none: &str, say: impl FnOnce(&T) -> String) -> String {
        match model {
            Model::Applies(value) => say(value),
            Model::AppliesIfAboveCritical(value) => {
                self.say_with("set-if", &fluent_args!["sentence" => say(value)])
            }
            Model::DoesNotApply(why) => self.say_with(none, &fluent_args!["why" => self.of(*why)]),
        }
    }
}
