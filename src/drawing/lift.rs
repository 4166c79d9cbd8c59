//! How the vehicle is held while a wheel is off: chocks, stand, shove.

use super::pen::arc;
use super::piece::{arrow, both_ways, ground, palm, stand as stand_piece, tire_edge, wheel_face};
use super::place::Placing;
use super::shape::{Dash, Drawing, Ink};

/// Chocks on both sides of the wheel diagonally opposite to the one that is lifted.
pub fn chocks() -> Drawing {
    let mut drawing = Drawing::new(300.0, 220.0);
    from_above(&mut drawing);
    let mut wedge = Drawing::new(0.0, 0.0);
    wedge.pen("M 0 0 L 25 -29 H 35 C 46 -14 60 -6 78 0 Z", Ink::SOLID);
    drawing.put(&wedge, Placing::at((134.0, 180.0)));
    drawing.put(&wedge, Placing::at((298.0, 180.0)).mirrored());
    wheel_face(&mut drawing, (216.0, 123.0), 55.0);
    ground(&mut drawing, 128.0, 298.0, 182.0);
    drawing
}

/// The vehicle from above: the lifted corner hatched, chocks before and behind the opposite
/// wheel, dots from the one to the other.
fn from_above(drawing: &mut Drawing) {
    for (x, y) in [(6.0, 34.0), (90.0, 34.0), (6.0, 140.0), (90.0, 140.0)] {
        let lifted = x < 50.0 && y < 90.0;
        let ink = if lifted { Ink::HATCH } else { Ink::FACE };
        drawing.rect((x, y, 24.0, 42.0), 5.0, ink);
    }
    drawing.pen(
        "M 24 56 C 24 26 32 12 46 8 C 55 5 65 5 74 8 C 88 12 96 26 96 56 V 184 \
         C 96 202 88 210 74 212 C 65 213 55 213 46 212 C 32 210 24 202 24 184 Z",
        Ink::FACE.bold(),
    );
    drawing.pen(
        "M 32 86 C 44 76 76 76 88 86 L 81 106 C 70 102 50 102 39 106 Z",
        Ink::LINE,
    );
    drawing.pen(
        "M 40 178 C 52 181 68 181 80 178 L 86 192 C 70 197 50 197 34 192 Z",
        Ink::THIN,
    );
    drawing.pen(
        "M 39 106 L 37 142 L 40 178 M 81 106 L 83 142 L 80 178",
        Ink::THIN,
    );
    for y in [127.0, 186.0] {
        drawing.rect((99.0, y, 22.0, 10.0), 1.0, Ink::SOLID);
    }
    drawing.line((30.0, 60.0), (98.0, 158.0), Ink::SIGNAL.dash(Dash::Dots));
}

/// A stand under the rated point, the vehicle lowered on to it, the wheel laid under the rocker.
pub fn stand() -> Drawing {
    let mut drawing = Drawing::new(300.0, 220.0);
    ground(&mut drawing, 4.0, 296.0, 206.0);
    let wheel = (92.0, 114.0);
    wheel_face(&mut drawing, wheel, 52.0);
    drawing.pen(
        "M 28 120 L 10 116 L 8 84 C 12 66 28 56 60 50 L 138 38 L 178 6 H 292",
        Ink::BOLD,
    );
    drawing.path(arc(wheel, 64.0, -95.0, 106.0), Ink::BOLD);
    drawing.pen("M 153 132 H 292", Ink::BOLD);
    drawing.pen("M 156 118 H 292", Ink::THIN);
    drawing.pen("M 178 118 C 172 92 166 70 166 46 L 192 16 H 292", Ink::LINE);
    drawing.pen("M 12 84 C 22 84 34 80 40 68 L 24 66", Ink::THIN);
    drawing.rect((262.0, 62.0, 24.0, 7.0), 3.0, Ink::THIN);
    drawing.rect((192.0, 132.0, 26.0, 8.0), 0.0, Ink::FACE);
    drawing.put(&stand_piece(60.0), Placing::at((205.0, 144.0)));
    arrow(&mut drawing, &[(205.0, 64.0), (205.0, 126.0)]);
    drawing.put(
        &tire_edge(26.0, 54.0),
        Placing::at((265.0, 190.0)).turned(90.0),
    );
    drawing
}

/// The shove: a hand on the wing pushes the vehicle, and it must not move on its stand.
pub fn shove() -> Drawing {
    let mut drawing = Drawing::new(300.0, 220.0);
    ground(&mut drawing, 4.0, 296.0, 200.0);
    drawing.put(&vehicle_front(), Placing::at((116.0, 118.0)).turned(-6.0));
    drawing.put(&stand_piece(45.0), Placing::at((164.0, 154.0)));
    drawing.put(&palm(), Placing::at((200.0, 116.0)).scaled(1.3));
    both_ways(&mut drawing, (204.0, 40.0), (272.0, 40.0));
    drawing
}

/// A vehicle from the front; its origin is in the middle, 44 above the lowest edge of the body.
fn vehicle_front() -> Drawing {
    let mut front = Drawing::new(0.0, 0.0);
    for x in [-80.0, 52.0] {
        front.rect((x, 20.0, 28.0, 54.0), 0.0, Ink::FACE);
        for k in 1..4 {
            let x = x + 7.0 * f64::from(k);
            front.line((x, 46.0), (x, 70.0), Ink::THIN);
        }
    }
    front.pen(
        "M -84 30 V -8 C -84 -24 -78 -32 -66 -36 L -50 -76 C -48 -83 -44 -86 -36 -86 H 36 \
         C 44 -86 48 -83 50 -76 L 66 -36 C 78 -32 84 -24 84 -8 V 30 C 84 39 80 43 72 43 H -72 \
         C -80 43 -84 39 -84 30 Z",
        Ink::FACE.bold(),
    );
    front.pen("M -54 -38 L -42 -72 C -41 -75 -40 -76 -37 -76 H 37 C 40 -76 41 -75 42 -72 L 54 -38 C 20 -44 -20 -44 -54 -38 Z", Ink::LINE);
    front.pen("M -66 -36 C -24 -48 24 -48 66 -36", Ink::THIN);
    front.pen("M -36 -12 H 36 L 30 4 H -30 Z", Ink::LINE);
    front.line((-33.0, -4.0), (33.0, -4.0), Ink::THIN);
    front.rect((-24.0, 15.0, 48.0, 14.0), 0.0, Ink::LINE);
    let middle = Placing::at((0.0, 0.0));
    for side in [middle, middle.mirrored()] {
        front.pen_at(side, "M 66 -40 L 84 -48 L 86 -36 L 70 -34 Z", Ink::FACE);
        front.pen_at(
            side,
            "M 76 -12 C 64 -18 52 -16 44 -8 C 52 4 66 4 74 -2 Z",
            Ink::LINE,
        );
    }
    front
}
