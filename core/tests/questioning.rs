//! Does the next look save work? Layers are drawn from the model itself, every answer wrong in one case of ten,
//! and read three ways: by the next look, in a fixed order, in a random order. All three stop by the same rule.

use pitface_core::advice::{REGRET, regret};
use pitface_core::reading::{
    Clue, Evidence, FaceLayer, LayerReading, PitReading, Table, next_look, read_layer, shares,
};
use pitface_core::record::{Sign, Signs};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};

const LAYERS: usize = 2_000;
const WRONG_ANSWERS: f64 = 0.10;

struct Draw(TestRng);

impl Draw {
    fn unit(&mut self) -> f64 {
        (self.0.next_u64() >> 11) as f64 / (1u64 << 53) as f64
    }

    fn below(&mut self, end: usize) -> usize {
        (self.unit() * end as f64) as usize
    }

    fn by_weight(&mut self, weights: &[f64]) -> usize {
        let mut left = self.unit() * weights.iter().sum::<f64>();
        for (index, weight) in weights.iter().enumerate() {
            left -= weight;
            if left < 0.0 {
                return index;
            }
        }
        weights.len() - 1
    }
}

/// A layer whose kind is known, and the answers a walker would give.
struct Virtual {
    kind: usize,
    known: Evidence,
    answers: Vec<usize>,
}

impl Virtual {
    fn draw(random: &mut Draw, table: &Table) -> Self {
        let kind = random.by_weight(&table.prior);
        let answer = |random: &mut Draw, clue: Clue, known: &Evidence| {
            let count = clue.answers().len();
            if random.unit() < WRONG_ANSWERS {
                return random.below(count);
            }
            let weights: Vec<f64> = (0..count)
                .map(|answer| match table.chances(clue, answer, known.texture) {
                    Some(chances) => chances[kind],
                    None => table.silent(clue, answer, known.texture),
                })
                .collect();
            random.by_weight(&weights)
        };
        // What a walker knows without a look: the place, where the layer lies, the reference pit, the field.
        let given = [
            Clue::Place,
            Clue::Lies,
            Clue::Reference,
            Clue::Texture,
            Clue::OrganicMatter,
            Clue::LastLoosened,
            Clue::LastTraffic,
        ];
        let known = given.iter().fold(Evidence::NONE, |known, &clue| {
            let answer = answer(random, clue, &known);
            known.with(clue, Some(answer))
        });
        let answers = Sign::ALL.iter().map(|&sign| answer(random, sign.into(), &known)).collect();
        Self { kind, known, answers }
    }

    fn fully_looked_at(&self) -> Evidence {
        Sign::ALL
            .iter()
            .fold(self.known, |known, &sign| known.with(sign.into(), Some(self.answers[sign as usize])))
    }
}

fn reading(evidence: Evidence) -> LayerReading {
    let face = FaceLayer { top_mm: 200, bottom_mm: 280, signs: Signs::default(), texture: None };
    read_layer(&face, evidence, Table::standard())
}

fn best_call(evidence: &Evidence) -> usize {
    regret::least(&regret::expected(&shares(evidence, Table::standard())))
}

#[derive(Default)]
struct Outcome {
    asked: usize,
    equal_calls: usize,
    regret: f64,
}

/// Asks until the next look says that nothing is worth a tap; `choose` picks the question.
fn ask(layers: &[Virtual], choose: &mut dyn FnMut(&Evidence, Clue) -> Clue) -> Outcome {
    let mut outcome = Outcome::default();
    for layer in layers {
        let mut known = layer.known;
        loop {
            let pit = PitReading { face: None, dug_to_mm: 450, layers: vec![reading(known)] };
            let Some(look) = next_look(&pit, &REGRET, Table::standard()) else { break };
            let clue = choose(&known, look.clue);
            known = known.with(clue, Some(layer.answers[clue as usize]));
            outcome.asked += 1;
        }
        outcome.equal_calls += usize::from(best_call(&known) == best_call(&layer.fully_looked_at()));
        outcome.regret += REGRET[best_call(&known)][layer.kind];
    }
    outcome
}

fn unasked(known: &Evidence) -> Vec<Clue> {
    Sign::ALL.iter().map(|&sign| Clue::from(sign)).filter(|clue| known.get(*clue).is_none()).collect()
}

#[test]
fn the_next_look_reaches_the_same_calls_with_fewer_questions() {
    let mut random = Draw(TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]));
    let layers: Vec<Virtual> = (0..LAYERS).map(|_| Virtual::draw(&mut random, Table::standard())).collect();
    let everything: f64 =
        layers.iter().map(|layer| REGRET[best_call(&layer.fully_looked_at())][layer.kind]).sum();
    let next = ask(&layers, &mut |_, look| look);
    let fixed = ask(&layers, &mut |known, _| unasked(known)[0]);
    let shuffled = ask(&layers, &mut |known, _| {
        let left = unasked(known);
        left[random.below(left.len())]
    });
    println!("{LAYERS} layers, {} signs, {WRONG_ANSWERS} of the answers wrong, seed 7", Sign::ALL.len());
    println!(
        "{:<13} {:>9} {:>13} {:>11} {:>7}",
        "order", "questions", "of all signs", "equal calls", "regret"
    );
    for (name, outcome) in [("next look", &next), ("fixed order", &fixed), ("random order", &shuffled)] {
        let asked = outcome.asked as f64 / LAYERS as f64;
        println!(
            "{name:<13} {asked:>9.2} {:>12.1}% {:>10.1}% {:>6.3}x",
            100.0 * asked / Sign::ALL.len() as f64,
            100.0 * outcome.equal_calls as f64 / LAYERS as f64,
            outcome.regret / everything
        );
    }
    let asked_share = next.asked as f64 / (LAYERS * Sign::ALL.len()) as f64;
    assert!(next.equal_calls as f64 >= 0.97 * LAYERS as f64);
    assert!(next.regret <= 1.05 * everything);
    assert!(asked_share <= 0.60);
    assert!(next.asked < fixed.asked && next.asked < shuffled.asked);
}
