//! The wheel end on a spindle: the order of its parts, the castle nut's slot, the drum off its shoes.

use super::pen::{arc, clock};
use super::piece::{arrow, turning};
use super::place::Placing;
use super::shape::{Drawing, Ink, Point};

/// Seal, cone, cup, cone, washer, nut and cotter in the order in which they stand on the spindle.
pub fn taper_stack() -> Drawing {
    let mut drawing = Drawing::new(300.0, 220.0);
    let axle = 116.0;
    drawing.pen(
        "M 4 92 H 40 L 54 98 H 296 V 134 H 54 L 40 140 H 4 Z",
        Ink::FACE,
    );
    for k in 0..5 {
        let x = 246.0 + 10.0 * f64::from(k);
        drawing.line((x, 99.0), (x - 4.0, 133.0), Ink::THIN);
    }
    drawing.rect((48.0, 66.0, 12.0, 100.0), 2.0, Ink::HATCH);
    cone(&mut drawing, 74.0, false);
    // The hub between its cups.
    drawing.pen(
        "M 108 44 H 172 V 22 H 184 V 44 H 190 V 74 H 108 Z M 108 158 H 190 V 188 H 184 V 210 H 172 V 188 H 108 Z",
        Ink::FACE.bold(),
    );
    cone(&mut drawing, 196.0, true);
    drawing.rect((230.0, 82.0, 7.0, 68.0), 0.0, Ink::FACE);
    drawing.pen(
        "M 242 76 H 262 V 86 H 270 V 146 H 262 V 156 H 242 Z",
        Ink::SOLID,
    );
    drawing.line((266.0, 60.0), (266.0, 172.0), Ink::BOLD);
    drawing.circle((266.0, 56.0), 5.0, Ink::FACE);
    arrow(&mut drawing, &[(290.0, axle - 84.0), (222.0, axle - 84.0)]);
    drawing
}

/// A cone with its rollers, cut along the axle, the wide end away from the hub.
fn cone(drawing: &mut Drawing, x: f64, turned: bool) {
    let side = if turned { -1.0 } else { 1.0 };
    let middle = x + 13.0;
    for (y, down) in [(88.0, -1.0), (144.0, 1.0)] {
        let ring: Vec<Point> = [(-13.0, 6.0), (13.0, 6.0), (13.0, 0.0), (-13.0, -8.0)]
            .map(|(dx, dy): (f64, f64)| (middle + side * dx, y - down * dy))
            .to_vec();
        drawing.polygon(&ring, Ink::FACE);
        let roller: Vec<Point> = [(-10.0, -10.0), (11.0, -2.0), (9.0, -12.0), (-12.0, -22.0)]
            .map(|(dx, dy): (f64, f64)| (middle + side * dx, y - down * dy))
            .to_vec();
        drawing.polygon(&roller, Ink::SOLID);
    }
}

/// The castle nut from its end: the hole lies between two slots, and the nut goes back to the
/// looser one.
pub fn castle_slot() -> Drawing {
    let mut drawing = Drawing::new(300.0, 240.0);
    let centre = (118.0, 124.0);
    let corners: Vec<Point> = (0..6)
        .map(|k| clock(centre, 106.0, 30.0 + 60.0 * f64::from(k)))
        .collect();
    drawing.polygon(&corners, Ink::FACE.bold());
    drawing.circle(centre, 84.0, Ink::LINE);
    for k in 0..6 {
        let at = Placing::at(centre).turned(24.0 + 60.0 * f64::from(k));
        drawing.pen_at(at, "M -9 -85 V -50 H 9 V -85 Z", Ink::FACE.thin());
    }
    drawing.circle(centre, 50.0, Ink::FACE.bold());
    // The hole of the cotter goes through the spindle from top to bottom.
    drawing.line((118.0, 74.0), (118.0, 174.0), Ink::GHOST);
    drawing.circle((118.0, 76.0), 7.0, Ink::SOLID);
    // Loosening turns the slot on the right to the hole.
    turning(&mut drawing, centre, 112.0, 34.0, 2.0);
    drawing.pen(
        "M 262 20 C 280 20 280 44 262 44 L 262 210 M 254 44 V 196",
        Ink::BOLD,
    );
    drawing
}

/// The drum drawn off straight; the shoes stay on their plate.
pub fn drum_off() -> Drawing {
    let mut drawing = Drawing::new(300.0, 240.0);
    let centre = (112.0, 120.0);
    drawing.circle(centre, 104.0, Ink::FACE);
    for (from, to) in [(200.0, 340.0), (20.0, 160.0)] {
        drawing.path(arc(centre, 84.0, from, to), Ink::BOLD);
        drawing.path(arc(centre, 68.0, from, to), Ink::BOLD);
        drawing.path(arc(centre, 76.0, from, to), Ink::BOLD);
    }
    drawing.circle(centre, 34.0, Ink::FACE.bold());
    for k in 0..5 {
        drawing.circle(clock(centre, 22.0, 72.0 * f64::from(k)), 4.0, Ink::SOLID);
    }
    // The adjuster between the shoes' lower ends.
    drawing.rect((88.0, 190.0, 48.0, 12.0), 2.0, Ink::SOLID);
    drawing.rect((92.0, 38.0, 40.0, 14.0), 4.0, Ink::FACE);
    drawing.pen(
        "M 236 24 H 262 V 216 H 236 V 200 H 246 V 40 H 236 Z",
        Ink::FACE.bold(),
    );
    arrow(&mut drawing, &[(226.0, 120.0), (292.0, 120.0)]);
    drawing
}
