//! Writes plans of invented fields as SVG into the directory given, by day, in the dark and in print, to be looked at.

use pitface_core::picture::plan::{
    PlanAfterDig, PlanLine, PlanPart, PlanPicture, PlanPit, PlanWords, Spot, plan,
};
use pitface_core::picture::{Spoken, Theme, svg};
use pitface_core::place::Walk;
use pitface_core::record::{Buried, Condition, PlaceKind, Zone};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, PlanTold, Words, ZoneTold};

fn pit(number: usize, at: Spot, condition: Option<Condition>, place: PlaceKind) -> PlanPit {
    PlanPit { at: Some(at), number: number.to_string(), condition, place }
}

fn circle([east, north]: Spot, radius: f64) -> Vec<Spot> {
    let turns = (0..24_u32).map(|step| std::f64::consts::TAU * f64::from(step) / 24.0);
    turns.map(|turn| [east + radius * turn.cos(), north + radius * turn.sin()]).collect()
}

fn inset(ring: &[Spot], sides: &[Spot]) -> Vec<Spot> {
    ring.iter().zip(sides).map(|(spot, by)| [spot[0] + by[0], spot[1] + by[1]]).collect()
}

fn rectangle() -> PlanPicture {
    let outline = vec![[0.0, 0.0], [310.0, 20.0], [300.0, 250.0], [-10.0, 235.0]];
    let strip = 20.0;
    let headland = inset(&outline, &[[strip, strip], [-strip, strip], [-strip, -strip], [strip, -strip]]);
    let patch = vec![[200.0, 60.0], [240.0, 50.0], [262.0, 80.0], [225.0, 98.0]];
    PlanPicture {
        headland: vec![headland],
        tramlines: (1..10)
            .map(|line| f64::from(line) * 30.0)
            .map(|east| vec![[east, 15.0], [east - 6.0, 240.0]])
            .collect(),
        parts: vec![
            PlanPart {
                ring: circle([285.0, 30.0], 18.0),
                zone: Zone::Gateway,
                label: "Gateway: loosen".into(),
            },
            PlanPart { ring: patch, zone: Zone::Patch, label: "Wet hole".into() },
        ],
        buried: vec![
            PlanLine { kind: Buried::Drain, along: vec![[0.0, 200.0], [150.0, 170.0], [330.0, 190.0]] },
            PlanLine { kind: Buried::MoleDrain, along: vec![[30.0, -60.0], [60.0, 170.0]] },
            PlanLine { kind: Buried::Service, along: vec![[-200.0, 40.0], [120.0, 45.0], [180.0, 300.0]] },
        ],
        pits: vec![
            pit(1, [150.0, 120.0], Some(Condition::Open), PlaceKind::Reference),
            pit(2, [12.0, 120.0], Some(Condition::Tight), PlaceKind::Headland),
            pit(3, [285.0, 30.0], Some(Condition::Shut), PlaceKind::Gateway),
            pit(4, [92.0, 200.0], Some(Condition::Firm), PlaceKind::Open),
            pit(5, [228.0, 75.0], None, PlaceKind::Other),
            PlanPit { at: None, ..pit(6, [0.0, 0.0], Some(Condition::Firm), PlaceKind::Open) },
        ],
        after_digs: vec![PlanAfterDig { at: Some([15.0, 118.0]), label: "A1".into() }],
        next: Some([235.0, 200.0]),
        outline,
        ..PlanPicture::empty()
    }
}

fn pits(count: usize, spread: f64) -> Vec<PlanPit> {
    let mut seed: u64 = 20_260_101;
    let mut unit = move || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 11) as f64 / (1_u64 << 53) as f64
    };
    let one = |number: usize| {
        let at = [20.0 + unit() * spread, 20.0 + unit() * spread];
        let place = if number == 1 { PlaceKind::Reference } else { PlaceKind::Open };
        pit(number, at, Condition::ALL.get(number % 5).copied(), place)
    };
    (1..=count).map(one).collect()
}

/// A field drained throughout.
fn drains() -> Vec<PlanLine> {
    let along = |north: f64| vec![[0.0, north], [300.0, north + 10.0]];
    let drains = (1..15).map(|line| PlanLine { kind: Buried::Drain, along: along(f64::from(line) * 15.0) });
    drains.chain(rectangle().buried.into_iter().skip(1)).collect()
}

fn scenes() -> Vec<(&'static str, PlanPicture)> {
    let l_shape =
        vec![[0.0, 0.0], [400.0, 0.0], [400.0, 150.0], [160.0, 150.0], [160.0, 420.0], [0.0, 420.0]];
    let by = [[18.0, 18.0], [-18.0, 18.0], [-18.0, -18.0], [-18.0, -18.0], [-18.0, -18.0], [18.0, -18.0]];
    let long = vec![[0.0, 0.0], [60.0, 5.0], [75.0, 900.0], [10.0, 900.0]];
    let wide = vec![[0.0, 0.0], [900.0, 60.0], [900.0, 120.0], [0.0, 70.0]];
    let square = vec![[0.0, 0.0], [240.0, 0.0], [240.0, 240.0], [0.0, 240.0]];
    vec![
        ("rectangle", rectangle()),
        (
            "l-shape",
            PlanPicture {
                headland: vec![inset(&l_shape, &by)],
                pits: vec![
                    pit(1, [80.0, 300.0], Some(Condition::Open), PlaceKind::Reference),
                    pit(2, [80.0, 410.0], Some(Condition::Tight), PlaceKind::Headland),
                    pit(3, [390.0, 75.0], Some(Condition::Shut), PlaceKind::Headland),
                    pit(4, [250.0, 80.0], Some(Condition::Firm), PlaceKind::Open),
                ],
                next: Some([320.0, 75.0]),
                outline: l_shape,
                ..PlanPicture::empty()
            },
        ),
        (
            "long",
            PlanPicture {
                outline: long,
                pits: (1..9)
                    .map(|n| {
                        pit(n, [36.0, n as f64 * 100.0], Condition::ALL.get(n % 4).copied(), PlaceKind::Open)
                    })
                    .collect(),
                next: Some([40.0, 850.0]),
                ..PlanPicture::empty()
            },
        ),
        (
            "wide",
            PlanPicture {
                outline: wide,
                pits: vec![pit(1, [450.0, 60.0], Some(Condition::Firm), PlaceKind::Reference)],
                ..PlanPicture::empty()
            },
        ),
        ("twenty", PlanPicture { outline: square.clone(), pits: pits(20, 200.0), ..PlanPicture::empty() }),
        ("crowded", PlanPicture { outline: square.clone(), pits: pits(20, 40.0), ..PlanPicture::empty() }),
        ("sixty", PlanPicture { outline: square, pits: pits(60, 200.0), ..PlanPicture::empty() }),
        ("drained", PlanPicture { buried: drains(), tramlines: Vec::new(), ..rectangle() }),
        (
            "pits-only",
            PlanPicture { pits: rectangle().pits, next: Some([60.0, 60.0]), ..PlanPicture::empty() },
        ),
        ("one-pit", PlanPicture { pits: pits(1, 10.0), ..PlanPicture::empty() }),
    ]
}

fn main() -> std::io::Result<()> {
    let directory = std::env::args().nth(1).unwrap_or_else(|| ".".into());
    let write = |name: String, picture: PlanPicture, words: &Words| -> std::io::Result<()> {
        let zones = [Zone::Headland, Zone::Open, Zone::Wheelings];
        let zones = zones.map(|zone| ZoneTold { zone, hectares: Some(1.4), call: None });
        let walk = Walk { distance_m: 137.0, bearing_deg: 47.0 };
        let told = PlanTold {
            field: "Long Sedge",
            hectares: Some(7.21),
            zones: &zones,
            next_from: Some(("1", walk)),
        };
        let zones = [
            (Zone::Headland, words.label(pitface_core::record::Call::Loosen)),
            (Zone::Open, words.label(pitface_core::record::Call::LeaveIt)),
        ];
        let spoken = PlanWords { zones: zones.to_vec(), ..words.plan_words(&picture, &told) };
        let picture = PlanPicture { words: spoken, ..picture };
        let (title, description) = (words.plan_title(told.field), words.describe_plan(&picture, &told));
        println!("{name}: {description}");
        for (theme, ending) in [(Theme::Light, "light"), (Theme::Dark, "dark"), (Theme::Print, "print")] {
            let spoken =
                Spoken { language: words.language().code(), title: &title, description: &description };
            std::fs::write(format!("{directory}/{name}-{ending}.svg"), svg(&plan(&picture), theme, &spoken))?;
        }
        Ok(())
    };
    let english = Words::new(Language::English, LengthUnit::Centimetres);
    for (name, picture) in scenes() {
        write(name.into(), picture, &english)?;
    }
    write("german".into(), rectangle(), &Words::new(Language::German, LengthUnit::Centimetres))?;
    write(
        "large".into(),
        PlanPicture { text_scale: 2.0, ..rectangle() },
        &Words::new(Language::German, LengthUnit::Inches),
    )?;
    Ok(())
}
