//! Writes sections across machines and behind them as SVG into the directory given, to be looked at.

use pitface_core::advice::machine::{DraughtSoil, LayerDepths, Work, set};
use pitface_core::picture::machine::{BehindPicture, BehindWords, SectionPicture, behind, pair, section};
use pitface_core::picture::{Drawing, Face, FaceLayer, Ruler, Spoken, Theme, Tip, svg};
use pitface_core::record::{ChannelsSeen, Condition, Machine, RecordId, RootsSeen, Wings};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};

fn machine(legs: u32, spacing_mm: u32) -> Machine {
    Machine {
        id: RecordId::new(0, [0; 10]),
        name: "Subsoiler".into(),
        legs,
        spacing_mm,
        foot_width_mm: 80,
        wings: Some(Wings { width_mm: 250, lift_mm: Some(60) }),
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: None,
        tractor_mass_kg: None,
        unknown: serde_json::Map::default(),
    }
}

fn hole(words: &Words, readings_mm: &[u32], spacing_mm: u32, slots_mm: &[u32]) -> BehindPicture {
    let mut picture = BehindPicture {
        readings_mm: readings_mm.to_vec(),
        spacing_mm,
        tip_mm: Some(350),
        target_mm: 300,
        layer: Some(LayerDepths { top_mm: 220, bottom_mm: 300 }),
        slots_mm: slots_mm.to_vec(),
        ruler: Ruler { unit: String::new(), marks: vec![] },
        words: BehindWords::default(),
        text_scale: 1.0,
    };
    picture.ruler = Ruler::down_to(picture.depth_mm().max(450), words.unit(), words.unit_sign());
    picture.words = words.behind_words(&picture);
    picture
}

fn before() -> Face {
    let layer = |top_mm, bottom_mm, condition: Condition, word: &str, notes: &[&str]| FaceLayer {
        top_mm,
        bottom_mm,
        condition: Some(condition),
        roots: Some(if condition == Condition::Tight { RootsSeen::Sideways } else { RootsSeen::Through }),
        channels: Some(ChannelsSeen::Some),
        patches: None,
        word: word.into(),
        notes: notes.iter().map(|&note| note.into()).collect(),
    };
    Face {
        title: String::new(),
        dug_to_mm: 450,
        layers: vec![
            layer(0, 220, Condition::Open, "Open", &["0–22\u{a0}cm"]),
            layer(220, 300, Condition::Tight, "Tight", &["pressed", "22–30\u{a0}cm"]),
            layer(300, 450, Condition::Firm, "Firm", &["natural", "30–45\u{a0}cm"]),
        ],
        tip: Some(Tip { lo_mm: 330, hi_mm: 350, label: "Tip".into() }),
    }
}

fn main() -> std::io::Result<()> {
    let directory = std::env::args().nth(1).unwrap_or_else(|| ".".into());
    let write = |name: &str, drawing: &Drawing, description: &str| -> std::io::Result<()> {
        println!("{name}: {description}");
        for (theme, ending) in [(Theme::Light, "light"), (Theme::Dark, "dark"), (Theme::Print, "print")] {
            let spoken = Spoken { language: "en", title: name, description };
            std::fs::write(format!("{directory}/{name}-{ending}.svg"), svg(drawing, theme, &spoken))?;
        }
        Ok(())
    };
    let english = Words::new(Language::English, LengthUnit::Centimetres);
    let german = Words::new(Language::German, LengthUnit::Inches);
    for (legs, spacing_mm) in [(1, 600), (3, 600), (7, 500), (11, 380)] {
        let (machine, layer) = (machine(legs, spacing_mm), Some(LayerDepths { top_mm: 220, bottom_mm: 300 }));
        let work = Work { layer, ..Work::new(350, DraughtSoil::Medium, 6.0) };
        let Ok(setting) = set(&machine, &work) else { continue };
        let key = english.section_key(&machine, &work, &setting);
        let ruler = |depth_mm| Ruler::down_to(depth_mm, english.unit(), english.unit_sign());
        let picture = SectionPicture::of(&machine, &work, &setting, key, ruler);
        let description = english.describe_section(&machine, &work, &setting);
        write(&format!("legs-{legs}"), &section(&picture), &description)?;
    }
    let holes = [
        ("ridge", hole(&english, &[350, 330, 200, 340, 350], 600, &[])),
        ("broken", hole(&english, &[350, 340, 345, 340, 350], 600, &[350, 340, 300])),
        ("uneven", hole(&german, &[360, 250, 120, 90, 110, 180, 240, 310, 330], 1_000, &[])),
        ("nothing", hole(&english, &[], 600, &[])),
        (
            "large",
            BehindPicture {
                text_scale: 2.0,
                ..hole(&german, &[350, 330, 200, 340, 305], 600, &[350, 300, 340, 330, 350])
            },
        ),
    ];
    for (name, picture) in holes {
        let words = if matches!(name, "uneven" | "large") { &german } else { &english };
        let description = words.describe_behind(&picture);
        write(&format!("behind-{name}"), &behind(&picture), &description)?;
        let both = words.describe_pair("the pit.", &description);
        write(&format!("pair-{name}"), &pair(&before(), &picture, &words.pair_words()), &both)?;
    }
    Ok(())
}
