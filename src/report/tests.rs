use super::sample::{self, Job};
use super::*;
use crate::job::entry::Ending;
use crate::trade::play::{Decision, Felt};
use crate::trade::wheel_end::Choice;
use crate::units::{DecimalMark, System};

const METRIC: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};

fn reader() -> Reader {
    Reader {
        job: "0195-log-77aa31bc".to_owned(),
        digest: "9f".repeat(32),
        made_by: "Rook Wheel Service".to_owned(),
        contact: "555 0100".to_owned(),
        warranty: String::new(),
        codes: None,
    }
}

fn report_in(job: &Job, format: Format) -> Report {
    Report::of(&job.sheet(), Lang::English, format, &reader())
}

pub(super) fn report(job: &Job) -> Report {
    report_in(job, METRIC)
}

pub(super) fn context(blocks: &[Block]) -> String {
    let texts: Vec<&str> = blocks.iter().flat_map(Block::texts).collect();
    texts.join("\n")
}

#[track_caller]
pub(super) fn says(text: &str, wanted: &[&str]) {
    for want in wanted {
        assert!(text.contains(want), "{want:?} is not in:\n{text}");
    }
}

#[track_caller]
pub(super) fn never_says(text: &str, unwanted: &[&str]) {
    for word in unwanted {
        let found = text.to_lowercase().contains(&word.to_lowercase());
        assert!(!found, "{word:?} is in:\n{text}");
    }
}

fn every_job() -> Vec<Job> {
    vec![
        sample::finished(None),
        sample::declined_stop(),
        sample::kept_by_house_limit(),
        sample::left_unfinished(),
    ]
}

#[test]
fn page_one_has_none_of_the_trades_words() {
    let jargon = [
        "axial",
        "pilot",
        "uncertainty",
        "division",
        "knuckle",
        "rotor",
        "bezel",
        "expanded",
        "conformity",
        "at spec",
        "N·m",
        "lbf",
        "budget",
        "dial",
        "guide pin",
        "graduation",
        "K1",
        "runout",
    ];
    for job in every_job() {
        never_says(&context(&report(&job).page_one), &jargon);
    }
}

#[test]
fn a_declined_stop_says_that_it_must_not_be_driven_and_what_can_happen() {
    let page = context(&report(&sample::declined_stop()).page_one);
    says(
        &page,
        &[
            "DO NOT DRIVE",
            "Front left: STOP",
            "Do not drive this car",
            "must not be driven",
            "the wheel can come off",
            "people can be hurt or killed",
            "you declined it on Mar 4, 2025",
            "480.50\u{a0}EUR",
        ],
    );
    never_says(&page, &["may be driven", "Stop the car in a safe place"]);
}

#[test]
fn an_unfinished_job_names_what_is_loose_and_who_took_charge() {
    let page = context(&report(&sample::left_unfinished()).page_one);
    says(
        &page,
        &[
            "DO NOT DRIVE",
            "Do not drive or move it",
            "people can be hurt or killed",
            "Axle nut, front left",
            "Lug nuts 1–5, front left",
            "Towed away",
        ],
    );
    never_says(&page, &["may be driven", "We replaced"]);
}

#[test]
fn a_loose_item_forbids_driving_whatever_ending_was_recorded() {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    sample::measured(
        &mut job,
        Felt::Nothing,
        Choice::SmoothQuiet,
        ["1", "1", "1"],
    );
    job.decided(Decision::Keep);
    job.ended(Ending::NothingWrong, None);
    assert!(must_not_drive(&job.sheet()));
    never_says(&context(&report(&job).page_one), &["may be driven"]);
}

#[test]
fn a_finished_repair_says_what_it_was_and_that_it_may_be_driven() {
    let page = context(&report(&sample::finished(None)).page_one);
    says(
        &page,
        &[
            "REPLACED, safe to drive",
            "Before the work, this wheel bearing failed our check.",
            // By 25.4 mm an inch: 0.125 mm are 0.00492 in, 0.01167 mm are 0.00046 in.
            "moved 0.125\u{a0}mm (0.0049\u{a0}in) before the repair and 0.012\u{a0}mm (0.0005\u{a0}in) after",
            "The limit is 0.05\u{a0}mm (0.0020\u{a0}in) (Workshop data 12, page 204, looked up Mar 4, 2025 by Ada Rook)",
            "HB 4471",
            "25 W 07",
            // 81200 km at the car and 80 km on: by hand.
            "after 80\u{a0}km, when the odometer shows 81280\u{a0}km, no later than Mar 9, 2025",
            "The car was not driven on the road to listen.",
            "555 0100",
            "The vehicle manufacturer's service information takes precedence",
        ],
    );
    never_says(&page, &["should be replaced", "Do not drive"]);
}

#[test]
fn a_new_part_that_is_out_takes_the_may_be_driven_away() {
    let mut job = sample::finished(None);
    job.rounds(crate::trade::wheel_end::When::After, ["12", "12", "12"]);
    assert!(must_not_drive(&job.sheet()));
    let page = context(&report(&job).page_one);
    says(&page, &["does not pass its check", "Do not drive this car"]);
    never_says(&page, &["may be driven"]);
}

#[test]
fn a_soft_pedal_takes_it_away_until_it_is_firm() {
    use crate::job::entry::Reply;
    use crate::trade::answer::Answer;
    use crate::trade::wheel_end::Step;
    let mut job = sample::finished(None);
    job.answer(StepKey::once(Step::ProvePedal), Reply::Said(Answer::No));
    let page = context(&report(&job).page_one);
    says(&page, &["Do not drive this car", "people can be hurt"]);
    never_says(&page, &["may be driven"]);
    job.answer(StepKey::once(Step::ProvePedal), Reply::Said(Answer::Yes));
    assert!(!must_not_drive(&job.sheet()));
}

#[test]
fn a_new_part_that_nobody_spun_says_so() {
    use crate::job::entry::Reply;
    use crate::trade::wheel_end::{NotDoneReason, Step};
    let mut job = sample::finished(None);
    let spin = StepKey::at(Step::ProveSpin, sample::AT);
    never_says(&context(&report(&job).page_one), &["After: It was not"]);
    job.answer(spin, Reply::NotDone(NotDoneReason::NoTime));
    says(
        &context(&report(&job).page_one),
        &["After: It was not turned by hand to feel for roughness."],
    );
}

#[test]
fn every_reading_every_limit_and_every_source_is_on_the_technicians_pages() {
    let pages = context(&report(&sample::finished(None)).technician);
    says(
        &pages,
        &[
            "12.5",
            "0.125\u{a0}mm = 0.0049\u{a0}in",
            "One division\n0.010\u{a0}mm = 0.0004\u{a0}in",
            "180.5\u{a0}N·m + 45° = 133.13\u{a0}lb-ft + 45°",
            "0.05\u{a0}mm = 0.0020\u{a0}in",
            "Workshop data 12, page 204, looked up 2025-03-01 by Ada Rook",
            "Over the limit, proven",
            "Within the limit, proven",
            "The dial's own error",
            "In the air, brake held",
            "New each time, Stake or pin afterwards",
            "11111111111111111",
            "Bolted hub, driven",
            "It hums, louder at speed; started after the big pothole.",
            "81200\u{a0}km",
            "long wrench",
            "seat cleaned to bright metal",
            "ab12ab12ab12",
            "0195-log-77aa31bc",
        ],
    );
    let digest = "9f".repeat(32);
    says(&pages, &[&digest]);
}

#[test]
fn each_fastener_has_its_spec_its_wrench_and_its_time() {
    let report = report(&sample::finished(None));
    let table = report.technician.iter().find_map(|block| match block {
        Block::Table { head, rows } if head.len() == 5 && head[2] == "Wrench" => Some(rows),
        _ => None,
    });
    let rows = table.unwrap();
    let nuts = rows.iter().filter(|row| row[0].starts_with("Lug nut "));
    assert_eq!(nuts.clone().count(), 5);
    for row in nuts {
        assert_eq!(row[1], "120\u{a0}N·m");
        assert_eq!(row[2], "long wrench");
        assert!(row[3].starts_with("120\u{a0}N·m"), "{row:?}");
        assert!(row[4].starts_with("2025-03-04 "), "{row:?}");
    }
    let passes = rows.iter().filter(|row| row[0].contains("The pass began"));
    assert_eq!(passes.count(), 1);
}

#[test]
fn every_table_row_has_as_many_cells_as_its_head() {
    for job in every_job() {
        let report = report(&job);
        for block in report.page_one.iter().chain(&report.technician) {
            if let Block::Table { head, rows } = block {
                assert!(!rows.is_empty(), "{head:?}");
                assert!(rows.iter().all(|row| row.len() == head.len()), "{rows:?}");
            }
        }
    }
}

#[test]
fn what_was_not_done_is_listed_with_its_reason() {
    let pages = context(&report(&sample::finished(None)).technician);
    says(&pages, &["Not done, and why", "not done. Reason: Not safe"]);
    let list = |job: &Job| {
        let sheet = job.sheet();
        let reader = reader();
        answers::not_done(&ReportContext::new(&sheet, Lang::English, METRIC, &reader))
    };
    let lines = list(&sample::finished(None));
    assert!(
        lines
            .iter()
            .any(|l| l.contains("Clear of traffic") && l.ends_with("Not done")),
        "{lines:?}"
    );
    assert!(
        lines.iter().any(|l| l.ends_with("never answered")),
        "{lines:?}"
    );
    // The road test was refused once, not once a table.
    let drive = lines
        .iter()
        .filter(|l| l.ends_with("not done. Reason: Not safe"));
    assert_eq!(drive.count(), 1, "{lines:?}");
}

#[test]
fn the_house_limit_is_named_as_what_it_is_on_both_parts() {
    let report = report(&sample::kept_by_house_limit());
    let house = "No manufacturer limit found. Default limit 0.10\u{a0}mm = 0.004\u{a0}in used \
                 (common practice, no source).";
    says(&context(&report.page_one), &[house]);
    let pages = context(&report.technician);
    says(
        &pages,
        &[
            house,
            "It can never show that one is good.",
            "Not found",
            "no play figure in Workshop data 12",
            "Under the default limit, which clears nothing",
        ],
    );
    never_says(&pages, &["Within the limit", "Probability"]);
}

#[test]
fn a_spec_from_an_earlier_day_is_reported_as_such_and_no_other() {
    let pages = context(&report(&sample::finished(None)).technician);
    assert_eq!(pages.matches("Not looked up since 2025-03-01").count(), 1);
    assert_eq!(pages.matches("Not looked up since").count(), 1);
}

#[test]
fn in_a_comma_format_no_number_has_a_dot() {
    let comma = Format {
        system: System::Us,
        decimal: DecimalMark::Comma,
    };
    for job in every_job() {
        let report = report_in(&job, comma);
        for block in report.page_one.iter().chain(&report.technician) {
            let drawing = match block {
                Block::Drawing { svg, .. } => svg
                    .split("</text>")
                    .filter_map(|piece| piece.rsplit('>').next())
                    .collect(),
                _ => Vec::new(),
            };
            for text in block.texts().into_iter().chain(drawing) {
                let letters: Vec<char> = text.chars().collect();
                let dotted = letters
                    .windows(3)
                    .any(|w| w[0].is_ascii_digit() && w[1] == '.' && w[2].is_ascii_digit());
                assert!(!dotted, "{text}");
            }
        }
    }
    let pages = context(&report_in(&sample::finished(None), comma).technician);
    says(&pages, &["0,0049\u{a0}in", "180,5\u{a0}N·m", "12,5"]);
}

#[test]
fn what_was_taken_back_is_listed_as_such_and_nowhere_else() {
    let report = report(&sample::finished(None));
    never_says(&context(&report.page_one), &["the wrong corner"]);
    let pages = context(&report.technician);
    let (facts, taken_back) = pages.split_once("Undone").unwrap();
    never_says(facts, &["the wrong corner"]);
    says(taken_back, &["the wrong corner"]);
}

#[test]
fn what_was_noted_later_says_when_it_was_done() {
    let pages = context(&report(&sample::finished(None)).technician);
    says(
        &pages,
        &["Done 2025-03-04 08:59, noted later at 2025-03-04 09:24"],
    );
    assert_eq!(pages.matches("noted later at").count(), 1);
}

#[test]
fn practice_is_marked_and_a_real_job_is_not() {
    let practice = report(&sample::finished(Some("grey estate"))).head;
    assert!(practice.practice.unwrap().contains("Practice"));
    assert_eq!(report(&sample::finished(None)).head.practice, None);
}

#[test]
fn a_recorded_decision_is_reported_as_it_was_recorded() {
    let mut job = sample::packed(None, sample::play_spec("0.05"));
    sample::measured(&mut job, Felt::JustFelt, Choice::Rough, ["12", "12", "12"]);
    job.decided(Decision::Watch);
    let report = report(&job);
    says(&context(&report.page_one), &["Front left: WATCH"]);
    let pages = context(&report.technician);
    says(&pages, &["Front left: WATCH"]);
    never_says(&pages, &["REPLACE"]);
}

#[test]
fn the_foot_has_the_jobs_short_name_and_the_digest() {
    let head = report(&sample::finished(None)).head;
    assert_eq!(head.foot, "Job 77aa31bc · digest 9f9f9f9f9f9f");
}
