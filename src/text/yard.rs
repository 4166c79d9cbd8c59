//! What the command on a computer says, as values: one sentence each, in `en/yard.rs`.

use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

/// One sentence of the command.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Yard<'a> {
    /// Everything in a file is what its entries give.
    Holds {
        /// How many logs.
        logs: usize,
        /// How many entries.
        entries: usize,
        /// How many sets of readings were computed again.
        sets: usize,
        /// How many decisions were made again.
        decisions: usize,
    },
    /// Something differs; the findings follow.
    Differs,
    /// Not a file that can be looked at; why follows.
    Refused,
    /// Why: no file of this program.
    NotOurs,
    /// Why: made by a newer version.
    Newer {
        /// The version of its envelope.
        version: u64,
    },
    /// Why: the end is missing.
    CutOff,
    /// Why: no whole JSON.
    Damaged {
        /// The line where it breaks.
        line: usize,
    },
    /// Why: it could not be read at all.
    NotRead(&'a str),
    /// It could not be written.
    NotWritten(&'a str),
    /// An entry that cannot be read and is kept as it is.
    EntryUnreadable(&'a str),
    /// A text of a rescue file that cannot be taken.
    SetAside {
        /// Where it stands in the file.
        key: &'a str,
        /// Why.
        why: &'a str,
    },
    /// A part of the phone that could not be read when its rescue file was saved.
    NotRescued(&'a str),
    /// A log of a kind that is not known.
    LogKind(&'a str),
    /// The entries are not those it was exported with.
    Edited,
    /// The canonical digest is another.
    Canonical,
    /// More to check than the limit.
    TooMuch,
    /// An entry that cannot be kept or read.
    EntryBad {
        /// Its place in the log.
        place: usize,
        /// Why.
        why: &'a str,
    },
    /// An entry that others name is not there.
    EntryMissing(&'a str),
    /// The phone had more entries than it has now.
    EntriesLost,
    /// Two different entries carry one id.
    EntryTwice(&'a str),
    /// Entries that claim to have seen each other.
    EntryCircle(&'a str),
    /// The rules give another decision.
    Decision {
        /// Where.
        corner: Corner,
        /// What the file says.
        recorded: Decision,
        /// Its reasons.
        because: &'a str,
        /// What the rules give.
        computed: Decision,
        /// Their reasons.
        rather: &'a str,
    },
    /// A decision rested on other figures than its entries give.
    RestsOnOther(Corner),
    /// The proof after the work says something else than its entries give.
    Proof(Corner),
    /// A run or a measurement of a rotor says something else than its entries give.
    Measured(Corner, &'a str),
    /// The report was made from other entries.
    HandedOver,
    /// Laid out anew by another program.
    Reformatted,
    /// An entry of a kind that is not known.
    EntryUnknown(&'a str),
    /// Two phones told one fact differently.
    ToldTwice,
    /// What an entry rested on is not all there.
    NotChecked(&'a str),
    /// Made by another version of the rules.
    OtherRules(u32),
    /// A file was written.
    Written {
        /// How many logs.
        logs: usize,
        /// How many entries.
        entries: usize,
    },
    /// Running numbers of a device that are in no file.
    Gap {
        /// The device.
        device: &'a str,
        /// The first.
        from: u64,
        /// The last.
        to: u64,
    },
    /// Personal entries were erased.
    Erased {
        /// How many.
        entries: usize,
        /// The name that the job has now.
        pseudonym: &'a str,
    },
    /// A text that stays when a person is let go of.
    FreeText(&'a str),
    /// So many signatures stay.
    Signatures(usize),
    /// So many pictures and voice notes stay when a person is let go of.
    PicturesStay(usize),
    /// So many of the named pictures and voice notes are in a zip, and whole.
    PicturesThere(usize),
    /// A picture or voice note of a zip is not what the record names.
    PictureChanged(&'a str),
    /// A picture or voice note that the record names is not in a zip.
    PictureMissing {
        /// Its digest.
        sha256: &'a str,
        /// The step it belongs to.
        step: &'a str,
    },
    /// So many pictures and voice notes came in and are not in what was written.
    PicturesLeftOut(usize),
    /// Why: a zip that is packed otherwise, or has no job in it.
    NotUnpacked,
    /// So many pictures stay.
    Photos(usize),
    /// No job has anything due.
    NothingDue,
    /// No job, or more than one, begins so.
    NoSuchJob(&'a str),
}
