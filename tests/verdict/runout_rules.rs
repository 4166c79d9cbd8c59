//! The rules for runout and rotor thickness and their version: who changes a value or what is
//! found by it counts up the version, and says here what it stands for.

use hubslate::exchange::entry_digest;
use hubslate::exchange::wire::encode;
use hubslate::job::entry::{Event, LogId, VehicleField};
use hubslate::job::{fold, found};
use hubslate::slate::{Pen, compose};
use hubslate::trade::answer::Answer;
use hubslate::trade::runout::rules::{RUNOUT_RULES_VERSION, figures};
use hubslate::trade::runout::{Bound, Surface};

use super::bench::{HERE, bound, most, rotor, run};

/// What the version in force says: its values, and the digest of what it finds.
const IN_FORCE: &str = "\
rules 1
fewest_readings 2
fewest_places 4
most_places 24
most_turns 2
same_place_deg 0.01
most_condition 30
spare_for_wobble 2
spare_for_warp 3
chance_of_wobble 0.05
chance_of_warp 0.002
chance_of_outlier 0.002
largest_leverage 0.999
largest_range 3
share_of_energy 0.5
steps_to_end 360
steps_closer 20
tail 0.025
doubt 0.05
even 0.499999999
rounding 0.000000000001
radius_rule_mm 1
micrometer_floor_mm 0.002
micrometer_error_mm 0.004
largest_division_mm 0.1
finds 1956d70fdd6d21d5
";

/// Scatter of a tenth of a division, twenty-four times.
const SCATTER: [f64; 24] = [
    0.1, -0.2, 0.0, 0.3, -0.1, 0.2, -0.3, 0.1, 0.0, -0.1, 0.2, -0.2, 0.3, 0.1, -0.3, 0.0, 0.2,
    -0.1, -0.2, 0.3, 0.0, 0.1, -0.3, 0.2,
];

/// A face in hundredths of a millimetre: wobble, warp, how far place 2 stands out, and by how many
/// times its readings scatter.
const FACES: [(f64, f64, f64, f64); 8] = [
    (0.0, 0.0, 0.0, 1.0),
    (2.0, 0.0, 0.0, 1.0),
    (6.0, 0.0, 0.0, 4.0),
    (1.0, 5.0, 0.0, 1.0),
    (4.0, 2.0, 0.0, 2.0),
    (0.5, 0.0, 9.0, 1.0),
    (0.5, 0.0, -9.0, 1.0),
    (0.0, 0.0, 0.0, 20.0),
];

fn heights(face: (f64, f64, f64, f64), places: u8, from: f64) -> Vec<f64> {
    let (wobble, warp, out, scatter) = face;
    let height = |(place, noise): (u8, &f64)| {
        let at = std::f64::consts::TAU * f64::from(place) / f64::from(places);
        let out = if place == 1 { out } else { 0.0 };
        wobble * (at - from).cos() + warp * (2.0 * at - from).cos() + out + scatter * noise
    };
    (0..places).zip(&SCATTER).map(height).collect()
}

/// Jobs of many kinds, each with every run and rotor that one corner can have.
fn jobs() -> Vec<Vec<Event>> {
    let mut all = Vec::new();
    for (nth, face) in (0..).zip(FACES) {
        for places in [4, 5, 8, 24] {
            for limit in [None, Some("0.03"), Some("0.08")] {
                let cleaned = if (nth + places) % 3 == 0 {
                    Answer::No
                } else {
                    Answer::Yes
                };
                let at = |stud| (stud, cleaned);
                let runs = [
                    run(1, Surface::HubFace, at(1), &heights(face, places, 0.3)),
                    run(2, Surface::Rotor, at(1), &heights(face, places, 1.1)),
                    run(3, Surface::Rotor, at(3), &heights(face, places, 2.4)),
                    rotor(1, &heights(face, places, 0.7)),
                ];
                let limits = limit.iter().flat_map(|most_| {
                    let least = if nth % 2 == 0 { "21.9" } else { "22.0" };
                    [
                        most(Surface::HubFace, most_),
                        most(Surface::Rotor, most_),
                        bound(Bound::Least, least),
                        bound(Bound::Variation, most_),
                    ]
                });
                let studs = Event::Vehicle(VehicleField::Studs, "5".to_owned());
                let first = [Event::Corners(vec![HERE]), studs];
                all.push(
                    first
                        .into_iter()
                        .chain(limits)
                        .chain(runs.concat())
                        .collect(),
                );
            }
        }
    }
    all
}

/// Everything that the rules find over many cases, as it is stored.
fn recorded() -> String {
    let log = LogId("rules".to_owned());
    let pen = Pen {
        by: String::new(),
        device: "d".to_owned(),
        n: 1,
        utc_ms: 0,
        offset_min: 0,
        recorded: None,
        chance: [0; 10],
    };
    let found = |whats| {
        let sheet = fold(compose(&log, &[], &pen, whats));
        let owed = compose(&log, &[], &pen, found::owed(&sheet));
        let texts = owed.iter().map(|entry| encode(entry).unwrap() + "\n");
        texts.collect::<String>()
    };
    jobs().into_iter().map(found).collect()
}

/// What the program says now, in the form of [`IN_FORCE`].
fn now(figures: &[(&str, f64)], recorded: &str) -> String {
    let figures = figures
        .iter()
        .map(|(name, value)| format!("{name} {value}\n"));
    let figures: String = figures.collect();
    let digest = entry_digest(recorded);
    format!(
        "rules {RUNOUT_RULES_VERSION}\n{figures}finds {}\n",
        &digest[..16]
    )
}

#[test]
fn a_rule_of_runout_that_changes_has_a_version_of_its_own() {
    let recorded = recorded();
    // The cases would hold little if a form, a next step or a result were missing.
    let words = [
        r#""form":"true""#,
        r#""form":"wobble""#,
        r#""form":"warp""#,
        r#""form":"bump""#,
        r#""form":"hollow""#,
        r#""form":"uneven""#,
        r#""why":"no_spare""#,
        r#""result":"proven_in""#,
        r#""result":"in_not_proven""#,
        r#""result":"out_not_proven""#,
        r#""result":"proven_out""#,
        r#""basis":"two_positions""#,
        r#""basis":"hub_and_rotor""#,
        r#""next":"go_on""#,
        r#""next":"clean""#,
        r#""next":"read_more""#,
        r#""next":"index""#,
        r#""next":"plate""#,
        r#""next":"new_part""#,
        r#""next":"machine""#,
        r#""next":"new_rotor""#,
        r#""next":"measure_again""#,
    ];
    let missing: Vec<_> = words
        .iter()
        .filter(|word| !recorded.contains(**word))
        .collect();
    assert!(missing.is_empty(), "{missing:?}");
    assert_eq!(
        now(&figures(), &recorded),
        IN_FORCE,
        "count up RUNOUT_RULES_VERSION and keep here what it says"
    );
}

/// The test above would see it: each value by itself, and what is found.
#[test]
fn no_value_and_no_finding_of_runout_can_change_unseen() {
    let (saved, recorded) = (figures(), recorded());
    for place in 0..saved.len() {
        let mut changed = saved.clone();
        changed[place].1 *= 1.01;
        assert_ne!(now(&changed, &recorded), IN_FORCE, "{}", saved[place].0);
    }
    let other = recorded.replacen("proven_out", "proven_in", 1);
    assert_ne!(now(&saved, &other), IN_FORCE);
}
