//! What must hold for every input: units, the dial, the decision, star orders, vehicle numbers.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use hubslate::trade::fastening::{cross_order, star_order};
use hubslate::trade::play::budget::{Budget, IndicatorError, RigFacts, can_prove};
use hubslate::trade::play::conformity::{Conformity, compare};
use hubslate::trade::play::dial::{Dial, DialKind, Divisions, Round};
use hubslate::trade::play::limit::Limit;
use hubslate::trade::play::series::ReadingSet;
use hubslate::trade::play::uncertainty::{t_one_sided, t_two_sided};
use hubslate::trade::play::way::Way;
use hubslate::trade::vehicle::vin::{CheckDigit, Vin};
use hubslate::trade::vehicle::{Booking, read_booking};
use hubslate::units::{
    Decimal, DecimalMark, Format, Length, LengthUnit, System, Temperature, TemperatureUnit, Torque,
    TorqueUnit,
};
use proptest::prelude::*;

fn mm(value: f64) -> Length {
    Length::new(value, LengthUnit::Millimetre).unwrap()
}

fn at(divisions: f64) -> Divisions {
    Divisions::new(divisions).unwrap()
}

fn rig(flex_mm: f64) -> RigFacts {
    RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: mm(flex_mm),
        temperature: None,
    }
}

fn set(dial: Dial, pulls: &[f64]) -> ReadingSet {
    let rounds: Vec<_> = pulls.iter().map(|d| Round::zeroed(at(*d))).collect();
    ReadingSet::read(dial, Way::DEFAULT, &rounds, vec![]).unwrap()
}

/// Where a result stands between "proven in" and "proven out".
fn rank(conformity: &Conformity) -> u8 {
    match conformity {
        Conformity::ProvenIn(_) => 0,
        Conformity::InNotProven(_) => 1,
        Conformity::OutNotProven(_) => 2,
        Conformity::ProvenOut(_) => 3,
        other => panic!("{other:?}"),
    }
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs()).max(1e-300)
}

/// A text that is surely typed: sign, digits, one separator.
fn typed() -> impl Strategy<Value = String> {
    "[-+]?[0-9]{1,8}([.,][0-9]{0,6})?"
}

/// Seventeen characters that a number may have.
fn vin_text() -> impl Strategy<Value = String> {
    "[0-9A-HJ-NPR-Z]{17}"
}

/// Value of a character, from the regulation's table, to know what a substitution changes.
fn vin_value(c: char) -> u32 {
    let groups = [
        "0", "1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ",
    ];
    let value = groups.iter().position(|group| group.contains(c)).unwrap();
    u32::try_from(value).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_length_comes_back_through_every_unit(value in -1e6..1e6_f64, unit in 0..4_usize) {
        let unit = LengthUnit::ALL[unit];
        let length = Length::new(value, unit).unwrap();
        prop_assert!(close(length.in_unit(unit), value));
        for through in LengthUnit::ALL {
            let again = Length::new(length.in_unit(*through), *through).unwrap();
            prop_assert!(close(again.mm(), length.mm()));
        }
    }

    #[test]
    fn a_torque_comes_back_through_every_unit(value in -1e6..1e6_f64, unit in 0..4_usize) {
        let unit = TorqueUnit::ALL[unit];
        let torque = Torque::new(value, unit).unwrap();
        for through in TorqueUnit::ALL {
            let again = Torque::new(torque.in_unit(*through), *through).unwrap();
            prop_assert!(close(again.in_unit(unit), value));
        }
    }

    #[test]
    fn a_temperature_comes_back(value in -100.0..500.0_f64) {
        let (c, f) = (TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit);
        let there = Temperature::new(value, c).unwrap().in_unit(f);
        let back = Temperature::new(there, f).unwrap().in_unit(c);
        prop_assert!((back - value).abs() < 1e-10);
    }

    #[test]
    fn a_shown_text_keeps_every_typed_digit(text in typed(), comma in any::<bool>()) {
        let decimal = if comma { DecimalMark::Comma } else { DecimalMark::Dot };
        let format = Format { system: System::Us, decimal };
        let parsed = Decimal::parse(&text).unwrap();
        let shown = format.marked(parsed.as_typed());
        let digits = |s: &str| s.chars().filter(char::is_ascii_digit).collect::<String>();
        prop_assert_eq!(digits(&shown), digits(&text));
        let again = Decimal::parse(&shown).unwrap();
        prop_assert_eq!(again.value(), parsed.value());
        prop_assert_eq!(again.decimals(), parsed.decimals());
    }

    #[test]
    fn no_text_at_all_makes_a_number_that_is_none(text in "\\PC{0,12}") {
        if let Ok(decimal) = Decimal::parse(&text) {
            prop_assert!(decimal.value().is_finite());
        }
    }

    #[test]
    fn turning_the_bezel_changes_nothing(
        push in 0.0..100.0_f64, way in -24.9..24.9_f64, turn in 0.0..100.0_f64
    ) {
        let dial = Dial::HUNDREDTH_MM;
        let on_face = |x: f64| at(x.rem_euclid(100.0));
        let read = |by: f64| {
            dial.play(Round::of_two(on_face(push + by), on_face(push + way + by))).unwrap()
        };
        prop_assert!((read(0.0).mm() - way.abs() * 0.01).abs() < 1e-12);
        prop_assert!((read(turn).mm() - read(0.0).mm()).abs() < 1e-12);
    }

    #[test]
    fn push_and_pull_may_change_places(push in 0.0..100.0_f64, pull in 0.0..100.0_f64) {
        let there = Dial::THOU.play(Round::of_two(at(push), at(pull)));
        let back = Dial::THOU.play(Round::of_two(at(pull), at(push)));
        prop_assert_eq!(there.is_ok(), back.is_ok());
        if let (Ok(there), Ok(back)) = (there, back) {
            prop_assert!((there.mm() - back.mm()).abs() < 1e-12);
        }
    }

    #[test]
    fn counted_turns_leave_no_doubt(push in 0.0..100.0_f64, travel in 0.0..400.0_f64) {
        let end = push + travel;
        let turns = (end / 100.0).floor();
        let round = Round {
            push: at(push),
            pull: at(end - turns * 100.0),
            turns: Some(turns as i32),
        };
        let play = Dial::HUNDREDTH_MM.play(round).unwrap();
        prop_assert!((play.mm() - travel * 0.01).abs() < 1e-9);
    }

    #[test]
    fn the_order_of_rounds_changes_neither_value_nor_budget(
        mut pulls in prop::collection::vec(0.0..20.0_f64, 1..8), flex in 0.0..0.03_f64
    ) {
        let before = set(Dial::HUNDREDTH_MM, &pulls);
        pulls.reverse();
        let after = set(Dial::HUNDREDTH_MM, &pulls);
        prop_assert!((before.mean().mm() - after.mean().mm()).abs() < 1e-12);
        prop_assert!((before.median().mm() - after.median().mm()).abs() < 1e-12);
        let u = |set| Budget::of(set, &rig(flex)).u_c.mm();
        prop_assert!((u(&before) - u(&after)).abs() < 1e-12);
        let spread = |set: &ReadingSet| set.settling(None).spread.mm();
        prop_assert!((spread(&before) - spread(&after)).abs() < 1e-12);
    }

    #[test]
    fn the_unit_of_the_dial_changes_nothing(
        pulls in prop::collection::vec(0.0..20.0_f64, 1..6), limit in 0.01..0.4_f64
    ) {
        let in_mm = Dial::new(mm(0.0254), 100, DialKind::Plunger).unwrap();
        let judged = |dial| {
            let set = set(dial, &pulls);
            let budget = Budget::of(&set, &rig(0.01));
            (compare(&set, &budget, &Limit::manufacturer(mm(limit), Way::DEFAULT).unwrap()), budget)
        };
        let ((by_mm, budget_mm), (by_thou, budget_thou)) = (judged(in_mm), judged(Dial::THOU));
        prop_assert_eq!(rank(&by_mm), rank(&by_thou));
        prop_assert!(close(budget_mm.u_c.mm(), budget_thou.u_c.mm()));
    }

    #[test]
    fn a_wider_limit_never_condemns_more(
        pulls in prop::collection::vec(0.0..20.0_f64, 1..6),
        limit in 0.001..0.3_f64, wider in 0.0..0.1_f64
    ) {
        let set = set(Dial::HUNDREDTH_MM, &pulls);
        let budget = Budget::of(&set, &rig(0.005));
        let judged = |value| {
            rank(&compare(&set, &budget, &Limit::manufacturer(mm(value), Way::DEFAULT).unwrap()))
        };
        prop_assert!(judged(limit + wider) <= judged(limit));
    }

    // Of rounds that agree: scatter brings few degrees of freedom, and a larger known part then
    // lowers the factor while it raises the uncertainty.
    #[test]
    fn a_worse_base_never_proves_more(
        play in 0.0..20.0_f64, rounds in 1..6_usize,
        limit in 0.001..0.3_f64, flex in 0.0..0.02_f64, worse in 0.0..0.02_f64
    ) {
        let set = set(Dial::HUNDREDTH_MM, &vec![play; rounds]);
        let limit = Limit::manufacturer(mm(limit), Way::DEFAULT).unwrap();
        let proven = |flex| {
            matches!(rank(&compare(&set, &Budget::of(&set, &rig(flex)), &limit)), 0 | 3)
        };
        prop_assert!(proven(flex) || !proven(flex + worse));
    }

    #[test]
    fn what_is_promised_in_advance_is_saved_by_rounds_that_agree(
        play in 0.0..20.0_f64, limit in 0.001..0.2_f64, rounds in 1..6_usize
    ) {
        let limit = Limit::manufacturer(mm(limit), Way::DEFAULT).unwrap();
        let promised = can_prove(&Dial::HUNDREDTH_MM, &rig(0.005), rounds, &limit);
        let set = set(Dial::HUNDREDTH_MM, &vec![play; rounds]);
        let mean = set.mean();
        let got = rank(&compare(&set, &Budget::of(&set, &rig(0.005)), &limit));
        let on_the_edge = |edge: Length| (edge.mm() - mean.mm()).abs() < 1e-9;
        prop_assume!(!on_the_edge(promised.over_from));
        prop_assume!(!promised.within_to.is_some_and(on_the_edge));
        // Fewer than three rounds prove nothing, and are promised nothing within.
        prop_assert_eq!(got == 3, rounds >= 3 && mean > promised.over_from);
        prop_assert_eq!(got == 0, promised.within_to.is_some_and(|to| mean <= to));
    }

    #[test]
    fn fewer_degrees_of_freedom_ask_for_a_larger_factor(dof in 1.0..1e9_f64, more in 1.0..1e6_f64) {
        let (few, many) = (t_one_sided(0.95, Some(dof)), t_one_sided(0.95, Some(dof + more)));
        prop_assert!(few.is_finite() && many <= few + 1e-6);
        prop_assert!(t_one_sided(0.95, None) <= many + 1e-6);
        prop_assert!((t_two_sided(0.90, Some(dof)) - few).abs() < 1e-9);
    }

    #[test]
    fn a_changed_character_shows_in_the_check_digit(
        text in vin_text(), place in 0..17_usize, other in "[0-9A-HJ-NPR-Z]"
    ) {
        let weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2_u32];
        let mut chars: Vec<char> = text.chars().collect();
        let was = chars[place];
        chars[place] = other.chars().next().unwrap();
        let changed: String = chars.iter().collect();
        let digit = |text: &str| Vin::parse(text).unwrap().expected_check_digit();
        let value = |c| vin_value(c) * weights[place] % 11;
        let differs = value(was) != value(chars[place]);
        prop_assert_eq!(digit(&text) != digit(&changed), differs);
    }

    #[test]
    fn the_expected_check_digit_passes_in_its_place(text in vin_text()) {
        let expected = Vin::parse(&text).unwrap().expected_check_digit();
        let mut chars: Vec<char> = text.chars().collect();
        chars[8] = expected;
        let mended: String = chars.into_iter().collect();
        prop_assert_eq!(Vin::parse(&mended).unwrap().check(), CheckDigit::Passes);
    }

    #[test]
    fn no_word_of_a_message_is_lost_or_invented(text in "([a-zA-Z0-9,.+ \n-]|VIN |plate |at |name is |12 Elm Road|555-0142 ){0,40}") {
        let words = |text: &str| text.split_whitespace().map(trimmed).filter(|w| !w.is_empty()).count();
        let booking = read_booking(&text);
        let found = spans(&booking);
        let mut left = text.clone();
        for span in &found {
            prop_assert!(text.get(span.clone()).is_some());
        }
        for (i, a) in found.iter().enumerate() {
            for b in &found[i + 1..] {
                prop_assert!(a.end <= b.start || b.end <= a.start, "{a:?} {b:?}");
            }
        }
        prop_assert!(words(&booking.complaint) <= words(&text));
        for word in booking.complaint.split_whitespace() {
            let at = left.find(word);
            prop_assert!(at.is_some(), "{word:?} is not in what follows of {text:?}");
            left = left[at.unwrap() + word.len()..].to_owned();
        }
        if found.is_empty() {
            prop_assert_eq!(booking.complaint, text.trim());
        }
    }
}

fn trimmed(word: &str) -> String {
    word.chars().filter(|c| c.is_alphanumeric()).collect()
}

fn spans(booking: &Booking) -> Vec<std::ops::Range<usize>> {
    let texts = [
        &booking.phone,
        &booking.plate,
        &booking.address,
        &booking.name,
    ];
    let vin = booking.vin.iter().map(|found| found.span.clone());
    vin.chain(texts.into_iter().flatten().map(|found| found.span.clone()))
        .collect()
}

#[test]
fn a_star_takes_each_once_and_no_neighbours_where_that_is_possible() {
    for count in 3..=10_u8 {
        let order = star_order(count).unwrap();
        let mut sorted = order.to_vec();
        sorted.sort_unstable();
        assert_eq!(sorted, (1..=count).collect::<Vec<_>>());
        for pair in order.windows(2) {
            let apart = pair[0].abs_diff(pair[1]);
            let around = apart.min(count - apart);
            assert!(around >= 2 || count < 5, "{count}: {pair:?}");
        }
    }
}

#[test]
fn with_an_even_count_the_opposite_one_follows() {
    for count in [4, 6, 8, 10_u8] {
        let order = star_order(count).unwrap();
        for pair in order.chunks(2) {
            assert_eq!(pair[0].abs_diff(pair[1]), count / 2, "{count}");
        }
    }
    assert_eq!(cross_order(4), star_order(4));
}
