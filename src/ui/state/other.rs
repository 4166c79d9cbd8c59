//! Logs other than the open job: the spec library and the van kit, and throwing practice away.

use std::sync::Arc;

use crate::ui::react::spawn_local;
use crate::ui::react::*;

use crate::exchange::wire::WireError;
use crate::job::entry::{Carried, Ending, Event, LogId};
use crate::job::practice::Recorded;
use crate::job::{JobState, book, fold, kit, practice};
use crate::platform::record::{Aside, Photo, Record, StoreError};
use crate::platform::room::Room;
use crate::platform::{clock, keep};
use crate::slate::{self, SaveError, Saved, Store};
use crate::text;
use crate::trade::day::day_of;
use crate::trade::fastening::{SpecSource, Wrench};
use crate::trade::practice::Code;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::state::{App, Keeping, Open, Shut};

/// How long what comes late waits for a tap that is on its way to the disk.
const FREE_MS: i32 = 50;

impl App {
    /// Looks how much room is left and says so on every screen where it is little.
    pub fn look_at_room(self) {
        spawn_local(async move {
            let room = keep::estimate().await;
            let tight = room.filter(Room::is_tight).map(|room| room.left_mb());
            self.tight.set(tight);
        });
    }

    /// Keeps a picture or a voice note, and then what `whats` says of it in its job. Where there
    /// is no room for the bytes there is no entry, and the storage's problem is given back.
    ///
    /// It may come late, when another tap is on its way or another job is on the screen: then it
    /// waits, or goes to its own job beside the open one.
    pub async fn keep_bytes(
        self,
        log: &LogId,
        saved: Photo,
        whats: impl FnOnce(String) -> Vec<Event>,
        then: impl FnOnce() + 'static,
    ) -> Result<(), StoreError> {
        let sha256 = slate::keep_bytes(&self.shelf(), saved).await;
        self.look_at_room();
        let whats = whats(sha256?);
        let open = self
            .open
            .with_untracked(|open| open.as_ref().map(|open| open.log.clone()));
        if open.as_ref() == Some(log) {
            self.append_when_free(whats, then);
        } else {
            let saved = self.append_to(log.clone(), whats).await;
            self.read_list();
            if !saved {
                // Bytes that nothing names are dropped at a later start.
                return Err(StoreError::Blocked);
            }
        }
        Ok(())
    }

    fn append_when_free(self, whats: Vec<Event>, then: impl FnOnce() + 'static) {
        if self.keeping.get_untracked() == Keeping::Busy {
            clock::later(FREE_MS, move || self.append_when_free(whats, then));
        } else {
            self.append_then(whats, then);
        }
    }

    /// The state of a log that is not the open job; empty if this phone does not have it.
    pub async fn read_log(self, log: &str) -> JobState {
        let read = slate::read(&self.shelf(), log).await.unwrap_or_default();
        if read.too_long.is_some() {
            // What is counted over all logs is counted without it.
            self.name_unreadable(log);
        }
        fold(read.entries)
    }

    /// Appends to a log that is not the open job; false if it was not kept.
    ///
    /// The second copy is for open jobs; here it is written only where the journal fails. Nothing
    /// is added to a log that was not read.
    pub async fn append_to(self, log: LogId, whats: Vec<Event>) -> bool {
        let read = slate::read(&self.shelf(), &log.0).await.unwrap_or_default();
        if read.too_long.is_some() {
            return false;
        }
        let sheet = fold(read.entries);
        let Some(pen) = self.pen(false) else {
            return false;
        };
        let entries = slate::compose(&log, sheet.heads(), &pen, whats);
        self.count_up(&pen, entries.len());
        let Ok(records) = slate::records(&entries) else {
            return false;
        };
        let shelf = self.shelf();
        let backup = Store::backup(&shelf, &records);
        let journal = Store::journal(&shelf, &records).await;
        let backup = backup.await;
        journal.is_ok() || backup.is_ok() || Store::second(&shelf, &records).is_ok()
    }

    /// What follows a tap that is safe: the browser is asked once to keep the data, and the second
    /// copy of an ended job is let go.
    pub(super) fn after_tap(self, outcome: &Result<Saved, SaveError>) {
        if *outcome != Ok(Saved::Safe) {
            return;
        }
        let ended = self.open.with_untracked(|open| {
            // A car that was left unfinished is worked on again: its copies stay.
            let settled = |open: &&Arc<Open>| {
                let ended = open.sheet.ended();
                ended.is_some_and(|ended| ended.ending != Ending::LeftUnfinished)
            };
            let open = open.as_ref().filter(settled);
            open.map(|open| open.log.0.clone())
        });
        let worked_on = self.open.with_untracked(|open| {
            let open = open.as_ref().filter(|_| ended.is_none());
            open.map(|open| open.log.0.clone())
        });
        let shelf = self.shelf();
        spawn_local(async move {
            if shelf.setting("asked_to_keep").is_none() {
                shelf.set_setting("asked_to_keep", "yes");
                // A refusal is normal; the settings screen says which it was.
                let _ = keep::persist().await;
            }
            if let Some(log) = ended {
                shelf.close(&log).await;
            }
            if let Some(log) = worked_on
                && shelf.says(|says| says.is_reopened(&log))
            {
                shelf.level(&log, false).await;
            }
        });
    }

    /// The instruments of this van; before any was entered the common dial and no wrench. What
    /// another van carries is in no job of this one.
    pub async fn van_kit(self) -> Carried {
        let system = self.settings.with_untracked(|settings| settings.system);
        let device = self.shelf().device();
        let read = slate::read(&self.shelf(), kit::LOG).await;
        // The kits of other vans come in with their files, in the same log.
        let entries = read.unwrap_or_default().entries;
        let own: Vec<_> = entries
            .iter()
            .filter(|entry| entry.device == device)
            .cloned()
            .collect();
        fold(own)
            .carried()
            .cloned()
            .unwrap_or_else(|| kit::first_kit(system))
    }

    /// The instruments of the van as a job copies them, with the clicks counted so far.
    pub async fn kit_for_job(self) -> Carried {
        let kit = self.van_kit().await;
        let counted = self.clicks(&kit.wrenches).await;
        kit::copied(kit, &counted)
    }

    /// How often each wrench of this van clicked since it was checked, by its name: what another
    /// phone recorded was a wrench of another van.
    pub async fn clicks(self, wrenches: &[Wrench]) -> Vec<(String, u32)> {
        let device = self.device();
        let mut counted: Vec<(String, u32)> = Vec::new();
        counted.extend(wrenches.iter().map(|wrench| (wrench.name.clone(), 0)));
        for log in self.shelf().logs().await {
            if log.contains(':') {
                continue;
            }
            let sheet = self.read_log(&log).await;
            for (wrench, (_, count)) in wrenches.iter().zip(&mut counted) {
                *count = count.saturating_add(kit::clicks(&sheet, wrench, Some(&device)));
            }
        }
        counted
    }

    /// The families whose specs are kept, as they were typed.
    pub async fn families(self) -> Vec<String> {
        let mut families = Vec::new();
        for log in self.shelf().logs().await {
            if !log.starts_with(book::PREFIX) {
                continue;
            }
            let sheet = self.read_log(&log).await;
            let family = sheet.vehicle(crate::job::entry::VehicleField::Family);
            families.extend(family.map(str::to_owned));
        }
        families
    }

    /// Brings what only the second copy has of a log into the journal, which takes entries again;
    /// until that is done the earlier taps are not safe.
    pub(super) async fn heal(self, log: &LogId) -> Result<Saved, SaveError> {
        let shelf = self.shelf();
        let read = slate::read_all(&shelf, &log.0).await;
        let behind = read.map_err(SaveError::Storage)?.to_heal;
        Ok(match Store::journal(&shelf, &behind).await {
            Ok(()) => Saved::Safe,
            Err(problem) => Saved::NotYetSafe(problem),
        })
    }

    /// Keeps a copy of a record that could not be read, once, and names it on the screen.
    pub(super) async fn set_aside(self, record: &Record, error: &WireError) {
        if let Ok(journal) = self.shelf().journal() {
            let (why, text) = (format!("{error:?}"), record.text.clone());
            // It is named whether or not the copy is kept; the record stays where it is.
            let _ = journal.set_aside(&[Aside { why, text }]).await;
        }
        self.name_unreadable(&record.id);
    }

    /// Names what could not be read on the screen, once.
    fn name_unreadable(self, name: &str) {
        self.unreadable.update(|list| {
            if !list.iter().any(|it| it == name) {
                list.push(name.to_owned());
            }
        });
    }

    /// Starts a practice job on an invented car that is packed already.
    pub fn start_practice(self, code: Code) {
        spawn_local(async move {
            let Some(looked_up) = day_of(&today()) else {
                return;
            };
            let settings = self.settings.get_untracked();
            let (document, page) = text::practice_document(settings.lang);
            let source = SpecSource {
                document: document.to_owned(),
                page: page.to_owned(),
                looked_up,
                who: document.to_owned(),
                override_reason: None,
            };
            let van = self.van_kit().await;
            let carried = kit::practice_kit(van.dial, settings.system, looked_up);
            let named = match code {
                Code::Named(named) => Some(named),
                Code::Seed(_) => None,
            };
            let recorded = Recorded {
                family: text::practice_name(settings.lang, named),
                said: text::practice_said(settings.lang, named),
            };
            let kit = (carried, settings.currency.as_str());
            self.start_job(practice::packed(code, recorded, &source, kit));
        });
    }

    /// Throws a practice job away for good and goes home.
    pub fn throw_away(self, log: String) {
        spawn_local(async move {
            self.shelf().throw_away(&log).await;
            self.go(&Route::Home);
            self.let_go(&log);
            self.tabs.with_value(|tabs| {
                if let Some(tabs) = tabs {
                    tabs.announce_gone(&log);
                }
            });
        });
    }

    /// Another tab threw a log away: nothing of it comes back from here.
    pub(super) fn is_gone(self, log: String) {
        spawn_local(async move {
            self.shelf().read_backup().await;
            self.let_go(&log);
            self.read_list_now().await;
        });
    }

    fn let_go(self, log: &str) {
        self.jobs.update(|jobs| jobs.retain(|job| job.log != log));
        if self.is_open(log) {
            self.shut.set(Shut::NotHere);
            self.open.set(None);
        }
    }
}
