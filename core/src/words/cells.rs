//! How cells of records are called and their values told, where two people wrote different ones.

/// How a value is told.
#[derive(Debug, Clone, Copy)]
pub(super) enum Show {
    /// Lengths in millimetres, in the chosen unit of depth.
    Length,
    /// Widths over the ground in millimetres, in metres or feet.
    Width,
    /// A code of this list.
    Code(&'static str),
    /// A texture: a group, or scheme and class.
    Texture,
    /// Positions, of which only the number is told.
    Places,
    /// Marks on a photo, of which only the number is told.
    Marks,
    /// As it stands.
    Whatever,
}

/// Every cell by the name that the store gives it: the message with its name, and how its value is told.
pub(super) const CELLS: &[(&str, &str, Show)] = &[
    ("kind", "cell-kind", Show::Whatever),
    ("parent", "cell-parent", Show::Whatever),
    ("deleted", "cell-deleted", Show::Whatever),
    ("unknown_keys", "cell-unknown", Show::Whatever),
    ("notes_unknown_keys", "cell-unknown", Show::Whatever),
    ("same_as", "cell-same_as", Show::Whatever),
    ("field.name", "cell-name", Show::Whatever),
    ("field.outline", "cell-outline", Show::Places),
    ("field.headland_mm", "cell-headland", Show::Width),
    ("field.tramline_mm", "cell-tramline", Show::Width),
    ("field.texture", "cell-texture", Show::Texture),
    ("field.organic_matter", "cell-organic_matter", Show::Code("organic_matter")),
    ("field.crop_now", "cell-crop_now", Show::Whatever),
    ("field.last_crop", "cell-last_crop", Show::Whatever),
    ("field.last_loosened", "cell-last_loosened", Show::Whatever),
    ("field.last_traffic", "cell-last_traffic", Show::Whatever),
    ("field.drains_mm", "cell-drains", Show::Length),
    ("field.mole_drains_mm", "cell-mole_drains", Show::Length),
    ("field.services_mm", "cell-services", Show::Length),
    ("field.clearance_mm", "cell-clearance", Show::Length),
    ("field.reach_mm", "cell-reach", Show::Length),
    ("field.deep_clay_anyway", "cell-deep_clay", Show::Whatever),
    ("field.wheel_track_mm", "cell-wheel_track", Show::Length),
    ("field.tyre_mm", "cell-tyre", Show::Length),
    ("field.services_clearance_mm", "cell-services_clearance", Show::Length),
    ("field.services_asked", "cell-services_asked", Show::Whatever),
    ("field.services_asked_on", "cell-services_asked_on", Show::Whatever),
    ("field.services_leave", "cell-services_leave", Show::Whatever),
    ("field.last_rain", "cell-last_rain", Show::Whatever),
    ("field.tillage_mm", "cell-tillage", Show::Length),
    ("field.stony", "cell-stony", Show::Whatever),
    ("field.plates_soft", "cell-plates_soft", Show::Whatever),
    ("field.next_crop", "cell-next_crop", Show::Whatever),
    ("field.next_sown", "cell-next_sown", Show::Whatever),
    ("field.slope_percent", "cell-slope", Show::Whatever),
    ("field.controlled_traffic", "cell-controlled_traffic", Show::Whatever),
    ("field.remark", "cell-remark", Show::Whatever),
    ("pit.place", "cell-place", Show::Code("place")),
    ("pit.zone", "cell-zone", Show::Code("zone")),
    ("pit.at", "cell-at", Show::Whatever),
    ("pit.dug", "cell-dug", Show::Whatever),
    ("pit.by", "cell-by", Show::Whatever),
    ("pit.dug_to_mm", "cell-dug_to", Show::Length),
    ("pit.face", "cell-face", Show::Code("face")),
    ("pit.remark", "cell-remark", Show::Whatever),
    ("step.to_mm", "cell-to", Show::Length),
    ("step.comes_away", "cell-comes_away", Show::Code("comes_away")),
    ("step.resistance", "cell-resistance", Show::Code("resistance")),
    ("layer.top_mm", "cell-top", Show::Length),
    ("layer.bottom_mm", "cell-bottom", Show::Length),
    ("layer.texture", "cell-texture", Show::Texture),
    ("layer.remark", "cell-remark", Show::Whatever),
    ("layer.signs.comes_away", "cell-comes_away", Show::Code("comes_away")),
    ("layer.signs.resistance", "cell-resistance", Show::Code("resistance")),
    ("layer.signs.pores", "cell-pores", Show::Code("pores")),
    ("layer.signs.channels", "cell-channels", Show::Code("channels")),
    ("layer.signs.roots", "cell-roots", Show::Code("roots")),
    ("layer.signs.patches", "cell-patches", Show::Code("patches")),
    ("layer.signs.smell", "cell-smell", Show::Code("smell")),
    ("layer.signs.clod_in_water", "cell-clod_in_water", Show::Code("clod_in_water")),
    ("roll.depth_mm", "cell-roll_depth", Show::Length),
    ("roll.roll", "cell-roll", Show::Code("roll")),
    ("photo.sha256", "cell-photo", Show::Whatever),
    ("photo.size_bytes", "cell-photo_size", Show::Whatever),
    ("photo.media_type", "cell-photo_type", Show::Whatever),
    ("photo.taken", "cell-photo_taken", Show::Whatever),
    ("photo.depth_mm", "cell-photo_depth", Show::Length),
    ("photo.marks", "cell-photo_marks", Show::Marks),
    ("person.name", "cell-name", Show::Whatever),
    ("person.left_handed", "cell-left_handed", Show::Whatever),
    ("machine.name", "cell-name", Show::Whatever),
    ("machine.legs", "cell-legs", Show::Whatever),
    ("machine.spacing_mm", "cell-spacing", Show::Length),
    ("machine.foot_width_mm", "cell-foot", Show::Length),
    ("machine.wings", "cell-wings", Show::Length),
    ("machine.leading", "cell-leading", Show::Length),
    ("machine.working_width_mm", "cell-working_width", Show::Width),
    ("machine.speed", "cell-speed", Show::Whatever),
    ("machine.reach_mm", "cell-reach", Show::Length),
    ("machine.tractor", "cell-tractor", Show::Whatever),
    ("machine.tractor_mass_kg", "cell-tractor_mass", Show::Whatever),
    ("pass.machine", "cell-pass_machine", Show::Whatever),
    ("pass.zone", "cell-zone", Show::Code("zone")),
    ("pass.extent", "cell-extent", Show::Code("extent")),
    ("pass.done", "cell-done", Show::Whatever),
    ("pass.tip_mm", "cell-tip", Show::Length),
    ("pass.speed_kmh", "cell-pass_speed", Show::Whatever),
    ("pass.driven_on", "cell-driven_on", Show::Whatever),
    ("pass.remark", "cell-remark", Show::Whatever),
    ("after_dig.at", "cell-at", Show::Whatever),
    ("after_dig.dug", "cell-dug", Show::Whatever),
    ("after_dig.by", "cell-by", Show::Whatever),
    ("after_dig.before", "cell-before", Show::Whatever),
    ("after_dig.firm_mm", "cell-firm", Show::Length),
    ("after_dig.slots_mm", "cell-slots", Show::Length),
    ("after_dig.profile", "cell-profile", Show::Code("profile")),
    ("after_dig.smear", "cell-smear", Show::Code("smear")),
    ("after_dig.lift", "cell-lift", Show::Code("lift")),
    ("after_dig.clods", "cell-clods", Show::Code("clods")),
    ("after_dig.subsoil_up", "cell-subsoil_up", Show::Whatever),
    ("after_dig.plates", "cell-plates", Show::Code("plates")),
    ("after_dig.feet", "cell-feet", Show::Code("feet")),
    ("after_dig.old_slots", "cell-old_slots", Show::Whatever),
    ("after_dig.roots", "cell-roots", Show::Code("roots")),
    ("part.name", "cell-name", Show::Whatever),
    ("part.zone", "cell-zone", Show::Code("zone")),
    ("part.shape", "cell-shape", Show::Places),
    ("line.kind", "cell-buried", Show::Code("buried")),
    ("line.along", "cell-along", Show::Places),
    ("line.depth_mm", "cell-line_depth", Show::Length),
    ("line.sort", "cell-line_sort", Show::Code("line_sort")),
];

#[cfg(test)]
mod tests {
    use super::CELLS;
    use crate::store::Cell;

    #[test]
    fn every_cell_of_the_store_has_a_name() {
        let named: Vec<&str> = CELLS.iter().map(|(cell, ..)| *cell).collect();
        let all: Vec<&str> = Cell::ALL.iter().map(|(_, cell)| *cell).collect();
        assert_eq!(named, all);
    }
}
