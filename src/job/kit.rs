//! The van kit: what is known of it to begin with, and what the form of an instrument gives.

use chrono::NaiveDate;

use crate::job::entry::{Carried, Entry, Event, Moved, Stock};
use crate::job::practice::is_practice;
use crate::job::sheet::JobState;
use crate::trade::day::day_of;
use crate::trade::fastening::calibration::{CheckDue, check_due};
use crate::trade::fastening::{Upkeep, UsableShare, Wrench};
use crate::trade::play::dial::DialError;
use crate::trade::play::{Dial, DialKind};
use crate::units::{
    DecimalError, LengthUnit, Mass, MassUnit, System, Torque, TorqueUnit, Typed, TypedMass,
    TypedTorque,
};

pub use crate::job::entry::{MoreKit, Stand};

/// The log of the van kit; job logs hold no colon.
pub const LOG: &str = "kit:van";

impl Carried {
    /// The share of a wrench's range that is used here.
    pub fn share(&self) -> UsableShare {
        let set = self.more.share;
        set.and_then(|(low, high)| UsableShare::percent(low, high).ok())
            .unwrap_or(UsableShare::DEFAULT)
    }
}

/// How much of a vehicle one axle can carry: six tenths at most, common practice, no source.
const AXLE_SHARE: f64 = 0.6;

/// The vehicle's mass as it was noted: `1500 kg`, `3300 lb`.
pub fn mass_of(text: &str) -> Option<Mass> {
    let (number, unit) = text.trim().split_once(' ')?;
    let typed: TypedMass = Typed::parse(number, MassUnit::from_code(unit.trim())?).ok()?;
    (typed.number.value() > 0.0).then(|| typed.mass())
}

/// The stands that are marked for less than the share of one axle, and that share; nothing where
/// the mass or the marks are not known.
pub fn weak_stands(carried: &Carried, mass: Mass) -> Option<(Vec<&Stand>, Mass)> {
    let axle = mass.times(AXLE_SHARE);
    let stands = carried.more.stands.iter();
    let weak: Vec<&Stand> = stands.filter(|stand| stand.rating.mass() < axle).collect();
    (!weak.is_empty()).then_some((weak, axle))
}

/// How often a wrench clicked in a job since the day of its last check, by its name and, where `phone`
/// is given, as that phone alone recorded it: once for each torque that a fastener was brought to, in every pass; seating, an angle and a turn back
/// count none. No wrench clicks in practice.
pub fn clicks(sheet: &JobState, wrench: &Wrench, phone: Option<&str>) -> u32 {
    if is_practice(sheet) {
        return 0;
    }
    let since = wrench.upkeep.checked.map_or(i64::MIN, utc_ms);
    let clicked = clicked(sheet).into_iter().filter(|(entry, with)| {
        let when = entry.at.recorded.unwrap_or(entry.at.utc_ms);
        let own = phone.is_none_or(|phone| entry.device == phone);
        own && since <= when && *with == wrench.name
    });
    u32::try_from(clicked.count()).unwrap_or(u32::MAX)
}

/// Every click with its entry and the wrench's name. What says the very same of its items again is no
/// click, unless a pass was begun between: it settles what two phones recorded differently.
pub(super) fn clicked(sheet: &JobState) -> Vec<(&Entry, &str)> {
    let mut last: Vec<&Moved> = Vec::new();
    let mut clicks = Vec::new();
    for entry in sheet.counting() {
        match &entry.what {
            Event::Pass(step) => last.retain(|moved| moved.step != *step),
            Event::Moved(moved) => {
                let again = last.contains(&moved);
                last.retain(|it| it.items != moved.items);
                last.push(moved);
                let with = moved.wrench.as_ref().filter(|_| !again);
                clicks.extend(with.map(|(name, _)| (entry, name.as_str())));
            }
            _ => {}
        }
    }
    clicks
}

/// The first moment of a day, in UTC; half a day more or less does not matter to a check.
fn utc_ms(day: NaiveDate) -> i64 {
    let epoch = NaiveDate::from_ymd_opt(1970, 1, 1).unwrap_or(NaiveDate::MIN);
    day.signed_duration_since(epoch).num_milliseconds()
}

/// A kit as a job copies it: to the clicks that were typed for each wrench come those that were
/// counted in the jobs before, so that the job's own record says whether a wrench was due.
pub fn copied(mut kit: Carried, counted: &[(String, u32)]) -> Carried {
    for wrench in &mut kit.wrenches {
        let clicks = counted.iter().find(|(name, _)| *name == wrench.name);
        let clicks = clicks.map_or(0, |(_, clicks)| *clicks);
        wrench.upkeep.clicks = wrench.upkeep.clicks.saturating_add(clicks);
    }
    kit
}

/// Whether two kits hold the same wrenches: by name and range.
pub fn same_wrenches(one: &Carried, other: &Carried) -> bool {
    let of = |kit: &Carried| -> Vec<(String, Torque, Torque)> {
        let all = kit.wrenches.iter();
        all.map(|it| (it.name.clone(), it.low, it.high)).collect()
    };
    of(one) == of(other)
}

/// Why a wrench of a job was past its check on a day, as the job's own record tells it; nothing
/// where its last check is not known, which proves nothing either way.
pub fn overdue(sheet: &JobState, name: &str, day: NaiveDate) -> Option<CheckDue> {
    let kit = sheet.carried()?;
    let wrench = kit.wrenches.iter().find(|wrench| wrench.name == name)?;
    let due = wrench_due(wrench, clicks(sheet, wrench, None), day);
    due.filter(|due| *due != CheckDue::Unknown)
}

/// Why a wrench is to be checked, after the clicks of these jobs.
pub fn wrench_due(wrench: &Wrench, counted: u32, today: NaiveDate) -> Option<CheckDue> {
    let clicks = wrench.upkeep.clicks.saturating_add(counted);
    check_due(wrench.upkeep.checked, clicks, today)
}

/// Why the fields give no instrument.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum KitError {
    /// A wrench without a name.
    NoName,
    /// A field is no number.
    Number(DecimalError),
    /// The lower mark is not above zero and below the upper one.
    Range,
    /// There is no such dial.
    Dial(DialError),
    /// The day of the last check is none.
    Day,
    /// The two ends are no share of a range.
    Share,
}

/// What a practice job is packed with: a dial of the van's, and three invented wrenches, checked
/// on a day. No real wrench clicks in practice.
pub fn practice_kit(dial: Dial, system: System, checked: NaiveDate) -> Carried {
    let wrench = |name: &str, low, high| Wrench {
        name: name.to_owned(),
        low: Torque::newton_metres(low),
        high: Torque::newton_metres(high),
        unit: match system {
            System::Metric => TorqueUnit::NewtonMetre,
            System::Us => TorqueUnit::PoundFoot,
        },
        upkeep: Upkeep {
            checked: Some(checked),
            ..Upkeep::default()
        },
    };
    Carried {
        wrenches: vec![
            wrench("Practice wrench A", 10.0, 60.0),
            wrench("Practice wrench B", 40.0, 200.0),
            wrench("Practice wrench C", 100.0, 500.0),
        ],
        dial,
        ..first_kit(system)
    }
}

/// The common dial of the unit system and no wrench: nobody has said which there are.
pub fn first_kit(system: System) -> Carried {
    Carried {
        wrenches: Vec::new(),
        dial: match system {
            System::Metric => Dial::HUNDREDTH_MM,
            System::Us => Dial::THOU,
        },
        more: MoreKit::default(),
        dial_due: None,
    }
}

/// A wrench from its fields.
///
/// # Errors
/// The first [`KitError`].
pub fn typed_wrench(
    name: &str,
    low: &str,
    high: &str,
    unit: TorqueUnit,
) -> Result<Wrench, KitError> {
    let name = name.trim().to_owned();
    if name.is_empty() {
        return Err(KitError::NoName);
    }
    let torque = |text: &str| {
        TypedTorque::parse(text, unit)
            .map(|typed| typed.torque())
            .map_err(KitError::Number)
    };
    let (low, high) = (torque(low)?, torque(high)?);
    if !(Torque::ZERO < low && low < high) {
        return Err(KitError::Range);
    }
    Ok(Wrench {
        name,
        low,
        high,
        unit,
        upkeep: Upkeep::default(),
    })
}

/// What is known of a wrench's marks and checks, from its fields; empty is not known.
///
/// # Errors
/// The first [`KitError`].
pub fn typed_upkeep(
    graduation: &str,
    unit: TorqueUnit,
    checked: &str,
    clicks: &str,
) -> Result<Upkeep, KitError> {
    let given = |text: &str| (!text.trim().is_empty()).then(|| text.trim().to_owned());
    let graduation = given(graduation).map(|text| Typed::parse(&text, unit));
    let checked = given(checked).map(|text| day_of(&text).ok_or(KitError::Day));
    let clicks = given(clicks).map(|text| text.parse::<u32>());
    Ok(Upkeep {
        graduation: graduation.transpose().map_err(KitError::Number)?,
        checked: checked.transpose()?,
        clicks: clicks
            .transpose()
            .map_err(|_| KitError::Number(DecimalError::NoDigit))?
            .unwrap_or(0),
    })
}

/// The share of a wrench's range from its two fields, in hundredths.
///
/// # Errors
/// [`KitError::Share`] unless they are a share.
pub fn typed_share(low: &str, high: &str) -> Result<(u8, u8), KitError> {
    let part = |text: &str| text.trim().parse::<u8>().map_err(|_| KitError::Share);
    let (low, high) = (part(low)?, part(high)?);
    UsableShare::percent(low, high).map_err(|_| KitError::Share)?;
    Ok((low, high))
}

/// A stand from its fields.
///
/// # Errors
/// The first [`KitError`].
pub fn typed_stand(name: &str, rating: &str, unit: MassUnit) -> Result<Stand, KitError> {
    let name = name.trim().to_owned();
    if name.is_empty() {
        return Err(KitError::NoName);
    }
    let rating = Typed::parse(rating, unit).map_err(KitError::Number)?;
    if rating.number.value() > 0.0 {
        Ok(Stand { name, rating })
    } else {
        Err(KitError::Range)
    }
}

/// A part as it was counted, from its fields; empty is none. `None` where the number is empty or
/// a field is no whole number.
pub fn typed_stock(number: &str, have: &str, least: &str, cores: &str) -> Option<Stock> {
    let whole = |text: &str| match text.trim() {
        "" => Some(0),
        text => text.parse::<u16>().ok(),
    };
    let number = number.trim().to_owned();
    let stock = Stock {
        number,
        have: whole(have)?,
        least: whole(least)?,
        cores: whole(cores)?,
    };
    stock
        .number
        .chars()
        .any(char::is_alphanumeric)
        .then_some(stock)
}

/// A dial from its fields.
///
/// # Errors
/// The first [`KitError`].
pub fn typed_dial(
    division: &str,
    unit: LengthUnit,
    divisions_per_turn: &str,
    kind: DialKind,
) -> Result<Dial, KitError> {
    let graduation = Typed::parse(division, unit)
        .map_err(KitError::Number)?
        .length();
    let turn = divisions_per_turn
        .trim()
        .parse()
        .map_err(|_| KitError::Number(DecimalError::NoDigit))?;
    Dial::new(graduation, turn, kind).map_err(KitError::Dial)
}

#[cfg(test)]
mod tests;
