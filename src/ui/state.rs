//! What the screens share: the open job, the settings, and the one way to write.

mod flow;
mod level;
mod list;
mod other;
mod pen;
mod reading;
mod shared;

use std::ops::Deref;
use std::sync::Arc;

use crate::ui::react::spawn_local;
use crate::ui::react::*;

use crate::exchange::summary::Summary;
use crate::job::entry::{Entry, Event, LogId};
use crate::job::{JobState, fold, next, plan};
use crate::platform::clock;
use crate::platform::journal::Closed;
use crate::platform::page;
use crate::platform::record::{Storage, StoreError};
use crate::platform::tabs::{Heard, Tabs};
use crate::platform::tone::{self, Sound as Tone};
use crate::platform::update::Update as NewVersion;
use crate::slate::{self, SaveError, Saved};
use crate::trade::wheel_end::{Plan, PlannedStep, procedure};
use crate::ui::route::Route;
use crate::ui::settings::{Settings, Sound};
use crate::ui::shelf::{BrowserStore, beside};
pub use reading::Shut;
pub use shared::Shared;

/// How the last tap fared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// It is kept, or there was none.
    Saved,
    /// It is on its way to the disk.
    Busy,
    /// Only the second copy has it.
    NotYetSafe(StoreError),
    /// It was not kept.
    NotSaved(SaveError),
}

/// The open job and what follows from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Open {
    /// Its log.
    pub log: LogId,
    /// Its state.
    pub sheet: JobState,
    /// What picks its steps.
    pub plan: Plan,
    /// Its steps, in order.
    pub steps: Vec<PlannedStep>,
    /// Whether all entries are there that the backup journal knows of.
    whole: bool,
}

impl Open {
    fn new(log: LogId, entries: Vec<Entry>, whole: bool) -> Self {
        let sheet = fold(entries);
        let sheet = if whole {
            sheet
        } else {
            sheet.with_entries_lost()
        };
        let plan = plan(&sheet);
        let steps = procedure(&plan);
        Self {
            log,
            sheet,
            plan,
            steps,
            whole,
        }
    }

    /// A job of these entries, of which none is missing.
    #[cfg(test)]
    pub(in crate::ui) fn of(entries: &[Entry]) -> Option<Self> {
        let log = entries.first()?.log.clone();
        Some(Self::new(log, entries.to_vec(), true))
    }

    /// The step that comes next.
    pub fn next(&self) -> Option<&PlannedStep> {
        next(&self.sheet, &self.steps)
    }

    /// Its line in the list of jobs.
    pub fn summary(&self) -> Summary {
        Summary::of(&self.log, &self.sheet, &self.steps, self.next())
    }
}

/// Everything the screens share; one pointer, so that each closure copies no more.
#[derive(Clone, Copy)]
pub struct App(&'static Shared);

impl Deref for App {
    type Target = Shared;

    fn deref(&self) -> &Shared {
        self.0
    }
}

/// The shared state; a screen is never mounted without it.
pub fn app() -> App {
    expect_context::<App>()
}

impl App {
    /// The state at the start, before anything was read; there is one in a page, and it lives as
    /// long as the page.
    pub fn new(
        shelf: BrowserStore,
        settings: Settings,
        closed: ArcRwSignal<Option<Closed>>,
    ) -> Self {
        Self(Box::leak(Box::new(Shared::new(shelf, settings, closed))))
    }

    /// Starts listening to the other tabs.
    pub fn listen(self) {
        self.tabs
            .set_value(Some(Tabs::listen(move |heard| match heard {
                Heard::Grown(log) => {
                    if self.is_open(&log) {
                        self.read_job(log);
                    } else {
                        // The running numbers that it took are in the settings.
                        spawn_local(async move { self.shelf().read_drafts().await });
                    }
                    self.read_list();
                }
                Heard::Gone(log) => self.is_gone(log),
                Heard::Opened(log) if self.shows(&log) => {
                    self.other_tab.set(true);
                    self.to_tabs(|tabs| tabs.announce_here(&log));
                }
                Heard::Here(log) if self.shows(&log) => self.other_tab.set(true),
                Heard::Left(log) if self.shows(&log) => self.other_tab.set(false),
                Heard::Opened(_) | Heard::Here(_) | Heard::Left(_) => {}
            })));
        Effect::new(move |before: Option<Option<String>>| {
            let job = self.route.with(|route| route.job().map(str::to_owned));
            let before = before.flatten();
            if before != job {
                self.other_tab.set(false);
                self.to_tabs(|tabs| {
                    before.iter().for_each(|log| tabs.announce_left(log));
                    job.iter().for_each(|log| tabs.announce_opened(log));
                });
            }
            job
        });
        let left = page::on_leaving(move || {
            let job = self
                .route
                .with_untracked(|route| route.job().map(str::to_owned));
            self.to_tabs(|tabs| job.iter().for_each(|log| tabs.announce_left(log)));
        });
        StoredValue::new_local(left);
    }

    /// Starts to look for new versions.
    pub fn watch_for_update(self) {
        self.update.set_value(NewVersion::watch(
            move || self.update_waits.set(true),
            move |ready| self.offline.set(Some(ready)),
        ));
    }

    /// Whether the place of this tab belongs to a job.
    fn shows(self, log: &str) -> bool {
        self.route.with_untracked(|route| route.job() == Some(log))
    }

    fn to_tabs(self, say: impl FnOnce(&Tabs)) {
        self.tabs.with_value(|tabs| tabs.as_ref().map(say));
    }

    /// The phone's storage.
    pub fn shelf(self) -> BrowserStore {
        self.shelf.get_value()
    }

    /// Takes the new version; the page loads again.
    pub fn take_update(self) {
        self.update.with_value(|update| {
            if let Some(update) = update {
                update.accept();
            }
        });
    }

    /// Whether a tap is on its way to the disk.
    pub fn is_busy(self) -> bool {
        self.keeping.get() == Keeping::Busy
    }

    /// Holds every step key for a moment after a step changed.
    pub fn lock(self) {
        self.locked.set(true);
        clock::later(300, move || {
            self.locked.try_set(false);
        });
    }

    /// Goes on to a place once a tap is kept, so that "back" skips this one; whoever went elsewhere
    /// since the tap stays there.
    pub fn going_on(self, on: Route) -> impl FnOnce() + 'static {
        let from = self.route.get_untracked();
        move || {
            // Even to where one is, going takes the browser a while.
            if from != on && from.is_at(&page::hash()) {
                page::replace_hash(on.to_hash().trim_start_matches('#'));
            }
        }
    }

    /// Goes to a place.
    pub fn go(self, route: &Route) {
        page::set_hash(&route.to_hash());
    }

    /// Appends what happened to the open job. The screen changes once it is kept.
    pub fn append(self, whats: Vec<Event>) {
        self.append_then(whats, || {});
    }

    /// Appends, and goes on once it is kept.
    pub fn append_then(self, whats: Vec<Event>, then: impl FnOnce() + 'static) {
        self.append_boxed(whats, Box::new(then));
    }

    fn append_boxed(self, whats: Vec<Event>, then: Box<dyn FnOnce()>) {
        // A tap that is not taken takes no drafts with it, and the next one takes its own.
        let drops = self.drops.get_value();
        self.drops.set_value(Vec::new());
        let Some(open) = self.open.get_untracked() else {
            return;
        };
        if self.keeping.get_untracked() == Keeping::Busy || open.sheet.read_only() {
            return;
        }
        let practice = pen::is_practice(&open.sheet, &whats);
        let Some(mut pen) = self.pen(practice) else {
            return;
        };
        // What is taken back is taken back now.
        if !matches!(whats.as_slice(), [Event::Strike(_)]) {
            let ago = self.ago.get_untracked();
            pen.recorded = ago.map(|ago| ago.before(pen.utc_ms));
        }
        self.ago.set(None);
        let entries = slate::compose(&open.log, open.sheet.heads(), &pen, whats);
        let entries = slate::sealed(open.sheet.entries(), entries);
        self.count_up(&pen, entries.len());
        let latest = entries.iter().find_map(|entry| entry.what.named());
        let latest = latest.map(|named| named.sha256.to_owned());
        let behind = matches!(self.keeping.get_untracked(), Keeping::NotYetSafe(_));
        self.keeping.set(Keeping::Busy);
        spawn_local(async move {
            let shelf = self.shelf();
            let keeping = slate::keep(&shelf, &entries);
            // While the disk works it is reckoned what follows; nothing of it shows before it is kept.
            let (mut outcome, ahead) = beside(keeping, || self.with(&open, &entries)).await;
            if behind && outcome == Ok(Saved::Safe) {
                outcome = self.heal(&open.log).await;
            }
            let in_memory = self.storage.get_untracked() == Storage::MemoryOnly;
            let saved = outcome.is_ok();
            if saved || in_memory {
                self.latest.set(latest);
                self.undone.set(None);
                self.shelf().drop_drafts(&drops);
                self.take(&open, entries, ahead).await;
            }
            if self.is_open(&open.log.0) {
                self.after_tap(&outcome);
            }
            self.keeping.set(match outcome {
                Ok(Saved::Safe) => Keeping::Saved,
                Ok(Saved::NotYetSafe(problem)) => Keeping::NotYetSafe(problem),
                Err(not_saved) => Keeping::NotSaved(not_saved),
            });
            self.sound(if saved { Tone::Saved } else { Tone::SaveError });
            if saved || in_memory {
                then();
            }
        });
    }

    /// The open job with more entries, and its line.
    fn with(self, open: &Open, new: &[Entry]) -> (Open, Summary) {
        let mut entries = self.entries.get_value();
        entries.extend_from_slice(new);
        let open = Open::new(open.log.clone(), entries, open.whole);
        let summary = open.summary();
        (open, summary)
    }

    /// Takes what is kept of a job that was open as `before`: on the screen, where it is still open
    /// there; else in its line. What was reckoned ahead holds if nothing else came meanwhile.
    async fn take(self, before: &Arc<Open>, new: Vec<Entry>, ahead: (Open, Summary)) {
        let log = &before.log;
        let now = self.open.get_untracked().filter(|open| open.log == *log);
        let Some(now) = now else {
            self.lines(std::slice::from_ref(&log.0), Vec::new()).await;
            return self.read_list();
        };
        let (open, summary) = match Arc::ptr_eq(before, &now) {
            true => ahead,
            false => self.with(&now, &new),
        };
        self.entries.update_value(|entries| entries.extend(new));
        self.open.set(Some(Arc::new(open)));
        self.tabs.with_value(|tabs| {
            if let Some(tabs) = tabs {
                tabs.announce(&log.0);
            }
        });
        self.keep_line(summary);
    }

    fn write_summary(self) {
        if let Some(open) = self.open.get_untracked() {
            self.keep_line(open.summary());
        }
    }

    fn keep_line(self, summary: Summary) {
        self.jobs.update(|jobs| {
            jobs.retain(|job| job.log != summary.log);
            jobs.push(summary.clone());
        });
        let shelf = self.shelf();
        spawn_local(async move {
            if let Ok(journal) = shelf.journal() {
                let _ = journal.put_summary(&summary.log, &summary.to_text()).await;
            }
        });
    }

    /// Plays a tone and its vibration, if the holder wants them.
    pub fn sound(self, tone: Tone) {
        if self
            .settings
            .with_untracked(|settings| settings.sound == Sound::On)
        {
            tone::play(tone);
        }
    }

    /// Starts a job with its first entries, opens it and goes to it.
    pub fn start_job(self, whats: Vec<Event>) {
        let Some(pen) = self.pen(false) else { return };
        let log = slate::log_id(&pen);
        self.entries.set_value(Vec::new());
        self.open
            .set(Some(Arc::new(Open::new(log.clone(), Vec::new(), true))));
        let from = self.route.get_untracked();
        self.append_then(whats, move || {
            if from.is_at(&page::hash()) {
                self.go(&Route::Job(log.0));
            }
        });
    }
}
