//! The angle gauge before leaving, and what is noted of an angle.
use super::*;
use crate::job::entry::Carried;
use crate::job::recorded::sheet;
use crate::job::turn::Turning;
use crate::job::turn::tests::{angle, kit, planned, spec, torque};
use crate::trade::wheel_end::{ItemKind, Step};

fn with(noted: Option<bool>, due: Option<&str>) -> Event {
    let Event::Carried(mut carried) = kit() else {
        panic!("the kit is the instruments carried");
    };
    carried.more.angle_gauge = noted;
    carried.more.angle_due = due.map(|day| day.parse().unwrap());
    Event::Carried(Carried { ..carried })
}

#[test]
fn the_more_careful_word_about_the_angle_gauge_holds() {
    let today = || Some("2027-03-02".parse().unwrap());
    let gauge = |whats: &[Event]| angle_gauge(&sheet(whats), today());
    let looked = Event::Missing(Vec::new());
    let lacks = Event::Missing(vec![KitItem::AngleGauge]);
    assert_eq!(gauge(&[]), AngleGauge::Missing);
    assert_eq!(gauge(&[kit()]), AngleGauge::Missing);
    assert_eq!(gauge(&[kit(), looked.clone()]), AngleGauge::OnBoard);
    assert_eq!(gauge(&[with(Some(true), None)]), AngleGauge::OnBoard);
    assert_eq!(
        gauge(&[with(Some(false), None), looked]),
        AngleGauge::Missing
    );
    assert_eq!(gauge(&[with(Some(true), None), lacks]), AngleGauge::Missing);
    // On the day itself it may still be used, as the dial may.
    let on_the_day = with(Some(true), Some("2027-03-02"));
    assert_eq!(gauge(&[on_the_day]), AngleGauge::OnBoard);
    let past = "2027-03-01";
    let due = AngleGauge::PastDue(past.parse().unwrap());
    assert_eq!(gauge(&[with(Some(true), Some(past))]), due);
}

#[test]
fn only_specs_with_an_angle_ask_for_the_gauge() {
    let specs = [
        spec(SpecItem::AxleNut, vec![torque("180"), angle("60")]),
        spec(SpecItem::LugNuts, vec![torque("120")]),
    ];
    let sheet = sheet(&specs);
    let asked = angle_specs(&sheet);
    let asked: Vec<_> = asked
        .iter()
        .map(|(item, angle)| (*item, angle.number.as_typed()))
        .collect();
    assert_eq!(asked, [(SpecItem::AxleNut, "60")]);
}

#[test]
fn each_bolt_is_reported_by_what_its_angle_was_read_and_nothing_is_reported_twice() {
    let planned = planned(Step::TurnHubBolts, ItemKind::HubBolts);
    let stages = vec![torque("60"), angle("90")];
    let mut whats = vec![with(Some(true), None), spec(SpecItem::HubBolts, stages)];
    let turn = |whats: &[Event]| {
        let turning = Turning::of(&sheet(whats), &planned, ItemKind::HubBolts).unwrap();
        turning.tap().unwrap()
    };
    for _ in 0..4 {
        whats.push(turn(&whats));
    }
    for swings in [0, 0, 6, 6] {
        whats.extend(recorded(&sheet(&whats), planned.key, swings));
        whats.push(turn(&whats));
    }
    let now = sheet(&whats);
    let noted = now
        .counting()
        .filter(|entry| matches!(entry.what, Event::Angled(..)));
    assert_eq!(noted.count(), 2);
    let angles = angles(&now);
    let turned = now
        .counting()
        .filter(|entry| matches!(entry.what, Event::Moved(_)));
    let by: Vec<Option<AngleBy>> = turned.map(|entry| angles.get(&entry.id).copied()).collect();
    let (gauge, swings) = (Some(AngleBy::Gauge), Some(AngleBy::Swings));
    assert_eq!(by[4..], [gauge, gauge, swings, swings]);
    assert_eq!(by[..4], [None; 4]);
    // Without a gauge and without a swing nobody knows by what it was read.
    let bare = sheet(&[with(Some(false), None)]);
    assert_eq!(recorded(&bare, planned.key, 0), None);
}
