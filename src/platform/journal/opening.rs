//! Opening the journal, making its stores, and letting go when another tab needs it.

use std::rc::Rc;

use js_sys::{Array, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, IdbDatabase, IdbFactory, IdbObjectStoreParameters, IdbOpenDbRequest};

use super::{ASIDE, DRAFTS, ENTRIES, Journal, Open, PHOTOS, SUMMARIES};
use crate::platform::event::Listener;
use crate::platform::js;
use crate::platform::record::StoreError;
use crate::platform::transaction::{problem, request_problem};

const NAME: &str = "hubslate";
const VERSION: u32 = 2;

/// Why an open journal closed; it must be opened again before it can keep anything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Closed {
    /// Another tab runs a newer version.
    NewerVersion,
    /// It is being deleted, or the browser closed it: the storage was cleared or is gone.
    Lost,
}

impl Journal {
    /// Opens the journal and makes what is missing in it.
    ///
    /// `on_closed` is called when the journal closed under the page.
    ///
    /// # Errors
    /// [`StoreError::Denied`] where there is no IndexedDB for this page, `Newer` if a newer
    /// version made the database, `Blocked` if another tab does not let go, or what the browser
    /// refuses with.
    pub async fn open(on_closed: impl Fn(Closed) + 'static) -> Result<Self, StoreError> {
        let database = match opened_early().await {
            Some(database) => database,
            None => opened_now().await?,
        };
        let on_closed = Rc::new(on_closed);
        let closing = closing(&database, on_closed);
        Ok(Self {
            open: Rc::new(Open {
                database,
                _closing: closing,
            }),
        })
    }
}

/// The database that the page's first script opened, if it is one of this version. It may have been
/// closed since for another tab: then the script took it back.
async fn opened_early() -> Option<IdbDatabase> {
    let opening: Promise = js::taken("hubslateDatabase")?.dyn_into().ok()?;
    let database: IdbDatabase = JsFuture::from(opening).await.ok()?.dyn_into().ok()?;
    database.set_onversionchange(None);
    database.set_onclose(None);
    if database.version() == f64::from(VERSION) {
        return Some(database);
    }
    database.close();
    None
}

async fn opened_now() -> Result<IdbDatabase, StoreError> {
    let request = factory()?
        .open_with_u32(NAME, VERSION)
        .map_err(|error| problem(&error))?;
    let making = make_stores(&request);
    let outcome = opened(&request).await;
    request.set_onupgradeneeded(None);
    drop(making);
    outcome
}

fn factory() -> Result<IdbFactory, StoreError> {
    let window = js::window().ok_or(StoreError::Denied)?;
    window.indexed_db().ok().flatten().ok_or(StoreError::Denied)
}

/// Waits until the database is open, refused or blocked.
async fn opened(request: &IdbOpenDbRequest) -> Result<IdbDatabase, StoreError> {
    let promise = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
        request.set_onblocked(Some(&reject));
    });
    if JsFuture::from(promise).await.is_ok() {
        let database = request.result().map_err(|error| problem(&error))?;
        return database.dyn_into().map_err(|_| StoreError::Denied);
    }
    match request_problem(request) {
        // Asked too early: the request is still waiting for another tab.
        StoreError::Closed if request.error().is_err() => {
            close_when_opened(request);
            Err(StoreError::Blocked)
        }
        // So some browsers answer in a private window.
        StoreError::Closed => Err(StoreError::Denied),
        other => Err(other),
    }
}

/// A connection that opens after we gave up would itself block every other tab.
fn close_when_opened(request: &IdbOpenDbRequest) {
    let waiting = request.clone();
    let close = Closure::once_into_js(move |_: Event| {
        if let Ok(database) = waiting.result() {
            database.unchecked_ref::<IdbDatabase>().close();
        }
    });
    request.set_onsuccess(Some(close.unchecked_ref()));
}

/// Makes the stores when the browser asks for it; upgrades only ever add.
fn make_stores(request: &IdbOpenDbRequest) -> Closure<dyn FnMut(Event)> {
    let asked = request.clone();
    let make = Closure::<dyn FnMut(Event)>::new(move |_| {
        let Ok(database) = asked.result() else {
            return;
        };
        if add_stores(database.unchecked_ref()).is_err() {
            // Aborting leaves the old version whole and fails the request.
            let _ = asked.transaction().map(|transaction| transaction.abort());
        }
    });
    request.set_onupgradeneeded(Some(make.as_ref().unchecked_ref()));
    make
}

fn add_stores(database: &IdbDatabase) -> Result<(), JsValue> {
    let by_log_and_id = IdbObjectStoreParameters::new();
    by_log_and_id.set_key_path(&Array::of2(&"log".into(), &"id".into()));
    add_store(database, ENTRIES, &by_log_and_id)?;
    let by_log = IdbObjectStoreParameters::new();
    by_log.set_key_path(&"log".into());
    add_store(database, SUMMARIES, &by_log)?;
    add_store(database, PHOTOS, &IdbObjectStoreParameters::new())?;
    let numbered = IdbObjectStoreParameters::new();
    numbered.set_auto_increment(true);
    add_store(database, ASIDE, &numbered)?;
    add_store(database, DRAFTS, &IdbObjectStoreParameters::new())
}

fn add_store(
    database: &IdbDatabase,
    name: &str,
    how: &IdbObjectStoreParameters,
) -> Result<(), JsValue> {
    if !database.object_store_names().contains(name) {
        database.create_object_store_with_optional_parameters(name, how)?;
    }
    Ok(())
}

fn closing(database: &IdbDatabase, on_closed: Rc<impl Fn(Closed) + 'static>) -> [Listener; 2] {
    let lost = Rc::clone(&on_closed);
    let own = database.clone();
    [
        Listener::new(database, "versionchange", move |event| {
            own.close();
            let newer = js::property(&event, "newVersion").is_some();
            on_closed(if newer {
                Closed::NewerVersion
            } else {
                Closed::Lost
            });
        }),
        Listener::new(database, "close", move |_| lost(Closed::Lost)),
    ]
}
