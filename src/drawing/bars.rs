//! Parts of a whole as bars, the largest first and black: what to mend first, at a glance.
//!
//! Lengths are in one unit of the caller's; names and values come in as text.

use super::shape::{Anchor, Drawing, Ink, Role};

/// One part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar<'a> {
    /// Its name.
    pub name: &'a str,
    /// Its value as written.
    pub value: &'a str,
    /// How long it is; nothing below zero.
    pub size: f64,
}

const WIDTH: f64 = 340.0;
const EDGE: f64 = 3.0;
const ROW: f64 = 46.0;
const THICK: f64 = 14.0;
/// Room for a value at the end of the longest bar.
const VALUE: f64 = 90.0;

/// The bars, 340 wide; the height grows with them.
pub fn bars(parts: &[Bar<'_>]) -> Drawing {
    let mut drawing = Drawing::new(WIDTH, ROW * parts.len().max(1) as f64);
    let largest = parts.iter().map(|part| part.size).fold(0.0, f64::max);
    for (row, part) in parts.iter().enumerate() {
        let top = ROW * row as f64;
        let line = top + 18.0;
        drawing.text((EDGE, line), 16.0, Anchor::Start, part.name, Role::Ink);
        // Beside its bar: on the line of a long name there is no room for it.
        let end = (WIDTH - EDGE, top + 25.0 + THICK);
        drawing.text(end, 16.0, Anchor::End, part.value, Role::Ink);
        if largest > 0.0 && part.size > 0.0 {
            let length = (WIDTH - 2.0 * EDGE - VALUE) * part.size / largest;
            let ink = if row == 0 { Ink::SOLID } else { Ink::FACE };
            let bar = (EDGE, top + 25.0, length, THICK);
            drawing.rect(bar, 0.0, ink.thin());
        }
    }
    drawing
}

#[cfg(test)]
mod tests {
    use super::super::shape::{Fill, Shape};
    use super::*;

    const fn part(name: &'static str, size: f64) -> Bar<'static> {
        Bar {
            name,
            value: "1 mm",
            size,
        }
    }

    #[test]
    fn bars_are_as_long_as_their_parts_and_the_first_is_black() {
        let drawing = bars(&[part("dial", 8.0), part("base", 2.0), part("rounds", 0.0)]);
        let bars: Vec<(f64, Fill)> = drawing
            .shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Rect { width, ink, .. } => Some((*width, ink.fill)),
                _ => None,
            })
            .collect();
        assert_eq!(bars.len(), 2);
        assert!((bars[0].0 / bars[1].0 - 4.0).abs() < 1e-9);
        assert_eq!((bars[0].1, bars[1].1), (Fill::Solid, Fill::Face));
        let svg = drawing.to_svg("parts");
        assert!(svg.contains("rounds") && svg.contains("0 0 340 138"));
    }

    #[test]
    fn nothing_is_drawn_as_nothing() {
        assert_eq!(bars(&[part("dial", 0.0)]).shapes.len(), 2);
        assert!(bars(&[]).shapes.is_empty());
    }
}
