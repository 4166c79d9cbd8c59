//! Pieces that more than one picture is made of: arrows, gloves, wheels, stands, ground.

use super::pen::{arc, clock, smooth};
use super::place::Placing;
use super::shape::{Drawing, Ink, Point, Role, Step};

/// An arrow of movement through the points, its head at the last one.
pub fn arrow(drawing: &mut Drawing, points: &[Point]) {
    let (Some(tip), Some(from)) = (
        points.last().copied(),
        points
            .len()
            .checked_sub(2)
            .and_then(|k| points.get(k))
            .copied(),
    ) else {
        return;
    };
    let along = (tip.1 - from.1).atan2(tip.0 - from.0);
    let (sin, cos) = along.sin_cos();
    // The shaft stops inside the head, so that its end never blunts the tip.
    let neck = (tip.0 - 9.0 * cos, tip.1 - 9.0 * sin);
    let mut shaft = points.to_vec();
    if let Some(last) = shaft.last_mut() {
        *last = neck;
    }
    drawing.path(smooth(&shaft), Ink::SIGNAL);
    head(drawing, tip, along.to_degrees());
}

/// An arrow of movement with a head at both ends of a straight line.
pub fn both_ways(drawing: &mut Drawing, one: Point, two: Point) {
    let middle = ((one.0 + two.0) / 2.0, (one.1 + two.1) / 2.0);
    arrow(drawing, &[middle, one]);
    arrow(drawing, &[middle, two]);
}

/// An arrow of movement round a centre, in degrees clockwise from the top.
pub fn turning(drawing: &mut Drawing, centre: Point, radius: f64, from: f64, to: f64) {
    // The head is 13 long; it is turned as the circle is in the middle of it.
    let back = (13.0 / radius).to_degrees() * (to - from).signum();
    drawing.path(arc(centre, radius, from, to - back * 0.7), Ink::SIGNAL);
    let tangent = if to > from { 0.0 } else { 180.0 };
    head(
        drawing,
        clock(centre, radius, to),
        to - back / 2.0 + tangent,
    );
}

/// An arrow of movement along a path, its head at `tip`, pointing along `degrees` clockwise
/// from the right.
pub fn arrow_along(drawing: &mut Drawing, shaft: Vec<Step>, tip: Point, degrees: f64) {
    drawing.path(shaft, Ink::SIGNAL);
    head(drawing, tip, degrees);
}

/// The head of an arrow that points along `degrees` clockwise from the right.
fn head(drawing: &mut Drawing, tip: Point, degrees: f64) {
    let at = Placing::at(tip).turned(degrees);
    let corners = [(0.0, 0.0), (-15.0, -8.0), (-15.0, 8.0)];
    let corners = corners.map(|corner| at.point(corner));
    let ink = Ink::SOLID.thin().role(Role::Signal);
    drawing.polygon(&corners, ink);
}

/// The ground: a heavy line with short strokes below it.
pub fn ground(drawing: &mut Drawing, from: f64, to: f64, y: f64) {
    let mut x = from + 10.0;
    while x < to {
        drawing.line((x, y + 2.0), (x - 7.0, y + 9.0), Ink::THIN);
        x += 14.0;
    }
    drawing.line((from, y), (to, y), Ink::BOLD);
}

/// A gloved right hand seen from its back, fingers down; its origin is the middle of the
/// knuckles, it is 58 wide and 92 high. The cuff is solid, so that hands are found first.
pub fn glove() -> Drawing {
    let mut hand = Drawing::new(0.0, 0.0);
    hand.pen(
        "M -17 -28 C -22 -20 -25 -14 -28 -8 C -34 2 -38 8 -37 15 C -36 21 -29 22 -26 17 \
         L -21 9 V 26 C -21 34 -11 34 -11 26 V 31 C -11 39 0 39 0 31 V 28 C 0 37 11 37 11 28 \
         V 20 C 11 28 21 28 21 20 V -4 C 21 -14 19 -22 17 -28 Z",
        Ink::FACE,
    );
    for (x, y) in [(-11.0, 26.0), (0.0, 30.0), (11.0, 27.0)] {
        hand.line((x, 4.0), (x, y), Ink::THIN);
    }
    hand.pen("M -21 9 C -20 4 -20 2 -18 -2", Ink::THIN);
    hand.pen("M -18 -28 H 18 L 21 -50 H -21 Z", Ink::SOLID);
    hand
}

/// A gloved fist round a bar or an edge, seen from the side of its fingers: the fingers close
/// to the left, the arm goes to the right. Its origin is in the middle of the grip.
pub fn fist() -> Drawing {
    let mut hand = Drawing::new(0.0, 0.0);
    hand.pen(
        "M -12 -20 C -4 -26 12 -25 22 -20 L 34 -15 V 15 L 22 20 C 12 25 -4 26 -12 21 Z",
        Ink::FACE,
    );
    for finger in [
        "M 4 -21 H -12 C -17 -21 -17 -10.5 -12 -10.5 H 4 C 10 -10.5 10 -21 4 -21 Z",
        "M 7 -10.5 H -17 C -22 -10.5 -22 0 -17 0 H 7 C 13 0 13 -10.5 7 -10.5 Z",
        "M 7 0 H -17 C -22 0 -22 10.5 -17 10.5 H 7 C 13 10.5 13 0 7 0 Z",
        "M 4 10.5 H -11 C -16 10.5 -16 21 -11 21 H 4 C 10 21 10 10.5 4 10.5 Z",
    ] {
        hand.pen(finger, Ink::FACE);
    }
    hand.pen("M 34 -17 H 40 L 58 -20 V 20 L 40 17 H 34 Z", Ink::SOLID);
    hand
}

/// An open gloved hand that pushes to the left, seen from its side; the palm stands at the
/// origin, the arm goes to the right.
pub fn palm() -> Drawing {
    let mut hand = Drawing::new(0.0, 0.0);
    hand.pen(
        "M 1 22 C -1 14 -1 4 0 -6 V -38 C 0 -45 10 -45 11 -38 L 14 -15 C 22 -14 30 -11 40 -9 \
         V 14 C 31 17 22 24 12 28 C 6 30 2 28 1 22 Z",
        Ink::FACE,
    );
    hand.pen(
        "M 30 -4 C 22 -6 16 -10 15 -18 C 14 -26 24 -28 25 -20 C 25 -16 28 -14 33 -11",
        Ink::FACE,
    );
    hand.pen("M 40 -11 L 66 -14 V 19 L 40 16 Z", Ink::SOLID);
    hand
}

/// A wheel seen from outside: tire, rim, spokes and the hole in the middle.
pub fn wheel_face(drawing: &mut Drawing, centre: Point, radius: f64) {
    drawing.circle(centre, radius, Ink::FACE.bold());
    let rim = radius * 0.70;
    drawing.circle(centre, rim, Ink::LINE);
    drawing.circle(centre, rim - 6.0, Ink::THIN);
    let (foot, tip) = (radius * 0.24, rim - 6.0);
    for k in 0..5 {
        let turn = 72.0 * f64::from(k);
        for side in [-1.0, 1.0] {
            let from = clock(centre, foot, turn + side * 24.0);
            drawing.line(from, clock(centre, tip, turn + side * 11.0), Ink::THIN);
        }
        drawing.circle(
            clock(centre, radius * 0.19, turn + 36.0),
            radius * 0.042,
            Ink::SOLID.bare(),
        );
    }
    drawing.circle(centre, radius * 0.28, Ink::LINE);
    drawing.circle(centre, radius * 0.09, Ink::THIN);
}

/// A tire seen on its edge, upright: its middle, width and height, with grooves of the tread.
pub fn tire_edge(width: f64, height: f64) -> Drawing {
    let (w, h) = (width / 2.0, height / 2.0);
    let mut tire = Drawing::new(0.0, 0.0);
    let (s, t) = (w * 0.45, h - w * 0.4);
    // One quarter from the middle of the top to the middle of the side, then its mirror images.
    let side = |x: f64, y: f64| {
        [
            (s * x, h * y),
            (w * x, h * y),
            (w * x, t * y),
            (w * x, t * y),
        ]
    };
    let mut steps = vec![Step::Move((-s, -h))];
    for (x, y, back) in [
        (1.0, -1.0, false),
        (1.0, 1.0, true),
        (-1.0, 1.0, false),
        (-1.0, -1.0, true),
    ] {
        let mut corner = side(x, y);
        if back {
            corner.reverse();
        }
        let [from, one, two, to] = corner;
        steps.extend([Step::Line(from), Step::Curve(one, two, to)]);
    }
    steps.push(Step::Close);
    tire.path(steps, Ink::FACE);
    for x in [-0.36, 0.0, 0.36] {
        let end = if x == 0.0 { h - 7.0 } else { h - 9.0 };
        tire.line((w * x, -end), (w * x, end), Ink::THIN);
    }
    tire
}

/// A stand, solid: its head carries at the origin, its feet stand `height` below.
pub fn stand(height: f64) -> Drawing {
    let mut stand = Drawing::new(0.0, 0.0);
    let foot = height * 0.42;
    let waist = height * 0.42;
    stand.polygon(
        &[
            (-9.0, waist),
            (9.0, waist),
            (foot, height),
            (foot - 11.0, height),
            (0.0, waist + 14.0),
            (11.0 - foot, height),
            (-foot, height),
        ],
        Ink::SOLID,
    );
    stand.line(
        (-foot * 0.62, height - 13.0),
        (foot * 0.62, height - 13.0),
        Ink::LINE,
    );
    stand.polygon(
        &[(-5.0, 7.0), (5.0, 7.0), (5.0, waist), (-5.0, waist)],
        Ink::FACE,
    );
    let mut notch = 14.0;
    while notch < waist - 3.0 {
        stand.line((-5.0, notch), (1.0, notch), Ink::THIN);
        notch += 6.0;
    }
    stand.polygon(
        &[
            (-15.0, -4.0),
            (-9.0, 0.0),
            (9.0, 0.0),
            (15.0, -4.0),
            (15.0, 3.0),
            (8.0, 8.0),
            (-8.0, 8.0),
            (-15.0, 3.0),
        ],
        Ink::SOLID,
    );
    stand
}
