//! Pack: what is asked at home, before leaving.

mod booking;
mod corners;
mod kit;
mod price;
mod ready;
mod vehicle;
mod wheel_end;

pub use booking::booking;
pub use corners::corners;
pub use kit::kit;
pub use price::price;
pub use ready::ready;
pub use vehicle::vehicle;

use crate::job::entry::Event;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::route::Route;

/// Writes the entries of a form, drops its drafts and goes on; deaf while keys are held.
///
/// Enter comes past the disabled keys, so that it is asked here again.
pub fn keep(at: &StepContext, drafts: Drafts, whats: Vec<Event>, then: impl FnOnce() + 'static) {
    if at.app.locked.get_untracked() {
        return;
    }
    let (app, log) = (at.app, at.open.log.0.clone());
    let drop_drafts = drafts.dropping();
    let go_on = app.going_on(Route::Job(log));
    app.append_then(whats, move || {
        drop_drafts();
        then();
        go_on();
    });
}
