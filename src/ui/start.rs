//! The start: crash panel first, then storage, then the screens.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;

use crate::platform::journal::Closed;
use crate::platform::wake_lock::WakeLock;
use crate::platform::whole::keep_whole;
use crate::platform::{clock, crash_panel, locale, page, tone};
use crate::ui::late;
use crate::ui::route::Route;
use crate::ui::screens;
use crate::ui::settings::Settings;
use crate::ui::shelf::{BrowserStore, CameBack};
use crate::ui::state::App;
use crate::ui::sweep::sweep;

/// Starts the app in the page.
pub fn start() {
    crash_panel::install();
    spawn_local(async {
        let closed = ArcRwSignal::new(None);
        let closing = closed.clone();
        let (shelf, came_back) = BrowserStore::open(move |why| closing.set(Some(why))).await;
        // From here to the mount nothing is waited for: other tabs are heard before they write.
        let settings = Settings::read(&shelf, &locale::language());
        page::set_language("en");
        page::set_theme(settings.theme.code());
        mount(shelf, settings, closed, came_back);
        page::set_ready();
    });
}

fn mount(
    shelf: BrowserStore,
    settings: Settings,
    closed: ArcRwSignal<Option<Closed>>,
    came_back: CameBack,
) {
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
        let early = app.first_lines(&came_back);
        follow_route(app);
        stay_awake(app);
        write_back_lost(app);
        beside(app, came_back, early);
        StoredValue::new_local(keep_whole(&below));
        screens::root()
    });
    handle.forget();
}

/// What nobody looks at yet comes once the first screen is there.
fn beside(app: App, came_back: CameBack, early: Option<Vec<String>>) {
    spawn_local(async move {
        app.read_first_list(came_back, early).await;
        spawn_local(late::load(app));
        app.watch_for_update();
        app.look_at_room();
        flow(app);
        sweep(app);
        keep_level(app);
    });
}

/// Writes back what the browser threw away under the open app.
fn write_back_lost(app: App) {
    Effect::new(move |_| {
        if app.closed.get() == Some(Closed::Lost) {
            app.write_back();
        }
    });
}

/// Once the start is long over, brings the backup journal level with what files brought.
fn keep_level(app: App) {
    const CALM_MS: i32 = 5_000;
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
    app.arrive(app.route.get_untracked());
    let listener = page::on_hash(move |hash| {
        tone::unlock();
        app.arrive(Route::from_hash(&hash));
        page::scroll_top();
    });
    StoredValue::new_local(listener);
}
