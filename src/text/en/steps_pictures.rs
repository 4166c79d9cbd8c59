//! Pictures that are asked for only where something is wrong.

use super::tell;
use crate::text::step::StepText;

pub(super) const FOUND: StepText = tell(
    "Photo: as found",
    "One photo of what is wrong, before anything is touched.",
    "Take the photo",
    "It shows how it was before you came.",
);
pub(super) const MISHAP: StepText = tell(
    "Photo: what went wrong",
    "One photo of the fastener and its thread as they are now.",
    "Take the photo",
    "More work needs approval: the photo shows why.",
);
pub(super) const DECLINED: StepText = tell(
    "Photo: what stays",
    "One photo of the wheel end as it stays, before reassembly.",
    "Take the photo",
    "A dangerous repair was declined: it shows how it was left.",
);
pub(super) const LEFT: StepText = tell(
    "Photo: as it is left",
    "One photo of the full corner as you leave it: stand, chocks, what is off.",
    "Take the photo",
    "Whoever comes next sees how it stood.",
);
