//! Where the data lives, how much room there is, and how to get it out.

use crate::ui::react::spawn_local;

use crate::platform::keep;
use crate::text::{self, Desk, Saved, Say};
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::report_screen;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// Facts about the storage, the key that asks for more, export and version.
pub fn storage(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let say = move |say| text::say(lang, say);
    let room = RwSignal::new(None::<String>);
    let promised = RwSignal::new(None::<bool>);
    spawn_local(async move {
        let recorded = match keep::estimate().await {
            Some(it) => {
                let mb = |mb: u64| format!("{mb} MB");
                let used = text::storage_used(lang, &mb(it.used_mb()), &mb(it.quota_mb()));
                format!("{used} {}", text::room_left(lang, &mb(it.left_mb())))
            }
            None => text::desk(lang, Desk::StorageUnknown).to_owned(),
        };
        let _ = room.try_set(Some(recorded));
        let _ = promised.try_set(Some(keep::persisted().await));
    });
    let ask = move || {
        spawn_local(async move {
            let _ = promised.try_set(Some(keep::persist().await));
        });
    };
    let promise = move || {
        promised.get().map(|promised| {
            say(if promised {
                Say::StoragePromised
            } else {
                Say::StorageNotPromised
            })
        })
    };
    let all_with = text::saved(lang, Saved::ExportAllWith);
    view! {
        <p>{say(Say::StorageWhere)}</p>
        <p>{move || room.get()}</p>
        <p aria-live="polite">{promise}</p>
        {key(Look::Plain, say(Say::KeepStorage), ask)}
        {key(Look::Plain, say(Say::ExportAll), move || report_screen::export_all(app, false))}
        {key(Look::Plain, all_with, move || report_screen::export_all(app, true))}
        <p class="hint">{say(Say::VersionLabel)} {" "} {env!("CARGO_PKG_VERSION")}</p>
    }
}
