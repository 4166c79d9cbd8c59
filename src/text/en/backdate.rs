//! Words for what is noted later than it was done.

use crate::job::backdate::Ago;

pub(in crate::text) const fn ago(ago: Ago) -> &'static str {
    match ago {
        Ago::Quarter => "15 minutes ago",
        Ago::Half => "Half an hour ago",
        Ago::Hour => "An hour ago",
        Ago::TwoHours => "Two hours ago",
        Ago::Yesterday => "Yesterday, at this time",
    }
}

pub(in crate::text) const fn done_earlier() -> &'static str {
    "Done earlier"
}

pub(in crate::text) const fn earlier_say() -> &'static str {
    "About when was it done? It counts for the next tap only, and the report shows both times."
}

pub(in crate::text) const fn not_earlier() -> &'static str {
    "Done now"
}

pub(in crate::text) const fn counts_as(ago: Ago) -> &'static str {
    match ago {
        Ago::Quarter => "The next tap is recorded as done 15 minutes ago.",
        Ago::Half => "The next tap is recorded as done half an hour ago.",
        Ago::Hour => "The next tap is recorded as done an hour ago.",
        Ago::TwoHours => "The next tap is recorded as done two hours ago.",
        Ago::Yesterday => "The next tap is recorded as done yesterday, at this time.",
    }
}
