//! What every drawing is tested for, and the little plotter that measures ink.

#![allow(clippy::panic)]

use super::fill::{hatch, outline};
use super::shape::{Anchor, Drawing, Fill, Ink, Point, Role, Shape};
use crate::sorted::Sorted;

/// Area of what is not paper, in square units, sampled twice a unit each way.
pub fn ink_area(drawing: &Drawing) -> f64 {
    let plates: Vec<Plate> = drawing.shapes.iter().rev().filter_map(plate).collect();
    let (columns, rows) = (drawing.width as u32 * 2, drawing.height as u32 * 2);
    let samples = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
    let inked = samples.filter(|(column, row)| {
        let at = (
            f64::from(*column) / 2.0 + 0.25,
            f64::from(*row) / 2.0 + 0.25,
        );
        let top = plates.iter().find_map(|plate| plate.covers(at));
        top.unwrap_or(false)
    });
    inked.count() as f64 / 4.0
}

/// A shape ready for sampling.
struct Plate {
    ink: Ink,
    edges: Vec<(Point, Point)>,
    hatch: Vec<(Point, Point)>,
}

fn plate(shape: &Shape) -> Option<Plate> {
    let ink = ink_of(shape)?;
    let runs = outline(shape);
    let pairs = runs.iter().flat_map(|run| run.windows(2));
    let edges = pairs.filter_map(|pair| Some((*pair.first()?, *pair.last()?)));
    Some(Plate {
        ink,
        edges: edges.collect(),
        hatch: hatch(shape),
    })
}

impl Plate {
    /// Whether it leaves ink (`true`), paper (`false`) or nothing at a point.
    fn covers(&self, at: Point) -> Option<bool> {
        let dark = self.ink.role != Role::Paper;
        let half = self.ink.weight.width() / 2.0;
        let near = |half: f64, lines: &[(Point, Point)]| {
            let mut lines = lines.iter();
            half > 0.0 && lines.any(|(a, b)| distance(at, *a, *b) <= half)
        };
        if near(half, &self.edges) {
            return Some(dark);
        }
        let crossings = self.edges.iter().filter(|(a, b)| {
            (a.1 <= at.1) != (b.1 <= at.1) && at.0 < a.0 + (at.1 - a.1) / (b.1 - a.1) * (b.0 - a.0)
        });
        let inside = crossings.count() % 2 == 1;
        match self.ink.fill {
            Fill::None | Fill::Dotted => None,
            Fill::Face => inside.then_some(false),
            Fill::Solid => inside.then_some(dark),
            Fill::Hatch => inside.then(|| near(1.0, &self.hatch)),
        }
    }
}

fn distance(at: Point, a: Point, b: Point) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let long = dx * dx + dy * dy;
    let t = if long > 0.0 {
        (((at.0 - a.0) * dx + (at.1 - a.1) * dy) / long).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (at.0 - a.0 - t * dx).hypot(at.1 - a.1 - t * dy)
}

/// Asserts that a drawing lies inside its view box and that its SVG is well formed.
#[track_caller]
pub fn sound(name: &str, drawing: &Drawing) {
    assert!(!drawing.shapes.is_empty(), "{name} is empty");
    for shape in &drawing.shapes {
        for (x, y) in extent(shape) {
            assert!(x.is_finite() && y.is_finite(), "{name}: {shape:?}");
            let inside = (0.0..=drawing.width).contains(&x) && (0.0..=drawing.height).contains(&y);
            assert!(inside, "{name}: ({x}, {y}) of {shape:?}");
        }
    }
    let svg = drawing.to_svg(name);
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "{name}");
    well_formed(&svg);
}

/// The outermost points of a shape's outline, half the weight of its line beyond it.
fn extent(shape: &Shape) -> Vec<Point> {
    if let Shape::Text {
        at,
        size,
        anchor,
        text,
        ..
    } = shape
    {
        // A bold digit is about 0.6 em wide.
        let width = 0.6 * size * text.chars().count() as f64;
        let left = match anchor {
            Anchor::Start => at.0,
            Anchor::Middle => at.0 - width / 2.0,
            Anchor::End => at.0 - width,
        };
        return vec![(left, at.1), (left + width, at.1 - 0.72 * size)];
    }
    let half = ink_of(shape).map_or(0.0, |ink| ink.weight.width() / 2.0);
    let points = outline(shape).into_iter().flatten();
    points
        .flat_map(|(x, y)| [(x - half, y - half), (x + half, y + half)])
        .collect()
}

fn ink_of(shape: &Shape) -> Option<Ink> {
    match shape {
        Shape::Line { ink, .. }
        | Shape::Polyline { ink, .. }
        | Shape::Polygon { ink, .. }
        | Shape::Path { ink, .. }
        | Shape::Circle { ink, .. }
        | Shape::Rect { ink, .. } => Some(*ink),
        Shape::Text { .. } => None,
    }
}

/// Asserts that tags balance and attributes are quoted once each.
#[track_caller]
pub fn well_formed(svg: &str) {
    let mut open: Vec<&str> = Vec::new();
    for piece in svg.split('<').skip(1) {
        let (tag, _) = piece
            .split_once('>')
            .unwrap_or_else(|| panic!("no end: {piece}"));
        let name = tag
            .split([' ', '/'])
            .find(|word| !word.is_empty())
            .unwrap_or_default();
        if tag.starts_with('/') {
            assert_eq!(open.pop(), Some(name), "{svg}");
            continue;
        }
        assert_eq!(tag.matches('"').count() % 2, 0, "{tag}");
        let mut names: Vec<&str> = tag
            .split('"')
            .step_by(2)
            .map(str::trim)
            .filter(|word| word.ends_with('='))
            .collect();
        let all = names.len();
        names.order();
        names.dedup();
        assert_eq!(names.len(), all, "an attribute twice: {tag}");
        if !tag.ends_with('/') {
            open.push(name);
        }
    }
    assert!(open.is_empty(), "left open: {open:?}");
}
