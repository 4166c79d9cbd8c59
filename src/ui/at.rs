//! One step on the screen: what a form needs to show itself and to write its answer.

use std::sync::Arc;

use leptos::prelude::*;

use crate::job::entry::{Reply, What};
use crate::job::{Sheet, done};
use crate::text::{self, Lang, Say, StepText};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Because, StepSpec};
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::units::Format;

/// A step of the open job, as it stands.
#[derive(Clone)]
pub struct At {
    /// The shared state.
    pub app: App,
    /// The job.
    pub open: Arc<Open>,
    /// The step.
    pub spec: StepSpec,
    /// The language.
    pub lang: Lang,
    /// How quantities are shown.
    pub fmt: Format,
}

impl At {
    /// A step of the open job.
    pub fn new(app: App, open: Arc<Open>, spec: StepSpec) -> Self {
        let settings = app.settings.read_untracked();
        let (lang, fmt) = (settings.lang, settings.format());
        drop(settings);
        Self {
            app,
            open,
            spec,
            lang,
            fmt,
        }
    }

    /// The job's state.
    pub fn sheet(&self) -> &Sheet {
        &self.open.sheet
    }

    /// The step's texts.
    pub fn text(&self) -> StepText {
        text::step_for(self.lang, self.spec.key, self.open.plan.nut)
    }

    /// A sentence or a label.
    pub fn say(&self, say: Say) -> &'static str {
        text::say(self.lang, say)
    }

    /// The step's corner.
    pub fn corner(&self) -> Option<Corner> {
        self.spec.key.corner
    }

    /// Writes entries and stays at the step.
    pub fn write(&self, whats: Vec<What>) {
        self.app.append(whats);
    }

    /// Writes entries and goes on to the step that comes next.
    pub fn write_and_go_on(&self, whats: Vec<What>) {
        let (app, log) = (self.app, self.open.log.0.clone());
        app.append_then(whats, move || app.go_instead(&Route::Job(log)));
    }

    /// Answers the step, with what it does to the loose list, and goes on.
    pub fn answer(&self, reply: Reply) {
        self.write_and_go_on(done(&self.open.sheet, &self.spec, reply));
    }

    /// Says that the step was not done, and why, and goes on.
    pub fn not_done(&self, because: Because) {
        let reply = Reply::NotDone(because);
        self.write_and_go_on(vec![What::Answered(self.spec.key, reply)]);
    }
}
