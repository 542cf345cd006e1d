//! From records to clues: what is known of why a pass failed at one hole. Nothing noted is nothing known.

use super::across::Section;
use super::clue::{Before, Evenness, PassClue, Reached, SpeedPlace, YesNo};
use super::ground::Wanted;
use super::lasting::Lasts;
use crate::advice::machine::{CriticalDepth, SpacingRange, TinesRange, measured_ridge_mm};
use crate::record::{AfterDig, Extent, Field, FieldNotes, Machine, Pass, RollOutcome, TextureNote};
use crate::soil::roll::RollMeaning;
use crate::soil::texture::TextureGroup;

/// A roll counts for the tip when it was taken within this distance of its depth. Our judgement.
const ROLL_NEAR_MM: u32 = 75;
/// A slot's bottom is read to about this. Our judgement.
const SLOT_SLACK_MM: u32 = 20;
/// Slots so much below the deepest tip that the layer calls for are too deep. Our judgement.
const TOO_DEEP_MM: u32 = 50;
/// Difference between slots across the machine from which it does not run even. Our judgement: two readings' slack.
const UNEVEN_SLOTS_MM: f64 = 45.0;
/// The answers known at one hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Evidence([Option<usize>; PassClue::ALL.len()]);

/// What is known of the ground and the machine at one hole.
#[derive(Debug, Clone, Copy)]
pub struct Scene<'a> {
    /// The field's notes.
    pub notes: &'a FieldNotes,
    /// The pass.
    pub pass: &'a Pass,
    /// The hole.
    pub dig: &'a AfterDig,
    /// The machine as it was set.
    pub machine: Option<&'a Machine>,
    /// What the pass was to reach.
    pub wanted: Wanted,
    /// The readings, where there are enough of them and a mark.
    pub section: Option<Section<'a>>,
    /// The tines, where their figure holds.
    pub tines: Option<TinesRange>,
}

impl Evidence {
    /// Everything the records say.
    pub fn of(scene: &Scene) -> Self {
        let mut evidence = Self([None; PassClue::ALL.len()]);
        for (at, answer) in PassClue::ALL.iter().zip(&mut evidence.0) {
            *answer = answer_of(*at, scene);
        }
        evidence
    }

    /// The clues that are known, with their answers.
    pub fn known(&self) -> impl Iterator<Item = (PassClue, usize)> + '_ {
        PassClue::ALL.iter().zip(self.0).filter_map(|(clue, answer)| Some((*clue, answer?)))
    }

    /// Returns whether a clue is known.
    pub fn has(&self, clue: PassClue) -> bool {
        self.0[clue as usize].is_some()
    }

    /// The answer to a clue, where it is known and one of these.
    pub fn answer_among(&self, clue: PassClue, codes: &[&'static str]) -> Option<&'static str> {
        let code = *clue.answers().get(self.0[clue as usize]?)?;
        codes.contains(&code).then_some(code)
    }
}

/// What rolling soil from the depth of the tips has told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rolled {
    /// Too wet.
    Thread,
    /// Dry enough, or too dry.
    NoThread,
    /// It was not rolled.
    NotYet,
    /// It does not roll: sand.
    NotApplicable,
}

impl Rolled {
    /// From the roll nearest to the tip, in the field's soil.
    pub fn of(roll: Option<RollOutcome>, field: &Field) -> Self {
        match roll {
            Some(RollOutcome::Thread) => Self::Thread,
            Some(_) => Self::NoThread,
            None if field.texture.map(TextureNote::group) == Some(TextureGroup::Sand) => Self::NotApplicable,
            None => Self::NotYet,
        }
    }
}

fn answer_of(clue: PassClue, scene: &Scene) -> Option<usize> {
    let Scene { notes, pass, dig, machine, wanted, .. } = *scene;
    match clue {
        PassClue::Roll => roll_at_tip(pass, &notes.field, wanted.depth_mm?).map(|roll| roll as usize),
        PassClue::Depth => reached(slot_depth_mm(dig)?, wanted).map(|reached| reached as usize),
        PassClue::SetDepth if slot_depth_mm(dig).is_some() => None,
        // Without a layer the depth set is the depth wanted, which says nothing.
        PassClue::SetDepth => {
            wanted.layer_bottom_mm.and(reached(pass.tip_mm?, wanted)).map(|set| set as usize)
        }
        PassClue::Slots => evenness(&dig.slots_mm).map(|slots| slots as usize),
        PassClue::Critical => {
            let depth_mm = slot_depth_mm(dig).or(pass.tip_mm).or(wanted.depth_mm)?;
            Some(CriticalDepth::of(machine?).place(depth_mm) as usize)
        }
        PassClue::Profile => dig.profile.map(|profile| profile as usize),
        PassClue::Smear => dig.smear.map(|smear| smear as usize),
        PassClue::Lift => dig.lift.map(|lift| lift as usize),
        PassClue::Clods => dig.clods.map(|clods| clods as usize),
        PassClue::SubsoilUp => dig.subsoil_up.map(yes_no),
        PassClue::Plates => dig.plates.map(|plates| plates as usize),
        PassClue::Pattern => scene.section.map(|section| section.pattern() as usize),
        PassClue::Ridge => {
            let (section, tines) = (scene.section?, scene.tines?);
            let measured_mm = measured_ridge_mm(section.readings_mm)?;
            Some(section.ridge_against(&tines, measured_mm) as usize)
        }
        PassClue::Spacing => {
            let machine = machine?;
            let range = SpacingRange::at(wanted.depth_mm?, machine.foot())?;
            Some(range.fit(machine.spacing_mm) as usize)
        }
        PassClue::Speed => {
            let (kmh, speed) = (pass.speed_kmh?, machine?.speed?);
            let place = if kmh < speed.lo_kmh {
                SpeedPlace::Below
            } else if kmh > speed.hi_kmh {
                SpeedPlace::Above
            } else {
                SpeedPlace::Within
            };
            Some(place as usize)
        }
        PassClue::Feet => dig.feet.map(|feet| feet as usize),
        PassClue::OldSlots => dig.old_slots.map(yes_no),
        PassClue::LoosenedBefore => loosened_before(notes, pass).map(|before| before as usize),
    }
}

const fn yes_no(seen: bool) -> usize {
    (if seen { YesNo::Yes } else { YesNo::No }) as usize
}

/// The roll test nearest to the tip, of equally near ones the wettest; `None` also where the soil does not roll.
pub fn roll_at_tip(pass: &Pass, field: &Field, tip_mm: u32) -> Option<RollOutcome> {
    let texture = field.texture.map(TextureNote::group);
    let near = pass.rolls.iter().filter(|roll| roll.depth_mm.abs_diff(tip_mm) <= ROLL_NEAR_MM);
    let roll = near.min_by_key(|roll| (roll.depth_mm.abs_diff(tip_mm), roll.roll))?.roll;
    let meaning = RollMeaning::of(texture, Some(roll));
    (meaning != RollMeaning::NotApplicable).then_some(roll)
}

/// Middle depth of the slots; of an even number the mean of the two in the middle.
pub fn slot_depth_mm(dig: &AfterDig) -> Option<u32> {
    let mut slots_mm = dig.slots_mm.clone();
    crate::order::sort_by(&mut slots_mm, Ord::cmp);
    let last = slots_mm.len().checked_sub(1)?;
    Some(slots_mm[last / 2].midpoint(slots_mm[last.div_ceil(2)]))
}

fn reached(depth_mm: u32, wanted: Wanted) -> Option<Reached> {
    let (lo_mm, hi_mm) = wanted.range_mm()?;
    Some(if depth_mm + SLOT_SLACK_MM < lo_mm {
        Reached::Short
    } else if depth_mm > hi_mm + TOO_DEEP_MM {
        Reached::Deep
    } else {
        Reached::Right
    })
}

/// Slots from leg to leg: a straight line through them tells sloping from jagged. The same from either side.
fn evenness(slots_mm: &[u32]) -> Option<Evenness> {
    let count = slots_mm.len();
    if count < 2 {
        return None;
    }
    let spread = f64::from(slots_mm.iter().max()?.abs_diff(*slots_mm.iter().min()?));
    if spread < UNEVEN_SLOTS_MM {
        return Some(Evenness::Even);
    }
    // Legs in half steps from the middle, so that all is whole numbers.
    let from_middle = |leg: usize| (2 * leg) as f64 - (count - 1) as f64;
    let lean: f64 = slots_mm.iter().enumerate().map(|(leg, &mm)| from_middle(leg) * f64::from(mm)).sum();
    let arms: f64 = (0..count).map(|leg| from_middle(leg).powi(2)).sum();
    let across = (lean / arms * 2.0 * (count - 1) as f64).abs();
    Some(if across >= UNEVEN_SLOTS_MM && across >= spread * 0.75 {
        Evenness::Sloping
    } else {
        Evenness::Jagged
    })
}

/// The last loosening before this pass: as noted for the field, or a pass over the whole zone. None noted says nothing,
/// nor does one that may or may not have lasted until then.
fn loosened_before(notes: &FieldNotes, pass: &Pass) -> Option<Before> {
    let done = pass.done?;
    let passes = notes
        .passes
        .iter()
        .filter(|other| other.id != pass.id && other.zone == pass.zone && other.extent == Some(Extent::Zone));
    let last = passes
        .filter_map(|other| other.done)
        .chain(notes.field.last_loosened)
        .filter(|day| *day < done)
        .max()?;
    let lasts = Lasts::of(&notes.field).until(last, done)?;
    Some(if lasts { Before::Recent } else { Before::LongAgo })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{RecordId, Roll};

    /// A slot is read to 20 mm, and 50 mm below what was wanted are too deep.
    #[test]
    fn slots_are_short_right_or_deep() {
        let wanted = Wanted { depth_mm: Some(340), layer_bottom_mm: None, layer_top_mm: None };
        let of = |depth_mm| reached(depth_mm, wanted);
        assert_eq!(
            [319, 320, 390, 391].map(of),
            [Reached::Short, Reached::Right, Reached::Right, Reached::Deep].map(Some)
        );
    }

    /// A roll from more than 75 mm above or below the tip says nothing of it.
    #[test]
    fn only_a_roll_near_the_tip_speaks_for_it() {
        let field = Field::new(RecordId::new(1, [0; 10]), "Long Sedge");
        let of = |depth_mm| {
            let unknown = crate::record::Unknown::new();
            let rolls =
                vec![Roll { id: RecordId::new(3, [0; 10]), depth_mm, roll: RollOutcome::Crumbles, unknown }];
            roll_at_tip(&Pass { rolls, ..Pass::new(RecordId::new(2, [0; 10])) }, &field, 340)
        };
        assert_eq!([264, 265, 415, 416].map(|mm| of(mm).is_some()), [false, true, true, false]);
    }

    #[test]
    fn slots_tell_a_slope_from_one_leg_that_is_off() {
        for (slots, evenness_of) in [
            (&[350, 340, 345, 355][..], Evenness::Even),
            (&[380, 350, 330, 300], Evenness::Sloping),
            (&[350, 290, 350, 345], Evenness::Jagged),
            (&[350, 290], Evenness::Sloping),
            // 45 mm apart they are no longer even.
            (&[350, 306], Evenness::Even),
            (&[350, 305], Evenness::Sloping),
        ] {
            let mirrored: Vec<u32> = slots.iter().rev().copied().collect();
            assert_eq!(evenness(slots), Some(evenness_of), "{slots:?}");
            assert_eq!(evenness(&mirrored), Some(evenness_of), "{mirrored:?}");
        }
        assert_eq!(evenness(&[350]), None);
    }
}
