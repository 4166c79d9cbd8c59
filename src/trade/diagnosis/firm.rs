//! How firm a ranking is: whether it stands when the weights are shaken.

use super::clue::{Cause, Clue};
use super::rank::{Findings, SEPARATED_STEPS, absent, lead, rank, ranked, total};
use super::table::Table;
use crate::trade::answer::Answer;
use crate::trade::practice::chance::Chance;

/// How often the weights are shaken.
pub const SHAKES: u16 = 2_000;

/// A start is shaken by this factor either way.
const START_FACTOR: f64 = 1.5;

/// Below this many of 100 shakes the first cause is not separated.
pub const FIRM_PERCENT: u8 = 70;

/// What a ranking may say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// This cause is first by a step, and in so many of 100 shakes, 70 at least.
    First(Cause, u8),
    /// It cannot be separated yet.
    NotYet,
}

/// How often of 100 the same cause stays first when every weight moves by one step up, one down or
/// not at all, and every start by the factor 1.5 up, down or not at all; a weight of 0 stays, and
/// what a No weighs moves by a step at most. The
/// same findings give the same figure.
pub fn firm_percent(table: &Table, findings: &Findings) -> u8 {
    let Some(first) = rank(table, findings).first().map(|one| one.cause) else {
        return 0;
    };
    let mut chance = Chance::of(SEED);
    let same = (0..SHAKES).filter(|_| shaken_first(table, findings, &mut chance) == Some(first));
    u8::try_from(same.count() * 100 / usize::from(SHAKES)).unwrap_or(100)
}

/// What may be said of a ranking.
pub fn standing(table: &Table, findings: &Findings) -> Standing {
    let ranking = rank(table, findings);
    let apart = ranking
        .first()
        .filter(|_| lead(&ranking) >= SEPARATED_STEPS);
    let firm = apart.map(|first| (first.cause, firm_percent(table, findings)));
    match firm {
        Some((cause, percent)) if percent >= FIRM_PERCENT => Standing::First(cause, percent),
        _ => Standing::NotYet,
    }
}

/// Any number serves; it must only stay the same.
const SEED: u64 = 15;

fn shaken_first(table: &Table, findings: &Findings, chance: &mut Chance) -> Option<Cause> {
    let mut odds = [0.0; Cause::COUNT];
    for (cause, slot) in Cause::ALL.iter().zip(&mut odds) {
        let mut shifts = [0.0; Clue::COUNT];
        let start = table.start(findings.complaint, *cause) * START_FACTOR.powi(third(chance));
        for (clue, shift) in Clue::ALL.iter().zip(&mut shifts) {
            if findings.answer(*clue) != Answer::NotDone {
                *shift = f64::from(third(chance));
            }
        }
        let steps = total(|clue| {
            let own = table.steps(clue, *cause);
            let shift = shifts.get(clue as usize).copied().unwrap_or(0.0);
            let steps = if own == 0 {
                0.0
            } else {
                f64::from(own) + shift
            };
            match findings.answer(clue) {
                Answer::Yes => steps,
                Answer::No if clue.test().is_plain() => {
                    let anyway = table.anyway(clue);
                    let now = absent(anyway, f64::from(own));
                    // What shows in most cars cannot show in twice as many.
                    absent(anyway, steps).clamp(now - 1.0, now + 1.0)
                }
                _ => 0.0,
            }
        });
        *slot = start * steps.exp2();
    }
    let all = ranked(|cause| odds.get(cause as usize).copied().unwrap_or(0.0));
    all.first().map(|one| one.cause)
}

/// -1, 0 or 1, each in a third of all cases.
fn third(chance: &mut Chance) -> i32 {
    match chance.share() {
        low if low < 1.0 / 3.0 => -1,
        high if high > 2.0 / 3.0 => 1,
        _ => 0,
    }
}
