//! The pictures that no entry names are dropped, and never while a file comes in: its pictures are
//! written before its entries.

use std::slice;

use wasm_bindgen_futures::spawn_local;

use crate::map::OrderedSet;
use crate::platform::clock;
use crate::platform::lock::Alone;
use crate::ui::shelf::BrowserStore;
use crate::ui::state::App;

/// Drops the pictures that no entry names, once the start is long over. They are looked for twice:
/// another tab may be between the bytes of a picture and its entry.
pub fn sweep(app: App) {
    const CALM_MS: i32 = 10_000;
    clock::later(CALM_MS, move || {
        spawn_local(async move {
            let Some((alone, first)) = orphans(&app.shelf(), Alone::now().await).await else {
                return;
            };
            // Files may come in until the second look.
            drop(alone);
            if !first.is_empty() {
                clock::later(CALM_MS, move || {
                    spawn_local(async move {
                        drop_orphans(&app.shelf(), Alone::now().await, &first).await;
                    });
                });
            }
        });
    });
}

/// Drops those of these pictures that no entry names; none without the lock that keeps files out in
/// every tab. What is left is found at the next start.
pub async fn drop_orphans(shelf: &BrowserStore, alone: Option<Alone>, of: &OrderedSet<String>) {
    let Some((alone, found)) = orphans(shelf, alone).await else {
        return;
    };
    for sha in found.iter().filter(|sha| of.contains(*sha)) {
        if !alone.holds() {
            return;
        }
        shelf.drop_photos(slice::from_ref(sha)).await;
    }
}

/// The pictures that no entry names, with the lock that keeps files out; nothing while a file comes
/// in.
async fn orphans(
    shelf: &BrowserStore,
    alone: Option<Alone>,
) -> Option<(Alone, OrderedSet<String>)> {
    let alone = alone?;
    let found = shelf.orphans().await;
    alone.holds().then(|| (alone, OrderedSet::from_iter(found)))
}
