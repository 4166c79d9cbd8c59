//! The loose list: everything that was touched, how far it is, who had it last and with what, in
//! words a second technician understands; and what else is off, named by hand.

use std::sync::Arc;

use crate::job::entry::Event;
use crate::job::loose::{Row, put_back, rows, wrench_for};
use crate::job::manual_item::{Also, named, next_place};
use crate::report::{item_name, stamp};
use crate::text::{self, Desk, Lang, Say};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind, Step, StepKey};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picks::picks;
use crate::ui::parts::strip::{banners, of_record};
use crate::ui::route::Route;
use crate::ui::screens::takeover::corner_title;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;
use crate::units::{Format, TorqueUnit, TypedTorque, Unit};

/// The loose list of the open job.
pub fn loose(app: App) -> Node {
    let (lang, fmt) = app
        .settings
        .with_untracked(|settings| (settings.lang, settings.format()));
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let rows = rows(&open.sheet, &open.steps);
        let none = rows.iter().all(|row| !row.hold.is_loose());
        let say = match (none, open.sheet.is_incomplete()) {
            (true, true) => None,
            (true, false) => Some(Say::NothingLoose),
            (false, _) => Some(Say::LooseSay),
        };
        let several = open.sheet.corners().len() > 1;
        let lists = by_corner(&rows, several).into_iter().map(|(corner, rows)| {
            let shown = rows.into_iter().map(|row| one(app, &open, row, lang, fmt));
            let shown = shown.collect_view();
            view! {
                {corner.map(|corner| corner_title(lang, corner, None))}
                <ol class="loose__list">{shown}</ol>
            }
        });
        let lists = lists.collect_view();
        let primary = link(
            Look::Primary,
            text::say(lang, Say::Resume),
            Route::Job(open.log.0.clone()).to_hash(),
        );
        view! {
            <main class="desk loose">
                <h1>{text::say(lang, Say::LooseTitle)}</h1>
                {banners(app)}
                {of_record(&open, lang)}
                {say.map(|say| view! { <p>{text::say(lang, say)}</p> })}
                {lists}
                {(!none).then(|| view! { <p>{text::say(lang, Say::LooseBlocks)}</p> })}
                {primary}
                {also(app, &open, lang)}
            </main>
        }
    })
    .into_node()
}

/// The rows as they stand in one list, or where there are several corners in one of each.
fn by_corner<'a, 'b>(
    rows: &'b [Row<'a>],
    several: bool,
) -> Vec<(Option<Corner>, Vec<&'b Row<'a>>)> {
    if !several {
        return vec![(None, rows.iter().collect())];
    }
    let of = |corner: &Corner| {
        let here = rows.iter().filter(|row| row.item.corner == *corner);
        (Some(*corner), here.collect::<Vec<_>>())
    };
    let all = Corner::ALL.iter().map(of);
    all.filter(|(_, rows)| !rows.is_empty()).collect()
}

fn one(app: App, open: &Arc<Open>, row: &Row, lang: Lang, fmt: Format) -> Node {
    let stage = row.stage.filter(|_| row.hold.is_loose());
    let state = match stage {
        Some((stage, all)) => text::stage_of(lang, stage, all),
        None => text::hold_state(lang, row.hold).to_owned(),
    };
    let fixing = open.plan.fitted.fixing;
    let mishap = row.mishap.map(|it| text::mishap(lang, it.kind, fixing));
    let who = row.entry.map(|entry| {
        let when = stamp(
            entry.at.recorded.unwrap_or(entry.at.utc_ms),
            entry.at.offset_min,
        );
        text::who_when(lang, &entry.by, &when)
    });
    let wrench = row
        .wrench
        .map(|(name, set)| text::with_wrench(lang, name, &fmt.typed(set).line()));
    let angled = row.angled.map(|by| text::angled(lang, by).to_owned());
    let recorded: Vec<String> = who.into_iter().chain(wrench).chain(angled).collect();
    let back = (row.item.group == ItemKind::Other && row.hold.is_loose())
        .then(|| back(app, open, row.item, lang, fmt));
    view! {
        <li>
            <b>{item_name(lang, &open.sheet, row.item)}</b>
            <span>{mishap.map(|what| format!("{what} · "))} {state}</span>
            <small>{recorded.join(" · ")}</small>
            {back}
        </li>
    }
}

/// The keys that close what was named by hand: its own specs, or back in place.
fn back(app: App, open: &Arc<Open>, item: Item, lang: Lang, fmt: Format) -> Node {
    let sheet = &open.sheet;
    let step = open
        .next()
        .map_or(StepKey::once(Step::End), |planned| planned.key);
    let specs = named(sheet, item)
        .into_iter()
        .filter_map(|also| also.spec.as_ref());
    let torque = specs.map(|(torque, _)| torque).max_by(|one, two| {
        let (one, two) = (one.torque(), two.torque());
        one.partial_cmp(&two).unwrap_or(core::cmp::Ordering::Equal)
    });
    let Some(torque) = torque else {
        let label = text::desk(lang, Desk::BackInPlace);
        return key(Look::Plain, label, move || {
            app.append(vec![put_back(step, item, None)]);
        });
    };
    let set = wrench_for(sheet, torque);
    let label = match &set {
        Some((name, set)) => text::set_wrench(lang, name, &fmt.typed(set).line()),
        None => {
            let value = fmt.typed(torque).line();
            format!("{value}. {}", text::say(lang, Say::NoWrenchFits))
        }
    };
    let done = text::desk(lang, Desk::AtItsSpec);
    view! {
        <p>{label}</p>
        {key(Look::Plain, done, move || {
            app.append(vec![put_back(step, item, set.clone())]);
        })}
    }
}

/// The fields that add something by hand.
fn also(app: App, open: &Arc<Open>, lang: Lang) -> Node {
    let drafts = Drafts::named(app, format!("{}:also", open.log.0));
    let here = open.next().and_then(|planned| planned.key.corner);
    let corners = open.sheet.corners().to_vec();
    let Some(first) = here.or_else(|| corners.first().copied()) else {
        return ().into_node();
    };
    let name = drafts.text("also-name", "");
    let value = drafts.text("also-value", "");
    let document = drafts.text("also-document", "");
    let corner = drafts.word("also-corner", first);
    let unit = drafts.word("also-unit", TorqueUnit::NewtonMetre);
    let label = |desk| text::desk(lang, desk);
    let where_at = (corners.len() > 1).then(|| {
        let corners = corners.into_iter();
        let corners = corners.map(|at| (at, text::corner_title(lang, at).to_owned()));
        picks(
            label(Desk::AtCorner),
            corners.collect(),
            corner,
            move |at: Corner| {
                drafts.set("also-corner", at.code());
            },
        )
    });
    let units = TorqueUnit::ALL
        .iter()
        .map(|unit| (*unit, unit.symbol().to_owned()));
    let units = picks(
        text::say(lang, Say::SpecUnit),
        units.collect(),
        unit,
        move |unit| {
            drafts.set("also-unit", unit.code());
        },
    );
    let open = open.clone();
    let add = move || {
        let name = name.get_untracked().trim().to_owned();
        let torque = TypedTorque::parse(&value.get_untracked(), unit.get_untracked()).ok();
        let document = document.get_untracked().trim().to_owned();
        let place = next_place(&open.sheet, corner.get_untracked());
        if let (false, Some(item)) = (name.is_empty(), place) {
            drafts.drop_with_tap();
            let spec = torque.map(|torque| (torque, document));
            app.append(vec![Event::Also(Also { item, name, spec })]);
        }
    };
    view! {
        <details class="more">
            <summary class="key key--foot">{label(Desk::AlsoOff)}</summary>
            {Field::words("also-name", name).show(label(Desk::AlsoName), "", drafts, || {})}
            {where_at}
            {Field::decimal("also-value", value).show(label(Desk::AlsoTorque), "", drafts, || {})}
            {units}
            {Field::words("also-document", document)
                .show(text::say(lang, Say::SpecDocument), "", drafts, || {})}
            {key(Look::Plain, label(Desk::PutOnList), add)}
        </details>
    }
}
