//! What the command on a computer says of files.

use super::decide::decision;
use super::words::corner;
use crate::text::yard::Yard;

/// One sentence; those that follow another on the same line begin small.
pub(in crate::text) fn yard(say: Yard) -> String {
    match say {
        Yard::Holds {
            logs,
            entries,
            sets,
            decisions,
        } => format!(
            "holds ({}, {}, {}, {} computed again)",
            count(logs, "log", "logs"),
            count(entries, "entry", "entries"),
            count(sets, "set of readings", "sets of readings"),
            count(decisions, "decision", "decisions"),
        ),
        Yard::Differs => "DIFFERS".to_owned(),
        Yard::Refused => "REFUSED".to_owned(),
        Yard::NotOurs => "this is not a Hubslate file".to_owned(),
        Yard::Newer { version } => {
            format!("made by a newer version ({version}); update this program first")
        }
        Yard::CutOff => "the end of the file is missing".to_owned(),
        Yard::Damaged { line } => format!("damaged at line {line}"),
        Yard::NotRead(why) => format!("it cannot be read: {why}"),
        Yard::NotWritten(why) => format!("it cannot be written: {why}"),
        Yard::EntryUnreadable(id) => format!("entry {id} cannot be read; it is kept as it came"),
        Yard::SetAside { key, why } => format!("{key} cannot be read ({why}): set aside"),
        Yard::NotRescued(what) => {
            format!("not everything was saved when the app stopped ({what})")
        }
        Yard::LogKind(kind) => {
            format!("a log of the kind \"{kind}\", which is unknown or does not fit its id")
        }
        Yard::Edited => {
            "the entries were changed after the export: their digest differs".to_owned()
        }
        Yard::Canonical => "the canonical digest differs".to_owned(),
        Yard::TooMuch => {
            "too much to check: decisions and reports rest on more than 500,000 entries in all; \
             those after the limit were not checked"
                .to_owned()
        }
        Yard::EntryBad { place, why } => format!("entry {place} cannot be read ({why})"),
        Yard::EntriesLost => "the phone had more entries and lost them".to_owned(),
        Yard::EntryMissing(id) => format!("entry {id} is named by another and missing"),
        Yard::EntryTwice(id) => format!("entry {id} is there twice with different contents"),
        Yard::EntryCircle(id) => format!("entry {id} claims to have seen what came after it"),
        Yard::Decision {
            corner: at,
            recorded,
            because,
            computed,
            rather,
        } => format!(
            "decision {}: the file says {} ({because}), its entries give {} ({rather})",
            corner(at),
            decision(recorded),
            decision(computed),
        ),
        Yard::RestsOnOther(at) => format!(
            "decision {}: it rests on other figures than its entries give",
            corner(at)
        ),
        Yard::Proof(at) => format!(
            "proof after the work {}: its entries give another result or other figures",
            corner(at)
        ),
        Yard::Measured(at, run) => format!(
            "{run}, {}: its entries give another result or other values",
            corner(at)
        ),
        Yard::HandedOver => "the report was made from other entries than these".to_owned(),
        Yard::Reformatted => "laid out anew by another program, no value changed".to_owned(),
        Yard::EntryUnknown(id) => format!("entry {id} is of a newer kind and was not checked"),
        Yard::ToldTwice => "two phones told one fact differently; the safer one counts".to_owned(),
        Yard::NotChecked(id) => format!("entry {id} was not checked: what it saw is not all here"),
        Yard::OtherRules(rules) => {
            format!("what version {rules} of the rules judged was not judged again")
        }
        Yard::Written { logs, entries } => format!(
            "written ({}, {})",
            count(logs, "log", "logs"),
            count(entries, "entry", "entries"),
        ),
        Yard::Gap { device, from, to } if from == to => {
            format!("{device}: entry {from} missing")
        }
        Yard::Gap { device, from, to } => format!("{device}: entries {from}\u{2013}{to} missing"),
        Yard::Erased { entries, pseudonym } => format!(
            "{} erased; the job is kept as {pseudonym}",
            count(entries, "personal entry", "personal entries"),
        ),
        Yard::FreeText(text) => format!("stays, see whether it names somebody: {text:?}"),
        Yard::Signatures(n) => format!("stays: {}", count(n, "signature", "signatures")),
        Yard::PicturesStay(n) => format!(
            "stays, see whether they show somebody: {}",
            count(n, "picture or voice note", "pictures and voice notes"),
        ),
        Yard::PicturesThere(n) => format!(
            "{} there, each as its digest says",
            count(n, "picture or voice note", "pictures and voice notes"),
        ),
        Yard::PictureChanged(name) => {
            format!("{name} is not the picture or voice note that the record names")
        }
        Yard::PictureMissing { sha256, step } => {
            format!("missing in this zip: {sha256} of step {step}")
        }
        Yard::PicturesLeftOut(n) => format!(
            "{} not written: name a file that ends in .zip to take them along",
            count(n, "picture or voice note", "pictures and voice notes"),
        ),
        Yard::NotUnpacked => {
            "a zip of another program: unpack it and pack it anew without compression".to_owned()
        }
        Yard::Photos(n) => format!(
            "stays: {}, see whether one shows somebody",
            count(n, "picture", "pictures")
        ),
        Yard::NothingDue => "nothing is due in these files".to_owned(),
        Yard::NoSuchJob(begin) => format!("not exactly one job begins with \"{begin}\""),
    }
}

fn count(n: usize, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}
