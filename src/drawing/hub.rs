//! The hub unit: drawn out, offered up by hand, its nut staked.

use super::pen::{arc, clock};
use super::piece::{arrow, arrow_along, fist, turning};
use super::place::Placing;
use super::shape::{Drawing, Ink, Point, Role, Step};

/// A puller held by the wheel studs: its two screws press on the knuckle and draw the hub out
/// straight.
pub fn puller() -> Drawing {
    let mut drawing = Drawing::new(300.0, 240.0);
    let bold = Ink::FACE.bold();
    // The shaft stays behind, in the hub's bore.
    drawing.rect((4.0, 104.0, 108.0, 32.0), 0.0, Ink::FACE.thin());
    drawing.pen("M 86 8 V 72 H 24 V 44 C 24 22 36 8 58 8 Z", bold);
    drawing.pen("M 86 232 V 168 H 24 V 196 C 24 218 36 232 58 232 Z", bold);
    hub_out(&mut drawing);
    for y in [28.0, 212.0] {
        screw(&mut drawing, y);
    }
    drawing.rect((184.0, 10.0, 18.0, 220.0), 2.0, Ink::HATCH);
    for y in [66.0, 174.0] {
        drawing.rect((202.0, y - 10.0, 14.0, 20.0), 0.0, Ink::FACE);
        drawing.line((216.0, y), (226.0, y), Ink::BOLD);
    }
    arrow(&mut drawing, &[(222.0, 120.0), (292.0, 120.0)]);
    drawing
}

/// The hub half out of its bore, cut along its axle.
fn hub_out(drawing: &mut Drawing) {
    let bold = Ink::FACE.bold();
    drawing.pen(
        "M 64 76 H 122 V 44 H 136 V 98 H 152 V 142 H 136 V 196 H 122 V 164 H 64 Z",
        bold,
    );
    drawing.pen("M 64 104 H 152 M 64 136 H 152", Ink::GHOST);
    for y in [66.0, 174.0] {
        drawing.rect((136.0, y - 5.0, 48.0, 10.0), 0.0, Ink::FACE.thin());
        for k in 0..6 {
            let x = 144.0 + 7.0 * f64::from(k);
            drawing.line((x, y - 4.0), (x - 3.0, y + 4.0), Ink::THIN);
        }
    }
}

/// One screw of the puller: its tip on the knuckle, its head to the right.
fn screw(drawing: &mut Drawing, y: f64) {
    drawing.rect((90.0, y - 6.0, 158.0, 12.0), 0.0, Ink::FACE);
    for k in 0..16 {
        let x = 102.0 + 9.0 * f64::from(k);
        drawing.line((x, y - 5.0), (x - 4.0, y + 5.0), Ink::THIN);
    }
    drawing.rect((248.0, y - 13.0, 16.0, 26.0), 1.0, Ink::SOLID);
    let shaft: [Point; 4] = [(272.0, -15.0), (294.0, -15.0), (294.0, 8.0), (281.0, 10.0)];
    let [from, one, two, to] = shaft.map(|(x, down)| (x, y + down));
    let shaft = vec![Step::Move(from), Step::Curve(one, two, to)];
    arrow_along(drawing, shaft, (270.0, y + 14.0), 160.0);
}

/// The splines aligned by turning the hub by hand, then slid together; no force.
pub fn splines() -> Drawing {
    let mut drawing = Drawing::new(300.0, 220.0);
    shaft(&mut drawing);
    // The one axle that both are held to.
    drawing.line((154.0, 110.0), (166.0, 110.0), Ink::GHOST);
    let bold = Ink::FACE.bold();
    drawing.pen("M 168 66 H 204 V 26 H 218 V 194 H 204 V 154 H 168 Z", bold);
    drawing.pen("M 218 82 H 234 V 138 H 218", bold);
    for y in [98.0, 104.0, 110.0, 116.0, 122.0] {
        drawing.line((172.0, y), (226.0, y), Ink::GHOST);
    }
    drawing.put(&fist(), Placing::at((214.0, 40.0)).scaled(0.9));
    drawing.put(&fist(), Placing::at((214.0, 180.0)).scaled(0.9));
    arrow(&mut drawing, &[(292.0, 110.0), (244.0, 110.0)]);
    turning(&mut drawing, (152.0, 110.0), 62.0, -60.0, 10.0);
    drawing
}

/// The shaft from its joint to its thread; the splines are filled.
fn shaft(drawing: &mut Drawing) {
    drawing.pen(
        "M 4 98 H 16 C 22 66 40 56 58 56 V 164 C 40 164 22 154 16 122 H 4",
        Ink::FACE,
    );
    for x in [28.0, 38.0, 48.0] {
        let at = Placing::at((x, 110.0));
        drawing.pen_at(at, "M 0 -44 C -6 -20 -6 20 0 44", Ink::THIN);
    }
    drawing.pen("M 58 78 H 68 V 142 H 58 Z", Ink::FACE);
    drawing.rect((68.0, 92.0, 54.0, 36.0), 0.0, Ink::SOLID);
    for k in 1..6 {
        let y = 92.0 + 6.0 * f64::from(k);
        drawing.line((71.0, y), (119.0, y), Ink::THIN.role(Role::Paper));
    }
    drawing.rect((122.0, 98.0, 28.0, 24.0), 0.0, Ink::FACE);
    for k in 0..4 {
        let x = 128.0 + 6.0 * f64::from(k);
        drawing.line((x, 99.0), (x - 3.0, 121.0), Ink::THIN);
    }
}

/// The axle nut's collar driven into the groove of the shaft with a punch.
pub fn nut_stake() -> Drawing {
    let mut drawing = Drawing::new(300.0, 240.0);
    let centre = (120.0, 126.0);
    let turn = 52.0;
    drawing.circle(centre, 110.0, Ink::FACE);
    let corners: Vec<Point> = (0..6)
        .map(|k| clock(centre, 103.0, turn + 30.0 + 60.0 * f64::from(k)))
        .collect();
    drawing.polygon(&corners, Ink::FACE.bold());
    drawing.circle(centre, 66.0, Ink::LINE);
    drawing.circle(centre, 55.0, Ink::LINE);
    drawing.path(arc(centre, 47.0, turn + 24.0, turn + 336.0), Ink::THIN);
    drawing.circle(centre, 7.0, Ink::LINE);
    drawing.put(&stake(), Placing::at(centre).turned(turn));
    let beside = |radius: f64| {
        let (x, y) = clock(centre, radius, turn);
        let (sin, cos) = f64::to_radians(turn).sin_cos();
        (x + 30.0 * cos, y + 30.0 * sin)
    };
    arrow(&mut drawing, &[beside(166.0), beside(104.0)]);
    drawing
}

/// The groove, the collar bent into it and the punch, the shaft's middle at the origin and the
/// groove above it.
fn stake() -> Drawing {
    let mut piece = Drawing::new(0.0, 0.0);
    piece.pen("M -18 -70 H 18 V -52 H -18 Z", Ink::FACE.bare());
    piece.pen("M -17 -53 V -32 C -17 -22 17 -22 17 -32 V -53", Ink::FACE);
    piece.pen(
        "M -24 -62 C -14 -64 -14 -46 -8 -44 H 8 C 14 -46 14 -64 24 -62 L 17 -52 \
         C 16 -44 14 -34 9 -32 H -9 C -14 -34 -16 -44 -17 -52 Z",
        Ink::SOLID.thin(),
    );
    piece.pen("M -7 -48 H 7 L 13 -88 V -150 H -13 V -88 Z", Ink::FACE);
    piece.line((-13.0, -88.0), (13.0, -88.0), Ink::THIN);
    piece.line((-17.0, -150.0), (17.0, -150.0), Ink::BOLD);
    piece
}
