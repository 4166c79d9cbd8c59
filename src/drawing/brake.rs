//! The caliper out of the way, and the sensor's wire where it must lie again.

use super::pen::smooth;
use super::place::Placing;
use super::shape::{Drawing, Ink, Point, Role};

/// The caliper hangs from the spring by a hook; its hose carries nothing.
pub fn hook() -> Drawing {
    let mut drawing = Drawing::new(300.0, 270.0);
    leg(&mut drawing, 66.0);
    // The hose bows below its own fitting: that is how slack is seen.
    let slack: [Point; 8] = [
        (274.0, 28.0),
        (270.0, 70.0),
        (278.0, 120.0),
        (284.0, 170.0),
        (272.0, 212.0),
        (244.0, 224.0),
        (216.0, 208.0),
        (198.0, 190.0),
    ];
    hose(&mut drawing, &slack);
    drawing.rect((258.0, 12.0, 34.0, 16.0), 2.0, Ink::FACE);
    drawing.line((246.0, 8.0), (298.0, 8.0), Ink::BOLD);
    caliper_hung(&mut drawing);
    // From round the spring's coil down through the caliper's ear.
    let wire: [Point; 9] = [
        (84.0, 86.0),
        (86.0, 66.0),
        (99.0, 57.0),
        (111.0, 67.0),
        (116.0, 92.0),
        (124.0, 114.0),
        (132.0, 130.0),
        (125.0, 143.0),
        (114.0, 138.0),
    ];
    drawing.path(smooth(&wire), Ink::BOLD.role(Role::Signal));
    drawing
}

/// Strut with its spring, from the upper mount down to the knuckle's clamp.
fn leg(drawing: &mut Drawing, x: f64) {
    drawing.rect((x - 44.0, 4.0, 88.0, 12.0), 3.0, Ink::FACE);
    drawing.line((x, 16.0), (x, 120.0), Ink::BOLD);
    drawing.rect((x - 15.0, 108.0, 30.0, 110.0), 3.0, Ink::FACE);
    spring(drawing, x);
    let at = Placing::at((x, 0.0));
    drawing.pen_at(at, "M -42 118 H 42 L 34 128 H -34 Z", Ink::FACE);
    drawing.pen_at(at, "M -22 196 H 22 V 262 H -22 Z", Ink::FACE);
    for y in [212.0, 242.0] {
        drawing.circle((x, y), 7.0, Ink::FACE);
    }
}

/// The coils of the spring: what runs behind the strut is thin, what runs before it bold.
fn spring(drawing: &mut Drawing, x: f64) {
    for turn in 0..5 {
        let at = Placing::at((x, 24.0 + 18.0 * f64::from(turn)));
        drawing.pen_at(at, "M -37 0 C -20 -6 20 -10 37 -7", Ink::THIN);
        drawing.pen_at(at, "M -37 0 C -20 9 20 15 37 11", Ink::BOLD);
    }
}

/// A hose: a heavy line with its light side in paper.
fn hose(drawing: &mut Drawing, points: &[Point]) {
    for side in [-4.0, 4.0] {
        let shifted: Vec<Point> = points.iter().map(|(x, y)| (x + side, *y)).collect();
        drawing.path(smooth(&shifted), Ink::LINE);
    }
}

/// The caliper, hatched: fingers, bridge, piston side with the hose, and the ear it hangs by.
fn caliper_hung(drawing: &mut Drawing) {
    let mut piece = Drawing::new(0.0, 0.0);
    piece.pen(
        "M -42 -34 V -46 C -42 -62 -14 -62 -14 -46 V -34 Z",
        Ink::FACE,
    );
    piece.circle((-28.0, -46.0), 7.0, Ink::FACE);
    piece.pen(
        "M -52 -20 C -52 -30 -46 -36 -36 -36 H 32 C 44 -36 52 -28 52 -16 V 28 \
         C 52 34 48 38 42 38 H 10 V -2 H -30 V 38 H -52 Z",
        Ink::HATCH.bold(),
    );
    piece.rect((-30.0, 2.0, 9.0, 34.0), 0.0, Ink::FACE);
    piece.rect((1.0, 2.0, 9.0, 34.0), 0.0, Ink::FACE);
    piece.circle((44.0, 10.0), 9.0, Ink::FACE);
    piece.circle((44.0, 10.0), 3.0, Ink::SOLID.bare());
    drawing.put(&piece, Placing::at((152.0, 180.0)));
}

/// The way of the sensor's wire from the hub along the leg to its plug, with its clips filled.
pub fn sensor_route() -> Drawing {
    let mut drawing = Drawing::new(300.0, 270.0);
    leg(&mut drawing, 66.0);
    drawing.pen(
        "M 88 206 H 130 C 148 206 158 200 164 186 L 168 176 H 206 V 260 H 160 L 150 266 H 118 \
         L 108 254 H 88 Z",
        Ink::FACE.bold(),
    );
    drawing.rect((206.0, 170.0, 14.0, 96.0), 0.0, Ink::FACE);
    drawing.rect((220.0, 204.0, 20.0, 30.0), 0.0, Ink::FACE);
    for y in [182.0, 242.0] {
        drawing.rect((220.0, y, 26.0, 8.0), 0.0, Ink::FACE.thin());
    }
    // The inner wing with its hole, and the plug behind it.
    drawing.pen("M 160 4 C 176 60 240 70 296 66", Ink::BOLD);
    let route: [Point; 9] = [
        (188.0, 174.0),
        (186.0, 156.0),
        (164.0, 148.0),
        (130.0, 160.0),
        (101.0, 156.0),
        (98.0, 132.0),
        (124.0, 104.0),
        (166.0, 80.0),
        (206.0, 44.0),
    ];
    drawing.path(smooth(&route), Ink::BOLD.role(Role::Signal));
    drawing.rect((179.0, 172.0, 18.0, 34.0), 2.0, Ink::SOLID);
    drawing.rect((176.0, 184.0, 24.0, 7.0), 0.0, Ink::SOLID);
    for (at, turn) in [
        ((152.0, 151.0), -8.0),
        ((97.0, 146.0), 90.0),
        ((144.0, 92.0), -30.0),
    ] {
        clip(&mut drawing, at, turn);
    }
    drawing.put(&plug(), Placing::at((206.0, 44.0)).turned(-42.0));
    drawing
}

/// A clip round the wire.
fn clip(drawing: &mut Drawing, at: Point, turn: f64) {
    let mut piece = Drawing::new(0.0, 0.0);
    piece.rect((-8.0, -10.0, 16.0, 20.0), 0.0, Ink::SOLID);
    piece.line((0.0, 10.0), (0.0, 19.0), Ink::BOLD);
    drawing.put(&piece, Placing::at(at).turned(turn));
}

fn plug() -> Drawing {
    let mut piece = Drawing::new(0.0, 0.0);
    piece.rect((0.0, -9.0, 24.0, 18.0), 0.0, Ink::FACE);
    piece.rect((24.0, -12.0, 22.0, 24.0), 0.0, Ink::FACE);
    piece.line((8.0, -9.0), (8.0, 9.0), Ink::THIN);
    piece.line((15.0, -9.0), (15.0, 9.0), Ink::THIN);
    piece
}
