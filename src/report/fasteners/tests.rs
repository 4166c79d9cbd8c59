//! What went wrong, on the owner's page and on the technician's.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use crate::job::also::Also;
use crate::job::entry::{Consent, How, Scope, What};
use crate::job::mishap::Mishap;
use crate::report::sample;
use crate::report::tests::{never_says, report, says, told};
use crate::trade::fastening::MishapKind;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Group, Item, Step, StepKey};

#[test]
fn what_broke_and_what_was_named_by_hand_are_told_with_part_time_and_answer() {
    let item = |group, number| Item {
        corner: Corner::FrontLeft,
        group,
        number,
    };
    let step = StepKey::at(Step::TurnWheelNuts, Corner::FrontLeft);
    let mut job = sample::left_unfinished();
    job.tap(vec![What::Mishap(Mishap {
        step,
        item: item(Group::WheelNuts, 3),
        kind: MishapKind::Sheared,
        part: "stud and nut".to_owned(),
        minutes: 40,
    })]);
    job.tap(vec![What::Consent(Consent {
        step,
        scope: Scope::Extra,
        yes: false,
        how: How::Spoken,
        amount: None,
    })]);
    job.tap(vec![What::Also(Also {
        item: item(Group::Other, 1),
        name: "hose bracket".to_owned(),
        card: None,
    })]);
    let report = report(&job);
    let (page, pages) = (told(&report.page_one), told(&report.technician));
    says(
        &page,
        &[
            "Extra work",
            "hose bracket, front left",
            "Wheel nuts 1–5, front left",
        ],
    );
    says(
        &pages,
        &["Wheel nut 3, front left: Stud or bolt broke; part: stud and nut; 40 min more"],
    );
    never_says(&page, &["Also off 1"]);
}
