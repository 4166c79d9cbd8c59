//! What is said of a job that goes from phone to phone on paper; the sentences in `en/paper.rs`.

/// One sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper<'a> {
    /// Above the ways to read a paper.
    Title,
    /// What it is for.
    Say,
    /// The key that takes a picture of the code.
    TakePicture,
    /// Above the box for the text.
    Paste,
    /// The key that reads the box.
    Read,
    /// No code was found in the picture.
    NotFound,
    /// The text is of something else.
    NotOurs,
    /// The text is of a newer version.
    Newer,
    /// The text is cut or changed.
    Damaged,
    /// This phone knows the job already.
    Here,
    /// It was taken.
    Taken,
    /// It is a receipt, and was taken.
    ReceiptTaken,
    /// It is a receipt that is here already.
    ReceiptHere,
    /// It could not be kept.
    NotKept,
    /// Which symbol comes next.
    Next {
        /// Which, from 1.
        nth: usize,
        /// Of how many.
        of: usize,
    },
    /// Heading of what was read from paper.
    FromPaper,
    /// That nobody measured it here.
    FromPaperSay,
    /// The digest of the record that the paper was printed from.
    PaperDigest,
    /// Beside the code.
    CodeSay,
    /// Beside several codes.
    CodesSay {
        /// How many.
        of: usize,
    },
    /// Instead of a code.
    TooMuch,
    /// Under one of several codes.
    CodeOf {
        /// Which, from 1.
        nth: usize,
        /// Of how many.
        of: usize,
    },
    /// The wheel nuts, for who tightens them again.
    WheelNuts,
    /// What was read round by round.
    Rounds {
        /// The plays with their unit.
        plays: &'a str,
        /// Method, place and rig.
        way: &'a str,
    },
    /// That the owner agreed to the repair.
    Agreed,
    /// That the owner declined it.
    Declined,
}
