use super::*;
use crate::exchange::summary::Fitted;
use crate::job::entry::{EntryId, LogId, Timestamp};
use crate::job::fold;

fn count(device: &str, n: u64, have: u16, cores: u16) -> Entry {
    Entry {
        id: EntryId(format!("{device}{n}")),
        log: LogId("kit:van".to_owned()),
        at: Timestamp {
            utc_ms: 0,
            offset_min: 0,
            recorded: None,
        },
        by: String::new(),
        device: device.to_owned(),
        n,
        after: Vec::new(),
        what: Event::Stock(Stock {
            number: "MX-4410 H".to_owned(),
            have,
            least: 2,
            cores,
        }),
    }
}

fn fitted(device: &str, n: u64, day: &str, number: &str) -> Summary {
    let mut job = Summary::of(&LogId(format!("{device}{n}")), &fold([]), &[], None);
    job.tally.last = (device.to_owned(), n);
    job.tally.finished = day.to_owned();
    job.parts = vec![Fitted {
        number: number.to_owned(),
        lot: String::new(),
    }];
    job
}

const TODAY: &str = "2026-03-04";

#[test]
fn a_part_that_is_fitted_counts_one_down_from_the_last_count_of_its_van() {
    let kit = fold([
        count("a", 10, 9, 0),
        count("a", 20, 3, 1),
        count("b", 5, 4, 0),
    ]);
    let jobs = [
        // Before the count: it is in it.
        fitted("a", 15, "2026-03-01", "MX-4410-H"),
        fitted("a", 30, "2026-03-03", "mx 4410 h"),
        fitted("a", 40, TODAY, "MX-4410-H"),
        fitted("b", 6, TODAY, "OTHER"),
    ];
    let rows = on_board(&kit, &jobs, TODAY);
    let recorded: Vec<_> = rows
        .iter()
        .map(|row| {
            (
                row.van.as_str(),
                row.left,
                row.today,
                row.cores,
                row.is_to_order(),
            )
        })
        .collect();
    assert_eq!(
        recorded,
        [
            ("a", Some(1), 1, 3, true),
            ("b", Some(4), 0, 0, false),
            ("b", None, 1, 0, false)
        ]
    );
}

#[test]
fn practice_takes_nothing_from_the_shelf() {
    let kit = fold([count("a", 20, 3, 1)]);
    let mut job = fitted("a", 30, TODAY, "MX-4410-H");
    job.practice = true;
    let rows = on_board(&kit, &[job], TODAY);
    assert_eq!(
        (rows[0].left, rows[0].today, rows[0].cores),
        (Some(3), 0, 1)
    );
}

#[test]
fn the_last_count_is_the_last_in_order_whatever_its_number() {
    // After a kill a phone counts from an older number on.
    let before = count("a", 20, 9, 0);
    let mut later = count("a", 10, 3, 1);
    later.after = vec![before.id.clone()];
    let rows = on_board(&fold([before, later]), &[], TODAY);
    assert_eq!((rows[0].left, rows[0].cores), (Some(3), 1));
}

#[test]
fn what_any_van_lacks_is_ordered_over_all_vans() {
    let row = |van: &str, number: &str, left, least| OnBoard {
        van: van.to_owned(),
        number: number.to_owned(),
        left,
        least,
        today: 0,
        cores: 0,
    };
    let stock = [
        row("a", "MX-4410", Some(0), 2),
        // More than enough here does not fill the other van.
        row("b", "mx 4410", Some(5), 2),
        row("c", "MX-4410", Some(-1), 1),
        row("d", "MX-4410", None, 3),
        row("a", "QZ-1", Some(2), 2),
    ];
    let orders = to_order(&stock);
    assert_eq!(orders.len(), 1);
    // Two for a; for c, which used one more than it had, two as well.
    assert_eq!(
        (orders[0].number.as_str(), orders[0].order, orders[0].left),
        ("MX-4410", 4, 4)
    );
    let vans: Vec<(&str, i64)> = orders[0]
        .vans
        .iter()
        .map(|(van, left)| (van.as_str(), *left))
        .collect();
    assert_eq!(vans, [("a", 0), ("b", 5), ("c", -1)]);
    assert_eq!(to_order(&stock[4..]), []);
}
