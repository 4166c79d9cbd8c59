//! What stands on invoices and credit notes, and when.

use super::*;

/// Numbers the next document of a job.
pub(super) fn number(job: &mut Vec<Event>, number: &str) -> bool {
    let made = account(&sheet(job.clone())).next_document(Some(&rule()));
    let Ok(Some(mut invoice)) = made else {
        return false;
    };
    invoice.number = number.to_owned();
    job.push(Event::Invoice(Box::new(invoice)));
    true
}

fn documents(job: &[Event]) -> (i64, i64) {
    let sheet = sheet(job);
    let account = account(&sheet);
    (account.documented(), account.to_pay())
}

#[test]
fn a_number_freezes_its_lines_and_a_later_change_has_a_number_of_its_own() {
    let mut job = vec![
        lines(vec![line("hub", 20_000, None)]),
        repair(LEFT, true, 22_000),
    ];
    assert!(
        !number(&mut job, "N0001"),
        "nothing is numbered before the end"
    );
    job.push(ended(Ending::Finished));
    assert!(number(&mut job, "N0001"));
    assert!(!number(&mut job, "N0002"), "all of it has a number");
    let frozen = account(&sheet(job.clone())).documents[0].clone();
    assert_eq!(
        (frozen.net(), frozen.tax(), frozen.gross()),
        (20_000, 2_000, 22_000)
    );
    job.push(lines(vec![line("another hub", 99_000, None)]));
    assert_eq!(account(&sheet(job.clone())).documents[0], &frozen);
    assert!(
        !number(&mut job, "N0002"),
        "a price nobody approved is on no invoice"
    );
    // A discount is a credit note.
    job.push(discount(1_100));
    assert!(number(&mut job, "N0002"));
    let sheet = sheet(job.clone());
    let account = account(&sheet);
    let credit = account.documents[1];
    assert_eq!(credit.credits.as_deref(), Some("N0001"));
    assert_eq!(
        (credit.net(), credit.tax(), credit.gross()),
        (-1_000, -100, -1_100)
    );
    assert_eq!(documents(&job), (20_900, 20_900));
    // Further work that is approved later is an invoice of its own.
    job.extend([sheared(1), further(true, 4_400)]);
    assert!(!number(&mut job, "N0003"), "the job is open again");
    job.push(ended(Ending::Finished));
    assert!(number(&mut job, "N0003"));
    assert_eq!(documents(&job), (25_300, 25_300));
    // What was approved and is no longer is taken back whole; the discount goes off the rest.
    job.push(repair(LEFT, false, 22_000));
    assert!(number(&mut job, "N0004"));
    assert_eq!(documents(&job), (3_300, 3_300));
}

#[test]
fn a_number_cannot_be_struck() {
    let mut job = vec![repair(LEFT, true, 22_000), ended(Ending::Finished)];
    assert!(number(&mut job, "N0001"));
    job.push(Event::Strike(vec![EntryId("0002".to_owned())]));
    assert_eq!(sheet(job).invoices().count(), 1);
}

#[test]
fn a_repair_that_is_asked_again_comes_with_the_further_work_that_was_approved() {
    use crate::job::agreed::repair_with_further;
    let asked = |yes, minor| {
        let job = [
            corners(),
            price(48_600),
            repair(LEFT, true, 48_600),
            sheared(1),
            further(yes, minor),
        ];
        repair_with_further(&sheet(job), &money(50_000))
    };
    assert_eq!(asked(true, 12_000), Some((money(12_000), money(62_000))));
    assert_eq!(asked(false, 12_000), None);
    let job = [corners(), price(48_600), repair(LEFT, true, 48_600)];
    assert_eq!(repair_with_further(&sheet(job), &money(50_000)), None);
}
