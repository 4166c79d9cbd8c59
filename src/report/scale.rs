//! Plays as they are shown on a screen: in the reader's unit, and against their limit on one line.

use super::plain;
use crate::drawing::Drawing;
use crate::drawing::strip::{Limit, Row, Strip, Tick, ticks};
use crate::job::judge::Measured;
use crate::text::{self, Lang};
use crate::trade::play::{self, Conformity};
use crate::units::{Format, Length, LengthUnit, Shown, System, Unit};

/// A play in mm or in, fine enough for the mean of three rounds.
pub fn play(format: Format, play: Length) -> Shown {
    let (unit, decimals) = unit(format.system);
    format.length_in(play, unit, decimals)
}

/// The same play in the other system.
pub fn play_twin(format: Format, play: Length) -> Shown {
    self::play(format.other(), play)
}

pub(super) const fn unit(system: System) -> (LengthUnit, usize) {
    match system {
        System::Metric => (LengthUnit::Millimetre, 3),
        System::Us => (LengthUnit::Inch, 4),
    }
}

/// Sets of readings against the limit of the last one, each on a row of its own with its label.
///
/// The band of a row is its two-sided 95 % interval, which is drawn and never decides. `None`
/// where there is no set.
pub fn scale(lang: Lang, format: Format, sets: &[(&str, &Measured)]) -> Option<Drawing> {
    let (unit, _) = unit(format.system);
    scale_in(
        lang,
        format,
        sets,
        (unit, |format, limit| play(format, limit).line()),
    )
}

/// The same as a customer reads it: in millimetres or inches.
pub fn plain_scale(lang: Lang, format: Format, sets: &[(&str, &Measured)]) -> Option<Drawing> {
    scale_in(
        lang,
        format,
        sets,
        (plain::unit(format.system), plain::short),
    )
}

fn scale_in(
    lang: Lang,
    format: Format,
    sets: &[(&str, &Measured)],
    (unit, recorded_limit): (LengthUnit, fn(Format, Length) -> String),
) -> Option<Drawing> {
    let (_, last) = sets.last()?;
    let context = |length: Length| length.in_unit(unit);
    let rounds: Vec<Vec<f64>> = sets
        .iter()
        .map(|(_, measured)| measured.set.plays().iter().map(|p| context(*p)).collect())
        .collect();
    let bands: Vec<(f64, f64)> = sets.iter().map(|(_, m)| band(m, unit)).collect();
    let rows: Vec<Row<'_>> = sets
        .iter()
        .zip(&rounds)
        .zip(&bands)
        .map(|(((label, _), rounds), band)| Row {
            label,
            rounds,
            band: Some(*band),
        })
        .collect();
    // A limit of another way is no measure of these readings, so that it is not drawn beside them.
    let compared = |set: &Measured| !matches!(set.conformity, Conformity::NoComparison(_));
    let compared = sets.iter().all(|(_, set)| compared(set));
    let limits = match compared {
        true => limits(lang, &last.limit, |value| recorded_limit(format, value)),
        false => Vec::new(),
    };
    let lines: Vec<Limit<'_>> = limits
        .iter()
        .map(|(value, name)| Limit {
            at: context(*value),
            name,
        })
        .collect();
    let ends = bands.iter().flat_map(|(low, high)| [*low, *high]);
    let all = || {
        ends.clone()
            .chain(rounds.iter().flatten().copied())
            .chain(lines.iter().map(|limit| limit.at))
    };
    let places = ticks(0.0, all().fold(0.0, f64::max));
    // Nothing is nothing in any unit, and a short numeral has room at the end of the line.
    let zero = |(place, label)| match place {
        0.0 => format.number(0.0, 0),
        _ => label,
    };
    let labels = places.iter().copied().zip(labels(format, &places));
    let labels: Vec<String> = labels.map(zero).collect();
    let marks: Vec<Tick<'_>> = places
        .iter()
        .zip(&labels)
        .map(|(at, label)| Tick { at: *at, label })
        .collect();
    let strip = Strip {
        ticks: &marks,
        unit: unit.symbol(),
        limits: &lines,
        rows: &rows,
    };
    Some(strip.drawing())
}

/// The ends of a limit with their names, the upper first; of most limits there is no lower one.
pub(super) fn limits(
    lang: Lang,
    limit: &play::Limit,
    say: impl Fn(Length) -> String,
) -> Vec<(Length, String)> {
    let most = text::limit_name(lang, &say(limit.value), limit.source);
    let least = limit
        .least
        .map(|least| (least, text::least_name(lang, &say(least))));
    [(limit.value, most)].into_iter().chain(least).collect()
}

/// The mean less and plus the expanded uncertainty; a play is never below nothing.
pub(super) fn band(measured: &Measured, unit: LengthUnit) -> (f64, f64) {
    interval(measured.mean(), measured.budget.expanded95, unit)
}

/// A value less and plus a half width, not below nothing.
pub(super) fn interval(value: Length, half: Length, unit: LengthUnit) -> (f64, f64) {
    let low = value.minus(half).max(Length::ZERO);
    (low.in_unit(unit), value.plus(half).in_unit(unit))
}

/// The numerals under the line, all with as many decimals as the step between them needs.
pub(super) fn labels(format: Format, places: &[f64]) -> Vec<String> {
    let step = match places {
        [first, second, ..] => second - first,
        _ => 1.0,
    };
    // A step is 1, 2 or 5 times a power of ten: a hair below it has the same power.
    let decimals = (0..6)
        .find(|decimals| step >= 0.999 * 10_f64.powi(-decimals))
        .unwrap_or(6);
    let decimals = usize::try_from(decimals).unwrap_or(0);
    places
        .iter()
        .map(|place| format.number(*place, decimals))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::play::conformity::WhyNot;
    use crate::trade::play::way::Difference;
    use crate::trade::play::{
        Budget, Dial, Divisions, IndicatorError, ReadingSet, RigFacts, Round, Way, compare,
    };
    use crate::units::DecimalMark;

    fn measured(readings: [f64; 3]) -> Measured {
        let rounds = readings.map(|r| Round::zeroed(Divisions::new(r).unwrap()));
        let set = ReadingSet::read(Dial::THOU, Way::DEFAULT, &rounds, Vec::new()).unwrap();
        let facts = RigFacts {
            indicator: IndicatorError::OneDivision,
            flex: Dial::THOU.graduation().times(0.25),
            temperature: None,
        };
        let budget = Budget::of(&set, &facts);
        let limit = crate::trade::play::Limit::HOUSE;
        let conformity = compare(&set, &budget, &limit);
        Measured {
            set,
            budget,
            limit,
            apart: None,
            conformity,
        }
    }

    const METRIC: Format = Format {
        system: System::Metric,
        decimal: DecimalMark::Comma,
    };

    #[test]
    fn a_play_is_reported_in_the_unit_of_the_reader_and_its_twin() {
        let six = Dial::THOU.graduation().times(6.0);
        assert_eq!(play(METRIC, six).line(), "0,152\u{a0}mm");
        assert_eq!(play_twin(METRIC, six).line(), "0,0060\u{a0}in");
    }

    #[test]
    fn both_rows_stand_over_one_scale_with_the_limit_named() {
        let (before, after) = (measured([6.0, 6.5, 6.3]), measured([1.0, 1.0, 1.0]));
        let svg = scale(
            Lang::English,
            METRIC.other(),
            &[("Before", &before), ("After", &after)],
        )
        .unwrap()
        .to_svg("Play");
        for word in ["Before", "After", "limit 0,0040\u{a0}in (default)", ">in<"] {
            assert!(svg.contains(word), "{word} is missing");
        }
        assert_eq!(svg.matches("<circle").count(), 6);
    }

    #[test]
    fn a_new_part_that_fails_says_why_and_what_is_checked_first() {
        use crate::report::reason::failed;
        use crate::trade::play::Against::{Noisy, Over, Rough, Tight};
        let new = measured([6.0, 6.0, 6.0]);
        let say = |against: &[_]| failed(Lang::English, METRIC.other(), against, Some(&new));
        let [over] = say(&[Over]).try_into().unwrap();
        for word in ["0,0060\u{a0}in", "0,0040\u{a0}in", "nut torque", "seat"] {
            assert!(over.contains(word), "{word}: {over}");
        }
        for against in [&[Rough][..], &[Noisy], &[Rough, Noisy]] {
            let [rough] = say(against).try_into().unwrap();
            assert!(rough.contains("rough or is noisy") && rough.contains("hub bolts"));
        }
        let [tight] = say(&[Tight]).try_into().unwrap();
        assert!(tight.contains("set too tight") && !tight.contains("rough"));
        assert_eq!(say(&[Over, Rough]).len(), 2);
        assert_eq!(say(&[]).len(), 0);
    }

    #[test]
    fn a_window_is_drawn_with_both_of_its_ends() {
        let mut set = measured([2.0, 2.5, 2.3]);
        let least = Dial::THOU.graduation();
        set.limit = set.limit.with_least(Some(least));
        let drawn = scale(Lang::English, METRIC.other(), &[("After", &set)]).unwrap();
        let svg = drawn.to_svg("Play");
        for name in ["limit 0,0040\u{a0}in (default)", "least 0,0010\u{a0}in"] {
            assert!(svg.contains(name), "{name} is missing");
        }
        set.limit.least = None;
        let drawn = scale(Lang::English, METRIC.other(), &[("After", &set)]).unwrap();
        assert!(!drawn.to_svg("Play").contains("least"));
    }

    #[test]
    fn a_limit_that_is_not_compared_is_not_drawn() {
        let mut marked = measured([6.0, 6.5, 6.3]);
        marked.conformity = Conformity::NoComparison(WhyNot::Way(Difference::Place));
        let drawn = scale(Lang::English, METRIC, &[("Before", &marked)]).unwrap();
        let svg = drawn.to_svg("Play");
        assert!(svg.contains("Before") && !svg.contains("house"), "{svg}");
    }

    #[test]
    fn numerals_have_the_decimals_that_their_step_needs() {
        assert_eq!(labels(METRIC, &[0.0, 0.02, 0.04]), ["0,00", "0,02", "0,04"]);
        assert_eq!(labels(METRIC, &[0.0, 5.0]), ["0", "5"]);
        assert!(scale(Lang::English, METRIC, &[]).is_none());
    }
}
