//! The face of a dial gauge, drawn as the technician sees it on the car.

use super::pen::{clock, sector};
use super::place::Placing;
use super::shape::{Drawing, Ink, Point, Role};

/// What a dial shows. Readings are in divisions of this dial, and may lie outside one turn: the
/// needle has then gone past zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dial {
    /// Divisions in one turn of the needle; a dial has from 10 to 200.
    pub divisions: u32,
    /// Where the needle stands; none before it was read.
    pub value: Option<f64>,
    /// Where it stood in the last round, as a second, dashed needle.
    pub last: Option<f64>,
    /// From the reading while pushing to the reading while pulling, as a band on the rim.
    pub swept: Option<(f64, f64)>,
}

const SIZE: f64 = 300.0;
const CENTRE: Point = (SIZE / 2.0, SIZE / 2.0);
const RIM: f64 = 146.0;
/// Outer end of the graduations.
const SCALE: f64 = 128.0;

impl Dial {
    /// The dial in 300 × 300; its numerals are still read when it is shown 200 wide.
    pub fn drawing(self) -> Drawing {
        let mut drawing = Drawing::new(SIZE, SIZE);
        drawing.circle(CENTRE, RIM, Ink::FACE.bold());
        drawing.circle(CENTRE, SCALE + 3.0, Ink::THIN);
        if let Some((push, pull)) = self.swept {
            self.band(&mut drawing, push, pull);
        }
        self.graduations(&mut drawing);
        if let Some(last) = self.last {
            let tip = clock(CENTRE, 108.0, self.degrees(last));
            drawing.line(CENTRE, tip, Ink::GHOST);
            drawing.circle(tip, 5.0, Ink::FACE.thin().role(Role::Quiet));
        }
        if let Some(value) = self.value {
            self.needle(&mut drawing, value);
        }
        drawing
    }

    /// Angle of a reading in degrees clockwise from the top.
    pub fn degrees(self, reading: f64) -> f64 {
        reading * 360.0 / f64::from(self.turn())
    }

    fn turn(self) -> u32 {
        self.divisions.clamp(10, 200)
    }

    /// The band between push and pull, a whole turn at most, with a bar at its start.
    fn band(self, drawing: &mut Drawing, push: f64, pull: f64) {
        let from = self.degrees(push);
        let sweep = (self.degrees(pull) - from).clamp(-360.0, 360.0);
        let steps = sector(CENTRE, SCALE + 3.0, RIM, from, from + sweep);
        drawing.path(steps, Ink::SOLID.thin());
    }

    fn graduations(self, drawing: &mut Drawing) {
        let turn = self.turn();
        // Numerals further apart on a fine dial, or they would touch.
        let labelled = if turn > 120 { 20 } else { 10 };
        for division in 0..turn {
            let angle = self.degrees(f64::from(division));
            let (length, ink) = match division {
                d if d % 10 == 0 => (20.0, Ink::BOLD),
                d if d % 5 == 0 => (14.0, Ink::LINE),
                _ => (9.0, Ink::THIN),
            };
            drawing.line(
                clock(CENTRE, SCALE, angle),
                clock(CENTRE, SCALE - length, angle),
                ink,
            );
            if division % labelled == 0 {
                let at = clock(CENTRE, SCALE - 43.0, angle);
                drawing.label(at, 27.0, &division.to_string(), Role::Ink);
            }
        }
    }

    /// The needle with an edge of paper, so that it parts from a numeral that it crosses.
    fn needle(self, drawing: &mut Drawing, value: f64) {
        let at = Placing::at(CENTRE).turned(self.degrees(value));
        let edge = [
            (0.0, -124.0),
            (6.5, -20.0),
            (9.0, 40.0),
            (-9.0, 40.0),
            (-6.5, -20.0),
        ];
        let face = Ink::FACE.bold().role(Role::Paper);
        drawing.polygon(&edge.map(|point| at.point(point)), face);
        let needle = [
            (0.0, -124.0),
            (4.0, -20.0),
            (6.5, 37.0),
            (-6.5, 37.0),
            (-4.0, -20.0),
        ];
        let signal = Ink::SOLID.thin().role(Role::Signal);
        drawing.polygon(&needle.map(|point| at.point(point)), signal);
        drawing.circle(CENTRE, 12.0, Ink::SOLID);
        drawing.circle(CENTRE, 3.5, Ink::SOLID.bare().role(Role::Paper));
    }
}

#[cfg(test)]
mod tests {
    use super::super::shape::Shape;
    use super::*;

    fn dial(divisions: u32, value: f64) -> Dial {
        Dial {
            divisions,
            value: Some(value),
            last: None,
            swept: None,
        }
    }

    #[track_caller]
    fn check(divisions: u32, value: f64, towards: Point) {
        let drawing = dial(divisions, value).drawing();
        let needle = drawing.shapes.iter().rev().find_map(|shape| match shape {
            Shape::Polygon { points, ink } if ink.role == Role::Signal => points.first().copied(),
            _ => None,
        });
        let (x, y) = needle.unwrap();
        let (x, y) = (x - CENTRE.0, y - CENTRE.1);
        let length = x.hypot(y);
        assert!((x / length - towards.0).abs() < 1e-9, "{x} {y}");
        assert!((y / length - towards.1).abs() < 1e-9, "{x} {y}");
    }

    #[test]
    fn the_needle_points_where_the_value_stands() {
        check(100, 0.0, (0.0, -1.0));
        check(100, 25.0, (1.0, 0.0));
        check(50, 25.0, (0.0, 1.0));
        check(100, -25.0, (-1.0, 0.0));
        check(100, 112.5, (0.5_f64.sqrt(), -(0.5_f64.sqrt())));
    }

    #[test]
    fn every_tenth_division_has_its_numeral() {
        let drawing = dial(100, 0.0).drawing();
        let numerals: Vec<&str> = drawing
            .shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Text { text, .. } => Some(text.as_str()),
                _ => None,
            })
            .collect();
        assert_eq!(
            numerals,
            ["0", "10", "20", "30", "40", "50", "60", "70", "80", "90"]
        );
        let lines = drawing
            .shapes
            .iter()
            .filter(|shape| matches!(shape, Shape::Line { .. }));
        assert_eq!(lines.count(), 100);
    }

    #[test]
    fn the_band_goes_from_push_to_pull_past_zero() {
        let dial = Dial {
            swept: Some((98.0, 104.0)),
            ..dial(100, 4.0)
        };
        let drawing = dial.drawing();
        let band = drawing
            .shapes
            .iter()
            .find_map(|shape| match shape {
                Shape::Path { .. } => Some(super::super::fill::outline(shape)),
                _ => None,
            })
            .unwrap();
        let xs = || band[0].iter().map(|point| point.0);
        let (left, right) = (xs().fold(f64::MAX, f64::min), xs().fold(f64::MIN, f64::max));
        // 2 divisions before the top and 4 after it, at the rim.
        assert!(
            (left - (150.0 - 146.0 * 7.2_f64.to_radians().sin())).abs() < 0.1,
            "{left}"
        );
        assert!(
            (right - (150.0 + 146.0 * 14.4_f64.to_radians().sin())).abs() < 0.1,
            "{right}"
        );
    }
}
