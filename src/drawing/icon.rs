//! Small line icons; a word always stands beside them.

use super::pen::{arc, clock};
use super::shape::{Drawing, Ink, Point};

const SIZE: f64 = 48.0;

/// A loose nut: a hexagon that is being turned off. All icons are in one ink, so that they
/// also stand on a filled key.
pub fn loose() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    let centre = (24.0, 29.0);
    let corners: Vec<Point> = (0..6)
        .map(|k| clock(centre, 13.0, 60.0 * f64::from(k)))
        .collect();
    drawing.polygon(&corners, Ink::LINE);
    drawing.circle(centre, 5.0, Ink::LINE);
    drawing.path(arc(centre, 21.0, 60.0, -60.0), Ink::LINE);
    let tip = clock(centre, 21.0, -60.0);
    drawing.polyline(
        &[(tip.0 + 1.0, 8.5), tip, (tip.0 + 10.5, tip.1 + 0.5)],
        Ink::LINE,
    );
    drawing
}

/// A note: a sheet with lines, its corner turned.
pub fn note() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.pen("M 10 5 H 30 L 39 14 V 43 H 10 Z", Ink::LINE);
    drawing.pen("M 30 5 V 14 H 39", Ink::LINE);
    for y in [22.0, 29.0, 36.0] {
        let to = if y > 35.0 { 26.0 } else { 33.0 };
        drawing.line((16.0, y), (to, y), Ink::LINE);
    }
    drawing
}

/// A photo: a camera.
pub fn photo() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.pen("M 5 15 H 14 L 18 8 H 30 L 34 15 H 43 V 40 H 5 Z", Ink::LINE);
    drawing.circle((24.0, 27.0), 8.5, Ink::LINE);
    drawing.circle((24.0, 27.0), 2.5, Ink::SOLID.bare());
    drawing.circle((38.0, 20.0), 1.5, Ink::SOLID.bare());
    drawing
}

/// A time: a clock's face at ten past ten.
pub fn clock_face() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    let centre = (24.0, 24.0);
    drawing.circle(centre, 19.0, Ink::LINE);
    for quarter in 0..4 {
        let turn = 90.0 * f64::from(quarter);
        drawing.line(
            clock(centre, 15.5, turn),
            clock(centre, 13.5, turn),
            Ink::LINE,
        );
    }
    drawing.polyline(
        &[clock(centre, 8.0, 305.0), centre, clock(centre, 12.0, 60.0)],
        Ink::LINE,
    );
    drawing
}

/// Kept: a full slate with a tick.
pub fn saved() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.rect((8.0, 4.0, 32.0, 40.0), 4.0, Ink::LINE);
    drawing.polyline(&[(15.0, 25.0), (22.0, 32.0), (33.0, 16.0)], Ink::BOLD);
    drawing
}

/// Not kept: a slate broken across, nothing on it.
pub fn not_saved() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.pen(
        "M 8 20 V 8 C 8 5 9 4 12 4 H 36 C 39 4 40 5 40 8 V 14 L 31 22 L 25 15 L 16 24 Z",
        Ink::LINE,
    );
    drawing.pen(
        "M 8 29 V 40 C 8 43 9 44 12 44 H 36 C 39 44 40 43 40 40 V 23 L 31 31 L 25 24 L 16 33 Z",
        Ink::SOLID,
    );
    drawing
}

/// A wait: what is being kept right now.
pub fn keeping() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.rect((8.0, 4.0, 32.0, 40.0), 4.0, Ink::LINE);
    drawing.path(arc((24.0, 24.0), 9.0, 40.0, 320.0), Ink::LINE);
    drawing
}
