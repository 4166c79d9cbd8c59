//! The failure modes of the standard that the findings lead to.

/// A failure mode, each a heading of ISO 15243:2017.
///
/// # Source
/// The list of headings alone: the text of the standard was not seen, and some numbers are from
/// memory. `tests/reference/11_iso15243_terms.json` says which.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FailureMode {
    /// Flakes that begin below the race.
    SubsurfaceFatigue,
    /// Flakes that begin at the surface.
    SurfaceFatigue,
    /// Smeared and scuffed.
    AdhesiveWear,
    /// Rust by water.
    MoistureCorrosion,
    /// Rust of a seat that moved under load.
    FrettingCorrosion,
    /// Dull dimples by vibration at rest.
    FalseBrinelling,
    /// Fluted by a small current over a long time.
    CurrentLeakageErosion,
    /// The family of dents; for those that have no heading of their own.
    PlasticDeformation,
    /// Dents by a load that was too high.
    OverloadDeformation,
    /// Dents by what was rolled over.
    ParticleIndentations,
    /// Broken at once.
    ForcedFracture,
    /// Broken by a crack that grew.
    FatigueFracture,
}

impl FailureMode {
    /// Every mode, in the order of the standard.
    pub const ALL: &'static [Self] = &[
        Self::SubsurfaceFatigue,
        Self::SurfaceFatigue,
        Self::AdhesiveWear,
        Self::MoistureCorrosion,
        Self::FrettingCorrosion,
        Self::FalseBrinelling,
        Self::CurrentLeakageErosion,
        Self::PlasticDeformation,
        Self::OverloadDeformation,
        Self::ParticleIndentations,
        Self::ForcedFracture,
        Self::FatigueFracture,
    ];

    /// The number of its heading; never printed, since some are from memory.
    pub const fn clause(self) -> &'static str {
        match self {
            Self::SubsurfaceFatigue => "5.1.2",
            Self::SurfaceFatigue => "5.1.3",
            Self::AdhesiveWear => "5.2.3",
            Self::MoistureCorrosion => "5.3.2",
            Self::FrettingCorrosion => "5.3.3.2",
            Self::FalseBrinelling => "5.3.3.3",
            Self::CurrentLeakageErosion => "5.4.3",
            Self::PlasticDeformation => "5.5",
            Self::OverloadDeformation => "5.5.2",
            Self::ParticleIndentations => "5.5.3",
            Self::ForcedFracture => "5.6.2",
            Self::FatigueFracture => "5.6.3",
        }
    }
}
