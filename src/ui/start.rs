//! The start: crash panel first, then storage, then the screens.

use std::future::poll_fn;
use std::pin::pin;
use std::task::Poll;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;

use crate::platform::journal::Closed;
use crate::platform::wake_lock::WakeLock;
use crate::platform::whole::keep_whole;
use crate::platform::{clock, crash_panel, locale, page, tone};
use crate::ui::route::Route;
use crate::ui::screens;
use crate::ui::settings::Settings;
use crate::ui::shelf::BrowserStore;
use crate::ui::state::{App, Shut};
use crate::ui::sweep::sweep;

/// Starts the app in the page.
pub fn start() {
    crash_panel::install();
    spawn_local(async {
        let closed = ArcRwSignal::new(None);
        let closing = closed.clone();
        let language = locale::language();
        let (shelf, mark) = beside(
            BrowserStore::open(move |why| closing.set(Some(why))),
            || locale::decimal_mark(&language),
        )
        .await;
        let settings = Settings::read(&shelf, &language, mark);
        page::set_language("en");
        page::set_theme(settings.theme.code());
        mount(shelf, settings, closed);
        page::set_ready();
    });
}

/// Waits for `slow`, and does `work` as soon as that has been begun.
async fn beside<S, W>(slow: impl Future<Output = S>, work: impl FnOnce() -> W) -> (S, W) {
    let mut slow = pin!(slow);
    let early = poll_fn(|context| Poll::Ready(slow.as_mut().poll(context))).await;
    let done = work();
    match early {
        Poll::Ready(outcome) => (outcome, done),
        Poll::Pending => (slow.await, done),
    }
}

fn mount(shelf: BrowserStore, settings: Settings, closed: ArcRwSignal<Option<Closed>>) {
    let Some(root) = page::element(crash_panel::APP) else {
        return;
    };
    // What stood there while the app was loading.
    root.set_text_content(None);
    let below = root.clone();
    let handle = leptos::mount::mount_to_renderer(root.unchecked_ref(), move || {
        let app = App::new(shelf, settings, closed);
        provide_context(app);
        app.listen();
        app.read_list();
        follow_route(app);
        stay_awake(app);
        sweep(app);
        keep_level(app);
        app.look_at_room();
        flow(app);
        StoredValue::new_local(keep_whole(&below));
        screens::root()
    });
    handle.forget();
}

/// Writes back what the browser threw away under the open app; once the start is long over, brings
/// the backup journal level with what files brought.
fn keep_level(app: App) {
    const CALM_MS: i32 = 5_000;
    Effect::new(move |_| {
        if app.closed.get() == Some(Closed::Lost) {
            app.write_back();
        }
    });
    clock::later(CALM_MS, move || spawn_local(app.level()));
}

/// Reads the shop's settings and the confirmations; once the start is long over, what the shop wants
/// gone from a van leaves it.
fn flow(app: App) {
    const CALM_MS: i32 = 10_000;
    spawn_local(async move {
        app.read_flow().await;
        clock::later(CALM_MS, move || {
            spawn_local(async move {
                app.let_go_old().await;
            });
        });
    });
}

/// Keeps the screen awake while a job is on it; a refusal is normal and nothing depends on it.
fn stay_awake(app: App) {
    let lock = StoredValue::new_local(None::<WakeLock>);
    Effect::new(move |_| {
        let on_a_job = app.route.with(|route| route.job().is_some());
        let held = lock.with_value(Option::is_some);
        if on_a_job != held {
            app.awake.set(false);
            let held = move |held| app.awake.set(held);
            lock.set_value(on_a_job.then(|| WakeLock::hold(held)));
        }
    });
}

/// Opens the job that a place belongs to, whenever the place changes.
fn follow_route(app: App) {
    let arrive = move |route: Route| {
        if let Some(job) = route.job()
            && !app.is_open(job)
        {
            // No step of another car stands at the place of this one.
            app.shut.set(Shut::Reading);
            app.open.set(None);
            app.read_job(job.to_owned());
        }
        app.ago.set(None);
        app.route.set(route);
        page::scroll_top();
    };
    arrive(app.route.get_untracked());
    let listener = page::on_hash(move |hash| {
        tone::unlock();
        arrive(Route::from_hash(&hash));
    });
    StoredValue::new_local(listener);
}
