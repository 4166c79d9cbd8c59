//! What a second look at a file can find, and the sentence for each.

use crate::exchange::import::EntryError;
use crate::exchange::rescue::SetAside;
use crate::exchange::wire::WireError;
use crate::job::Problem;
use crate::job::entry::{Decided, EntryId, FaceFound, Proved, RotorFound};
use crate::text::{self, Lang, Verified};

/// Something in a file that is not what its entries give.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// A log of a kind that this version does not know.
    Kind(String),
    /// The entries are not those that the log was exported with.
    Digest {
        /// As the file says.
        stated: String,
        /// As its entries give it.
        computed: String,
    },
    /// The canonical digest is another.
    Canonical {
        /// As the file says.
        stated: String,
        /// As its entries give it.
        computed: String,
    },
    /// An entry that cannot be kept.
    Entry {
        /// Its place in the log, from 1.
        place: usize,
        /// What is wrong with it.
        fault: EntryError,
    },
    /// An entry with a body that does not fit its kind.
    Unreadable {
        /// Its place in the log, from 1.
        place: usize,
        /// What is wrong with it.
        error: WireError,
    },
    /// A text of a rescue file that cannot be taken.
    SetAside(SetAside),
    /// A part of the phone that could not be read when its rescue file was saved.
    NotRescued(String),
    /// The record does not hang together.
    Record(Problem),
    /// The rules give another decision for what was seen, or the same from other figures.
    Decision {
        /// The entry.
        entry: EntryId,
        /// What it says.
        recorded: Decided,
        /// What the rules give.
        computed: Decided,
    },
    /// The rules give another proof for what was seen, or the same from other figures.
    Proof {
        /// The entry.
        entry: EntryId,
        /// What it says.
        recorded: Proved,
        /// What the rules give.
        computed: Proved,
    },
    /// The rules find something else in what was seen of a face.
    Face {
        /// The entry.
        entry: EntryId,
        /// What it says.
        recorded: Box<FaceFound>,
        /// What the rules give; nothing where the readings give no result.
        computed: Option<Box<FaceFound>>,
    },
    /// The rules find something else in what was seen of a rotor.
    Rotor {
        /// The entry.
        entry: EntryId,
        /// What it says.
        recorded: Box<RotorFound>,
        /// What the rules give; nothing where the readings give no result.
        computed: Option<Box<RotorFound>>,
    },
    /// Decisions, proofs and reports rest on more than [`MAX_AGAIN`](super::MAX_AGAIN) entries in
    /// all: those after the limit were not checked.
    TooMuch,
    /// The report was made from other entries.
    HandedOver {
        /// The entry.
        entry: EntryId,
        /// The digest that it says.
        recorded: String,
        /// The digest of what it had seen.
        computed: String,
    },
}

/// Something to know about a file in which nothing differs for it.
#[derive(Clone, Debug, PartialEq)]
pub enum Remark {
    /// Another program laid it out again.
    Reformatted,
    /// An entry of a kind that this version does not know.
    Unknown(EntryId),
    /// A part of a job: so many entries are named and not here. Nothing of it was judged.
    Part(usize),
    /// Two phones told one fact differently.
    Disagree,
    /// What this entry rested on is not all here.
    NotChecked(EntryId),
    /// A decision or a proof by another version of the rules.
    OtherRules {
        /// The entry.
        entry: EntryId,
        /// The version.
        rules: u32,
    },
}

impl Finding {
    /// The stable code, for scripts.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Kind(_) => "kind",
            Self::Digest { .. } => "digest",
            Self::Canonical { .. } => "canonical",
            Self::Entry { .. } => "entry",
            Self::Unreadable { .. } => "unreadable",
            Self::SetAside(_) => "set_aside",
            Self::NotRescued(_) => "not_rescued",
            Self::Record(_) => "record",
            Self::Decision {
                recorded, computed, ..
            } if concludes_alike(recorded, computed) => "inputs",
            Self::Decision { .. } => "decision",
            Self::Proof { .. } => "proof",
            Self::Face { .. } => "face",
            Self::Rotor { .. } => "rotor",
            Self::HandedOver { .. } => "handed_over",
            Self::TooMuch => "too_much",
        }
    }

    /// The sentence that a person reads.
    pub fn say(&self, lang: Lang) -> String {
        text::verified(
            lang,
            match self {
                Self::Kind(kind) => Verified::LogKind(kind),
                Self::Digest { .. } => Verified::Edited,
                Self::Canonical { .. } => Verified::Canonical,
                Self::Proof { recorded, .. } => Verified::Proof(recorded.corner),
                Self::Face { recorded, .. } => {
                    let run = text::run_title(lang, recorded.run, recorded.surface);
                    return text::verified(lang, Verified::Measured(recorded.corner, &run));
                }
                Self::Rotor { recorded, .. } => {
                    let of = text::measurement_title(lang, recorded.run);
                    return text::verified(lang, Verified::Measured(recorded.corner, &of));
                }
                Self::SetAside(aside) => return aside.say(lang),
                Self::NotRescued(what) => Verified::NotRescued(what),
                Self::HandedOver { .. } => Verified::HandedOver,
                Self::TooMuch => Verified::TooMuch,
                Self::Record(problem) => return record(lang, problem),
                Self::Entry { place, fault } => return bad(lang, *place, &format!("{fault:?}")),
                Self::Unreadable { place, error } => {
                    return bad(lang, *place, &format!("{error:?}"));
                }
                Self::Decision {
                    recorded, computed, ..
                } => return decision(lang, recorded, computed),
            },
        )
    }
}

impl Remark {
    /// The stable code, for scripts.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Reformatted => "reformatted",
            Self::Unknown(_) => "unknown",
            Self::Part(_) => "part",
            Self::Disagree => "disagree",
            Self::NotChecked(_) => "not_checked",
            Self::OtherRules { .. } => "other_rules",
        }
    }

    /// The sentence that a person reads.
    pub fn say(&self, lang: Lang) -> String {
        let say = match self {
            Self::Reformatted => Verified::Reformatted,
            Self::Unknown(id) => Verified::EntryUnknown(&id.0),
            Self::Part(missing) => Verified::Part(*missing),
            Self::Disagree => Verified::RecordedTwice,
            Self::NotChecked(id) => Verified::NotChecked(&id.0),
            Self::OtherRules { rules, .. } => Verified::OtherRules(*rules),
        };
        text::verified(lang, say)
    }
}

fn record(lang: Lang, problem: &Problem) -> String {
    let say = match problem {
        Problem::Missing(id) => Verified::EntryMissing(&id.0),
        Problem::Edited(id) => Verified::EntryTwice(&id.0),
        Problem::Circle(id) => Verified::EntryCircle(&id.0),
        Problem::Unknown(id) => Verified::EntryUnknown(&id.0),
        Problem::Lost => Verified::EntriesLost,
        Problem::Disagree(_) => Verified::RecordedTwice,
    };
    text::verified(lang, say)
}

fn bad(lang: Lang, place: usize, why: &str) -> String {
    text::verified(lang, Verified::EntryBad { place, why })
}

/// Whether two decisions differ only in what they rest on.
fn concludes_alike(one: &Decided, other: &Decided) -> bool {
    let concluded = |of: &Decided| (of.decision, of.again, of.reasons.clone());
    concluded(one) == concluded(other)
}

fn decision(lang: Lang, recorded: &Decided, computed: &Decided) -> String {
    if concludes_alike(recorded, computed) {
        return text::verified(lang, Verified::RestsOnOther(recorded.corner));
    }
    let say = Verified::Decision {
        corner: recorded.corner,
        recorded: recorded.decision,
        because: &recorded.reasons.join(", "),
        computed: computed.decision,
        rather: &computed.reasons.join(", "),
    };
    text::verified(lang, say)
}
