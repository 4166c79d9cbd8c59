use super::*;
use crate::job::entry::{Event, Setup, VehicleField};
use crate::job::runout::{Spotted, angle_typed, limit_spec, marked, saved, skipped};
use crate::report::sample::{self, Job};
use crate::report::{Reader, Report};
use crate::trade::answer::Answer;
use crate::trade::runout::{LeftOut, Surface};
use crate::units::{DecimalMark, System};

const METRIC: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};

const WOBBLE: [&str; 8] = ["0", "2", "3", "2", "0", "98", "97", "98"];

fn run(job: &mut Job, nth: u8, stud: u8, needles: &[&str]) {
    for (needle, place) in needles.iter().zip(1..) {
        let sheet = job.sheet();
        let at = Spotted {
            corner: sheet.corners()[0],
            run: nth,
            setup: Setup {
                surface: Surface::Rotor,
                places: 8,
                stud,
                cleaned: Answer::Yes,
            },
            place,
            angle: None,
            radius: None,
        };
        let what = saved(&sheet, at.clone(), needle, None).unwrap_or_else(|| skipped(&sheet, at));
        job.tap(vec![what]);
    }
}

fn blocks(job: &Job) -> Vec<Block> {
    Report::of(&job.sheet(), Lang::English, METRIC, &Reader::default()).technician
}

fn text(job: &Job) -> String {
    let blocks = blocks(job);
    let texts: Vec<&str> = blocks.iter().flat_map(Block::texts).collect();
    texts.join("\n")
}

#[track_caller]
fn says(text: &str, wanted: &[&str]) {
    for want in wanted {
        assert!(text.contains(want), "{want:?} is not in:\n{text}");
    }
}

#[test]
fn a_job_without_a_run_says_nothing_of_runout() {
    assert!(!text(&sample::finished(None)).contains("Runout"));
}

#[test]
fn every_reading_the_wave_and_the_missing_limit_are_reported() {
    let mut job = sample::finished(None);
    run(&mut job, 1, 1, &WOBBLE);
    says(
        &text(&job),
        &[
            "Runout",
            "Run 1: Rotor on the hub",
            "Total indicator reading, with scatter\n0.060\u{a0}mm",
            "Runout, scatter removed",
            "95 % interval",
            "), a wobble, high on one side: no limit looked up.",
            "No limit looked up.",
            "High 90° on from lug 1",
            "Look up the manufacturer's limit.",
            "not read again",
            "\n97\n\u{2212}0.030\u{a0}mm",
        ],
    );
    let drawn = blocks(&job).into_iter().filter_map(|block| match block {
        Block::Drawing { svg, .. } if svg.contains("Readings around the face") => Some(svg),
        _ => None,
    });
    assert_eq!(drawn.count(), 1);
}

#[test]
fn skipped_and_marked_places_stand_with_their_reasons() {
    let mut job = sample::finished(None);
    let mut needles = WOBBLE;
    needles[4] = "";
    run(&mut job, 1, 1, &needles);
    let sheet = job.sheet();
    let third = sheet.runout(sheet.corners()[0]).nth(2).unwrap();
    job.tap(vec![marked(third, Some(LeftOut::StudHole))]);
    says(&text(&job), &["5\n180°\nskipped", "Bolt hole"]);
}

#[test]
fn a_limit_stands_with_its_source_and_the_positions_best_first() {
    let mut job = sample::finished(None);
    let most = limit_spec(
        Surface::Rotor,
        "0.05",
        LengthUnit::Millimetre,
        sample::source(3),
    );
    let studs = Event::Vehicle(VehicleField::Studs, "5".to_owned());
    job.tap(vec![studs, Event::RunoutLimit(most.unwrap())]);
    run(&mut job, 1, 1, &WOBBLE);
    run(&mut job, 2, 2, &["0", "1", "1", "1", "0", "99", "99", "99"]);
    let text = text(&job);
    says(
        &text,
        &[
            "over its limit of 0.05\u{a0}mm, not proven.",
            "Workshop data 12",
            "Probability that it is within the limit",
            "The rotor on each lug",
            "Only a new reading proves it.",
            "it sits here now",
        ],
    );
    let at = |stud: u8| text.find(&format!("Hole 1 on lug {stud}\n")).unwrap();
    assert!(at(2) < at(1));
}

#[test]
fn too_few_places_ask_for_more_and_print_no_verdict() {
    let mut job = sample::finished(None);
    let most = limit_spec(
        Surface::Rotor,
        "0.01",
        LengthUnit::Millimetre,
        sample::source(3),
    );
    job.tap(vec![Event::RunoutLimit(most.unwrap())]);
    run(&mut job, 1, 1, &["0", "5", "1", "96"]);
    let text = text(&job);
    says(
        &text,
        &[
            "Measure at least 1 more places.",
            "read again at more places",
        ],
    );
    assert!(!text.contains("its limit of") && !text.contains("new part"));
}

#[test]
fn a_typed_angle_stands_as_it_was_typed() {
    let mut job = sample::finished(None);
    for (place, typed, needle) in [(1, "0", "0"), (2, "47.50", "2"), (3, "200", "1")] {
        let sheet = job.sheet();
        let at = Spotted {
            corner: sheet.corners()[0],
            run: 1,
            setup: Setup {
                surface: Surface::Rotor,
                places: 8,
                stud: 1,
                cleaned: Answer::Yes,
            },
            place,
            angle: Some(angle_typed(typed).unwrap()),
            radius: None,
        };
        job.tap(vec![saved(&sheet, at, needle, None).unwrap()]);
    }
    let report = text(&job);
    says(
        &report,
        &["Where are the places?\nTyped angles", "2\n47.50°\n2"],
    );
    let mut even = sample::finished(None);
    run(&mut even, 1, 1, &WOBBLE);
    says(&text(&even), &["Where are the places?\nEqual steps"]);
}
