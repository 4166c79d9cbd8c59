//! Runs round a face and rotors under a micrometer, by chance: every surface, shape and limit.

use hubslate::job::entry::{
    Event, Gauging, RunoutReading, RunoutSpec, Setup, ThicknessReading, ThicknessSpec, VehicleField,
};
use hubslate::job::{fold, runout};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::SpecSource;
use hubslate::trade::runout::{Bound, LeftOut, Micrometer, Surface};
use hubslate::trade::wheel_end::{ItemKind, Step};
use hubslate::units::{AngleUnit, Decimal, LengthUnit, Typed};

use super::{HERE, RandomJob};

/// What a corner is like, in hundredths of a millimetre and degrees.
struct Truth {
    hub: (f64, f64),
    rotor: (f64, f64),
    warp: (f64, f64),
    noise: u64,
    bump: f64,
}

impl RandomJob {
    /// What is read with dial and micrometer beside the play.
    pub(super) fn bench(&mut self) {
        if self.chance.often(80) {
            let studs = self.chance.of(&["4", "5", "5", "6"]);
            self.tap(vec![Event::Vehicle(VehicleField::Studs, studs.to_owned())]);
        }
        for surface in Surface::ALL {
            if self.chance.often(60) {
                let text = self.chance.of(&["0.02", "0.05", "0.10", "0.15"]);
                self.tap(vec![Event::RunoutLimit(RunoutSpec {
                    surface: *surface,
                    most: Typed::parse(text, LengthUnit::Millimetre).unwrap(),
                    source: source(),
                })]);
            }
        }
        self.runs();
        if self.entries.len() % 3 == 1 {
            self.prove();
        }
        for nth in 1..=self.chance.below(3) {
            self.rotor(u8::try_from(nth).unwrap());
        }
    }

    fn runs(&mut self) {
        let large = self.chance.often(50);
        let mut height = |most: u64| {
            let most = if large { most } else { 1 };
            (
                self.chance.below(10 * most) as f64 / 10.0,
                self.chance.below(360) as f64,
            )
        };
        let (hub, rotor, warp) = (height(6), height(8), height(5));
        let warp = if self.chance.often(50) {
            warp
        } else {
            (0.0, 0.0)
        };
        let truth = Truth {
            hub,
            rotor,
            warp,
            noise: self.chance.of(&[1, 1, 4, 4, 12, 40]),
            bump: self.chance.of(&[0.0, 0.0, 0.0, 7.0, -7.0]),
        };
        let cleaned = self.chance.of(&[Answer::Yes, Answer::Yes, Answer::No]);
        for run in 1..=self.chance.below(5) {
            let setup = Setup {
                surface: self.chance.of(&[
                    Surface::HubFace,
                    Surface::Rotor,
                    Surface::Rotor,
                    Surface::Pilot,
                ]),
                places: self.chance.of(&[4, 5, 8, 8, 12, 24]),
                stud: u8::try_from(1 + self.chance.below(4)).unwrap(),
                cleaned,
            };
            self.run(u8::try_from(run).unwrap(), setup, &truth);
            if self.chance.often(8) {
                self.loosen(Step::StripHub, ItemKind::HubBolts);
            }
        }
    }

    /// Once round, some places skipped or left out, the first perhaps read again.
    fn run(&mut self, run: u8, setup: Setup, truth: &Truth) {
        let dial = fold(self.entries.iter().cloned()).dial();
        let face = f64::from(dial.divisions_per_turn());
        let division = dial.graduation().in_unit(LengthUnit::Millimetre) * 100.0;
        let typed_angles = self.chance.often(20);
        // Places that stand close together tell no wave.
        let step = 360.0 / f64::from(setup.places) * self.chance.of(&[1.0, 1.0, 0.9, 0.1]);
        let radius = self.chance.often(60).then(|| {
            let text = if setup.surface == Surface::Rotor {
                "140"
            } else {
                "70"
            };
            Typed::parse(text, LengthUnit::Millimetre).unwrap()
        });
        let whole = self.chance.often(85);
        let part = self.chance.of(&[1, 1 + setup.places / 2]);
        let last = if whole { setup.places } else { part };
        let again = u8::from(whole && self.chance.often(40));
        let bumped = 1 + self.chance.below(u64::from(setup.places));
        let zero = self.chance.of(&[0.0, 0.0, 12.0, face - 3.0]);
        let mut first = None;
        let other = self.chance.often(2).then(|| self.dial());
        for place in 1..=last + again {
            let degrees = if typed_angles {
                (step * f64::from(place - 1)).round()
            } else {
                360.0 * f64::from(place - 1) / f64::from(setup.places)
            };
            let mut height = truth.at(degrees, setup);
            height += self.chance.below(truth.noise) as f64 / 10.0;
            if u64::from(place) == bumped {
                height += truth.bump;
            }
            let gone = zero + height / division;
            let needle = gone % face;
            let around = (gone / face).trunc() as i32;
            let turns = around - *first.get_or_insert(around);
            // A fine dial goes round unseen, so that its turns are asked.
            let recorded = self.chance.often(if division < 0.5 { 98 } else { 10 });
            let text = format!("{needle:.1}");
            let skipped = place > 1 && self.chance.often(4);
            let left_out = self.chance.often(4).then_some(LeftOut::StudHole);
            let angle = typed_angles
                .then(|| Typed::parse(&format!("{degrees:.0}"), AngleUnit::Degree).unwrap());
            self.tap(vec![Event::Runout(RunoutReading {
                corner: HERE,
                run,
                setup,
                place,
                angle,
                radius: radius.clone(),
                divisions: (!skipped).then(|| Decimal::parse(&text).unwrap()),
                turns: (!skipped && recorded).then_some(turns),
                dial: other.filter(|_| place == last).unwrap_or(dial),
                left_out,
            })]);
        }
        let sheet = fold(self.entries.iter().cloned());
        assert!(!runout::runs(&sheet, HERE).is_empty());
    }

    fn rotor(&mut self, run: u8) {
        let micrometer = self.chance.of(Micrometer::ALL);
        let unit = micrometer.unit();
        let (thick, step) = match unit {
            LengthUnit::Inch => (self.chance.of(&[0.862, 0.866, 0.870]), 0.001),
            _ => (self.chance.of(&[21.9, 22.0, 22.1]), 0.01),
        };
        for (bound, inch, metric) in [
            (Bound::Least, "0.866", "22.0"),
            (Bound::Variation, "0.0008", "0.020"),
        ] {
            if self.chance.often(70) {
                let text = if unit == LengthUnit::Inch {
                    inch
                } else {
                    metric
                };
                self.tap(vec![Event::ThicknessLimit(ThicknessSpec {
                    axle: HERE.axle(),
                    bound,
                    value: Typed::parse(text, unit).unwrap(),
                    source: source(),
                })]);
            }
        }
        let places = self.chance.of(&[4, 5, 8, 12]);
        let uneven = self.chance.of(&[1, 10, 60]);
        let last = if self.chance.often(90) { places } else { 3 };
        for place in 1..=last {
            let off = self.chance.below(uneven) as f64 / 10.0 * step;
            let text = format!("{:.*}", micrometer.decimals(), thick + off);
            let skipped = self.chance.often(4);
            self.tap(vec![Event::Thickness(ThicknessReading {
                corner: HERE,
                run,
                gauging: Gauging { micrometer, places },
                place,
                thickness: (!skipped).then(|| Typed::parse(&text, unit).unwrap()),
            })]);
        }
    }
}

impl Truth {
    /// How high the face stands at an angle, in hundredths of a millimetre.
    fn at(&self, degrees: f64, setup: Setup) -> f64 {
        let wave = |times: f64, (height, phase): (f64, f64), on: f64| {
            height * (times * degrees - phase - on).to_radians().cos()
        };
        let hub = wave(1.0, self.hub, 0.0);
        if setup.surface != Surface::Rotor {
            return hub;
        }
        let turned = 72.0 * f64::from(setup.stud - 1);
        2.0 * hub + wave(1.0, self.rotor, turned) + wave(2.0, self.warp, turned)
    }
}

fn source() -> SpecSource {
    SpecSource {
        document: "Practice pages (invented)".to_owned(),
        page: "2".to_owned(),
        looked_up: chrono::NaiveDate::from_ymd_opt(2026, 2, 1).unwrap(),
        who: "P. Nobody".to_owned(),
        override_reason: None,
    }
}
