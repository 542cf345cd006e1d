//! What stands on the screens of a machine at work: how it is set, what a pass came to, what is asked of the hole behind.

use super::{Words, capital};
use crate::advice::after_dig::{DigAdvice, PassAdvice};
use crate::advice::machine::{Setting, WhyNot};
use crate::record::codes::codes;
use crate::record::{Machine, Zone};
use crate::units::LengthUnit;
use fluent::fluent_args;

codes!(
    /// A fixed text of these screens: a question, the name of a row, a label of a tool.
    WorkText {
        // What is asked of the hole.
        FirmQuestion = "firm_question",
        SlotQuestion = "slot_question",
        FormQuestion = "form_question",
        SmearQuestion = "smear_question",
        ClodsQuestion = "clods_question",
        PlatesQuestion = "plates_question",
        SubsoilQuestion = "subsoil_question",
        LiftQuestion = "lift_question",
        OldQuestion = "old_question",
        FeetQuestion = "feet_question",
        RootsQuestion = "roots_question",
        // The same as rows.
        Readings = "readings",
        Slots = "slots",
        Seen = "seen",
        Form = "form",
        Smear = "smear",
        Clods = "clods",
        Plates = "plates",
        Subsoil = "subsoil",
        Lift = "lift",
        Old = "old",
        Feet = "feet",
        Roots = "roots",
        MendWhich = "mend_which",
        SeenWhat = "seen_what",
        OneMore = "one_more",
        // Tools and next steps.
        NotLooked = "not_looked",
        NotRead = "not_read",
        Enough = "enough",
        LessDeep = "less_deep",
        Deeper = "deeper",
        Smaller = "smaller",
        Larger = "larger",
        ReadOn = "read_on",
        ToPass = "to_pass",
        SayMachine = "say_machine",
        SayTip = "say_tip",
        RollNow = "roll_now",
        TimeRun = "time_run",
        MeasureSlots = "measure_slots",
        LookWalls = "look_walls",
        LookFeet = "look_feet",
        LookOld = "look_old",
        SetAnew = "set_anew",
        WorkZone = "work_zone",
        RanToday = "ran_today",
        NotePass = "note_pass",
        SayTexture = "say_texture",
        Done = "done",
        // A pass.
        NewPassAnswer = "new_pass_answer",
        NewPassLine = "new_pass_line",
        PassesAnswer = "passes_answer",
        TipQuestion = "tip_question",
        SpeedQuestion = "speed_question",
        RollQuestion = "roll_question",
        PassMachine = "pass_machine",
        PassGround = "pass_ground",
        TipDepth = "tip_depth",
        PassDay = "pass_day",
        PassWheels = "pass_wheels",
        PassRoll = "pass_roll",
        // A machine.
        MachinesAnswer = "machines_answer",
        NoMachineAnswer = "no_machine_answer",
        LegsQuestion = "legs_question",
        SpacingQuestion = "spacing_question",
        FootQuestion = "foot_question",
        WingsQuestion = "wings_question",
        WingLiftQuestion = "wing_lift_question",
        LeadingQuestion = "leading_question",
        LeadingDepthQuestion = "leading_depth_question",
        ReachQuestion = "reach_question",
        SlowestQuestion = "slowest_question",
        FastestQuestion = "fastest_question",
        PowerQuestion = "power_question",
        DriveQuestion = "drive_question",
        MassQuestion = "mass_question",
        NameQuestion = "name_question",
        Spacing = "spacing",
        Reach = "reach",
        Speed = "speed",
        Foot = "foot",
        Wings = "wings",
        WingLift = "wing_lift",
        Legs = "legs",
        Tractor = "tractor",
        Leading = "leading",
        Mass = "mass",
        Name = "name",
        MoreMeasures = "more_measures",
        NothingToSet = "nothing_to_set",
        NotSetYet = "not_set_yet",
        NotToBeWorked = "not_to_be_worked",
        NotEnoughPower = "not_enough_power",
        SpacingTooWide = "spacing_too_wide",
        MeasureStopped = "measure_stopped",
    }
);

impl Words {
    /// A length as a bare number, for one of many under a heading that says the unit: `33`.
    pub fn length_number(&self, mm: u32) -> String {
        self.number(mm)
    }

    /// A speed, km/h, as a bare number: `5.5`.
    pub fn speed_number(&self, kmh: f64) -> String {
        self.decimal(kmh, usize::from(kmh.fract() > 0.0))
    }

    /// Which reading is asked, from 1, and where across from the first tine line where the spacing is known:
    /// `Reading 3 of 8, 21 cm from the first tine line, in cm`.
    pub fn reading_place(&self, number: usize, all: usize, across_mm: Option<u32>) -> String {
        let mut args = fluent_args!["number" => number, "all" => all, "unit" => self.unit_sign()];
        let Some(across_mm) = across_mm else { return self.say_with("work-reading_bare", &args) };
        // Where to hold the rule is told to the centimetre, else the half inch.
        let across_mm = match self.unit() {
            LengthUnit::Centimetres => (across_mm + 5) / 10 * 10,
            LengthUnit::Inches => across_mm,
        };
        args.set("across", self.depth(across_mm));
        self.say_with("work-reading", &args)
    }

    /// Which slot is asked, from 1: `Slot 2 of 3, from the left, in cm`.
    pub fn slot_place(&self, number: usize, all: usize) -> String {
        let args = fluent_args!["number" => number, "all" => all, "unit" => self.unit_sign()];
        self.say_with("work-slot", &args)
    }

    /// Says that a question's numbers are in the unit of length: `In cm.`
    pub fn in_unit(&self) -> String {
        self.say_with("work-in_unit", &fluent_args!["unit" => self.unit_sign()])
    }

    /// The same of a tip depth, with what is wanted: `In cm; 33–35 cm is wanted.`
    pub fn tip_wanted(&self, wanted: Option<String>) -> String {
        let Some(wanted) = wanted else { return self.in_unit() };
        let args = fluent_args!["unit" => self.unit_sign(), "tip" => wanted];
        self.say_with("work-tip_wanted", &args)
    }

    /// The same of a speed.
    pub fn in_kmh(&self) -> String {
        self.say("work-in_kmh")
    }

    /// How many looks of a hole are not made: `4 not looked`.
    pub fn looks_left(&self, left: usize) -> String {
        self.say_with("work-looks_left", &fluent_args!["left" => left])
    }

    /// Depths read, under one unit: `33; 26; 30 cm`.
    pub fn depths_read(&self, depths_mm: &[u32]) -> String {
        self.depths_in_turn(depths_mm)
    }

    /// Says what the pass did at a hole, in a few words: `Loosened in places`.
    pub fn hole_headline(&self, dig: &DigAdvice) -> String {
        if dig.season_on { capital(self.form(dig.verdict, "season")) } else { self.form(dig.verdict, "head") }
    }

    /// Says what came of a pass, above all else: whether it has held, else the worst its holes say.
    pub fn pass_headline(&self, pass: &PassAdvice) -> String {
        match (pass.held, pass.verdict) {
            (Some(held), _) => capital(self.of(held.lasting)),
            (None, Some(verdict)) => self.form(verdict, "head"),
            (None, None) => self.say("work-not_dug"),
        }
    }

    /// Says what the holes of a pass found, in a sentence; empty where none was dug.
    pub fn pass_line(&self, pass: &PassAdvice) -> String {
        if let Some(held) = &pass.held {
            return self.held_sentence(held);
        }
        let mut fresh = pass.digs.iter().rev().filter(|dig| !dig.season_on);
        let worst = fresh.find(|dig| Some(dig.verdict) == pass.verdict);
        worst.map_or_else(String::new, |dig| self.after_dig_found(dig))
    }

    /// How a machine is to be set: `Set the tips to 34 cm, 5.5 km/h`.
    pub fn set_headline(&self, setting: &Setting, speed_kmh: f64) -> String {
        let args = fluent_args!["tip" => self.depth(setting.tip_mm), "speed" => self.speed(speed_kmh)];
        self.say_with("work-set", &args)
    }

    /// Says that a machine does not reach the depth: `It does not reach 34 cm`.
    pub fn short_headline(&self, setting: &Setting) -> String {
        self.say_with("work-short", &fluent_args!["tip" => self.depth(setting.tip_mm)])
    }

    /// Says what was asked of it, where it does not do that: `Headland: tips at 33–35 cm.`
    pub fn asked_of_it(&self, zone: Zone, tip: &str) -> String {
        self.say_with("work-asked_of", &fluent_args!["zone" => self.label(zone), "tip" => tip])
    }

    /// Why this is not to be worked, in a sentence: `The soil rolls to a thread.`
    pub fn why_not(&self, why: &[WhyNot]) -> String {
        let why: Vec<String> = why.iter().map(|&why| self.of(why)).collect();
        let why = capital(self.join("join-clauses", &why));
        self.say_with("work-why", &fluent_args!["why" => why])
    }

    /// The deepest tips a machine reaches: `reaches 45 cm`.
    pub fn reaches(&self, machine: &Machine) -> Option<String> {
        let reach_mm = machine.reach_mm?;
        Some(self.say_with("work-reaches", &fluent_args!["reach" => self.depth(reach_mm)]))
    }

    /// How far wings lift: `lift 6 cm`.
    pub fn lift_of(&self, mm: u32) -> String {
        self.say_with("work-lift", &fluent_args!["lift" => self.depth(mm)])
    }

    /// A measure with what it comes to: `50 cm: it fits`.
    pub fn measure_and(&self, value: &str, comes_to: &str) -> String {
        self.asked(value, comes_to)
    }

    /// Says whether the tips run above critical depth: `the tips run above critical depth`.
    pub fn tips_run(&self, setting: &Setting) -> String {
        self.say_with("work-tips_run", &fluent_args!["place" => self.of(setting.place)])
    }
}
