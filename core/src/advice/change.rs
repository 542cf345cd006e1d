//! What would change a call: the smallest set of other answers that gives another one, found by reading and advising
//! the changed notes again: answers of signs and field, and what somebody can do about it ([`super::lever`]). It costs some dozens of readings of the zone, so it is asked for when a call is shown,
//! not whenever it is computed.

use super::call::{Change, ChangedAnswer, Stance, What, Why, ZoneCall};
use super::pit_view::PitView;
use super::regret::{LAYER_CALLS, expected, least};
use super::zones::alike;
use super::{advise_on, gates, in_time, lever, stands_for};
use crate::place::FieldMap;
use crate::reading::{Clue, Evidence, FieldReading, LayerReading, Since, Table, layers, read_field, shares};
use crate::record::{
    Call, Field, FieldNotes, Layer, OrganicMatter, OrganicMatterLevel, Pit, PlaceKind, Roll, RollOutcome,
    RootsSeen, Sign, TextureNote, Unknown, Zone,
};
use crate::soil::texture::TextureGroup;
use chrono::{Days, NaiveDate};

/// Changes told at most.
const MOST: usize = 3;
/// Single answers that come nearest to another call, of which pairs are tried. Our judgement.
const PAIRED: usize = 8;
/// How much further than a sign an answer lies that the whole field gives: it is seldom noted wrong.
const FIELD_STEPS: usize = 2;
/// Ages, in days, that count as recent and as long ago.
const RECENT_DAYS: u64 = 200;
/// See [`RECENT_DAYS`].
const LONG_AGO_DAYS: u64 = 5 * 366;

/// Other answers that would give another call in a zone, at most three: what somebody can do first, then single ones, of those what was not
/// looked at yet, then the least step from what was noted, each clue once; where no single answer does it, pairs.
/// Answers of signs are changed in the deciding layer of every pit of the zone at once. None where the call waits for
/// another hole, not for an answer.
pub fn changes(notes: &FieldNotes, zone: Zone) -> Vec<Change> {
    changes_on(notes, zone, None)
}

/// The same on a day.
pub(crate) fn changes_on(notes: &FieldNotes, zone: Zone, today: Option<NaiveDate>) -> Vec<Change> {
    let Some(base) =
        Base::of(notes, zone, today.or_else(|| in_time::last_day(notes))).filter(|base| !base.lacks_a_hole())
    else {
        return Vec::new();
    };
    let singles = base.singles();
    let mut found: Vec<Change> = lever::levers(&base);
    let levers = found.len();
    // On which answer it hangs is told before what nobody has looked at.
    let mut near = singles.iter().filter(|single| base.is_one_step_off(single));
    found.extend(near.find_map(|single| base.change(&[*single]).filter(|change| change.hangs)));
    for single in &singles {
        if found.len() >= MOST {
            break;
        }
        let told = found.iter().any(|change| same_question(&change.answers[0], single));
        if !told {
            found.extend(base.change(&[*single]));
        }
    }
    if found.len() == levers {
        let left = MOST.saturating_sub(levers);
        found.extend(base.pairs(&singles).iter().filter_map(|pair| base.change(pair)).take(left));
    }
    found
}

/// The notes of one zone and its references, cut down to what counts, and what is said of them as they stand.
pub(super) struct Base {
    pub(super) notes: FieldNotes,
    /// The number that each pit has in all notes of the field.
    pub(super) numbers: Vec<usize>,
    /// The field laid out; no answer moves anything on it.
    map: FieldMap,
    pub(super) zone: Zone,
    pub(super) today: Option<NaiveDate>,
    pub(super) now: ZoneCall,
    /// Deciding layer of each pit, by its depths.
    pub(super) deciding: Vec<Option<(u32, u32)>>,
    /// The clearest pit for each call that a pit gives by itself, by its place in the notes.
    pub(super) clearest: Vec<usize>,
    /// The deciding layer of the zone.
    layer: LayerReading,
}

impl Base {
    /// Returns whether the call waits for another hole rather than for an answer: then no answer is worth telling.
    fn lacks_a_hole(&self) -> bool {
        let hole = |why: &Why| {
            let what = matches!(
                why.what,
                What::NoReference | What::NoPits | What::TooShallow { .. } | What::FaceUnreadable { .. }
            );
            what && why.stance == Stance::For
        };
        // Pits that are past say nothing any more, whatever had been seen in them.
        let past = |why: &Why| {
            let since = matches!(
                why.what,
                What::Behind { .. } | What::LoosenedSince { .. } | What::DidNotLast { .. }
            );
            since && why.stance == Stance::For
        };
        let reasons = &self.now.reasons;
        reasons.iter().any(past) || (self.now.call == Call::DigAgain && reasons.iter().any(hole))
    }

    fn of(notes: &FieldNotes, zone: Zone, today: Option<NaiveDate>) -> Option<Self> {
        let map = FieldMap::of(&notes.field);
        let counts = |pit: &&Pit| {
            zone == Zone::Whole || pit.place == PlaceKind::Reference || stands_for(&map, pit) == Some(zone)
        };
        let counting = notes.pits.iter().enumerate().filter(|(_, pit)| counts(pit));
        let (numbers, pits) =
            counting.map(|(index, pit)| (index + 1, spelled_out(pit, &notes.field))).unzip();
        let notes = FieldNotes { pits, ..notes.clone() };
        let reading = read_field(&notes);
        let now = call_in(&notes, &reading, &map, (zone, today))?;
        let views = notes.pits.iter().zip(&reading.pits).map(|(pit, read)| {
            let stands = stands_for(&map, pit).is_some_and(|its| zone == Zone::Whole || its == zone);
            stands.then(|| PitView::of(pit, read, &notes.field))
        });
        let limiting: Vec<Option<&LayerReading>> = views.map(|view| Some(view?.judged()?.1)).collect();
        let deciding =
            limiting.iter().map(|layer| layer.map(|layer| (layer.top_mm, layer.bottom_mm))).collect();
        let clearest = clearest(&limiting);
        let leaving = |layer: &LayerReading| expected(&layer.shares)[0];
        let worst = limiting.into_iter().flatten().max_by(|a, b| leaving(a).total_cmp(&leaving(b)));
        let layer = worst?.clone();
        Some(Self { notes, numbers, map, zone, today, now, deciding, clearest, layer })
    }

    /// Every single answer other than what was noted: what can still be looked at first, then the least step away.
    fn singles(&self) -> Vec<ChangedAnswer> {
        let LayerReading { top_mm, bottom_mm, .. } = self.layer;
        let mut all: Vec<(usize, ChangedAnswer)> = Vec::new();
        let mut offer = |clue: Clue, answer: usize, further: usize| {
            let noted = self.layer.evidence.get(clue).filter(|noted| !says_nothing(clue, *noted));
            if noted != Some(answer) && !says_nothing(clue, answer) {
                let steps = noted.map_or(0, |noted| noted.abs_diff(answer)) + further;
                all.push((steps, ChangedAnswer::Clue { top_mm, bottom_mm, clue, answer }));
            }
        };
        for &sign in Sign::ALL {
            for answer in 0..sign.answers().len() {
                offer(sign.into(), answer, 0);
            }
        }
        for clue in [Clue::Texture, Clue::OrganicMatter, Clue::LastLoosened, Clue::LastTraffic] {
            for answer in 0..clue.answers().len() {
                offer(clue, answer, FIELD_STEPS);
            }
        }
        if self.now.tip.is_some() {
            for surface in [false, true] {
                all.extend(RollOutcome::ALL.iter().map(|&roll| (1, ChangedAnswer::Roll { surface, roll })));
            }
        }
        crate::order::sort_by_key(&mut all, |(steps, _)| *steps);
        all.into_iter().map(|(_, answer)| answer).collect()
    }

    /// Pairs of those single answers about the layer that bring another call nearest, nearest pair first.
    fn pairs(&self, singles: &[ChangedAnswer]) -> Vec<[ChangedAnswer; 2]> {
        let mut nearest: Vec<(f64, ChangedAnswer)> = singles
            .iter()
            .filter(|single| matches!(single, ChangedAnswer::Clue { .. }))
            .map(|single| (self.distance(&[*single]), *single))
            .collect();
        crate::order::sort_by(&mut nearest, |(a, _), (b, _)| a.total_cmp(b));
        nearest.truncate(PAIRED);
        let mut pairs: Vec<(f64, [ChangedAnswer; 2])> = Vec::new();
        for (at, (_, one)) in nearest.iter().enumerate() {
            for (_, other) in nearest.iter().skip(at + 1).filter(|(_, other)| !same_question(one, other)) {
                pairs.push((self.distance(&[*one, *other]), [*one, *other]));
            }
        }
        crate::order::sort_by(&mut pairs, |(a, _), (b, _)| a.total_cmp(b));
        pairs.into_iter().map(|(_, pair)| pair).collect()
    }

    /// How much less regret the layer's call still promises than the best other one, with these answers.
    fn distance(&self, answers: &[ChangedAnswer]) -> f64 {
        let regrets = |evidence: &Evidence| expected(&shares(evidence, Table::standard()));
        let before = regrets(&self.layer.evidence);
        let call = least(&before);
        let changed = answers.iter().fold(self.layer.evidence, |evidence, answer| match *answer {
            ChangedAnswer::Clue { clue, answer, .. } => evidence.with(clue, Some(answer)),
            _ => evidence,
        });
        let after = regrets(&changed);
        let others = (0..LAYER_CALLS.len()).filter(|&other| other != call).map(|other| after[other]);
        others.fold(f64::INFINITY, f64::min) - after[call]
    }

    /// The call with these answers, where it is another one.
    pub(super) fn change(&self, answers: &[ChangedAnswer]) -> Option<Change> {
        let call = self.tried(answers)?.call;
        // To dig again is no call that one could get wrong.
        let flips = ![call, self.now.call].contains(&Call::DigAgain) && !alike(call, self.now.call);
        let hangs = flips && matches!(answers, [only] if self.is_one_step_off(only));
        (call != self.now.call).then(|| Change { answers: answers.to_vec(), call, hangs })
    }

    /// An answer that lies next to what was noted of the only pit that decides: easily the one taken for the other.
    fn is_one_step_off(&self, answer: &ChangedAnswer) -> bool {
        let ChangedAnswer::Clue { clue, answer, .. } = *answer else { return false };
        let noted = self.layer.evidence.get(clue).filter(|noted| !says_nothing(clue, *noted));
        (clue as usize) < Sign::ALL.len()
            && self.deciding.iter().flatten().count() == 1
            && noted.is_some_and(|noted| noted.abs_diff(answer) == 1)
    }

    /// What would be said with these answers.
    pub(super) fn tried(&self, answers: &[ChangedAnswer]) -> Option<ZoneCall> {
        let mut notes = self.notes.clone();
        let mut today = self.today;
        for answer in answers {
            match *answer {
                ChangedAnswer::Clue { clue, answer, .. } => match Sign::ALL.get(clue as usize) {
                    Some(&sign) => self.set_sign(&mut notes.pits, sign, answer),
                    None => set_field(&mut notes.field, clue, answer, last_dug(&self.notes.pits))?,
                },
                ChangedAnswer::Roll { surface, roll } => {
                    self.set_roll(&mut notes.pits, surface, roll)?;
                    // A roll of today on pits of another day: as it would have been on theirs, had it not rained since.
                    notes.field.last_rain = None;
                    today = last_dug(&self.notes.pits).or(today);
                }
                _ => lever::set(self, &mut notes, *answer)?,
            }
        }
        call_in(&notes, &read_field(&notes), &self.map, (self.zone, today))
    }

    fn set_sign(&self, pits: &mut [Pit], sign: Sign, answer: usize) {
        for (pit, deciding) in pits.iter_mut().zip(&self.deciding) {
            let of_pit =
                pit.layers.iter_mut().filter(|layer| *deciding == Some((layer.top_mm, layer.bottom_mm)));
            of_pit.for_each(|layer| layer.signs.set(sign, Some(answer)));
        }
    }

    /// Puts one outcome in the place of every roll that counts for the tip or the surface.
    fn set_roll(&self, pits: &mut [Pit], surface: bool, roll: RollOutcome) -> Option<()> {
        let tip = self.now.tip?;
        let depth_mm = if surface { 0 } else { tip.hi_mm };
        for (pit, _) in pits.iter_mut().zip(&self.deciding).filter(|(_, deciding)| deciding.is_some()) {
            pit.rolls.retain(|noted| !gates::counts(noted, surface, &tip));
            pit.rolls.push(Roll { id: pit.id, depth_mm, roll, unknown: Unknown::new() });
        }
        Some(())
    }
}

/// For each call that deciding layers give by themselves, the one that is furthest from any other call.
fn clearest(deciding: &[Option<&LayerReading>]) -> Vec<usize> {
    let mut best: [Option<(f64, usize)>; LAYER_CALLS.len()] = [None; LAYER_CALLS.len()];
    for (index, layer) in deciding.iter().enumerate() {
        let Some(layer) = layer else { continue };
        let regrets = expected(&layer.shares);
        let call = least(&regrets);
        let others =
            regrets.iter().enumerate().filter(|(other, _)| *other != call).map(|(_, regret)| *regret);
        let lead = others.fold(f64::INFINITY, f64::min) - regrets[call];
        if best[call].is_none_or(|(before, _)| lead > before) {
            best[call] = Some((lead, index));
        }
    }
    let mut found: Vec<usize> = best.into_iter().flatten().map(|(_, index)| index).collect();
    found.sort_unstable();
    found
}

/// A pit with its layers as they are read, so that one sign of one layer can be changed.
fn spelled_out(pit: &Pit, field: &Field) -> Pit {
    let own_texture = |depth_mm: u32| {
        let given = pit.layers.iter().find(|layer| (layer.top_mm..layer.bottom_mm).contains(&depth_mm));
        given.and_then(|layer| layer.texture)
    };
    let layers = layers(pit, field).into_iter().map(|face| Layer {
        id: pit.id,
        top_mm: face.top_mm,
        bottom_mm: face.bottom_mm,
        signs: face.signs,
        texture: own_texture(face.top_mm),
        remark: None,
        unknown: Unknown::new(),
    });
    Pit {
        layers: layers.collect(),
        walk: Vec::new(),
        photos: Vec::new(),
        unknown: Unknown::new(),
        ..pit.clone()
    }
}

fn call_in(
    notes: &FieldNotes,
    reading: &FieldReading,
    map: &FieldMap,
    (zone, today): (Zone, Option<NaiveDate>),
) -> Option<ZoneCall> {
    let (advice, _) = advise_on(notes, reading, map, today);
    if zone == Zone::Whole {
        return Some(advice.whole);
    }
    advice.zones.into_iter().find(|call| call.zone == zone)
}

fn last_dug(pits: &[Pit]) -> Option<NaiveDate> {
    pits.iter().filter_map(|pit| pit.dug).map(|time| time.date_naive()).max()
}

/// Gives the field another answer; `None` where that cannot be said, as of a time since when the day is not known.
fn set_field(field: &mut Field, clue: Clue, answer: usize, today: Option<NaiveDate>) -> Option<()> {
    let ago = || {
        let recent = answer == Since::Recent as usize;
        today?.checked_sub_days(Days::new(if recent { RECENT_DAYS } else { LONG_AGO_DAYS }))
    };
    match clue {
        Clue::Texture => field.texture = Some(TextureNote::Group(*TextureGroup::ALL.get(answer)?)),
        Clue::OrganicMatter => {
            field.organic_matter = Some(OrganicMatter::Level(*OrganicMatterLevel::ALL.get(answer)?));
        }
        Clue::LastLoosened => field.last_loosened = Some(ago()?),
        Clue::LastTraffic => field.last_traffic = Some(ago()?),
        _ => return None,
    }
    Some(())
}

/// That there were no roots is no answer about the soil.
fn says_nothing(clue: Clue, answer: usize) -> bool {
    clue == Clue::Roots && answer == RootsSeen::NoneToJudge as usize
}

fn same_question(one: &ChangedAnswer, other: &ChangedAnswer) -> bool {
    match (one, other) {
        (ChangedAnswer::Clue { clue: one, .. }, ChangedAnswer::Clue { clue: other, .. }) => one == other,
        (ChangedAnswer::Roll { surface: one, .. }, ChangedAnswer::Roll { surface: other, .. }) => {
            one == other
        }
        _ => false,
    }
}
