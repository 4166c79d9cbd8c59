//! The decision on a corner as a whole, from answers and readings: more knowledge never makes it
//! better, a proof is as rare a mistake as it says, and a recorded decision stays what it was.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "verdict/bench.rs"]
mod bench;
#[path = "verdict/found.rs"]
mod found;
#[path = "verdict/frozen.rs"]
mod frozen;
#[path = "verdict/job.rs"]
mod job;
#[path = "verdict/proof.rs"]
mod proof;
#[path = "verdict/rules.rs"]
mod rules;
#[path = "verdict/runout_rules.rs"]
mod runout_rules;

use hubslate::trade::answer::Answer;
use hubslate::trade::play::way::Difference;
use hubslate::trade::play::{
    BrakeHeld, Decision, Dial, Divisions, Evidence, Felt, Heat, IndicatorError, Limit, Measured,
    Method, Place, ReadingFlag, ReadingSet, RigFacts, Road, RoadSigns, Round, StopSign, Swerve,
    Test, Verdict, Way, decide, join, road, spec_apart,
};
use hubslate::units::{Length, LengthUnit};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

fn mm(value: f64) -> Length {
    Length::new(value, LengthUnit::Millimetre).unwrap()
}

/// Everything that is known of a corner, as it was answered and read.
#[derive(Clone, Debug)]
struct Known {
    sets: Vec<Set>,
    spec: Option<Limit>,
    roughness: Answer,
    noise: Answer,
    felt: Option<Felt>,
    brake_held: BrakeHeld,
    road: RoadSigns,
    heat: Heat,
    stop_signs: Vec<StopSign>,
}

/// A set: its pulls in tenths of a division, its way, and whether the base was pushed.
#[derive(Clone, Debug)]
struct Set {
    pulls: Vec<u32>,
    way: Way,
    pushed: bool,
}

const ROCKED: Way = Way {
    method: Method::Rock,
    place: Place::RotorEdge,
    ..Way::DEFAULT
};

impl Set {
    fn measured(&self, spec: Option<&Limit>) -> Measured {
        let rounds: Vec<Round> = self
            .pulls
            .iter()
            .map(|tenths| Round::zeroed(Divisions::new(f64::from(*tenths) / 10.0).unwrap()))
            .collect();
        let marks = if self.pushed {
            vec![]
        } else {
            vec![ReadingFlag::FlexNotTested]
        };
        let set = ReadingSet::read(Dial::HUNDREDTH_MM, self.way, &rounds, marks).unwrap();
        let rig = RigFacts {
            indicator: IndicatorError::OneDivision,
            flex: mm(0.0025),
            temperature: None,
        };
        Measured::of(set, &rig, spec, &Limit::HOUSE)
    }
}

impl Known {
    fn verdict(&self) -> Verdict {
        let spec = self.spec.as_ref();
        let sets: Vec<Measured> = self.sets.iter().map(|set| set.measured(spec)).collect();
        decide(&Evidence {
            sets: sets.iter().map(|set| set.conformity).collect(),
            joined: join(&sets).map(|both| both.conformity),
            spec_apart: spec_apart(&sets),
            roughness: self.roughness,
            noise: self.noise,
            felt: self.felt,
            brake_held: self.brake_held,
            road: road(&self.road),
            heat: self.heat,
            stop_signs: self.stop_signs.clone(),
            not_done: vec![],
        })
    }

    fn decision(&self) -> Decision {
        self.verdict().decision
    }
}

fn set() -> impl Strategy<Value = Set> {
    let around = (0_u32..200, vec(0_u32..40, 1..4));
    let way = prop_oneof![5 => Just(Way::DEFAULT), 1 => Just(ROCKED)];
    (around, way, prop::bool::weighted(0.9)).prop_map(|((play, scatter), way, pushed)| Set {
        pulls: scatter.into_iter().map(|off| play + off).collect(),
        way,
        pushed,
    })
}

fn spec() -> impl Strategy<Value = Limit> {
    let value = select(vec![0.0, 0.01, 0.03, 0.05, 0.1, 0.2]);
    let way = prop_oneof![3 => Just(Way::DEFAULT), 1 => Just(ROCKED)];
    (value, way).prop_map(|(value, way)| Limit::manufacturer(mm(value), way).unwrap())
}

fn known() -> impl Strategy<Value = Known> {
    let answers = (select(Answer::ALL), select(Answer::ALL));
    let mostly_no = prop_oneof![3 => Just(Answer::No), 1 => select(Answer::ALL)];
    let felt = prop_oneof![3 => Just(Some(Felt::Nothing)), 1 => option::of(select(Felt::ALL))];
    let signs = (
        mostly_no.clone(),
        select(Swerve::ALL),
        select(Answer::ALL),
        select(Answer::ALL),
    );
    let looked = (mostly_no.clone(), mostly_no, felt, select(BrakeHeld::ALL));
    let stops = vec(select(StopSign::ALL), 0..2);
    let stops = prop_oneof![4 => Just(vec![]), 1 => stops];
    (
        vec(set(), 0..3),
        option::of(spec()),
        looked,
        signs,
        select(Heat::ALL),
        stops,
        answers,
    )
        .prop_map(|(sets, spec, looked, signs, heat, stop_signs, _)| {
            let (roughness, noise, felt, brake_held) = looked;
            let (speed, swerve, coast, surface) = signs;
            Known {
                sets,
                spec,
                roughness,
                noise,
                felt,
                brake_held,
                road: RoadSigns {
                    speed,
                    swerve,
                    coast,
                    surface,
                },
                heat,
                stop_signs,
            }
        })
}

/// One thing more against the bearing, or one test that is missing.
#[derive(Clone, Copy, Debug)]
enum Worse {
    Rough,
    Noisy,
    RoughUnknown,
    NoiseUnknown,
    Felt(Felt),
    NotRocked,
    BrakeHeldGone,
    BrakeHeldUnknown,
    NoiseRises,
    LoadsHere,
    SameWhenCoasting,
    CoastUnknown,
    SurfaceSteady,
    SurfaceUnknown,
    Hotter,
    HeatUnknown,
    Stop(StopSign),
    AllReadingsLarger(u32),
    LargestReadingLarger(u32),
    BasesNotPushed,
    NoDial,
    SpecForAnotherMethod,
    LowerLimit,
    ZeroLimit,
    SecondSetThatCannotBeCompared,
}

fn worse() -> impl Strategy<Value = Worse> {
    let plain = select(vec![
        Worse::Rough,
        Worse::Noisy,
        Worse::RoughUnknown,
        Worse::NoiseUnknown,
        Worse::NotRocked,
        Worse::BrakeHeldGone,
        Worse::BrakeHeldUnknown,
        Worse::NoiseRises,
        Worse::LoadsHere,
        Worse::SameWhenCoasting,
        Worse::CoastUnknown,
        Worse::SurfaceSteady,
        Worse::SurfaceUnknown,
        Worse::Hotter,
        Worse::HeatUnknown,
        Worse::BasesNotPushed,
        Worse::NoDial,
        Worse::SpecForAnotherMethod,
        Worse::LowerLimit,
        Worse::ZeroLimit,
        Worse::SecondSetThatCannotBeCompared,
    ]);
    prop_oneof![
        12 => plain,
        1 => select(Felt::ALL).prop_map(Worse::Felt),
        1 => select(StopSign::ALL).prop_map(Worse::Stop),
        2 => (1_u32..100).prop_map(Worse::AllReadingsLarger),
        2 => (1_u32..100).prop_map(Worse::LargestReadingLarger),
    ]
}

/// The answer after a test was left out: what spoke against it is still known.
fn unless(answer: Answer, against: Answer) -> Answer {
    if answer == against {
        answer
    } else {
        Answer::NotDone
    }
}

impl Worse {
    /// The same corner with this beside it; `None` where it changes nothing of this kind.
    fn of(self, known: &Known) -> Option<Known> {
        let mut worse = known.clone();
        match self {
            Self::Rough => worse.roughness = Answer::Yes,
            Self::Noisy => worse.noise = Answer::Yes,
            Self::RoughUnknown => worse.roughness = unless(known.roughness, Answer::Yes),
            Self::NoiseUnknown => worse.noise = unless(known.noise, Answer::Yes),
            // That nothing was felt is no finding.
            Self::Felt(felt) if felt != Felt::Nothing => worse.felt = known.felt.max(Some(felt)),
            // What was felt is not forgotten by trying no further.
            Self::NotRocked => worse.felt = known.felt.filter(|felt| *felt != Felt::Nothing),
            Self::BrakeHeldGone => worse.brake_held = BrakeHeld::Gone,
            Self::BrakeHeldUnknown if known.brake_held == BrakeHeld::Stays => {
                worse.brake_held = BrakeHeld::NotDone;
            }
            Self::NoiseRises => worse.road.speed = Answer::Yes,
            Self::LoadsHere => worse.road.swerve = Swerve::LoadsHere,
            Self::SameWhenCoasting => worse.road.coast = Answer::Yes,
            Self::CoastUnknown if known.road.coast == Answer::No => {
                worse.road.coast = Answer::NotDone;
            }
            Self::SurfaceSteady => worse.road.surface = Answer::No,
            Self::SurfaceUnknown if known.road.surface == Answer::Yes => {
                worse.road.surface = Answer::NotDone;
            }
            Self::Hotter => worse.heat = Heat::Hotter,
            Self::HeatUnknown if known.heat == Heat::Alike => worse.heat = Heat::NotDone,
            Self::Stop(sign) => worse.stop_signs.push(sign),
            Self::AllReadingsLarger(by) => {
                for pull in worse.sets.iter_mut().flat_map(|set| &mut set.pulls) {
                    *pull = (*pull + by).min(250);
                }
                let most = |known: &Known| known.sets.iter().flat_map(|s| s.pulls.clone()).max();
                if most(known).is_none_or(|most| most + by > 250) {
                    return None;
                }
            }
            // A reading that comes nearer to its fellows makes their mean surer: one alone is
            // against the bearing only where it is the largest, of the set that is the larger.
            Self::LargestReadingLarger(by) => {
                let mean = |set: &&mut Set| {
                    let sum: u32 = set.pulls.iter().sum();
                    f64::from(sum) / set.pulls.len() as f64
                };
                let sets = worse.sets.iter_mut();
                let set = sets.max_by(|a, b| mean(a).total_cmp(&mean(b)))?;
                let pull = set.pulls.iter_mut().max()?;
                *pull = (*pull + by).min(250);
            }
            // A set that is over is known, whatever else is not.
            Self::BasesNotPushed | Self::NoDial if no_set_speaks_against(known) => {
                if matches!(self, Self::NoDial) {
                    worse.sets.clear();
                }
                for set in &mut worse.sets {
                    set.pushed = false;
                }
            }
            Self::SpecForAnotherMethod
                if known.spec.is_none() && known.sets.iter().all(|s| s.way == Way::DEFAULT) =>
            {
                worse.spec = Some(Limit::manufacturer(mm(0.5), ROCKED).unwrap());
            }
            Self::LowerLimit => {
                let limit = known.spec.unwrap_or(Limit::HOUSE);
                let lower = limit.value.times(0.5);
                worse.spec = Some(Limit::manufacturer(lower, limit.way).unwrap());
                if limit.value < mm(0.001) {
                    return None;
                }
            }
            Self::ZeroLimit => {
                let way = known.spec.map_or(Limit::HOUSE.way, |spec| spec.way);
                worse.spec = Some(Limit::manufacturer(Length::ZERO, way).unwrap());
            }
            Self::SecondSetThatCannotBeCompared if known.sets.len() == 1 => {
                let mut second = known.sets[0].clone();
                second.pushed = false;
                worse.sets.push(second);
            }
            _ => return None,
        }
        Some(worse)
    }
}

fn no_set_speaks_against(known: &Known) -> bool {
    let spec = known.spec.as_ref();
    let sets = known.sets.iter().map(|set| set.measured(spec));
    !sets.into_iter().any(|set| set.conformity.is_over())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6000))]

    #[test]
    fn one_thing_more_against_it_never_makes_it_better(known in known(), worse in worse()) {
        if let Some(worsened) = worse.of(&known) {
            let (before, after) = (known.decision(), worsened.decision());
            prop_assert!(before <= after, "{before:?} became {after:?} by {worse:?}");
        }
    }

    #[test]
    fn a_noisy_road_is_never_called_nothing_found(known in known()) {
        let verdict = known.verdict();
        let nothing = verdict.reasons.contains(&hubslate::trade::play::Reason::SmoothAndQuiet);
        let heard = !matches!(road(&known.road), Road::Quiet | Road::NotDone);
        prop_assert!(!(nothing && (heard || known.heat == Heat::Hotter)));
    }

    #[test]
    fn nothing_is_kept_with_a_test_missing_that_it_needs(known in known()) {
        let verdict = known.verdict();
        let needed = [Test::Dial, Test::Hand, Test::Ear, Test::Rock];
        if verdict.decision == Decision::Keep {
            prop_assert!(needed.iter().all(|test| !verdict.not_done.contains(test)));
        }
    }

    #[test]
    fn the_order_of_two_sets_does_not_matter(known in known()) {
        let mut turned = known.clone();
        turned.sets.reverse();
        prop_assert_eq!(known.decision(), turned.decision());
    }
}

/// The case that was found: pulls of 0.20 mm are over the default limit, and a spec for another
/// method took that away.
#[test]
fn a_spec_for_another_method_does_not_clear_what_the_default_limit_condemns() {
    let mut known = Known {
        sets: vec![Set {
            pulls: vec![200; 3],
            way: Way::DEFAULT,
            pushed: true,
        }],
        spec: None,
        roughness: Answer::No,
        noise: Answer::No,
        felt: Some(Felt::Nothing),
        brake_held: BrakeHeld::NotDone,
        road: RoadSigns {
            speed: Answer::No,
            swerve: Swerve::NoChange,
            coast: Answer::No,
            surface: Answer::No,
        },
        heat: Heat::Alike,
        stop_signs: vec![],
    };
    assert_eq!(known.decision(), Decision::Replace);
    known.spec = Some(Limit::manufacturer(mm(0.5), ROCKED).unwrap());
    let verdict = known.verdict();
    assert_eq!(verdict.decision, Decision::Replace);
    assert_eq!(verdict.not_done, [Test::Dial]);
    // The same way round the limit: within the default limit, with a spec not met, it is watched.
    known.sets[0].pulls = vec![20; 3];
    assert_eq!(known.decision(), Decision::Watch);
    let why = hubslate::trade::play::WhyNot::Way(Difference::Method);
    let reason = hubslate::trade::play::Reason::NoComparison(why);
    assert!(known.verdict().reasons.contains(&reason));
}
