use super::*;
use crate::job::entry::Setup;
use crate::job::recorded::sheet;
use crate::job::runout::{Spotted, angle_typed, saved};
use crate::trade::answer::Answer;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::Micrometer;

const LEFT: Corner = Corner::FrontLeft;
const FINE: Gauging = Gauging {
    micrometer: Micrometer::ThousandthMm,
    places: 4,
};

/// The entries of a measurement; a place without a number was skipped.
fn measure(run: u8, gauging: Gauging, numbers: &[&str]) -> Vec<Event> {
    let each = numbers.iter().zip(1..).map(|(number, place)| {
        let at = Placed {
            corner: LEFT,
            run,
            gauging,
            place,
        };
        at.saved(number).unwrap_or_else(|_| at.skipped())
    });
    each.collect()
}

fn limit(axle: Axle, bound: Bound, value: &str) -> Event {
    let source = SpecSource {
        document: "Book".to_owned(),
        page: "4-12".to_owned(),
        looked_up: Default::default(),
        who: "R. Okafor".to_owned(),
        override_reason: None,
    };
    let spec = limit_spec((axle, bound), value, LengthUnit::Millimetre, source);
    Event::ThicknessLimit(spec.unwrap())
}

#[test]
fn the_next_place_is_the_first_that_was_neither_measured_nor_skipped() {
    let sheet = sheet(measure(1, FINE, &["22.010", "-"]));
    let all = measurements(&sheet, LEFT);
    assert_eq!(all[0].next_place(), Some(3));
    assert_eq!(all[0].at(2).unwrap().thickness, None);
    let fault = found(&sheet, LEFT, &all[0]).unwrap_err();
    assert_eq!(fault, ThicknessError::TooFew { given: 1 });
    let more = all[0].from_first("22.015").unwrap();
    assert!((more.mm() - 0.005).abs() < 1e-12);
    assert_eq!(all[0].from_first("22."), all[0].from_first("22"));
    assert_eq!(all[0].from_first(""), None);
    assert_eq!(measurements(&sheet, Corner::FrontRight), []);
}

#[test]
fn both_limits_judge_and_only_those_of_the_axle() {
    let six = Gauging { places: 6, ..FINE };
    let wave = ["22.030", "22.025", "22.015", "22.010", "22.015", "22.025"];
    let mut whats = measure(1, six, &wave);
    let sheet_of = |whats: &[Event]| sheet(whats);
    let none = sheet_of(&whats);
    let all = measurements(&none, LEFT);
    let bare = found(&none, LEFT, &all[0]).unwrap();
    assert_eq!((&bare.least, &bare.variation), (&None, &None));
    assert_eq!((bare.next, bare.ends), (RotorNext::LookUp, (4, 1)));

    whats.push(limit(Axle::Rear, Bound::Least, "25"));
    whats.push(limit(Axle::Front, Bound::Least, "21.9"));
    whats.push(limit(Axle::Front, Bound::Variation, "0.013"));
    let recorded = sheet_of(&whats);
    let all = measurements(&recorded, LEFT);
    let both = found(&recorded, LEFT, &all[0]).unwrap();
    assert_eq!(both.least.unwrap().said.unwrap().result, Guarded::ProvenIn);
    assert_eq!(
        both.variation.unwrap().said.unwrap().result,
        Guarded::ProvenOut
    );
    assert_eq!(both.next, RotorNext::Machine);

    whats.push(limit(Axle::Front, Bound::Least, "22.2"));
    let thin = sheet_of(&whats);
    let all = measurements(&thin, LEFT);
    assert_eq!(
        found(&thin, LEFT, &all[0]).unwrap().next,
        RotorNext::NewRotor
    );
}

#[test]
fn a_micrometer_in_inches_tells_the_same() {
    let inch = Gauging {
        micrometer: Micrometer::TenthThou,
        ..FINE
    };
    // 0.8665 in and 0.8673 in are 22.0091 mm and 22.02942 mm, an inch being 25.4 mm.
    let sheet = sheet(measure(1, inch, &["0.8665", "0.8668", "0.8673", "0.8670"]));
    let all = measurements(&sheet, LEFT);
    let found = found(&sheet, LEFT, &all[0]).unwrap();
    assert!((found.thickness.thinnest().mm() - 22.0091).abs() < 1e-9);
    assert!((found.thickness.range().mm() - 0.020_32).abs() < 1e-9);
    // One of four readings is to spare: that tells no variation from scatter.
    assert_eq!(found.varies, Err(Undetermined::NoSpare { more: 1 }));
    assert_eq!(found.ends, (1, 3));
}

#[test]
fn a_second_measurement_stands_beside_the_first() {
    let mut whats = measure(1, FINE, &["22", "22", "22", "22"]);
    whats.extend(measure(2, FINE, &["21.5", "21.5", "21.5", "21.4"]));
    let sheet = sheet(whats);
    let all = measurements(&sheet, LEFT);
    let nths: Vec<_> = all.iter().map(|of| (of.nth, of.next_place())).collect();
    assert_eq!(nths, [(1, None), (2, None)]);
    let last = found(&sheet, LEFT, &all[1]).unwrap();
    assert_eq!(last.ends, (4, 1));
}

#[test]
fn the_places_are_those_of_the_rotors_runout() {
    let empty = sheet(Vec::new());
    assert_eq!(places_of(&empty, LEFT), USUAL_PLACES);
    assert_eq!(same_place(&empty, LEFT, FINE, 2), None);
    let reading = |surface, place, angle: &str| {
        let at = Spotted {
            corner: LEFT,
            run: 1,
            setup: Setup {
                surface,
                places: 4,
                stud: 1,
                cleaned: Answer::Yes,
            },
            place,
            angle: Some(angle_typed(angle).unwrap()),
            radius: None,
        };
        saved(&empty, at, "0", None).unwrap()
    };
    let hub = sheet(vec![reading(Surface::HubFace, 2, "47.5")]);
    assert_eq!(places_of(&hub, LEFT), USUAL_PLACES);
    let rotor = sheet(vec![reading(Surface::Rotor, 2, "47.5")]);
    assert_eq!(places_of(&rotor, LEFT), 4);
    let angle = |place| {
        let there = same_place(&rotor, LEFT, FINE, place)?;
        Some(there.angle.as_ref()?.number.as_typed().to_owned())
    };
    assert_eq!((angle(2).as_deref(), angle(3)), (Some("47.5"), None));
    let more = Gauging { places: 8, ..FINE };
    assert_eq!(same_place(&rotor, LEFT, more, 2), None);
}

#[test]
fn each_slip_is_named() {
    let slip = |text| typed(FINE, text).unwrap_err();
    assert_eq!(slip(""), ThicknessInputError::Number(DecimalError::Empty));
    assert_eq!(slip("0.000"), ThicknessInputError::NotAboveZero);
    assert_eq!(slip("-22"), ThicknessInputError::NotAboveZero);
    let spec = |value, document: &str| {
        let source = SpecSource {
            document: document.to_owned(),
            page: String::new(),
            looked_up: Default::default(),
            who: "R. Okafor".to_owned(),
            override_reason: None,
        };
        let of = (Axle::Front, Bound::Least);
        limit_spec(of, value, LengthUnit::Millimetre, source).unwrap_err()
    };
    assert!(matches!(spec("", "Book"), SpecInputError::Value(_)));
    let zero = SpecInputError::Fault(SpecError::NotAboveZero { stage: 0 });
    assert_eq!(spec("0", "Book"), zero);
    assert_eq!(spec("22", " "), SpecInputError::Fault(SpecError::NoSource));
}
