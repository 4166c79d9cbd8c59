//! Files of every version that was shipped: still read, and written again as they were.

use super::*;
use hubslate::job::account::account;

#[test]
fn the_file_of_version_1_is_still_read_and_written() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/job-1.json");
    let fixture = std::fs::read_to_string(path).unwrap();
    let log = read(&fixture).unwrap().logs.remove(0);
    assert_eq!((log.unreadable.len(), log.records.len()), (0, 43));
    let sheet = fold(
        log.records
            .iter()
            .map(|record| decode(&record.text).unwrap()),
    );
    assert_eq!(sheet.problems(), []);
    assert!(!sheet.read_only());
    let front_left = Corner::FrontLeft;
    let first = SetName {
        when: When::Before,
        nth: 1,
    };
    let reading = sheet.reading(front_left, first, 1, Side::Pull).unwrap();
    assert_eq!(reading.divisions.as_typed(), "6.30");
    assert_eq!(reading.dial, Dial::THOU);
    assert_eq!(sheet.decided(front_left).unwrap().decision, Decision::Stop);
    assert_eq!(sheet.ended().unwrap().charge, Some(Charge::Towed));
    let nut = sheet.spec(SpecItem::AxleNut).unwrap();
    assert_eq!((nut.fault(), nut.stages().len()), (None, 5));
    let turn = StepKey::at(Step::TurnLugNuts, front_left);
    assert!(sheet.lever(turn).is_some());
    assert!(hubslate::job::mishap::open_mishaps(&sheet).is_empty());
    let hose = sheet.loose().pop().unwrap().0;
    let names: Vec<&str> = named(&sheet, hose)
        .iter()
        .map(|it| it.name.as_str())
        .collect();
    assert_eq!(names, ["brake hose bracket"]);
    let struck = sheet
        .entries()
        .iter()
        .filter(|entry| sheet.is_struck(&entry.id));
    assert!(struck.map(|entry| &entry.what).eq([&Event::Note(
        Some(StepKey::at(Step::Agree, front_left)),
        "line one\nline two".to_owned()
    )]));
    let texts = log.records.into_iter().map(|record| record.text).collect();
    assert_eq!(as_first_written(log.kind, log.id, texts), fixture);
}

#[test]
fn a_file_with_photos_and_a_voice_note_is_still_read_and_written() {
    let sheet = fixture("job-1-saved");
    // `printf 'a picture' | sha256sum` and the same of 'a voice'.
    let named: Vec<&str> = sheet
        .counting()
        .filter_map(|entry| Some(entry.what.named()?.sha256))
        .collect();
    assert_eq!(named, [PICTURE, VOICE]);
    let said = caption(&sheet, PICTURE);
    assert_eq!(
        *said,
        Caption::Words("Stand on the tarred strip".to_owned())
    );
}

#[test]
fn a_job_that_came_from_paper_is_still_read_and_written() {
    let sheet = fixture("job-1-paper");
    assert_eq!(sheet.corners(), [Corner::FrontLeft]);
    assert_eq!(sheet.vehicle(VehicleField::Studs), Some("5"));
    let due = sheet.due(DueKind::Retorque).unwrap();
    assert_eq!(due.date, "2026-02-22");
    let slip = sheet.slip().unwrap();
    assert_eq!(slip.digest, entry_digest("the record behind the paper"));
}

const PICTURE: &str = "92b2fa58028958317e408bd84ecfa70f5ee35b121991dbc232c49d166353708b";

const VOICE: &str = "e2c67f1527d5838f1b4666d75877b1bddc4d368101ad5e236128412f8be83354";

/// An export as the first files of this version were: they had no canonical digest.
fn as_first_written(kind: LogKind, log: LogId, texts: Vec<String>) -> String {
    let again = export(&[(kind, log, texts)]).unwrap();
    let lines = again.lines().filter(|line| !line.contains("\"canonical\""));
    let again: String = lines.map(|line| format!("{line}\n")).collect();
    again.replacen(MADE_BY, "hubslate 0.1.0", 1)
}

/// The sheet of a shipped file, which is read whole and written again as it was.
fn fixture(name: &str) -> JobState {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/fixtures/{name}.json"));
    let fixture = std::fs::read_to_string(path).unwrap();
    let log = read(&fixture).unwrap().logs.remove(0);
    let texts: Vec<String> = log.records.into_iter().map(|record| record.text).collect();
    let sheet = fold(texts.iter().map(|text| decode(text).unwrap()));
    assert_eq!((sheet.problems(), sheet.read_only()), (&[][..], false));
    assert_eq!(as_first_written(log.kind, log.id, texts), fixture);
    sheet
}

#[test]
fn a_file_with_runs_round_a_face_is_still_read_and_written() {
    let sheet = fixture("job-1-runout");
    let places: Vec<_> = sheet.runout(Corner::FrontLeft).collect();
    let needles = places.iter().map(|place| place.divisions.as_ref());
    let needles: Vec<_> = needles
        .map(|needle| needle.map(|it| it.as_typed()))
        .collect();
    assert_eq!(needles, [Some("\u{2212}2.50"), None]);
    assert_eq!((places[0].setup.stud, places[0].setup.places), (3, 8));
    assert_eq!(places[0].left_out, Some(LeftOut::StudHole));
    let limit = sheet.runout_limit(Surface::Rotor).unwrap();
    assert_eq!(limit.most.number.as_typed(), "0.05");
}

#[test]
fn a_file_with_what_the_shop_counts_is_still_read_and_written() {
    let sheet = fixture("job-1-shop");
    let read = PartReading::new(Inspected::Closed).turned(Finding::RedGrease);
    assert_eq!(sheet.removed_part(Corner::FrontLeft), Some(&read));
    assert_eq!(sheet.came_back_for(), Some(CameBackFor::Fitting));
}

#[test]
fn a_file_with_an_invoice_and_its_credit_note_is_still_read_and_written() {
    let sheet = fixture("job-1-money");
    let account = account(&sheet);
    let documents = account.documents.iter();
    let documents: Vec<_> = documents
        .map(|it| (it.number.as_str(), it.credits.as_deref(), it.gross()))
        .collect();
    let known = [("N0042", None, 22_200), ("N0043", Some("N0042"), -2_220)];
    assert_eq!(documents, known);
    // What was frozen is what the account asks for now, to the last cent of each rate.
    assert_eq!(account.next_document(None), Ok(None));
    assert_eq!((account.to_pay(), account.received()), (19_980, 19_980));
    assert!(account.is_settled());
}

#[test]
fn a_file_with_a_rotor_under_the_micrometer_is_still_read_and_written() {
    let sheet = fixture("job-1-thickness");
    let places = sheet.thickness(Corner::FrontLeft);
    let measured = places.map(|place| {
        let thickness = place.thickness.as_ref();
        thickness.map(|typed| typed.number.as_typed().to_owned())
    });
    let measured: Vec<_> = measured.collect();
    assert_eq!(measured, [Some("22.010".to_owned()), None]);
    let least = sheet.thickness_limit(Axle::Front, Bound::Least).unwrap();
    assert_eq!(least.value.number.as_typed(), "20.4");
    assert!(sheet.thickness_limit(Axle::Rear, Bound::Least).is_none());
    let seen = sheet.tip_radius(Place::RotorFace).unwrap();
    assert_eq!(seen.number.as_typed(), "127");
    let first = SetName {
        when: When::Before,
        nth: 1,
    };
    let crept = sheet.crept(Corner::FrontLeft, first).unwrap();
    assert_eq!(crept.as_typed(), "1.5");
    let setup = sheet.dial_setup(Corner::FrontLeft, first).unwrap();
    assert_eq!(setup.way.rig, Some(Rig::CaliperUp));
    let face = sheet.runout(Corner::FrontLeft).next().unwrap();
    let radius = face.radius.as_ref().unwrap();
    assert_eq!(radius.number.as_typed(), "70.5");
}

#[test]
fn a_file_with_slot_settings_and_confirmation_is_still_read_and_written() {
    let sheet = fixture("job-1-flow");
    let slot = flow::slot(&sheet).unwrap();
    let time = slot.time.map(|time| time.to_string());
    let van = slot.van.as_str();
    assert_eq!(
        (slot.day.to_string().as_str(), time.as_deref(), van),
        ("2026-02-17", Some("09:30"), "N")
    );
    let shop = flow::shop(&sheet).unwrap();
    assert_eq!(
        (shop.labour, shop.share, shop.keep_days),
        (Some(9_500), Some((25, 90)), Some(30))
    );
    assert_eq!(
        shop.retorque.as_ref().unwrap().after.number.as_typed(),
        "60"
    );
    assert_eq!(
        shop.template(Kind::BoltedDriven).unwrap()[0]
            .quantity
            .as_typed(),
        "1.5"
    );
    let held = flow::held(&sheet, "another");
    assert_eq!((held[0].through, held[0].count), (61, 22));
    assert_eq!(flow::held(&sheet, "van-2"), []);
}

#[test]
fn a_file_with_angles_and_their_gauge_is_still_read_and_written() {
    let sheet = fixture("job-1-angled");
    let more = &sheet.carried().unwrap().more;
    assert_eq!(more.angle_gauge, Some(true));
    assert_eq!(more.angle_due, NaiveDate::from_ymd_opt(2027, 2, 1));
    let recorded = sheet.counting().filter_map(|entry| match entry.what {
        Event::Angled(step, by) => Some((step.step, by)),
        _ => None,
    });
    let expected = [
        (Step::TurnAxleNut, AngleBy::Gauge),
        (Step::TurnHubBolts, AngleBy::Swings),
    ];
    assert_eq!(recorded.collect::<Vec<_>>(), expected);
}

#[test]
fn a_file_with_proofs_after_the_work_is_still_read_and_written() {
    let sheet = fixture("job-1-proved");
    let front = sheet.proved(Corner::FrontLeft).unwrap();
    let set = front.set.as_ref().unwrap();
    assert_eq!((front.rules, set.cycles), (2, 3));
    assert_eq!(set.play.mm(), 0.027093);
    let passed = After::Pass {
        proven: false,
        not_done: vec![],
    };
    assert_eq!(front.outcome, passed);
    let rear = sheet.proved(Corner::RearRight).unwrap();
    assert_eq!((rear.rules, &rear.set, rear.noise), (1, &None, Answer::Yes));
    let blocked = After::Blocked {
        against: vec![Against::Noisy],
    };
    assert_eq!(rear.outcome, blocked);
}

#[test]
fn a_file_with_what_runs_and_rotors_said_is_still_read_and_written() {
    let sheet = fixture("job-1-found");
    let face = sheet.face_found(Corner::FrontLeft, 2).unwrap();
    let reach = face.reach.unwrap();
    assert_eq!((reach.estimate.mm(), reach.low.mm()), (0.08, 0.07));
    let limit = face.against.as_ref().unwrap();
    assert_eq!(limit.spec.most.number.as_typed(), "0.05");
    assert_eq!(limit.judged.unwrap().result, Guarded::ProvenOut);
    let (basis, positions) = face.positions.as_ref().unwrap();
    let studs: Vec<u8> = positions.iter().map(|(stud, _)| *stud).collect();
    assert_eq!((*basis, studs), (Basis::HubAndRotor, vec![3, 0]));
    let open = sheet.face_found(Corner::RearRight, 1).unwrap();
    let rank = Undetermined::Rank { rank: 2, needed: 3 };
    assert_eq!((&open.shape, open.next), (&Err(rank), Next::ReadMore));
    let rotor = sheet.rotor_found(Corner::FrontLeft, 1).unwrap();
    assert_eq!((rotor.thinnest.mm(), rotor.place), (20.31, 3));
    assert!(rotor.least.as_ref().unwrap().is_over() && rotor.variation.is_none());
}
