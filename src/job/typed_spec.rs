//! From the fields of a spec's form to the spec, or the first thing that is wrong with it.

use crate::trade::fastening::spec::SpecError;
use crate::trade::fastening::{
    Condition, Pattern, Position, Printed, PropertyClass, Settled, Spec, SpecBody, SpecItem,
    SpecSource, Stage, Thread, ThreadError, TorqueBody,
};
use crate::trade::play::Way;
use crate::units::{AngleUnit, DecimalError, LengthUnit, TorqueUnit, Typed};
use crate::words;

/// Why the fields give no spec.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SpecInputError {
    /// The value is no number.
    Value(DecimalError),
    /// The angle is no number.
    Angle(DecimalError),
    /// A further stage, counted from 1, is no number.
    Further(usize, DecimalError),
    /// The count is no whole number from 1 to 20.
    Count,
    /// The thread is none.
    Thread(ThreadError),
    /// The spec would not be usable.
    Fault(SpecError),
}

words! {
    /// What a further stage does.
    pub enum Further {
        /// To a torque, in the unit of the first.
        Torque = "torque",
        /// On by an angle.
        Angle = "angle",
        /// Back by an angle; without a number until it is loose.
        Back = "back",
    }
}

/// What the page says of the fasteners, as typed; an empty field is not known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TypedPrinted {
    /// How many.
    pub count: String,
    /// The thread.
    pub thread: String,
    /// The class.
    pub class: Option<PropertyClass>,
    /// The order.
    pub pattern: Option<Pattern>,
    /// The threadlocker's grade.
    pub threadlocker: String,
}

impl TypedPrinted {
    /// The fields of a spec that is kept.
    pub fn of(printed: &Printed) -> Self {
        let thread = printed.thread.as_ref();
        Self {
            count: printed
                .count
                .map(|count| count.to_string())
                .unwrap_or_default(),
            thread: thread
                .map(|it| it.as_typed().to_owned())
                .unwrap_or_default(),
            class: printed.class,
            pattern: printed.pattern,
            threadlocker: printed.threadlocker.clone().unwrap_or_default(),
        }
    }

    fn printed(self) -> Result<Printed, SpecInputError> {
        let given = |text: &str| (!text.trim().is_empty()).then(|| text.trim().to_owned());
        let count = match given(&self.count).map(|text| text.parse()) {
            None => None,
            Some(Ok(count @ 1..=20)) => Some(count),
            Some(_) => return Err(SpecInputError::Count),
        };
        let thread = given(&self.thread).map(|text| Thread::parse(&text));
        Ok(Printed {
            count,
            thread: thread.transpose().map_err(SpecInputError::Thread)?,
            class: self.class,
            pattern: self.pattern,
            threadlocker: given(&self.threadlocker),
        })
    }
}

/// The fields of a torque's form.
#[derive(Clone, Debug, PartialEq)]
pub struct TypedTorqueSpec {
    /// What it is for.
    pub item: SpecItem,
    /// Whether it is seated first, without a figure.
    pub seated_first: bool,
    /// The first torque as typed.
    pub value: String,
    /// The unit behind it.
    pub unit: TorqueUnit,
    /// The angle as typed, degrees, if one follows.
    pub angle: Option<String>,
    /// The stages after these, as typed.
    pub further: Vec<(Further, String)>,
    /// How the hub is held, for the axle nut.
    pub position: Position,
    /// What else the page asks for.
    pub conditions: Vec<Condition>,
    /// What the page says of the fasteners.
    pub printed: TypedPrinted,
    /// Where it was read.
    pub source: SpecSource,
}

impl TypedTorqueSpec {
    /// The spec.
    ///
    /// # Errors
    /// The first [`CardInputError`].
    pub fn spec(self) -> Result<Spec, SpecInputError> {
        let stages = self.stages()?;
        sound(Spec {
            item: self.item,
            body: SpecBody::Torque(TorqueBody {
                stages,
                position: (self.item == SpecItem::AxleNut).then_some(self.position),
                conditions: self.conditions,
                printed: self.printed.printed()?,
                source: self.source,
            }),
        })
    }

    fn stages(&self) -> Result<Vec<Stage>, SpecInputError> {
        let mut stages = Vec::new();
        stages.extend(self.seated_first.then_some(Stage::Snug));
        // Tapered rollers may be seated until they bind and backed off, all without a figure.
        let bound = self.item == SpecItem::SpindleNut && self.seated_first;
        if !bound || !self.value.trim().is_empty() {
            let torque = Typed::parse(&self.value, self.unit).map_err(SpecInputError::Value)?;
            stages.push(Stage::Torque(torque));
        }
        if let Some(angle) = &self.angle {
            let angle = Typed::parse(angle, AngleUnit::Degree).map_err(SpecInputError::Angle)?;
            stages.push(Stage::Angle(angle));
        }
        for (place, (what, text)) in self.further.iter().enumerate() {
            let slip = |slip| SpecInputError::Further(place.saturating_add(1), slip);
            stages.push(self.further_stage(*what, text).map_err(slip)?);
        }
        Ok(stages)
    }

    fn further_stage(&self, what: Further, text: &str) -> Result<Stage, DecimalError> {
        Ok(match what {
            Further::Torque => Stage::Torque(Typed::parse(text, self.unit)?),
            Further::Angle => Stage::Angle(Typed::parse(text, AngleUnit::Degree)?),
            Further::Back if text.trim().is_empty() => Stage::Back(None),
            Further::Back => Stage::Back(Some(Typed::parse(text, AngleUnit::Degree)?)),
        })
    }
}

/// The stages of a kept spec as the form has them: seated first, then what follows the first
/// torque and the angle behind it.
pub fn typed_stages(stages: &[Stage]) -> (bool, Vec<(Further, String)>) {
    let mut rest = stages.iter().peekable();
    let seated_first = rest.next_if(|stage| **stage == Stage::Snug).is_some();
    rest.next_if(|stage| matches!(stage, Stage::Torque(_)));
    rest.next_if(|stage| matches!(stage, Stage::Angle(_)));
    let further = rest.filter_map(|stage| match stage {
        Stage::Torque(torque) => Some((Further::Torque, torque.number.as_typed().to_owned())),
        Stage::Angle(angle) => Some((Further::Angle, angle.number.as_typed().to_owned())),
        Stage::Back(angle) => {
            let typed = angle
                .as_ref()
                .map(|angle| angle.number.as_typed().to_owned());
            Some((Further::Back, typed.unwrap_or_default()))
        }
        Stage::Snug => None,
    });
    (seated_first, further.collect())
}

/// The same spec, with the reason for which it was kept although it was doubted.
pub fn override_reason(mut spec: Spec, settled: Settled) -> Spec {
    let reason = Some(settled.code().to_owned());
    match &mut spec.body {
        SpecBody::Torque(body) => body.source.override_reason = reason,
        SpecBody::Play { source, .. } => source.override_reason = reason,
        SpecBody::NotFound { .. } => {}
    }
    spec
}

/// The spec of the play limit; its least stays empty but for a bearing that is set with play.
///
/// # Errors
/// The first [`CardInputError`].
pub fn play_spec(
    value: &str,
    least: &str,
    unit: LengthUnit,
    way: Way,
    source: SpecSource,
) -> Result<Spec, SpecInputError> {
    let most = Typed::parse(value, unit).map_err(SpecInputError::Value)?;
    let least = Some(least.trim()).filter(|least| !least.is_empty());
    let least = least.map(|least| Typed::parse(least, unit)).transpose();
    sound(Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::Play {
            most,
            least: least.map_err(SpecInputError::Value)?,
            way,
            source,
        },
    })
}

/// The spec that says that nothing was found.
///
/// # Errors
/// [`CardInputError::Fault`] without a reason.
pub fn not_found(item: SpecItem, reason: &str) -> Result<Spec, SpecInputError> {
    let reason = reason.trim().to_owned();
    sound(Spec {
        item,
        body: SpecBody::NotFound { reason },
    })
}

fn sound(spec: Spec) -> Result<Spec, SpecInputError> {
    match spec.fault() {
        Some(fault) => Err(SpecInputError::Fault(fault)),
        None => Ok(spec),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::fastening::spec::tests::source;
    use crate::units::Decimal;

    fn typed(value: &str, angle: Option<&str>) -> TypedTorqueSpec {
        TypedTorqueSpec {
            item: SpecItem::AxleNut,
            seated_first: false,
            value: value.to_owned(),
            unit: TorqueUnit::NewtonMetre,
            angle: angle.map(str::to_owned),
            further: Vec::new(),
            position: Position::AirBar,
            conditions: vec![Condition::NewFastener],
            printed: TypedPrinted::default(),
            source: source(),
        }
    }

    #[test]
    fn a_torque_with_its_angle_becomes_two_stages_as_typed() {
        let spec = typed("80", Some("60")).spec().unwrap();
        let SpecBody::Torque(body) = &spec.body else {
            panic!("a torque")
        };
        assert_eq!(body.stages.len(), 2);
        assert_eq!(body.position, Some(Position::AirBar));
        let saved = spec.final_torque().unwrap();
        assert_eq!(saved.number, Decimal::parse("80").unwrap());
    }

    #[test]
    fn many_stages_are_typed_and_come_back_into_the_form() {
        let further = vec![
            (Further::Back, String::new()),
            (Further::Torque, "20".to_owned()),
            (Further::Angle, "90".to_owned()),
            (Further::Back, "15".to_owned()),
        ];
        let fields = TypedTorqueSpec {
            seated_first: true,
            further: further.clone(),
            ..typed("60", Some("30"))
        };
        let SpecBody::Torque(body) = fields.spec().unwrap().body else {
            panic!("a torque")
        };
        assert_eq!(body.stages.len(), 7);
        assert_eq!(body.stages[0], Stage::Snug);
        assert_eq!(body.stages[3], Stage::Back(None));
        assert_eq!(typed_stages(&body.stages), (true, further));
    }

    #[test]
    fn what_the_page_says_of_the_fasteners_is_saved_and_comes_back() {
        let printed = TypedPrinted {
            count: "5".to_owned(),
            thread: "M12x1.5".to_owned(),
            class: Some(PropertyClass::Iso109),
            pattern: Some(Pattern::Star),
            threadlocker: "medium, blue".to_owned(),
        };
        let with = |printed: TypedPrinted| TypedTorqueSpec {
            printed,
            ..typed("80", None)
        };
        let SpecBody::Torque(body) = with(printed.clone()).spec().unwrap().body else {
            panic!("a torque")
        };
        assert_eq!(TypedPrinted::of(&body.printed), printed);
        let slip = |change: fn(&mut TypedPrinted)| {
            let mut fields = printed.clone();
            change(&mut fields);
            with(fields).spec().unwrap_err()
        };
        assert_eq!(slip(|it| it.count = "0".to_owned()), SpecInputError::Count);
        assert_eq!(
            slip(|it| it.count = "five".to_owned()),
            SpecInputError::Count
        );
        assert_eq!(
            slip(|it| it.thread = "M12".to_owned()),
            SpecInputError::Thread(ThreadError::NoPitch)
        );
    }

    #[test]
    fn a_doubted_spec_carries_the_reason_for_which_it_was_saved() {
        let spec = override_reason(typed("80", None).spec().unwrap(), Settled::ReadTwice);
        let SpecBody::Torque(body) = spec.body else {
            panic!("a torque")
        };
        assert_eq!(body.source.override_reason.as_deref(), Some("read_twice"));
    }

    #[test]
    fn only_the_axle_nut_says_how_the_hub_is_held() {
        let bolts = TypedTorqueSpec {
            item: SpecItem::HubBolts,
            ..typed("90", None)
        };
        let SpecBody::Torque(body) = bolts.spec().unwrap().body else {
            panic!("a torque")
        };
        assert_eq!(body.position, None);
    }

    #[test]
    fn each_slip_is_reported_by_its_own_name() {
        let slip = |value: &str, angle| typed(value, angle).spec().unwrap_err();
        assert_eq!(slip("", None), SpecInputError::Value(DecimalError::Empty));
        assert_eq!(
            slip("80", Some("")),
            SpecInputError::Angle(DecimalError::Empty)
        );
        let further = TypedTorqueSpec {
            further: vec![
                (Further::Back, String::new()),
                (Further::Torque, "x".to_owned()),
            ],
            ..typed("80", None)
        };
        assert!(matches!(further.spec(), Err(SpecInputError::Further(2, _))));
        assert_eq!(
            slip("0", None),
            SpecInputError::Fault(SpecError::NotAboveZero { stage: 0 })
        );
        let unsourced = TypedTorqueSpec {
            source: SpecSource {
                document: String::new(),
                ..source()
            },
            ..typed("80", None)
        };
        assert_eq!(
            unsourced.spec(),
            Err(SpecInputError::Fault(SpecError::NoSource))
        );
        assert_eq!(
            not_found(SpecItem::HubBolts, " "),
            Err(SpecInputError::Fault(SpecError::NoReason))
        );
    }

    #[test]
    fn a_limit_of_zero_is_a_limit() {
        let spec = play_spec("0", "", LengthUnit::Millimetre, Way::DEFAULT, source()).unwrap();
        assert!(spec.limit().unwrap().unwrap().is_zero());
    }
}
