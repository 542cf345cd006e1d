//! Zones over the years as drawings.

use crate::answer::{FieldAnswer, ZoneYear, ZoneYears};
use crate::picture::{Face, Ruler, SeasonsPicture, Seen, SeenGround, YearColumn, seasons};
use crate::screen::Pictured;
use crate::words::{PageText, Words};

/// Ground drawn below the deepest tip.
const BELOW_MM: u32 = 50;

/// Size of letters: as large as lets words stand below columns three beside each other. Our judgement, by eye.
const LETTERS: f64 = 1.15;

/// Each zone that has something to tell of more than one year, with the line below its drawing.
pub(super) fn over_the_years(words: &Words, answer: &FieldAnswer) -> Vec<(Pictured, String)> {
    let told = answer.seasons();
    told.iter().map(|zone| (drawn(words, answer, zone), caption(words, zone))).collect()
}

/// Says by which rules earlier calls were made, where one is shown.
fn caption(words: &Words, zone: &ZoneYears) -> String {
    let earlier =
        zone.years.split_last().is_some_and(|(_, earlier)| earlier.iter().any(|year| year.call.is_some()));
    if earlier { words.of(PageText::CalledToday) } else { String::new() }
}

fn drawn(words: &Words, answer: &FieldAnswer, told: &ZoneYears) -> Pictured {
    let years: Vec<YearColumn> = told.years.iter().map(|year| column(words, answer, year)).collect();
    let depths = told.years.iter().flat_map(|year| {
        let dug = year.pit.map(|pit| answer.reading.pits[pit].dug_to_mm);
        let worked = year.loosened.and_then(|done| done.tip_mm).max(year.held.and_then(|held| held.firm_mm));
        [dug, worked.map(|mm| mm.saturating_add(BELOW_MM))]
    });
    let depth_mm = depths.flatten().fold(BELOW_MM, u32::max);
    let described = told.years.iter().zip(&years).map(|(year, drawn)| {
        let seen: Vec<String> = drawn.seen.iter().map(|seen| seen.label.clone()).collect();
        words.seasons_year(year.year, year.call, year.pits, &seen)
    });
    let description = described.collect::<Vec<_>>().join(" ");
    let ruler = Ruler::down_to(depth_mm, words.unit(), words.unit_sign());
    let drawing = seasons(&SeasonsPicture { years, ruler, depth_mm, text_scale: LETTERS });
    Pictured { title: words.seasons_title(told.zone), description, drawing }
}

/// A year: the worst pit, then what was done, then how it stood a season on.
fn column(words: &Words, answer: &FieldAnswer, year: &ZoneYear) -> YearColumn {
    let found = year.pit.map(|pit| {
        let read = &answer.reading.pits[pit];
        let face = Face::of(read, String::new(), None, |_| (String::new(), Vec::new()));
        Seen { ground: SeenGround::Face(face.layers), label: words.seasons_found(read) }
    });
    let done = year
        .loosened
        .map(|done| Seen { ground: SeenGround::Loosened(done.tip_mm), label: words.seasons_loosened(done) });
    let held = year
        .held
        .map(|held| Seen { ground: SeenGround::Loose(held.firm_mm), label: words.seasons_held(held) });
    YearColumn {
        year: year.year.to_string(),
        call: year.call.map(|call| words.label(call)).unwrap_or_default(),
        seen: [found, done, held].into_iter().flatten().collect(),
    }
}
