//! One step on the screen: what a form needs to show itself and to write its answer.

use std::ops::Deref;
use std::rc::Rc;
use std::sync::Arc;

use crate::ui::react::*;

use crate::job::combined_steps::{Line, lines, recorded, screen_without};
use crate::job::entry::{Event, Reply};
use crate::job::turn::Turning;
use crate::job::{JobState, done};
use crate::text::{self, Lang, Say, StepText};
use crate::trade::answer::Answer;
use crate::trade::play::Method;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Form, NotDoneReason, PlannedStep, SetName, StepKey, sign_of};
use crate::ui::beside::beside;
use crate::ui::parts::below::Below;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::panel::Panel;
use crate::ui::route::Route;
use crate::ui::signal::RwSignal;
use crate::ui::state::{App, Open};
use crate::units::Format;

/// A step of the open job, as it stands; one pointer, since every key keeps one.
#[derive(Clone)]
pub struct StepContext(Rc<Here>);

impl Deref for StepContext {
    type Target = Here;

    fn deref(&self) -> &Here {
        &self.0
    }
}

/// What a step needs on the screen.
#[derive(Clone)]
pub struct Here {
    /// The shared state.
    pub app: App,
    /// The job.
    pub open: Arc<Open>,
    /// The step.
    pub planned: PlannedStep,
    /// The language.
    pub lang: Lang,
    /// How quantities are shown.
    pub fmt: Format,
    /// What is told on the same screen before the step.
    pub rows: Rows,
    /// What is open over it.
    pub panel: RwSignal<Panel>,
    /// What of it lies below the edge of the screen.
    pub below: Below,
    /// Whether its answer leads back to the place where it stands, and not to what comes next.
    stays: bool,
}

/// The steps that are told together with the one after them, and how their rows stand.
#[derive(Clone)]
pub struct Rows {
    /// The steps; none where one step stands alone.
    pub steps: Arc<[PlannedStep]>,
    /// Their rows.
    pub lines: RwSignal<Vec<Line>>,
}

/// Whether the keys of a step answer what it says, so that all of it must have been on the screen;
/// of work and fasteners only what it says and its caution, of a value and a photo nothing.
pub const fn is_question(form: &Form) -> bool {
    matches!(
        form,
        Form::Ask
            | Form::Checks(_)
            | Form::Choice(_)
            | Form::DialSetup(_)
            | Form::Decide(_)
            | Form::Consent
            | Form::Result
            | Form::Kit
            | Form::Ready
            | Form::End
    )
}

/// Whether keys wait until something has been on the screen: a question, rows, or the caution of
/// work, which is read before the first fastener and not again before each.
fn waits(sheet: &JobState, planned: &PlannedStep, rows: &[PlannedStep]) -> bool {
    let begins = match planned.form {
        Form::Do => true,
        Form::Turn(group) => Turning::of(sheet, planned, group).is_some_and(|it| !it.is_begun()),
        _ => false,
    };
    begins || is_question(&planned.form) || !rows.is_empty()
}

impl StepContext {
    /// A step of the open job, alone.
    pub fn new(app: App, open: Arc<Open>, planned: PlannedStep) -> Self {
        Self::after(app, open, Vec::new(), planned)
    }

    /// A step with the rows of those that are told before it.
    pub fn after(app: App, open: Arc<Open>, rows: Vec<PlannedStep>, planned: PlannedStep) -> Self {
        let (lang, fmt) = app.settings.with_untracked(|it| (it.lang, it.format()));
        let asks = waits(&open.sheet, &planned, &rows);
        Self(Rc::new(Here {
            app,
            open,
            planned,
            lang,
            fmt,
            rows: Rows {
                lines: RwSignal::new(lines(&rows)),
                steps: rows.into(),
            },
            panel: RwSignal::new(Panel::None),
            below: Below::new(Signal::stored(asks)),
            stays: false,
        }))
    }

    /// The same on a new frame, of which nothing has been on the screen yet; a spec says by itself
    /// what is confirmed.
    pub fn looked_at_again(&self) -> Self {
        if matches!(self.planned.form, Form::Spec(_)) {
            return self.clone();
        }
        let asks = waits(self.sheet(), &self.planned, &self.rows.steps);
        self.looked_at_while(Signal::stored(asks))
    }

    /// The same, its keys waiting for what is below the edge only while `asks` says so.
    pub fn looked_at_while(&self, asks: Signal<bool>) -> Self {
        Self(Rc::new(Here {
            below: Below::new(asks),
            ..Here::clone(self)
        }))
    }

    /// The picture that the record needs before the step at this place goes on.
    pub fn asked(&self, key: StepKey) -> Self {
        let planned = PlannedStep {
            key,
            form: Form::Photo,
            holds: Vec::new(),
            changes: Vec::new(),
            joins: false,
            ..self.planned.clone()
        };
        let alone = Self::new(self.app, Arc::clone(&self.open), planned);
        Self(Rc::new(Here {
            stays: true,
            ..Here::clone(&alone)
        }))
    }

    /// Where the job goes when this step was answered.
    pub fn way_on(&self) -> Route {
        if self.stays {
            self.app.route.get_untracked()
        } else {
            Route::Job(self.open.log.0.clone())
        }
    }

    /// The job's state.
    pub fn sheet(&self) -> &JobState {
        &self.open.sheet
    }

    /// Every step that the screen tells, in order.
    pub fn screen_steps(&self) -> Vec<&PlannedStep> {
        self.rows.steps.iter().chain([&self.planned]).collect()
    }

    /// The step's texts.
    pub fn text(&self) -> StepText {
        match self.planned.form {
            Form::Round(set, _) if self.is_rocked(set) => text::round_rocked(self.lang),
            _ => text::step_for(self.lang, self.planned.key, self.open.plan.build()),
        }
    }

    /// Whether the dial of a set was set up to see the hub rocked.
    fn is_rocked(&self, set: SetName) -> bool {
        let setup = self
            .corner()
            .and_then(|at| self.sheet().dial_setup(at, set));
        setup.is_some_and(|setup| setup.way.method == Method::Rock)
    }

    /// The name of the screen: of what is done first.
    pub fn name(&self) -> &'static str {
        let first = self.rows.steps.first().unwrap_or(&self.planned);
        text::step_for(self.lang, first.key, self.open.plan.build()).name
    }

    /// Whether the screen asks for several signs of the road at once.
    pub fn asks_signs(&self) -> bool {
        !self.rows.steps.is_empty() && sign_of(self.planned.key.step).is_some()
    }

    /// A sentence or a label.
    pub fn say(&self, say: Say) -> &'static str {
        text::say(self.lang, say)
    }

    /// The step's corner.
    pub fn corner(&self) -> Option<Corner> {
        self.planned.key.corner
    }

    /// Writes entries and stays at the step.
    pub fn write(&self, whats: Vec<Event>) {
        self.app.append(whats);
    }

    /// What the rows above the step say; entries of the step itself follow these.
    pub fn recorded(&self) -> Vec<Event> {
        // A picture may come when its screen is gone: then the rows are asked for again.
        let Some(lines) = self.rows.lines.try_get_untracked() else {
            return Vec::new();
        };
        recorded(self.sheet(), &self.rows.steps, &lines, |planned| {
            beside(self, planned)
        })
    }

    /// What is told is no draft any more, once it is kept.
    pub fn forgetting_rows(&self) -> impl FnOnce() + use<> + 'static {
        Drafts::of(self).dropping_answers()
    }

    /// Writes what the rows say and these entries, and stays at the step.
    pub fn tell(&self, whats: Vec<Event>) {
        let whats = [self.recorded(), whats].concat();
        self.app.append_then(whats, self.forgetting_rows());
    }

    /// Writes these entries, and goes on once they are kept.
    fn keep(&self, whats: Vec<Event>, on: Route) {
        let (forget, go_on) = (self.forgetting_rows(), self.app.going_on(on));
        self.app.append_then(whats, move || {
            forget();
            go_on();
        });
    }

    /// Writes what the rows say and these entries, and goes on to the step that comes next.
    pub fn write_and_go_on(&self, whats: Vec<Event>) {
        // What rests on a row that is not done yet is not answered before it: that row comes alone.
        let (on, whats) = match self.not_yet() {
            Some(step) => (Route::Step(self.open.log.0.clone(), step), self.recorded()),
            None => (self.way_on(), [self.recorded(), whats].concat()),
        };
        self.keep(whats, on);
    }

    /// The first row of work that was turned to "not yet".
    fn not_yet(&self) -> Option<StepKey> {
        let not_yet = |line: &&Line| line.check.is_none() && line.answer == Some(Answer::NotDone);
        let lines = self.rows.lines.try_get_untracked()?;
        let row = lines.iter().find(not_yet).filter(|_| !self.asks_signs())?;
        Some(self.rows.steps.get(row.step)?.key)
    }

    /// Answers the step, with what it does to the loose list, and goes on.
    pub fn answer(&self, reply: Reply) {
        self.write_and_go_on(done(&self.open.sheet, &self.planned, reply));
    }

    /// Says that the step was not done, and why, and goes on.
    pub fn not_done(&self, because: NotDoneReason) {
        let Some(lines) = self.rows.lines.try_get_untracked() else {
            return;
        };
        let (sheet, steps) = (self.sheet(), &self.rows.steps);
        let mut whats = screen_without(sheet, steps, &lines, because, |planned| {
            beside(self, planned)
        });
        whats.push(Event::Answered(self.planned.key, Reply::NotDone(because)));
        self.keep(whats, self.way_on());
    }
}
