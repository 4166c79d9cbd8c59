//! What is loose, what does its spec card say, which wrench, in which order, is it plausible?
use crate::words;
words! {
    /// What a card is about.
    pub enum CardItem { AxleNut = "axle_nut", HubBolts = "hub_bolts", BracketBolts = "bracket_bolts", CaliperPins = "caliper_pins", WheelNuts = "wheel_nuts", PlayLimit = "play_limit" }
}
/// Stub.
#[derive(Clone, Debug, PartialEq)]
pub struct SpecCard {
    /// Item.
    pub item: CardItem,
}
/// Stub.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrench {
    /// Name.
    pub name: String,
}
