//! Whatever can be read on the bench: runs round a face, rotors, how the rig stood.

use super::*;

pub(super) fn runout() -> impl Strategy<Value = RunoutReading> {
    let setup = (
        select(Surface::ALL),
        4_u8..=24,
        1_u8..=10,
        select(Answer::ALL),
    )
        .prop_map(|(surface, places, stud, cleaned)| Setup {
            surface,
            places,
            stud,
            cleaned,
        });
    let at = (select(Corner::ALL), 1_u8..=255, 1_u8..=25);
    let read = (
        option::of(typed(AngleUnit::ALL)),
        option::of(typed(LengthUnit::ALL)),
        option::of((typed_text(), option::of(-2..=2))),
        option::of(select(LeftOut::ALL)),
    );
    (at, setup, read, dial()).prop_map(
        |((corner, run, place), setup, (angle, radius, read, left_out), dial)| RunoutReading {
            corner,
            run,
            setup,
            place,
            angle,
            radius,
            divisions: read.as_ref().map(|(text, _)| Decimal::parse(text).unwrap()),
            turns: read.and_then(|(_, turns)| turns),
            dial,
            left_out,
        },
    )
}

pub(super) fn runout_spec() -> impl Strategy<Value = RunoutSpec> {
    let most = typed(LengthUnit::ALL);
    (select(Surface::ALL), most, source()).prop_map(|(surface, most, source)| RunoutSpec {
        surface,
        most,
        source,
    })
}

fn thickness() -> impl Strategy<Value = ThicknessReading> {
    let at = (select(Corner::ALL), 1_u8..=255, 1_u8..=24);
    let gauging = (select(Micrometer::ALL), 4_u8..=24);
    let measured = option::of(typed(LengthUnit::ALL));
    (at, gauging, measured).prop_map(|((corner, run, place), (micrometer, places), thickness)| {
        ThicknessReading {
            corner,
            run,
            gauging: Gauging { micrometer, places },
            place,
            thickness,
        }
    })
}

pub(super) fn thickness_spec() -> impl Strategy<Value = ThicknessSpec> {
    let of = (select(Axle::ALL), select(Bound::ALL));
    (of, typed(LengthUnit::ALL), source()).prop_map(|((axle, bound), value, source)| {
        ThicknessSpec {
            axle,
            bound,
            value,
            source,
        }
    })
}

pub(super) fn benched() -> impl Strategy<Value = Event> {
    let radius = typed(LengthUnit::ALL);
    prop_oneof![
        runout().prop_map(Event::Runout),
        runout_spec().prop_map(Event::RunoutLimit),
        thickness().prop_map(Event::Thickness),
        thickness_spec().prop_map(Event::ThicknessLimit),
        (select(Place::ALL), radius).prop_map(|(place, radius)| Event::TipRadius(place, radius)),
        (select(Corner::ALL), set_name(), typed(AngleUnit::ALL))
            .prop_map(|(corner, set, angle)| Event::TipAngle(corner, set, angle)),
        (select(Corner::ALL), set_name(), typed_text()).prop_map(|(corner, set, crept)| {
            Event::Crept(corner, set, Decimal::parse(&crept).unwrap())
        }),
    ]
}
