//! What went wrong, on the customer's page and on the technician's.
use crate::job::angled::AngleBy;
use crate::job::entry::{Consent, Event, How, Scope};
use crate::job::manual_item::Also;
use crate::job::mishap::Mishap;
use crate::job::turn::tests::{angle, spec, torque};
use crate::report::tests::{context, never_says, report, says};
use crate::report::{Block, sample};
use crate::trade::fastening::{MishapKind, SpecItem};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind, Step, StepKey};

#[test]
fn what_broke_and_what_was_named_by_hand_are_reported_with_part_time_and_answer() {
    let item = |group, number| Item {
        corner: Corner::FrontLeft,
        group,
        number,
    };
    let step = StepKey::at(Step::TurnLugNuts, Corner::FrontLeft);
    let mut job = sample::left_unfinished();
    job.tap(vec![Event::Mishap(Mishap {
        step,
        item: item(ItemKind::LugNuts, 3),
        kind: MishapKind::Sheared,
        part: "stud and nut".to_owned(),
        minutes: 40,
    })]);
    job.tap(vec![Event::Consent(Consent {
        step,
        scope: Scope::Extra,
        yes: false,
        how: How::Spoken,
        amount: None,
    })]);
    job.tap(vec![Event::Also(Also {
        item: item(ItemKind::Other, 1),
        name: "hose bracket".to_owned(),
        spec: None,
    })]);
    let report = report(&job);
    let (page, pages) = (context(&report.page_one), context(&report.technician));
    says(
        &page,
        &[
            "Extra work",
            "hose bracket, front left",
            "Lug nuts 1–5, front left",
        ],
    );
    says(
        &pages,
        &["Lug nut 3, front left: Stud or bolt broke; part: stud and nut; 40 min more"],
    );
    never_says(&page, &["Also off 1"]);
}

#[test]
fn an_angle_names_by_what_it_was_read_beside_the_wrench() {
    let step = StepKey::at(Step::TurnAxleNut, Corner::FrontLeft);
    let nut = |context: Option<AngleBy>, due: Option<&str>| {
        let mut job = sample::packed(None, sample::play_spec("0.05"));
        let mut carried = job.sheet().carried().unwrap().clone();
        carried.more.angle_gauge = Some(true);
        carried.more.angle_due = due.map(|day| day.parse().unwrap());
        let stages = vec![torque("180"), angle("60")];
        job.tap(vec![
            Event::Carried(carried),
            spec(SpecItem::AxleNut, stages),
        ]);
        job.tap(
            context
                .map(|by| Event::Angled(step, by))
                .into_iter()
                .collect(),
        );
        job.turned(Step::TurnAxleNut, ItemKind::AxleNut, "180");
        let report = report(&job);
        let table = report.technician.iter().find_map(|block| match block {
            Block::Table { head, rows } if head.len() == 5 && head[2] == "Wrench" => Some(rows),
            _ => None,
        });
        table.unwrap()[0][2].clone()
    };
    let (gauge, swings) = (Some(AngleBy::Gauge), Some(AngleBy::Swings));
    assert_eq!(nut(gauge, None), "long wrench; angle gauge");
    assert_eq!(nut(swings, None), "long wrench; angle by counted swings");
    assert_eq!(nut(None, None), "long wrench; angle: not recorded by what");
    // The job is of 2025-03-04.
    let past = "long wrench; angle gauge, to be checked by 2025-03-03: overdue";
    assert_eq!(nut(gauge, Some("2025-03-03")), past);
    assert_eq!(nut(gauge, Some("2025-03-04")), "long wrench; angle gauge");
}

#[test]
fn a_wrench_past_its_check_is_reported_beside_what_it_turned() {
    let wrench = |checked: &str| {
        let mut job = sample::packed(None, sample::play_spec("0.05"));
        let mut carried = job.sheet().carried().unwrap().clone();
        carried.wrenches[0].upkeep.checked = Some(checked.parse().unwrap());
        job.tap(vec![Event::Carried(carried)]);
        job.turned(Step::TurnAxleNut, ItemKind::AxleNut, "180.5");
        let report = report(&job);
        let table = report.technician.iter().find_map(|block| match block {
            Block::Table { head, rows } if head.len() == 5 && head[2] == "Wrench" => Some(rows),
            _ => None,
        });
        table.unwrap()[0][2].clone()
    };
    // The job is of 2025-03-04; ISO 6789-1 has a wrench checked after twelve months.
    let good = wrench("2024-06-01");
    assert!(!good.contains("overdue"), "{good}");
    let past = wrench("2023-06-01");
    assert!(past.starts_with("long wrench; wrench overdue: "), "{past}");
}
