//! The list of jobs: a line a job, kept beside the entries and made again from them at will.

use crate::ui::react::spawn_local;
use crate::ui::react::*;

use super::{App, Open};
use crate::exchange::summary::Summary;
use crate::job::entry::LogId;
use crate::job::{JobState, kit};
use crate::map::OrderedSet;
use crate::platform::clock;
use crate::slate::{self, Read};
use crate::ui::files::Fresh;
use crate::ui::shelf::CameBack;

/// So many lines are read before the first of them are shown, and so many at a time after that.
const FIRST_PIECE: usize = 60;
const PIECE: usize = 500;
/// In so long what is on the screen is painted.
const PAINT_MS: i32 = 50;

/// Puts the lines of open jobs first, then those of which something is due: they stand at the top of
/// the list. The text alone is asked, once, so that nothing is read for it.
fn pressing_first(lines: Vec<String>) -> Vec<String> {
    let (mut open, mut due, mut rest) = (Vec::new(), Vec::new(), Vec::new());
    for line in lines {
        if line.contains(r#""ending":"","#) {
            open.push(line);
        } else if line.contains(r#""due":"","#) {
            rest.push(line);
        } else {
            due.push(line);
        }
    }
    open.append(&mut due);
    open.append(&mut rest);
    open
}

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
        self.read_level(&CameBack::default()).await;
    }

    async fn read_level(self, back: &CameBack) {
        let saved = match self.shelf().journal() {
            Ok(journal) => journal.summaries().await.unwrap_or_default(),
            Err(_) => Vec::new(),
        };
        self.take_lines(&saved, back);
        self.read_rest().await;
    }

    /// Shows the lines that were read before the app was there, if they are few enough to be drawn
    /// with the first screen; gives the others back.
    pub fn first_lines(self, back: &CameBack) -> Option<Vec<String>> {
        const FEW: usize = 200;
        let lines = self.shelf().early_lines()?;
        if FEW < lines.texts.len() {
            return Some(lines.texts);
        }
        self.take_lines(&lines.texts, back);
        self.listed.set(lines.are_all);
        None
    }

    /// The list at the start, after what came back; first is painted what is on the screen already.
    pub async fn read_first_list(self, back: CameBack, early: Option<Vec<String>>) {
        self.came_back(&back).await;
        if self.route.with_untracked(|route| route.job().is_some()) {
            // The step of that job first.
            clock::pause(PAINT_MS).await;
        }
        match early {
            Some(lines) => {
                clock::pause(PAINT_MS).await;
                self.take_in_pieces(&pressing_first(lines), &back).await;
                self.read_rest().await;
            }
            None if !self.listed.get_untracked() && self.jobs.with_untracked(Vec::is_empty) => {
                self.read_level(&back).await;
            }
            None => {
                clock::pause(PAINT_MS).await;
                self.read_rest().await;
            }
        }
    }

    /// Shows many lines piece by piece, each as soon as it is read; between two of them the screen
    /// is painted and answers. A line that a tap made meanwhile is the later one.
    async fn take_in_pieces(self, kept: &[String], back: &CameBack) {
        let mut from = 0;
        let mut size = FIRST_PIECE;
        while let Some(piece) = kept.get(from..kept.len().min(from + size)) {
            if piece.is_empty() {
                return;
            }
            let read = piece.iter().filter_map(|text| Summary::from_text(text));
            let read: Vec<Summary> = read.filter(|line| back.is_level(line)).collect();
            self.jobs.update(|jobs| {
                let here: OrderedSet<String> =
                    OrderedSet::from_iter(jobs.iter().map(|job| job.log.clone()));
                jobs.extend(read.into_iter().filter(|line| !here.contains(&line.log)));
            });
            // The first ones are painted before more are read.
            clock::pause(if from == 0 { PAINT_MS } else { 0 }).await;
            from += piece.len();
            size = PIECE;
        }
    }

    /// Shows the lines that were kept; one that says less than is known is made again with those
    /// that are missing.
    fn take_lines(self, saved: &[String], back: &CameBack) {
        let jobs = saved.iter().filter_map(|text| Summary::from_text(text));
        self.jobs
            .set(jobs.filter(|line| back.is_level(line)).collect());
    }

    /// Looks for logs without a line, and for lines without a log: a cursor goes over every log,
    /// while what has its line is shown.
    async fn read_rest(self) {
        let shelf = self.shelf();
        let known: OrderedSet<String> = self
            .jobs
            .with_untracked(|jobs| OrderedSet::from_iter(jobs.iter().map(|job| job.log.clone())));
        let (logs, is_read) = shelf.logs_read().await;
        if is_read {
            self.look_for_lost(&logs);
        }
        let mut new = Vec::new();
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
                new.push(line);
            }
        }
        if !new.is_empty() {
            self.jobs.update(|jobs| {
                // A tap that came meanwhile has made a later line.
                let here: OrderedSet<String> =
                    OrderedSet::from_iter(jobs.iter().map(|job| job.log.clone()));
                jobs.extend(new.into_iter().filter(|line| !here.contains(&line.log)));
            });
        }
        self.listed.set(true);
    }

    /// The kits of all vans whose files came in, in one log.
    pub async fn kits(self) -> JobState {
        self.read_log(kit::LOG).await
    }
}
