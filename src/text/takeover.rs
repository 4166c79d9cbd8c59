//! A car that is left in the middle of the work, and whoever goes on with it.

use super::table::{phrases, sentences};

sentences! {
    /// What is said where a car is left, and where the work goes on.
    pub enum TakeOver, take_over {
        Leave => "Leave the car",
        Why => "What stops the work?",
        To => "Who goes on (empty: I come back)",
        Record => "Record it, leave the car",
        NothingLoose => "Nothing off or loose",
        AnsweredNo => "Answered no, or not looked at",
        WholeCar => "The car as a whole",
        RightPart => "The right part is here",
        HangsStraight => "It hangs straight",
        OneAxle => "Front and rear have specs of their own: one job for each axle.",
    }
}

phrases! {
    number_and_lot(number: &str, lot: &str) => "{number} {lot}",
    left_by(who: &str, left: &str) => "{who}. {left}",
    left_for(why: &str) => "The car was left: {why}",
    last_by(who: &str) => "Last at the car: {who}",
    handed_to(left: &str, to: &str) => "{left}; {to} goes on",
    goes_back(item: &str, what: &str, part: &str) => "{item}: {what}; goes back: {part}",
    at_corner(corner: &str, phase: &str) => "{corner} · {phase}",
}
