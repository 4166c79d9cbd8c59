//! Opening a job from this phone, and why one stays shut.

use std::sync::Arc;

use crate::ui::react::spawn_local;
use crate::ui::react::*;

use super::{App, Open};
use crate::job::entry::{Entry, EntryId, LogId};
use crate::job::fold;
use crate::map::OrderedSet;
use crate::platform::clock;
use crate::slate::{self, Store};
use crate::ui::route::Route;

/// Why the job of a place is not open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shut {
    /// It is being read.
    Reading,
    /// All of a long one is being read, because somebody asked for it.
    ReadingLong,
    /// This phone does not have it.
    NotHere,
    /// The storage did not give it.
    NotRead,
    /// It is too long to be read before somebody asks for it.
    TooLong,
}

impl App {
    /// Is at another place: the job that it belongs to is opened.
    pub fn arrive(self, route: Route) {
        if let Some(job) = route.job()
            && !self.is_open(job)
        {
            // No step of another car stands at the place of this one.
            self.shut.set(Shut::Reading);
            self.open.set(None);
            self.read_job(job.to_owned());
        }
        self.ago.set(None);
        // What became of a file is said where it was made, and nowhere after it.
        self.recorded.set(None);
        self.route.set(route);
    }

    /// Opens a job from this phone; one that is not there or too long stays closed.
    pub fn read_job(self, log: String) {
        spawn_local(self.read_up_to(log, false));
    }

    /// Opens a job however long it is.
    pub fn read_long_job(self, log: String) {
        const FRAME_MS: i32 = 50;
        self.shut.set(Shut::ReadingLong);
        spawn_local(async move {
            // From here on the screen stands still: it says so first.
            clock::pause(FRAME_MS).await;
            self.read_up_to(log, true).await;
        });
    }

    async fn read_up_to(self, log: String, all: bool) {
        let shelf = self.shelf();
        shelf.read_drafts().await;
        // One that was opened in its whole length stays open.
        let all = all || self.is_long_and_open(&log);
        let read = match all {
            true => slate::read_all(&shelf, &log).await,
            false => slate::read(&shelf, &log).await,
        };
        let Ok(read) = read else {
            return self.shut(&log, Shut::NotRead);
        };
        if read.too_long.is_some() {
            return self.shut(&log, Shut::TooLong);
        }
        if !read.to_heal.is_empty() {
            let _ = Store::journal(&shelf, &read.to_heal).await;
        }
        for (record, error) in &read.unreadable {
            self.set_aside(record, error).await;
        }
        if read.entries.is_empty() {
            let why = match read.unreadable.is_empty() {
                true => Shut::NotHere,
                false => Shut::NotRead,
            };
            return self.shut(&log, why);
        }
        let whole = shelf.is_whole(&log, &read);
        if !whole {
            // Nothing that is brought in later makes it whole again.
            shelf.doubt(&log).await;
        }
        if !self.is_open(&log) && !self.is_asked_for(&log) {
            return;
        }
        let unknown = !shelf.says(|says| says.knows(&log));
        if unknown && fold(read.entries.clone()).ended().is_none() {
            // The browser died between the two, or a file brought it; from here on it reads as kept.
            shelf.level(&log, false).await;
        }
        let entries = self.with_later_taps(&log, read.entries);
        self.entries.set_value(entries.clone());
        self.open
            .set(Some(Arc::new(Open::new(LogId(log), entries, whole))));
    }

    /// No job is open at this place; `log` was asked for.
    fn shut(self, log: &str, why: Shut) {
        let asked_for = self.is_asked_for(log);
        if asked_for {
            self.shut.set(why);
        }
        if asked_for || self.is_open(log) {
            self.open.set(None);
        }
    }

    /// Whether the place is one of this job.
    fn is_asked_for(self, log: &str) -> bool {
        self.route.with_untracked(|route| route.job() == Some(log))
    }

    /// Whether this job is open.
    pub fn is_open(self, log: &str) -> bool {
        let is = |open: &Option<Arc<Open>>| open.as_ref().is_some_and(|it| it.log.0 == log);
        self.open.with_untracked(is)
    }

    fn is_long_and_open(self, log: &str) -> bool {
        let open = self.open.get_untracked();
        let open = open.filter(|open| open.log.0 == log);
        open.is_some_and(|open| slate::is_too_long(open.sheet.entries()))
    }

    /// What was read of a log, with the taps on it that came while it was read.
    fn with_later_taps(self, log: &str, mut read: Vec<Entry>) -> Vec<Entry> {
        if self.is_open(log) {
            let known: OrderedSet<EntryId> =
                OrderedSet::from_iter(read.iter().map(|entry| entry.id.clone()));
            let later = self.entries.get_value().into_iter();
            read.extend(later.filter(|entry| !known.contains(&entry.id)));
        }
        read
    }
}
