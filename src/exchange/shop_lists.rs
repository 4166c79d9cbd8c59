//! What a shop follows over many jobs: what is due, what waits, what came back.
//!
//! Made from the summaries alone, so that thousands of jobs are looked over at once. Practice
//! enters nothing.

use crate::exchange::counted::CONFIDENCE;
use crate::exchange::summary::{Fitted, Summary};
use crate::job::entry::{DueKind, Ending};
use crate::letters::plain;
use crate::map::OrderedMap;
use crate::sorted::Sorted;
use crate::trade::share::{Share, share};

/// The lists of the shop; the most pressing job of each stands first.
#[derive(Debug, Default, PartialEq)]
pub struct ShopLists<'a> {
    /// Lug nuts whose day has passed.
    pub overdue: Vec<&'a Summary>,
    /// Lug nuts that are to be checked.
    pub due: Vec<&'a Summary>,
    /// Corners to be looked at again.
    pub rechecks: Vec<&'a Summary>,
    /// Customers who said no to what must not be driven.
    pub declined_stop: Vec<&'a Summary>,
    /// Customers who said no to another repair that was advised, and whose vehicle was not repaired
    /// at a later visit.
    pub declined: Vec<&'a Summary>,
    /// Repairs that nobody has said yes or no to.
    pub waiting: Vec<&'a Summary>,
    /// Vehicles that were left unfinished.
    pub unfinished: Vec<&'a Summary>,
    /// Work that is not paid.
    pub unpaid: Vec<&'a Summary>,
    /// Jobs of which two phones recorded something differently.
    pub conflicts: Vec<&'a Summary>,
}

impl<'a> ShopLists<'a> {
    /// The lists as of `today`, `YYYY-MM-DD`.
    pub fn of(jobs: &'a [Summary], today: &str) -> Self {
        let pick = |is: &dyn Fn(&Summary) -> bool, by: &dyn Fn(&Summary) -> &str| {
            let real = jobs.iter().filter(|job| !job.practice && is(job));
            let mut picked: Vec<&Summary> = real.collect();
            picked.order_by(|a, b| (by(a), &a.log).cmp(&(by(b), &b.log)));
            picked
        };
        let has = |job: &Summary, kind| job.dues().iter().any(|(it, _)| *it == kind);
        let nuts = |job: &Summary| has(job, DueKind::Retorque);
        let repaired = Repaired::of(jobs);
        Self {
            overdue: pick(&|job| nuts(job) && job.due.as_str() < today, &|job| {
                &job.due
            }),
            due: pick(&|job| nuts(job) && today <= job.due.as_str(), &|job| {
                &job.due
            }),
            rechecks: pick(&|job| has(job, DueKind::Recheck), &|job| &job.recheck),
            declined_stop: pick(&|job| job.declined_stop, &|job| &job.log),
            declined: pick(
                &|job| job.declined && !job.declined_stop && !repaired.later(job),
                &|job| &job.on,
            ),
            waiting: pick(&|job| job.waiting, &|job| &job.log),
            unfinished: pick(&|job| job.ending == Ending::LeftUnfinished.code(), &|job| {
                &job.log
            }),
            unpaid: pick(&|job| job.unpaid.is_some(), &|job| &job.log),
            conflicts: pick(&|job| job.conflicts > 0, &|job| &job.log),
        }
    }
}

/// The last day on which each vehicle got a new part, by its VIN and by its plate.
struct Repaired<'a>(OrderedMap<String, &'a str>);

impl<'a> Repaired<'a> {
    fn of(jobs: &'a [Summary]) -> Self {
        let mut days: OrderedMap<String, &str> = OrderedMap::new();
        let real = jobs.iter().filter(|job| !job.practice);
        for job in real.filter(|job| !job.tally.corners.is_empty()) {
            for vehicle in vehicle(job) {
                let day = days.or_default(vehicle);
                *day = job.on.as_str().max(day);
            }
        }
        Self(days)
    }

    /// Whether the vehicle of a job got one at a later visit.
    fn later(&self, job: &Summary) -> bool {
        let days = vehicle(job).into_iter();
        let mut days = days.filter_map(|vehicle| self.0.get(&vehicle));
        days.any(|day| job.on.as_str() < *day)
    }
}

/// What a vehicle is known by.
fn vehicle(job: &Summary) -> Vec<String> {
    let known = [&job.vin, &job.plate].map(|text| plain(text));
    known.into_iter().filter(|text| !text.is_empty()).collect()
}

/// How a part of one lot has fared.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// The part.
    pub part: Fitted,
    /// On how many finished jobs it was fitted.
    pub fitted: usize,
    /// How many of them were asked whether they came back.
    pub asked: usize,
    /// How many came back with the same corner.
    pub came_back: usize,
    /// The share that comes back, between its ends at 95 %; nothing if none was asked.
    pub share: Option<Share>,
    /// Whether it comes back more often than all the others together, beyond chance.
    pub stands_out: bool,
}

/// Every part and lot that was fitted, by its number; no ranking, since few jobs say nothing.
///
/// # Source
/// The interval of [`share`]; a lot stands out where its lower end lies above the upper end of
/// all the others together (common practice, no source).
pub fn lots(jobs: &[Summary]) -> Vec<Lot> {
    let mut counts: OrderedMap<&Fitted, (usize, usize, usize)> = OrderedMap::new();
    for job in jobs.iter().filter(|job| !job.practice) {
        for part in &job.parts {
            let (fitted, asked, back) = counts.or_default(part);
            *fitted += 1;
            *asked += usize::from(job.came_back.is_some());
            *back += usize::from(job.came_back == Some(true));
        }
    }
    let asked: usize = counts.values().map(|(_, asked, _)| asked).sum();
    let back: usize = counts.values().map(|(_, _, back)| back).sum();
    let more_than_others = |lot: Share, k: usize, n: usize| {
        share(back - k, asked - n, CONFIDENCE).is_ok_and(|rest| rest.high < lot.low)
    };
    counts
        .into_iter()
        .map(|(part, (fitted, asked, came_back))| {
            let share = share(came_back, asked, CONFIDENCE).ok();
            Lot {
                part: part.clone(),
                fitted,
                asked,
                came_back,
                share,
                stands_out: share.is_some_and(|it| more_than_others(it, came_back, asked)),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::LogId;
    use crate::job::fold;

    fn job(log: &str) -> Summary {
        Summary::of(&LogId(log.to_owned()), &fold([]), &[], None)
    }

    fn fitted(log: usize, lot: &str, came_back: Option<bool>) -> Summary {
        let part = Fitted {
            number: "MX-4410".to_owned(),
            lot: lot.to_owned(),
        };
        Summary {
            parts: vec![part],
            came_back,
            ..job(&format!("{log:05}"))
        }
    }

    fn names<'a>(jobs: &[&'a Summary]) -> Vec<&'a str> {
        jobs.iter().map(|job| job.log.as_str()).collect()
    }

    #[test]
    fn nuts_are_overdue_the_day_after_and_the_oldest_stand_first() {
        let nuts = |log, due: &str| Summary {
            due: due.to_owned(),
            next: "retorque_done".to_owned(),
            ..job(log)
        };
        let done = Summary {
            next: "comeback".to_owned(),
            ..nuts("done", "2026-01-01")
        };
        let practice = Summary {
            practice: true,
            ..nuts("practice", "2026-01-01")
        };
        let jobs = [
            nuts("b", "2026-03-02"),
            nuts("a", "2026-03-01"),
            nuts("today", "2026-03-03"),
            nuts("later", "2026-03-04"),
            done,
            practice,
        ];
        let shop = ShopLists::of(&jobs, "2026-03-03");
        assert_eq!(names(&shop.overdue), ["a", "b"]);
        assert_eq!(names(&shop.due), ["today", "later"]);
    }

    #[test]
    fn each_list_takes_its_own_and_practice_is_in_none() {
        let declined = Summary {
            declined_stop: true,
            ..job("declined")
        };
        let waiting = Summary {
            waiting: true,
            ..job("waiting")
        };
        let left = Summary {
            ending: Ending::LeftUnfinished.code().to_owned(),
            ..job("left")
        };
        let unpaid = Summary {
            unpaid: Some((100, "USD".to_owned())),
            ..job("unpaid")
        };
        let watch = Summary {
            recheck: "2026-09-01".to_owned(),
            ending: Ending::NothingWrong.code().to_owned(),
            next: "comeback".to_owned(),
            ..job("watch")
        };
        let mut jobs = vec![declined, waiting, left, unpaid, watch, job("plain")];
        let shop = ShopLists::of(&jobs, "2026-03-03");
        assert_eq!(names(&shop.declined_stop), ["declined"]);
        assert_eq!(names(&shop.waiting), ["waiting"]);
        assert_eq!(names(&shop.unfinished), ["left"]);
        assert_eq!(names(&shop.unpaid), ["unpaid"]);
        assert_eq!(names(&shop.rechecks), ["watch"]);
        assert_eq!((shop.overdue.len(), shop.due.len()), (0, 0));
        jobs.iter_mut().for_each(|job| job.practice = true);
        assert_eq!(ShopLists::of(&jobs, "2026-03-03"), ShopLists::default());
    }

    #[test]
    fn a_declined_repair_is_followed_up_until_the_vehicle_was_repaired_at_a_later_visit() {
        let declined = |log: &str, vin: &str, on: &str| Summary {
            declined: true,
            vin: vin.to_owned(),
            on: on.to_owned(),
            ..job(log)
        };
        let repaired = |vin: &str, on: &str| {
            let mut job = Summary {
                vin: vin.to_owned(),
                on: on.to_owned(),
                ..job("repaired")
            };
            job.tally.corners = vec![crate::exchange::tally::Replaced::default()];
            job
        };
        let stop = Summary {
            declined_stop: true,
            ..declined("stop", "C", "2026-03-01")
        };
        let mut jobs = vec![
            declined("b", "B", "2026-03-02"),
            declined("a", "A", "2026-03-01"),
            stop,
            // The other vehicle, and one repaired before.
            repaired("b", "2026-03-01"),
        ];
        let follow = |jobs: &[Summary]| -> Vec<String> {
            let shop = ShopLists::of(jobs, "2026-03-03");
            shop.declined.iter().map(|job| job.log.clone()).collect()
        };
        assert_eq!(follow(&jobs), ["a", "b"]);
        jobs.push(repaired("a", "2026-03-09"));
        assert_eq!(follow(&jobs), ["b"]);
        jobs[4].practice = true;
        assert_eq!(follow(&jobs), ["a", "b"]);
    }

    #[test]
    fn a_lot_stands_out_only_beyond_chance() {
        let mut jobs: Vec<Summary> = (0..60).map(|at| fitted(at, "A", Some(at < 2))).collect();
        jobs.extend((60..72).map(|at| fitted(at, "B", Some(at < 66))));
        jobs.push(fitted(72, "C", Some(true)));
        jobs.push(fitted(73, "B", None));
        let lots = lots(&jobs);
        let recorded: Vec<(&str, usize, usize, usize, bool)> = lots
            .iter()
            .map(|lot| {
                let name = lot.part.lot.as_str();
                (name, lot.fitted, lot.asked, lot.came_back, lot.stands_out)
            })
            .collect();
        // Two of 60, six of 12, one of one: one job says nothing, whatever it says.
        assert_eq!(
            recorded,
            [
                ("A", 60, 60, 2, false),
                ("B", 13, 12, 6, true),
                ("C", 1, 1, 1, false)
            ]
        );
        assert!(lots[2].share.unwrap().low < 0.05);
    }
}
