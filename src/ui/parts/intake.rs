//! Files that come in, dropped or chosen: how far they are, and what became of each.

use crate::ui::react::spawn_local;
use web_sys::DragEvent;
use web_sys::{File, FileList};

use crate::exchange::Rescue;
use crate::job::flow::{CONFIRMATIONS_LOG, SHOP_LOG};
use crate::platform::clock;
use crate::text::{self, BookWord, Lang, Ledger, Saved, Say};
use crate::ui::files::{Came, Eases, Outcome, take};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;
use crate::ui::screens::flow;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// So many files are told one by one; those that were refused are told first.
const MOST_ROWS: usize = 200;
/// So many texts that are set aside are named one by one.
const MOST_NAMED: usize = 20;
/// The screen is drawn again at most so often while files come in.
const CALM_MS: i64 = 200;

/// How far the files are.
#[derive(Clone, Copy, Default, PartialEq)]
struct Progress {
    done: usize,
    all: usize,
}

#[derive(Clone, Copy)]
struct Intake {
    app: App,
    lang: Lang,
    progress: RwSignal<Progress>,
    outcomes: RwSignal<Vec<(String, Outcome)>>,
    over: RwSignal<bool>,
}

/// A place to drop files on or to choose them from, with what became of them under it.
pub fn intake(app: App, label: &'static str) -> Node {
    let intake = Intake {
        app,
        lang: app.settings.with_untracked(|settings| settings.lang),
        progress: RwSignal::new(Progress::default()),
        outcomes: RwSignal::new(Vec::new()),
        over: RwSignal::new(false),
    };
    view! {
        <section class="intake">
            {place(intake, label)}
            {move || progress(intake)}
            <ul class="import__outcomes" role="status">{move || rows(intake)}</ul>
            {move || intake.outcomes.with(|all| flow::arrived(app, all))}
        </section>
    }
}

/// Where files are dropped; a tap opens the picker.
fn place(intake: Intake, label: &'static str) -> Node {
    let input = NodeRef::<crate::ui::react::html::Input>::new();
    let chosen = move |_| {
        if let Some(files) = input.get_untracked().and_then(|input| input.files()) {
            take_each(intake, &files);
        }
    };
    let hover = move |event: DragEvent| {
        event.prevent_default();
        intake.over.set(true);
    };
    let dropped = move |event: DragEvent| {
        event.prevent_default();
        intake.over.set(false);
        if let Some(files) = event.data_transfer().and_then(|data| data.files()) {
            take_each(intake, &files);
        }
    };
    view! {
        <div
            class="intake__place"
            data-over={move || intake.over.get().to_string()}
            on:dragover=hover
            on:dragleave={move |_| intake.over.set(false)}
            on:drop=dropped
        >
            <p class="intake__hint">{text::ledger(intake.lang, Ledger::DropHere)}</p>
            <label class="key key--primary key--file">
                {label}
                <input
                    node_ref=input
                    type="file"
                    accept=".json,.zip,application/json,application/zip"
                    multiple
                    class="key__file"
                    on:change=chosen
                />
            </label>
        </div>
    }
}

fn take_each(intake: Intake, files: &FileList) {
    let files = (0..files.length()).filter_map(|place| files.get(place));
    take_all(intake, files.collect(), false);
}

/// Takes files one after the other; those that ease an open job only where somebody is `sure`.
fn take_all(intake: Intake, files: Vec<File>, sure: bool) {
    let Intake { app, outcomes, .. } = intake;
    let all = intake.progress.get_untracked().all + files.len();
    intake.progress.update(|progress| progress.all = all);
    app.work.begin();
    spawn_local(async move {
        let (mut recorded, mut done, mut drawn) = (Vec::new(), 0, 0);
        let show = move |recorded: &mut Vec<(String, Outcome)>, done: &mut usize| {
            // The screen may be gone; the files are taken all the same.
            let _ = outcomes.try_update(|all| all.append(recorded));
            let _ = intake
                .progress
                .try_update(|progress| progress.done += std::mem::take(done));
        };
        for file in files {
            let (outcome, fresh) = take(&app.shelf(), &file, sure, app.work).await;
            if let Outcome::Taken {
                jobs, shop, logs, ..
            } = &outcome
            {
                app.lines(jobs, fresh).await;
                if let Some(shop) = shop {
                    app.offer_shop(shop);
                }
                let flows = |log: &String| [SHOP_LOG, CONFIRMATIONS_LOG].contains(&log.as_str());
                if logs.iter().any(flows) {
                    app.read_flow().await;
                }
            }
            recorded.push((file.name(), outcome));
            done += 1;
            let now = clock::now().utc_ms;
            if CALM_MS <= now - drawn {
                drawn = now;
                show(&mut recorded, &mut done);
            }
        }
        app.work.end();
        show(&mut recorded, &mut done);
        app.read_list_now().await;
        app.let_go_old().await;
        app.look_at_room();
        app.level().await;
    });
}

const fn is_refused(outcome: &Outcome) -> bool {
    matches!(outcome, Outcome::Refused(_) | Outcome::NotUnpacked)
}

/// A bar, how many are read, and what became of them.
fn progress(intake: Intake) -> Option<Node> {
    let lang = intake.lang;
    let Progress { done, all } = intake.progress.get();
    let count = |is: fn(&Outcome) -> bool| {
        intake
            .outcomes
            .with(|outcomes| outcomes.iter().filter(|(_, it)| is(it)).count())
    };
    (all > 1).then(|| {
        let refused = count(is_refused);
        let nothing = count(|it| matches!(it, Outcome::Taken { new: 0, .. }));
        let asks = count(|it| matches!(it, Outcome::Eases(..)));
        let came = done.saturating_sub(refused + nothing + asks);
        view! {
            <div class="intake__progress">
                <progress max={all.to_string()} value={done.to_string()}>
                    {text::files_of(lang, done, all)}
                </progress>
                <b>{text::files_of(lang, done, all)}</b>
                <p>{text::files_sum(lang, came, nothing, refused)}</p>
            </div>
        }
    })
}

fn rows(intake: Intake) -> Node {
    let lang = intake.lang;
    intake.outcomes.with(|outcomes| {
        let refused = |it: &&(String, Outcome)| is_refused(&it.1);
        let many = outcomes.len() > MOST_ROWS;
        let first = outcomes.iter().filter(|it| many && refused(it));
        let rest = outcomes.iter().filter(|it| !(many && refused(it)));
        let shown = first.chain(rest).take(MOST_ROWS);
        let shown = shown.map(|one| row(intake, one)).collect_view();
        let more = many.then(|| {
            let more = text::more_rows(lang, outcomes.len() - MOST_ROWS);
            view! { <li class="import__outcome">{more}</li> }
        });
        view! { {shown} {more} }
    })
}

/// What is to be said of the pictures and voice notes that came with a file.
fn came(bytes: &Came, lang: Lang) -> Vec<String> {
    let mut recorded = Vec::new();
    if bytes.saved > 0 {
        recorded.push(text::photos_taken(lang, bytes.saved));
    }
    if !bytes.wrong.is_empty() {
        recorded.push(text::photo_wrong(lang, &bytes.wrong.join(", ")));
    }
    if bytes.no_room {
        recorded.push(text::saved(lang, Saved::NoRoomImport).to_owned());
    }
    recorded
}

/// What became of a file, in a word or two.
fn word(lang: Lang, outcome: &Outcome) -> &'static str {
    let word = match outcome {
        Outcome::Refused(Say::ImportCalledOff) => Ledger::Stopped,
        Outcome::Refused(_) | Outcome::NotUnpacked => Ledger::Refused,
        Outcome::Eases(..) => Ledger::Asks,
        Outcome::Taken { new: 0, .. } => Ledger::NothingNew,
        Outcome::Taken { .. } => Ledger::CameIn,
    };
    text::ledger(lang, word)
}

fn row(intake: Intake, (name, outcome): &(String, Outcome)) -> Node {
    let lang = intake.lang;
    let (sentences, jobs) = match outcome {
        Outcome::Refused(say) => (vec![text::say(lang, *say).to_owned()], Vec::new()),
        Outcome::NotUnpacked => {
            let words = text::saved(lang, Saved::NotUnpacked).to_owned();
            (vec![words], Vec::new())
        }
        Outcome::Eases(_, eases) => {
            let mut recorded = vec![text::say(lang, Say::ImportEases).to_owned()];
            let lines = |it: &Eases| text::eased(lang, &it.job, &it.eased);
            recorded.extend(eases.iter().flat_map(lines));
            (recorded, Vec::new())
        }
        Outcome::Taken { jobs, .. } => (taken(lang, outcome), jobs.clone()),
    };
    let anyway = match outcome {
        Outcome::Eases(file, _) => {
            let file = file.clone();
            let sure = move || take_all(intake, vec![file.clone()], true);
            Some(key(Look::Plain, text::say(lang, Say::ImportAnyway), sure))
        }
        _ => None,
    };
    let links = jobs.into_iter().map(|job| {
        link(
            Look::Plain,
            text::say(lang, Say::OpenJob),
            Route::Where(job).to_hash(),
        )
    });
    let links = links.collect_view();
    let book = matches!(outcome, Outcome::Taken { book, .. } if book.specs > 0);
    let book = book.then(|| {
        let label = text::book(lang, BookWord::Title);
        link(Look::Plain, label, Route::Book.to_hash())
    });
    view! {
        <li class="import__outcome">
            <b>{name.clone()} {": "} {word(lang, outcome)}</b>
            {sentences.into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()}
            {anyway} {links} {book}
        </li>
    }
}

/// What a rescue file lacks, and the first of what is set aside, by its name.
fn rescued(rescue: &Rescue, lang: Lang) -> Vec<String> {
    let mut recorded = vec![text::say(lang, Say::ImportRescue).to_owned()];
    recorded.extend(rescue.say(lang).take(MOST_NAMED));
    let all = rescue.problems.len() + rescue.aside.len();
    if let Some(more) = all.checked_sub(MOST_NAMED).filter(|more| *more > 0) {
        recorded.push(text::more_rows(lang, more));
    }
    recorded
}

fn taken(lang: Lang, outcome: &Outcome) -> Vec<String> {
    let Outcome::Taken {
        entries,
        new,
        aside,
        edited,
        no_photo,
        book,
        bytes,
        emptied,
        rescue,
        unfinished,
        ..
    } = outcome
    else {
        return Vec::new();
    };
    let mut sentences = vec![text::imported(lang, *entries, *new)];
    if *unfinished {
        sentences.push(text::say(lang, Say::ImportUnfinished).to_owned());
    }
    sentences.extend(rescue.iter().flat_map(|rescue| rescued(rescue, lang)));
    if book.specs > 0 {
        sentences.push(text::book_came(lang, *book));
    }
    if *new == 0 && !unfinished {
        sentences.push(text::say(lang, Say::ImportNoNews).to_owned());
    }
    if *aside > 0 {
        sentences.push(text::set_aside(lang, *aside));
    }
    if *edited > 0 {
        sentences.push(text::say(lang, Say::ProblemEdited).to_owned());
    }
    if *emptied > 0 {
        sentences.push(text::emptied(lang, *emptied));
    }
    sentences.extend(came(bytes, lang));
    if !no_photo.is_empty() {
        let steps = no_photo.iter().map(|key| text::step(lang, key.step).name);
        let steps: Vec<&str> = steps.collect();
        let partial = rescue
            .as_ref()
            .is_some_and(|rescue| !rescue.problems.is_empty());
        let why = match partial || *unfinished || *aside > 0 {
            true => Say::ImportPhotosGone,
            false => Say::ImportPhotosMissing,
        };
        let why = text::say(lang, why);
        sentences.push(format!("{why} ({})", steps.join(" · ")));
    }
    sentences
}
