//! What can make the complaint, what speaks for and against it, and the tests that tell.

use crate::words;

words! {
    /// What the customer complains of.
    pub enum Complaint {
        /// A hum or growl that comes with speed.
        Hum = "hum",
        /// Clicking in turns.
        Click = "click",
        /// A clunk or a loose feel.
        Clunk = "clunk",
        /// A shake or a pulse.
        Shake = "shake",
        /// The ABS or stability warning light.
        WarningLight = "warning_light",
    }
}

words! {
    /// What could cause a complaint.
    pub enum Cause {
        /// A wheel bearing.
        Bearing = "bearing",
        /// A tire.
        Tire = "tire",
        /// An outer CV joint.
        CvJoint = "cv_joint",
        /// A dragging brake, or its splash shield.
        BrakeDrag = "brake_drag",
        /// A ball joint.
        BallJoint = "ball_joint",
        /// A tie rod or the steering rack.
        TieRod = "tie_rod",
        /// The differential, transaxle or its carrier.
        Differential = "differential",
        /// A source that turns with the engine.
        Engine = "engine",
        /// Thickness variation of a rotor.
        Rotor = "rotor",
        /// Speed sensor, encoder or wiring.
        Sensor = "sensor",
        /// Loose wheel fasteners.
        LooseWheel = "loose_wheel",
        /// Something that this list does not name.
        Other = "other",
    }
}

impl Cause {
    /// How many there are.
    pub const COUNT: usize = Self::ALL.len();
}

words! {
    /// One thing that a test can show.
    pub enum Clue {
        /// Rises with road speed, the same in every gear.
        RisesWithSpeed = "rises_with_speed",
        /// Its note changes with the road surface.
        ChangesWithSurface = "changes_with_surface",
        /// Louder on a gentle steer one way, softer the other, each time.
        SwerveOneWay = "swerve_one_way",
        /// No change in a swerve either way.
        SwerveNoChange = "swerve_no_change",
        /// The same when coasting in neutral.
        SameInNeutral = "same_in_neutral",
        /// Changes between drive and coast.
        DriveCoast = "drive_coast",
        /// There when parked, and follows the engine's speed.
        WhenParked = "when_parked",
        /// Clicks at full lock under power.
        ClicksAtLock = "clicks_at_lock",
        /// Light braking at speed changes or quiets it.
        BrakeChanges = "brake_changes",
        /// A pulse while braking and only then.
        PulseBraking = "pulse_braking",
        /// A shake between 45 and 65 mph without braking and without hum.
        ShakeAtSpeed = "shake_at_speed",
        /// Play at 12-6 and 9-3 that is gone with the brake held.
        PlayGone = "play_gone",
        /// Play at 12-6 that stays with the brake held.
        PlayUprightStays = "play_upright_stays",
        /// Play at 9-3 alone that stays with the brake held.
        PlayAcrossStays = "play_across_stays",
        /// No play in any direction.
        NoPlay = "no_play",
        /// A grumble through spring or knuckle when spun by hand.
        Grumble = "grumble",
        /// A scrape once a turn.
        Scrape = "scrape",
        /// Clip-on pickups: this hub is clearly the loudest.
        LoudestHub = "loudest_hub",
        /// This hub is at least 15 °C above the other side after little braking.
        HotHub = "hot_hub",
        /// The rotor is hotter than its hub.
        RotorHotter = "rotor_hotter",
        /// A grease or rust streak at the bearing's seal, or a seal that walked out.
        SealStreak = "seal_streak",
        /// A torn CV boot, grease on the rim.
        TornBoot = "torn_boot",
        /// A cupped or feathered tread under the palm.
        CuppedTread = "cupped_tread",
        /// The noise moved when the tires were swapped.
        MovedWithTire = "moved_with_tire",
        /// The noise did not change when the tires were swapped.
        StayedAfterSwap = "stayed_after_swap",
        /// This wheel's speed drops out, or ABS works near a stop without need.
        SpeedDropsOut = "speed_drops_out",
        /// The dial is above the limit by more than its uncertainty.
        DialOver = "dial_over",
        /// The dial is well inside the limit.
        DialInside = "dial_inside",
        /// It began after a pothole, a curb or a flood.
        AfterImpact = "after_impact",
        /// The wheel was off within the last 100 miles, and it clunks or wobbles.
        WheelWasOff = "wheel_was_off",
        /// Bearing work on this corner within the last 12 months.
        RecentWork = "recent_work",
    }
}

impl Clue {
    /// How many there are.
    pub const COUNT: usize = Self::ALL.len();

    /// The test that shows it.
    pub const fn test(self) -> Test {
        match self {
            Self::RisesWithSpeed => Test::Speed,
            Self::ChangesWithSurface => Test::Surface,
            Self::SwerveOneWay | Self::SwerveNoChange => Test::Swerve,
            Self::SameInNeutral => Test::Neutral,
            Self::DriveCoast => Test::DriveCoast,
            Self::WhenParked => Test::Parked,
            Self::ClicksAtLock => Test::FullLock,
            Self::BrakeChanges => Test::LightBrake,
            Self::PulseBraking => Test::Braking,
            Self::ShakeAtSpeed => Test::Shake,
            Self::PlayGone | Self::PlayUprightStays | Self::PlayAcrossStays | Self::NoPlay => {
                Test::Rock
            }
            Self::Grumble => Test::HandSpin,
            Self::Scrape => Test::Scrape,
            Self::LoudestHub => Test::Pickups,
            Self::HotHub => Test::HubHeat,
            Self::RotorHotter => Test::RotorHeat,
            Self::SealStreak => Test::Seal,
            Self::TornBoot => Test::Boot,
            Self::CuppedTread => Test::Tread,
            Self::MovedWithTire | Self::StayedAfterSwap => Test::TireSwap,
            Self::SpeedDropsOut => Test::LiveData,
            Self::DialOver | Self::DialInside => Test::Dial,
            Self::AfterImpact => Test::Impact,
            Self::WheelWasOff => Test::WheelOff,
            Self::RecentWork => Test::Work,
        }
    }

    /// The clue that says much the same: of the two the larger weight counts, not the sum.
    pub const fn twin(self) -> Option<Self> {
        match self {
            Self::PlayGone => Some(Self::DialOver),
            Self::DialOver => Some(Self::PlayGone),
            Self::Grumble => Some(Self::LoudestHub),
            Self::LoudestHub => Some(Self::Grumble),
            Self::MovedWithTire => Some(Self::StayedAfterSwap),
            Self::StayedAfterSwap => Some(Self::MovedWithTire),
            Self::HotHub => Some(Self::RotorHotter),
            Self::RotorHotter => Some(Self::HotHub),
            _ => None,
        }
    }
}

words! {
    /// What a technician can try, look at or ask.
    pub enum Test {
        /// Does it rise with road speed, in every gear?
        Speed = "speed",
        /// Does another surface change it?
        Surface = "surface",
        /// A gentle swerve both ways.
        Swerve = "swerve",
        /// Coasting in neutral.
        Neutral = "neutral",
        /// Drive against coast, in gear.
        DriveCoast = "drive_coast",
        /// Parked, engine revved.
        Parked = "parked",
        /// Slow, full lock, under power.
        FullLock = "full_lock",
        /// Light brake at speed.
        LightBrake = "light_brake",
        /// Braking: is there a pulse?
        Braking = "braking",
        /// 45 to 65 mph without braking: does it shake?
        Shake = "shake",
        /// Wheel pulled at 12-6 and 9-3, again with the brake held.
        Rock = "rock",
        /// Wheel spun by hand, fingertips on the spring.
        HandSpin = "hand_spin",
        /// Wheel spun by hand: does it scrape once a turn?
        Scrape = "scrape",
        /// Clip-on pickups at the knuckles.
        Pickups = "pickups",
        /// Hub temperatures, left against right.
        HubHeat = "hub_heat",
        /// Rotor temperature against its hub.
        RotorHeat = "rotor_heat",
        /// A look at the bearing's seal.
        Seal = "seal",
        /// A look at the CV boot.
        Boot = "boot",
        /// A palm over the tread.
        Tread = "tread",
        /// Tires swapped front to rear, and driven.
        TireSwap = "tire_swap",
        /// Live data of all four wheel speeds.
        LiveData = "live_data",
        /// Dial indicator against the limit.
        Dial = "dial",
        /// Asked: a pothole, a curb, a flood?
        Impact = "impact",
        /// Asked: was the wheel off lately?
        WheelOff = "wheel_off",
        /// Asked: bearing work at this corner lately?
        Work = "work",
    }
}

impl Test {
    /// What it can show.
    pub fn clues(self) -> impl Iterator<Item = Clue> {
        let all = Clue::ALL.iter().copied();
        all.filter(move |clue| clue.test() == self)
    }

    /// Whether it is tried at one corner, and not on the vehicle as it drives.
    pub const fn is_local(self) -> bool {
        matches!(
            self,
            Self::Rock
                | Self::HandSpin
                | Self::Scrape
                | Self::Pickups
                | Self::HubHeat
                | Self::RotorHeat
                | Self::Seal
                | Self::Boot
                | Self::Tread
                | Self::LiveData
                | Self::Dial
                | Self::WheelOff
                | Self::Work
        )
    }

    /// Whether it shows one thing or not, so that a No is news of its own.
    pub fn is_plain(self) -> bool {
        self.clues().count() == 1
    }
}
