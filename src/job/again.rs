//! Measuring a new part once more: what is taken back so that its proof is asked for again.

use crate::job::entry::{EntryId, Event, Reply, Side};
use crate::job::judge::{flex_step, setup_step};
use crate::job::key::Key;
use crate::job::plan::plan;
use crate::job::proof::reopened;
use crate::job::sheet::JobState;
use crate::job::wheel_end::wheel_end;
use crate::trade::answer::Answer;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Again, Form, Item, ItemKind, ItemState, NotDoneReason, PlannedStep, ROUNDS, SetName, Step,
    StepKey,
};

/// Takes back the base, the rounds and the spin after the work at a corner; they stay in the
/// record as taken back.
///
/// Where the wheel end is closed again by then, everything that opens it is asked for once more,
/// and everything that closes it: what was turned since is turned again.
pub fn measure_again(sheet: &JobState, steps: &[PlannedStep], corner: Corner) -> Vec<Event> {
    let set = SetName::AFTER;
    let mut keys = vec![
        Key::Step(setup_step(corner, set)),
        Key::DialSetup(corner, set),
        Key::Step(flex_step(corner, set)),
        Key::Step(StepKey::at(Step::ProveSpin, corner)),
        Key::Step(StepKey::at(Step::ProveResult, corner)),
    ];
    for round in 1..=ROUNDS {
        for side in [Side::Push, Side::Pull] {
            keys.push(Key::Reading(corner, set, round, side));
        }
    }
    let mut whats = Vec::new();
    if is_closed_again(sheet, corner) {
        let opening = opening(sheet, corner);
        let closing: Vec<&PlannedStep> = closing(steps, corner)
            .filter(|planned| !keys.contains(&Key::Step(planned.key)))
            .collect();
        keys.extend(closing.iter().map(|planned| Key::Step(planned.key)));
        keys.extend(opening.iter().copied().map(Key::Step));
        let turned = closing.iter().filter(|planned| is_turn(planned));
        whats.extend(turned.map(|planned| Event::Pass(planned.key)));
        whats.push(Event::Answered(reopened(corner), Reply::Said(Answer::No)));
        if !is_back(sheet, corner, ItemKind::Wheel) {
            // It is shoved again before anybody reaches under it.
            let off = opening
                .into_iter()
                .filter(|key| takes_the_wheel_off(key.step));
            let not_needed = Reply::NotDone(NotDoneReason::NotNeeded);
            whats.extend(off.map(|step| Event::Answered(step, not_needed.clone())));
        }
    }
    let taken_back = keys.iter().flat_map(|key| sheet.stated(key));
    let ids: Vec<EntryId> = taken_back.map(|entry| entry.id.clone()).collect();
    whats.insert(0, Event::Strike(ids));
    whats
}

/// The steps that open the wheel end again.
fn opening(sheet: &JobState, corner: Corner) -> Vec<StepKey> {
    let plan = plan(sheet);
    let at = plan.corners.iter().find(|at| at.corner == corner);
    at.map_or(Vec::new(), |at| wheel_end(sheet).reopening(&plan, at))
}

/// Whether the wheel end is closed by now, so that it has to be opened to measure again: what the
/// reading needs off is back.
pub fn is_closed_again(sheet: &JobState, corner: Corner) -> bool {
    let covers = [
        ItemKind::Caliper,
        ItemKind::Drum,
        ItemKind::Cap,
        ItemKind::Wheel,
    ];
    covers.iter().any(|group| is_back(sheet, corner, *group))
}

fn is_back(sheet: &JobState, corner: Corner, group: ItemKind) -> bool {
    let number = 1;
    let item = Item {
        corner,
        group,
        number,
    };
    sheet.item(item) == Some(ItemState::Done)
}

fn takes_the_wheel_off(step: Step) -> bool {
    let mut changes = step.row().changes.iter();
    changes.any(|change| matches!(change.group, ItemKind::Wheel | ItemKind::LugNuts))
}

const fn is_turn(planned: &PlannedStep) -> bool {
    matches!(planned.form, Form::Turn(_))
}

/// The steps after the proof at a corner that close what it had opened, and the last looks.
fn closing(steps: &[PlannedStep], corner: Corner) -> impl Iterator<Item = &PlannedStep> {
    let proof = StepKey::at(Step::ProveSpin, corner);
    let after = steps.iter().skip_while(move |planned| planned.key != proof);
    after.filter(move |planned| {
        let here = planned.key.corner.is_none_or(|at| at == corner);
        here && planned.key.step.row().again != Again::Never
    })
}
