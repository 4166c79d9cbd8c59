//! What runs round a face and measured rotors say: as it was recorded, else as today's rules give
//! it.
//!
//! Nothing is judged here: the rules stand in `trade::runout`.

use crate::job::entry::{
    AgainstLimit, Event, FaceFound, ReachFound, RotorFound, RunoutSpec, ShapeFound, VehicleField,
    length, round,
};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::job::{runout, thickness};
use crate::trade::runout::rules::RUNOUT_RULES_VERSION;
use crate::trade::runout::{SeriesError, Surface, ThicknessError, Undetermined};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::ItemKind;

/// What today's rules say of a run of a corner, as it is recorded.
///
/// # Errors
/// [`SeriesError`] while there are too few readings.
pub fn face_today(
    sheet: &JobState,
    corner: Corner,
    run: &runout::Run,
) -> Result<FaceFound, SeriesError> {
    let found = runout::found(sheet, &runout::runs(sheet, corner), run)?;
    Ok(FaceFound::today(corner, run, &found))
}

/// What today's rules say of a measurement of a rotor, as it is recorded.
///
/// # Errors
/// [`ThicknessError`] while there are too few readings.
pub fn rotor_today(
    sheet: &JobState,
    corner: Corner,
    of: &thickness::Measurement,
) -> Result<RotorFound, ThicknessError> {
    let found = thickness::found(sheet, corner, of)?;
    Ok(RotorFound::today(corner, of.nth, &found))
}

/// What a run of a corner says: what was recorded, if it stands.
///
/// # Errors
/// [`SeriesError`] while there are too few readings and nothing is recorded.
pub fn face(sheet: &JobState, corner: Corner, run: &runout::Run) -> Result<FaceFound, SeriesError> {
    match face_recorded(sheet, corner, run) {
        Some(found) => Ok(found.clone()),
        None => face_today(sheet, corner, run),
    }
}

/// What a measurement of a rotor says: what was recorded, if it stands.
///
/// # Errors
/// [`ThicknessError`] while there are too few readings and nothing is recorded.
pub fn rotor(
    sheet: &JobState,
    corner: Corner,
    of: &thickness::Measurement,
) -> Result<RotorFound, ThicknessError> {
    match rotor_recorded(sheet, corner, of.nth) {
        Some(found) => Ok(found.clone()),
        None => rotor_today(sheet, corner, of),
    }
}

/// What a run said as it was recorded, unless something that it rests on was told or taken back
/// since, or on another phone beside it. The limit and the studs may stand on the paper of an
/// earlier visit.
pub fn face_recorded<'a>(
    sheet: &'a JobState,
    corner: Corner,
    run: &runout::Run,
) -> Option<&'a FaceFound> {
    let entry = sheet.holds(&Key::FaceFound(corner, run.nth))?;
    let surface = run.setup.surface;
    // The rotor on every stud is told from an earlier run too, unless the hub came off between.
    let is_rotor = surface == Surface::Rotor;
    let rests_on = |key: &Key| match key {
        Key::Runout(at, nth, _) => {
            *at == corner && (*nth == run.nth || (is_rotor && *nth < run.nth))
        }
        Key::Item(item) => is_rotor && item.corner == corner && item.group == ItemKind::HubBolts,
        Key::RunoutLimit(of) => *of == surface,
        Key::Vehicle(VehicleField::Studs) | Key::Carried | Key::FromPaper => true,
        _ => false,
    };
    let stands = sheet.had_seen_all(entry, rests_on);
    sheet.face_found(corner, run.nth).filter(|_| stands)
}

/// What a rotor said as it was recorded, unless something that it rests on was told or taken back
/// since, or on another phone beside it: its places may be those of the runout.
pub fn rotor_recorded(sheet: &JobState, corner: Corner, run: u8) -> Option<&RotorFound> {
    let entry = sheet.holds(&Key::RotorFound(corner, run))?;
    let rests_on = |key: &Key| match key {
        Key::Thickness(at, nth, _) => (*at, *nth) == (corner, run),
        Key::Runout(at, ..) => *at == corner,
        Key::ThicknessLimit(axle, _) => *axle == corner.axle(),
        Key::FromPaper => true,
        _ => false,
    };
    let stands = sheet.had_seen_all(entry, rests_on);
    sheet.rotor_found(corner, run).filter(|_| stands)
}

/// What is to be recorded: of every run and every rotor that gives a result, unless it stands
/// recorded.
pub fn owed(sheet: &JobState) -> Vec<Event> {
    let mut owed = Vec::new();
    for corner in sheet.corners() {
        let runs = runout::runs(sheet, *corner);
        let runs = runs
            .iter()
            .filter(|run| face_recorded(sheet, *corner, run).is_none());
        owed.extend(
            runs.filter_map(|run| face_today(sheet, *corner, run).ok())
                .map(Box::new)
                .map(Event::FaceFound),
        );
        let rotors = thickness::measurements(sheet, *corner);
        let rotors = rotors
            .iter()
            .filter(|of| rotor_recorded(sheet, *corner, of.nth).is_none());
        owed.extend(
            rotors
                .filter_map(|of| rotor_today(sheet, *corner, of).ok())
                .map(Box::new)
                .map(Event::RotorFound),
        );
    }
    owed
}

impl FaceFound {
    /// What today's rules say of a run.
    pub fn today(corner: Corner, run: &runout::Run, found: &runout::Found) -> Self {
        let positions = found.positions.iter().flatten().map(|position| {
            let reach = position.wobble.expected().ok()?;
            Some((position.stud, ReachFound::of(&reach)))
        });
        let positions: Option<Vec<_>> = positions.collect();
        let shape = found.shape.as_ref();
        let against = |spec: &RunoutSpec| AgainstLimit::of(spec.clone(), found.judged);
        Self {
            corner,
            run: run.nth,
            rules: RUNOUT_RULES_VERSION,
            surface: run.setup.surface,
            tir: length(found.series.tir()),
            closure: found.series.closure().map(length),
            shape: shape.map(ShapeFound::of).map_err(|why| why_open(*why)),
            reach: found.reach.as_ref().map(ReachFound::of),
            against: found.limit.map(against),
            positions: found.basis.zip(positions),
            next: found.next,
        }
    }
}

impl RotorFound {
    /// What today's rules say of a measurement.
    pub fn today(corner: Corner, run: u8, found: &thickness::Found) -> Self {
        let against = |it: &thickness::Against| AgainstLimit::of(it.spec.clone(), it.said.ok());
        let varies = found.varies.as_ref();
        let of = &found.thickness;
        let budget = of.budget_of_thinnest();
        Self {
            corner,
            run,
            rules: RUNOUT_RULES_VERSION,
            thinnest: length(of.thinnest()),
            place: found.ends.0,
            u: length(budget.u_c),
            guard_band: length(budget.guard_band()),
            thickest: length(of.thickest()),
            varies: varies.map(ReachFound::of).map_err(|why| why_open(*why)),
            least: found.least.as_ref().map(against),
            variation: found.variation.as_ref().map(against),
            next: found.next,
        }
    }
}

/// Why the places do not tell a shape, as it is stored.
fn why_open(why: Undetermined) -> Undetermined {
    match why {
        Undetermined::Bunched { condition } => Undetermined::Bunched {
            condition: round(condition),
        },
        why => why,
    }
}

#[cfg(test)]
#[path = "found/tests.rs"]
mod tests;
