//! What was read and advised, put together from the words' sentences: a list of entries that is printed as
//! text.

use crate::field::FieldRead;
use pitface_core::RULES;
use pitface_core::advice::{Caution, Stance, ZoneCall};
use pitface_core::reading::{KINDS, Kind, LayerReading, NextLook};
use pitface_core::record::{Pit, remark};
use pitface_core::words::{Heading, Words};
use std::fmt::Write as _;

/// One entry, such as a field or a zone of it.
#[derive(Default)]
pub struct Entry {
    /// What it is about.
    pub heading: String,
    /// What matters, in one sentence; may be empty.
    pub sentence: String,
    /// Further paragraphs under the sentence.
    pub paragraphs: Vec<String>,
    /// Reasons for and against, cautions, what would change it.
    pub sections: Vec<Section>,
}

/// Lines under a heading of their own; left out when there are none.
pub struct Section {
    /// Heading; may be empty.
    pub heading: String,
    /// Lines.
    pub lines: Vec<String>,
}

/// A kind of layer with a smaller share than this is not worth a line.
const TOLD_SHARE: f64 = 0.05;

/// The whole field, then each zone, then each pit.
pub fn field(words: &Words, field: &FieldRead) -> Vec<Entry> {
    let mut entries = calls(words, field);
    entries.extend((0..field.notes.pits.len()).map(|index| pit(words, field, index)));
    entries
}

/// The whole field, then each zone.
pub fn calls(words: &Words, field: &FieldRead) -> Vec<Entry> {
    let zones = field.advice.zones.iter().map(|call| zone(words, field, call));
    [whole(words, field)].into_iter().chain(zones).collect()
}

/// The field in one sentence, with what holds for all of it.
fn whole(words: &Words, field: &FieldRead) -> Entry {
    let call = &field.advice.whole;
    let readers =
        field.readers().into_iter().flat_map(|several| words.several_readers(several, &field.notes.pits));
    let remarked = field.notes.field.remark.as_deref().map(|text| words.remark(text));
    Entry {
        heading: words.name(&field.notes.field.name),
        sentence: words.whole_sentence(&field.advice),
        paragraphs: [sureness(words, call)].into_iter().chain(readers).chain(remarked).collect(),
        sections: reasons(words, call)
            .chain([section(words, Heading::Cautions, cautions(field).map(|caution| words.of(caution)))])
            .chain([worth_asking(words, field)])
            .collect(),
    }
}

fn zone(words: &Words, field: &FieldRead, call: &ZoneCall) -> Entry {
    let mut paragraphs: Vec<String> = words.hangs_on(field.changes(call.zone)).into_iter().collect();
    paragraphs.push(sureness(words, call));
    paragraphs.extend(call.tip.map(|tip| words.tip_sentences(&tip)));
    paragraphs.extend(call.rooting_loss.as_ref().map(|loss| words.rooting_loss(loss)));
    let change = field.changes(call.zone).iter().map(|change| words.change(change));
    let follow_up = call.follow_up.iter().map(|&step| words.of(step));
    Entry {
        heading: words.label(call.zone),
        sentence: words.call_sentence(call),
        paragraphs,
        sections: reasons(words, call)
            .chain([
                section(words, Heading::WouldChange, change),
                section(words, Heading::FollowUp, follow_up),
            ])
            .collect(),
    }
}

/// One pit: its layers with the kinds they may be, and the next look.
fn pit(words: &Words, field: &FieldRead, index: usize) -> Entry {
    let read = &field.reading.pits[index];
    let looks = field.next_looks()[index].as_ref();
    let noted = &field.notes.pits[index];
    Entry {
        heading: pit_name(words, field, index),
        paragraphs: noted.remark.as_deref().map(|text| words.remark(text)).into_iter().collect(),
        sections: read
            .layers
            .iter()
            .map(|read| layer(words, noted, read))
            .chain([section(words, Heading::NextLook, [look(words, looks)])])
            .collect(),
        ..Entry::default()
    }
}

/// `Pit 3, on the headland`, numbered as noted.
pub fn pit_name(words: &Words, field: &FieldRead, index: usize) -> String {
    words.pit_numbered(index + 1, field.notes.pits[index].place)
}

/// The next look of a pit in one or two sentences.
pub fn look(words: &Words, look: Option<&NextLook>) -> String {
    look.map_or_else(|| words.no_more_looks(), |look| words.look(look))
}

/// Returns what is to be said about where the pits lie.
pub fn places(words: &Words, field: &FieldRead) -> Vec<String> {
    let pits = field.notes.pits.iter().enumerate();
    pits.flat_map(|(index, pit)| {
        let remarks = field.map.remarks(pit);
        remarks.into_iter().map(move |remark| words.place_remark(index + 1, pit.place, &remark))
    })
    .collect()
}

/// The tip depth that holds where a pit was dug, if its zone is to be loosened.
pub fn zone_call(field: &FieldRead, index: usize) -> Option<&ZoneCall> {
    field.call_at(index)
}

/// The rule set by which all this was computed.
pub fn rules(words: &Words) -> String {
    format!("{} {RULES}", words.label(Heading::Rules))
}

/// Returns what is worth asking of the field as a whole.
pub fn worth_asking(words: &Words, field: &FieldRead) -> Section {
    let asked = field.worth_asking().iter().map(|worth| words.worth_asking(worth));
    section(words, Heading::WorthAsking, asked)
}

/// Returns what applies in any zone, once; what bears on what is done now before the rest.
fn cautions(field: &FieldRead) -> impl Iterator<Item = Caution> {
    let (now, others) = field.advice.cautions();
    now.into_iter().chain(others)
}

fn sureness(words: &Words, call: &ZoneCall) -> String {
    format!("{}: {}", words.label(Heading::HowSure), words.how_sure(call))
}

fn reasons<'a>(words: &'a Words, call: &'a ZoneCall) -> impl Iterator<Item = Section> + use<'a> {
    [Stance::For, Stance::Against, Stance::Note].into_iter().map(|stance| {
        let told = call.reasons.iter().filter(move |why| why.stance == stance).map(|why| words.why(why));
        section(words, stance.into(), told)
    })
}

fn layer(words: &Words, pit: &Pit, read: &LayerReading) -> Section {
    let shown = Kind { condition: read.condition, cause: read.cause };
    let mut kinds: Vec<_> =
        KINDS.into_iter().zip(read.shares).filter(|(_, share)| *share >= TOLD_SHARE).collect();
    kinds.sort_by(|(_, one), (_, other)| other.total_cmp(one));
    let kinds: Vec<String> = kinds
        .into_iter()
        .map(|(kind, share)| format!("{} {}", words.kind(kind), words.share(share)))
        .collect();
    let lines = [
        (Heading::Kinds, kinds.join("; ")),
        (Heading::For, words.reasons_for(&read.reasons)),
        (Heading::Against, words.reasons_against(&read.reasons)),
    ];
    let depths = words.depth_range(read.top_mm, read.bottom_mm);
    Section {
        heading: format!("{depths}: {}", words.kind(shown)),
        lines: lines
            .into_iter()
            .filter(|(_, told)| !told.is_empty())
            .map(|(heading, told)| format!("{}: {told}", words.label(heading)))
            .chain(remark::of_layer(pit, read.top_mm, read.bottom_mm).map(|text| words.remark(text)))
            .collect(),
    }
}

fn section(words: &Words, heading: Heading, lines: impl IntoIterator<Item = String>) -> Section {
    Section { heading: words.label(heading), lines: lines.into_iter().collect() }
}

/// The entries as plain text, with the rule set below them.
pub fn text(words: &Words, entries: &[Entry]) -> String {
    entries_text(entries) + &closing(words)
}

/// Returns what stands below all entries.
pub fn closing(words: &Words) -> String {
    rules(words) + "\n"
}

/// The entries as plain text, an empty line below each.
pub fn entries_text(entries: &[Entry]) -> String {
    let mut text = String::new();
    for entry in entries {
        let mut line = |indent: &str, told: &str| {
            let _ = writeln!(text, "{indent}{told}");
        };
        line("", &entry.heading);
        let sentence = [&entry.sentence].into_iter().filter(|sentence| !sentence.is_empty());
        sentence.chain(&entry.paragraphs).for_each(|told| line("  ", told));
        for Section { heading, lines: told } in
            entry.sections.iter().filter(|section| !section.lines.is_empty())
        {
            line("  ", heading);
            for told in told {
                line("    ", told);
            }
        }
        text.push('\n');
    }
    text
}
