//! The backup journal of this phone: what it says must be there, and keeping up with it.

use std::cell::RefCell;

use super::Shelf;
use crate::exchange::KeptText;
use crate::exchange::backup::{Backup, body, closed, doubted, gone, tap};
use crate::platform::backup::BackupFiles;
use crate::platform::record::{Record, StoreProblem};
use crate::slate::{Store, is_one_tap};

/// The files and what they say.
pub(super) struct Backing {
    files: Result<BackupFiles, StoreProblem>,
    says: RefCell<Backup>,
}

impl Backing {
    /// Reads the files, where the browser grants them.
    pub(super) async fn open() -> Self {
        let files = BackupFiles::open();
        let read = match &files {
            Ok(files) => files.read().await,
            Err(problem) => Err(problem.clone()),
        };
        let (files, says) = match read {
            Ok(texts) => (files, Backup::read(&texts)),
            Err(problem) => (Err(problem), Backup::default()),
        };
        Self {
            files,
            says: RefCell::new(says),
        }
    }

    /// Writes lines; what the files say is taken in once they are flushed. On its way at once.
    fn write(&self, lines: String) -> impl Future<Output = Result<(), StoreProblem>> {
        let asked = self.files.as_ref().map(|files| files.append(&lines));
        let asked = asked.map_err(Clone::clone);
        async move {
            let size = asked?.await?;
            self.says.borrow_mut().add(&lines);
            self.turn(size).await;
            Ok(())
        }
    }

    /// Writes what counts anew where much of the file no longer does.
    async fn turn(&self, size: usize) {
        let anew = self.says.borrow().anew();
        if let (Some(lines), Ok(files)) = (anew, &self.files)
            // What is refused or came too late is done at another time.
            && files.anew(&lines, size).await == Ok(true)
        {
            self.says.borrow_mut().turned(&lines);
        }
    }
}

impl Shelf {
    /// Whether the browser grants the backup journal.
    pub fn has_backup(&self) -> bool {
        self.0.backing.files.is_ok()
    }

    /// What the backup journal says.
    pub fn says<T>(&self, of: impl FnOnce(&Backup) -> T) -> T {
        of(&self.0.backing.says.borrow())
    }

    /// Writes the line of these records; on its way at once.
    pub(super) fn back_up(
        &self,
        records: &[Record],
    ) -> impl Future<Output = Result<(), StoreProblem>> {
        let lines = self.says(|says| {
            let new = |record: &&Record| !says.has(&record.log, &record.id);
            let new: Vec<KeptText> = records.iter().filter(new).map(kept).collect();
            let line = new
                .first()
                .map(|first| tap(&new, says.must(&first.log).saturating_add(new.len())));
            line.unwrap_or_default()
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
        let Ok(records) = journal.read(log).await else {
            return;
        };
        let count = records.len();
        let lines = if is_closed {
            let texts: Vec<&str> = records.iter().map(|record| record.text.as_str()).collect();
            Some(closed(log, &texts))
        } else {
            let new = |record: &&Record| self.says(|says| !says.has(log, &record.id));
            let new: Vec<KeptText> = records.iter().filter(new).map(kept).collect();
            (!new.is_empty()).then(|| tap(&new, count))
        };
        if let Some(lines) = lines {
            // What cannot be written is tried at the next start.
            let _ = self.0.backing.write(lines).await;
        }
    }

    /// Puts back into the journal what only the backup journal has; gives the logs, and whether more
    /// than one tap of any was gone. One tap alone was on its way into both when the browser died,
    /// and nobody was told that it was kept.
    pub async fn put_back(&self) -> (Vec<String>, bool) {
        let open: Vec<String> = self.says(|says| says.open_logs().map(str::to_owned).collect());
        let (mut back, mut lost) = (Vec::new(), false);
        for log in open {
            let Ok(journal) = self.journal() else { break };
            let Ok(there) = journal.ids(&log).await else {
                break;
            };
            let records = self.backed(&log).into_iter();
            let missing: Vec<Record> = records.filter(|it| !there.contains(&it.id)).collect();
            if missing.is_empty() || Store::journal(self, &missing).await.is_err() {
                continue;
            }
            if self.says(Backup::damaged) > 0 {
                // A line that cannot be read may have been the last tap: nobody knows any more.
                let count = there.len().saturating_add(missing.len());
                let _ = self
                    .0
                    .backing
                    .write(doubted(&log, count.saturating_add(1)))
                    .await;
            }
            lost |= !is_one_tap(missing.iter().map(|it| it.id.as_str()));
            back.push(log);
        }
        (back, lost)
    }

    /// Every entry of these logs again, after the files were lost under the open app.
    pub async fn back_up_all(&self, records: &[Record]) {
        let all = self.says(Backup::whole);
        let _ = self.0.backing.write(all).await;
        let _ = self.back_up(records).await;
    }

    /// The records of a log that the backup journal has.
    pub(super) fn backed(&self, log: &str) -> Vec<Record> {
        let texts = self.says(|says| says.entries(log));
        texts.into_iter().map(super::record).collect()
    }

    /// A log that has ended and is wholly in the journal.
    pub(super) async fn back_up_closed(&self, log: &str, records: &[Record]) {
        let texts: Vec<&str> = records.iter().map(|record| record.text.as_str()).collect();
        let _ = self.0.backing.write(closed(log, &texts)).await;
    }

    /// Logs that are not here any more, and need not be.
    pub async fn back_up_gone(&self, logs: &[String]) {
        let lines: String = logs.iter().map(|log| gone(log)).collect();
        if !lines.is_empty() {
            let _ = self.0.backing.write(lines).await;
        }
    }

    /// A text in the place of another.
    pub(super) async fn back_up_body(&self, new: &KeptText) -> Result<(), StoreProblem> {
        if !self.has_backup() || !self.says(|says| says.has(&new.log, &new.id)) {
            return Ok(());
        }
        self.0.backing.write(body(new)).await
    }
}

fn kept(record: &Record) -> KeptText {
    KeptText {
        log: record.log.clone(),
        id: record.id.clone(),
        text: record.text.clone(),
    }
}
