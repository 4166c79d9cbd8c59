//! A file looked at again from its raw entries: every digest, reading, uncertainty and decision.
//!
//! Nothing that the file concludes is taken on trust, and nothing is refused here that can still
//! be read: what differs is said, entry by entry.

mod faces;
mod finding;
mod history;
mod numbers;
mod rotors;

use serde_json::{Value, json};

pub use finding::{Finding, Remark};
use history::History;
pub use history::MAX_AGAIN;

use crate::exchange::belongs::belongs;
use crate::exchange::canonical::canonical_digest;
use crate::exchange::envelope::{LogKind, StoredLog, digest};
use crate::exchange::import::{
    Came, EntryError, ImportError, MAX_JOINS, is_log_id, open, record, texts,
};
use crate::exchange::pieces::{InOneGo, Pieces, in_one_go};
use crate::exchange::rescue::Rescue;
use crate::job::entry::{Decided, Entry, EntryId, Event, FaceFound, LogId, Proved, RotorFound};
use crate::job::evidence::decided;
use crate::job::found::{face_today, rotor_today};
use crate::job::proof::proved;
use crate::job::reason::RULES_VERSION;
use crate::job::runout::runs;
use crate::job::thickness::measurements;
use crate::job::{JobState, Problem, fold, is_tangled};
use crate::map::OrderedMap;
use crate::text::Lang;
use crate::trade::runout::rules::RUNOUT_RULES_VERSION;

/// One log of a file, looked at again.
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// What it is; `None` for a kind that this version does not know.
    pub kind: Option<LogKind>,
    /// Its identity.
    pub id: LogId,
    /// How many entries it has.
    pub entries: usize,
    /// What differs.
    pub findings: Vec<Finding>,
    /// What could not be checked, or should be known.
    pub remarks: Vec<Remark>,
    /// How many sets of readings were computed again.
    pub sets: usize,
    /// How many decisions were made again.
    pub decisions: usize,
    /// The digest of the entries.
    pub digest: String,
    /// The digest of their canonical texts.
    pub canonical: Option<String>,
    /// Every number computed from the entries.
    pub numbers: Value,
}

/// Looks at a file again.
///
/// # Errors
/// [`ImportError`] for a text that is no file of this program, or no whole one.
pub fn verify(text: &str) -> Result<Vec<Checked>, ImportError> {
    let (envelope, rescue) = open(text)?;
    let mut logs: Vec<Checked> = envelope.logs.iter().map(log).collect::<Result<_, _>>()?;
    if let Some(rescue) = rescue {
        rescued(&mut logs, rescue);
    }
    Ok(logs)
}

/// Names what is missing from a rescue file and what cannot be read in it, each at its log; what
/// has no log is named at one without an id.
fn rescued(logs: &mut Vec<Checked>, rescue: Rescue) {
    let mut findings: OrderedMap<String, Vec<Finding>> = OrderedMap::new();
    if !rescue.problems.is_empty() {
        let missing = rescue.problems.into_iter().map(Finding::NotRescued);
        findings.insert(String::new(), missing.collect());
    }
    for aside in rescue.aside {
        let log = aside.log.clone().unwrap_or_default();
        findings.or_default(log).push(Finding::SetAside(aside));
    }
    for log in logs.iter_mut() {
        log.findings
            .extend(findings.remove(&log.id.0).unwrap_or_default());
    }
    for (id, findings) in findings {
        logs.push(Checked {
            findings,
            ..Checked::new(None, id, 0)
        });
    }
}

impl Checked {
    fn new(kind: Option<LogKind>, id: String, entries: usize) -> Self {
        Self {
            kind,
            id: LogId(id),
            entries,
            findings: Vec::new(),
            remarks: Vec::new(),
            sets: 0,
            decisions: 0,
            digest: String::new(),
            canonical: None,
            numbers: Value::Null,
        }
    }

    /// All of it as a value that a script can read; `lang` is that of the sentences.
    pub fn to_value(&self, lang: Lang) -> Value {
        let finding = |f: &Finding| json!({ "code": f.code(), "say": f.say(lang) });
        let remark = |r: &Remark| json!({ "code": r.code(), "say": r.say(lang) });
        json!({
            "kind": self.kind.map(LogKind::code),
            "id": self.id.0,
            "entries": self.entries,
            "differs": self.findings.iter().map(finding).collect::<Vec<_>>(),
            "remarks": self.remarks.iter().map(remark).collect::<Vec<_>>(),
            "digest": self.digest,
            "canonical": self.canonical,
            "computed": self.numbers,
        })
    }
}

fn log(stored: &StoredLog) -> Result<Checked, ImportError> {
    let kind = LogKind::from_code(&stored.kind);
    let mut checked = Checked::new(kind, stored.id.clone(), stored.entries.len());
    let texts = digests(&mut checked, stored);
    let reported = entries(&mut checked, &texts);
    match checked.kind {
        Some(kind) if !is_log_id(kind, &stored.id) => {
            checked.findings.push(Finding::Kind(stored.kind.clone()));
        }
        Some(LogKind::Job) if is_tangled(reported.iter().map(|(entry, _)| entry), MAX_JOINS) => {
            return Err(ImportError::Tangled { log: checked.id });
        }
        Some(LogKind::Job) => job(&mut checked, &reported),
        Some(_) => {}
        None => checked.findings.push(Finding::Kind(stored.kind.clone())),
    }
    Ok(checked)
}

fn digests(checked: &mut Checked, stored: &StoredLog) -> Vec<String> {
    // Nobody calls this off.
    let read = in_one_go(texts(stored, &mut Pieces::of(0, &InOneGo)));
    let (texts, came) = read.unwrap_or((Vec::new(), Came::Edited));
    if came == Came::Reformatted {
        checked.remarks.push(Remark::Reformatted);
    }
    checked.digest = digest(&texts);
    checked.canonical = canonical_digest(texts.iter().map(String::as_str));
    if came == Came::Edited && checked.digest != stored.digest {
        checked.findings.push(Finding::Digest {
            stated: stored.digest.clone(),
            computed: checked.digest.clone(),
        });
    }
    match (&stored.canonical, &checked.canonical) {
        (Some(stated), Some(computed)) if stated != computed => {
            checked.findings.push(Finding::Canonical {
                stated: stated.clone(),
                computed: computed.clone(),
            });
        }
        _ => {}
    }
    texts
}

/// An entry with its text.
type Recorded = (Entry, String);

fn entries(checked: &mut Checked, texts: &[String]) -> Vec<Recorded> {
    let mut reported = Vec::new();
    for (place, text) in (1..).zip(texts) {
        match record(&checked.id.0, text) {
            Err(fault) => checked.findings.push(Finding::Entry { place, fault }),
            Ok((_, Err(error))) => checked.findings.push(Finding::Unreadable { place, error }),
            Ok((_, Ok(entry))) if checked.kind.is_some_and(|kind| !belongs(kind, &entry.what)) => {
                let fault = EntryError::OtherKind;
                checked.findings.push(Finding::Entry { place, fault });
            }
            Ok((_, Ok(entry))) => reported.push((entry, text.clone())),
        }
    }
    reported
}

fn job(checked: &mut Checked, reported: &[Recorded]) {
    let sheet = fold(reported.iter().map(|(entry, _)| entry.clone()));
    let is_missing = |problem: &&Problem| matches!(problem, Problem::Missing(_));
    let missing = sheet.problems().iter().filter(is_missing).count();
    if missing > 0 && checked.findings.is_empty() {
        // It was exported so; what rests on the rest is judged once the parts are joined.
        checked.remarks.push(Remark::Part(missing));
        return;
    }
    for problem in sheet.problems() {
        match problem {
            Problem::Unknown(id) => checked.remarks.push(Remark::Unknown(id.clone())),
            Problem::Disagree(_) => checked.remarks.push(Remark::Disagree),
            problem => checked.findings.push(Finding::Record(problem.clone())),
        }
    }
    let mut history = History::of(reported);
    let (mut again, mut proofs, mut found) = (Vec::new(), Vec::new(), Vec::new());
    for (place, (entry, _)) in reported.iter().enumerate() {
        match &entry.what {
            Event::Decided(recorded) => {
                again.extend(decision(checked, &mut history, (place, entry), recorded));
            }
            Event::Proved(recorded) => {
                proofs.extend(proof(checked, &mut history, (place, entry), recorded));
            }
            Event::FaceFound(recorded) => {
                found.extend(face(checked, &mut history, (place, entry), recorded));
            }
            Event::RotorFound(recorded) => {
                found.extend(rotor(checked, &mut history, (place, entry), recorded));
            }
            Event::HandedOver(recorded) => {
                handed_over(checked, &mut history, (place, entry), &recorded.digest);
            }
            _ => {}
        }
    }
    let read = numbers::Read::of(&sheet);
    checked.sets = read.sets.len() + read.faces.len() + read.rotors.len();
    checked.decisions = again.len();
    checked.numbers = numbers::job(&sheet, read, &again, &proofs, found);
}

/// A decision with what the rules say of the entries that it had seen.
struct Again {
    entry: EntryId,
    computed: Decided,
    /// The sets of readings that it had seen.
    sets: Vec<Value>,
}

fn decision(
    checked: &mut Checked,
    history: &mut History,
    (place, entry): (usize, &Entry),
    recorded: &Decided,
) -> Option<Again> {
    let id = entry.id.clone();
    let today = (recorded.rules, RULES_VERSION);
    let sheet = judged_on(checked, history, (place, entry), today)?;
    let computed = decided(&sheet, recorded.corner, recorded.nth);
    if computed != *recorded {
        checked.findings.push(Finding::Decision {
            entry: id.clone(),
            recorded: recorded.clone(),
            computed: computed.clone(),
        });
    }
    Some(Again {
        entry: id,
        computed,
        sets: numbers::sets(&sheet),
    })
}

/// What was seen by an entry that today's rules judged; what others judged is not judged again.
fn judged_on(
    checked: &mut Checked,
    history: &mut History,
    (place, entry): (usize, &Entry),
    (rules, today): (u32, u32),
) -> Option<JobState> {
    let id = entry.id.clone();
    let before = history.before(checked, place)?;
    if rules != today {
        checked
            .remarks
            .push(Remark::OtherRules { entry: id, rules });
        return None;
    }
    Some(fold(before.into_iter().map(|(entry, _)| entry.clone())))
}

/// The proof that the rules give for what the entry had seen.
fn proof(
    checked: &mut Checked,
    history: &mut History,
    (place, entry): (usize, &Entry),
    recorded: &Proved,
) -> Option<(EntryId, Proved)> {
    let today = (recorded.rules, RULES_VERSION);
    let sheet = judged_on(checked, history, (place, entry), today)?;
    let computed = proved(&sheet, recorded.corner);
    if computed != *recorded {
        checked.findings.push(Finding::Proof {
            entry: entry.id.clone(),
            recorded: recorded.clone(),
            computed: computed.clone(),
        });
    }
    Some((entry.id.clone(), computed))
}

/// The numbers of a run as the entry that records what it said had seen them.
fn face(
    checked: &mut Checked,
    history: &mut History,
    (place, entry): (usize, &Entry),
    recorded: &FaceFound,
) -> Option<Value> {
    let today = (recorded.rules, RUNOUT_RULES_VERSION);
    let sheet = judged_on(checked, history, (place, entry), today)?;
    let runs = runs(&sheet, recorded.corner);
    let run = runs.iter().find(|run| run.nth == recorded.run);
    let computed = run.and_then(|run| face_today(&sheet, recorded.corner, run).ok());
    if computed.as_ref() != Some(recorded) {
        checked.findings.push(Finding::Face {
            entry: entry.id.clone(),
            recorded: Box::new(recorded.clone()),
            computed: computed.map(Box::new),
        });
    }
    let numbers = run.map(|run| faces::one(&sheet, recorded.corner, &runs, run));
    Some(json!({ "entry": entry.id.0, "found": numbers }))
}

/// The same of a rotor under a micrometer.
fn rotor(
    checked: &mut Checked,
    history: &mut History,
    (place, entry): (usize, &Entry),
    recorded: &RotorFound,
) -> Option<Value> {
    let today = (recorded.rules, RUNOUT_RULES_VERSION);
    let sheet = judged_on(checked, history, (place, entry), today)?;
    let all = measurements(&sheet, recorded.corner);
    let of = all.iter().find(|of| of.nth == recorded.run);
    let computed = of.and_then(|of| rotor_today(&sheet, recorded.corner, of).ok());
    if computed.as_ref() != Some(recorded) {
        checked.findings.push(Finding::Rotor {
            entry: entry.id.clone(),
            recorded: Box::new(recorded.clone()),
            computed: computed.map(Box::new),
        });
    }
    let numbers = of.map(|of| rotors::of(&sheet, recorded.corner, of));
    Some(json!({ "entry": entry.id.0, "found": numbers }))
}

fn handed_over(
    checked: &mut Checked,
    history: &mut History,
    (place, entry): (usize, &Entry),
    recorded: &str,
) {
    let Some(before) = history.before(checked, place) else {
        return;
    };
    let computed = digest(before.into_iter().map(|(_, text)| text));
    if computed != recorded {
        checked.findings.push(Finding::HandedOver {
            entry: entry.id.clone(),
            recorded: recorded.to_owned(),
            computed,
        });
    }
}
