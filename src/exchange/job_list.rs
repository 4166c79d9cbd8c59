//! The jobs of a shop as a list: chosen by day, van and state, sorted, added up, and as a table.

use crate::exchange::csv::{BYTE_ORDER_MARK, harmless, written};
use crate::exchange::summary::Summary;
use crate::exchange::vans::{VanName, Vans};
use crate::map::OrderedMap;
use crate::sorted::Sorted;
use crate::trade::money::{minor_digits, printed};
use crate::words;

words! {
    /// Which jobs a list has.
    pub enum JobFilter {
        All = "all", Open = "open", Ended = "ended", Unpaid = "unpaid", Declined = "declined",
    }
}

words! {
    /// What a list is sorted by.
    pub enum SortBy { Day = "day", Customer = "customer", Van = "van", Amount = "amount" }
}

/// What is asked of a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Query {
    /// The first day, `YYYY-MM-DD`; empty for no bound.
    pub from: String,
    /// The last day; empty for no bound.
    pub to: String,
    /// The letters of a van; empty for all.
    pub van: String,
    /// Which jobs.
    pub filter: JobFilter,
    /// In which order.
    pub sort: SortBy,
}

/// One job of a list, with the van it belongs to.
#[derive(Clone, Debug, PartialEq)]
pub struct Listed<'a> {
    /// The job.
    pub job: &'a Summary,
    /// Its van, where one is known.
    pub van: Option<VanName>,
}

/// The jobs of a list, in order; practice is in none. Days, names and vans go up, amounts down.
pub fn listed<'a>(jobs: &'a [Summary], query: &Query) -> Vec<Listed<'a>> {
    let vans = Vans::of(jobs);
    let real = jobs.iter().filter(|job| !job.practice && is_in(job, query));
    let all = real.map(|job| Listed {
        job,
        van: vans.of_job(job),
    });
    let of_van = |it: &Listed| {
        let letters = it.van.as_ref().map(|van| van.letters.as_str());
        query.van.is_empty() || letters == Some(&query.van)
    };
    let mut all: Vec<Listed> = all.filter(of_van).collect();
    let by_day = |it: &Listed<'a>| (&it.job.on, &it.job.log);
    match query.sort {
        SortBy::Day => all.order_by(|a, b| by_day(a).cmp(&by_day(b))),
        SortBy::Customer => all.order_by(|a, b| {
            let name = |it: &Listed<'a>| (it.job.name.is_empty(), it.job.name.to_lowercase());
            (name(a), by_day(a)).cmp(&(name(b), by_day(b)))
        }),
        SortBy::Van => all.order_by(|a, b| {
            let van = |it: &Listed<'a>| (it.van.is_none(), it.van.clone());
            (van(a), by_day(a)).cmp(&(van(b), by_day(b)))
        }),
        SortBy::Amount => all.order_by(|a, b| {
            let amount = |it: &Listed<'a>| std::cmp::Reverse(it.job.sums.to_pay);
            (amount(a), by_day(a)).cmp(&(amount(b), by_day(b)))
        }),
    }
    all
}

fn is_in(job: &Summary, query: &Query) -> bool {
    let after = query.from.is_empty() || query.from <= job.on;
    let before = query.to.is_empty() || job.on <= query.to;
    let chosen = match query.filter {
        JobFilter::All => true,
        JobFilter::Open => job.is_open(),
        JobFilter::Ended => !job.is_open(),
        JobFilter::Unpaid => job.unpaid.is_some(),
        JobFilter::Declined => job.declined,
    };
    // A day that is not known is within no bound.
    let bound = !query.from.is_empty() || !query.to.is_empty();
    after && before && chosen && !(bound && job.on.is_empty())
}

/// What the jobs of a list come to in one currency, in minor units.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Total {
    /// How many jobs have an amount in it.
    pub jobs: usize,
    /// What there is to pay.
    pub to_pay: i64,
    /// What came in and stayed.
    pub received: i64,
    /// What is still to pay.
    pub open: i64,
    /// What was declined; never to pay.
    pub declined: i64,
}

/// The totals of a list, by currency; amounts of two currencies are never added.
pub fn totals(list: &[Listed]) -> Vec<(String, Total)> {
    let mut all: OrderedMap<String, Total> = OrderedMap::new();
    for it in list {
        let sums = &it.job.sums;
        if sums.currency.is_empty() {
            continue;
        }
        let total = all.or_default(sums.currency.clone());
        total.jobs += 1;
        for (sum, amount) in [
            (&mut total.to_pay, sums.to_pay),
            (&mut total.received, sums.received),
            (&mut total.open, sums.open),
            (&mut total.declined, sums.declined),
        ] {
            *sum = sum.saturating_add(amount);
        }
    }
    all.into_iter().collect()
}

/// The heads of the table.
pub const HEADS: [&str; 16] = [
    "day",
    "time",
    "van",
    "plate",
    "customer",
    "telephone",
    "vehicle",
    "vin",
    "ending",
    "invoices",
    "currency",
    "to_pay",
    "received",
    "balance",
    "declined",
    "loose",
];

/// The list as a table for a spreadsheet; `van` names a van.
pub fn table(list: &[Listed], van: &dyn Fn(&VanName) -> String) -> String {
    let rows = list.iter().map(|it| row(it, van));
    format!("{BYTE_ORDER_MARK}{}", written(&HEADS, rows))
}

fn row(it: &Listed, van: &dyn Fn(&VanName) -> String) -> Vec<String> {
    let job = it.job;
    let sums = &job.sums;
    let amount = |minor| match sums.currency.as_str() {
        "" => String::new(),
        currency => printed(minor, minor_digits(currency)),
    };
    let words = [
        job.on.clone(),
        job.time.clone(),
        it.van.as_ref().map(van).unwrap_or_default(),
        job.title(),
        job.name.clone(),
        job.phone.clone(),
        job.family.clone(),
        job.vin.clone(),
        job.ending.clone(),
        job.invoices.join(" "),
        sums.currency.clone(),
    ];
    let amounts = [sums.to_pay, sums.received, sums.open, sums.declined];
    let words = words.into_iter().map(harmless);
    let all = words.chain(amounts.map(amount));
    all.chain([job.loose.to_string()]).collect()
}

#[cfg(test)]
#[path = "job_list/tests.rs"]
mod tests;
