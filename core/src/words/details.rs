//! What stands on the screens of a field's details, and of what lies buried along lines.

use super::Words;
use crate::advice::{SERVICE_FLOOR_MM, clearance_of};
use crate::record::codes::codes;
use crate::record::{Buried, BuriedLine};
use crate::units::Quantity;
use fluent::fluent_args;

codes!(
    /// One thing known of a field as a whole; its message is what it is called, `.why` what it is for.
    Detail {
        Name = "name",
        Headland = "headland",
        Tramline = "tramline",
        WheelTrack = "wheel_track",
        Tyre = "tyre",
        Drains = "drains",
        MoleDrains = "mole_drains",
        Services = "services",
        Clearance = "clearance",
        ServicesClearance = "services_clearance",
        ServicesAsked = "services_asked",
        ServicesAskedOn = "services_asked_on",
        ServicesLeave = "services_leave",
        Texture = "texture",
        OrganicMatter = "organic_matter",
        CropNow = "crop_now",
        LastCrop = "last_crop",
        LastLoosened = "last_loosened",
        LastTraffic = "last_traffic",
        LastRain = "last_rain",
        Tillage = "tillage",
        Stony = "stony",
        PlatesSoft = "plates_soft",
        NextCrop = "next_crop",
        NextSown = "next_sown",
        Slope = "slope",
        Reach = "reach",
        DeepClay = "deep_clay",
        ControlledTraffic = "controlled_traffic",
        Remark = "remark",
    }
);

codes!(
    /// A fixed text of these screens.
    DetailText {
        Another = "another",
        BeginOnPlan = "begin_on_plan",
        Buried = "buried",
        DayToComeWrong = "day_to_come_wrong",
        DayWrong = "day_wrong",
        Details = "details",
        DropPlace = "drop_place",
        GoOnByHand = "go_on_by_hand",
        Ground = "ground",
        HeldTo = "held_to",
        Known = "known",
        LeaveGiven = "leave_given",
        LeaveNotGiven = "leave_not_given",
        LineBegins = "line_begins",
        LineEmpty = "line_empty",
        LineOn = "line_on",
        LineShort = "line_short",
        LineSort = "line_sort",
        Lines = "lines",
        LinesShort = "lines_short",
        LinesWhy = "lines_why",
        MoveLast = "move_last",
        NewLine = "new_line",
        NoLine = "no_line",
        NotHeldTo = "not_held_to",
        NotNone = "not_none",
        OrPercent = "or_percent",
        OrDay = "or_day",
        OrSlope = "or_slope",
        OutlineShort = "outline_short",
        PercentWrong = "percent_wrong",
        SamePlace = "same_place",
        Use = "use",
    }
);

impl Words {
    /// A width over the ground: `24 m`, `78.5 ft`.
    pub fn width(&self, mm: u32) -> String {
        self.brief_amount(Quantity::Width, f64::from(mm) / 1_000.0)
    }

    /// A percentage as it was given, not rounded to whole ones: `2.5 %`.
    pub fn percentage(&self, percent: f64) -> String {
        self.say_with("percent-exact", &fluent_args!["number" => self.typed_number(percent)])
    }

    /// A slope by its fall in whole metres on 100 m: `3 %`.
    pub fn slope(&self, percent: u32) -> String {
        self.percentage(f64::from(percent))
    }

    /// A time to come: `In 4 weeks`.
    pub fn in_weeks(&self, weeks: u64) -> String {
        self.say_with("details-in_weeks", &fluent_args!["count" => weeks])
    }

    /// A detail as a question: `Next crop?`
    pub fn detail_asked(&self, detail: Detail) -> String {
        self.say_with("details-asked", &fluent_args!["detail" => self.label(detail)])
    }

    /// A number as whoever types it would write it: to tenths, with the language's mark.
    pub fn typed_number(&self, number: f64) -> String {
        let tenths = (number * 10.0).round();
        self.decimal(tenths / 10.0, usize::from(tenths % 10.0 != 0.0))
    }

    /// Says what a detail of the field is for, and how it is meant.
    pub fn detail_why(&self, detail: Detail) -> String {
        let usual = |kind: Buried| self.depth(clearance_of(kind).above_mm);
        let args = fluent_args![
            "drains" => usual(Buried::Drain),
            "moles" => usual(Buried::MoleDrain),
            "services" => usual(Buried::Service),
            "floor" => self.depth(SERVICE_FLOOR_MM),
        ];
        self.say_with(&format!("detail-{}.why", detail.code()), &args)
    }

    /// A line of what lies buried: `Drain, 90 cm deep, 2 places`.
    pub fn buried_line(&self, line: &BuriedLine) -> String {
        let deep =
            line.depth_mm.map(|mm| self.say_with("details-deep", &fluent_args!["depth" => self.depth(mm)]));
        let what = line.known().map_or_else(|| self.label(line.kind), |laid| self.label(laid));
        let places = self.say_with("details-places", &fluent_args!["count" => line.along.len()]);
        let parts: Vec<String> = [Some(what), deep, Some(places)].into_iter().flatten().collect();
        self.comma(&parts)
    }

    /// How many lines are marked: `2 lines are marked`.
    pub fn lines_marked(&self, count: usize) -> String {
        self.say_with("details-marked", &fluent_args!["count" => count])
    }

    /// `Place 3 of the line is noted.`
    pub fn line_place_noted(&self, number: usize) -> String {
        self.say_with("details-place_noted", &fluent_args!["number" => number])
    }
}
