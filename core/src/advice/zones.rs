//! From the pits of a zone to its call: what the structure says over all of them, then the gates.

use super::call::{FieldAdvice, OfGround, Readiness, Stance, Sureness, TipDepth, What, Why, ZoneCall};
use super::pit_view::{Limiting, PitView, TELLING};
use super::regret::{DIG_AGAIN, LAYER_CALLS, least, least_doing, share_right};
use super::tip::{CLEARED_SHARE, tip_depth};
use super::{belongs, gates, sureness, water};
use crate::place::FieldMap;
use crate::reading::{Clue, FieldReading, Kind, LayerReading, is_readable, leading_rivals};
use crate::record::{
    Call, ChannelsSeen, Condition, FaceMoisture, Field, FieldNotes, Machine, Pass, Pit, PlaceKind, RootsSeen,
    Zone,
};
use chrono::NaiveDate;

/// What all zones of a field share.
#[derive(Debug)]
pub struct Ground<'a> {
    /// The field.
    pub field: &'a Field,
    /// Its pits in the order of the notes, by which they are numbered.
    pub(super) pits: &'a [Pit],
    /// It laid out.
    pub map: &'a FieldMap,
    /// The machines noted for it.
    pub machines: &'a [Machine],
    /// The passes over it.
    pub passes: &'a [Pass],
    /// The day the calls are for.
    pub today: Option<NaiveDate>,
    /// Depth down to which each readable reference pit was read.
    pub(super) references_mm: Vec<u32>,
}

impl<'a> Ground<'a> {
    /// From a field's notes and their reading.
    pub fn of(
        notes: &'a FieldNotes,
        reading: &FieldReading,
        map: &'a FieldMap,
        today: Option<NaiveDate>,
    ) -> Self {
        let references_mm = notes
            .pits
            .iter()
            .zip(&reading.pits)
            .filter(|(pit, _)| pit.place == PlaceKind::Reference && is_readable(pit))
            .filter_map(|(_, read)| read.layers.last().map(|layer| layer.bottom_mm))
            .collect();
        let FieldNotes { field, pits, machines, passes, .. } = notes;
        Self { field, pits, map, machines, passes, today, references_mm }
    }

    /// Number of a pit as it is told, from 1.
    fn number_of(&self, pit: &Pit) -> usize {
        self.pits.iter().position(|own| own.id == pit.id).map_or(0, |index| index + 1)
    }

    /// Returns whether a readable reference pit shows the soil below this depth.
    pub fn has_reference_below(&self, depth_mm: u32) -> bool {
        self.references_mm.iter().any(|&read_to_mm| read_to_mm > depth_mm)
    }
}

/// What the pits of a zone say of its structure, before the gates of the field.
struct Structure<'v, 'a> {
    call: Call,
    /// What made it so, where that is more than the layers.
    whys: Vec<Why>,
    judged: Vec<Judged<'v, 'a>>,
    /// Pit that stands for the call: of those with this call the one worst to leave.
    deciding: Option<Judged<'v, 'a>>,
}

#[derive(Clone, Copy)]
struct Judged<'v, 'a> {
    view: &'v PitView<'a>,
    limiting: &'v Limiting,
    layer: &'a LayerReading,
}

const fn carries(what: What) -> Why {
    Why { stance: Stance::For, what }
}

/// The call of a zone from its pits; alike twins are already counted once.
pub fn judge(zone: Zone, views: &[&PitView], twins: usize, ground: &Ground) -> ZoneCall {
    let mut structure = structure(views);
    let Verdict { mut call, readiness, tip, cloddy, mut whys } = verdict(zone, &mut structure, views, ground);
    let carried = call == Call::DigAgain && structure.judged.is_empty();
    let told = barred(views).into_iter().filter(|what| !whys.iter().any(|why| why.what == *what));
    let told: Vec<What> = told.collect();
    whys.extend(
        told.into_iter().map(|what| Why { stance: if carried { Stance::For } else { Stance::Note }, what }),
    );
    if views.is_empty() {
        whys.push(carries(What::NoPits));
    }
    if twins > 0 {
        whys.push(Why { stance: Stance::Note, what: What::TwinsCountedOnce { twins } });
    }
    let water = whys.iter().find(|why| matches!(why.what, What::WaterStands { .. }));
    let share = water.map_or_else(|| structure.share(), |why| sureness::of_water(&why.what));
    // What is less than likely is not acted on: then the question that would settle it is the answer. To ask about what
    // lies buried, or what steel cannot mend, needs no more sureness.
    let acts = !matches!(call, Call::DigAgain | Call::AskSpecialist);
    if acts && sureness::in_a_word(share) == Sureness::CannotSay {
        whys.insert(0, carries(structure.question(call, ground.field)));
        call = Call::DigAgain;
    }
    let harmed = structure.deciding.filter(|_| call != Call::LeaveIt).map(|deciding| deciding.layer);
    let deepest_mm = views.iter().map(|view| view.reading.dug_to_mm).max().unwrap_or(0);
    let tip = tip.filter(|_| matches!(call, Call::Loosen | Call::Wait));
    let stands = belongs::Stands { call, deepest_mm, cloddy, harmed, tip, whys: &whys };
    ZoneCall {
        zone,
        call,
        readiness: if call == Call::Loosen { readiness } else { Readiness::Fit },
        share,
        sure: if call == Call::DigAgain { Sureness::CannotSay } else { sureness::in_a_word(share) },
        ground: structure.ground(),
        tip,
        pits: views.len(),
        cautions: belongs::cautions(&stands, ground.field, ground.today),
        follow_up: belongs::follow_up(call, &whys, harmed, ground.field),
        rooting_loss: harmed.and_then(|layer| belongs::rooting_loss(ground.field, layer)),
        reasons: whys,
    }
}

/// A structure's call sent through the gates.
struct Verdict {
    call: Call,
    readiness: Readiness,
    tip: Option<TipDepth>,
    cloddy: bool,
    whys: Vec<Why>,
}

/// The gates from the reference on; what bars a single pit was looked at before.
fn verdict(zone: Zone, structure: &mut Structure, views: &[&PitView], ground: &Ground) -> Verdict {
    let whys = std::mem::take(&mut structure.whys);
    let mut verdict =
        Verdict { call: structure.call, readiness: Readiness::Fit, tip: None, cloddy: false, whys };
    if let Some(what) = water_stands(views) {
        verdict.call = Call::DrainFirst;
        verdict.whys = std::iter::once(carries(what)).chain(structure.layers(ground)).collect();
        return verdict;
    }
    let Some(Judged { layer, limiting, .. }) = structure.deciding else { return verdict };
    let (top_mm, bottom_mm) = (layer.top_mm, layer.bottom_mm);
    // What is dense by nature is told from what was pressed by the reference alone.
    let needs_reference = matches!(structure.call, Call::RootsFirst | Call::Loosen | Call::DigAgain)
        || limiting.rests_on_nature;
    if needs_reference && !ground.has_reference_below(top_mm) {
        verdict.call = Call::DigAgain;
        verdict.whys.push(carries(What::NoReference));
    }
    match verdict.call {
        Call::Loosen => {
            let Some(depth) = harmed_depth(views) else {
                verdict.call = Call::DigAgain;
                verdict.whys.extend(structure.deciding.map(|deciding| carries(deciding.unclear())));
                return verdict;
            };
            {
                let gated = gates::pass(ground, zone, views, layer, depth);
                verdict = Verdict {
                    call: gated.call,
                    readiness: gated.readiness,
                    tip: Some(gated.tip),
                    cloddy: gated.cloddy,
                    whys: gated.whys,
                };
                if gated.call == Call::Loosen && structure.stands_on_a_wet_face() {
                    verdict.call = Call::Wait;
                    verdict.whys.insert(0, carries(What::FaceWet));
                }
            }
        }
        Call::RootsFirst => {
            verdict.whys.extend(limiting.no_steel.clone().map(carries));
            verdict.whys.extend(roots_pass(layer).map(carries));
        }
        Call::AskSpecialist => verdict.whys.push(carries(What::Cemented { top_mm, bottom_mm })),
        Call::LeaveIt => verdict.whys.push(carries(What::NothingHarmed)),
        Call::DigAgain | Call::Wait | Call::DrainFirst => {}
    }
    // Where no gate decides, the layers do.
    let gate_decides = verdict.call != Call::Loosen && !verdict.whys.is_empty();
    let at = usize::from(gate_decides);
    verdict.whys.splice(at..at, structure.layers(ground));
    let hangs = limiting.hangs_on_mm.map(|limit_mm| What::HangsOnBottom { bottom_mm, limit_mm });
    verdict.whys.extend(hangs.map(|what| Why { stance: Stance::Note, what }));
    let held_up = water::held_up(structure.deciding.map_or(views[0], |one| one.view).reading, layer);
    if layer.condition >= Condition::Tight {
        verdict.whys.extend(held_up.map(|what| Why { stance: Stance::Note, what }));
    }
    verdict
}

/// Water that stands through the profile in more than a third of the pits, as the first of them shows it.
fn water_stands(views: &[&PitView]) -> Option<What> {
    let wet: Vec<&What> = views.iter().filter_map(|view| view.water.as_ref()).collect();
    wet.first().filter(|_| wet.len() * 3 > views.len()).map(|what| (*what).clone())
}

/// The call of the whole field: of open ground, and to loosen or leave it all only where every zone says so.
pub fn whole(zones: &[ZoneCall], views: &[&PitView], twins: usize, ground: &Ground) -> ZoneCall {
    let loosen: Vec<Zone> =
        zones.iter().filter(|zone| zone.call == Call::Loosen).map(|zone| zone.zone).collect();
    let all = |call: Call| !zones.is_empty() && zones.iter().all(|zone| zone.call == call);
    let open = zones.iter().find(|zone| zone.zone == Zone::Open);
    let differ = !loosen.is_empty() && loosen.len() < zones.len();
    let mut whole = if !ground.has_reference_below(0) || (open.is_none() && !all(Call::LeaveIt)) {
        let missing = if ground.has_reference_below(0) { What::NoPits } else { What::NoReference };
        let mut whole = judge(Zone::Whole, &[], 0, ground);
        whole.reasons = vec![carries(missing)];
        whole
    } else if let Some(open) = open.filter(|_| !all(Call::Loosen) && !all(Call::LeaveIt)) {
        ZoneCall { zone: Zone::Whole, ..open.clone() }
    } else {
        judge(Zone::Whole, views, twins, ground)
    };
    whole.pits = views.len();
    if differ {
        whole.reasons.insert(0, Why { stance: Stance::Note, what: What::ZonesDiffer { loosen } });
    }
    whole
}

/// The reasons of the whole with what is said of zones that differ as their calls now stand.
pub fn telling_zones_apart(advice: &FieldAdvice) -> Vec<Why> {
    let FieldAdvice { zones, whole } = advice;
    let loosen: Vec<Zone> =
        zones.iter().filter(|zone| zone.call == Call::Loosen).map(|zone| zone.zone).collect();
    let differ = !loosen.is_empty() && loosen.len() < zones.len();
    let told = differ.then_some(Why { stance: Stance::Note, what: What::ZonesDiffer { loosen } });
    let others = whole.reasons.iter().filter(|why| !matches!(why.what, What::ZonesDiffer { .. }));
    told.into_iter().chain(others.cloned()).collect()
}

/// Least expected regret over the pits of a zone, each with the same weight, among the calls that do something. It
/// stands where two thirds of the pits say the same, each by what it would be best to do on what was seen in it, and
/// where digging again would not cost less; else the call is to dig again. Pits whose signs clash are counted as saying
/// nothing.
fn structure<'v, 'a>(views: &[&'v PitView<'a>]) -> Structure<'v, 'a> {
    let judged: Vec<Judged> = views
        .iter()
        .filter_map(|&view| view.judged().map(|(limiting, layer)| Judged { view, limiting, layer }))
        .collect();
    if judged.is_empty() {
        return Structure { call: Call::DigAgain, whys: Vec::new(), judged, deciding: None };
    }
    let means: [f64; LAYER_CALLS.len()] =
        std::array::from_fn(|call| mean(judged.iter().map(|pit| pit.limiting.expected[call])));
    let leading = LAYER_CALLS[least_doing(&means)];
    let of = judged.len() + without_a_word(views);
    let count = |says: &dyn Fn(&Judged) -> bool| judged.iter().filter(|pit| says(pit)).count();
    let saying = |call: Call| count(&|pit| alike(pit.limiting.call, call));
    let doing = count(&|pit| alike(pit.limiting.doing(), leading));
    let worth_it = least(&means) != DIG_AGAIN || saying(leading) * 3 >= of * 2;
    let agreed = worth_it && doing * 3 >= of * 2;
    let call = if agreed { leading } else { Call::DigAgain };
    let worst_of = |among: &dyn Fn(Call) -> bool| {
        judged.iter().filter(|pit| among(pit.limiting.call)).max_by(|a, b| a.worst(b)).copied()
    };
    let deciding = worst_of(&|its| its == call)
        .or_else(|| worst_of(&|its| alike(its, call)))
        .or_else(|| worst_of(&|_| true));
    let mut whys = Vec::new();
    if !agreed {
        let says_nothing =
            |view: &&&PitView| view.clashes() || view.barred.as_ref().is_some_and(is_differing);
        let clashing = views.iter().find(says_nothing).filter(|_| doing * 3 >= judged.len() * 2);
        let what = match (clashing.and_then(|view| view.barred.clone()), deciding) {
            (Some(clash), _) => clash,
            (None, Some(deciding)) if saying(Call::DigAgain) * 2 >= of => deciding.unclear(),
            _ => {
                let agree = LAYER_CALLS.iter().map(|&call| saying(call)).max().unwrap_or(0);
                What::PitsDisagree { agree, of }
            }
        };
        whys.push(carries(what));
    }
    Structure { call, whys, judged, deciding }
}

/// Pits and holes that say nothing, though they were read: pits whose signs clash, and holes whose readers differ.
fn without_a_word(views: &[&PitView]) -> usize {
    let mut holes: Vec<&What> = Vec::new();
    let differing = views.iter().filter_map(|view| view.barred.as_ref()).filter(|what| is_differing(what));
    for what in differing {
        if !holes.contains(&what) {
            holes.push(what);
        }
    }
    holes.len() + views.iter().filter(|view| view.clashes()).count()
}

const fn is_differing(what: &What) -> bool {
    matches!(what, What::ReadersDiffer { .. })
}

/// Calls that do not contradict each other: to leave it and to let roots do it both keep steel out.
pub(super) fn alike(one: Call, other: Call) -> bool {
    let gentle = |call| matches!(call, Call::LeaveIt | Call::RootsFirst);
    one == other || (gentle(one) && gentle(other))
}

/// Mean that does not depend on the order of what it is taken over.
fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let mut values: Vec<f64> = values.collect();
    crate::order::sort_numbers(&mut values);
    values.iter().sum::<f64>() / values.len() as f64
}

impl Judged<'_, '_> {
    /// Why its layer gives no call: roots that must tell, signs not looked at, or two kinds that fit alike.
    fn unclear(&self) -> What {
        let LayerReading { top_mm, bottom_mm, ref evidence, ref shares, .. } = *self.layer;
        let missing: Vec<Clue> =
            TELLING.iter().copied().filter(|&clue| evidence.get(clue).is_none()).collect();
        if self.limiting.needs_roots {
            What::RootsNeeded { top_mm, bottom_mm }
        } else if missing.is_empty() {
            let [one, other] = leading_rivals(shares, self.limiting.table());
            What::KindsOpen { top_mm, bottom_mm, one, other }
        } else {
            What::SignsTooFew { top_mm, bottom_mm, missing }
        }
    }

    /// Order by what leaving the deciding layer would cost; ties by depth, then by who came first.
    fn worst(&self, other: &Self) -> std::cmp::Ordering {
        let key = |pit: &Self| (pit.layer.bottom_mm, pit.layer.top_mm);
        self.limiting.expected[0]
            .total_cmp(&other.limiting.expected[0])
            .then_with(|| key(self).cmp(&key(other)))
            .then_with(|| other.view.pit.id.cmp(&self.view.pit.id))
    }
}

impl Structure<'_, '_> {
    /// Chance that the structure's call is right or can be defended: from the mean over the deciding layers of the share
    /// of the kinds it is so for. Of no call, the chance of the best one.
    fn share(&self) -> f64 {
        if self.judged.is_empty() {
            return 0.0;
        }
        let of = |call: Call| {
            mean(self.judged.iter().map(|pit| share_right(pit.limiting.table(), call, &pit.layer.shares)))
        };
        sureness::calibrated(match self.call {
            Call::DigAgain => LAYER_CALLS.iter().map(|&call| of(call)).fold(0.0, f64::max),
            call => of(call),
        })
    }

    /// A call that is less than likely, with the look that would settle it in the deciding pit.
    fn question(&self, call: Call, field: &Field) -> What {
        let look = self.deciding.and_then(|one| super::next_look_in(one.view.reading, field, |_, _| false));
        let (top_mm, bottom_mm) = look.map_or((0, 0), |look| (look.top_mm, look.bottom_mm));
        What::NotSure { call, top_mm, bottom_mm, clue: look.map(|look| look.clue) }
    }

    /// How far the judged pits speak for the zone: those that say the same; where there is no call, the most that do.
    fn ground(&self) -> OfGround {
        let saying = |call: Call| self.judged.iter().filter(|pit| alike(pit.limiting.doing(), call)).count();
        let agree = match self.call {
            Call::DigAgain => LAYER_CALLS.iter().map(|&call| saying(call)).max().unwrap_or(0),
            call => saying(call),
        };
        sureness::of_ground(self.judged.len(), agree)
    }

    /// Returns whether a pit that carries the call was read in a wet face.
    fn stands_on_a_wet_face(&self) -> bool {
        let carrying = self.judged.iter().filter(|pit| pit.limiting.call == self.call);
        carrying.into_iter().any(|pit| pit.view.pit.face == Some(FaceMoisture::Wet))
    }

    /// The deciding layer, and the worst one of the pits that say otherwise.
    fn layers(&self, ground: &Ground) -> Vec<Why> {
        let told = |pit: &Judged, stance| {
            let LayerReading { top_mm, bottom_mm, condition, cause, share, .. } = *pit.layer;
            let kind = Kind { condition, cause };
            let reasons = pit.layer.reasons.clone();
            let pit = ground.number_of(pit.view.pit);
            Why { stance, what: What::Layer { pit, top_mm, bottom_mm, kind, share, reasons } }
        };
        let differs = |pit: &&Judged| {
            self.deciding.is_some_and(|one| !alike(one.limiting.doing(), pit.limiting.doing()))
        };
        let against = self.judged.iter().filter(differs).max_by(|a, b| a.worst(b));
        let deciding = self.deciding.iter().map(|pit| told(pit, Stance::For));
        deciding.chain(against.map(|pit| told(pit, Stance::Against))).collect()
    }
}

/// Tip depth over the harmed layers of a zone's pits.
fn harmed_depth(views: &[&PitView]) -> Option<TipDepth> {
    let bottoms_mm: Vec<u32> = views.iter().filter_map(|view| view.harmed_bottom_mm()).collect();
    tip_depth(&bottoms_mm, CLEARED_SHARE)
}

/// Roots or worms that still pass through a layer.
fn roots_pass(layer: &LayerReading) -> Option<What> {
    let roots = matches!(layer.signs.roots, Some(RootsSeen::Through | RootsSeen::InCracks));
    let worms = matches!(layer.signs.channels, Some(ChannelsSeen::Many | ChannelsSeen::Some));
    let (top_mm, bottom_mm) = (layer.top_mm, layer.bottom_mm);
    (roots || worms).then_some(What::RootsPass { top_mm, bottom_mm, roots, worms })
}

/// Why pits were not judged: one reason of each sort, the shallowest case of it, in the order of the gates.
fn barred(views: &[&PitView]) -> Vec<What> {
    let sort = |what: &What| match *what {
        What::FaceUnreadable { face } => (0, face as u32, 0),
        What::TooShallow { dug_to_mm, need_mm } => (1, dug_to_mm, need_mm),
        What::SignsTooFew { top_mm, bottom_mm, .. } => (2, top_mm, bottom_mm),
        What::SignsClash { top_mm, bottom_mm, .. } => (3, top_mm, bottom_mm),
        What::ReadersDiffer { top_mm, bottom_mm, .. } => (4, top_mm, bottom_mm),
        _ => (5, 0, 0),
    };
    let mut all: Vec<What> = views.iter().filter_map(|view| view.barred.clone()).collect();
    crate::order::sort_by_key(&mut all, sort);
    all.dedup_by_key(|what| sort(what).0);
    all
}
