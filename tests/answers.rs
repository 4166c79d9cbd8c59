//! Every answer to every question: what the table says follows from it happens, and every hold can
//! be lifted.
//!
//! The steps are those that jobs really come to, each of them with every answer that its form takes.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use std::collections::BTreeSet;
use std::panic::{AssertUnwindSafe, catch_unwind};

use hubslate::job::answers::{given, not_tried, noticed_after, still_there};
use hubslate::job::combined_steps::no_to;
use hubslate::job::ending::proposed;
use hubslate::job::entry::{Ending, Event, Reply};
use hubslate::job::{Held, JobState, Status, evidence, held, judge, next, plan, proof, status};
use hubslate::text::{Lang, follows};
use hubslate::trade::answer::Answer;
use hubslate::trade::play::{Decision, Felt, Reason};
use hubslate::trade::wheel_end::{
    Check, Consequence, Evidence, Form, Given, HoldPoint, NotDoneReason, Noted, NutPosition,
    PlannedStep, Scope, SetName, Start, Step, StepKey, When, consequences, is_work, sign_of,
};
use hubslate::units::Decimal;
use record::{HERE, Job};
use technician::{Story, begin, consent, next_key, steps};

/// More steps than any job has.
const FAR_TOO_MANY: usize = 250;

/// The courses that a job can take, and where its nut is tightened.
fn stories() -> Vec<Story> {
    let nuts = NutPosition::ALL.iter().map(|nut| Story {
        nut: *nut,
        ..Story::REPLACED
    });
    let mut all: Vec<Story> = nuts.collect();
    all.push(Story {
        start: Start::AtCar,
        again: true,
        ..Story::REPLACED
    });
    all.extend(Story::KINDS.map(Story::at));
    all.push(Story {
        decision: Decision::Watch,
        ..Story::REPLACED
    });
    all.push(Story {
        decision: Decision::Stop,
        yes: false,
        ..Story::REPLACED
    });
    all
}

/// What a technician taps whose new part is good; on a car whose nut is tightened on the ground
/// nothing is felt by hand.
fn answer(sheet: &JobState, planned: &PlannedStep, story: Story) -> Vec<Event> {
    let mut whats = technician::answer(sheet, planned, story);
    for what in &mut whats {
        match what {
            Event::Reading(reading) if reading.set.when == When::After => {
                reading.divisions = Decimal::parse("0").unwrap();
            }
            Event::Answered(_, Reply::Felt(felt)) if story.nut == NutPosition::OnGround => {
                *felt = Felt::Nothing;
            }
            _ => {}
        }
    }
    whats
}

/// The answer after which the work simply goes on.
fn good(planned: &PlannedStep) -> Option<Reply> {
    Some(match &planned.form {
        // Of a sign that something is wrong the good answer is that it was not noticed.
        _ if sign_of(planned.key.step).is_some() => no_to(planned),
        Form::Ask => Reply::Said(Answer::Yes),
        Form::Checks(checks) => Reply::Checked(checks.iter().map(|c| (*c, Answer::Yes)).collect()),
        Form::Choice(picks) => Reply::Picked(picks[0]),
        Form::Swing => Reply::Felt(Felt::Nothing),
        Form::Do => Reply::Done,
        _ => return None,
    })
}

/// Every answer that a step takes, with the row that it turns.
fn replies(planned: &PlannedStep) -> Vec<(Reply, Option<Check>)> {
    let mut all: Vec<(Reply, Option<Check>)> = Vec::new();
    match &planned.form {
        Form::Ask => all.extend(Answer::ALL.iter().map(|a| (Reply::Said(*a), None))),
        Form::Choice(picks) => all.extend(picks.iter().map(|p| (Reply::Picked(*p), None))),
        Form::Swing => all.extend(Felt::ALL.iter().map(|f| (Reply::Felt(*f), None))),
        Form::Checks(checks) => {
            for turned in checks {
                for answer in [Answer::No, Answer::NotDone] {
                    let rows = checks.iter().map(|check| match check == turned {
                        true => (*check, answer),
                        false => (*check, Answer::Yes),
                    });
                    all.push((Reply::Checked(rows.collect()), Some(*turned)));
                }
            }
        }
        _ => {}
    }
    all.push((Reply::NotDone(NotDoneReason::Other), None));
    all
}

fn after(job: &Job, what: Event) -> Job {
    let mut job = job.clone();
    job.tap(vec![what]);
    job
}

fn said(job: &Job, planned: &PlannedStep, reply: &Reply) -> Job {
    after(job, Event::Answered(planned.key, reply.clone()))
}

/// Does what comes next until `stop` holds of it, or nothing does; the steps that were asked.
fn walk(
    job: &mut Job,
    story: Story,
    stop: impl Fn(&PlannedStep) -> bool,
) -> (BTreeSet<String>, Option<PlannedStep>) {
    let mut asked = BTreeSet::new();
    for _ in 0..FAR_TOO_MANY {
        let sheet = job.sheet();
        let steps = steps(&sheet);
        let Some(planned) = next(&sheet, &steps) else {
            return (asked, None);
        };
        let held = held(&sheet, &steps, planned);
        if stop(planned) || planned.form == Form::End {
            return (asked, Some(planned.clone()));
        }
        asked.insert(format!("{:?} {:?}", planned.key, planned.form));
        // What is held is not done; where it stays open by that, the walk is at its end.
        let whats = match held {
            Some(_) => vec![Event::Answered(
                planned.key,
                Reply::NotDone(NotDoneReason::NotSafe),
            )],
            None => answer(&sheet, planned, story),
        };
        job.tap(whats);
        if next_key(&job.sheet()) == Some(planned.key) {
            return (asked, None);
        }
    }
    panic!("the job does not end");
}

/// What all the readings of a job come to.
fn readings(sheet: &JobState) -> String {
    let sets = [(When::Before, 1), (When::Before, 2), (When::After, 1)];
    let sets = sets.map(|(when, nth)| judge::measured(sheet, HERE, SetName { when, nth }));
    format!("{sets:?}")
}

fn proof(sheet: &JobState) -> String {
    let ending = proposed(sheet, &plan(sheet));
    format!(
        "{:?} {:?} {:?} {} {ending:?}",
        proof::after(sheet, HERE),
        still_there(sheet),
        not_tried(sheet),
        noticed_after(sheet)
    )
}

/// One answer at one step of one story.
struct Case<'a> {
    story: Story,
    before: &'a Job,
    planned: &'a PlannedStep,
    reply: &'a Reply,
    given: Given,
}

impl Case<'_> {
    fn name(&self) -> String {
        format!(
            "{} · {:?} · {:?}",
            self.planned.key.code(),
            self.given,
            self.story
        )
    }

    fn after(&self) -> Job {
        said(self.before, self.planned, self.reply)
    }

    /// The job with the answer after which the work goes on.
    fn well(&self) -> Job {
        match good(self.planned) {
            Some(reply) => said(self.before, self.planned, &reply),
            None => {
                let whats = answer(&self.before.sheet(), self.planned, self.story);
                let mut job = self.before.clone();
                job.tap(whats);
                job
            }
        }
    }

    /// The answer again, this time as it should be.
    fn put_right(&self, job: &Job) -> Job {
        let mut job = job.clone();
        let whats = match good(self.planned) {
            Some(reply) => vec![Event::Answered(self.planned.key, reply)],
            None => answer(&job.sheet(), self.planned, self.story),
        };
        job.tap(whats);
        job
    }

    fn stays_here(&self) {
        let now = self.after();
        let sheet = now.sheet();
        let steps = steps(&sheet);
        assert_eq!(next_key(&sheet), Some(self.planned.key), "{}", self.name());
        assert_eq!(
            status(&sheet, self.planned),
            Status::Held,
            "{}",
            self.name()
        );
        let later = steps
            .iter()
            .skip_while(|planned| planned.key != self.planned.key)
            .skip(1);
        // The site alone can be refused whatever else is open.
        let work = |planned: &&PlannedStep| is_work(planned) && planned.key.step != Step::SiteLook;
        for work in later.filter(work) {
            assert!(
                held(&sheet, &steps, work).is_some(),
                "{} lets {:?}",
                self.name(),
                work.key
            );
        }
        let right = self.put_right(&now).sheet();
        assert!(status(&right, self.planned).is_settled(), "{}", self.name());
    }

    /// Whether the story comes to a step that the answer holds.
    fn holds(&self, scope: Scope) -> bool {
        let mut job = self.after();
        let covered = |planned: &PlannedStep| scope.covers(self.planned.key, planned);
        let (_, Some(work)) = walk(&mut job, self.story, covered) else {
            return false;
        };
        if !covered(&work) {
            return false;
        }
        let point = |job: &Job| {
            let sheet = job.sheet();
            let steps = steps(&sheet);
            let work = steps.iter().find(|planned| planned.key == work.key)?;
            held(&sheet, &steps, work)
        };
        if work.form == Form::End {
            let sheet = job.sheet();
            assert_eq!(
                proposed(&sheet, &plan(&sheet)),
                Ending::LeftUnfinished,
                "{}",
                self.name()
            );
        }
        assert!(point(&job).is_some(), "{} lets {:?}", self.name(), work.key);
        // Something else may hold it as well; this answer does no more.
        let by_this = |held: &Held| {
            held.point == HoldPoint::Answer && held.answer_at == Some(self.planned.key)
        };
        let right = point(&self.put_right(&job));
        assert!(
            !right.is_some_and(|held| by_this(&held)),
            "{} is not lifted",
            self.name()
        );
        true
    }

    fn follows(&self, consequence: Consequence) -> bool {
        let now = || self.after().sheet();
        let ending_of = |mut job: Job| {
            let asked = walk(&mut job, self.story, |_| false).0;
            (asked, job)
        };
        match consequence {
            Consequence::GoesOn => {
                assert!(status(&now(), self.planned).is_settled(), "{}", self.name());
            }
            Consequence::Holds(Scope::Here) => self.stays_here(),
            Consequence::Holds(scope) => return self.holds(scope),
            Consequence::Stops(sign) => {
                let verdict = evidence::verdict(&now(), HERE);
                assert_eq!(verdict.decision, Decision::Stop, "{}", self.name());
                assert!(
                    verdict.reasons.contains(&Reason::MustNotDrive(sign)),
                    "{}",
                    self.name()
                );
            }
            Consequence::IsEvidence(Evidence::Decision) => {
                // As it stands now, or as it stands when the decision is made.
                let verdict = |job: &Job| evidence::verdict(&job.sheet(), HERE);
                let decided = |mut job: Job| {
                    walk(&mut job, self.story, |planned| {
                        planned.key.step == Step::Decide
                    });
                    verdict(&job)
                };
                let (this, well) = (self.after(), self.well());
                let tells = verdict(&this) != verdict(&well) || decided(this) != decided(well);
                return tells || verdict(&self.after()) != verdict(self.before);
            }
            Consequence::IsEvidence(Evidence::Reading) => {
                let [this, well] = [self.after(), self.well()].map(|job| ending_of(job).1.sheet());
                return readings(&this) != readings(&well);
            }
            Consequence::IsEvidence(Evidence::Proof) => {
                return proof(&now()) != proof(&self.well().sheet());
            }
            Consequence::Asks => {
                return ending_of(self.after()).0 != ending_of(self.well()).0;
            }
            Consequence::IsNoted(Noted::StaysLoose) => {
                let loose = self.before.sheet().loose();
                assert_eq!(now().loose(), loose, "{}", self.name());
            }
            Consequence::IsNoted(_) => {
                assert_eq!(
                    now().reply(self.planned.key),
                    Some(self.reply),
                    "{}",
                    self.name()
                );
            }
        }
        true
    }
}

/// Goes through every answer of every step that the stories come to.
///
/// What depends on what comes later has to happen in one story at least; the rest in each of them.
#[test]
fn no_answer_is_without_its_consequence_and_every_hold_can_be_lifted() {
    let mut seen: BTreeSet<String> = BTreeSet::new();
    let mut open: BTreeSet<String> = BTreeSet::new();
    let mut failed: BTreeSet<String> = BTreeSet::new();
    let mut answers = 0;
    for story in stories() {
        let mut job = begin(story);
        while let Some(key) = next_key(&job.sheet()) {
            let sheet = job.sheet();
            let all = steps(&sheet);
            let planned = all.iter().find(|planned| planned.key == key).unwrap();
            for (reply, turned) in replies(planned) {
                for given in given(planned, &reply) {
                    let rest = matches!((given, turned), (Given::Row(c, _), Some(t)) if c != t);
                    if rest {
                        continue;
                    }
                    answers += 1;
                    let follows = consequences(key, given, &plan(&sheet));
                    assert!(!follows.is_empty(), "{key:?} {given:?}");
                    for consequence in follows {
                        let place = format!("{} {given:?} {consequence:?}", key.step.code());
                        if seen.contains(&place) {
                            continue;
                        }
                        let case = Case {
                            story,
                            before: &job,
                            planned,
                            reply: &reply,
                            given,
                        };
                        let follows = || case.follows(*consequence);
                        match catch_unwind(AssertUnwindSafe(follows)) {
                            Ok(true) => _ = seen.insert(place),
                            Ok(false) => _ = open.insert(place),
                            Err(_) => _ = failed.insert(place),
                        }
                    }
                }
            }
            job.tap(answer(&sheet, planned, story));
        }
    }
    let open: Vec<&String> = open.iter().filter(|place| !seen.contains(*place)).collect();
    assert!(failed.is_empty(), "{failed:#?}");
    assert!(open.is_empty(), "never seen to happen:\n{open:#?}");
    assert!(answers > 500, "only {answers} answers");
}

#[test]
fn a_refused_consent_takes_the_course_of_a_refusal() {
    let asks = |step: Step, story: Story| {
        let key = match step {
            Step::Agree => StepKey::at(step, HERE),
            _ => StepKey::once(step),
        };
        let job = technician::walk_to(story, key);
        let steps_of = |yes| {
            let sheet = after(&job, consent(key, yes)).sheet();
            steps(&sheet)
                .iter()
                .map(|planned| planned.key)
                .collect::<Vec<_>>()
        };
        assert_ne!(steps_of(true), steps_of(false), "{step:?}");
    };
    asks(Step::TeardownYes, Story::REPLACED);
    asks(Step::Agree, Story::REPLACED);
}

#[test]
fn no_work_can_be_reached_by_its_address_before_what_it_rests_on() {
    let ended = technician::walk_to(Story::REPLACED, StepKey::once(Step::End)).sheet();
    let steps = steps(&ended);
    let fresh = begin(Story::REPLACED).sheet();
    let work = |planned: &&PlannedStep| {
        let moves = !planned.changes.is_empty() || matches!(planned.form, Form::Turn(_));
        moves && is_work(planned)
    };
    let mut count = 0;
    for planned in steps.iter().filter(work) {
        count += 1;
        assert!(held(&fresh, &steps, planned).is_some(), "{:?}", planned.key);
    }
    assert!(count > 20);
}

#[test]
fn a_car_that_was_lowered_is_shoved_again_before_anything_comes_loose() {
    let mut job = technician::walk_to(Story::REPLACED, StepKey::once(Step::End));
    job.tap(vec![Event::Ended(hubslate::job::entry::Ended {
        ending: Ending::Finished,
        charge: None,
    })]);
    let sheet = job.sheet();
    let all = steps(&sheet);
    let off = all.iter().filter(|planned| {
        planned
            .changes
            .iter()
            .any(|change| change.to < hubslate::trade::wheel_end::ItemState::ByHand)
    });
    let mut count = 0;
    for planned in off.filter(|planned| planned.key.step != Step::LoosenLugNuts) {
        count += 1;
        let point = held(&sheet, &all, planned).map(|held| held.point);
        assert_eq!(point, Some(HoldPoint::Stand), "{:?}", planned.key);
    }
    assert!(count > 5);
}

#[test]
fn an_ended_job_that_is_loosened_again_is_open_again() {
    let mut job = technician::walk_to(Story::REPLACED, StepKey::once(Step::End));
    job.tap(vec![Event::Ended(hubslate::job::entry::Ended {
        ending: Ending::Finished,
        charge: None,
    })]);
    assert!(job.sheet().ended().is_some());
    assert!(!job.sheet().is_open_again());
    let sheet = job.sheet();
    let all = steps(&sheet);
    let crack = all
        .iter()
        .find(|planned| planned.key.step == Step::LoosenLugNuts)
        .unwrap();
    job.tap(hubslate::job::done(&sheet, crack, Reply::Done));
    let again = job.sheet();
    assert!(again.is_open_again());
    assert_eq!(again.ended(), None);
    // The lug nuts come back to their spec at the step that did it before.
    assert_eq!(next_key(&again), Some(StepKey::at(Step::TurnLugNuts, HERE)));
    job.tap(technician::turn(
        &again,
        StepKey::at(Step::TurnLugNuts, HERE),
        hubslate::trade::wheel_end::ItemKind::LugNuts,
    ));
    // Tight again, it is looked under once more and ended once more.
    assert_eq!(next_key(&job.sheet()), Some(StepKey::once(Step::Clear)));
    assert_eq!(job.sheet().ended(), None);
}

#[test]
fn the_chocks_stay_until_the_pedal_is_firm_and_nothing_moves_before_all_is_out() {
    let order = [
        Step::ProvePedal,
        Step::Clear,
        Step::ProveWarningLights,
        Step::ProveRoad,
    ];
    let job = technician::walk_to(Story::REPLACED, StepKey::once(Step::End));
    let steps = steps(&job.sheet());
    let place = |step| steps.iter().position(|planned| planned.key.step == step);
    let places: Vec<_> = order
        .iter()
        .map(|step| place(*step).unwrap_or_else(|| panic!("{step:?}")))
        .collect();
    assert!(places.is_sorted(), "{places:?}");
}

/// What keeps a step shut is said there in the words of the answer that does it, and is gone with it.
#[test]
fn a_held_step_says_what_to_put_right_and_opens_once_it_is() {
    let lacking = |check: Check| {
        move |planned: &PlannedStep| match &planned.form {
            Form::Checks(checks) => Reply::Checked(
                checks
                    .iter()
                    .map(|it| {
                        (
                            *it,
                            if *it == check {
                                Answer::No
                            } else {
                                Answer::Yes
                            },
                        )
                    })
                    .collect(),
            ),
            _ => unreachable!("it is no list"),
        }
    };
    let cases = [
        (
            Check::LockKey,
            Step::LoosenLugNuts,
            "Find the wheel-lock key before anything is loosened.",
        ),
        (
            Check::BoxStuds,
            Step::LoosenAxleNut,
            "Wrong part: nothing is taken apart for it.",
        ),
    ];
    for (check, held_step, sentence) in cases {
        let asked = StepKey::once(Step::MeetLook);
        let mut job = technician::walk_to(Story::REPLACED, asked);
        let list = steps(&job.sheet()).into_iter().find(|it| it.key == asked);
        let list = list.unwrap();
        job.tap(vec![Event::Answered(asked, lacking(check)(&list))]);
        walk(&mut job, Story::REPLACED, |planned| {
            planned.key.step == held_step
        });
        let hold = |job: &Job| {
            let (sheet, key) = (job.sheet(), StepKey::at(held_step, HERE));
            let all = steps(&sheet);
            let planned = all.iter().find(|planned| planned.key == key).unwrap();
            assert_eq!(next(&sheet, &all).map(|planned| planned.key), Some(key));
            held(&sheet, &all, planned)
        };
        let found = hold(&job).expect("it is held");
        assert_eq!(found.answer_at, Some(asked));
        let said_there = follows(
            Lang::English,
            asked,
            found.given.unwrap(),
            plan(&job.sheet()).build(),
        );
        assert!(said_there.starts_with(sentence), "{said_there}");
        let mended = said(&job, &list, &good(&list).unwrap());
        assert_eq!(
            hold(&mended).and_then(|held| held.answer_at),
            None,
            "{check:?}"
        );
    }
}

/// A question that holds itself stays the next thing to do and says what to do first.
#[test]
fn a_question_that_was_not_answered_well_stays_and_says_what_to_do() {
    let cases = [
        (
            Step::RockNuts,
            Reply::Said(Answer::No),
            Given::Said(Answer::No),
            "Tighten every lug nut to spec first.",
        ),
        (
            Step::Shove,
            Reply::NotDone(NotDoneReason::NoTime),
            Given::NotDone,
            "Keep clear. Back on the jack",
        ),
    ];
    for (step, reply, answer, sentence) in cases {
        let key = StepKey::at(step, HERE);
        let job = technician::walk_to(Story::REPLACED, key);
        let planned = steps(&job.sheet()).into_iter().find(|it| it.key == key);
        let planned = planned.unwrap();
        let open = said(&job, &planned, &reply);
        assert_eq!(next_key(&open.sheet()), Some(key));
        assert!(
            follows(Lang::English, key, answer, plan(&open.sheet()).build()).starts_with(sentence),
            "{step:?}"
        );
        let well = said(&open, &planned, &good(&planned).unwrap());
        assert_ne!(next_key(&well.sheet()), Some(key));
    }
}
