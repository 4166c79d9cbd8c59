//! What can go wrong with which fastener, by what hands do to it. `common practice, no source`.

use crate::trade::fastening::MishapKind;
use crate::trade::wheel_end::item::{Group, Hold};

/// Whether this can happen to a fastener of `group` that hands bring to `to`: they loosen it, start
/// it by hand, or turn it with a tool.
pub const fn can_happen(kind: MishapKind, group: Group, to: Hold) -> bool {
    let wheel = matches!(group, Group::WheelNuts);
    match kind {
        // A stud can spin in its hub while its nut is loosened, too.
        MishapKind::TurnsOn => !matches!(to, Hold::ByHand),
        MishapKind::WouldNotStart => !matches!(to, Hold::Off | Hold::Loosened),
        MishapKind::ClickedEarly => matches!(to, Hold::Snug | Hold::Done),
        // A wheel has a key and a seat of its own. What was wrong on arrival is seen as it comes off.
        MishapKind::LockKeyMissing | MishapKind::WrongSeat => wheel,
        MishapKind::BoltTooLong => !matches!(group, Group::AxleNut),
        MishapKind::Sheared | MishapKind::ThreadCrossed => true,
    }
}
