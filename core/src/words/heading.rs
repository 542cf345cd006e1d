//! Headings of screens, pages and printed text.

use crate::advice::Stance;
use crate::record::codes::codes;

codes!(
    /// What stands above a part of a screen, a page or a printed answer.
    Heading {
        AfterDig = "after_dig",
        Against = "against",
        Call = "call",
        Calls = "calls",
        Cautions = "cautions",
        Causes = "causes",
        Face = "face",
        Field = "field",
        FollowUp = "follow_up",
        For = "for",
        HowSure = "how_sure",
        Kinds = "kinds",
        KnifeWalk = "knife_walk",
        Layer = "layer",
        Layers = "layers",
        NextLook = "next_look",
        Note = "note",
        Pit = "pit",
        Pits = "pits",
        ReferencePit = "reference_pit",
        RollTest = "roll_test",
        RootingDepth = "rooting_depth",
        Rules = "rules",
        Signs = "signs",
        Texture = "texture",
        TipDepth = "tip_depth",
        WholeField = "whole_field",
        Why = "why",
        WorthAsking = "worth_asking",
        WouldChange = "would_change",
        Zone = "zone",
        Zones = "zones",
    }
);

impl From<Stance> for Heading {
    fn from(stance: Stance) -> Self {
        match stance {
            Stance::For => Self::For,
            Stance::Against => Self::Against,
            Stance::Note => Self::Note,
        }
    }
}
