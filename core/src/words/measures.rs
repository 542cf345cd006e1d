//! Depths, lengths and shares.

use super::Words;
use crate::advice::TipDepth;
use crate::units::{INCH_MM, LengthUnit};
use fluent::fluent_args;

impl Words {
    /// A depth or another length in the chosen unit: `33 cm`, `13½ in`. A no-break space holds the number to its
    /// unit.
    pub fn depth(&self, mm: u32) -> String {
        self.with_unit(self.number(mm))
    }

    /// A range of depths: `20–30 cm`; one depth where both read the same.
    pub fn depth_range(&self, lo_mm: u32, hi_mm: u32) -> String {
        self.range("range-written", &self.number(lo_mm), &self.number(hi_mm))
    }

    /// A range of depths to be spoken: `20 to 30 cm`.
    pub fn depth_range_spoken(&self, lo_mm: u32, hi_mm: u32) -> String {
        self.range("range-spoken", &self.number(lo_mm), &self.number(hi_mm))
    }

    /// Tip depth as a driver can set it: whole centimetres or half inches inside the range, `33–35 cm` for 325 to
    /// 350 mm. A range too narrow for that stays as it is.
    pub fn tip_range(&self, tip: &TipDepth) -> String {
        let (lo_mm, hi_mm) = self.settable(tip);
        self.depth_range(lo_mm, hi_mm)
    }

    /// The same to be spoken.
    pub fn tip_range_spoken(&self, tip: &TipDepth) -> String {
        let (lo_mm, hi_mm) = self.settable(tip);
        self.depth_range_spoken(lo_mm, hi_mm)
    }

    /// The sign of the unit, as above a depth ruler: `cm`.
    pub fn unit_sign(&self) -> String {
        match self.unit {
            LengthUnit::Centimetres => self.say("unit-centimetres"),
            LengthUnit::Inches => self.say("unit-inches"),
        }
    }

    /// A share, 0 to 1, in numbers: `86 of 100`. Never all or none of 100 unless it is exactly so.
    pub fn share(&self, share: f64) -> String {
        let (id, number) = hundredths(share, ["share-exact", "share-over", "share-under"]);
        self.say_with(id, &fluent_args!["number" => number])
    }

    /// A share, 0 to 1, in percent, in the same way: `67 %`.
    pub fn percent(&self, share: f64) -> String {
        let (id, number) = hundredths(share, ["percent-exact", "percent-over", "percent-under"]);
        self.say_with(id, &fluent_args!["number" => number])
    }

    /// A range of shares in percent: `75–80 %`.
    pub(super) fn percent_range(&self, least: f64, most: f64) -> String {
        let [lo, hi] = [least, most].map(|share| hundredths(share, ["", "", ""]).1);
        if lo == hi {
            return self.percent(least);
        }
        let number = self.say_with("range-written", &fluent_args!["lo" => lo, "hi" => hi]);
        self.say_with("percent-exact", &fluent_args!["number" => number])
    }

    /// A share, 0 to 1, in the smallest numbers that say it: `4 of 5`, else of 100.
    pub fn small_share(&self, share: f64) -> String {
        let parts = |whole: u32| share * f64::from(whole);
        let small = (2..=10).find(|&whole| {
            let (parts, part) = (parts(whole), parts(whole).round());
            (1.0..f64::from(whole)).contains(&part) && (parts - part).abs() < 1e-6
        });
        small.map_or_else(
            || self.share(share),
            |whole| {
                self.say_with("share-small", &fluent_args!["part" => parts(whole).round(), "whole" => whole])
            },
        )
    }

    /// A number of pits: `5 pits`.
    pub fn pits(&self, count: usize) -> String {
        self.say_with("count-pits", &fluent_args!["count" => count])
    }

    /// A length as a bare number: to one decimal, inches with a written half.
    pub(super) fn number(&self, mm: u32) -> String {
        let number = self.unit.number(mm);
        let (whole, tenths) = (number.trunc(), (number.fract() * 10.0).round());
        match self.unit {
            _ if tenths < 1.0 => whole.to_string(),
            LengthUnit::Inches if whole < 1.0 => self.say("number-half"),
            LengthUnit::Inches => self.say_with("number-halves", &fluent_args!["whole" => whole]),
            LengthUnit::Centimetres => {
                self.say_with("number-tenths", &fluent_args!["whole" => whole, "tenths" => tenths])
            }
        }
    }

    pub(super) fn with_unit(&self, number: String) -> String {
        self.say_with("measure-length", &fluent_args!["number" => number, "unit" => self.unit_sign()])
    }

    fn range(&self, id: &str, lo: &str, hi: &str) -> String {
        if lo == hi {
            return self.with_unit(lo.to_owned());
        }
        self.with_unit(self.say_with(id, &fluent_args!["lo" => lo, "hi" => hi]))
    }

    fn settable(&self, tip: &TipDepth) -> (u32, u32) {
        let notch_mm = match self.unit {
            LengthUnit::Centimetres => 10.0,
            LengthUnit::Inches => INCH_MM / 2.0,
        };
        let [lo, hi] = [tip.lo_mm, tip.hi_mm].map(|mm| f64::from(mm) / notch_mm);
        let [lo, hi] = [lo.ceil(), hi.floor()].map(|notch| (notch * notch_mm).round() as u32);
        if lo <= hi { (lo, hi) } else { (tip.lo_mm, tip.hi_mm) }
    }
}

/// Hundredths of a share with the id that says them truly: as they are, over 99, or under 1.
fn hundredths(share: f64, [exact, over, under]: [&'static str; 3]) -> (&'static str, u32) {
    let number = (share.clamp(0.0, 1.0) * 100.0).round() as u32;
    match number {
        100.. if share < 1.0 => (over, 99),
        0 if share > 0.0 => (under, 1),
        _ => (exact, number),
    }
}
