//! Several fields on one page: calls, hectares and the order of urgency, each with a way to its sheet.

use super::page::{Blocks, Group, Line, Page, Row};
use super::sheet::{PhotoFile, closing, whole_ha, work, write_sheet};
use crate::advice::{FieldAdvice, Readiness};
use crate::answer::FieldAnswer;
use crate::record::Call;
use crate::words::{Heading, PageText, Words};

/// A field with the address of its sheet, seen from the overview.
pub struct Listed<'a> {
    /// The field.
    pub answer: &'a FieldAnswer,
    /// Address of its sheet.
    pub sheet: &'a str,
}

/// Fields on one page, the most urgent first, each with a way to its sheet.
pub fn overview(words: &Words, title: &str, fields: &[Listed]) -> Page {
    let mut page = Blocks::default();
    write_overview(&mut page, words, title, fields);
    page.page(words, title)
}

/// The overview and every sheet behind it in one page. `photo` gives the photos of a field by its place in the list.
pub fn overview_with_sheets(
    words: &Words,
    title: &str,
    fields: &[&FieldAnswer],
    photo: &dyn Fn(usize, &str) -> Option<Vec<u8>>,
) -> Page {
    let addresses: Vec<String> = (1..=fields.len()).map(|number| format!("#field-{number}")).collect();
    let listed: Vec<Listed> =
        fields.iter().zip(&addresses).map(|(answer, address)| Listed { answer, sheet: address }).collect();
    let mut page = Blocks::default();
    write_overview(&mut page, words, title, &listed);
    for (index, answer) in fields.iter().enumerate() {
        let of_field: PhotoFile = &|hash| photo(index, hash);
        page.within(Group::Anchor(addresses[index][1..].to_owned()), |page| {
            write_sheet(page, words, answer, of_field);
        });
    }
    page.page(words, title)
}

fn write_overview(page: &mut Blocks, words: &Words, title: &str, fields: &[Listed]) {
    let mut order: Vec<&Listed> = fields.iter().collect();
    crate::order::sort_by_key(&mut order, |field| urgency(&field.answer.advice));
    page.within(Group::Article, |page| {
        page.text(Line::Title, title);
        let hectares: Option<f64> = fields.iter().map(|field| whole_ha(field.answer)).sum();
        page.text(Line::Meta, &words.fields_total(fields.len(), hectares));
        page.text(Line::Plain, &words.of(PageText::OverviewOrder));
        let heads = [
            words.label(Heading::Field),
            words.label(Heading::WholeField),
            words.label(PageText::LoosenArea),
            words.label(Heading::Call),
        ];
        page.table_of(title, &heads, order.into_iter().map(|field| row(words, field)).collect());
        closing(page, words);
    });
}

/// Address and name, then hectares, hectares to be loosened, and the calls in one sentence.
fn row(words: &Words, field: &Listed) -> Row {
    let answer = field.answer;
    let harmed = work(answer).harmed.map(|spent| words.ground_ha(spent.area_ha));
    let cells = vec![
        words.name(&answer.notes.field.name),
        whole_ha(answer).map(|hectares| words.ground_ha(hectares)).unwrap_or_default(),
        harmed.unwrap_or_default(),
        words.whole_sentence(&answer.advice),
    ];
    Row { address: Some(field.sheet.to_owned()), cells }
}

/// Place in the order of urgency, of its most urgent zone: work whose days are few, then what has to be asked or mended before
/// it, then what has to be dug again, then roots. Our judgement.
fn urgency(advice: &FieldAdvice) -> usize {
    let of = |call: &crate::advice::ZoneCall| match call.call {
        Call::Loosen if call.readiness == Readiness::Fit => 0,
        Call::Loosen => 1,
        Call::Wait => 2,
        Call::AskSpecialist => 3,
        Call::DrainFirst => 4,
        Call::DigAgain => 5,
        Call::RootsFirst => 6,
        Call::LeaveIt => 7,
    };
    advice.zones.iter().chain([&advice.whole]).map(of).min().unwrap_or(0)
}
