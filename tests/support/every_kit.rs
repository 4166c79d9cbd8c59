//! Whatever can stand on a spec or lie in a van.

use super::*;

fn wrench() -> impl Strategy<Value = Wrench> {
    let range = (1_u32..5000, 1_u32..5000, select(TorqueUnit::ALL));
    (text(), range, upkeep()).prop_map(|(name, (low, more, unit), upkeep)| {
        let torque = |tenths: u32| Torque::new(f64::from(tenths) / 10.0, unit).unwrap();
        Wrench {
            name,
            low: torque(low),
            high: torque(low + more),
            unit,
            upkeep,
        }
    })
}

pub(super) fn carried() -> impl Strategy<Value = Carried> {
    let stand = (text(), typed(MassUnit::ALL)).prop_map(|(name, rating)| Stand { name, rating });
    let day =
        || option::of((1_u32..29).prop_map(|day| NaiveDate::from_ymd_opt(2027, 2, day).unwrap()));
    let more = (
        vec(dial(), 0..3),
        vec(stand, 0..3),
        option::of(any::<bool>()),
        option::of((0_u8..50, 50_u8..=100)),
        option::of(typed(LengthUnit::ALL)),
        day(),
    )
        .prop_map(
            |(dials, stands, angle_gauge, share, dial_error, angle_due)| MoreKit {
                dials,
                stands,
                angle_gauge,
                share,
                dial_error,
                angle_due,
            },
        );
    (vec(wrench(), 0..3), dial(), more, day()).prop_map(|(wrenches, dial, more, dial_due)| {
        Carried {
            wrenches,
            dial,
            more,
            dial_due,
        }
    })
}

fn upkeep() -> impl Strategy<Value = Upkeep> {
    let day = (0_u64..40_000)
        .prop_map(|days| NaiveDate::from_ymd_opt(1990, 1, 1).unwrap() + Days::new(days));
    let marks = option::of(typed(TorqueUnit::ALL));
    (marks, option::of(day), any::<u32>()).prop_map(|(graduation, checked, clicks)| Upkeep {
        graduation,
        checked,
        clicks,
    })
}

pub(super) fn source() -> impl Strategy<Value = SpecSource> {
    let words = (text(), text(), text(), option::of(text()));
    (words, 0_u64..40_000).prop_map(
        |((document, page, who, override_reason), days)| SpecSource {
            document,
            page,
            looked_up: NaiveDate::from_ymd_opt(1990, 1, 1).unwrap() + Days::new(days),
            who,
            override_reason,
        },
    )
}

fn printed() -> impl Strategy<Value = Printed> {
    let thread = select(&["M12x1.5", "m14 × 1,5", "1/2-20", "7/16-20 UNF"][..]);
    (
        option::of(any::<u8>()),
        option::of(thread.prop_map(|text| Thread::parse(text).unwrap())),
        option::of(select(PropertyClass::ALL)),
        option::of(select(Pattern::ALL)),
        option::of(text()),
    )
        .prop_map(|(count, thread, class, pattern, threadlocker)| Printed {
            count,
            thread,
            class,
            pattern,
            threadlocker,
        })
}

pub(super) fn spec() -> impl Strategy<Value = Spec> {
    let stage = prop_oneof![
        typed(TorqueUnit::ALL).prop_map(Stage::Torque),
        typed(AngleUnit::ALL).prop_map(Stage::Angle),
        option::of(typed(AngleUnit::ALL)).prop_map(Stage::Back),
        Just(Stage::Snug),
    ];
    let torque = (
        vec(stage, 0..4),
        option::of(select(Position::ALL)),
        vec(select(Condition::ALL), 0..4),
        printed(),
        source(),
    );
    let body = prop_oneof![
        torque.prop_map(
            |(stages, position, conditions, printed, source)| SpecBody::Torque(TorqueBody {
                stages,
                position,
                conditions,
                printed,
                source
            })
        ),
        (
            typed(LengthUnit::ALL),
            proptest::option::of(typed(LengthUnit::ALL)),
            way(),
            source()
        )
            .prop_map(|(most, least, way, source)| SpecBody::Play {
                most,
                least,
                way,
                source
            }),
        text().prop_map(|reason| SpecBody::NotFound { reason }),
    ];
    (select(SpecItem::ALL), body).prop_map(|(item, body)| Spec { item, body })
}
