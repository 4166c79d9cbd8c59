//! The repair in lines: each with what it comes to, a form for the next, and the sums.

use crate::ui::react::spawn_local;

use super::{Bill, template};
use crate::job::account::account;
use crate::job::bill::priced;
use crate::job::entry::{Event, Price};
use crate::sorted::Sorted;
use crate::text::{self, Desk, Pay, ReportWord};
use crate::trade::money::{
    AmountError, Estimate, EstimateError, Line, LineKind, TaxRule, Totals, line_amount,
    parse_minor, plain, taxes, totals,
};
use crate::trade::vehicle::Corner;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::view::prelude::*;
use crate::units::{Decimal, DecimalError};

/// Why a line was not taken.
#[derive(Clone, Copy)]
enum Slip {
    Quantity(DecimalError),
    Each(AmountError),
    Sum(EstimateError),
}

/// The lines and their sums.
pub(super) fn lines(bill: &Bill) -> Node {
    let price = bill.open.sheet.price();
    let estimate = price.and_then(|price| price.estimate.as_ref());
    let agreed = account(&bill.open.sheet).agreed() > 0;
    let body = match estimate {
        Some(estimate) => written_out(bill, estimate),
        None => not_yet(bill, price),
    };
    view! {
        <section class="bill__part">
            <h2>{bill.desk(Desk::BillLines)}</h2>
            {agreed.then(|| view! { <p class="hint">{text::pay(bill.lang, Pay::LinesFrozen)}</p> })}
            {body}
            {next_line(bill)}
        </section>
    }
}

fn written_out(bill: &Bill, estimate: &Estimate) -> Node {
    let rows = estimate
        .lines
        .iter()
        .enumerate()
        .map(|(place, line)| row(bill, estimate, place, line));
    let rows = rows.collect_view();
    view! {
        <ol class="bill__lines">{rows}</ol>
        {totals(estimate).ok().map(|sums| foot(bill, estimate, sums))}
        {template::keep(bill, estimate)}
    }
}

fn row(bill: &Bill, estimate: &Estimate, place: usize, line: &Line) -> Node {
    let name = match line.text.as_str() {
        "" => text::line_kind(bill.lang, line.kind).to_owned(),
        text => text.to_owned(),
    };
    let name = match line.corner {
        Some(corner) => text::step_at(bill.lang, &name, corner),
        None => name,
    };
    let quantity = bill.fmt.marked(line.quantity.as_typed());
    let times = text::times(bill.lang, &quantity, &bill.amount(line.each));
    let comes_to = line_amount(line)
        .map(|minor| bill.amount(minor))
        .unwrap_or_default();
    let remove = format!("{}: {name}", bill.desk(Desk::RemoveLine));
    let (here, mut rest) = (bill.clone(), estimate.clone());
    rest.lines.remove(place);
    let press = move |_| write(&here, rest.clone()).unwrap_or_default();
    view! {
        <li>
            <span>
                <b>{name}</b>
                <span class="bill__reckoned"><span>{times}</span><span>{comes_to}</span></span>
            </span>
            <button type="button" class="key key--foot" aria-label=remove on:click=press>
                {"✕"}
            </button>
        </li>
    }
}

fn foot(bill: &Bill, estimate: &Estimate, sums: Totals) -> Node {
    let by_rate = taxes(estimate).unwrap_or_default();
    let any = estimate.tax.is_some() || !by_rate.is_empty();
    let tax = any.then(|| {
        let rates = by_rate.iter().map(|it| {
            let percent = bill.fmt.marked(it.percent.as_typed());
            view! {
                <dt>{text::tax_of(bill.lang, &percent)}</dt>
                <dd>{bill.amount(it.tax)}</dd>
            }
        });
        view! {
            <dt>{bill.word(ReportWord::BeforeTax)}</dt>
            <dd>{bill.amount(sums.net)}</dd>
            {rates.collect_view()}
        }
    });
    view! {
        <dl class="bill__sums">
            {tax}
            <dt><b>{bill.word(ReportWord::PriceRepair)}</b></dt>
            <dd><b>{bill.amount(sums.gross)}</b></dd>
        </dl>
    }
}

/// One amount so far: it stays until the first line is kept.
fn not_yet(bill: &Bill, price: Option<&Price>) -> Node {
    let amount = price.map(|price| {
        view! {
            <dl class="bill__sums">
                <dt>{bill.word(ReportWord::PriceRepair)}</dt>
                <dd>{bill.amount(price.repair.minor)}</dd>
            </dl>
        }
    });
    view! {
        {amount}
        <p class="hint">{bill.desk(Desk::BillHint)}</p>
        {template::take(bill)}
        {last_lines(bill)}
    }
}

/// The lines of the latest other job, offered with one key.
fn last_lines(bill: &Bill) -> Node {
    let (app, log) = (bill.app, bill.open.log.0.clone());
    let offered = RwSignal::new(None::<Estimate>);
    spawn_local(async move {
        let jobs = app.jobs.with_untracked(|list| {
            let mut jobs: Vec<(i64, String)> = list
                .iter()
                .filter(|job| job.log != log && !job.practice)
                .map(|job| (job.touched, job.log.clone()))
                .collect();
            jobs.order();
            jobs
        });
        for (_, log) in jobs.into_iter().rev().take(MOST_LOOKED_AT) {
            let sheet = app.read_log(&log).await;
            if let Some(estimate) = sheet.price().and_then(|price| price.estimate.clone()) {
                let _ = offered.try_set(Some(estimate));
                return;
            }
        }
    });
    let here = bill.clone();
    (move || {
        let estimate = offered.get()?;
        let here = here.clone();
        Some(key(Look::Plain, here.desk(Desk::LastLines), move || {
            let _ = write(&here, taxed(&here, estimate.lines.clone()));
        }))
    })
    .into_node()
}

/// How many jobs back lines are looked for.
const MOST_LOOKED_AT: usize = 10;

/// The form of one more line.
fn next_line(bill: &Bill) -> Node {
    let drafts = bill.drafts;
    let kind = RwSignal::new(LineKind::Part);
    let [words, quantity, each] = [("line_text", ""), ("line_quantity", "1"), ("line_each", "")]
        .map(|(name, text)| drafts.text(name, text));
    let taxed_now = RwSignal::new(true);
    let (rate, corner) = (drafts.text("line_rate", ""), RwSignal::new(None::<Corner>));
    let slip = RwSignal::new(None::<Slip>);
    let here = bill.clone();
    let add = move || {
        let line = Typed {
            kind: kind.get_untracked(),
            words,
            quantity,
            each,
            taxed: taxed_now.get_untracked(),
            rate,
            corner: corner.get_untracked(),
        };
        let line = line.line(&here);
        let outcome = line.and_then(|line| {
            let price = here.open.sheet.price();
            let known = price.and_then(|price| price.estimate.clone());
            let mut lines = known.map(|it| it.lines).unwrap_or_default();
            lines.push(line);
            write(&here, taxed(&here, lines)).map_err(Slip::Sum)
        });
        match outcome {
            Ok(()) => drafts.dropping()(),
            Err(wrong) => slip.set(Some(wrong)),
        }
    };
    // An hour of labour costs what the shop has set, unless an amount stands there already.
    let labour = bill.app.shop.with_untracked(|shop| shop.labour);
    let labour = labour.map(|minor| bill.fmt.marked(&plain(minor, bill.digits())));
    let hour = move |kind| {
        if let (LineKind::Labour, Some(amount)) = (kind, &labour) {
            each.update(|text| {
                if text.is_empty() {
                    text.clone_from(amount);
                }
            });
        }
    };
    let lang = bill.lang;
    let kinds = LineKind::ALL
        .iter()
        .map(|it| (*it, text::line_kind(lang, *it).to_owned()));
    let each_label = text::amount_in(lang, bill.word(ReportWord::LineEach), &bill.currency);
    let say = move || {
        slip.get().map(|slip| match slip {
            Slip::Quantity(slip) => text::decimal_slip(lang, slip),
            Slip::Each(slip) => text::amount_slip(lang, slip),
            Slip::Sum(fault) => text::estimate_fault(lang, fault),
        })
    };
    view! {
        {picks(bill.desk(Desk::NextLine), kinds.collect(), kind, hour)}
        {Field::words("line_text", words).show(bill.word(ReportWord::LineFor), "", drafts, add.clone())}
        {Field::decimal("line_quantity", quantity)
            .show(bill.word(ReportWord::LineQuantity), "", drafts, add.clone())}
        {Field::decimal("line_each", each).show(each_label, "", drafts, add.clone())}
        {toggle(bill.desk(Desk::Taxed), move || taxed_now.get(), move || {
            taxed_now.update(|it| *it = !*it);
        })}
        {for_which(bill, corner)}
        <details class="more" open={!rate.with_untracked(String::is_empty)}>
            <summary class="key key--foot">{text::pay(lang, Pay::OtherRate)}</summary>
            {Field::decimal("line_rate", rate)
                .show(text::pay(lang, Pay::OtherRate), "", drafts, || {})}
        </details>
        <p class="slip" role="alert">{say}</p>
        {key(Look::Plain, bill.desk(Desk::KeepLine), add)}
    }
}

/// The fields of a line.
struct Typed {
    kind: LineKind,
    words: RwSignal<String>,
    quantity: RwSignal<String>,
    each: RwSignal<String>,
    taxed: bool,
    rate: RwSignal<String>,
    corner: Option<Corner>,
}

impl Typed {
    fn line(self, bill: &Bill) -> Result<Line, Slip> {
        let number = |text: &str| Decimal::parse(text).map_err(Slip::Quantity);
        let rate = self.rate.get_untracked();
        let rate = Some(rate.trim()).filter(|rate| !rate.is_empty());
        Ok(Line {
            kind: self.kind,
            text: self.words.get_untracked().trim().to_owned(),
            quantity: number(&self.quantity.get_untracked())?,
            each: parse_minor(&self.each.get_untracked(), bill.digits()).map_err(Slip::Each)?,
            taxed: self.taxed,
            rate: rate.map(number).transpose()?,
            corner: self.corner,
        })
    }
}

/// Which wheel end a line is for, where the job is about several.
fn for_which(bill: &Bill, corner: RwSignal<Option<Corner>>) -> Option<Node> {
    let corners = bill.open.sheet.corners();
    let lang = bill.lang;
    let all = [(None, text::pay(lang, Pay::AllWheels).to_owned())];
    let each = corners
        .iter()
        .map(|at| (Some(*at), text::corner_title(lang, *at).to_owned()));
    let options = all.into_iter().chain(each).collect();
    (corners.len() > 1).then(|| picks(text::pay(lang, Pay::ForWhich), options, corner, |_| {}))
}

/// Lines with the tax that the shop has set.
pub(super) fn taxed(bill: &Bill, lines: Vec<Line>) -> Estimate {
    let tax = rule(bill);
    Estimate { lines, tax }
}

/// The tax that the shop has set.
pub(super) fn rule(bill: &Bill) -> Option<TaxRule> {
    bill.app.settings.with_untracked(|settings| {
        let percent = Decimal::parse(&settings.tax_percent).ok()?;
        let rounding = settings.tax_rounding;
        Some(TaxRule { percent, rounding })
    })
}

/// Writes the price that the lines come to; the last line taken away leaves the amount as it is.
pub(super) fn write(bill: &Bill, estimate: Estimate) -> Result<(), EstimateError> {
    let known = bill.open.sheet.price();
    let refit = known.and_then(|price| price.refit.clone());
    let price = match (estimate.lines.is_empty(), known) {
        (true, Some(known)) => Price {
            estimate: None,
            ..known.clone()
        },
        _ => priced(estimate, &bill.currency, refit)?,
    };
    bill.app.append(vec![Event::Price(price)]);
    Ok(())
}
