//! The signs of the road in one list: what was noticed is tapped, and one key says no to the rest.
//!
//! A row that was not tapped has no answer until that key, and the key says for how many it stands.

use crate::job::combined_steps::{no_to, turns};
use crate::job::entry::{Event, Reply};
use crate::text::{self, Say};
use crate::trade::answer::Answer;
use crate::trade::wheel_end::PlannedStep;
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame;
use crate::ui::view::prelude::*;

/// The questions that are open, in their order.
pub fn signs(at: &StepContext) -> Node {
    let mut asked: Vec<PlannedStep> = at.rows.steps.to_vec();
    asked.push(at.planned.clone());
    let given = RwSignal::new(vec![None::<Reply>; asked.len()]);
    let rows = asked.iter().enumerate();
    let rows = rows.map(|(row, planned)| sign_row(at, given, row, planned));
    let rows = view! { <ul class="checks">{rows.collect_view()}</ul> };
    let lang = at.lang;
    let open = move || given.with(|given| given.iter().filter(|reply| reply.is_none()).count());
    let label = move || text::no_to_rest(lang, open(), given.with(Vec::len));
    let here = at.clone();
    let keep = move |_| {
        let replies = given.get_untracked();
        let answered = asked.iter().zip(replies).map(|(planned, reply)| {
            Event::Answered(planned.key, reply.unwrap_or_else(|| no_to(planned)))
        });
        here.write_and_go_on(answered.collect());
    };
    frame(
        at,
        rows,
        view! {
            <button type="button" class="key key--primary" on:click=keep>
                {label}
            </button>
        },
    )
}

/// One sign: untouched it has no answer.
fn sign_row(
    at: &StepContext,
    given: RwSignal<Vec<Option<Reply>>>,
    row: usize,
    planned: &PlannedStep,
) -> Node {
    let lang = at.lang;
    let turns = turns(planned);
    let reply = move || given.with(|all| all.get(row).cloned().flatten());
    let turn = move |_| {
        given.update(|all| {
            if let Some(reply) = all.get_mut(row) {
                let place = turns.iter().position(|turn| Some(turn) == reply.as_ref());
                *reply = turns.get(place.map_or(0, |place| place + 1)).cloned();
            }
        });
    };
    let word = move || match reply() {
        None => text::say(lang, Say::NotAnswered),
        Some(Reply::Picked(pick)) => text::pick(lang, pick),
        Some(Reply::Said(answer)) => text::answer(lang, answer),
        Some(_) => text::answer(lang, Answer::NotDone),
    };
    let state = move || match reply() {
        None => "open",
        Some(Reply::NotDone(_)) => Answer::NotDone.code(),
        Some(_) => "noticed",
    };
    let what = text::step_for(lang, planned.key, at.open.plan.build()).say;
    view! {
        <li>
            <button type="button" class="checks__row" data-answer=state on:click=turn>
                <span class="checks__what">{what}</span>
                <b class="checks__answer">{word}</b>
            </button>
        </li>
    }
}
