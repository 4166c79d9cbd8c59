//! From the entries of a corner to its rotor under the micrometer, and what the trade says of it.

use crate::job::entry::{Event, Gauging, RunoutReading, ThicknessReading, ThicknessSpec};
use crate::job::runout::{USUAL_PLACES, angle, place_angle, runs};
use crate::job::sheet::JobState;
use crate::job::typed_spec::SpecInputError;
use crate::trade::fastening::SpecSource;
use crate::trade::fastening::spec::SpecError;
use crate::trade::runout::{
    Bound, Reach, RotorNext, Said, Surface, Thickness, ThicknessError, Undetermined, next_of_rotor,
};
use crate::trade::vehicle::{Axle, Corner};
use crate::units::{Angle, DecimalError, Length, LengthUnit, TypedLength};

/// One measurement of a rotor: its readings by place.
#[derive(Clone, Debug, PartialEq)]
pub struct Measurement<'a> {
    /// Which one at this corner, from 1.
    pub nth: u8,
    /// How it is measured: as at its first place.
    pub gauging: Gauging,
    /// Measured or skipped, by place.
    pub readings: Vec<&'a ThicknessReading>,
}

/// What a measurement says.
#[derive(Clone, Debug, PartialEq)]
pub struct Found<'a> {
    /// The readings.
    pub thickness: Thickness,
    /// The places with the thinnest and the thickest reading, from 1.
    pub ends: (u8, u8),
    /// How much it varies beyond scatter, or why the places do not tell.
    pub varies: Result<Reach, Undetermined>,
    /// Against the least thickness, if that was looked up.
    pub least: Option<Against<'a>>,
    /// Against the most variation, if that was looked up.
    pub variation: Option<Against<'a>>,
    /// What comes next.
    pub next: RotorNext,
}

/// A measurement against one limit.
#[derive(Clone, Debug, PartialEq)]
pub struct Against<'a> {
    /// The limit.
    pub spec: &'a ThicknessSpec,
    /// What the comparison says; "over" is the bad side.
    pub said: Said,
}

/// Why a typed number is no thickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThicknessInputError {
    /// It is no number.
    Number(DecimalError),
    /// It is not above zero.
    NotAboveZero,
}

/// The measurements of a corner, in order.
pub fn measurements(sheet: &JobState, corner: Corner) -> Vec<Measurement<'_>> {
    let mut all: Vec<Measurement> = Vec::new();
    for reading in sheet.thickness(corner) {
        match all.last_mut() {
            Some(last) if last.nth == reading.run => last.readings.push(reading),
            _ => all.push(Measurement {
                nth: reading.run,
                gauging: reading.gauging,
                readings: vec![reading],
            }),
        }
    }
    all
}

impl Measurement<'_> {
    /// The reading of a place, if it was measured or skipped.
    pub fn at(&self, place: u8) -> Option<&ThicknessReading> {
        let mut readings = self.readings.iter().copied();
        readings.find(|reading| reading.place == place)
    }

    /// The first place that was neither measured nor skipped; none when the rotor is done.
    pub fn next_place(&self) -> Option<u8> {
        (1..=self.gauging.places).find(|place| self.at(*place).is_none())
    }

    /// How much thicker than at the first measured place, while the text is a number.
    pub fn from_first(&self, text: &str) -> Option<Length> {
        let (_, first) = self.measured().next()?;
        let here = typed(self.gauging, text).ok()?;
        Some(here.length().minus(first))
    }

    /// The places that were measured.
    pub fn measured(&self) -> impl Iterator<Item = (u8, Length)> + '_ {
        self.readings
            .iter()
            .filter_map(|reading| Some((reading.place, reading.thickness.as_ref()?.length())))
    }

    /// The readings as a thickness, each at its angle.
    ///
    /// # Errors
    /// [`ThicknessError`] where they are none.
    pub fn thickness(&self, sheet: &JobState, corner: Corner) -> Result<Thickness, ThicknessError> {
        let at = |place| angle_of(sheet, corner, self.gauging, place);
        let readings = self.measured();
        let readings = readings.map(|(place, thickness)| (at(place), thickness));
        Thickness::read(self.gauging.micrometer.division(), readings.collect())
    }
}

/// The angle of a place: that of the runout where it has as many places, else its equal step.
pub fn angle_of(sheet: &JobState, corner: Corner, gauging: Gauging, place: u8) -> Angle {
    match same_place(sheet, corner, gauging, place) {
        Some(reading) => angle(reading),
        None => place_angle(place, gauging.places),
    }
}

/// As many places as the rotor's run-out was read at, else the usual number.
pub fn places_of(sheet: &JobState, corner: Corner) -> u8 {
    let runs = runs(sheet, corner);
    let rotor = runs.iter().rev();
    let mut rotor = rotor.filter(|run| run.setup.surface == Surface::Rotor);
    rotor.next().map_or(USUAL_PLACES, |run| run.setup.places)
}

/// The reading of the rotor's run-out at the same place, where it has as many places.
pub fn same_place(
    sheet: &JobState,
    corner: Corner,
    gauging: Gauging,
    place: u8,
) -> Option<&RunoutReading> {
    let readings = sheet.runout(corner).filter(|reading| {
        let setup = reading.setup;
        setup.surface == Surface::Rotor && setup.places == gauging.places && reading.place == place
    });
    readings.last()
}

/// What one measurement says.
///
/// # Errors
/// [`ThicknessError`] while there are too few readings.
pub fn found<'a>(
    sheet: &'a JobState,
    corner: Corner,
    of: &Measurement,
) -> Result<Found<'a>, ThicknessError> {
    let thickness = of.thickness(sheet, corner)?;
    let varies = thickness.variation();
    let against = |bound| {
        let spec = sheet.thickness_limit(corner.axle(), bound)?;
        let limit = spec.value.length();
        let said = match bound {
            Bound::Least => Ok(thickness.is_thin(limit)),
            Bound::Variation => varies.map(|reach| reach.against(limit)),
        };
        Some(Against { spec, said })
    };
    let (least, variation) = (against(Bound::Least), against(Bound::Variation));
    let said = |against: &Option<Against>| against.as_ref().map(|it| it.said);
    let at = |wanted: Length| {
        let mut measured = of.measured();
        measured
            .find(|(_, one)| *one == wanted)
            .map_or(1, |it| it.0)
    };
    Ok(Found {
        ends: (at(thickness.thinnest()), at(thickness.thickest())),
        next: next_of_rotor(said(&least).and_then(Result::ok), said(&variation)),
        varies,
        least,
        variation,
        thickness,
    })
}

/// A typed thickness.
///
/// # Errors
/// [`ThicknessInputError`] where it is none.
pub fn typed(gauging: Gauging, text: &str) -> Result<TypedLength, ThicknessInputError> {
    let unit = gauging.micrometer.unit();
    let typed = TypedLength::parse(text, unit).map_err(ThicknessInputError::Number)?;
    if typed.length() > Length::ZERO {
        Ok(typed)
    } else {
        Err(ThicknessInputError::NotAboveZero)
    }
}

/// The place of a reading that is to be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Where.
    pub corner: Corner,
    /// Which measurement, from 1.
    pub run: u8,
    /// How it is measured.
    pub gauging: Gauging,
    /// Which place, from 1.
    pub place: u8,
}

impl Placed {
    /// The entry of this place.
    ///
    /// # Errors
    /// [`ThicknessInputError`] where the text is no thickness.
    pub fn saved(self, text: &str) -> Result<Event, ThicknessInputError> {
        Ok(self.reading(Some(typed(self.gauging, text)?)))
    }

    /// The entry of this place where it cannot be measured.
    pub const fn skipped(self) -> Event {
        self.reading(None)
    }

    const fn reading(self, thickness: Option<TypedLength>) -> Event {
        Event::Thickness(ThicknessReading {
            corner: self.corner,
            run: self.run,
            gauging: self.gauging,
            place: self.place,
            thickness,
        })
    }
}

/// The spec of a limit of the thickness.
///
/// # Errors
/// The first [`CardInputError`].
pub fn limit_spec(
    (axle, bound): (Axle, Bound),
    value: &str,
    unit: LengthUnit,
    source: SpecSource,
) -> Result<ThicknessSpec, SpecInputError> {
    let value = TypedLength::parse(value, unit).map_err(SpecInputError::Value)?;
    if value.length() <= Length::ZERO {
        return Err(SpecInputError::Fault(SpecError::NotAboveZero { stage: 0 }));
    }
    if source.document.trim().is_empty() || source.who.trim().is_empty() {
        return Err(SpecInputError::Fault(SpecError::NoSource));
    }
    Ok(ThicknessSpec {
        axle,
        bound,
        value,
        source,
    })
}

#[cfg(test)]
mod tests;
