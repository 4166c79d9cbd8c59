//! The service worker: registered, asked for a newer one, and let in when the technician agrees.
//!
//! Only the tab that agreed loads again, and only once; the others go on with what they have.

use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    RegistrationOptions, ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration,
    ServiceWorkerState, ServiceWorkerUpdateViaCache,
};

use super::event::Listener;
use super::js;

const WORKER: &str = "./sw.js";
/// What the waiting worker understands, as the plain text of the message.
const SKIP_WAITING: &str = "skip-waiting";

/// The watch over new versions; ends when dropped.
pub struct Update {
    watch: Rc<Watch>,
}

struct Watch {
    container: ServiceWorkerContainer,
    agreed: Cell<bool>,
    registration: RefCell<Option<ServiceWorkerRegistration>>,
    listeners: RefCell<Vec<Listener>>,
    arriving: RefCell<Option<Listener>>,
    waiting: Box<dyn Fn()>,
}

impl Update {
    /// Registers the worker and calls `waiting` whenever a new version is whole and waits; on a
    /// first visit `offline` hears that the app does not work without a signal yet, and then that
    /// it does.
    ///
    /// It looks for one now and when the page comes into view, never by timer. `None` where there
    /// are no service workers (no HTTPS, private window).
    pub fn watch(waiting: impl Fn() + 'static, offline: impl Fn(bool) + 'static) -> Option<Self> {
        let container = js::property(js::navigator()?.as_ref(), "serviceWorker")?;
        let watch = Rc::new(Watch {
            container: container.unchecked_into(),
            agreed: Cell::new(false),
            registration: RefCell::new(None),
            listeners: RefCell::new(Vec::new()),
            arriving: RefCell::new(None),
            waiting: Box::new(waiting),
        });
        let container = watch.container.clone();
        if container.controller().is_none() {
            offline(false);
            spawn_local(async move {
                if let Ok(ready) = container.ready()
                    && JsFuture::from(ready).await.is_ok()
                {
                    offline(true);
                }
            });
        }
        let registering = Rc::downgrade(&watch);
        spawn_local(async move {
            // Without a worker the app runs all the same, only not offline.
            let _ = register(registering).await;
        });
        Some(Self { watch })
    }

    /// Lets the waiting version in; this tab then loads again. False if none waits.
    ///
    /// Call it only when everything on the screen is kept.
    pub fn accept(&self) -> bool {
        let waiting = self
            .watch
            .registration
            .borrow()
            .as_ref()
            .and_then(ServiceWorkerRegistration::waiting);
        let Some(worker) = waiting else {
            return false;
        };
        self.watch.agreed.set(true);
        worker.post_message(&SKIP_WAITING.into()).is_ok()
    }
}

async fn register(watch: Weak<Watch>) -> Option<()> {
    let options = RegistrationOptions::new();
    options.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
    let promise = watch
        .upgrade()?
        .container
        .register_with_options(WORKER, &options);
    let registration: ServiceWorkerRegistration =
        JsFuture::from(promise).await.ok()?.unchecked_into();
    let watch = watch.upgrade()?;
    watch.registration.replace(Some(registration.clone()));
    let mut listeners = vec![
        on_arrival(&watch, &registration),
        on_change_of_hands(&watch),
    ];
    listeners.extend(on_view(&registration));
    watch.listeners.replace(listeners);
    if let Some(worker) = registration.installing() {
        follow(&watch, worker);
    }
    watch.tell_if_waiting(&registration);
    // Registering a known worker again does not look by itself.
    look(&registration);
    Some(())
}

fn on_arrival(watch: &Rc<Watch>, registration: &ServiceWorkerRegistration) -> Listener {
    let weak = Rc::downgrade(watch);
    let found = registration.clone();
    Listener::new(registration, "updatefound", move |_| {
        if let (Some(watch), Some(worker)) = (weak.upgrade(), found.installing()) {
            follow(&watch, worker);
        }
    })
}

/// Waits until a worker that is being installed is whole.
fn follow(watch: &Rc<Watch>, worker: ServiceWorker) {
    let weak = Rc::downgrade(watch);
    let followed = worker.clone();
    let listener = Listener::new(&worker, "statechange", move |_| {
        let Some(watch) = weak
            .upgrade()
            .filter(|_| followed.state() == ServiceWorkerState::Installed)
        else {
            return;
        };
        let registration = watch.registration.borrow().clone();
        if let Some(registration) = registration {
            watch.tell_if_waiting(&registration);
        }
    });
    watch.arriving.replace(Some(listener));
}

fn on_change_of_hands(watch: &Rc<Watch>) -> Listener {
    let weak = Rc::downgrade(watch);
    Listener::new(&watch.container, "controllerchange", move |_| {
        let agreed = weak
            .upgrade()
            .is_some_and(|watch| watch.agreed.replace(false));
        if let Some(window) = js::window().filter(|_| agreed) {
            let _ = window.location().reload();
        }
    })
}

fn on_view(registration: &ServiceWorkerRegistration) -> Option<Listener> {
    let registration = registration.clone();
    Listener::on_visibility(move |visible| {
        if visible {
            look(&registration);
        }
    })
}

/// Looks for a newer version; without a network that fails, the ordinary case in a driveway.
fn look(registration: &ServiceWorkerRegistration) {
    if let Ok(promise) = registration.update() {
        js::let_go(promise);
    }
}

impl Watch {
    /// The very first worker also waits for a moment, but there is nothing older to replace.
    fn tell_if_waiting(&self, registration: &ServiceWorkerRegistration) {
        if registration.waiting().is_some() && self.container.controller().is_some() {
            (self.waiting)();
        }
    }
}
