//! The steps that are told together with the one whose keys are on the screen.

use crate::job::combined_steps::Line;
use crate::job::ending::retorque_odometer;
use crate::text::{self, Say};
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Check, Form, Given, PlannedStep, StepKey};
use crate::ui::at::StepContext;
use crate::ui::beside::retorque;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::frame::of_job;
use crate::ui::parts::removed_way::removed_way;
use crate::ui::view::prelude::*;

/// Every step above the last with its sentence, its caution and its rows; nothing if there is none.
pub fn rows(at: &StepContext) -> Option<Node> {
    as_they_stood(at);
    let steps = at.rows.steps.iter().enumerate();
    let shown = steps.map(|(step, planned)| of_step(at, step, planned));
    (!at.rows.steps.is_empty()).then(|| shown.collect_view())
}

/// Rows that were touched before the page was loaded again stand as they were.
fn as_they_stood(at: &StepContext) {
    let saved = Drafts::of(at).answers(&names(at));
    at.rows.lines.update_untracked(|all| {
        for (line, answer) in all.iter_mut().zip(saved) {
            line.answer = line.answer.or(answer);
        }
    });
}

/// The name of each row: its step and, in a list, its check.
fn names(at: &StepContext) -> Vec<String> {
    let name = |line: &Line| {
        let step = at
            .rows
            .steps
            .get(line.step)
            .map(|planned| planned.key.code());
        let check = line.check.map_or("", Check::code);
        format!("{}/{check}", step.unwrap_or_default())
    };
    at.rows
        .lines
        .with_untracked(|all| all.iter().map(name).collect())
}

fn of_step(at: &StepContext, step: usize, planned: &PlannedStep) -> Node {
    let text = text::step_for(at.lang, planned.key, at.open.plan.build());
    let lines = at.rows.lines.get_untracked();
    let lines = lines.iter().enumerate().filter(|(_, l)| l.step == step);
    let lines: Vec<Node> = lines
        .map(|(row, line)| match line.check {
            Some(check) => {
                let what = text::check(at.lang, check, at.open.plan.fitted.fixing);
                turned(at, row, planned.key, what)
            }
            None => turned(at, row, planned.key, text.say),
        })
        .collect();
    let say = matches!(planned.form, Form::Checks(_))
        .then(|| view! { <p class="rows__say">{text.say}</p> });
    let due = matches!(planned.form, Form::Retorque).then(|| due(at));
    let many = if lines.len() > 3 { "yes" } else { "no" };
    view! {
        {say}
        {text.caution.map(|caution| view! { <p class="step__caution">{caution}</p> })}
        {of_job(at, planned)}
        {due}
        <ul class="checks" data-many=many>{lines}</ul>
        {removed_way(at, planned)}
    }
}

/// One row: a tap turns it, and the word says how it stands.
fn turned(at: &StepContext, row: usize, key: StepKey, what: &'static str) -> Node {
    let (all, lang, drafts, names) = (at.rows.lines, at.lang, Drafts::of(at), names(at));
    let build = at.open.plan.build();
    let line = move || all.with(|all| all.get(row).copied());
    let answer = move || line().and_then(|line| line.answer);
    let turn = move |_| {
        all.update(|all| {
            if let Some(line) = all.get_mut(row) {
                *line = line.turned();
            }
        });
        let rows = all.get_untracked().into_iter().map(|line| line.answer);
        drafts.set_answers(&names, rows);
    };
    let wrong = move || {
        let (check, answer) = line().and_then(|line| line.check.zip(line.answer))?;
        let now = text::follows(lang, key, Given::Row(check, answer), build);
        (answer != Answer::Yes).then(|| view! { <p class="checks__now" role="status">{now}</p> })
    };
    let word = move || match line() {
        Some(Line { answer: None, .. }) => "–",
        Some(Line {
            check: Some(_),
            answer: Some(answer),
            ..
        }) => text::answer(lang, answer),
        Some(Line {
            answer: Some(Answer::Yes),
            ..
        }) => text::say(lang, Say::Done),
        _ => text::say(lang, Say::RowNotYet),
    };
    view! {
        <li>
            <button
                type="button"
                class="checks__row"
                data-answer={move || answer().map_or("open", Answer::code)}
                on:click=turn
            >
                <span class="checks__what">{what}</span>
                <b class="checks__answer">{word}</b>
            </button>
            {wrong}
        </li>
    }
}

/// The distance and the day of the re-torque, whichever comes first.
pub fn due(at: &StepContext) -> Option<Node> {
    let due = retorque(at)?;
    // Beside a signature there is room for where the odometer stands then, and for no more.
    let odometer = retorque_odometer(at.sheet(), &due).map(|(now, then)| {
        let (now, then) = (at.fmt.typed(&now).line(), at.fmt.typed(&then).line());
        view! {
            <small class="due__odometer">{text::odometer_then(at.lang, &then)}</small>
            <small class="due__odometer due__alone">{text::odometer_now(at.lang, &now)}</small>
        }
    });
    let distance = due.distance.as_ref().map(|typed| {
        let (shown, twin) = (at.fmt.typed(typed), at.fmt.typed_twin(typed));
        let twin = text::also_value(at.lang, &twin.line());
        view! {
            <dt>{at.say(Say::RetorqueDistance)}</dt>
            <dd>
                {shown.line()} {" "} <small class="due__alone">{twin}</small> {odometer}
            </dd>
        }
    });
    let shown = view! {
        <dl class="due">
            {distance}
            <dt>{at.say(Say::RetorqueDate)}</dt>
            <dd>{due.date}</dd>
        </dl>
        <p>{at.say(Say::RetorqueDefault)}</p>
    };
    Some(shown)
}
