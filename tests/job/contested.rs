//! Two phones read one cycle differently: the larger play holds until a person chooses.

use hubslate::job::conflict::{conflicts, is_contested, settle};
use hubslate::job::entry::{Reading, Side};
use hubslate::job::judge::round_play;
use hubslate::trade::play::Dial;
use hubslate::trade::wheel_end::{SetName, When, procedure};
use hubslate::units::{Decimal, Length};

use super::*;

const FIRST: SetName = SetName {
    when: When::Before,
    nth: 1,
};

fn reading(side: Side, thou: &str) -> Event {
    Event::Reading(Reading {
        corner: HERE,
        set: FIRST,
        round: 1,
        side,
        divisions: Decimal::parse(thou).unwrap(),
        turns: None,
        dial: Dial::THOU,
    })
}

/// Each phone reads its own push and pull without seeing the other.
fn read_apart(clocks: (i64, i64), here: [&str; 2], there: [&str; 2]) -> Job {
    let base = Job::opened();
    let mut one = base.on("slate one", clocks.0);
    let mut two = base.on("slate two", clocks.1);
    for (job, [push, pull]) in [(&mut one, here), (&mut two, there)] {
        job.tap(vec![reading(Side::Push, push)]);
        job.tap(vec![reading(Side::Pull, pull)]);
    }
    one.take(&two);
    one
}

fn play(job: &Job) -> Length {
    round_play(&job.sheet(), HERE, FIRST, 1).unwrap().unwrap()
}

/// Thousandths of an inch, as exactly as a double has them.
#[track_caller]
fn is_thou(play: Length, thou: f64) {
    assert!((play.mm() / 0.0254 - thou).abs() < 1e-9, "{play:?}");
}

const CLOCKS: [(i64, i64); 2] = [(LONG_AGO, FAR_AHEAD), (FAR_AHEAD, LONG_AGO)];

#[test]
fn of_eight_and_one_thou_eight_holds_whatever_the_clocks_say() {
    for clocks in CLOCKS {
        for (here, there) in [("8", "1"), ("1", "8")] {
            let job = read_apart(clocks, ["0", here], ["0", there]);
            is_thou(play(&job), 8.0);
        }
    }
}

#[test]
fn the_larger_play_holds_across_the_zero_of_the_face() {
    for clocks in CLOCKS {
        // 98 to 2 is four divisions on a face of a hundred, though 2 is less than 99.
        is_thou(play(&read_apart(clocks, ["98", "2"], ["98", "99"])), 4.0);
        is_thou(play(&read_apart(clocks, ["98", "99"], ["98", "2"])), 4.0);
    }
}

#[test]
fn a_pull_is_never_taken_with_another_phones_push() {
    for clocks in CLOCKS {
        // 0 to 8 and 50 to 51: nobody read 43 or 49.
        is_thou(play(&read_apart(clocks, ["0", "8"], ["50", "51"])), 8.0);
    }
}

#[test]
fn a_push_alone_does_not_take_another_phones_cycle_away() {
    let base = Job::opened();
    let mut one = base.on("slate one", LONG_AGO);
    let mut two = base.on("slate two", FAR_AHEAD);
    one.tap(vec![reading(Side::Push, "0")]);
    one.tap(vec![reading(Side::Pull, "8")]);
    two.tap(vec![reading(Side::Push, "3")]);
    one.take(&two);
    is_thou(play(&one), 8.0);
}

#[test]
fn either_value_can_be_chosen_and_then_it_is_settled() {
    for (chosen, thou) in [("8", 8.0), ("1", 1.0)] {
        let mut job = read_apart(CLOCKS[0], ["0", "8"], ["0", "1"]);
        let sheet = job.sheet();
        let all = conflicts(&sheet);
        let [one] = all.as_slice() else {
            panic!("{all:?}");
        };
        assert_eq!(one.candidates.len(), 2);
        let is = |entry: &&&Entry, thou: &str| match &entry.what {
            Event::Reading(reading) => reading.divisions.as_typed() == thou,
            _ => false,
        };
        assert!(is(&&one.winner, "8"));
        let entry = one.candidates.iter().find(|it| is(it, chosen)).unwrap();
        job.tap(vec![settle(one, entry)]);
        assert_eq!(job.sheet().problems(), []);
        is_thou(play(&job), thou);
    }
}

#[test]
fn what_says_more_than_one_thing_is_settled_by_saying_it_again() {
    let mut job = apart(&Job::opened(), (LONG_AGO, off()), (FAR_AHEAD, tight()));
    let sheet = job.sheet();
    let all = conflicts(&sheet);
    let chosen = all[0].candidates.iter().find(|it| it.what == tight());
    let event = settle(&all[0], chosen.unwrap());
    assert_eq!(event, tight());
    job.tap(vec![event]);
    assert_eq!(job.sheet().item(pin()), Some(ItemState::Done));
    assert_eq!(job.sheet().problems(), []);
}

#[test]
fn a_decision_that_had_not_seen_the_other_reading_is_asked_again() {
    let base = {
        let mut base = Job::opened();
        base.tap(vec![Event::Corners(vec![HERE])]);
        base
    };
    for settled_first in [false, true] {
        let mut one = base.on("slate one", LONG_AGO);
        let mut two = base.on("slate two", FAR_AHEAD);
        one.tap(vec![reading(Side::Pull, "8")]);
        two.tap(vec![reading(Side::Pull, "1")]);
        two.tap(vec![decided(Decision::Keep)]);
        assert!(!is_contested(&two.sheet(), HERE, 1));
        two.take(&one);
        if settled_first {
            let sheet = two.sheet();
            let all = conflicts(&sheet);
            let event = settle(&all[0], all[0].winner);
            two.tap(vec![event]);
            is_thou(play(&two), 8.0);
        }
        let sheet = two.sheet();
        assert!(is_contested(&sheet, HERE, 1));
        let steps = procedure(&hubslate::job::plan(&sheet));
        let decide = StepKey::at(Step::Decide, HERE);
        let decide = steps.iter().find(|it| it.key == decide).unwrap();
        assert_eq!(
            hubslate::job::status(&sheet, decide),
            hubslate::job::Status::Open
        );
        assert_eq!(
            hubslate::job::ending::proposed(&sheet, &hubslate::job::plan(&sheet)),
            hubslate::job::entry::Ending::LeftUnfinished
        );
        two.tap(vec![decided(Decision::Replace)]);
        assert!(!is_contested(&two.sheet(), HERE, 1));
    }
}
