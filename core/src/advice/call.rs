//! What a call is made of.

use super::after_dig::{Check, NextStep, Remedy, Verdict};
use crate::reading::{Clue, Kind, Reason};
use crate::record::codes::codes;
use crate::record::{Call, FaceMoisture, RollOutcome, Sign, Zone};
use chrono::NaiveDate;

/// The calls of a field.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldAdvice {
    /// A call for each zone that has a pit, in the order of [`Zone::ALL`].
    pub zones: Vec<ZoneCall>,
    /// The call for the field as a whole.
    pub whole: ZoneCall,
}

/// The call for one zone.
#[derive(Debug, Clone, PartialEq)]
pub struct ZoneCall {
    /// The zone.
    pub zone: Zone,
    /// The call.
    pub call: Call,
    /// For [`Call::Loosen`]: fit to go, or what is still to be tested. [`Readiness::Fit`] otherwise.
    pub readiness: Readiness,
    /// Of the face: chance that the call is the right one where the pits were dug, given what was seen, 0 to 1.
    pub share: f64,
    /// That chance as a word.
    pub sure: Sureness,
    /// Of the ground: how far those pits speak for the rest of the zone.
    pub ground: OfGround,
    /// Tip depth, where the call is to loosen or would be once it is dry enough.
    pub tip: Option<TipDepth>,
    /// Pits counted (alike twins once).
    pub pits: usize,
    /// Why, the deciding one first.
    pub reasons: Vec<Why>,
    /// Cautions that apply, those that bear on what is done now first.
    pub cautions: Vec<Caution>,
    /// What has to follow for it to last.
    pub follow_up: Vec<FollowUp>,
    /// How much of a crop's rooting depth the harmed layer cuts off.
    pub rooting_loss: Option<RootingLoss>,
}

impl ZoneCall {
    /// Returns what the call stands on first.
    pub fn lead(&self) -> Option<&What> {
        self.reasons.iter().find(|why| why.stance == Stance::For).map(|why| &why.what)
    }

    /// All it lacks is a reference pit to hold its pits against: nothing more is to be dug in the zone itself.
    pub fn lacks_reference(&self) -> bool {
        self.call == Call::DigAgain && matches!(self.lead(), Some(What::NoReference))
    }

    /// The cautions that bear on what is done now; the others follow them in [`Self::cautions`].
    pub fn cautions_now(&self) -> &[Caution] {
        let now = self.cautions.iter().take_while(|caution| caution.bears_on(self.call)).count();
        &self.cautions[..now]
    }
}

impl FieldAdvice {
    /// The cautions of all zones, each once: those that bear on what is done now in some zone, then the others, both in the
    /// order of [`Caution::ALL`].
    pub fn cautions(&self) -> (Vec<Caution>, Vec<Caution>) {
        let calls = || self.zones.iter().chain([&self.whole]);
        let applying =
            Caution::ALL.iter().filter(|caution| calls().any(|call| call.cautions.contains(caution)));
        applying.partition(|caution| calls().any(|call| call.cautions_now().contains(caution)))
    }
}

/// How far the pits of a zone speak for the ground between them. It says nothing of how well each was read.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct OfGround {
    /// Pits judged.
    pub pits: usize,
    /// Of these, pits that say the same by themselves.
    pub agree: usize,
    /// Chance that more than half of the zone is as they say, 0 to 1.
    pub share: f64,
    /// That chance as a word; one pit is never sure of a zone.
    pub sure: Sureness,
}

/// How fit for work a justified loosening is. Written in JSON with its name as `readiness`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(tag = "readiness", rename_all = "snake_case")]
pub enum Readiness {
    /// Nothing is missing.
    Fit,
    /// Justified, not yet fit: roll it at this depth first.
    RollFirst {
        /// Tip depth to roll at.
        depth_mm: u32,
    },
    /// The roll test does not apply (soil that does not hold together); judge moisture another way.
    RollNotApplicable,
    /// A trial strip decides first: one that was run is to be dug behind, or did not do it and is to be changed.
    StripFirst,
}

codes!(
    /// How sure a call is.
    Sureness { Sure = "sure", Likely = "likely", CannotSay = "cannot_say", }
);

/// Depth at which the feet should run, as a range.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct TipDepth {
    /// Shallowest tip: 25 mm below the harmed layer's bottom.
    pub lo_mm: u32,
    /// Deepest tip: 50 mm below it.
    pub hi_mm: u32,
    /// Bottom of the harmed layer it clears.
    pub bottom_mm: u32,
    /// Share of the ground it is meant to clear, 0 to 1.
    pub cleared_share: f64,
    /// Number of pits with a harmed layer behind it.
    pub pits: usize,
    /// How sure it is, from that number of pits, that it clears that share, 0 to 1 (Wilks 1941).
    pub confidence: f64,
}

/// Whether something speaks for or against the call, or only belongs to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Stance {
    /// It carries the call.
    For,
    /// It speaks against it.
    Against,
    /// To be known.
    Note,
}

/// One reason of a call.
#[derive(Debug, Clone, PartialEq)]
pub struct Why {
    /// For or against.
    pub stance: Stance,
    /// What it is.
    pub what: What,
}

/// What a reason says. Depths in millimetres below the surface. Written in JSON with its name as `what`.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
#[serde(tag = "what", rename_all = "snake_case")]
#[expect(missing_docs, reason = "fields say what they are: depths, counts, shares")]
pub enum What {
    /// A pit's layer reads as this kind; the pit by its number in the notes, from 1.
    Layer { pit: usize, top_mm: u32, bottom_mm: u32, kind: Kind, share: f64, reasons: Vec<Reason> },
    /// No layer holds the crop back.
    NothingHarmed,
    /// Roots still pass through the layer, or worms do, or both.
    RootsPass { top_mm: u32, bottom_mm: u32, roots: bool, worms: bool },
    /// No pit in this zone gives a call.
    NoPits,
    /// The face was too dry or too wet to read.
    FaceUnreadable { face: FaceMoisture },
    /// The pit is too shallow to see the layer's bottom, or shallower than 400 mm.
    TooShallow { dug_to_mm: u32, need_mm: u32 },
    /// No readable reference pit.
    NoReference,
    /// Too few signs to tell; those that were not looked at.
    SignsTooFew { top_mm: u32, bottom_mm: u32, missing: Vec<Clue> },
    /// All signs are there, and two kinds that ask for different calls fit them alike.
    KindsOpen { top_mm: u32, bottom_mm: u32, one: Kind, other: Kind },
    /// The pits of the zone disagree.
    PitsDisagree { agree: usize, of: usize },
    /// Pressed or settled cannot be told without roots: dig in a rooted crop.
    RootsNeeded { top_mm: u32, bottom_mm: u32 },
    /// The layer holds in water: cemented.
    Cemented { top_mm: u32, bottom_mm: u32 },
    /// Signs of a layer that no one kind of layer explains together: for sound soil (positive) and for harm.
    SignsClash { top_mm: u32, bottom_mm: u32, signs: Vec<Reason> },
    /// Two people read one hole and would do different things; the pits by their numbers, what each would do, and the signs
    /// for which they gave different answers in the layers they judge by.
    ReadersDiffer { pits: [usize; 2], calls: [Call; 2], top_mm: u32, bottom_mm: u32, signs: Vec<Sign> },
    /// Water stands through the profile, down to where it was looked for; how many of clear colours, a sour smell and
    /// roots that turn or end say so.
    WaterStands { top_mm: u32, bottom_mm: u32, facts: usize },
    /// Wet signs in and above the harmed layer over clean ground: it holds water up.
    WaterHeldUp { top_mm: u32, bottom_mm: u32 },
    /// The face is wet: it shows the harm, and nothing can be worked.
    FaceWet,
    /// The layer ends within the upper 100 mm: a crust or trodden ground, no case for a tine.
    NearSurface { top_mm: u32, bottom_mm: u32 },
    /// Peat: its structure hangs on water and age, no case for a tine.
    Peat { top_mm: u32, bottom_mm: u32 },
    /// Trodden ground under grass that ends within 150 mm: rest mends it.
    UnderGrass { top_mm: u32, bottom_mm: u32 },
    /// A roll test decided, or was looked at.
    Rolled { depth_mm: u32, roll: RollOutcome, surface: bool, on: Option<NaiveDate> },
    /// The roll test at tip depth is missing.
    RollMissing { depth_mm: u32 },
    /// The roll test at the surface is missing.
    SurfaceRollMissing,
    /// The tip would come nearer to something buried than the clearance.
    TooNear { obstacle: Obstacle, depth_mm: u32, tip_mm: u32, clearance_mm: u32 },
    /// This call fits best, and not surely enough to act on; the look that would settle it, where one would.
    NotSure { call: Call, top_mm: u32, bottom_mm: u32, clue: Option<Clue> },
    /// It is marked as running here, and nobody knows how deep.
    DepthUnknown { obstacle: Obstacle },
    /// A tip would do, or would not, by less than a depth is known to: it must lie at least this deep.
    HangsOnDepth { obstacle: Obstacle, depth_mm: u32, needs_mm: u32 },
    /// The layer ends so near to a depth beyond which no tine is for it, or one is, that measuring again may tip the call.
    HangsOnBottom { bottom_mm: u32, limit_mm: u32 },
    /// A cable or pipe that is noted, with its depth and how far it runs from the nearest pit of the zone.
    Service { obstacle: Obstacle, depth_mm: Option<u32>, away_m: Option<u32> },
    /// It runs within so many metres, and nothing there is loosened until its owner has given leave.
    NeedsLeave { obstacle: Obstacle, within_m: u32 },
    /// The legs are lifted over it and so many metres on each side.
    LiftOut { obstacle: Obstacle, side_m: u32 },
    /// Who was asked about what lies buried, when, whether leave was given, and whether the answer has lapsed.
    Asked { whom: String, on: Option<NaiveDate>, leave: Option<bool>, lapsed: bool },
    /// No machine that is noted reaches the tip and stays above critical depth there: what it takes.
    NoMachine { tip_mm: u32, foot_mm: u32 },
    /// Rolls of an earlier day: roll again.
    RollPast { rolled: NaiveDate },
    /// It has rained since the rolls: roll again.
    RainSince { rolled: NaiveDate, rain: NaiveDate },
    /// Worked since the pits were dug: what the holes behind the machine say.
    Behind {
        on: Option<NaiveDate>,
        strip: bool,
        verdict: Option<Verdict>,
        next: NextStep,
        check: Option<Check>,
        remedy: Option<Remedy>,
    },
    /// Loosened since the pits were dug, and not dug since.
    LoosenedSince { on: NaiveDate },
    /// A harmed layer is there again after a loosening.
    DidNotLast { on: Option<NaiveDate> },
    /// The tip lies below the machine's reach.
    BeyondReach { tip_mm: u32, reach_mm: u32 },
    /// Clay with the layer's bottom below 300 mm: mostly not worthwhile.
    DeepClay { bottom_mm: u32 },
    /// Clay below 300 mm, held to by the user.
    DeepClayHeldTo { bottom_mm: u32 },
    /// Zones differ: work only the harmed ground.
    ZonesDiffer { loosen: Vec<Zone> },
    /// Two alike pits were counted once.
    TwinsCountedOnce { twins: usize },
}

codes!(
    /// What may lie buried.
    Obstacle {
        /// Drains of which no more is known.
        Drains = "drains",
        MoleDrains = "mole_drains",
        /// Cables or pipes of which no more is known.
        Services = "services",
        /// Pipe drains under stone or gravel.
        DrainsInStone = "drains_in_stone",
        /// Drains with nothing over them but soil.
        BareDrains = "bare_drains",
        PowerCables = "power_cables",
        GasOrOil = "gas_or_oil",
        /// Mains of a water company.
        WaterMains = "water_mains",
        /// Water pipes of the farm.
        FarmWater = "farm_water",
        /// Telephone cables or fibre.
        Telephone = "telephone",
    }
);

codes!(
    /// Cautions shown where they apply.
    Caution {
        /// Nobody was asked what lies under the field, and the tips go deeper than anybody may assume leave for.
        NobodyAsked = "nobody_asked",
        /// The answer about what lies under the field has lapsed.
        AskAnew = "ask_anew",
        /// The legs are lifted over strips of the zone.
        LiftOut = "lift_out",
        /// Buried cables, pipes, drains: ask before digging or loosening; local rules first.
        AskBeforeDigging = "ask_before_digging",
        /// Fill the hole.
        FillHole = "fill_hole",
        /// Never enter a pit deeper than the knee for reading.
        DeepPit = "deep_pit",
        /// Knife away from the body.
        KnifeAway = "knife_away",
        /// Machine stopped and keys out before anyone goes near the tines.
        MachineStopped = "machine_stopped",
        /// Scheduled ancient or protected ground, contracts and qualified advice come first.
        ProtectedGround = "protected_ground",
        /// Depths are estimates with a range.
        EstimatesOnly = "estimates_only",
        /// Depth of drains not noted.
        DrainsUnknown = "drains_unknown",
        /// Dry at depth: high draught, clods.
        CloddyDry = "cloddy_dry",
        /// Sand: resistance alone does not show that loosening pays.
        SandSlowToPay = "sand_slow_to_pay",
        /// Silty soil: risk of loss by loosening.
        SiltAtRisk = "silt_at_risk",
        /// Trial strip first, dig behind it.
        TrialStrip = "trial_strip",
        /// The ground slopes: the legs run across the slope.
        AcrossSlope = "across_slope",
        /// Steep enough that loosened ground washes away where it is not covered.
        SlopeWashes = "slope_washes",
        /// The next crop is sown before loosened ground has settled.
        ShortToSettle = "short_to_settle",
        /// The next crop is sown before a crop for its roots has done anything.
        ShortForRoots = "short_for_roots",
    }
);

codes!(
    /// What has to follow.
    FollowUp {
        /// A deep-rooted crop to hold it open.
        RootsAfter = "roots_after",
        /// Organic matter.
        OrganicMatter = "organic_matter",
        /// No heavy traffic on loosened ground.
        NoTraffic = "no_traffic",
        /// Find and remove the cause.
        RemoveCause = "remove_cause",
        /// Dig again behind the machine.
        DigBehind = "dig_behind",
        /// Look at the drainage before anything else.
        MendDrainage = "mend_drainage",
        /// Roll again when it has dried.
        RollAgain = "roll_again",
        /// Dig again when the face is moist.
        DigWhenMoist = "dig_when_moist",
        /// Dig again in a rooted crop.
        DigInRootedCrop = "dig_in_rooted_crop",
    }
);

/// One other answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(missing_docs, reason = "fields say what they are")]
pub enum ChangedAnswer {
    /// A sign or field clue of the deciding layer.
    Clue { top_mm: u32, bottom_mm: u32, clue: Clue, answer: usize },
    /// The roll test, of the day.
    Roll { surface: bool, roll: RollOutcome },
    /// What lies buried lies so deep or deeper.
    Deeper { obstacle: Obstacle, mm: u32 },
    /// It lies less deep than that.
    Shallower { obstacle: Obstacle, mm: u32 },
    /// The owner of what lies buried gave leave.
    Leave,
    /// The user holds to loosening deep clay.
    DeepClayHeldTo,
    /// Another pit of the zone read like this one, by its number in the notes.
    AnotherPit { like: usize },
}

/// The smallest set of other answers that gives another call.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// All of these at once.
    pub answers: Vec<ChangedAnswer>,
    /// The call it would then be.
    pub call: Call,
    /// The call that is told hangs on it: one answer, one step from what was noted of the only pit that decides, would have other work done.
    pub hangs: bool,
}

/// How much of a crop's rooting depth lies below the harmed layer's top.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct RootingLoss {
    /// Crop, as noted.
    pub crop: String,
    /// Rooting depth of the crop in open soil.
    pub potential_mm: u32,
    /// Top of the harmed layer.
    pub top_mm: u32,
    /// Share cut off, 0 to 1.
    pub share: f64,
    /// Water that the rooting depth below the layer's top can hold for the crop, where the texture is known.
    pub water: Option<WaterHeld>,
}

/// Water that a depth of soil can hold for crops, by its texture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct WaterHeld {
    /// Least, millimetres of water.
    pub least_mm: u32,
    /// Most.
    pub most_mm: u32,
}
