//! The shop's settings: kept in the shop, taken over on a van.

use crate::ui::react::spawn_local;

use crate::job::entry::{Money, Shop, ShopRetorque};
use crate::report::money;
use crate::text::{self, Desk, Flow, Lang, ReportWord, Say};
use crate::trade::money::{minor_digits, parse_minor, plain};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;
use crate::units::{DistanceUnit, Format, System, Typed, Unit};

/// The screen of the shop's settings.
pub fn shop(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let flow = move |word| text::flow(lang, word);
    view! {
        <main class="desk flow">
            <h1>{flow(Flow::ShopTitle)}</h1>
            {banners(app)}
            {offer(app)}
            <p>{flow(Flow::ShopSay)}</p>
            {move || form(app, lang, &app.shop.get())}
            {link(Look::Foot, text::say(lang, Say::Back), Route::ShopLists.to_hash())}
        </main>
    }
}

/// The unit of a distance that nobody told.
fn unit(app: App) -> DistanceUnit {
    match app.settings.with_untracked(|settings| settings.system) {
        System::Metric => DistanceUnit::Kilometre,
        System::Us => DistanceUnit::Mile,
    }
}

fn form(app: App, lang: Lang, known: &Shop) -> Node {
    let (flow, fmt) = (
        move |word| text::flow(lang, word),
        app.settings.with_untracked(|it| it.format()),
    );
    let currency = app.settings.with_untracked(|it| it.currency.clone());
    let digits = minor_digits(&currency);
    let unit = known
        .retorque
        .as_ref()
        .map_or(unit(app), |rule| rule.after.unit);
    let drafts = Drafts::named(app, "shop".to_owned());
    let number = |n: Option<u16>| n.map(|n| n.to_string()).unwrap_or_default();
    let rule = known.retorque.as_ref();
    let labour = known.labour.map(|minor| fmt.marked(&plain(minor, digits)));
    let labour = drafts.text("labour", labour.unwrap_or_default());
    let warranty = drafts.text(
        "warranty",
        app.settings.with_untracked(|it| it.warranty.clone()),
    );
    let after = rule.map(|rule| rule.after.number.as_typed().to_owned());
    let after = drafts.text("retorque_after", after.unwrap_or_default());
    let days = drafts.text("retorque_days", number(rule.map(|rule| rule.days)));
    let keep = drafts.text("keep_days", number(known.keep_days));
    let slip = RwSignal::new(None::<Flow>);
    let lines: usize = known.templates.iter().map(|it| it.lines.len()).sum();
    let typed = move |field: RwSignal<String>| field.get_untracked().trim().to_owned();
    let press = move || {
        let read = || {
            let labour = optional(&typed(labour), |text| parse_minor(text, digits).ok())?;
            let (after, days) = (typed(after), typed(days));
            let retorque = match (after.is_empty(), days.is_empty()) {
                (true, true) => None,
                _ => Some(ShopRetorque {
                    after: Typed::parse(&after, unit)
                        .ok()
                        .filter(|it| whole(it.number.as_typed()))?,
                    days: days.parse().ok().filter(|days| *days > 0)?,
                }),
            };
            let keep_days = optional(&typed(keep), |text| text.parse().ok().filter(|n| *n > 0))?;
            Some((labour, retorque, keep_days))
        };
        let Some((labour, retorque, keep_days)) = read() else {
            slip.set(Some(Flow::ShopSlip));
            return;
        };
        drafts.dropping()();
        app.settings.update(|it| it.warranty = typed(warranty));
        app.settings.with_untracked(|it| it.write(&app.shelf()));
        keep_it(app, move |shop| {
            (shop.labour, shop.retorque, shop.keep_days) = (labour, retorque, keep_days);
        });
    };
    let drop_lines = move || keep_it(app, |shop| shop.templates.clear());
    let days_label = flow(Flow::RetorqueDays);
    let after_label = format!("{} ({})", flow(Flow::RetorqueAfter), unit.symbol());
    view! {
        {Field::decimal("labour", labour)
            .show(text::amount_in(lang, flow(Flow::Labour), &currency), "", drafts, press)}
        {Field::words("warranty", warranty).show(flow(Flow::Warranty), "", drafts, press)}
        {Field::decimal("retorque_after", after).show(after_label, "", drafts, press)}
        {Field::decimal("retorque_days", days).show(days_label, "", drafts, press)}
        <p class="hint">{flow(Flow::RetorqueSay)}</p>
        {Field::decimal("keep_days", keep).show(flow(Flow::KeepDays), "", drafts, press)}
        <p class="hint">{flow(Flow::KeepDaysSay)}</p>
        <p class="slip" role="alert">{move || slip.get().map(flow)}</p>
        {key(Look::Primary, flow(Flow::KeepShop), press)}
        <h2>{flow(Flow::Templates)}</h2>
        <p class="hint">{flow(Flow::TemplatesSay)}</p>
        {(lines > 0).then(|| view! {
            <p>{text::lines(lang, lines)}</p>
            {key(Look::Foot, flow(Flow::DropTemplate), drop_lines)}
        })}
    }
}

/// Nothing for an empty text; `None` for one that is not read.
fn optional<T>(text: &str, read: impl FnOnce(&str) -> Option<T>) -> Option<Option<T>> {
    if text.is_empty() {
        return Some(None);
    }
    read(text).map(Some)
}

fn whole(number: &str) -> bool {
    !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit())
}

/// Keeps the shop's settings with one change.
pub fn keep_it(app: App, change: impl FnOnce(&mut Shop) + 'static) {
    spawn_local(async move {
        let mut shop = app.shop_here().await;
        change(&mut shop);
        let saved = app.keep_shop(shop).await;
        let lang = app.settings.with_untracked(|settings| settings.lang);
        app.recorded
            .set((!saved).then(|| text::say(lang, Say::ImportNotSaved).to_owned()));
    });
}

/// What the last file brought as the shop's settings, with each that differs; nothing where none
/// does.
pub fn offer(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let offered = RwSignal::new(None::<(String, Shop, Vec<String>)>);
    let taken = RwSignal::new(false);
    spawn_local(async move {
        let Some((id, shop)) = app.offered_shop().await else {
            return;
        };
        let fmt = app.settings.with_untracked(|settings| settings.format());
        let changes = changes(lang, fmt, &app.shop_here().await, &shop);
        if changes.is_empty() {
            app.take_shop(&id, shop).await;
        } else {
            let _ = offered.try_set(Some((id, shop, changes)));
        }
    });
    let flow = move |word| text::flow(lang, word);
    (move || {
        if taken.get() {
            return Some(view! { <p role="status">{flow(Flow::ShopTaken)}</p> });
        }
        let (id, shop, changes) = offered.get()?;
        let take = move || {
            let (id, shop) = (id.clone(), shop.clone());
            spawn_local(async move {
                app.take_shop(&id, shop).await;
                let _ = taken.try_set(true);
            });
        };
        let rows = changes.into_iter().map(|line| view! { <li>{line}</li> });
        Some(view! {
            <section class="notice">
                <p>{flow(Flow::ShopOffer)}</p>
                <ul>{rows.collect_view()}</ul>
                {key(Look::Plain, flow(Flow::TakeShop), take)}
            </section>
        })
    })
    .into_node()
}

/// Each setting that would change, in one line.
fn changes(lang: Lang, fmt: Format, here: &Shop, shop: &Shop) -> Vec<String> {
    let recorded = |shop: &Shop| recorded(lang, fmt, shop);
    let pairs = recorded(here).into_iter().zip(recorded(shop));
    let line = |((label, from, _), (_, to, is_set)): (Recorded, Recorded)| {
        let word = |text: String| match text.as_str() {
            "" => text::flow(lang, Flow::NotSet).to_owned(),
            _ => text,
        };
        (is_set && from != to).then(|| text::change(lang, label, &word(from), &word(to)))
    };
    pairs.filter_map(line).collect()
}

/// A setting: its label, its value, and whether taking it over would change anything.
type Recorded = (&'static str, String, bool);

fn recorded(lang: Lang, fmt: Format, shop: &Shop) -> Vec<Recorded> {
    let flow = |word| text::flow(lang, word);
    let tax = shop.tax.as_ref();
    let percent = tax.map(|tax| fmt.marked(tax.percent.as_typed()));
    let rounding = tax.map(|tax| text::tax_rounding(lang, tax.rounding).to_owned());
    let amount = |minor| {
        let currency = shop.currency.clone();
        money(fmt, &Money { minor, currency })
    };
    let share = shop
        .share
        .map(|(low, high)| text::share_used(lang, low, high));
    let rule = shop.retorque.as_ref();
    let rule =
        rule.map(|rule| text::retorque_rule(lang, &fmt.typed(&rule.after).line(), rule.days));
    let keep = shop.keep_days.map(|days| text::days(lang, days));
    let lines: usize = shop.templates.iter().map(|it| it.lines.len()).sum();
    let lines = (lines > 0).then(|| {
        let all = shop.templates.iter().flat_map(|it| &it.lines);
        let names: Vec<&str> = all.map(|line| line.text.as_str()).collect();
        format!("{} ({})", text::lines(lang, lines), names.join(", "))
    });
    let desk = |desk| text::desk(lang, desk);
    let currency = text::say(lang, Say::SettingsCurrency);
    let only_set = |label, value: Option<String>| {
        let set = value.is_some();
        (label, value.unwrap_or_default(), set)
    };
    let always = |label, value: Option<String>| (label, value.unwrap_or_default(), true);
    let set = |label, value: &str| (label, value.to_owned(), !value.is_empty());
    vec![
        set(desk(Desk::ShopName), &shop.name),
        set(text::report(lang, ReportWord::Contact), &shop.contact),
        set(currency, &shop.currency),
        only_set(desk(Desk::TaxPercent), percent),
        only_set(desk(Desk::TaxRounded), rounding),
        always(flow(Flow::Labour), shop.labour.map(amount)),
        set(flow(Flow::Warranty), &shop.warranty),
        only_set(flow(Flow::Share), share),
        always(flow(Flow::Retorque), rule),
        always(flow(Flow::KeepDays), keep),
        always(flow(Flow::Templates), lines),
    ]
}
