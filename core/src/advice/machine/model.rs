//! A figure that may not hold: it comes with what it hangs on, or not at all.

use crate::record::codes::codes;

codes!(
    /// Why a figure is not given.
    WhyNot {
        /// Below critical depth nothing is lifted: the models do not hold.
        BelowCriticalDepth = "below_critical_depth",
        /// Soil that rolls to a thread smears and does not break.
        TooWet = "too_wet",
        /// There is no layer to break.
        NoLayer = "no_layer",
        /// The tip does not run below the layer's bottom.
        TipAboveLayerBottom = "tip_above_layer_bottom",
        /// No range is published for what runs in the ground.
        NoPublishedRange = "no_published_range",
        /// The texture of the soil is not noted.
        NoTexture = "no_texture",
        /// No machine is given.
        NoMachine = "no_machine",
        /// It takes the tractor.
        NoTractor = "no_tractor",
        /// The tractor does not have the power.
        NotEnoughPower = "not_enough_power",
        /// The mass of the tractor is not known: weigh it.
        NotWeighed = "not_weighed",
        /// The call for this ground is not to loosen it now.
        CallForbids = "call_forbids",
        /// What it takes was not given.
        NotGiven = "not_given",
    }
);

/// A figure of a model. In JSON `{"model": "applies", "value": …}`, or with the reason as value.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
#[serde(tag = "model", content = "value", rename_all = "snake_case")]
pub enum Model<T> {
    /// It holds.
    Applies(T),
    /// It holds if the tip runs above critical depth, which a trial strip has to show.
    AppliesIfAboveCritical(T),
    /// It does not hold; there is no figure.
    DoesNotApply(WhyNot),
}

impl<T> Model<T> {
    /// The figure, if there is one, sure or not.
    pub const fn value(&self) -> Option<&T> {
        match self {
            Self::Applies(value) | Self::AppliesIfAboveCritical(value) => Some(value),
            Self::DoesNotApply(_) => None,
        }
    }

    /// The same for another figure from this one.
    pub fn map<U>(self, to: impl FnOnce(T) -> U) -> Model<U> {
        self.and_then(|value| Ok(to(value)))
    }

    /// The same for another figure that may fail to hold for its own reason.
    pub fn and_then<U>(self, to: impl FnOnce(T) -> Result<U, WhyNot>) -> Model<U> {
        let (value, sure) = match self {
            Self::Applies(value) => (to(value), true),
            Self::AppliesIfAboveCritical(value) => (to(value), false),
            Self::DoesNotApply(why) => (Err(why), true),
        };
        match value {
            Ok(value) if sure => Model::Applies(value),
            Ok(value) => Model::AppliesIfAboveCritical(value),
            Err(why) => Model::DoesNotApply(why),
        }
    }
}

impl<T> From<Result<T, WhyNot>> for Model<T> {
    fn from(result: Result<T, WhyNot>) -> Self {
        match result {
            Ok(value) => Self::Applies(value),
            Err(why) => Self::DoesNotApply(why),
        }
    }
}
