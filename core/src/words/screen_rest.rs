//! What stands on the screens of own details, machine, pass, the hole behind it, photos, handing over and the plan.

use super::{Words, capital};
use crate::advice::TipDepth;
use crate::advice::machine::{LayerDepths, Setting, WhyNot};
use crate::place::{Compass, Walk};
use crate::record::codes::codes;
use crate::record::{Machine, Photo, Zone};
use crate::units::Quantity;
use fluent::fluent_args;

codes!(
    /// A fixed text of these screens: a title, a label of a button, a question, or a sentence that varies in nothing.
    Caption {
        Undo = "undo",
        Redo = "redo",
        Back = "back",
        More = "more",
        Menu = "menu",
        ChooseLanguage = "choose_language",
        Own = "own",
        Name = "name",
        Hand = "hand",
        LeftHand = "left_hand",
        RightHand = "right_hand",
        Units = "units",
        Centimetres = "centimetres",
        Inches = "inches",
        Language = "language",
        VolumeKeys = "volume_keys",
        KeysUsual = "keys_usual",
        KeysAnswer = "keys_answer",
        OwnDone = "own_done",
        Privacy = "privacy",
        TeamWord = "team_word",
        TeamWordSet = "team_word_set",
        ForgetTeamWord = "forget_team_word",
        TeamWordKept = "team_word_kept",
        TeamWordForgotten = "team_word_forgotten",
        TeamWordShort = "team_word_short",
        Machines = "machines",
        NoMachine = "no_machine",
        DescribeMachine = "describe_machine",
        CopyMachine = "copy_machine",
        Legs = "legs",
        Spacing = "spacing",
        FootWidth = "foot_width",
        Wings = "wings",
        Lift = "lift",
        Leading = "leading",
        LeadingDepth = "leading_depth",
        Reach = "reach",
        Power = "power",
        TractorMass = "tractor_mass",
        MachineName = "machine_name",
        NoneFitted = "none_fitted",
        Fitted = "fitted",
        NotNoted = "not_noted",
        SetAnew = "set_anew",
        NothingToLoosen = "nothing_to_loosen",
        SpacingResult = "spacing_result",
        LayerResult = "layer_result",
        AllResults = "all_results",
        Faulty = "faulty",
        Passes = "passes",
        Pass = "pass",
        NoPass = "no_pass",
        NewPass = "new_pass",
        WhichMachine = "which_machine",
        WhichZone = "which_zone",
        HowMuch = "how_much",
        WhichDay = "which_day",
        Today = "today",
        Yesterday = "yesterday",
        TipDepth = "tip_depth",
        PassSpeed = "pass_speed",
        PassMachine = "pass_machine",
        PassZone = "pass_zone",
        PassExtent = "pass_extent",
        DrivenOn = "driven_on",
        WheelsToday = "wheels_today",
        WheelsNo = "wheels_no",
        RollAtTips = "roll_at_tips",
        DigBehind = "dig_behind",
        Holes = "holes",
        NoMachineNoSection = "no_machine_no_section",
        FewReadings = "few_readings",
        Yes = "yes",
        No = "no",
        Roots = "roots",
        Show = "show",
        NothingToShow = "nothing_to_show",
        Photos = "photos",
        TakePhoto = "take_photo",
        NoPhoto = "no_photo",
        Scale = "scale",
        OnlyNoted = "only_noted",
        PhotoPlace = "photo_place",
        WholeFace = "whole_face",
        HandOver = "hand_over",
        AsFile = "as_file",
        OrEverything = "or_everything",
        ShareField = "share_field",
        OpenFile = "open_file",
        WhatLeaves = "what_leaves",
        PositionsLeave = "positions_leave",
        PhotosStay = "photos_stay",
        HalfRead = "half_read",
        Whom = "whom",
        OnPlan = "on_plan",
        PlanPit = "plan_pit",
        NoPlan = "no_plan",
        PlanStart = "plan_start",
        PlanKept = "plan_kept",
        PlanHere = "plan_here",
        MoveFar = "move_far",
        MoveNear = "move_near",
    }
);

/// Bytes in a megabyte.
const MEGABYTE: f64 = 1_000_000.0;
/// Bytes in a kilobyte: what is smaller than a tenth of a megabyte is told in these.
const KILOBYTE: f64 = 1_000.0;

impl Words {
    /// A machine by its measures, for a name nobody typed: `5 legs, 50 cm apart`.
    pub fn machine_by_measures(&self, legs: u32, spacing_mm: u32) -> String {
        let legs = self.say_with("shown-legs", &fluent_args!["legs" => legs]);
        let args = fluent_args!["legs" => capital(legs), "spacing" => self.depth(spacing_mm)];
        self.say_with("shown-machine_name", &args)
    }

    /// The measures of a machine in a line: `5 legs, 50 cm apart, foot 8 cm, wings 30 cm, tractor 125 kW`.
    pub fn machine_measures(&self, machine: &Machine) -> String {
        let foot = self.say_with("shown-foot", &fluent_args!["width" => self.depth(machine.foot_width_mm)]);
        let wings = machine
            .wings
            .map(|wings| self.say_with("shown-wings", &fluent_args!["width" => self.depth(wings.width_mm)]));
        let tractor = machine.tractor.map(|tractor| {
            self.say_with("shown-tractor", &fluent_args!["power" => self.power_of(tractor.power_kw)])
        });
        let head = self.machine_by_measures(machine.legs, machine.spacing_mm);
        self.comma(&[Some(head), Some(foot), wings, tractor].into_iter().flatten().collect::<Vec<_>>())
    }

    /// A button that takes a step off: `− 5 cm`.
    pub fn step_less(&self, step: &str) -> String {
        self.say_with("shown-step_less", &fluent_args!["step" => step])
    }

    /// A button that puts a step on: `+ 5 cm`.
    pub fn step_more(&self, step: &str) -> String {
        self.say_with("shown-step_more", &fluent_args!["step" => step])
    }

    /// Says what is asked with what it is now: `Legs: 5`.
    pub fn asked(&self, what: &str, value: &str) -> String {
        self.say_with("shown-asked", &fluent_args!["what" => what, "value" => value])
    }

    /// A speed, km/h: `5.5 km/h`.
    pub fn speed(&self, kmh: f64) -> String {
        self.brief_amount(Quantity::Speed, kmh)
    }

    /// Two speeds: `4 km/h to 7 km/h`.
    pub fn speeds(&self, lo_kmh: f64, hi_kmh: f64) -> String {
        let args = fluent_args!["slowest" => self.speed(lo_kmh), "fastest" => self.speed(hi_kmh)];
        self.say_with("shown-speeds", &args)
    }

    /// The power of an engine, kW, as a whole number: `125 kW`.
    pub fn power_of(&self, kw: f64) -> String {
        self.whole_amount(Quantity::Power, kw)
    }

    /// The mass of a tractor as a whole number: `7400 kg`.
    pub fn mass_of(&self, kg: u32) -> String {
        self.whole_amount(Quantity::Mass, f64::from(kg))
    }

    /// Says what a machine is set for: `Headland, tips at 33–35 cm`.
    pub fn set_for(&self, zone: Zone, tip: &TipDepth) -> String {
        let args = fluent_args!["zone" => self.label(zone), "tip" => self.tip_range(tip)];
        self.say_with("shown-set_for", &args)
    }

    /// Why a machine is not set: `It cannot be set for this: the texture of the soil is not noted.`
    pub fn cannot_set(&self, why: WhyNot) -> String {
        self.say_with("shown-cannot_set", &fluent_args!["why" => self.of(why)])
    }

    /// The two results that are not to be mixed up: whether the spacing fits its range, and whether the layer is broken
    /// over the full width.
    pub fn spacing_and_layer(
        &self,
        machine: &Machine,
        layer: Option<LayerDepths>,
        setting: &Setting,
    ) -> [String; 2] {
        [self.spacing(machine, setting), self.layer_broken(layer, setting)]
    }

    /// A machine of another field: `Mere Piece: 5 legs, 50 cm apart, foot 8 cm`.
    pub fn machine_elsewhere(&self, field: &str, machine: &Machine) -> String {
        let args = fluent_args!["field" => field, "measures" => self.machine_measures(machine)];
        self.say_with("shown-copy", &args)
    }

    /// Returns what is wrong with an empty name, and what to do.
    pub fn name_empty(&self) -> [String; 2] {
        [self.say("shown-name_empty"), self.say("shown-name_todo")]
    }

    /// Returns what is said of a record that is gone, and what to do.
    pub fn gone(&self) -> [String; 2] {
        [self.say("shown-gone"), self.say("shown-gone_todo")]
    }

    /// How many holes were dug behind a pass.
    pub fn holes_behind(&self, holes: usize) -> String {
        capital(self.say_with("shown-holes", &fluent_args!["holes" => holes]))
    }

    /// Name of a hole behind a pass by its number, from 1: `Hole 2, 2025-08-19`.
    pub fn hole_behind(&self, number: usize, day: Option<chrono::NaiveDate>) -> String {
        match day {
            Some(day) => {
                let args = fluent_args!["number" => number, "day" => self.date(day)];
                self.say_with("shown-hole", &args)
            }
            None => self.say_with("shown-hole_undated", &fluent_args!["number" => number]),
        }
    }

    /// Says what is noted of a photo: `2025-08-19, at 25 cm, 1.2 MB`; a small one in `kB`.
    pub fn photo_line(&self, photo: &Photo) -> String {
        let place = photo.depth_mm.map_or_else(
            || self.say("shown-photo_nowhere"),
            |depth_mm| self.say_with("shown-photo_at", &fluent_args!["depth" => self.depth(depth_mm)]),
        );
        let bytes = photo.size_bytes as f64;
        let (size, decimals, unit) =
            if bytes < MEGABYTE / 10.0 { (bytes / KILOBYTE, 0, "kB") } else { (bytes / MEGABYTE, 1, "MB") };
        let args = fluent_args!["number" => self.decimal(size, decimals), "unit" => unit];
        let size = self.say_with("measure-length", &args);
        let mut args = fluent_args!["place" => place, "size" => size];
        let Some(taken) = photo.taken else { return self.say_with("shown-photo_undated", &args) };
        args.set("day", self.date(taken.date_naive()));
        self.say_with("shown-photo", &args)
    }

    /// How many photos a pit has.
    pub fn photos_count(&self, photos: usize) -> String {
        self.say_with("shown-photos_count", &fluent_args!["photos" => photos])
    }

    /// Says what of a field is handed over: `Mere Piece: 6 pits, one pass.`
    pub fn hand_over_counts(&self, field: &str, pits: usize, passes: usize) -> String {
        let passes = self.say_with("shown-passes_count", &fluent_args!["passes" => passes]);
        let args = fluent_args!["field" => field, "pits" => self.pits(pits), "passes" => passes];
        self.say_with("shown-hand_over_counts", &args)
    }

    /// Where a pit lies from the middle of its field.
    pub fn pit_from_middle(&self, number: usize, walk: Walk) -> String {
        if walk.distance_m < 1.0 {
            return self.say_with("shown-plan_middle", &fluent_args!["number" => number]);
        }
        let args = fluent_args!["number" => number, "walk" => self.walk(walk)];
        self.say_with("shown-plan_walk", &args)
    }

    /// Says what a step on the plan did: `Moved 5 m to the north.`
    pub fn moved(&self, metres: f64, way: Compass) -> String {
        let args = fluent_args!["distance" => self.distance(metres), "compass" => self.of(way)];
        self.say_with("shown-moved", &args)
    }
}
