//! The report of a job as it is printed, and the ways it leaves the phone.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::job::entry::PersonField;
use crate::platform::files;
use crate::text::{self, Say};
use crate::ui::files::exported;
use crate::ui::parts::today;
use crate::ui::state::App;

/// The report of the open job.
pub fn report(_app: App) -> AnyView {
    ().into_any()
}

/// Makes the file of the open job.
pub fn export(app: App) {
    let Some(open) = app.open.get_untracked() else {
        return;
    };
    let plate = open
        .sheet
        .person(PersonField::Plate)
        .unwrap_or_default()
        .to_owned();
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let name = format!("{}.json", text::job_file_stem(lang, &today(), &plate));
    save(app, vec![open.log.0.clone()], name);
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

fn save(app: App, logs: Vec<String>, name: String) {
    spawn_local(async move {
        let made = exported(&app.shelf(), &logs).await;
        let saved =
            made.is_ok_and(|file| files::save_text(&name, "application/json", &file).is_ok());
        app.told.set(Some(if saved {
            Say::ExportDone
        } else {
            Say::ExportFailed
        }));
    });
}
