//! What the command on a computer says: one sentence each; one that follows another on the same line begins
//! small.

use super::en::count;
use super::en::decide::decision;
use super::en::words;
use super::table::templates;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

templates! {
    /// One sentence of the command.
    pub enum Verified<'a>, verified {
        Holds { logs: usize, entries: usize, sets: usize, decisions: usize } => format!(
            "holds ({}, {}, {}, {} computed again)",
            count(logs, "log", "logs"),
            count(entries, "entry", "entries"),
            count(sets, "set of readings", "sets of readings"),
            count(decisions, "decision", "decisions"),
        ),
        Differs => "DIFFERS",
        PartOfJob => "PART OF A JOB",
        Part(missing: usize) => format!(
            "{} named and not here; nothing of that job was judged: merge it with the rest",
            count(missing, "entry is", "entries are"),
        ),
        Refused => "REFUSED",
        NotOurs => "this is not a Hubslate file",
        Newer { version: u64 } =>
            format!("made by a newer version ({version}); update this program first"),
        CutOff => "the end of the file is missing",
        Damaged { line: usize } => format!("damaged at line {line}"),
        NotRead(why: &'a str) => format!("it cannot be read: {why}"),
        NotWritten(why: &'a str) => format!("it cannot be written: {why}"),
        EntryUnreadable(id: &'a str) => format!("entry {id} cannot be read; it is saved as received"),
        SetAside { key: &'a str, why: &'a str } =>
            format!("{key} cannot be read ({why}): set aside"),
        NotRescued(what: &'a str) =>
            format!("not everything was saved when the app stopped ({what})"),
        LogKind(kind: &'a str) =>
            format!("a log of the kind \"{kind}\", which is unknown or does not fit its id"),
        Edited => "the entries were changed after the export: their digest differs",
        Canonical => "the canonical digest differs",
        TooMuch =>
            "too much to check: decisions and reports rest on more than 500,000 entries in all; those after the limit were not checked",
        EntryBad { place: usize, why: &'a str } => format!("entry {place} cannot be read ({why})"),
        EntryMissing(id: &'a str) => format!("entry {id} is named by another and missing"),
        EntriesLost => "the phone had more entries and lost them",
        EntryTwice(id: &'a str) => format!("entry {id} is there twice with different contents"),
        EntryCircle(id: &'a str) => format!("entry {id} claims to have seen what came after it"),
        Decision { corner: Corner, recorded: Decision, because: &'a str, computed: Decision, rather: &'a str } => format!(
            "decision {}: the file says {} ({because}), its entries give {} ({rather})",
            words::corner(corner),
            decision(recorded),
            decision(computed),
        ),
        RestsOnOther(at: Corner) => format!(
            "decision {}: it rests on other values than its entries give",
            words::corner(at)
        ),
        Proof(at: Corner) => format!(
            "proof after the work {}: its entries give another result or other values",
            words::corner(at)
        ),
        Measured(at: Corner, run: &'a str) => format!(
            "{run}, {}: its entries give another result or other values",
            words::corner(at)
        ),
        HandedOver => "the report was made from other entries than these",
        Reformatted => "reformatted by another program; no value changed",
        EntryUnknown(id: &'a str) => format!("entry {id} is of a newer kind and was not checked"),
        RecordedTwice => "two phones recorded one fact differently; the more careful one counts",
        NotChecked(id: &'a str) =>
            format!("entry {id} was not checked: what it saw is not all here"),
        OtherRules(rules: u32) =>
            format!("what version {rules} of the rules judged was not judged again"),
        Written { logs: usize, entries: usize } => format!(
            "written ({}, {})",
            count(logs, "log", "logs"),
            count(entries, "entry", "entries"),
        ),
        Gap { device: &'a str, from: u64, to: u64 } => if from == to {
            format!("{device}: entry {from} missing")
        } else {
            format!("{device}: entries {from}\u{2013}{to} missing")
        },
        Erased { entries: usize, pseudonym: &'a str } => format!(
            "{} erased; the job is saved as {pseudonym}",
            count(entries, "personal entry", "personal entries"),
        ),
        FreeText(text: &'a str) => format!("stays, check whether it names anyone: {text:?}"),
        Signatures(n: usize) => format!("stays: {}", count(n, "signature", "signatures")),
        PhotosThere(n: usize) => format!(
            "{} there, each as its digest says",
            count(n, "photo or voice note", "photos and voice notes"),
        ),
        PhotoChanged(name: &'a str) =>
            format!("{name} is not the photo or voice note that the record names"),
        PhotoMissing { sha256: &'a str, step: &'a str } =>
            format!("missing in this zip: {sha256} of step {step}"),
        PhotosLeftOut(n: usize) => format!(
            "{} not written: name a file that ends in .zip to take them along",
            count(n, "photo or voice note", "photos and voice notes"),
        ),
        NotUnpacked => "a zip of another program: unpack it and pack it again without compression",
        Photos(n: usize) => format!(
            "stays: {}, check whether one shows anyone",
            count(n, "photo", "photos")
        ),
        NotUnderstood(word: &'a str) => format!("`{word}` is not understood"),
        NoFile => "no file is named",
        NoOut => "no file to write to is named: add `-o OUT`",
        OutIsIn(path: &'a str) => format!("{path} is read and would be written over"),
        NothingDue => "nothing is due in these files",
        NoSuchJob(begin: &'a str) => format!("not exactly one job begins with \"{begin}\""),
    }
}
