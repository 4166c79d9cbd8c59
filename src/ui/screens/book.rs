//! The spec library of this phone: what is kept, for which vehicles, how old it is; confirmed by one
//! tap each, and taken along as a file of its own.

use crate::ui::react::spawn_local;

use crate::job::book::{PREFIX, offers, source_of};
use crate::job::entry::{Event, LogId, VehicleField};
use crate::report::specs::{source_line, spec_twin, spec_value};
use crate::sorted::Sorted;
use crate::text::{self, BookWord, Say};
use crate::trade::fastening::{Spec, SpecItem};
use crate::trade::vehicle::Fixing;
use crate::ui::files::exported_book;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::report_screen::offer;
use crate::ui::screens::specs::{aged, looked_up_today};
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// One family's book.
#[derive(Clone)]
struct Family {
    log: LogId,
    name: String,
    /// What is kept of each thing; more than one spec where two phones differ.
    saved: Vec<Vec<Spec>>,
}

/// The book as it was read.
type Books = RwSignal<Option<Vec<Family>>>;

/// The spec library.
pub fn book(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let books: Books = RwSignal::new(None);
    read(app, books);
    let word = move |word| text::book(lang, word);
    let any = move || books.with(|books| books.as_ref().is_some_and(|all| !all.is_empty()));
    let families = move || {
        let all = books.get().unwrap_or_default();
        all.iter().map(|one| family(app, books, one)).collect_view()
    };
    let empty = move || books.with(|books| books.as_ref().is_some_and(Vec::is_empty));
    view! {
        <main class="desk book">
            <h1>{word(BookWord::Title)}</h1>
            {banners(app)}
            <p class="hint">{move || word(if empty() { BookWord::Empty } else { BookWord::Say })}</p>
            {move || any().then(|| key(Look::Primary, word(BookWord::Export), move || export(app)))}
            {link(Look::Plain, word(BookWord::TakeIn), Route::Import.to_hash())}
            {families}
            {link(Look::Foot, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
}

/// Reads every family's book of this phone.
fn read(app: App, books: Books) {
    spawn_local(async move {
        let mut all = Vec::new();
        for log in app.shelf().logs().await {
            if !log.starts_with(PREFIX) {
                continue;
            }
            let sheet = app.read_log(&log).await;
            let saved = SpecItem::ALL.iter().map(|item| offers(&sheet, *item));
            let saved: Vec<Vec<Spec>> = saved.filter(|specs| !specs.is_empty()).collect();
            let name = sheet.vehicle(VehicleField::Family).unwrap_or(&log);
            if !saved.is_empty() {
                all.push(Family {
                    name: name.to_owned(),
                    log: LogId(log),
                    saved,
                });
            }
        }
        all.order_by(|one, two| one.name.cmp(&two.name));
        let _ = books.try_set(Some(all));
    });
}

fn family(app: App, books: Books, family: &Family) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let rows = family.saved.iter().map(|specs| {
        let differ = (specs.len() > 1).then(|| {
            view! { <li class="slip" role="alert">{text::book(lang, BookWord::Differ)}</li> }
        });
        let specs = specs.iter().map(|spec| row(app, books, &family.log, spec));
        view! { {differ} {specs.collect_view()} }
    });
    view! {
        <section class="book__family">
            <h2>{family.name.clone()}</h2>
            <ul class="book__cards">{rows.collect_view()}</ul>
        </section>
    }
}

fn row(app: App, books: Books, log: &LogId, spec: &Spec) -> Node {
    let settings = app.settings.get_untracked();
    let (lang, fmt) = (settings.lang, settings.format());
    let name = text::spec_item(lang, spec.item, Fixing::Nuts);
    let twin = spec_twin(lang, fmt, spec).map(|twin| text::also_value(lang, &twin));
    let source = source_of(spec).map(|source| source_line(lang, source));
    let is_fresh = source_of(spec).is_some_and(|it| it.looked_up.to_string() == today());
    let state = if is_fresh {
        view! { <p><b>{text::book(lang, BookWord::Today)}</b></p> }
    } else {
        let (log, fresh) = (log.clone(), looked_up_today(spec, &settings.by));
        let confirm = key(
            Look::Plain,
            text::say(lang, Say::LookedUpAgain),
            move || {
                keep(app, books, log.clone(), fresh.clone());
            },
        );
        view! { <p><b>{aged(lang, spec)}</b></p> {confirm} }
    };
    view! {
        <li class="book__card" aria-label=name>
            <p class="book__value">
                <span>{name}</span>
                <b>{spec_value(lang, fmt, spec)}</b>
                <small>{twin}</small>
            </p>
            <p class="hint">{source}</p>
            {state}
        </li>
    }
}

/// Keeps a spec that was looked up again, and reads the book again.
fn keep(app: App, books: Books, log: LogId, spec: Option<Spec>) {
    let Some(spec) = spec else { return };
    spawn_local(async move {
        app.append_to(log, vec![Event::Spec(spec)]).await;
        read(app, books);
    });
}

/// Offers the book as a file, and says what became of it.
fn export(app: App) {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let name = format!("{}.json", text::book_file_stem(lang, &today()));
    spawn_local(async move {
        let made = exported_book(&app.shelf()).await.ok();
        offer(app, name, "application/json", made.map(String::into_bytes)).await;
    });
}
