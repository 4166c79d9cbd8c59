//! Words of the rotor's thickness: the bench on the screen and its part of the report.

/// A word or a fixed sentence of the rotor's thickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ThickWord {
    /// Rotor thickness.
    Title,
    /// What is to be done.
    Say,
    /// Which micrometer?
    Micrometer,
    /// At the first place: does it close at zero?
    Zero,
    /// At the others: turn to it and measure.
    Measure,
    /// Measure once more.
    Again,
    /// Another measurement.
    Another,
    /// Thinnest.
    Thinnest,
    /// Thickest.
    Thickest,
    /// Variation.
    Variation,
    /// Thickness, as a column.
    Thickness,
    /// More than at the thinnest place, as a column.
    OverThinnest,
    /// The least thickness was not looked up, at the end of a sentence.
    NoLeast,
    /// The most variation was not looked up, at the end of a sentence.
    NoVariation,
    /// How sure the thinnest reading is.
    UncertainThinnest,
    /// How sure the variation is.
    UncertainVariation,
    /// Thickest less thinnest reading.
    Range,
    /// The order of the next steps is common practice.
    Common,
    /// Keep this reading.
    Keep,
}

impl ThickWord {
    /// Every one of them.
    pub const ALL: &'static [Self] = &[
        Self::Title,
        Self::Say,
        Self::Micrometer,
        Self::Zero,
        Self::Measure,
        Self::Again,
        Self::Another,
        Self::Thinnest,
        Self::Thickest,
        Self::Variation,
        Self::Thickness,
        Self::OverThinnest,
        Self::NoLeast,
        Self::NoVariation,
        Self::UncertainThinnest,
        Self::UncertainVariation,
        Self::Range,
        Self::Common,
        Self::Keep,
    ];
}
