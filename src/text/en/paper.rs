//! What is said of a job that goes from phone to phone on paper.

use crate::text::paper::Paper;

/// One sentence or label.
pub(in crate::text) fn paper(say: Paper) -> String {
    let fixed = match say {
        Paper::Title => "From paper",
        Paper::Say => {
            "The code on the owner's tear-off brings cards, readings and what is due to this phone."
        }
        Paper::TakePicture => "Photograph the code",
        Paper::Paste => "Paste the text that a camera shows for the code",
        Paper::Read => "Read the text",
        Paper::NotFound => {
            "No code was found. Hold the paper flat, fill the picture with the code, add light. Nothing was changed."
        }
        Paper::NotOurs => "This is not the code of a Hubslate report. Nothing was changed.",
        Paper::Newer => "The paper is from a newer version. Update first. Nothing was changed.",
        Paper::Damaged => {
            "The text is cut off or changed: its check differs. Read the code again. Nothing was changed."
        }
        Paper::Here => "This job is here already. Paper adds nothing to it.",
        Paper::Taken => "Taken from paper. Compare it with the car before you work by it.",
        Paper::ReceiptTaken => "The yard's receipt was taken.",
        Paper::ReceiptHere => "This receipt is here already.",
        Paper::NotKept => "It could not be kept. Nothing was changed.",
        Paper::FromPaper => "Read from paper",
        Paper::FromPaperSay => {
            "These are the words of an earlier visit's paper. Nobody measured them on this phone."
        }
        Paper::PaperDigest => "Digest of that record",
        Paper::CodeSay => {
            "Another phone with Hubslate reads this code: cards, readings, decision and what is due, nobody's name."
        }
        Paper::TooMuch => "This job is too long for a code. Ask us for its file.",
        Paper::WheelNuts => "Lug nuts",
        Paper::Agreed => "Repair agreed",
        Paper::Declined => "Repair declined",
        Paper::Next { nth, of } => {
            return format!("Read. Now code {nth} of {of}.");
        }
        Paper::CodesSay { of } => {
            return format!(
                "Another phone with Hubslate reads these {of} codes, one after the other: cards, readings, decision and what is due, nobody's name."
            );
        }
        Paper::CodeOf { nth, of } => return format!("{nth} of {of}"),
        Paper::Rounds { plays, way } => return format!("{plays} ({way})"),
    };
    fixed.to_owned()
}
