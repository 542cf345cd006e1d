//! What stands on the sheet of a field, on the driver's card and on the overview of fields.

use super::Words;
use crate::advice::machine::LayerDepths;
use crate::record::codes::codes;
use crate::record::{Buried, Zone};
use crate::units::Quantity;
use chrono::NaiveDate;
use fluent::fluent_args;

codes!(
    /// A heading or a fixed sentence of a page.
    PageText {
        ToDo = "to_do",
        First = "first",
        Why = "why",
        NotLooked = "not_looked",
        Saves = "saves",
        Behind = "behind",
        Details = "details",
        Key = "key",
        CalledToday = "called_today",
        SurePits = "sure_pits",
        SureGround = "sure_ground",
        NothingToDo = "nothing_to_do",
        Decides = "decides",
        // The driver's card.
        Card = "card",
        Spacing = "spacing",
        Speed = "speed",
        Machine = "machine",
        NoMachine = "no_machine",
        Buried = "buried",
        Stop = "stop",
        DigBehind = "dig_behind",
        Readings = "readings",
        SetTo = "set_to",
        Day = "day",
        Driver = "driver",
        LineOne = "line_one",
        LineOther = "line_other",
        NothingNoted = "nothing_noted",
        NotNamed = "not_named",
        StopThread = "stop_thread",
        StopClods = "stop_clods",
        StopHard = "stop_hard",
        StopSlip = "stop_slip",
        StopRain = "stop_rain",
        LookWalls = "look_walls",
        LookLift = "look_lift",
        LookNext = "look_next",
        // Handing them over.
        Pages = "pages",
        Sheet = "sheet",
        SheetLine = "sheet_line",
        CardLine = "card_line",
        // The overview.
        OverviewOrder = "overview_order",
        LoosenArea = "loosen_area",
    }
);

impl Words {
    /// Pits, their days and who dug them: `6 pits, 5 May 2026, by the walker`. `days` are the first and the last.
    pub fn dug(&self, pits: usize, days: Option<(NaiveDate, NaiveDate)>, who: &[String]) -> String {
        let pits = self.pits(pits);
        let dug = match days {
            None => pits,
            Some((first, last)) if first == last => {
                self.say_with("page-dug_on", &fluent_args!["pits" => pits, "day" => self.date(first)])
            }
            Some((first, last)) => {
                let args =
                    fluent_args!["pits" => pits, "first" => self.date(first), "last" => self.date(last)];
                self.say_with("page-dug_between", &args)
            }
        };
        let by = (!who.is_empty()).then(|| self.say_with("page-by", &fluent_args!["who" => self.and(who)]));
        self.comma(&[Some(dug), by].into_iter().flatten().collect::<Vec<_>>())
    }

    /// Something told of one zone: `Headland: …`
    pub fn zone_says(&self, zone: Zone, told: &str) -> String {
        self.says_of(&self.label(zone), told)
    }

    /// Something told of what is named: `Pit 3: …`
    pub fn says_of(&self, what: &str, told: &str) -> String {
        self.say_with("page-says", &fluent_args!["what" => what, "told" => told])
    }

    /// Says what lies buried by its kind alone, with the least depth noted of it.
    pub fn buried_noted(&self, kind: Buried, depth_mm: u32) -> String {
        let args = fluent_args!["kind" => self.label(kind), "depth" => self.depth(depth_mm)];
        self.say_with("page-buried_noted", &args)
    }

    /// Hectares, or acres.
    pub fn ground_ha(&self, hectares: f64) -> String {
        self.amount(Quantity::Ground, hectares)
    }

    /// `3.2 ha to work`
    pub fn to_work(&self, hectares: f64) -> String {
        self.say_with("page-to_work", &fluent_args!["area" => self.ground_ha(hectares)])
    }

    /// How the ground is to look behind the machine, a sentence each: loose down to the bottom of the layer that the tips
    /// clear, and no layer left.
    pub fn look_behind(&self, bottom_mm: u32, layer: Option<LayerDepths>) -> Vec<String> {
        let mut said =
            vec![self.say_with("page-look_loose", &fluent_args!["depth" => self.depth(bottom_mm)])];
        said.extend(layer.map(|layer| {
            let depths = self.depth_range(layer.top_mm, layer.bottom_mm);
            self.say_with("page-layer_gone", &fluent_args!["depths" => depths])
        }));
        said.extend([PageText::LookWalls, PageText::LookLift, PageText::LookNext].map(|text| self.of(text)));
        said
    }

    /// How many fields, and their hectares where they are known.
    pub fn fields_total(&self, count: usize, hectares: Option<f64>) -> String {
        let fields = self.say_with("page-fields", &fluent_args!["count" => count]);
        let Some(hectares) = hectares else { return fields };
        self.say_with("page-total", &fluent_args!["fields" => fields, "area" => self.ground_ha(hectares)])
    }

    /// Said of ground in which no pit was dug.
    pub fn not_dug(&self) -> String {
        super::capital(self.say("ground-not_dug"))
    }
}
