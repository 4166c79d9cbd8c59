//! Pressing: which way the force goes, and which side of the bearing looks at the sensor.

use super::piece::arrow;
use super::shape::{Drawing, Ink, Role};

/// The bearing cut along its axle; the encoder's side is filled and faces the sensor.
pub fn encoder_side() -> Drawing {
    let mut drawing = Drawing::new(300.0, 240.0);
    bearing(&mut drawing, 150.0);
    for y in [52.0, 168.0] {
        drawing.rect((196.0, y, 9.0, 20.0), 0.0, Ink::SOLID);
    }
    // The sensor and its wire.
    drawing.rect((214.0, 40.0, 26.0, 44.0), 3.0, Ink::FACE.bold());
    drawing.pen("M 240 62 C 262 62 262 30 292 30", Ink::BOLD);
    // The viewing card held to the ring.
    drawing.rect((212.0, 146.0, 12.0, 66.0), 2.0, Ink::HATCH);
    arrow(&mut drawing, &[(288.0, 178.0), (232.0, 178.0)]);
    drawing
}

/// The force goes through a plate into the outer ring; nothing touches the inner one.
pub fn press_outer() -> Drawing {
    let mut drawing = Drawing::new(300.0, 260.0);
    // The knuckle on its support, its shoulder below.
    drawing.pen("M 30 116 H 74 V 214 H 92 V 236 H 30 Z", Ink::HATCH);
    drawing.pen("M 270 116 H 226 V 214 H 208 V 236 H 270 Z", Ink::HATCH);
    drawing.line((14.0, 240.0), (286.0, 240.0), Ink::BOLD);
    upright(&mut drawing, 96.0);
    // The plate: a ring that rests on the outer ring alone.
    drawing.pen("M 76 64 H 224 V 94 H 202 V 80 H 98 V 94 H 76 Z", Ink::SOLID);
    arrow(&mut drawing, &[(150.0, 8.0), (150.0, 58.0)]);
    for x in [87.0, 213.0] {
        arrow(&mut drawing, &[(x, 100.0), (x, 196.0)]);
    }
    drawing
}

/// The hub goes in from above; a tube below carries the inner ring.
pub fn press_inner() -> Drawing {
    let mut drawing = Drawing::new(300.0, 280.0);
    drawing.pen("M 30 92 H 74 V 186 H 30 Z", Ink::HATCH);
    drawing.pen("M 270 92 H 226 V 186 H 270 Z", Ink::HATCH);
    upright(&mut drawing, 92.0);
    // The hub: flange above, neck in the inner ring.
    drawing.pen(
        "M 60 40 H 240 V 58 H 184 V 128 H 116 V 58 H 60 Z",
        Ink::FACE.bold(),
    );
    // The tube under the inner ring.
    for x in [104.0, 180.0] {
        drawing.rect((x, 188.0, 16.0, 68.0), 0.0, Ink::FACE.bold());
    }
    drawing.line((14.0, 260.0), (286.0, 260.0), Ink::BOLD);
    arrow(&mut drawing, &[(150.0, 4.0), (150.0, 36.0)]);
    for x in [112.0, 188.0] {
        arrow(&mut drawing, &[(x, 252.0), (x, 196.0)]);
    }
    drawing
}

/// A double-row bearing lying with its axle across the picture.
fn bearing(drawing: &mut Drawing, middle: f64) {
    let left = middle - 46.0;
    for (outer, inner, ball) in [(24.0, 72.0, 60.0), (196.0, 150.0, 180.0)] {
        drawing.rect((left, outer, 92.0, 22.0), 1.0, Ink::FACE.bold());
        drawing.rect((left, inner, 92.0, 18.0), 1.0, Ink::FACE);
        for x in [middle - 22.0, middle + 22.0] {
            drawing.circle((x, ball), 13.0, Ink::FACE);
        }
    }
    drawing.line((16.0, 120.0), (284.0, 120.0), Ink::GHOST.role(Role::Quiet));
}

/// The same standing upright in its bore, its upper edge at `top`.
fn upright(drawing: &mut Drawing, top: f64) {
    for (outer, inner, ball) in [(76.0, 104.0, 99.0), (202.0, 178.0, 201.0)] {
        drawing.rect((outer, top, 22.0, 94.0), 1.0, Ink::FACE.bold());
        drawing.rect((inner, top, 18.0, 94.0), 1.0, Ink::FACE);
        for y in [top + 25.0, top + 69.0] {
            drawing.circle((ball, y), 11.0, Ink::FACE);
        }
    }
}
