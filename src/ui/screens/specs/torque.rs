//! The fields of a torque: number, unit, the angle after it, how the hub is held, conditions.

use crate::job::book::{angle_of, last_torque_unit, may_have_angle};
use crate::job::typed_spec::{SpecInputError, TypedTorqueSpec};
use crate::text::{self, Desk, Say};
use crate::trade::fastening::{
    Condition, Position, Spec, SpecBody, SpecItem, SpecSource, TorqueBody,
};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::{Field, focus};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::screens::specs::form::VALUE;
use crate::ui::screens::specs::further::{FurtherFields, turned};
use crate::ui::view::prelude::*;
use crate::units::{System, TorqueUnit, TypedTorque, Unit};

const ANGLE: &str = "angle";
const CONDITIONS: &str = "conditions";

/// The fields.
#[derive(Clone, Copy)]
pub struct TorqueFields {
    item: SpecItem,
    value: RwSignal<String>,
    unit: RwSignal<TorqueUnit>,
    has_angle: RwSignal<bool>,
    angle: RwSignal<String>,
    position: RwSignal<Position>,
    conditions: RwSignal<String>,
    further: FurtherFields,
}

impl TorqueFields {
    /// The fields as the job has them, or empty in the unit of the last spec.
    pub fn new(at: &StepContext, drafts: Drafts, item: SpecItem) -> Self {
        let known = at.sheet().spec(item);
        let body = known.and_then(|spec| match &spec.body {
            SpecBody::Torque(body) => Some(body),
            _ => None,
        });
        let torque = known.and_then(|spec| spec.torques().next());
        let angle = known.and_then(angle_of);
        let unit = torque
            .map(|typed| typed.unit)
            .or_else(|| last_torque_unit(at.sheet()))
            .unwrap_or(common_unit(at.fmt.system));
        let typed = |text: Option<&str>| text.unwrap_or_default().to_owned();
        let angle = drafts.text(ANGLE, typed(angle.map(|angle| angle.number.as_typed())));
        Self {
            item,
            value: drafts.text(VALUE, typed(torque.map(|typed| typed.number.as_typed()))),
            unit: drafts.word("unit", unit),
            has_angle: RwSignal::new(angle.with_untracked(|angle| !angle.is_empty())),
            angle,
            position: drafts.word("position", position(body)),
            conditions: drafts.text(CONDITIONS, conditions(body)),
            further: FurtherFields::new(drafts, body),
        }
    }

    /// The spec as the fields stand.
    pub fn spec(self, source: SpecSource) -> Result<Spec, SpecInputError> {
        TypedTorqueSpec {
            item: self.item,
            seated_first: self.further.seated_first(),
            value: self.value.get(),
            unit: self.unit.get(),
            angle: self.has_angle.get().then(|| self.angle.get()),
            further: self.further.stages(),
            position: self.position.get(),
            conditions: Condition::ALL
                .iter()
                .copied()
                .filter(|condition| self.asks_for(*condition))
                .collect(),
            printed: self.further.printed(),
            source,
        }
        .spec()
    }

    fn asks_for(self, condition: Condition) -> bool {
        self.conditions
            .with(|all| all.split(' ').any(|code| code == condition.code()))
    }

    /// The fields on the screen.
    pub fn body(
        self,
        at: &StepContext,
        drafts: Drafts,
        enter: impl Fn() + Clone + 'static,
    ) -> Node {
        let units = TorqueUnit::ALL
            .iter()
            .map(|unit| (*unit, unit.symbol().to_owned()));
        let fmt = at.fmt;
        let lang = at.lang;
        let twin = move || {
            let typed = TypedTorque::parse(&self.value.get(), self.unit.get()).ok()?;
            let twin = fmt.typed_twin(&typed).line();
            Some(text::also_value(lang, &twin))
        };
        let positions = (self.item == SpecItem::AxleNut).then(|| self.positions(at, drafts));
        let angle = may_have_angle(self.item).then(|| self.angle_field(at, drafts, enter.clone()));
        let further = self.further.body(at, drafts, enter.clone());
        view! {
            <div class="spec-form__figure">
                {Field::decimal(VALUE, self.value).show(at.say(Say::SpecValue), "", drafts, enter)}
                <p class="spec-form__twin">{twin}</p>
            </div>
            {picks(at.say(Say::SpecUnit), units.collect(), self.unit, move |unit| {
                drafts.set("unit", unit.code());
            })}
            {angle}
            {positions}
            {self.more(at, drafts)}
            {further}
        }
    }

    fn positions(self, at: &StepContext, drafts: Drafts) -> Node {
        let lang = at.lang;
        let positions = Position::ALL
            .iter()
            .map(|it| (*it, text::nut_position(lang, *it).to_owned()));
        picks(
            at.say(Say::SpecPosition),
            positions.collect(),
            self.position,
            move |it| drafts.set("position", it.code()),
        )
    }

    /// One key opens the angle and puts the cursor into it.
    fn angle_field(
        self,
        at: &StepContext,
        drafts: Drafts,
        enter: impl Fn() + Clone + 'static,
    ) -> Node {
        let lang = at.lang;
        let turn = move || {
            let has = !self.has_angle.get_untracked();
            self.has_angle.set(has);
            if has {
                focus(ANGLE);
            } else {
                drafts.set(ANGLE, "");
                self.angle.set(String::new());
            }
        };
        let enter = StoredValue::new_local(enter);
        let field = move || {
            self.has_angle.get().then(|| {
                let label = text::desk(lang, Desk::AngleDegrees);
                let on_enter = move || {
                    let _ = enter.try_with_value(|enter| enter());
                };
                Field::decimal(ANGLE, self.angle).show(label, "", drafts, on_enter)
            })
        };
        view! {
            <div class="spec-form__angle">
                {toggle(text::desk(lang, Desk::ThenAngle), move || self.has_angle.get(), turn)}
                {field}
            </div>
        }
    }

    /// The conditions, folded away until they are asked for; open where one is chosen.
    fn more(self, at: &StepContext, drafts: Drafts) -> Node {
        let lang = at.lang;
        let open = self.conditions.with_untracked(|all| !all.is_empty());
        let keys = Condition::ALL.iter().map(|condition| {
            let condition = *condition;
            toggle(
                text::condition(lang, condition),
                move || self.asks_for(condition),
                move || {
                    self.conditions.update(|all| *all = turned(all, condition));
                    drafts.set(CONDITIONS, &self.conditions.get_untracked());
                },
            )
        });
        let keys = keys.collect_view();
        view! {
            <details class="more" open=open>
                <summary class="key key--foot">{text::desk(lang, Desk::Conditions)}</summary>
                <div class="picks__keys">{keys}</div>
            </details>
        }
    }
}

const fn common_unit(system: System) -> TorqueUnit {
    match system {
        System::Metric => TorqueUnit::NewtonMetre,
        System::Us => TorqueUnit::PoundFoot,
    }
}

fn position(body: Option<&TorqueBody>) -> Position {
    body.and_then(|body| body.position)
        .unwrap_or(Position::AirBrakeHeld)
}

fn conditions(body: Option<&TorqueBody>) -> String {
    let codes = body.map(|body| body.conditions.iter().map(|it| it.code()));
    codes.into_iter().flatten().collect::<Vec<_>>().join(" ")
}
