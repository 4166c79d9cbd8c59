//! What can go wrong with which fastener or part, by what hands do to it. `common practice, no
//! source`.

use crate::trade::fastening::MishapKind;
use crate::trade::wheel_end::item::{ItemKind, ItemState};

/// What hands do to an item at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hands {
    /// They loosen it, start it by hand, turn it with a tool, take it off or put it on.
    Bring(ItemState),
    /// It is bare, so that damage is seen.
    See,
    /// The new one is held next to the old one.
    Compare,
}

/// Whether this can happen to a fastener or part of `group`.
pub const fn can_happen(kind: MishapKind, group: ItemKind, hands: Hands) -> bool {
    match hands {
        Hands::Bring(to) if group.is_fastener() => to_fastener(kind, group, to),
        Hands::Bring(to) => to_part(kind, group, to),
        Hands::See => matches!(kind, MishapKind::Cracked) || is_seen_behind(kind, group),
        Hands::Compare => kind.goes_back(),
    }
}

/// Whether it is seen on a bare part only once the hub is out.
pub const fn is_seen_behind(kind: MishapKind, group: ItemKind) -> bool {
    match kind {
        MishapKind::SeatDamaged => !group.is_fastener(),
        MishapKind::BoreWorn => matches!(group, ItemKind::Knuckle),
        _ => false,
    }
}

const fn to_fastener(kind: MishapKind, group: ItemKind, to: ItemState) -> bool {
    let wheel = matches!(group, ItemKind::LugNuts);
    match kind {
        // A stud can spin in its hub while its nut is loosened, too.
        MishapKind::TurnsOn => !matches!(to, ItemState::ByHand),
        MishapKind::WouldNotStart => !matches!(to, ItemState::Off | ItemState::Loosened),
        MishapKind::ClickedEarly => matches!(to, ItemState::Snug | ItemState::Done),
        // A wheel has a key and a seat of its own. What was wrong on arrival is seen as it comes off.
        MishapKind::LockKeyMissing | MishapKind::WrongSeat => wheel,
        MishapKind::BoltTooLong => !group.is_nut(),
        MishapKind::Sheared | MishapKind::ThreadCrossed | MishapKind::Cracked => true,
        MishapKind::Seized => matches!(to, ItemState::Off | ItemState::Loosened),
        _ => false,
    }
}

const fn to_part(kind: MishapKind, group: ItemKind, to: ItemState) -> bool {
    use ItemKind::{Bearing, Caliper, Drum, Hub, Knuckle, Rotor, SensorWire, SnapRing, Wheel};
    match kind {
        MishapKind::Stuck => {
            matches!(to, ItemState::Off)
                && matches!(
                    group,
                    Wheel | Rotor | Drum | Hub | Bearing | SnapRing | Knuckle
                )
        }
        MishapKind::Leaking | MishapKind::HoseTwisted => matches!(group, Caliper),
        MishapKind::SensorBroken => matches!(group, SensorWire),
        _ => false,
    }
}
