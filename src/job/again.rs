//! Measuring a new part once more: what is taken back so that its proof is asked for again.

use crate::job::entry::{EntryId, Side, What};
use crate::job::judge::flex_step;
use crate::job::key::Key;
use crate::job::sheet::Sheet;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{ROUNDS, SetName, Step, StepKey, When};

/// Takes back the base, the rounds and the spin after the work at a corner; they stay in the
/// record as taken back.
pub fn measure_again(sheet: &Sheet, corner: Corner) -> What {
    let set = SetName {
        when: When::After,
        nth: 1,
    };
    let mut keys = vec![
        Key::Step(flex_step(corner, set)),
        Key::Step(StepKey::at(Step::ProveSpin, corner)),
        Key::Step(StepKey::at(Step::ProveResult, corner)),
    ];
    for round in 1..=ROUNDS {
        for side in [Side::Push, Side::Pull] {
            keys.push(Key::Reading(corner, set, round, side));
        }
    }
    let taken_back = keys.iter().flat_map(|key| sheet.stated(key));
    let ids: Vec<EntryId> = taken_back.map(|entry| entry.id.clone()).collect();
    What::Strike(ids)
}
