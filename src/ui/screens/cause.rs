//! Finding the cause: which ones are likely, which test says most next, and why. It is read and
//! filled in at a standstill; nothing here is asked of a driver.

use std::sync::Arc;

use crate::job::diagnosis::{corner_of, findings, step_of};
use crate::job::entry::Event;
use crate::report::cause::{corner_lines, drawing, drawing_alt, leads_to, standing_line, why};
use crate::text::{self, CauseWord, Lang, Say};
use crate::trade::answer::Answer;
use crate::trade::diagnosis::{Clue, Complaint, Findings, TABLE, Test, next_tests, rank};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{PlannedStep, Step};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::picks::toggle;
use crate::ui::parts::picture::drawn;
use crate::ui::parts::strip::{banners, of_record};
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;
use crate::units::Format;

/// So many tests are offered at once, and so many causes are explained.
const OFFERED: usize = 3;

/// What the parts of this screen share.
#[derive(Clone)]
struct Here {
    app: App,
    open: Arc<Open>,
    corner: Option<Corner>,
    lang: Lang,
    fmt: Format,
}

/// The causes of the open job's complaint.
pub fn cause(app: App) -> Node {
    let (lang, fmt) = app
        .settings
        .with_untracked(|settings| (settings.lang, settings.format()));
    let (again, all) = (RwSignal::new(false), RwSignal::new(false));
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let corner = open.sheet.corners().first().copied();
        let here = Here {
            app,
            open,
            corner,
            lang,
            fmt,
        };
        let found = findings(&here.open.sheet, corner).filter(|_| !again.get());
        let body = match found {
            Some(found) => here.ranking(&found, again, all),
            None => here.complaint(again),
        };
        let back = Route::Job(here.open.log.0.clone()).to_hash();
        view! {
            <main class="desk cause">
                <h1>{text::cause_word(lang, CauseWord::Title)}</h1>
                {banners(app)}
                {of_record(&here.open, lang)}
                <p class="hint">{text::cause_word(lang, CauseWord::Parked)}</p>
                {body}
                {link(Look::Primary, text::say(lang, Say::Resume), back)}
            </main>
        }
    })
    .into_node()
}

impl Here {
    fn word(&self, word: CauseWord) -> &'static str {
        text::cause_word(self.lang, word)
    }

    /// Which of the five complaints it is.
    fn complaint(&self, again: RwSignal<bool>) -> Node {
        let known = self.open.sheet.complaint_kind();
        let keys = Complaint::ALL.iter().map(|complaint| {
            let (app, complaint) = (self.app, *complaint);
            let press = move || {
                again.set(false);
                app.append(vec![Event::Complaint(complaint)]);
            };
            let label = text::complaint(self.lang, complaint);
            toggle(label, move || known == Some(complaint), press)
        });
        view! {
            <h2>{self.word(CauseWord::Asks)}</h2>
            <div class="picks"><div class="picks__keys picks__keys--long">{keys.collect_view()}</div></div>
        }
    }

    fn ranking(&self, found: &Findings, again: RwSignal<bool>, all: RwSignal<bool>) -> Node {
        let (lang, fmt) = (self.lang, self.fmt);
        let next = next_tests(&TABLE, found);
        let offered = next.iter().take(OFFERED);
        let offered =
            offered.map(|worth| self.test(found, worth.test, &leads_to(lang, fmt, worth)));
        let offered = offered.collect_view();
        let complaint = text::complaint(lang, found.complaint);
        let change = toggle(
            self.word(CauseWord::Change),
            || false,
            move || again.set(true),
        );
        view! {
            <p class="cause__complaint"><b>{complaint}</b></p>
            <p class="cause__standing" role="status">{standing_line(lang, fmt, found)}</p>
            {drawn(&drawing(lang, fmt, found), &drawing_alt(lang, fmt, found), "cause__bars")}
            <h2>{self.word(CauseWord::Next)}</h2>
            {next.is_empty().then(|| view! { <p>{self.word(CauseWord::NoTest)}</p> })}
            <ul class="cause__tests">{offered}</ul>
            {self.corners(found.complaint)}
            {self.why(found)}
            {self.others(found, all)}
            <p class="hint">{self.word(CauseWord::Common)}</p>
            {change}
        }
    }

    /// One test: what each answer would say, and the keys for it or the way to its step.
    fn test(&self, found: &Findings, test: Test, leads: &[String]) -> Node {
        let minutes = TABLE.whole_minutes(test);
        let leads = leads.iter().cloned().map(|line| view! { <li>{line}</li> });
        view! {
            <li class="cause__test">
                <p><b>{text::cause_test(self.lang, test)}</b> {" · "} {text::cause_minutes(self.lang, minutes)}</p>
                <ul class="cause__leads">{leads.collect_view()}</ul>
                {self.answers(found, test)}
            </li>
        }
    }

    fn answers(&self, found: &Findings, test: Test) -> Node {
        if let Some(step) = step_of(test) {
            let asked = |planned: &&PlannedStep| self.is_of(planned, step);
            return match self.open.steps.iter().find(asked) {
                Some(planned) => {
                    let hash = Route::Step(self.open.log.0.clone(), planned.key).to_hash();
                    link(Look::Plain, self.word(CauseWord::AtStep), hash)
                }
                None => {
                    let asked = text::cause_asked(self.lang, text::step(self.lang, step).name);
                    view! { <p class="hint">{asked}</p> }
                }
            };
        }
        let mut keys: Vec<Node> = test
            .clues()
            .map(|clue| {
                let label = match test.is_plain() {
                    true => text::answer(self.lang, Answer::Yes),
                    false => text::clue(self.lang, clue),
                };
                self.key(found, test, label, Some((clue, Answer::Yes)))
            })
            .collect();
        if let (true, Some(clue)) = (test.is_plain(), test.clues().next()) {
            let no = text::answer(self.lang, Answer::No);
            keys.push(self.key(found, test, no, Some((clue, Answer::No))));
        }
        keys.push(self.key(found, test, self.word(CauseWord::Took), None));
        let name = text::cause_test(self.lang, test);
        view! {
            <div class="picks" role="group" aria-label=name>
                <div class="picks__keys">{keys.into_iter().collect_view()}</div>
            </div>
        }
    }

    fn is_of(&self, planned: &PlannedStep, step: Step) -> bool {
        planned.key.step == step
            && (planned.key.corner.is_none() || planned.key.corner == self.corner)
    }

    /// A key that gives one answer to a test, and takes its others away.
    fn key(
        &self,
        found: &Findings,
        test: Test,
        label: &'static str,
        says: Option<(Clue, Answer)>,
    ) -> Node {
        let corner = corner_of(test, self.corner);
        let answer = move |clue| match says {
            Some((it, answer)) if it == clue => answer,
            _ => Answer::NotDone,
        };
        let on = match says {
            Some((clue, answer)) => found.answer(clue) == answer,
            None => !found.is_done(test),
        };
        let known: Vec<(Clue, Answer)> = test
            .clues()
            .map(|clue| (clue, found.answer(clue)))
            .collect();
        let app = self.app;
        let press = move || {
            let changed = known
                .iter()
                .filter(|(clue, before)| answer(*clue) != *before);
            let whats = changed.map(|(clue, _)| Event::Clue(corner, *clue, answer(*clue)));
            app.append(whats.collect());
        };
        toggle(label, move || on, press)
    }

    fn corners(&self, complaint: Complaint) -> Node {
        let Some((lines, open)) = corner_lines(self.lang, self.fmt, &self.open.sheet, complaint)
        else {
            return ().into_node();
        };
        let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
        view! {
            <h2>{self.word(CauseWord::Corner)}</h2>
            <ol class="cause__lines">{lines.collect_view()}</ol>
            {open.then(|| view! { <p>{self.word(CauseWord::CornerOpen)}</p> })}
            <p class="hint">{self.word(CauseWord::CornerSay)}</p>
        }
    }

    /// What speaks for the likeliest causes and against them.
    fn why(&self, found: &Findings) -> Node {
        let (lang, fmt) = (self.lang, self.fmt);
        let each = rank(&TABLE, found).into_iter().take(OFFERED).map(|one| {
            let mut lines = why(lang, fmt, found, one.cause);
            if lines.is_empty() {
                lines.push(self.word(CauseWord::NoClue).to_owned());
            }
            let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
            view! {
                <h3>{text::cause(lang, one.cause)}</h3>
                <ul class="cause__lines">{lines.collect_view()}</ul>
            }
        });
        view! {
            <details class="more">
                <summary class="key key--foot">{self.word(CauseWord::Why)}</summary>
                {each.collect_view()}
            </details>
        }
    }

    /// Every test that has entries of its own, done or not: an answer can be changed here. It stays
    /// open from one answer to the next.
    fn others(&self, found: &Findings, all: RwSignal<bool>) -> Node {
        let own = Test::ALL.iter().filter(|test| step_of(**test).is_none());
        let rows = own.map(|test| self.test(found, *test, &[]));
        let rows = all
            .get()
            .then(|| view! { <ul class="cause__tests">{rows.collect_view()}</ul> });
        let label = self.word(CauseWord::Others);
        view! {
            {toggle(label, move || all.get(), move || all.update(|all| *all = !*all))}
            {rows}
        }
    }
}
