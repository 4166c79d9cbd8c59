//! The same at a whole job: what was answered and read, from entries to the decision.

use hubslate::job::entry::{
    DialSetup, Entry, EntryId, Event, LogId, Quantity, Reading, Reply, Side, Timestamp,
};
use hubslate::job::evidence::{decided, evidence, verdict};
use hubslate::job::{JobState, fold};
use hubslate::report::reason::sentence;
use hubslate::text::Lang;
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::{Spec, SpecBody, SpecItem, SpecSource};
use hubslate::trade::play::{Decision, Dial, Felt, Heat, Road, Test, Way};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{Choice, NotDoneReason, SetName, Step, StepKey, When};
use hubslate::units::{Decimal, DecimalMark, Format, LengthUnit, System, TemperatureUnit, Typed};
use proptest::prelude::*;
use proptest::sample::select;

use super::ROCKED;

const HERE: Corner = Corner::FrontLeft;

fn sheet(whats: &[Event]) -> JobState {
    let id = |n: usize| EntryId(format!("{n:04}"));
    fold(whats.iter().enumerate().map(|(n, what)| Entry {
        id: id(n),
        log: LogId("log".to_owned()),
        at: Timestamp {
            utc_ms: 0,
            offset_min: 0,
            recorded: None,
        },
        by: String::new(),
        device: "d".to_owned(),
        n: n as u64,
        after: n.checked_sub(1).map(id).into_iter().collect(),
        what: what.clone(),
    }))
}

fn here(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

fn said(step: Step, answer: Answer) -> Event {
    Event::Answered(StepKey::once(step), Reply::Said(answer))
}

fn swerve(pick: Choice) -> Event {
    Event::Answered(StepKey::once(Step::SignSwerve), Reply::Picked(pick))
}

fn heat(step: Step, number: &str, unit: TemperatureUnit) -> Event {
    let typed = Typed::parse(number, unit).unwrap();
    let reply = Reply::Number(Quantity::Temperature(typed));
    Event::Answered(StepKey::once(step), reply)
}

/// Three rounds of a set, the base pushed.
fn set(nth: u8, pull: &str, way: Way) -> Vec<Event> {
    let step = if nth == 1 {
        Step::RigPush
    } else {
        Step::RigAgain
    };
    let name = SetName {
        when: When::Before,
        nth,
    };
    let read = |round| {
        Event::Reading(Reading {
            corner: HERE,
            set: name,
            round,
            side: Side::Pull,
            divisions: Decimal::parse(pull).unwrap(),
            turns: None,
            dial: Dial::HUNDREDTH_MM,
        })
    };
    let stood = Event::DialSetup(DialSetup {
        corner: HERE,
        set: name,
        way,
    });
    let pushed = Event::Answered(here(step), Reply::Picked(Choice::FlexNone));
    [stood, pushed]
        .into_iter()
        .chain((1..=3).map(read))
        .collect()
}

fn spec(most: &str, way: Way) -> Event {
    Event::Spec(Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::Play {
            least: None,

            most: Typed::parse(most, LengthUnit::Millimetre).unwrap(),
            way,
            source: SpecSource {
                document: "Invented pages".to_owned(),
                page: "1".to_owned(),
                looked_up: chrono::NaiveDate::from_ymd_opt(2026, 2, 1).unwrap(),
                who: "P. Nobody".to_owned(),
                override_reason: None,
            },
        },
    })
}

/// A corner at which everything was looked at and nothing was found, but for the dial.
fn clean() -> Vec<Event> {
    let mut whats = vec![
        Event::Corners(vec![HERE]),
        Event::Answered(StepKey::once(Step::Drive), Reply::Done),
        said(Step::SignSpeed, Answer::No),
        swerve(Choice::NoChange),
        heat(Step::HeatHere, "40", TemperatureUnit::Celsius),
        heat(Step::HeatOther, "40", TemperatureUnit::Celsius),
        Event::Answered(here(Step::SpinHand), Reply::Picked(Choice::SmoothQuiet)),
        Event::Answered(here(Step::OtherSide), Reply::Picked(Choice::SameAsOther)),
    ];
    for step in [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial] {
        whats.push(Event::Answered(here(step), Reply::Felt(Felt::Nothing)));
    }
    whats
}

fn with(more: impl IntoIterator<Item = Event>) -> Vec<Event> {
    clean().into_iter().chain(more).collect()
}

#[track_caller]
fn decides(whats: &[Event], decision: Decision, reasons: &[&str]) {
    let entry = decided(&sheet(whats), HERE, 1);
    assert_eq!(entry.decision, decision, "{:?}", entry.reasons);
    for reason in reasons {
        let there = entry.reasons.iter().any(|code| code == reason);
        assert!(there, "{reason} is not in {:?}", entry.reasons);
    }
}

#[test]
fn a_noise_on_the_road_is_evidence_at_the_corner_that_it_loads() {
    let small = || {
        with([spec("0.1", Way::DEFAULT)])
            .into_iter()
            .chain(set(1, "2", Way::DEFAULT))
    };
    let heard = |swerved| {
        let noise = [said(Step::SignSpeed, Answer::Yes), swerve(swerved)];
        small().chain(noise).collect::<Vec<_>>()
    };
    decides(
        &small().collect::<Vec<_>>(),
        Decision::Keep,
        &["under_proven", "smooth_and_quiet"],
    );
    // Steering right loads the left side.
    decides(
        &heard(Choice::LouderRight),
        Decision::Watch,
        &["road_points_here"],
    );
    decides(
        &heard(Choice::NoChange),
        Decision::Watch,
        &["road_not_located"],
    );
    decides(
        &heard(Choice::LouderLeft),
        Decision::Keep,
        &["road_points_elsewhere"],
    );
    let mut hot = heard(Choice::LouderRight);
    hot.push(heat(Step::HeatHere, "58", TemperatureUnit::Celsius));
    decides(&hot, Decision::Replace, &["road_points_here", "hotter"]);
    let format = Format {
        system: System::Metric,
        decimal: DecimalMark::Dot,
    };
    let words = |whats: &[Event]| {
        let reasons = verdict(&sheet(whats), HERE).reasons;
        let said = reasons
            .iter()
            .map(|why| sentence(Lang::English, format, why));
        said.collect::<Vec<_>>().join(" ")
    };
    let placed = words(&heard(Choice::LouderRight));
    assert!(placed.contains("the road test points here") && !placed.contains("Nothing was found"));
    assert!(words(&hot).contains("clearly hotter than the one on the other side"));
}

#[test]
fn one_heat_and_one_swerve_say_something_else_at_each_corner_of_the_job() {
    let corners = vec![Corner::FrontRight, Corner::FrontLeft, Corner::RearLeft];
    let whats = [
        Event::Corners(corners),
        said(Step::SignSpeed, Answer::Yes),
        swerve(Choice::LouderRight),
        heat(Step::HeatHere, "100", TemperatureUnit::Fahrenheit),
        heat(Step::HeatOther, "140", TemperatureUnit::Fahrenheit),
    ];
    let sheet = sheet(&whats);
    let at = |corner| {
        let evidence = evidence(&sheet, corner);
        (evidence.road, evidence.heat)
    };
    // "This hub" is that of the first corner; the hotter one is across from it.
    assert_eq!(at(Corner::FrontRight), (Road::Elsewhere, Heat::Alike));
    assert_eq!(at(Corner::FrontLeft), (Road::Here, Heat::Hotter));
    assert_eq!(at(Corner::RearLeft), (Road::Here, Heat::NotDone));
}

#[test]
fn driven_and_not_listened_is_no_road_test() {
    let mut whats = clean();
    whats.push(said(Step::SignSpeed, Answer::NotDone));
    let not_done = decided(&sheet(&whats), HERE, 1).inputs.evidence.not_done;
    assert!(not_done.contains(&Test::Road), "{not_done:?}");
    let not_done = decided(&sheet(&clean()), HERE, 1).inputs.evidence.not_done;
    assert!(!not_done.contains(&Test::Road), "{not_done:?}");
}

#[test]
fn a_direction_that_was_not_rocked_is_not_firm() {
    let mut whats = with(set(1, "2", Way::DEFAULT));
    let because = Reply::NotDone(NotDoneReason::NoTime);
    whats.push(Event::Answered(here(Step::RockAxial), because));
    decides(&whats, Decision::Watch, &["not_looked_at.rock"]);
    // What was felt in another direction stands.
    let felt = Reply::Felt(Felt::JustFelt);
    whats.push(Event::Answered(here(Step::RockNineThree), felt));
    decides(&whats, Decision::Watch, &["loose_not_located.just_felt"]);
    let not_done = decided(&sheet(&whats), HERE, 1).inputs.evidence.not_done;
    assert!(not_done.contains(&Test::Rock), "{not_done:?}");
}

#[test]
fn a_spec_for_another_method_takes_nothing_away() {
    let over = with(set(1, "20", Way::DEFAULT));
    decides(&over, Decision::Replace, &["over_proven"]);
    let mut carded = over;
    carded.push(spec("0.5", ROCKED));
    decides(
        &carded,
        Decision::Replace,
        &["over_proven", "no_comparison.method"],
    );
    let not_done = decided(&sheet(&carded), HERE, 1).inputs.evidence.not_done;
    assert!(not_done.contains(&Test::Dial), "{not_done:?}");
}

#[test]
fn a_second_set_that_cannot_be_compared_takes_nothing_away() {
    let mut whats = with([spec("0.05", Way::DEFAULT)]);
    whats.extend(set(1, "6", Way::DEFAULT));
    let first = decided(&sheet(&whats), HERE, 1);
    assert_eq!((first.decision, first.again), (Decision::Replace, true));
    whats.extend(set(2, "1", Way::DEFAULT));
    let gave = Reply::Picked(Choice::FlexMore);
    whats.push(Event::Answered(here(Step::RigAgain), gave));
    let second = decided(&sheet(&whats), HERE, 2);
    assert_eq!((second.decision, second.again), (Decision::Replace, false));
    let not_done = &second.inputs.evidence.not_done;
    assert!(not_done.contains(&Test::SecondSet), "{not_done:?}");
}

#[test]
fn two_sets_are_reported_as_one_with_what_lies_between_them() {
    let mut whats = with([spec("0.05", Way::DEFAULT)]);
    whats.extend(set(1, "6", Way::DEFAULT));
    whats.extend(set(2, "5", Way::DEFAULT));
    let entry = decided(&sheet(&whats), HERE, 2);
    let both = entry.inputs.joined.unwrap();
    assert_eq!((both.cycles, entry.inputs.sets.len()), (6, 2));
    assert!((both.play.mm() - 0.055).abs() < 1e-12);
    assert_eq!(entry.decision, Decision::Replace);
    assert_eq!(entry.reasons[..2], ["over_not_proven", "sets_disagree"]);
}

/// The answers to one step, each no better for the bearing than the one before.
fn rising() -> Vec<(StepKey, Vec<Reply>)> {
    let not = || Reply::NotDone(NotDoneReason::NoTime);
    let felt = Felt::ALL.iter().map(|felt| Reply::Felt(*felt));
    let yes = [
        Reply::Said(Answer::No),
        Reply::Said(Answer::NotDone),
        Reply::Said(Answer::Yes),
    ];
    let no = [
        Reply::Said(Answer::Yes),
        Reply::Said(Answer::NotDone),
        Reply::Said(Answer::No),
    ];
    let picked = |all: &[Choice]| all.iter().map(|pick| Reply::Picked(*pick)).collect();
    vec![
        (StepKey::once(Step::SignSpeed), yes.to_vec()),
        (
            StepKey::once(Step::SignCoast),
            vec![Reply::Said(Answer::No), not(), Reply::Said(Answer::Yes)],
        ),
        (StepKey::once(Step::SignSurface), no.to_vec()),
        (
            StepKey::once(Step::SignSwerve),
            picked(&[Choice::LouderLeft, Choice::NoChange, Choice::LouderRight]),
        ),
        (here(Step::RockAxial), {
            let mut all: Vec<Reply> = felt.collect();
            all.insert(1, not());
            all
        }),
        (
            here(Step::SpinHand),
            picked(&[
                Choice::SmoothQuiet,
                Choice::Rough,
                Choice::RoughNoisy,
                Choice::GrindsHot,
            ]),
        ),
        (
            here(Step::SpinHand),
            vec![
                Reply::Picked(Choice::SmoothQuiet),
                not(),
                Reply::Picked(Choice::Noisy),
            ],
        ),
        (
            here(Step::BrakeHeld),
            vec![
                Reply::Picked(Choice::PlayStays),
                not(),
                Reply::Picked(Choice::PlayGone),
            ],
        ),
        (
            here(Step::NutFound),
            picked(&[Choice::NutTight, Choice::NutSlack]),
        ),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    // Any answers at all, then one of them a step worse: the decision is never better.
    #[test]
    fn a_worse_answer_never_makes_a_better_decision(
        picks in prop::collection::vec(0_usize..8, 9),
        which in 0_usize..9,
        pulls in (select(vec!["0", "3", "5", "6", "12"]), select(vec!["", "4", "9"])),
        limit in select(vec!["", "0", "0.05", "0.2"]),
    ) {
        let steps = rising();
        let mut whats = clean();
        if !limit.is_empty() {
            whats.push(spec(limit, Way::DEFAULT));
        }
        whats.extend(set(1, pulls.0, Way::DEFAULT));
        if !pulls.1.is_empty() {
            whats.extend(set(2, pulls.1, Way::DEFAULT));
        }
        let answer = |(step, all): &(StepKey, Vec<Reply>), pick: usize| {
            Event::Answered(*step, all[pick % all.len()].clone())
        };
        // The one that is made worse comes last, and so holds.
        let others = steps.iter().zip(&picks).enumerate();
        for (place, (step, pick)) in others {
            if place != which {
                whats.push(answer(step, *pick));
            }
        }
        let (step, all) = &steps[which];
        let decisions: Vec<Decision> = all
            .iter()
            .map(|reply| {
                let last = Event::Answered(*step, reply.clone());
                let recorded: Vec<Event> = whats.iter().cloned().chain([last]).collect();
                decided(&sheet(&recorded), HERE, 1).decision
            })
            .collect();
        prop_assert!(decisions.is_sorted(), "{}: {decisions:?}", step.code());
    }
}
