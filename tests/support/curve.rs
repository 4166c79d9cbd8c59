//! The picture of the README: chance of REPLACE against true play, for three gauges.

use hubslate::drawing::shape::{Anchor, Dash, Drawing, Ink, Role};

/// One gauge's curve, with the cars that were judged beside it. Plays in mm, chances as shares.
pub struct Curve {
    pub name: &'static str,
    pub dash: Dash,
    pub line: Vec<(f64, f64)>,
    pub cars: Vec<(f64, f64)>,
}

const WIDTH: f64 = 720.0;
const HEIGHT: f64 = 424.0;
const LEFT: f64 = 70.0;
const RIGHT: f64 = 700.0;
const TOP: f64 = 30.0;
const BASE: f64 = 360.0;
/// Right end of the scale, in mm.
pub const MOST: f64 = 0.10;

fn x(play: f64) -> f64 {
    LEFT + (RIGHT - LEFT) * play / MOST
}

fn y(chance: f64) -> f64 {
    BASE - (BASE - TOP) * chance
}

pub fn picture(curves: &[Curve], limit: f64) -> String {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.rect((0.0, 0.0, WIDTH, HEIGHT), 0.0, Ink::FACE.bare());
    axes(&mut drawing);
    drawing.line((x(limit), TOP - 16.0), (x(limit), BASE), Ink::BOLD);
    let at = (x(limit) + 8.0, TOP - 4.0);
    drawing.text(at, 16.0, Anchor::Start, "limit 0.05 mm", Role::Ink);
    for (row, curve) in curves.iter().enumerate() {
        draw(&mut drawing, curve);
        // Its name stands where no curve runs.
        let at = y(0.40) + 30.0 * row as f64;
        drawing.line((x(0.065), at), (x(0.072), at), Ink::LINE.dash(curve.dash));
        let beside = (x(0.074), at + 6.0);
        drawing.text(beside, 16.0, Anchor::Start, curve.name, Role::Ink);
    }
    let svg = drawing
        .to_svg("Chance of REPLACE against true play, for three gauges and a limit of 0.05 mm");
    // It stands alone, without the page whose letters it would take.
    svg.replacen("<svg ", "<svg font-family=\"sans-serif\" ", 1)
}

fn axes(drawing: &mut Drawing) {
    for percent in [0_u8, 25, 50, 75, 100] {
        let at = y(f64::from(percent) / 100.0);
        drawing.line((LEFT, at), (RIGHT, at), Ink::THIN.dash(Dash::Dots));
        let label = format!("{percent} %");
        drawing.text((LEFT - 8.0, at + 6.0), 16.0, Anchor::End, &label, Role::Ink);
    }
    for hundredths in 0..=10_u8 {
        let play = f64::from(hundredths) / 100.0;
        drawing.line((x(play), BASE), (x(play), BASE + 8.0), Ink::THIN);
        let at = (x(play), BASE + 27.0);
        drawing.text(at, 16.0, Anchor::Middle, &format!("{play:.2}"), Role::Ink);
    }
    drawing.line((LEFT, BASE), (RIGHT, BASE), Ink::LINE);
    drawing.line((LEFT, TOP), (LEFT, BASE), Ink::LINE);
    let below = (x(MOST / 2.0), BASE + 56.0);
    drawing.text(below, 18.0, Anchor::Middle, "true play, mm", Role::Ink);
    let above = (8.0, TOP - 12.0);
    drawing.text(above, 18.0, Anchor::Start, "chance of REPLACE", Role::Ink);
}

fn draw(drawing: &mut Drawing, curve: &Curve) {
    let points: Vec<_> = curve
        .line
        .iter()
        .map(|(play, chance)| (x(*play), y(*chance)))
        .collect();
    drawing.polyline(&points, Ink::LINE.dash(curve.dash));
    for (play, share) in &curve.cars {
        drawing.circle((x(*play), y(*share)), 4.0, Ink::FACE.thin());
    }
}
