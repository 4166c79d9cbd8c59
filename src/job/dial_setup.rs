//! How the dial is set up for a set of readings: what the spec requires, and what was recorded.
//!
//! A reading never takes its method from a spec: [`required`] is only what the technician is
//! shown to confirm or to correct.

use crate::job::entry::{DialSetup, Event};
use crate::job::judge::limit;
use crate::job::sheet::JobState;
use crate::trade::play::way::Difference;
use crate::trade::play::{LimitSource, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;
use crate::units::Force;

/// The way that the limit in force requires, and who says so. Where it names no setup, the usual
/// one stands in ([`Way::DEFAULT`]).
pub fn required(sheet: &JobState) -> (Way, LimitSource) {
    let limit = limit(sheet);
    let way = Way {
        rig: limit.way.rig.or(Way::DEFAULT.rig),
        ..limit.way
    };
    (way, limit.source)
}

/// The forces that can be recorded: by hand, and the one that the limit names.
pub fn forces(sheet: &JobState) -> Vec<Option<Force>> {
    let named = limit(sheet).way.force;
    std::iter::once(None)
        .chain(named.is_some().then_some(named))
        .collect()
}

/// Why readings taken in this way are not compared with the limit in force.
pub fn difference(sheet: &JobState, way: &Way) -> Option<Difference> {
    way.differs_from(&limit(sheet).way)
}

/// The entry of how the dial stands for a set.
pub const fn recorded(corner: Corner, set: SetName, way: Way) -> Event {
    Event::DialSetup(DialSetup { corner, set, way })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::Reply;
    use crate::job::entry::{Reading, Side};
    use crate::job::judge::measured;
    use crate::job::recorded::sheet;
    use crate::trade::fastening::{Spec, SpecBody, SpecItem, SpecSource};
    use crate::trade::play::{Conformity, Dial, Method, Place, ReadingFlag, SeriesError, WhyNot};
    use crate::trade::wheel_end::{Choice, Step, StepKey, When};
    use crate::units::{Decimal, ForceUnit, LengthUnit, Typed};

    const AT: Corner = Corner::FrontLeft;
    const SET: SetName = SetName {
        when: When::Before,
        nth: 1,
    };
    const ROCKED: Way = Way {
        method: Method::Rock,
        place: Place::RotorEdge,
        ..Way::DEFAULT
    };

    fn planned(way: Way) -> Event {
        Event::Spec(Spec {
            item: SpecItem::PlayLimit,
            body: SpecBody::Play {
                least: None,
                most: Typed::parse("0.05", LengthUnit::Millimetre).unwrap(),
                way,
                source: SpecSource {
                    document: "Sheet 7".to_owned(),
                    page: "41".to_owned(),
                    looked_up: "2026-01-15".parse().unwrap(),
                    who: "T".to_owned(),
                    override_reason: None,
                },
            },
        })
    }

    fn pulled(round: u8, divisions: &str, dial: Dial) -> Event {
        Event::Reading(Reading {
            corner: AT,
            set: SET,
            round,
            side: Side::Pull,
            divisions: Decimal::parse(divisions).unwrap(),
            turns: None,
            dial,
        })
    }

    fn still() -> Event {
        let step = StepKey::at(Step::RigPush, AT);
        Event::Answered(step, Reply::Picked(Choice::FlexNone))
    }

    fn rounds() -> [Event; 4] {
        let read = |round| pulled(round, "2", Dial::HUNDREDTH_MM);
        [still(), read(1), read(2), read(3)]
    }

    fn conformity(whats: impl IntoIterator<Item = Event>) -> Conformity {
        let whats: Vec<Event> = whats.into_iter().collect();
        measured(&sheet(&whats), AT, SET)
            .unwrap()
            .unwrap()
            .conformity
    }

    #[test]
    fn the_method_of_a_set_is_what_was_recorded_and_never_the_specs() {
        let as_done = |way| {
            [planned(ROCKED), recorded(AT, SET, way)]
                .into_iter()
                .chain(rounds())
        };
        // The default limit stands in where its own way fits, and says why it is not the spec's.
        let whats: Vec<Event> = as_done(Way::DEFAULT).collect();
        let pulled = measured(&sheet(&whats), AT, SET).unwrap().unwrap();
        assert_eq!(pulled.apart, Some(Difference::Method));
        assert!(!pulled.limit.is_manufacturers());
        let elsewhere = Way {
            place: Place::RotorEdge,
            ..Way::DEFAULT
        };
        assert_eq!(
            conformity(as_done(elsewhere)),
            Conformity::NoComparison(WhyNot::Way(Difference::Method))
        );
        let fits = conformity(as_done(ROCKED));
        assert!(!matches!(fits, Conformity::NoComparison(_)), "{fits:?}");
    }

    #[test]
    fn a_set_without_a_recorded_method_is_not_compared() {
        for limit in [Some(planned(Way::DEFAULT)), None] {
            assert_eq!(
                conformity(limit.into_iter().chain(rounds())),
                Conformity::NoComparison(WhyNot::ReadingFlag(ReadingFlag::MethodNotRecorded))
            );
        }
    }

    #[test]
    fn a_recorded_setup_is_that_of_its_own_set_alone() {
        let second = SetName { nth: 2, ..SET };
        let whats = [planned(Way::DEFAULT), recorded(AT, second, Way::DEFAULT)];
        assert_eq!(
            conformity(whats.into_iter().chain(rounds())),
            Conformity::NoComparison(WhyNot::ReadingFlag(ReadingFlag::MethodNotRecorded))
        );
    }

    #[test]
    fn what_was_felt_by_hand_is_no_method_of_the_dial() {
        let rocked = Event::Answered(
            StepKey::at(Step::RockTwelveSix, AT),
            Reply::Felt(crate::trade::play::Felt::Knocks),
        );
        let whats = [planned(ROCKED), rocked];
        assert_eq!(
            conformity(whats.into_iter().chain(rounds())),
            Conformity::NoComparison(WhyNot::ReadingFlag(ReadingFlag::MethodNotRecorded))
        );
    }

    #[test]
    fn a_set_on_two_dials_is_refused() {
        let recorded = recorded(AT, SET, Way::DEFAULT);
        let whats = [
            still(),
            recorded,
            pulled(1, "2", Dial::HUNDREDTH_MM),
            pulled(2, "2", Dial::THOU),
        ];
        assert_eq!(
            measured(&sheet(&whats), AT, SET),
            Some(Err(SeriesError::MixedDials))
        );
    }

    #[test]
    fn the_usual_setup_stands_in_where_the_spec_names_none() {
        let force = Force::new(250.0, ForceUnit::Newton).unwrap();
        let silent = Way {
            rig: None,
            force: Some(force),
            ..ROCKED
        };
        let sheet = sheet(&[planned(silent)]);
        let (way, source) = required(&sheet);
        assert_eq!((way.method, way.place), (Method::Rock, Place::RotorEdge));
        assert_eq!(
            (way.rig, source),
            (Way::DEFAULT.rig, LimitSource::Manufacturer)
        );
        assert_eq!(difference(&sheet, &way), None);
        assert_eq!(forces(&sheet), [None, Some(force)]);
        let by_hand = Way { force: None, ..way };
        assert_eq!(difference(&sheet, &by_hand), Some(Difference::Force));
    }
}
