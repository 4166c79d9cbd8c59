//! What is said of a job that goes from phone to phone on paper.

use super::table::templates;

templates! {
    /// One sentence.
    pub enum Paper<'a>, paper {
        Title => "From paper",
        Say =>
            "The code on the customer's tear-off brings specs, readings and due dates to this phone.",
        TakePhoto => "Photograph the code",
        Paste => "Paste the text that a camera shows for the code",
        Read => "Read the text",
        NotFound =>
            "No code was found. Hold the paper flat, fill the photo with the code, add light. Nothing was changed.",
        NotOurs => "This is not the code of a Hubslate report. Nothing was changed.",
        Newer => "The paper is from a newer version. Update first. Nothing was changed.",
        Damaged =>
            "The text is cut off or changed: its check differs. Read the code again. Nothing was changed.",
        Here => "This job is here already. Paper adds nothing to it.",
        Taken => "Taken from paper. Compare it with the car before you work by it.",
        ConfirmationTaken => "Shop confirmation imported.",
        ConfirmationHere => "This confirmation is here already.",
        SaveError => "It could not be saved. Nothing was changed.",
        Next { nth: usize, of: usize } => format!("Read. Now code {nth} of {of}."),
        FromPaper => "Read from paper",
        FromPaperSay =>
            "From the paper of an earlier visit. They were not measured on this phone.",
        PaperDigest => "Digest of that record",
        CodeSay =>
            "Another phone with Hubslate reads this code: specs, readings, decision and what is due, no name.",
        CodesSay { of: usize } =>
            format!("Another phone with Hubslate reads these {of} codes, one after the other: specs, readings, decision and what is due, no name."),
        TooMuch => "This job is too long for a code. Ask us for its file.",
        CodeOf { nth: usize, of: usize } => format!("{nth} of {of}"),
        Rounds { plays: &'a str, way: &'a str } => format!("{plays} ({way})"),
        Agreed => "Repair approved",
        Declined => "Repair declined",
    }
}
