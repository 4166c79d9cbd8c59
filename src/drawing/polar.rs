//! Readings round a face as the technician sees it: stud 1 on top, the order of the studs
//! clockwise, what is high outside.

use super::pen::{clock, smooth};
use super::shape::{Drawing, Ink, Point, Role, Step};

/// How a reading stands in the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dot {
    /// It counts.
    Counts,
    /// It was left out.
    LeftOut,
}

/// A run round a face. Angles are degrees from stud 1; heights are all in one unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Polar<'a> {
    /// The readings: angle, height, and whether they count.
    pub readings: &'a [(f64, f64, Dot)],
    /// The fitted wave all round at equal steps, the first at stud 1; empty where there is none.
    pub wave: &'a [f64],
    /// Where it is highest; a warp has two such places.
    pub high: &'a [f64],
    /// How many studs are drawn; none where their count is not known.
    pub studs: u8,
}

const SIZE: f64 = 300.0;
const CENTRE: Point = (SIZE / 2.0, SIZE / 2.0);
/// Where a reading of the middle height stands.
const MIDDLE: f64 = 94.0;
/// How far the highest and the lowest stand from it.
const SWING: f64 = 28.0;
/// The circle of the studs.
const STUDS: f64 = 40.0;

impl Polar<'_> {
    /// The drawing in 300 × 300.
    pub fn drawing(&self) -> Drawing {
        let mut drawing = Drawing::new(SIZE, SIZE);
        drawing.circle(CENTRE, MIDDLE, Ink::GHOST);
        studs(&mut drawing, self.studs);
        drawing.line(
            clock(CENTRE, 62.0, 0.0),
            clock(CENTRE, 132.0, 0.0),
            Ink::GHOST,
        );
        if !self.wave.is_empty() {
            drawing.path(self.curve(), Ink::SIGNAL);
        }
        for (angle, height, dot) in self.readings {
            let ink = match dot {
                Dot::Counts => Ink::SOLID.thin(),
                Dot::LeftOut => Ink::FACE.thin(),
            };
            drawing.circle(self.at(*angle, *height), 6.0, ink);
        }
        for angle in self.high {
            mark(&mut drawing, *angle);
        }
        drawing
    }

    fn at(&self, angle: f64, height: f64) -> Point {
        clock(CENTRE, MIDDLE + self.out(height), angle)
    }

    /// How far out of the middle circle a height stands.
    fn out(&self, height: f64) -> f64 {
        let heights = || {
            let read = self.readings.iter().map(|(_, height, _)| *height);
            read.chain(self.wave.iter().copied())
        };
        let low = heights().fold(f64::INFINITY, f64::min);
        let high = heights().fold(f64::NEG_INFINITY, f64::max);
        let half = (high - low) / 2.0;
        if half > 0.0 {
            SWING * (height - f64::midpoint(low, high)) / half
        } else {
            0.0
        }
    }

    /// The wave all round, closed.
    fn curve(&self) -> Vec<Step> {
        let steps = u32::try_from(self.wave.len()).unwrap_or(1);
        let angles = (0..steps).map(|step| 360.0 * f64::from(step) / f64::from(steps));
        let mut points: Vec<Point> = angles
            .zip(self.wave)
            .map(|(angle, height)| self.at(angle, *height))
            .collect();
        points.extend(points.first().copied());
        smooth(&points)
    }
}

/// The studs of a hub with hole 1 of the rotor on one of them, counted from 0.
pub fn position(count: u8, stud: u8) -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.circle(CENTRE, 122.0, Ink::LINE);
    drawing.circle(CENTRE, 40.0, Ink::LINE);
    for nth in 0..count {
        let angle = stud_angle(nth, count);
        let at = clock(CENTRE, 84.0, angle);
        let here = nth == stud;
        let (ink, role) = if here {
            (Ink::SOLID.bold(), Role::Paper)
        } else {
            (Ink::FACE, Role::Ink)
        };
        drawing.circle(at, 24.0, ink);
        drawing.label(at, 30.0, &(nth + 1).to_string(), role);
        if here {
            mark(&mut drawing, angle);
        }
    }
    drawing
}

fn stud_angle(nth: u8, count: u8) -> f64 {
    360.0 * f64::from(nth) / f64::from(count.max(1))
}

fn studs(drawing: &mut Drawing, count: u8) {
    for nth in 0..count {
        let at = clock(CENTRE, STUDS, stud_angle(nth, count));
        let radius = if nth == 0 { 11.0 } else { 5.0 };
        drawing.circle(at, radius, Ink::FACE.thin());
    }
    if count > 0 {
        drawing.label(clock(CENTRE, STUDS, 0.0), 16.0, "1", Role::Ink);
    }
}

/// A wedge at the rim that points inwards to a place.
fn mark(drawing: &mut Drawing, angle: f64) {
    let wedge = [
        clock(CENTRE, 128.0, angle),
        clock(CENTRE, 148.0, angle - 6.0),
        clock(CENTRE, 148.0, angle + 6.0),
    ];
    drawing.polygon(&wedge, Ink::SOLID.thin());
}

#[cfg(test)]
mod tests {
    use super::super::check::sound;
    use super::super::shape::Shape;
    use super::*;

    const READINGS: [(f64, f64, Dot); 4] = [
        (0.0, 0.0, Dot::Counts),
        (90.0, 4.0, Dot::Counts),
        (180.0, 2.0, Dot::LeftOut),
        (270.0, -4.0, Dot::Counts),
    ];

    fn dots(drawing: &Drawing) -> Vec<(Point, Ink)> {
        let shapes = drawing.shapes.iter();
        let dots = shapes.filter_map(|shape| match shape {
            Shape::Circle {
                centre,
                radius,
                ink,
            } if *radius == 6.0 => Some((*centre, *ink)),
            _ => None,
        });
        dots.collect()
    }

    #[test]
    fn what_is_high_stands_outside_and_what_is_low_inside() {
        let polar = Polar {
            readings: &READINGS,
            wave: &[0.0, 4.0, 0.0, -4.0],
            high: &[90.0],
            studs: 0,
        };
        let drawing = polar.drawing();
        sound("polar", &drawing);
        let dots = dots(&drawing);
        assert_eq!(dots.len(), 4);
        assert!((dots[1].0.0 - (150.0 + MIDDLE + SWING)).abs() < 1e-9);
        assert!((dots[3].0.0 - (150.0 - MIDDLE + SWING)).abs() < 1e-9);
        assert_eq!(dots[2].1, Ink::FACE.thin());
    }

    #[test]
    fn readings_that_agree_lie_on_the_middle_circle() {
        let flat = Polar {
            readings: &READINGS.map(|(angle, _, dot)| (angle, 3.0, dot)),
            wave: &[],
            high: &[],
            studs: 5,
        };
        let drawing = flat.drawing();
        sound("flat", &drawing);
        let (x, y) = dots(&drawing).last().unwrap().0;
        assert!(((x - 150.0).hypot(y - 150.0) - MIDDLE).abs() < 1e-9);
    }

    #[test]
    fn every_position_of_every_hub_is_sound() {
        for count in 3..=10 {
            for stud in 0..count {
                sound("position", &position(count, stud));
            }
        }
    }
}
