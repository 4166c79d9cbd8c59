//! Putting a piece that was drawn once where a picture needs it.

use super::shape::{Point, Shape, Step};

/// Where a piece goes: mirrored, scaled and turned about its origin, then moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placing {
    /// Where the piece's origin goes.
    pub to: Point,
    /// Turn in degrees, clockwise as seen.
    pub turn: f64,
    /// Scale; the weight of lines does not change.
    pub scale: f64,
    /// Left and right exchanged, before the turn.
    pub mirrored: bool,
}

impl Placing {
    /// Moves the origin to `to` and does nothing else.
    pub const fn at(to: Point) -> Self {
        Self {
            to,
            turn: 0.0,
            scale: 1.0,
            mirrored: false,
        }
    }

    /// The same, turned by so many degrees clockwise.
    pub const fn turned(self, turn: f64) -> Self {
        Self { turn, ..self }
    }

    /// The same, scaled.
    pub const fn scaled(self, scale: f64) -> Self {
        Self { scale, ..self }
    }

    /// The same, with left and right exchanged.
    pub const fn mirrored(self) -> Self {
        Self {
            mirrored: true,
            ..self
        }
    }

    /// Where a point of the piece comes to lie.
    pub fn point(self, (x, y): Point) -> Point {
        let x = if self.mirrored { -x } else { x } * self.scale;
        let y = y * self.scale;
        let (sin, cos) = self.turn.to_radians().sin_cos();
        (self.to.0 + x * cos - y * sin, self.to.1 + x * sin + y * cos)
    }

    /// The shape where it comes to lie. A rectangle may be turned, so it becomes a polygon
    /// with sharp corners; text stays upright.
    pub fn shape(self, shape: &Shape) -> Shape {
        match shape {
            Shape::Line { from, to, ink } => Shape::Line {
                from: self.point(*from),
                to: self.point(*to),
                ink: *ink,
            },
            Shape::Polyline { points, ink } => Shape::Polyline {
                points: self.points(points),
                ink: *ink,
            },
            Shape::Polygon { points, ink } => Shape::Polygon {
                points: self.points(points),
                ink: *ink,
            },
            Shape::Path { steps, ink } => Shape::Path {
                steps: steps.iter().map(|step| self.step(*step)).collect(),
                ink: *ink,
            },
            Shape::Circle {
                centre,
                radius,
                ink,
            } => Shape::Circle {
                centre: self.point(*centre),
                radius: radius * self.scale,
                ink: *ink,
            },
            Shape::Rect {
                corner: (x, y),
                width,
                height,
                ink,
                ..
            } => Shape::Polygon {
                points: self.points(&[
                    (*x, *y),
                    (x + width, *y),
                    (x + width, y + height),
                    (*x, y + height),
                ]),
                ink: *ink,
            },
            Shape::Text {
                at,
                size,
                anchor,
                text,
                role,
            } => Shape::Text {
                at: self.point(*at),
                size: size * self.scale,
                anchor: *anchor,
                text: text.clone(),
                role: *role,
            },
        }
    }

    fn points(self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|point| self.point(*point)).collect()
    }

    fn step(self, step: Step) -> Step {
        match step {
            Step::Move(to) => Step::Move(self.point(to)),
            Step::Line(to) => Step::Line(self.point(to)),
            Step::Curve(a, b, to) => Step::Curve(self.point(a), self.point(b), self.point(to)),
            Step::Close => Step::Close,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(placing: Placing, from: Point, to: Point) {
        let (x, y) = placing.point(from);
        assert!(
            (x - to.0).abs() < 1e-9 && (y - to.1).abs() < 1e-9,
            "{x}, {y}"
        );
    }

    #[test]
    fn turns_clockwise_after_the_mirror() {
        let at = Placing::at((10.0, 20.0));
        check(at, (1.0, 2.0), (11.0, 22.0));
        // Up (0, -1) turned a quarter clockwise is right.
        check(at.turned(90.0), (0.0, -1.0), (11.0, 20.0));
        check(at.mirrored(), (3.0, 1.0), (7.0, 21.0));
        check(at.scaled(2.0), (3.0, 1.0), (16.0, 22.0));
        check(at.mirrored().turned(90.0), (1.0, 0.0), (10.0, 19.0));
    }
}
