//! Sentences of the screens that have values in them; the values come in formatted.

use super::table::phrases;

phrases! {
    round_of(n: u8, of: u8) => "Cycle {n} of {of}",
    step_of(n: usize, of: usize) => "Step {n} of {of}",
    skipped(because: &str) => "Not done. Reason: {because}",
    how_far(phase: &str, step: usize, steps: usize, part: usize, parts: usize) =>
        "{phase}: step {step} of {steps}, part {part} of {parts} of the job",
    undone(what: &str) => "Undone: {what}",
    nut_clicked(item: &str) => "{item} clicked",
    pass_progress(done: usize, of: usize) => "{done} of {of} at spec",
    set_wrench(wrench: &str, value: &str) => "Set {wrench} to {value}",
    keep_value(value: &str) => "Save {value}",
    same_value(value: &str) => "Same: {value}",
    also_value(value: &str) => "= {value}",
    spread_of(spread: &str) => "The cycles are {spread} apart",
    can_prove(over_from: &str, within_to: &str) =>
        "This dial can prove \"over\" from {over_from} and \"within\" up to {within_to}.",
    cannot_prove_within(over_from: &str) =>
        "This dial can prove \"over\" from {over_from}. It cannot prove \"within\".",
    house_limit(limit: &str) => "Default limit {limit} (common practice, no source)",
    due_on(what: &str, date: &str) => "{what}: due {date}",
    overdue_since(what: &str, date: &str) => "{what}: overdue since {date}",
    odometer_lower(last: &str) => "Lower than last time ({last}). Read it again.",
    odometer_then(then: &str) => "at {then}",
    odometer_now(now: &str) => "the odometer reads {now} now",
    retorque_due(date: &str, distance: &str) =>
        "By {date} or after {distance}, whichever comes first",
    loose_row(item: &str, state: &str) => "{item}: {state}",
    you_are_at(phase: &str, step: &str) => "{phase}: {step}",
    noted_later(done: &str, noted: &str) => "Done {done}, noted later at {noted}",
    price_repair(amount: &str) => "Full repair: {amount}",
    price_refit(amount: &str) => "Inspection and reassembly: {amount}",
    agree_to(amount: &str) => "Yes, for {amount}",
    storage_used(used: &str, of: &str) => "{used} of {of} used",
    nothing_found_for(typed: &str) => "No job found for {typed}",
    photo_caption(step: &str, time: &str) => "{step}, {time}",
    dial_alt(value: &str) => "Dial at {value}",
}
