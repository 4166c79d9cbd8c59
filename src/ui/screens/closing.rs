//! Handing over: the re-torque, the report, and how the job ends.

use std::sync::Arc;

use crate::job::end_holding;
use crate::job::ending::{nothing_was_opened, proposed};
use crate::job::entry::{Charge, Ended, Ending, Event, Reply};
use crate::job::photo::owed_when_left;
use crate::job::practice::is_practice;
use crate::job::proof::with_records;
use crate::platform::{clock, files};
use crate::report::{item_name, must_not_drive, not_proved, nothing_wrong, warning_light_lines};
use crate::text::{self, Now, Pay, Say};
use crate::trade::play::Decision;
use crate::trade::wheel_end::{Form, NotDoneReason, Phase, PlannedStep, Step, StepKey};
use crate::ui::at::StepContext;
use crate::ui::beside::beside;
use crate::ui::parts::camera;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picture::{drawn, mark};
use crate::ui::parts::rows::due;
use crate::ui::route::Route;
use crate::ui::screens::{overview, practice, removed, report_screen};
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// How long a page takes at most to show the report.
const PRINT_MS: i32 = 400;

/// When the lug nuts are due again; one key keeps it.
pub fn retorque(at: &StepContext) -> Node {
    let here = at.clone();
    let keep = move || keep_beside(&here);
    frame(at, due(at), key(Look::Primary, at.text().primary, keep))
}

/// Keeps what the step writes and that it is done.
fn keep_beside(at: &StepContext) {
    let mut whats = beside(at, &at.planned);
    whats.push(Event::Answered(at.planned.key, Reply::Done));
    at.write_and_go_on(whats);
}

/// The report and the file; handing them over is one key.
pub fn report(at: &StepContext) -> Node {
    let here = at.clone();
    frame(
        at,
        view! { <p class="closing__ready">{at.say(Say::ReportReady)}</p> },
        view! {
            {key(Look::Primary, at.text().primary, move || keep_beside(&here))}
            {payment(at)}
            {see(at.app, &at.open)}
            {exports(at.app, &at.open)}
        },
    )
}

/// The way to what is to pay.
fn payment(at: &StepContext) -> Node {
    let hash = Route::Bill(at.open.log.0.clone()).to_hash();
    link(Look::Plain, text::pay(at.lang, Pay::ToPayment), hash)
}

/// See it, print it, take it along as a file.
fn ways_out(app: App, open: &Open) -> Node {
    view! {
        {see(app, open)}
        {print(app, open)}
        {exports(app, open)}
    }
}

fn exports(app: App, open: &Open) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    view! {
        {key(Look::Plain, text::say(lang, Say::Export), move || report_screen::export(app))}
        {report_screen::export_with_key(app, open)}
    }
}

fn see(app: App, open: &Open) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let hash = Route::Report(open.log.0.clone()).to_hash();
    link(Look::Plain, text::say(lang, Say::ShowReport), hash)
}

fn print(app: App, open: &Open) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let report = Route::Report(open.log.0.clone());
    let print = move || {
        app.go(&report);
        // The report has to stand on the page before the printer looks at it.
        clock::later(PRINT_MS, || {
            let _ = files::print();
        });
    };
    key(Look::Plain, text::say(lang, Say::Print), print)
}

/// How the job ends: the one ending that fits, or left unfinished with who takes charge.
pub fn end(at: &StepContext) -> Node {
    if let Some(ended) = at.sheet().ended() {
        return over(at, ended.ending);
    }
    let ending = proposed(at.sheet(), &at.open.plan);
    let leave = RwSignal::new(ending == Ending::LeftUnfinished);
    let (body, keys) = (at.clone(), at.clone());
    frame(
        at,
        move || {
            if leave.get() {
                unfinished(&body)
            } else {
                fitting(&body, ending)
            }
        },
        move || {
            if leave.get() {
                match owed_when_left(keys.sheet()) {
                    Some(step) => photo_first(&keys, step),
                    None => charges(&keys),
                }
            } else {
                end_keys(&keys, ending, leave)
            }
        },
    )
}

fn fitting(at: &StepContext, ending: Ending) -> Node {
    let (title, _) = text::ending(at.lang, ending);
    view! {
        <h2 class="closing__ending">{title}</h2>
        {meaning(at, ending)}
    }
}

/// What an ending means for the car: it says no more than page one does.
fn meaning(at: &StepContext, ending: Ending) -> Node {
    let (sheet, lang) = (at.sheet(), at.lang);
    let (_, plain) = text::ending(lang, ending);
    let parked = ending != Ending::LeftUnfinished && must_not_drive(sheet);
    let parked = parked.then(|| {
        view! {
            <p class="verdict__word">
                {drawn(&mark(Decision::Stop).drawing(), "", "verdict__mark")}
                <b>{text::decision(lang, Decision::Stop)}</b>
            </p>
            <p class="verdict__danger" role="alert">{at.say(Say::MustNotBeDriven)}</p>
        }
    });
    let open = match ending {
        Ending::Finished => not_proved(lang, sheet),
        _ => Vec::new(),
    };
    let warning_lights = warning_light_lines(lang, sheet);
    let plain = match ending {
        Ending::NothingWrong => match nothing_wrong(sheet) {
            now @ (Now::WarningLightOn | Now::Watch) => text::now_say(lang, now),
            _ => plain,
        },
        Ending::Finished if !open.is_empty() => at.say(Say::FinishedNotProved),
        Ending::Declined if nothing_was_opened(sheet) => at.say(Say::NothingOpened),
        _ => plain,
    };
    let open = open.into_iter().map(|line| view! { <li>{line}</li> });
    let warning_lights = warning_lights
        .into_iter()
        .map(|line| view! { <p>{line}</p> });
    view! {
        {parked}
        <p>{plain}</p>
        <ul class="closing__open">{open.collect_view()}</ul>
        {warning_lights.collect_view()}
    }
}

fn end_keys(at: &StepContext, ending: Ending, leave: RwSignal<bool>) -> Node {
    let here = at.clone();
    let (title, _) = text::ending(at.lang, ending);
    let (other, _) = text::ending(at.lang, Ending::LeftUnfinished);
    let alone = at.rows.steps.is_empty();
    let end = if alone {
        Say::EndNow
    } else {
        Say::ExportAndEnd
    };
    // Paper that is printed before the end says that the car is not released yet: seen, not printed.
    let out = (!alone).then(|| see(at.app, &at.open));
    view! {
        {key(Look::Primary, format!("{}: {title}", at.say(end)), move || {
            finish(&here, Ended { ending, charge: None }, move |app| {
                if !alone {
                    report_screen::export(app);
                }
            });
        })}
        {out}
        {key(Look::Plain, other, move || leave.set(true))}
    }
}

/// The vehicle stays at STOP: mark, word and every loose item by its name.
fn unfinished(at: &StepContext) -> Node {
    let (title, meaning) = text::ending(at.lang, Ending::LeftUnfinished);
    let loose = at.sheet().loose();
    let rows = loose.iter().map(|(item, hold)| {
        view! {
            <li>
                <b>{item_name(at.lang, at.sheet(), *item)}</b>
                <span>{text::hold_state(at.lang, *hold)}</span>
            </li>
        }
    });
    view! {
        <p class="verdict__word">
            {drawn(&mark(Decision::Stop).drawing(), "", "verdict__mark")}
            <b>{text::decision(at.lang, Decision::Stop)}</b>
        </p>
        <h2 class="closing__ending">{title}</h2>
        <p>{meaning}</p>
        {what_holds(at)}
        <ol class="loose__list">{rows.collect_view()}</ol>
        <h2>{at.say(Say::WhoTakesCharge)}</h2>
    }
}

/// The answer that leaves no other ending, what to do about it, and the way to its question.
fn what_holds(at: &StepContext) -> Option<Node> {
    let open = &at.open;
    let holding = end_holding(&open.sheet, &open.plan, &open.steps)?;
    let now = text::follows(
        at.lang,
        holding.question,
        holding.given,
        at.open.plan.build(),
    );
    let there = Route::Step(open.log.0.clone(), holding.question).to_hash();
    let shown = view! {
        <aside class="hold" role="alert">
            <p>{now}</p>
        </aside>
        {link(Look::Plain, at.say(Say::GoThere), there)}
    };
    Some(shown)
}

/// How it stands goes into the record before somebody takes charge, or why there is no picture.
fn photo_first(at: &StepContext, step: StepKey) -> Node {
    let (asked, trouble) = (at.asked(step), RwSignal::new(None));
    let lang = at.lang;
    let reasons = NotDoneReason::ALL.iter().map(|because| {
        let (here, because) = (asked.clone(), *because);
        key(Look::Plain, text::because(lang, because), move || {
            here.not_done(because);
        })
    });
    let reasons = reasons.collect_view();
    view! {
        <p>{asked.text().say}</p>
        {move || trouble.get().map(|word| camera::said(lang, word))}
        {camera::camera(camera::Shot::beside(&asked), trouble, Look::Primary)}
        <details class="more">
            <summary class="key key--foot">{at.say(Say::CannotBecause)}</summary>
            <div class="keys-grid">{reasons}</div>
        </details>
    }
}

fn charges(at: &StepContext) -> Node {
    let keys = Charge::ALL.iter().map(|charge| {
        let (here, charge) = (at.clone(), *charge);
        key(Look::Plain, text::charge(at.lang, charge), move || {
            let ended = Ended {
                ending: Ending::LeftUnfinished,
                charge: Some(charge),
            };
            finish(&here, ended, |_| ());
        })
    });
    let list = Route::Loose(at.open.log.0.clone()).to_hash();
    let back = Route::Job(at.open.log.0.clone()).to_hash();
    view! {
        <div class="keys-grid">{keys.collect_view()}</div>
        {link(Look::Foot, at.say(Say::LooseList), list)}
        {link(Look::Foot, at.say(Say::Resume), back)}
    }
}

/// Ends the job and stays, so that the file can be taken along.
fn finish(at: &StepContext, ended: Ended, then: impl FnOnce(App) + 'static) {
    let end = Route::Step(at.open.log.0.clone(), StepKey::once(Step::End));
    let app = at.app;
    let whats = [at.recorded(), vec![Event::Ended(ended)]].concat();
    let whats = with_records(at.sheet(), whats);
    let (forget, go_on) = (at.forgetting_rows(), app.going_on(end));
    app.append_then(whats, move || {
        forget();
        go_on();
        then(app);
    });
}

fn loose_count(at: &StepContext) -> String {
    let sheet = at.sheet();
    text::loose_count(at.lang, sheet.loose().len(), sheet.is_incomplete())
}

/// The job has ended.
fn over(at: &StepContext, ending: Ending) -> Node {
    let (title, _) = text::ending(at.lang, ending);
    let stop = (ending == Ending::LeftUnfinished).then(|| {
        drawn(
            &mark(Decision::Stop).drawing(),
            text::decision(at.lang, Decision::Stop),
            "verdict__mark",
        )
    });
    let body = view! {
        <p class="closing__ready closing__over">{at.say(Say::EndedNow)}</p>
        {stop}
        <h2 class="closing__ending">{title}</h2>
        {meaning(at, ending)}
        <p class="closing__loose">{loose_count(at)}</p>
    };
    let keys = view! {
        {practice::way(&at.open, Look::Plain, at.say(Say::ShowTruth))}
        {(!is_practice(at.sheet())).then(|| removed::ways(&at.open, at.lang))}
        {payment(at)}
        {link(Look::Primary, text::say(at.lang, Say::ShopSheet), Route::Home.to_hash())}
        {ways_out(at.app, &at.open)}
    };
    frame(at, body, keys)
}

/// The end, asked for from a step where the procedure does not have it yet.
pub fn end_from_anywhere(app: App, open: Arc<Open>, key: StepKey) -> Node {
    if key != StepKey::once(Step::End) {
        return overview::wherever(app);
    }
    let planned = PlannedStep {
        key,
        phase: Phase::HandOver,
        form: Form::End,
        holds: Vec::new(),
        changes: Vec::new(),
        joins: false,
    };
    app.lock();
    end(&StepContext::new(app, open, planned))
}
