//! Readings against their limit on one number line: what the decision rests on, at a glance.
//!
//! All values are in the one unit that is displayed; words and numerals come in as text, since
//! they depend on language and decimal mark.

use super::shape::{Anchor, Dash, Drawing, Ink, Role};

/// A numeral under the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tick<'a> {
    /// Where it stands.
    pub at: f64,
    /// How it is written.
    pub label: &'a str,
}

/// A limit and its name, "limit 4 (default)".
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit<'a> {
    /// Where it stands.
    pub at: f64,
    /// Its name with its source; drawn beside its line.
    pub name: &'a str,
}

/// One series of rounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row<'a> {
    /// "before", "after"; may be empty where there is one row only.
    pub label: &'a str,
    /// The reading of every round.
    pub rounds: &'a [f64],
    /// Lower and upper end of the interval that is likely to hold the truth, or none if unknown.
    pub band: Option<(f64, f64)>,
}

/// One or more rows over one scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip<'a> {
    /// Numerals of the scale, from the lowest; see [`ticks`].
    pub ticks: &'a [Tick<'a>],
    /// Unit, written at the end of the line.
    pub unit: &'a str,
    /// The limit, if there is one; of a window both ends, the upper first.
    pub limits: &'a [Limit<'a>],
    /// The series, the earlier above.
    pub rows: &'a [Row<'a>],
}

const WIDTH: f64 = 340.0;
const MARGIN: f64 = 22.0;
const NAME: f64 = 26.0;
const NEXT_NAME: f64 = 20.0;
const ROW: f64 = 58.0;
const DOT: f64 = 6.0;

/// Where numerals stand so that the scale starts at or below 0 and holds `lowest` to `highest`:
/// steps of 1, 2 or 5 times a power of ten, few enough that their numerals never touch.
pub fn ticks(lowest: f64, highest: f64) -> Vec<f64> {
    let (low, high) = (lowest.min(0.0), highest.max(0.0));
    let known = high > low && (high - low).is_finite();
    // Nothing read yet, or only zeros: the scale still needs a length.
    let (low, high) = if known { (low, high) } else { (0.0, 1.0) };
    let span = high - low;
    let rough = span / 6.0;
    let power = 10_f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|times| times * power)
        // A hair of slack: 0.6 / 6 need not be 0.1 in binary.
        .find(|step| rough <= step * (1.0 + 1e-9))
        .unwrap_or(10.0 * power);
    let first = (low / step - 1e-9).ceil().min((low / step).floor());
    let last = (high / step - 1e-9).ceil().max(first + 1.0);
    let count = (last - first).clamp(1.0, 20.0) as u32;
    (0..=count).map(|k| (first + f64::from(k)) * step).collect()
}

impl Strip<'_> {
    /// The drawing, 340 wide; its height grows with the rows.
    pub fn drawing(&self) -> Drawing {
        let top = self.top();
        let base = top + ROW * self.rows.len().max(1) as f64;
        let mut drawing = Drawing::new(WIDTH, base + 34.0);
        let scale = self.scale();
        self.axis(&mut drawing, scale, base);
        for (row, limit) in self.limits.iter().enumerate() {
            let name = NEXT_NAME * row as f64;
            limit_line(&mut drawing, scale, *limit, (name, base));
        }
        for (index, row) in self.rows.iter().enumerate() {
            let low = top + ROW * (index as f64 + 1.0);
            if index > 0 {
                let y = low - ROW;
                drawing.line((self.left(), y), (self.right(), y), Ink::GHOST);
            }
            draw_row(&mut drawing, scale, row, low);
        }
        drawing
    }

    /// Where the rows begin: under the name of each limit.
    fn top(&self) -> f64 {
        NAME + NEXT_NAME * self.limits.len().saturating_sub(1) as f64
    }

    /// Left end of the number line; rows with labels need room for them.
    fn left(&self) -> f64 {
        let letters = self.rows.iter().map(|row| row.label.chars().count()).max();
        match letters.unwrap_or(0) {
            0 => MARGIN,
            count => MARGIN + 9.0 * count.min(10) as f64,
        }
    }

    /// Right end of the number line; its unit stands beyond.
    fn right(&self) -> f64 {
        match self.unit.chars().count() {
            0 => WIDTH - MARGIN,
            letters => WIDTH - 14.0 - 10.0 * letters.min(6) as f64,
        }
    }

    fn scale(&self) -> Scale {
        let rounds = self.rows.iter().flat_map(|row| row.rounds.iter().copied());
        let bands = self.rows.iter().filter_map(|row| row.band);
        let all: Vec<f64> = rounds
            .chain(bands.flat_map(|(low, high)| [low, high]))
            .chain(self.ticks.iter().map(|tick| tick.at))
            .chain(self.limits.iter().map(|limit| limit.at))
            .filter(|value| value.is_finite())
            .collect();
        let low = all.iter().copied().fold(0.0, f64::min);
        let high = all.iter().copied().fold(0.0, f64::max);
        let left = self.left();
        let span = if high > low { high - low } else { 1.0 };
        Scale {
            low,
            left,
            step: (self.right() - left) / span,
        }
    }

    fn axis(&self, drawing: &mut Drawing, scale: Scale, base: f64) {
        drawing.line((self.left(), base), (self.right(), base), Ink::LINE);
        let unit = (WIDTH - 2.0, base + 6.0);
        drawing.text(unit, 16.0, Anchor::End, self.unit, Role::Quiet);
        for tick in self.ticks {
            let x = scale.x(tick.at);
            drawing.line((x, base), (x, base + 8.0), Ink::THIN);
            drawing.text(
                (x, base + 26.0),
                16.0,
                Anchor::Middle,
                tick.label,
                Role::Ink,
            );
        }
    }
}

/// From a value to its place along the line.
#[derive(Clone, Copy)]
struct Scale {
    low: f64,
    left: f64,
    step: f64,
}

impl Scale {
    fn x(self, value: f64) -> f64 {
        self.left + (value - self.low) * self.step
    }
}

/// The limit's line from its name down to the scale; the name stands on the side with room,
/// and a long one is set smaller rather than cut.
fn limit_line(drawing: &mut Drawing, scale: Scale, limit: Limit<'_>, (top, base): (f64, f64)) {
    let x = scale.x(limit.at);
    drawing.line((x, top + 4.0), (x, base), Ink::BOLD);
    let (at, anchor, room) = if x < WIDTH / 2.0 {
        (x + 8.0, Anchor::Start, WIDTH - x - 8.0)
    } else {
        (x - 8.0, Anchor::End, x - 8.0)
    };
    let letters = limit.name.chars().count().max(1) as f64;
    let size = (room / (0.6 * letters)).min(16.0);
    drawing.text((at, top + 18.0), size, anchor, limit.name, Role::Ink);
}

fn draw_row(drawing: &mut Drawing, scale: Scale, row: &Row<'_>, low: f64) {
    let middle = low - 29.0;
    drawing.text(
        (2.0, middle + 6.0),
        16.0,
        Anchor::Start,
        row.label,
        Role::Ink,
    );
    if let Some((from, to)) = row
        .band
        .filter(|(from, to)| from.is_finite() && to.is_finite())
    {
        let (a, b) = (scale.x(from.min(to)), scale.x(from.max(to)));
        let band = Ink::FACE.thin().dash(Dash::Dashed);
        drawing.rect((a, low - 49.0, b - a, 40.0), 0.0, band);
    }
    let mut placed: Vec<(f64, f64)> = Vec::new();
    for round in row.rounds.iter().filter(|round| round.is_finite()) {
        let x = scale.x(*round);
        // Equal readings stand one above the other: three rounds are always three dots.
        let taken = |y: f64| {
            placed
                .iter()
                .any(|(px, py)| (px - x).hypot(py - y) < 2.0 * DOT - 1.0)
        };
        let y = [0.0, -11.5, 11.5, -23.0, 23.0]
            .into_iter()
            .map(|up| middle + up)
            .find(|y| !taken(*y))
            .unwrap_or(middle);
        placed.push((x, y));
        drawing.circle((x, y), DOT - 1.0, Ink::SOLID.thin());
    }
}

#[cfg(test)]
mod tests {
    use super::super::shape::{Shape, Weight};
    use super::*;

    #[test]
    fn ticks_are_round_and_hold_the_readings() {
        assert_eq!(ticks(0.0, 8.0), [0.0, 2.0, 4.0, 6.0, 8.0]);
        assert_eq!(ticks(0.0, 0.0), ticks(0.0, 1.0));
        for (low, high) in [
            (0.0, 6.3),
            (-0.4, 5.0),
            (0.0, 0.161),
            (0.2, 47.0),
            (0.0, f64::NAN),
        ] {
            let ticks = ticks(low, high);
            let count = ticks.len();
            assert!((4..=9).contains(&count), "{ticks:?}");
            assert!(
                ticks.first().is_some_and(|first| *first <= low.min(0.0)),
                "{ticks:?}"
            );
            assert!(!ticks.last().is_some_and(|last| *last < high), "{ticks:?}");
        }
    }

    fn dots(drawing: &Drawing) -> Vec<(f64, f64)> {
        let dots = drawing.shapes.iter().filter_map(|shape| match shape {
            Shape::Circle { centre, .. } => Some(*centre),
            _ => None,
        });
        dots.collect()
    }

    #[test]
    fn every_round_is_a_dot_even_when_they_are_equal() {
        let rows = [Row {
            label: "",
            rounds: &[6.3, 6.3, 6.3, 6.4, 6.4],
            band: Some((5.1, 7.5)),
        }];
        let strip = Strip {
            ticks: &[],
            unit: "",
            limits: &[],
            rows: &rows,
        };
        let dots = dots(&strip.drawing());
        assert_eq!(dots.len(), 5);
        for (k, a) in dots.iter().enumerate() {
            for b in dots.iter().skip(k + 1) {
                assert!((a.0 - b.0).hypot(a.1 - b.1) > 6.0, "{dots:?}");
            }
        }
    }

    #[test]
    fn a_reading_over_the_limit_stands_right_of_its_line_in_both_rows() {
        let rows = [
            Row {
                label: "before",
                rounds: &[6.3],
                band: None,
            },
            Row {
                label: "after",
                rounds: &[0.4],
                band: None,
            },
        ];
        let limit = [Limit {
            at: 4.0,
            name: "limit 4",
        }];
        let drawing = Strip {
            ticks: &[],
            unit: "",
            limits: &limit,
            rows: &rows,
        }
        .drawing();
        let line = drawing.shapes.iter().find_map(|shape| match shape {
            Shape::Line { from, ink, .. } if ink.weight == Weight::Bold => Some(from.0),
            _ => None,
        });
        let xs: Vec<bool> = dots(&drawing)
            .iter()
            .map(|(x, _)| line.is_some_and(|line| *x > line))
            .collect();
        assert_eq!(xs, [true, false]);
    }

    #[test]
    fn both_ends_of_a_window_stand_on_the_scale_under_names_that_do_not_touch() {
        let rows = [Row {
            label: "",
            rounds: &[0.5, 3.0, 6.0],
            band: None,
        }];
        let limits = [
            Limit {
                at: 5.0,
                name: "limit 5",
            },
            Limit {
                at: 1.0,
                name: "least 1",
            },
        ];
        let strip = |limits| {
            Strip {
                ticks: &[],
                unit: "",
                limits,
                rows: &rows,
            }
            .drawing()
        };
        let drawing = strip(&limits);
        let lines = drawing.shapes.iter().filter_map(|shape| match shape {
            Shape::Line { from, ink, .. } if ink.weight == Weight::Bold => Some(from.0),
            _ => None,
        });
        let [most, least] = lines.collect::<Vec<_>>().try_into().unwrap();
        let dots: Vec<f64> = dots(&drawing).iter().map(|(x, _)| *x).collect();
        assert!(dots[0] < least && least < dots[1], "{dots:?} {least}");
        assert!(dots[1] < most && most < dots[2], "{dots:?} {most}");
        let heights = drawing.shapes.iter().filter_map(|shape| match shape {
            Shape::Text { at, size, .. } if at.1 < 60.0 => Some((at.1, *size)),
            _ => None,
        });
        let [one, other] = heights.collect::<Vec<_>>().try_into().unwrap();
        assert!(other.0 - one.0 >= one.1, "{one:?} {other:?}");
        let taller = drawing.height - strip(&limits[..1]).height;
        assert!((taller - NEXT_NAME).abs() < 1e-9);
    }
}
