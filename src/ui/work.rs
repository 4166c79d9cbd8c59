//! Long work on its way: the screen is let go of between its pieces, and it can be stopped.

use crate::exchange::pieces::{CalledOff, Waits};
use crate::platform::clock;
use crate::text::{self, Lang, Say};
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// The screen is let go of so often; a frame takes 17 ms.
const SLICE_MS: i64 = 40;
/// What takes no longer than this is not told of.
const SHORT_MS: i64 = 400;

/// The work that is on its way.
#[derive(Clone, Copy)]
pub struct Work {
    shown: RwSignal<Option<(usize, usize)>>,
    stopped: StoredValue<bool>,
    /// How many works are on their way; Stop is for all of them.
    running: StoredValue<usize>,
    begun: StoredValue<i64>,
    looked: StoredValue<i64>,
}

impl Work {
    /// No work.
    pub fn new() -> Self {
        Self {
            shown: RwSignal::new(None),
            stopped: StoredValue::new(false),
            running: StoredValue::new(0),
            begun: StoredValue::new(0),
            looked: StoredValue::new(0),
        }
    }

    /// Begins.
    pub fn begin(self) {
        let now = clock::ticks_ms();
        if self.running.get_value() == 0 {
            self.stopped.set_value(false);
            self.begun.set_value(now);
        }
        self.running.update_value(|running| *running += 1);
        self.looked.set_value(now);
    }

    /// It is over, whatever became of it.
    pub fn end(self) {
        self.running
            .update_value(|running| *running = running.saturating_sub(1));
        if self.running.get_value() == 0 {
            self.shown.set(None);
        }
    }

    /// Shows how far it is; a work of several parts never goes back.
    fn show(self, done: usize, all: usize) {
        let further = |&(before, of): &(usize, usize)| share(before, of) < share(done, all);
        if self.shown.get_untracked().as_ref().is_none_or(further) {
            self.shown.set(Some((done, all)));
        }
    }

    /// Whether somebody stopped it.
    pub fn is_stopped(self) -> bool {
        self.stopped.get_value()
    }
}

impl Waits for Work {
    async fn between(&self, done: usize, all: usize) -> Result<(), CalledOff> {
        let now = clock::ticks_ms();
        if SLICE_MS <= now - self.looked.get_value() {
            if SHORT_MS <= now - self.begun.get_value() {
                self.show(done, all);
            }
            clock::pause(0).await;
            self.looked.set_value(clock::ticks_ms());
        }
        match self.is_stopped() {
            true => Err(CalledOff),
            false => Ok(()),
        }
    }
}

/// How far a work is, in parts of a million.
fn share(done: usize, all: usize) -> u64 {
    const WHOLE: u64 = 1_000_000;
    (done as u64).saturating_mul(WHOLE) / (all as u64).max(1)
}

/// How far the work is, and the key that stops it.
pub fn progress(work: Work, lang: Lang) -> Node {
    (move || {
        let (done, all) = work.shown.get()?;
        let stop = move || work.stopped.set_value(true);
        Some(view! {
            <div class="work" role="status">
                <progress max={all.to_string()} value={done.to_string()}></progress>
                {key(Look::Plain, text::say(lang, Say::StopWork), stop)}
            </div>
        })
    })
    .into_node()
}
