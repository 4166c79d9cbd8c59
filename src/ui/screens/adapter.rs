//! An extension or crowfoot on the wrench: its lengths and angle, then what to set.

use crate::job::entry::Event;
use crate::text::{self, Desk, Say};
use crate::trade::fastening::{LeverError, TypedLever, wrench_setting};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::screens::mishap::Telling;
use crate::ui::view::prelude::*;
use crate::units::{AngleUnit, LengthUnit, System, Torque, TorqueUnit, Typed, Unit};

#[derive(Clone, Copy)]
struct Fields {
    wrench: RwSignal<String>,
    adapter: RwSignal<String>,
    angle: RwSignal<String>,
    unit: RwSignal<LengthUnit>,
    drafts: Drafts,
}

impl Fields {
    fn new(at: &StepContext) -> Self {
        let drafts = Drafts::of(at);
        let known = at.sheet().lever(at.planned.key);
        let typed = |text: Option<&str>, otherwise: &str| text.unwrap_or(otherwise).to_owned();
        let common = match at.fmt.system {
            System::Metric => LengthUnit::Millimetre,
            System::Us => LengthUnit::Inch,
        };
        let wrench = known.map(|it| it.wrench.number.as_typed());
        let adapter = known.map(|it| it.adapter.number.as_typed());
        let angle = known.map(|it| it.angle.number.as_typed());
        Self {
            wrench: drafts.text("lever-wrench", typed(wrench, "")),
            adapter: drafts.text("lever-adapter", typed(adapter, "")),
            angle: drafts.text("lever-angle", typed(angle, "0")),
            unit: drafts.word("lever-unit", known.map_or(common, |it| it.wrench.unit)),
            drafts,
        }
    }

    fn lever(self) -> Option<TypedLever> {
        Some(TypedLever {
            wrench: Typed::parse(&self.wrench.get(), self.unit.get()).ok()?,
            adapter: Typed::parse(&self.adapter.get(), self.unit.get()).ok()?,
            angle: Typed::parse(&self.angle.get(), AngleUnit::Degree).ok()?,
        })
    }
}

/// Why a lever gives no setting, in a sentence.
pub fn refusal(error: LeverError) -> Desk {
    match error {
        LeverError::NoLength => Desk::LeverNoLength,
        LeverError::NotLonger => Desk::LeverNotLonger,
    }
}

/// The fields and their keys.
pub fn fields(at: &StepContext, telling: RwSignal<Telling>) -> (Node, Node) {
    let fields = Fields::new(at);
    let (lang, drafts) = (at.lang, fields.drafts);
    let field = |name, text, label| {
        Field::decimal(name, text).show(text::desk(lang, label), "", drafts, || {})
    };
    let units = [LengthUnit::Millimetre, LengthUnit::Inch];
    let units = units.map(|unit| (unit, unit.symbol().to_owned())).to_vec();
    let body = view! {
        <h2 class="mishap">{text::desk(lang, Desk::Adapter)}</h2>
        {field("lever-wrench", fields.wrench, Desk::LeverWrench)}
        {field("lever-adapter", fields.adapter, Desk::LeverAdapter)}
        {field("lever-angle", fields.angle, Desk::LeverAngle)}
        {picks(text::desk(lang, Desk::LeverUnit), units, fields.unit, move |unit| {
            drafts.set("lever-unit", unit.code());
        })}
        <p class="slip" role="alert">{move || refused(fields).map(|desk| text::desk(lang, desk))}</p>
    };
    let (here, plain) = (at.clone(), at.clone());
    let keep = move || {
        let lever = untrack(move || fields.lever().filter(|_| refused(fields).is_none()));
        if let Some(lever) = lever {
            fields.drafts.drop_with_tap();
            here.write(vec![Event::Lever(here.planned.key, Some(lever))]);
        }
    };
    let without = move || {
        fields.drafts.drop_with_tap();
        plain.write(vec![Event::Lever(plain.planned.key, None)]);
    };
    let keys = view! {
        {key(Look::Primary, at.say(Say::Keep), keep)}
        {key(Look::Plain, text::no_adapter(lang), without)}
        {key(Look::Plain, at.say(Say::Back), move || telling.set(Telling::Nothing))}
    };
    (body.into_node(), keys.into_node())
}

/// What stands against the lever as typed; nothing while it is half typed.
fn refused(fields: Fields) -> Option<Desk> {
    let lever = fields.lever()?.lever();
    let any = Torque::new(1.into(), TorqueUnit::NewtonMetre).ok()?;
    wrench_setting(any, lever).err().map(refusal)
}
