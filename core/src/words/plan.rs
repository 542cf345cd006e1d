//! The plan of a field: its words, what it shows to whoever does not see it, and the way to walk.

use super::{Listed, Words, capital};
use crate::advice::ZoneCall;
use crate::picture::plan::{Lie, PlanKeyLine, PlanMark, PlanPicture, PlanPit, PlanWords, Spot};
use crate::place::{Compass, Walk};
use crate::record::{Buried, Condition, PlaceKind, Zone};
use crate::units::Quantity;
use fluent::{FluentArgs, fluent_args};

/// What is told of a field beside what its plan draws.
#[derive(Debug, Clone, Copy)]
pub struct PlanTold<'a> {
    /// What the farm calls the field.
    pub field: &'a str,
    /// Its area, hectares.
    pub hectares: Option<f64>,
    /// Its zones, in the order they are told in.
    pub zones: &'a [ZoneTold<'a>],
    /// From a pit, by its number, to the next place to dig.
    pub next_from: Option<(&'a str, Walk)>,
}

/// A zone of a field as told on its plan.
#[derive(Debug, Clone, Copy)]
pub struct ZoneTold<'a> {
    /// The zone.
    pub zone: Zone,
    /// Its area, hectares.
    pub hectares: Option<f64>,
    /// Its call.
    pub call: Option<&'a ZoneCall>,
}

/// One yard in metres, exact by definition (international yard and pound agreement, 1959).
const YARD_M: f64 = 0.9144;
/// Nearer than this nobody is sent any farther: positions are no better. Our judgement.
const THERE_M: f64 = 2.0;
/// The same in every language we have.
const NORTH: &str = "N";

impl Words {
    /// Name of the plan: `Plan of Long Sedge`.
    pub fn plan_title(&self, field: &str) -> String {
        self.say_with("plan-title", &fluent_args!["field" => field])
    }

    /// A bearing, degrees clockwise from north, as a point of the compass: `north-east`.
    pub fn compass(&self, bearing_deg: f64) -> String {
        self.of(Compass::of(bearing_deg))
    }

    /// A distance over the ground as it can be paced: `140 m`, `150 yd`.
    pub fn distance(&self, metres: f64) -> String {
        let (unit, metres_each) = self.pace();
        let number = metres / metres_each;
        let step = match number {
            100.0.. => 10.0,
            20.0.. => 5.0,
            _ => 1.0,
        };
        let number = ((number / step).round() * step).to_string();
        self.say_with("measure-length", &fluent_args!["number" => number, "unit" => unit])
    }

    /// Distance and direction: `140 m to the north-east`.
    pub fn walk(&self, walk: Walk) -> String {
        let way = self.form(Compass::of(walk.bearing_deg), "to");
        let args = fluent_args!["distance" => self.distance(walk.distance_m), "way" => way];
        self.say_with("walk-way", &args)
    }

    /// Where to go: `Walk 140 m to the north-east.`
    pub fn walk_to(&self, walk: Walk) -> String {
        if walk.distance_m < THERE_M {
            return self.say("walk-here");
        }
        let way = self.form(Compass::of(walk.bearing_deg), "to");
        let args = fluent_args!["distance" => self.distance(walk.distance_m), "way" => way];
        self.say_with("walk-to", &args)
    }

    /// Label of a gateway or patch on the plan: its name or else its zone, with its short call.
    pub fn plan_part(&self, zone: Zone, name: Option<&str>, call: Option<&ZoneCall>) -> String {
        let zone = name.map_or_else(|| self.label(zone), str::to_owned);
        match call {
            Some(call) => {
                let args = fluent_args!["zone" => zone, "call" => self.label(call.call)];
                self.say_with("plan-named", &args)
            }
            None => zone,
        }
    }

    /// All words of a plan; those the picture has so far are not looked at.
    pub fn plan_words(&self, picture: &PlanPicture, told: &PlanTold) -> PlanWords {
        let (unit, metres) = self.pace();
        let drawn = |zone: &&ZoneTold| !matches!(zone.zone, Zone::Gateway | Zone::Patch);
        let zones = told.zones.iter().filter(drawn);
        PlanWords {
            north: NORTH.to_owned(),
            unit: (unit.to_owned(), metres),
            next: self.say("plan-next_word"),
            letters: Buried::ALL.iter().map(|&kind| (kind, self.letter(kind))).collect(),
            zones: zones.filter_map(|zone| Some((zone.zone, self.label(zone.call?.call)))).collect(),
            notes: self.plan_notes(picture),
            key: self.plan_key(picture, told),
        }
    }

    fn plan_notes(&self, picture: &PlanPicture) -> Vec<String> {
        let listed = |names: Vec<&str>| self.comma(&names.into_iter().map(str::to_owned).collect::<Vec<_>>());
        let (pits, digs) = (listed(picture.pits_left_out()), listed(picture.after_digs_left_out()));
        let pits = (!pits.is_empty()).then(|| self.say_with("plan-pits_off", &fluent_args!["pits" => pits]));
        let digs =
            (!digs.is_empty()).then(|| self.say_with("plan-after_digs_off", &fluent_args!["digs" => digs]));
        pits.into_iter().chain(digs).collect()
    }

    /// The key of a plan: what is drawn on it, ground first.
    pub fn plan_key(&self, picture: &PlanPicture, told: &PlanTold) -> Vec<PlanKeyLine> {
        let line = |mark, text| PlanKeyLine { mark, text };
        let zone = |zone: Zone| told.zones.iter().find(|told| told.zone == zone);
        let mut key = Vec::new();
        let inside = zone(Zone::Open).or_else(|| zone(Zone::Whole));
        key.extend(
            inside
                .filter(|_| picture.outline.len() > 2)
                .map(|zone| line(PlanMark::Ground, self.zone_line(zone))),
        );
        if !picture.headland.is_empty() {
            let text =
                zone(Zone::Headland).map_or_else(|| self.label(Zone::Headland), |zone| self.zone_line(zone));
            key.push(line(PlanMark::Headland, text));
        }
        if !picture.tramlines.is_empty() {
            let wheelings = zone(Zone::Wheelings).map(|zone| self.zone_line(zone));
            key.push(line(PlanMark::Tramline, wheelings.unwrap_or_else(|| self.say("plan-tramline"))));
        }
        for (part, mark) in [(Zone::Gateway, PlanMark::Gateway), (Zone::Patch, PlanMark::Patch)] {
            let mut told: Vec<String> = Vec::new();
            for drawn in picture.parts.iter().filter(|drawn| drawn.zone == part) {
                let text = if drawn.label.is_empty() { self.label(part) } else { drawn.label.clone() };
                if !told.contains(&text) {
                    told.push(text);
                }
            }
            key.extend(told.into_iter().map(|text| line(mark, text)));
        }
        let kinds = [PlanMark::Drain, PlanMark::MoleDrain, PlanMark::Service];
        for (&kind, mark) in Buried::ALL.iter().zip(kinds) {
            if picture.buried.iter().any(|line| line.kind == kind) {
                let args = fluent_args!["kind" => self.label(kind), "letter" => self.letter(kind)];
                key.push(line(mark, self.say_with("plan-lettered", &args)));
            }
        }
        key.extend(self.pits_key(picture));
        let drawn = picture.after_digs.iter().any(|dig| picture.shown(dig.at).is_some());
        key.extend(drawn.then(|| line(PlanMark::AfterDig, self.say("plan-after_digs"))));
        let drawn = picture.shown(picture.next).is_some();
        key.extend(drawn.then(|| line(PlanMark::Next, self.say("plan-next_here"))));
        key
    }

    fn pits_key(&self, picture: &PlanPicture) -> Vec<PlanKeyLine> {
        let pits: Vec<&PlanPit> = picture.pits.iter().filter(|pit| picture.shown(pit.at).is_some()).collect();
        let mut key = Vec::new();
        let mut add = |mark, text, drawn: bool| {
            key.extend(drawn.then_some(PlanKeyLine { mark, text }));
        };
        add(PlanMark::Note, self.say("plan-pits"), !pits.is_empty());
        let marks = [PlanMark::Open, PlanMark::Firm, PlanMark::Tight, PlanMark::Shut];
        for (&condition, mark) in Condition::ALL.iter().zip(marks) {
            add(mark, self.label(condition), pits.iter().any(|pit| pit.condition == Some(condition)));
        }
        let not_judged = capital(self.say("plan-not_judged"));
        add(PlanMark::NotJudged, not_judged, pits.iter().any(|pit| pit.condition.is_none()));
        let reference = pits.iter().any(|pit| pit.place == PlaceKind::Reference);
        add(PlanMark::Reference, self.say("plan-reference"), reference);
        key
    }

    /// Zones with a call whose ground is not on the plan, in a line; `None` where there is none.
    pub fn zones_off(&self, calls: &[&ZoneCall]) -> Option<String> {
        let told = |call: &&ZoneCall| {
            self.zone_line(&ZoneTold { zone: call.zone, hectares: None, call: Some(call) })
        };
        let zones = self.comma(&calls.iter().map(told).collect::<Vec<_>>());
        (!calls.is_empty()).then(|| self.say_with("plan-zones_off", &fluent_args!["zones" => zones]))
    }

    /// `Headland: Loosen 33–35 cm`; the zone alone where it has no call.
    fn zone_line(&self, told: &ZoneTold) -> String {
        let zone = self.label(told.zone);
        match told.call {
            Some(call) => {
                let args = fluent_args!["zone" => zone, "call" => self.call_line(call)];
                self.say_with("plan-named", &args)
            }
            None => zone,
        }
    }

    /// The plan, to be spoken by a screen reader: field, zones with their calls, parts, pits, what lies buried, where to
    /// dig next.
    pub fn describe_plan(&self, picture: &PlanPicture, told: &PlanTold) -> String {
        let mut head = fluent_args!["field" => told.field];
        let id = if told.hectares.is_some() { "plan-described_area" } else { "plan-described" };
        if let Some(hectares) = told.hectares {
            head.set("area", self.amount(Quantity::Ground, hectares));
        }
        let mut said = vec![self.say_with(id, &head)];
        said.extend((picture.outline.len() < 3).then(|| self.say("plan-no_outline")));
        said.extend(told.zones.iter().map(|zone| self.describe_zone(zone)));
        let headland =
            !picture.headland.is_empty() && !told.zones.iter().any(|zone| zone.zone == Zone::Headland);
        let headland = headland.then_some(ZoneTold { zone: Zone::Headland, hectares: None, call: None });
        said.extend(headland.map(|zone| self.describe_zone(&zone)));
        let tramlines = picture.tramlines.len();
        said.extend(
            (tramlines > 0).then(|| self.say_with("plan-tramlines", &fluent_args!["count" => tramlines])),
        );
        said.extend(self.describe_parts(picture));
        said.extend(picture.pits.iter().map(|pit| self.describe_pit(picture, pit)));
        for dig in &picture.after_digs {
            let mut args = fluent_args!["label" => dig.label.as_str()];
            let id = self.set_lie(picture, dig.at, &mut args, ["plan-after_dig", "plan-after_dig_off"]);
            said.push(self.say_with(id, &args));
        }
        said.extend(self.describe_buried(picture));
        said.extend(picture.next.map(|next| self.describe_next(picture, next, told)));
        said.join(" ")
    }

    fn describe_zone(&self, told: &ZoneTold) -> String {
        let mut args = fluent_args!["zone" => self.label(told.zone)];
        if let Some(call) = told.call {
            args.set("call", self.call_line(call));
        }
        if let Some(hectares) = told.hectares {
            args.set("area", self.amount(Quantity::Ground, hectares));
        }
        let id = match (told.call, told.hectares) {
            (Some(_), Some(_)) => "plan-zone_area",
            (Some(_), None) => "plan-zone",
            (None, Some(_)) => "plan-ground_area",
            (None, None) => "plan-ground",
        };
        self.say_with(id, &args)
    }

    fn describe_parts(&self, picture: &PlanPicture) -> Vec<String> {
        let parts = picture.parts.iter().filter(|part| !part.ring.is_empty());
        parts
            .map(|part| {
                let (zone, label) = (self.label(part.zone), part.label.as_str());
                let lie = self.lie(picture, middle(&part.ring), "in");
                // A label that begins with the zone says it already.
                let id = if label.starts_with(&zone) { "plan-part" } else { "plan-part_named" };
                let label = if label.is_empty() { &zone } else { label };
                let id = if *label == zone { "plan-part" } else { id };
                let args = fluent_args!["lie" => lie, "label" => label.to_owned(), "zone" => zone.clone()];
                self.say_with(id, &args)
            })
            .collect()
    }

    fn describe_pit(&self, picture: &PlanPicture, pit: &PlanPit) -> String {
        let condition =
            pit.condition.map_or_else(|| self.say("plan-not_judged"), |condition| self.of(condition));
        let mut args = fluent_args![
            "number" => pit.number.as_str(),
            "place" => self.place_after_number(pit.place),
            "condition" => condition,
        ];
        let id = self.set_lie(picture, pit.at, &mut args, ["plan-pit", "plan-pit_off"]);
        self.say_with(id, &args)
    }

    /// Fills in where a thing lies; gives the id for one that is on the plan or for one that is not.
    fn set_lie(
        &self,
        picture: &PlanPicture,
        at: Option<Spot>,
        args: &mut FluentArgs,
        [on, off]: [&'static str; 2],
    ) -> &'static str {
        let Some(at) = picture.shown(at) else { return off };
        args.set("lie", self.lie(picture, at, "in"));
        on
    }

    /// Lines of a kind that run alike are told together.
    fn describe_buried(&self, picture: &PlanPicture) -> Option<String> {
        let mut alike: Vec<(Buried, [Spot; 2], usize)> = Vec::new();
        for line in &picture.buried {
            let (Some(&from), Some(&to)) = (line.along.first(), line.along.last()) else { continue };
            let run = |ends: [Spot; 2]| ends.map(|end| picture.lie(end));
            let same = |other: &&mut (Buried, [Spot; 2], usize)| {
                other.0 == line.kind && run(other.1) == run([from, to])
            };
            match alike.iter_mut().find(same) {
                Some((.., count)) => *count += 1,
                None => alike.push((line.kind, [from, to], 1)),
            }
        }
        let told = alike.into_iter().map(|(kind, [from, to], count)| {
            let kind = self.say_with(&format!("{}.count", kind.id()), &fluent_args!["count" => count]);
            let args = fluent_args![
                "kind" => kind,
                "from" => self.lie(picture, from, "from"),
                "to" => self.lie(picture, to, "to"),
                "lie" => self.lie(picture, from, "in"),
            ];
            let same = picture.lie(from) == picture.lie(to);
            self.say_with(if same { "plan-buried_spot" } else { "plan-buried_line" }, &args)
        });
        let lines: Vec<String> = told.collect();
        let args = fluent_args!["lines" => self.comma(&lines)];
        (!lines.is_empty()).then(|| self.say_with("plan-buried", &args))
    }

    fn describe_next(&self, picture: &PlanPicture, next: Spot, told: &PlanTold) -> String {
        let mut args = fluent_args!["lie" => self.lie(picture, next, "in")];
        let Some((number, walk)) = told.next_from else { return self.say_with("plan-next", &args) };
        args.set("number", number.to_owned());
        args.set("distance", self.distance(walk.distance_m));
        args.set("way", self.form(Compass::of(walk.bearing_deg), "of"));
        self.say_with("plan-next_from", &args)
    }

    /// Where in the field a place lies, in the form a sentence takes it: `in`, `from`, `to`.
    fn lie(&self, picture: &PlanPicture, at: Spot, form: &str) -> String {
        match (picture.lie(at), form) {
            (Lie::Towards(compass), _) => self.form(compass, form),
            (Lie::Middle, "from") => self.say("plan-from_middle"),
            (Lie::Middle, "to") => self.say("plan-to_middle"),
            (Lie::Middle, _) => self.say("plan-in_middle"),
        }
    }

    /// Where in the field one stands; nothing where the plan does not show it.
    pub fn you_stand(&self, picture: &PlanPicture) -> Option<String> {
        let at = picture.shown(picture.own)?;
        let args = fluent_args!["lie" => self.lie(picture, at, "in")];
        Some(self.say_with("plan-you_stand", &args))
    }

    /// The letter that stands on lines of a kind.
    fn letter(&self, kind: Buried) -> String {
        self.label(kind).chars().take(1).collect()
    }

    /// The unit distances are paced in, and its length in metres. International symbols; the same in every language.
    const fn pace(&self) -> (&'static str, f64) {
        match self.unit {
            crate::units::LengthUnit::Centimetres => ("m", 1.0),
            crate::units::LengthUnit::Inches => ("yd", YARD_M),
        }
    }
}

/// The middle of places.
fn middle(spots: &[Spot]) -> Spot {
    let count = spots.len().max(1) as f64;
    [0, 1].map(|axis| spots.iter().map(|spot| spot[axis]).sum::<f64>() / count)
}
