//! Own details: language, name, hand, units.

use super::bar::{act_button, blank, choice, typed_name};
use super::field;
use super::part::{way, ways};
use super::{Act, Block, Button, Done, Edit, Headline, Own, Place, Screen, ScreenKind, World};
use crate::error::Fault;
use crate::record::Pit;
use crate::record::codes::codes;
use crate::units::LengthUnit;
use crate::words::{Caption, FieldText, Language, PartnerText, Words};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OwnAct {
    /// The language; from the first screen it leads on to the fields.
    Language(Language),
    /// The name typed.
    Name,
    /// The phone is held in the left hand.
    LeftHanded(bool),
    /// Depths in inches.
    Inches(bool),
    /// The volume keys answer the knife walk.
    VolumeKeys(bool),
    /// Whether screens are dark on light.
    Light(Light),
    /// The team word typed.
    TeamWord,
    /// The team word is no longer set.
    ForgetTeamWord,
}

impl From<OwnAct> for Act {
    fn from(act: OwnAct) -> Self {
        Self::Own(act)
    }
}

codes!(
    /// Whether screens are dark on light.
    Light {
        /// As the phone is set.
        Phone = "phone",
        /// Dark on light, for the sun.
        Day = "day",
        /// Light on dark.
        Dark = "dark",
    }
);

codes!(
    /// One of the own details.
    Setting {
        Name = "name",
        Language = "language",
        Hand = "hand",
        Light = "light",
        Units = "units",
        VolumeKeys = "volume_keys",
        TeamWord = "team_word",
    }
);

/// The first screen: what this is, and the language, which is that of the phone until another is chosen.
pub(super) fn welcome(world: &World) -> Screen {
    let mut screen = field::list::first(Place::Welcome, world);
    let answers = given(Setting::Language, world);
    let text = world.words.label(Caption::ChooseLanguage);
    screen.blocks.insert(0, Block::Question { text, columns: 2, answers });
    screen
}

/// All of them, each with what stands there now.
pub(super) fn show(world: &World) -> Screen {
    let words = world.words;
    let mut screen = blank(Place::Own, ScreenKind::Own, words.label(Caption::Own), world);
    screen.answer = Some(Headline {
        line: words.label(Caption::Privacy),
        ..Headline::new(words.label(FieldText::OwnAsked))
    });
    let row = |&setting: &Setting| {
        way(None, called(setting, words), now(setting, world), Place::Setting { setting })
    };
    let personal =
        way(None, words.label(PartnerText::Personal), String::new(), Place::Personal { number: None });
    let deleted = way(None, words.label(FieldText::DeletedHere), String::new(), Place::WentAway);
    screen.blocks = ways(Setting::ALL.iter().map(row).chain([personal, deleted]));
    screen
}

/// Returns what a detail is called.
fn called(setting: Setting, words: &Words) -> String {
    match setting {
        Setting::Name => words.label(Caption::Name),
        Setting::Language => words.label(Caption::Language),
        Setting::Hand => words.label(Caption::Hand),
        Setting::Light => words.label(FieldText::Light),
        Setting::Units => words.label(Caption::Units),
        Setting::VolumeKeys => words.label(Caption::VolumeKeys),
        Setting::TeamWord => words.label(Caption::TeamWord),
    }
}

/// Returns what stands there now: of what has answers, the answer given.
fn now(setting: Setting, world: &World) -> String {
    let words = world.words;
    match setting {
        Setting::Name if world.own.name.is_empty() => words.label(Caption::NotNoted),
        Setting::Name => words.name(&world.own.name),
        Setting::TeamWord if world.partners.team_word => words.label(FieldText::TeamWordSet),
        Setting::TeamWord => words.label(FieldText::TeamWordNone),
        _ => given(setting, world)
            .into_iter()
            .find(|answer| answer.chosen)
            .map_or_else(String::new, |answer| answer.label),
    }
}

/// One of them: its answers, or a line to be typed.
pub(super) fn show_one(setting: Setting, world: &World) -> Screen {
    let words = world.words;
    let place = Place::Setting { setting };
    let mut screen = blank(place, ScreenKind::Own, words.label(Caption::Own), world);
    screen.answer = Some(Headline::new(called(setting, words)));
    screen.blocks = match setting {
        Setting::Name => vec![typing(Caption::Name, world.own.name.clone(), OwnAct::Name, words)],
        Setting::TeamWord => team_word(world),
        _ => vec![Block::Question { text: String::new(), columns: 1, answers: given(setting, world) }],
    };
    let enter = match setting {
        Setting::Name => Some(OwnAct::Name),
        Setting::TeamWord => Some(OwnAct::TeamWord),
        _ => None,
    };
    screen.next = enter.map(|act| act_button(words.label(FieldText::Keep), act));
    screen
}

/// The answers of a detail that has some.
fn given(setting: Setting, world: &World) -> Vec<Button> {
    let (own, words) = (world.own, world.words);
    let answer = |label: Caption, act: OwnAct, chosen: bool| choice(words.label(label), act, chosen);
    match setting {
        Setting::Name | Setting::TeamWord => Vec::new(),
        Setting::Language => {
            let language = |&language: &Language| {
                let label = Words::new(language, own.unit).label(language);
                choice(label, OwnAct::Language(language), words.language() == language)
            };
            Language::ALL.iter().map(language).collect()
        }
        Setting::Hand => hands(world),
        Setting::Light => {
            let light = |&light: &Light| {
                choice(words.label(light_text(light)), OwnAct::Light(light), own.light == light)
            };
            Light::ALL.iter().map(light).collect()
        }
        Setting::Units => {
            let inches = own.unit == LengthUnit::Inches;
            vec![
                answer(Caption::Centimetres, OwnAct::Inches(false), !inches),
                answer(Caption::Inches, OwnAct::Inches(true), inches),
            ]
        }
        Setting::VolumeKeys => vec![
            answer(Caption::KeysUsual, OwnAct::VolumeKeys(false), !own.volume_keys),
            answer(Caption::KeysAnswer, OwnAct::VolumeKeys(true), own.volume_keys),
        ],
    }
}

const fn light_text(light: Light) -> FieldText {
    match light {
        Light::Phone => FieldText::LightPhone,
        Light::Day => FieldText::LightDay,
        Light::Dark => FieldText::LightDark,
    }
}

fn typing(label: Caption, value: String, act: OwnAct, words: &Words) -> Block {
    Block::Typing { label: words.label(label), value, act: act.into(), long: false }
}

/// The word is typed and never shown again.
fn team_word(world: &World) -> Vec<Block> {
    let words = world.words;
    let mut blocks = vec![typing(Caption::TeamWord, String::new(), OwnAct::TeamWord, words)];
    if world.partners.team_word {
        blocks.push(Block::Text(words.label(Caption::TeamWordSet)));
        let forget = act_button(words.label(Caption::ForgetTeamWord), OwnAct::ForgetTeamWord);
        blocks.push(Block::Question { text: String::new(), columns: 1, answers: vec![forget] });
    }
    blocks
}

fn hands(world: &World) -> Vec<Button> {
    let hand = |label: Caption, left: bool| {
        choice(world.words.label(label), OwnAct::LeftHanded(left), world.own.left_handed == left)
    };
    vec![hand(Caption::LeftHand, true), hand(Caption::RightHand, false)]
}

pub(super) fn tap(place: Place, act: &OwnAct, text: Option<&str>, world: &World) -> Result<Done, Fault> {
    let mut own: Own = world.own.clone();
    match act {
        // Whether it will do is known where files are locked; there it is told too.
        OwnAct::TeamWord => {
            return Ok(Done { team_word: Some(text.unwrap_or_default().to_owned()), ..Done::go(place) });
        }
        OwnAct::ForgetTeamWord => return Ok(Done { team_word: Some(String::new()), ..Done::go(place) }),
        OwnAct::Language(language) => own.language = Some(*language),
        OwnAct::Name => own.name = typed_name(text, world.words)?,
        OwnAct::LeftHanded(left_handed) => own.left_handed = *left_handed,
        OwnAct::Inches(true) => own.unit = LengthUnit::Inches,
        OwnAct::Inches(false) => own.unit = LengthUnit::Centimetres,
        OwnAct::VolumeKeys(answer) => own.volume_keys = *answer,
        OwnAct::Light(light) => own.light = *light,
    }
    let told = if place == Place::Welcome { String::new() } else { told(act, &own, world.words) };
    let edits = if *act == OwnAct::Name { named(place, &own, world) } else { Vec::new() };
    let place = match place {
        Place::Welcome => Place::Fields,
        // One question is answered: back to all of them, or on the first start to the fields.
        Place::Setting { .. } if world.fields.is_empty() && matches!(act, OwnAct::Language(_)) => {
            Place::Fields
        }
        Place::Setting { .. } => Place::Own,
        _ => place,
    };
    Ok(Done { edits, own: Some(own), told, ..Done::go(place) })
}

/// The pit at which the name was asked for carries it, too.
fn named(place: Place, own: &Own, world: &World) -> Vec<Edit> {
    let Place::StartPit { field, pit: Some(pit) } = place else { return Vec::new() };
    let pits = world.notes(field).map_or(&[][..], |notes| &notes.pits);
    let unnamed = pits.iter().find(|its| its.id == pit && its.by.is_none());
    let by = |its: &Pit| Edit::Pit { field, pit: Pit { by: Some(own.name.clone()), ..its.clone() } };
    unnamed.map(by).into_iter().collect()
}

/// Returns what is told, in the language as it now is.
fn told(act: &OwnAct, own: &Own, words: &Words) -> String {
    let words = &Words::new(own.language.unwrap_or(words.language()), own.unit);
    match act {
        OwnAct::Language(language) => words.kept(&words.label(*language)),
        OwnAct::Name => words.kept(&own.name),
        OwnAct::LeftHanded(left) => words.hand_kept(*left),
        OwnAct::Inches(inches) => {
            words.kept(&words.label(if *inches { Caption::Inches } else { Caption::Centimetres }))
        }
        OwnAct::VolumeKeys(answer) => words.keys_kept(*answer),
        OwnAct::Light(light) => words.kept(&words.label(light_text(*light))),
        OwnAct::TeamWord | OwnAct::ForgetTeamWord => String::new(),
    }
}
