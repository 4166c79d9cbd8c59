//! Screen, sound, units; name and report; currency, tax and the van's letters.

use crate::platform::page;
use crate::platform::tone::{self, Sound as Tone};
use crate::text::{self, Desk, Lang, ReportWord, Say};
use crate::trade::money::{TaxRounding, is_van_mark};
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::settings::{Settings, Sound, Theme};
use crate::ui::state::App;
use crate::ui::view::prelude::*;
use crate::units::{Decimal, DecimalMark, System};

/// How the screen looks and sounds, and how numbers read; each choice is saved when it is made.
pub(super) fn screen(app: App) -> Node {
    let settings = app.settings.get_untracked();
    let lang = settings.lang;
    let say = |say| text::say(lang, say).to_owned();
    let system = RwSignal::new(settings.system);
    let mark = RwSignal::new(settings.mark);
    let theme = RwSignal::new(settings.theme);
    let sound = RwSignal::new(settings.sound);
    let systems = vec![
        (System::Metric, say(Say::UnitsMetric)),
        (System::Us, say(Say::UnitsUs)),
    ];
    let marks = vec![
        (DecimalMark::Dot, say(Say::MarkPoint)),
        (DecimalMark::Comma, say(Say::MarkComma)),
    ];
    let themes = vec![
        (Theme::Day, say(Say::NightOff)),
        (Theme::Night, say(Say::NightOn)),
    ];
    let sounds = vec![
        (Sound::On, say(Say::SoundOn)),
        (Sound::Off, say(Say::SoundOff)),
    ];
    let dress = move |theme: Theme| {
        page::set_theme(theme.code());
        change(app, move |it| it.theme = theme);
    };
    view! {
        {picks(say(Say::SettingsNight), themes, theme, dress)}
        {picks(say(Say::SettingsSound), sounds, sound, move |it| {
            change(app, move |settings| settings.sound = it);
        })}
        {key(Look::Plain, say(Say::TestSound), test_sound)}
        {picks(say(Say::SettingsUnits), systems, system, move |it| {
            change(app, move |settings| settings.system = it);
        })}
        {picks(say(Say::SettingsMark), marks, mark, move |it| {
            change(app, move |settings| settings.mark = it);
        })}
        {language(lang)}
    }
}

/// Who works here, and what the report says of the shop.
pub(super) fn names(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let on_report = || text::desk(lang, Desk::OnTheReport).to_owned();
    let field = |which, label: &str, hint| typed(app, which, label.to_owned(), hint);
    let word = |word| text::report(lang, word);
    view! {
        {field(
            Typed::Name,
            text::say(lang, Say::SettingsName),
            text::say(lang, Say::NameNeeded).to_owned(),
        )}
        {field(Typed::Shop, text::desk(lang, Desk::ShopName), on_report())}
        {field(Typed::Contact, word(ReportWord::Contact), on_report())}
        {field(Typed::Warranty, word(ReportWord::Warranty), on_report())}
    }
}

/// Currency and tax of an estimate, and the letters of an invoice's number.
pub(super) fn prices(app: App) -> Node {
    let settings = app.settings.get_untracked();
    let lang = settings.lang;
    let desk = |desk| text::desk(lang, desk).to_owned();
    let rounding = RwSignal::new(settings.tax_rounding);
    let roundings = TaxRounding::ALL
        .iter()
        .map(|it| (*it, text::tax_rounding(lang, *it).to_owned()))
        .collect();
    let currency = text::say(lang, Say::SettingsCurrency).to_owned();
    view! {
        {typed(app, Typed::Currency, currency, desk(Desk::CurrencyHint))}
        {typed(app, Typed::Tax, desk(Desk::TaxPercent), desk(Desk::TaxHint))}
        {picks(desk(Desk::TaxRounded), roundings, rounding, move |it| {
            change(app, move |settings| settings.tax_rounding = it);
        })}
        {typed(app, Typed::Van, desk(Desk::VanMark), desk(Desk::VanMarkHint))}
    }
}

/// The test plays whatever was chosen: it is asked for.
fn test_sound() {
    tone::unlock();
    tone::play(Tone::Saved);
}

pub(in crate::ui::screens) fn change(app: App, how: impl FnOnce(&mut Settings)) {
    app.settings.update(how);
    app.settings
        .with_untracked(|settings| settings.write(&app.shelf()));
}

fn language(lang: Lang) -> Node {
    let chosen = RwSignal::new(lang);
    let languages = vec![(Lang::English, text::desk(lang, Desk::English).to_owned())];
    picks(
        text::say(lang, Say::SettingsLanguage),
        languages,
        chosen,
        |_| {},
    )
}

/// A setting that is typed.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(in crate::ui::screens) enum Typed {
    Name,
    Shop,
    Currency,
    Tax,
    Van,
    Contact,
    Warranty,
}

pub(in crate::ui::screens) fn typed(app: App, which: Typed, label: String, hint: String) -> Node {
    let now = app.settings.with_untracked(|settings| match which {
        Typed::Name => settings.by.clone(),
        Typed::Shop => settings.shop_name.clone(),
        Typed::Currency => settings.currency.clone(),
        Typed::Tax => settings.tax_percent.clone(),
        Typed::Van => settings.van.clone(),
        Typed::Contact => settings.contact.clone(),
        Typed::Warranty => settings.warranty.clone(),
    });
    let write = move |event| {
        let text = event_target_value(&event);
        let text = text.trim().to_owned();
        change(app, move |settings| match which {
            Typed::Name => settings.by = text,
            Typed::Shop => settings.shop_name = text,
            Typed::Contact => settings.contact = text,
            Typed::Warranty => settings.warranty = text,
            Typed::Currency if is_code(&text) => settings.currency = text.to_ascii_uppercase(),
            Typed::Tax if text.is_empty() || Decimal::parse(&text).is_ok() => {
                settings.tax_percent = text;
            }
            Typed::Van if text.is_empty() || is_van_mark(&text.to_ascii_uppercase()) => {
                settings.van = text.to_ascii_uppercase();
            }
            Typed::Currency | Typed::Tax | Typed::Van => {}
        });
    };
    let (name, capitals) = match which {
        Typed::Name => ("name", "words"),
        Typed::Shop => ("shop_name", "words"),
        Typed::Currency => ("currency", "characters"),
        Typed::Tax => ("tax_percent", "off"),
        Typed::Van => ("van", "characters"),
        Typed::Contact => ("contact", "off"),
        Typed::Warranty => ("warranty", "sentences"),
    };
    view! {
        <label class="field">
            <span>{label}</span>
            <input
                id=name
                type="text"
                autocomplete="off"
                autocapitalize=capitals
                spellcheck="false"
                prop:value=now
                on:input=write
            />
        </label>
        <p class="hint">{hint}</p>
    }
}

/// A currency's code has three letters.
fn is_code(text: &str) -> bool {
    text.len() == 3 && text.chars().all(|c| c.is_ascii_alphabetic())
}
