//! Who else is there, and one of them.

use super::super::bar::{act_button, empty, main_button};
use super::super::part::{choices, go, section};
use super::super::{
    Act, Ask, Button, Does, Doing, Draft, Known, Place, Row, ScreenKind, Size, World, hand_over,
};
use super::{Decided, PartnersAct};
use crate::merge::DeviceId;
use crate::store::{Partner, Vouched, Vouching, Waiting};
use crate::words::{Caption, PartnerText};

pub(in crate::screen) fn show(world: &World) -> Draft {
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
    let asks = partners.vouchings.iter().filter(|vouching| vouching.standing == Vouched::Asks);
    let asks: Vec<Row> = asks.map(|vouching| asking(vouching, world)).collect();
    screen.known.extend((!asks.is_empty()).then_some(Known::Rows(asks)));
    screen.known.extend(super::versions::rows(world));
    let alone = words.nobody_else(&partners.alone, partners.alone_since);
    let with_others = partners.all.iter().any(|partner| partner.edits > 0);
    screen.known.extend(alone.or_else(|| with_others.then(|| words.not_carried(0))).map(Known::Line));
    let [here, named] = partners.photos;
    screen.known.extend((named > 0).then(|| Known::Line(words.photos_here(here, named))));
    screen.known.push(Known::Line(words.this_device(&world.own.name)));
    screen.known.push(Known::Sentence(partners.own.to_string()));
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
    screen.known.extend(words.waits(&partners.waiting).map(Known::Line));
    let newer = partners.not_shown;
    screen.known.extend((newer > 0).then(|| Known::Line(words.not_shown(newer))));
    let lacking =
        partners.missing.iter().map(|lacks| words.edits_missing(lacks, partners.holder(lacks.device)));
    screen.known.extend(section(world, PartnerText::Lacking, lacking));
    screen.known.extend(hand_over::privacy(words).map(Known::Line));
    let take_in = Button::new(words.label(Caption::OpenFile), Does::Ask(Ask::OpenFile));
    screen.doing =
        vec![choices(2, vec![notes_alone(None, world).sized(Size::Small), take_in.sized(Size::Small)])];
    if partners.waiting != Waiting::default() {
        let empty = act_button(label(PartnerText::EmptyWaiting), decide(Decided::EmptyWaiting));
        screen.doing.insert(0, choices(1, vec![empty.sized(Size::Small)]));
    }
    screen.bar.main = Some(everything(None, world));
    screen
}

/// One that waits to be accepted, or what is known of an accepted one.
pub(in crate::screen) fn show_one(device: DeviceId, world: &World) -> Option<Draft> {
    let (words, partners) = (world.words, world.partners);
    let partner = partners.all.iter().find(|partner| partner.device == device)?;
    let who = words.device(device, &partner.holder);
    let place = Place::Partner { device };
    let mut screen = empty(place, ScreenKind::Partners, words.label(PartnerText::Title), world);
    // Alone, so that nothing of theirs stands beside it.
    screen.known.push(Known::Sentence(device.to_string()));
    screen.known.push(Known::Line(words.partner(partner, false, true)));
    let missing = partners.missing.iter().filter(|lacks| lacks.device == device);
    let told = missing
        .map(|lacks| words.edits_missing(lacks, &partner.holder))
        .chain(partner.copied.then(|| words.copied(device, &partner.holder)))
        .chain(partner.clock_wrong.then(|| words.clock_wrong(device, &partner.holder)));
    screen.known.extend(told.map(Known::Line));
    let said =
        partners.vouchings.iter().filter(|vouching| [vouching.signer, vouching.device].contains(&device));
    screen.known.extend(said.map(|vouching| Known::Line(words.vouching(vouching, &partners.all))));
    if partner.refused_ms.is_some() || is_stranger(partner) {
        let compare =
            [PartnerText::Compare, PartnerText::AcceptMeans].map(|text| Known::Line(words.label(text)));
        screen.known.extend(compare);
        screen.doing = vec![Doing::Question(words.label(PartnerText::SameSigns))];
        screen.bar.main = Some(main_button(words.accept(&who), decide(Decided::Accept(device))));
    } else if partner.accepted && !partner.own {
        screen.known.push(Known::Line(words.label(PartnerText::OnlyLacking)));
        screen.doing = vec![choices(1, vec![notes_alone(Some(device), world)])];
        screen.bar.main = Some(everything(Some(device), world));
    }
    let asks = |vouching: &&Vouching| vouching.signer == device && vouching.standing == Vouched::Asks;
    for vouching in partners.vouchings.iter().filter(asks) {
        let act = decide(Decided::Believe { signer: device, device: vouching.device });
        let believe = act_button(words.label(PartnerText::Believe), act);
        screen.doing.insert(0, choices(1, vec![believe.sized(Size::Small)]));
    }
    if partner.refused_ms.is_none() && !partner.own {
        screen.known.push(Known::Line(words.label(PartnerText::RefuseMeans)));
        let refuse = act_button(words.label(PartnerText::Refuse), decide(Decided::Refuse(device)));
        screen.doing.insert(0, choices(1, vec![refuse.sized(Size::Small)]));
    }
    Some(screen)
}

fn decide(decided: Decided) -> PartnersAct {
    PartnersAct::Decide(decided)
}

/// What waits for a yes, with the way to where it is said.
fn asking(vouching: &Vouching, world: &World) -> Row {
    Row {
        icon: None,
        title: world.words.label(PartnerText::AnswersFor),
        lines: vec![world.words.vouching(vouching, &world.partners.all)],
        does: Does::Act(Act::Go(Place::Partner { device: vouching.signer })),
    }
}

/// Where a person has to say whether to believe it.
fn is_stranger(partner: &Partner) -> bool {
    !partner.accepted && !partner.own && partner.refused_ms.is_none()
}

fn row(partner: &Partner, world: &World) -> Row {
    let words = world.words;
    Row {
        icon: None,
        title: words.device(partner.device, &partner.holder),
        lines: vec![words.partner_state(partner)],
        does: Does::Act(Act::Go(Place::Partner { device: partner.device })),
    }
}

fn everything(to: Option<DeviceId>, world: &World) -> Button {
    let ask = Ask::ShareBundle { to, with_photos: true };
    let label = world.words.label(PartnerText::Everything);
    let note = world.words.label(PartnerText::WithPhotos);
    Button { strong: true, note, ..Button::new(label, Does::Ask(ask)) }
}

fn notes_alone(to: Option<DeviceId>, world: &World) -> Button {
    let ask = Ask::ShareBundle { to, with_photos: false };
    Button::new(world.words.label(PartnerText::NotesAlone), Does::Ask(ask))
}

/// The way here from the list of fields; what nobody else has stands on it.
pub(in crate::screen) fn not_carried_note(world: &World) -> Button {
    let words = world.words;
    let note = words.nobody_else_short(&world.partners.alone).unwrap_or_default();
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
