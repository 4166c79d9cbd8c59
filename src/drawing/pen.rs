//! Ways of writing a curve down: pen strokes, arcs, smooth lines through points.

use super::shape::{Point, Step};

/// Steps from pen strokes: `M x y` set down, `L x y` straight, `C x y x y x y` by two control
/// points, `Q x y x y` by one, `H x`, `V y`, `Z` close. Absolute, separated by spaces.
///
/// The strokes are the drawings' own text, never a user's; what cannot be read is left out,
/// and a debug build stops there.
pub fn strokes(text: &str) -> Vec<Step> {
    let mut words = text.split_ascii_whitespace();
    let mut steps = Vec::new();
    let mut here = (0.0, 0.0);
    let mut down = here;
    while let Some(word) = words.next() {
        let mut number = || words.next().and_then(decimal);
        let step = match word {
            "M" => point(&mut number).map(Step::Move),
            "L" => point(&mut number).map(Step::Line),
            "H" => number().map(|x| Step::Line((x, here.1))),
            "V" => number().map(|y| Step::Line((here.0, y))),
            "C" => curve(&mut number),
            "Q" => quad(here, &mut number),
            "Z" => Some(Step::Close),
            _ => None,
        };
        debug_assert!(step.is_some(), "pen stroke {word} in {text}");
        let Some(step) = step else { continue };
        if let Step::Move(to) = step {
            down = to;
        }
        here = end(step).unwrap_or(down);
        steps.push(step);
    }
    steps
}

/// Where a step leaves the pen; `None` for closing.
pub fn end(step: Step) -> Option<Point> {
    match step {
        Step::Move(to) | Step::Line(to) | Step::Curve(_, _, to) => Some(to),
        Step::Close => None,
    }
}

/// The point at `degrees` clockwise from the top of a circle.
pub fn clock(centre: Point, radius: f64, degrees: f64) -> Point {
    let (sin, cos) = degrees.to_radians().sin_cos();
    (centre.0 + radius * sin, centre.1 - radius * cos)
}

/// A circular arc from one angle to another, in degrees clockwise from the top.
pub fn arc(centre: Point, radius: f64, from: f64, to: f64) -> Vec<Step> {
    let mut steps = vec![Step::Move(clock(centre, radius, from))];
    steps.extend(sweep(centre, radius, from, to));
    steps
}

/// A piece of a ring between two radii and two angles, in degrees clockwise from the top.
pub fn sector(centre: Point, inner: f64, outer: f64, from: f64, to: f64) -> Vec<Step> {
    let mut steps = arc(centre, outer, from, to);
    steps.push(Step::Line(clock(centre, inner, to)));
    steps.extend(sweep(centre, inner, to, from));
    steps.push(Step::Close);
    steps
}

/// A smooth line through all of the points, in their order.
pub fn smooth(points: &[Point]) -> Vec<Step> {
    let at = |index: usize| points.get(index).copied();
    let mut steps: Vec<Step> = at(0).map(Step::Move).into_iter().collect();
    for (index, pair) in points.windows(2).enumerate() {
        let (Some(from), Some(to)) = (pair.first().copied(), pair.last().copied()) else {
            continue;
        };
        let before = index.checked_sub(1).and_then(at).unwrap_or(from);
        let after = at(index + 2).unwrap_or(to);
        let one = (
            from.0 + (to.0 - before.0) / 6.0,
            from.1 + (to.1 - before.1) / 6.0,
        );
        let two = (
            to.0 - (after.0 - from.0) / 6.0,
            to.1 - (after.1 - from.1) / 6.0,
        );
        steps.push(Step::Curve(one, two, to));
    }
    steps
}

/// The curves of an arc without setting the pen down; at most 30° a curve, where a cubic is
/// exact to a millionth of the radius.
fn sweep(centre: Point, radius: f64, from: f64, to: f64) -> Vec<Step> {
    let pieces = ((to - from).abs() / 30.0).ceil().clamp(1.0, 24.0);
    let piece = (to - from) / pieces;
    let pull = radius * 4.0 / 3.0 * (piece.to_radians() / 4.0).tan();
    let tangent = |angle: f64| {
        let (sin, cos) = angle.to_radians().sin_cos();
        (cos * pull, sin * pull)
    };
    let mut steps = Vec::new();
    let mut start = from;
    while steps.len() < pieces as usize {
        let stop = start + piece;
        let (a, b) = (clock(centre, radius, start), clock(centre, radius, stop));
        let (out, back) = (tangent(start), tangent(stop));
        steps.push(Step::Curve(
            (a.0 + out.0, a.1 + out.1),
            (b.0 - back.0, b.1 - back.1),
            b,
        ));
        start = stop;
    }
    steps
}

/// A plain decimal number of a stroke. The float parser of the standard library would cost the
/// phone 16 kB; strokes need digits, a sign and a point only.
fn decimal(word: &str) -> Option<f64> {
    let digits = word.strip_prefix('-').unwrap_or(word);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    let scale = 10_u32.checked_pow(u32::try_from(part.len()).ok()?)?;
    let size = f64::from(whole.parse::<u32>().ok()?)
        + f64::from(part.parse::<u32>().ok()?) / f64::from(scale);
    Some(if digits.len() < word.len() {
        -size
    } else {
        size
    })
}

fn point(number: &mut impl FnMut() -> Option<f64>) -> Option<Point> {
    Some((number()?, number()?))
}

fn curve(number: &mut impl FnMut() -> Option<f64>) -> Option<Step> {
    Some(Step::Curve(point(number)?, point(number)?, point(number)?))
}

fn quad(here: Point, number: &mut impl FnMut() -> Option<f64>) -> Option<Step> {
    let (control, to) = (point(number)?, point(number)?);
    let towards = |from: Point| {
        (
            from.0 + (control.0 - from.0) * 2.0 / 3.0,
            from.1 + (control.1 - from.1) * 2.0 / 3.0,
        )
    };
    Some(Step::Curve(towards(here), towards(to), to))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strokes_are_read_in_order() {
        let read = strokes("M 1 2 L 3 4 H 5 V 6 Q 5 9 8 9 C 1 1 2 2 3 3 Z");
        assert_eq!(read.len(), 7);
        assert_eq!(read.get(2), Some(&Step::Line((5.0, 4.0))));
        assert_eq!(read.get(3), Some(&Step::Line((5.0, 6.0))));
        // A quadratic's control point is two thirds of the way for a cubic.
        assert_eq!(
            read.get(4),
            Some(&Step::Curve((5.0, 8.0), (6.0, 9.0), (8.0, 9.0)))
        );
    }

    #[test]
    fn decimals_of_strokes_are_read_exactly() {
        for (word, value) in [("0", 0.0), ("-0.5", -0.5), ("10.25", 10.25), ("-7", -7.0)] {
            assert_eq!(decimal(word), Some(value));
        }
        for word in ["", "-", "x", "1.", "1e3", "--1"] {
            assert_eq!(decimal(word), None, "{word}");
        }
    }

    #[test]
    fn the_clock_goes_clockwise_from_the_top() {
        let (x, y) = clock((10.0, 10.0), 5.0, 90.0);
        assert!((x - 15.0).abs() < 1e-9 && (y - 10.0).abs() < 1e-9);
    }

    #[test]
    fn every_curve_of_an_arc_stays_on_its_circle() {
        let mut here = (0.0, 0.0);
        for step in arc((0.0, 0.0), 100.0, 20.0, 340.0) {
            if let Step::Curve(a, b, to) = step {
                // The middle of a cubic is (start + 3a + 3b + end) / 8.
                let x: f64 = (here.0 + 3.0 * (a.0 + b.0) + to.0) / 8.0;
                let y: f64 = (here.1 + 3.0 * (a.1 + b.1) + to.1) / 8.0;
                assert!((x.hypot(y) - 100.0).abs() < 1e-3);
            }
            here = end(step).unwrap();
        }
    }

    #[test]
    fn a_smooth_line_passes_through_its_points() {
        let points = [(0.0, 0.0), (10.0, 5.0), (20.0, 0.0), (30.0, 9.0)];
        let ends: Vec<Point> = smooth(&points).into_iter().filter_map(end).collect();
        assert_eq!(ends, points);
    }
}
