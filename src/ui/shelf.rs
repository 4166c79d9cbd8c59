//! Where this phone keeps things: the journal, the second copy, or memory when both are denied.

use std::cell::RefCell;
use std::rc::Rc;

use crate::exchange::SavedText;
use crate::exchange::summary::Summary;
use crate::map::OrderedMap;
use crate::platform::journal::{Closed, First, Journal};
use crate::platform::local::Local;
use crate::platform::memory::Memory;
use crate::platform::record::{Photo, Record, Storage, StoreError};
use crate::slate::{Bytes, Read, Store};
use crate::sorted::Sorted;

mod backing;
mod both;
mod drafts;
mod photos;

use backing::Backing;
pub use both::beside;
use both::both;
pub use drafts::COUNTERS;
use drafts::setting;

/// The phone's storage, as far as it was granted.
#[derive(Clone)]
pub struct BrowserStore(Rc<Inner>);

struct Inner {
    journal: RefCell<Result<Journal, StoreError>>,
    local: Result<Local, StoreError>,
    memory: Memory,
    backing: Backing,
    on_closed: Rc<dyn Fn(Closed)>,
    /// Settings of this page alone, where the second copy is denied: a phone without storage is
    /// still one device, whose taps can be counted and taken back.
    passing: RefCell<OrderedMap<String, String>>,
    /// What is half typed or half set, by the name of its field, as the journal has it.
    drafts: RefCell<OrderedMap<String, String>>,
    /// The lines of the list that were read before the app was there, until they are taken.
    lines: RefCell<Option<EarlyLines>>,
}

/// The lines of the list that were read before the app was there.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct EarlyLines {
    /// Their texts.
    pub texts: Vec<String>,
    /// Whether there is certainly no job without a line: no place has any entry.
    pub are_all: bool,
}

/// What was put back at the start into the journal, from the backup journal.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CameBack {
    /// The logs of which it had lost something.
    pub logs: Vec<String>,
    /// Whether more than the last tap of any was gone.
    pub lost: bool,
    /// How many entries each log has that is worked on.
    pub counted: OrderedMap<String, u64>,
}

impl CameBack {
    /// Whether a line says all that is known of its job: a browser that died between a tap and its
    /// line left the line behind.
    pub fn is_level(&self, line: &Summary) -> bool {
        let counted = self.counted.get(&line.log);
        line.too_long > 0 || counted.is_none_or(|entries| *entries == line.entries())
    }
}

impl BrowserStore {
    /// Opens what the browser grants; never fails, since memory is always there. What only the
    /// backup journal has is put back into the journal before anything is read of it.
    ///
    /// Whoever shows what was read listens to the other tabs in the same task.
    pub async fn open(on_closed: impl Fn(Closed) + 'static) -> (Self, CameBack) {
        let on_closed: Rc<dyn Fn(Closed)> = Rc::new(on_closed);
        let closing = Rc::clone(&on_closed);
        let opening = Journal::open(move |why| closing(why));
        let (journal, backing) = both(opening, Backing::open()).await;
        let shelf = Self(Rc::new(Inner {
            journal: RefCell::new(journal),
            backing,
            on_closed,
            local: Local::open(),
            memory: Memory::new(),
            passing: RefCell::default(),
            drafts: RefCell::default(),
            lines: RefCell::default(),
        }));
        let came_back = shelf.put_back().await;
        shelf.read_first(came_back.logs.is_empty()).await;
        (shelf, came_back)
    }

    /// Takes what the page read before the app was there, or reads the drafts. Its lines hold where
    /// nothing was put back since.
    async fn read_first(&self, lines_hold: bool) {
        match First::take().await.filter(|_| self.journal().is_ok()) {
            Some(first) => {
                self.take_drafts(first.drafts);
                let elsewhere = || {
                    let second = self.local().map(Local::logs);
                    second.is_some_and(|logs| logs != Ok(Vec::new()))
                        || self.says(|says| says.open_logs().next().is_some())
                };
                let texts = first.summaries.filter(|_| lines_hold);
                *self.0.lines.borrow_mut() = texts.map(|texts| EarlyLines {
                    texts,
                    are_all: first.is_empty && !elsewhere(),
                });
            }
            None => self.read_drafts().await,
        }
    }

    /// The lines of the list that were read before the app was there; once.
    pub fn early_lines(&self) -> Option<EarlyLines> {
        self.0.lines.borrow_mut().take()
    }

    /// Opens the journal once more, after it was closed under the page.
    pub async fn open_again(&self) {
        let closing = Rc::clone(&self.0.on_closed);
        let journal = Journal::open(move |why| closing(why)).await;
        if let Ok(journal) = &journal {
            // Device, running numbers and what is half typed are in memory still.
            let here = self.0.drafts.borrow();
            let all: Vec<_> = here
                .iter()
                .map(|(name, text)| (name.as_str(), Some(text.as_str())))
                .collect();
            let _ = journal.put_drafts(&all);
        }
        *self.0.journal.borrow_mut() = journal;
    }

    /// Whether everything was read of a log that the backup journal knows of.
    pub fn is_whole(&self, log: &str, read: &Read) -> bool {
        let unreadable = read.unreadable.iter().map(|(record, _)| &record.text);
        let texts: Vec<&String> = read.texts.values().chain(unreadable).collect();
        self.says(|says| says.has_all(log, &texts))
    }

    /// What was granted.
    pub fn storage(&self) -> Storage {
        Storage::from_opened(&*self.0.journal.borrow(), self.has_backup(), &self.0.local)
    }

    /// The journal, if it is open.
    ///
    /// # Errors
    /// Why it could not be opened.
    pub fn journal(&self) -> Result<Journal, StoreError> {
        self.0.journal.borrow().clone()
    }

    /// The settings, if they are granted.
    pub fn local(&self) -> Option<&Local> {
        self.0.local.as_ref().ok()
    }

    /// A setting, if there is one and it can be read. The journal's is at hand after a kill, which
    /// can take a minute from localStorage.
    pub fn setting(&self, name: &str) -> Option<String> {
        let saved = self.0.drafts.borrow().get(&setting(name)).cloned();
        saved.or_else(|| match self.local() {
            Some(local) => local.setting(name).ok().flatten(),
            None => self.0.passing.borrow().get(name).cloned(),
        })
    }

    /// Keeps a setting; a refusal is harmless, since settings are asked again. A running number is
    /// in the database before the tap that takes it, so that it is on the disk with that tap.
    pub fn set_setting(&self, name: &str, text: &str) {
        match self.local() {
            Some(local) => {
                let _ = local.set_setting(name, text);
            }
            None => {
                let mut passing = self.0.passing.borrow_mut();
                passing.insert(name.to_owned(), text.to_owned());
            }
        }
        let named = setting(name);
        let mut here = self.0.drafts.borrow_mut();
        here.insert(named.clone(), text.to_owned());
        if let Ok(journal) = self.journal() {
            let _ = journal.put_drafts(&[(&named, Some(text))]);
        }
    }

    /// Every log this phone knows of, from both places.
    pub async fn logs(&self) -> Vec<String> {
        self.logs_read().await.0
    }

    /// The same, and whether the journal could be read at all.
    pub async fn logs_read(&self) -> (Vec<String>, bool) {
        let read = match self.journal() {
            Ok(journal) => journal.logs().await,
            Err(problem) => Err(problem),
        };
        let is_read = read.is_ok();
        let mut logs = read.unwrap_or_else(|_| self.0.memory.logs());
        logs.extend(self.says(|says| says.open_logs().map(str::to_owned).collect::<Vec<_>>()));
        logs.extend(
            self.local()
                .and_then(|local| local.logs().ok())
                .unwrap_or_default(),
        );
        logs.order();
        logs.dedup();
        (logs, is_read)
    }

    /// Lets go of the second copy of a job that has ended, once the journal has all of it.
    pub async fn close(&self, log: &str) {
        let (Ok(journal), Some(local)) = (self.journal(), self.local()) else {
            return;
        };
        let second = self.read_second(log);
        let Ok(saved) = journal.read(log).await else {
            return;
        };
        if second.iter().all(|record| saved.contains(record)) {
            // What cannot be removed stays as a copy more, which harms nothing.
            let _ = local.remove_log(log);
            self.back_up_closed(log, &saved).await;
        }
    }

    /// Puts emptied bodies, or bodies that came back, in the place of what is here, in both places.
    ///
    /// # Errors
    /// How many were replaced before the storage refused; they stay so, and all of it can be tried
    /// again.
    pub async fn replace(&self, records: &[SavedText]) -> Result<(), usize> {
        for (done, saved) in records.iter().enumerate() {
            self.replace_one(saved).await.map_err(|_| done)?;
        }
        self.back_up_forgets().await.map_err(|_| records.len())
    }

    async fn replace_one(&self, saved: &SavedText) -> Result<(), StoreError> {
        self.back_up_body(saved).await?;
        let second = self
            .second_of(&saved.log)
            .iter()
            .any(|it| it.id == saved.id);
        let journal = self.journal();
        let replaced = match &journal {
            Ok(journal) => {
                journal
                    .replace_body(&saved.log, &saved.id, &saved.text)
                    .await
            }
            Err(problem) => Err(problem.clone()),
        };
        match (replaced, self.local()) {
            (Ok(()), _) if !second => Ok(()),
            (Ok(()) | Err(StoreError::Missing { .. }), Some(local)) if second => {
                local.replace_entry(&record(saved.clone()))
            }
            // Without a journal the second copy is all there is.
            (Err(_), Some(local)) if second && journal.is_err() => {
                local.replace_entry(&record(saved.clone()))
            }
            (outcome, _) => outcome,
        }
    }

    /// Drops a practice job for good.
    pub async fn throw_away(&self, log: &str) {
        self.drop_drafts_of(log);
        self.back_up_gone(&[log.to_owned()]).await;
        if let Ok(journal) = self.journal() {
            let _ = journal.delete_log(log).await;
        }
        if let Some(local) = self.local() {
            let _ = local.remove_log(log);
        }
        self.0.memory.delete_log(log);
    }
}

impl BrowserStore {
    /// What localStorage has of a log.
    fn second_of(&self, log: &str) -> Vec<Record> {
        self.local()
            .and_then(|local| local.entries(log).ok())
            .unwrap_or_default()
    }
}

impl Bytes for BrowserStore {
    async fn put(&self, sha256: &str, saved: Photo) -> Result<(), StoreError> {
        match self.journal() {
            Ok(journal) => journal.put_photo(sha256, &saved.mime, &saved.bytes).await,
            Err(_) => {
                self.0.memory.put_photo(sha256, saved);
                Ok(())
            }
        }
    }
}

/// A kept text as the storage takes it.
pub fn record(saved: SavedText) -> Record {
    Record {
        log: saved.log,
        id: saved.id,
        text: saved.text,
    }
}

impl Store for BrowserStore {
    fn second(&self, records: &[Record]) -> Result<(), StoreError> {
        let local = self.0.local.as_ref().map_err(Clone::clone)?;
        local.write_tap(records)
    }

    async fn journal(&self, records: &[Record]) -> Result<(), StoreError> {
        let journal = self.0.journal.borrow().clone();
        match journal {
            Ok(journal) => journal.add(records).await,
            Err(problem) => {
                // With no storage at all the work goes on in memory, and no tap reads as kept.
                self.0.memory.add(records)?;
                Err(problem)
            }
        }
    }

    async fn read_journal(&self, log: &str) -> Result<Vec<Record>, StoreError> {
        match self.journal() {
            Ok(journal) => journal.read(log).await,
            Err(_) => Ok(self.0.memory.read(log)),
        }
    }

    fn backup(&self, records: &[Record]) -> impl Future<Output = Result<(), StoreError>> {
        self.back_up_tap(records)
    }

    fn read_second(&self, log: &str) -> Vec<Record> {
        let mut second = self.backed(log);
        second.extend(self.second_of(log));
        second
    }
}
