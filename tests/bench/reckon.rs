//! How long the reckoning takes: a run round a face with every position, and a play with its
//! budget. Beside each stands the same in numpy and scipy, timed in the same run.
//!
//! `HUBSLATE_PYTHON` names the interpreter; without numpy and scipy that half is skipped, said so.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use std::hint::black_box;
use std::path::Path;
use std::process::{Command, ExitCode};
use std::time::Instant;

use hubslate::trade::play::{
    Budget, Dial, Divisions, IndicatorError, Limit, ReadingSet, RigFacts, Round, Way, compare,
};
use hubslate::trade::runout::{
    Arrow, Form, MeasuredAs, RunoutLimit, Series, Studs, Surface, compare as compare_runout,
    positions, reach, shape,
};
use hubslate::units::{Angle, AngleUnit, Length, LengthUnit};

/// Readings of a wobble of 4 divisions with a warp of 1.5, to half divisions.
const NEEDLES: [f64; 24] = [
    0.0, 1.5, 3.0, 4.5, 5.0, 5.0, 4.0, 3.0, 1.5, 0.0, -1.5, -2.5, -3.0, -3.5, -3.5, -3.5, -3.0,
    -2.5, -2.0, -1.5, -1.0, -1.0, -0.5, -0.5,
];
const PULLS: [f64; 3] = [6.0, 6.5, 8.5];
/// The promises, in microseconds.
const LIMITS: [f64; 2] = [200.0, 50.0];
const ROUNDS: usize = 41;
const REPEATS: usize = 200;

fn main() -> ExitCode {
    let ours = [median(runout), median(play)];
    let names = ["24 readings and 10 positions", "a play with its budget"];
    let python = python();
    let mut well = true;
    for (place, name) in names.into_iter().enumerate() {
        let (took, limit) = (ours[place], LIMITS[place]);
        let verdict = if took <= limit { "within" } else { "OVER" };
        well &= took <= limit;
        println!("{name}: {took:.2} µs (limit {limit:.0}: {verdict})");
        if let Some(theirs) = &python {
            let ratio = took / theirs[place];
            println!(
                "  numpy and scipy: {:.2} µs; ours / theirs {ratio:.4}",
                theirs[place]
            );
        }
    }
    if well {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

/// The median time of one call, in microseconds.
fn median(mut work: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..ROUNDS)
        .map(|_| {
            let begin = Instant::now();
            for _ in 0..REPEATS {
                work();
            }
            begin.elapsed().as_secs_f64() * 1e6 / REPEATS as f64
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[ROUNDS / 2]
}

fn mm(value: f64) -> Length {
    Length::new(value, LengthUnit::Millimetre).unwrap()
}

fn runout() {
    let needles = black_box(NEEDLES).map(Divisions::new);
    let series = Series::equally_spaced(Dial::HUNDREDTH_MM, &needles).unwrap();
    let shape = shape(&series).unwrap();
    assert_eq!(shape.form, Form::Wobble);
    let recorded = reach(&series, shape.moves, IndicatorError::OneDivision).unwrap();
    let limit = RunoutLimit::manufacturer(Surface::Rotor, mm(0.05)).unwrap();
    black_box(compare_runout(Surface::Rotor, &recorded, &limit).unwrap());
    let other = Arrow::known(
        mm(0.03),
        Angle::new(40.0, AngleUnit::Degree).unwrap(),
        mm(0.002),
    );
    let recorded = MeasuredAs::Assembled {
        one: (0, other),
        other: (4, shape.fit.first),
    };
    black_box(positions(&recorded, Studs::new(10).unwrap()).unwrap());
}

fn play() {
    let rounds = black_box(PULLS).map(|pull| Round::zeroed(Divisions::new(pull).unwrap()));
    let set = ReadingSet::read(Dial::HUNDREDTH_MM, Way::DEFAULT, &rounds, vec![]).unwrap();
    let rig = RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: mm(0.005),
        temperature: Some(mm(0.002)),
    };
    let budget = Budget::of(&set, &rig);
    let limit = Limit::manufacturer(mm(0.05), Way::DEFAULT).unwrap();
    black_box(compare(&set, &budget, &limit));
}

/// The same two in numpy and scipy; `None` where they are not there.
fn python() -> Option<Vec<f64>> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/bench/reckon.py");
    let python = std::env::var("HUBSLATE_PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let recorded = Command::new(&python).arg(script).output().ok();
    let recorded = recorded.filter(|recorded| recorded.status.success());
    let times = recorded.and_then(|recorded| {
        let text = String::from_utf8(recorded.stdout).ok()?;
        let times = text.split_whitespace().map(|word| word.parse().ok());
        times
            .collect::<Option<Vec<f64>>>()
            .filter(|times| times.len() == 2)
    });
    if times.is_none() {
        println!("numpy and scipy: skipped, {python} does not have them (set HUBSLATE_PYTHON)");
    }
    times
}
