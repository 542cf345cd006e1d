//! Who else is there, and one of them.

use super::super::bar::{act_button, blank};
use super::super::part::{go, ways, ways_under};
use super::super::{
    Act, Ask, Block, Button, Does, Headline, Place, Row, Screen, ScreenKind, Section, World, hand_over,
};
use super::{Decided, PartnersAct};
use crate::merge::DeviceId;
use crate::picture::{Icon, icon};
use crate::store::{Partner, Vouched, Vouching, Waiting};
use crate::words::{Caption, FieldText, PartnerText};

pub(in crate::screen) fn show(world: &World) -> Screen {
    let (words, partners) = (world.words, world.partners);
    let label = |text: PartnerText| words.label(text);
    let mut screen = blank(Place::Partners, ScreenKind::Partners, label(PartnerText::Title), world);
    let damage = damage(world);
    let waits: Vec<Row> = partners
        .all
        .iter()
        .filter(|partner| is_stranger(partner))
        .map(|partner| row(partner, world))
        .collect();
    let asks = partners.vouchings.iter().filter(|vouching| vouching.standing == Vouched::Asks);
    let asks: Vec<Row> = asks.map(|vouching| asking(vouching, world)).collect();
    let settles = super::versions::rows(world);
    // What asks something of a person leads; else nothing does.
    let asked = if let Some(first) = damage.first() {
        first.clone()
    } else if !settles.is_empty() {
        label(PartnerText::ToSettle)
    } else if !waits.is_empty() {
        label(PartnerText::Waiting)
    } else if !asks.is_empty() {
        label(PartnerText::AnswersFor)
    } else {
        words.label(FieldText::Settled)
    };
    // What nobody else has, in days and pits; with partners, also that it is nothing.
    let with_others = partners.all.iter().any(|partner| partner.edits > 0);
    let alone = words.nobody_else(&partners.alone, partners.alone_since);
    let line = alone.or_else(|| with_others.then(|| words.not_carried(0))).unwrap_or_default();
    screen.answer = Some(Headline { line, ..Headline::new(asked) });
    screen.blocks.extend(damage.into_iter().skip(1).map(Block::Text));
    screen.blocks.extend(ways(settles));
    screen.blocks.extend(ways_under(label(PartnerText::Waiting), waits));
    screen.blocks.extend(ways(asks));
    screen.blocks.extend(words.waits(&partners.waiting).map(Block::Text));
    if partners.waiting != Waiting::default() {
        let empty = act_button(label(PartnerText::EmptyWaiting), decide(Decided::EmptyWaiting));
        screen.blocks.push(Block::Question { text: String::new(), columns: 1, answers: vec![empty] });
    }
    // The signs stand alone on their line, to be read out.
    screen.blocks.push(Block::Section(Section {
        heading: words.this_device(&world.own.name),
        lines: vec![partners.own.to_string()],
    }));
    let others =
        partners.all.iter().filter(|partner| !is_stranger(partner)).map(|partner| row(partner, world));
    screen.blocks.extend(ways_under(label(PartnerText::Others), others));
    screen.blocks.extend(ways([notes_alone(None, world)]));
    let lacking =
        partners.missing.iter().map(|lacks| words.edits_missing(lacks, partners.holder(lacks.device)));
    let lacking: Vec<String> = lacking.collect();
    if !lacking.is_empty() {
        screen.blocks.push(Block::Section(Section { heading: label(PartnerText::Lacking), lines: lacking }));
    }
    let [here, named] = partners.photos;
    let newer = partners.not_shown;
    let told = partners.all.is_empty().then(|| label(PartnerText::NobodyYet));
    let told = told.into_iter().chain((named > 0).then(|| words.photos_here(here, named)));
    screen.blocks.extend(told.chain((newer > 0).then(|| words.not_shown(newer))).map(Block::Text));
    screen.caution = words.label(Caption::Whom);
    screen.more = hand_over::leaves(world).into_iter().collect();
    screen.tools.push(Button {
        drawing: Some(icon(Icon::OpenFile)),
        ..Button::new(words.label(Caption::OpenFile), Does::Ask(Ask::OpenFile))
    });
    screen.next = Some(everything(None, world));
    screen
}

/// One that waits to be accepted, or what is known of an accepted one.
pub(in crate::screen) fn show_one(device: DeviceId, world: &World) -> Option<Screen> {
    let (words, partners) = (world.words, world.partners);
    let partner = partners.all.iter().find(|partner| partner.device == device)?;
    let who = words.device(device, &partner.holder);
    let place = Place::Partner { device };
    let mut screen = blank(place, ScreenKind::Partners, words.label(PartnerText::Title), world);
    // Alone, so that nothing of theirs stands beside it.
    let line = words.partner(partner, false, true);
    screen.answer = Some(Headline { line, ..Headline::new(device.to_string()) });
    let missing = partners.missing.iter().filter(|lacks| lacks.device == device);
    let told = missing
        .map(|lacks| words.edits_missing(lacks, &partner.holder))
        .chain(partner.copied.then(|| words.copied(device, &partner.holder)))
        .chain(partner.clock_wrong.then(|| words.clock_wrong(device, &partner.holder)));
    screen.blocks.extend(told.map(Block::Text));
    let said =
        partners.vouchings.iter().filter(|vouching| [vouching.signer, vouching.device].contains(&device));
    screen.blocks.extend(said.map(|vouching| Block::Text(words.vouching(vouching, &partners.all))));
    let question =
        |answer: Button| Block::Question { text: String::new(), columns: 1, answers: vec![answer] };
    let asks = |vouching: &&Vouching| vouching.signer == device && vouching.standing == Vouched::Asks;
    for vouching in partners.vouchings.iter().filter(asks) {
        let act = decide(Decided::Believe { signer: device, device: vouching.device });
        screen.blocks.push(question(act_button(words.label(PartnerText::Believe), act)));
    }
    if partner.refused_ms.is_some() || is_stranger(partner) {
        let compare = [PartnerText::Compare, PartnerText::AcceptMeans, PartnerText::SameSigns];
        screen.blocks.extend(compare.map(|text| Block::Text(words.label(text))));
        screen.next = Some(act_button(words.accept(&who), decide(Decided::Accept(device))));
    } else if partner.accepted && !partner.own {
        screen.blocks.push(Block::Text(words.label(PartnerText::OnlyLacking)));
        screen.blocks.extend(ways([notes_alone(Some(device), world)]));
        screen.next = Some(everything(Some(device), world));
    }
    if partner.refused_ms.is_none() && !partner.own {
        screen.blocks.push(Block::Text(words.label(PartnerText::RefuseMeans)));
        screen
            .blocks
            .push(question(act_button(words.label(PartnerText::Refuse), decide(Decided::Refuse(device)))));
    }
    Some(screen)
}

fn decide(decided: Decided) -> PartnersAct {
    PartnersAct::Decide(decided)
}

/// Returns what waits for a yes, with the way to where it is said.
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
    Button { note, ..Button::new(label, Does::Ask(ask)) }
}

fn notes_alone(to: Option<DeviceId>, world: &World) -> Row {
    Row {
        icon: Some(icon(Icon::Page)),
        title: world.words.label(PartnerText::NotesAlone),
        lines: Vec::new(),
        does: Does::Ask(Ask::ShareBundle { to, with_photos: false }),
    }
}

/// The way here from the list of fields; what nobody else has stands on it.
pub(in crate::screen) fn not_carried_note(world: &World) -> Button {
    let words = world.words;
    let note = words.nobody_else_short(&world.partners.alone).unwrap_or_default();
    Button { note, ..go(words.label(PartnerText::Title), Place::Partners) }
}

/// Returns what is not as it was written; nothing where all is, or nothing was looked at yet.
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
