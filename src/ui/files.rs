//! Files out and in: gathers the kept texts for an export, and takes what a file adds.

use std::slice;

use web_sys::File;

use crate::exchange::book::kind_in_a_file;
use crate::exchange::bundle::{self, BundleError, Opened, Wanted};
use crate::exchange::pieces::{CalledOff, Waits};
use crate::exchange::wire::decode;
use crate::exchange::{self, ExportError, Far, Incoming, Rescue, SavedText};
use crate::job::entry::{Entry, LogId};
use crate::job::spec_diff::BookNews;
use crate::map::OrderedSet;
use crate::platform::files;
use crate::platform::lock::{Alone, Shared};
use crate::platform::record::{Photo, StoreError};
use crate::slate;
use crate::text::Say;
use crate::trade::wheel_end::StepKey;
use crate::ui::shelf::BrowserStore;
use crate::ui::state::App;

mod eases;
mod plan;
mod slices;

use crate::ui::sweep::drop_orphans;
use crate::ui::work::Work;
pub use eases::Eases;
use plan::{Plan, not_saved, plan};

/// What became of one file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It was taken: so many entries were read, so many of them are new.
    Taken {
        /// The jobs it holds.
        jobs: Vec<String>,
        /// What its spec books bring.
        book: BookNews,
        /// Entries read.
        entries: usize,
        /// Entries that were not here.
        new: usize,
        /// Entries that could not be read and were set aside.
        aside: usize,
        /// Entries that are here with another text; what was here is kept.
        edited: usize,
        /// Entries that were here and are erased now.
        emptied: usize,
        /// Every log it holds.
        logs: Vec<String>,
        /// The shop's settings that it brought, by their entry.
        shop: Option<String>,
        /// The steps whose pictures are named and not on this phone.
        no_photo: Vec<StepKey>,
        /// What became of the pictures and voice notes that came with it.
        bytes: Came,
        /// What else a rescue file holds.
        rescue: Option<Rescue>,
        /// Whether the storage refused a part of it after the first was written.
        unfinished: bool,
        /// Why the rest of a long file did not come in; what came is whole, job by job.
        rest: Option<Say>,
    },
    /// It would make open jobs read safer; nothing was changed, and it is asked whether it is to.
    Eases(File, Vec<Eases>),
    /// It was refused before anything of it was kept.
    Refused(Say),
    /// It is a zip that is packed in a way that cannot be read here; nothing was changed.
    NotUnpacked,
}

impl Outcome {
    /// Both parts of one file, taken one after the other.
    fn and(mut self, more: Self) -> Self {
        if let (
            Self::Taken {
                jobs,
                book,
                entries,
                new,
                aside,
                edited,
                emptied,
                logs,
                shop,
                no_photo,
                unfinished,
                ..
            },
            Self::Taken {
                jobs: more_jobs,
                book: more_book,
                entries: more_entries,
                new: more_new,
                aside: more_aside,
                edited: more_edited,
                emptied: more_emptied,
                logs: more_logs,
                shop: more_shop,
                no_photo: more_no_photo,
                unfinished: more_unfinished,
                ..
            },
        ) = (&mut self, more)
        {
            jobs.extend(more_jobs);
            *book = book.and(more_book);
            *entries += more_entries;
            *new += more_new;
            *aside += more_aside;
            *edited += more_edited;
            *emptied += more_emptied;
            logs.extend(more_logs);
            *shop = more_shop.or_else(|| shop.take());
            // Each step is named once, however many jobs lack its photo.
            let new = |step: &StepKey| !no_photo.contains(step);
            let named: Vec<StepKey> = more_no_photo.into_iter().filter(new).collect();
            no_photo.extend(named);
            *unfinished |= more_unfinished;
        }
        self
    }
}

/// What became of the pictures and voice notes of a zip.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Came {
    /// How many are kept.
    pub saved: usize,
    /// The names of those that are not what the record names; they were left out.
    pub wrong: Vec<String>,
    /// Whether some found no room.
    pub no_room: bool,
}

/// The file of these logs, as text.
///
/// # Errors
/// [`ExportError`] if a kept text is no entry.
pub async fn exported(app: App, logs: &[String]) -> Result<String, ExportError> {
    let (shelf, work) = (&app.shelf(), app.work);
    let mut whole = Vec::new();
    for (place, log) in (1..).zip(logs) {
        let gone = |CalledOff| ExportError::CalledOff;
        work.between(place, logs.len()).await.map_err(gone)?;
        let Some(kind) = kind_in_a_file(log) else {
            continue;
        };
        let read = slate::read(shelf, log).await;
        let read = read.map_err(|_| ExportError::NotWritten)?;
        let texts = read.texts.into_values().collect();
        whole.push((kind, LogId(log.clone()), texts));
    }
    let shop = app.shop.with_untracked(|shop| shop.id.clone());
    exchange::export_in_pieces(shop.as_deref(), &whole, &work).await
}

/// The kept texts of a log, by id; nothing of a log that is not here.
pub async fn saved_texts(shelf: &BrowserStore, log: &str) -> Vec<SavedText> {
    here(shelf, log).await.unwrap_or_default()
}

/// The same with the pictures and voice notes that it names, as far as this phone has them, as a
/// zip; `name` is that of the job's file in it.
///
/// # Errors
/// [`ExportError`], also where there is no memory for the zip.
pub async fn bundled(app: App, logs: &[String], name: &str) -> Result<Vec<u8>, ExportError> {
    let text = exported(app, logs).await?;
    with_bytes(&app.shelf(), &text, name).await
}

/// A file's text as a zip with the pictures and voice notes that it names.
///
/// # Errors
/// [`ExportError::NotWritten`] where there is no memory for it.
pub async fn with_bytes(
    shelf: &BrowserStore,
    text: &str,
    name: &str,
) -> Result<Vec<u8>, ExportError> {
    let mut saved = Vec::new();
    for wanted in bundle::wanted_in(text) {
        if let Some(found) = shelf.photo(&wanted.sha256).await {
            saved.push((wanted, found.bytes));
        }
    }
    bundle::write(name, text, &saved).map_err(|_| ExportError::NotWritten)
}

/// The file of every spec library of this phone.
///
/// # Errors
/// [`ExportError`] if a kept text is no entry.
pub async fn exported_book(shelf: &BrowserStore) -> Result<String, ExportError> {
    let mut logs = Vec::new();
    for log in shelf.logs().await {
        let read = slate::read(shelf, &log).await;
        let read = read.map_err(|_| ExportError::NotWritten)?;
        logs.push((LogId(log), read.texts.into_values().collect()));
    }
    exchange::export_book(&logs)
}

/// A job that was not here before, as it came: its line needs no second reading.
pub type Fresh = (LogId, Vec<Entry>);

/// Reads a file and takes what it adds; a file with a fault changes nothing. Of a zip each picture
/// is held against its digest: a wrong one is left out and named, the rest is kept.
/// One that makes an open job read safer is taken only where that is `sure`.
pub async fn take(app: App, file: &File, sure: bool) -> (Outcome, Vec<Fresh>) {
    if app.work.is_stopped() {
        return (Outcome::Refused(Say::ImportCalledOff), Vec::new());
    }
    let taken = match slices::taken(app, file, sure).await {
        Some(taken) => taken,
        None => taken(&app.shelf(), file, sure, app.work).await,
    };
    match taken {
        Ok(outcome) => outcome,
        Err(eases) => (Outcome::Eases(file.clone(), eases), Vec::new()),
    }
}

type Taken = Result<(Outcome, Vec<Fresh>), Vec<Eases>>;

async fn taken(shelf: &BrowserStore, file: &File, sure: bool, work: Work) -> Taken {
    let refused = |say| Ok((Outcome::Refused(say), Vec::new()));
    let Ok(bytes) = files::read_bytes(file).await else {
        return refused(Say::ImportNotOurs);
    };
    if !bundle::is_zip(&bytes) {
        return match String::from_utf8(bytes) {
            Ok(text) => take_text(shelf, &text, &[], sure, work).await,
            Err(_) => refused(Say::ImportNotOurs),
        };
    }
    match bundle::open(&bytes) {
        Ok(Opened { text, pieces }) => take_text(shelf, &text, &pieces, sure, work).await,
        Err(BundleError::Packed) => Ok((Outcome::NotUnpacked, Vec::new())),
        Err(BundleError::NotZip) => refused(Say::ImportCutOff),
        Err(BundleError::Overlap) => refused(Say::ImportOverlap),
        Err(_) => refused(Say::ImportNotOurs),
    }
}

/// The same of a text that came otherwise than in a file.
///
/// # Errors
/// The open jobs that it would ease, where that is not `sure`; nothing was changed.
pub async fn take_text(
    shelf: &BrowserStore,
    text: &str,
    pieces: &[(String, &[u8])],
    sure: bool,
    work: Work,
) -> Taken {
    let refused = |say| Ok((Outcome::Refused(say), Vec::new()));
    let far = Far {
        waits: &work,
        at: None,
    };
    let incoming = match exchange::read_in_pieces(text, &far).await {
        Err(error) => return refused(error.say()),
        Ok(incoming) => incoming,
    };
    take_logs(shelf, incoming, pieces, sure, &far).await
}

/// The same of logs that were read.
async fn take_logs(
    shelf: &BrowserStore,
    incoming: Incoming,
    pieces: &[(String, &[u8])],
    sure: bool,
    far: &Far<'_, Work>,
) -> Taken {
    let refused = |say| Ok((Outcome::Refused(say), Vec::new()));
    // Where the journal is denied all of it would be gone with the page.
    let Ok(journal) = shelf.journal() else {
        return refused(Say::ImportNotHere);
    };
    // Held until the entries are there that name the pictures: until then those are orphans.
    let lock = Shared::wait().await;
    let plan = match plan(shelf, incoming, far).await {
        Ok(plan) => plan,
        Err(why) => return refused(why),
    };
    if !sure && !plan.eases.is_empty() {
        return Err(plan.eases);
    }
    let (bytes, put) = take_bytes(shelf, &plan.wanted, pieces).await;
    if let Err(problem) = journal.add(&plan.add).await {
        // Nothing names what came with it.
        drop(lock);
        drop_orphans(shelf, Alone::wait().await, &put).await;
        return refused(not_saved(&problem));
    }
    Ok(finish(shelf, plan, bytes).await)
}

/// The bytes go first, as they do when a picture is taken; what finds no room is left out. Gives
/// the digests of those that are kept too.
async fn take_bytes(
    shelf: &BrowserStore,
    wanted: &[Wanted],
    pieces: &[(String, &[u8])],
) -> (Came, OrderedSet<String>) {
    let held = bundle::held(wanted, pieces);
    let mut came = Came {
        wrong: held.changed,
        ..Came::default()
    };
    let mut put = OrderedSet::new();
    for (wanted, bytes) in held.there {
        let (mime, bytes) = (wanted.mime, bytes.to_vec());
        match slate::keep_bytes(shelf, Photo { mime, bytes }).await {
            Ok(sha256) => {
                came.saved += 1;
                put.insert(sha256);
            }
            Err(_) => came.no_room = true,
        }
    }
    (came, put)
}

/// What is left once the new entries are kept. Whatever fails now is said, since the file can no
/// longer be refused; brought in again it changes the rest.
async fn finish(shelf: &BrowserStore, plan: Plan, bytes: Came) -> (Outcome, Vec<Fresh>) {
    let (mut emptied, mut unfinished) = (0, false);
    for saved in &plan.replace {
        match shelf.replace(slice::from_ref(saved)).await {
            Ok(()) => emptied += usize::from(is_erased(saved)),
            Err(_) => unfinished = true,
        }
    }
    unfinished |= match shelf.journal() {
        Ok(journal) => journal.set_aside(&plan.aside).await.is_err(),
        Err(_) => !plan.aside.is_empty(),
    };
    let mut no_photo = Vec::new();
    for wanted in &plan.wanted {
        if shelf.photo(&wanted.sha256).await.is_none() {
            no_photo.push(wanted.step);
        }
    }
    let taken = Outcome::Taken {
        jobs: plan.jobs.into_iter().collect(),
        book: plan.book,
        entries: plan.entries,
        new: plan.add.len(),
        aside: plan.aside.len(),
        edited: plan.edited,
        emptied,
        logs: plan.logs,
        shop: plan.shop,
        no_photo,
        bytes,
        rescue: plan.rescue,
        unfinished,
        rest: None,
    };
    (taken, plan.fresh)
}

fn is_erased(saved: &SavedText) -> bool {
    decode(&saved.text).is_ok_and(|entry| entry.what.is_gone())
}

/// The same.
///
/// # Errors
/// What the storage refused.
pub async fn here(shelf: &BrowserStore, log: &str) -> Result<Vec<SavedText>, StoreError> {
    let read = slate::read(shelf, log).await?;
    let saved = |(id, text): (String, String)| SavedText {
        log: log.to_owned(),
        id,
        text,
    };
    Ok(read.texts.into_iter().map(saved).collect())
}
