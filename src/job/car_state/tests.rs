//! Two corners, one of them open: each is listed by itself.

use super::*;
use crate::job::entry::{Event, Moved};
use crate::job::interruption::{Interrupted, Interruption, is_due, is_left};
use crate::job::recorded::sheet;
use crate::job::wheel_end::group_items;
use crate::job::{fold, held, plan};
use crate::trade::wheel_end::{
    Check, Choice, HoldPoint, ItemKind, ItemState, NotDoneReason, procedure,
};

const LEFT: Corner = Corner::FrontLeft;
const RIGHT: Corner = Corner::FrontRight;

fn answered(step: Step, corner: Corner, reply: Reply) -> Event {
    Event::Answered(StepKey::at(step, corner), reply)
}

fn raised(corner: Corner) -> Vec<Event> {
    let rows = [Check::JackPoint, Check::StandUnder, Check::WheelUnderRocker];
    let rows = rows.map(|row| (row, Answer::Yes)).to_vec();
    vec![answered(Step::LiftStand, corner, Reply::Checked(rows))]
}

fn shoved(corner: Corner, answer: Answer) -> Event {
    answered(Step::Shove, corner, Reply::Said(answer))
}

fn wheel_off(corner: Corner) -> Vec<Event> {
    let step = StepKey::at(Step::WheelOff, corner);
    let empty = sheet(&[]);
    let moved = |group| {
        Event::Moved(Moved {
            step,
            items: group_items(&empty, corner, group),
            to: ItemState::Off,
            wrench: None,
        })
    };
    vec![
        Event::Answered(step, Reply::Done),
        moved(ItemKind::LugNuts),
        moved(ItemKind::Wheel),
    ]
}

fn both(whats: Vec<Vec<Event>>) -> Vec<Event> {
    let first = vec![Event::Corners(vec![LEFT, RIGHT])];
    [vec![first], whats].concat().concat()
}

fn with<T>(whats: &[Event], read: impl Fn(&CarState<'_>) -> T) -> T {
    let now = sheet(whats);
    let plan = plan(&now);
    read(&car_state(&now, &plan, &procedure(&plan)))
}

#[test]
fn what_is_off_at_one_corner_is_not_listed_at_the_other() {
    let open = both(vec![
        raised(LEFT),
        vec![shoved(LEFT, Answer::Yes)],
        wheel_off(LEFT),
    ]);
    let lists = with(&open, |car| {
        let of = |at: &CornerState<'_>| (at.corner, at.standing, at.loose.len());
        car.corners.iter().map(of).collect::<Vec<_>>()
    });
    // Five lug nuts and the wheel.
    let (on_stand, on_wheel) = (Standing::OnStand, Standing::OnWheel);
    assert_eq!(lists, [(LEFT, on_stand, 6), (RIGHT, on_wheel, 0)]);
}

#[test]
fn a_stand_counts_only_once_it_was_shoved_firm() {
    let mut whats = both(vec![raised(LEFT)]);
    let standing = |whats: &[Event]| with(whats, |car| (car.corners[0].standing, car.leaving()));
    let not_proved = (Standing::NotProved, Leaving::Raised);
    assert_eq!(standing(&whats), not_proved);
    whats.push(shoved(LEFT, Answer::No));
    assert_eq!(standing(&whats), not_proved);
    whats.push(shoved(LEFT, Answer::Yes));
    assert_eq!(standing(&whats), (Standing::OnStand, Leaving::Raised));
    // Let down until the tire grips, and raised again: the shove was before that.
    whats.push(answered(Step::LoosenLugNuts, LEFT, Reply::Done));
    assert_eq!(standing(&whats), not_proved);
    whats.push(answered(Step::Lower, LEFT, Reply::Done));
    // It is a step of no procedure before the decision: only a procedure that has it lowers the car.
    assert_eq!(standing(&whats), not_proved);
}

#[test]
fn answers_that_were_not_right_are_listed_with_their_corner() {
    let nut = answered(Step::NutFound, RIGHT, Reply::Picked(Choice::NutSlack));
    let skipped = answered(Step::RockNuts, LEFT, Reply::NotDone(NotDoneReason::NoLight));
    // What was merely felt is no wrong answer.
    let whats = both(vec![vec![nut, skipped, shoved(LEFT, Answer::No)]]);
    let wrong = with(&whats, |car| {
        let of = |at: &CornerState<'_>| at.wrong.clone();
        car.corners.iter().map(of).collect::<Vec<_>>()
    });
    let at = |step, corner, given| (StepKey::at(step, corner), given);
    assert_eq!(
        wrong,
        [
            vec![
                at(Step::Shove, LEFT, Given::Said(Answer::No)),
                at(Step::RockNuts, LEFT, Given::NotDone),
            ],
            vec![at(Step::NutFound, RIGHT, Given::Picked(Choice::NutSlack))],
        ]
    );
}

fn left() -> Event {
    Event::Interrupted(Interrupted {
        step: StepKey::at(Step::WheelOff, LEFT),
        why: Interruption::Rain,
        to: "Second pair of hands".to_owned(),
    })
}

fn looked_over(answer: Answer) -> Event {
    Event::Answered(TAKE_OVER, Reply::Said(answer))
}

#[test]
fn no_work_goes_on_at_a_car_that_was_left_until_it_was_looked_over() {
    let mut whats = both(vec![raised(LEFT), vec![shoved(LEFT, Answer::Yes)]]);
    let stopped = |whats: &[Event]| {
        let now = sheet(whats);
        let steps = procedure(&plan(&now));
        let key = StepKey::at(Step::RockTwelveSix, LEFT);
        let rock = steps.iter().find(|it| it.key == key).unwrap();
        let point = held(&now, &steps, rock).map(|held| held.point);
        (point == Some(HoldPoint::TakeOver), is_left(&now))
    };
    assert_eq!(stopped(&whats), (false, false));
    whats.push(left());
    assert_eq!(stopped(&whats), (true, true));
    whats.push(looked_over(Answer::No));
    assert_eq!(stopped(&whats), (true, true));
    whats.push(looked_over(Answer::Yes));
    assert_eq!(stopped(&whats), (false, false));
    // It is left once more.
    whats.push(left());
    assert_eq!(stopped(&whats), (true, true));
}

#[test]
fn a_car_that_moved_stands_on_nothing() {
    let firm = both(vec![raised(LEFT), vec![shoved(LEFT, Answer::Yes), left()]]);
    let standing = |whats: &[Event]| with(whats, |car| car.corners[0].standing);
    assert_eq!(standing(&firm), Standing::OnStand);
    let moved = [firm, vec![looked_over(Answer::No)]].concat();
    assert_eq!(standing(&moved), Standing::NotProved);
}

#[test]
fn another_technician_sees_the_state_first_and_the_same_one_does_not() {
    let whats = both(vec![raised(LEFT)]);
    let mut entries = sheet(&whats).entries().to_vec();
    entries
        .iter_mut()
        .for_each(|entry| entry.by = "First hands".to_owned());
    let now = fold(entries);
    assert!(!is_due(&now, "First hands"));
    assert!(is_due(&now, "Somebody else"));
    // Who is not named cannot be told apart.
    assert!(!is_due(&now, ""));
    // What was asked at home is no work at the car.
    let home = sheet(&[Event::Corners(vec![LEFT, RIGHT])]);
    assert!(!is_due(&home, "Somebody else"));
}

#[test]
fn an_end_that_leaves_the_job_unfinished_is_an_interruption() {
    use crate::job::entry::{Charge, Ended, Ending};
    let ended = |ending| {
        Event::Ended(Ended {
            ending,
            charge: Some(Charge::WeComeBack),
        })
    };
    assert!(is_left(&sheet(&[ended(Ending::LeftUnfinished)])));
    let back = [ended(Ending::LeftUnfinished), looked_over(Answer::Yes)];
    assert!(!is_left(&sheet(&back)));
    assert!(!is_left(&sheet(&[ended(Ending::Finished)])));
}

#[test]
fn an_interruption_that_is_taken_back_holds_nothing() {
    use crate::job::entry::EntryId;
    let whats = [left()];
    let first = sheet(&whats).entries()[0].id.clone();
    let undone = |ids: Vec<EntryId>| [left(), Event::Strike(ids)];
    assert!(is_left(&sheet(undone(Vec::new()))));
    assert!(!is_left(&sheet(undone(vec![first]))));
}
