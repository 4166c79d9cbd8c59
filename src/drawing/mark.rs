//! The four decisions as a bearing ring with more and more ink; the word always stands beside.

use super::pen::sector;
use super::shape::{Drawing, Ink, Point, Role};

/// Which decision a mark stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A whole thin ring.
    Keep,
    /// A ring with one notch filled.
    Watch,
    /// A ring split in two, half of it filled.
    Replace,
    /// A solid octagon with a white bar.
    Stop,
}

const SIZE: f64 = 64.0;
const CENTRE: Point = (SIZE / 2.0, SIZE / 2.0);
const OUTER: f64 = 28.0;
const INNER: f64 = 14.0;

impl Mark {
    /// The mark in 64 × 64.
    pub fn drawing(self) -> Drawing {
        let mut drawing = Drawing::new(SIZE, SIZE);
        match self {
            Self::Keep => ring(&mut drawing, Ink::THIN),
            Self::Watch => watch(&mut drawing),
            Self::Replace => replace(&mut drawing),
            Self::Stop => stop(&mut drawing),
        }
        drawing
    }
}

fn ring(drawing: &mut Drawing, ink: Ink) {
    drawing.circle(CENTRE, OUTER, ink);
    drawing.circle(CENTRE, INNER, ink);
}

fn watch(drawing: &mut Drawing) {
    ring(drawing, Ink::LINE);
    drawing.path(sector(CENTRE, INNER, OUTER, -32.0, 32.0), Ink::SOLID);
}

/// Two half rings that stand apart: a ring that is no longer whole.
fn replace(drawing: &mut Drawing) {
    let left = (CENTRE.0 - 3.5, CENTRE.1);
    let right = (CENTRE.0 + 3.5, CENTRE.1);
    let outer = OUTER - 2.0;
    drawing.path(sector(left, INNER - 2.0, outer, 180.0, 360.0), Ink::LINE);
    drawing.path(sector(right, INNER - 2.0, outer, 0.0, 180.0), Ink::SOLID);
}

fn stop(drawing: &mut Drawing) {
    let corners: Vec<Point> = (0..8)
        .map(|k| super::pen::clock(CENTRE, 29.0, 22.5 + 45.0 * f64::from(k)))
        .collect();
    drawing.polygon(&corners, Ink::SOLID.thin());
    drawing.rect(
        (15.0, 26.5, 34.0, 11.0),
        0.0,
        Ink::SOLID.bare().role(Role::Paper),
    );
}

#[cfg(test)]
mod tests {
    use super::super::check::ink_area;
    use super::*;

    #[test]
    fn ink_grows_with_the_danger() {
        let marks = [Mark::Keep, Mark::Watch, Mark::Replace, Mark::Stop];
        let areas = marks.map(|mark| ink_area(&mark.drawing()));
        // Each at least a quarter more than the one before, or they are not told apart.
        for pair in areas.windows(2) {
            let (Some(less), Some(more)) = (pair.first(), pair.last()) else {
                continue;
            };
            assert!(less * 1.25 < *more, "{areas:?}");
        }
    }
}
