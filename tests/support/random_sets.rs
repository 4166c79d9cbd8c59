//! The limit, the dial and the rounds of a job by chance.

use super::*;

impl RandomJob {
    pub(super) fn spec(&mut self) -> Spec {
        let source = SpecSource {
            document: "Practice pages (invented)".to_owned(),
            page: "1".to_owned(),
            looked_up: chrono::NaiveDate::from_ymd_opt(2026, 2, 1).unwrap(),
            who: "P. Nobody".to_owned(),
            override_reason: None,
        };
        let (text, unit) = self.chance.of(&[
            ("0.05", LengthUnit::Millimetre),
            ("0,10", LengthUnit::Millimetre),
            ("0", LengthUnit::Millimetre),
            ("50", LengthUnit::Micrometre),
            ("2.0", LengthUnit::Thou),
            ("0.004", LengthUnit::Inch),
        ]);
        let mut way = Way {
            rig: self.aside(|job| job.chance.of(&[None, None, Some(Rig::CaliperUp)])),
            ..Way::DEFAULT
        };
        if self.chance.often(25) {
            way = self.other(way);
        }
        let body = if self.chance.often(15) {
            SpecBody::NotFound {
                reason: "not in the pages".to_owned(),
            }
        } else {
            SpecBody::Play {
                // In a quarter of the jobs the bearing is set with play; some windows are none.
                least: self.aside(|job| {
                    let least = job.chance.of(&["0.02", "0.05", "1", "0.001"]);
                    let set = job.chance.often(25);
                    set.then(|| Typed::parse(least, unit).unwrap())
                }),
                most: Typed::parse(text, unit).unwrap(),
                way,
                source,
            }
        };
        Spec {
            item: SpecItem::PlayLimit,
            body,
        }
    }

    /// Another way than `way`, in one thing.
    fn other(&mut self, way: Way) -> Way {
        let newtons = self.chance.of(&[98.1, 105.0, 150.0]);
        let force = Some(Force::new(newtons, ForceUnit::Newton).unwrap());
        let rigs = [
            None,
            Some(Rig::CaliperUp),
            Some(Rig::RotorOff),
            Some(Rig::WheelOn),
        ];
        match self.chance.below(4) {
            0 => Way {
                method: self.chance.of(Method::ALL),
                ..way
            },
            1 => Way {
                place: self.chance.of(Place::ALL),
                ..way
            },
            2 => Way {
                rig: self.chance.of(&rigs),
                ..way
            },
            _ => Way { force, ..way },
        }
    }

    pub(super) fn dial(&mut self) -> Dial {
        let fine = Dial::new(
            Length::new(0.002, LengthUnit::Millimetre).unwrap(),
            200,
            DialKind::Lever,
        )
        .unwrap();
        self.chance
            .of(&[Dial::HUNDREDTH_MM, Dial::THOU, Dial::HALF_THOU, fine])
    }

    /// Up to three rounds about one play, on either side of the zero of the face.
    pub(super) fn set(&mut self, name: SetName) {
        if name.nth == 2 {
            let flexes: Vec<_> = FLEXES.iter().map(|pick| Reply::Picked(*pick)).collect();
            self.perhaps(90, at(Step::RigAgain), &flexes);
        }
        let sheet = fold(self.entries.iter().cloned());
        let (dial, (mut way, _)) = (sheet.dial(), required(&sheet));
        if self.chance.often(25) {
            way = self.other(way);
        } else if self.chance.often(20) {
            // As it is always set up, whatever the limit requires.
            way = Way::DEFAULT;
        }
        if self.chance.often(92) {
            self.tap(vec![recorded(HERE, name, way)]);
        }
        let mixed = self.chance.often(4).then(|| self.dial());
        let face = f64::from(dial.divisions_per_turn());
        let graduation = dial.graduation().in_unit(LengthUnit::Millimetre);
        let most = (0.16 / graduation).min(face * 0.3) * 10.0;
        let nothing = self.chance.often(15);
        // About the limits that the specs give, so that two sets can disagree.
        let near = |job: &mut Self| (job.chance.often(60), job.chance.below(4));
        let (is_near, off) = self.aside(near);
        let play = match (nothing, name.nth == 2 && is_near) {
            (true, _) => 0,
            (false, true) => (0.5 / graduation) as u64 + off,
            (false, false) => self.chance.below(most as u64),
        };
        let spread = if nothing {
            1
        } else {
            self.chance.of(&[1, 3, 8, 30])
        };
        let rounds = self.chance.of(&[1, 2, 3, 3, 3, 3]);
        for round in 1..=rounds {
            let push = self.chance.of(&[0.0, 0.0, 0.0, 2.5, face - 1.5, -1.0]);
            let jitter = self.chance.below(spread) as f64 / 10.0;
            let way_round = self.chance.of(&[1.0, 1.0, 1.0, -1.0]);
            let mut pull = push + way_round * (play as f64 / 10.0 + jitter);
            let mut turns = 0;
            if pull.abs() > face {
                turns = if pull > 0.0 { 1 } else { -1 };
                pull -= face.copysign(pull);
            }
            // A fine dial goes round unseen, so that its turns are asked.
            let reported = self.chance.often(if graduation < 0.005 { 90 } else { 10 });
            let typed = |divisions: f64| Decimal::parse(&format!("{divisions:.1}")).unwrap();
            let reading = |side, divisions| {
                let turns = (side == Side::Pull && reported).then_some(turns);
                Event::Reading(Reading {
                    corner: HERE,
                    set: name,
                    round,
                    side,
                    turns,
                    divisions,
                    dial: mixed.filter(|_| round == rounds).unwrap_or(dial),
                })
            };
            let mut whats = vec![reading(Side::Pull, typed(pull))];
            if push != 0.0 || self.chance.often(70) {
                whats.insert(0, reading(Side::Push, typed(push)));
            }
            // The last one may stand beyond what is corrected.
            let slants = ["0", "17.5", "-40", "60", "61"];
            let slant = slants.get(usize::try_from(self.pen.n % 23).unwrap());
            if let Some(slant) = slant.filter(|_| round == rounds) {
                let angle = Typed::parse(slant, AngleUnit::Degree).unwrap();
                whats.push(Event::TipAngle(HERE, name, angle));
            }
            if round == rounds && self.pen.n.is_multiple_of(5) {
                whats.push(Event::Crept(HERE, name, typed(1.5)));
            }
            self.tap(whats);
        }
    }
}
