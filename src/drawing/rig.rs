//! The dial gauge on the car.

use super::dial::Dial;
use super::pen::clock;
use super::piece::both_ways;
use super::shape::{Drawing, Ink, Role};

/// The base stands on the knuckle, the tip on the wheel pilot; the rotor is held flat by nuts.
pub fn dial_rig() -> Drawing {
    let mut drawing = Drawing::new(300.0, 270.0);
    wheel_end(&mut drawing);
    // The arm over the rotor.
    drawing.line((50.0, 58.0), (50.0, 20.0), Ink::BOLD);
    drawing.line((40.0, 20.0), (234.0, 20.0), Ink::BOLD);
    drawing.line((224.0, 12.0), (224.0, 100.0), Ink::BOLD);
    for at in [(50.0, 20.0), (224.0, 20.0)] {
        drawing.circle(at, 8.0, Ink::FACE);
        drawing.circle(at, 2.5, Ink::SOLID.bare());
    }
    drawing.rect((26.0, 50.0, 48.0, 30.0), 2.0, Ink::SOLID);
    drawing.rect(
        (44.0, 74.0, 12.0, 6.0),
        0.0,
        Ink::SOLID.bare().role(Role::Paper),
    );
    gauge(&mut drawing);
    both_ways(&mut drawing, (196.0, 236.0), (262.0, 236.0));
    drawing
}

/// The gauge with its plunger to the left, its tip on the pilot.
fn gauge(drawing: &mut Drawing) {
    let centre = (224.0, 146.0);
    drawing.rect((160.0, 141.5, 24.0, 9.0), 0.0, Ink::FACE.thin());
    drawing.line((151.0, 146.0), (160.0, 146.0), Ink::BOLD);
    drawing.circle((150.0, 146.0), 4.5, Ink::SOLID.bare());
    drawing.circle(centre, 44.0, Ink::FACE.bold());
    drawing.circle(centre, 37.0, Ink::THIN);
    for k in 0..20 {
        let turn = 18.0 * f64::from(k);
        let long = if k % 5 == 0 { 12.0 } else { 7.0 };
        drawing.line(
            clock(centre, 36.0, turn),
            clock(centre, 36.0 - long, turn),
            Ink::THIN,
        );
    }
    drawing.line(
        clock(centre, 10.0, 216.0),
        clock(centre, 30.0, 36.0),
        Ink::SIGNAL,
    );
    drawing.circle(centre, 5.0, Ink::SOLID.bare());
}

/// Knuckle, hub and rotor cut along the axle; the caliper is away.
fn wheel_end(drawing: &mut Drawing) {
    drawing.pen(
        "M 34 80 H 70 C 80 80 84 88 84 98 V 222 C 84 236 78 244 66 246 L 60 266 H 34 L 30 240 \
         C 22 232 18 222 18 210 V 98 C 18 88 24 80 34 80 Z",
        Ink::FACE.bold(),
    );
    drawing.rect((4.0, 150.0, 14.0, 24.0), 0.0, Ink::FACE);
    drawing.pen("M 18 142 H 84 M 18 182 H 84", Ink::GHOST);
    // Bearing, flange, then the rotor over it.
    drawing.rect((84.0, 118.0, 18.0, 88.0), 0.0, Ink::FACE);
    drawing.rect((102.0, 98.0, 11.0, 128.0), 0.0, Ink::FACE);
    for (low, high) in [(52.0, 94.0), (230.0, 266.0)] {
        drawing.rect((91.0, low, 8.0, high - low), 0.0, Ink::FACE);
        drawing.rect((103.0, low, 8.0, high - low), 0.0, Ink::FACE);
    }
    drawing.pen("M 111 84 H 122 V 132 H 113 V 98 H 99 V 84 Z", Ink::FACE);
    drawing.pen("M 111 240 H 122 V 192 H 113 V 226 H 99 V 240 Z", Ink::FACE);
    for y in [108.0, 206.0] {
        drawing.rect((122.0, y, 15.0, 14.0), 0.0, Ink::FACE);
        drawing.line((137.0, y + 7.0), (148.0, y + 7.0), Ink::BOLD);
    }
    // The wheel pilot, where the tip stands.
    drawing.pen(
        "M 113 134 H 145 V 158 H 132 V 166 H 145 V 190 H 113 Z",
        Ink::HATCH,
    );
}

/// The face of the gauge after a pull: 6.3 divisions from zero.
pub fn dial_face() -> Drawing {
    let dial = Dial {
        divisions: 100,
        value: Some(6.3),
        last: None,
        swept: Some((0.0, 6.3)),
    };
    dial.drawing()
}
