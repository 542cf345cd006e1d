//! Names and positions that can be taken out of every copy.

use super::PartnersAct;
use crate::screen::bar::{empty, main_button};
use crate::screen::{Act, Does, Draft, Known, Place, Row, ScreenKind, World};
use crate::words::PartnerText;

/// What there is; with a number (from 0), the question whether that one is to go.
pub(in crate::screen) fn show_personal(number: Option<u16>, world: &World) -> Option<Draft> {
    let words = world.words;
    let place = Place::Personal { number };
    let mut screen = empty(place, ScreenKind::Partners, words.label(PartnerText::Personal), world);
    let all = &world.partners.personal;
    if let Some(number) = number {
        let (belongs, of) = all.get(usize::from(number))?;
        let name = words.versions_of(&words.belongs(belongs), of.cell);
        screen.known = vec![
            Known::Sentence(name),
            Known::Line(words.personal(of)),
            Known::Line(words.label(PartnerText::TakeOutMeans)),
            Known::Line(words.label(PartnerText::TakeOutCannot)),
        ];
        let act = PartnersAct::TakeOut { record: of.record, cell: of.cell.number() };
        screen.bar.main = (of.here > 0).then(|| main_button(words.label(PartnerText::TakeOut), act));
        return Some(screen);
    }
    let row = |(number, (belongs, of)): (u16, &(_, crate::store::Personal))| Row {
        icon: None,
        title: words.versions_of(&words.belongs(belongs), of.cell),
        lines: vec![words.personal(of)],
        does: Does::Act(Act::Go(Place::Personal { number: Some(number) })),
    };
    let rows: Vec<Row> = (0..).zip(all).map(row).collect();
    screen.known = if rows.is_empty() {
        vec![Known::Line(words.label(PartnerText::NothingPersonal))]
    } else {
        vec![Known::Line(words.label(PartnerText::TakeOutMeans)), Known::Rows(rows)]
    };
    Some(screen)
}
