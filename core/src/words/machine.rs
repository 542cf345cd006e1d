//! What a machine set for a depth is told.

use super::Words;
use crate::advice::machine::{
    Compared, CriticalShift, Estimate, LayerBreak, LayerDepths, LoosenedRange, Measure, Model, Setting,
    SideSlope, TineForce, Traction, TractorFit, Work,
};
use crate::record::Machine;
use crate::units::Quantity;
use fluent::fluent_args;

impl Words {
    /// Everything a setting says, a sentence or two each: depth first, money last. Cautions are apart.
    pub fn setting(&self, machine: &Machine, work: &Work, setting: &Setting) -> Vec<String> {
        let mut said = vec![self.say_with("set-tip", &fluent_args!["tip" => self.depth(setting.tip_mm)])];
        said.extend(self.not_to_be_worked(setting));
        said.extend(self.limits(machine, work, setting));
        said.extend(self.critical(setting));
        said.push(self.spacing(machine, setting));
        said.push(self.loosened(work, setting));
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
            Measure::Share => return self.percent_range(value.lo, value.hi),
            Measure::Ridge => return self.depth_range(value.lo.round() as u32, value.hi.round() as u32),
            Measure::Draught => Quantity::Force,
            Measure::PtoPower => Quantity::Power,
            Measure::WorkRate => Quantity::WorkRate,
            Measure::Fuel => Quantity::FuelPerArea,
            Measure::Cost => Quantity::CostPerArea,
            Measure::BreakEven => Quantity::Yield,
        };
        self.estimate(quantity, value)
    }

    /// Says that this is not to be worked, and why; said before any figure.
    pub fn not_to_be_worked(&self, setting: &Setting) -> Option<String> {
        let why: Vec<String> = setting.not_to_be_worked.iter().map(|&why| self.of(why)).collect();
        let said =
            || self.say_with("set-not_worked", &fluent_args!["why" => self.join("join-clauses", &why)]);
        (!why.is_empty()).then(said)
    }

    /// Says what the machine cannot do.
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
        let place = self.of(setting.place);
        let mut said = vec![if let Some(hi_mm) = critical.hi_mm {
            let args = fluent_args!["range" => self.depth_range(critical.lo_mm, hi_mm), "place" => place];
            self.say_with("set-critical", &args)
        } else {
            let args = fluent_args!["from" => self.depth(critical.lo_mm), "place" => place];
            self.say_with("set-critical_winged", &args)
        }];
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
        let mut foot = fluent_args![
            "tip" => self.depth(setting.tip_mm),
            "sure" => self.depth(setting.foot_width.sure_mm),
        ];
        let id = if let Some(least_mm) = setting.foot_width.least_mm {
            foot.set("least", self.depth(least_mm));
            "set-foot"
        } else {
            "set-foot_winged"
        };
        said.push(self.say_with(id, &foot));
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
    pub(super) fn loosened(&self, work: &Work, setting: &Setting) -> String {
        self.modelled(&setting.ground, "set-no_ground", |LoosenedRange { least, most }: &LoosenedRange| {
            let mut args = fluent_args![
                "share" => self.percent_range(least.share, most.share), "sides" => self.sides(work.slope),
            ];
            let all = if most.meets {
                args.set("ridge", self.depth_range(most.ridge_mm, least.ridge_mm));
                self.say_with("set-ground", &args)
            } else {
                self.say_with("set-ground_apart", &args)
            };
            let mean = f64::midpoint(least.single_area_m2, most.single_area_m2);
            let area = Estimate { lo: least.single_area_m2, mid: mean, hi: most.single_area_m2 };
            let single = fluent_args![
                "area" => self.estimate(Quantity::Area, area),
                "width" => self.depth_range(least.surface_width_mm, most.surface_width_mm),
            ];
            format!("{all} {}", self.say_with("set-single", &single))
        })
    }

    /// Slope of the sides: `45–60°`.
    pub(super) fn sides(&self, SideSlope { flat, steep }: SideSlope) -> String {
        let [flat, steep] = [flat, steep].map(|degrees| format!("{degrees:.0}"));
        if flat == steep {
            return format!("{flat}°");
        }
        format!("{}°", self.say_with("range-written", &fluent_args!["lo" => flat, "hi" => steep]))
    }

    /// Says whether the layer is broken over the full width, or why that is not told.
    pub(super) fn layer_broken(&self, layer: Option<LayerDepths>, setting: &Setting) -> String {
        self.modelled(&setting.layer, "set-no_layer", |broken| {
            let bottom = self.depth(layer.map_or(0, |layer| layer.bottom_mm));
            let LayerBreak { widest_spacing_mm, widest_if_flat_mm, .. } = *broken;
            let (id, widest) = match (broken.full_width, broken.full_width_if_flat) {
                (true, _) => ("set-layer_full", self.depth(widest_spacing_mm)),
                (false, true) => ("set-layer_flat", self.depth(widest_spacing_mm)),
                (false, false) => ("set-layer_part", self.depth_range(widest_spacing_mm, widest_if_flat_mm)),
            };
            let mut said = vec![self.say_with(id, &fluent_args!["bottom" => bottom, "widest" => widest])];
            let tip = broken.shallowest_tip_mm.filter(|_| !broken.full_width);
            said.extend(
                tip.map(|tip_mm| self.say_with("set-layer_tip", &fluent_args!["tip" => self.depth(tip_mm)])),
            );
            said.push(self.say("set-layer_dig"));
            said.join(" ")
        })
    }

    fn leading(&self, machine: &Machine, setting: &Setting) -> Option<String> {
        let ranges = setting.leading?;
        let [first, second] = ranges.map(|range| self.depth_range(range.lo_mm, range.hi_mm));
        let mut said =
            vec![self.say_with("set-leading", &fluent_args!["first" => first, "second" => second])];
        let fitted = machine.leading.and_then(|leading| leading.depth_mm);
        said.extend(fitted.map(|depth_mm| {
            self.say_with("set-leading_fitted", &fluent_args!["depth" => self.depth(depth_mm)])
        }));
        for range in ranges.iter().filter(|range| range.within != Some(false)) {
            for (id, saved) in
                [("set-leading_draught", range.draught_saved), ("set-leading_fuel", range.fuel_saved)]
            {
                said.extend(saved.map(|saved| {
                    let args = fluent_args!["saved" => self.percent(saved), "source" => range.source];
                    self.say_with(id, &args)
                }));
            }
        }
        Some(said.join(" "))
    }

    fn power(&self, setting: &Setting) -> Vec<String> {
        let args = fluent_args![
            "draught" => self.estimate(Quantity::Force, setting.draught_kn),
            "power" => self.estimate(Quantity::Power, setting.drawbar_kw),
        ];
        let mut said = vec![self.say_with("set-draught", &args)];
        said.extend(setting.wider_than_source_mm.map(|source_mm| {
            self.say_with("set-wings_wider", &fluent_args!["source" => self.depth(source_mm)])
        }));
        said.extend(setting.traction.iter().flat_map(|traction| self.tractor(traction)));
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

    /// The tractor's power, the speed it holds where that is less than asked for, and its grip.
    fn tractor(&self, traction: &Traction) -> Vec<String> {
        let args = fluent_args![
            "has" => self.amount(Quantity::Power, traction.rated_pto_kw),
            "needed" => self.estimate(Quantity::Power, traction.needed_pto_kw),
            "fit" => self.of(traction.fit),
        ];
        let mut said = vec![self.say_with("set-tractor", &args)];
        let held = self.estimate(Quantity::Speed, traction.held_kmh);
        let slower = traction.fit != TractorFit::Enough;
        said.extend(slower.then(|| self.say_with("set-held", &fluent_args!["speed" => held])));
        said.push(self.modelled(&traction.grip, "set-no_grip", |grip| {
            let pull = |kn| self.amount(Quantity::Force, kn);
            let args = fluent_args![
                "best" => pull(grip.best_kn), "most" => pull(grip.most_kn), "fit" => self.of(grip.fit),
            ];
            self.say_with("set-grip", &args)
        }));
        said
    }

    /// Ground worked in an hour, and the money where prices were given.
    fn money(&self, setting: &Setting) -> Vec<String> {
        let mut said = vec![self.modelled(&setting.ha_per_hour, "set-no_work", |&rate| {
            self.say_with("set-work", &fluent_args!["done" => self.estimate(Quantity::WorkRate, rate)])
        })];
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
