//! Keeping journal and backup journal level: what one has lost comes from the other, and is said.

use crate::ui::react::spawn_local;
use crate::ui::react::*;

use super::App;
use crate::exchange::summary::Summary;
use crate::job::entry::Ending;
use crate::map::OrderedSet;
use crate::slate::{self, Store};
use crate::ui::shelf::CameBack;

impl App {
    /// Says what came back from the backup journal, and makes the lines of its jobs again.
    pub(super) async fn came_back(self, back: &CameBack) {
        if !back.logs.is_empty() {
            self.came_back.update(|said| *said |= back.lost);
            let jobs: Vec<String> = back
                .logs
                .iter()
                .filter(|log| !log.contains(':'))
                .cloned()
                .collect();
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
            self.came_back(&shelf.put_back().await).await;
            self.write_summary();
            self.read_list_now().await;
        });
    }
}
