//! The next look: the one question whose answer is worth most, by the expected fall in regret.
//!
//! One question alone often changes nothing where two together would, so the search looks two answers ahead.
//! It stops when no question, and no pair of them, is worth its taps.

use super::clue::Clue;
use super::kind::KINDS;
use super::posterior::Weights;
use super::table::{PerKind, Table};
use super::{LayerReading, NextLook, PitReading};

/// Regret of each call (a row) in each kind of layer.
pub type Regrets = [PerKind];

/// Fall in regret that one more tap must bring. Our judgement, set by the simulation in
/// `core/tests/questioning.rs`; the regret of working sound soil is about 8.
pub const TAP_WORTH: f64 = 0.005;

/// What it is worth to know that the call stands: added for every answer that would give another call.
/// By the fall in regret alone the asking stops while the call may still flip between two that cost alike.
const FLIP_WORTH: f64 = 0.05;

/// What can be asked: every sign, and what a person beside the pit can tell of the field.
const ASKABLE: [Clue; 12] = [
    Clue::ComesAway,
    Clue::Resistance,
    Clue::Pores,
    Clue::Channels,
    Clue::Roots,
    Clue::Patches,
    Clue::Smell,
    Clue::ClodInWater,
    Clue::Texture,
    Clue::OrganicMatter,
    Clue::LastLoosened,
    Clue::LastTraffic,
];

/// One question with what each of its answers would do.
struct Question<'a> {
    clue: Clue,
    answers: Vec<&'a PerKind>,
    /// Share of answers that say nothing.
    silent: f64,
    only_cause: bool,
}

/// The question most worth asking in a pit; `None` when none is worth a tap.
pub fn next_look(pit: &PitReading, regrets: &Regrets, table: &Table) -> Option<NextLook> {
    next_look_except(pit, |_| regrets, table, |_, _| false)
}

/// The same with the regrets that hold for each layer, leaving out what somebody did not want to look at, or cannot:
/// `left_out` says so of a layer and a clue.
pub fn next_look_except<'r>(
    pit: &PitReading,
    regrets: impl Fn(&LayerReading) -> &'r Regrets,
    table: &Table,
    left_out: impl Fn(&LayerReading, Clue) -> bool,
) -> Option<NextLook> {
    pit.layers
        .iter()
        .enumerate()
        .filter_map(|(index, layer)| {
            let regrets = regrets(layer);
            let (clue, gain) = best_question(layer, regrets, table, &|clue| left_out(layer, clue))?;
            let between = leading_rivals(&layer.shares, regrets);
            Some(NextLook {
                layer: index,
                top_mm: layer.top_mm,
                bottom_mm: layer.bottom_mm,
                clue,
                gain,
                between,
            })
        })
        .max_by(|a, b| a.gain.total_cmp(&b.gain))
}

/// The question most worth asking of one layer, and its gain a tap.
fn best_question(
    layer: &LayerReading,
    regrets: &Regrets,
    table: &Table,
    left_out: &dyn Fn(Clue) -> bool,
) -> Option<(Clue, f64)> {
    let weights = Weights::of(&layer.evidence, table);
    let (call_now, now) = best_call(&weights.shares(), regrets);
    let value = |after: &Weights| {
        let (call, regret) = best_call(&after.shares(), regrets);
        if call == call_now { regret } else { regret - FLIP_WORTH }
    };
    let questions: Vec<Question> = ASKABLE
        .iter()
        .filter(|clue| layer.evidence.get(**clue).is_none() && !left_out(**clue))
        .map(|&clue| question(clue, layer, table))
        .collect();
    let mut best: Option<(Clue, f64)> = None;
    let mut offer = |clue: Clue, gain: f64| {
        if gain >= TAP_WORTH && best.is_none_or(|(_, so_far)| gain > so_far) {
            best = Some((clue, gain));
        }
    };
    let alone: Vec<f64> =
        questions.iter().map(|question| now - expected(&weights, question, &value)).collect();
    for (question, gain) in questions.iter().zip(&alone) {
        offer(question.clue, *gain);
    }
    for (at, first) in questions.iter().enumerate() {
        for (other, second) in questions.iter().enumerate().skip(at + 1) {
            let both = now - expected(&weights, first, &|after| expected(after, second, &value));
            let lead = if alone[at] >= alone[other] { first } else { second };
            offer(lead.clue, both / 2.0);
        }
    }
    best
}

fn question<'a>(clue: Clue, layer: &LayerReading, table: &'a Table) -> Question<'a> {
    let texture = layer.evidence.texture;
    let answers = 0..clue.answers().len();
    Question {
        clue,
        silent: answers.clone().map(|answer| table.silent(clue, answer, texture)).sum(),
        answers: answers.filter_map(|answer| table.chances(clue, answer, texture)).collect(),
        only_cause: table.only_cause(clue),
    }
}

/// Mean of a value over the answers of a question, each as likely as the shares make it.
fn expected(weights: &Weights, question: &Question, value: &dyn Fn(&Weights) -> f64) -> f64 {
    let shares = weights.shares();
    let told: f64 = question
        .answers
        .iter()
        .map(|chances| {
            let chance: f64 = shares.iter().zip(chances.iter()).map(|(share, chance)| share * chance).sum();
            chance * value(&weights.times(chances, question.only_cause))
        })
        .sum();
    if question.silent > 0.0 { told + question.silent * value(weights) } else { told }
}

fn regret(shares: &PerKind, of_call: &PerKind) -> f64 {
    shares.iter().zip(of_call).map(|(share, regret)| share * regret).sum()
}

/// The call of least expected regret, and that regret.
fn best_call(shares: &PerKind, regrets: &Regrets) -> (usize, f64) {
    let mut best = (0, f64::INFINITY);
    for (call, of_call) in regrets.iter().enumerate() {
        let regret = regret(shares, of_call);
        if regret < best.1 {
            best = (call, regret);
        }
    }
    best
}

/// The most likely kind, and the most likely one of those for which another call is best.
pub fn leading_rivals(shares: &PerKind, regrets: &Regrets) -> [super::Kind; 2] {
    let best_call = |kind: usize| {
        (0..regrets.len()).min_by(|a, b| regrets[*a][kind].total_cmp(&regrets[*b][kind])).unwrap_or(0)
    };
    let mut order: Vec<usize> = (0..KINDS.len()).collect();
    crate::order::sort_by(&mut order, |a, b| shares[*b].total_cmp(&shares[*a]));
    let first = order[0];
    let rival = order.iter().copied().find(|kind| best_call(*kind) != best_call(first)).unwrap_or(order[1]);
    [KINDS[first], KINDS[rival]]
}
