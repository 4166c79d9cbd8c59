//! Line drawings as pure geometry; screens and paper use the same ones.
//!
//! A drawing is a value ([`shape::Drawing`]) that becomes SVG text at the very end. It knows
//! neither the trade nor a language: what depends on a car or a reading comes in as plain
//! numbers, and words come in as text. Every line here is our own.

pub mod angle;
pub mod bars;
pub mod brake;
#[cfg(test)]
mod check;
pub mod code;
pub mod corner;
mod damage;
pub mod dial;
pub mod far;
mod fill;
pub mod hands;
pub mod hub;
pub mod icon;
pub mod lift;
pub mod mark;
pub mod pen;
pub mod piece;
pub mod place;
pub mod polar;
pub mod press;
pub mod rig;
pub mod shape;
pub mod spans;
pub mod spindle;
pub mod star;
pub mod strip;
mod svg;

pub use crate::trade::wheel_end::StepDrawing;
pub use shape::Drawing;

impl StepDrawing {
    /// The picture as geometry.
    pub fn drawing(self) -> Drawing {
        match self {
            Self::Chocks => lift::chocks(),
            Self::Stand => lift::stand(),
            Self::Shove => lift::shove(),
            Self::TwelveSix => hands::twelve_six(),
            Self::NineThree => hands::nine_three(),
            Self::PushPull => hands::push_pull(),
            Self::DialRig => rig::dial_rig(),
            Self::DialFace => rig::dial_face(),
            Self::Hook => brake::hook(),
            Self::SensorRoute => brake::sensor_route(),
            Self::HubBehind => star::hub_behind(),
            Self::Puller => hub::puller(),
            Self::Splines => hub::splines(),
            Self::NutStake => hub::nut_stake(),
            Self::StarOrder => star::star_order(),
            Self::DrumOff => spindle::drum_off(),
            Self::TaperStack => spindle::taper_stack(),
            Self::CastleSlot => spindle::castle_slot(),
            Self::EncoderSide => press::encoder_side(),
            Self::PressOuter => press::press_outer(),
            Self::PressInner => press::press_inner(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::check::sound;
    use super::corner::Place;
    use super::mark::Mark;
    use super::star::Pattern;
    use super::strip::{Limit, Row, Strip, Tick};
    use super::*;

    #[test]
    fn every_step_drawing_is_sound() {
        for picture in StepDrawing::ALL {
            sound(picture.code(), &picture.drawing());
        }
    }

    #[test]
    fn every_icon_mark_and_corner_is_sound() {
        let icons = [
            icon::loose(),
            icon::note(),
            icon::photo(),
            icon::clock_face(),
            icon::saved(),
            icon::not_saved(),
            icon::keeping(),
        ];
        for icon in icons {
            sound("icon", &icon);
        }
        for mark in [Mark::Keep, Mark::Watch, Mark::Replace, Mark::Stop] {
            sound("mark", &mark.drawing());
        }
        for place in Place::ALL {
            sound("corner", &corner::small(&[place]));
            sound("corner", &corner::large(&[place]));
        }
        sound("corners", &corner::large(&Place::ALL));
    }

    #[test]
    fn every_angle_is_sound() {
        for degrees in [-400.0, -180.0, -15.0, 0.0, 0.5, 45.0, 90.0, 360.0, 720.0] {
            for behind in [0.0, 15.0, 500.0] {
                sound("angle", &angle::angle(degrees, behind));
            }
        }
    }

    #[test]
    fn every_star_is_sound() {
        for done in [false, true] {
            sound("single", &star::single(done));
        }
        for count in 3..=10 {
            let order: Vec<usize> = (0..count).collect();
            for done in 0..=count {
                sound("wheel", &star::star(Pattern::Wheel, &order, done));
            }
        }
        for count in 3..=4 {
            sound(
                "hub",
                &star::star(Pattern::Hub, &(0..count).collect::<Vec<_>>(), 1),
            );
        }
        sound("row", &star::star(Pattern::Row, &[0, 1], 1));
    }

    #[test]
    fn dials_and_strips_are_sound_at_their_borders() {
        for value in [-130.0, 0.0, 6.3, 99.9, 250.0] {
            for divisions in [0, 10, 50, 100, 200] {
                let dial = dial::Dial {
                    divisions,
                    value: Some(value),
                    last: Some(3.0),
                    swept: Some((value, 2.0)),
                };
                sound("dial", &dial.drawing());
            }
        }
        let limit = [Limit {
            at: 4.0,
            name: "limit 4, house limit, no manufacturer's figure found",
        }];
        let readings: [&[f64]; 4] = [&[], &[0.0, 0.0, 0.0], &[6.1, 6.3, 6.5], &[-2.0, 40.0]];
        for rounds in readings {
            let rows = [
                Row {
                    label: "before",
                    rounds,
                    band: Some((-1.0, 7.4)),
                },
                Row {
                    label: "after",
                    rounds: &[f64::NAN, 1.0],
                    band: None,
                },
            ];
            let ticks = [
                Tick {
                    at: 0.0,
                    label: "0",
                },
                Tick {
                    at: 8.0,
                    label: "8",
                },
            ];
            sound(
                "strip",
                &Strip {
                    ticks: &ticks,
                    unit: "thou",
                    limits: &limit,
                    rows: &rows,
                }
                .drawing(),
            );
            sound(
                "strip",
                &Strip {
                    ticks: &[],
                    unit: "",
                    limits: &[],
                    rows: &[],
                }
                .drawing(),
            );
        }
    }
}
