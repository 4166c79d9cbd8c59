//! One tap a fastener, in the order of the trade, with the spec's value and the wrench beside it.
//!
//! Eyes go from the wrench to the screen and back: the value is large, the next fastener ringed.

use std::cell::RefCell;

use crate::drawing::star::{Pattern, single, star};
use crate::drawing::{Drawing, angle};
use crate::job::angled::{angle_gauge, recorded};
use crate::job::entry::Event;
use crate::job::turn::{Turning, spec_item, spec_step};
use crate::report::specs::{stage_line, torque_conditions};
use crate::text::{self, BookWord, Desk, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::Stage;
use crate::trade::wheel_end::{ItemKind, StepKey};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::frame::{frame, instead};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picture::drawn;
use crate::ui::parts::today;
use crate::ui::parts::wrenches::{has_no_wrench, overdue, take_wrenches};
use crate::ui::route::Route;
use crate::ui::screens::adapter;
use crate::ui::screens::mishap::{self, Telling};
use crate::ui::view::prelude::*;
use crate::units::{AngleUnit, Shown, Typed, TypedAngle, Unit};

thread_local! {
    /// The pass that this page is in the middle of: its job and step. A page that was loaded
    /// again, or a person who went elsewhere, is in the middle of none.
    static PASS: RefCell<Option<(String, StepKey)>> = const { RefCell::new(None) };
}

/// The fasteners of a step.
pub fn turn(at: &StepContext, group: ItemKind) -> Node {
    let Some(turning) = Turning::of(at.sheet(), &at.planned, group) else {
        return ().into_node();
    };
    forget_when_left(at);
    if turning.stages.is_empty() {
        return no_figure(at, group);
    }
    if turning.is_begun() && turning.items.len() > 1 && !is_in_pass(at) {
        return interrupted(at, group, &turning);
    }
    let telling = RwSignal::new(Telling::Nothing);
    let swings = Swings::of(at, &turning);
    let here = at.clone();
    (move || match telling.get() {
        Telling::Nothing => {
            let (shown, with) = (turning.clone(), here.clone());
            let body = move || next_fastener(&with, group, &shown, swings);
            frame(&here, body, turn_keys(&here, &turning, telling, swings))
        }
        Telling::Which => mishap::which(&here, telling),
        Telling::Event(kind) => {
            let (body, keys) = mishap::recorded(&here, kind, turning.next(), telling);
            instead(&here, body, keys)
        }
        Telling::Adapter => {
            let (body, keys) = adapter::fields(&here, telling);
            frame(&here, body, keys)
        }
    })
    .into_node()
}

/// The swings of an angle: kept on the phone while it is turned, by the tap that stands before it,
/// so that neither a kill nor an undo shows those of another pull.
#[derive(Clone, Copy)]
struct Swings {
    count: RwSignal<u8>,
    /// Whether some were counted before this screen was shown.
    found: bool,
    name: StoredValue<String>,
    drafts: Drafts,
}

impl Swings {
    fn of(at: &StepContext, turning: &Turning) -> Self {
        let drafts = Drafts::of(at);
        let before = turning.before_angle(at.sheet());
        let name = before.map(|id| format!("swings {}", id.0));
        let count = match &name {
            Some(name) => drafts.count(name, 0),
            None => RwSignal::new(0),
        };
        Self {
            count,
            found: count.get_untracked() > 0,
            name: StoredValue::new(name.unwrap_or_default()),
            drafts,
        }
    }

    fn set(self, count: u8) {
        self.count.set(count);
        self.name
            .with_value(|name| self.drafts.set(name, &count.to_string()));
    }

    fn forget(self) {
        if self.name.with_value(|name| !name.is_empty()) {
            self.drafts.dropping()();
        }
    }
}

/// A pass goes on only while its screen is shown; every tap shows it again at the same place.
fn forget_when_left(at: &StepContext) {
    let (app, shown_at) = (at.app, at.app.route.get_untracked());
    on_cleanup(move || {
        if app.route.try_get_untracked() != Some(shown_at) {
            PASS.set(None);
        }
    });
}

fn is_in_pass(at: &StepContext) -> bool {
    PASS.with_borrow(|pass| {
        pass.as_ref()
            .is_some_and(|(log, step)| *log == at.open.log.0 && *step == at.planned.key)
    })
}

/// The page is in the middle of the pass of this step.
pub fn begin_pass(at: &StepContext) {
    PASS.set(Some((at.open.log.0.clone(), at.planned.key)));
}

/// Without a figure nothing is closed: the way leads to its spec.
fn no_figure(at: &StepContext, group: ItemKind) -> Node {
    let id = at.open.log.0.clone();
    let name = spec_item(group).map_or("", |item| {
        text::spec_item(at.lang, item, at.open.plan.fitted.fixing)
    });
    let looked_for = spec_item(group).and_then(|item| at.sheet().spec(item));
    let how = match looked_for {
        Some(_) => at.say(Say::SpecNotFound),
        None => at.say(Say::NoFigureFound),
    };
    let route = match spec_step(&at.open.steps, &at.planned, group) {
        Some(step) => Route::Step(id, step),
        None => Route::Where(id),
    };
    let body = view! {
        <aside class="hold" role="alert">
            <h2>{format!("{name}: {how}")}</h2>
            <p>{at.say(Say::NoFigureFoundSay)}</p>
        </aside>
    };
    frame(
        at,
        body,
        link(Look::Primary, at.say(Say::GoThere), route.to_hash()),
    )
}

fn interrupted(at: &StepContext, group: ItemKind, turning: &Turning) -> Node {
    let here = at.clone();
    let body = view! {
        <aside class="hold" role="alert">
            <p>{at.say(Say::InterruptedPass)}</p>
        </aside>
        {picture(at, group, turning, 0)}
    };
    frame(
        at,
        body,
        key(Look::Primary, at.say(Say::StartPassAgain), move || {
            begin_pass(&here);
            here.write(vec![Event::Pass(here.planned.key)]);
        }),
    )
}

fn drawing(group: ItemKind, turning: &Turning, swings: u8) -> Drawing {
    let done = if turning.next().is_none() {
        turning.items.len()
    } else {
        turning.done
    };
    let alone = turning.items.len() == 1;
    if let Some(turn) = angle_drawing(turning, swings).filter(|_| alone) {
        return turn;
    }
    let pattern = match group {
        ItemKind::LugNuts => Pattern::Wheel,
        ItemKind::HubBolts => Pattern::Hub,
        ItemKind::BracketBolts | ItemKind::CaliperPins | ItemKind::StrutBolts => Pattern::Row,
        _ => return single(turning.next().is_none()),
    };
    star(pattern, &turning.places, done)
}

/// How far an angle stage turns; nothing for the others.
fn angle_drawing(turning: &Turning, swings: u8) -> Option<Drawing> {
    let degrees = |typed: &TypedAngle| typed.angle().in_unit(AngleUnit::Degree);
    match turning.asked()? {
        Stage::Angle(typed) => {
            let (behind, _) = turning.swung(swings)?;
            let behind = behind.in_unit(AngleUnit::Degree);
            Some(angle::on(degrees(typed), behind))
        }
        Stage::Back(typed) => Some(angle::back(typed.as_ref().map(degrees))),
        Stage::Snug | Stage::Torque(_) => None,
    }
}

fn picture(at: &StepContext, group: ItemKind, turning: &Turning, swings: u8) -> Node {
    let title = text::star_alt(at.lang, turning.done, turning.items.len());
    drawn(&drawing(group, turning, swings), &title, "turn__star")
}

fn next_fastener(at: &StepContext, group: ItemKind, turning: &Turning, swings: Swings) -> Node {
    let found = swings.found;
    let swings = swings.count.get();
    let saved = (found && swings > 0).then(|| text::book(at.lang, BookWord::SwingsSaved));
    view! {
        {overdue(at, turning)}
        <div class="turn" data-begun={if turning.is_begun() { "yes" } else { "no" }}>
            {picture(at, group, turning, swings)}
            <div class="turn__value">
                {value(at, turning)}
                {counted(at, turning, swings)}
                {saved.map(|saved| view! { <p>{saved}</p> })}
                {angle_beside(turning, swings)}
                {(swings == 0).then(|| wrench(at, turning))}
                {turning.uses_wrench().then(|| conditions(at, group))}
            </div>
        </div>
    }
}

/// How many degrees of the angle are behind, once a swing was counted.
fn counted(at: &StepContext, turning: &Turning, swings: u8) -> Option<Node> {
    let (behind, asked) = turning.swung(swings).filter(|_| swings != 0)?;
    let (behind, asked) = (at.fmt.angle(behind, 0), at.fmt.typed(asked));
    let line = text::angle_behind(at.lang, &behind.line(), &asked.line());
    Some(view! { <p class="turn__counted" aria-live="polite">{line}</p> })
}

/// Where several are turned the star stands at the left, so that the angle stands here.
fn angle_beside(turning: &Turning, swings: u8) -> Option<Node> {
    let several = turning.items.len() > 1;
    let turn = angle_drawing(turning, swings).filter(|_| several)?;
    Some(drawn(&turn, "", "turn__angle"))
}

/// The figure of this stage: the torque, or the angle that follows it.
fn value(at: &StepContext, turning: &Turning) -> Node {
    match turning.asked() {
        Some(Stage::Torque(torque)) => large(&at.fmt.typed(torque), &twin(at, torque)),
        Some(Stage::Angle(angle)) => {
            let shown = at.fmt.typed(angle);
            let after = turning.torque().map(|torque| at.fmt.typed(torque).line());
            large(&shown, &after.unwrap_or_default())
        }
        Some(stage @ (Stage::Snug | Stage::Back(_))) => {
            let line = stage_line(at.lang, at.fmt, stage, false);
            view! { <p class="turn__words">{line}</p> }
        }
        None => view! { <p class="turn__done">{text::pass_progress(
            at.lang,
            turning.items.len(),
            turning.items.len(),
        )}</p> },
    }
}

fn large(shown: &Shown, beside: &str) -> Node {
    view! {
        <p class="turn__number">
            <b>{shown.number.clone()}</b>
            <span>{shown.unit}</span>
        </p>
        <p class="turn__twin">{beside.to_owned()}</p>
    }
}

fn twin<U: Unit>(at: &StepContext, typed: &Typed<U>) -> String {
    text::also_value(at.lang, &at.fmt.typed_twin(typed).line())
}

/// The wrench with what it is set to, or that none on board fits.
fn wrench(at: &StepContext, turning: &Turning) -> Node {
    if turning.uses_wrench() && has_no_wrench(at) {
        let say = text::desk(at.lang, Desk::NoWrenchKnownSay);
        return view! { <p class="turn__wrench">{say}</p> };
    }
    let line = match (turning.asked(), turning.wrench(), turning.set_to()) {
        (None | Some(Stage::Snug | Stage::Back(_)), ..) => return ().into_node(),
        (Some(Stage::Angle(_)), ..) => {
            text::angle_next(at.lang, angle_gauge(at.sheet(), day_of(&today())))
        }
        (_, Some(wrench), Some(set)) if !turning.is_out_of_range() => {
            let line = text::set_wrench(at.lang, &wrench.name, &at.fmt.typed(&set).line());
            with_adapter(at, turning, line)
        }
        (_, Some(_), Some(_)) => text::desk(at.lang, Desk::LeverOutOfRange).to_owned(),
        (_, Some(_), None) => match turning.lever_slip() {
            Some(slip) => text::desk(at.lang, adapter::refusal(slip)).to_owned(),
            None => at.say(Say::NoWrenchFits).to_owned(),
        },
        _ => at.say(Say::NoWrenchFits).to_owned(),
    };
    view! { <p class="turn__wrench">{line}</p> }
}

fn with_adapter(at: &StepContext, turning: &Turning, line: String) -> String {
    if turning.has_lever() {
        format!("{line} · {}", text::desk(at.lang, Desk::Adapter))
    } else {
        line
    }
}

/// What else the spec asks for.
fn conditions(at: &StepContext, group: ItemKind) -> Option<Node> {
    use crate::trade::fastening::SpecBody;
    let spec = at.sheet().spec(spec_item(group)?)?;
    let SpecBody::Torque(body) = &spec.body else {
        return None;
    };
    let said = torque_conditions(at.lang, spec.item, body);
    (!said.is_empty()).then(|| view! { <p class="turn__conditions">{said.join(" · ")}</p> })
}

fn turn_keys(
    at: &StepContext,
    turning: &Turning,
    telling: RwSignal<Telling>,
    swings: Swings,
) -> Node {
    let swing = turning.swung(1).map(|(one, _)| {
        let label = text::swing(at.lang, &at.fmt.angle(one, 0).line());
        key(Look::Plain, label, move || {
            swings.set(swings.count.get_untracked().saturating_add(1));
        })
    });
    let anew = swings.found.then(|| {
        let label = text::book(at.lang, BookWord::SwingsAnew);
        key(Look::Plain, label, move || swings.set(0))
    });
    let sets = turning.uses_wrench() && turning.swung(0).is_none();
    let with_wrench = sets && turning.wrench().is_some();
    let adapter = with_wrench.then(|| {
        let label = text::desk(at.lang, Desk::Adapter);
        key(Look::Plain, label, move || telling.set(Telling::Adapter))
    });
    let own = (turning.uses_wrench() && turning.wrench().is_none()).then(|| take_wrenches(at));
    view! {
        {primary(at, turning, swings)} {swing} {anew} {mishap::begin(at, telling)} {adapter} {own}
    }
}

fn primary(at: &StepContext, turning: &Turning, swings: Swings) -> Node {
    let here = at.clone();
    let (Some(item), Some(what)) = (turning.next(), turning.tap()) else {
        return key(Look::Primary, at.say(Say::StartPassAgain), move || {
            begin_pass(&here);
            here.write(vec![Event::Pass(here.planned.key)]);
        });
    };
    let name = text::item(at.lang, item, at.open.plan.fitted.fixing);
    let label = match turning.asked() {
        Some(stage @ (Stage::Angle(_) | Stage::Snug | Stage::Back(_))) => {
            format!("{name}: {}", stage_line(at.lang, at.fmt, stage, false))
        }
        _ => text::nut_clicked(at.lang, &name),
    };
    let last = turning.is_last();
    let is_angle = matches!(turning.asked(), Some(Stage::Angle(_)));
    key(Look::Primary, label, move || {
        let count = swings.count.get_untracked();
        swings.forget();
        let by = is_angle.then(|| recorded(here.sheet(), here.planned.key, count));
        let whats = by.flatten().into_iter().chain([what.clone()]).collect();
        if last {
            here.write_and_go_on(whats);
        } else {
            begin_pass(&here);
            here.tell(whats);
        }
    })
}
