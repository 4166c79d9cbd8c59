//! What the screen of a removed part says.

use super::table::{phrases, sentences};

sentences! {
    /// A title, a question or a sentence at a removed part.
    pub enum RemovedWord, removed {
        Title => "Read removed part",
        OnReport => "Removed part",
        HowAsk => "How was it inspected?",
        CutCaution =>
            "Cut it open only after the customer approved it. A closed part shows nothing of its races.",
        SeenAsk => "What is visible?",
        SeenSay => "Tap what you see; tap again to take it back. Nothing tapped: nothing visible.",
        NoneHere => "No part was removed at this corner.",
        NothingVisible => "Nothing visible",
        Counts => "Removed parts: likely causes",
        CountsSay =>
            "Of the removed parts that were inspected, with the failure modes of ISO 15243:2017. Suspected, unless cut open. One part may point to several causes.",
    }
}

phrases! {
    read_part_at(corner: &str) => "Read removed part: {corner}",
}
