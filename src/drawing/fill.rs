//! Hatches and dots as geometry, so that no drawing needs a pattern with a name.
//!
//! Patterns are found by an id in the whole page; two drawings on one page would share it, and
//! a hidden one would take the other's hatch away.

use super::pen::{arc, end};
use super::shape::{Point, Shape, Step};
use crate::sorted::Sorted;

const HATCH_PITCH: f64 = 7.0;
const DOT_PITCH: f64 = 8.0;
const PIECES: u32 = 12;

/// The outline of a shape as runs of short straight lines; text has none.
pub fn outline(shape: &Shape) -> Vec<Vec<Point>> {
    match shape {
        Shape::Line { from, to, .. } => vec![vec![*from, *to]],
        Shape::Polyline { points, .. } => vec![points.clone()],
        Shape::Polygon { points, .. } => {
            let back = points.first().copied();
            vec![points.iter().copied().chain(back).collect()]
        }
        Shape::Path { steps, .. } => runs(steps),
        Shape::Circle { centre, radius, .. } => runs(&arc(*centre, *radius, 0.0, 360.0)),
        Shape::Rect {
            corner: (x, y),
            width,
            height,
            ..
        } => vec![vec![
            (*x, *y),
            (x + width, *y),
            (x + width, y + height),
            (*x, y + height),
            (*x, *y),
        ]],
        Shape::Text { .. } => Vec::new(),
    }
}

/// Lines at 45° inside the shape, rising to the right.
pub fn hatch(shape: &Shape) -> Vec<(Point, Point)> {
    // Turned by 45°, the hatch lines are level; u runs along them and v across.
    let turned = |(x, y): Point| (x - y, x + y);
    let back = |u: f64, v: f64| ((u + v) / 2.0, (v - u) / 2.0);
    let runs: Vec<Vec<Point>> = outline(shape)
        .into_iter()
        .map(|run| run.into_iter().map(turned).collect())
        .collect();
    let pitch = HATCH_PITCH * std::f64::consts::SQRT_2;
    levels(&runs, pitch)
        .into_iter()
        .flat_map(|v| {
            let spans = spans(&runs, v);
            spans
                .into_iter()
                .map(move |(a, b)| (back(a, v), back(b, v)))
        })
        .collect()
}

/// Points on a staggered grid inside the shape.
pub fn dots(shape: &Shape) -> Vec<Point> {
    let runs = outline(shape);
    let rows = levels(&runs, DOT_PITCH / 2.0);
    let mut dots = Vec::new();
    for y in rows {
        let odd = (y / (DOT_PITCH / 2.0)).round() as i64 % 2 != 0;
        let shift = if odd { DOT_PITCH / 2.0 } else { 0.0 };
        for (a, b) in spans(&runs, y) {
            let mut x = ((a + 1.5 - shift) / DOT_PITCH).ceil() * DOT_PITCH + shift;
            while x <= b - 1.5 {
                dots.push((x, y));
                x += DOT_PITCH;
            }
        }
    }
    dots
}

/// Where a level line is inside the runs (even-odd), as pairs of x.
fn spans(runs: &[Vec<Point>], level: f64) -> Vec<(f64, f64)> {
    let mut cuts: Vec<f64> = runs
        .iter()
        .flat_map(|run| run.windows(2))
        .filter_map(|pair| crossing(pair, level))
        .collect();
    cuts.order_by(f64::total_cmp);
    cuts.chunks_exact(2)
        .filter_map(|pair| Some((*pair.first()?, *pair.last()?)))
        .filter(|(a, b)| b - a > 1.0)
        .collect()
}

fn crossing(pair: &[Point], level: f64) -> Option<f64> {
    let ((ax, ay), (bx, by)) = (*pair.first()?, *pair.last()?);
    let between = (ay <= level) != (by <= level);
    between.then(|| ax + (level - ay) / (by - ay) * (bx - ax))
}

/// Multiples of the pitch between the lowest and the highest point, so that neighbouring parts
/// share one grid.
fn levels(runs: &[Vec<Point>], pitch: f64) -> Vec<f64> {
    let heights = || runs.iter().flatten().map(|point| point.1);
    let low = heights().fold(f64::INFINITY, f64::min);
    let high = heights().fold(f64::NEG_INFINITY, f64::max);
    let mut levels = Vec::new();
    let mut level = (low / pitch).ceil() * pitch;
    while level <= high {
        levels.push(level);
        level += pitch;
    }
    levels
}

fn runs(steps: &[Step]) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut run: Vec<Point> = Vec::new();
    for step in steps {
        match *step {
            Step::Move(to) => {
                runs.push(std::mem::take(&mut run));
                run.push(to);
            }
            Step::Line(to) => run.push(to),
            Step::Curve(a, b, to) => {
                let from = run.last().copied().unwrap_or(to);
                run.extend((1..=PIECES).map(|k| cubic(from, a, b, to, k)));
            }
            Step::Close => run.extend(run.first().copied()),
        }
        debug_assert!(end(*step).is_none_or(|(x, y)| x.is_finite() && y.is_finite()));
    }
    runs.push(run);
    runs.retain(|run| run.len() > 1);
    runs
}

fn cubic(from: Point, a: Point, b: Point, to: Point, k: u32) -> Point {
    let t = f64::from(k) / f64::from(PIECES);
    let s = 1.0 - t;
    let (w0, w1, w2, w3) = (s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t);
    (
        w0 * from.0 + w1 * a.0 + w2 * b.0 + w3 * to.0,
        w0 * from.1 + w1 * a.1 + w2 * b.1 + w3 * to.1,
    )
}

#[cfg(test)]
mod tests {
    use super::super::shape::Ink;
    use super::*;

    fn ring() -> Shape {
        let mut steps = arc((50.0, 50.0), 40.0, 0.0, 360.0);
        steps.extend(arc((50.0, 50.0), 20.0, 0.0, 360.0));
        Shape::Path {
            steps,
            ink: Ink::HATCH,
        }
    }

    #[test]
    fn hatch_and_dots_stay_in_the_ring_and_out_of_its_hole() {
        let distance = |(x, y): Point| (x - 50.0).hypot(y - 50.0);
        let lines = hatch(&ring());
        assert!(lines.len() > 12);
        for (a, b) in lines {
            let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
            for point in [a, middle, b] {
                let away = distance(point);
                assert!((19.0..=40.1).contains(&away), "{away}");
            }
            // Rising to the right: as far up as along.
            assert!(((a.0 - b.0) + (a.1 - b.1)).abs() < 1e-6);
        }
        let dots = dots(&ring());
        assert!(dots.len() > 20);
        assert!(
            dots.into_iter()
                .all(|dot| (19.0..=40.1).contains(&distance(dot)))
        );
    }

    #[test]
    fn an_open_line_and_a_text_have_no_hatch() {
        let text = Shape::Text {
            at: (0.0, 0.0),
            size: 9.0,
            anchor: super::super::shape::Anchor::Start,
            text: "9".to_owned(),
            role: super::super::shape::Role::Ink,
        };
        assert!(hatch(&text).is_empty());
    }
}
