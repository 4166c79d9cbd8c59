//! From the fields of a card's form to the card, or the first thing that is wrong with it.

use crate::trade::fastening::card::CardFault;
use crate::trade::fastening::{
    CardBody, CardItem, CardSource, Condition, Position, SpecCard, Stage, TorqueBody,
};
use crate::trade::play::Way;
use crate::units::{AngleUnit, DecimalSlip, LengthUnit, TorqueUnit, Typed};

/// Why the fields give no card.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CardSlip {
    /// The value is no number.
    Value(DecimalSlip),
    /// The angle is no number.
    Angle(DecimalSlip),
    /// The card would not be usable.
    Fault(CardFault),
}

/// The fields of a torque's form.
#[derive(Clone, Debug, PartialEq)]
pub struct TypedTorqueCard {
    /// What it is for.
    pub item: CardItem,
    /// The torque as typed.
    pub value: String,
    /// The unit behind it.
    pub unit: TorqueUnit,
    /// The angle as typed, degrees, if one follows.
    pub angle: Option<String>,
    /// How the hub is held, for the axle nut.
    pub position: Position,
    /// What else the page asks for.
    pub conditions: Vec<Condition>,
    /// Where it was read.
    pub source: CardSource,
}

impl TypedTorqueCard {
    /// The card.
    ///
    /// # Errors
    /// The first [`CardSlip`].
    pub fn card(self) -> Result<SpecCard, CardSlip> {
        let torque = Typed::parse(&self.value, self.unit).map_err(CardSlip::Value)?;
        let mut stages = vec![Stage::Torque(torque)];
        if let Some(angle) = &self.angle {
            let angle = Typed::parse(angle, AngleUnit::Degree).map_err(CardSlip::Angle)?;
            stages.push(Stage::Angle(angle));
        }
        sound(SpecCard {
            item: self.item,
            body: CardBody::Torque(TorqueBody {
                stages,
                position: (self.item == CardItem::AxleNut).then_some(self.position),
                conditions: self.conditions,
                source: self.source,
            }),
        })
    }
}

/// The card of the play limit.
///
/// # Errors
/// The first [`CardSlip`].
pub fn play_card(
    value: &str,
    unit: LengthUnit,
    way: Way,
    source: CardSource,
) -> Result<SpecCard, CardSlip> {
    let most = Typed::parse(value, unit).map_err(CardSlip::Value)?;
    sound(SpecCard {
        item: CardItem::PlayLimit,
        body: CardBody::Play { most, way, source },
    })
}

/// The card that says that nothing was found.
///
/// # Errors
/// [`CardSlip::Fault`] without a reason.
pub fn not_found(item: CardItem, reason: &str) -> Result<SpecCard, CardSlip> {
    let reason = reason.trim().to_owned();
    sound(SpecCard {
        item,
        body: CardBody::NotFound { reason },
    })
}

fn sound(card: SpecCard) -> Result<SpecCard, CardSlip> {
    match card.fault() {
        Some(fault) => Err(CardSlip::Fault(fault)),
        None => Ok(card),
    }
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;
    use crate::trade::fastening::card::tests::source;
    use crate::units::Decimal;

    fn typed(value: &str, angle: Option<&str>) -> TypedTorqueCard {
        TypedTorqueCard {
            item: CardItem::AxleNut,
            value: value.to_owned(),
            unit: TorqueUnit::NewtonMetre,
            angle: angle.map(str::to_owned),
            position: Position::AirBar,
            conditions: vec![Condition::NewFastener],
            source: source(),
        }
    }

    #[test]
    fn a_torque_with_its_angle_becomes_two_stages_as_typed() {
        let card = typed("80", Some("60")).card().unwrap();
        let CardBody::Torque(body) = &card.body else {
            panic!("a torque")
        };
        assert_eq!(body.stages.len(), 2);
        assert_eq!(body.position, Some(Position::AirBar));
        let kept = card.final_torque().unwrap();
        assert_eq!(kept.number, Decimal::parse("80").unwrap());
    }

    #[test]
    fn only_the_axle_nut_says_how_the_hub_is_held() {
        let bolts = TypedTorqueCard {
            item: CardItem::HubBolts,
            ..typed("90", None)
        };
        let CardBody::Torque(body) = bolts.card().unwrap().body else {
            panic!("a torque")
        };
        assert_eq!(body.position, None);
    }

    #[test]
    fn each_slip_is_told_by_its_own_name() {
        let slip = |value: &str, angle| typed(value, angle).card().unwrap_err();
        assert_eq!(slip("", None), CardSlip::Value(DecimalSlip::Empty));
        assert_eq!(slip("80", Some("")), CardSlip::Angle(DecimalSlip::Empty));
        assert_eq!(
            slip("0", None),
            CardSlip::Fault(CardFault::NotAboveZero { stage: 0 })
        );
        let unsourced = TypedTorqueCard {
            source: CardSource {
                document: String::new(),
                ..source()
            },
            ..typed("80", None)
        };
        assert_eq!(unsourced.card(), Err(CardSlip::Fault(CardFault::NoSource)));
        assert_eq!(
            not_found(CardItem::HubBolts, " "),
            Err(CardSlip::Fault(CardFault::NoReason))
        );
    }

    #[test]
    fn a_limit_of_zero_is_a_limit() {
        let card = play_card("0", LengthUnit::Millimetre, Way::DEFAULT, source()).unwrap();
        assert!(card.limit().unwrap().unwrap().is_zero());
    }
}
