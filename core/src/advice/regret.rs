//! What a wrong call costs: the regret table, and the call of least expected regret for one layer.

use crate::reading::KINDS;
use crate::record::{Call, Cause, Condition};

/// The calls that are weighed for a layer, mildest first: of two equal ones the milder stands.
/// Wait and Drain first come from gates, never from a layer.
pub const LAYER_CALLS: [Call; 5] =
    [Call::LeaveIt, Call::RootsFirst, Call::DigAgain, Call::AskSpecialist, Call::Loosen];

/// Where digging again stands among [`LAYER_CALLS`].
pub const DIG_AGAIN: usize = 2;

/// Regret of each of [`LAYER_CALLS`] where the layer is in truth of each of [`KINDS`].
pub type RegretTable = [[f64; KINDS.len()]; LAYER_CALLS.len()];

/// One row of the table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// The call.
    pub call: Call,
    /// What it costs against the right call, in the order of [`KINDS`]. The unit is one more round with the spade.
    pub regret: [f64; KINDS.len()],
    /// Where the row comes from.
    pub source: &'static str,
}

/// The table as it is read. Each column has one zero, its right call. The figures are our judgement;
/// what their order follows is named in each row.
#[rustfmt::skip]
pub const ROWS: [Row; LAYER_CALLS.len()] = [
    //                          Open | Firm                  | Tight                 | Shut
    //                          Nat. | Nat. Sett. Pres. Cem. | Nat. Sett. Pres. Cem. | Nat. Sett. Pres. Cem.
    Row { call: Call::LeaveIt,
          regret:              [ 0.0,  0.0,  1.3,  0.0,  0.5,  0.0,  3.0,  5.0,  3.0,  0.0,  5.5, 10.0,  4.0],
          source: "our judgement; yield gain of loosening is large only where a layer restricts roots \
                   (Schneider et al. 2017, value from memory); no published method acts on its middle class, which \
                   is why a Firm layer is left unless it has set by itself" },
    Row { call: Call::RootsFirst,
          regret:              [ 1.0,  0.8,  0.0,  0.4,  0.5,  0.8,  0.0,  3.0,  3.0,  1.0,  0.0,  5.0,  4.0],
          source: "our judgement; roots and organic matter where the soil settled by itself (Daniells 2012); telling a \
                   sound field to change its crops costs a season" },
    Row { call: Call::DigAgain,
          regret:              [ 1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0,  1.0],
          source: "our judgement; the unit: another hole, or another season where roots are awaited" },
    Row { call: Call::AskSpecialist,
          regret:              [ 2.5,  2.5,  2.5,  2.5,  0.0,  2.0,  2.0,  2.0,  0.0,  2.0,  2.0,  2.5,  0.0],
          source: "our judgement; a layer that holds in water is cemented, no case for the spade alone (FAO 2006)" },
    Row { call: Call::Loosen,
          regret:              [ 8.0,  7.0,  5.0,  3.5,  5.0,  6.2,  4.0,  0.0,  5.0,  5.5,  1.5,  0.0,  5.0],
          source: "our judgement; last resort, keep good structure intact (OMAFRA, as reported); loosened soil \
                   re-compacts with the first wheels (soilandwater.org.uk trial on sandy loam)" },
];

/// The table as it is computed with.
pub const REGRET: RegretTable = {
    let mut table = [[0.0; KINDS.len()]; LAYER_CALLS.len()];
    let mut row = 0;
    while row < ROWS.len() {
        table[row] = ROWS[row].regret;
        row += 1;
    }
    table
};

/// The same for a layer that no tine is for (a crust, trodden turf, deep clay): what was pressed is for roots, rest and
/// weather, and steel costs as much as in sound soil, whatever the layer. Our judgement.
pub const REGRET_WITHOUT_STEEL: RegretTable = {
    let mut table = REGRET;
    let (roots_first, loosen) = (1, LAYER_CALLS.len() - 1);
    let mut kind = 0;
    while kind < KINDS.len() {
        if matches!(KINDS[kind].cause, Cause::Pressed) && !matches!(KINDS[kind].condition, Condition::Firm) {
            table[roots_first][kind] = 0.0;
        }
        table[loosen][kind] = REGRET[loosen][0];
        kind += 1;
    }
    table
};

/// Expected regret of each of [`LAYER_CALLS`] by a table, given the shares over [`KINDS`].
pub fn expected_by(table: &RegretTable, shares: &[f64; KINDS.len()]) -> [f64; LAYER_CALLS.len()] {
    table.map(|row| row.iter().zip(shares).map(|(regret, share)| regret * share).sum())
}

/// Expected regret of each of [`LAYER_CALLS`], given the shares over [`KINDS`].
pub fn expected(shares: &[f64; KINDS.len()]) -> [f64; LAYER_CALLS.len()] {
    expected_by(&REGRET, shares)
}

/// Index of the least of some expected regrets; of equal ones the mildest call.
pub fn least(expected: &[f64; LAYER_CALLS.len()]) -> usize {
    // Rounding must not turn a tie into a harder call.
    const TIE: f64 = 1e-9;
    (1..expected.len()).fold(0, |best, call| if expected[call] < expected[best] - TIE { call } else { best })
}

/// Index of the least of some expected regrets among the calls that do something: all but digging again.
pub fn least_doing(expected: &[f64; LAYER_CALLS.len()]) -> usize {
    let mut doing = *expected;
    doing[DIG_AGAIN] = f64::INFINITY;
    least(&doing)
}

/// The call of least expected regret for a layer with these shares over [`KINDS`].
pub fn best(shares: &[f64; KINDS.len()]) -> Call {
    LAYER_CALLS[least(&expected(shares))]
}

/// Share of the kinds for which `call` is right by a table or can be defended, 0 to 1: for which it costs less than
/// another hole. Nothing for [`Call::DigAgain`]: digging again is never right in itself.
pub fn share_right(table: &RegretTable, call: Call, shares: &[f64; KINDS.len()]) -> f64 {
    let row = LAYER_CALLS.iter().position(|&listed| listed == call);
    row.map_or(0.0, |row| {
        let right = table[row].iter().zip(shares).filter(|(regret, _)| **regret < REGRET[DIG_AGAIN][0]);
        right.map(|(_, share)| share).sum()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn certain(condition: Condition, cause: Cause) -> [f64; KINDS.len()] {
        KINDS.map(|kind| f64::from(u8::from(kind.condition == condition && kind.cause == cause)))
    }

    fn between(first: (Condition, Cause), second: (Condition, Cause), share: f64) -> [f64; KINDS.len()] {
        let (first, second) = (certain(first.0, first.1), certain(second.0, second.1));
        std::array::from_fn(|kind| first[kind] * share + second[kind] * (1.0 - share))
    }

    #[test]
    fn rows_stand_in_the_order_of_the_calls() {
        assert_eq!(ROWS.map(|row| row.call), LAYER_CALLS);
        assert_eq!(LAYER_CALLS[DIG_AGAIN], Call::DigAgain);
    }

    #[test]
    fn every_kind_has_a_right_call() {
        for kind in KINDS {
            let right = match (kind.condition, kind.cause) {
                (_, Cause::Natural) | (Condition::Firm, Cause::Pressed) => Call::LeaveIt,
                (_, Cause::Cemented) => Call::AskSpecialist,
                (Condition::Tight | Condition::Shut, Cause::Pressed) => Call::Loosen,
                _ => Call::RootsFirst,
            };
            let shares = certain(kind.condition, kind.cause);
            assert_eq!(best(&shares), right, "{kind:?}");
            assert!((share_right(&REGRET, right, &shares) - 1.0).abs() < 1e-12, "{kind:?}");
        }
    }

    #[test]
    fn where_no_tine_may_go_nothing_is_loosened() {
        for kind in KINDS {
            let expected = expected_by(&REGRET_WITHOUT_STEEL, &certain(kind.condition, kind.cause));
            let call = LAYER_CALLS[least(&expected)];
            assert_ne!(call, Call::Loosen, "{kind:?}");
            let pressed = kind.cause == Cause::Pressed && kind.condition >= Condition::Tight;
            assert_eq!(call == Call::RootsFirst, pressed || kind.cause == Cause::Settled, "{kind:?}");
        }
    }

    #[test]
    fn loosening_sound_soil_costs_more_than_leaving_a_tight_pressed_layer_a_season() {
        let table = |call: Call, condition, cause| {
            let row = LAYER_CALLS.iter().position(|&listed| listed == call).unwrap();
            expected(&certain(condition, cause))[row]
        };
        let left = table(Call::LeaveIt, Condition::Tight, Cause::Pressed);
        assert!(table(Call::Loosen, Condition::Open, Cause::Natural) > left);
        assert!(table(Call::Loosen, Condition::Tight, Cause::Natural) > left);
    }

    /// For one cause, a worse condition never speaks less for loosening: the ground of "no better sign ever
    /// loosens".
    #[test]
    fn a_worse_condition_never_speaks_less_for_loosening() {
        for cause in [Cause::Pressed, Cause::Settled, Cause::Cemented, Cause::Natural] {
            let known: Vec<_> = KINDS.iter().filter(|kind| kind.cause == cause).collect();
            for pair in known.windows(2) {
                let [better, worse] =
                    [pair[0], pair[1]].map(|kind| expected(&certain(kind.condition, cause)));
                for other in 0..LAYER_CALLS.len() - 1 {
                    let step = (worse[4] - worse[other]) - (better[4] - better[other]);
                    assert!(
                        step <= 1e-12,
                        "{:?} to {:?}, against {:?}",
                        pair[0],
                        pair[1],
                        LAYER_CALLS[other]
                    );
                }
            }
        }
    }

    #[test]
    fn where_pressed_and_settled_stand_even_the_call_is_to_dig_again() {
        let shares = |pressed| {
            between((Condition::Tight, Cause::Pressed), (Condition::Tight, Cause::Settled), pressed)
        };
        assert_eq!(best(&shares(0.2)), Call::RootsFirst);
        assert_eq!(best(&shares(0.5)), Call::DigAgain);
        assert_eq!(best(&shares(0.9)), Call::Loosen);
    }

    #[test]
    fn nothing_known_is_dig_again() {
        assert_eq!(best(&[1.0 / 13.0; KINDS.len()]), Call::DigAgain);
    }
}
