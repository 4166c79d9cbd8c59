//! A job from paper: the code is photographed where the browser reads codes, or its text is pasted.

use crate::ui::react::spawn_local;

use crate::exchange::paper::{self, Gathered, PaperError, Part};
use crate::exchange::{self, LogKind};
use crate::job::entry::{Event, LogId, PersonField};
use crate::job::flow::CONFIRMATIONS_LOG;
use crate::platform::barcode;
use crate::report;
use crate::text::{self, Lang, Paper};
use crate::ui::files::{Outcome, take_text};
use crate::ui::parts::camera::lens;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// What became of a code: a sentence, and the job with what is known of it.
#[derive(Clone, Default, PartialEq)]
struct Recorded {
    sentence: String,
    rows: Vec<(String, String)>,
    job: Option<String>,
}

/// The way in for a paper; several codes are gathered one after the other.
#[derive(Clone, Copy)]
struct Desk {
    app: App,
    lang: Lang,
    parts: RwSignal<Vec<Part>>,
    typed: RwSignal<String>,
    recorded: RwSignal<Recorded>,
}

/// The part of the import screen that takes paper.
pub fn from_paper(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let desk = Desk {
        app,
        lang,
        parts: RwSignal::new(Vec::new()),
        typed: RwSignal::new(String::new()),
        recorded: RwSignal::new(Recorded::default()),
    };
    let say = |say| text::paper(lang, say);
    let read = move || desk.take(vec![desk.typed.get_untracked()]);
    view! {
        <section class="from-paper">
            <h2>{say(Paper::Title)}</h2>
            <p>{say(Paper::Say)}</p>
            {barcode::is_here().then(|| camera(desk))}
            <label class="field">
                <span>{say(Paper::Paste)}</span>
                <textarea rows="3" autocomplete="off" bind:value={desk.typed}></textarea>
            </label>
            {key(Look::Plain, say(Paper::Read), read)}
            <div role="status">{move || shown(&desk.recorded.get(), lang)}</div>
        </section>
    }
}

fn camera(desk: Desk) -> Node {
    let label = text::paper(desk.lang, Paper::TakePhoto);
    lens("key key--file", label, move |file| {
        spawn_local(async move { desk.take(barcode::texts(&file).await) });
    })
}

fn shown(recorded: &Recorded, lang: Lang) -> Node {
    let rows = recorded.rows.iter().cloned().map(|(label, value)| {
        view! { <div class="found__row"><dt>{label}</dt><dd><b>{value}</b></dd></div> }
    });
    let open = recorded.job.clone().map(|job| {
        let say = text::say(lang, text::Say::OpenJob);
        link(Look::Plain, say, Route::Where(job).to_hash())
    });
    view! {
        <p>{recorded.sentence.clone()}</p>
        <dl class="found__rows">{rows.collect_view()}</dl>
        {open}
    }
}

const fn refused(error: PaperError) -> Paper<'static> {
    match error {
        PaperError::NotOurs => Paper::NotOurs,
        PaperError::Newer => Paper::Newer,
        PaperError::Damaged => Paper::Damaged,
    }
}

impl Desk {
    fn say(self, say: Paper) {
        self.recorded.set(Recorded {
            sentence: text::paper(self.lang, say),
            ..Recorded::default()
        });
    }

    /// Takes what was read of one or more codes.
    fn take(self, texts: Vec<String>) {
        if texts.is_empty() {
            self.say(Paper::NotFound);
            return;
        }
        let mut parts = self.parts.get_untracked();
        for text in &texts {
            match paper::part(text) {
                Ok(part) => parts.push(part),
                Err(error) => return self.say(refused(error)),
            }
        }
        match paper::gather(&parts) {
            Err(error) => {
                self.parts.set(Vec::new());
                self.say(refused(error));
            }
            Ok(Gathered::Missing(nth, of)) => {
                self.parts.set(parts);
                self.typed.set(String::new());
                self.say(Paper::Next { nth, of });
            }
            Ok(Gathered::Confirmation(entry)) => {
                self.parts.set(Vec::new());
                self.typed.set(String::new());
                spawn_local(async move { self.keep_confirmation(entry).await });
            }
            Ok(Gathered::Whole(paper)) => {
                self.parts.set(Vec::new());
                self.typed.set(String::new());
                spawn_local(async move { self.keep(*paper).await });
            }
        }
    }

    /// Takes a confirmation as if it had come in a file.
    async fn keep_confirmation(self, entry: String) {
        let log = (
            LogKind::Confirmation,
            LogId(CONFIRMATIONS_LOG.to_owned()),
            vec![entry],
        );
        self.app.work.begin();
        let said = match exchange::export(&[log]) {
            Ok(file) => {
                match take_text(&self.app.shelf(), &file, &[], false, self.app.work).await {
                    Ok((Outcome::Taken { new: 0, .. }, _)) => Paper::ConfirmationHere,
                    Ok((Outcome::Taken { .. }, _)) => Paper::ConfirmationTaken,
                    _ => Paper::SaveError,
                }
            }
            Err(_) => Paper::SaveError,
        };
        self.app.work.end();
        self.app.read_flow().await;
        self.app.let_go_old().await;
        self.say(said);
    }

    /// Keeps a paper as the first entries of its job, unless this phone knows the job.
    async fn keep(self, paper: paper::Paper) {
        let settings = self.app.settings.get_untracked();
        let job = paper.slip.job.clone();
        let rows = report::paper::lines(self.lang, settings.format(), &paper.slip);
        let known = self.app.shelf().logs().await.contains(&job);
        let said = if known {
            Paper::Here
        } else {
            let plate = paper
                .plate
                .map(|plate| Event::Person(PersonField::Plate, plate));
            let whats = [Event::FromPaper(paper.slip)].into_iter().chain(plate);
            let saved = self
                .app
                .append_to(LogId(job.clone()), whats.collect())
                .await;
            if !saved {
                return self.say(Paper::SaveError);
            }
            self.app.lines(std::slice::from_ref(&job), Vec::new()).await;
            self.app.read_list();
            Paper::Taken
        };
        self.recorded.set(Recorded {
            sentence: text::paper(self.lang, said),
            rows,
            job: Some(job),
        });
    }
}
