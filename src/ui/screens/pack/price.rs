//! Two amounts: the whole repair, and inspection with putting it back.

use crate::job::entry::{Event, Money, Price};
use crate::job::practice::is_practice;
use crate::text::{self, Desk, Say};
use crate::trade::money::{AmountError, minor_digits, parse_minor, plain};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::{Field, focus};
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;
use crate::ui::screens::pack::keep;
use crate::ui::view::prelude::*;

/// The fields, and the currency they are in.
#[derive(Clone, Copy)]
struct Form {
    drafts: Drafts,
    repair: RwSignal<String>,
    refit: RwSignal<String>,
    slip: RwSignal<Option<AmountError>>,
}

/// The price; the last job's amounts stand there already.
pub fn price(at: &StepContext) -> Node {
    let currency = at.app.settings.with_untracked(|it| it.currency.clone());
    let form = form(at, &currency);
    let (here, code, lang) = (at.clone(), currency.clone(), at.lang);
    let keep_it = move || match amounts(form, &code) {
        Err(slip) => form.slip.set(Some(slip)),
        Ok(price) => {
            carry(&here, &price);
            keep(&here, form.drafts, vec![Event::Price(price)], || {});
        }
    };
    let label = |say| text::amount_in(lang, at.say(say), &currency);
    let bill = Route::Bill(at.open.log.0.clone()).to_hash();
    focus("repair");
    frame(
        at,
        view! {
            {Field::decimal("repair", form.repair)
                .show(label(Say::RepairPrice), "", form.drafts, keep_it.clone())}
            {Field::decimal("refit", form.refit)
                .show(label(Say::RefitPrice), "", form.drafts, keep_it.clone())}
        },
        view! {
            <p class="slip" role="alert">
                {move || form.slip.get().map(|slip| text::amount_slip(lang, slip))}
            </p>
            {key(Look::Primary, at.text().primary, keep_it)}
            {link(Look::Foot, text::desk(lang, Desk::InLines), bill)}
        },
    )
}

fn form(at: &StepContext, currency: &str) -> Form {
    let drafts = Drafts::of(at);
    let shelf = at.app.shelf();
    let known = at.sheet().price();
    let digits = minor_digits(currency);
    let text = |known: Option<&Money>, last: &str| {
        let known = known.filter(|money| money.currency == currency);
        let plain = known.map(|money| plain(money.minor, digits));
        let text = plain.or_else(|| shelf.setting(&format!("{last}:{currency}")));
        at.fmt.marked(&text.unwrap_or_default())
    };
    Form {
        drafts,
        repair: drafts.text("repair", text(known.map(|it| &it.repair), "last_repair")),
        refit: drafts.text(
            "refit",
            text(known.and_then(|it| it.refit.as_ref()), "last_refit"),
        ),
        slip: RwSignal::new(None),
    }
}

fn amounts(form: Form, currency: &str) -> Result<Price, AmountError> {
    let money = |text: RwSignal<String>| {
        let minor = parse_minor(&text.get_untracked(), minor_digits(currency))?;
        Ok(Money {
            minor,
            currency: currency.to_owned(),
        })
    };
    Ok(Price {
        repair: money(form.repair)?,
        refit: Some(money(form.refit)?),
        estimate: None,
    })
}

/// Keeps the amounts for the next job; practice has no price of its own.
fn carry(at: &StepContext, price: &Price) {
    if is_practice(at.sheet()) {
        return;
    }
    let shelf = at.app.shelf();
    let amounts = [
        ("last_repair", Some(&price.repair)),
        ("last_refit", price.refit.as_ref()),
    ];
    let amounts = amounts
        .into_iter()
        .filter_map(|(name, money)| Some((name, money?)));
    for (name, money) in amounts {
        let text = plain(money.minor, minor_digits(&money.currency));
        shelf.set_setting(&format!("{name}:{}", money.currency), &text);
    }
}
