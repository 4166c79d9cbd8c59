//! The rules and their version: who changes a figure or what is decided by it counts up the
//! version, and says here what it stands for.

use hubslate::exchange::entry_digest;
use hubslate::job::reason::code;
use hubslate::trade::answer::Answer;
use hubslate::trade::play::rules::{RULES_VERSION, figures};
use hubslate::trade::play::way::Difference;
use hubslate::trade::play::{
    BrakeHeld, Decision, Dial, Divisions, Evidence, Felt, Heat, IndicatorError, Limit, Measured,
    ReadingSet, RigFacts, Road, RoadSigns, Round, StopSign, Swerve, Way, WhyNot, decide, heat,
    join, road,
};
use hubslate::units::{Temperature, TemperatureUnit};

use super::{ROCKED, mm};

/// What the version in force says: its figures, and the digest of what it decides.
const IN_FORCE: &str = "\
rules 3
proven 0.95
interval 0.95
cycles_to_prove 3
repeat_floor_mm 0.005
indicator_floor_mm 0.005
angle_by_eye_deg 5
default_limit_mm 0.1016
default_end_play_mm 0.254
force_share 0.1
hotter_by_k 15
unseen_turn_mm 0.5
share_of_a_turn 0.25
unseen_flex 0.25
decides 5121d7f87f3dfacc
";

/// Sets of many kinds: each alone and with another, against each limit.
fn measured() -> Vec<Vec<Measured>> {
    let rig = |warm: Option<f64>| RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: mm(0.005),
        temperature: warm.map(mm),
    };
    let pulls: [&[f64]; 7] = [
        &[0.0; 3],
        &[3.0; 3],
        &[4.0, 5.0, 5.0],
        &[5.0, 6.0, 6.0],
        &[12.0, 3.0, 18.0],
        &[20.0],
        &[1.0, 1.0],
    ];
    let limits = [
        None,
        Some(Limit::manufacturer(mm(0.0), Way::DEFAULT).unwrap()),
        Some(Limit::manufacturer(mm(0.05), Way::DEFAULT).unwrap()),
        // Set with play, its least above and below what the pulls read.
        Some(
            Limit::manufacturer(mm(0.2), Way::DEFAULT)
                .unwrap()
                .with_least(Some(mm(0.04))),
        ),
        Some(Limit::manufacturer(mm(0.4), ROCKED).unwrap()),
    ];
    let mut all = vec![vec![]];
    for limit in &limits {
        for first in pulls {
            let set = |pulls: &[f64], warm| {
                let round = |pull: &f64| Round::zeroed(Divisions::new(*pull).unwrap());
                let rounds: Vec<Round> = pulls.iter().map(round).collect();
                let dial = Dial::HUNDREDTH_MM;
                let set = ReadingSet::read(dial, Way::DEFAULT, &rounds, vec![]).unwrap();
                Measured::of(set, &rig(warm), limit.as_ref(), &Limit::HOUSE)
            };
            all.push(vec![set(first, Some(0.01))]);
            for second in pulls {
                all.push(vec![set(first, None), set(second, None)]);
            }
        }
    }
    all
}

/// What is looked at beside the dial, each in turn.
fn looked() -> Vec<Evidence> {
    let clean = Evidence {
        roughness: Answer::No,
        noise: Answer::No,
        felt: Some(Felt::Nothing),
        road: Road::Quiet,
        heat: Heat::Alike,
        ..Evidence::nothing()
    };
    let mut all = vec![Evidence::nothing(), clean.clone()];
    for answer in [Answer::Yes, Answer::NotDone] {
        let (mut rough, mut noisy) = (clean.clone(), clean.clone());
        rough.roughness = answer;
        noisy.noise = answer;
        all.extend([rough, noisy]);
    }
    for (felt, brake_held) in [None, Some(Felt::JustFelt), Some(Felt::Seen)]
        .into_iter()
        .flat_map(|felt| BrakeHeld::ALL.iter().map(move |held| (felt, *held)))
    {
        all.push(Evidence {
            felt,
            brake_held,
            ..clean.clone()
        });
    }
    for (road, heat) in Road::ALL
        .iter()
        .flat_map(|road| Heat::ALL.iter().map(|heat| (*road, *heat)))
    {
        all.push(Evidence {
            road,
            heat,
            ..clean.clone()
        });
    }
    all.push(Evidence {
        stop_signs: vec![StopSign::LooseAxleNut],
        spec_apart: Some(WhyNot::Way(Difference::Rig)),
        ..clean
    });
    all
}

/// Everything that the rules decide over many cases, as one text.
fn decided() -> String {
    let mut recorded = String::new();
    for sets in measured() {
        let both = join(&sets);
        let figures = sets.iter().map(Measured::figures).chain(both.clone());
        for of in figures {
            let numbers = [of.play.mm(), of.budget.u_c.mm(), of.budget.g];
            let numbers = numbers.map(|number| format!("{number:.6}"));
            let chance = of.conformity.comparison().map(|of| of.conformance);
            let (result, dof) = (of.conformity.code(), of.budget.dof_eff);
            recorded += &format!(
                "{numbers:?} {dof:?} {result} {:.6}\n",
                chance.unwrap_or(-1.0)
            );
        }
        for looked in looked() {
            let verdict = decide(&Evidence {
                sets: sets.iter().map(|set| set.conformity).collect(),
                joined: both.as_ref().map(|both| both.conformity),
                ..looked
            });
            let codes: Vec<String> = verdict.reasons.iter().map(code).collect();
            let (decision, again) = (verdict.decision.code(), verdict.second_set_asked);
            let not_done = verdict.not_done;
            recorded += &format!("{decision} {again} {codes:?} {not_done:?}\n");
        }
    }
    for speed in Answer::ALL {
        for swerve in Swerve::ALL {
            for (coast, surface) in Answer::ALL
                .iter()
                .flat_map(|coast| Answer::ALL.iter().map(|surface| (*coast, *surface)))
            {
                let signs = RoadSigns {
                    speed: *speed,
                    swerve: *swerve,
                    coast,
                    surface,
                };
                recorded += road(&signs).code();
            }
        }
    }
    for hotter in 0..30 {
        let at = |celsius| Temperature::new(celsius, TemperatureUnit::Celsius).ok();
        recorded += heat(at(40.0 + f64::from(hotter)), at(40.0)).code();
    }
    recorded
}

/// What the program says now, in the form of [`IN_FORCE`].
fn now(figures: &[(&str, f64)], decided: &str) -> String {
    let figures = figures
        .iter()
        .map(|(name, value)| format!("{name} {value}\n"));
    let figures: String = figures.collect();
    let digest = entry_digest(decided);
    format!(
        "rules {RULES_VERSION}\n{figures}decides {}\n",
        &digest[..16]
    )
}

#[test]
fn a_rule_that_changes_has_a_version_of_its_own() {
    assert_eq!(
        now(&figures(), &decided()),
        IN_FORCE,
        "count up RULES_VERSION and keep here what it says"
    );
}

/// The test above would see it: each figure by itself, and what is decided.
#[test]
fn no_figure_and_no_decision_can_change_unseen() {
    let (saved, decides) = (figures(), decided());
    for place in 0..saved.len() {
        let mut changed = saved.clone();
        changed[place].1 *= 1.01;
        assert_ne!(now(&changed, &decides), IN_FORCE, "{}", saved[place].0);
    }
    let other = decides.replacen("watch", "keep", 1);
    assert_ne!(now(&saved, &other), IN_FORCE);
}

/// More knowledge never makes it better: a least play that is learned of leaves a decision as it was
/// or makes it graver, and what lies under it is never kept.
#[test]
fn a_least_play_never_makes_a_decision_better() {
    let rig = RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: mm(0.002),
        temperature: None,
    };
    let most = Limit::manufacturer(mm(0.2), Way::DEFAULT).unwrap();
    let (mut graver, mut tight) = (0, 0);
    for pull in 0..=25 {
        let rounds = [Round::zeroed(Divisions::new(f64::from(pull)).unwrap()); 3];
        for least in [0.01, 0.05, 0.1, 0.19] {
            let judged = |limit: &Limit, looked: &Evidence| {
                let set = ReadingSet::read(Dial::HUNDREDTH_MM, Way::DEFAULT, &rounds, vec![]);
                let set = Measured::of(set.unwrap(), &rig, Some(limit), &Limit::HOUSE);
                let evidence = Evidence {
                    sets: vec![set.conformity],
                    ..looked.clone()
                };
                (set.conformity, decide(&evidence).decision)
            };
            let window = most.with_least(Some(mm(least)));
            for looked in looked() {
                let (_, without) = judged(&most, &looked);
                let (conformity, with) = judged(&window, &looked);
                assert!(without <= with, "{pull} under {least}");
                graver += usize::from(without < with);
                if conformity.is_tight() {
                    tight += 1;
                    assert!(Decision::Replace <= with, "{pull} under {least}: {with:?}");
                }
            }
        }
    }
    assert!(
        100 < graver && 100 < tight,
        "{graver} graver, {tight} tight"
    );
}
