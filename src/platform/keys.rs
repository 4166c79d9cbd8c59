//! The keys of localStorage.
//!
//! An origin is shared with every other app on the same host, so every key carries our prefix.

/// What every key of the app begins with.
pub const PREFIX: &str = "hubslate:";

/// Key of one setting.
pub fn setting(name: &str) -> String {
    format!("{PREFIX}setting:{name}")
}

/// Key of the draft of one half-typed field.
pub fn draft(name: &str) -> String {
    format!("{PREFIX}draft:{name}")
}

/// Key of the second copy of one tap, by its first entry; an entry's id holds no colon.
pub fn entry(log: &str, id: &str) -> String {
    format!("{PREFIX}entry:{log}:{id}")
}

/// Where a value that cannot be read is moved, so that it is never overwritten.
pub fn unreadable(key: &str) -> String {
    let tail = key.strip_prefix(PREFIX).unwrap_or(key);
    format!("{PREFIX}unreadable:{tail}")
}

/// Log and id of an entry's key; `None` for every other key.
pub fn entry_parts(key: &str) -> Option<(&str, &str)> {
    key.strip_prefix(PREFIX)?
        .strip_prefix("entry:")?
        .rsplit_once(':')
}

/// True for a key under which something unreadable was put.
pub fn is_unreadable(key: &str) -> bool {
    key.strip_prefix(PREFIX)
        .is_some_and(|tail| tail.starts_with("unreadable:"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_entry_key_gives_its_parts_back() {
        assert_eq!(entry_parts(&entry("job-1", "a")), Some(("job-1", "a")));
        assert_eq!(entry_parts(&entry("kit:van", "a")), Some(("kit:van", "a")));
    }

    #[test]
    fn keys_of_others_have_no_parts() {
        assert_eq!(entry_parts("entry:job-1:a"), None);
        assert_eq!(entry_parts(&setting("entry:job-1:a")), None);
        assert_eq!(entry_parts(&unreadable(&entry("job-1", "a"))), None);
    }

    #[test]
    fn an_unreadable_key_keeps_the_name_it_had() {
        let moved = unreadable(&entry("job-1", "a"));
        assert_eq!(moved, "hubslate:unreadable:entry:job-1:a");
        assert!(is_unreadable(&moved));
        assert!(!is_unreadable(&entry("job-1", "a")));
    }

    #[test]
    fn every_key_carries_the_prefix() {
        for key in [setting("a"), draft("a"), entry("a", "b"), unreadable("a")] {
            assert!(key.starts_with(PREFIX), "{key}");
        }
    }
}
