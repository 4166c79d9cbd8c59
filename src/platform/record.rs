//! What the journal keeps and how keeping it can fail.
//!
//! Plain data without a browser in it, so that `slate` can be tested with a faulty store.

/// One kept text under the log it belongs to and its own id.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Record {
    /// Id of the log (a job, the spec library, the van kit).
    pub log: String,
    /// Id of the record, unique inside its log.
    pub id: String,
    /// The kept text, byte for byte as it was given.
    pub text: String,
}

/// One text that could not be read and was set aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Why it could not be read, plain English for the person who looks into it.
    pub why: String,
    /// The text as it was found.
    pub text: String,
}

/// The bytes of one picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// Media type, such as `image/jpeg`.
    pub mime: String,
    /// The bytes of the file.
    pub bytes: Vec<u8>,
}

/// Why something could not be kept or read back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// The browser denies this storage: private window, policy, or no such storage.
    Denied,
    /// The device or the quota is full.
    Full,
    /// A record with this log and id is there already, with another text.
    Differs {
        /// Log of the record.
        log: String,
        /// Id of the record.
        id: String,
    },
    /// The record that was to be replaced is not there.
    Missing {
        /// Log of the record.
        log: String,
        /// Id of the record.
        id: String,
    },
    /// The database on this device was made by a newer version of the app.
    Newer,
    /// Another tab with another version holds the database and does not let go.
    Blocked,
    /// The database was closed under us; the page must be loaded again.
    Closed,
    /// The browser refused with an error of this name.
    Refused {
        /// Name of the browser's error, such as `UnknownError`.
        name: String,
    },
}

impl StoreError {
    /// The problem behind a browser error of this name.
    ///
    /// # Source
    /// Names of `DOMException` in Web IDL, and those that IndexedDB and Web Storage raise.
    pub fn from_error_name(name: &str) -> Self {
        match name {
            // The second name is what older Firefox calls a full localStorage.
            "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => Self::Full,
            "SecurityError" | "NotAllowedError" => Self::Denied,
            "VersionError" => Self::Newer,
            "InvalidStateError" => Self::Closed,
            other => Self::Refused {
                name: other.to_owned(),
            },
        }
    }
}

impl core::fmt::Display for StoreError {
    fn fmt(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Denied => write!(out, "storage is denied"),
            Self::Full => write!(out, "storage is full"),
            Self::Differs { log, id } => {
                write!(out, "record {id} of {log} is there already and differs")
            }
            Self::Missing { log, id } => write!(out, "record {id} of {log} is not there"),
            Self::Newer => write!(out, "the database was made by a newer version"),
            Self::Blocked => write!(out, "another tab holds the database"),
            Self::Closed => write!(out, "the database is closed"),
            Self::Refused { name } => write!(out, "storage refused with {name}"),
        }
    }
}

/// How safely this phone keeps what is tapped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Storage {
    /// The strict journal works: a tap survives a kill and a power cut.
    Safe,
    /// Only the backup journal works: a tap survives a kill, but there is one copy and no picture.
    OnlyBackup,
    /// Only localStorage works: kept, but up to a minute may be lost in a kill.
    OnlyLocal,
    /// Nothing works: all is gone when the page closes.
    MemoryOnly,
}

impl Storage {
    /// Judges by which of the stores could be opened.
    pub const fn from_opened<J, L>(
        journal: &Result<J, StoreError>,
        has_backup: bool,
        local: &Result<L, StoreError>,
    ) -> Self {
        match (journal, local) {
            (Ok(_), _) => Self::Safe,
            (Err(_), _) if has_backup => Self::OnlyBackup,
            (Err(_), Ok(_)) => Self::OnlyLocal,
            (Err(_), Err(_)) => Self::MemoryOnly,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(name: &str, expected: StoreError) {
        assert_eq!(StoreError::from_error_name(name), expected);
    }

    #[test]
    fn browser_error_names_are_reported_apart() {
        check("QuotaExceededError", StoreError::Full);
        check("SecurityError", StoreError::Denied);
        check("VersionError", StoreError::Newer);
        check("InvalidStateError", StoreError::Closed);
        check(
            "UnknownError",
            StoreError::Refused {
                name: "UnknownError".to_owned(),
            },
        );
    }

    #[test]
    fn the_journal_alone_is_safe_and_local_alone_is_not() {
        let yes: Result<(), StoreError> = Ok(());
        let no: Result<(), StoreError> = Err(StoreError::Denied);
        for backup in [true, false] {
            assert_eq!(Storage::from_opened(&yes, backup, &yes), Storage::Safe);
            assert_eq!(Storage::from_opened(&yes, backup, &no), Storage::Safe);
        }
        for local in [&yes, &no] {
            assert_eq!(Storage::from_opened(&no, true, local), Storage::OnlyBackup);
        }
        assert_eq!(Storage::from_opened(&no, false, &yes), Storage::OnlyLocal);
        assert_eq!(Storage::from_opened(&no, false, &no), Storage::MemoryOnly);
    }
}
