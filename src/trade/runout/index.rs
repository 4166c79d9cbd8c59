//! On which stud should the rotor sit, so that its wobble and the hub's work against each other?
//!
//! Hole 1 of the rotor on stud 1 + k turns the rotor's own wave on by k studs; the hub's stays.

use super::arrow::Arrow;
use crate::sorted::Sorted;
use crate::units::{Angle, AngleUnit, Length};

/// How many studs a hub has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Studs(u8);

/// Why no position can be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum IndexError {
    /// A hub has between 3 and 10 studs.
    Studs {
        /// What was given.
        given: u8,
    },
    /// Both were measured in the same position, which says nothing of hub and rotor apart.
    SamePosition,
}

/// What the positions are told from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MeasuredAs {
    /// Hub and rotor, each by itself and both at the same radius (`geometry::scaled_by_radius`).
    Apart {
        /// The hub's own wobble.
        hub: Arrow,
        /// The rotor's own, with its hole 1 on stud 1.
        rotor: Arrow,
    },
    /// The hub by itself, at the radius of the rotor's reading, and the rotor on it with the stud,
    /// from 0, that hole 1 sat on.
    OnHub {
        /// The hub's own wobble there.
        hub: Arrow,
        /// The rotor on it.
        rotor: (u8, Arrow),
    },
    /// The rotor on the hub in two positions, each with the stud, from 0, that hole 1 sat on.
    Assembled {
        /// One of them.
        one: (u8, Arrow),
        /// The other.
        other: (u8, Arrow),
    },
}

/// The rotor in one position on its hub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// The stud, from 0, that the rotor's hole 1 sits on.
    pub stud: u8,
    /// The wobble that is to be expected.
    pub wobble: Arrow,
}

impl Studs {
    /// A count of studs.
    ///
    /// # Errors
    /// [`IndexError::Studs`] outside 3 to 10.
    pub fn new(given: u8) -> Result<Self, IndexError> {
        if (3..=10).contains(&given) {
            Ok(Self(given))
        } else {
            Err(IndexError::Studs { given })
        }
    }

    /// How many.
    pub const fn count(self) -> u8 {
        self.0
    }

    /// The studs, from 0, on both sides of an angle; one of them twice within a tenth of a step.
    pub fn beside(self, angle: Angle) -> (u8, u8) {
        let steps = angle.in_unit(AngleUnit::Turn).rem_euclid(1.0) * f64::from(self.0);
        let near = steps.round();
        // At most ten studs; the cast only drops what is behind the point.
        let stud = |steps: f64| steps as u8 % self.0;
        if (steps - near).abs() <= 0.1 {
            (stud(near), stud(near))
        } else {
            (stud(steps), stud(steps + 1.0))
        }
    }

    /// The angle from stud 1 to a stud counted from 0.
    pub fn angle(self, stud: u8) -> Angle {
        let turn = f64::from(stud) / f64::from(self.0);
        Angle::new(turn, AngleUnit::Turn).unwrap_or(Angle::ZERO)
    }
}

/// The wobble to be expected in every position, the smallest first.
///
/// Apart, it is the hub's arrow and the rotor's, turned. From the hub `h` and the rotor on it `m`
/// at `a` it is `m·t + h·(1 − t)` with `t = w / w_a`. From two positions `a` and `b` it is
/// `(m_a (w_b − w) + m_b (w − w_a)) / (w_b − w_a)` with `w = e^(2πi·stud/studs)`, so that each
/// reading is counted once in its uncertainty.
///
/// # Errors
/// [`IndexError::SamePosition`] if two assembled readings were not of two positions.
///
/// # Source
/// Two linear equations in two arrows; `tests/reference/03_runout.json` has it by brute force.
pub fn positions(told: &MeasuredAs, studs: Studs) -> Result<Vec<Position>, IndexError> {
    let mut positions = Vec::with_capacity(usize::from(studs.0));
    for stud in 0..studs.0 {
        let wobble = match told {
            MeasuredAs::Apart { hub, rotor } => hub.plus(&rotor.turned(studs.angle(stud))),
            MeasuredAs::OnHub { hub, rotor } => {
                let on = (stud + studs.0 - rotor.0 % studs.0) % studs.0;
                let of_hub = Turn::between(studs, on, 0).of(hub);
                rotor.1.turned(studs.angle(on)).plus(&of_hub)
            }
            MeasuredAs::Assembled { one, other } => {
                let between = Turn::between(studs, one.0, other.0);
                let whole = between.inverse()?;
                let from_one = Turn::between(studs, stud, other.0).times(whole);
                let from_other = Turn::between(studs, one.0, stud).times(whole);
                from_one.of(&one.1).plus(&from_other.of(&other.1))
            }
        };
        positions.push(Position { stud, wobble });
    }
    Ok(best_first(positions))
}

/// The hub's own wobble and the rotor's, from the rotor on the hub in two positions.
///
/// # Errors
/// [`IndexError::SamePosition`] if they are the same.
pub fn separate(
    studs: Studs,
    one: (u8, Arrow),
    other: (u8, Arrow),
) -> Result<(Arrow, Arrow), IndexError> {
    let whole = Turn::between(studs, one.0, other.0).inverse()?;
    let rotor = whole.of(&other.1.minus(&one.1));
    let hub = other.1.turned(studs.angle(one.0));
    let hub = one.1.turned(studs.angle(other.0)).minus(&hub);
    Ok((whole.of(&hub), rotor))
}

/// Waves that differ by less than rounding leaves are alike; of these the lower stud comes first.
fn best_first(mut positions: Vec<Position>) -> Vec<Position> {
    let height = |position: &Position| position.wobble.amplitude().mm();
    positions.order_by(|a, b| height(a).total_cmp(&height(b)));
    let largest = positions.last().map_or(0.0, height);
    let alike = |a: &Position, b: &Position| height(b) - height(a) <= 1e-9 * largest;
    for group in positions.chunk_by_mut(alike) {
        group.order_by_key(|position| position.stud);
    }
    positions
}

/// A factor for arrows: so many times as long, and turned on.
#[derive(Clone, Copy)]
struct Turn {
    factor: f64,
    by: Angle,
}

impl Turn {
    /// `w_to − w_from` on the circle of studs: the chord between them, with its direction.
    fn between(studs: Studs, from: u8, to: u8) -> Self {
        let (from, to) = (studs.angle(from % studs.0), studs.angle(to % studs.0));
        let half = to.minus(from).times(0.5);
        let quarter = Angle::new(0.25, AngleUnit::Turn).unwrap_or(Angle::ZERO);
        Self {
            factor: 2.0 * half.in_unit(AngleUnit::Degree).to_radians().sin(),
            by: from.plus(half).plus(quarter),
        }
    }

    fn inverse(self) -> Result<Self, IndexError> {
        if self.factor == 0.0 {
            return Err(IndexError::SamePosition);
        }
        Ok(Self {
            factor: 1.0 / self.factor,
            by: self.by.times(-1.0),
        })
    }

    fn times(self, other: Self) -> Self {
        Self {
            factor: self.factor * other.factor,
            by: self.by.plus(other.by),
        }
    }

    fn of(self, arrow: &Arrow) -> Arrow {
        arrow.scaled(self.factor).turned(self.by)
    }
}

impl Position {
    /// What the needle would move by the wobble alone, as it comes out of the readings.
    pub fn reach(&self) -> Length {
        self.wobble.reach()
    }

    /// The same freed of what scatter adds to it.
    pub fn expected(&self) -> Length {
        let reach = self.wobble.expected();
        reach.map_or_else(|_| self.reach(), |reach| reach.estimate())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn arrow(mm: f64, degrees: f64) -> Arrow {
        Arrow::known(
            Length::millimetres(mm),
            Angle::new(degrees, AngleUnit::Degree).unwrap(),
            Length::millimetres(0.002),
        )
    }

    #[test]
    fn a_hub_has_three_to_ten_studs() {
        assert_eq!(Studs::new(2), Err(IndexError::Studs { given: 2 }));
        assert_eq!(Studs::new(11), Err(IndexError::Studs { given: 11 }));
        assert_eq!(Studs::new(5).map(Studs::count), Ok(5));
    }

    #[test]
    fn the_same_position_twice_says_nothing() {
        let studs = Studs::new(5).unwrap();
        let (one, other) = ((1, arrow(0.03, 10.0)), (6, arrow(0.02, 50.0)));
        assert_eq!(separate(studs, one, other), Err(IndexError::SamePosition));
        let told = MeasuredAs::Assembled { one, other };
        assert_eq!(positions(&told, studs), Err(IndexError::SamePosition));
    }

    #[test]
    fn an_angle_lies_between_two_studs_or_at_one() {
        let studs = Studs::new(5).unwrap();
        let beside = |degrees| studs.beside(Angle::new(degrees, AngleUnit::Degree).unwrap());
        assert_eq!(beside(101.0), (1, 2));
        assert_eq!(beside(75.0), (1, 1));
        assert_eq!(beside(355.0), (0, 0));
        assert_eq!(beside(330.0), (4, 0));
    }

    // m·t + h·(1 − t) by complex numbers is what hub and rotor by themselves add up to, whose rows
    // are in `03_runout.json`; GUM 5.1.2 gives u² = u_m² + u_h² |1 − t|².
    #[test]
    fn a_hub_and_the_rotor_on_it_tell_every_position() {
        let studs = Studs::new(5).unwrap();
        let (hub, rotor) = (arrow(0.04, 30.0), arrow(0.025, 200.0));
        let apart = positions(&MeasuredAs::Apart { hub, rotor }, studs).unwrap();
        let on = (2, hub.plus(&rotor.turned(studs.angle(2))));
        let told = positions(&MeasuredAs::OnHub { hub, rotor: on }, studs).unwrap();
        for (one, other) in apart.iter().zip(&told) {
            assert_eq!(one.stud, other.stud);
            let apart = one.wobble.amplitude().minus(other.wobble.amplitude());
            assert!(apart.mm().abs() < 1e-12);
        }
        let at = |stud| told.iter().find(|p| p.stud == stud).unwrap().wobble.u();
        assert!((at(2).mm() - on.1.u().mm()).abs() < 1e-15);
        let chord = 2.0 * std::f64::consts::PI.mul_add(0.2, 0.0).sin();
        let turned = on.1.u().mm().hypot(0.002 * chord);
        assert!((at(3).mm() - turned).abs() < 1e-12);
    }

    // Twice as far out a tilt moves the needle twice as far; 1 mm at 70 mm and at 140 mm is
    // sqrt(1/70² + 1/140²) = 1.597 % of it.
    #[test]
    fn a_wobble_grows_with_the_radius_and_so_does_its_doubt() {
        let mm = Length::millimetres;
        let seen = arrow(0.02, 30.0).seen_at(mm(70.0), mm(140.0)).unwrap();
        assert!((seen.amplitude().mm() - 0.04).abs() < 1e-12);
        let phase = seen.phase().unwrap().in_unit(AngleUnit::Degree);
        assert!((phase - 30.0).abs() < 1e-9);
        assert!((seen.u().mm() - 0.004_f64.hypot(0.04 * 0.015_972)).abs() < 1e-8);
        assert!(arrow(0.02, 30.0).seen_at(Length::ZERO, mm(140.0)).is_err());
    }

    // u² = (u_a² |w_b − w|² + u_b² |w − w_a|²) / |w_b − w_a|², GUM 5.1.2 with independent readings.
    #[test]
    fn two_positions_foretell_themselves_as_sure_as_they_were_read() {
        let studs = Studs::new(4).unwrap();
        let (one, other) = ((0, arrow(0.03, 10.0)), (1, arrow(0.02, 200.0)));
        let told = positions(&MeasuredAs::Assembled { one, other }, studs).unwrap();
        let at = |stud| told.iter().find(|p| p.stud == stud).unwrap().wobble;
        for (stud, read) in [one, other] {
            assert!((at(stud).amplitude().mm() - read.amplitude().mm()).abs() < 1e-12);
            assert!((at(stud).u().mm() - 0.002).abs() < 1e-12);
        }
        // Opposite stud 1: |w_b − w|² = 2, |w − w_a|² = 4, over |w_b − w_a|² = 2.
        assert!((at(2).u().mm() - 0.002 * 3_f64.sqrt()).abs() < 1e-12);
    }
}
