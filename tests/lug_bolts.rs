//! Where bolts hold the wheel, nothing that is read says that nuts on studs do.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use hubslate::job::caution::cautions;
use hubslate::job::entry::{DueKind, Event, Reply, VehicleField};
use hubslate::job::plan;
use hubslate::report::{Block, Reader, Report, retorque_sentence};
use hubslate::text::{self, Lang, step_for};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::MishapKind;
use hubslate::trade::vehicle::{Fixing, NutLock, ParkingBrake, WheelBrake};
use hubslate::trade::wheel_end::{
    Build, Check, Fitted, Form, Given, Kind, NutPosition, Step, StepKey,
};
use hubslate::units::{DecimalMark, Format, System};
use record::{HERE, Job};
use technician::{Story, answer, begin, next_key, steps};

const LANG: Lang = Lang::English;
const FORMAT: Format = Format {
    system: System::Us,
    decimal: DecimalMark::Dot,
};
/// A wheel end without a nut of its own, its wheel held by bolts.
const BOLTED: &[(VehicleField, &str)] = &[
    (VehicleField::Kind, "bolted_free"),
    (VehicleField::Fixing, "bolts"),
];
const NUTS: &[(VehicleField, &str)] = &[(VehicleField::Kind, "bolted_free")];

/// The nuts that stay nuts whatever holds the wheel, and what they are called by for short.
const OTHER_NUTS: [&str; 11] = [
    "axle nut",
    "spindle nut",
    "lock nut",
    "setting nut",
    "castle nut",
    "joint's nut",
    "rod's nut",
    "bolts and nuts",
    "both nuts",
    "turn the nuts",
    "new nuts",
];

fn words(text: &str) -> impl Iterator<Item = String> + '_ {
    let words = text.split(|letter: char| !letter.is_alphanumeric());
    words.map(str::to_lowercase)
}

/// Whether a text speaks of studs, or of nuts that are none of the wheel end's own.
fn says_nuts(text: &str, own: bool) -> bool {
    let mut text = text.to_lowercase();
    if own {
        OTHER_NUTS
            .iter()
            .for_each(|nut| text = text.replace(nut, ""));
    }
    let wrong = |word: String| match word.as_str() {
        "nuts" | "stud" | "studs" => true,
        "nut" => !own,
        _ => false,
    };
    text.contains("lug nut") || text.contains("lug-nut") || words(&text).any(wrong)
}

#[test]
fn no_step_speaks_of_lug_nuts_or_studs_where_bolts_are_fitted() {
    let mut seen = 0;
    for kind in Kind::ALL {
        for nut in NutPosition::ALL {
            for brake in WheelBrake::ALL {
                for lock in NutLock::ALL {
                    let build = Build {
                        kind: *kind,
                        nut: *nut,
                        fitted: Fitted {
                            fixing: Fixing::Bolts,
                            brake: *brake,
                            lock: *lock,
                            parking: ParkingBrake::Rear,
                            ..Fitted::COMMON
                        },
                    };
                    for step in Step::ALL {
                        for nth in 1..8 {
                            let of = step_for(LANG, StepKey::at(*step, HERE).nth(nth), build);
                            let caution = of.caution.unwrap_or_default();
                            for said in
                                [of.name, of.say, of.primary, of.why, of.no, of.now, caution]
                            {
                                assert!(!says_nuts(said, true), "{kind:?} {step:?}: {said}");
                                seen += 1;
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(seen > 100_000, "{seen}");
}

#[test]
fn rows_mishaps_and_their_parts_speak_of_bolts() {
    for check in Check::ALL {
        let said = text::check(LANG, *check, Fixing::Bolts);
        assert!(!says_nuts(said, true), "{said}");
        for given in [Answer::No, Answer::NotDone] {
            let mut sheet = begin(Story::at(BOLTED));
            sheet.tap(vec![Event::Vehicle(
                VehicleField::Fixing,
                "bolts".to_owned(),
            )]);
            let build = plan(&sheet.sheet()).build();
            let key = StepKey::at(Step::BeforeDriving, HERE);
            let now = text::follows(LANG, key, Given::Row(*check, given), build);
            assert!(!says_nuts(now, true), "{check:?}: {now}");
        }
    }
    assert!(says_nuts(
        text::check(LANG, Check::NutsAsFound, Fixing::Nuts),
        true
    ));
    for kind in MishapKind::ALL {
        let of = |fixing| {
            [
                text::mishap(LANG, *kind, fixing),
                text::mishap_say(LANG, *kind, fixing),
                text::mishap_part(LANG, *kind, fixing),
            ]
        };
        for said in of(Fixing::Bolts) {
            assert!(!says_nuts(said, false), "{kind:?}: {said}");
        }
    }
    for kind in DueKind::ALL {
        assert!(!says_nuts(text::due_kind(LANG, *kind), false));
    }
}

/// All that the report says, customer's and technician's pages and the tear-off.
fn report(job: &Job) -> Vec<String> {
    let report = Report::of(&job.sheet(), LANG, FORMAT, &Reader::default());
    let mut said: Vec<String> = Vec::new();
    for block in report.page_one.iter().chain(&report.technician) {
        said.extend(block.texts().into_iter().map(str::to_owned));
        if let Block::Drawing { svg, .. } = block {
            said.push(svg.clone());
        }
    }
    said.extend(report.tear_off.iter().flat_map(|slip| {
        let rows = slip
            .rows
            .iter()
            .flat_map(|(label, value)| [label.clone(), value.clone()]);
        [slip.title.clone()]
            .into_iter()
            .chain(slip.sentence.clone())
            .chain(rows)
    }));
    said
}

/// What is on the screens of a job while it is worked, and at its end what is printed of it.
fn all_said(story: Story, wrong_nuts: bool) -> Vec<String> {
    let mut job = begin(story);
    let mut said = Vec::new();
    for _ in 0..250 {
        let sheet = job.sheet();
        let plan = plan(&sheet);
        let steps = steps(&sheet);
        let key = next_key(&sheet).expect("a step before the end");
        let planned = steps.iter().find(|planned| planned.key == key).unwrap();
        let fixing = plan.fitted.fixing;
        let of = step_for(LANG, key, plan.build());
        let caution = of.caution.unwrap_or_default();
        // Until Prep has asked how the wheel is held, what most have is told.
        let known = sheet.vehicle(VehicleField::Fixing).is_some();
        if known {
            said.extend([of.name, of.say, of.why, of.now, caution].map(str::to_owned));
            if let Form::Checks(rows) = &planned.form {
                said.extend(
                    rows.iter()
                        .map(|row| text::check(LANG, *row, fixing).to_owned()),
                );
            }
            let also = cautions(&sheet, planned);
            said.extend(also.iter().map(|of| text::caution(LANG, *of).to_owned()));
            let loose = sheet.loose();
            said.extend(
                loose
                    .iter()
                    .map(|(item, _)| text::item_at(LANG, *item, fixing)),
            );
        }
        if planned.form == Form::End {
            break;
        }
        if wrong_nuts && key.step == Step::BeforeDriving {
            let rows = vec![(Check::NutsAsFound, Answer::No)];
            job.tap(vec![Event::Answered(key, Reply::Checked(rows))]);
            said.extend(report(&job));
        }
        job.tap(answer(&sheet, planned, story));
    }
    let sheet = job.sheet();
    let due = sheet
        .due(DueKind::Retorque)
        .expect("a re-torque that is due");
    said.push(retorque_sentence(LANG, FORMAT, &sheet, due));
    said.extend(report(&job));
    said
}

#[test]
fn a_job_with_lug_bolts_says_nut_nowhere_from_its_first_step_to_its_report() {
    for loose in [false, true] {
        let said = all_said(Story::at(BOLTED), loose);
        assert!(said.len() > 500, "{}", said.len());
        let wrong: Vec<&String> = said.iter().filter(|said| says_nuts(said, false)).collect();
        assert_eq!(wrong, Vec::<&String>::new());
        assert!(said.iter().any(|said| said.contains("lug-bolt torque")));
        assert!(said.iter().any(|said| said.starts_with("Lug bolt 1")));
        // The same job with nuts says so: the test can see them.
        let nuts = all_said(Story::at(NUTS), loose);
        let of_nuts = nuts.iter().filter(|said| says_nuts(said, false)).count();
        assert!(of_nuts > 10, "{of_nuts}");
    }
}
