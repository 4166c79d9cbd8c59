//! Every number of the runs round a face, as a value that a script can read.
//!
//! Lengths in millimetres, angles in degrees from stud 1, studs from 1.

use serde_json::{Value, json};

use super::numbers::mm;
use crate::job::JobState;
use crate::job::runout::{Basis, Found, Run, found, runs};
use crate::trade::runout::{Arrow, Position, Reach, Said, SeriesError, Shape, Undetermined};
use crate::trade::vehicle::Corner;
use crate::units::{Angle, AngleUnit, Length};

/// Every run of every corner, in order.
pub(super) fn runs_round(sheet: &JobState) -> Vec<Value> {
    let at_corner = |corner: &Corner| {
        let runs = runs(sheet, *corner);
        let each = runs.iter().map(|run| one(sheet, *corner, &runs, run));
        each.collect::<Vec<_>>()
    };
    Corner::ALL.iter().flat_map(at_corner).collect()
}

pub(super) fn one(sheet: &JobState, corner: Corner, runs: &[Run], run: &Run) -> Value {
    let (measured, fault) = match found(sheet, runs, run) {
        Ok(found) => (Some(says(&found)), None),
        Err(fault) => (None, Some(fault_code(fault))),
    };
    json!({
        "corner": corner.code(),
        "run": run.nth,
        "surface": run.setup.surface.code(),
        "measured": measured,
        "fault": fault,
    })
}

fn says(found: &Found) -> Value {
    let (shape, undetermined) = match &found.shape {
        Ok(shape) => (Some(shape_of(shape)), None),
        Err(why) => (None, Some(why_open(*why))),
    };
    let best = found.positions.as_ref().and_then(|all| all.first());
    json!({
        "mean": mm(found.series.mean()),
        "tir": mm(found.series.tir()),
        "closure": found.series.closure().map(mm),
        "shape": shape,
        "undetermined": undetermined,
        "runout": found.reach.as_ref().map(reach),
        "against": against(found.limit.map(|spec| spec.most.length()), found.judged.map(Ok)),
        "basis": found.basis.map(Basis::code),
        "positions": found.positions.as_deref().map(positions),
        "best": best.map(|best| best.stud + 1),
        "next": found.next.code(),
    })
}

/// A runout or a variation, freed of scatter, with its 95 % interval.
pub(super) fn reach(reach: &Reach) -> Value {
    let (low, high) = reach.interval();
    json!({
        "read": mm(reach.read()),
        "u": mm(reach.u()),
        "dof": reach.dof(),
        "estimate": mm(reach.estimate()),
        "low": mm(low),
        "high": mm(high),
    })
}

/// How a value stands to its limit.
pub(super) fn against(limit: Option<Length>, said: Option<Said>) -> Value {
    let judged = said.and_then(Result::ok);
    json!({
        "limit": limit.map(mm),
        "conformity": judged.map(|judged| judged.result.code()),
        "conformance": judged.map(|judged| judged.conformance),
    })
}

fn shape_of(shape: &Shape) -> Value {
    let fit = &shape.fit;
    json!({
        "form": shape.form.code(),
        "middle": mm(fit.mean),
        "wobble": wave(&fit.first),
        "warp": fit.second.as_ref().map(wave),
        "rms": mm(fit.rms),
        "spare": fit.spare,
        "condition": fit.condition,
        "without_wobble": mm(fit.without_wobble()),
        "high_spot": shape.high_spot.map(degrees),
        "stands_out": shape.stands_out.map(mm),
    })
}

fn wave(arrow: &Arrow) -> Value {
    json!({
        "amplitude": mm(arrow.amplitude()),
        "phase": arrow.phase().map(degrees),
        "u": mm(arrow.u()),
        "dof": arrow.dof(),
    })
}

/// By stud, so that two alike need no order.
fn positions(all: &[Position]) -> Vec<Value> {
    let mut all: Vec<&Position> = all.iter().collect();
    all.sort_by_key(|position| position.stud);
    let value = |position: &&Position| {
        json!({
            "stud": position.stud + 1,
            "amplitude": mm(position.wobble.amplitude()),
            "u": mm(position.wobble.u()),
        })
    };
    all.iter().map(value).collect()
}

fn degrees(angle: Angle) -> f64 {
    angle.in_unit(AngleUnit::Degree)
}

const fn fault_code(fault: SeriesError) -> &'static str {
    match fault {
        SeriesError::TooFew { .. } => "too_few",
        SeriesError::TooMany { .. } => "too_many",
        SeriesError::OffTheDial { .. } => "off_the_dial",
        SeriesError::MixedDials => "mixed_dials",
        SeriesError::AskTurns { .. } => "ask_turns",
    }
}

pub(super) const fn why_open(why: Undetermined) -> &'static str {
    match why {
        Undetermined::Rank { .. } => "rank",
        Undetermined::Bunched { .. } => "bunched",
        Undetermined::NoSpare { .. } => "no_spare",
    }
}
