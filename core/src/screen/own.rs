//! Own details: language, name, hand, units.

use super::bar::{act_button, choice, empty, main_button, typed_name};
use super::part::{choices, go};
use super::{Act, Button, Doing, Done, Draft, Edit, Known, Own, Place, ScreenKind, World};
use crate::error::Fault;
use crate::record::Pit;
use crate::units::LengthUnit;
use crate::words::{Caption, Language, PartnerText, Words};
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

/// The first screen: the language and nothing else, each in itself.
pub(super) fn welcome(world: &World) -> Draft {
    let mut screen = empty(Place::Welcome, ScreenKind::Welcome, "Pitface".into(), world);
    screen.bar.undo = None;
    let each = |say: fn(&Words, Language) -> String| {
        Language::ALL.iter().map(move |&language| say(&Words::new(language, world.own.unit), language))
    };
    screen.known = each(|words, _| words.label(Caption::ChooseLanguage)).map(Known::Sentence).collect();
    let large = Language::ALL
        .iter()
        .zip(each(Words::label))
        .map(|(&language, label)| Button { strong: true, ..act_button(label, OwnAct::Language(language)) });
    screen.doing = vec![Doing::Choices { columns: 1, buttons: large.collect() }];
    screen
}

pub(super) fn show(world: &World) -> Draft {
    let (own, words) = (world.own, world.words);
    let mut screen = empty(Place::Own, ScreenKind::Own, words.label(Caption::Own), world);
    screen.known = vec![Known::Line(words.label(Caption::Privacy))];
    screen.known.extend(world.partners.team_word.then(|| Known::Line(words.label(Caption::TeamWordSet))));
    let two = |question: Caption, buttons: Vec<Button>| two(question, buttons, words);
    let answer = |label: Caption, act: OwnAct, chosen: bool| choice(words.label(label), act, chosen);
    let language = |&language: &Language| {
        let label = Words::new(language, own.unit).label(language);
        choice(label, OwnAct::Language(language), words.language() == language)
    };
    let inches = own.unit == LengthUnit::Inches;
    let keys = vec![
        answer(Caption::KeysUsual, OwnAct::VolumeKeys(false), !own.volume_keys),
        answer(Caption::KeysAnswer, OwnAct::VolumeKeys(true), own.volume_keys),
    ];
    screen.doing.extend(two(Caption::VolumeKeys, keys));
    screen.doing.extend(two(Caption::Language, Language::ALL.iter().map(language).collect()));
    let units = vec![
        answer(Caption::Centimetres, OwnAct::Inches(false), !inches),
        answer(Caption::Inches, OwnAct::Inches(true), inches),
    ];
    screen.doing.extend(two(Caption::Units, units));
    screen.doing.push(name(world));
    screen.doing.extend(two(Caption::Hand, hands(world)));
    screen.doing.extend(team_word(world));
    let personal = go(words.label(PartnerText::Personal), Place::Personal { number: None });
    screen.doing.push(choices(1, vec![personal]));
    screen.bar.main = Some(main_button(words.label(Caption::OwnDone), Act::Go(Place::Fields)));
    screen
}

fn two(question: Caption, buttons: Vec<Button>, words: &Words) -> [Doing; 2] {
    [Doing::Question(words.label(question)), Doing::Choices { columns: 2, buttons }]
}

fn name(world: &World) -> Doing {
    Doing::Typing {
        label: world.words.label(Caption::Name),
        value: world.own.name.clone(),
        act: OwnAct::Name.into(),
    }
}

/// The word is typed and never shown again.
fn team_word(world: &World) -> Vec<Doing> {
    let words = world.words;
    let label = words.label(Caption::TeamWord);
    let typing = Doing::Typing { label, value: String::new(), act: OwnAct::TeamWord.into() };
    if !world.partners.team_word {
        return vec![typing];
    }
    let forget = act_button(words.label(Caption::ForgetTeamWord), OwnAct::ForgetTeamWord);
    vec![typing, Doing::Choices { columns: 1, buttons: vec![forget] }]
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
    }
    let told = if place == Place::Welcome { String::new() } else { told(act, &own, world.words) };
    let edits = if *act == OwnAct::Name { named(place, &own, world) } else { Vec::new() };
    let place = if place == Place::Welcome { Place::Fields } else { place };
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

/// What is told, in the language as it now is.
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
        OwnAct::TeamWord | OwnAct::ForgetTeamWord => String::new(),
    }
}
