//! Own details: language, name, hand, units.

use super::bar::{act_button, choice, empty, main_button, typed_name};
use super::{Act, Button, Doing, Done, Known, Own, Place, Screen, ScreenKind, Size, World};
use crate::error::Fault;
use crate::units::LengthUnit;
use crate::words::{Caption, Language, Words};
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
}

impl From<OwnAct> for Act {
    fn from(act: OwnAct) -> Self {
        Self::Own(act)
    }
}

/// The first screen: the language and nothing else, each in itself.
pub(super) fn welcome(world: &World) -> Screen {
    let mut screen = empty(Place::Welcome, ScreenKind::Welcome, "Pitface".into(), world);
    screen.bar.undo = None;
    let each = |say: fn(&Words, Language) -> String| {
        Language::ALL.iter().map(move |&language| say(&Words::new(language, world.own.unit), language))
    };
    screen.known = each(|words, _| words.label(Caption::ChooseLanguage)).map(Known::Sentence).collect();
    let large = Language::ALL.iter().zip(each(Words::label)).map(|(&language, label)| Button {
        size: Size::Large,
        ..act_button(label, OwnAct::Language(language))
    });
    screen.doing = vec![Doing::Choices { columns: 1, buttons: large.collect() }];
    screen
}

pub(super) fn show(world: &World) -> Screen {
    let (own, words) = (world.own, world.words);
    let mut screen = empty(Place::Own, ScreenKind::Own, words.label(Caption::Own), world);
    screen.known = vec![Known::Line(words.label(Caption::Privacy))];
    let two = |question: Caption, buttons: Vec<Button>| {
        [Doing::Question(words.label(question)), Doing::Choices { columns: 2, buttons }]
    };
    let answer = |label: Caption, act: OwnAct, chosen: bool| choice(words.label(label), act, chosen);
    let language = |&language: &Language| {
        let label = Words::new(language, own.unit).label(language);
        choice(label, OwnAct::Language(language), words.language() == language)
    };
    let inches = own.unit == LengthUnit::Inches;
    screen.doing.extend(two(Caption::Language, Language::ALL.iter().map(language).collect()));
    let units = vec![
        answer(Caption::Centimetres, OwnAct::Inches(false), !inches),
        answer(Caption::Inches, OwnAct::Inches(true), inches),
    ];
    screen.doing.extend(two(Caption::Units, units));
    screen.doing.push(Doing::Typing {
        label: words.label(Caption::Name),
        value: own.name.clone(),
        act: OwnAct::Name.into(),
    });
    let hands = vec![
        answer(Caption::LeftHand, OwnAct::LeftHanded(true), own.left_handed),
        answer(Caption::RightHand, OwnAct::LeftHanded(false), !own.left_handed),
    ];
    screen.doing.extend(two(Caption::Hand, hands));
    screen.bar.main = Some(main_button(words.label(Caption::OwnDone), Act::Go(Place::Fields)));
    screen
}

pub(super) fn tap(place: Place, act: &OwnAct, text: Option<&str>, world: &World) -> Result<Done, Fault> {
    let mut own: Own = world.own.clone();
    match act {
        OwnAct::Language(language) => own.language = Some(*language),
        OwnAct::Name => own.name = typed_name(text, world.words)?,
        OwnAct::LeftHanded(left_handed) => own.left_handed = *left_handed,
        OwnAct::Inches(true) => own.unit = LengthUnit::Inches,
        OwnAct::Inches(false) => own.unit = LengthUnit::Centimetres,
    }
    let place = if place == Place::Welcome { Place::Fields } else { place };
    Ok(Done { own: Some(own), ..Done::go(place) })
}
