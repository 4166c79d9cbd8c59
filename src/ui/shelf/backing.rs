//! The backup journal of this phone: what it says must be there, and keeping up with it.

use std::cell::{Cell, RefCell};

use super::{BrowserStore, CameBack};
use crate::exchange::SavedText;
use crate::exchange::backup::{
    Backup, HEADER_BYTES, body, closed, counted, doubted, gone, size, tap,
};
use crate::job::practice::OWN_COUNT;
use crate::map::OrderedSet;
use crate::platform::backup::BackupFiles;
use crate::platform::journal::Journal;
use crate::platform::record::{Record, StoreError};
use crate::slate::{Store, is_one_tap};

#[cfg(test)]
mod denied;

/// The files and what they say.
pub(super) struct Backing {
    files: Result<BackupFiles, StoreError>,
    says: RefCell<Backup>,
    /// How many bytes the file had when this page last wrote or read it.
    size: Cell<usize>,
}

impl Backing {
    /// Reads the files, where the browser grants them.
    pub(super) async fn open() -> Self {
        let files = BackupFiles::open();
        let read = match &files {
            Ok(files) => files.read().await,
            Err(problem) => Err(problem.clone()),
        };
        let (files, texts) = match read {
            Ok(texts) => (files, texts),
            Err(problem) => (Err(problem), Vec::new()),
        };
        Self {
            files,
            says: RefCell::new(Backup::read(&texts)),
            size: Cell::new(size(&texts)),
        }
    }

    /// Writes lines; what the files say is taken in once they are flushed. On its way at once.
    fn write(&self, lines: String) -> impl Future<Output = Result<(), StoreError>> {
        let asked = self.files.as_ref().map(|files| files.append(&lines));
        let asked = asked.map_err(Clone::clone);
        async move {
            let size = asked?.await?;
            if size == self.size.get().saturating_add(lines.len()) {
                self.size.set(size);
                self.says.borrow_mut().add(&lines);
            } else {
                // Another tab wrote too: what it wrote counts as well.
                self.read_again().await?;
            }
            let anew = self.says.borrow_mut().anew();
            if let Some(lines) = anew {
                // What is refused or came too late is done at another time.
                let _ = self.turn(&lines).await;
            }
            Ok(())
        }
    }

    async fn read_again(&self) -> Result<(), StoreError> {
        let files = self.files.as_ref().map_err(Clone::clone)?;
        let texts = files.read().await?;
        self.size.set(size(&texts));
        *self.says.borrow_mut() = Backup::read(&texts);
        Ok(())
    }

    /// Writes what counts again; false where another tab wrote meanwhile.
    async fn turn(&self, lines: &str) -> Result<bool, StoreError> {
        let files = self.files.as_ref().map_err(Clone::clone)?;
        let turned = files.anew(lines, self.size.get()).await?;
        if turned {
            self.says.borrow_mut().turned(lines);
            self.size.set(HEADER_BYTES.saturating_add(lines.len()));
        }
        Ok(turned)
    }

    /// Nothing that does not count any more stays in the files.
    async fn forget(&self) -> Result<(), StoreError> {
        const TRIES: usize = 3;
        for _ in 0..TRIES {
            if self.says.borrow().is_lean() {
                return Ok(());
            }
            let lines = self.says.borrow().whole();
            if self.turn(&lines).await? {
                return Ok(());
            }
            self.read_again().await?;
        }
        Err(StoreError::Blocked)
    }
}

impl BrowserStore {
    /// Whether the browser grants the backup journal.
    pub fn has_backup(&self) -> bool {
        let files = self.0.backing.files.as_ref();
        files.is_ok_and(|files| !files.is_silent())
    }

    /// What the backup journal says.
    pub fn says<T>(&self, of: impl FnOnce(&Backup) -> T) -> T {
        of(&self.0.backing.says.borrow())
    }

    /// The name of this device; empty before it wrote anything. What the settings have lost of it
    /// the backup journal knows, and it is set again.
    pub fn device(&self) -> String {
        if let Some(device) = self.setting("device") {
            return device;
        }
        let known = self.says(|says| {
            let (device, _) = says.numbers().next()?;
            Some(device.trim_end_matches(OWN_COUNT).to_owned())
        });
        if let Some(device) = &known {
            self.set_setting("device", device);
        }
        known.unwrap_or_default()
    }

    /// Reads the files again, after another tab took something out of them.
    pub async fn read_backup(&self) {
        // What cannot be read stays as it is known.
        let _ = self.0.backing.read_again().await;
    }

    /// Writes the line of a tap of this phone, with the running numbers that it takes; on its way at
    /// once.
    pub(super) fn back_up_tap(
        &self,
        records: &[Record],
    ) -> impl Future<Output = Result<(), StoreError>> {
        // First the numbers: a line that is torn behind them takes none again.
        let numbers = counted(records.iter().map(|record| record.text.as_str()));
        self.back_up(records, numbers)
    }

    /// Writes the line of these records that are not there, after `first`; on its way at once.
    fn back_up(
        &self,
        records: &[Record],
        first: String,
    ) -> impl Future<Output = Result<(), StoreError>> {
        let lines = self.says(|says| {
            let new = |record: &&Record| !says.has(&record.log, &record.id);
            let new: Vec<SavedText> = records.iter().filter(new).map(saved).collect();
            let line = new
                .first()
                .map(|first| tap(&new, says.must(&first.log).saturating_add(new.len())));
            line.map_or_else(String::new, |line| first + &line)
        });
        let writing = (!lines.is_empty()).then(|| self.0.backing.write(lines));
        async move {
            match writing {
                Some(writing) => writing.await,
                None => Ok(()),
            }
        }
    }

    /// Brings a log of the backup journal level with all that is known of it. A closed log is held
    /// by number and digest alone.
    pub async fn level(&self, log: &str, is_closed: bool) {
        let Ok(journal) = self.journal() else { return };
        if !self.has_backup() || is_closed && self.says(|says| says.is_closed(log)) {
            return;
        }
        if !is_closed {
            if let Ok(ids) = journal.ids(&[log.to_owned()]).await {
                for ids in &ids {
                    self.back_up_missing(&journal, log, ids).await;
                }
            }
            return;
        }
        let Ok(records) = journal.read(log).await else {
            return;
        };
        let texts: Vec<&str> = records.iter().map(|record| record.text.as_str()).collect();
        // What is not whole stays open, so that this is not forgotten.
        if self.says(|says| says.has_all(log, &texts)) {
            // What cannot be written is tried at the next start.
            let _ = self.0.backing.write(closed(log, &texts)).await;
        }
    }

    /// Writes what only the journal has of a log that is not closed; nothing is read where `ids`,
    /// those of the journal, are all there.
    async fn back_up_missing(&self, journal: &Journal, log: &str, ids: &OrderedSet<String>) {
        if !self.has_backup() || self.says(|says| ids.iter().all(|id| says.has(log, id))) {
            return;
        }
        let Ok(records) = journal.read(log).await else {
            return;
        };
        let new = |record: &&Record| self.says(|says| !says.has(log, &record.id));
        let new: Vec<SavedText> = records.iter().filter(new).map(saved).collect();
        if !new.is_empty() {
            // What cannot be written is tried at the next start.
            let _ = self.0.backing.write(tap(&new, records.len())).await;
        }
    }

    /// Puts back into the journal what only the backup journal has, and the other way round, before
    /// anything reads as kept; gives the logs that the journal had lost something of, and whether
    /// more than one tap of any was gone. One tap alone was on its way into both when the browser died,
    /// and nobody was told that it was kept.
    pub async fn put_back(&self) -> CameBack {
        let open: Vec<String> = self.says(|says| says.open_logs().map(str::to_owned).collect());
        let mut back = CameBack::default();
        let Ok(journal) = self.journal() else {
            return back;
        };
        let there = journal.ids(&open).await.unwrap_or_default();
        for (log, there) in open.into_iter().zip(there) {
            let records = self.backed(&log).into_iter();
            let missing: Vec<Record> = records.filter(|it| !there.contains(&it.id)).collect();
            let count = there.len().saturating_add(missing.len());
            let counted = u64::try_from(count).unwrap_or(u64::MAX);
            back.counted.insert(log.clone(), counted);
            let put = Store::journal(self, &missing).await;
            // The journal may be torn the next time: what only it has is in two places first.
            self.back_up_missing(&journal, &log, &there).await;
            if missing.is_empty() || put.is_err() {
                continue;
            }
            if self.says(Backup::damaged) > 0 {
                // A line that cannot be read may have been the last tap: nobody knows any more.
                self.doubt(&log).await;
            }
            back.lost |= !is_one_tap(missing.iter().map(|it| it.id.as_str()));
            back.logs.push(log);
        }
        back
    }

    /// Entries of this log are lost, whatever comes in later.
    pub async fn doubt(&self, log: &str) {
        if !self.says(|says| says.is_doubted(log)) {
            let _ = self.0.backing.write(doubted(log)).await;
        }
    }

    /// Every entry of these logs again, after the files were lost under the open app.
    pub async fn back_up_all(&self, records: &[Record]) {
        let all = self.says(Backup::whole);
        let _ = self.0.backing.write(all).await;
        let _ = self.back_up(records, String::new()).await;
    }

    /// The records of a log that the backup journal has.
    pub(super) fn backed(&self, log: &str) -> Vec<Record> {
        let texts = self.says(|says| says.entries(log));
        texts.into_iter().map(super::record).collect()
    }

    /// A log that has ended and is wholly in the journal, unless another tap came meanwhile.
    pub(super) async fn back_up_closed(&self, log: &str, records: &[Record]) {
        let texts: Vec<&str> = records.iter().map(|record| record.text.as_str()).collect();
        if self.says(|says| says.must(log) <= texts.len() && says.has_all(log, &texts)) {
            let _ = self.0.backing.write(closed(log, &texts)).await;
        }
    }

    /// Logs that are not here any more, and need not be; what they said is gone from the files.
    pub async fn back_up_gone(&self, logs: &[String]) {
        let lines: String = logs.iter().map(|log| gone(log)).collect();
        if !lines.is_empty() && self.0.backing.write(lines).await.is_ok() {
            let _ = self.0.backing.forget().await;
        }
    }

    /// A text in the place of another.
    pub(super) async fn back_up_body(&self, new: &SavedText) -> Result<(), StoreError> {
        if !self.has_backup() || !self.says(|says| says.has(&new.log, &new.id)) {
            return Ok(());
        }
        self.0.backing.write(body(new)).await
    }

    /// What was replaced is gone from the files too, of closed logs as well.
    pub(super) async fn back_up_forgets(&self) -> Result<(), StoreError> {
        if !self.has_backup() {
            return Ok(());
        }
        self.0.backing.forget().await
    }
}

fn saved(record: &Record) -> SavedText {
    SavedText {
        log: record.log.clone(),
        id: record.id.clone(),
        text: record.text.clone(),
    }
}
