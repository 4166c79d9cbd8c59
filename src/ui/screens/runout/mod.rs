//! The run-out bench: a face is read place by place, one number at a time, beside whatever step
//! the job is at.

mod limit;
mod micrometer;
mod needle;
mod place;
mod result;
mod setup;
mod thickness;

use crate::job::entry::{Event, Gauging, Setup};
use crate::job::runout::{Angles, Run, Spotted, runs};
use crate::text::{self, FaceWord, ReadingWord, Say, ThickWord};
use crate::trade::runout::Bound;
use crate::trade::vehicle::Corner;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::{banners, strip};
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;
use crate::units::TypedLength;

/// What is on the screen, where the record alone does not say it.
#[derive(Clone, Debug, PartialEq)]
enum Mode {
    /// What the record says: the next place, or the result.
    Next,
    /// A new run is set up.
    Setup,
    /// A new run, at its first place, with the radius where it was told.
    First(Setup, Angles, Option<TypedLength>),
    /// A new measurement with the micrometer, at its first place.
    Measure(Gauging),
    /// One place of the last run, once more.
    Place(u8),
    /// The manufacturer's limit is typed.
    Limit,
    /// A limit of the rotor's thickness is typed.
    Bound(Bound),
}

/// How a run is set up, and how far from the middle the tip stands, where that was told.
type Rig = (Setup, Option<TypedLength>);

/// The bench at one corner.
#[derive(Clone)]
struct Bench {
    at: StepContext,
    corner: Corner,
    mode: RwSignal<Mode>,
    chosen: RwSignal<Option<Corner>>,
    /// The place of the result whose keys are shown.
    marked: RwSignal<Option<u8>>,
    /// Whether the rotor is measured with the micrometer, or a face read with the dial.
    thickness: bool,
}

/// The bench of the open job: a dial on a face that turns.
pub fn runout(app: App) -> Node {
    bench(app, false)
}

/// The bench of the open job: the rotor under the micrometer.
pub fn rotor(app: App) -> Node {
    bench(app, true)
}

fn bench(app: App, thickness: bool) -> Node {
    let mode = RwSignal::new(Mode::Next);
    let (chosen, marked) = (RwSignal::new(None), RwSignal::new(None));
    (move || {
        let open = app.open.get()?;
        let corner = chosen
            .get()
            .or_else(|| open.sheet.corners().first().copied())?;
        // The parts of a step need one: the bench stands beside the step that is next.
        let planned = open.next().or(open.steps.last()).cloned()?;
        let bench = Bench {
            at: StepContext::new(app, open, planned),
            corner,
            mode,
            chosen,
            marked,
            thickness,
        };
        Some(bench.shown())
    })
    .into_node()
}

impl Bench {
    fn face(&self, word: FaceWord) -> &'static str {
        text::face(self.at.lang, word)
    }

    fn shown(&self) -> Node {
        self.at.app.lock();
        if self.thickness {
            return thickness::shown(self);
        }
        let runs = runs(self.at.sheet(), self.corner);
        match (self.mode.get(), runs.last()) {
            (Mode::Limit, Some(run)) => limit::limit(self, run),
            (Mode::First(setup, angles, radius), _) => {
                place::first(self, (setup, radius), angles, next_run(&runs))
            }
            (Mode::Place(place), Some(run)) => self.place(run, place),
            (Mode::Next, Some(run)) => match run.next_place() {
                Some(place) => self.place(run, place),
                None => result::result(self, &runs, run),
            },
            (Mode::Setup | Mode::Measure(_) | Mode::Bound(_), _) | (_, None) => {
                setup::setup(self, &runs)
            }
        }
    }

    /// A place of a run; one that was begun on another dial is refused.
    fn place(&self, run: &Run, place: u8) -> Node {
        if !run.is_on_other_dial(self.at.sheet()) {
            return place::one(self, run, place);
        }
        let (lang, mode) = (self.at.lang, self.mode);
        let said = text::reading(lang, ReadingWord::OtherDialRun);
        let thing = view! { <aside class="hold" role="alert"><p>{said}</p></aside> };
        let again = key(Look::Primary, self.face(FaceWord::AnotherRun), move || {
            mode.set(Mode::Setup);
        });
        let title = text::run_title(lang, run.nth, run.setup.surface);
        self.frame(title, thing, again)
    }

    /// Strip, one thing, keys, and the plain keys at the foot.
    fn frame(
        &self,
        title: String,
        thing: impl IntoNode + 'static,
        keys: impl IntoNode + 'static,
    ) -> Node {
        let app = self.at.app;
        let id = self.at.open.log.0.clone();
        let where_ = Route::Where(id).to_hash();
        let (name, mode) = (self.title(), self.mode);
        view! {
            <main class="step bench" aria-label=name>
                {strip(&self.at)}
                {banners(app)}
                <section class="step__thing" tabindex="0">
                    <h1 class="step__say">{title}</h1>
                    {thing}
                </section>
                <fieldset class="step__keys" prop:disabled={move || app.locked.get() || app.is_busy()}>
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
    }

    fn title(&self) -> &'static str {
        if self.thickness {
            text::thick(self.at.lang, ThickWord::Title)
        } else {
            self.face(FaceWord::Title)
        }
    }

    /// The way from the faces to the rotor under the micrometer, and back.
    fn to_rotor(&self) -> Node {
        let id = self.at.open.log.0.clone();
        let (title, route) = if self.thickness {
            (self.face(FaceWord::Title), Route::Runout(id))
        } else {
            let title = text::thick(self.at.lang, ThickWord::Title);
            (title, Route::Thickness(id))
        };
        link(Look::Plain, title, route.to_hash()).into_node()
    }

    /// The drafts of one part of this bench.
    fn drafts(&self, of: &str) -> Drafts {
        let (log, corner) = (&self.at.open.log.0, self.corner.code());
        Drafts::named(self.at.app, format!("{log}:bench:{corner}:{of}"))
    }

    /// Keeps something, drops what was half typed for it, and shows what the record says then.
    fn keep(&self, what: Event, drop: impl FnOnce() + 'static) {
        let (mode, marked) = (self.mode, self.marked);
        self.at.app.append_then(vec![what], move || {
            drop();
            marked.try_set(None);
            mode.try_set(Mode::Next);
        });
    }

    fn spotted(&self, (setup, radius): Rig, run: u8, place: u8) -> Spotted {
        Spotted {
            corner: self.corner,
            run,
            setup,
            place,
            angle: None,
            radius,
        }
    }
}

fn next_run(runs: &[Run]) -> u8 {
    runs.last().map_or(1, |run| run.nth.saturating_add(1))
}
