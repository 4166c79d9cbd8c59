//! The frame of a step: strip, one thing, keys in the thumb's band, and the plain keys under them.

use crate::job::caution::cautions;
use crate::job::combined_steps::open_rows;
use crate::job::entry::Event;
use crate::job::holding::holding;
use crate::text::{self, Say};
use crate::trade::wheel_end::{Form, Phase, PlannedStep};
use crate::ui::at::{StepContext, is_question};
use crate::ui::parts::bytes::latest;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::panel::{Panel, close, panel};
use crate::ui::parts::picture::drawn;
use crate::ui::parts::practice;
use crate::ui::parts::rows::rows;
use crate::ui::parts::strip::{banners, of_record, strip};
use crate::ui::view::prelude::*;

/// A step on the screen: its sentence and caution, `body`, then `keys`.
pub fn frame(
    at: &StepContext,
    body: impl IntoNode + 'static,
    keys: impl IntoNode + 'static,
) -> Node {
    frame_with(at, body, (), keys)
}

/// The same with what may be added to it, which need not be read before a key is touched.
pub fn frame_with(
    at: &StepContext,
    body: impl IntoNode + 'static,
    beyond: impl IntoNode + 'static,
    keys: impl IntoNode + 'static,
) -> Node {
    let at = &at.looked_at_again();
    let (body, beyond) = (body.into_node(), beyond.into_node());
    framed(at, Some(words(at)), (body, beyond), keys.into_node())
}

/// The same for what stands in the way of a step: what the step says waits until it is gone.
pub fn instead(
    at: &StepContext,
    body: impl IntoNode + 'static,
    keys: impl IntoNode + 'static,
) -> Node {
    framed(
        &at.looked_at_again(),
        None,
        (body.into_node(), ().into_node()),
        keys.into_node(),
    )
}

fn framed(at: &StepContext, words: Option<Node>, (body, beyond): (Node, Node), keys: Node) -> Node {
    let open_panel = at.panel;
    let body = StoredValue::new_local(Some(body));
    let beyond = StoredValue::new_local(Some(beyond));
    let keys = StoredValue::new_local(Some(keys));
    let app = at.app;
    let name = text::you_are_at(at.lang, text::phase(at.lang, at.planned.phase), at.name());
    let desk = if at.planned.phase == Phase::Pack {
        "step step--desk"
    } else {
        "step"
    };
    let recorded = if at.rows.steps.is_empty() {
        "no"
    } else {
        "yes"
    };
    // A list needs all of its room: there the practice car's key stands beside the main one.
    let is_list = at.asks_signs() || matches!(at.planned.form, Form::Checks(_));
    let way = practice::way(at);
    let (way_of_list, way) = if is_list { (way, None) } else { (None, way) };
    let (for_panel, for_foot) = (at.clone(), at.clone());
    let hidden = move || open_panel.get() != Panel::None;
    let (below, read_only) = (at.below, at.sheet().read_only());
    // Of work only its caution and the rows above it must have been on the screen.
    let instead = words.is_none();
    let end = (instead || is_question(&at.planned.form)).then(|| below.end());
    let also = (!instead).then(|| also(at));
    view! {
        <main class=desk aria-label=name data-rows=recorded>
            {strip(at)}
            {banners(app)}
            {of_record(&at.open, at.lang)}
            {earlier(at)}
            <section class="step__thing" tabindex="0" hidden=hidden>
                {words}
                {held(at)}
                {practice::reading(at)}
                {body.try_update_value(Option::take).flatten()}
                {end}
                {way}
                {latest(at)}
                {beyond.try_update_value(Option::take).flatten()}
            </section>
            {below.key(at.lang, hidden)}
            <fieldset
                class="step__keys"
                hidden=hidden
                prop:disabled={move || {
                    read_only || app.locked.get() || app.is_busy() || below.is_open()
                }}
            >
                {also}
                {way_of_list}
                {keys.try_update_value(Option::take).flatten()}
            </fieldset>
            {move || panel(&for_panel, open_panel)}
            {move || match open_panel.get() {
                Panel::None => foot(&for_foot, open_panel),
                _ => close(&for_foot, open_panel),
            }}
        </main>
    }
}

/// What to do now, where the answer at this step holds something.
fn held(at: &StepContext) -> Option<Node> {
    let holding = holding(at.sheet(), &at.open.plan, &at.planned)?;
    let now = text::follows(
        at.lang,
        holding.question,
        holding.given,
        at.open.plan.build(),
    );
    let shown = view! {
        <aside class="hold" role="alert">
            <h2>{text::held_title(at.lang)}</h2>
            <p>{now}</p>
        </aside>
    };
    Some(shown)
}

/// What the keys here answer of the rows above that were not touched.
pub fn also(at: &StepContext) -> Node {
    let (lang, steps) = (at.lang, at.rows.steps.clone());
    let (all, signs) = (at.rows.lines, at.asks_signs());
    (move || {
        // The signs of the road are answered by a list of their own.
        let open = if signs {
            0
        } else {
            all.with(|lines| open_rows(lines))
        };
        let list = |planned: &PlannedStep| matches!(planned.form, Form::Checks(_));
        let done = !steps.iter().any(list);
        (open > 0).then(|| view! { <p class="step__also">{text::also_rows(lang, open, done)}</p> })
    })
    .into_node()
}

/// When the next tap counts as done, where that is not now.
fn earlier(at: &StepContext) -> impl IntoNode + use<> {
    let (app, lang) = (at.app, at.lang);
    let line = move |ago| view! { <p class="told" role="status">{text::counts_as(lang, ago)}</p> };
    move || app.ago.get().map(line)
}

/// What to do, its picture and its caution.
fn words(at: &StepContext) -> Node {
    if at.asks_signs() {
        return view! { <h1 class="step__say">{at.say(Say::SignsSay)}</h1> };
    }
    let text = at.text();
    let alone = at.rows.steps.is_empty();
    let drawn_here = alone && has_drawing(&at.planned.form) && !practice::shows(at);
    // Where there is a practice car to try, its key stands in the picture's place.
    let picture = at.planned.key.step.row().drawing.filter(|_| drawn_here);
    let work = !alone || matches!(at.planned.form, Form::Do | Form::Turn(_));
    let seen = (work && !is_question(&at.planned.form)).then(|| at.below.end());
    view! {
        {rows(at)}
        <h1 class="step__say">{text.say}</h1>
        {text.caution.map(|caution| view! { <p class="step__caution">{caution}</p> })}
        {of_job(at, &at.planned)}
        {seen}
        {picture.map(|picture| drawn(&picture.drawing(), text.name, "step__picture"))}
    }
}

/// The cautions that this job brings to a step.
pub fn of_job(at: &StepContext, planned: &PlannedStep) -> Node {
    let all = cautions(at.sheet(), planned).into_iter();
    let say = |of| view! { <p class="step__caution">{text::caution(at.lang, of)}</p> };
    all.map(say).collect_view()
}

/// Forms that draw something of their own leave no room for the step's picture.
const fn has_drawing(form: &Form) -> bool {
    !matches!(
        form,
        Form::DialSetup(_) | Form::Round(..) | Form::Turn(_) | Form::Result | Form::Checks(_)
    )
}

fn foot(at: &StepContext, panel: RwSignal<Panel>) -> Node {
    let app = at.app;
    let toggle = move |to: Panel| {
        panel.update(|now| *now = if *now == to { Panel::None } else { to });
    };
    // A job that has ended has nothing left to do; only the ending itself can be taken back.
    let over = at.planned.form == Form::End && at.sheet().ended().is_some();
    let last = at.sheet().counting().last().map(|entry| &entry.what);
    let undo = match last {
        Some(Event::Ended(_)) if over => Some(Say::UndoEnd),
        _ => (!over).then_some(Say::Undo),
    };
    let not_done = (!over).then(|| {
        key(Look::Foot, at.say(Say::NotDone), move || {
            toggle(Panel::NotDone);
        })
    });
    view! {
        <nav class="step__foot">
            {undo.map(|say| key(Look::Foot, at.say(say), move || app.undo()))}
            {not_done}
            {key(Look::Foot, at.say(Say::More), move || toggle(Panel::More))}
        </nav>
    }
}
