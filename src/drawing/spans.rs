//! Shares and means as boxes on one scale: a box from the lower to the upper end, a black line in
//! it at what was counted. A long box says by itself how little is known.
//!
//! Places are in one unit of the caller's; names and values come in as text.

use super::shape::{Anchor, Drawing, Ink, Role};

/// One row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span<'a> {
    /// Its name.
    pub name: &'a str,
    /// Its value as written.
    pub value: &'a str,
    /// The lower end.
    pub low: f64,
    /// What was counted.
    pub at: f64,
    /// The upper end.
    pub high: f64,
    /// A second place to be compared with, as a dashed line.
    pub beside: Option<f64>,
}

/// The scale: from nothing to its end, with the names of both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale<'a> {
    /// The end.
    pub most: f64,
    /// What stands at nothing and at the end.
    pub ends: (&'a str, &'a str),
}

const WIDTH: f64 = 340.0;
const EDGE: f64 = 4.0;
const ROW: f64 = 50.0;
const TEXT: f64 = 16.0;
const THICK: f64 = 16.0;
const FOOT: f64 = 26.0;

/// The rows, 340 wide; the height grows with them.
pub fn spans(rows: &[Span<'_>], scale: Scale<'_>) -> Drawing {
    let base = ROW * rows.len().max(1) as f64 + 4.0;
    let mut drawing = Drawing::new(WIDTH, base + FOOT);
    let (left, right) = (EDGE, WIDTH - EDGE);
    let most = if scale.most > 0.0 { scale.most } else { 1.0 };
    let place = |value: f64| left + (right - left) * (value / most).clamp(0.0, 1.0);
    for (row, span) in rows.iter().enumerate() {
        let top = ROW * row as f64;
        let line = top + 17.0;
        drawing.text((left, line), TEXT, Anchor::Start, span.name, Role::Ink);
        drawing.text((right, line), TEXT, Anchor::End, span.value, Role::Ink);
        let (from, to) = (place(span.low), place(span.high));
        let upper = top + 25.0;
        // Ends that fall together still leave a box to be seen.
        let width = (to - from).max(2.0);
        drawing.rect((from, upper, width, THICK), 0.0, Ink::HATCH.thin());
        let at = place(span.at);
        drawing.line((at, upper - 3.0), (at, upper + THICK + 3.0), Ink::BOLD);
        if let Some(beside) = span.beside {
            let beside = place(beside);
            drawing.line(
                (beside, upper - 3.0),
                (beside, upper + THICK + 3.0),
                Ink::GHOST,
            );
        }
    }
    drawing.line((left, base), (right, base), Ink::THIN);
    for (end, anchor, name) in [
        (left, Anchor::Start, scale.ends.0),
        (right, Anchor::End, scale.ends.1),
    ] {
        drawing.line((end, base), (end, base + 6.0), Ink::THIN);
        drawing.text((end, base + 22.0), 14.0, anchor, name, Role::Quiet);
    }
    drawing
}

#[cfg(test)]
mod tests {
    use super::super::shape::Shape;
    use super::*;

    const SCALE: Scale<'static> = Scale {
        most: 1.0,
        ends: ("0 %", "100 %"),
    };

    fn span(low: f64, at: f64, high: f64) -> Span<'static> {
        Span {
            name: "Van N",
            value: "2 of 3",
            low,
            at,
            high,
            beside: None,
        }
    }

    fn boxes(drawing: &Drawing) -> Vec<(f64, f64)> {
        let boxes = drawing.shapes.iter().filter_map(|shape| match shape {
            Shape::Rect { corner, width, .. } => Some((corner.0, *width)),
            _ => None,
        });
        boxes.collect()
    }

    #[test]
    fn a_box_reaches_from_end_to_end_of_the_one_scale() {
        let drawing = spans(&[span(0.0, 0.25, 0.5), span(0.5, 0.75, 1.0)], SCALE);
        let boxes = boxes(&drawing);
        assert!((boxes[0].0 - EDGE).abs() < 1e-9);
        assert!((boxes[0].0 + boxes[0].1 - boxes[1].0).abs() < 1e-9);
        assert!((boxes[1].0 + boxes[1].1 - (WIDTH - EDGE)).abs() < 1e-9);
        let svg = drawing.to_svg("shares");
        assert!(svg.contains("Van N") && svg.contains("100 %"));
    }

    #[test]
    fn what_lies_outside_stays_in_the_picture() {
        let wide = spans(&[span(-3.0, 2.0, f64::INFINITY)], SCALE);
        let (from, width) = boxes(&wide)[0];
        assert!(from >= EDGE && from + width <= WIDTH - EDGE + 1e-9);
        assert_eq!(boxes(&spans(&[], SCALE)), []);
    }
}
