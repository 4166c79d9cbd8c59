//! What can be seen on a part, and what it points to: a row each.

use super::FailureMode as Mode;
use crate::words;

words! {
    /// What is seen on the removed part, one sight each.
    pub enum Finding {
        /// Red grease or water at the seal.
        RedGrease = "red_grease",
        /// Blue or straw colored, cage melted, grease black.
        HeatColors = "heat_colors",
        /// A bloom of rust where it sat in the knuckle.
        SeatBloom = "seat_bloom",
        /// The inner rings have turned, marks at their gap.
        RingsTurned = "rings_turned",
        /// Dents or gouges at one spot, a bruised shoulder.
        BruisedSpot = "bruised_spot",
        /// Flange or stud broken, with beach marks.
        BeachMarks = "beach_marks",
        /// Broken clean, without beach marks.
        CleanBreak = "clean_break",
        /// The lip of a seal cut or out of its place.
        SealCut = "seal_cut",
        /// The encoder ring scratched.
        EncoderScratched = "encoder_scratched",
        /// Dents as far apart as the rolling elements, with a raised rim.
        SpacedDents = "spaced_dents",
        /// Dull shallow dimples with rust-red powder and no raised rim.
        DullDimples = "dull_dimples",
        /// Brown etched lines as far apart as the rolling elements.
        EtchedLines = "etched_lines",
        /// Flaked in the loaded zone.
        Flaked = "flaked",
        /// Flaked, beginning at a dent.
        FlakedAtDent = "flaked_at_dent",
        /// Many small dents of any size, grit in the grease.
        GritDents = "grit_dents",
        /// Grooves across the race, like a washboard.
        Washboard = "washboard",
    }
}

words! {
    /// The likely cause that a finding points to, as a shop counts it.
    pub enum LikelyCause {
        /// Water past a seal.
        Water = "water",
        /// Too hot: preload, no grease, or a brake that drags.
        Overheated = "overheated",
        /// A poor seat in the knuckle.
        Seat = "seat",
        /// The axle nut loose, or rolled on before it was at spec.
        LooseNut = "loose_nut",
        /// Dropped, pried or pulled crooked.
        Handling = "handling",
        /// A loose wheel or an overtightened stud.
        WheelClamp = "wheel_clamp",
        /// An impact tool or a crash.
        Impact = "impact",
        /// A tool slipped, or it was pressed from the wrong side.
        ToolSlip = "tool_slip",
        /// A blow or a press force through the rolling elements.
        Blow = "blow",
        /// Vibration at rest.
        Vibration = "vibration",
        /// Age, load or wheel offset.
        AgeOrLoad = "age_or_load",
        /// An earlier dent, dirt or low grease.
        EarlierDamage = "earlier_damage",
        /// Dirt inside.
        Dirt = "dirt",
        /// An electric current.
        Current = "current",
    }
}

/// Where a finding shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// On a part as it came off.
    Outside,
    /// On races and rolling elements, which a closed part does not show.
    Inside,
}

/// All that is true of one finding.
struct Row {
    spot: Spot,
    modes: &'static [Mode],
    cause: LikelyCause,
}

const fn outside(modes: &'static [Mode], cause: LikelyCause) -> Row {
    let spot = Spot::Outside;
    Row { spot, modes, cause }
}

const fn inside(modes: &'static [Mode], cause: LikelyCause) -> Row {
    let spot = Spot::Inside;
    Row { spot, modes, cause }
}

impl Finding {
    /// # Source
    /// Which mode a sight belongs to: the names of the modes of ISO 15243 (second-hand), and the
    /// common practice of the trade, no source, for the causes. Dents by grit: common practice,
    /// no source. Damage by a tool at a seal or an encoder is no mode of that standard.
    const fn row(self) -> Row {
        match self {
            Self::RedGrease => outside(&[Mode::MoistureCorrosion], LikelyCause::Water),
            Self::HeatColors => outside(&[Mode::AdhesiveWear], LikelyCause::Overheated),
            Self::SeatBloom => outside(&[Mode::FrettingCorrosion], LikelyCause::Seat),
            Self::RingsTurned => outside(
                &[Mode::AdhesiveWear, Mode::FrettingCorrosion],
                LikelyCause::LooseNut,
            ),
            Self::BruisedSpot => outside(&[Mode::PlasticDeformation], LikelyCause::Handling),
            Self::BeachMarks => outside(&[Mode::FatigueFracture], LikelyCause::WheelClamp),
            Self::CleanBreak => outside(&[Mode::ForcedFracture], LikelyCause::Impact),
            Self::SealCut | Self::EncoderScratched => outside(&[], LikelyCause::ToolSlip),
            Self::SpacedDents => inside(&[Mode::OverloadDeformation], LikelyCause::Blow),
            Self::DullDimples => inside(&[Mode::FalseBrinelling], LikelyCause::Vibration),
            Self::EtchedLines => inside(&[Mode::MoistureCorrosion], LikelyCause::Water),
            Self::Flaked => inside(&[Mode::SubsurfaceFatigue], LikelyCause::AgeOrLoad),
            Self::FlakedAtDent => inside(&[Mode::SurfaceFatigue], LikelyCause::EarlierDamage),
            Self::GritDents => inside(&[Mode::ParticleIndentations], LikelyCause::Dirt),
            Self::Washboard => inside(&[Mode::CurrentLeakageErosion], LikelyCause::Current),
        }
    }

    /// Where it shows.
    pub const fn spot(self) -> Spot {
        self.row().spot
    }

    /// The modes that it points to, the main one first; none where the standard has no heading.
    pub const fn modes(self) -> &'static [Mode] {
        self.row().modes
    }

    /// The likely cause.
    pub const fn cause(self) -> LikelyCause {
        self.row().cause
    }
}

impl LikelyCause {
    /// The modes of the findings that point to it, in the order of the standard.
    pub fn modes(self) -> Vec<Mode> {
        let found = Finding::ALL.iter().filter(|it| it.cause() == self);
        let all: Vec<Mode> = found.flat_map(|it| it.modes()).copied().collect();
        let in_order = Mode::ALL.iter().filter(|mode| all.contains(mode));
        in_order.copied().collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_cause_is_pointed_to_and_every_mode_is_reached() {
        for cause in LikelyCause::ALL {
            let points = Finding::ALL.iter().any(|it| it.cause() == *cause);
            assert!(points, "{}", cause.code());
        }
        for mode in Mode::ALL {
            let leads = Finding::ALL.iter().any(|it| it.modes().contains(mode));
            assert!(leads, "{mode:?}");
        }
    }

    #[test]
    fn what_races_alone_can_show_is_never_read_off_a_closed_part() {
        // Dents at the pitch of the elements, dimples, etched lines, flakes, grit and fluting are
        // all on the races (common practice, no source).
        let inside = Finding::ALL.iter().filter(|it| it.spot() == Spot::Inside);
        assert_eq!(inside.count(), 7);
        assert_eq!(Finding::Flaked.spot(), Spot::Inside);
        assert_eq!(Finding::SealCut.spot(), Spot::Outside);
    }

    #[test]
    fn modes_of_a_cause_are_those_of_its_findings() {
        assert_eq!(LikelyCause::Water.modes(), [Mode::MoistureCorrosion]);
        let loose = [Mode::AdhesiveWear, Mode::FrettingCorrosion];
        assert_eq!(LikelyCause::LooseNut.modes(), loose);
        assert_eq!(LikelyCause::ToolSlip.modes(), []);
    }
}
