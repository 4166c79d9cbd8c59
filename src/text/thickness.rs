//! Words of the rotor's thickness: the bench on the screen and its part of the report.

use super::table::{phrases, sentences};

sentences! {
    /// A word or a fixed sentence of the rotor's thickness.
    pub enum ThickWord, thick {
        Title => "Rotor thickness",
        Say =>
            "Rotor clean on both sides. Measure at the runout places, as far from the edge as the manufacturer says; about 13 mm (1/2 in) is common practice.",
        Micrometer => "What is the micrometer's step?",
        Zero => "Check the micrometer's zero. Then measure at lug 1.",
        Measure => "Turn to this place, close by the ratchet, read.",
        Again => "Measure it again",
        Another => "Another measurement",
        Thinnest => "Thinnest",
        Thickest => "Thickest",
        Variation => "Variation",
        Thickness => "Thickness",
        OverThinnest => "Over the thinnest",
        NoLeast => "minimum thickness not looked up.",
        NoVariation => "limit not looked up.",
        UncertainThinnest => "Standard uncertainty, thinnest",
        UncertainVariation => "Standard uncertainty, variation",
        Range => "Thickest minus thinnest, with scatter",
        Common =>
            "The order of the next steps is common practice, no source. Without a certificate the micrometer's error is taken as 4 \u{b5}m (ISO 3611:1978, up to 50 mm; from memory).",
        Keep => "Save",
    }
}

phrases! {
    measurement_title(nth: u8) => "Rotor thickness, measurement {nth}",
    thinnest_at(value: &str, place: u8, against: &str) =>
        "Thinnest {value}, at place {place}: {against}",
    varies_by(value: &str, against: &str) => "It varies by {value}: {against}",
    thickness_alt(variation: &str) =>
        "How much thicker than at its thinnest place the rotor is; {variation} at most",
}
