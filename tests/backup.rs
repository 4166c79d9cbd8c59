//! The backup journal: a tap is in it whole or not at all, and what it lacks is known.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use hubslate::exchange::backup::{Backup, HEADER, TORN, body, closed, counted, doubted, gone, tap};
use hubslate::exchange::{SavedText, digest};

fn saved(log: &str, id: usize) -> SavedText {
    SavedText {
        log: log.to_owned(),
        id: format!("{id:03}"),
        text: format!(r#"{{"id":"{id:03}","say":"half a\nline, ö and ~"}}"#),
    }
}

/// The lines of so many taps on one log, each of two entries.
fn taps(log: &str, count: usize) -> Vec<String> {
    let line = |at: usize| tap(&[saved(log, 2 * at), saved(log, 2 * at + 1)], 2 * at + 2);
    (0..count).map(line).collect()
}

fn file(number: u32, lines: &str) -> String {
    format!("{HEADER}{number:06}\n{lines}")
}

fn read(lines: &str) -> Backup {
    Backup::read(&[file(1, lines)])
}

fn ids(backup: &Backup, log: &str) -> Vec<String> {
    backup
        .entries(log)
        .into_iter()
        .map(|saved| saved.id)
        .collect()
}

#[test]
fn what_was_written_is_there_again() {
    let backup = read(&taps("job", 3).concat());
    let all: Vec<SavedText> = (0..6).map(|id| saved("job", id)).collect();
    assert_eq!(backup.entries("job"), all);
    assert_eq!((backup.must("job"), backup.damaged()), (6, 0));
    assert_eq!(backup.open_logs().collect::<Vec<_>>(), ["job"]);
    let mut added = Backup::read(&[]);
    added.add(&taps("job", 3).concat());
    assert_eq!(added.entries("job"), all);
}

/// A power cut can end the file anywhere: what is there is the first taps, each of them whole.
#[test]
fn cut_off_anywhere_a_tap_is_whole_or_not_there() {
    let lines = taps("job", 4).concat();
    let whole = file(1, &lines);
    for end in (0..whole.len()).filter(|end| whole.is_char_boundary(*end)) {
        let backup = Backup::read(&[whole[..end].to_owned()]);
        let there = ids(&backup, "job");
        assert_eq!(there.len() % 2, 0, "cut at {end}");
        let lines = whole[..end].matches('\n').count().saturating_sub(1);
        assert_eq!(there.len(), 2 * lines, "cut at {end}");
        assert_eq!(backup.damaged(), 0, "cut at {end}");
    }
}

/// What came after a torn line is whole again; nobody was told that the torn one was kept.
#[test]
fn after_a_torn_line_the_next_one_counts() {
    let lines = taps("job", 3);
    let half = &lines[1][..lines[1].len() / 2];
    let backup = read(&format!("{}{half}{TORN}\n{}", lines[0], lines[2]));
    assert_eq!(ids(&backup, "job"), ["000", "001", "004", "005"]);
    assert_eq!(backup.damaged(), 0);
}

/// A disk can return other bytes: no entry is ever another one than was written, and what is
/// missing is known from the lines that came after.
#[test]
fn a_byte_that_turned_is_never_read_as_an_entry() {
    let lines = taps("job", 3).concat();
    let all: Vec<SavedText> = (0..6).map(|id| saved("job", id)).collect();
    let last = lines.rfind("\n").unwrap();
    let before_last = lines[..last].rfind('\n').unwrap();
    let mut lost = 0;
    for at in 0..before_last {
        let mut bytes = lines.clone().into_bytes();
        bytes[at] ^= 1;
        let Ok(hurt) = String::from_utf8(bytes) else {
            continue;
        };
        let backup = read(&hurt);
        let entries = backup.entries("job");
        assert!(entries.iter().all(|saved| all.contains(saved)), "at {at}");
        assert!(entries.len() < 6, "at {at}");
        let texts: Vec<&str> = entries.iter().map(|saved| saved.text.as_str()).collect();
        assert!(!backup.has_all("job", &texts), "at {at}");
        lost += 1;
    }
    assert!(lost > 200);
}

#[test]
fn the_file_of_the_higher_number_is_read_last_and_one_without_a_number_is_none() {
    let (new, old) = (file(2, &gone("job")), file(1, &taps("job", 2).concat()));
    for files in [[new.clone(), old.clone()], [old.clone(), new]] {
        assert_eq!(Backup::read(&files).logs().count(), 0);
    }
    // The other file is being written: its number comes last.
    let half = file(0, &gone("job"));
    assert_eq!(ids(&Backup::read(&[half, old]), "job").len(), 4);
    let odd = [
        "",
        "hubslate backup ",
        "hubslate backup x\n",
        "something else\n",
    ];
    for odd in odd {
        assert_eq!(Backup::read(&[odd.to_owned()]).logs().count(), 0, "{odd}");
    }
}

#[test]
fn a_closed_log_is_held_by_number_and_digest() {
    let texts: Vec<String> = (0..4).map(|id| saved("job", id).text).collect();
    let lines = taps("job", 2).concat() + &closed("job", &texts);
    let backup = read(&lines);
    assert!(backup.is_closed("job"));
    assert_eq!((backup.entries("job").len(), backup.must("job")), (0, 4));
    assert!(backup.has_all("job", &texts));
    assert!(!backup.has_all("job", &texts[1..]));
    let other: Vec<String> = (1..5).map(|id| saved("job", id).text).collect();
    assert_ne!(digest(&texts), digest(&other));
    assert!(!backup.has_all("job", &other), "as many, but others");
    // What is told later comes on top.
    let later = read(&(lines + &tap(&[saved("job", 9)], 5)));
    assert!(!later.is_closed("job"));
    assert!(!later.has_all("job", &texts));
    assert_eq!(ids(&later, "job"), ["009"]);
}

#[test]
fn an_emptied_text_takes_the_place_of_the_one_that_was_there() {
    let mut empty = saved("job", 1);
    empty.text = "{}".to_owned();
    let backup = read(&(taps("job", 1).concat() + &body(&empty)));
    assert_eq!(backup.entries("job"), [saved("job", 0), empty]);
}

/// Written again it says the same, in fewer lines.
#[test]
fn what_counts_is_the_same_when_it_is_written_again() {
    let texts: Vec<String> = (0..4).map(|id| saved("old", id).text).collect();
    let lines = [
        taps("old", 2).concat(),
        closed("old", &texts),
        taps("open", 3).concat(),
        tap(&[saved("old", 8)], 5),
        taps("away", 40).concat(),
        gone("away"),
    ]
    .concat();
    let mut backup = read(&lines);
    let whole = backup.whole();
    assert!(whole.len() < lines.len());
    let again = Backup::read(&[file(7, &whole)]);
    for log in ["old", "open", "away"] {
        assert_eq!(again.entries(log), backup.entries(log), "{log}");
        assert_eq!(again.must(log), backup.must(log), "{log}");
    }
    assert!(again.has_all("away", &Vec::<String>::new()));
    assert_eq!(backup.anew(), None, "little is gained");
    let mut much = read(&taps("away", 6_000).concat());
    assert_eq!(much.anew(), None, "all of it counts");
    let mut idle = read(&(taps("away", 6_000).concat() + &gone("away")));
    let lines = idle.anew().unwrap();
    assert!(!idle.is_lean());
    idle.turned(&lines);
    assert!(idle.is_lean());
    idle.add(&taps("job", 1).concat());
    assert!(!idle.is_lean());
}

/// What is known to be lost stays so: no later entry, no end and no other file makes it whole.
#[test]
fn a_log_that_lost_entries_is_never_whole_again() {
    let texts: Vec<String> = (0..4).map(|id| saved("job", id).text).collect();
    let lines = taps("job", 2).concat() + &doubted("job");
    for later in [
        String::new(),
        taps("job", 3).concat(),
        closed("job", &texts),
    ] {
        let backup = read(&(lines.clone() + &later));
        assert!(!backup.has_all("job", &texts));
        let many: Vec<String> = (0..9).map(|id| saved("job", id).text).collect();
        assert!(!backup.has_all("job", &many));
        assert!(
            !read(&backup.whole()).has_all("job", &many),
            "written again"
        );
    }
    assert!(read(&(lines + &gone("job"))).has_all("job", &texts));
}

/// The first line is not what was written: the file is read all the same.
#[test]
fn a_file_whose_first_line_is_unreadable_still_counts() {
    let whole = file(3, &taps("job", 2).concat());
    for at in 0..HEADER.len() {
        let mut bytes = whole.clone().into_bytes();
        bytes[at] ^= 1;
        let backup = Backup::read(&[String::from_utf8(bytes).unwrap()]);
        assert_eq!(ids(&backup, "job").len(), 4, "at {at}");
    }
}

/// A log that was closed and goes on is not whole here until its older entries are here again.
#[test]
fn a_closed_log_that_goes_on_is_taken_in_whole_again() {
    let texts: Vec<String> = (0..4).map(|id| saved("job", id).text).collect();
    let lines = taps("job", 2).concat() + &closed("job", &texts) + &tap(&[saved("job", 4)], 5);
    let backup = read(&lines);
    assert!(backup.is_reopened("job"));
    let all: Vec<SavedText> = (0..4).map(|id| saved("job", id)).collect();
    let backup = read(&(lines + &tap(&all, 5)));
    assert!(!backup.is_reopened("job") && !backup.is_closed("job"));
    assert_eq!(ids(&backup, "job").len(), 5);
}

/// Entries of a device with these running numbers.
fn numbered(device: &str, numbers: std::ops::RangeInclusive<u64>) -> Vec<String> {
    let text = |n| format!(r#"{{"id":"{n}","device":"{device}","n":{n},"what":{{}}}}"#);
    numbers.map(text).collect()
}

fn numbers(backup: &Backup) -> Vec<(String, u64)> {
    let numbers = backup.numbers();
    numbers.map(|(device, n)| (device.to_owned(), n)).collect()
}

/// What takes a number may be closed, thrown away and written again: the number stays taken.
#[test]
fn a_running_number_stays_taken_whatever_becomes_of_its_log() {
    let line = |texts: Vec<String>| counted(texts.iter().map(String::as_str));
    let mut lines = line(numbered("slate", 1..=3)) + &tap(&[saved("job", 0)], 1);
    lines += &line(numbered("slate-practice", 1..=9));
    lines += &line(numbered("slate", 4..=7));
    // An older line that comes again takes nothing back.
    lines += &line(numbered("slate", 2..=2));
    lines += &closed("job", &[saved("job", 0).text]);
    lines += &gone("job");
    let taken = [("slate".to_owned(), 7), ("slate-practice".to_owned(), 9)];
    let backup = read(&lines);
    assert_eq!(numbers(&backup), taken);
    assert_eq!(numbers(&read(&backup.whole())), taken);
    // What is no entry takes none.
    assert_eq!(counted(["{", "{}"]), "");
}
