//! Names and positions that can be taken out of every copy.

use super::PartnersAct;
use crate::screen::bar::{act_button, blank};
use crate::screen::part::{way, ways};
use crate::screen::{Block, Headline, Place, Row, Screen, ScreenKind, World};
use crate::words::PartnerText;

/// Returns what there is; with a number (from 0), the question whether that one is to go.
pub(in crate::screen) fn show_personal(number: Option<u16>, world: &World) -> Option<Screen> {
    let words = world.words;
    let place = Place::Personal { number };
    let mut screen = blank(place, ScreenKind::Partners, words.label(PartnerText::NamesAndPlaces), world);
    let all = &world.partners.personal;
    if let Some(number) = number {
        let (belongs, of) = all.get(usize::from(number))?;
        let name = words.versions_of(&words.belongs(belongs), of.cell);
        screen.answer = Some(Headline { line: words.personal(of), ..Headline::new(name) });
        let told = [PartnerText::TakeOutMeans, PartnerText::TakeOutCannot];
        screen.blocks.extend(told.map(|text| Block::Text(words.label(text))));
        let act = PartnersAct::TakeOut { record: of.record, cell: of.cell.number() };
        screen.next = (of.here > 0).then(|| act_button(words.label(PartnerText::TakeOut), act));
        return Some(screen);
    }
    let row = |(number, (belongs, of)): (u16, &(_, crate::store::Personal))| {
        let name = words.versions_of(&words.belongs(belongs), of.cell);
        way(None, name, words.personal(of), Place::Personal { number: Some(number) })
    };
    let rows: Vec<Row> = (0..).zip(all).map(row).collect();
    let text = if rows.is_empty() { PartnerText::NothingPersonal } else { PartnerText::Personal };
    screen.answer = Some(Headline::new(words.label(text)));
    if !rows.is_empty() {
        screen.blocks = ways(rows);
        screen.blocks.push(Block::Text(words.label(PartnerText::TakeOutMeans)));
    }
    Some(screen)
}
