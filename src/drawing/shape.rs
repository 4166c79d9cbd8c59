//! The value a drawing is: shapes in a plane, each with its ink.
//!
//! Lengths are units of the drawing's own view box, x to the right and y down. Nothing here
//! knows a screen, a colour value or a language.

use super::place::Placing;

/// A place in the view box, `(x, y)`.
pub type Point = (f64, f64);

/// One line drawing: its view box and its shapes, painted in their order.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Width of the view box.
    pub width: f64,
    /// Height of the view box.
    pub height: f64,
    /// The shapes, the lowest first.
    pub shapes: Vec<Shape>,
}

/// One thing a pen can draw.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line { from: Point, to: Point, ink: Ink },
    /// Joined straight lines, open at their ends.
    Polyline { points: Vec<Point>, ink: Ink },
    /// Joined straight lines that close.
    Polygon { points: Vec<Point>, ink: Ink },
    /// Lines and curves.
    Path { steps: Vec<Step>, ink: Ink },
    /// A circle.
    Circle {
        centre: Point,
        radius: f64,
        ink: Ink,
    },
    /// An upright rectangle from its upper left corner, its corners rounded by `round`.
    Rect {
        corner: Point,
        width: f64,
        height: f64,
        round: f64,
        ink: Ink,
    },
    /// Text whose baseline passes through `at`.
    Text {
        at: Point,
        size: f64,
        anchor: Anchor,
        text: String,
        role: Role,
    },
}

/// One step of a pen along a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    /// Lift the pen and set it down here.
    Move(Point),
    /// Straight to here.
    Line(Point),
    /// By two control points to the last point.
    Curve(Point, Point, Point),
    /// Back to where the pen was set down.
    Close,
}

/// How one shape is inked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ink {
    /// Weight of the outline.
    pub weight: Weight,
    /// What is inside the outline.
    pub fill: Fill,
    /// Whether the outline is broken.
    pub dash: Dash,
    /// Which of the four inks the look knows.
    pub role: Role,
}

/// Weight of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// No outline.
    None,
    /// 2 units: hidden edges, graduations.
    Thin,
    /// 3 units: the line of every drawing.
    Line,
    /// 4 units: what the eye should find first.
    Bold,
}

/// What is inside an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fill {
    /// Nothing; what is below shows.
    None,
    /// The face of the paper; what is below is hidden.
    Face,
    /// Full ink.
    Solid,
    /// Lines at 45° on the face.
    Hatch,
    /// Dots on the face.
    Dotted,
}

/// Whether an outline is broken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dash {
    /// Unbroken.
    Whole,
    /// Dashes: a hidden edge, an uncertainty, where a part was.
    Dashed,
    /// Dots: an order, a route.
    Dots,
}

/// The inks of the look; which colour each has is the style sheet's matter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Black on the white face.
    Ink,
    /// Second lines.
    Quiet,
    /// Movement, and "you are here".
    Signal,
    /// The face itself, on top of ink.
    Paper,
}

/// Which end of a text its point is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The text starts there.
    Start,
    /// The text is centred there.
    Middle,
    /// The text ends there.
    End,
}

impl Weight {
    /// Width of the stroke, in view box units.
    pub const fn width(self) -> f64 {
        match self {
            Self::None => 0.0,
            Self::Thin => 2.0,
            Self::Line => 3.0,
            Self::Bold => 4.0,
        }
    }
}

impl Ink {
    /// The plain line of every drawing.
    pub const LINE: Self = Self {
        weight: Weight::Line,
        fill: Fill::None,
        dash: Dash::Whole,
        role: Role::Ink,
    };
    /// A finer line.
    pub const THIN: Self = Self {
        weight: Weight::Thin,
        ..Self::LINE
    };
    /// A heavier line.
    pub const BOLD: Self = Self {
        weight: Weight::Bold,
        ..Self::LINE
    };
    /// An outline that hides what is below it.
    pub const FACE: Self = Self {
        fill: Fill::Face,
        ..Self::LINE
    };
    /// Full ink within its outline.
    pub const SOLID: Self = Self {
        fill: Fill::Solid,
        ..Self::LINE
    };
    /// Hatched within its outline.
    pub const HATCH: Self = Self {
        fill: Fill::Hatch,
        ..Self::LINE
    };
    /// Dotted within its outline.
    pub const DOTTED: Self = Self {
        fill: Fill::Dotted,
        ..Self::LINE
    };
    /// A hidden edge, or where a part was.
    pub const GHOST: Self = Self {
        weight: Weight::Thin,
        dash: Dash::Dashed,
        role: Role::Quiet,
        ..Self::LINE
    };
    /// A line of movement.
    pub const SIGNAL: Self = Self {
        weight: Weight::Bold,
        role: Role::Signal,
        ..Self::LINE
    };

    /// The same ink with a fine outline.
    pub const fn thin(self) -> Self {
        Self {
            weight: Weight::Thin,
            ..self
        }
    }

    /// The same ink with a heavy outline.
    pub const fn bold(self) -> Self {
        Self {
            weight: Weight::Bold,
            ..self
        }
    }

    /// The same ink with no outline.
    pub const fn bare(self) -> Self {
        Self {
            weight: Weight::None,
            ..self
        }
    }

    /// The same ink in another role.
    pub const fn role(self, role: Role) -> Self {
        Self { role, ..self }
    }

    /// The same ink with another broken or whole outline.
    pub const fn dash(self, dash: Dash) -> Self {
        Self { dash, ..self }
    }
}

impl Drawing {
    /// An empty view box.
    pub const fn new(width: f64, height: f64) -> Self {
        Self {
            width,
            height,
            shapes: Vec::new(),
        }
    }

    /// Adds a straight line.
    pub fn line(&mut self, from: Point, to: Point, ink: Ink) -> &mut Self {
        self.add(Shape::Line { from, to, ink })
    }

    /// Adds joined straight lines.
    pub fn polyline(&mut self, points: &[Point], ink: Ink) -> &mut Self {
        let points = points.to_vec();
        self.add(Shape::Polyline { points, ink })
    }

    /// Adds joined straight lines that close.
    pub fn polygon(&mut self, points: &[Point], ink: Ink) -> &mut Self {
        let points = points.to_vec();
        self.add(Shape::Polygon { points, ink })
    }

    /// Adds a path from its steps.
    pub fn path(&mut self, steps: Vec<Step>, ink: Ink) -> &mut Self {
        self.add(Shape::Path { steps, ink })
    }

    /// Adds a path written as pen strokes; see [`super::pen::strokes`].
    pub fn pen(&mut self, strokes: &str, ink: Ink) -> &mut Self {
        self.path(super::pen::strokes(strokes), ink)
    }

    /// Adds pen strokes where `placing` puts them.
    pub fn pen_at(&mut self, placing: Placing, strokes: &str, ink: Ink) -> &mut Self {
        let steps = super::pen::strokes(strokes);
        self.add(placing.shape(&Shape::Path { steps, ink }))
    }

    /// Adds a circle.
    pub fn circle(&mut self, centre: Point, radius: f64, ink: Ink) -> &mut Self {
        self.add(Shape::Circle {
            centre,
            radius,
            ink,
        })
    }

    /// Adds a rectangle `(x, y, width, height)` with rounded corners.
    pub fn rect(&mut self, of: (f64, f64, f64, f64), round: f64, ink: Ink) -> &mut Self {
        let (x, y, width, height) = of;
        self.add(Shape::Rect {
            corner: (x, y),
            width,
            height,
            round,
            ink,
        })
    }

    /// Adds text with its middle at `at`, both ways.
    pub fn label(&mut self, at: Point, size: f64, text: &str, role: Role) -> &mut Self {
        // Digits and capitals are about 0.72 em high in the system fonts.
        let baseline = (at.0, at.1 + 0.36 * size);
        self.text(baseline, size, Anchor::Middle, text, role)
    }

    /// Adds text on the baseline through `at`.
    pub fn text(
        &mut self,
        at: Point,
        size: f64,
        anchor: Anchor,
        text: &str,
        role: Role,
    ) -> &mut Self {
        let text = text.to_owned();
        self.add(Shape::Text {
            at,
            size,
            anchor,
            text,
            role,
        })
    }

    /// Adds every shape of another drawing, moved by `placing`.
    pub fn put(&mut self, other: &Self, placing: Placing) -> &mut Self {
        let moved = other.shapes.iter().map(|shape| placing.shape(shape));
        self.shapes.extend(moved);
        self
    }

    /// Adds one shape on top.
    pub fn add(&mut self, shape: Shape) -> &mut Self {
        self.shapes.push(shape);
        self
    }
}
