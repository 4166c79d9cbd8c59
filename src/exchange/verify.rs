//! A file looked at again from its raw entries: every digest, reading, uncertainty and decision.
//!
//! Nothing that the file concludes is taken on trust, and nothing is refused here that can still
//! be read: what differs is said, entry by entry.

mod faces;
mod finding;
mod numbers;
mod rotors;

use std::collections::BTreeMap;

use serde_json::{Value, json};

pub use finding::{Finding, Remark};

use crate::exchange::canonical::canonical_digest;
use crate::exchange::envelope::{LogKind, StoredLog, digest};
use crate::exchange::import::{Came, ImportError, MAX_JOINS, envelope, record, texts};
use crate::job::entry::{Decided, Entry, EntryId, LogId, Proved, What};
use crate::job::evidence::decided;
use crate::job::proof::proved;
use crate::job::reason::RULES_VERSION;
use crate::job::{Problem, Sheet, fold, is_tangled};
use crate::text::Lang;

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
    envelope(text)?.logs.iter().map(log).collect()
}

impl Checked {
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
    let mut checked = Checked {
        kind: LogKind::from_code(&stored.kind),
        id: LogId(stored.id.clone()),
        entries: stored.entries.len(),
        findings: Vec::new(),
        remarks: Vec::new(),
        sets: 0,
        decisions: 0,
        digest: String::new(),
        canonical: None,
        numbers: Value::Null,
    };
    let texts = digests(&mut checked, stored);
    let told = entries(&mut checked, &texts);
    match checked.kind {
        Some(LogKind::Job) if is_tangled(told.iter().map(|(entry, _)| entry), MAX_JOINS) => {
            return Err(ImportError::Tangled { log: checked.id });
        }
        Some(LogKind::Job) => job(&mut checked, &told),
        Some(_) => {}
        None => checked.findings.push(Finding::Kind(stored.kind.clone())),
    }
    Ok(checked)
}

fn digests(checked: &mut Checked, stored: &StoredLog) -> Vec<String> {
    let (texts, came) = texts(stored);
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
type Told = (Entry, String);

fn entries(checked: &mut Checked, texts: &[String]) -> Vec<Told> {
    let mut told = Vec::new();
    for (place, text) in (1..).zip(texts) {
        match record(&checked.id.0, text) {
            Err(fault) => checked.findings.push(Finding::Entry { place, fault }),
            Ok((_, Err(error))) => checked.findings.push(Finding::Unreadable { place, error }),
            Ok((_, Ok(entry))) => told.push((entry, text.clone())),
        }
    }
    told
}

fn job(checked: &mut Checked, told: &[Told]) {
    let sheet = fold(told.iter().map(|(entry, _)| entry.clone()));
    for problem in sheet.problems() {
        match problem {
            Problem::Unknown(id) => checked.remarks.push(Remark::Unknown(id.clone())),
            Problem::Disagree(_) => checked.remarks.push(Remark::Disagree),
            problem => checked.findings.push(Finding::Record(problem.clone())),
        }
    }
    let mut history = History::of(told);
    let (mut again, mut proofs) = (Vec::new(), Vec::new());
    for (place, (entry, _)) in told.iter().enumerate() {
        match &entry.what {
            What::Decided(recorded) => {
                again.extend(decision(checked, &mut history, (place, entry), recorded));
            }
            What::Proved(recorded) => {
                proofs.extend(proof(checked, &mut history, (place, entry), recorded));
            }
            What::HandedOver(recorded) => {
                handed_over(checked, &mut history, (place, entry), &recorded.digest);
            }
            _ => {}
        }
    }
    let read = numbers::Read::of(&sheet);
    checked.sets = read.sets.len() + read.faces.len() + read.rotors.len();
    checked.decisions = again.len();
    checked.numbers = numbers::job(&sheet, read, &again, &proofs);
}

/// Over how many entries decisions, proofs and reports are looked at again in one log, counting
/// for each of them all that it had seen. A long job has a few ten thousand. The sentence names the
/// limit too.
pub const MAX_AGAIN: usize = 500_000;

/// What an entry rested on: the entries that it had seen.
struct History<'a> {
    told: &'a [Told],
    /// The places of what each entry names; nothing for one that is not here.
    after: Vec<Vec<Option<usize>>>,
    /// For which entry each one was looked at last.
    looked_for: Vec<Option<usize>>,
    /// How many entries may still be looked at; nothing once there were more.
    left: Option<usize>,
}

impl<'a> History<'a> {
    fn of(told: &'a [Told]) -> Self {
        let places = (0..).zip(told).map(|(place, one)| (&one.0.id, place));
        let places: BTreeMap<&EntryId, usize> = places.collect();
        let after = |one: &Told| {
            let after = one.0.after.iter();
            let mut after: Vec<_> = after.map(|id| places.get(id).copied()).collect();
            after.sort_unstable();
            after.dedup();
            after
        };
        Self {
            told,
            after: told.iter().map(after).collect(),
            looked_for: vec![None; told.len()],
            left: Some(MAX_AGAIN),
        }
    }

    /// Everything that the entry at `of` had seen; nothing, and that is said, if some of it is not
    /// here or the limit is reached.
    fn before(&mut self, checked: &mut Checked, of: usize) -> Option<Vec<&'a Told>> {
        let mut before = Vec::new();
        let mut open = self.after.get(of)?.clone();
        while let Some(named) = open.pop() {
            let Some(place) = named else {
                let id = self.told.get(of)?.0.id.clone();
                checked.remarks.push(Remark::NotChecked(id));
                return None;
            };
            if self.looked_for.get_mut(place)?.replace(of) == Some(of) {
                continue;
            }
            let Some(left) = self.left.and_then(|left| left.checked_sub(1)) else {
                if self.left.take().is_some() {
                    checked.findings.push(Finding::TooMuch);
                }
                return None;
            };
            self.left = Some(left);
            open.extend(self.after.get(place)?);
            before.push(self.told.get(place)?);
        }
        Some(before)
    }
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
    let sheet = judged_on(checked, history, (place, entry), recorded.rules)?;
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
    rules: u32,
) -> Option<Sheet> {
    let id = entry.id.clone();
    let before = history.before(checked, place)?;
    if rules != RULES_VERSION {
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
    let sheet = judged_on(checked, history, (place, entry), recorded.rules)?;
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
