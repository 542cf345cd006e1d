//! What the holes behind the machine say, put together from the words' sentences: an entry a pass.

use crate::field::FieldRead;
use crate::told::{Entry, Section};
use pitface_core::advice::after_dig::{DigAdvice, NextStep, PassAdvice, Verdict, VerdictReason};
use pitface_core::record::Pass;
use pitface_core::report::hole_name;
use pitface_core::words::{Heading, Words};

/// A cause with a smaller share than this is not worth a line.
const TOLD_CAUSE: f64 = 0.05;

/// Every pass of a field, in the order of the notes.
pub fn passes(words: &Words, field: &FieldRead) -> Vec<Entry> {
    let mut before = 0;
    let both = field.notes.passes.iter().zip(&field.passes);
    both.map(|(noted, said)| {
        let entry = pass(words, field, noted, said, before);
        before += noted.after_digs.len();
        entry
    })
    .collect()
}

fn pass(words: &Words, field: &FieldRead, noted: &Pass, said: &PassAdvice, before: usize) -> Entry {
    let named = |id| field.notes.machines.iter().find(|machine| machine.id == id);
    let machine = noted.machine.and_then(named).map(|machine| machine.name.as_str());
    let mut paragraphs: Vec<String> = said.rolled_wet.then(|| words.thread_first()).into_iter().collect();
    paragraphs.push(words.next_sentence(said));
    paragraphs.extend(said.one_hole.then(|| words.one_hole()));
    paragraphs.extend(said.held.map(|held| words.held_sentence(&held)));
    paragraphs.extend(said.traffic.iter().flat_map(|traffic| words.traffic_warning(traffic)));
    paragraphs.extend(said.no_strip_before.then(|| words.no_strip_before()));
    let is_loosened = matches!(said.next, NextStep::GoOn | NextStep::KeepOff);
    paragraphs.extend(is_loosened.then(|| words.lasts_sentence(&said.lasts)));
    paragraphs.extend(noted.remark.as_deref().map(|text| words.remark(text)));
    let mut sections: Vec<Section> = said
        .digs
        .iter()
        .enumerate()
        .flat_map(|(index, dig)| dig_sections(words, dig, before + index))
        .collect();
    if !said.digs.is_empty() {
        let heading = words.label(Heading::Note);
        sections.push(Section { heading, lines: words.published_share() });
    }
    Entry {
        heading: words.pass_title(noted, machine),
        sentence: words.pass_verdict(said),
        paragraphs,
        sections,
    }
}

fn dig_sections(words: &Words, dig: &DigAdvice, index: usize) -> [Section; 2] {
    let name = hole_name(words, index);
    let mut lines = vec![words.after_dig_sentence(dig)];
    lines.extend(dig.firm_at.iter().map(|stretch| words.firm_stretch(stretch)));
    // The shares stand in the sentence already, and where it is done in part only what counts against it too.
    let is_told = |why: &&VerdictReason| match why {
        VerdictReason::LayerBroken { .. } | VerdictReason::SectionLoose { .. } => true,
        VerdictReason::Against { .. } => dig.verdict == Verdict::Partly,
        _ => false,
    };
    lines.extend(dig.why.iter().filter(|why| !is_told(why)).map(|why| words.verdict_reason(why)));
    lines.extend(words.after_dig_figures(dig));
    lines.extend(dig.pair.iter().map(|pair| words.pair_sentences(pair)));
    let causes = dig.causes.iter().filter(|cause| cause.share >= TOLD_CAUSE);
    let causes = causes.map(|cause| words.cause_lines(cause).join(" ")).collect();
    let heading = format!("{name}: {}", words.of(Heading::Causes));
    [Section { heading: name, lines }, Section { heading, lines: causes }]
}
