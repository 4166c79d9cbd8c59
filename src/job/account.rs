//! The one account of a job: what was offered, agreed, done and declined, what is to pay, what came
//! in and went back, and what stands on invoices and credit notes.
//!
//! Only an answer of the customer with its amount makes a debt, and only work that was done makes it
//! due. A price, a line or a note that nobody said yes to never does.

mod documents;
mod offer;

pub use offer::{Offer, offer};

use crate::job::agreed::{Answered, answered};
use crate::job::entry::{Discount, Ending, EntryId, Event, Money, Scope};
use crate::job::sheet::JobState;
use crate::trade::money::{BilledFor, Estimate, Invoice, totals};
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

/// How far something is that the customer was asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChargeState {
    /// The customer said no.
    Declined,
    /// The customer said yes; it is not done, or is part of what was done.
    Agreed,
    /// The customer said yes, and it is done.
    Done,
}

/// What one answer of the customer comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Charge<'a> {
    /// The entry of the answer.
    pub of: &'a EntryId,
    /// What was asked for.
    pub what: BilledFor,
    /// At which wheel end, if it is for one.
    pub corner: Option<Corner>,
    /// In minor units; nothing where no amount was shown, or one in another currency.
    pub amount: Option<i64>,
    /// How far it is.
    pub state: ChargeState,
    /// In words: the part that further work is about.
    pub text: &'a str,
    /// The lines that the customer said yes to, where they come to the amount.
    pub lines: Option<Estimate>,
}

/// Whether anything is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// The job has not ended.
    Open,
    /// It ended, and what was done is to pay.
    Due,
    /// It ended before it was finished: nothing is to pay for it yet.
    NotDue,
}

/// The account.
#[derive(Clone, Debug, PartialEq)]
pub struct Account<'a> {
    /// The currency of all of it.
    pub currency: String,
    /// The whole repair as it is priced now; nothing without a price.
    pub offered: Option<i64>,
    /// What the customer was asked for, in order.
    pub charges: Vec<Charge<'a>>,
    /// What is taken off, in order.
    pub discounts: Vec<(&'a EntryId, &'a Discount)>,
    /// What came in, in minor units.
    pub paid: i64,
    /// What went back, in minor units.
    pub refunded: i64,
    /// Amounts in another currency; none of them counts.
    pub foreign: Vec<Money>,
    /// What stands under a number, in order.
    pub documents: Vec<&'a Invoice>,
    /// Whether anything is due.
    pub stage: Stage,
    /// Whether the record has all of its entries; else no sum of it is final.
    pub complete: bool,
}

/// The account of a job.
pub fn account(sheet: &JobState) -> Account<'_> {
    let answers = answered(sheet);
    let currency = currency(sheet, &answers);
    let stage = match sheet.ended().map(|ended| ended.ending) {
        None => Stage::Open,
        Some(Ending::Finished | Ending::Declined | Ending::NothingWrong) => Stage::Due,
        Some(Ending::NotSafeHere | Ending::LeftUnfinished) => Stage::NotDue,
    };
    let price = sheet.price().filter(|it| it.repair.currency == currency);
    let mut account = Account {
        offered: price.map(|price| price.repair.minor),
        charges: charges(sheet, &answers, &currency),
        discounts: Vec::new(),
        paid: 0,
        refunded: 0,
        foreign: Vec::new(),
        documents: sheet.invoices().map(|(_, invoice)| invoice).collect(),
        stage,
        complete: !sheet.is_incomplete(),
        currency,
    };
    for answer in &answers {
        let amount = answer.consent.amount.iter();
        let other = amount.filter(|it| it.currency != account.currency);
        account.foreign.extend(other.cloned());
    }
    account.take_in(sheet);
    account
}

/// That of the first amount that was agreed to, else of the price, else of the first payment.
fn currency(sheet: &JobState, answers: &[Answered]) -> String {
    let yes = answers.iter().filter(|it| it.consent.yes);
    let agreed = yes.filter_map(|it| it.consent.amount.as_ref()).next();
    let price = sheet.price().map(|price| &price.repair);
    let known = agreed.or(price).map(|money| money.currency.clone());
    let paid = || Some(sheet.payments().next()?.1.amount.currency);
    known.or_else(paid).unwrap_or_default()
}

fn charges<'a>(sheet: &JobState, answers: &[Answered<'a>], currency: &str) -> Vec<Charge<'a>> {
    let ending = sheet.ended().map(|ended| ended.ending);
    let repaired = |it: &Answered| {
        let saved = it.consent.step.corner.and_then(|at| sheet.decided(at));
        let saved = saved.is_some_and(|it| matches!(it.decision, Decision::Keep | Decision::Watch));
        let done = matches!(ending, Some(Ending::Finished | Ending::Declined));
        it.consent.yes && it.consent.scope == Scope::Repair && done && !saved
    };
    let any = answers.iter().any(repaired);
    let charge = |it: &Answered<'a>| {
        let looked_at = matches!(ending, Some(Ending::Declined | Ending::NothingWrong));
        let done = match it.consent.scope {
            Scope::Repair => repaired(it),
            // Where a repair was done the inspection is part of it: common practice, no source.
            Scope::Teardown => looked_at && !any,
            Scope::Extra => looked_at || ending == Some(Ending::Finished),
        };
        Charge {
            of: &it.entry.id,
            what: match it.consent.scope {
                Scope::Teardown => BilledFor::Inspection,
                Scope::Repair => BilledFor::Repair,
                Scope::Extra => BilledFor::Further,
            },
            corner: it.consent.step.corner,
            amount: amount(it, currency),
            state: match (it.consent.yes, done) {
                (false, _) => ChargeState::Declined,
                (true, false) => ChargeState::Agreed,
                (true, true) => ChargeState::Done,
            },
            text: it.mishap.map_or("", |mishap| &mishap.part),
            lines: lines(it),
        }
    };
    answers.iter().map(charge).collect()
}

fn amount(answer: &Answered, currency: &str) -> Option<i64> {
    let amount = answer.consent.amount.as_ref();
    amount
        .filter(|it| it.currency == currency)
        .map(|it| it.minor)
}

/// The lines that an answer to a repair was about: those that come to its amount.
fn lines(answer: &Answered) -> Option<Estimate> {
    let amount = answer.consent.amount.as_ref()?;
    let (scope, price) = (answer.consent.scope, answer.price?);
    let same = scope == Scope::Repair && price.repair.currency == amount.currency;
    let estimate = price.estimate.as_ref().filter(|_| same)?;
    let corner = answer.consent.step.corner;
    let mut ways = [(true, false), (true, true), (false, true)]
        .into_iter()
        .map(|(own, shared)| part_of(estimate, corner, own, shared))
        .chain([estimate.clone()]);
    ways.find(|part| totals(part).is_ok_and(|sums| sums.gross == amount.minor))
}

/// The lines of an estimate for one wheel end, and those for none by name.
fn part_of(estimate: &Estimate, corner: Option<Corner>, own: bool, shared: bool) -> Estimate {
    let is_in = |of: Option<Corner>| match of {
        None => shared,
        of => own && of == corner,
    };
    let lines = estimate.lines.iter().filter(|line| is_in(line.corner));
    Estimate {
        lines: lines.cloned().collect(),
        tax: estimate.tax.clone(),
    }
}

impl<'a> Account<'a> {
    fn take_in(&mut self, sheet: &'a JobState) {
        for entry in sheet.counting() {
            let (amount, sum) = match &entry.what {
                Event::Paid(paid) => (&paid.amount, &mut self.paid),
                Event::Refunded(paid) => (&paid.amount, &mut self.refunded),
                Event::Discount(discount) if discount.amount.currency == self.currency => {
                    self.discounts.push((&entry.id, discount));
                    continue;
                }
                Event::Discount(discount) => {
                    self.foreign.push(discount.amount.clone());
                    continue;
                }
                _ => continue,
            };
            match amount.currency == self.currency {
                true => *sum = sum.saturating_add(amount.minor),
                false => self.foreign.push(amount.clone()),
            }
        }
    }

    fn of(&self, is: impl Fn(&Charge) -> bool) -> i64 {
        let charges = self.charges.iter().filter(|charge| is(charge));
        let amounts = charges.filter_map(|charge| charge.amount);
        amounts.fold(0, i64::saturating_add)
    }

    /// What the customer said yes to, in minor units; the inspection is part of a repair.
    pub fn agreed(&self) -> i64 {
        let yes = |it: &Charge| it.state != ChargeState::Declined;
        let repair = |it: &Charge| it.what == BilledFor::Repair && yes(it);
        let repaired = self.charges.iter().any(repair);
        self.of(|it| {
            let by_itself = it.what != BilledFor::Inspection || it.state == ChargeState::Done;
            yes(it) && (by_itself || !repaired)
        })
    }

    /// What was agreed and done, in minor units.
    pub fn done(&self) -> i64 {
        self.of(|it| it.state == ChargeState::Done)
    }

    /// What was declined, in minor units: never to pay.
    pub fn declined(&self) -> i64 {
        self.of(|it| it.state == ChargeState::Declined)
    }

    /// What is taken off what was done, in minor units; never more than that.
    pub fn discount(&self) -> i64 {
        let all = self.discounts.iter().map(|(_, it)| it.amount.minor.max(0));
        all.fold(0, i64::saturating_add).min(self.done().max(0))
    }

    /// What there is to pay in all, in minor units: what was agreed and done less what is taken off;
    /// nothing before the end.
    pub fn to_pay(&self) -> i64 {
        match self.stage {
            Stage::Due => self.done().saturating_sub(self.discount()),
            Stage::Open | Stage::NotDue => 0,
        }
    }

    /// What came in and stayed, in minor units.
    pub fn received(&self) -> i64 {
        self.paid.saturating_sub(self.refunded)
    }

    /// What is still to pay, in minor units.
    pub fn still_to_pay(&self) -> i64 {
        self.to_pay().saturating_sub(self.received()).max(0)
    }

    /// What came in beyond what is to pay, once the job has ended as it will stay; before that it is
    /// paid in advance.
    pub fn overpaid(&self) -> i64 {
        match self.stage {
            Stage::Due => self.received().saturating_sub(self.to_pay()).max(0),
            Stage::Open | Stage::NotDue => 0,
        }
    }

    /// Something was agreed to or done without an amount: it is to be asked again.
    pub fn is_unpriced(&self) -> bool {
        let no_amount = |it: &Charge| {
            let counts = match it.what {
                BilledFor::Inspection => it.state == ChargeState::Done,
                _ => it.state != ChargeState::Declined,
            };
            counts && it.amount.is_none()
        };
        self.charges.iter().any(no_amount)
    }

    /// Whether it can be said that all is paid: never of an incomplete record, nor of what has no
    /// amount or another currency.
    pub fn is_settled(&self) -> bool {
        let known = self.complete && !self.is_unpriced() && self.foreign.is_empty();
        known && self.stage == Stage::Due && self.still_to_pay() == 0
    }
}

#[cfg(test)]
mod tests;
