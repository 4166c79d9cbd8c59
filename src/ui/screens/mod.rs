//! The screens, one a file. Which one is shown follows from the route and the job alone.

mod adapter;
mod agree;
mod answer;
mod bill;
mod book;
mod cause;
mod closing;
pub mod conflicts;
mod customer;
mod decide;
mod dial_setup;
mod finding;
mod first;
pub mod flow;
mod home;
mod import;
mod inspection;
mod loose;
mod mishap;
mod notes;
mod number;
mod overview;
mod pack;
mod paper;
mod photo;
mod practice;
mod removed;
mod report;
mod report_screen;
mod round;
mod runout;
mod settings;
mod shop_lists;
mod sign;
mod signs;
mod specs;
mod step;
mod swing;
pub mod takeover;
mod tip_and_drift;
mod turn;

use crate::ui::late;
use crate::ui::route::Route;
use crate::ui::settings::Settings;
use crate::ui::state::{App, app};
use crate::ui::view::prelude::*;

/// Whatever belongs to the route.
pub fn root() -> Node {
    let app = app();
    let asked = Memo::new(move |_| app.settings.with(Settings::is_new));
    let no_job = Memo::new(move |_| app.open.with(Option::is_none));
    (move || match app.route.get() {
        // Every place of a job that is not open leads home.
        route if route.job().is_some() && no_job.get() => step::not_open(app),
        Route::Home if asked.get() => first::first(app),
        Route::Home => home::home(app),
        Route::Unknown => home::unknown(app),
        Route::New => home::new(app),
        Route::Job(_) => step::next(app),
        Route::Step(_, key) => step::one(app, key),
        Route::Where(_) => overview::wherever(app),
        Route::Loose(_) => loose::loose(app),
        Route::Notes(_) => notes::notes(app),
        second => late::shown(app, second),
    })
    .into_node()
}

/// What belongs to a route of the second part of the program.
pub fn late(app: App, route: &Route) -> Node {
    match route {
        Route::Practice => practice::choose(app),
        Route::Import => import::import(app),
        Route::ShopLists => shop_lists::shop_lists(app),
        Route::Counts => shop_lists::counts(app),
        Route::JobList => shop_lists::jobs(app),
        Route::Board => shop_lists::day_board(app),
        Route::Book => book::book(app),
        Route::Settings => settings::settings(app),
        Route::Day => flow::day(app),
        Route::Out => flow::out(app),
        Route::Shop => flow::shop(app),
        Route::Erase(_) => flow::erase(app),
        Route::Customer(_) => customer::customer(app),
        Route::Cause(_) => cause::cause(app),
        Route::Removed(_, corner) => removed::removed(app, *corner),
        Route::Bill(_) => bill::bill(app),
        Route::Report(_) => report_screen::report(app),
        Route::Runout(_) => runout::runout(app),
        Route::Thickness(_) => runout::rotor(app),
        Route::Truth(_) => practice::recorded(app),
        // These are in the first part.
        Route::Home
        | Route::Unknown
        | Route::New
        | Route::Job(_)
        | Route::Step(..)
        | Route::Where(_)
        | Route::Loose(_)
        | Route::Notes(_) => Node::default(),
    }
}
