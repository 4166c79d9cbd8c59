//! The plain answers: done, yes or no, a list looked at together, one word of a few.

use crate::job::combined_steps::{put_right, rows};
use crate::job::entry::{Event, PersonField, Reply, VehicleField};
use crate::job::{count, done};
use crate::text::{self, Ledger, Say};
use crate::trade::answer::Answer;
use crate::trade::damage::CameBackFor;
use crate::trade::vehicle::Vin;
use crate::trade::wheel_end::{Check, Choice, Given, ItemKind, Step};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::frame::{frame, frame_with};
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::removed_way::removed_way;
use crate::ui::parts::visits::visits;
use crate::ui::screens::mishap::or_wrong;
use crate::ui::view::prelude::*;

/// One key says that it is done.
pub fn act(at: &StepContext) -> Node {
    or_wrong(at, |at, wrong| {
        frame(at, (), view! { {done_key(at)} {wrong} })
    })
}

fn done_key(at: &StepContext) -> Node {
    let here = at.clone();
    key(Look::Primary, at.text().primary, move || {
        here.answer(Reply::Done)
    })
}

/// Yes or no; "not done" stands at the foot of every step.
pub fn ask(at: &StepContext) -> Node {
    or_wrong(at, |at, wrong| {
        let (yes, no) = (at.clone(), at.clone());
        let text = at.text();
        frame_with(
            at,
            last_four(at),
            earlier(at),
            view! {
                {key(Look::Primary, text.primary, move || yes.answer(Reply::Said(Answer::Yes)))}
                {key(Look::Plain, text.no, move || no.answer(Reply::Said(Answer::No)))}
                {wrong}
            },
        )
    })
}

/// The last four characters of the VIN, large enough to be held against the windscreen.
fn last_four(at: &StepContext) -> Option<Node> {
    if at.planned.key.step != Step::RightCar {
        return None;
    }
    let vin = at
        .sheet()
        .vehicle(VehicleField::Vin)
        .and_then(|vin| Vin::parse(vin).ok());
    let last = vin.as_ref().map(Vin::last_four);
    let plate = at
        .sheet()
        .person(PersonField::Plate)
        .unwrap_or_default()
        .to_owned();
    let shown = last.map(str::to_owned).unwrap_or(plate);
    Some(view! { <p class="answer__vin">{shown}</p> })
}

/// What was found and done at earlier visits, where the car is told from its like.
fn earlier(at: &StepContext) -> Option<Node> {
    if at.planned.key.step != Step::RightCar {
        return None;
    }
    let sheet = at.sheet();
    let vin = sheet
        .vehicle(VehicleField::Vin)
        .unwrap_or_default()
        .to_owned();
    let plate = sheet
        .person(PersonField::Plate)
        .unwrap_or_default()
        .to_owned();
    let log = at.open.log.0.clone();
    Some(visits(
        at.app,
        log,
        move || vin.clone(),
        move || plate.clone(),
    ))
}

/// A list looked at together. A row is empty until it is tapped; one key says yes to those that were
/// not, and says for how many. A row that was not yes stays so until it is tapped itself.
pub fn checks(at: &StepContext, checks: &[Check]) -> Node {
    let asked = checks.to_vec();
    or_wrong(at, move |at, wrong| listed(at, &asked, wrong))
}

fn listed(at: &StepContext, checks: &[Check], wrong: Option<Node>) -> Node {
    let recorded = rows(at.sheet(), &at.planned, checks);
    let drafts = Drafts::of(at);
    let saved = drafts.answers(&names(checks)).into_iter();
    let given = saved
        .zip(&recorded)
        .map(|(saved, recorded)| saved.or(*recorded));
    let given = RwSignal::new(given.collect::<Vec<_>>());
    let lines = (0..checks.len()).map(|row| {
        let recorded = recorded.get(row).copied().flatten();
        check_row(at, given, row, checks, recorded)
    });
    let lines = lines.collect_view();
    let (lang, all, here) = (at.lang, checks.len(), at.clone());
    let open = move || given.with(|rows| rows.iter().filter(|answer| answer.is_none()).count());
    let asked = checks.to_vec();
    let keep = move |_| {
        let given = given.get_untracked().into_iter();
        let given = given.map(|answer| answer.unwrap_or(Answer::Yes));
        here.answer(Reply::Checked(asked.iter().copied().zip(given).collect()));
    };
    // What was said before is not said again.
    let same = move || given.with(|rows| *rows == recorded && rows.iter().all(Option::is_some));
    frame(
        at,
        view! {
            <ul class="checks">{lines}</ul>
            {removed_way(at, &at.planned)}
        },
        view! {
            <button type="button" class="key key--primary" prop:disabled=same on:click=keep>
                {move || text::yes_to(lang, open(), all)}
            </button>
            {refuse_site(at)} {wrong}
        },
    )
}

fn names(checks: &[Check]) -> Vec<String> {
    checks.iter().map(|check| check.code().to_owned()).collect()
}

/// One row: a tap turns it from empty to no, not looked at and yes; what is not yes says what it
/// means for the work.
fn check_row(
    at: &StepContext,
    given: RwSignal<Vec<Option<Answer>>>,
    row: usize,
    checks: &[Check],
    recorded: Option<Answer>,
) -> Option<Node> {
    let check = *checks.get(row)?;
    let (lang, key, drafts) = (at.lang, at.planned.key, Drafts::of(at));
    let build = at.open.plan.build();
    let names = names(checks);
    let answer = move || given.with(|all| all.get(row).copied().flatten());
    let turn = move |_| {
        given.update(|all| {
            if let Some(answer) = all.get_mut(row) {
                *answer = Some(put_right(recorded, *answer));
            }
        });
        drafts.set_answers(&names, given.get_untracked());
    };
    let wrong = move || {
        let answer = answer().filter(|answer| *answer != Answer::Yes)?;
        let now = text::follows(lang, key, Given::Row(check, answer), build);
        Some(view! { <p class="checks__now" role="status">{now}</p> })
    };
    let row = view! {
        <li>
            <button
                type="button"
                class="checks__row"
                data-answer={move || answer().map_or("open", Answer::code)}
                on:click=turn
            >
                <span class="checks__what">{text::check(lang, check, build.fitted.fixing)}</span>
                <b class="checks__answer">
                    {move || answer().map_or("–", |answer| text::answer(lang, answer))}
                </b>
            </button>
            {wrong}
        </li>
    };
    Some(row)
}

/// The site can be refused as a whole, which ends the job before the car is touched.
fn refuse_site(at: &StepContext) -> Option<Node> {
    (at.planned.key.step == Step::SiteLook).then(|| {
        let here = at.clone();
        key(Look::Plain, at.say(Say::NotSafeHere), move || {
            here.answer(Reply::Said(Answer::No));
        })
    })
}

/// One word of a few; "some were loose" asks how many, and a comeback why.
pub fn choice(at: &StepContext, picks: &'static [Choice]) -> Node {
    or_wrong(at, |at, wrong| words(at, picks, wrong))
}

fn words(at: &StepContext, picks: &[Choice], wrong: Option<Node>) -> Node {
    let asking = RwSignal::new(None::<Choice>);
    let words = picks.iter().enumerate().map(|(place, pick)| {
        let (here, pick) = (at.clone(), *pick);
        let look = if place == 0 {
            Look::Primary
        } else {
            Look::Plain
        };
        key(look, text::pick(at.lang, pick), move || {
            if matches!(pick, Choice::SomeLoose | Choice::SameCorner) {
                asking.set(Some(pick));
            } else {
                here.answer(Reply::Picked(pick));
            }
        })
    });
    let words = words.collect_view();
    let here = at.clone();
    frame(
        at,
        move || match asking.get() {
            None => None,
            Some(Choice::SameCorner) => Some(why(&here)),
            Some(_) => Some(how_many(&here)),
        },
        view! {
            <div class="keys-grid" hidden={move || asking.get().is_some()}>
                {words} {wrong}
            </div>
        },
    )
}

/// Why it came back with the same corner: one key a cause.
fn why(at: &StepContext) -> Node {
    let keys = CameBackFor::ALL.iter().map(|cause| {
        let (here, cause) = (at.clone(), *cause);
        key(
            Look::Plain,
            text::came_back_for(at.lang, cause),
            move || {
                let mut whats = vec![Event::CameBackFor(cause)];
                let reply = Reply::Picked(Choice::SameCorner);
                whats.extend(done(here.sheet(), &here.planned, reply));
                here.write_and_go_on(whats);
            },
        )
    });
    view! {
        <h2>{text::ledger(at.lang, Ledger::CauseAsk)}</h2>
        <div class="keys-grid">{keys.collect_view()}</div>
    }
}

/// How many of the wheel fasteners of this job were found loose: one key a number.
fn how_many(at: &StepContext) -> Node {
    let wheel = count(at.sheet(), ItemKind::LugNuts);
    let wheels = u8::try_from(at.sheet().corners().len()).unwrap_or(1);
    let keys = (1..=wheel.saturating_mul(wheels.max(1))).map(|loose| {
        let here = at.clone();
        key(Look::Plain, loose.to_string(), move || {
            here.answer(Reply::FoundLoose(loose));
        })
    });
    view! {
        <h2>{at.say(Say::HowManyLoose)}</h2>
        <div class="keys-grid">{keys.collect_view()}</div>
    }
}
