//! Specs as a technician could fill them, and each fault once.
use super::*;
use crate::units::{AngleUnit, LengthUnit, TorqueUnit};

pub(crate) fn source() -> SpecSource {
    SpecSource {
        document: "Service book, wheel end".to_owned(),
        page: "31-4".to_owned(),
        looked_up: NaiveDate::from_ymd_opt(2025, 11, 20).unwrap(),
        who: "Dana Quill".to_owned(),
        override_reason: None,
    }
}

pub(crate) fn torque(text: &str, unit: TorqueUnit) -> Stage {
    Stage::Torque(TypedTorque::parse(text, unit).unwrap())
}

pub(crate) fn angle(text: &str) -> Stage {
    Stage::Angle(TypedAngle::parse(text, AngleUnit::Degree).unwrap())
}

fn back(text: &str) -> Option<TypedAngle> {
    TypedAngle::parse(text, AngleUnit::Degree).ok()
}

pub(crate) fn spec(item: SpecItem, stages: Vec<Stage>) -> Spec {
    Spec {
        item,
        body: SpecBody::Torque(TorqueBody {
            stages,
            position: Some(Position::AirBrakeHeld),
            conditions: vec![Condition::Dry, Condition::NewFastener],
            printed: Printed::default(),
            source: source(),
        }),
    }
}

fn limit_spec(item: SpecItem, text: &str) -> Spec {
    Spec {
        item,
        body: SpecBody::Play {
            least: None,
            most: TypedLength::parse(text, LengthUnit::Inch).unwrap(),
            way: Way::DEFAULT,
            source: source(),
        },
    }
}

const NM: TorqueUnit = TorqueUnit::NewtonMetre;

#[test]
fn stages_are_read_in_order() {
    let nut = spec(
        SpecItem::AxleNut,
        vec![torque("80", NM), torque("120", NM), angle("60")],
    );
    assert_eq!(nut.fault(), None);
    assert_eq!(nut.final_torque().unwrap().number.as_typed(), "120");
    assert_eq!(nut.torques().count(), 2);
}

#[test]
fn seated_turned_back_and_tightened_again_is_a_spec() {
    let nut = spec(
        SpecItem::AxleNut,
        vec![
            Stage::Snug,
            torque("60", NM),
            Stage::Back(back("180")),
            Stage::Back(None),
            torque("20", NM),
            angle("60"),
        ],
    );
    assert_eq!(nut.fault(), None);
    assert_eq!(nut.final_torque().unwrap().number.as_typed(), "20");
}

#[test]
fn a_rival_rules_out_in_both_directions() {
    for condition in Condition::ALL {
        if let Some(rival) = condition.rival() {
            assert_eq!(rival.rival(), Some(*condition));
        }
    }
}

#[test]
fn a_limit_of_zero_is_a_limit() {
    let zero = limit_spec(SpecItem::PlayLimit, "0");
    assert_eq!(zero.fault(), None);
    assert!(zero.limit().unwrap().unwrap().is_zero());
}

#[test]
fn each_fault_has_its_name() {
    let item = SpecItem::HubBolts;
    let rows = [
        (
            spec(SpecItem::PlayLimit, vec![torque("9", NM)]),
            SpecError::WrongKind,
        ),
        (limit_spec(SpecItem::LugNuts, "0.002"), SpecError::WrongKind),
        (spec(item, vec![]), SpecError::NoTorqueFirst),
        (spec(item, vec![angle("90")]), SpecError::NoTorqueFirst),
        (
            spec(item, vec![torque("0", NM)]),
            SpecError::NotAboveZero { stage: 0 },
        ),
        (
            spec(item, vec![torque("9", NM), angle("-5")]),
            SpecError::NotAboveZero { stage: 1 },
        ),
        (spec(item, vec![Stage::Snug]), SpecError::NoTorqueFirst),
        (
            spec(item, vec![Stage::Back(None), torque("9", NM)]),
            SpecError::NoTorqueFirst,
        ),
        (
            spec(item, vec![torque("9", NM), Stage::Back(back("0"))]),
            SpecError::NotAboveZero { stage: 1 },
        ),
        (
            limit_spec(SpecItem::PlayLimit, "-0.002"),
            SpecError::NegativeLimit,
        ),
        (
            Spec {
                item,
                body: SpecBody::NotFound {
                    reason: "  ".to_owned(),
                },
            },
            SpecError::NoReason,
        ),
    ];
    for (spec, fault) in rows {
        assert_eq!(spec.fault(), Some(fault));
    }
}

#[test]
fn a_nut_without_position_and_a_spec_without_source_are_faulty() {
    let with = |change: fn(&mut TorqueBody)| {
        let mut nut = spec(SpecItem::AxleNut, vec![torque("245", NM)]);
        if let SpecBody::Torque(body) = &mut nut.body {
            change(body);
        }
        nut.fault()
    };
    assert_eq!(with(|_| {}), None);
    assert_eq!(
        with(|body| body.position = None),
        Some(SpecError::NoPosition)
    );
    assert_eq!(
        with(|body| body.source.document.clear()),
        Some(SpecError::NoSource)
    );
    assert_eq!(
        with(|body| body.source.who.clear()),
        Some(SpecError::NoSource)
    );
}

#[test]
fn no_figure_never_closes_what_holds_the_wheel() {
    let closable: Vec<_> = SpecItem::ALL
        .iter()
        .filter(|item| item.may_close_without_figure())
        .collect();
    assert_eq!(closable, [&SpecItem::PlayLimit]);
}
