//! What the card book says beside the cards themselves.

use crate::words;

words! {
    /// A key label or a sentence of the card book.
    pub enum BookWord {
        /// The name of the screen.
        Title = "title",
        /// What it is for.
        Say = "say",
        /// No card is kept yet.
        Empty = "empty",
        /// The key that makes the file.
        Export = "export",
        /// The way to a file of another phone.
        TakeIn = "take_in",
        /// It was looked up today.
        Today = "today",
        /// Two phones say different things of one thing.
        Differ = "differ",
        /// The card of another phone.
        OtherCard = "other_card",
        /// What counts as a click.
        Clicks = "clicks",
        /// The swings of an angle are kept while it is turned.
        SwingsKept = "swings_kept",
        /// The swings are counted from nothing again.
        SwingsAnew = "swings_anew",
        /// A closed wheel end is opened before it is measured again.
        OpensAgain = "opens_again",
    }
}
