//! What tells the rotor on every stud: two positions of it, or the hub's face and the rotor on it.

use super::Run;
use crate::job::entry::Event;
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::runout::{MeasuredAs, Shape, Surface, Undetermined};
use crate::trade::wheel_end::{Item, ItemKind};

pub use crate::job::entry::Basis;

/// What tells the rotor on every stud: this position and, from an earlier run in the same state,
/// another; else the hub's face, where the radius of both is known.
pub(super) fn recorded(
    sheet: &JobState,
    runs: &[Run],
    run: &Run,
    shape: &Result<Shape, Undetermined>,
) -> Option<(Basis, MeasuredAs)> {
    let stud = |run: &Run| run.setup.stud.saturating_sub(1);
    let now = shape.as_ref().ok()?;
    if run.setup.surface != Surface::Rotor {
        return None;
    }
    let here = (stud(run), now.fit.first);
    let earlier = |surface| {
        runs.iter().rev().filter(move |other| {
            other.setup.surface == surface
                && other.nth < run.nth
                && other.next_place().is_none()
                && other.setup.cleaned == run.setup.cleaned
                && !hub_came_off(sheet, other, run)
        })
    };
    let wobble = |other: &Run| {
        Some(
            crate::trade::runout::shape(&other.series().ok()?)
                .ok()?
                .fit
                .first,
        )
    };
    let mut turned = earlier(Surface::Rotor)
        .filter(|other| other.setup.stud != run.setup.stud)
        .filter_map(|other| Some((stud(other), wobble(other)?)));
    if let Some(one) = turned.next() {
        return Some((
            Basis::TwoPositions,
            MeasuredAs::Assembled { one, other: here },
        ));
    }
    let mut hubs = earlier(Surface::HubFace)
        .filter_map(|hub| wobble(hub)?.seen_at(hub.radius()?, run.radius()?).ok());
    let hub = hubs.next()?;
    Some((Basis::HubAndRotor, MeasuredAs::OnHub { hub, rotor: here }))
}

/// Whether the hub was unbolted between two runs: then the earlier one was of another seat.
fn hub_came_off(sheet: &JobState, earlier: &Run, later: &Run) -> bool {
    let begun = |run: &Run| {
        let first = run.readings.first()?;
        sheet.place(&Key::Runout(first.corner, run.nth, first.place))
    };
    let corner = later.readings.first().map(|reading| reading.corner);
    let is_bolt = |item: &Item| Some(item.corner) == corner && item.group == ItemKind::HubBolts;
    let off = sheet
        .first_place(|what| matches!(what, Event::Moved(moved) if moved.items.iter().any(is_bolt)));
    match (begun(earlier), off, begun(later)) {
        (Some(earlier), Some(off), Some(later)) => earlier < off && off < later,
        _ => false,
    }
}
