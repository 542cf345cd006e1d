//! What happens to whom, by the lots of a seed.

use super::newer::{New, Packed};

/// Something that happens. Numbers are taken modulo what is there, so that a plan stays one when parts of it are left out.
#[derive(Debug, Clone, Copy)]
pub enum Act {
    /// Somebody begins a field.
    Field(usize),
    /// Somebody renames a field.
    Rename(usize, usize),
    /// Somebody digs a pit in a field.
    Pit(usize, usize),
    /// Somebody adds a step to the walk of a pit of a field.
    Step(usize, usize, usize),
    /// Somebody deletes a pit, or a field.
    Delete(usize, usize, bool),
    /// Somebody takes back the last save.
    Undo(usize),
    /// Somebody settles the first conflict.
    Settle(usize),
    /// Somebody brings back what was deleted while others went on.
    BringBack(usize),
    /// Somebody hands all over to whom it may concern.
    HandOver(usize),
    /// Somebody hands over to one other what that one is not known to have.
    HandOverTo(usize, usize),
    /// Somebody takes in one of the files about.
    TakeIn(usize, usize),
    /// A file is lost for now.
    Lose(usize),
    /// A phone's clock jumps by hours.
    Jump(usize, i64),
    /// A copy of the phone is put away.
    Backup(usize),
    /// The phone is lost, and another begins from the copy: with the same key, or with a new one.
    Restore(usize, bool),
    /// The phone is copied, and both go on.
    Clone(usize),
    /// The phone is looked over.
    Check(usize),
    /// A phone gets the newer build.
    Update(usize),
    /// One with the newer build writes into a field what the others do not know.
    Newer(usize, usize, New, Packed),
    /// Somebody takes nothing more of somebody.
    Refuse(usize, usize),
    /// Somebody accepts everybody again.
    Accept(usize),
    /// Somebody saves a field with all that is shown of it, under another name.
    SaveAll(usize, usize),
}

/// A source of numbers that a seed fixes (`SplitMix64`, Steele and others 2014).
pub struct Dice(pub u64);

impl Dice {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn between(&mut self, least: i64, most: i64) -> i64 {
        least.saturating_add_unsigned(self.next() % most.abs_diff(least).saturating_add(1))
    }

    pub fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }
}

/// A plan: how far each phone's clock is off, and what happens.
#[derive(Debug, Clone)]
pub struct Plan {
    pub skews_ms: Vec<i64>,
    pub acts: Vec<Act>,
}

impl Plan {
    /// The plan of a seed: two to seven phones, thirty to ninety acts; for odd seeds some of the phones have a newer build, and
    /// every fifth act is followed by one of theirs.
    pub fn of(seed: u64) -> Self {
        const YEAR_MS: i64 = 365 * 86_400_000;
        let mut dice = Dice(seed);
        let phones = 2 + dice.below(6);
        let skews_ms = (0..phones)
            .map(|_| match dice.below(4) {
                0 => (dice.between(-20, 20)) * YEAR_MS,
                1 => 0,
                _ => dice.between(-60_000, 59_999),
            })
            .collect();
        let count = 30 + dice.below(61);
        let acts = (0..count).map(|_| act(&mut dice)).collect();
        let mut lots = Dice(!seed);
        let acts = if seed.is_multiple_of(2) { acts } else { with_newer(acts, phones, &mut lots) };
        let acts = if seed % 4 < 2 { acts } else { with_doubts(acts, &mut Dice(seed << 32)) };
        Self { skews_ms, acts }
    }
}

/// Now and then somebody refuses somebody, and accepts all again.
fn with_doubts(acts: Vec<Act>, lots: &mut Dice) -> Vec<Act> {
    let mut all = Vec::new();
    for act in acts {
        all.push(act);
        match lots.below(12) {
            0 => all.push(Act::Refuse(lots.below(1 << 16), lots.below(1 << 16))),
            1 => all.push(Act::Accept(lots.below(1 << 16))),
            _ => {}
        }
    }
    all
}

/// Acts of phones with a newer build among those of all.
fn with_newer(acts: Vec<Act>, phones: usize, lots: &mut Dice) -> Vec<Act> {
    let mut all: Vec<Act> = (0..phones).filter(|_| lots.below(2) == 0).map(Act::Update).collect();
    for act in acts {
        all.push(act);
        if lots.below(5) == 0 {
            all.push(newer(lots));
            if let Some(Act::Newer(_, _, _, Packed::Critical)) = all.last() {
                all.extend((0..3).map(|_| Act::TakeIn(lots.below(1 << 16), lots.below(1 << 16))));
            }
        }
    }
    all
}

fn newer(lots: &mut Dice) -> Act {
    let (who, field) = (lots.below(1 << 16), lots.below(1 << 16));
    let packed = match lots.below(12) {
        0..2 => Packed::Critical,
        2..5 => Packed::WithMore,
        _ => Packed::Plain,
    };
    let new = match lots.below(20) {
        0..3 => New::OfField,
        3..5 => New::OfPit,
        5..8 => New::Place,
        8..10 => New::Depth,
        10..12 => New::Name,
        12..14 => New::Kind,
        14..16 => New::Known,
        16..19 => return Act::SaveAll(who, field),
        _ => return Act::Update(who),
    };
    Act::Newer(who, field, new, packed)
}

fn act(dice: &mut Dice) -> Act {
    let (who, a, b) = (dice.below(1 << 16), dice.below(1 << 16), dice.below(1 << 16));
    match dice.below(100) {
        0..8 => Act::Field(who),
        8..22 => Act::Rename(who, a),
        22..34 => Act::Pit(who, a),
        34..46 => Act::Step(who, a, b),
        46..51 => Act::Delete(who, a, b % 4 == 0),
        51..56 => Act::Undo(who),
        56..59 => Act::Settle(who),
        59..61 => Act::BringBack(who),
        61..69 => Act::HandOver(who),
        69..75 => Act::HandOverTo(who, a),
        75..90 => Act::TakeIn(who, a),
        90..92 => Act::Lose(a),
        92..94 => Act::Jump(who, dice.between(-36, 35)),
        94..95 => Act::Backup(who),
        95..97 => Act::Restore(who, b % 2 == 0),
        97..98 => Act::Clone(who),
        _ => Act::Check(who),
    }
}
