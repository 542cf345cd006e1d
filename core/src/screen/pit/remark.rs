//! What else is to be said of a pit or of one of its layers, typed or spoken into the keyboard.

use super::super::bar::tool;
use super::super::{Act, Block, Button, Done, Edit, Headline, Place, Screen, ScreenKind, World};
use super::given::Given;
use super::{AtPit, PitAct};
use crate::error::Fault;
use crate::picture::Icon;
use crate::reading::{LayerReading, read_field};
use crate::record::{FieldNotes, Pit, RecordId, remark};
use crate::words::FaceText;

/// The tool that leads to a remark on a pit, or on its layer of this place from the top.
pub(super) fn remark_tool(at: &AtPit, layer: Option<u16>, world: &World) -> Button {
    let place = Place::Remark { field: at.field, pit: at.pit.id, layer };
    tool(Icon::Remark, world.words.label(FaceText::Remark), Act::Go(place))
}

pub(in crate::screen) fn show(
    field: RecordId,
    pit: RecordId,
    layer: Option<u16>,
    world: &World,
) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let of = match layer {
        Some(index) => Some(at.reading().layers.get(usize::from(index))?),
        None => None,
    };
    let mut shown = at.screen(Place::Remark { field, pit, layer }, ScreenKind::Layers, world);
    let line = of.map(|layer| words.describe_layer_short(layer)).unwrap_or_default();
    shown.answer = Some(Headline { line, ..Headline::new(words.of(FaceText::RemarkAsked)) });
    shown.blocks.push(Block::Typing {
        label: words.label(FaceText::Remark),
        value: noted(at.pit, of),
        act: PitAct::Remark.into(),
        long: true,
    });
    Some(shown)
}

/// Returns what stands there now.
fn noted(pit: &Pit, layer: Option<&LayerReading>) -> String {
    match layer {
        Some(layer) => remark::of_layer(pit, layer.top_mm, layer.bottom_mm).collect::<Vec<_>>().join("\n"),
        None => pit.remark.clone().unwrap_or_default(),
    }
}

/// Returns what is noted of a pit, as a line where it is shown.
pub(super) fn told(pit: &Pit, layer: Option<&LayerReading>) -> Option<String> {
    Some(noted(pit, layer)).filter(|text| !text.is_empty())
}

/// Notes what was typed, and goes back.
///
/// # Errors
/// A remark that is too long, in words of the chosen language.
pub(super) fn typed(
    notes: &FieldNotes,
    pit: &Pit,
    text: &str,
    place: Place,
    (world, new_id): (&World, &mut dyn FnMut() -> RecordId),
) -> Result<Done, Fault> {
    let words = world.words;
    let text = remark::typed(text).map_err(|_| Fault::new("", words.remark_too_long(remark::LONGEST), ""))?;
    let Place::Remark { field, pit: id, layer } = place else { return Ok(Done::go(place)) };
    let back = place.above().map_or(place, |above| world.back.unwrap_or(above));
    let told = words.kept(&words.label(FaceText::Remark));
    let Some(layer) = layer else {
        let pit = Pit { remark: text, ..pit.clone() };
        return Ok(Done { told, ..Done::save(Edit::Pit { field, pit }, back) });
    };
    let read = read_field(notes);
    let index = notes.pits.iter().position(|its| its.id == id);
    let layers = index.map_or(&[][..], |index| &read.pits[index].layers);
    let Some(of) = layers.get(usize::from(layer)) else { return Ok(Done::go(back)) };
    let depths = layers.iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect();
    let mut given = Given::of(pit, depths, new_id);
    given.remark((of.top_mm, of.bottom_mm), text);
    Ok(Done { told, ..Done::save(Edit::Pit { field, pit: given.pit }, back) })
}
