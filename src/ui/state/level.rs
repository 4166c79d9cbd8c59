//! Keeping journal and backup journal level: what one has lost comes from the other, and is said.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::App;
use crate::exchange::summary::Summary;
use crate::job::entry::Ending;
use crate::map::OrderedSet;
use crate::platform::clock;
use crate::slate::{self, Store};

/// Whether journal and backup journal were held against each other since the start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Leveled {
    /// Not yet.
    No,
    /// It is being done.
    Begun,
    /// It was.
    Yes,
}

impl App {
    /// Once a start, before anything is shown of the jobs: what only the backup journal has is put
    /// back into the journal.
    pub(super) async fn put_back(self) {
        match self.leveled.get_value() {
            Leveled::Yes => {}
            Leveled::Begun => {
                while self.leveled.get_value() == Leveled::Begun {
                    clock::pause(10).await;
                }
            }
            Leveled::No => {
                self.leveled.set_value(Leveled::Begun);
                self.bring_back().await;
                self.leveled.set_value(Leveled::Yes);
            }
        }
    }

    async fn bring_back(self) {
        let (back, lost) = self.shelf().put_back().await;
        if !back.is_empty() {
            self.came_back.update(|said| *said |= lost);
            let jobs: Vec<String> = back.into_iter().filter(|log| !log.contains(':')).collect();
            self.lines(&jobs, Vec::new()).await;
        }
    }

    /// Looks which logs the backup journal knows of and the phone has no more; `here` is sorted.
    pub(super) fn look_for_lost(self, here: &[String]) {
        if self.closed.with_untracked(Option::is_some) {
            return;
        }
        let lost: Vec<String> = self.shelf().says(|says| {
            let gone = |log: &&str| here.binary_search_by(|it| it.as_str().cmp(log)).is_err();
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
        // A car that was left unfinished is worked on again: its entries stay.
        let settled: OrderedSet<String> = self.jobs.with_untracked(|jobs| {
            let left = Ending::LeftUnfinished.code();
            let ended = |job: &&Summary| !job.ending.is_empty() && job.ending != left;
            let ended = jobs.iter().filter(ended);
            OrderedSet::from_iter(ended.map(|job| job.log.clone()))
        });
        for log in shelf.logs().await {
            shelf.level(&log, settled.contains(&log)).await;
        }
    }

    /// The browser threw the data away while the app was open: what is in memory is written back.
    pub fn write_back(self) {
        spawn_local(async move {
            let shelf = self.shelf();
            shelf.open_again().await;
            self.closed.set(None);
            self.storage.set(shelf.storage());
            let records = slate::records(&self.entries.get_value()).unwrap_or_default();
            let _ = Store::second(&shelf, &records);
            // Where it is refused the banner of the storage says so, and the next tap too.
            let _ = Store::journal(&shelf, &records).await;
            shelf.back_up_all(&records).await;
            self.thrown_away.set(true);
            self.bring_back().await;
            self.write_summary();
            self.read_list_now().await;
        });
    }
}
