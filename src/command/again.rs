//! Files looked at again: one line or one object each.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use hubslate::exchange::bundle::Held;
use hubslate::exchange::verify::{Checked, Remark, verify};
use hubslate::text::Verified;
use serde_json::{Value, json};

use super::{LANG, say, source, tell, why};

/// Computes each file again, and prints what it says; gives the ending.
pub(super) fn verify_all(files: &[PathBuf], as_json: bool) -> u8 {
    let mut ending = 0;
    for path in files {
        let source = source::read(path);
        let content = source.as_ref().map_err(String::clone);
        let content = content.and_then(source::Source::content);
        let checked = content
            .as_ref()
            .map_err(String::clone)
            .and_then(|content| verify(&content.text).map_err(|error| why(&error)));
        let held = content.ok().and_then(|content| content.held);
        let whole = held.as_ref().is_none_or(|held| held.changed.is_empty());
        let well = whole
            && checked
                .as_ref()
                .is_ok_and(|logs| logs.iter().all(|log| log.findings.is_empty()));
        if !well {
            ending = 1;
        }
        tell(&if as_json {
            value(path, &checked, held.as_ref(), well).to_string()
        } else {
            line(path, &checked, held.as_ref(), well)
        });
    }
    ending
}

/// One line of a file.
fn line(
    path: &Path,
    checked: &Result<Vec<Checked>, String>,
    held: Option<&Held>,
    well: bool,
) -> String {
    let name = path.display();
    let logs = match checked {
        Err(why) => return format!("{name}: {}: {why}", say(Verified::Refused)),
        Ok(logs) => logs,
    };
    let sum = |of: fn(&Checked) -> usize| logs.iter().map(of).sum();
    let head = say(if well && logs.iter().any(is_part) {
        Verified::PartOfJob
    } else if well {
        Verified::Holds {
            logs: logs.len(),
            entries: sum(|log| log.entries),
            sets: sum(|log| log.sets),
            decisions: sum(|log| log.decisions),
        }
    } else {
        Verified::Differs
    });
    let findings = logs.iter().flat_map(|log| &log.findings);
    let remarks = logs.iter().flat_map(|log| &log.remarks);
    let mut recorded: Vec<String> = findings.map(|finding| finding.say(LANG)).collect();
    recorded.extend(remarks.map(|remark| remark.say(LANG)));
    recorded.extend(held.map(source::recorded).unwrap_or_default());
    // What holds for every log of a file is said once.
    let mut said = BTreeSet::new();
    recorded.retain(|sentence| said.insert(sentence.clone()));
    if recorded.is_empty() {
        format!("{name}: {head}")
    } else {
        format!("{name}: {head}: {}", recorded.join("; "))
    }
}

/// Whether a log has only a part of its job.
fn is_part(log: &Checked) -> bool {
    let part = |remark: &Remark| matches!(remark, Remark::Part(_));
    log.remarks.iter().any(part)
}

/// The same as JSON, one object a line.
fn value(
    path: &Path,
    checked: &Result<Vec<Checked>, String>,
    held: Option<&Held>,
    well: bool,
) -> Value {
    let file = path.display().to_string();
    match checked {
        Err(why) => json!({ "file": file, "status": "refused", "why": why }),
        Ok(logs) => {
            let mut value = json!({
                "file": file,
                "status": match (well, logs.iter().any(is_part)) {
                    (true, false) => "holds",
                    (true, true) => "part",
                    (false, _) => "differs",
                },
                "logs": logs.iter().map(|log| log.to_value(LANG)).collect::<Vec<_>>(),
            });
            if let (Some(held), Some(fields)) = (held, value.as_object_mut()) {
                fields.insert("pictures".to_owned(), source::value(held));
            }
            value
        }
    }
}
