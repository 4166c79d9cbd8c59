use super::*;
use crate::exchange::sums::Sums;
use crate::job::entry::LogId;
use crate::job::fold;

/// A job of van `van` on a day, with what there is to pay in cents.
fn job(log: &str, on: &str, van: &str, name: &str, to_pay: i64) -> Summary {
    let mut job = Summary::of(&LogId(log.to_owned()), &fold([]), &[], None);
    (job.on, job.van, job.name) = (on.to_owned(), van.to_owned(), name.to_owned());
    job.ending = "finished".to_owned();
    job.sums = Sums {
        currency: "USD".to_owned(),
        to_pay,
        received: to_pay - 1,
        open: 1,
        declined: 5,
    };
    job
}

fn all() -> Vec<Summary> {
    let mut all = vec![
        job("a", "2026-03-01", "S", "Cid", 100),
        job("b", "2026-03-31", "N", "Ada", 300),
        job("c", "2026-04-01", "N", "ben", 200),
        job("d", "", "", "", 0),
        job("practice", "2026-03-05", "N", "Practice", 900),
    ];
    all[3].sums = Sums::default();
    all[4].practice = true;
    all
}

fn query(filter: JobFilter, sort: SortBy) -> Query {
    let (from, to, van) = Default::default();
    Query {
        from,
        to,
        van,
        filter,
        sort,
    }
}

fn logs(list: &[Listed]) -> Vec<String> {
    list.iter().map(|it| it.job.log.clone()).collect()
}

#[test]
fn a_list_keeps_to_its_days_both_ends_counted_and_to_its_van() {
    let jobs = all();
    let of = |from: &str, to: &str, van: &str| {
        let asked = Query {
            from: from.to_owned(),
            to: to.to_owned(),
            van: van.to_owned(),
            ..query(JobFilter::All, SortBy::Day)
        };
        logs(&listed(&jobs, &asked))
    };
    assert_eq!(of("", "", ""), ["d", "a", "b", "c"]);
    assert_eq!(of("2026-03-01", "2026-03-31", ""), ["a", "b"]);
    assert_eq!(of("2026-03-02", "", ""), ["b", "c"]);
    assert_eq!(of("", "2026-03-30", ""), ["a"]);
    assert_eq!(of("", "", "N"), ["b", "c"]);
    assert_eq!(of("", "", "X"), [""; 0]);
}

#[test]
fn each_order_is_its_own() {
    let jobs = all();
    let by = |sort| logs(&listed(&jobs, &query(JobFilter::All, sort)));
    assert_eq!(by(SortBy::Day), ["d", "a", "b", "c"]);
    assert_eq!(by(SortBy::Customer), ["b", "c", "a", "d"]);
    assert_eq!(by(SortBy::Van), ["b", "c", "a", "d"]);
    assert_eq!(by(SortBy::Amount), ["b", "c", "a", "d"]);
}

#[test]
fn each_filter_takes_its_own() {
    let mut jobs = all();
    jobs[0].ending = String::new();
    jobs[1].unpaid = Some((1, "USD".to_owned()));
    jobs[2].declined = true;
    let of = |filter| logs(&listed(&jobs, &query(filter, SortBy::Day)));
    assert_eq!(of(JobFilter::Open), ["a"]);
    assert_eq!(of(JobFilter::Ended), ["d", "b", "c"]);
    assert_eq!(of(JobFilter::Unpaid), ["b"]);
    assert_eq!(of(JobFilter::Declined), ["c"]);
}

#[test]
fn totals_are_by_currency_and_hold_nothing_that_is_not_in_the_list() {
    let mut jobs = all();
    jobs[2].sums.currency = "EUR".to_owned();
    let totals = totals(&listed(&jobs, &query(JobFilter::All, SortBy::Day)));
    let total = |jobs, to_pay| Total {
        jobs,
        to_pay,
        received: to_pay - jobs as i64,
        open: jobs as i64,
        declined: 5 * jobs as i64,
    };
    // 100 + 300 cents; practice adds nothing.
    let expected = [
        ("EUR".to_owned(), total(1, 200)),
        ("USD".to_owned(), total(2, 400)),
    ];
    assert_eq!(totals, expected);
}

#[test]
fn the_table_has_a_row_a_job_and_names_the_van() {
    let mut jobs = all();
    jobs[1].name = "=Ada, \"Nobody\"".to_owned();
    let list = listed(&jobs, &query(JobFilter::All, SortBy::Day));
    let text = table(&list, &|van| format!("van {}", van.letters));
    let text = text.strip_prefix(BYTE_ORDER_MARK).unwrap();
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(reader.headers().unwrap().len(), HEADS.len());
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.unwrap()).collect();
    assert_eq!(rows.len(), 4);
    let row = &rows[2];
    let cell = |head: &str| &row[HEADS.iter().position(|it| *it == head).unwrap()];
    assert_eq!(cell("van"), "van N");
    assert_eq!(cell("customer"), "'=Ada, \"Nobody\"");
    assert_eq!(cell("to_pay"), "3.00");
    assert_eq!(cell("balance"), "0.01");
    assert_eq!(&rows[0][11], "");
}
