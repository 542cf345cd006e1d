//! Who else is there, and one of them.

use super::super::bar::{empty, main_button};
use super::super::part::{choices, go, section};
use super::super::{
    Act, Ask, Button, Does, Doing, Known, Place, Row, Screen, ScreenKind, Size, World, hand_over,
};
use super::PartnersAct;
use crate::merge::DeviceId;
use crate::store::Partner;
use crate::words::{Caption, PartnerText};

pub(in crate::screen) fn show(world: &World) -> Screen {
    let (words, partners) = (world.words, world.partners);
    let label = |text: PartnerText| words.label(text);
    let mut screen = empty(Place::Partners, ScreenKind::Partners, label(PartnerText::Title), world);
    screen.known.extend(damage(world).into_iter().map(Known::Sentence));
    let waits = partners.all.iter().filter(|partner| is_stranger(partner)).map(|partner| row(partner, world));
    let waits: Vec<Row> = waits.collect();
    let nobody = partners.all.is_empty();
    if !waits.is_empty() {
        screen.known.extend([Known::Sentence(label(PartnerText::Waiting)), Known::Rows(waits)]);
    }
    screen.known.extend(super::versions::rows(world));
    let anything = partners.not_carried > 0 || partners.all.iter().any(|partner| partner.edits > 0);
    screen.known.extend(anything.then(|| Known::Line(words.not_carried(partners.not_carried))));
    let [here, named] = partners.photos;
    screen.known.extend((named > 0).then(|| Known::Line(words.photos_here(here, named))));
    screen.known.push(Known::Line(words.this_device(partners.own, &world.own.name)));
    let others: Vec<Row> = partners
        .all
        .iter()
        .filter(|partner| !is_stranger(partner))
        .map(|partner| row(partner, world))
        .collect();
    if nobody {
        screen.known.push(Known::Line(label(PartnerText::NobodyYet)));
    }
    if !others.is_empty() {
        screen.known.extend([Known::Line(label(PartnerText::Others)), Known::Rows(others)]);
    }
    let newer = partners.not_shown;
    screen.known.extend((newer > 0).then(|| Known::Line(words.not_shown(newer))));
    let lacking =
        partners.missing.iter().map(|lacks| words.edits_missing(lacks, partners.holder(lacks.device)));
    screen.known.extend(section(world, PartnerText::Lacking, lacking));
    screen.known.extend(hand_over::privacy(words).map(Known::Line));
    let take_in = Button::new(words.label(Caption::OpenFile), Does::Ask(Ask::OpenFile));
    screen.doing =
        vec![choices(2, vec![notes_alone(None, world).sized(Size::Small), take_in.sized(Size::Small)])];
    screen.bar.main = Some(everything(None, world));
    screen
}

/// One that waits to be accepted, or what is known of an accepted one.
pub(in crate::screen) fn show_one(device: DeviceId, world: &World) -> Option<Screen> {
    let (words, partners) = (world.words, world.partners);
    let partner = partners.all.iter().find(|partner| partner.device == device)?;
    let who = words.device(device, &partner.holder);
    let place = Place::Partner { device };
    let mut screen = empty(place, ScreenKind::Partners, words.label(PartnerText::Title), world);
    screen.known.push(Known::Sentence(words.partner(partner, false, true)));
    let missing = partners.missing.iter().filter(|lacks| lacks.device == device);
    let told = missing
        .map(|lacks| words.edits_missing(lacks, &partner.holder))
        .chain(partner.copied.then(|| words.copied(device, &partner.holder)))
        .chain(partner.clock_wrong.then(|| words.clock_wrong(device, &partner.holder)));
    screen.known.extend(told.map(Known::Line));
    if is_stranger(partner) {
        let compare =
            [PartnerText::Compare, PartnerText::AcceptMeans].map(|text| Known::Line(words.label(text)));
        screen.known.extend(compare);
        screen.doing = vec![Doing::Question(words.label(PartnerText::SameSigns))];
        screen.bar.main = Some(main_button(words.accept(&who), PartnersAct::Accept(device)));
    } else if partner.accepted && !partner.own {
        screen.known.push(Known::Line(words.label(PartnerText::OnlyLacking)));
        screen.doing = vec![choices(1, vec![notes_alone(Some(device), world)])];
        screen.bar.main = Some(everything(Some(device), world));
    }
    Some(screen)
}

/// Where a person has to say whether to believe it.
fn is_stranger(partner: &Partner) -> bool {
    !partner.accepted && !partner.own
}

fn row(partner: &Partner, world: &World) -> Row {
    let words = world.words;
    Row {
        title: words.device(partner.device, &partner.holder),
        lines: vec![words.partner_state(partner)],
        does: Does::Act(Act::Go(Place::Partner { device: partner.device })),
    }
}

fn everything(to: Option<DeviceId>, world: &World) -> Button {
    let ask = Ask::ShareBundle { to, with_photos: true };
    let label = world.words.label(PartnerText::Everything);
    let note = world.words.label(PartnerText::WithPhotos);
    Button { size: Size::Large, note, ..Button::new(label, Does::Ask(ask)) }
}

fn notes_alone(to: Option<DeviceId>, world: &World) -> Button {
    let ask = Ask::ShareBundle { to, with_photos: false };
    Button::new(world.words.label(PartnerText::NotesAlone), Does::Ask(ask))
}

/// The way here from the list of fields; what nobody else has stands on it.
pub(in crate::screen) fn not_carried_note(world: &World) -> Button {
    let words = world.words;
    let edits = world.partners.not_carried;
    let note = if edits == 0 { String::new() } else { words.not_carried_short(edits) };
    Button { note, ..go(words.label(PartnerText::Title), Place::Partners) }
}

/// What is not as it was written; nothing where all is, or nothing was looked at yet.
fn damage(world: &World) -> Vec<String> {
    let (words, partners) = (world.words, world.partners);
    let checkup = &partners.checkup;
    let edits =
        checkup.damaged.iter().map(|damaged| words.edits_damaged(damaged, partners.holder(damaged.device)));
    let photos = (!checkup.photos.is_empty()).then(|| words.photos_damaged(checkup.photos.len()));
    (checkup.unreadable || !checkup.damaged.is_empty())
        .then(|| words.label(PartnerText::StoreDamaged))
        .into_iter()
        .chain(edits)
        .chain(checkup.made_anew.then(|| words.checked_cells()))
        .chain(photos)
        .collect()
}
