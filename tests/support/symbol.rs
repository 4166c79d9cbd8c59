//! A drawn symbol as pixels, read by a library that is not the one that made it.

use hubslate::drawing::Drawing;
use hubslate::drawing::shape::{Shape, Step};

/// Pixels of one module.
const SCALE: f64 = 4.0;

/// The bars of the drawing's paths as grey pixels, dark on light.
fn pixels(drawing: &Drawing) -> (usize, Vec<u8>) {
    let side = (drawing.width * SCALE) as usize;
    let mut grey = vec![255; side * side];
    for shape in &drawing.shapes {
        let Shape::Path { steps, .. } = shape else {
            panic!("a symbol is one path");
        };
        for bar in steps.chunks(5) {
            let [Step::Move(from), _, Step::Line(to), _, Step::Close] = bar else {
                panic!("a path of bars: {bar:?}");
            };
            let at = |place: f64| (place * SCALE) as usize;
            for row in at(from.1)..at(to.1) {
                grey[row * side + at(from.0)..row * side + at(to.0)].fill(0);
            }
        }
    }
    (side, grey)
}

/// What is written in the one symbol of a drawing.
pub fn decoded(drawing: &Drawing) -> String {
    let (side, grey) = pixels(drawing);
    let mut picture =
        rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| grey[y * side + x]);
    let grids = picture.detect_grids();
    assert_eq!(grids.len(), 1, "one symbol is found");
    let (meta, text) = grids[0].decode().expect("the symbol is read");
    // ISO/IEC 18004, table 12: 0 is level M; better levels are 3 (Q) and 2 (H), L alone is 1.
    assert_ne!(meta.ecc_level, 1, "level M or better");
    text
}
