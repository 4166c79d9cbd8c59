//! What else is in the van: when a wrench is to be checked, the share of its range, stands, the
//! angle gauge and further dials.

use crate::job::kit::{typed_share, typed_stand, wrench_due};
use crate::job::runout::{RadiusError, radius_typed};
use crate::text::{self, Desk, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::Wrench;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::parts::today;
use crate::ui::screens::settings::van::{Van, due_day, slip_line};
use crate::ui::view::prelude::*;
use crate::units::{LengthUnit, MassUnit, System, Unit};

/// When a wrench was checked, how often it clicked since, and whether it is due.
pub(super) fn checked(van: Van, wrench: &Wrench) -> String {
    let clicked = van.clicked.get();
    let counted = clicked.iter().find(|(name, _)| *name == wrench.name);
    let counted = counted.map_or(0, |(_, clicks)| *clicks);
    let Some(today) = day_of(&today()) else {
        return String::new();
    };
    let clicks = wrench.upkeep.clicks.saturating_add(counted);
    let day = wrench.upkeep.checked.map(|day| day.to_string());
    let recorded = text::wrench_checked(van.lang, &day.unwrap_or_default(), clicks);
    match wrench_due(wrench, counted, today) {
        Some(due) => format!("{recorded}. {}", text::check_due(van.lang, due)),
        None => recorded,
    }
}

/// The jack stands and the angle gauge.
pub(super) fn stands_and_angle(van: Van) -> Node {
    let lang = van.lang;
    let gauge = move || van.kit.get().and_then(|kit| kit.more.angle_gauge) == Some(true);
    let turn = move || {
        let has = untrack(gauge);
        van.change(|kit| kit.more.angle_gauge = Some(!has));
    };
    view! {
        <ul class="van__wrenches">{move || stands(van)}</ul>
        {add_stand(van)}
        <div class="picks__keys">{toggle(text::desk(lang, Desk::AngleGauge), gauge, turn)}</div>
        {move || gauge().then(|| {
            let due = van.kit.get().and_then(|kit| kit.more.angle_due);
            due_day(van, "angle_due", text::angle_due(lang), due, |kit, due| {
                kit.more.angle_due = due;
            })
        })}
    }
}

/// The dials that were laid by, and the key that lays the one in use beside them.
pub(super) fn other_dials(van: Van) -> Node {
    let lang = van.lang;
    view! {
        <h3>{text::desk(lang, Desk::OtherDials)}</h3>
        <ul class="van__wrenches">{move || dials(van)}</ul>
        {key(Look::Foot, text::desk(lang, Desk::LayDialBy), move || {
            van.change(|kit| {
                let dial = kit.dial;
                if !kit.more.dials.contains(&dial) {
                    kit.more.dials.push(dial);
                }
            });
        })}
    }
}

/// The largest error in the dial's certificate; an empty field says that there is none.
pub(super) fn certificate(van: Van) -> Node {
    let (lang, drafts) = (van.lang, van.drafts);
    let Some(now) = van.kit.get() else {
        return ().into_node();
    };
    let unit = match van.fmt().system {
        System::Metric => LengthUnit::Millimetre,
        System::Us => LengthUnit::Thou,
    };
    let known = now.more.dial_error.filter(|known| known.unit == unit);
    let known = known.map(|known| known.number.as_typed().to_owned());
    let error = drafts.text("dial_error", known.unwrap_or_default());
    let slip: RwSignal<Option<RadiusError>> = RwSignal::new(None);
    let keep = move || match error.with_untracked(|text| radius_typed(text, unit)) {
        Ok(error) => van.change(|kit| kit.more.dial_error = error),
        Err(why) => slip.set(Some(why)),
    };
    let refused = move || slip.get().map(|_| text::desk(lang, Desk::ErrorSlip));
    let label = format!("{}, {}", text::desk(lang, Desk::DialError), unit.symbol());
    view! {
        {Field::decimal("dial_error", error).show(label, "", drafts, keep)}
        <p role="alert">{refused}</p>
        {key(Look::Plain, text::desk(lang, Desk::KeepError), keep)}
    }
}

/// The share of a wrench's range that is used.
pub(super) fn share(van: Van) -> Node {
    let (lang, drafts) = (van.lang, van.drafts);
    let (low, high) = (
        drafts.text("share_low", "20"),
        drafts.text("share_high", "100"),
    );
    let slip = RwSignal::new(None);
    let keep = move || {
        let typed = typed_share(&low.get_untracked(), &high.get_untracked());
        slip.set(typed.err());
        if let Ok(share) = typed {
            van.change(|kit| kit.more.share = Some(share));
        }
    };
    let desk = |desk| text::desk(lang, desk);
    view! {
        <details class="more">
            <summary class="key key--foot">{desk(Desk::ShareTitle)}</summary>
            {Field::decimal("share_low", low).show(desk(Desk::ShareLow), "", drafts, keep)}
            {Field::decimal("share_high", high).show(desk(Desk::ShareHigh), "", drafts, keep)}
            {slip_line(lang, slip)}
            {key(Look::Plain, text::say(lang, Say::Keep), keep)}
        </details>
    }
}

fn stands(van: Van) -> Node {
    let all = van.kit.get().map(|kit| kit.more.stands).unwrap_or_default();
    let fmt = van.fmt();
    let rows = all.into_iter().enumerate().map(|(place, stand)| {
        let line = format!("{}, {}", stand.name, fmt.typed(&stand.rating).line());
        let name = format!(
            "{}: {}",
            text::desk(van.lang, Desk::RemoveStand),
            stand.name
        );
        row(line, name, move || {
            van.change(|kit| {
                if place < kit.more.stands.len() {
                    kit.more.stands.remove(place);
                }
            });
        })
    });
    rows.collect_view()
}

/// Dials that were laid by; a tap takes one into use.
fn dials(van: Van) -> Node {
    let all = van.kit.get().map(|kit| kit.more.dials).unwrap_or_default();
    let fmt = van.fmt();
    let rows = all.into_iter().map(|dial| {
        let kind = text::dial_kind(van.lang, dial.kind());
        let division = fmt.length(dial.graduation(), 3).line();
        let line = text::dial_is(van.lang, &division, dial.divisions_per_turn(), kind);
        view! {
            <li>
                {toggle(
                    line,
                    move || van.kit.get().is_some_and(|kit| kit.dial == dial),
                    move || van.change(|kit| kit.dial = dial),
                )}
            </li>
        }
    });
    rows.collect_view()
}

fn row(line: String, name: String, remove: impl Fn() + 'static) -> Node {
    view! {
        <li>
            <span>{line}</span>
            <button type="button" class="key key--foot" aria-label=name on:click={move |_| remove()}>
                {"✕"}
            </button>
        </li>
    }
}

fn add_stand(van: Van) -> Node {
    let (lang, drafts) = (van.lang, van.drafts);
    let [name, rating] = ["stand_name", "stand_rating"].map(|it| drafts.text(it, ""));
    let metric = van.fmt().system == System::Metric;
    let unit = RwSignal::new(if metric {
        MassUnit::Kilogram
    } else {
        MassUnit::Pound
    });
    let slip = RwSignal::new(None);
    let add = move || {
        let (typed, marked) = (name.get_untracked(), rating.get_untracked());
        match typed_stand(&typed, &marked, unit.get_untracked()) {
            Err(wrong) => slip.set(Some(wrong)),
            Ok(stand) => {
                slip.set(None);
                van.change(|kit| kit.more.stands.push(stand));
                drafts.dropping()();
                name.set(String::new());
                rating.set(String::new());
            }
        }
    };
    let units = MassUnit::ALL.iter().map(|it| (*it, it.symbol().to_owned()));
    let desk = |desk| text::desk(lang, desk);
    view! {
        <details class="more">
            <summary class="key key--foot">{desk(Desk::AddStand)}</summary>
            {Field::words("stand_name", name).show(desk(Desk::StandName), "", drafts, add)}
            {Field::decimal("stand_rating", rating).show(desk(Desk::StandRating), "", drafts, add)}
            {picks(desk(Desk::StandUnit), units.collect(), unit, |_| {})}
            {slip_line(lang, slip)}
            {key(Look::Plain, text::say(lang, Say::Keep), add)}
        </details>
    }
}
