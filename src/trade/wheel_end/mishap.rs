//! What can go wrong with which fastener, by what hands do to it. `common practice, no source`.

use crate::trade::fastening::MishapKind;
use crate::trade::wheel_end::item::{ItemKind, ItemState};

/// Whether this can happen to a fastener of `group` that hands bring to `to`: they loosen it, start
/// it by hand, or turn it with a tool.
pub const fn can_happen(kind: MishapKind, group: ItemKind, to: ItemState) -> bool {
    // A part is looked at where it is bare; what goes wrong with it is a crack.
    if !group.is_fastener() {
        return matches!(kind, MishapKind::Cracked);
    }
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
    }
}
