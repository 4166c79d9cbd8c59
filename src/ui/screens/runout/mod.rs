//! The run-out bench: a face is read place by place, one number at a time, beside whatever step
//! the job is at.

mod limit;
mod place;
mod result;
mod setup;

use leptos::prelude::*;

use crate::job::entry::{Setup, What};
use crate::job::runout::{Angles, Run, Spotted, runs};
use crate::text::{self, FaceWord, Say};
use crate::trade::vehicle::Corner;
use crate::ui::at::At;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::{banners, strip};
use crate::ui::route::Route;
use crate::ui::state::App;

/// What is on the glass, where the record alone does not say it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Mode {
    /// What the record says: the next place, or the result.
    Next,
    /// A new run is set up.
    Setup,
    /// A new run, at its first place.
    First(Setup, Angles),
    /// One place of the last run, once more.
    Place(u8),
    /// The maker's limit is typed.
    Limit,
}

/// The bench at one corner.
#[derive(Clone)]
struct Bench {
    at: At,
    corner: Corner,
    mode: RwSignal<Mode>,
    chosen: RwSignal<Option<Corner>>,
    /// The place of the result whose keys are shown.
    marked: RwSignal<Option<u8>>,
}

/// The bench of the open job.
pub fn runout(app: App) -> AnyView {
    let mode = RwSignal::new(Mode::Next);
    let (chosen, marked) = (RwSignal::new(None), RwSignal::new(None));
    (move || {
        let open = app.open.get()?;
        let corner = chosen
            .get()
            .or_else(|| open.sheet.corners().first().copied())?;
        // The parts of a step need one: the bench stands beside the step that is next.
        let spec = open.next().or(open.steps.last()).cloned()?;
        let bench = Bench {
            at: At::new(app, open, spec),
            corner,
            mode,
            chosen,
            marked,
        };
        Some(bench.shown())
    })
    .into_any()
}

impl Bench {
    fn face(&self, word: FaceWord) -> &'static str {
        text::face(self.at.lang, word)
    }

    fn shown(&self) -> AnyView {
        self.at.app.lock();
        let runs = runs(self.at.sheet(), self.corner);
        match (self.mode.get(), runs.last()) {
            (Mode::Limit, Some(run)) => limit::limit(self, run),
            (Mode::First(setup, angles), _) => place::first(self, setup, angles, next_run(&runs)),
            (Mode::Place(place), Some(run)) => place::one(self, run, place),
            (Mode::Next, Some(run)) => match run.next_place() {
                Some(place) => place::one(self, run, place),
                None => result::result(self, &runs, run),
            },
            (Mode::Setup, _) | (_, None) => setup::setup(self, &runs),
        }
    }

    /// Strip, one thing, keys, and the plain keys at the foot.
    fn frame(
        &self,
        title: String,
        thing: impl IntoView + 'static,
        keys: impl IntoView + 'static,
    ) -> AnyView {
        let app = self.at.app;
        let id = self.at.open.log.0.clone();
        let where_ = Route::Where(id).to_hash();
        let (name, mode) = (self.face(FaceWord::Title), self.mode);
        view! {
            <main class="step bench" aria-label=name>
                {strip(&self.at)}
                {banners(app)}
                <section class="step__thing" tabindex="0">
                    <h1 class="step__say">{title}</h1>
                    {thing}
                </section>
                <fieldset class="step__keys" prop:disabled=move || app.locked.get() || app.is_busy()>
                    {keys}
                </fieldset>
                <nav class="step__foot">
                    {key(Look::Foot, self.at.say(Say::Undo), move || {
                        mode.set(Mode::Next);
                        app.undo();
                    })}
                    {link(Look::Foot, self.at.say(Say::Where), where_)}
                    {link(Look::Foot, self.at.say(Say::Resume), Route::Job(self.at.open.log.0.clone()).to_hash())}
                </nav>
            </main>
        }
        .into_any()
    }

    /// Keeps something, and shows what the record says then.
    fn keep(&self, what: What) {
        let (mode, marked) = (self.mode, self.marked);
        self.at.app.append_then(vec![what], move || {
            marked.try_set(None);
            mode.try_set(Mode::Next);
        });
    }

    fn spotted(&self, setup: Setup, run: u8, place: u8) -> Spotted {
        Spotted {
            corner: self.corner,
            run,
            setup,
            place,
            angle: None,
        }
    }
}

fn next_run(runs: &[Run]) -> u8 {
    runs.last().map_or(1, |run| run.nth.saturating_add(1))
}
