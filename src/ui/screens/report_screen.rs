//! The report of a job as it is printed, and the ways it leaves the phone.

use crate::ui::react::spawn_local;

use crate::exchange::{self, bundle, paper};
use crate::job::entry::PersonField;
use crate::job::practice::is_practice;
use crate::platform::files::{self, Shared};
use crate::platform::page;
use crate::report::{Reader, Report};
use crate::slate::digest_of;
use crate::text::{self, Saved, Say};
use crate::ui::files::{bundled, exported};
use crate::ui::parts::bytes::Addresses;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::report::document;
use crate::ui::settings::Settings;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// The report of the open job, with the ways to take it along; those are not printed.
pub fn report(app: App) -> Node {
    let settings = app.settings.get_untracked();
    let (lang, format) = (settings.lang, settings.format());
    let addresses = Addresses::new();
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let reader = Reader {
            job: open.log.0.clone(),
            digest: digest_of(open.sheet.entries()),
            made_by: made_by(&settings),
            contact: settings.contact.clone(),
            warranty: settings.warranty.clone(),
            codes: None,
        };
        let reader = Reader {
            codes: codes(&reader, &open),
            ..reader
        };
        let report = Report::of(&open.sheet, lang, format, &reader);
        page::set_title(&text::report_file_stem(lang, &today(), plate(&open)));
        addresses.read(app, &open);
        view! {
            <main class="whole">
                <nav class="whole__ways" data-print="no">
                    {key(Look::Primary, text::say(lang, Say::Print), print)}
                    {key(Look::Plain, text::say(lang, Say::Export), move || export(app))}
                    {export_with_key(app, &open)}
                    {calendar_key(app, &open)}
                    {link(
                        Look::Plain,
                        text::say(lang, Say::Back),
                        Route::Job(open.log.0.clone()).to_hash(),
                    )}
                </nav>
                {banners(app)}
                {document(report, lang, addresses)}
            </main>
        }
    })
    .into_node()
}

/// The technician with the shop.
fn made_by(settings: &Settings) -> String {
    let parts = [settings.by.as_str(), settings.shop_name.as_str()];
    let known: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    known.join(", ")
}

/// The texts of the codes that bring the job to another phone.
fn codes(reader: &Reader, open: &Open) -> Option<Vec<String>> {
    let paper = paper::paper(&reader.job, &reader.digest, &open.sheet)?;
    Some(paper::symbols(&paper).unwrap_or_default())
}

fn print() {
    // A browser that cannot print says so itself; nothing is lost.
    let _ = files::print();
}

fn plate(open: &Open) -> &str {
    open.sheet.person(PersonField::Plate).unwrap_or_default()
}

/// Makes the file of the open job.
pub fn export(app: App) {
    let Some((log, stem)) = file_of(app) else {
        return;
    };
    save(app, vec![log], format!("{stem}.json"));
}

/// Makes the file of the open job with its pictures and voice notes, as one zip.
pub fn export_with(app: App) {
    let Some((log, stem)) = file_of(app) else {
        return;
    };
    save_with(app, vec![log], stem);
}

/// Makes the file of these logs with their pictures and voice notes, as one zip.
pub fn save_with(app: App, logs: Vec<String>, stem: String) {
    spawn_local(async move {
        let file = format!("{stem}.json");
        app.work.begin();
        let made = bundled(&app.shelf(), &logs, &file, app.work).await;
        app.work.end();
        if app.work.is_stopped() {
            return;
        }
        let made = made.ok();
        offer(app, format!("{stem}.zip"), bundle::MIME, made).await;
    });
}

/// The key for it, where the job names pictures or voice notes.
pub fn export_with_key(app: App, open: &Open) -> Option<Node> {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let any = open
        .sheet
        .counting()
        .any(|entry| entry.what.named().is_some());
    any.then(|| {
        let label = text::saved(lang, Saved::ExportWith);
        key(Look::Plain, label, move || export_with(app))
    })
}

/// The open job and the name of its file, without the ending.
fn file_of(app: App) -> Option<(String, String)> {
    let open = app.open.get_untracked()?;
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let stem = if is_practice(&open.sheet) {
        text::practice_file_stem
    } else {
        text::job_file_stem
    };
    Some((open.log.0.clone(), stem(lang, &today(), plate(&open))))
}

/// Makes the calendar file of what is due, where something is.
fn calendar_key(app: App, open: &Open) -> Option<Node> {
    let settings = app.settings.get_untracked();
    let lang = settings.lang;
    let made = exchange::calendar::calendar(lang, settings.format(), [&open.sheet])?;
    let name = format!("{}.ics", text::job_file_stem(lang, &today(), plate(open)));
    let save = move || {
        let (name, made) = (name.clone(), made.clone().into_bytes());
        spawn_local(offer(app, name, "text/calendar", Some(made)));
    };
    Some(key(Look::Plain, text::say(lang, Say::Calendar), save))
}

/// Makes one file of everything on this phone, with pictures or without.
pub fn export_all(app: App, photos: bool) {
    spawn_local(async move {
        let logs = app.shelf().logs().await;
        export_logs(app, logs, photos);
    });
}

/// Makes one file of these logs under the day's name, with pictures or without.
pub fn export_logs(app: App, logs: Vec<String>, photos: bool) {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let stem = text::job_file_stem(lang, &today(), "");
    if photos {
        save_with(app, logs, stem);
    } else {
        save(app, logs, format!("{stem}.json"));
    }
}

/// Makes the file of these logs.
pub fn save(app: App, logs: Vec<String>, name: String) {
    spawn_local(async move {
        app.work.begin();
        let made = exported(&app.shelf(), &logs, app.work).await;
        app.work.end();
        if app.work.is_stopped() {
            return;
        }
        let made = made.ok();
        let made = made.map(String::into_bytes);
        offer(app, name, "application/json", made).await;
    });
}

/// Hands a file to the phone's share sheet, or offers it as a download where there is none or it
/// does not take such a file; says what became of it.
pub async fn offer(app: App, name: String, mime: &'static str, made: Option<Vec<u8>>) {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let say = |say| Some(text::say(lang, say).to_owned());
    app.recorded.set(None);
    let Some(bytes) = made else {
        app.recorded.set(say(Say::ExportFailed));
        return;
    };
    let shared = match page::is_touched() {
        true => files::share(&name, mime, &bytes).await,
        false => Ok(Shared::NotPossible),
    };
    let recorded = match shared {
        Ok(Shared::Sent) => say(Say::ExportDone),
        Ok(Shared::Dismissed) => Some(text::saved(lang, Saved::NotSent).to_owned()),
        Ok(Shared::NotPossible) | Err(_) => match files::save_bytes(&name, mime, &bytes) {
            Ok(()) => Some(text::file_saved(lang, &name)),
            Err(_) => say(Say::ExportFailed),
        },
    };
    app.recorded.set(recorded);
}
