//! A log holds what its name says, and a file says one thing under one entry.

use super::*;
use hubslate::exchange::verify::{Finding, verify};
use hubslate::job::entry::{Carried, Confirmation, Stock};
use hubslate::job::kit::first_kit;
use hubslate::units::System;

/// The id of each kind's log.
const IDS: [(LogKind, &str); 5] = [
    (LogKind::Job, LOG),
    (LogKind::SpecLibrary, "book:marlin-estate"),
    (LogKind::VanKit, "kit:van"),
    (LogKind::Shop, "shop:rules"),
    (LogKind::Confirmation, "confirmations:shop"),
];

fn of(kind: LogKind, id: &str, texts: Vec<String>) -> Result<(), ImportError> {
    let log = (kind, LogId(id.to_owned()), texts);
    read(&export(&[log]).unwrap()).map(|_| ())
}

#[test]
fn a_log_whose_kind_does_not_fit_its_id_is_refused() {
    for (kind, _) in IDS {
        for (other, id) in IDS {
            let refused = Err(ImportError::BadLog { id: id.to_owned() });
            let expected = if kind == other { Ok(()) } else { refused };
            assert_eq!(of(kind, id, vec![]), expected, "{kind:?} {id}");
        }
    }
    // A spec library under a job's id would change that job, and nothing would name it.
    let tight = r#"{"mended":{"item":{"corner":"front_left","group":"hub","number":1}}}"#;
    let text = raw(1, ID, tight);
    let refused = of(LogKind::SpecLibrary, LOG, vec![text]).unwrap_err();
    assert_eq!(refused, ImportError::BadLog { id: LOG.to_owned() });
    assert_eq!(refused.say(), hubslate::text::Say::ImportOtherKind);
}

#[test]
fn a_log_with_an_entry_of_another_kind_is_refused() {
    let carried: Carried = first_kit(System::Us);
    let stock = Stock {
        number: "MX-4410 H".to_owned(),
        have: 1,
        least: 1,
        cores: 0,
    };
    let family = Event::Vehicle(VehicleField::Family, "Marlin estate".to_owned());
    // What each kind of log beside jobs holds, by itself.
    let own = [
        (LogKind::SpecLibrary, family),
        (LogKind::VanKit, Event::Carried(carried)),
        (LogKind::VanKit, Event::Stock(stock)),
        (LogKind::Shop, Event::Shop(Box::default())),
        (
            LogKind::Confirmation,
            Event::Confirmation(Confirmation { held: vec![] }),
        ),
        (LogKind::Job, Event::Said("it hums".to_owned())),
    ];
    for (home, what) in own {
        for (kind, id) in IDS {
            let text = encode(&entry(id, ID, &[], what.clone())).unwrap();
            let refused = Err(ImportError::BadEntry {
                log: LogId(id.to_owned()),
                place: 1,
                fault: EntryError::OtherKind,
            });
            // A job takes a family and a kit of its own; what is not a job's says nothing of one.
            let fits = kind == home || kind == LogKind::Job;
            let expected = if fits { Ok(()) } else { refused };
            assert_eq!(of(kind, id, vec![text]), expected, "{kind:?} {what:?}");
        }
    }
}

#[test]
fn a_known_kind_in_another_version_is_unknown_and_the_job_is_read_only() {
    let body = r#"{"said":{"text":"it hums"}}"#;
    for v in [0, 2, 7] {
        let text = raw(v, ID, body);
        let entry = decode(&text).unwrap();
        assert_eq!(entry.what, Event::Unknown(body.to_owned()), "{v}");
        assert!(fold([entry]).read_only());
        assert_eq!(records(&file(vec![text.clone()])), [saved(&text)]);
    }
}

#[test]
fn one_log_twice_is_one_log_unless_an_entry_differs() {
    let one = |text: &str| {
        let text = raw(1, ID, &format!(r#"{{"said":{{"text":"{text}"}}}}"#));
        (LogKind::Job, LogId(LOG.to_owned()), vec![text])
    };
    let two = |a: &str, b: &str| read(&export(&[one(a), one(b)]).unwrap()).map(|_| ());
    let log = LogId(LOG.to_owned());
    assert_eq!(two("a", "a"), Ok(()));
    let refused = two("a", "b").unwrap_err();
    assert_eq!(refused, ImportError::Conflict { log });
    assert_eq!(refused.say(), hubslate::text::Say::ImportConflict);
}

#[test]
fn verify_names_what_import_refuses() {
    let said = raw(1, ID, r#"{"said":{"text":"it hums"}}"#);
    let findings = |kind, id: &str| {
        let text = said.replace(LOG, id);
        let file = export(&[(kind, LogId(id.to_owned()), vec![text])]).unwrap();
        verify(&file).unwrap().remove(0).findings
    };
    assert_eq!(findings(LogKind::Job, LOG), []);
    let kind = Finding::Kind("spec_library".to_owned());
    assert!(findings(LogKind::SpecLibrary, LOG).contains(&kind));
    let fault = EntryError::OtherKind;
    let entry = [Finding::Entry { place: 1, fault }];
    assert_eq!(findings(LogKind::SpecLibrary, "book:marlin-estate"), entry);
}
