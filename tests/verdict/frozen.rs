//! A decision and the proof after the work are told as they were recorded: a job that was judged by
//! other rules says the same for ever.

use std::path::Path;

use hubslate::exchange::verify::verify;
use hubslate::exchange::wire::{decode, encode};
use hubslate::exchange::{LogKind, export, read};
use hubslate::job::ending::proposed;
use hubslate::job::entry::{Decided, Ending, Entry, Event, Proved, Reading, Side};
use hubslate::job::evidence::decided;
use hubslate::job::proof::after;
use hubslate::job::{JobState, fold, next, plan, proof};
use hubslate::report::{Reader, Report};
use hubslate::slate::{Pen, compose};
use hubslate::text::Lang;
use hubslate::trade::answer::Answer;
use hubslate::trade::play::{After, Against, Conformity, Figures, Limit};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{When, procedure};
use hubslate::units::{Decimal, DecimalMark, Format, System};

use super::mm;

const HERE: Corner = Corner::FrontLeft;

const METRIC: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};

/// The finished job of the replaced hub.
pub(super) fn finished() -> Vec<Entry> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample/replaced-hub.json");
    let text = std::fs::read_to_string(path).unwrap();
    let log = read(&text).unwrap().logs.remove(0);
    let texts = log.records.into_iter();
    texts.map(|saved| decode(&saved.text).unwrap()).collect()
}

/// The same job, its decision recorded otherwise.
fn recorded(change: impl FnOnce(&mut Decided)) -> Vec<Entry> {
    let mut entries = finished();
    let entry = entries
        .iter_mut()
        .find_map(|entry| match &mut entry.what {
            Event::Decided(decided) => Some(decided),
            _ => None,
        })
        .unwrap();
    change(entry);
    entries
}

/// Other figures, with a result that has them too.
fn changed(set: &mut Figures, change: impl FnOnce(&mut Figures)) {
    change(set);
    let limit = set.limit;
    let (u, g, dof) = (set.budget.u_c, set.budget.g, set.budget.dof_eff);
    let (play, cycles) = (set.play, set.cycles);
    set.conformity = set.conformity.with(|of| {
        let limit = Limit { ..limit };
        hubslate::trade::play::Comparison {
            play,
            limit,
            u,
            dof,
            g,
            cycles,
            ..of
        }
    });
}

/// The same job, decided by rules of another version with other figures for its set.
fn by_other_rules(change: impl FnOnce(&mut Figures)) -> Vec<Entry> {
    recorded(|decided| {
        decided.rules = 1;
        let set = &mut decided.inputs.sets[0].1;
        changed(set, change);
        decided.inputs.evidence.sets = vec![set.conformity];
    })
}

/// The same job, its proof after the work recorded otherwise.
fn proved(change: impl FnOnce(&mut Proved)) -> Vec<Entry> {
    let mut entries = finished();
    let mut recorded = entries
        .iter_mut()
        .filter_map(|entry| match &mut entry.what {
            Event::Proved(proved) => Some(proved),
            _ => None,
        });
    change(recorded.next().unwrap());
    assert!(recorded.next().is_none());
    entries
}

/// The same job, proved by rules of another version with other figures for its set.
fn proved_by_other_rules(change: impl FnOnce(&mut Figures)) -> Vec<Entry> {
    proved(|proved| {
        proved.rules = 1;
        changed(proved.set.as_mut().unwrap(), change);
    })
}

/// The readings after the work at 10 thou, five times their limit.
fn read_far_over(entries: &mut [Entry]) {
    for entry in entries {
        if !is_pulled_after(&entry.what) {
            continue;
        }
        if let Event::Reading(reading) = &mut entry.what {
            reading.divisions = Decimal::parse("10").unwrap();
        }
    }
}

fn is_pulled_after(what: &Event) -> bool {
    let is = |of: &Reading| of.set.when == When::After && of.side == Side::Pull;
    matches!(what, Event::Reading(reading) if is(reading))
}

pub(super) fn file(entries: &[Entry]) -> String {
    let texts = entries.iter().map(|entry| encode(entry).unwrap()).collect();
    export(&[(LogKind::Job, entries[0].log.clone(), texts)]).unwrap()
}

pub(super) fn report(sheet: &JobState) -> String {
    let reader = Reader {
        job: "job".to_owned(),
        digest: "d".repeat(64),
        made_by: String::new(),
        contact: String::new(),
        warranty: String::new(),
        codes: None,
    };
    let report = Report::of(sheet, Lang::English, METRIC, &reader);
    let blocks = report.page_one.iter().chain(&report.technician);
    let texts: Vec<&str> = blocks.flat_map(|block| block.texts()).collect();
    texts.join("\n")
}

/// A recorded figure is what the report says, and today's stands nowhere in its place.
#[track_caller]
fn says(change: impl FnOnce(&mut Figures), wanted: &[&str], today: &[&str]) {
    tells(by_other_rules(change), wanted, today);
}

/// The same of a figure of the proof.
#[track_caller]
fn proof_says(change: impl FnOnce(&mut Figures), wanted: &[&str], today: &[&str]) {
    tells(proved_by_other_rules(change), wanted, today);
}

#[track_caller]
fn tells(entries: Vec<Entry>, wanted: &[&str], today: &[&str]) {
    let before = report(&fold(finished()));
    let after = report(&fold(entries));
    for word in wanted {
        assert!(count(&after, word) > 0, "{word:?} is not in:\n{after}");
        assert_eq!(count(&before, word), 0, "{word:?} was there before");
    }
    for word in today {
        let (was, is) = (count(&before, word), count(&after, word));
        assert!(is < was, "{word:?} still stands {is} times of {was}");
    }
}

/// How often it stands there as a word of its own: a digest may hold the same figures.
fn count(text: &str, word: &str) -> usize {
    let ends = |end: Option<char>| end.is_none_or(|end| !end.is_alphanumeric());
    text.match_indices(word)
        .filter(|(at, _)| {
            let (before, from) = text.split_at(*at);
            ends(before.chars().next_back()) && ends(from[word.len()..].chars().next())
        })
        .count()
}

#[test]
fn each_figure_of_a_recorded_decision_is_reported_from_its_entry() {
    says(
        |set| set.play = mm(0.177),
        &["0.1770\u{a0}mm"],
        &["0.1609\u{a0}mm"],
    );
    says(
        |set| set.budget.u_c = mm(0.0123),
        &["0.0123\u{a0}mm"],
        &["0.0186\u{a0}mm"],
    );
    says(|set| set.budget.dof_eff = Some(789.0), &["789"], &["3415"]);
    // 3 · 18.557 µm.
    says(|set| set.budget.g = 3.0, &["0.0557\u{a0}mm"], &[]);
    says(
        |set| set.budget.expanded95 = mm(0.0777),
        &["± 0.0777\u{a0}mm"],
        &["± 0.0364\u{a0}mm"],
    );
    says(
        |set| set.budget.components[0].u = mm(0.0111),
        &["0.0111\u{a0}mm"],
        &[],
    );
    says(
        |set| set.limit.value = mm(0.042),
        &["The limit is 0.042\u{a0}mm"],
        &[],
    );
    says(
        |set| {
            set.conformity = set.conformity.with(|of| hubslate::trade::play::Comparison {
                conformance: 0.123,
                ..of
            })
        },
        &["12.3\u{a0}%"],
        &[],
    );
}

#[test]
fn each_figure_of_a_recorded_proof_is_reported_from_its_entry() {
    proof_says(
        |set| set.play = mm(0.033),
        &["0.0330\u{a0}mm"],
        &["0.0271\u{a0}mm"],
    );
    proof_says(
        |set| set.budget.u_c = mm(0.0123),
        &["0.0123\u{a0}mm"],
        &["0.0186\u{a0}mm"],
    );
    proof_says(|set| set.budget.dof_eff = Some(789.0), &["789"], &["3415"]);
    // 3 · 18.557 µm.
    proof_says(|set| set.budget.g = 3.0, &["0.0557\u{a0}mm"], &[]);
    proof_says(
        |set| set.budget.expanded95 = mm(0.0777),
        &["± 0.0777\u{a0}mm"],
        &["± 0.0364\u{a0}mm"],
    );
    proof_says(
        |set| set.budget.components[0].u = mm(0.0111),
        &["0.0111\u{a0}mm"],
        &[],
    );
    proof_says(|set| set.limit.value = mm(0.042), &["0.042\u{a0}mm"], &[]);
    proof_says(
        |set| {
            set.conformity = set.conformity.with(|of| hubslate::trade::play::Comparison {
                conformance: 0.123,
                ..of
            })
        },
        &["12.3\u{a0}%"],
        &[],
    );
    // By which rules it was judged, where not by those of the decision.
    proof_says(|_| {}, &["Rules, version\n1"], &[]);
}

/// Today's rules would block the part, and passed it when the job was finished; and the other way
/// round.
#[test]
fn a_proof_of_other_rules_stays_as_it_was_on_every_page_and_for_the_ending() {
    let ending = |entries: &[Entry]| {
        let sheet = fold(entries.iter().cloned());
        (proposed(&sheet, &plan(&sheet)), report(&sheet))
    };
    let mut over = proved(|proved| proved.rules = 1);
    read_far_over(&mut over);
    let today = fold(over.clone());
    assert!(matches!(
        proof::proved(&today, HERE).outcome,
        After::Blocked { .. }
    ));
    let (end, reported) = ending(&over);
    assert_eq!(end, Ending::Finished);
    assert!(reported.contains("REPLACED, safe to drive") && !reported.contains("DO NOT DRIVE"));
    // Without the record, today's rules speak.
    for entry in &mut over {
        if let Event::Proved(_) = entry.what {
            entry.what = Event::Note(None, String::new());
        }
    }
    let (end, reported) = ending(&over);
    assert_eq!(end, Ending::LeftUnfinished);
    assert!(reported.contains("DO NOT DRIVE"));
    let blocked = proved(|proved| {
        proved.rules = 1;
        proved.outcome = After::Blocked {
            against: vec![Against::Over],
        };
    });
    let (end, reported) = ending(&blocked);
    assert_eq!(end, Ending::LeftUnfinished);
    assert!(reported.contains("DO NOT DRIVE"));
    assert!(reported.contains("The new part does not pass."));
}

#[test]
fn a_round_that_is_read_again_makes_the_proof_live_until_it_is_recorded_again() {
    let mut entries = proved_by_other_rules(|set| set.play = mm(0.033));
    let mut far = finished();
    read_far_over(&mut far);
    let mut pulled = far.into_iter().filter(|entry| is_pulled_after(&entry.what));
    let again = pulled.next().unwrap().what;
    reported(&mut entries, vec![again]);
    let sheet = fold(entries.clone());
    assert!(!report(&sheet).contains("0.0330\u{a0}mm"));
    assert!(matches!(after(&sheet, HERE), After::Blocked { .. }));
    let owed = proof::owed(&sheet);
    assert_eq!(owed, [proof::proved(&sheet, HERE)]);
    reported(&mut entries, owed.into_iter().map(Event::Proved).collect());
    let sheet = fold(entries.clone());
    assert_eq!(sheet.problems(), []);
    assert_eq!(proof::recorded(&sheet, HERE), sheet.proved(HERE));
    assert_eq!(proof::owed(&sheet), []);
    let checked = verify(&file(&entries)).unwrap().remove(0);
    let codes = checked.findings.iter().map(|finding| finding.code());
    assert!(!codes.collect::<Vec<_>>().contains(&"proof"));
}

/// Written a minute after the last entry.
pub(super) fn reported(entries: &mut Vec<Entry>, whats: Vec<Event>) {
    let last = entries.last().unwrap().clone();
    let pen = Pen {
        by: last.by,
        device: last.device,
        n: last.n + 1,
        utc_ms: last.at.utc_ms + 60_000,
        offset_min: last.at.offset_min,
        recorded: None,
        chance: [0; 10],
    };
    let heads = fold(entries.clone()).heads().to_vec();
    entries.extend(compose(&last.log, &heads, &pen, whats));
}

#[test]
fn a_proof_of_todays_rules_that_differs_in_its_inputs_is_found() {
    let changes: [fn(&mut Proved); 5] = [
        |proved| proved.set.as_mut().unwrap().budget.g = 2.0,
        |proved| proved.set.as_mut().unwrap().limit.value = mm(0.06),
        |proved| proved.set = None,
        |proved| proved.noise = Answer::NotDone,
        |proved| proved.outcome = After::NotJudged { not_done: vec![] },
    ];
    let codes = |entries: &[Entry]| {
        let checked = verify(&file(entries)).unwrap().remove(0);
        let findings = checked.findings.iter().map(|finding| finding.code());
        let remarks = checked.remarks.iter().map(|remark| remark.code());
        (findings.collect::<Vec<_>>(), remarks.collect::<Vec<_>>())
    };
    for change in changes {
        assert!(codes(&proved(change)).0.contains(&"proof"));
        let by_other = proved(|proved| {
            change(proved);
            proved.rules = 1;
        });
        let (findings, remarks) = codes(&by_other);
        assert!(!findings.contains(&"proof"), "{findings:?}");
        assert!(remarks.contains(&"other_rules"), "{remarks:?}");
    }
    assert_eq!(codes(&finished()).0, Vec::<&str>::new());
}

/// The decision itself, its reasons, what it rests on and what was not done.
#[test]
fn the_verdict_and_its_evidence_are_reported_from_the_entry() {
    let sheet = fold(recorded(|decided| {
        decided.rules = 1;
        decided.reasons = vec!["under_proven".to_owned(), "not_looked_at.ear".to_owned()];
        let set = &mut decided.inputs.sets[0].1;
        set.conformity = Conformity::ProvenIn(*set.conformity.comparison().unwrap());
        decided.inputs.evidence.sets = vec![set.conformity];
        decided.inputs.evidence.not_done = vec![hubslate::trade::play::Test::Ear];
        decided.inputs.rests_on = vec![hubslate::trade::play::Ground::Dial];
    }));
    // Today's rules say something else of the same entries.
    assert_ne!(decided(&sheet, HERE, 1).reasons, ["under_proven"]);
    let reported = report(&sheet);
    let at = reported.find("Reasons as recorded").unwrap();
    let reasons = &reported[at..reported[at..].find("Readings").unwrap() + at];
    for word in [
        "is within the ",
        "Not done: noise by ear.",
        "Dial\n",
        "noise by ear",
    ] {
        assert!(reasons.contains(word), "{word:?} is not in:\n{reasons}");
    }
    for word in ["runs rough", "Ear", "exceeds the"] {
        assert!(!reasons.contains(word), "{word:?} is in:\n{reasons}");
    }
    assert!(reported.contains("It was not listened to while turned by hand."));
}

/// Course, next step, ending and digest of a finished job do not ask today's rules.
#[test]
fn a_finished_job_stays_finished_and_its_file_holds() {
    let today = fold(finished());
    let entries = by_other_rules(|set| set.budget.u_c = mm(0.5));
    let sheet = fold(entries.clone());
    assert_eq!(plan(&sheet), plan(&today));
    assert_eq!(procedure(&plan(&sheet)), procedure(&plan(&today)));
    let steps = procedure(&plan(&sheet));
    assert_eq!(next(&sheet, &steps), next(&today, &steps));
    assert_eq!(sheet.ended(), today.ended());
    // Its texts read back as they were written, and so its digest.
    let texts: Vec<String> = entries.iter().map(|entry| encode(entry).unwrap()).collect();
    let again: Vec<String> = texts
        .iter()
        .map(|text| encode(&decode(text).unwrap()).unwrap())
        .collect();
    assert_eq!(texts, again);
    // Looked at again, it is said to be by other rules and never called wrong.
    let file = file(&entries);
    let checked = verify(&file).unwrap().remove(0);
    let remarks: Vec<&str> = checked.remarks.iter().map(|remark| remark.code()).collect();
    assert!(remarks.contains(&"other_rules"), "{remarks:?}");
    let codes: Vec<&str> = checked
        .findings
        .iter()
        .map(|finding| finding.code())
        .collect();
    let judged = ["decision", "inputs"];
    assert!(judged.iter().all(|code| !codes.contains(code)), "{codes:?}");
}

/// With today's version in the entry, whatever differs in what it rested on is found.
#[test]
fn a_decision_of_todays_rules_that_differs_in_its_inputs_is_found() {
    let changes: [fn(&mut Decided); 4] = [
        |decided| decided.inputs.sets[0].1.budget.g = 2.0,
        |decided| decided.inputs.sets[0].1.limit.value = mm(0.06),
        |decided| decided.inputs.evidence.road = hubslate::trade::play::Road::Quiet,
        |decided| decided.inputs.rests_on.clear(),
    ];
    for change in changes {
        let entries = recorded(change);
        let checked = verify(&file(&entries)).unwrap().remove(0);
        let found = checked.findings.iter().map(|finding| finding.code());
        assert!(found.collect::<Vec<_>>().contains(&"inputs"));
    }
    let as_it_is = verify(&file(&finished())).unwrap().remove(0);
    assert_eq!(as_it_is.findings, []);
}

/// Nothing is known without uncertainty: a file that says so is refused.
#[test]
fn an_uncertainty_of_nothing_is_refused() {
    let entries = recorded(|decided| decided.inputs.sets[0].1.budget.u_c = mm(0.0));
    let broken = entries
        .iter()
        .filter(|entry| decode(&encode(entry).unwrap()).is_err());
    assert_eq!(broken.count(), 1);
}
