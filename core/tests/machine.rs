//! The published figures of loosening by machine, from the file that every shell reads.

use pitface_core::advice::machine::{
    CriticalDepth, DraughtRow, DraughtSoil, Estimate, FuelFormula, LayerDepths, NarrowTine, SideSlope,
    SpacingRange, Surface, Tines, Work, break_even_t_per_ha, draught_kn, drawbar_kw, ha_per_hour,
    leading_ranges, pto_kw, section_share, set, table_draught_n,
};
use pitface_core::advice::{CLEARED_SHARE, tip_depth};
use pitface_core::record::{Drive, Foot, Machine, RecordId, Tractor, Wings};
use pitface_core::units::{Quantity, UnitSystem};
use serde_json::Value;
use std::collections::BTreeSet;

/// A case of the file.
struct Case(Value);

fn all() -> Vec<Case> {
    let file: Value =
        serde_json::from_str(include_str!("../../tests/vectors/machine.json")).unwrap_or_default();
    file["cases"].as_array().into_iter().flatten().cloned().map(Case).collect()
}

/// The cases of one kind; there has to be one.
fn cases(what: &str) -> Vec<Case> {
    let cases: Vec<Case> = all().into_iter().filter(|case| case.0["what"] == what).collect();
    assert!(!cases.is_empty(), "no case of {what}");
    cases
}

impl Case {
    fn number(&self, part: &str, name: &str) -> f64 {
        self.0[part][name].as_f64().unwrap_or_else(|| panic!("{} has no {part}.{name}", self.0["id"]))
    }

    fn given(&self, name: &str) -> f64 {
        self.number("input", name)
    }

    fn given_mm(&self, name: &str) -> u32 {
        self.given(name) as u32
    }

    fn code(&self, name: &str) -> &str {
        self.0["input"][name].as_str().unwrap_or_else(|| panic!("{} has no {name}", self.0["id"]))
    }

    fn expected(&self, name: &str) -> &Value {
        &self.0["expected"][name]
    }

    fn check(&self, name: &str, value: f64, tolerance: f64) {
        let expected = self.number("expected", name);
        assert!((value - expected).abs() <= tolerance, "{} {name}: {value}, not {expected}", self.0["id"]);
    }

    /// Within the file's tolerance as a share of the value.
    fn check_share(&self, name: &str, value: f64) {
        let tolerance = self.0["tolerance"].as_f64().unwrap_or_default();
        self.check(name, value, tolerance * self.number("expected", name));
    }

    fn check_range(&self, lo_mm: u32, hi_mm: u32) {
        self.check("lo_mm", lo_mm.into(), 1.0);
        self.check("hi_mm", hi_mm.into(), 1.0);
    }

    fn draught(&self) -> Estimate {
        let winged = self.0["input"]["winged"] == true;
        let machine = machine(self.given_mm("legs"), winged.then_some(300));
        let soil = DraughtSoil::from_code(self.code("soil")).unwrap_or_else(|| panic!("{}", self.0["id"]));
        draught_kn(&machine, self.given_mm("tip_mm"), self.given("speed_kmh"), soil)
    }
}

fn machine(legs: u32, wings_mm: Option<u32>) -> Machine {
    Machine {
        id: RecordId::new(0, [0; 10]),
        name: "Yard subsoiler".into(),
        legs,
        spacing_mm: 600,
        foot_width_mm: 80,
        wings: wings_mm.map(|width_mm| Wings { width_mm, lift_mm: None }),
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: None,
        tractor_mass_kg: None,
        unknown: serde_json::Map::default(),
    }
}

#[test]
fn every_case_has_its_source_and_mark_and_is_of_a_known_kind() {
    let known = [
        "break_even",
        "critical_depth",
        "critical_place",
        "draught",
        "drawbar_over_pto",
        "fuel",
        "full_width",
        "geometry",
        "grip",
        "leading",
        "leading_saving",
        "narrow_tine",
        "pto",
        "section",
        "spacing",
        "table_draught",
        "tip",
        "work_rate",
    ];
    let kinds: BTreeSet<String> =
        all().iter().filter_map(|case| Some(case.0["what"].as_str()?.to_owned())).collect();
    assert_eq!(kinds.iter().map(String::as_str).collect::<Vec<_>>(), known);
    for Case(case) in all() {
        assert!(case["source"].as_str().is_some_and(|source| !source.is_empty()), "{}", case["id"]);
        assert!(["published", "rule", "geometry", "memory"].contains(&case["mark"].as_str().unwrap()));
    }
}

#[test]
fn critical_depth_is_a_range() {
    for case in cases("critical_depth") {
        let critical = CriticalDepth::of_foot(case.given_mm("foot_width_mm"));
        case.check_range(critical.lo_mm, critical.hi_mm.unwrap());
    }
    for case in cases("critical_place") {
        let place = CriticalDepth::of_foot(case.given_mm("foot_width_mm")).place(case.given_mm("tip_mm"));
        assert_eq!(place.code(), case.expected("place"), "{}", case.0["id"]);
    }
}

#[test]
fn spacings_and_depths() {
    for case in cases("spacing") {
        let foot = Foot::from_code(case.code("foot")).unwrap();
        let range = SpacingRange::at(case.given_mm("tip_mm"), foot).unwrap();
        case.check_range(range.lo_mm, range.hi_mm);
    }
    for case in cases("tip") {
        let tip = tip_depth(&[case.given_mm("bottom_mm")], CLEARED_SHARE).unwrap();
        case.check_range(tip.lo_mm, tip.hi_mm);
    }
    for case in cases("leading") {
        let range = leading_ranges(case.given_mm("tip_mm"), None)[case.given_mm("row") as usize];
        case.check_range(range.lo_mm, range.hi_mm);
    }
    for case in cases("leading_saving") {
        let range = leading_ranges(400, None)[case.given_mm("row") as usize];
        for (name, saved) in [("draught", range.draught_saved), ("fuel", range.fuel_saved)] {
            if case.0["expected"].get(name).is_some() {
                case.check(name, saved.unwrap(), 0.001);
            } else {
                assert_eq!(saved, None, "the source gives none");
            }
        }
    }
}

#[test]
fn draught_and_power() {
    for case in cases("draught") {
        let draught = case.draught();
        case.check_share("lo_kn", draught.lo);
        case.check_share("mid_kn", draught.mid);
        case.check_share("hi_kn", draught.hi);
        case.check_share("drawbar_kw", drawbar_kw(draught, case.given("speed_kmh")).mid);
    }
    for case in cases("pto") {
        let drive = Drive::from_code(case.code("drive")).unwrap();
        let surface = Surface::from_code(case.code("surface")).unwrap();
        let drawbar = drawbar_kw(case.draught(), case.given("speed_kmh"));
        case.check_share("mid_kw", pto_kw(drawbar, drive, surface).mid);
    }
}

#[test]
fn what_reaches_the_drawbar_on_every_surface() {
    for case in cases("drawbar_over_pto") {
        let drive = Drive::from_code(case.code("drive")).unwrap();
        for &surface in Surface::ALL {
            let for_a_hundred = pto_kw(Estimate::around(100.0, 0.0), drive, surface).mid;
            case.check(surface.code(), 100.0 / for_a_hundred, 1e-9);
        }
    }
}

#[test]
fn what_a_weight_can_pull_on_every_surface() {
    for case in cases("grip") {
        let drive = case.0["input"]["drive"].as_str().and_then(Drive::from_code).unwrap_or(Drive::FourWheel);
        let tractor = Some(Tractor { power_kw: 150.0, drive });
        let machine =
            Machine { tractor, tractor_mass_kg: Some(case.given_mm("mass_kg")), ..machine(3, None) };
        let surface = Surface::from_code(case.code("surface")).unwrap();
        let work = Work { surface, ..Work::new(300, DraughtSoil::Medium, 6.0) };
        let grip = set(&machine, &work).unwrap().traction.unwrap().grip;
        let grip = grip.value().unwrap();
        case.check_share("best_kn", grip.best_kn);
        case.check_share("most_kn", grip.most_kn);
    }
}

#[test]
fn a_printed_example_of_another_tool() {
    for case in cases("table_draught") {
        let [a, b, c] = ["a", "b", "c"].map(|name| case.given(name));
        let row = DraughtRow { winged: false, a, b, c, source: "" };
        let [factor, tools, depth_cm, speed_kmh] =
            ["factor", "tools", "depth_cm", "speed_kmh"].map(|name| case.given(name));
        let newtons = table_draught_n(&row, factor, tools, depth_cm, speed_kmh);
        case.check_share("newtons", newtons);
        let drawbar = drawbar_kw(Estimate::around(newtons / 1000.0, 0.4), speed_kmh);
        case.check_share("drawbar_kw", drawbar.mid);
    }
}

#[test]
fn the_published_work_rates_in_acres_and_in_hectares() {
    let us = UnitSystem::UsCustomary;
    for case in cases("work_rate") {
        let width_mm = us.to_metric(Quantity::Length, case.given("shanks") * case.given("spacing_in"));
        let speed_kmh = us.to_metric(Quantity::Speed, case.given("mph"));
        let rate = ha_per_hour(speed_kmh, width_mm.round() as u32, case.given("field_efficiency"));
        case.check("ha_per_hour", rate, 0.02);
        case.check("acres_per_hour", us.from_metric(Quantity::WorkRate, rate), 0.05);
    }
}

#[test]
fn fuel_by_the_formula_named() {
    for case in cases("fuel") {
        let formula = FuelFormula::from_code(case.code("formula")).unwrap();
        let litres = formula.litres_per_hour(case.given("rated_pto_kw"), case.given("load"));
        case.check("litres_per_hour", litres, 0.1);
    }
}

#[test]
fn the_figure_of_the_loosened_ground() {
    for case in cases("geometry") {
        let tines = Tines {
            lifting_width_mm: case.given_mm("lifting_width_mm"),
            tip_mm: case.given_mm("tip_mm"),
            spacing_mm: case.given_mm("spacing_mm"),
            slope_degrees: case.given("slope_degrees"),
        };
        let loosened = tines.loosened();
        assert_eq!(&loosened.meets, case.expected("meets"));
        case.check("ridge_mm", loosened.ridge_mm.into(), 1.0);
        case.check("share", loosened.share, 0.001);
    }
    for case in cases("section") {
        let readings: Vec<u32> = serde_json::from_value(case.0["input"]["readings_mm"].clone()).unwrap();
        case.check("share", section_share(&readings, case.given_mm("target_mm")).unwrap(), 0.001);
    }
}

#[test]
fn spacing_within_its_range_does_not_mean_full_width() {
    for case in cases("full_width") {
        let machine = Machine {
            spacing_mm: case.given_mm("spacing_mm"),
            foot_width_mm: case.given_mm("foot_width_mm"),
            ..machine(3, Some(case.given_mm("lifting_width_mm")))
        };
        let layer = Some(LayerDepths { top_mm: 0, bottom_mm: case.given_mm("bottom_mm") });
        let slope = SideSlope::known(case.given("slope_degrees"));
        let work = Work { layer, slope, ..Work::new(case.given_mm("tip_mm"), DraughtSoil::Medium, 6.0) };
        let setting = set(&machine, &work).unwrap();
        assert_eq!(setting.spacing.value().unwrap().fit.code(), case.expected("spacing"));
        let layer = setting.layer.value().unwrap();
        assert_eq!(&layer.full_width, case.expected("full_width"));
        case.check("widest_spacing_mm", layer.widest_spacing_mm.into(), 1.0);
    }
}

#[test]
fn break_even_yield() {
    for case in cases("break_even") {
        let cost = Estimate::around(case.given("cost_per_ha"), 0.0);
        case.check("t_per_ha", break_even_t_per_ha(cost, case.given("grain_price_per_t")).mid, 0.001);
    }
}

#[test]
fn a_narrow_tine_in_soil_that_was_measured() {
    for case in cases("narrow_tine") {
        let tine = NarrowTine {
            width_mm: case.given_mm("width_mm"),
            tip_mm: case.given_mm("tip_mm"),
            rake_degrees: case.given("rake_degrees"),
            soil_metal_degrees: case.given("soil_metal_degrees"),
            friction_degrees: case.given("friction_degrees"),
            cohesion_kpa: case.given("cohesion_kpa"),
            unit_weight_kn_m3: case.given("unit_weight_kn_m3"),
            surcharge_kpa: 0.0,
        };
        let force = tine.force().unwrap();
        case.check_share("failure_plane_degrees", force.failure_plane_degrees);
        case.check_share("n_gamma", force.n_gamma);
        case.check_share("n_cohesion", force.n_cohesion);
        case.check_share("draught_kn", force.draught_kn);
    }
}
