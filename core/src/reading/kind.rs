//! The kinds of layer: condition × cause.

use crate::record::{Cause, Condition};

/// A condition with its cause.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize)]
pub struct Kind {
    /// How it lets roots, air and water through.
    pub condition: Condition,
    /// Why.
    pub cause: Cause,
}

const fn kind(condition: Condition, cause: Cause) -> Kind {
    Kind { condition, cause }
}

/// Every kind. An Open layer has no cause to tell, so it stands once, as Natural.
pub const KINDS: [Kind; 13] = [
    kind(Condition::Open, Cause::Natural),
    kind(Condition::Firm, Cause::Natural),
    kind(Condition::Firm, Cause::Settled),
    kind(Condition::Firm, Cause::Pressed),
    kind(Condition::Firm, Cause::Cemented),
    kind(Condition::Tight, Cause::Natural),
    kind(Condition::Tight, Cause::Settled),
    kind(Condition::Tight, Cause::Pressed),
    kind(Condition::Tight, Cause::Cemented),
    kind(Condition::Shut, Cause::Natural),
    kind(Condition::Shut, Cause::Settled),
    kind(Condition::Shut, Cause::Pressed),
    kind(Condition::Shut, Cause::Cemented),
];
