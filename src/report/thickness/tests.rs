use super::*;
use crate::job::entry::Event;
use crate::job::thickness::{Placed, limit_spec};
use crate::report::sample::{self, Job};
use crate::report::{Reader, Report};
use crate::units::DecimalMark;

const METRIC: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};

fn measure(job: &mut Job, numbers: &[&str]) {
    let gauging = Gauging {
        micrometer: Micrometer::ThousandthMm,
        places: 6,
    };
    let corner = job.sheet().corners()[0];
    for (number, place) in numbers.iter().zip(1..) {
        let at = Placed {
            corner,
            run: 1,
            gauging,
            place,
        };
        job.tap(vec![at.saved(number).unwrap_or_else(|_| at.skipped())]);
    }
}

/// 22.020 mm and a wave of 0.010 mm, by the cosines of sixths of a turn.
const WAVE: [&str; 6] = ["22.030", "22.025", "22.015", "22.010", "22.015", "22.025"];

fn text(job: &Job, format: Format) -> String {
    let report = Report::of(&job.sheet(), Lang::English, format, &Reader::default());
    let texts: Vec<&str> = report.technician.iter().flat_map(Block::texts).collect();
    texts.join("\n")
}

#[track_caller]
fn says(text: &str, wanted: &[&str]) {
    for want in wanted {
        assert!(text.contains(want), "{want:?} is not in:\n{text}");
    }
}

#[test]
fn a_job_without_a_measurement_says_nothing_of_thickness() {
    let text = text(&sample::finished(None), METRIC);
    assert!(!text.contains("Rotor thickness"));
}

#[test]
fn every_reading_stands_as_typed_and_missing_limits_are_reported() {
    let mut job = sample::finished(None);
    measure(&mut job, &["22.010", "22.018", "", "22.031"]);
    let fault = "3 places were measured. At least 4 show the thinnest, 5 a variation.";
    says(
        &text(&job, METRIC),
        &[
            "Rotor thickness",
            "3\n120°\nskipped",
            "22.010\u{a0}mm",
            fault,
        ],
    );
    measure(&mut job, &WAVE);
    says(
        &text(&job, METRIC),
        &[
            "Thinnest 22.010\u{a0}mm, at place 4: minimum thickness not looked up.",
            "It varies by 0.020\u{a0}mm (95\u{a0}% from ",
            "): limit not looked up.",
            "Thickest minus thinnest, with scatter\n0.020\u{a0}mm",
            "What is the micrometer's step?\n0.001\u{a0}mm",
            "Look up minimum thickness and maximum variation.",
        ],
    );
    // 22.010 mm are 0.86654 in, an inch being 25.4 mm.
    says(&text(&job, METRIC.other()), &["Thinnest 0.8665\u{a0}in"]);
}

#[test]
fn limits_stand_with_their_source_and_what_they_say() {
    let mut job = sample::finished(None);
    let corner = job.sheet().corners()[0];
    for (bound, value) in [(Bound::Least, "22.2"), (Bound::Variation, "0.017")] {
        let of = (corner.axle(), bound);
        let spec = limit_spec(of, value, LengthUnit::Millimetre, sample::source(3));
        job.tap(vec![Event::ThicknessLimit(spec.unwrap())]);
    }
    measure(&mut job, &WAVE);
    says(
        &text(&job, METRIC),
        &[
            "below its minimum thickness of 22.2\u{a0}mm, proven.",
            "over its limit of 0.017\u{a0}mm, proven.",
            "Workshop data 12",
            "Too thin to go back on the road",
            "Probability that it is within the limit",
        ],
    );
    let report = Report::of(&job.sheet(), Lang::English, METRIC, &Reader::default());
    let drawn = report.technician.into_iter().filter(|block| match block {
        Block::Drawing { svg, .. } => svg.contains("limit 0.017\u{a0}mm (OEM)"),
        _ => false,
    });
    assert_eq!(drawn.count(), 1);
}
