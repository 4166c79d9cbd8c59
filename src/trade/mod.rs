//! What a master technician knows: pure rules, in units only, one room per question.
//!
//! Nothing here knows a browser, a clock, a language, serde or randomness.

pub mod answer;
pub mod damage;
pub mod day;
pub mod diagnosis;
pub mod fastening;
pub mod mean;
pub mod money;
pub mod play;
pub mod practice;
pub mod runout;
pub mod share;
pub mod vehicle;
pub mod wheel_end;
