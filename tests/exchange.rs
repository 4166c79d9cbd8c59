//! What leaves a phone comes back as it was, or is refused with a reason.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/every.rs"]
mod every;

use every::entry;
use hubslate::exchange::wire::{WireError, decode, encode};
use hubslate::job::entry::{Quantity, Reading, Reply, What};
use proptest::prelude::*;

const LOG: &str = "019c6c21-0e76-762b-b33a-5df32f2a8d00";
const ID: &str = "019c6c21-0e76-762b-b33a-5df32f2a8d01";

proptest! {
    #[test]
    fn everything_that_can_happen_is_read_as_it_was_written(what in every::what()) {
        let entry = entry(LOG, ID, &[LOG], what);
        let text = encode(&entry).unwrap();
        prop_assert_eq!(decode(&text), Ok(entry.clone()), "{}", text);
    }

    #[test]
    fn digits_are_kept_as_typed(typed in every::typed_text()) {
        let number = hubslate::units::Typed::parse(&typed, hubslate::units::DistanceUnit::Mile);
        let reply = Reply::Number(Quantity::Distance(number.unwrap()));
        let what = What::Answered(hubslate::trade::wheel_end::StepKey::once(hubslate::trade::wheel_end::Step::Odometer), reply);
        let text = encode(&entry(LOG, ID, &[], what)).unwrap();
        let shown = format!("\"number\":\"{typed}\"");
        prop_assert!(text.contains(&shown), "{}", text);
        let What::Answered(_, Reply::Number(Quantity::Distance(read))) = decode(&text).unwrap().what else {
            panic!("another kind: {text}");
        };
        prop_assert_eq!(read.number.as_typed(), typed);
    }
}
