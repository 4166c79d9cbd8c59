//! Sentences of the screens that have values in them; the values come in formatted.

use super::table::phrases;

phrases! {
    round_of(n: u8, of: u8) => "Round {n} of {of}",
    swing_of(n: u8, of: u8) => "Swing {n} of {of}",
    step_of(n: usize, of: usize) => "Step {n} of {of}",
    nut_clicked(item: &str) => "{item} clicked",
    pass_progress(done: usize, of: usize) => "{done} of {of} at their card",
    set_wrench(wrench: &str, value: &str) => "Set {wrench} to {value}",
    card_and_wrench(card: &str, set: &str) => "Card {card}, wrench {set}",
    keep_value(value: &str) => "Keep {value}",
    same_value(value: &str) => "Same: {value}",
    also_value(value: &str) => "= {value}",
    play_from_two(push: &str, pull: &str, play: &str) =>
        "Pushed in {push}, pulled out {pull}: play {play}",
    spread_of(spread: &str) => "The rounds lie {spread} apart",
    can_prove(over_from: &str, within_to: &str) =>
        "This gauge can prove \"over\" from {over_from} and \"within\" up to {within_to}.",
    cannot_prove_within(over_from: &str) =>
        "This gauge can prove \"over\" from {over_from}. It cannot prove \"within\".",
    over_limit(play: &str, limit: &str, source: &str) =>
        "{play} is over the limit of {limit} ({source})",
    within_limit(play: &str, limit: &str, source: &str) =>
        "{play} is within the limit of {limit} ({source})",
    house_limit(limit: &str) => "House limit {limit} (common practice, no source)",
    due_on(what: &str, date: &str) => "{what}: due {date}",
    overdue_since(what: &str, date: &str) => "{what}: overdue since {date}",
    odometer_then(then: &str) => "at {then}",
    odometer_now(now: &str) => "the odometer stands at {now} now",
    retorque_due(date: &str, distance: &str) =>
        "By {date} or after {distance}, whichever comes first",
    loose_row(item: &str, state: &str) => "{item}: {state}",
    last_done(time: &str) => "Last done {time}",
    next_is(step: &str) => "Next: {step}",
    you_are_at(phase: &str, step: &str) => "{phase}: {step}",
    noted_later(done: &str, noted: &str) => "Done {done}, noted later at {noted}",
    undone_what(what: &str) => "Taken back: {what}",
    vin_ends(last: &str) => "The VIN ends in {last}",
    odometer_lower(last: &str) => "Lower than last time ({last}). Read it again.",
    card_from(document: &str, page: &str, date: &str) =>
        "{document}, page {page}, looked up {date}",
    not_looked_up_since(date: &str) => "Not looked up since {date}",
    no_wrench_for(item: &str, value: &str) => "{item}, {value}: no wrench on board fits",
    wrench_at_edge(wrench: &str, value: &str) => "{value} lies at the edge of {wrench}",
    price_repair(amount: &str) => "Whole repair: {amount}",
    price_refit(amount: &str) => "Inspection and reassembly: {amount}",
    agree_to(amount: &str) => "Yes, for {amount}",
    storage_used(used: &str, of: &str) => "{used} of {of} used",
    nothing_found_for(typed: &str) => "No job found for {typed}",
    told_twice(what: &str, one: &str, other: &str) =>
        "{what}: one phone says {one}, another says {other}. Choose one.",
    file_is_newer(version: &str) =>
        "The file is of version {version}. Update first. Nothing was changed.",
    photo_caption(step: &str, time: &str) => "{step}, {time}",
    dial_alt(value: &str) => "Dial at {value}",
}
