//! Pictures and voice notes on the screen: their addresses, and the way to the one just kept.

use std::sync::Arc;

use crate::ui::react::spawn_local;

use crate::job::entry::Event;
use crate::map::OrderedMap;
use crate::platform::photo::ObjectUrl;
use crate::text::{self, Saved};
use crate::ui::at::StepContext;
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// Addresses of what a job names, as far as this phone has it; they live as long as their screen.
#[derive(Clone, Copy)]
pub struct Addresses(RwSignal<OrderedMap<String, Option<Address>>>);

#[derive(Clone)]
struct Address(Arc<ObjectUrl>);

impl Addresses {
    /// None yet.
    pub fn new() -> Self {
        Self(RwSignal::default())
    }

    /// Reads what the job names and is not known yet.
    pub fn read(self, app: App, open: &Open) {
        let named = open.sheet.counting().filter_map(|entry| entry.what.named());
        let shas = named.map(|named| named.sha256.to_owned());
        self.read_these(app, shas.collect());
    }

    /// Reads these, by their digests.
    pub fn read_these(self, app: App, shas: Vec<String>) {
        spawn_local(async move {
            for sha in shas {
                if self.0.try_with_untracked(|all| all.contains_key(&sha)) != Some(false) {
                    continue;
                }
                let saved = app.shelf().photo(&sha).await;
                let url = saved.and_then(|saved| ObjectUrl::new(&saved.bytes, &saved.mime).ok());
                let address = url.map(|url| Address(Arc::new(url)));
                self.0.try_update(|all| all.insert(sha, address));
            }
        });
    }

    /// The address of one of them; nothing until it was read, or if it is not on this phone.
    pub fn of(self, sha: &str) -> Option<String> {
        let found = |all: &OrderedMap<String, Option<Address>>| {
            let address = all.get(sha)?.as_ref()?;
            Some(address.0.as_str().to_owned())
        };
        self.0.with(found)
    }

    /// Whether it was looked for and is not on this phone.
    pub fn is_missing(self, sha: &str) -> bool {
        self.0.with(|all| matches!(all.get(sha), Some(None)))
    }
}

/// The way to the picture or the voice note that the last tap kept: a look at it, a caption,
/// another one instead. It goes with the next tap.
pub fn latest(at: &StepContext) -> Option<Node> {
    let app = at.app;
    let sha = app.latest.get_untracked()?;
    let named = |what: &Event| what.named().is_some_and(|named| named.sha256 == sha);
    let entry = at.sheet().counting().find(|entry| named(&entry.what))?;
    let is_photo = matches!(entry.what, Event::Photo(_));
    let words = if is_photo {
        Saved::Shot
    } else {
        Saved::VoiceSaved
    };
    let addresses = Addresses::new();
    if is_photo {
        addresses.read_these(app, vec![sha.clone()]);
    }
    let image = move || {
        addresses
            .of(&sha)
            .map(|url| view! { <img src=url alt=""/> })
    };
    let way = Route::Notes(at.open.log.0.clone()).to_hash();
    Some(view! {
        <a class="key latest" href=way>
            {image} <span>{text::saved(at.lang, words)}</span>
        </a>
    })
}
