//! Fasteners in the order in which they are tightened, each with its number.
//!
//! A place is counted clockwise from the top, or from the top down where they stand in a row.
//! The order comes from the rules of the trade; a drawing never invents one.

use super::pen::clock;
use super::piece::turning;
use super::shape::{Dash, Drawing, Ink, Point, Role};

/// On what the fasteners stand, and from where one looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// Studs or bolts of the wheel, 3 to 10, from outside.
    Wheel,
    /// Bolts that hold the hub to the knuckle, from behind, through which they are reached.
    Hub,
    /// Two bolts or pins of the caliper, one above the other.
    Row,
}

const SIZE: f64 = 300.0;
const CENTRE: Point = (SIZE / 2.0, SIZE / 2.0);

/// Fasteners numbered in their order, `done` of them filled, the next one ringed, the order
/// dotted.
///
/// `order` holds places, the first to be tightened first: `[0, 2, 4, 1, 3]` is the five-stud
/// star. A place that is not one of the `order.len()` places is left out.
pub fn star(pattern: Pattern, order: &[usize], done: usize) -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    match pattern {
        Pattern::Wheel => wheel(&mut drawing),
        Pattern::Hub => knuckle_behind(&mut drawing),
        Pattern::Row => caliper(&mut drawing),
    }
    let places = places(pattern, order.len());
    let visited: Vec<Point> = order
        .iter()
        .filter_map(|place| places.get(*place).copied())
        .collect();
    let size = match order.len() {
        0..=6 => 30.0,
        7..=8 => 27.0,
        _ => 23.0,
    };
    for pair in visited.windows(2) {
        if let (Some(from), Some(to)) = (pair.first(), pair.last()) {
            let dotted = Ink::LINE.dash(Dash::Dots).role(Role::Quiet);
            drawing.line(*from, *to, dotted);
        }
    }
    for (step, at) in visited.iter().enumerate() {
        if step == done {
            drawing.circle(*at, size + 9.0, Ink::FACE.bare());
            drawing.circle(*at, size + 7.0, Ink::FACE.bold().role(Role::Signal));
            drawing.circle(*at, size + 3.0, Ink::SIGNAL);
        }
        nut(&mut drawing, *at, size, step + 1, step < done);
    }
    drawing
}

/// One fastener: a hexagon, filled when done, with its number.
fn nut(drawing: &mut Drawing, at: Point, size: f64, number: usize, done: bool) {
    let corners: Vec<Point> = (0..6)
        .map(|k| clock(at, size, 90.0 + 60.0 * f64::from(k)))
        .collect();
    let (ink, role) = if done {
        (Ink::SOLID, Role::Paper)
    } else {
        (Ink::FACE, Role::Ink)
    };
    drawing.polygon(&corners, ink);
    drawing.label(at, size * 1.06, &number.to_string(), role);
}

fn places(pattern: Pattern, count: usize) -> Vec<Point> {
    let (radius, first) = match (pattern, count) {
        (Pattern::Row, _) => return row(count),
        (Pattern::Wheel, 0..=6) => (88.0, 0.0),
        (Pattern::Wheel, _) => (92.0, 0.0),
        // Four hub bolts stand as on a square, three as on a triangle.
        (Pattern::Hub, 4) => (84.0, 45.0),
        (Pattern::Hub, _) => (84.0, 0.0),
    };
    (0..count)
        .map(|place| clock(CENTRE, radius, first + 360.0 * place as f64 / count as f64))
        .collect()
}

fn row(count: usize) -> Vec<Point> {
    let pitch = 160.0 / count.saturating_sub(1).max(1) as f64;
    (0..count)
        .map(|place| (196.0, 70.0 + pitch * place as f64))
        .collect()
}

/// The wheel from outside; its studs are what the step is about, so the rest stays light.
fn wheel(drawing: &mut Drawing) {
    drawing.circle(CENTRE, 147.0, Ink::FACE.bold());
    drawing.circle(CENTRE, 134.0, Ink::THIN);
    drawing.circle(CENTRE, 36.0, Ink::LINE);
    drawing.circle(CENTRE, 29.0, Ink::THIN);
}

/// The knuckle from behind: leg of the strut above, steering arm, lower joint, shaft in the
/// middle.
fn knuckle_behind(drawing: &mut Drawing) {
    drawing.pen(
        "M 118 3 H 182 L 186 34 C 232 42 264 78 268 124 L 296 134 V 170 L 266 176 \
         C 258 214 230 248 194 262 L 190 297 H 110 L 106 262 C 62 246 32 202 32 150 \
         C 32 94 66 48 114 34 Z",
        Ink::FACE.bold(),
    );
    drawing.line((118.0, 18.0), (182.0, 18.0), Ink::THIN);
    drawing.circle((150.0, 279.0), 9.0, Ink::LINE);
    drawing.circle((282.0, 152.0), 7.0, Ink::LINE);
    drawing.circle(CENTRE, 44.0, Ink::LINE);
    drawing.circle(CENTRE, 26.0, Ink::LINE);
    splined_end(drawing, CENTRE, 18.0);
}

/// The toothed end of a shaft.
fn splined_end(drawing: &mut Drawing, centre: Point, radius: f64) {
    let teeth: Vec<Point> = (0..48)
        .map(|k| {
            let out = if k % 4 < 2 { radius } else { radius - 4.0 };
            clock(centre, out, 7.5 * f64::from(k))
        })
        .collect();
    drawing.polygon(&teeth, Ink::THIN);
}

/// The caliper from inside, with rotor behind it; its two pins stand one above the other.
fn caliper(drawing: &mut Drawing) {
    drawing.path(
        super::pen::arc((-70.0, 150.0), 196.0, 49.0, 131.0),
        Ink::LINE,
    );
    drawing.path(
        super::pen::arc((-70.0, 150.0), 90.0, 56.0, 124.0),
        Ink::THIN,
    );
    drawing.pen(
        "M 168 22 H 224 C 232 22 236 26 236 34 V 104 C 250 116 250 184 236 196 V 266 \
         C 236 274 232 278 224 278 H 168 C 160 278 156 274 156 266 V 206 H 96 \
         C 76 206 64 184 64 150 C 64 116 76 94 96 94 H 156 V 34 C 156 26 160 22 168 22 Z",
        Ink::FACE.bold(),
    );
    drawing.circle((112.0, 150.0), 36.0, Ink::LINE);
    drawing.circle((112.0, 150.0), 27.0, Ink::THIN);
    drawing.pen("M 236 150 H 256 C 276 150 282 140 282 118 V 40", Ink::LINE);
    drawing.pen("M 236 162 H 258 C 284 162 294 146 294 118 V 40", Ink::LINE);
    drawing.circle((222.0, 156.0), 9.0, Ink::FACE);
}

/// The one nut in the middle of the hub, ringed until it is done.
pub fn single(done: bool) -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    drawing.circle(CENTRE, 147.0, Ink::FACE.bold());
    drawing.circle(CENTRE, 118.0, Ink::THIN);
    if !done {
        drawing.circle(CENTRE, 88.0, Ink::FACE.bold().role(Role::Signal));
        drawing.circle(CENTRE, 82.0, Ink::SIGNAL);
    }
    drawing.circle(CENTRE, 70.0, Ink::LINE);
    let corners: Vec<Point> = (0..6)
        .map(|k| clock(CENTRE, 62.0, 60.0 * f64::from(k)))
        .collect();
    drawing.polygon(&corners, if done { Ink::SOLID } else { Ink::FACE.bold() });
    drawing.circle(CENTRE, 28.0, Ink::FACE);
    splined_end(&mut drawing, CENTRE, 22.0);
    drawing
}

/// The star order on a wheel with five studs, two of them done.
pub fn star_order() -> Drawing {
    star(Pattern::Wheel, &[0, 2, 4, 1, 3], 2)
}

/// The hub from behind: its four bolts, and which way they come out.
pub fn hub_behind() -> Drawing {
    let mut drawing = Drawing::new(SIZE, SIZE);
    knuckle_behind(&mut drawing);
    for at in [(98.0, 98.0), (202.0, 98.0), (202.0, 202.0), (98.0, 202.0)] {
        drawing.circle(at, 26.0, Ink::FACE);
        let corners: Vec<Point> = (0..6)
            .map(|k| clock(at, 20.0, 60.0 * f64::from(k)))
            .collect();
        drawing.polygon(&corners, Ink::SOLID);
        drawing.circle(at, 8.0, Ink::SOLID.bare().role(Role::Paper));
        // From outside to inside over the top: loosened, as seen from the bolt's head.
        let outwards = (at.0 - CENTRE.0).atan2(CENTRE.1 - at.1).to_degrees();
        turning(&mut drawing, at, 35.0, outwards + 62.0, outwards - 62.0);
    }
    drawing
}

#[cfg(test)]
mod tests {
    use super::super::shape::Shape;
    use super::*;

    fn numbers(drawing: &Drawing) -> Vec<(String, Point, Role)> {
        let texts = drawing.shapes.iter().filter_map(|shape| match shape {
            Shape::Text {
                text,
                at,
                role,
                size,
                ..
            } => Some((text.clone(), (at.0, at.1 - 0.36 * size), *role)),
            _ => None,
        });
        texts.collect()
    }

    #[test]
    fn numbers_stand_at_the_places_of_the_given_order() {
        for order in [
            vec![0, 2, 1],
            vec![0, 2, 1, 3],
            vec![3, 0, 4, 1, 5, 2],
            (0..10).collect(),
        ] {
            let drawing = star(Pattern::Wheel, &order, 0);
            for (step, (text, at, _)) in numbers(&drawing).into_iter().enumerate() {
                assert_eq!(text, (step + 1).to_string());
                let turn = (at.0 - CENTRE.0)
                    .atan2(CENTRE.1 - at.1)
                    .to_degrees()
                    .rem_euclid(360.0);
                let place = turn / (360.0 / order.len() as f64);
                let given = order.get(step).copied().unwrap_or_default();
                assert!((place - given as f64).abs() < 1e-6, "{order:?}: {place}");
            }
            assert_eq!(numbers(&drawing).len(), order.len());
        }
    }

    #[test]
    fn done_ones_are_filled_and_one_is_ringed() {
        let rings = |drawing: &Drawing| {
            let signal = drawing.shapes.iter().filter(|shape| {
                matches!(shape, Shape::Circle { ink, .. } if ink.role == Role::Signal && ink.fill == super::super::shape::Fill::Face)
            });
            signal.count()
        };
        let order = [0, 2, 4, 1, 3];
        for done in 0..=5 {
            let drawing = star(Pattern::Wheel, &order, done);
            let filled = numbers(&drawing)
                .iter()
                .filter(|(_, _, role)| *role == Role::Paper)
                .count();
            assert_eq!(filled, done);
            assert_eq!(rings(&drawing), usize::from(done < 5));
        }
    }

    #[test]
    fn no_two_fasteners_touch() {
        for count in 3..=10 {
            let order: Vec<usize> = (0..count).collect();
            let all = numbers(&star(Pattern::Wheel, &order, 0));
            for (k, (_, a, _)) in all.iter().enumerate() {
                for (_, b, _) in all.iter().skip(k + 1) {
                    let reach = if count > 8 { 46.0 } else { 54.0 };
                    assert!((a.0 - b.0).hypot(a.1 - b.1) > reach, "{count}");
                }
            }
        }
    }
}
