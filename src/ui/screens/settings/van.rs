//! The van kit: wrenches with their ranges, and the dial.

use crate::ui::react::spawn_local;
use chrono::NaiveDate;

use crate::job::entry::{Carried, Event, LogId};
use crate::job::kit::{self, KitError, typed_dial, typed_upkeep, typed_wrench};
use crate::text::{self, BookWord, Desk, Lang, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::Wrench;
use crate::trade::play::{Dial, DialKind};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::screens::settings::more;
use crate::ui::state::App;
use crate::ui::view::prelude::*;
use crate::units::{Format, LengthUnit, System, TorqueUnit, Unit};

/// The kit as it is read, and the one way to change it.
#[derive(Clone, Copy)]
pub(super) struct Van {
    app: App,
    pub(super) lang: Lang,
    pub(super) kit: RwSignal<Option<Carried>>,
    /// How often each wrench clicked in the jobs on this phone, by its name.
    pub(super) clicked: RwSignal<Vec<(String, u32)>>,
    pub(super) drafts: Drafts,
}

impl Van {
    pub(super) fn fmt(self) -> Format {
        self.app.settings.with(|settings| settings.format())
    }

    /// Changes the kit on the screen and keeps it in its log.
    pub(super) fn change(self, how: impl FnOnce(&mut Carried)) {
        self.kit.update(|kit| {
            if let Some(kit) = kit {
                how(kit);
            }
        });
        let Some(kit) = self.kit.get_untracked() else {
            return;
        };
        let app = self.app;
        spawn_local(async move {
            app.append_to(LogId(kit::LOG.to_owned()), vec![Event::Carried(kit)])
                .await;
        });
    }
}

/// The torque wrenches of the van and the share of their range that is used.
pub(super) fn torque_wrenches(van: Van) -> Node {
    let (form, _) = wrench_form(van, false);
    view! {
        <ul class="van__wrenches">{move || wrenches(van)}</ul>
        {form}
        {move || range(van)}
        {more::share(van)}
        <p class="hint">{text::book(van.lang, BookWord::Clicks)}</p>
    }
}

/// The dial in use and the others in the van.
pub(super) fn dials(van: Van) -> Node {
    view! {
        {move || dial(van)}
        {move || dial_due(van)}
        {move || more::certificate(van)}
        {other_dial(van)}
        {more::other_dials(van)}
    }
}

/// The wrenches of the van with an open form for the next, and what takes a half typed one: false
/// where it is none, which the form says.
pub(in crate::ui::screens) fn own_wrenches(app: App) -> (Node, impl Fn() -> bool + Copy) {
    let van = read(app);
    let (form, add) = wrench_form(van, true);
    let list = view! { <ul class="van__wrenches">{move || wrenches(van)}</ul> {form} };
    (list.into_node(), add)
}

/// The kit of this van, read as soon as it can be.
pub(super) fn read(app: App) -> Van {
    let van = Van {
        app,
        lang: app.settings.with_untracked(|settings| settings.lang),
        kit: RwSignal::new(None),
        clicked: RwSignal::new(Vec::new()),
        drafts: Drafts::named(app, kit::LOG.to_owned()),
    };
    spawn_local(async move {
        let carried = app.van_kit().await;
        let _ = van.kit.try_set(Some(carried.clone()));
        let clicked = app.clicks(&carried.wrenches).await;
        let _ = van.clicked.try_set(clicked);
    });
    van
}

fn wrenches(van: Van) -> Node {
    let kit = van.kit.get();
    let all = kit.map(|kit| kit.wrenches).unwrap_or_default();
    if all.is_empty() {
        return view! { <li>{text::say(van.lang, Say::NoWrenches)}</li> };
    }
    let fmt = van.fmt();
    let rows = all.into_iter().enumerate().map(|(place, wrench)| {
        let recorded = |torque| fmt.torque_in(torque, wrench.unit, 0).line();
        let line = text::wrench_range(van.lang, &wrench.name, &recorded(wrench.low), &recorded(wrench.high));
        let remove = move || {
            van.change(|kit| {
                if place < kit.wrenches.len() {
                    kit.wrenches.remove(place);
                }
            });
        };
        let name = format!("{}: {}", text::say(van.lang, Say::RemoveWrench), wrench.name);
        let checked = more::checked(van, &wrench);
        view! {
            <li>
                <span>{line} {" "} <small>{checked}</small></span>
                <button type="button" class="key key--foot" aria-label=name on:click={move |_| remove()}>
                    {"✕"}
                </button>
            </li>
        }
    });
    rows.collect_view()
}

/// Which share of a wrench's range is used.
fn range(van: Van) -> Node {
    let set = van.kit.get().and_then(|kit| kit.more.share);
    let line = match set {
        Some((low, high)) => text::share_used(van.lang, low, high),
        None => text::desk(van.lang, Desk::WrenchRange).to_owned(),
    };
    view! { <p class="hint">{line}</p> }
}

pub(super) fn slip_line(lang: Lang, slip: RwSignal<Option<KitError>>) -> Node {
    let line = move || slip.get().map(|slip| text::kit_slip(lang, slip));
    view! { <p class="slip" role="alert">{line}</p> }
}

/// The form of a wrench, and what takes its fields: true where they are empty or were taken.
fn wrench_form(van: Van, open: bool) -> (Node, impl Fn() -> bool + Copy) {
    let (lang, drafts) = (van.lang, van.drafts);
    let texts = [
        "wrench_name",
        "wrench_low",
        "wrench_high",
        "wrench_mark",
        "wrench_checked",
        "wrench_clicks",
    ];
    let texts = texts.map(|it| drafts.text(it, ""));
    let [name, low, high, mark, checked, clicks] = texts;
    let metric = van.fmt().system == System::Metric;
    let unit = RwSignal::new(if metric {
        TorqueUnit::NewtonMetre
    } else {
        TorqueUnit::PoundFoot
    });
    let slip = RwSignal::new(None);
    let add = move || {
        if texts
            .iter()
            .all(|text| text.with_untracked(|text| text.trim().is_empty()))
        {
            return true;
        }
        let typed = |text: RwSignal<String>| text.get_untracked();
        let unit = unit.get_untracked();
        let wrench = typed_wrench(&typed(name), &typed(low), &typed(high), unit);
        let upkeep = typed_upkeep(&typed(mark), unit, &typed(checked), &typed(clicks));
        let wrench = wrench.and_then(|wrench| {
            Ok(Wrench {
                upkeep: upkeep?,
                ..wrench
            })
        });
        // Before the kit was read there is nothing to put it into.
        let taken = wrench.is_ok() && van.kit.with_untracked(Option::is_some);
        slip.set(wrench.as_ref().err().copied());
        if let (Ok(wrench), true) = (wrench, taken) {
            put(van, wrench);
            drafts.dropping()();
            for text in texts {
                text.set(String::new());
            }
        }
        taken
    };
    let press = move || {
        add();
    };
    let units = TorqueUnit::ALL
        .iter()
        .map(|it| (*it, it.symbol().to_owned()));
    let say = |say| text::say(lang, say);
    let field = |field: Field, desk| field.show(text::desk(lang, desk), "", drafts, press);
    let form = view! {
        <details class="more" open=open>
            <summary class="key key--foot">{say(Say::AddWrench)}</summary>
            {Field::words("wrench_name", name).show(say(Say::WrenchName), "", drafts, press)}
            {Field::decimal("wrench_low", low).show(say(Say::WrenchLow), "", drafts, press)}
            {Field::decimal("wrench_high", high).show(say(Say::WrenchHigh), "", drafts, press)}
            {picks(say(Say::WrenchUnit), units.collect(), unit, |_| {})}
            {field(Field::decimal("wrench_mark", mark), Desk::WrenchMark)}
            {field(Field::words("wrench_checked", checked), Desk::WrenchChecked)}
            {field(Field::decimal("wrench_clicks", clicks), Desk::WrenchClicks)}
            {slip_line(lang, slip)}
            {key(Look::Plain, say(Say::Keep), press)}
        </details>
    };
    (form.into_node(), add)
}

/// A wrench of a name that is there already takes its place.
fn put(van: Van, wrench: Wrench) {
    van.change(|kit| {
        kit.wrenches.retain(|one| one.name != wrench.name);
        kit.wrenches.push(wrench);
    });
}

/// The dials that most vans have, and the dial as it is.
fn dial(van: Van) -> Node {
    let Some(now) = van.kit.get().map(|kit| kit.dial) else {
        return ().into_node();
    };
    let presets = [
        (Dial::HUNDREDTH_MM, Desk::DialHundredth),
        (Dial::THOU, Desk::DialThou),
        (Dial::HALF_THOU, Desk::DialHalfThou),
    ];
    let keys = presets.map(|(dial, label)| {
        toggle(
            text::desk(van.lang, label),
            move || now == dial,
            move || van.change(|kit| carry(kit, dial)),
        )
    });
    let division = van.fmt().length(now.graduation(), 3).line();
    let kind = text::dial_kind(van.lang, now.kind());
    view! {
        <p>{text::dial_is(van.lang, &division, now.divisions_per_turn(), kind)}</p>
        <div class="picks__keys">{keys.into_iter().collect_view()}</div>
    }
}

/// Another dial has another day.
fn carry(kit: &mut Carried, dial: Dial) {
    if kit.dial != dial {
        kit.dial_due = None;
        kit.more.dial_error = None;
    }
    kit.dial = dial;
}

fn dial_due(van: Van) -> Node {
    let now = van.kit.get().and_then(|kit| kit.dial_due);
    let label = text::desk(van.lang, Desk::DialDue);
    due_day(van, "dial_due", label, now, |kit, due| kit.dial_due = due)
}

/// The day by which an instrument is to be checked again; an empty field says that it is not known.
pub(super) fn due_day(
    van: Van,
    name: &'static str,
    label: &'static str,
    now: Option<NaiveDate>,
    put: fn(&mut Carried, Option<NaiveDate>),
) -> Node {
    let (lang, drafts) = (van.lang, van.drafts);
    let day = drafts.text(name, now.map(|day| day.to_string()).unwrap_or_default());
    let keep = move || {
        let typed = day.get_untracked();
        let due = day_of(&typed);
        if due.is_some() || typed.trim().is_empty() {
            van.change(|kit| put(kit, due));
        }
    };
    view! {
        {Field::words(name, day).show(label, "", drafts, keep)}
        {key(Look::Plain, text::desk(lang, Desk::KeepDay), keep)}
    }
}

fn other_dial(van: Van) -> Node {
    let (lang, drafts) = (van.lang, van.drafts);
    let division = drafts.text("dial_division", "");
    let turn = drafts.text("dial_turn", "100");
    let unit = RwSignal::new(LengthUnit::Millimetre);
    let kind = RwSignal::new(DialKind::Plunger);
    let slip = RwSignal::new(None);
    let keep = move || {
        let (division, turn) = (division.get_untracked(), turn.get_untracked());
        let dial = typed_dial(&division, unit.get_untracked(), &turn, kind.get_untracked());
        slip.set(dial.err());
        if let Ok(dial) = dial {
            van.change(|kit| carry(kit, dial));
        }
    };
    let units = [LengthUnit::Millimetre, LengthUnit::Inch].map(|it| (it, it.symbol().to_owned()));
    let kinds = DialKind::ALL
        .iter()
        .map(|it| (*it, text::dial_kind(lang, *it).to_owned()));
    let say = |say| text::say(lang, say);
    view! {
        <details class="more">
            <summary class="key key--foot">{text::desk(lang, Desk::DialOther)}</summary>
            {Field::decimal("dial_division", division).show(say(Say::DialDivision), "", drafts, keep)}
            {picks(text::desk(lang, Desk::DivisionUnit), units.to_vec(), unit, |_| {})}
            {Field::decimal("dial_turn", turn).show(say(Say::DialTurn), "", drafts, keep)}
            {picks(say(Say::DialKind), kinds.collect(), kind, |_| {})}
            {slip_line(lang, slip)}
            {key(Look::Plain, text::desk(lang, Desk::KeepDial), keep)}
        </details>
    }
}
