//! Whatever can stand on the paper of an earlier visit.

use super::*;

/// What a paper can say, in the order in which it says it.
pub(super) fn slip() -> impl Strategy<Value = Slip> {
    let vehicle = vec(fact(), 0..4);
    let corners = vec(select(Corner::ALL), 1..5).prop_map(Event::Corners);
    let off = (
        step(),
        vec(1_u8..=10, 1..6),
        select(Corner::ALL),
        select(ItemState::ALL),
    );
    let moved = off.prop_map(|(step, numbers, corner, to)| {
        let group = ItemKind::LugNuts;
        let item = |number| Item {
            corner,
            group,
            number,
        };
        Event::Moved(Moved {
            step,
            items: numbers.into_iter().map(item).collect(),
            to,
            wrench: None,
        })
    });
    let loose = prop_oneof![
        moved,
        also().prop_map(Event::Also),
        mishap().prop_map(Event::Mishap)
    ];
    let reading = reading().prop_map(|reading| {
        let turns = reading.turns.filter(|_| reading.side == Side::Pull);
        Event::Reading(Reading { turns, ..reading })
    });
    let reading = prop_oneof![reading, runout().prop_map(Event::Runout)];
    let reading = (vec(reading, 0..4), vec(option::of(way()), 4))
        .prop_map(|(readings, ways)| set_up(readings, ways));
    let rest = prop_oneof![
        decided().prop_map(Event::Decided),
        consent().prop_map(|consent| Event::Consent(Consent {
            scope: Scope::Repair,
            amount: None,
            ..consent
        })),
        (select(Corner::ALL), text(), text()).prop_map(|(corner, number, lot)| {
            Event::Part(Part {
                corner,
                number,
                lot,
            })
        }),
        due().prop_map(Event::Due),
        (select(Ending::ALL), option::of(select(Charge::ALL)))
            .prop_map(|(ending, charge)| Event::Ended(Ended { ending, charge })),
    ];
    let first = (vehicle, corners, vec(spec().prop_map(Event::Spec), 0..4));
    let then = (vec(loose, 0..3), reading, vec(rest, 0..5));
    (uuid(), hex(), first, then).prop_map(|(job, digest, first, then)| {
        let (vehicle, corners, specs) = first;
        let vehicle = vehicle
            .into_iter()
            .map(|(field, text)| Event::Vehicle(field, text));
        let mut facts: Vec<Event> = vehicle.chain([corners]).chain(specs).collect();
        facts.extend([then.0, then.1, then.2].into_iter().flatten());
        Slip { job, digest, facts }
    })
}

/// The same readings, before the first of them how the dial was set up for some of their sets.
fn set_up(readings: Vec<Event>, ways: Vec<Option<Way>>) -> Vec<Event> {
    let of = |what: &Event| match what {
        Event::Reading(reading) => Some((reading.corner, reading.set)),
        _ => None,
    };
    let mut sets = Vec::new();
    for set in readings.iter().filter_map(of) {
        if !sets.contains(&set) {
            sets.push(set);
        }
    }
    let setups = sets
        .into_iter()
        .zip(ways)
        .filter_map(|((corner, set), way)| {
            let way = way?;
            Some(Event::DialSetup(DialSetup { corner, set, way }))
        });
    let first = readings.iter().position(|what| of(what).is_some());
    let mut facts = readings;
    let rest = facts.split_off(first.unwrap_or(facts.len()));
    facts.into_iter().chain(setups).chain(rest).collect()
}
