//! A body that is gone: erased for good, or let go of by a van while the shop has it.

use super::*;

#[test]
fn erasing_a_person_keeps_the_digest_and_beats_the_original() {
    let texts = each::texts();
    let gone: Vec<String> = texts
        .iter()
        .map(|text| match decode(text).unwrap().what {
            Event::Person(..) => erased(text),
            _ => text.clone(),
        })
        .collect();
    assert_ne!(gone, texts);
    assert_eq!(digest(&gone), digest(&texts));
    let here: Vec<SavedText> = texts.iter().map(|text| saved(text)).collect();
    let there = records(&file(gone.clone()));
    let change = merge(&here, &there);
    assert_eq!(change.replace.len(), 1);
    assert_eq!(change.same, texts.len() - 1);
    assert_eq!((change.add, change.edited), (vec![], vec![]));
    let back = merge(&there, &here);
    assert_eq!(back.same, texts.len());
    assert_eq!(back.replace, []);
}

#[test]
fn only_what_names_a_person_can_be_erased_a_forged_one_empties_no_finding() {
    let here: Vec<SavedText> = each::texts().iter().map(|text| saved(text)).collect();
    let mut forged = 0;
    for record in &here {
        let what = decode(&record.text).unwrap().what;
        if matches!(what, Event::Person(..)) || what.is_gone() || Besides::of(&what).is_some() {
            continue;
        }
        let emptied = [saved(&erased(&record.text))];
        let change = merge(&here, &emptied);
        assert_eq!(change.replace, [], "{}", record.text);
        assert_eq!(change.edited, [EntryId(record.id.clone())]);
        // Where both come at once the body stays.
        let both = [emptied[0].clone(), record.clone()];
        assert_eq!(merge(&[], &both).add, both[1..]);
        forged += 1;
    }
    assert!(10 < forged, "only {forged} kinds were tried");
}

#[test]
fn what_a_van_let_go_of_empties_nothing_and_comes_back_with_any_original() {
    let whole: Vec<SavedText> = each::texts().iter().map(|text| saved(text)).collect();
    let gone = let_go(&whole).unwrap();
    let kinds: Vec<Event> = gone
        .iter()
        .map(|g| decode(&original(&whole, g)).unwrap().what)
        .collect();
    let is = |is: fn(&Event) -> bool| kinds.iter().filter(|what| is(what)).count();
    assert_eq!(is(|what| matches!(what, Event::Person(..))), 1);
    assert_eq!(is(|what| matches!(what, Event::Said(_))), 1);
    assert_eq!(is(|what| matches!(what, Event::Note(..))), 1);
    assert_eq!(is(|what| matches!(what, Event::Signed(_))), 1);
    assert_eq!(is(|what| matches!(what, Event::Captioned(_))), 1);
    assert_eq!(gone.len(), 5);
    let van: Vec<SavedText> = whole
        .iter()
        .map(|r| gone.iter().find(|g| g.id == r.id).unwrap_or(r).clone())
        .collect();
    // The shop opens the van's file: nothing is emptied, nothing is called edited.
    let van = records(&file(van.into_iter().map(|r| r.text).collect()));
    let change = merge(&whole, &van);
    let same = Merge {
        same: whole.len(),
        ..Merge::default()
    };
    assert_eq!(change, same);
    // The van opens the shop's file: all of it is back.
    let back: Vec<SavedText> = gone.iter().map(|g| saved(&original(&whole, g))).collect();
    assert_eq!(merge(&van, &whole).replace, back);
    // What the shop erased meanwhile stays erased on both, and beats what was let go of.
    let erased = erased_with(&whole, Besides::ALL).unwrap();
    assert_eq!(merge(&van, &erased).replace.len(), erased.len());
    let shop = merge(&[], &[erased.clone(), whole.clone()].concat()).add;
    assert_eq!(merge(&shop, &van).replace, []);
    let texts = |records: &[SavedText]| digest(records.iter().map(|r| r.text.clone()));
    assert_eq!(texts(&van), texts(&whole));
    assert_eq!(texts(&shop), texts(&whole));
    // All three at once: the erased form, whatever the order.
    for at in 0..3 {
        let mut all = [
            gone[0].clone(),
            back[0].clone(),
            saved(&original(&erased, &gone[0])),
        ];
        all.rotate_left(at);
        assert_eq!(merge(&[], &all).add, [saved(&original(&erased, &gone[0]))]);
    }
}

/// The text of the same entry among others.
fn original(all: &[SavedText], of: &SavedText) -> String {
    all.iter().find(|r| r.id == of.id).unwrap().text.clone()
}

#[test]
fn a_forged_letting_go_of_a_finding_empties_nothing() {
    let here: Vec<SavedText> = each::texts().iter().map(|text| saved(text)).collect();
    for record in &here {
        let mut entry = decode(&record.text).unwrap();
        if entry.what.is_gone() {
            continue;
        }
        entry.what = Event::LetGo(entry_digest(&record.text));
        let forged = [saved(&encode(&entry).unwrap())];
        assert_eq!(merge(&here, &forged).replace, []);
        let whole = std::slice::from_ref(record);
        assert_eq!(merge(&forged, whole).replace, whole);
        let both = [forged[0].clone(), record.clone()];
        assert_eq!(merge(&[], &both).add, both[1..]);
    }
}

#[test]
fn the_complaint_notes_signatures_and_photos_go_where_they_are_named_and_no_finding_does() {
    let whole: Vec<SavedText> = each::texts().iter().map(|text| saved(text)).collect();
    let count = |besides: &[Besides]| erased_with(&whole, besides).unwrap().len();
    assert_eq!(count(&[]), 1);
    for besides in Besides::ALL {
        // A note and a caption that was typed; a picture and a spoken note.
        let two = matches!(besides, Besides::Notes | Besides::Photos);
        assert_eq!(count(&[*besides]), if two { 3 } else { 2 }, "{besides:?}");
    }
    let gone = erased_with(&whole, Besides::ALL).unwrap();
    let change = merge(&whole, &gone);
    assert_eq!((change.replace.len(), change.edited), (7, vec![]));
    // The old file brings nothing back.
    assert_eq!(merge(&gone, &whole).replace, []);
    let after: Vec<SavedText> = whole
        .iter()
        .map(|r| gone.iter().find(|g| g.id == r.id).unwrap_or(r).clone())
        .collect();
    let (before, after) = (left(&whole), left(&after));
    assert_eq!(
        (
            before.complaint.len(),
            before.notes.len(),
            before.photos.len()
        ),
        (1, 2, 2)
    );
    assert_eq!(after, Left::default());
}
