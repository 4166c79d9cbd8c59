//! Hash routes: where a person is. A route only points; it never holds state.

use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::StepKey;

/// A place in the app.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Route {
    /// The list of jobs.
    Home,
    /// A new job: at home, at the car, or a practice car.
    New,
    /// Which practice car.
    Practice,
    /// A job, at the step that comes next.
    Job(String),
    /// A job, at one step.
    Step(String, StepKey),
    /// All steps of a job, and where it is.
    Where(String),
    /// What could cause the complaint of a job.
    Cause(String),
    /// What is loose on a job.
    Loose(String),
    /// The removed part of a corner of a job.
    Removed(String, Corner),
    /// Price and payment of a job.
    Bill(String),
    /// The report of a job.
    Report(String),
    /// The job's notes, and what is wrong with its record.
    Notes(String),
    /// The run-out of a job's corners.
    Runout(String),
    /// The thickness of a job's rotors.
    Thickness(String),
    /// What the practice car of an ended job had.
    Truth(String),
    /// Opening files.
    Import,
    /// What a shop follows over all its jobs.
    ShopLists,
    /// What the shop counts.
    Counts,
    /// The jobs of the shop as a list that is chosen, sorted and added up.
    JobList,
    /// The day of all vans.
    Board,
    /// The spec library of this phone.
    Book,
    /// Units, tools, sound.
    Settings,
    /// The file of one van's day.
    Day,
    /// Files that a van takes to the shop.
    Out,
    /// What the shop has set for its vans.
    Shop,
    /// The customer of a job, with all visits.
    Customer(String),
    /// Letting go of the customer of a job.
    Erase(String),
    /// A place that does not exist.
    Unknown,
}

impl Route {
    /// The route of a location's hash, with or without its `#`.
    pub fn from_hash(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_matches('/');
        let mut parts = path.split('/');
        let named = |part: &&str| !part.is_empty();
        match (parts.next(), parts.next().filter(named), parts.next()) {
            (Some("new"), None, _) => Self::New,
            (Some("practice"), None, _) => Self::Practice,
            (Some("import"), None, _) => Self::Import,
            (Some("shop-lists"), None, _) => Self::ShopLists,
            (Some("shop-lists"), Some("counts"), None) => Self::Counts,
            (Some("shop-lists"), Some("jobs"), None) => Self::JobList,
            (Some("shop-lists"), Some("board"), None) => Self::Board,
            (Some("book"), None, _) => Self::Book,
            (Some("settings"), None, _) => Self::Settings,
            (Some("day"), None, _) => Self::Day,
            (Some("out"), None, _) => Self::Out,
            (Some("shop"), None, _) => Self::Shop,
            (Some("job"), Some(id), Some("erase")) => Self::Erase(id.to_owned()),
            (Some("job"), Some(id), Some("customer")) => Self::Customer(id.to_owned()),
            (Some("job"), Some(id), None) => Self::Job(id.to_owned()),
            (Some("job"), Some(id), Some("where")) => Self::Where(id.to_owned()),
            (Some("job"), Some(id), Some("cause")) => Self::Cause(id.to_owned()),
            (Some("job"), Some(id), Some("loose")) => Self::Loose(id.to_owned()),
            (Some("job"), Some(id), Some("removed")) => {
                let corner = parts.next().and_then(Corner::from_code);
                let at = |corner| Self::Removed(id.to_owned(), corner);
                corner.map_or_else(|| Self::Where(id.to_owned()), at)
            }
            (Some("job"), Some(id), Some("bill")) => Self::Bill(id.to_owned()),
            (Some("job"), Some(id), Some("report")) => Self::Report(id.to_owned()),
            (Some("job"), Some(id), Some("runout")) => Self::Runout(id.to_owned()),
            (Some("job"), Some(id), Some("thickness")) => Self::Thickness(id.to_owned()),
            (Some("job"), Some(id), Some("notes")) => Self::Notes(id.to_owned()),
            (Some("job"), Some(id), Some("truth")) => Self::Truth(id.to_owned()),
            (Some("job"), Some(id), Some(step)) => StepKey::from_code(step).map_or_else(
                || Self::Job(id.to_owned()),
                |key| Self::Step(id.to_owned(), key),
            ),
            (None | Some(""), None, None) => Self::Home,
            _ => Self::Unknown,
        }
    }

    /// The hash of this route, with its `#`.
    pub fn to_hash(&self) -> String {
        match self {
            Self::Home => "#/".to_owned(),
            Self::Unknown => "#/unknown".to_owned(),
            Self::New => "#/new".to_owned(),
            Self::Practice => "#/practice".to_owned(),
            Self::Import => "#/import".to_owned(),
            Self::ShopLists => "#/shop-lists".to_owned(),
            Self::Counts => "#/shop-lists/counts".to_owned(),
            Self::JobList => "#/shop-lists/jobs".to_owned(),
            Self::Board => "#/shop-lists/board".to_owned(),
            Self::Book => "#/book".to_owned(),
            Self::Settings => "#/settings".to_owned(),
            Self::Day => "#/day".to_owned(),
            Self::Out => "#/out".to_owned(),
            Self::Shop => "#/shop".to_owned(),
            Self::Erase(id) => format!("#/job/{id}/erase"),
            Self::Customer(id) => format!("#/job/{id}/customer"),
            Self::Job(id) => format!("#/job/{id}"),
            Self::Step(id, key) => format!("#/job/{id}/{}", key.code()),
            Self::Where(id) => format!("#/job/{id}/where"),
            Self::Cause(id) => format!("#/job/{id}/cause"),
            Self::Loose(id) => format!("#/job/{id}/loose"),
            Self::Removed(id, corner) => format!("#/job/{id}/removed/{}", corner.code()),
            Self::Bill(id) => format!("#/job/{id}/bill"),
            Self::Report(id) => format!("#/job/{id}/report"),
            Self::Runout(id) => format!("#/job/{id}/runout"),
            Self::Thickness(id) => format!("#/job/{id}/thickness"),
            Self::Notes(id) => format!("#/job/{id}/notes"),
            Self::Truth(id) => format!("#/job/{id}/truth"),
        }
    }

    /// Whether this is the place of a location's hash.
    pub fn is_at(&self, hash: &str) -> bool {
        *self == Self::from_hash(hash)
    }

    /// The job this place belongs to.
    pub fn job(&self) -> Option<&str> {
        match self {
            Self::Job(id)
            | Self::Step(id, _)
            | Self::Where(id)
            | Self::Cause(id)
            | Self::Loose(id)
            | Self::Removed(id, _)
            | Self::Bill(id)
            | Self::Report(id)
            | Self::Runout(id)
            | Self::Thickness(id)
            | Self::Notes(id)
            | Self::Customer(id)
            | Self::Erase(id)
            | Self::Truth(id) => Some(id),
            Self::Home
            | Self::Unknown
            | Self::New
            | Self::Practice
            | Self::Import
            | Self::ShopLists
            | Self::Counts
            | Self::JobList
            | Self::Board
            | Self::Book
            | Self::Day
            | Self::Out
            | Self::Shop
            | Self::Settings => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::wheel_end::Step;

    #[test]
    fn every_route_survives_its_hash() {
        let key = StepKey::at(Step::Round, Corner::RearRight).nth(12);
        let id = || "0190-a".to_owned();
        for route in [
            Route::Home,
            Route::Unknown,
            Route::New,
            Route::Practice,
            Route::Import,
            Route::ShopLists,
            Route::Counts,
            Route::JobList,
            Route::Board,
            Route::Book,
            Route::Settings,
            Route::Day,
            Route::Out,
            Route::Shop,
            Route::Erase(id()),
            Route::Customer(id()),
            Route::Job(id()),
            Route::Step(id(), key),
            Route::Step(id(), StepKey::once(Step::Odometer)),
            Route::Where(id()),
            Route::Cause(id()),
            Route::Loose(id()),
            Route::Removed(id(), Corner::RearLeft),
            Route::Bill(id()),
            Route::Report(id()),
            Route::Runout(id()),
            Route::Thickness(id()),
            Route::Notes(id()),
            Route::Truth(id()),
        ] {
            assert_eq!(Route::from_hash(&route.to_hash()), route);
        }
    }

    #[test]
    fn who_went_elsewhere_is_not_at_the_place_of_the_tap() {
        let tapped = Route::Job("a".to_owned());
        assert!(tapped.is_at("#/job/a"));
        assert!(tapped.is_at("/job/a"));
        for elsewhere in ["#/job/a/where", "#/job/a/drive", "#/job/b", "#/", ""] {
            assert!(!tapped.is_at(elsewhere), "{elsewhere}");
        }
        assert!(Route::Home.is_at(""));
    }

    #[test]
    fn an_unknown_place_is_said_to_be_none_and_an_unknown_step_is_its_job() {
        for nowhere in [
            "#/elsewhere/1",
            "#/shop-lists/nothing",
            "#/new/1",
            "#job",
            "#/job//where",
            "#!",
        ] {
            assert_eq!(Route::from_hash(nowhere), Route::Unknown, "{nowhere}");
        }
        for home in ["", "#", "#/", "/"] {
            assert_eq!(Route::from_hash(home), Route::Home, "{home}");
        }
        assert_eq!(
            Route::from_hash("#/job/x/removed/middle"),
            Route::Where("x".to_owned())
        );
        assert_eq!(
            Route::from_hash("#/job/x/nonsense@nowhere"),
            Route::Job("x".to_owned())
        );
    }
}
