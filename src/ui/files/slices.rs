//! A long file slice by slice: all of it is looked at first, so that one with a fault changes
//! nothing; then it is taken a few jobs at a time, each whole.

use web_sys::File;

use super::plan::plan;
use super::{Fresh, Outcome, Taken, take_logs};
use crate::exchange::pieces::{CalledOff, Waits};
use crate::exchange::{Far, Incoming, IncomingLog, Sliced};
use crate::map::OrderedSet;
use crate::platform::files;
use crate::text::Say;
use crate::ui::state::App;
use crate::ui::work::Work;

/// A shorter file is read whole.
const LONG: u64 = 8 << 20;
/// So many bytes are read at a time.
const SLICE: u64 = 1 << 20;
/// Logs of so many bytes are kept in one transaction.
const BATCH: usize = 1 << 20;

/// Takes a file; nothing where it is to be read whole.
pub(super) async fn taken(app: App, file: &File, sure: bool) -> Option<Taken> {
    let refused = |say| Some(Ok((Outcome::Refused(say), Vec::new())));
    let shelf = app.shelf();
    let mut reading = Reading::begin(file, &app.work).await?;
    if shelf.journal().is_err() {
        return refused(Say::ImportNotHere);
    }
    let here: OrderedSet<String> = OrderedSet::from_iter(shelf.logs().await);
    let mut eases = Vec::new();
    loop {
        let log = match reading.next().await {
            Err(why) => return refused(why),
            Ok(None) => break,
            Ok(Some(log)) => log,
        };
        if here.contains(&log.id.0) {
            match plan(&shelf, incoming(vec![log]), &reading.far()).await {
                Err(why) => return refused(why),
                Ok(plan) => eases.extend(plan.eases),
            }
        }
    }
    if reading.sliced.has_one_twice() {
        return None;
    }
    if !sure && !eases.is_empty() {
        return Some(Err(eases));
    }
    let outcome = take_all(app, reading.again().await?).await;
    Some(Ok((outcome, Vec::new())))
}

/// Takes log after log; what stops it leaves what was taken.
async fn take_all(app: App, mut reading: Reading<'_>) -> Outcome {
    let mut sum: Option<Outcome> = None;
    loop {
        let taken = match reading.batch().await {
            Ok(logs) if logs.is_empty() => break,
            Ok(logs) => {
                let far = reading.far();
                take_logs(&app.shelf(), incoming(logs), &[], true, &far).await
            }
            Err(why) => Ok((Outcome::Refused(why), Vec::new())),
        };
        // Whether it eases was asked before.
        let (more, fresh) = taken.unwrap_or((Outcome::Refused(Say::ImportNotHere), Vec::new()));
        if let Outcome::Refused(why) = more {
            return sum.map_or(Outcome::Refused(why), |sum| ended(sum, why));
        }
        lines(app, &more, fresh).await;
        sum = Some(match sum {
            Some(sum) => sum.and(more),
            None => more,
        });
    }
    sum.unwrap_or(Outcome::Refused(Say::ImportNotOurs))
}

async fn lines(app: App, taken: &Outcome, fresh: Vec<Fresh>) {
    if let Outcome::Taken { jobs, .. } = taken {
        app.lines(jobs, fresh).await;
    }
}

fn incoming(logs: Vec<IncomingLog>) -> Incoming {
    Incoming {
        made_by: String::new(),
        logs,
        rescue: None,
    }
}

/// A file on its way in.
struct Reading<'a> {
    file: &'a File,
    work: &'a Work,
    sliced: Sliced,
    size: u64,
    at: u64,
    /// How much was read of it before: it is read twice.
    before: u64,
}

impl<'a> Reading<'a> {
    async fn begin(file: &'a File, work: &'a Work) -> Option<Self> {
        let size = files::size(file);
        if size < LONG {
            return None;
        }
        let first = files::read_slice(file, 0, SLICE).await.ok()?;
        Some(Self {
            file,
            work,
            sliced: Sliced::begin(&first)?,
            size,
            at: SLICE,
            before: 0,
        })
    }

    /// From the beginning again, the digests known to hold.
    async fn again(self) -> Option<Self> {
        let first = files::read_slice(self.file, 0, SLICE).await.ok()?;
        Some(Self {
            sliced: self.sliced.again(&first)?,
            at: SLICE,
            before: self.size,
            ..self
        })
    }

    /// How far it is.
    fn far(&self) -> Far<'a, Work> {
        let bytes = |bytes: u64| usize::try_from(bytes).unwrap_or(usize::MAX);
        Far {
            waits: self.work,
            at: Some((bytes(self.before + self.at), bytes(2 * self.size))),
        }
    }

    /// The next log; nothing at the end of the file.
    async fn next(&mut self) -> Result<Option<IncomingLog>, Say> {
        loop {
            let far = self.far();
            let log = self.sliced.next(&far).await;
            if let Some(log) = log.map_err(|error| error.say())? {
                return Ok(Some(log));
            }
            if self.size <= self.at {
                return self
                    .sliced
                    .end()
                    .map(|()| None)
                    .map_err(|error| error.say());
            }
            let stopped = |CalledOff| Say::ImportCalledOff;
            far.between(0, 0).await.map_err(stopped)?;
            let to = self.size.min(self.at + SLICE);
            let slice = files::read_slice(self.file, self.at, to).await;
            self.sliced.push(&slice.map_err(|_| Say::ImportNotOurs)?);
            self.at = to;
        }
    }

    /// The logs that are kept together; none at the end of the file.
    async fn batch(&mut self) -> Result<Vec<IncomingLog>, Say> {
        let (mut logs, mut bytes) = (Vec::new(), 0);
        while bytes < BATCH {
            let Some(log) = self.next().await? else { break };
            bytes += log.records.iter().map(|it| it.text.len()).sum::<usize>();
            logs.push(log);
        }
        Ok(logs)
    }
}

fn ended(mut sum: Outcome, why: Say) -> Outcome {
    if let Outcome::Taken { rest, .. } = &mut sum {
        *rest = Some(match why {
            Say::ImportCalledOff => Say::ImportRestStopped,
            _ => Say::ImportRestRefused,
        });
    }
    sum
}
