//! The list of jobs: a line a job, kept beside the entries and made again from them at will.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::{App, Open};
use crate::exchange::summary::Summary;
use crate::job::entry::LogId;
use crate::job::{JobState, kit};
use crate::map::OrderedSet;
use crate::slate::{self, Read};
use crate::ui::files::Fresh;

impl App {
    /// Makes the lines of jobs again after a file added some: of those that were not here before
    /// from what came, of the others from all their entries.
    pub async fn lines(self, jobs: &[String], fresh: Vec<Fresh>) {
        let mut known: OrderedSet<&str> = OrderedSet::from_iter(jobs.iter().map(String::as_str));
        for (log, entries) in fresh {
            known.remove(log.0.as_str());
            let line = match slate::is_too_long(&entries) {
                true => Summary::unread(&log, entries.len()),
                false => Open::new(log, entries, true).summary(),
            };
            self.line(&line).await;
        }
        for log in known {
            if let Ok(read) = slate::read(&self.shelf(), log).await {
                self.line(&self.line_of(log, read)).await;
            }
        }
    }

    /// The line of a job as it was read.
    fn line_of(self, log: &str, read: Read) -> Summary {
        let id = LogId(log.to_owned());
        if let Some(entries) = read.too_long {
            return Summary::unread(&id, entries);
        }
        let whole = self.shelf().is_whole(log, &read);
        Open::new(id, read.entries, whole).summary()
    }

    async fn line(self, line: &Summary) {
        let log = &line.log;
        if let Ok(journal) = self.shelf().journal() {
            // A line that is not kept is made again from the entries at the next start.
            let _ = journal.put_summary(log, &line.to_text()).await;
        }
        self.tabs.with_value(|tabs| {
            if let Some(tabs) = tabs {
                tabs.announce(log);
            }
        });
        if self.is_open(log) {
            self.read_job(log.clone());
        }
    }

    /// Reads the list of jobs.
    pub fn read_list(self) {
        spawn_local(self.read_list_now());
    }

    /// The same, to be waited for.
    pub async fn read_list_now(self) {
        let shelf = self.shelf();
        // No line is shown of a job of which the backup journal has more.
        self.put_back().await;
        let kept = match shelf.journal() {
            Ok(journal) => journal.summaries().await.unwrap_or_default(),
            Err(_) => Vec::new(),
        };
        let mut jobs: Vec<Summary> = kept
            .iter()
            .filter_map(|(_, text)| Summary::from_text(text))
            .collect();
        let known: OrderedSet<String> =
            OrderedSet::from_iter(jobs.iter().map(|job| job.log.clone()));
        // A cursor goes over every log: what has its line is shown before that.
        self.jobs.set(jobs.clone());
        let (logs, is_read) = shelf.logs_read().await;
        if is_read {
            self.look_for_lost(&logs);
        }
        for log in logs {
            if log.contains(':') || known.contains(&log) {
                continue;
            }
            if let Ok(read) = slate::read(&shelf, &log).await {
                let line = self.line_of(&log, read);
                if let Ok(journal) = shelf.journal() {
                    // A line that is not kept is made once more at the next start.
                    let _ = journal.put_summary(&line.log, &line.to_text()).await;
                }
                jobs.push(line);
            }
        }
        if known.len() < jobs.len() {
            self.jobs.set(jobs);
        }
    }

    /// The kits of all vans whose files came in, in one log.
    pub async fn kits(self) -> JobState {
        self.read_log(kit::LOG).await
    }
}
