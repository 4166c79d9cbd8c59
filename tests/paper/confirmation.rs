//! A confirmation of the shop off its screen, byte for byte.

use super::*;

/// The entry of a confirmation for so many jobs of one van, noted by `by`.
fn confirmation(jobs: u64, by: &str) -> String {
    let line = |n: u64| Held {
        log: LogId(format!("{n:08x}-1fc0-7b71-963b-b48f95b6cbff")),
        device: "a1b2c3d4".to_owned(),
        through: 400 + n,
        count: 12,
        digest: digest([n.to_string()]),
    };
    let mut job = Job {
        phone: record::Phone::new("shop", 1_790_000_000_000),
        entries: Vec::new(),
    };
    let held = (0..jobs).map(line).collect();
    job.tap(vec![Event::Confirmation(Confirmation { held })]);
    let mut entry = job.entries.remove(0);
    entry.log = LogId(CONFIRMATIONS_LOG.to_owned());
    by.clone_into(&mut entry.by);
    wire::encode(&entry).unwrap()
}

#[test]
fn a_confirmation_comes_off_the_shops_screen_as_it_was_written() {
    // A name that looks like the end of a line must not be cut.
    for (jobs, by) in [(1, "R. Okafor"), (4, "a},b}, {c"), (12, "Ørsted")] {
        let entry = confirmation(jobs, by);
        let texts = confirmation_symbols(&entry).unwrap();
        let read = photographed(&texts);
        assert_eq!(read, texts);
        assert_eq!(gathered(&read), Ok(Gathered::Confirmation(entry)));
        let first = &texts[..1];
        if texts.len() > 1 {
            let of = texts.len();
            assert_eq!(gathered(first), Ok(Gathered::Missing(2, of)));
        }
        let changed = first[0].replacen("a1b2c3d4", "a1b2c3d5", 1);
        let mut damaged = texts.clone();
        damaged[0] = changed;
        assert_eq!(gathered(&damaged), Err(PaperError::Damaged));
    }
    // A whole week's jobs are no matter for codes.
    assert_eq!(confirmation_symbols(&confirmation(60, "R. Okafor")), None);
}

#[test]
fn no_other_entry_comes_in_as_a_confirmation() {
    let entry = confirmation(1, "R. Okafor");
    let as_job = entry.replace(CONFIRMATIONS_LOG, "019c6bcb-1fc0-7b71-963b-b48f95b6cbff");
    let texts = confirmation_symbols(&as_job).unwrap();
    assert_eq!(gathered(&texts), Err(PaperError::Damaged));
    let note = Sample::of("replaced-hub.json").texts.remove(0);
    let texts = confirmation_symbols(&note).unwrap();
    assert_eq!(gathered(&texts), Err(PaperError::Damaged));
}
