//! 10: adjustable bearings and lug nuts as manuals print them. What the app takes in and warns by is
//! held against the rows by their number; the rest is named in `SOURCES.md`.

use hubslate::trade::fastening::{
    Printed, RetorqueRule, Spec, SpecBody, SpecItem, SpecSource, Stage, TorqueBody,
};
use hubslate::trade::play::{
    Dial, Divisions, IndicatorError, Limit, Measured, ReadingSet, RigFacts, Round, Way,
};
use hubslate::units::{AngleUnit, DistanceUnit, Length, LengthUnit, TorqueUnit, Typed};
use serde_json::Value;

use crate::rows::folder;

/// Rows that nothing here takes in.
pub const LEFT_OUT: [&str; 10] = [
    "O-10-006", "O-10-007", "O-10-008", "O-10-009", "O-10-012", "O-10-014", "O-10-017", "O-10-020",
    "O-10-021", "O-10-022",
];

fn file() -> Vec<Value> {
    let text = std::fs::read_to_string(folder().join("10_wheel_end_facts.json")).unwrap();
    let file: Value = serde_json::from_str(&text).unwrap();
    file["rows"].as_array().unwrap().clone()
}

fn expected(id: &str) -> Value {
    let rows = file();
    let row = rows.iter().find(|row| row["id"] == id);
    row.unwrap_or_else(|| panic!("no {id}"))["expected"].clone()
}

fn number(id: &str) -> f64 {
    expected(id).as_f64().unwrap()
}

fn setting(item: SpecItem, stages: Vec<Stage>) -> Spec {
    Spec {
        item,
        body: SpecBody::Torque(TorqueBody {
            stages,
            position: None,
            conditions: Vec::new(),
            printed: Printed::default(),
            source: SpecSource {
                document: "as printed".to_owned(),
                page: String::new(),
                looked_up: chrono::NaiveDate::from_ymd_opt(2026, 1, 2).unwrap(),
                who: "a test".to_owned(),
                override_reason: None,
            },
        }),
    }
}

fn back(turns: f64) -> Stage {
    let degrees = format!("{}", turns * 360.0);
    Stage::Back(Some(Typed::parse(&degrees, AngleUnit::Degree).unwrap()))
}

#[test]
fn every_row_is_used_or_named_as_left_out() {
    let used = [
        "O-10-001", "O-10-002", "O-10-003", "O-10-004", "O-10-005", "O-10-010", "O-10-011",
        "O-10-013", "O-10-015", "O-10-016", "O-10-018", "O-10-019",
    ];
    let sources = std::fs::read_to_string(folder().join("SOURCES.md")).unwrap();
    for row in file() {
        let id = row["id"].as_str().unwrap();
        assert!(used.contains(&id) != LEFT_OUT.contains(&id), "{id}");
        assert!(
            used.contains(&id) || sources.contains(&format!("`{id}`")),
            "{id}"
        );
    }
}

/// The settings differ from manual to manual, with and without a figure for the seat: each is a spec
/// for the nut of tapered rollers, and none for an axle nut that has to be torqued.
#[test]
fn published_settings_are_specs_of_a_setting_nut_and_of_no_axle_nut() {
    let seat = Typed::parse(&number("O-10-001").to_string(), TorqueUnit::PoundFoot).unwrap();
    assert_eq!(expected("O-10-003"), "finger tight");
    let range = expected("O-10-005");
    let range: Vec<f64> = range
        .as_array()
        .unwrap()
        .iter()
        .map(|it| it.as_f64().unwrap())
        .collect();
    let trailer = vec![Stage::Torque(seat), back(number("O-10-002")), Stage::Snug];
    let binds = |turns| vec![Stage::Snug, back(turns)];
    let mut all = vec![trailer, binds(number("O-10-004"))];
    all.extend(range.iter().map(|turns| binds(*turns)));
    for stages in all {
        assert_eq!(
            setting(SpecItem::SpindleNut, stages.clone()).fault(),
            None,
            "{stages:?}"
        );
        assert!(setting(SpecItem::AxleNut, stages).fault().is_some());
    }
    // A turn back by itself seats nothing.
    assert!(
        setting(SpecItem::SpindleNut, vec![back(0.25)])
            .fault()
            .is_some()
    );
}

fn thou(value: f64) -> Length {
    Length::new(value, LengthUnit::Thou).unwrap()
}

fn judged(play: f64, limit: &Limit) -> String {
    let rounds = [Round::zeroed(Divisions::new(play * 10.0).unwrap()); 3];
    let dial = Dial::new(thou(0.1), 1000, hubslate::trade::play::DialKind::Plunger).unwrap();
    let set = ReadingSet::read(dial, Way::DEFAULT, &rounds, vec![]).unwrap();
    let rig = RigFacts {
        indicator: IndicatorError::Certificate { u: thou(0.05) },
        flex: thou(0.05),
        temperature: None,
    };
    Measured::of(set, &rig, Some(limit), &Limit::HOUSE_END_PLAY)
        .conformity
        .code()
        .to_owned()
}

/// TMC RP 618: 0.001 to 0.005 in by the dial.
#[test]
fn the_published_window_is_met_between_its_ends_and_missed_on_either_side() {
    let ends = expected("O-10-013");
    let (low, high) = (ends[0].as_f64().unwrap(), ends[1].as_f64().unwrap());
    let inch = |value: f64| Length::new(value, LengthUnit::Inch).unwrap();
    let window = Limit::manufacturer(inch(high), Way::DEFAULT)
        .unwrap()
        .with_least(Some(inch(low)));
    let recorded = [0.0, 0.9, 1.0, 3.0, 5.0, 5.1, 7.0].map(|play| judged(play, &window));
    assert_eq!(
        recorded,
        [
            "tight_proven",
            "tight_not_proven",
            "in_not_proven",
            "proven_in",
            "in_not_proven",
            "out_not_proven",
            "proven_out"
        ]
    );
}

/// The default condemns nothing that a published window allows, and has no least: some designs want
/// preload.
#[test]
fn the_default_end_play_lies_over_every_published_one() {
    let most = Limit::HOUSE_END_PLAY;
    let during = expected("O-10-011");
    for inch in [
        number("O-10-010"),
        during[1].as_f64().unwrap(),
        expected("O-10-013")[1].as_f64().unwrap(),
    ] {
        assert!(
            Length::new(inch, LengthUnit::Inch).unwrap() < most.value,
            "{inch}"
        );
    }
    assert_eq!(most.least, None);
    assert!(!most.is_manufacturers());
}

#[test]
fn the_lug_nuts_are_checked_after_a_published_distance_in_a_crosswise_order() {
    let miles = RetorqueRule::published(DistanceUnit::Mile)
        .after
        .in_unit(DistanceUnit::Mile);
    assert!((miles - number("O-10-015")).abs() < 1e-9, "{miles}");
    let window = expected("O-10-018");
    assert!((window[0].as_f64().unwrap()..=window[1].as_f64().unwrap()).contains(&miles));
    // Published distances differ, so that a shop may set its own.
    assert!(number("O-10-019") < miles);
    assert_eq!(expected("O-10-016"), "criss-cross");
    let order = hubslate::trade::fastening::star_order(4).unwrap();
    assert_eq!(order.to_vec(), [1, 3, 2, 4]);
}
