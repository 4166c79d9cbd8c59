//! The screens, one a file. Which one is shown follows from the route and the job alone.

mod agree;
mod answer;
mod cards;
mod closing;
mod decide;
mod home;
mod import;
mod loose;
mod number;
mod pack;
mod photo;
mod practice;
mod report;
mod round;
mod settings;
mod sign;
mod step;
mod swing;
mod turn;
mod wherever;
mod whole;

use leptos::prelude::*;

use crate::ui::route::Route;
use crate::ui::state::app;

/// Whatever belongs to the route.
pub fn root() -> impl IntoView {
    let app = app();
    move || match app.route.get() {
        Route::Home => home::home(app),
        Route::New => home::new(app),
        Route::Practice => practice::choose(app),
        Route::Import => import::import(app),
        Route::Settings => settings::settings(app),
        Route::Job(_) => step::next(app),
        Route::Step(_, key) => step::one(app, key),
        Route::Where(_) => wherever::wherever(app),
        Route::Loose(_) => loose::loose(app),
        Route::Report(_) => whole::report(app),
        Route::Notes(_) => wherever::notes(app),
        Route::Truth(_) => practice::told(app),
    }
}
