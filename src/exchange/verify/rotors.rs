//! Every number of the rotors under a micrometer, as a value that a script can read.
//!
//! Lengths in millimetres, places from 1.

use serde_json::{Value, json};

use super::faces::{against, reach, why_open};
use super::numbers::mm;
use crate::job::JobState;
use crate::job::thickness::{Against, Found, Measurement, found, measurements};
use crate::trade::runout::ThicknessError;
use crate::trade::vehicle::Corner;

/// Every measurement of every corner, in order.
pub(super) fn measured(sheet: &JobState) -> Vec<Value> {
    let at_corner = |corner: &Corner| {
        let all = measurements(sheet, *corner);
        let each = all.iter().map(|one| of(sheet, *corner, one));
        each.collect::<Vec<_>>()
    };
    Corner::ALL.iter().flat_map(at_corner).collect()
}

pub(super) fn of(sheet: &JobState, corner: Corner, one: &Measurement) -> Value {
    let (measured, fault) = match found(sheet, corner, one) {
        Ok(found) => (Some(says(&found)), None),
        Err(fault) => (None, Some(fault_code(fault))),
    };
    json!({
        "corner": corner.code(),
        "run": one.nth,
        "measured": measured,
        "fault": fault,
    })
}

fn says(found: &Found) -> Value {
    let bound = |recorded: Option<&Against>| {
        let limit = recorded.map(|recorded| recorded.spec.value.length());
        against(limit, recorded.map(|recorded| recorded.said))
    };
    json!({
        "thinnest": mm(found.thickness.thinnest()),
        "thickest": mm(found.thickness.thickest()),
        "range": mm(found.thickness.range()),
        "u_of_thinnest": mm(found.thickness.budget_of_thinnest().u_c),
        "varies": found.varies.as_ref().ok().map(reach),
        "undetermined": found.varies.as_ref().err().map(|why| why_open(*why)),
        "thinnest_at": found.ends.0,
        "thickest_at": found.ends.1,
        "least": bound(found.least.as_ref()),
        "variation": bound(found.variation.as_ref()),
        "next": found.next.code(),
    })
}

const fn fault_code(fault: ThicknessError) -> &'static str {
    match fault {
        ThicknessError::TooFew { .. } => "too_few",
        ThicknessError::TooMany { .. } => "too_many",
        ThicknessError::NoThickness { .. } => "no_thickness",
        ThicknessError::Division { .. } => "division",
    }
}
