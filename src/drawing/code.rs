//! A QR symbol (ISO/IEC 18004) as one filled path: what a camera reads off paper.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

use super::shape::{Dash, Drawing, Fill, Ink, Role, Shape, Step, Weight};

/// The clear border that the standard asks for, in modules.
pub const QUIET: i32 = 4;
/// The largest version that is drawn: 117 modules a side, which a telephone reads at 0.4 mm each.
pub const LARGEST: u8 = 25;
/// The number of UTF-8 among the character sets of the standard.
const UTF_8: u32 = 26;

/// The symbol of a text at level M or better, one unit a module, its border around it; `None` if
/// it would be larger than [`LARGEST`].
pub fn code(text: &str) -> Option<Drawing> {
    let symbol = symbol(text)?;
    let side = symbol.size() + 2 * QUIET;
    let mut drawing = Drawing::new(f64::from(side), f64::from(side));
    let ink = Ink {
        weight: Weight::None,
        fill: Fill::Solid,
        dash: Dash::Whole,
        role: Role::Ink,
    };
    let steps = (0..symbol.size())
        .flat_map(|row| bars(&symbol, row))
        .collect();
    drawing.shapes.push(Shape::Path { steps, ink });
    Some(drawing)
}

fn symbol(text: &str) -> Option<QrCode> {
    let mut segments = Vec::new();
    if !text.is_ascii() {
        segments.push(QrSegment::make_eci(UTF_8));
    }
    segments.extend(QrSegment::make_segments(text));
    let level = QrCodeEcc::Medium;
    let largest = Version::new(LARGEST);
    QrCode::encode_segments_advanced(&segments, level, Version::MIN, largest, None, true).ok()
}

/// The dark modules of a row, those side by side as one bar.
fn bars(symbol: &QrCode, row: i32) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut begun = None;
    for column in 0..=symbol.size() {
        // Beyond its edge a symbol is light.
        match (symbol.get_module(column, row), begun) {
            (true, None) => begun = Some(column),
            (false, Some(from)) => {
                steps.extend(bar(from, column, row));
                begun = None;
            }
            _ => {}
        }
    }
    steps
}

fn bar(from: i32, to: i32, row: i32) -> [Step; 5] {
    let at = |module: i32| f64::from(module + QUIET);
    let (left, right, top, foot) = (at(from), at(to), at(row), at(row + 1));
    [
        Step::Move((left, top)),
        Step::Line((right, top)),
        Step::Line((right, foot)),
        Step::Line((left, foot)),
        Step::Close,
    ]
}
