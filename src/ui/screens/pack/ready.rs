//! Before leaving: what is missing, which wrench does not fit, what the gauge can prove.

use crate::ui::react::spawn_local;

use crate::job::angled::{angle_gauge, angle_specs};
use crate::job::entry::{Reply, VehicleField};
use crate::job::judge;
use crate::job::kit::{mass_of, weak_stands, wrench_due};
use crate::job::ready::{ReadySpec, missing, ready_specs};
use crate::platform::keep as storage;
use crate::text::{self, Desk, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::Fit;
use crate::trade::wheel_end::NotDoneReason;
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::today;
use crate::ui::parts::wrenches::{has_no_wrench, take_wrenches};
use crate::ui::route::Route;
use crate::ui::view::prelude::*;

/// The last look. Where a spec has no wrench it is not left for: the van kit is mended first, or
/// the step is left undone with its reason.
pub fn ready(at: &StepContext) -> Node {
    let specs = ready_specs(at.sheet());
    let lacks = specs
        .iter()
        .any(|spec| matches!(spec.fit, Fit::Lacks { .. }));
    let (here, without) = (at.clone(), at.clone());
    let keys = if lacks {
        view! {
            <p class="slip" role="alert">{text::desk(at.lang, refusal(at))}</p>
            {take_wrenches(at)}
            {key(Look::Plain, text::desk(at.lang, Desk::LeaveWithout), move || {
                without.not_done(NotDoneReason::NoTool);
            })}
        }
    } else {
        key(Look::Primary, at.text().primary, move || {
            here.answer(Reply::Done);
        })
    };
    frame(
        at,
        view! {
            <div class="ready">
                {lacking(at)} {open_specs(at, &specs)} {wrenches(at, &specs)} {checks(at)}
                {stands(at)} {gauge(at)} {pages(at, &specs)} {saved(at)}
            </div>
        },
        keys,
    )
}

/// That no wrench is known says nothing of any; otherwise that none fits.
fn refusal(at: &StepContext) -> Desk {
    if has_no_wrench(at) {
        Desk::NoWrenchKnown
    } else {
        Desk::NoWrenchNoLeaving
    }
}

fn section(title: &'static str, body: Node) -> Node {
    view! {
        <section class="ready__part">
            <h2>{title}</h2>
            {body}
        </section>
    }
}

fn list(lines: Vec<String>) -> Node {
    let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
    view! { <ul>{lines.collect_view()}</ul> }
}

fn lacking(at: &StepContext) -> Node {
    let lines: Vec<String> = missing(at.sheet())
        .iter()
        .map(|item| text::kit_item(at.lang, *item).to_owned())
        .collect();
    let body = if lines.is_empty() {
        view! { <p>{text::kit_missing(at.lang, 0)}</p> }
    } else {
        list(lines)
    };
    section(at.say(Say::ReadyMissing), body)
}

/// Specs that are open or were not found, each with the way to its step.
fn open_specs(at: &StepContext, specs: &[ReadySpec]) -> Node {
    let way = |spec: &&ReadySpec| {
        let route = Route::Step(at.open.log.0.clone(), spec.step);
        let label = text::spec_item(at.lang, spec.item, at.open.plan.fitted.fixing);
        link(Look::Plain, label, route.to_hash())
    };
    let open: Vec<Node> = specs
        .iter()
        .filter(|spec| spec.spec.is_none())
        .map(|spec| way(&spec))
        .collect();
    let not_found: Vec<Node> = specs
        .iter()
        .filter(|spec| spec.is_not_found())
        .map(|spec| way(&spec))
        .collect();
    let keys = |keys: Vec<Node>| view! { <div class="ready__keys">{keys}</div> };
    let summary = text::specs_open(at.lang, open.len());
    let open = view! { <p>{summary}</p> {keys(open)} };
    view! {
        {section(at.say(Say::SpecsOpen), open)}
        {(!not_found.is_empty())
            .then(|| section(text::desk(at.lang, Desk::SpecsNotFound), keys(not_found)))}
    }
}

fn wrenches(at: &StepContext, specs: &[ReadySpec]) -> Node {
    let known = refusal(at) == Desk::NoWrenchNoLeaving;
    let misfits = specs.iter().filter(|_| known);
    let misfits = misfits.filter_map(|spec| misfit(at, spec));
    let lines: Vec<String> = misfits.chain(angles(at)).collect();
    let given = known && specs.iter().any(ReadySpec::is_given);
    let body = match (lines.is_empty(), given) {
        (false, _) => list(lines),
        (true, true) => view! { <p>{text::desk(at.lang, Desk::WrenchesFit)}</p> },
        (true, false) => view! { <p>{"–"}</p> },
    };
    section(at.say(Say::ReadyWrench), body)
}

fn misfit(at: &StepContext, ready: &ReadySpec) -> Option<String> {
    let Fit::Lacks { stage, why } = &ready.fit else {
        return None;
    };
    let typed = ready.spec.as_ref()?.torques().nth(*stage)?;
    let (item, value) = (
        text::spec_item(at.lang, ready.item, at.open.plan.fitted.fixing),
        at.fmt.typed(typed).line(),
    );
    Some(text::misfit(at.lang, item, &value, *why))
}

/// Specs with an angle for which the van has no gauge, or one that is past its check.
fn angles(at: &StepContext) -> Vec<String> {
    let gauge = angle_gauge(at.sheet(), day_of(&today()));
    let specs = angle_specs(at.sheet()).into_iter();
    let lines = specs.filter_map(|(item, angle)| {
        let angle = at.fmt.typed(angle).line();
        text::angle_lacks(
            at.lang,
            text::spec_item(at.lang, item, at.open.plan.fitted.fixing),
            &angle,
            gauge,
        )
    });
    lines.collect()
}

/// Wrenches that are to be checked: by the day, or by what clicked in the jobs on this phone.
fn checks(at: &StepContext) -> Node {
    let Some(carried) = at.sheet().carried().cloned() else {
        return ().into_node();
    };
    let (app, lang, due) = (at.app, at.lang, RwSignal::new(Vec::<String>::new()));
    spawn_local(async move {
        let counted = app.clicks(&carried.wrenches).await;
        let Some(today) = day_of(&today()) else {
            return;
        };
        let wrenches = carried.wrenches.iter().zip(counted);
        let lines = wrenches.filter_map(|(wrench, (name, clicks))| {
            let due = wrench_due(wrench, clicks, today)?;
            Some(format!("{name}: {}", text::check_due(lang, due)))
        });
        let _ = due.try_set(lines.collect());
    });
    let body = move || (!due.with(Vec::is_empty)).then(|| list(due.get()));
    let title = text::desk(lang, Desk::WrenchChecks);
    section(title, view! { {body} })
}

/// Stands that are marked for less than the vehicle's axle may weigh.
fn stands(at: &StepContext) -> Option<Node> {
    let mass = mass_of(at.sheet().vehicle(VehicleField::Mass)?)?;
    let (weak, axle) = weak_stands(at.sheet().carried()?, mass)?;
    let unit = weak.first().map(|stand| stand.rating.unit)?;
    let axle = at.fmt.mass_in(axle, unit, 0).line();
    let names: Vec<String> = weak
        .iter()
        .map(|stand| format!("{}, {}", stand.name, at.fmt.typed(&stand.rating).line()))
        .collect();
    let line = text::weak_stands(at.lang, &names.join("; "), &axle);
    Some(section(
        text::desk(at.lang, Desk::Stands),
        view! { <p>{line}</p> },
    ))
}

fn gauge(at: &StepContext) -> Node {
    let proof = judge::proof(at.sheet());
    let shown = |length| at.fmt.length(length, 3).line();
    let over = shown(proof.over_from);
    let sentence = match proof.within_to {
        Some(within) => text::can_prove(at.lang, &over, &shown(within)),
        None => text::cannot_prove_within(at.lang, &over),
    };
    let limit = judge::limit(at.sheet());
    let house =
        (!limit.is_manufacturers()).then(|| text::house_limit(at.lang, &shown(limit.value)));
    let coarse = (!proof.settles).then(|| {
        view! { <p class="slip" role="note">{at.say(Say::DialTooCoarse)}</p> }
    });
    let body = view! {
        {coarse}
        <p>{sentence}</p>
        {house.map(|house| view! { <p>{house}</p> })}
    };
    section(at.say(Say::ReadyGauge), body.into_node())
}

fn pages(at: &StepContext, specs: &[ReadySpec]) -> Node {
    let lines: Vec<String> = specs
        .iter()
        .filter(|spec| spec.is_given() && !spec.photographed)
        .map(|spec| text::spec_item(at.lang, spec.item, at.open.plan.fitted.fixing).to_owned())
        .collect();
    if lines.is_empty() {
        return ().into_node();
    }
    let line = view! { <p>{lines.join(", ")}</p> };
    section(text::desk(at.lang, Desk::PagesNotPictured), line)
}

fn saved(at: &StepContext) -> Node {
    let (lang, promised) = (at.lang, RwSignal::new(None::<bool>));
    spawn_local(async move {
        let persisted = storage::persisted().await;
        let _ = promised.try_set(Some(persisted));
    });
    let sentence = move || {
        promised.get().map(|promised| {
            let say = if promised {
                Say::StoragePromised
            } else {
                Say::StorageNotPromised
            };
            text::say(lang, say)
        })
    };
    let body = view! { <p>{sentence}</p> };
    section(text::desk(lang, Desk::Storage), body)
}
