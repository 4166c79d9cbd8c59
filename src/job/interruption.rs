//! Work that stops in the middle: who left the car and why, and whether it was looked over before the
//! work goes on.

use crate::job::entry::{Ending, Entry, Event, Reply};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{PlannedStep, Step, StepKey};

pub use crate::job::entry::{Interrupted, Interruption};

/// The question whether the car stands as the record says, before work goes on; it is asked of no
/// procedure, but wherever a car was left.
pub const TAKE_OVER: StepKey = StepKey::once(Step::TakeOver);

/// The step that asks it.
pub fn take_over() -> PlannedStep {
    let row = Step::TakeOver.row();
    PlannedStep {
        key: TAKE_OVER,
        phase: row.phase,
        form: row.form.clone(),
        holds: Vec::new(),
        changes: Vec::new(),
        joins: false,
    }
}

/// The last interruption, or the end that left the job unfinished, since which nobody confirmed that
/// the car stands as listed.
pub fn interruption(sheet: &JobState) -> Option<&Entry> {
    let unfinished = |entry: &&Entry| {
        let Event::Ended(ended) = &entry.what else {
            return false;
        };
        ended.ending == Ending::LeftUnfinished
    };
    let left = [Key::Interrupted, Key::Ended];
    let left = left.iter().filter_map(|key| {
        let entry = sheet.holds(key)?;
        let counts = *key == Key::Interrupted || unfinished(&entry);
        counts.then_some((sheet.place(key), entry))
    });
    let (place, entry) = left.max_by_key(|(place, _)| *place)?;
    let confirmed = sheet.place(&Key::Step(TAKE_OVER));
    let looked_over = is_confirmed(sheet) && place < confirmed;
    (!looked_over).then_some(entry)
}

fn is_confirmed(sheet: &JobState) -> bool {
    sheet.reply(TAKE_OVER) == Some(&Reply::Said(Answer::Yes))
}

/// Whether work waits until the car was looked over: it was left, or it did not stand as listed.
pub fn is_left(sheet: &JobState) -> bool {
    let denied = sheet.reply(TAKE_OVER).is_some() && !is_confirmed(sheet);
    denied || interruption(sheet).is_some()
}

/// Whether the technician `me` is shown how the car stands before its next step: it was left, or the
/// last hands at it were those of somebody else.
pub fn is_due(sheet: &JobState, me: &str) -> bool {
    let over = sheet
        .ended()
        .is_some_and(|ended| ended.ending != Ending::LeftUnfinished);
    let other = last_at_the_car(sheet)
        .is_some_and(|entry| !entry.by.is_empty() && !me.is_empty() && entry.by != me);
    !over && (is_left(sheet) || other)
}

/// The last work at the car, or look at it.
pub fn last_at_the_car(sheet: &JobState) -> Option<&Entry> {
    let at_the_car = |what: &Event| match what {
        Event::Answered(step, _) => step.corner.is_some() || *step == TAKE_OVER,
        Event::Moved(_) | Event::Also(_) | Event::Mishap(_) | Event::Mended(_) => true,
        Event::Reading(_) | Event::Interrupted(_) => true,
        _ => false,
    };
    let all = sheet.counting().filter(|entry| at_the_car(&entry.what));
    all.last()
}
