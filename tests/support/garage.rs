//! A garage of seeded cars whose errors are those of the budget, measured by the app's own code.

use hubslate::trade::answer::Answer;
use hubslate::trade::play::{
    Conformity, Decision, Dial, DialKind, Divisions, Evidence, Felt, IndicatorError, Limit,
    Measured, ReadingSet, RigFacts, Round, RoundError, Verdict, Way, decide, join,
};
use hubslate::trade::practice::chance::Chance;
use hubslate::trade::practice::{Car, Hands, Hub, Population, Rig};
use hubslate::units::{Length, LengthUnit};

pub fn mm(value: f64) -> Length {
    Length::new(value, LengthUnit::Millimetre).unwrap()
}

/// A gauge, with the budget of a set whose rounds agree, on a base that does not seem to give.
///
/// The figures are those of `trade::play::budget` and `job::judge`, written out again: one
/// division either way but 5 µm at least for the dial, a quarter of a division for the base,
/// 5 µm for a round, and two readings to the division.
pub struct Gauge {
    pub name: &'static str,
    pub dial: Dial,
    /// One division in mm.
    pub division: f64,
}

impl Gauge {
    pub fn all() -> [Self; 3] {
        let gauge = |name, division, per_turn, kind| Self {
            name,
            dial: Dial::new(mm(division), per_turn, kind).unwrap(),
            division,
        };
        [
            gauge("0.01 mm dial", 0.01, 100, DialKind::Plunger),
            gauge("0.001 in dial", 0.0254, 100, DialKind::Plunger),
            gauge("0.002 mm lever dial", 0.002, 100, DialKind::Lever),
        ]
    }

    pub fn u_dial(&self) -> f64 {
        self.division.max(0.005) / 3_f64.sqrt()
    }

    pub fn u_base(&self) -> f64 {
        0.25 * self.division / 3_f64.sqrt()
    }

    pub fn u_set(&self) -> f64 {
        0.005 / 3_f64.sqrt()
    }

    /// Combined standard uncertainty of a set, in mm.
    pub fn u(&self) -> f64 {
        let reading = self.division / 6_f64.sqrt();
        let parts = [self.u_dial(), self.u_base(), self.u_set(), reading];
        parts.iter().map(|u| u * u).sum::<f64>().sqrt()
    }

    /// Degrees of freedom of a set whose three rounds agree: GUM G.4.1.
    pub fn dof(&self) -> f64 {
        2.0 * (self.u() / self.u_set()).powi(4)
    }

    /// The part of it that two sets share: the dial's own error, and of the reading that half
    /// which comes from where the limit lies between two marks.
    pub fn u_shared(&self) -> f64 {
        (self.u_dial().powi(2) + self.division.powi(2) / 12.0).sqrt()
    }

    pub fn facts(&self) -> RigFacts {
        RigFacts {
            indicator: IndicatorError::OneDivision,
            flex: mm(0.25 * self.division),
            temperature: None,
        }
    }

    /// Cars around `play` whose errors are normal with just the budget's uncertainties.
    pub fn population(&self, play: f64, spread: f64) -> Population {
        Population {
            play: mm(play),
            play_spread: mm(spread),
            dial_spread: mm(self.u_dial()),
            flex_spread: mm(self.u_base()),
            set_spread: mm(self.u_set()),
            round_spread: mm(0.0),
            unseated: mm(0.0),
            troubled: 0.0,
        }
    }

    /// A limit of about 0.05 mm. Specs do not print their limits where a dial has its marks: a
    /// seed's limit lies anywhere in one division, which makes two readings to the division the
    /// triangle that the budget takes them for.
    pub fn limit(&self, seed: u64) -> f64 {
        0.05 + self.division * (Chance::at(seed, 1 << 40).share() - 0.5)
    }
}

/// One car, measured and judged.
pub struct Judged {
    /// True play, in mm.
    pub truth: f64,
    /// Its limit, in mm.
    pub limit: f64,
    /// Mean of the first set, in mm.
    pub mean: f64,
    /// Half width of the printed 95 % interval of the first set, in mm.
    pub expanded: f64,
    /// What the first set says.
    pub first: Conformity,
    /// The verdict; after a second set where one was asked for.
    pub verdict: Verdict,
}

impl Judged {
    pub fn is(&self, decision: Decision) -> bool {
        self.verdict.decision == decision
    }

    pub fn is_bad(&self) -> bool {
        self.truth > self.limit
    }
}

/// Measures a car as a job does: three rounds, judged, and a second set on another place of the
/// base if the rules ask for one.
pub fn judge(gauge: &Gauge, car: &Car, limit_mm: f64, swings: u8) -> Judged {
    // The needle comes to rest anywhere on the face.
    let rest = |place| 100.0 * Chance::at(car_seed(car), u64::from(place) << 41).share();
    judge_from(gauge, car, limit_mm, swings, rest)
}

/// The same on a dial whose bezel is turned to zero at the push.
pub fn judge_zeroed(gauge: &Gauge, car: &Car, limit_mm: f64) -> Judged {
    judge_from(gauge, car, limit_mm, 0, |_| 0.0)
}

fn judge_from(
    gauge: &Gauge,
    car: &Car,
    limit_mm: f64,
    swings: u8,
    rest: impl Fn(u8) -> f64,
) -> Judged {
    let limit = Limit::manufacturer(mm(limit_mm), Way::DEFAULT).unwrap();
    let set = |place| {
        let set = read(gauge, car, place, swings, rest(place));
        Measured::of(set, &gauge.facts(), Some(&limit), &Limit::HOUSE)
    };
    let mut sets = vec![set(1)];
    let mut verdict = decide(&evidence(&sets));
    if verdict.second_set_asked {
        sets.push(set(2));
        verdict = decide(&evidence(&sets));
    }
    let first = sets.swap_remove(0);
    Judged {
        truth: car.truth.play.mm(),
        limit: limit_mm,
        mean: first.set.mean().mm(),
        expanded: first.budget.expanded95.mm(),
        first: first.conformity,
        verdict,
    }
}

/// A set whose needle comes to rest at a place of the face.
fn read(gauge: &Gauge, car: &Car, place: u8, swings: u8, rest: f64) -> ReadingSet {
    let rig = Rig {
        dial: gauge.dial,
        rests_at: Divisions::new(rest).unwrap(),
        hub: Hub::Old,
        place,
    };
    let rounds: Vec<Round> = (1..=3)
        .map(|round| {
            let [push, pull] = [Hands::Push, Hands::Pull]
                .map(|hands| car.needle(&rig, hands, round, swings).count());
            let face = |at: f64| Divisions::new(at.rem_euclid(100.0)).unwrap();
            let read = Round::of_two(face(push), face(pull));
            // Where the dial asks, the small pointer tells how often the needle went round.
            let asked = matches!(gauge.dial.play(read), Err(RoundError::AskTurns { .. }));
            let turns = (pull / 100.0).floor() - (push / 100.0).floor();
            Round {
                turns: asked.then_some(turns as i32),
                ..read
            }
        })
        .collect();
    ReadingSet::read(gauge.dial, Way::DEFAULT, &rounds, vec![]).unwrap()
}

fn car_seed(car: &Car) -> u64 {
    match car.code {
        hubslate::trade::practice::Code::Seed(seed) => seed,
        other => panic!("{other:?} has no seed"),
    }
}

/// A hub that is smooth, quiet and firm, so that the dial alone decides.
fn evidence(sets: &[Measured]) -> Evidence {
    Evidence {
        sets: sets.iter().map(|set| set.conformity).collect(),
        joined: join(sets).map(|both| both.conformity),
        roughness: Answer::No,
        noise: Answer::No,
        felt: Some(Felt::Nothing),
        ..Evidence::nothing()
    }
}
