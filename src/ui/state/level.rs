//! Keeping journal and backup journal level: what one has lost comes from the other, and is said.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::App;
use crate::slate::{self, Store};

impl App {
    /// Once a start, before anything is shown of the jobs: what only the backup journal has is put
    /// back into the journal.
    pub(super) async fn put_back(self) {
        if self.level_done.get_value() {
            return;
        }
        self.level_done.set_value(true);
        self.bring_back().await;
    }

    async fn bring_back(self) {
        let (back, lost) = self.shelf().put_back().await;
        if !back.is_empty() {
            self.came_back.update(|said| *said |= lost);
            let jobs: Vec<String> = back.into_iter().filter(|log| !log.contains(':')).collect();
            self.lines(&jobs, Vec::new()).await;
        }
    }

    /// Looks which logs the backup journal knows of and the phone has no more.
    pub(super) fn look_for_lost(self, here: &[String]) {
        let shelf = self.shelf();
        if shelf.journal().is_err() {
            return;
        }
        let lost: Vec<String> = shelf.says(|says| {
            let gone = |log: &&str| !here.iter().any(|it| it == log);
            says.logs().filter(gone).map(str::to_owned).collect()
        });
        self.lost.set(lost);
    }

    /// Somebody knows that these logs are gone: they need not be here any more.
    pub fn forget_lost(self) {
        let lost = self.lost.get_untracked();
        self.lost.set(Vec::new());
        spawn_local(async move { self.shelf().back_up_gone(&lost).await });
    }

    /// Brings the backup journal level with the journal, log by log.
    pub async fn level(self) {
        let shelf = self.shelf();
        for log in shelf.logs().await {
            let ended = self.jobs.with_untracked(|jobs| {
                let line = jobs.iter().find(|job| job.log == log);
                line.is_some_and(|job| !job.ending.is_empty())
            });
            shelf.level(&log, ended).await;
        }
    }

    /// The browser threw the data away while the app was open: what is in memory is written back.
    pub fn write_back(self) {
        spawn_local(async move {
            let shelf = self.shelf();
            self.thrown_away.set(true);
            shelf.open_again().await;
            self.closed.set(None);
            self.storage.set(shelf.storage());
            let records = slate::records(&self.entries.get_value()).unwrap_or_default();
            let _ = Store::second(&shelf, &records);
            let _ = Store::journal(&shelf, &records).await;
            shelf.back_up_all(&records).await;
            self.bring_back().await;
            self.write_summary();
            self.read_list_now().await;
        });
    }
}
