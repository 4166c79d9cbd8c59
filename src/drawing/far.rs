//! How far something is: one line in parts, black where it is done, blue where one is.

use super::shape::{Drawing, Ink, Role};

const WIDTH: f64 = 360.0;
const HEIGHT: f64 = 6.0;
/// After each part.
const GAP: f64 = 2.0;
/// Where a part is only begun, this much of it is seen.
const BEGUN: f64 = 3.0;

/// The line, 360 by 6: `part` of `parts` with `done` of its `steps` behind it, both parts from 1.
///
/// A place that is not known (0 of 0) is a line without marks.
pub fn far((part, parts): (usize, usize), (done, steps): (usize, usize)) -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    let all = parts.max(1);
    let pitch = WIDTH / all as f64;
    let width = pitch - GAP;
    for nth in 1..=all {
        let left = pitch * (nth - 1) as f64;
        let role = if nth == part { Role::Signal } else { Role::Ink };
        let ink = Ink::SOLID.bare().role(role);
        drawing.rect((left, HEIGHT - 2.0, width, 2.0), 0.0, ink);
        let share = match nth.cmp(&part) {
            core::cmp::Ordering::Less => 1.0,
            core::cmp::Ordering::Equal => done as f64 / steps.max(1) as f64,
            core::cmp::Ordering::Greater => continue,
        };
        let full = (width * share.min(1.0)).max(BEGUN.min(width));
        drawing.rect((left, 0.0, full, HEIGHT), 0.0, ink);
    }
    drawing
}

#[cfg(test)]
mod tests {
    use super::super::check::{ink_area, sound};
    use super::*;

    #[test]
    fn the_line_is_sound_wherever_one_is() {
        for (part, of) in [(1, 1), (1, 14), (7, 14), (14, 14), (0, 0), (40, 40)] {
            sound("far", &far((part, of), (1, 3)));
        }
    }

    /// From the lengths: 3 parts of 118 with 2 after each; one done (6 high), half of the second,
    /// the rest 2 high.
    #[test]
    fn what_is_done_is_inked_and_the_rest_is_a_thin_line() {
        let width = 118.0;
        let expected = width * 6.0 + width / 2.0 * 6.0 + width / 2.0 * 2.0 + width * 2.0;
        let inked = ink_area(&far((2, 3), (1, 2)));
        assert!((inked - expected).abs() < 12.0, "{inked} {expected}");
    }

    #[test]
    fn a_part_that_is_only_begun_is_seen() {
        let begun = far((1, 2), (0, 9));
        let unknown = far((0, 2), (0, 9));
        assert!(ink_area(&begun) > ink_area(&unknown) + 6.0);
    }
}
