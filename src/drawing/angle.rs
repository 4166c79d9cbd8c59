//! How far a fastener is turned after its torque, as an angle gauge shows it.

use super::pen::{arc, clock, sector};
use super::shape::{Drawing, Ink, Point, Role};

const SIZE: f64 = 300.0;
const CENTRE: Point = (SIZE / 2.0, SIZE / 2.0);
const RIM: f64 = 140.0;

/// On by an angle, in degrees, of which so many are behind.
pub fn on(degrees: f64, behind: f64) -> Drawing {
    angle(degrees, behind)
}

/// Back by an angle; by a whole turn where the page gives none.
pub fn back(degrees: Option<f64>) -> Drawing {
    angle(-degrees.unwrap_or(360.0), 0.0)
}

/// The nut in the middle, a scale round it, and the angle from the top, filled as far as it is
/// behind; counterclockwise for a turn back. More than a turn is drawn as a whole one.
pub(super) fn angle(degrees: f64, behind: f64) -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    let turned = degrees.clamp(-360.0, 360.0);
    drawing.circle(CENTRE, RIM, Ink::FACE.bold());
    if turned.abs() >= 1.0 {
        drawing.path(sector(CENTRE, 74.0, 106.0, 0.0, turned), Ink::HATCH);
    }
    if behind >= 1.0 {
        let swept = sector(CENTRE, 74.0, 106.0, 0.0, behind.min(turned));
        drawing.path(swept, Ink::SOLID.thin());
    }
    for tick in 0..24 {
        let at = 15.0 * f64::from(tick);
        let (length, ink) = if tick % 6 == 0 {
            (26.0, Ink::BOLD)
        } else if tick % 2 == 0 {
            (18.0, Ink::LINE)
        } else {
            (10.0, Ink::THIN)
        };
        drawing.line(clock(CENTRE, RIM, at), clock(CENTRE, RIM - length, at), ink);
    }
    let corners: Vec<Point> = (0..6)
        .map(|k| clock(CENTRE, 58.0, 30.0 + 60.0 * f64::from(k)))
        .collect();
    drawing.polygon(&corners, Ink::FACE.bold());
    drawing.path(arc(CENTRE, 26.0, 0.0, 359.0), Ink::LINE);
    // The mark stands where the turn ends.
    drawing.line(
        clock(CENTRE, 26.0, turned),
        clock(CENTRE, RIM, turned),
        Ink::LINE.bold().role(Role::Signal),
    );
    drawing
}
