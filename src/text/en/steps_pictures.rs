//! Pictures that are asked for only where something is wrong.

use super::tell;
use crate::text::step::StepText;

pub(super) const FOUND: StepText = tell(
    "Picture: as found",
    "One picture of what is wrong, before anything is touched.",
    "Take the picture",
    "It shows what was so before you came.",
);
pub(super) const MISHAP: StepText = tell(
    "Picture: what went wrong",
    "One picture of the fastener and its thread as they are now.",
    "Take the picture",
    "The owner is asked for more work: the picture shows why.",
);
pub(super) const DECLINED: StepText = tell(
    "Picture: what stays",
    "One picture of the wheel end as it stays, before it is put back.",
    "Take the picture",
    "The owner said no to dangerous work: it shows how it was left.",
);
pub(super) const LEFT: StepText = tell(
    "Picture: as it is left",
    "One picture of the whole corner as you leave it: stand, chocks, what is off.",
    "Take the picture",
    "Whoever comes next sees how it stood.",
);
