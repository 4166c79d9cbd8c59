use super::*;

#[test]
fn fields_of_a_wrench_become_one_or_say_why_not() {
    let unit = TorqueUnit::PoundFoot;
    let wrench = typed_wrench(" D ", "30", "150", unit).unwrap();
    assert_eq!((wrench.name.as_str(), wrench.unit), ("D", unit));
    let slip = |name, low, high| typed_wrench(name, low, high, unit).unwrap_err();
    assert_eq!(slip(" ", "30", "150"), KitError::NoName);
    assert_eq!(slip("D", "", "150"), KitError::Number(DecimalError::Empty));
    assert_eq!(slip("D", "150", "30"), KitError::Range);
    assert_eq!(slip("D", "0", "30"), KitError::Range);
}

#[test]
fn fields_of_a_dial_become_one_or_say_why_not() {
    let dial = typed_dial("0,002", LengthUnit::Millimetre, "100", DialKind::Lever).unwrap();
    assert_eq!(dial.divisions_per_turn(), 100);
    assert!((dial.graduation().mm() - 0.002).abs() < 1e-15);
    let slip = |division: &str, turn: &str| {
        typed_dial(division, LengthUnit::Inch, turn, DialKind::Plunger).unwrap_err()
    };
    assert!(matches!(slip("0", "100"), KitError::Dial(_)));
    assert!(matches!(slip("0.001", "3"), KitError::Dial(_)));
    assert!(matches!(slip("x", "100"), KitError::Number(_)));
    assert!(matches!(slip("0.001", "many"), KitError::Number(_)));
}

#[test]
fn a_part_is_counted_in_whole_pieces_and_has_a_number() {
    let stock = |number, have| typed_stock(number, have, "1", "");
    let counted = stock(" MX-4410 ", "3").unwrap();
    assert_eq!((counted.number.as_str(), counted.have), ("MX-4410", 3));
    assert_eq!((counted.least, counted.cores), (1, 0));
    for (number, have) in [
        ("", "3"),
        ("-", "3"),
        ("MX", "1.5"),
        ("MX", "-1"),
        ("MX", "many"),
    ] {
        assert_eq!(stock(number, have), None, "{number} {have}");
    }
}

#[test]
fn the_first_kit_speaks_the_units_of_its_holder() {
    assert_eq!(first_kit(System::Metric).dial, Dial::HUNDREDTH_MM);
    assert_eq!(first_kit(System::Us).dial, Dial::THOU);
    // No wrench is made up: what nobody entered is judged nowhere.
    assert!(first_kit(System::Us).wrenches.is_empty());
}

#[test]
fn clicks_are_counted_by_name_since_the_last_check() {
    use crate::job::entry::Moved;
    use crate::job::recorded::sheet;
    use crate::job::turn::tests::CORNER;
    use crate::trade::wheel_end::{ItemKind, ItemState, Step, StepKey, items};
    let click = |name: &str| {
        Event::Moved(Moved {
            step: StepKey::at(Step::TurnLugNuts, CORNER),
            items: items(CORNER, ItemKind::LugNuts, 1),
            to: ItemState::Done,
            wrench: Some((
                name.to_owned(),
                Typed::parse("120", TorqueUnit::NewtonMetre).unwrap(),
            )),
        })
    };
    // The entries of this sheet were noted on the first day of 1970.
    let now = sheet(&[click("A"), click("B"), click("A")]);
    let mut wrench = typed_wrench("A", "20", "200", TorqueUnit::NewtonMetre).unwrap();
    assert_eq!(clicks(&now, &wrench, None), 2);
    wrench.upkeep = typed_upkeep("1", wrench.unit, "1970-01-01", "4998").unwrap();
    let counted = clicks(&now, &wrench, None);
    let today = "1970-02-01".parse().unwrap();
    assert_eq!(
        wrench_due(&wrench, counted, today),
        Some(CheckDue::Clicks(5_000))
    );
    assert_eq!(wrench_due(&wrench, 0, today), None);
    wrench.upkeep = typed_upkeep("", wrench.unit, "1970-01-02", "").unwrap();
    assert_eq!(clicks(&now, &wrench, None), 0);
    assert_eq!(
        typed_upkeep("", wrench.unit, "soon", ""),
        Err(KitError::Day)
    );
}

#[test]
fn practice_never_counts_a_click_on_a_wrench_of_any_name() {
    use crate::job::entry::{Moved, Opened};
    use crate::job::recorded::sheet;
    use crate::job::turn::tests::CORNER;
    use crate::trade::wheel_end::{ItemKind, ItemState, Start, Step, StepKey, items};
    let unit = TorqueUnit::NewtonMetre;
    let wrench = typed_wrench("A", "20", "200", unit).unwrap();
    let clicked = |practice: Option<&str>| {
        let opened = Event::Opened(Opened {
            start: Start::AtCar,
            practice: practice.map(str::to_owned),
        });
        let moved = Event::Moved(Moved {
            step: StepKey::at(Step::TurnLugNuts, CORNER),
            items: items(CORNER, ItemKind::LugNuts, 1),
            to: ItemState::Done,
            wrench: Some(("A".to_owned(), Typed::parse("120", unit).unwrap())),
        });
        clicks(&sheet([opened, moved]), &wrench, None)
    };
    assert_eq!(clicked(None), 1);
    assert_eq!(clicked(Some("marten")), 0);
    let day = "2026-02-17".parse().unwrap();
    let own = practice_kit(Dial::THOU, System::Us, day);
    assert!(
        own.wrenches
            .iter()
            .all(|it| it.name.starts_with("Practice"))
    );
    assert_eq!(own.dial, Dial::THOU);
}

#[test]
fn a_job_knows_by_its_own_record_whether_a_wrench_was_due() {
    use crate::job::recorded::sheet;
    let unit = TorqueUnit::NewtonMetre;
    let wrench = |checked| Wrench {
        upkeep: typed_upkeep("", unit, checked, "4000").unwrap(),
        ..typed_wrench("A", "20", "200", unit).unwrap()
    };
    let kit = |checked, counted| {
        let kit = Carried {
            wrenches: vec![wrench(checked)],
            ..first_kit(System::Metric)
        };
        sheet([Event::Carried(copied(kit, &[("A".to_owned(), counted)]))])
    };
    let on = |day: &str| day.parse().unwrap();
    let due = |checked, counted, day| overdue(&kit(checked, counted), "A", on(day));
    // ISO 6789-1: twelve months or 5000 clicks, whichever comes first.
    assert_eq!(due("2025-03-10", 999, "2025-06-01"), None);
    let clicked = Some(CheckDue::Clicks(5_000));
    assert_eq!(due("2025-03-10", 1_000, "2025-06-01"), clicked);
    assert!(matches!(
        due("2025-03-10", 0, "2026-04-01"),
        Some(CheckDue::Day(_))
    ));
    assert_eq!(due("", 0, "2026-04-01"), None);
    assert_eq!(overdue(&kit("2025-03-10", 0), "B", on("2026-04-01")), None);
}

#[test]
fn a_share_is_what_the_shop_sets_or_what_is_common() {
    let mut kit = first_kit(System::Metric);
    assert_eq!(kit.share(), UsableShare::DEFAULT);
    kit.more.share = Some(typed_share("25", "90").unwrap());
    assert_eq!(kit.share(), UsableShare::percent(25, 90).unwrap());
    assert_eq!(typed_share("90", "25"), Err(KitError::Share));
    assert_eq!(typed_share("", "100"), Err(KitError::Share));
}

#[test]
fn a_stand_bears_the_share_of_an_axle_or_is_named() {
    let mut kit = first_kit(System::Metric);
    let mass = mass_of("2000 kg").unwrap();
    assert_eq!(weak_stands(&kit, mass), None);
    let stand = |rating| typed_stand("S", rating, MassUnit::Kilogram).unwrap();
    kit.more.stands = vec![stand("3000"), stand("1000")];
    let (weak, axle) = weak_stands(&kit, mass).unwrap();
    assert_eq!(weak, [&stand("1000")]);
    assert!((axle.in_unit(MassUnit::Kilogram) - 1200.0).abs() < 1e-9);
    assert_eq!(mass_of("heavy"), None);
    assert_eq!(mass_of("0 kg"), None);
    assert!(typed_stand("", "3000", MassUnit::Kilogram).is_err());
}
