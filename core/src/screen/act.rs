//! Where one is in the app, what was tapped, and what comes of it: records to be saved, in order, and the place to go to.

use crate::merge::DeviceId;
use crate::reading::Clue;
use crate::record::{AfterDig, Field, Layer, Machine, Pass, Photo, Pit, RecordId, Roll, Step, Zone};
use crate::store::Cell;
use crate::words::Detail;
use serde::{Deserialize, Serialize};

/// Where in the app; written as text (JSON) it survives the app. A record that is gone leads to the place above it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "fields are the ids of what is shown")]
pub enum Place {
    /// First start: the language.
    Welcome,
    /// All fields.
    Fields,
    /// The fields whose names hold what is sought.
    FoundFields {
        sought: super::field::Sought,
    },
    /// A new field: its name is typed.
    StartField,
    Field {
        field: RecordId,
    },
    /// The pits of a field.
    Pits {
        field: RecordId,
    },
    /// What is known of a field as a whole.
    Details {
        field: RecordId,
    },
    /// One of its details, with its buttons.
    Detail {
        field: RecordId,
        detail: Detail,
    },
    /// Lines of drains, cables and pipes; with one, its places.
    Lines {
        field: RecordId,
        line: Option<RecordId>,
    },
    /// One thing asked about such a line.
    Line {
        field: RecordId,
        line: RecordId,
        asked: super::field::line::LineAsked,
    },
    /// The edge of a field, walked corner by corner.
    Outline {
        field: RecordId,
    },
    /// A pit from its place to the hole dug.
    StartPit {
        field: RecordId,
        pit: Option<RecordId>,
    },
    /// Where a pit lies, by hand on the plan.
    OnPlan {
        field: RecordId,
        pit: RecordId,
    },
    KnifeWalk {
        field: RecordId,
        pit: RecordId,
    },
    /// The bottom of the hole, where it lies higher than what is asked needs: once more, whether it is to be.
    HoleEnds {
        field: RecordId,
        pit: RecordId,
    },
    /// How moist the face of a pit is.
    Moisture {
        field: RecordId,
        pit: RecordId,
    },
    NextLook {
        field: RecordId,
        pit: RecordId,
    },
    /// The layers of a pit; with one, by its place from the top, its boundaries and signs; with a clue, its answers
    /// (of the field where no layer is given).
    Layers {
        field: RecordId,
        pit: RecordId,
        #[serde(default)]
        layer: Option<u16>,
        #[serde(default)]
        clue: Option<Clue>,
    },
    /// The roll tests that are still to be made, one after the other.
    Roll {
        field: RecordId,
        pit: RecordId,
    },
    /// One roll test of a pit, of soil from the surface or from the depth to be worked.
    RollOf {
        field: RecordId,
        pit: RecordId,
        surface: bool,
    },
    /// A remark on a pit; with a layer, by its place from the top, on that.
    Remark {
        field: RecordId,
        pit: RecordId,
        layer: Option<u16>,
    },
    Call {
        field: RecordId,
        pit: RecordId,
    },
    Photos {
        field: RecordId,
        pit: RecordId,
    },
    /// One photo of a pit, full screen.
    Photo {
        field: RecordId,
        pit: RecordId,
        photo: RecordId,
    },
    /// A photo that is given a scale: where 0 was touched, in ten-thousandths of its width and height, and the depth that
    /// is touched next.
    PhotoScale {
        field: RecordId,
        pit: RecordId,
        photo: RecordId,
        zero: Option<[u32; 2]>,
        known_mm: u32,
    },
    /// The machines of a field; with one, how it is set.
    Machine {
        field: RecordId,
        machine: Option<RecordId>,
    },
    /// A machine being described; nothing is saved before its three measures are there.
    NewMachine {
        field: RecordId,
        legs: Option<u32>,
        spacing_mm: Option<u32>,
        foot_width_mm: Option<u32>,
    },
    /// How a machine is set for one of several zones.
    SetFor {
        field: RecordId,
        machine: RecordId,
        zone: Zone,
    },
    /// One measure of a machine.
    Measure {
        field: RecordId,
        machine: RecordId,
        measure: super::machine::Measure,
        /// What was answered before it and is saved with it: the power of a tractor, kW, or the slowest speed, tenths of
        /// km/h.
        #[serde(default)]
        with: Option<u32>,
        /// First of the numbers offered, where somebody has moved them.
        #[serde(default)]
        from_mm: Option<u32>,
    },
    /// The passes of a field; with one, what came of it.
    Pass {
        field: RecordId,
        pass: Option<RecordId>,
    },
    /// A pass not saved yet, with what is known of it; its first answer saves it.
    NewPass {
        field: RecordId,
        machine: Option<RecordId>,
        zone: Option<Zone>,
    },
    /// One question about a pass.
    PassDetail {
        field: RecordId,
        pass: super::behind::OfPass,
        detail: super::behind::PassDetail,
        /// First of the numbers offered, where somebody has moved them.
        #[serde(default)]
        from_mm: Option<u32>,
    },
    AfterDig {
        field: RecordId,
        pass: RecordId,
        dig: RecordId,
    },
    /// One question about a hole behind a pass; its first answer saves one that is not saved yet.
    InHole {
        field: RecordId,
        pass: RecordId,
        dig: Option<RecordId>,
        step: super::behind::HoleStep,
        /// First of the numbers offered, where somebody has moved them.
        #[serde(default)]
        from_mm: Option<u32>,
    },
    /// For the farmer; with a pit, that one beside the reference.
    Show {
        field: RecordId,
        pit: Option<RecordId>,
    },
    HandOver {
        field: RecordId,
    },
    /// Whether a record is to be deleted, with what hangs on it.
    Deleting {
        field: RecordId,
        record: RecordId,
    },
    /// What was deleted on this device and is not back.
    WentAway,
    /// Everything handed over and taken in, and with whom.
    Partners,
    /// Another device.
    Partner {
        device: DeviceId,
    },
    /// Values of a pit (or of a field outside its pits) of which several versions stand, one at a time by number from 0.
    Versions {
        field: RecordId,
        pit: Option<RecordId>,
        number: u16,
    },
    /// Records deleted while somebody else went on with them, one at a time by number from 0.
    Regretted {
        number: u16,
    },
    /// Names and positions that can be taken out of every copy; with one, by number from 0, whether it is to go.
    Personal {
        number: Option<u16>,
    },
    /// A notes file that was opened from outside, before it is taken in.
    Incoming,
    /// A file with the edges of fields, read for a field or for a new one; with one of what is in it, what it is to be.
    Boundary {
        field: Option<RecordId>,
        chosen: Option<super::boundary::Chosen>,
    },
    /// Two fields of one name, which may be one.
    OneField {
        field: RecordId,
        other: RecordId,
    },
    /// Own details.
    Own,
    /// One of them, with its answers.
    Setting {
        setting: super::own::Setting,
    },
}

/// What a tap means; a shell sends it back as it came, as text (JSON).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Act {
    /// To another place; nothing is saved.
    Go(Place),
    /// Takes back the last save within the open field, as [`World::undo`](super::World::undo) names it.
    Undo,
    /// Takes back the last undo, as [`World::redo`](super::World::redo) names it.
    Redo,
    /// Deletes a record with what hangs on it, after [`hanging`](super::hanging) was told.
    Delete {
        /// The record.
        record: RecordId,
    },
    /// Brings back a record that was deleted, with what went along.
    BringBack {
        /// The record.
        record: RecordId,
    },
    /// Something of the app's own settings.
    Own(super::own::OwnAct),
    /// Something of a field.
    Field(super::field::FieldAct),
    /// Something of a pit.
    Pit(super::pit::PitAct),
    /// Where a pit lies, pointed out on the plan.
    OnPlan(super::on_plan::OnPlanAct),
    /// Something of a photo.
    Photo(super::photos::PhotoAct),
    /// Something of a machine.
    Machine(super::machine::MachineAct),
    /// Something of a pass or a hole behind it.
    Behind(super::behind::BehindAct),
    /// Something of the other devices, or of what came from them.
    Partners(super::partners::PartnersAct),
    /// Something in a file with the edges of fields.
    Boundary(super::boundary::BoundaryAct),
    /// The notes file that was opened is taken in.
    TakeIn,
    /// Two fields are one.
    Join {
        /// The one.
        field: RecordId,
        /// The other.
        other: RecordId,
    },
}

/// What only the platform can do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Ask {
    /// Take a photo of a pit; it comes back by its path.
    TakePhoto {
        /// The field.
        field: RecordId,
        /// The pit.
        pit: RecordId,
        /// Depth on the face its middle shows.
        depth_mm: Option<u32>,
    },
    /// Hand a field's notes file to another program or person.
    ShareField {
        /// The field.
        field: RecordId,
    },
    /// Hand the sheet of a field, or its driver's card, to another program or person.
    SharePage {
        /// The field.
        field: RecordId,
        /// The card in place of the sheet.
        card: bool,
    },
    /// Hand everything noted here to another program or person.
    ShareBundle {
        /// Without what this device is known to have; `None`: for anybody.
        to: Option<DeviceId>,
        /// Photos go along.
        with_photos: bool,
    },
    /// Choose a file that somebody handed over and take it in.
    OpenFile,
    /// Ask for the permission to read the position.
    AllowPosition,
}

/// A record to be saved.
#[derive(Debug, Clone, PartialEq)]
#[expect(missing_docs, reason = "fields are the parent's id and the record")]
pub enum Edit {
    Field(Field),
    Pit {
        field: RecordId,
        pit: Pit,
    },
    Step {
        pit: RecordId,
        step: Step,
    },
    Layer {
        pit: RecordId,
        layer: Layer,
    },
    Roll {
        parent: RecordId,
        roll: Roll,
    },
    Photo {
        pit: RecordId,
        photo: Photo,
    },
    Machine {
        field: RecordId,
        machine: Machine,
    },
    Pass {
        field: RecordId,
        pass: Pass,
    },
    AfterDig {
        pass: RecordId,
        dig: AfterDig,
    },
    /// Deletes a record with what hangs on it.
    Delete {
        record: RecordId,
    },
    /// One version of a value stands from now on.
    Settle {
        record: RecordId,
        cell: Cell,
        value: Vec<u8>,
    },
    /// A deleted record comes back.
    BringBack {
        record: RecordId,
    },
    /// A record stays deleted with what came to it meanwhile.
    StayDeleted {
        record: RecordId,
    },
    /// Two records are one field.
    Join {
        one: RecordId,
        other: RecordId,
    },
    /// Takes back the last save within the open field.
    Undo,
    /// Takes back the last undo there.
    Redo,
}

/// What comes of a tap.
#[derive(Debug, Clone, PartialEq)]
pub struct Done {
    /// What is to be saved, in this order, before anything is shown as saved.
    pub edits: Vec<Edit>,
    /// Settings as they are now, if they changed.
    pub own: Option<super::Own>,
    /// What was decided of another device; what comes of it is told once it is done.
    pub decided: Option<super::partners::Decided>,
    /// The team word as it is from now on, empty for none; whether it is kept is told once that is known.
    pub team_word: Option<String>,
    /// A name or a position that goes out of every copy; what comes of it is told once it is done.
    pub take_out: Option<(RecordId, Cell)>,
    /// The notes file that waits is taken in; what comes of it is told once it is done.
    pub take_in: bool,
    /// What is passed over in a pit from now on; kept beside the settings, for it is no finding.
    pub passed_over: Option<(RecordId, super::pit::Skipped)>,
    /// Where to go.
    pub place: Place,
    /// What is told; may be empty.
    pub told: String,
}

impl Done {
    /// To a place, with nothing saved.
    pub const fn go(place: Place) -> Self {
        Self {
            edits: Vec::new(),
            own: None,
            decided: None,
            team_word: None,
            take_out: None,
            take_in: false,
            passed_over: None,
            place,
            told: String::new(),
        }
    }

    /// Saves one record and stays or goes.
    pub fn save(edit: Edit, place: Place) -> Self {
        Self { edits: vec![edit], ..Self::go(place) }
    }
}

impl Place {
    /// The field it is in.
    pub const fn field(self) -> Option<RecordId> {
        match self {
            Self::Welcome
            | Self::Fields
            | Self::FoundFields { .. }
            | Self::StartField
            | Self::Own
            | Self::Setting { .. }
            | Self::Partners
            | Self::Partner { .. }
            | Self::Personal { .. }
            | Self::Incoming
            | Self::WentAway
            | Self::Regretted { .. } => None,
            Self::Boundary { field, .. } => field,
            Self::Field { field }
            | Self::Pits { field }
            | Self::Details { field }
            | Self::Detail { field, .. }
            | Self::Lines { field, .. }
            | Self::Line { field, .. }
            | Self::Outline { field }
            | Self::StartPit { field, .. }
            | Self::OnPlan { field, .. }
            | Self::KnifeWalk { field, .. }
            | Self::HoleEnds { field, .. }
            | Self::Moisture { field, .. }
            | Self::NextLook { field, .. }
            | Self::Layers { field, .. }
            | Self::Roll { field, .. }
            | Self::RollOf { field, .. }
            | Self::Remark { field, .. }
            | Self::Call { field, .. }
            | Self::Photos { field, .. }
            | Self::Photo { field, .. }
            | Self::PhotoScale { field, .. }
            | Self::Machine { field, .. }
            | Self::NewMachine { field, .. }
            | Self::SetFor { field, .. }
            | Self::Measure { field, .. }
            | Self::Pass { field, .. }
            | Self::NewPass { field, .. }
            | Self::PassDetail { field, .. }
            | Self::InHole { field, .. }
            | Self::AfterDig { field, .. }
            | Self::Show { field, .. }
            | Self::Versions { field, .. }
            | Self::OneField { field, .. }
            | Self::Deleting { field, .. }
            | Self::HandOver { field } => Some(field),
        }
    }

    /// The place above, which *back* leads to where no way is known that one came; the topmost leads nowhere.
    pub const fn above(self) -> Option<Self> {
        match self {
            Self::Welcome | Self::Fields => None,
            Self::Own
            | Self::FoundFields { .. }
            | Self::StartField
            | Self::Partners
            | Self::Incoming
            | Self::OneField { .. }
            | Self::Boundary { field: None, chosen: None }
            | Self::Field { .. } => Some(Self::Fields),
            Self::Boundary { field, chosen: Some(_) } => Some(Self::Boundary { field, chosen: None }),
            Self::Boundary { field: Some(field), chosen: None } => Some(Self::Outline { field }),
            Self::Partner { .. } | Self::Regretted { .. } => Some(Self::Partners),
            Self::Personal { number: None } | Self::Setting { .. } | Self::WentAway => Some(Self::Own),
            Self::Personal { number: Some(_) } => Some(Self::Personal { number: None }),
            Self::OnPlan { field, pit } => Some(Self::StartPit { field, pit: Some(pit) }),
            Self::NextLook { field, pit } | Self::HoleEnds { field, pit } | Self::Roll { field, pit } => {
                Some(Self::KnifeWalk { field, pit })
            }
            Self::Remark { field, pit, layer: Some(layer) } => {
                Some(Self::Layers { field, pit, layer: Some(layer), clue: None })
            }
            Self::Moisture { field, pit } => Some(Self::Layers { field, pit, layer: None, clue: None }),
            Self::PhotoScale { field, pit, photo, .. } => Some(Self::Photo { field, pit, photo }),
            Self::Photo { field, pit, .. } => Some(Self::Photos { field, pit }),
            Self::Layers { field, pit, layer, clue: Some(_) } => {
                Some(Self::Layers { field, pit, layer, clue: None })
            }
            Self::Layers { field, pit, layer: Some(_), clue: None } => {
                Some(Self::Layers { field, pit, layer: None, clue: None })
            }
            Self::Layers { field, pit, layer: None, clue: None }
            | Self::Photos { field, pit }
            | Self::RollOf { field, pit, .. }
            | Self::Remark { field, pit, layer: None }
            | Self::Versions { field, pit: Some(pit), .. }
            | Self::Show { field, pit: Some(pit) } => Some(Self::Call { field, pit }),
            Self::AfterDig { field, pass, .. } => Some(Self::Pass { field, pass: Some(pass) }),
            Self::Machine { field, machine: Some(_) } | Self::NewMachine { field, legs: None, .. } => {
                Some(Self::Machine { field, machine: None })
            }
            Self::NewMachine { field, legs, spacing_mm, .. } => Some(Self::NewMachine {
                field,
                legs: if spacing_mm.is_some() { legs } else { None },
                spacing_mm: None,
                foot_width_mm: None,
            }),
            Self::Measure { field, machine, .. } | Self::SetFor { field, machine, .. } => {
                Some(Self::Machine { field, machine: Some(machine) })
            }
            Self::Pass { field, pass: Some(_) } | Self::NewPass { field, .. } => {
                Some(Self::Pass { field, pass: None })
            }
            Self::PassDetail { field, pass, .. } => Some(pass.place(field)),
            Self::InHole { field, pass, dig, step, .. } => Some(step.above(field, pass, dig)),
            Self::Detail { field, .. } | Self::Lines { field, line: None } => Some(Self::Details { field }),
            Self::Lines { field, line: Some(_) } => Some(Self::Lines { field, line: None }),
            Self::Line { field, line, .. } => Some(Self::Lines { field, line: Some(line) }),
            Self::Details { field }
            | Self::Pits { field }
            | Self::Outline { field }
            | Self::StartPit { field, .. }
            | Self::KnifeWalk { field, .. }
            | Self::Call { field, .. }
            | Self::Machine { field, machine: None }
            | Self::Pass { field, pass: None }
            | Self::Show { field, pit: None }
            | Self::Versions { field, pit: None, .. }
            | Self::Deleting { field, .. }
            | Self::HandOver { field } => Some(Self::Field { field }),
        }
    }
}
