//! Hands on the tire: where they take hold, and which way they go.

use super::pen::strokes;
use super::piece::{arrow_along, both_ways, fist, glove, tire_edge, wheel_face};
use super::place::Placing;
use super::shape::{Drawing, Fill, Ink, Point, Role, Shape};

/// Hands at 12 and 6; beside it the wheel on its edge, which tips if there is play.
pub fn twelve_six() -> Drawing {
    let mut drawing = Drawing::new(300.0, 270.0);
    let centre = (96.0, 135.0);
    wheel_face(&mut drawing, centre, 76.0);
    drawing.put(&glove(), Placing::at((96.0, 50.0)).scaled(0.86));
    drawing.put(
        &glove(),
        Placing::at((96.0, 220.0)).scaled(0.86).turned(180.0),
    );
    drawing.label((36.0, 40.0), 34.0, "12", Role::Ink);
    drawing.label((42.0, 234.0), 34.0, "6", Role::Ink);
    axle(&mut drawing, (238.0, 135.0), 0.0);
    ghost(&mut drawing, Placing::at((244.0, 135.0)).turned(9.0));
    drawing.put(&tire_edge(42.0, 152.0), Placing::at((244.0, 135.0)));
    both_ways(&mut drawing, (214.0, 36.0), (274.0, 36.0));
    both_ways(&mut drawing, (214.0, 234.0), (274.0, 234.0));
    drawing
}

/// Hands at 9 and 3; below it the wheel from above, which turns on its post if there is play.
pub fn nine_three() -> Drawing {
    let mut drawing = Drawing::new(300.0, 270.0);
    let centre = (150.0, 84.0);
    wheel_face(&mut drawing, centre, 76.0);
    drawing.put(
        &glove(),
        Placing::at((65.0, 84.0)).scaled(0.86).turned(-90.0),
    );
    drawing.put(
        &glove(),
        Placing::at((235.0, 84.0))
            .scaled(0.86)
            .turned(90.0)
            .mirrored(),
    );
    drawing.label((36.0, 34.0), 34.0, "9", Role::Ink);
    drawing.label((264.0, 34.0), 34.0, "3", Role::Ink);
    axle(&mut drawing, (150.0, 222.0), 90.0);
    ghost(&mut drawing, Placing::at((150.0, 216.0)).turned(99.0));
    drawing.put(
        &tire_edge(42.0, 152.0),
        Placing::at((150.0, 216.0)).turned(90.0),
    );
    both_ways(&mut drawing, (50.0, 188.0), (50.0, 246.0));
    both_ways(&mut drawing, (250.0, 188.0), (250.0, 246.0));
    drawing
}

/// Push and pull along the axle while the wheel is turned to and fro.
pub fn push_pull() -> Drawing {
    let mut drawing = Drawing::new(300.0, 240.0);
    axle(&mut drawing, (104.0, 120.0), 0.0);
    drawing.put(&tire_edge(66.0, 196.0), Placing::at((120.0, 120.0)));
    drawing.put(&fist(), Placing::at((152.0, 58.0)));
    drawing.put(&fist(), Placing::at((152.0, 182.0)));
    both_ways(&mut drawing, (172.0, 120.0), (286.0, 120.0));
    // Over the tread, on a strip of paper: the wheel is turned to and fro.
    drawing.rect((98.0, 58.0, 26.0, 124.0), 0.0, Ink::FACE.bare());
    let up = "M 105 120 C 105 100 107 86 112 72";
    arrow_along(&mut drawing, strokes(up), (117.0, 58.0), -70.0);
    let down = "M 105 120 C 105 140 107 154 112 168";
    arrow_along(&mut drawing, strokes(down), (117.0, 182.0), 70.0);
    drawing
}

/// The axle stub, the hub and the leg that carry a wheel seen on its edge; turned with it.
fn axle(drawing: &mut Drawing, at: Point, turn: f64) {
    let mut piece = Drawing::new(0.0, 0.0);
    piece.pen(
        "M -14 -20 H -34 V -8 H -58 V 8 H -34 V 20 H -14 Z",
        Ink::FACE,
    );
    piece.line((-58.0, -14.0), (-58.0, 14.0), Ink::BOLD);
    drawing.put(&piece, Placing::at(at).turned(turn));
}

/// Where the tire goes when it tips, dashed.
fn ghost(drawing: &mut Drawing, placing: Placing) {
    let tire = tire_edge(42.0, 152.0);
    let outline = tire.shapes.into_iter().filter_map(|shape| match shape {
        Shape::Path { steps, ink } if ink.fill == Fill::Face => Some(Shape::Path {
            steps,
            ink: Ink::GHOST,
        }),
        _ => None,
    });
    for shape in outline {
        drawing.add(placing.shape(&shape));
    }
}
