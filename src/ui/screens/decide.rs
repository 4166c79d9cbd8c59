//! The decision on a corner, and the proof after the work: mark, word and what it rests on.

use crate::job::answers::{not_tried, still_there};
use crate::job::diagnosis::findings;
use crate::job::ending::recheck;
use crate::job::entry::{Event, Reply};
use crate::job::evidence::{as_recorded, standing_or_new};
use crate::job::judge::{self, Measured};
use crate::job::{is_closed_again, measure_again};
use crate::job::{proof, sets};
use crate::report::cause::standing_line;
use crate::report::{budget, reason, scale, why};
use crate::text::{self, BookWord, CauseWord, Lang, ReportWord, Say};
use crate::trade::play::conformity::CYCLES_TO_PROVE;
use crate::trade::play::series::Trend;
use crate::trade::play::{After, Conformity, Decision, Test, Verdict};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Course, SetName, Sign, When};
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame_with;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picture::{drawn, mark};
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::tip_and_drift;
use crate::ui::view::prelude::*;

/// The decision after the `nth` set; keeping it is what asks the customer or puts it back.
pub fn decide(at: &StepContext, nth: u8) -> Node {
    let Some(corner) = at.corner() else {
        return ().into_node();
    };
    let entry = standing_or_new(at.sheet(), corner, nth);
    let verdict = as_recorded(&entry);
    let (here, again) = (at.clone(), entry.again);
    let label = match verdict.decision {
        _ if again => at.say(Say::SecondSet),
        Decision::Keep | Decision::Watch => at.text().primary,
        Decision::Replace | Decision::Stop => at.say(Say::ShowCustomer),
    };
    let watch = verdict.decision == Decision::Watch && !again;
    let due = watch.then(|| recheck(&today())).flatten();
    let recorded = due.clone().map(|due| {
        let what = text::due_kind(at.lang, due.kind);
        let line = text::due_on(at.lang, what, &due.date);
        view! { <p class="verdict__next">{line} {". "} {at.say(Say::RecheckDefault)}</p> }
    });
    let keep = move || {
        let due = due.clone().map(Event::Due);
        here.write_and_go_on(
            [Event::Decided(entry.clone())]
                .into_iter()
                .chain(due)
                .collect(),
        );
    };
    frame_with(
        at,
        view! { {sheet_of(at, corner, nth, &verdict)} {recorded} },
        stood(at, corner, When::Before, nth),
        key(Look::Primary, label, keep),
    )
}

fn sheet_of(at: &StepContext, corner: Corner, nth: u8, verdict: &Verdict) -> Node {
    let lang = at.lang;
    let reasons = verdict.reasons.iter().map(|why| {
        let sentence = reason::sentence(lang, at.fmt, why);
        view! { <li>{sentence}</li> }
    });
    let next = if verdict.second_set_asked {
        at.say(Say::SecondSetSay)
    } else {
        text::decision_next(lang, verdict.decision)
    };
    let stop = (verdict.decision == Decision::Stop).then(|| {
        let sentence = text::decision_sentence_customer(lang, Decision::Stop, at.open.plan.kind);
        view! { <p class="verdict__danger" role="alert">{sentence}</p> }
    });
    view! {
        <div class="verdict">
            {word(lang, corner, verdict.decision)}
            {stop}
            {beside(at, corner, nth, verdict)}
            {bar(at, corner, nth)}
            <p class="verdict__next">{next}</p>
            <h2>{at.say(Say::RestsOn)}</h2>
            <ul class="verdict__reasons">{reasons.collect_view()}</ul>
            {ranked(at, corner)}
            {not_evaluated(at, corner, nth)}
            {settling(at, corner, nth)}
            {warned(at, corner, nth)}
            {unsure(at, corner, nth)}
            {not_done(at, &verdict.not_done)}
        </div>
    }
}

/// That the readings drawn below are not what condemns the bearing.
fn beside(at: &StepContext, corner: Corner, nth: u8, verdict: &Verdict) -> Option<Node> {
    let condemned = matches!(verdict.decision, Decision::Replace | Decision::Stop);
    let play = why::rests_on_play(&standing_or_new(at.sheet(), corner, nth));
    let last = (1..=nth)
        .rev()
        .find_map(|nth| set(at, corner, When::Before, nth));
    let say = why::play_beside_line(at.lang, at.fmt, &last?);
    (condemned && !play).then(|| view! { <p class="verdict__apart">{say}</p> })
}

/// Mark and word, never one without the other.
pub fn word(lang: Lang, corner: Corner, decision: Decision) -> Node {
    view! {
        <p class="verdict__word">
            {drawn(&mark(decision).drawing(), "", "verdict__mark")}
            <span>
                <b>{text::decision(lang, decision)}</b>
                <small>{text::corner_title(lang, corner)}</small>
            </span>
        </p>
    }
}

/// A set of readings as it stands, if there is one.
pub fn set(at: &StepContext, corner: Corner, when: When, nth: u8) -> Option<Measured> {
    sets::reported(at.sheet(), corner, SetName { when, nth })?.ok()
}

/// The readings before the work against their limit.
fn bar(at: &StepContext, corner: Corner, sets: u8) -> Option<Node> {
    let measured: Vec<Measured> = (1..=sets)
        .filter_map(|nth| set(at, corner, When::Before, nth))
        .collect();
    let rows: Vec<(&str, &Measured)> = measured.iter().map(|set| ("", set)).collect();
    scale_of(at, &rows)
}

/// The same as the customer reads them.
pub fn customer_bar(at: &StepContext, corner: Corner) -> Option<Node> {
    let measured: Vec<Measured> = (1..=2)
        .filter_map(|nth| set(at, corner, When::Before, nth))
        .collect();
    let rows: Vec<(&str, &Measured)> = measured.iter().map(|set| ("", set)).collect();
    let drawing = scale::plain_scale(at.lang, at.fmt, &rows)?;
    Some(drawn(&drawing, at.say(Say::AriaBar), "verdict__bar"))
}

fn scale_of(at: &StepContext, rows: &[(&str, &Measured)]) -> Option<Node> {
    let drawing = scale::scale(at.lang, at.fmt, rows)?;
    Some(drawn(&drawing, at.say(Say::AriaBar), "verdict__bar"))
}

/// How the rig of a set stood: its tip, a needle that crept, a rock seen elsewhere.
fn stood(at: &StepContext, corner: Corner, when: When, nth: u8) -> Option<Node> {
    let measured = set(at, corner, when, nth)?;
    let name = SetName { when, nth };
    let tip = tip_and_drift::tip(at, corner, name);
    let crept = tip_and_drift::crept(at, corner, name, *measured.set.dial());
    Some(view! { {tip} {crept} {tip_and_drift::seen(at, &measured)} })
}

/// What the ranking of causes says beside hands and dial, where the complaint was picked.
fn ranked(at: &StepContext, corner: Corner) -> Option<Node> {
    let found = findings(at.sheet(), Some(corner))?;
    let line = standing_line(at.lang, at.fmt, &found);
    let hash = Route::Cause(at.open.log.0.clone()).to_hash();
    let title = text::cause_word(at.lang, CauseWord::Title);
    Some(view! { <p class="verdict__apart">{line} {" "} <a href=hash>{title}</a></p> })
}

/// Rounds that make no set, with the reason.
fn not_evaluated(at: &StepContext, corner: Corner, nth: u8) -> Option<Node> {
    let name = SetName {
        when: When::Before,
        nth,
    };
    let fault = judge::measured(at.sheet(), corner, name)?.err()?;
    let why = text::set_fault(at.lang, fault);
    Some(view! { <p class="verdict__apart" role="alert">{why}</p> })
}

/// Rounds that lie too far apart, with what likely moves them.
fn settling(at: &StepContext, corner: Corner, nth: u8) -> Option<Node> {
    let measured = set(at, corner, When::Before, nth)?;
    let settling = measured.set.settling(Some(measured.limit.value));
    settling.asks_to_rig_again().then(|| {
        let spread = scale::play(at.fmt, settling.spread).line();
        let apart = measured.set.median_apart().map(|median| {
            let mean = scale::play(at.fmt, measured.set.mean()).line();
            let median = scale::play(at.fmt, median).line();
            format!(" {}.", text::median_says(at.lang, &mean, &median))
        });
        let likely = match settling.trend {
            Trend::Rising => Some(Say::RoundsRise),
            Trend::Falling => Some(Say::RoundsFall),
            Trend::Scattered => Some(Say::RoundsScatter),
            Trend::Steady => None,
        };
        view! {
            <p class="verdict__apart" role="note">
                {text::spread_of(at.lang, &spread)} {". "}
                {at.say(likely.unwrap_or(Say::RoundsApart))}
                {apart}
            </p>
        }
    })
}

/// What was not as it should be while the set was taken.
fn warned(at: &StepContext, corner: Corner, nth: u8) -> Option<Node> {
    let measured = set(at, corner, When::Before, nth)?;
    let marks = measured.set.marks().iter();
    let marks: Vec<&str> = marks.map(|mark| text::mark(at.lang, *mark)).collect();
    (!marks.is_empty()).then(|| {
        view! {
            <p class="verdict__apart" role="note">
                {at.say(Say::TakenWith)} {": "} {marks.join("; ")}
            </p>
        }
    })
}

/// Where a set proves nothing, what makes it unsure and what to mend first.
fn unsure(at: &StepContext, corner: Corner, nth: u8) -> Option<Node> {
    let measured = set(at, corner, When::Before, nth)?;
    let unproven = matches!(
        measured.conformity,
        Conformity::InNotProven(_) | Conformity::OutNotProven(_)
    );
    let mend = unproven.then(|| budget::mend_first(at.lang, &measured))??;
    let cycles = measured.conformity.comparison().map(|of| of.cycles);
    let few = cycles.is_some_and(|cycles| cycles < CYCLES_TO_PROVE);
    let few = few.then(|| view! { <p>{text::report(at.lang, ReportWord::TooFewCycles)}</p> });
    let bars = budget::picture(at.lang, at.fmt, &measured);
    Some(view! {
        {few}
        <h2>{mend}</h2>
        {drawn(&bars, mend, "verdict__bar")}
    })
}

fn not_done(at: &StepContext, tests: &[Test]) -> Option<Node> {
    (!tests.is_empty()).then(|| {
        let names: Vec<&str> = tests.iter().map(|t| text::test(at.lang, *t)).collect();
        view! {
            <p class="verdict__not-done">
                <b>{at.say(Say::WasNotDone)} {": "}</b>
                {names.join(", ")}
            </p>
        }
    })
}

/// Before and after on one scale: at its corner where the proof failed, else for every corner
/// with a new hub.
pub fn result(at: &StepContext) -> Node {
    let replaced = at.open.plan.corners.iter();
    let replaced = replaced.filter(|of| at.corner().is_none_or(|here| here == of.corner));
    let replaced: Vec<(Corner, After)> = replaced
        .filter(|corner| corner.course == Course::Replace)
        .map(|at_corner| {
            let corner = at_corner.corner;
            (corner, proof::after(at.sheet(), corner))
        })
        .collect();
    let blocked = replaced
        .iter()
        .find(|(_, after)| matches!(after, After::Blocked { .. }))
        .map(|(corner, _)| *corner);
    let proofs = replaced
        .iter()
        .map(|(corner, after)| proof(at, *corner, after))
        .collect_view();
    let several = replaced.len() > 1;
    let stood = replaced.iter().map(|(corner, _)| {
        let stood = stood(at, *corner, When::After, 1)?;
        let of = several.then(|| view! { <h2>{text::corner_title(at.lang, *corner)}</h2> });
        Some(view! { {of} {stood} })
    });
    let stood = stood.collect_view();
    frame_with(at, proofs, stood, result_keys(at, blocked))
}

fn result_keys(at: &StepContext, blocked: Option<Corner>) -> Node {
    let Some(corner) = blocked else {
        let here = at.clone();
        return key(Look::Primary, at.text().primary, move || {
            here.answer(Reply::Done)
        });
    };
    let (here, id) = (at.clone(), at.open.log.0.clone());
    view! {
        {key(Look::Primary, at.say(Say::MeasureAgain), move || {
            here.write_and_go_on(measure_again(here.sheet(), &here.open.steps, corner));
        })}
        {link(Look::Plain, at.say(Say::LooseList), Route::Loose(id).to_hash())}
    }
}

fn proof(at: &StepContext, corner: Corner, after: &After) -> Node {
    let before = set(at, corner, When::Before, 2).or_else(|| set(at, corner, When::Before, 1));
    let now = set(at, corner, When::After, 1);
    let rows: Vec<(&str, &Measured)> = [
        (at.say(Say::BeforeLabel), before.as_ref()),
        (at.say(Say::AfterLabel), now.as_ref()),
    ]
    .into_iter()
    .filter_map(|(label, set)| set.map(|set| (label, set)))
    .collect();
    let bar = scale_of(at, &rows);
    let apart = before.as_ref().zip(now.as_ref());
    let apart = apart
        .filter(|(before, now)| !why::alike(before, now))
        .map(|_| {
            let say = text::report(at.lang, ReportWord::NotComparedSay);
            view! { <p class="verdict__apart" role="note">{say}</p> }
        });
    let recorded = proved(at, corner, after);
    // A fault stands above the bar that shows it.
    let (first, second) = match after {
        After::Blocked { .. } => (Some(recorded), bar),
        _ => (bar, Some(recorded)),
    };
    view! {
        <section class="verdict">
            <h2>{text::corner_title(at.lang, corner)}</h2>
            {first}
            {second}
            {apart}
        </section>
    }
}

fn proved(at: &StepContext, corner: Corner, after: &After) -> Node {
    match after {
        After::Blocked { against } => {
            let set = set(at, corner, When::After, 1);
            let why = reason::failed(at.lang, at.fmt, against, set.as_ref());
            let why = why
                .into_iter()
                .map(|why| view! { <p class="verdict__next">{why}</p> });
            let closed = is_closed_again(at.sheet(), corner);
            let opens = closed.then(|| text::book(at.lang, BookWord::OpensAgain));
            view! {
                {word(at.lang, corner, Decision::Stop)}
                <p class="verdict__danger" role="alert">{at.say(Say::ProofFailed)}</p>
                {why.collect_view()}
                {opens.map(|opens| view! { <p>{opens}</p> })}
            }
        }
        After::Pass {
            proven,
            not_done: open,
        } => {
            let road = on_the_road(at);
            let passed = if open.contains(&Test::Dial) {
                Say::ProofUnmeasured
            } else {
                Say::ProofPassed
            };
            let within = (!proven && open.is_empty()).then(|| at.say(Say::ProofWithinNotProven));
            view! {
                <p class="verdict__next">{at.say(passed)}</p>
                {road}
                {within.map(|say| view! { <p>{say}</p> })}
                {not_done(at, open)}
            }
        }
        After::NotJudged { not_done: open } => not_done(at, open).into_node(),
    }
}

/// The signs of the road that the repair did not take away, and those that were not tried.
fn on_the_road(at: &StepContext) -> Node {
    let (still, untried) = road_signs(at);
    view! {
        {still.map(|said| view! { <p class="verdict__danger" role="alert">{said}</p> })}
        {untried.map(|said| view! { <p class="verdict__not-done">{said}</p> })}
    }
}

/// The same as two sentences.
fn road_signs(at: &StepContext) -> (Option<String>, Option<String>) {
    let list = |signs: Vec<Sign>| {
        let names: Vec<&str> = signs
            .iter()
            .map(|sign| text::sign(at.lang, *sign))
            .collect();
        (!names.is_empty()).then(|| names.join(", "))
    };
    let still = list(still_there(at.sheet())).map(|names| text::still_there(at.lang, &names));
    let untried = list(not_tried(at.sheet())).map(|names| text::not_tried(at.lang, &names));
    (still, untried)
}
