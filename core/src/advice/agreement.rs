//! How far two or more people who read the same pits agree: weighted kappa for each sign (Cohen 1968), averaged over
//! all pairs of readers (Light 1971), and the sign they differ on most.

use crate::reading::FaceLayer;
use crate::record::codes::codes;
use crate::record::{Call, Sign, Signs};
use std::collections::BTreeSet;

/// Thickness of the slices in which faces with different layer boundaries are compared: one step of the knife walk.
pub const SLICE_MM: u32 = 50;

codes!(
    /// How a difference between two answers weighs.
    Weights {
        /// Any difference counts in full: for answers without an order.
        Equal = "equal",
        /// By the number of steps between the answers.
        Linear = "linear",
        /// By the square of the number of steps.
        Quadratic = "quadratic",
    }
);

impl Weights {
    /// Weight of two answers `steps` apart on a scale of `answers`: 0 = the same, 1 = from one end to the other.
    fn of(self, steps: usize, answers: usize) -> f64 {
        let apart = steps as f64 / answers.saturating_sub(1).max(1) as f64;
        match self {
            Self::Equal => f64::from(u8::from(steps > 0)),
            Self::Linear => apart,
            Self::Quadratic => apart * apart,
        }
    }
}

/// Cohen's kappa of two readers: 1 = they always agree, 0 = no more than chance would have it, below 0 = less.
/// `pairs` holds the index of each one's answer on a scale of `answers`; answers past the scale are left out.
/// `None` without a pair, and where both gave one and the same answer throughout, so that chance explains it all.
pub fn kappa(pairs: &[(usize, usize)], answers: usize, weights: Weights) -> Option<f64> {
    let pairs: Vec<_> = pairs.iter().filter(|(one, other)| one.max(other) < &answers).collect();
    let seen: f64 = pairs.iter().map(|(one, other)| weights.of(one.abs_diff(*other), answers)).sum();
    let (mut first, mut second) = (vec![0.0; answers], vec![0.0; answers]);
    for &&(one, other) in &pairs {
        first[one] += 1.0;
        second[other] += 1.0;
    }
    let mut by_chance = 0.0;
    for (one, times) in first.iter().enumerate() {
        for (other, others) in second.iter().enumerate() {
            by_chance += times * others * weights.of(one.abs_diff(other), answers);
        }
    }
    by_chance /= pairs.len() as f64;
    (by_chance > 0.0).then(|| 1.0 - seen / by_chance)
}

/// One person's reading of a pit.
#[derive(Debug, Clone, PartialEq)]
pub struct ReaderFace {
    /// Who read it.
    pub by: String,
    /// The layers as this person read them.
    pub layers: Vec<FaceLayer>,
    /// The call that follows from them, where there is one.
    pub call: Option<Call>,
}

/// How far readers agree on one sign.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct SignAgreement {
    /// The sign.
    pub sign: Sign,
    /// Comparisons: slices of the same pit that two readers both answered for.
    pub compared: usize,
    /// Of these, the same answer.
    pub same: usize,
    /// Mean distance between two answers: 0 = always the same, 1 = always from one end of the scale to the other.
    pub apart: f64,
    /// Kappa with weights by steps, for a sign with an order. `None` where nothing is to be told.
    pub linear: Option<f64>,
    /// Kappa with weights by squared steps, for a sign with an order.
    pub quadratic: Option<f64>,
    /// Kappa without an order, for a sign that has none.
    pub equal: Option<f64>,
}

/// How far readers of the same pits agree.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Agreement {
    /// Each sign that two readers answered for in the same place, in the order of [`Sign::ALL`].
    pub signs: Vec<SignAgreement>,
    /// The sign with the greatest mean distance, the first of equal ones; `None` where they never differ.
    pub differ_most: Option<Sign>,
    /// Whether it matters: some pit gets another call from one reader than from another.
    pub calls_differ: bool,
}

/// The number of answers of a sign that stand in an order, from good to bad; `None` for one without an order.
/// Answers after them (no roots to judge by) are no place on the scale and count as not looked.
pub fn ordered_answers(sign: Sign) -> Option<usize> {
    match sign {
        Sign::ComesAway | Sign::ClodInWater => None,
        Sign::Roots => Some(4),
        Sign::Resistance | Sign::Pores | Sign::Channels | Sign::Patches | Sign::Smell => {
            Some(sign.answers().len())
        }
    }
}

/// Compares readers over one or more pits; each entry of `pits` holds the faces of one pit, one for each reader.
/// A person's second face of the same pit is left out.
pub fn agreement(pits: &[Vec<ReaderFace>]) -> Agreement {
    let readers: BTreeSet<&str> = pits.iter().flatten().map(|face| face.by.as_str()).collect();
    let readers: Vec<&str> = readers.into_iter().collect();
    let signs: Vec<_> = Sign::ALL.iter().filter_map(|&sign| agreement_on(sign, pits, &readers)).collect();
    let differ_most = signs
        .iter()
        .filter(|sign| sign.apart > 0.0)
        .reduce(|most, sign| if sign.apart > most.apart { sign } else { most })
        .map(|most| most.sign);
    let calls_differ = pits.iter().any(|faces| {
        let mut calls = faces.iter().filter_map(|face| face.call);
        calls.next().is_some_and(|first| calls.any(|call| call != first))
    });
    Agreement { signs, differ_most, calls_differ }
}

fn agreement_on(sign: Sign, pits: &[Vec<ReaderFace>], readers: &[&str]) -> Option<SignAgreement> {
    let order = ordered_answers(sign);
    let answers = order.unwrap_or(sign.answers().len());
    let pair_pairs: Vec<Vec<(usize, usize)>> = readers
        .iter()
        .enumerate()
        .flat_map(|(at, one)| readers[at + 1..].iter().map(move |other| (*one, *other)))
        .map(|(one, other)| pairs_of(sign, answers, pits, one, other))
        .filter(|pairs| !pairs.is_empty())
        .collect();
    let all: Vec<(usize, usize)> = pair_pairs.iter().flatten().copied().collect();
    let scale = if order.is_some() { Weights::Linear } else { Weights::Equal };
    let apart: f64 = all.iter().map(|(one, other)| scale.of(one.abs_diff(*other), answers)).sum();
    let mean = |weights: Weights| {
        let kappas: Vec<f64> = pair_pairs.iter().filter_map(|pairs| kappa(pairs, answers, weights)).collect();
        (!kappas.is_empty()).then(|| kappas.iter().sum::<f64>() / kappas.len() as f64)
    };
    (!all.is_empty()).then(|| SignAgreement {
        sign,
        compared: all.len(),
        same: all.iter().filter(|(one, other)| one == other).count(),
        apart: apart / all.len() as f64,
        linear: order.and_then(|_| mean(Weights::Linear)),
        quadratic: order.and_then(|_| mean(Weights::Quadratic)),
        equal: if order.is_none() { mean(Weights::Equal) } else { None },
    })
}

/// The answers of two readers, slice by slice, wherever both gave one on the scale.
fn pairs_of(
    sign: Sign,
    answers: usize,
    pits: &[Vec<ReaderFace>],
    one: &str,
    other: &str,
) -> Vec<(usize, usize)> {
    let answer = |face: &ReaderFace, depth_mm: u32| {
        signs_at(&face.layers, depth_mm).and_then(|signs| signs.get(sign)).filter(|&answer| answer < answers)
    };
    let mut pairs = Vec::new();
    for faces in pits {
        let of = |name: &str| faces.iter().find(|face| face.by == name);
        let (Some(first), Some(second)) = (of(one), of(other)) else { continue };
        let bottom_mm = first.layers.iter().map(|layer| layer.bottom_mm).max().unwrap_or(0);
        for depth_mm in (SLICE_MM / 2..bottom_mm).step_by(SLICE_MM as usize) {
            pairs.extend(answer(first, depth_mm).zip(answer(second, depth_mm)));
        }
    }
    pairs
}

fn signs_at(layers: &[FaceLayer], depth_mm: u32) -> Option<&Signs> {
    layers.iter().find(|layer| (layer.top_mm..layer.bottom_mm).contains(&depth_mm)).map(|layer| &layer.signs)
}
