//! How the dial stood for one set of readings.

use crate::trade::play::Way;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;

/// How the dial was set up for one set, as recorded at the dial before its base was zeroed.
#[derive(Clone, Copy, Debug, PartialEq, Hash)]
pub struct DialSetup {
    /// Where.
    pub corner: Corner,
    /// For which set.
    pub set: SetName,
    /// Method, place, setup and force of its readings.
    pub way: Way,
}
