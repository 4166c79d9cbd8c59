//! The price of the inspection, asked before the customer is, where nobody has given it.

use crate::job::entry::{Event, Money, Price};
use crate::text::{self, Customer, Desk, Pay, Say};
use crate::trade::money::{AmountError, minor_digits, parse_minor};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::frame::instead;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// The price of the inspection first, where nobody has given it: no amount is made up, and an
/// inspection without a price is asked for without one.
pub fn first(at: &StepContext, asking: fn(&StepContext, Option<Money>) -> Node) -> Node {
    let given = RwSignal::new(None::<Option<Money>>);
    let here = at.clone();
    (move || match given.get() {
        Some(amount) => asking(&here, amount),
        None => price(&here, given),
    })
    .into_node()
}

/// What one wheel end of several costs, where the price does not say: it is typed first, and shown to
/// the customer as what is asked for.
pub fn divided(at: &StepContext, asking: fn(&StepContext, Option<Money>) -> Node) -> Node {
    let given = RwSignal::new(None::<Money>);
    let here = at.clone();
    (move || match given.get() {
        Some(amount) => asking(&here, Some(amount)),
        None => part(&here, given),
    })
    .into_node()
}

fn part(at: &StepContext, given: RwSignal<Option<Money>>) -> Node {
    let known = at.sheet().price().map(|price| &price.repair.currency);
    let currency = known.cloned().unwrap_or_default();
    let (drafts, lang) = (Drafts::of(at), at.lang);
    let typed = drafts.text("corner_price", "");
    let slip = RwSignal::new(None::<AmountError>);
    let label = text::amount_in(lang, at.say(Say::RepairPrice), &currency);
    let save = move || match parse_minor(&typed.get_untracked(), minor_digits(&currency)) {
        Err(wrong) => slip.set(Some(wrong)),
        Ok(minor) => {
            let currency = currency.clone();
            given.set(Some(Money { minor, currency }));
        }
    };
    let refused = move || slip.get().map(|slip| text::amount_slip(lang, slip));
    let pay = |say| text::pay(lang, say);
    instead(
        at,
        view! {
            <p>{pay(Pay::ForThisOne)}</p>
            {Field::decimal("corner_price", typed).show(label, "", drafts, save.clone())}
        },
        view! {
            <p class="slip" role="alert">{refused}</p>
            {key(Look::Primary, pay(Pay::Ask), save)}
        },
    )
}

fn price(at: &StepContext, given: RwSignal<Option<Option<Money>>>) -> Node {
    let known = at.sheet().price().cloned();
    let currency = known.as_ref().map_or_else(
        || at.app.settings.with_untracked(|it| it.currency.clone()),
        |price| price.repair.currency.clone(),
    );
    let (drafts, lang) = (Drafts::of(at), at.lang);
    let typed = drafts.text("refit", "");
    let slip = RwSignal::new(None::<AmountError>);
    let label = text::amount_in(lang, at.say(Say::RefitPrice), &currency);
    let here = at.clone();
    let save = move || {
        let minor = parse_minor(&typed.get_untracked(), minor_digits(&currency));
        match minor {
            Err(wrong) => slip.set(Some(wrong)),
            Ok(minor) => {
                let currency = currency.clone();
                let amount = Some(Money { minor, currency });
                drafts.dropping()();
                match known.clone() {
                    // The step is shown again with the price that it now has.
                    Some(known) => here.write(vec![Event::Price(Price {
                        refit: amount,
                        ..known
                    })]),
                    None => given.set(Some(amount)),
                }
            }
        }
    };
    let refused = move || slip.get().map(|slip| text::amount_slip(lang, slip));
    let say = text::customer(lang, Customer::InspectionPriceFirst);
    let desk = |desk| text::desk(lang, desk);
    instead(
        at,
        view! {
            <p>{say}</p>
            {Field::decimal("refit", typed).show(label, "", drafts, save.clone())}
        },
        view! {
            <p class="slip" role="alert">{refused}</p>
            {key(Look::Primary, desk(Desk::SavePrice), save)}
            {key(Look::Plain, desk(Desk::AskWithoutPrice), move || given.set(Some(None)))}
        },
    )
}
