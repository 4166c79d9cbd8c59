//! The four corners, seen from the driver's seat.

use crate::words;

words! {
    /// One wheel end.
    pub enum Corner {
        /// Front left.
        FrontLeft = "front_left",
        /// Front right.
        FrontRight = "front_right",
        /// Rear left.
        RearLeft = "rear_left",
        /// Rear right.
        RearRight = "rear_right",
    }
}

words! {
    /// Front or rear.
    pub enum Axle {
        /// Front.
        Front = "front",
        /// Rear.
        Rear = "rear",
    }
}

words! {
    /// Left or right, seen from the driver's seat.
    pub enum Side {
        /// Left.
        Left = "left",
        /// Right.
        Right = "right",
    }
}

impl Corner {
    /// The corner on this axle and side.
    pub const fn at(axle: Axle, side: Side) -> Self {
        match (axle, side) {
            (Axle::Front, Side::Left) => Self::FrontLeft,
            (Axle::Front, Side::Right) => Self::FrontRight,
            (Axle::Rear, Side::Left) => Self::RearLeft,
            (Axle::Rear, Side::Right) => Self::RearRight,
        }
    }

    /// Its axle.
    pub const fn axle(self) -> Axle {
        match self {
            Self::FrontLeft | Self::FrontRight => Axle::Front,
            Self::RearLeft | Self::RearRight => Axle::Rear,
        }
    }

    /// Its side.
    pub const fn side(self) -> Side {
        match self {
            Self::FrontLeft | Self::RearLeft => Side::Left,
            Self::FrontRight | Self::RearRight => Side::Right,
        }
    }

    /// The other wheel of the same axle: the comparison for noise, heat and movement.
    pub const fn opposite_side(self) -> Self {
        Self::at(self.axle(), self.side().other())
    }

    /// The corner across: it is chocked first, since the car rolls about it.
    pub const fn diagonal(self) -> Self {
        Self::at(self.axle().other(), self.side().other())
    }
}

impl Axle {
    /// The other axle.
    pub const fn other(self) -> Self {
        match self {
            Self::Front => Self::Rear,
            Self::Rear => Self::Front,
        }
    }
}

impl Side {
    /// The other side.
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_corner_has_its_neighbours() {
        for corner in Corner::ALL.iter().copied() {
            assert_eq!(Corner::at(corner.axle(), corner.side()), corner);
            assert_eq!(corner.opposite_side().axle(), corner.axle());
            assert_ne!(corner.opposite_side().side(), corner.side());
            assert_ne!(corner.diagonal().axle(), corner.axle());
            assert_ne!(corner.diagonal().side(), corner.side());
        }
    }
}
