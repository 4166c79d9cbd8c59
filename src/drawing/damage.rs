//! What can be seen on a removed part, one drawing a finding: the part in outline, and the one thing
//! that is wrong with it filled.

use super::pen::{arc, clock, sector};
use super::piece::turning;
use super::place::Placing;
use super::shape::{Dash, Drawing, Ink, Point};
use crate::trade::damage::Finding;

const WIDTH: f64 = 200.0;
const HEIGHT: f64 = 150.0;
/// The middle of what is seen from the front, and its outer edge.
const MIDDLE: Point = (100.0, 75.0);
const EDGE: f64 = 62.0;
/// Where rolling elements stand on the race.
const PITCH: [f64; 5] = [28.0, 64.0, 100.0, 136.0, 172.0];

impl Finding {
    /// The finding as geometry.
    pub fn drawing(self) -> Drawing {
        match self {
            Self::RedGrease => red_grease(),
            Self::HeatColors => heat_colors(),
            Self::SeatBloom => seat_bloom(),
            Self::RingsTurned => rings_turned(),
            Self::BruisedSpot => bruised_spot(),
            Self::BeachMarks => beach_marks(),
            Self::CleanBreak => clean_break(),
            Self::SealCut => seal_cut(),
            Self::EncoderScratched => encoder_scratched(),
            Self::SpacedDents => spaced_dents(),
            Self::DullDimples => dull_dimples(),
            Self::EtchedLines => etched_lines(),
            Self::Flaked => flaked(),
            Self::FlakedAtDent => flaked_at_dent(),
            Self::GritDents => grit_dents(),
            Self::Washboard => washboard(),
        }
    }
}

/// A closed hub from its side: the barrel with its mounting flange, the wheel flange with two studs.
fn hub() -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    for y in [30.0, 108.0] {
        drawing.rect((136.0, y, 46.0, 12.0), 0.0, Ink::FACE.thin());
    }
    drawing.rect((136.0, 50.0, 18.0, 50.0), 0.0, Ink::FACE);
    drawing.rect((22.0, 44.0, 86.0, 62.0), 2.0, Ink::FACE.bold());
    drawing.rect((62.0, 26.0, 14.0, 98.0), 2.0, Ink::FACE);
    drawing.rect((120.0, 12.0, 16.0, 126.0), 2.0, Ink::FACE.bold());
    drawing.pen("M 108 60 H 120 M 108 90 H 120", Ink::LINE);
    drawing
}

fn red_grease() -> Drawing {
    let mut drawing = hub();
    drawing.pen(
        "M 104 84 C 124 80 126 92 120 98 C 122 108 112 112 108 106 C 98 104 94 92 104 84 Z",
        Ink::SOLID.thin(),
    );
    for (x, y, radius) in [(110.0, 122.0, 5.0), (112.0, 138.0, 4.0)] {
        drawing.circle((x, y), radius, Ink::SOLID.thin());
    }
    drawing
}

fn heat_colors() -> Drawing {
    let mut drawing = hub();
    drawing.rect((22.0, 44.0, 20.0, 62.0), 0.0, Ink::DOTTED);
    drawing.rect((76.0, 44.0, 16.0, 62.0), 0.0, Ink::HATCH);
    drawing.rect((92.0, 44.0, 16.0, 62.0), 0.0, Ink::SOLID);
    for x in [28.0, 46.0, 90.0] {
        let at = Placing::at((x, 22.0));
        drawing.pen_at(at, "M 0 14 C -9 6 9 -6 0 -16", Ink::BOLD);
    }
    drawing
}

fn seat_bloom() -> Drawing {
    let mut drawing = hub();
    drawing.pen(
        "M 4 16 H 58 V 40 H 4 Z M 4 110 H 58 V 134 H 4 Z",
        Ink::GHOST,
    );
    drawing.pen(
        "M 24 46 C 40 42 46 58 40 66 C 44 74 34 80 28 72 C 22 68 22 52 24 46 Z",
        Ink::SOLID.thin(),
    );
    drawing.pen(
        "M 42 82 C 54 78 60 90 54 98 C 50 106 34 104 36 94 Z",
        Ink::SOLID.thin(),
    );
    for (x, y) in [(48.0, 54.0), (54.0, 70.0), (28.0, 94.0), (46.0, 74.0)] {
        drawing.circle((x, y), 2.0, Ink::SOLID.thin());
    }
    drawing
}

/// Two inner rings end to end, scuffed on both sides of their gap.
fn rings_turned() -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    for x in [22.0, 104.0] {
        drawing.rect((x, 44.0, 74.0, 62.0), 2.0, Ink::FACE.bold());
        drawing.rect((x + 20.0, 44.0, 34.0, 62.0), 0.0, Ink::HATCH.thin());
    }
    for y in [48.0, 60.0, 72.0, 84.0, 96.0] {
        drawing.line((86.0, y), (95.0, y + 5.0), Ink::BOLD);
        drawing.line((105.0, y), (114.0, y + 5.0), Ink::BOLD);
    }
    turning(&mut drawing, MIDDLE, 56.0, -48.0, 48.0);
    turning(&mut drawing, MIDDLE, 56.0, 132.0, 228.0);
    drawing
}

/// A ring from the front.
fn ring(inner: f64) -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.circle(MIDDLE, EDGE, Ink::FACE.bold());
    drawing.circle(MIDDLE, inner, Ink::FACE);
    drawing
}

fn bruised_spot() -> Drawing {
    let mut drawing = ring(40.0);
    let at = Placing::at(clock(MIDDLE, EDGE, 52.0)).turned(52.0);
    drawing.pen_at(
        at,
        "M -17 -4 L -8 2 L -11 12 L 0 8 L 7 17 L 9 5 L 19 -2 L 6 -5 L 0 -1 L -6 -6 Z",
        Ink::SOLID.thin(),
    );
    for (x, to) in [(-20.0, -26.0), (0.0, 0.0), (20.0, 26.0)] {
        let (from, to) = (at.point((x, -10.0)), at.point((to, -19.0)));
        drawing.line(from, to, Ink::LINE);
    }
    drawing
}

/// A broken face: lines that grew from one edge, and the rest torn at last.
fn beach_marks() -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.circle(MIDDLE, EDGE, Ink::FACE.bold());
    let origin = (MIDDLE.0 - EDGE, MIDDLE.1);
    let half = |radius: f64| (radius / (2.0 * EDGE)).acos().to_degrees();
    for radius in [18.0, 32.0, 46.0, 60.0, 74.0] {
        let half = half(radius);
        drawing.path(arc(origin, radius, 90.0 - half, 90.0 + half), Ink::LINE);
    }
    // What tore at last, between the last line and the far edge.
    let last = 88.0;
    let (half, at) = (half(last), 2.0 * (last / (2.0 * EDGE)).asin().to_degrees());
    let mut torn = arc(MIDDLE, EDGE, at - 90.0, 270.0 - at);
    let back = arc(origin, last, 90.0 + half, 90.0 - half);
    torn.extend(back.into_iter().skip(1));
    drawing.path(torn, Ink::HATCH.bold());
    drawing.circle(origin, 6.0, Ink::SOLID);
    drawing
}

/// A stud broken straight across, its end beside it.
fn clean_break() -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.rect((18.0, 14.0, 24.0, 122.0), 2.0, Ink::HATCH.bold());
    drawing.rect((42.0, 56.0, 46.0, 32.0), 0.0, Ink::FACE.bold());
    let piece = Placing::at((146.0, 80.0)).turned(14.0);
    drawing.pen_at(piece, "M -34 -16 H 34 V 16 H -34 Z", Ink::FACE.bold());
    for x in [-12.0, 0.0, 12.0, 24.0] {
        let (from, to) = (piece.point((x, -15.0)), piece.point((x - 5.0, 15.0)));
        drawing.line(from, to, Ink::THIN);
    }
    drawing.rect((84.0, 56.0, 8.0, 32.0), 0.0, Ink::SOLID);
    drawing.pen_at(piece, "M -38 -16 H -30 V 16 H -38 Z", Ink::SOLID);
    drawing
}

/// The seal cut through, one end of its lip standing out.
fn seal_cut() -> Drawing {
    let mut drawing = ring(44.0);
    drawing.circle(MIDDLE, 52.0, Ink::THIN);
    let at = |radius, angle| clock(MIDDLE, radius, angle);
    let gap = sector(MIDDLE, 40.0, 59.0, 40.0, 66.0);
    drawing.path(gap, Ink::FACE.bare());
    for angle in [40.0, 66.0] {
        drawing.line(at(44.0, angle), at(60.0, angle), Ink::BOLD);
    }
    let lip = [
        at(54.0, 40.0),
        at(44.0, 40.0),
        at(18.0, 62.0),
        at(26.0, 84.0),
    ];
    drawing.polygon(&lip, Ink::SOLID);
    drawing
}

/// The ring of poles with two scratches along it.
fn encoder_scratched() -> Drawing {
    let mut drawing = ring(40.0);
    for pole in 0..12 {
        let from = 30.0 * f64::from(pole);
        let ink = Ink::SOLID.thin();
        drawing.path(sector(MIDDLE, 42.0, 60.0, from, from + 15.0), ink);
    }
    let bare = sector(MIDDLE, 45.0, 57.0, 8.0, 98.0);
    drawing.path(bare, Ink::FACE.bare());
    drawing.path(arc(MIDDLE, 48.0, 4.0, 84.0), Ink::LINE);
    drawing.path(arc(MIDDLE, 54.0, 22.0, 102.0), Ink::LINE);
    drawing
}

/// A piece of a race, seen across its groove, and where the rolling elements stood on it.
fn race() -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.pen(
        "M 4 56 C 60 36 140 36 196 56 V 140 C 140 120 60 120 4 140 Z",
        Ink::FACE.bold(),
    );
    drawing.pen(
        "M 4 72 C 60 52 140 52 196 72 M 4 124 C 60 104 140 104 196 124",
        Ink::THIN,
    );
    drawing
}

/// Where the bottom of the groove is at a place along it.
fn groove(x: f64) -> Point {
    let out = (x - 100.0) / 96.0;
    (x, 83.0 + 15.0 * out * out)
}

/// Something at each place of a rolling element, each of which is drawn above it.
fn at_pitch(drawing: &mut Drawing, what: &str, ink: Ink) {
    for x in PITCH {
        let (x, y) = groove(x);
        drawing.circle((x, y - 62.0), 14.0, Ink::GHOST);
        drawing.pen_at(Placing::at((x, y)), what, ink);
    }
}

const OVAL: &str = "M -8 0 C -8 -16 8 -16 8 0 C 8 16 -8 16 -8 0 Z";

fn spaced_dents() -> Drawing {
    let mut drawing = race();
    at_pitch(
        &mut drawing,
        "M -13 0 C -13 -24 13 -24 13 0 C 13 24 -13 24 -13 0 Z",
        Ink::THIN,
    );
    for x in PITCH {
        drawing.pen_at(Placing::at(groove(x)), OVAL, Ink::SOLID);
    }
    drawing
}

fn dull_dimples() -> Drawing {
    let mut drawing = race();
    at_pitch(&mut drawing, OVAL, Ink::HATCH.thin().dash(Dash::Dots));
    for x in PITCH {
        let (x, y) = groove(x);
        for (aside, down) in [(-9.0, 19.0), (-3.0, 24.0), (4.0, 20.0), (9.0, 25.0)] {
            drawing.circle((x + aside, y + down), 2.0, Ink::SOLID.bare());
        }
    }
    drawing
}

fn etched_lines() -> Drawing {
    let mut drawing = race();
    let lines = "M -5 -22 C -1 -10 -9 8 -5 22 M 4 -22 C 8 -10 0 8 4 22";
    at_pitch(&mut drawing, lines, Ink::BOLD);
    drawing
}

fn flaked() -> Drawing {
    let mut drawing = race();
    drawing.pen(
        "M 62 80 L 74 70 L 86 74 L 98 66 L 116 72 L 130 68 L 138 80 L 130 90 L 134 98 \
         L 116 96 L 104 102 L 92 96 L 78 100 L 72 90 Z",
        Ink::SOLID.thin(),
    );
    for (x, y) in [(50.0, 84.0), (54.0, 94.0), (148.0, 90.0), (154.0, 82.0)] {
        drawing.circle((x, y), 3.0, Ink::SOLID.thin());
    }
    drawing
}

fn flaked_at_dent() -> Drawing {
    let mut drawing = race();
    let dent = Placing::at(groove(58.0));
    drawing.pen_at(dent, OVAL, Ink::FACE.bold());
    drawing.circle(groove(58.0), 3.0, Ink::SOLID);
    drawing.pen(
        "M 70 84 L 84 76 L 98 78 L 112 66 L 132 70 L 152 66 L 148 82 L 156 94 L 136 94 \
         L 122 100 L 108 92 L 92 94 L 84 88 Z",
        Ink::SOLID.thin(),
    );
    drawing
}

fn grit_dents() -> Drawing {
    let mut drawing = race();
    let dents = [
        (22.0, -8.0, 3.0),
        (36.0, 10.0, 2.0),
        (46.0, -14.0, 4.0),
        (58.0, 3.0, 2.0),
        (66.0, 15.0, 3.5),
        (78.0, -10.0, 2.0),
        (88.0, 6.0, 5.0),
        (100.0, -16.0, 2.5),
        (110.0, 14.0, 2.0),
        (118.0, -3.0, 3.0),
        (130.0, 8.0, 2.0),
        (138.0, -13.0, 4.5),
        (150.0, 13.0, 3.0),
        (160.0, -6.0, 2.0),
        (172.0, 9.0, 3.5),
        (180.0, -10.0, 2.0),
    ];
    for (x, aside, radius) in dents {
        let (x, y) = groove(x);
        drawing.circle((x, y + aside), radius, Ink::SOLID.thin());
    }
    drawing
}

fn washboard() -> Drawing {
    let mut drawing = race();
    for bar in 0..20 {
        let (x, y) = groove(14.0 + 9.0 * f64::from(bar));
        drawing.line((x, y - 22.0), (x, y + 22.0), Ink::BOLD);
    }
    drawing
}

#[cfg(test)]
mod tests {
    use super::super::check::sound;
    use super::super::shape::{Fill, Shape, Weight};
    use super::*;

    #[test]
    fn every_finding_is_drawn_inside_its_box() {
        for finding in Finding::ALL {
            sound(finding.code(), &finding.drawing());
        }
    }

    #[test]
    fn no_two_findings_are_drawn_alike() {
        let drawings: Vec<Drawing> = Finding::ALL.iter().map(|it| it.drawing()).collect();
        for (at, one) in drawings.iter().enumerate() {
            assert!(!drawings[..at].contains(one), "{:?}", Finding::ALL[at]);
        }
    }

    #[test]
    fn what_is_wrong_is_filled_or_heavy_on_its_part() {
        // At arm's length what is filled is found first.
        let found = |shape: &Shape| match shape {
            Shape::Line { ink, .. }
            | Shape::Polygon { ink, .. }
            | Shape::Path { ink, .. }
            | Shape::Circle { ink, .. }
            | Shape::Rect { ink, .. } => ink.fill != Fill::None || ink.weight == Weight::Bold,
            Shape::Polyline { .. } | Shape::Text { .. } => false,
        };
        let parts = [race(), hub(), ring(40.0), ring(44.0)];
        for finding in Finding::ALL {
            let drawing = finding.drawing();
            let of = |part: &&Drawing| drawing.shapes.starts_with(&part.shapes);
            let part = parts.iter().find(of).map_or(0, |part| part.shapes.len());
            assert!(drawing.shapes[part..].iter().any(found), "{finding:?}");
        }
    }
}
