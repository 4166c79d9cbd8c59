//! Where the job is: every step by phase, with its state; any of them can be opened.

use crate::drawing::corner::small;
use crate::job::car_state::not_right;
use crate::job::practice::is_practice;
use crate::job::{Status, status};
use crate::report::given_words;
use crate::text::{self, CauseWord, Desk, FaceWord, Flow, Lang, Say, ShopWord};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Form, Phase, PlannedStep, ROUNDS};
use crate::ui::parts::hold::hold;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::picture::{drawn, place};
use crate::ui::parts::strip::{banners, of_record};
use crate::ui::route::Route;
use crate::ui::screens::{customer, flow, practice, removed};
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// All steps of the open job.
pub fn wherever(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    (move || {
        let Some(open) = app.open.get() else { return ().into_node() };
        let id = || open.log.0.clone();
        let next = open.next().map(|planned| planned.key);
        let mut phase = None;
        let several = open.sheet.corners().len() > 1;
        let rows = open.steps.iter().map(|planned| {
            let here = (planned.phase, planned.key.corner.filter(|_| several));
            let first = phase != Some(here);
            phase = Some(here);
            row(&open, planned, first.then_some(here), next == Some(planned.key), lang)
        });
        let rows = rows.collect_view();
        view! {
            <main class="desk where">
                <h1>{text::say(lang, Say::Where)}</h1>
                {banners(app)}
                {of_record(&open, lang)}
                {flow::in_shop(app, &open)}
                {customer::reach_keys(lang, &open.sheet)}
                {link(Look::Primary, text::say(lang, Say::Resume), Route::Job(id()).to_hash())}
                <nav class="where__ways">
                    {link(Look::Plain, text::say(lang, Say::LooseList), Route::Loose(id()).to_hash())}
                    {link(Look::Plain, text::say(lang, Say::ShowReport), Route::Report(id()).to_hash())}
                    {link(Look::Plain, text::cause_word(lang, CauseWord::Title), Route::Cause(id()).to_hash())}
                    {removed::ways(&open, lang)}
                    {link(Look::Plain, text::face(lang, FaceWord::Title), Route::Runout(id()).to_hash())}
                    {link(
                        Look::Plain,
                        text::desk(lang, Desk::BillTitle),
                        Route::Bill(id()).to_hash(),
                    )}
                    {link(
                        Look::Plain,
                        text::shop_word(lang, ShopWord::CustomerTitle),
                        Route::Customer(id()).to_hash(),
                    )}
                    {link(Look::Plain, text::say(lang, Say::NotesTitle), Route::Notes(id()).to_hash())}
                    {link(Look::Plain, text::say(lang, Say::Pause), Route::Home.to_hash())}
                    {link(
                        Look::Plain,
                        text::flow(lang, Flow::EraseTitle),
                        Route::Erase(id()).to_hash(),
                    )}
                    {practice::way(&open, Look::Plain, text::say(lang, Say::ShowTruth))}
                </nav>
                <ol class="where__steps">{rows}</ol>
                {throw_away(app, &open, lang)}
            </main>
        }
    })
    .into_node()
}

/// Only practice can be thrown away.
fn throw_away(app: App, open: &Open, lang: Lang) -> Option<Node> {
    let log = open.log.0.clone();
    is_practice(&open.sheet).then(|| {
        let (label, hint) = (
            text::say(lang, Say::ThrowAway),
            text::say(lang, Say::HoldToConfirm),
        );
        view! {
            <p>{text::say(lang, Say::ThrowAwaySay)}</p>
            {hold(label, hint, move || app.throw_away(log.clone()))}
        }
    })
}

fn row(
    open: &Open,
    planned: &PlannedStep,
    first: Option<(Phase, Option<Corner>)>,
    here: bool,
    lang: Lang,
) -> Node {
    let wrong = not_right(&open.sheet, &open.plan, planned);
    let said = wrong
        .iter()
        .map(|given| given_words(lang, *given, open.plan.fitted.fixing));
    let said = said.collect::<Vec<_>>().join(" · ");
    let state = match status(&open.sheet, planned) {
        // What was answered with no is not told as done.
        Status::Done | Status::Held if !said.is_empty() => said,
        Status::Done => text::say(lang, Say::StepsDone).to_owned(),
        Status::Open => text::say(lang, Say::StepsOpen).to_owned(),
        Status::Held => text::held_title(lang).to_owned(),
        Status::Partly(done, of) => text::step_of(lang, done.into(), of.into()),
        Status::NotDone(because) => text::skipped(lang, text::because(lang, because)),
    };
    let text = text::step_for(lang, planned.key, open.plan.build());
    let name = match planned.key.corner {
        Some(corner) => text::step_at(lang, text.name, corner),
        None => text.name.to_owned(),
    };
    let name = match planned.form {
        Form::Round(_, round) => format!("{name} · {}", text::round_of(lang, round, ROUNDS)),
        _ => name,
    };
    let current = if here { "step" } else { "false" };
    view! {
        {first.map(|(phase, corner)| heading(phase, corner, lang))}
        <li>
            <a
                class="where__step"
                aria-current=current
                href={Route::Step(open.log.0.clone(), planned.key).to_hash()}
            >
                <b>{name}</b>
                <span>{state}</span>
            </a>
        </li>
    }
}

fn heading(phase: Phase, corner: Option<Corner>, lang: Lang) -> Node {
    let phase = text::phase(lang, phase);
    let said = match corner {
        Some(corner) => text::at_corner(lang, text::corner_title(lang, corner), phase),
        None => phase.to_owned(),
    };
    let outline = corner.map(|corner| drawn(&small(&[place(corner)]), "", "corner-title__drawing"));
    view! { <li class="where__phase">{outline} {said}</li> }
}
