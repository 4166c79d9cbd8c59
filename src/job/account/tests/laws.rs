//! What must hold of every job, over jobs by chance.

use proptest::prelude::*;

use super::documents::number;
use super::*;

fn any_event() -> impl Strategy<Value = Event> {
    let amount = || 0_i64..100_000;
    let corner = || prop_oneof![Just(LEFT), Just(RIGHT)];
    let ending = prop_oneof![
        Just(Ending::Finished),
        Just(Ending::Declined),
        Just(Ending::NothingWrong),
        Just(Ending::LeftUnfinished),
        Just(Ending::NotSafeHere),
    ];
    prop_oneof![
        amount().prop_map(price),
        (corner(), any::<bool>(), amount()).prop_map(|(at, yes, minor)| repair(at, yes, minor)),
        (any::<bool>(), amount()).prop_map(|(yes, minor)| inspection(yes, minor)),
        (1_u8..6).prop_map(sheared),
        (any::<bool>(), amount()).prop_map(|(yes, minor)| further(yes, minor)),
        amount().prop_map(discount),
        amount().prop_map(paid),
        amount().prop_map(refunded),
        ending.prop_map(ended),
        proptest::collection::vec(amount(), 1..4).prop_map(|all| {
            lines(
                all.into_iter()
                    .map(|each| line("part", each, None))
                    .collect(),
            )
        }),
    ]
}

proptest! {
    #[test]
    fn the_bill_is_what_was_agreed_and_done_and_nothing_else(
        job in proptest::collection::vec(any_event(), 0..25),
    ) {
        let sheet = sheet(job.clone());
        let account = account(&sheet);
        prop_assert!(0 <= account.to_pay() && account.to_pay() <= account.agreed());
        let yes = |what| {
            let all = account.charges.iter();
            let all = all.filter(|it| it.what == what && it.state != ChargeState::Declined);
            all.filter_map(|it| it.amount).sum::<i64>()
        };
        // Agreed work is never dropped: a finished job asks for all of it, less what is taken off.
        if sheet.ended().map(|it| it.ending) == Some(Ending::Finished) {
            let all = yes(BilledFor::Repair) + yes(BilledFor::Further);
            prop_assert_eq!(account.to_pay(), all - account.discount());
        }
        let rest = account.to_pay() - account.received();
        if account.stage == Stage::Due {
            prop_assert_eq!(account.still_to_pay() - account.overpaid(), rest);
        }
        // What was declined is owed by nobody.
        let declined = account.charges.iter().filter(|it| it.state == ChargeState::Declined);
        prop_assert!(account.done() <= yes(BilledFor::Repair) + yes(BilledFor::Further)
            + yes(BilledFor::Inspection));
        prop_assert_eq!(account.declined(), declined.filter_map(|it| it.amount).sum::<i64>());
    }

    #[test]
    fn documents_follow_the_account_to_the_last_cent(
        job in proptest::collection::vec(any_event(), 0..25),
        more in proptest::collection::vec(any_event(), 0..10),
    ) {
        let (mut job, mut given) = (job, 0);
        for event in std::iter::once(None).chain(more.into_iter().map(Some)) {
            job.extend(event);
            given += 1;
            number(&mut job, &format!("N{given:04}"));
            let sheet = sheet(job.clone());
            let account = account(&sheet);
            if account.stage == Stage::Due {
                prop_assert_eq!(account.documented(), account.to_pay());
            }
            prop_assert_eq!(account.next_document(Some(&rule())), Ok(None));
        }
    }

    #[test]
    fn a_record_with_a_hole_never_reads_as_settled(
        job in proptest::collection::vec(any_event(), 2..25),
        gone in any::<proptest::sample::Index>(),
    ) {
        let mut entries = sheet(job).entries().to_vec();
        entries.remove(gone.index(entries.len() - 1));
        let sheet = fold(entries);
        let account = account(&sheet);
        prop_assert!(!account.complete && !account.is_settled());
        prop_assert_eq!(account.next_document(None), Ok(None));
    }
}
