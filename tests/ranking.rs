//! 20,000 invented cars that hum, each with a known cause, through the ranking of causes.
//!
//! The cars are drawn from the table itself, so this does not show that the weights are right: it
//! shows what the ranking does with them, and what is left of it where the world weighs every clue
//! by up to a step otherwise.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::cast_precision_loss
)]

use std::collections::HashMap;

use hubslate::trade::answer::Answer;
use hubslate::trade::diagnosis::{
    Cause, Clue, Complaint, Findings, Ranked, SEPARATED_STEPS, TABLE, Table, Test, lead,
    next_tests, rank,
};
use hubslate::trade::practice::chance::Chance;

const CARS: u32 = 20_000;
/// So many of them come from one world.
const CARS_A_WORLD: u32 = 500;
/// A technician tries no more than so many tests.
const MOST_TESTS: usize = 6;
/// And stops where the first cause is so likely.
const ENOUGH: f64 = 0.9;

type Tried = Vec<(Clue, Answer)>;

/// What the ranking says of what was tried, reckoned once for all cars that get so far.
#[derive(Default)]
struct Known(HashMap<Tried, (Vec<Ranked>, Option<Test>)>);

impl Known {
    fn of(&mut self, tried: &Tried) -> &(Vec<Ranked>, Option<Test>) {
        self.0.entry(tried.clone()).or_insert_with(|| {
            let start = Findings::of(Complaint::Hum);
            let found = tried
                .iter()
                .fold(start, |found, (clue, answer)| found.with(*clue, *answer));
            let next = next_tests(&TABLE, &found).first().map(|worth| worth.test);
            (rank(&TABLE, &found), next)
        })
    }
}

/// What a test shows on a car with this cause; nothing where the outcome is unclear.
fn outcome(table: &Table, test: Test, cause: Cause, chance: &mut Chance) -> Option<(Clue, Answer)> {
    let mut left = chance.share();
    for clue in test.clues() {
        left -= table.anyway(clue) * f64::from(table.steps(clue, cause)).exp2();
        if left < 0.0 {
            return Some((clue, Answer::Yes));
        }
    }
    let plain = test.is_plain().then(|| test.clues().next()).flatten();
    plain.map(|clue| (clue, Answer::No))
}

/// The same table with every weight up to a step off, as long as no clue becomes certain.
fn shaken(chance: &mut Chance) -> Table {
    let mut table = TABLE.clone();
    for at in 0..table.rows.len() {
        for cause in 0..table.rows[at].steps.len() {
            let before = table.rows[at].steps[cause];
            let by = i8::try_from(chance.bits() % 3).unwrap() - 1;
            table.rows[at].steps[cause] = before + if before == 0 { 0 } else { by };
            if table.check().is_err() {
                table.rows[at].steps[cause] = before;
            }
        }
    }
    table
}

/// Of all cars in percent: the true cause first, in the first two, first and not separated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Score {
    first: u32,
    two: u32,
    not_separated: u32,
    wrong: u32,
}

fn score(world: impl Fn(&mut Chance) -> Table, seed: u64) -> Score {
    let mut known = Known::default();
    let (mut first, mut two, mut not_separated, mut wrong) = (0, 0, 0, 0);
    let mut table = TABLE.clone();
    for car in 0..CARS {
        if car % CARS_A_WORLD == 0 {
            table = world(&mut Chance::at(seed, u64::from(car)));
        }
        let mut chance = Chance::at(seed + 1, u64::from(car));
        let cause = drawn(&mut chance);
        let mut tried = Tried::new();
        let mut unclear = 0;
        while tried.len() + unclear < MOST_TESTS {
            let (ranking, next) = known.of(&tried);
            if ranking[0].chance >= ENOUGH {
                break;
            }
            match next.and_then(|test| outcome(&table, test, cause, &mut chance)) {
                Some(found) => tried.push(found),
                None => unclear += 1,
            }
        }
        let (ranking, _) = known.of(&tried);
        first += u32::from(ranking[0].cause == cause);
        two += u32::from(ranking[..2].iter().any(|one| one.cause == cause));
        let apart = lead(ranking) >= SEPARATED_STEPS;
        not_separated += u32::from(!apart);
        wrong += u32::from(apart && ranking[0].cause != cause);
    }
    let percent = |n: u32| (n * 100 + CARS / 2) / CARS;
    Score {
        first: percent(first),
        two: percent(two),
        not_separated: percent(not_separated),
        wrong: percent(wrong),
    }
}

/// A cause as a hum's starting odds have it.
fn drawn(chance: &mut Chance) -> Cause {
    let start = |cause: &Cause| TABLE.start(Complaint::Hum, *cause);
    let mut left = chance.share() * Cause::ALL.iter().map(start).sum::<f64>();
    let mut all = Cause::ALL.iter();
    *all.find(|cause| {
        left -= start(cause);
        left < 0.0
    })
    .unwrap_or(&Cause::Other)
}

#[test]
fn the_rate_in_the_readme_is_that_of_20000_cars() {
    let right = score(|_| TABLE.clone(), 41);
    let off = score(shaken, 43);
    println!("as the table says: {right:?}; every weight up to a step off: {off:?}");
    let row = |name: &str, score: Score| {
        format!(
            "| {name} | {} | {} | {} | {} |",
            score.first, score.two, score.not_separated, score.wrong
        )
    };
    let rows = [
        row("as the table says", right),
        row("each clue weighs up to a step more or less", off),
    ];
    let readme =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/README.md")).unwrap();
    // Who replaces the bearing of whatever hums is right where it was the bearing.
    let bearings = 100.0 * TABLE.start(Complaint::Hum, Cause::Bearing);
    assert!(f64::from(right.first.min(off.first)) > bearings + 20.0);
    for row in rows {
        assert!(readme.contains(&row), "the README has not: {row}");
    }
}
