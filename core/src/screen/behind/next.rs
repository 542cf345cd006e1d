//! What is to be done now about a pass, as a place to go to.

use super::{HoleLook, HoleStep, OfPass, PassDetail};
use crate::advice::after_dig::{Check, NextStep, PassAdvice, unfinished};
use crate::answer::FieldAnswer;
use crate::record::{Pass, RecordId};
use crate::screen::bar::main_button;
use crate::screen::{Act, Button, Place};
use crate::words::{Caption, Words, WorkText};
use chrono::NaiveDate;

/// The one thing worth doing now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Next {
    /// What a hole cannot be told without.
    Say(PassDetail),
    /// Depths of a hole that was begun today.
    ReadOn(RecordId),
    /// A hole behind the machine.
    Dig,
    /// A check in a hole.
    Look(RecordId, HoleStep, WorkText),
    /// The zone as set.
    Zone,
    /// The machine set in another way.
    SetAnew(RecordId),
}

impl Next {
    /// By what the pass still lacks, then by what its holes say; `None` where there is nothing but to keep off or wait.
    pub fn of(answer: &FieldAnswer, pass: &Pass, said: &PassAdvice, today: NaiveDate) -> Option<Self> {
        if let Some(dig) = pass.after_digs.iter().find(|dig| unfinished(dig, today)) {
            return Some(Self::ReadOn(dig.id));
        }
        let tip = answer.to_loosen().any(|call| pass.zone.is_none_or(|zone| call.zone == zone));
        if pass.machine.is_none() && !answer.notes.machines.is_empty() {
            return Some(Self::Say(PassDetail::Machine));
        }
        if pass.tip_mm.is_none() && !tip {
            return Some(Self::Say(PassDetail::Tip));
        }
        match said.next {
            NextStep::DigBehind => Some(Self::Dig),
            NextStep::GoOn => Some(Self::Zone),
            NextStep::CheckFirst => said.check.map(|check| Self::check(check, pass)),
            NextStep::ChangeAndTry => pass.machine.map(Self::SetAnew),
            NextStep::KeepOff | NextStep::Wait | NextStep::StopLoosening => None,
        }
    }

    fn check(check: Check, pass: &Pass) -> Self {
        let Some(dig) = pass.after_digs.last().map(|dig| dig.id) else { return Self::Dig };
        let look = |look| HoleStep::Look { look, queued: false };
        match check {
            Check::RollAtTip if pass.tip_mm.is_none() => Self::Say(PassDetail::Tip),
            Check::RollAtTip => Self::Say(PassDetail::Roll),
            Check::TimeTheRun => Self::Say(PassDetail::Speed),
            Check::MeasureSlots | Check::SlotsAcross => {
                Self::Look(dig, HoleStep::Slot(0), WorkText::MeasureSlots)
            }
            Check::LookAtWalls => Self::Look(dig, look(HoleLook::Form), WorkText::LookWalls),
            Check::LookAtFeet => Self::Look(dig, look(HoleLook::Feet), WorkText::LookFeet),
            Check::LookForOldSlots => Self::Look(dig, look(HoleLook::OldSlots), WorkText::LookOld),
            Check::ReadAcross => Self::Dig,
        }
    }

    pub fn place(self, field: RecordId, pass: &Pass) -> Place {
        let in_hole = |dig, step| Place::InHole { field, pass: pass.id, dig, step, from_mm: None };
        match self {
            Self::Say(detail) => {
                Place::PassDetail { field, pass: OfPass::Noted(pass.id), detail, from_mm: None }
            }
            Self::ReadOn(dig) => Place::AfterDig { field, pass: pass.id, dig },
            Self::Dig => in_hole(None, HoleStep::Reading(0)),
            Self::Look(dig, step, _) => in_hole(Some(dig), step),
            Self::Zone => Place::NewPass { field, machine: pass.machine, zone: pass.zone },
            Self::SetAnew(machine) => Place::Machine { field, machine: Some(machine) },
        }
    }

    pub fn button(self, field: RecordId, pass: &Pass, words: &Words) -> Button {
        let label = match self {
            Self::Say(PassDetail::Machine) => words.label(WorkText::SayMachine),
            Self::Say(PassDetail::Roll) => words.label(WorkText::RollNow),
            Self::Say(PassDetail::Speed) => words.label(WorkText::TimeRun),
            Self::Say(_) => words.label(WorkText::SayTip),
            Self::ReadOn(_) => words.label(WorkText::ReadOn),
            Self::Dig => words.label(Caption::DigBehind),
            Self::Look(_, _, text) => words.label(text),
            Self::Zone => words.label(WorkText::WorkZone),
            Self::SetAnew(_) => words.label(WorkText::SetAnew),
        };
        main_button(label, Act::Go(self.place(field, pass)))
    }
}
