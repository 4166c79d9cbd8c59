//! The vehicle from above with its chosen corners filled: small for the strip, large for
//! choosing by tapping the drawing itself.

use super::place::Placing;
use super::shape::{Drawing, Ink, Role};

/// A corner of the vehicle as seen from the driver's seat; on the drawing the bonnet is up, so
/// left is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Front left.
    FrontLeft,
    /// Front right.
    FrontRight,
    /// Rear left.
    RearLeft,
    /// Rear right.
    RearRight,
}

/// A rectangle in view box units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Place {
    /// The four corners, front before rear, left before right.
    pub const ALL: [Self; 4] = [
        Self::FrontLeft,
        Self::FrontRight,
        Self::RearLeft,
        Self::RearRight,
    ];

    const fn is_left(self) -> bool {
        matches!(self, Self::FrontLeft | Self::RearLeft)
    }

    const fn is_front(self) -> bool {
        matches!(self, Self::FrontLeft | Self::FrontRight)
    }
}

/// Width and height of the view box of [`large`].
pub const LARGE: (f64, f64) = (300.0, 380.0);

/// Where a tap means this corner on the drawing of [`large`]: a quarter of it each, with a gap
/// of 16 between them that means nothing.
pub const fn tap_area(place: Place) -> Area {
    let (width, height) = (LARGE.0 / 2.0 - 8.0, LARGE.1 / 2.0 - 8.0);
    Area {
        x: if place.is_left() {
            0.0
        } else {
            LARGE.0 - width
        },
        y: if place.is_front() {
            0.0
        } else {
            LARGE.1 - height
        },
        width,
        height,
    }
}

/// The vehicle in 36 × 56, for the strip at the top of a screen.
pub fn small(filled: &[Place]) -> Drawing {
    let mut drawing = Drawing::new(36.0, 56.0);
    drawing.pen(
        "M 9 15 C 9 6 12 2 18 2 C 24 2 27 6 27 15 V 48 C 27 53 24 54 18 54 C 12 54 9 53 9 48 Z",
        Ink::FACE.thin(),
    );
    // The windscreen tells the bonnet end from the tail.
    drawing.pen(
        "M 12 22 C 15 19 21 19 24 22 L 22 28 H 14 Z",
        Ink::SOLID.bare(),
    );
    for place in Place::ALL {
        let x = if place.is_left() { 2.0 } else { 25.0 };
        let y = if place.is_front() { 8.0 } else { 36.0 };
        drawing.rect((x, y, 9.0, 14.0), 2.0, tire(place, filled).thin());
    }
    drawing
}

/// The vehicle in [`LARGE`], its four corners clear enough to be tapped.
pub fn large(filled: &[Place]) -> Drawing {
    let mut drawing = Drawing::new(LARGE.0, LARGE.1);
    for place in Place::ALL {
        wheel(&mut drawing, place, filled);
    }
    body(&mut drawing);
    for place in Place::ALL {
        ring(&mut drawing, place, filled);
    }
    drawing
}

fn tire(place: Place, filled: &[Place]) -> Ink {
    if filled.contains(&place) {
        Ink::SOLID
    } else {
        Ink::FACE
    }
}

/// One wheel with the tread's grooves and the stub of its axle.
fn wheel(drawing: &mut Drawing, place: Place, filled: &[Place]) {
    let x = if place.is_left() { 48.0 } else { 214.0 };
    let y = if place.is_front() { 58.0 } else { 250.0 };
    let ink = tire(place, filled);
    drawing.rect((x, y, 38.0, 78.0), 9.0, ink.bold());
    let groove = if filled.contains(&place) {
        Role::Paper
    } else {
        Role::Ink
    };
    for k in 1..4 {
        let x = x + 9.5 * f64::from(k);
        drawing.line((x, y + 7.0), (x, y + 71.0), Ink::THIN.role(groove));
    }
}

/// Bonnet, screens, roof and doors.
fn body(drawing: &mut Drawing) {
    drawing.pen(
        "M 82 98 C 82 46 92 20 118 13 C 138 8 162 8 182 13 C 208 20 218 46 218 98 V 318 \
         C 218 350 206 366 184 370 C 160 373 140 373 116 370 C 94 366 82 350 82 318 Z",
        Ink::FACE.bold(),
    );
    drawing.pen(
        "M 96 150 C 116 130 184 130 204 150 L 192 186 C 172 178 128 178 108 186 Z",
        Ink::LINE,
    );
    drawing.pen(
        "M 110 312 C 130 318 170 318 190 312 L 200 336 C 172 346 128 346 100 336 Z",
        Ink::LINE,
    );
    drawing.pen("M 108 186 L 104 250 L 110 312", Ink::THIN);
    drawing.pen("M 192 186 L 196 250 L 190 312", Ink::THIN);
    drawing.pen("M 90 158 L 96 190 V 304 L 90 332", Ink::THIN);
    drawing.pen("M 210 158 L 204 190 V 304 L 210 332", Ink::THIN);
    drawing.line((96.0, 246.0), (105.0, 246.0), Ink::THIN);
    drawing.line((204.0, 246.0), (195.0, 246.0), Ink::THIN);
    // Bonnet creases and warning lights: this end goes first.
    drawing.pen("M 112 132 C 110 92 116 54 128 28", Ink::THIN);
    drawing.pen("M 188 132 C 190 92 184 54 172 28", Ink::THIN);
    drawing.pen(
        "M 96 50 C 98 36 104 26 114 22 L 116 32 C 108 36 102 42 100 52 Z",
        Ink::THIN,
    );
    drawing.pen(
        "M 204 50 C 202 36 196 26 186 22 L 184 32 C 192 36 198 42 200 52 Z",
        Ink::THIN,
    );
    drawing.pen(
        "M 82 160 L 66 154 C 64 162 66 168 70 170 L 82 172",
        Ink::FACE.thin(),
    );
    drawing.pen(
        "M 218 160 L 234 154 C 236 162 234 168 230 170 L 218 172",
        Ink::FACE.thin(),
    );
}

/// A signal ring round a chosen wheel: found at arm's length, and told from the fill.
fn ring(drawing: &mut Drawing, place: Place, filled: &[Place]) {
    if !filled.contains(&place) {
        return;
    }
    let y = if place.is_front() { 46.0 } else { 238.0 };
    let at = if place.is_left() {
        Placing::at((36.0, y))
    } else {
        Placing::at((264.0, y)).mirrored()
    };
    // Open towards the body, so that no line crosses it.
    let ring = "M 38 0 H 16 C 0 0 0 0 0 16 V 86 C 0 102 0 102 16 102 H 38";
    drawing.pen_at(at, ring, Ink::SIGNAL);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tap_areas_do_not_touch_and_hold_their_wheel() {
        for place in Place::ALL {
            let area = tap_area(place);
            let wheel = large(&[])
                .shapes
                .into_iter()
                .filter_map(|shape| match shape {
                    crate::drawing::shape::Shape::Rect {
                        corner,
                        width,
                        height,
                        ..
                    } => Some((corner.0 + width / 2.0, corner.1 + height / 2.0)),
                    _ => None,
                });
            let inside = wheel.filter(|(x, y)| {
                area.x <= *x
                    && *x <= area.x + area.width
                    && area.y <= *y
                    && *y <= area.y + area.height
            });
            assert_eq!(inside.count(), 1, "{place:?}");
            for other in Place::ALL.into_iter().filter(|other| *other != place) {
                let other = tap_area(other);
                let apart = area.x + area.width + 16.0 <= other.x
                    || other.x + other.width + 16.0 <= area.x
                    || area.y + area.height + 16.0 <= other.y
                    || other.y + other.height + 16.0 <= area.y;
                assert!(apart, "{place:?}");
            }
        }
    }

    #[test]
    fn each_corner_gives_its_own_drawing() {
        let one = |place| (small(&[place]), large(&[place]));
        for (k, place) in Place::ALL.into_iter().enumerate() {
            for other in Place::ALL.into_iter().skip(k + 1) {
                assert_ne!(one(place).0, one(other).0);
                assert_ne!(one(place).1, one(other).1);
            }
        }
    }
}
