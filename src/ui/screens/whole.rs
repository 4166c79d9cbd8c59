//! The report of a job as it is printed, and the ways it leaves the phone.

use std::collections::BTreeMap;
use std::sync::Arc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::exchange;
use crate::job::entry::{PersonField, What};
use crate::job::practice::is_practice;
use crate::platform::picture::ObjectUrl;
use crate::platform::{files, page};
use crate::report::{Reader, Report};
use crate::text::{self, Say};
use crate::ui::beside::digest_of;
use crate::ui::files::exported;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::screens::report::ReportView;
use crate::ui::state::{App, Open};

/// The report of the open job, with the ways to take it along; those are not printed.
pub fn report(app: App) -> AnyView {
    let settings = app.settings.get_untracked();
    let (lang, format) = (settings.lang, settings.format());
    let pictures = RwSignal::new(BTreeMap::<String, Picture>::new());
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_any();
        };
        let reader = Reader {
            job: open.log.0.clone(),
            digest: digest_of(open.sheet.entries()),
            made_by: settings.by.clone(),
            contact: String::new(),
        };
        let report = Report::of(&open.sheet, lang, format, &reader);
        page::set_title(&text::report_file_stem(lang, &today(), plate(&open)));
        read_pictures(app, &open, pictures);
        let photo = move |sha: String| {
            pictures.with(|all| all.get(&sha).map(|picture| picture.0.as_str().to_owned()))
        };
        view! {
            <main class="whole">
                <nav class="whole__ways" data-print="no">
                    {key(Look::Primary, text::say(lang, Say::Print), print)}
                    {key(Look::Plain, text::say(lang, Say::Export), move || export(app))}
                    {calendar_key(app, &open)}
                    {link(
                        Look::Plain,
                        text::say(lang, Say::Back),
                        Route::Job(open.log.0.clone()).to_hash(),
                    )}
                </nav>
                {banners(app)}
                <ReportView report lang photo=Callback::new(photo)/>
            </main>
        }
        .into_any()
    })
    .into_any()
}

/// A picture's address; it lives as long as the report is on the screen.
#[derive(Clone)]
struct Picture(Arc<ObjectUrl>);

fn print() {
    // A browser that cannot print says so itself; nothing is lost.
    let _ = files::print();
}

fn plate(open: &Open) -> &str {
    open.sheet.person(PersonField::Plate).unwrap_or_default()
}

fn read_pictures(app: App, open: &Open, pictures: RwSignal<BTreeMap<String, Picture>>) {
    let shas: Vec<String> = open
        .sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            What::Photo(photo) => Some(photo.sha256.clone()),
            _ => None,
        })
        .filter(|sha| pictures.with_untracked(|all| !all.contains_key(sha)))
        .collect();
    spawn_local(async move {
        for sha in shas {
            let Some(photo) = app.shelf().photo(&sha).await else {
                continue;
            };
            if let Ok(url) = ObjectUrl::new(&photo.bytes, &photo.mime) {
                pictures.try_update(|all| all.insert(sha, Picture(Arc::new(url))));
            }
        }
    });
}

/// Makes the file of the open job.
pub fn export(app: App) {
    let Some(open) = app.open.get_untracked() else {
        return;
    };
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let stem = if is_practice(&open.sheet) {
        text::practice_file_stem
    } else {
        text::job_file_stem
    };
    let name = format!("{}.json", stem(lang, &today(), plate(&open)));
    save(app, vec![open.log.0.clone()], name);
}

/// Makes the calendar file of what is due, where something is.
fn calendar_key(app: App, open: &Open) -> Option<AnyView> {
    let settings = app.settings.get_untracked();
    let lang = settings.lang;
    let made = exchange::calendar::calendar(lang, settings.format(), [&open.sheet])?;
    let name = format!("{}.ics", text::job_file_stem(lang, &today(), plate(open)));
    let save = move || offer(app, &name, "text/calendar", Some(&made));
    Some(key(Look::Plain, text::say(lang, Say::Calendar), save))
}

/// Makes one file of everything on this phone.
pub fn export_all(app: App) {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let name = format!("{}.json", text::job_file_stem(lang, &today(), ""));
    spawn_local(async move {
        let logs = app.shelf().logs().await;
        save(app, logs, name);
    });
}

/// Makes the file of these logs.
pub fn save(app: App, logs: Vec<String>, name: String) {
    spawn_local(async move {
        let made = exported(&app.shelf(), &logs).await.ok();
        offer(app, &name, "application/json", made.as_deref());
    });
}

/// Offers a file as a download and says what became of it.
pub fn offer(app: App, name: &str, mime: &str, made: Option<&str>) {
    let saved = made.is_some_and(|text| files::save_text(name, mime, text).is_ok());
    app.told.set(Some(if saved {
        Say::ExportDone
    } else {
        Say::ExportFailed
    }));
}
