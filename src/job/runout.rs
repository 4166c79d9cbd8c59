//! From the entries of a corner to its runs round a face, and what the trade says of each.

use crate::job::entry::{Event, RunoutReading, RunoutSpec, Setup, VehicleField};
use crate::job::judge::indicator;
use crate::job::sheet::JobState;
use crate::job::typed_spec::SpecInputError;
use crate::trade::answer::Answer;
use crate::trade::fastening::SpecSource;
use crate::trade::fastening::spec::SpecError;
use crate::trade::play::Dial;
use crate::trade::play::conformity::Judged;
use crate::trade::runout::series::{MOST_PLACES, equal_step, is_same_place};
use crate::trade::runout::{
    Known, LeftOut, Next, Position, Reach, RunoutLimit, Series, SeriesError, Shape, Studs, Surface,
    Undetermined, compare, next, positions, reach, shape,
};
use crate::trade::vehicle::Corner;
use crate::units::{
    Angle, AngleUnit, Decimal, DecimalError, Length, LengthUnit, Typed, TypedAngle, TypedLength,
};
use crate::words;

mod needle;
mod on_studs;

use on_studs::recorded;

pub use on_studs::Basis;

/// The places that are offered, the usual number first in mind: eight. Fewer than five leave no
/// reading to tell scatter by.
pub const PLACES: [u8; 6] = [5, 6, 8, 10, 12, 24];
/// As many places as are read where nobody chose.
pub const USUAL_PLACES: u8 = 8;

words! {
    /// How the places of a run are found.
    pub enum Angles {
        /// At equal steps from stud 1.
        Equal = "equal",
        /// Each where it can be reached, at the angle that is typed.
        Typed = "typed",
    }
}

/// Why a typed angle names no place of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AngleError {
    /// It is no number.
    Number(DecimalError),
    /// It is not from 0° to 360°.
    OffTheTurn,
    /// Another place has it already; 360° is 0° again.
    Taken {
        /// Which place.
        place: u8,
    },
}

/// Why a typed number is no radius.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RadiusError {
    /// It is no number.
    Number(DecimalError),
    /// It is not above zero.
    NotAboveZero,
}

/// One run round a face: its readings by place.
#[derive(Clone, Debug, PartialEq)]
pub struct Run<'a> {
    /// Which run at this corner, from 1.
    pub nth: u8,
    /// How it is set up.
    pub setup: Setup,
    /// The dial it is read on.
    pub dial: Dial,
    /// Read or skipped, by place.
    pub readings: Vec<&'a RunoutReading>,
}

/// What a run says.
#[derive(Clone, Debug, PartialEq)]
pub struct Found<'a> {
    /// The readings.
    pub series: Series,
    /// The waves and the shape, or why the places do not tell them.
    pub shape: Result<Shape, Undetermined>,
    /// The runout itself and how sure it is; none while the shape cannot be told.
    pub reach: Option<Reach>,
    /// The limit that was looked up.
    pub limit: Option<&'a RunoutSpec>,
    /// What the comparison says.
    pub judged: Option<Judged>,
    /// The rotor on every stud, the best first, once that can be told.
    pub positions: Option<Vec<Position>>,
    /// What the positions are told from.
    pub basis: Option<Basis>,
    /// What comes next.
    pub next: Next,
}

/// The runs of a corner, in order. The set-up of a run is that of its first reading.
pub fn runs(sheet: &JobState, corner: Corner) -> Vec<Run<'_>> {
    let mut runs: Vec<Run> = Vec::new();
    for reading in sheet.runout(corner) {
        match runs.last_mut() {
            Some(run) if run.nth == reading.run => run.readings.push(reading),
            _ => runs.push(Run {
                nth: reading.run,
                setup: reading.setup,
                dial: reading.dial,
                readings: vec![reading],
            }),
        }
    }
    runs
}

impl Run<'_> {
    /// How its places are found: the first one says.
    pub fn angles(&self) -> Angles {
        match self.readings.first() {
            Some(first) if first.angle.is_some() => Angles::Typed,
            _ => Angles::Equal,
        }
    }

    /// How far the tip stands from the axle's middle: the first place says.
    pub fn radius(&self) -> Option<Length> {
        let radius = self.readings.first()?.radius.as_ref()?;
        Some(radius.length())
    }

    /// The angle of a place that is to be read, as typed.
    ///
    /// # Errors
    /// [`AngleError`] where it names none, or one that another place has.
    pub fn place_typed(&self, place: u8, text: &str) -> Result<TypedAngle, AngleError> {
        let typed = angle_typed(text)?;
        let mut others = self
            .readings
            .iter()
            .filter(|other| other.place != place && other.place <= self.setup.places)
            .filter(|other| other.angle.is_some());
        match others.find(|other| is_same_place(angle(other), typed.angle())) {
            Some(other) => Err(AngleError::Taken { place: other.place }),
            None => Ok(typed),
        }
    }

    /// The reading of a place, if it was read or skipped.
    pub fn at(&self, place: u8) -> Option<&RunoutReading> {
        let mut readings = self.readings.iter().copied();
        readings.find(|reading| reading.place == place)
    }

    /// The first place that was neither read nor skipped; none when the run is whole.
    pub fn next_place(&self) -> Option<u8> {
        (1..=self.setup.places).find(|place| self.at(*place).is_none())
    }
}

/// Where a reading was taken, from stud 1 in the numbering direction.
pub fn angle(reading: &RunoutReading) -> Angle {
    let step = || place_angle(reading.place, reading.setup.places);
    reading.angle.as_ref().map_or_else(step, Typed::angle)
}

/// An angle from stud 1 in degrees, as typed.
///
/// # Errors
/// [`AngleError`] where it is no number or beyond a turn.
pub fn angle_typed(text: &str) -> Result<TypedAngle, AngleError> {
    let typed = Typed::parse(text, AngleUnit::Degree).map_err(AngleError::Number)?;
    if (0.0..=360.0).contains(&typed.number.value()) {
        Ok(typed)
    } else {
        Err(AngleError::OffTheTurn)
    }
}

/// The radius that a tip stands at, as typed; none where nothing is typed.
///
/// # Errors
/// [`RadiusError`] where it is no radius.
pub fn radius_typed(text: &str, unit: LengthUnit) -> Result<Option<TypedLength>, RadiusError> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let typed = TypedLength::parse(text, unit).map_err(RadiusError::Number)?;
    if typed.length() > Length::ZERO {
        Ok(Some(typed))
    } else {
        Err(RadiusError::NotAboveZero)
    }
}

/// The equal step of a place, from stud 1.
pub fn place_angle(place: u8, places: u8) -> Angle {
    equal_step(usize::from(place.saturating_sub(1)), usize::from(places))
}

/// How many studs the vehicle's wheels have, if that is known.
pub fn studs(sheet: &JobState) -> Option<Studs> {
    let count = sheet.vehicle(VehicleField::Studs)?;
    Studs::new(count.parse().ok()?).ok()
}

/// What one run says, beside the other runs of its corner.
///
/// # Errors
/// [`SeriesError`] while there are too few readings.
pub fn found<'a>(sheet: &'a JobState, runs: &[Run], run: &Run) -> Result<Found<'a>, SeriesError> {
    let series = run.series()?;
    let shape = shape(&series);
    let reach = shape.as_ref().ok().and_then(|shape| {
        let error = indicator(sheet, &run.dial);
        reach(&series, shape.moves, error).ok()
    });
    let surface = run.setup.surface;
    let limit = sheet.runout_limit(surface);
    let most = limit.and_then(|spec| RunoutLimit::manufacturer(surface, spec.most.length()).ok());
    let judged = most
        .zip(reach)
        .and_then(|(most, reach)| compare(surface, &reach, &most).ok());
    let recorded = recorded(sheet, runs, run, &shape).zip(studs(sheet));
    let recorded = recorded
        .and_then(|((basis, recorded), studs)| Some((basis, positions(&recorded, studs).ok()?)));
    let (basis, positions) = recorded.unzip();
    let next = match (&shape, reach) {
        (Ok(shape), Some(reach)) => {
            let best = positions.as_ref().and_then(|all| all.first().copied());
            let could_read_more = series.saved().count() < usize::from(MOST_PLACES);
            next(&Known {
                surface,
                form: shape.form,
                judged,
                limit: most.map(|most| most.value()),
                more_would_tell: could_read_more && reach.is_mostly_scatter(),
                cleaned: run.setup.cleaned == Answer::Yes,
                without_wobble: shape.fit.without_wobble(),
                best: best.map(|best| (best, run.setup.stud.saturating_sub(1))),
            })
        }
        _ => Next::ReadMore,
    };
    Ok(Found {
        series,
        shape,
        reach,
        limit,
        judged,
        positions,
        basis,
        next,
    })
}

/// The place and run of a reading that is to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spotted {
    /// Where.
    pub corner: Corner,
    /// Which run, from 1.
    pub run: u8,
    /// How it is set up.
    pub setup: Setup,
    /// Which place, from 1.
    pub place: u8,
    /// Its angle, where the run has typed ones.
    pub angle: Option<TypedAngle>,
    /// How far the tip stands from the axle's middle, if anybody told.
    pub radius: Option<TypedLength>,
}

/// The entry of one place with its whole turns where they were asked for; `None` while the number
/// is not finished.
pub fn saved(sheet: &JobState, at: Spotted, text: &str, turns: Option<i32>) -> Option<Event> {
    let divisions = Decimal::parse(text).ok()?;
    Some(reading(sheet, at, Some((divisions, turns))))
}

/// The entry of a place that could not be read.
pub fn skipped(sheet: &JobState, at: Spotted) -> Event {
    reading(sheet, at, None)
}

fn reading(sheet: &JobState, at: Spotted, read: Option<(Decimal, Option<i32>)>) -> Event {
    let (divisions, turns) = read.unzip();
    Event::Runout(RunoutReading {
        corner: at.corner,
        run: at.run,
        setup: at.setup,
        place: at.place,
        angle: at.angle,
        radius: at.radius,
        divisions,
        turns: turns.flatten(),
        dial: sheet.dial(),
        left_out: None,
    })
}

/// The same reading, counting or left out.
pub fn marked(reading: &RunoutReading, left_out: Option<LeftOut>) -> Event {
    Event::Runout(RunoutReading {
        left_out,
        ..reading.clone()
    })
}

/// The spec of a limit of run-out.
///
/// # Errors
/// The first [`CardInputError`].
pub fn limit_spec(
    surface: Surface,
    value: &str,
    unit: LengthUnit,
    source: SpecSource,
) -> Result<RunoutSpec, SpecInputError> {
    let most = Typed::parse(value, unit).map_err(SpecInputError::Value)?;
    if most.length() < Length::ZERO {
        return Err(SpecInputError::Fault(SpecError::NegativeLimit));
    }
    if source.document.trim().is_empty() || source.who.trim().is_empty() {
        return Err(SpecInputError::Fault(SpecError::NoSource));
    }
    Ok(RunoutSpec {
        surface,
        most,
        source,
    })
}

#[cfg(test)]
mod tests;
