//! What a van has of a part when somebody counted it.

/// So many are on board, and so many old ones wait to be sent back; what is fitted later is
/// counted down from here.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Stock {
    /// The part's number.
    pub number: String,
    /// How many were on board.
    pub have: u16,
    /// Below so many it is ordered again.
    pub least: u16,
    /// How many old parts were on board that the seller takes back.
    pub cores: u16,
}
