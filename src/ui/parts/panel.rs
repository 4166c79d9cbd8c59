//! What opens over a step without leaving it: not done, more, a note, why.

use crate::job::backdate::Ago;
use crate::job::entry::{Event, Remark};
use crate::text::{self, CauseWord, FaceWord, Saved, Say, TakeOver};
use crate::trade::wheel_end::{NotDoneReason, Phase};
use crate::ui::at::StepContext;
use crate::ui::parts::camera;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picture::drawn;
use crate::ui::parts::practice;
use crate::ui::parts::talk::talk;
use crate::ui::route::Route;
use crate::ui::screens::takeover;
use crate::ui::view::prelude::*;

/// Which panel is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Panel {
    /// None: the step itself.
    None,
    /// Why the step was not done.
    NotDone,
    /// Everything that belongs to every step.
    More,
    /// A note.
    Note,
    /// What stands in the way.
    WillNotGo,
    /// Leaving the car in the middle of the work.
    Leave,
    /// How long ago it was done.
    Earlier,
    /// Why the step matters.
    Why,
    /// The practice car.
    Practice,
}

/// The open panel of a step, if one is open.
pub fn panel(at: &StepContext, open: RwSignal<Panel>) -> Option<Node> {
    match open.get() {
        Panel::None => None,
        Panel::NotDone => Some(not_done(at, open)),
        Panel::More => Some(more(at, open)),
        Panel::Note => Some(note(at, open, Say::SavedAtStep)),
        Panel::WillNotGo => Some(note(at, open, Say::WillNotGoSay)),
        Panel::Leave => Some(takeover::leave(at)),
        Panel::Earlier => Some(earlier(at, open)),
        Panel::Why => Some(why(at)),
        Panel::Practice => Some(practice_car(at)),
    }
}

/// What stands at the foot while a panel is open. It keeps off the place of "Undo": a bounce opens
/// a panel again at most.
pub fn close(at: &StepContext, open: RwSignal<Panel>) -> Node {
    let close = key(Look::Plain, at.say(Say::Close), move || {
        open.set(Panel::None)
    });
    view! { <nav class="step__foot step__foot--panel">{close}</nav> }
}

fn not_done(at: &StepContext, open: RwSignal<Panel>) -> Node {
    let reasons = NotDoneReason::ALL.iter().map(|because| {
        let (at, because) = (at.clone(), *because);
        let label = text::because(at.lang, because);
        key(Look::Plain, label, move || {
            open.set(Panel::None);
            at.not_done(because);
        })
    });
    // Where several steps are told together, it is the last that was not done.
    let of = (!at.rows.steps.is_empty() && !at.asks_signs()).then(|| at.text().name);
    view! {
        <section class="panel">
            <h2>{at.say(Say::WhyNotDone)}</h2>
            {of.map(|name| view! { <p>{name}</p> })}
            {of.map(|_| view! { <p class="step__also">{at.say(Say::RowsStayOpen)}</p> })}
            <div class="panel__keys">{reasons.collect_view()}</div>
        </section>
    }
}

/// Whether the cause is still looked for in this phase.
const fn seeks(phase: Phase) -> bool {
    use Phase::{Decide, Gauge, Lift, Listen, Meet, Rock};
    matches!(phase, Meet | Listen | Lift | Rock | Gauge | Decide)
}

/// Whether the steps of a phase are done at the car.
const fn is_at_the_car(phase: Phase) -> bool {
    !matches!(phase, Phase::Pack | Phase::LookBack)
}

fn more(at: &StepContext, open: RwSignal<Panel>) -> Node {
    let id = || at.open.log.0.clone();
    view! {
        <section class="panel">
            <h2>{at.text().name}</h2>
            <div class="panel__keys">
                {key(Look::Plain, at.say(Say::WillNotGo), move || open.set(Panel::WillNotGo))}
                {is_at_the_car(at.planned.phase).then(|| {
                    key(Look::Plain, text::take_over(at.lang, TakeOver::Leave), move || {
                        open.set(Panel::Leave);
                    })
                })}
                {key(Look::Plain, at.say(Say::Note), move || open.set(Panel::Note))}
                {key(Look::Plain, text::done_earlier(at.lang), move || open.set(Panel::Earlier))}
                {key(Look::Plain, at.say(Say::Why), move || open.set(Panel::Why))}
                {seeks(at.planned.phase).then(|| {
                    let title = text::cause_word(at.lang, CauseWord::Title);
                    link(Look::Plain, title, Route::Cause(id()).to_hash())
                })}
                {link(Look::Plain, at.say(Say::Where), Route::Where(id()).to_hash())}
                {link(Look::Plain, text::saved(at.lang, Saved::Title), Route::Notes(id()).to_hash())}
                {link(Look::Plain, at.say(Say::LooseList), Route::Loose(id()).to_hash())}
                {link(Look::Plain, text::face(at.lang, FaceWord::Title), Route::Runout(id()).to_hash())}
                {link(Look::Plain, at.say(Say::Pause), Route::Home.to_hash())}
                {link(Look::Plain, at.say(Say::EndNow), end_here(at))}
            </div>
        </section>
    }
}

/// How long ago the step was done, for hands that were not free then.
fn earlier(at: &StepContext, open: RwSignal<Panel>) -> Node {
    let app = at.app;
    let counts = move |ago: Option<Ago>| {
        app.ago.set(ago);
        open.set(Panel::None);
    };
    let choices = Ago::ALL.iter().map(|ago| {
        key(Look::Plain, text::ago(at.lang, *ago), move || {
            counts(Some(*ago));
        })
    });
    let now = text::not_earlier(at.lang);
    view! {
        <section class="panel">
            <h2>{text::done_earlier(at.lang)}</h2>
            <p>{text::earlier_say(at.lang)}</p>
            <div class="panel__keys">
                {choices.collect_view()} {key(Look::Plain, now, move || counts(None))}
            </div>
        </section>
    }
}

/// Where a job is ended from any step.
fn end_here(at: &StepContext) -> String {
    use crate::trade::wheel_end::{Step, StepKey};
    Route::Step(at.open.log.0.clone(), StepKey::once(Step::End)).to_hash()
}

fn note(at: &StepContext, open: RwSignal<Panel>, say: Say) -> Node {
    let text = RwSignal::new(String::new());
    let (here, stuck) = (at.clone(), say == Say::WillNotGoSay);
    let keep = move || {
        let note = text.get_untracked();
        open.set(Panel::None);
        if note.trim().is_empty() {
            return;
        }
        let step = here.planned.key;
        let stuck = stuck.then_some(Event::Remark(step, Remark::WillNotGo));
        let note = Event::Note(Some(step), note);
        here.write(stuck.into_iter().chain([note]).collect());
    };
    let label = at.say(say);
    let trouble = RwSignal::new(None);
    let lang = at.lang;
    view! {
        <section class="panel">
            <h2>{at.say(if stuck { Say::WillNotGoTitle } else { Say::Note })}</h2>
            <textarea class="panel__note" rows="4" aria-label=label bind:value=text></textarea>
            <p>{label}</p>
            {move || trouble.get().map(|word| camera::said(lang, word))}
            <div class="panel__keys">
                {key(Look::Primary, at.say(Say::Keep), keep)} {talk(at)}
                {camera::camera(camera::Shot::beside(at), trouble, Look::Plain)}
            </div>
        </section>
    }
}

fn practice_car(at: &StepContext) -> Node {
    view! {
        <section class="panel">
            <h2>{at.text().name}</h2>
            {practice::car(at)}
        </section>
    }
}

fn why(at: &StepContext) -> Node {
    let picture = at.planned.key.step.row().drawing;
    view! {
        <section class="panel">
            <h2>{at.text().name}</h2>
            <p>{at.text().why}</p>
            {picture.map(|p| drawn(&p.drawing(), at.text().name, "step__picture"))}
        </section>
    }
}
