//! Readings against their limit as a drawing, before and after on one scale.

use super::ReportContext;
use super::block::{Block, Size};
use super::plain::{self, unit};
use super::scale::{band, limits};
use crate::drawing::strip::{self, Row, Strip, Tick};
use crate::job::judge::Measured;
use crate::text::{self, ReportWord};
use crate::trade::play::Conformity;
use crate::units::{Length, Unit};

/// One set under its name.
pub(super) struct Set<'a> {
    /// "Before", "After".
    pub label: String,
    /// The set.
    pub measured: &'a Measured,
}

/// The sets over one scale with their uncertainty, and the limit's line where all of them were
/// compared with it.
pub(super) fn strip(context: &ReportContext, sets: &[Set]) -> Block {
    // The unit in which the sentences beside it say play and limit.
    let unit = unit(context.format.system);
    let at = |length: Length| length.in_unit(unit);
    let plays: Vec<Vec<f64>> = sets
        .iter()
        .map(|set| set.measured.set.plays().iter().map(|p| at(*p)).collect())
        .collect();
    let rows: Vec<Row> = sets
        .iter()
        .zip(&plays)
        .map(|(set, rounds)| Row {
            label: &set.label,
            rounds,
            band: Some(band(set.measured, unit)),
        })
        .collect();
    let limits = limits_of(context, sets);
    let ends = rows.iter().flat_map(|row| {
        let band = row.band.map_or(vec![], |(low, high)| vec![low, high]);
        row.rounds.iter().copied().chain(band)
    });
    let ends: Vec<f64> = ends.chain(limits.iter().map(|(l, _)| at(*l))).collect();
    let lowest = ends.iter().copied().fold(0.0, f64::min);
    let highest = ends.iter().copied().fold(0.0, f64::max);
    let places = strip::ticks(lowest, highest);
    let labels = labels(context, &places);
    let ticks: Vec<Tick> = places
        .iter()
        .zip(&labels)
        .map(|(at, label)| Tick { at: *at, label })
        .collect();
    let lines: Vec<strip::Limit> = limits
        .iter()
        .map(|(value, name)| strip::Limit {
            at: at(*value),
            name,
        })
        .collect();
    let drawing = Strip {
        ticks: &ticks,
        unit: unit.symbol(),
        limits: &lines,
        rows: &rows,
    };
    Block::Drawing {
        size: Size::Wide,
        svg: drawing.drawing().to_svg(&alt(context, sets, &limits)),
    }
}

/// The limit's value and name, of a window both ends; none if a set may not be compared with it.
fn limits_of(context: &ReportContext, sets: &[Set]) -> Vec<(Length, String)> {
    let compared = |set: &Set| !matches!(set.measured.conformity, Conformity::NoComparison(_));
    let first = sets.first().filter(|_| sets.iter().all(compared));
    first.map_or_else(Vec::new, |set| {
        limits(context.lang, &set.measured.limit, |value| {
            plain::short(context.format, value)
        })
    })
}

fn alt(context: &ReportContext, sets: &[Set], limits: &[(Length, String)]) -> String {
    let rows: Vec<String> = sets
        .iter()
        .map(|set| format!("{} {}", set.label, mean(context, set.measured)))
        .collect();
    let names: Vec<&str> = limits.iter().map(|(_, name)| name.as_str()).collect();
    let limit = match limits {
        [] => context.word(ReportWord::NotComparedSay),
        _ => names.join(", "),
    };
    text::strip_alt(context.lang, &rows.join(", "), &limit)
}

/// A set's mean in the reader's unit.
fn mean(context: &ReportContext, measured: &Measured) -> String {
    plain::length(context.format, measured.mean())
}

/// The numerals of the scale; where they would touch, only every second or third is written.
fn labels(context: &ReportContext, places: &[f64]) -> Vec<String> {
    let decimals = decimals(places);
    let all: Vec<String> = places
        .iter()
        .map(|place| context.format.number(*place, decimals))
        .collect();
    let letters = all.iter().map(|label| label.chars().count()).max();
    // A numeral is about ten units wide, the line about 220 long beside the rows' names.
    let room = 220 / places.len().saturating_sub(1).max(1);
    let every = (10 * letters.unwrap_or(1) + 6).div_ceil(room.max(1));
    let written = |at: usize| at.is_multiple_of(every.max(1));
    all.into_iter()
        .enumerate()
        .map(|(at, label)| if written(at) { label } else { String::new() })
        .collect()
}

/// As many decimals as the step between two numerals has.
fn decimals(places: &[f64]) -> usize {
    let step = match places {
        [first, second, ..] => second - first,
        _ => 1.0,
    };
    (0..9)
        .find(|decimals| {
            let digits = step * 10_f64.powi(*decimals);
            (digits - digits.round()).abs() < 1e-6
        })
        .and_then(|decimals| usize::try_from(decimals).ok())
        .unwrap_or(3)
}

#[cfg(test)]
mod tests {
    use crate::report::{Block, Reader, Report, Size, sample};
    use crate::text::Lang;
    use crate::units::{DecimalMark, Format, System};

    fn svgs(blocks: &[Block]) -> Vec<&str> {
        let svgs = blocks.iter().filter_map(|block| match block {
            Block::Drawing {
                svg,
                size: Size::Wide,
            } => Some(svg.as_str()),
            _ => None,
        });
        svgs.collect()
    }

    /// The numerals under a scale with the places they stand at.
    fn numerals(svg: &str) -> Vec<(f64, f64)> {
        let texts = svg.split("<text ").skip(1).filter_map(|text| {
            let x = text.split("x=\"").nth(1)?.split('"').next()?.parse().ok()?;
            let label = text.split('>').nth(1)?.split('<').next()?.parse().ok()?;
            Some((x, label))
        });
        texts.collect()
    }

    fn dots(svg: &str) -> Vec<f64> {
        let dots = svg
            .split("<circle cx=\"")
            .skip(1)
            .filter_map(|circle| circle.split('"').next()?.parse().ok());
        dots.collect()
    }

    #[test]
    fn before_and_after_stand_on_one_scale_with_the_limit_between() {
        let sheet = sample::finished(None).sheet();
        let format = Format {
            system: System::Metric,
            decimal: DecimalMark::Dot,
        };
        let report = Report::of(&sheet, Lang::English, format, &Reader::default());
        let strips = svgs(&report.page_one);
        let [strip] = strips.as_slice() else {
            panic!("{} strips", strips.len());
        };
        let numerals = numerals(strip);
        assert!(3 <= numerals.len(), "{numerals:?}");
        let (zero, last) = (numerals[0], numerals[numerals.len() - 1]);
        let value = |x: f64| (x - zero.0) / (last.0 - zero.0) * last.1;
        let read: Vec<f64> = dots(strip).into_iter().map(value).collect();
        let wanted = [0.12, 0.125, 0.13, 0.01, 0.01, 0.015];
        assert_eq!(read.len(), wanted.len());
        for (read, wanted) in read.iter().zip(wanted) {
            assert!((read - wanted).abs() < 2e-4, "{read} for {wanted}");
        }
        for want in ["limit 0.05\u{a0}mm (OEM)", "Before", "After"] {
            assert!(strip.contains(want), "{want}");
        }
    }
}
