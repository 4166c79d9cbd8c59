//! Drawings on the screen: the geometry of `drawing`, inserted as it is.

use crate::drawing::Drawing;
use crate::drawing::corner::Place;
use crate::drawing::mark::Mark;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;
use crate::ui::view::prelude::*;

/// A drawing with a title for those who cannot see it.
pub fn drawn(drawing: &Drawing, title: &str, class: &'static str) -> Node {
    inserted(drawing.to_svg(title), class)
}

/// The only door through which text becomes markup: SVG that `drawing` or `report` made, whose
/// words are escaped there and whose strokes are plain path data.
pub fn inserted(svg: String, class: &'static str) -> Node {
    view! { <div class=class prop:innerHTML=svg></div> }
}

/// Where a corner is on the drawing of the vehicle.
pub const fn place(corner: Corner) -> Place {
    match corner {
        Corner::FrontLeft => Place::FrontLeft,
        Corner::FrontRight => Place::FrontRight,
        Corner::RearLeft => Place::RearLeft,
        Corner::RearRight => Place::RearRight,
    }
}

/// The mark of a decision.
pub const fn mark(decision: Decision) -> Mark {
    match decision {
        Decision::Keep => Mark::Keep,
        Decision::Watch => Mark::Watch,
        Decision::Replace => Mark::Replace,
        Decision::Stop => Mark::Stop,
    }
}
