//! Words of the ranking of causes.

use super::table::{phrases, sentences};

sentences! {
    /// A word or a fixed sentence of the ranking of causes.
    pub enum CauseWord, cause_word {
        Title => "Find the cause",
        Asks => "What does the customer complain of?",
        Change => "Another complaint",
        Parked => "Fill this in at a standstill, or let a passenger do it. Never while driving.",
        NotYet => "Cannot be separated yet. The next tests say most.",
        Next => "Best next tests",
        NoTest => "Every test has an answer.",
        AtStep => "Open its step",
        Others => "All other tests",
        Why => "Why: what speaks for and against",
        NoClue => "Nothing was tried yet.",
        For => "for",
        Against => "against",
        Corner => "Which corner, if it is a bearing",
        CornerSay => "A swerve to the right loads the left side and the other way round. It does not separate front from rear, and a damaged inner row can be louder on the unloaded side.",
        CornerOpen => "Front and rear are not separated yet.",
        Common => "The weights are common practice, no source. The ranking decides nothing: hands and dial indicator do. No play never clears a bearing.",
        Took => "Not done",
    }
}

phrases! {
    cause_first(cause: &str, chance: &str, firm: u8) =>
        "{cause}: {chance}. First in {firm} of 100 when every weight is shaken by a step.",
    cause_chance(cause: &str, chance: &str) => "{cause} {chance}",
    cause_led(answer: &str, cause: &str, chance: &str) => "{answer}: {cause} {chance}",
    cause_minutes(minutes: u8) => "about {minutes} min",
    cause_asked(step: &str) => "Asked at the step: {step}",
    cause_steps(clue: &str, which: &str, times: &str) => "{clue}: {which}, {times} times",
    clue_absent(clue: &str) => "not found: {clue}",
    corner_chance(corner: &str, chance: &str) => "{corner} {chance}",
}
