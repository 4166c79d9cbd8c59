//! Angles after the torque, and by what they are read.

use crate::job::angled::{AngleBy, AngleGauge};

pub(in crate::text) const fn angled(by: AngleBy) -> &'static str {
    match by {
        AngleBy::Gauge => "angle gauge",
        AngleBy::Swings => "angle by counted swings",
    }
}

pub(in crate::text) const fn angle_not_recorded() -> &'static str {
    "angle: not recorded by what"
}

pub(in crate::text) fn angle_gauge_past(day: &str) -> String {
    format!("angle gauge, to be checked by {day}: overdue")
}

pub(in crate::text) fn angle_next(gauge: AngleGauge) -> String {
    match gauge {
        AngleGauge::OnBoard => "With the angle gauge".to_owned(),
        AngleGauge::PastDue(day) => format!("Angle gauge: overdue since {day}"),
        AngleGauge::Missing => "No angle gauge: count the swings".to_owned(),
    }
}

pub(in crate::text) fn angle_lacks(item: &str, angle: &str, gauge: AngleGauge) -> Option<String> {
    let why = match gauge {
        AngleGauge::OnBoard => return None,
        AngleGauge::PastDue(day) => format!("the angle gauge was to be checked by {day}"),
        AngleGauge::Missing => {
            "no angle gauge in the van: take one, or count swings at the car".to_owned()
        }
    };
    Some(format!("{item}, {angle}: {why}"))
}

pub(in crate::text) const fn angle_due() -> &'static str {
    "Check the angle gauge by (year-month-day)"
}
