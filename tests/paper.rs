//! Paper alone brings a job to the next phone: the symbols are read by another library (rqrr),
//! and what they say is what the job said.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "paper/confirmation.rs"]
mod confirmations;
#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/symbol.rs"]
mod symbol;

use std::path::Path;

use hubslate::drawing::code::code;
use hubslate::exchange::paper::{
    Gathered, MOST_BYTES, Paper, PaperError, confirmation_symbols, gather, paper, part, symbols,
};
use hubslate::exchange::{digest, merge, read, wire};
use hubslate::job::entry::{
    Confirmation, DueKind, Ended, Ending, Entry, EntryId, Event, Held, LogId, Opened, PersonField,
    Reading, RunoutReading, Setup, Side, VehicleField,
};
use hubslate::job::flow::CONFIRMATIONS_LOG;
use hubslate::job::{JobState, fold, next, plan};
use hubslate::report::must_not_drive;
use hubslate::report::paper::lines;
use hubslate::text::Lang;
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::SpecItem;
use hubslate::trade::play::Dial;
use hubslate::trade::runout::{LeftOut, Surface};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{
    ItemKind, ItemState, SetName, Start, Step, StepKey, When, procedure,
};
use hubslate::units::{Decimal, DecimalMark, Format, System};
use record::{Job, item, moved, note};

/// A sample as its texts and its sheet.
struct Sample {
    log: String,
    texts: Vec<String>,
    entries: Vec<Entry>,
}

impl Sample {
    fn of(name: &str) -> Self {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("public/sample")
            .join(name);
        let log = read(&std::fs::read_to_string(path).unwrap())
            .unwrap()
            .logs
            .remove(0);
        let texts: Vec<String> = log.records.into_iter().map(|record| record.text).collect();
        let entries = texts
            .iter()
            .map(|text| wire::decode(text).unwrap())
            .collect();
        Self {
            log: log.id.0,
            texts,
            entries,
        }
    }

    fn sheet(&self) -> JobState {
        fold(self.entries.iter().cloned())
    }

    fn paper(&self) -> Paper {
        paper(&self.log, &digest(&self.texts), &self.sheet()).unwrap()
    }
}

/// The texts that another library reads off the drawn symbols.
fn photographed(texts: &[String]) -> Vec<String> {
    let drawings = texts.iter().map(|text| code(text).unwrap());
    drawings.map(|drawing| symbol::decoded(&drawing)).collect()
}

fn gathered(texts: &[String]) -> Result<Gathered, PaperError> {
    let parts: Result<Vec<_>, _> = texts.iter().map(|text| part(text)).collect();
    gather(&parts?)
}

fn whole(texts: &[String]) -> Paper {
    match gathered(texts).unwrap() {
        Gathered::Whole(paper) => *paper,
        other => panic!("{other:?}"),
    }
}

/// The next phone after it took the paper.
fn next_phone(paper: Paper) -> Job {
    let mut job = Job {
        phone: record::Phone::new("slate two", 1_790_000_000_000),
        entries: Vec::new(),
    };
    let plate = paper
        .plate
        .map(|plate| Event::Person(PersonField::Plate, plate));
    job.tap(
        [Event::FromPaper(paper.slip)]
            .into_iter()
            .chain(plate)
            .collect(),
    );
    job
}

#[test]
fn another_library_reads_the_symbols_of_every_sample_and_they_say_what_the_job_said() {
    for name in [
        "replaced-hub.json",
        "declined-stop.json",
        "nothing-wrong.json",
    ] {
        let paper = Sample::of(name).paper();
        let texts = symbols(&paper).unwrap();
        assert_eq!(texts.len(), 1, "{name} fits into one symbol");
        let read = photographed(&texts);
        assert_eq!(read, texts, "{name}");
        assert_eq!(whole(&read), paper, "{name}");
    }
}

/// The values stand in `public/sample/replaced-hub.json` as they were typed.
#[test]
fn the_symbol_of_a_replaced_hub_names_specs_readings_and_digest_and_no_customer() {
    let sample = Sample::of("replaced-hub.json");
    let texts = photographed(&symbols(&sample.paper()).unwrap());
    let text = texts.join("\n");
    let digest = digest(&sample.texts);
    for said in [
        sample.log.as_str(),
        digest.as_str(),
        "KLM 4821",
        "Marlin Estate service book, wheel ends (invented)",
        "t200n_m",
        "t60n_m;a45deg",
        "2.0thou",
        "before|1|1|axial|pilot|caliper_up||1=0>6.3|2=0>6.4|3=0>6.3",
        "after|1|1|axial|pilot|caliper_up||1=0>1.0|2=0>1.0|3=0>1.2",
        "0.0254|100|plunger",
        "replace",
        "MX-4410-H (invented)|lot 25-48",
        "T|retorque|2026-02-22|50mi",
        "E|finished",
    ] {
        assert!(text.contains(said), "{said} in\n{text}");
    }
    // Name, telephone, address, VIN and price of the sample.
    for saved_back in ["Quill", "555-0142", "Alder", "GZZBD4RAXK1004417", "48600"] {
        assert!(!text.contains(saved_back), "{saved_back} in\n{text}");
    }
}

/// One run of so many places; the second place lies on a stud hole, the last was skipped.
fn run(nth: u8, needles: &[&str]) -> Vec<Event> {
    let setup = Setup {
        surface: Surface::HubFace,
        places: 8,
        stud: 1,
        cleaned: Answer::Yes,
    };
    let reading = |(place, needle): (u8, &&str)| {
        Event::Runout(RunoutReading {
            corner: Corner::FrontLeft,
            run: nth,
            setup,
            place,
            angle: None,
            radius: None,
            divisions: Decimal::parse(needle).ok(),
            turns: None,
            dial: Dial::HUNDREDTH_MM,
            left_out: (place == 2).then_some(LeftOut::StudHole),
        })
    };
    (1..).zip(needles).map(reading).collect()
}

/// From 0 to 4 divisions of 0.01 mm are 0.04 mm; place 5 of 8 is half a turn on.
#[test]
fn the_last_run_round_a_face_comes_with_total_and_high_spot() {
    let mut job = Job::opened();
    job.tap(run(1, &["0", "9", "9", "9", "9", "9", "9", "9"]));
    job.tap(run(2, &["0", "9", "2", "3,4", "4", "3.4", "2", "-"]));
    let recorded = paper(ID, &"0".repeat(64), &job.sheet()).unwrap();
    let texts = symbols(&recorded).unwrap();
    let line = "O|front_left|2|hub_face|8|1|yes|1||1=0|2=9!stud_hole|3=2|4=3,4|5=4|6=3.4|7=2|8=";
    let ends = |text: &String| text.lines().any(|it| it == line);
    assert!(texts.iter().any(ends), "{texts:?}");
    assert!(!texts.join("").contains("O|front_left|1"));
    let read = whole(&photographed(&texts));
    assert_eq!(read, recorded);
    let rows = lines(
        Lang::English,
        Format {
            system: System::Metric,
            decimal: DecimalMark::Dot,
        },
        &read.slip,
    );
    let said = &rows
        .iter()
        .find(|(label, _)| label.contains("Run 2"))
        .unwrap()
        .1;
    assert!(
        said.starts_with("Total indicator reading, with scatter: 0.040\u{a0}mm")
            && said.contains("180"),
        "{said}"
    );
}

/// 117 modules and the border of 4 on each side are 125; 56 mm of paper give each 0.448 mm.
#[test]
fn a_module_is_at_least_four_tenths_of_a_millimetre_on_paper() {
    let style = Path::new(env!("CARGO_MANIFEST_DIR")).join("style/print.css");
    let style = std::fs::read_to_string(style).unwrap();
    let rule = style.split(".report__code {").nth(1).unwrap();
    let size = rule.split("inline-size:").nth(1).unwrap();
    let mm: f64 = size.split("mm").next().unwrap().trim().parse().unwrap();
    let fullest = "a".repeat(MOST_BYTES + 2);
    let drawing = code(&fullest).unwrap();
    assert!((drawing.width - 125.0).abs() < 1e-9 && (drawing.height - 125.0).abs() < 1e-9);
    assert!(mm / drawing.width >= 0.4, "{mm} mm");
    assert_eq!(symbol::decoded(&drawing), fullest);
    // ISO/IEC 18004, table 7: 997 bytes are the most of version 25 at level M.
    assert_eq!(code(&"a".repeat(998)), None);
}

#[test]
fn letters_of_any_language_come_through() {
    let mut job = Job::opened();
    job.tap(vec![
        Event::Vehicle(
            VehicleField::Family,
            "Mårdhund Größe 2,0 |100 %| 車 ".to_owned(),
        ),
        Event::Person(PersonField::Plate, "ÄÖ 12".to_owned()),
    ]);
    let recorded = paper(ID, &"0".repeat(64), &job.sheet()).unwrap();
    let texts = symbols(&recorded).unwrap();
    assert_eq!(whole(&photographed(&texts)), recorded);
}

const ID: &str = "019c6c21-0e76-762b-b33a-5df32f2a8d00";

/// A job whose vehicle, parts and notes need more than one symbol.
fn long_paper(letters: usize) -> Option<Vec<String>> {
    let mut paper = Sample::of("replaced-hub.json").paper();
    let mut sources = 0;
    for what in &mut paper.slip.facts {
        let Event::Spec(spec) = what else { continue };
        if let hubslate::trade::fastening::SpecBody::Torque(body) = &mut spec.body {
            sources += 1;
            body.source.document = format!("{sources}{}", "x".repeat(letters));
        }
    }
    let texts = symbols(&paper)?;
    let parts: Vec<_> = texts.iter().map(|text| part(text).unwrap()).collect();
    let backwards: Vec<_> = parts.iter().rev().cloned().collect();
    for parts in [&parts, &backwards] {
        assert_eq!(gather(parts), Ok(Gathered::Whole(Box::new(paper.clone()))));
    }
    Some(texts)
}

#[test]
fn what_one_symbol_does_not_hold_is_split_and_gathered_in_any_order() {
    let mut counts = Vec::new();
    for letters in [50, 120, 200, 280, 350] {
        let texts = long_paper(letters).unwrap();
        assert!(texts.iter().all(|text| text.len() <= MOST_BYTES));
        assert_eq!(photographed(&texts), texts);
        let of = texts.len();
        if of > 1 {
            assert_eq!(gathered(&texts[1..]), Ok(Gathered::Missing(1, of)));
        }
        counts.push(of);
    }
    assert!(counts.is_sorted() && counts.contains(&2), "{counts:?}");
    assert!(counts.iter().all(|of| *of <= 4), "{counts:?}");
    assert_eq!(long_paper(900), None, "more than four");
}

#[test]
fn a_symbol_of_another_paper_is_not_mixed_in() {
    let (one, other) = (long_paper(200).unwrap(), long_paper(210).unwrap());
    assert_eq!(one.len(), other.len());
    let (first, of) = (one[0].clone(), one.len());
    let mut mixed = vec![first];
    mixed.extend(other[1..].iter().cloned());
    assert_eq!(gathered(&mixed), Ok(Gathered::Missing(1, of)));
    mixed.extend(one[1..].iter().cloned());
    assert!(matches!(gathered(&mixed), Ok(Gathered::Whole(_))));
}

#[test]
fn a_changed_cut_foreign_or_newer_text_is_refused() {
    let text = symbols(&Sample::of("replaced-hub.json").paper())
        .unwrap()
        .remove(0);
    let taken = |text: &str| gathered(&[text.to_owned()]);
    assert!(taken(&text).is_ok());
    // Spaces around it and another end of line are the work of other programs.
    assert!(taken(&format!("  {}\r\n", text.replace('\n', "\r\n"))).is_ok());
    for (place, letter) in text.char_indices().filter(|(_, c)| c.is_ascii_graphic()) {
        let other = if letter == '7' { '8' } else { '7' };
        let mut changed = text.clone();
        changed.replace_range(place..place + letter.len_utf8(), &other.to_string());
        assert!(taken(&changed).is_err(), "{place}: {changed}");
    }
    for end in (1..text.len()).filter(|end| text.is_char_boundary(*end)) {
        assert!(taken(&text[..end]).is_err(), "{end}");
    }
    assert_eq!(taken("WIFI:S:shop;;"), Err(PaperError::NotOurs));
    assert_eq!(taken(""), Err(PaperError::NotOurs));
    assert_eq!(
        taken(&text.replacen("HUBSLATE1", "HUBSLATE2", 1)),
        Err(PaperError::Newer)
    );
}

#[test]
fn a_practice_job_has_no_paper() {
    let mut job = Job::opened();
    job.entries.clear();
    job.tap(vec![Event::Opened(Opened {
        start: Start::AtHome,
        practice: Some("quiet_front".to_owned()),
    })]);
    assert_eq!(paper(ID, "", &job.sheet()), None);
}

#[test]
fn the_next_phone_has_specs_and_what_is_due_and_no_reading_or_decision_of_its_own() {
    let sample = Sample::of("replaced-hub.json");
    let (there, here) = (sample.sheet(), next_phone(sample.paper()).sheet());
    for (_, item) in hubslate::job::ready::specs(&there) {
        assert_eq!(here.spec(item), there.spec(item));
        assert!(here.spec(item).is_some());
    }
    assert_eq!(here.corners(), [Corner::FrontLeft]);
    assert_eq!(here.person(PersonField::Plate), Some("KLM 4821"));
    assert_eq!(here.person(PersonField::Name), None);
    assert_eq!(here.due(DueKind::Retorque), there.due(DueKind::Retorque));
    let set = SetName {
        when: When::Before,
        nth: 1,
    };
    assert_eq!(here.reading(Corner::FrontLeft, set, 1, Side::Pull), None);
    assert_eq!(here.decided(Corner::FrontLeft), None);
    let recorded = here.slip().unwrap();
    assert_eq!(recorded.digest, digest(&sample.texts));
    let pulls: Vec<&str> = recorded.facts.iter().filter_map(pulled).collect();
    assert_eq!(pulls, ["6.3", "6.4", "6.3", "1.0", "1.0", "1.2"]);
    // The visit after a finished job looks back on it.
    let steps = procedure(&plan(&here));
    assert_eq!(
        next(&here, &steps).unwrap().key,
        StepKey::once(Step::RetorqueDone)
    );
}

fn pulled(what: &Event) -> Option<&str> {
    match what {
        Event::Reading(Reading {
            side: Side::Pull,
            divisions,
            ..
        }) => Some(divisions.as_typed()),
        _ => None,
    }
}

#[test]
fn a_stop_that_was_declined_stays_one_on_the_next_phone() {
    let here = next_phone(Sample::of("declined-stop.json").paper()).sheet();
    assert!(must_not_drive(&here));
    let well = next_phone(Sample::of("nothing-wrong.json").paper()).sheet();
    assert!(!must_not_drive(&well));
}

#[test]
fn what_was_left_loose_is_loose_on_the_next_phone_until_it_is_put_back_there() {
    let mut left = Job::opened();
    let nuts = || {
        (1..=5)
            .map(|number| item(ItemKind::LugNuts, number))
            .collect::<Vec<_>>()
    };
    left.tap(vec![Event::Corners(vec![record::HERE])]);
    left.tap(vec![moved(Step::WheelOff, nuts(), ItemState::Off)]);
    left.tap(vec![Event::Ended(Ended {
        ending: Ending::LeftUnfinished,
        charge: None,
    })]);
    let recorded = paper(ID, "", &left.sheet()).unwrap();
    let texts = symbols(&recorded).unwrap();
    let mut here = next_phone(whole(&photographed(&texts)));
    assert_eq!(here.sheet().loose(), left.sheet().loose());
    assert!(must_not_drive(&here.sheet()));
    // Once more on paper before anything was done: nothing is lost on the way.
    let again = paper(ID, "", &here.sheet()).unwrap();
    assert_eq!(fold_of(again).loose(), left.sheet().loose());
    let four = nuts().into_iter().take(4).collect();
    here.tap(vec![moved(Step::TurnLugNuts, four, ItemState::Done)]);
    assert_eq!(
        here.sheet().loose(),
        [(item(ItemKind::LugNuts, 5), ItemState::Off)]
    );
}

fn fold_of(paper: Paper) -> JobState {
    next_phone(paper).sheet()
}

#[test]
fn the_file_that_comes_later_joins_the_paper_without_a_contradiction() {
    let sample = Sample::of("replaced-hub.json");
    let mut here = next_phone(sample.paper());
    here.tap(vec![note("Nuts found tight.")]);
    for entry in &mut here.entries {
        entry.log = LogId(sample.log.clone());
    }
    let saved = here
        .entries
        .iter()
        .map(|entry| hubslate::exchange::SavedText {
            log: sample.log.clone(),
            id: entry.id.0.clone(),
            text: wire::encode(entry).unwrap(),
        });
    let saved: Vec<_> = saved.collect();
    let came: Vec<_> = sample
        .entries
        .iter()
        .zip(&sample.texts)
        .map(|(entry, text)| hubslate::exchange::SavedText {
            log: sample.log.clone(),
            id: entry.id.0.clone(),
            text: text.clone(),
        })
        .collect();
    assert_eq!(merge(&saved, &came).add.len(), came.len());
    let both = fold(sample.entries.iter().chain(&here.entries).cloned());
    assert_eq!(both.problems(), []);
    assert_eq!(
        both.spec(SpecItem::AxleNut),
        sample.sheet().spec(SpecItem::AxleNut)
    );
    assert_eq!(both.ended(), sample.sheet().ended());
    let ids: Vec<&EntryId> = both.entries().iter().map(|entry| &entry.id).collect();
    assert_eq!(ids.len(), came.len() + saved.len());
}

#[test]
fn two_phones_with_two_papers_of_one_job_are_shown_side_by_side() {
    let one = Sample::of("replaced-hub.json").paper();
    let mut other = one.clone();
    other.slip.digest = "0".repeat(64);
    let (mut here, there) = (next_phone(one.clone()), next_phone(one));
    here.take(&there);
    assert_eq!(here.sheet().problems(), []);
    let mut second = next_phone(other);
    second.phone.device = "slate three";
    let mut apart = Job {
        phone: record::Phone::new("slate three", 1_790_000_000_000),
        entries: Vec::new(),
    };
    apart.tap(
        second
            .entries
            .iter()
            .map(|entry| entry.what.clone())
            .collect(),
    );
    here.take(&apart);
    assert_eq!(here.sheet().problems().len(), 1);
}
