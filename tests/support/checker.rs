//! What holds of every procedure, whatever wheel end it is for: each rule by itself, so that a
//! procedure that breaks one can be seen to break it.

use std::collections::BTreeMap;

use hubslate::text::{Lang, step_for};
use hubslate::trade::fastening::SpecItem;
use hubslate::trade::vehicle::{Corner, Encoder, ParkingBrake, SpeedSensor, WheelBrake};
use hubslate::trade::wheel_end::{
    Course, Fitted, Form, HoldPoint, ItemKind, ItemState, Kind, NutPosition, Plan, PlannedStep,
    Start, Step, When,
};

/// The rules, in the order in which a procedure is held against them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rule {
    /// What is taken off is put back.
    Fitted,
    /// What is loosened is turned to its spec after it was last touched, and the spec is asked
    /// before.
    Closed,
    /// A fastener is turned only while it stands in its thread and what it holds is in place.
    Turned,
    /// What a step takes off was on, what it puts on was off, and nothing stands in its way.
    Possible,
    /// The reading before comes before the nut, or the hub, is touched.
    ReadFirst,
    /// The customer's yes comes before anything is taken apart.
    Agreed,
    /// The wheel comes off only after the last shove since the car stood on it.
    Shoved,
    /// A hub comes out only with its wire free, and goes on the road only with the wire back.
    Wired,
    /// The brake is let go before it is opened where it acts, and the pedal pumped after it.
    Braked,
    /// The encoder's side is proved before a bearing is pressed in; the ring before the hub.
    Pressed,
    /// Tapered rollers are looked at and packed before the hub goes on; set, then locked.
    Set,
    /// The reading after comes with nut, bolts and locks of the setting at spec, before cap, stake,
    /// brake and wheel.
    Proved,
    /// All that the decision rests on is asked before it.
    Asked,
    /// Every caution of the trade stands on the step that it guards.
    Cautioned,
}

impl Rule {
    pub const ALL: [Self; 14] = [
        Self::Fitted,
        Self::Closed,
        Self::Turned,
        Self::Possible,
        Self::ReadFirst,
        Self::Agreed,
        Self::Shoved,
        Self::Wired,
        Self::Braked,
        Self::Pressed,
        Self::Set,
        Self::Proved,
        Self::Asked,
        Self::Cautioned,
    ];
}

/// The rules that the steps of a plan with one corner break, each with what breaks it.
pub fn broken(plan: &Plan, steps: &[PlannedStep]) -> Vec<(Rule, String)> {
    let job = Job::of(plan, steps);
    Rule::ALL
        .into_iter()
        .filter_map(|rule| job.holds(rule).err().map(|why| (rule, why)))
        .collect()
}

type Holds = Result<(), String>;

struct Job<'a> {
    plan: &'a Plan,
    steps: &'a [PlannedStep],
    corner: Corner,
    course: Course,
    /// Where every group stands before each step; what was never touched is not there.
    before: Vec<BTreeMap<ItemKind, ItemState>>,
    end: BTreeMap<ItemKind, ItemState>,
}

fn check(holds: bool, why: impl FnOnce() -> String) -> Holds {
    if holds { Ok(()) } else { Err(why()) }
}

impl<'a> Job<'a> {
    fn of(plan: &'a Plan, steps: &'a [PlannedStep]) -> Self {
        let mut now = BTreeMap::new();
        let mut before = Vec::new();
        for planned in steps {
            before.push(now.clone());
            for change in &planned.changes {
                now.insert(change.group, change.to);
            }
            if let Form::Turn(group) = planned.form {
                now.insert(group, ItemState::Done);
            }
        }
        let at = &plan.corners[0];
        Self {
            plan,
            steps,
            corner: at.corner,
            course: at.course,
            before,
            end: now,
        }
    }

    fn holds(&self, rule: Rule) -> Holds {
        match rule {
            Rule::Fitted => self.fitted(),
            Rule::Closed => self.closed(),
            Rule::Turned => self.turned(),
            Rule::Possible => self.possible(),
            Rule::ReadFirst => self.read_first(),
            Rule::Agreed => self.agreed(),
            Rule::Shoved => self.shoved(),
            Rule::Wired => self.wired(),
            Rule::Braked => self.braked(),
            Rule::Pressed => self.pressed(),
            Rule::Set => self.set(),
            Rule::Proved => self.proved(),
            Rule::Asked => self.asked(),
            Rule::Cautioned => self.cautioned(),
        }
    }

    fn replaces(&self) -> bool {
        self.course == Course::Replace
    }

    fn places(&self, is: impl Fn(&PlannedStep) -> bool) -> Vec<usize> {
        let all = self.steps.iter().enumerate();
        all.filter(|(_, planned)| is(planned))
            .map(|(at, _)| at)
            .collect()
    }

    fn step(&self, step: Step) -> Vec<usize> {
        self.places(|planned| planned.key.step == step)
    }

    fn moves(&self, group: ItemKind, to: ItemState) -> Vec<usize> {
        self.places(|planned| {
            planned
                .changes
                .iter()
                .any(|c| c.group == group && c.to == to)
        })
    }

    /// Where a group stands before a step; what was not touched is in place.
    fn state(&self, at: usize, group: ItemKind) -> ItemState {
        self.before[at]
            .get(&group)
            .copied()
            .unwrap_or(ItemState::Done)
    }

    fn name(&self, at: usize) -> String {
        self.steps[at].key.code()
    }

    fn fitted(&self) -> Holds {
        let open = self
            .end
            .iter()
            .find(|(_, state)| **state < ItemState::ByHand);
        check(open.is_none(), || format!("{open:?} at the end"))?;
        // Before the car is let down for good nothing is left on the bench.
        let lower = self.step(Step::Lower).last().copied();
        let lower = lower.ok_or("it is never let down")?;
        let off = self.before[lower].iter().find(|(group, state)| {
            **state < ItemState::ByHand && **group != ItemKind::ParkingBrake
        });
        check(off.is_none(), || {
            format!("{off:?} under {}", self.name(lower))
        })
    }

    fn closed(&self) -> Holds {
        for (group, state) in &self.end {
            check(*state == ItemState::Done, || {
                format!("{group:?} ends {state:?}")
            })?;
            if !group.is_fastener() {
                continue;
            }
            let touched = self.places(|planned| {
                planned.form == Form::Turn(*group)
                    || planned.changes.iter().any(|c| c.group == *group)
            });
            let last = touched.last().copied().unwrap_or_default();
            check(self.steps[last].form == Form::Turn(*group), || {
                format!("{group:?} is last touched at {}", self.name(last))
            })?;
            let first = self.places(|planned| planned.form == Form::Turn(*group))[0];
            let spec = self.places(|planned| planned.form == Form::Spec(spec_of(*group)));
            check(spec.first().is_some_and(|spec| *spec < first), || {
                format!("no spec before {}", self.name(first))
            })?;
        }
        Ok(())
    }

    fn turned(&self) -> Holds {
        for (at, planned) in self.steps.iter().enumerate() {
            let Form::Turn(group) = planned.form else {
                continue;
            };
            let state = self.state(at, group);
            let started = matches!(state, ItemState::ByHand | ItemState::Snug);
            check(started, || {
                format!("{} turns what is {state:?}", self.name(at))
            })?;
            for part in planned.key.step.row().rests_on {
                let there = self.state(at, *part) == ItemState::Done;
                check(there, || format!("{} without {part:?}", self.name(at)))?;
            }
        }
        Ok(())
    }

    fn possible(&self) -> Holds {
        for (at, planned) in self.steps.iter().enumerate() {
            for change in &planned.changes {
                let state = self.state(at, change.group);
                let comes_off = change.to == ItemState::Off;
                // Of two guide pins one is off and one loosened before both come off.
                let pins = change.group == ItemKind::CaliperPins;
                let able = match comes_off {
                    true => pins || state != ItemState::Off,
                    false => {
                        !(change.to >= ItemState::ByHand
                            && state == ItemState::Done
                            && change.group.is_fastener())
                    }
                };
                check(able, || {
                    format!("{} moves {change:?} from {state:?}", self.name(at))
                })?;
                if !comes_off && change.to == ItemState::Done {
                    check(state != ItemState::Done, || {
                        format!("{} puts on {:?}, which is on", self.name(at), change.group)
                    })?;
                }
                // Pulled on in the air, a tight lug nut pulls the car off its stand.
                let spun = change.group == ItemKind::LugNuts && comes_off;
                check(!spun || state == ItemState::Loosened, || {
                    format!("{} with lug nuts that are {state:?}", self.name(at))
                })?;
                self.covered(at, change.group, change.to)?;
            }
        }
        Ok(())
    }

    /// What stands in the way: the wheel before the brake, the brake before the hub, the nut before
    /// what it holds.
    fn covered(&self, at: usize, group: ItemKind, to: ItemState) -> Holds {
        use ItemKind as It;
        let on = |group| self.state(at, group) == ItemState::Done;
        let off = |group| self.state(at, group) == ItemState::Off;
        let drum_on_hub = self.plan.kind == Kind::Tapered;
        let braked_by = match self.plan.fitted.brake {
            WheelBrake::Disc => Some(It::Bracket),
            WheelBrake::Drum if !drum_on_hub => Some(It::Drum),
            WheelBrake::Drum | WheelBrake::None => None,
        };
        let nut = match self.plan.kind {
            Kind::BoltedDriven | Kind::Pressed => Some(It::AxleNut),
            Kind::SpindleHub | Kind::PressedFree | Kind::Tapered => Some(It::SpindleNut),
            Kind::BoltedFree => None,
        };
        let behind = matches!(
            group,
            It::Caliper
                | It::Pads
                | It::Bracket
                | It::Rotor
                | It::Drum
                | It::Hub
                | It::Shoes
                | It::Knuckle
                | It::Bearing
                | It::HubBolts
                | It::Cones
        );
        if behind {
            check(off(It::Wheel), || {
                format!("{} behind the wheel", self.name(at))
            })?;
        }
        let moves_hub = group == It::Hub;
        if moves_hub && let Some(brake) = braked_by {
            check(off(brake), || {
                format!("{} with {brake:?} on", self.name(at))
            })?;
        }
        if moves_hub && let Some(nut) = nut {
            check(off(nut), || format!("{} with {nut:?} on", self.name(at)))?;
        }
        if group == It::Bearing && to == ItemState::Off {
            check(off(It::Hub) && off(It::SnapRing), || {
                format!("{} with hub or snap ring in", self.name(at))
            })?;
        }
        if group == It::SnapRing && to == ItemState::Done {
            check(on(It::Bearing), || {
                format!("{} before the bearing", self.name(at))
            })?;
        }
        if self.plan.kind.is_pressed() && moves_hub && to == ItemState::Done {
            check(on(It::Bearing) && on(It::SnapRing), || {
                format!("{} without bearing and ring", self.name(at))
            })?;
        }
        if group == It::Wheel && to == ItemState::Done {
            for part in [
                It::Hub,
                It::Rotor,
                It::Drum,
                It::Caliper,
                It::Knuckle,
                It::Cap,
            ] {
                check(on(part), || {
                    format!("{} over {part:?} that is off", self.name(at))
                })?;
            }
        }
        Ok(())
    }

    fn read_first(&self) -> Holds {
        let first = self.places(|planned| {
            planned.changes.iter().any(|change| {
                let nut = change.group.holds_the_bearing() && change.to < ItemState::ByHand;
                nut || change.group == ItemKind::Hub && change.to == ItemState::Off
            })
        });
        let reads = self.places(
            |planned| matches!(planned.form, Form::Round(set, _) if set.when == When::Before),
        );
        check(reads.len() >= 3, || {
            "fewer than three cycles before".to_owned()
        })?;
        check(first.is_empty() != self.replaces(), || {
            "course and work differ".to_owned()
        })?;
        let Some(first) = first.first() else {
            return Ok(());
        };
        check(reads.iter().all(|read| read < first), || {
            format!("{} before a reading", self.name(*first))
        })?;
        check(
            self.steps[*first].holds.contains(&HoldPoint::Before),
            || format!("{} does not wait for the reading", self.name(*first)),
        )
    }

    fn agreed(&self) -> Holds {
        let agree = self.step(Step::Agree);
        for (at, planned) in self.steps.iter().enumerate() {
            let strips = planned.phase == hubslate::trade::wheel_end::Phase::Strip
                && !planned.changes.is_empty();
            let asked = agree.first().is_some_and(|agree| *agree < at);
            let held = planned.holds.contains(&HoldPoint::Yes);
            check(!strips || asked && held, || {
                format!("{} without a yes", self.name(at))
            })?;
        }
        Ok(())
    }

    fn shoved(&self) -> Holds {
        let mut stood = false;
        for (at, planned) in self.steps.iter().enumerate() {
            match planned.key.step {
                Step::Shove => stood = true,
                Step::Lower | Step::LoosenLugNuts | Step::LoosenAxleNut => stood = false,
                // Chocks alone hold from here.
                Step::ReleaseBrake => stood = false,
                _ => {}
            }
            let off = planned
                .changes
                .iter()
                .any(|c| c.group == ItemKind::Wheel && c.to == ItemState::Off);
            check(!off || stood, || {
                format!("{} without a shove", self.name(at))
            })?;
            check(!off || planned.holds.contains(&HoldPoint::Stand), || {
                format!("{} does not wait for the shove", self.name(at))
            })?;
        }
        Ok(())
    }

    fn wired(&self) -> Holds {
        let wired = self.plan.fitted.sensor != SpeedSensor::None;
        let hub = self.moves(ItemKind::Hub, ItemState::Off);
        for at in hub {
            let free = self.state(at, ItemKind::SensorWire) == ItemState::Off;
            check(free == wired, || format!("{} with its wire", self.name(at)))?;
        }
        let photo = self.step(Step::SensorPhoto);
        let strip = self.step(Step::StripSensor);
        check(photo.len() == strip.len(), || {
            "a wire without its photo".to_owned()
        })?;
        check(photo.iter().zip(&strip).all(|(p, s)| p < s), || {
            "a photo too late".to_owned()
        })
    }

    fn braked(&self) -> Holds {
        let fitted: &Fitted = &self.plan.fitted;
        let opens = self.places(|planned| {
            planned.changes.iter().any(|c| {
                c.to < ItemState::ByHand
                    && matches!(
                        c.group,
                        ItemKind::Caliper | ItemKind::Drum | ItemKind::Shoes
                    )
            })
        });
        for at in &opens {
            let released = self.state(*at, ItemKind::ParkingBrake) == ItemState::Off;
            check(released == fitted.is_released(self.corner), || {
                format!(
                    "{} with the parking brake applied or forgotten",
                    self.name(*at)
                )
            })?;
        }
        if fitted.brake == WheelBrake::None {
            return check(opens.is_empty(), || {
                "a brake that is not there is opened".to_owned()
            });
        }
        let Some(last) = opens.last() else {
            return Ok(());
        };
        let pedal = self.step(Step::Pedal).last().copied();
        check(pedal > Some(*last), || {
            "the pedal is not pumped after it".to_owned()
        })?;
        let set = self
            .moves(ItemKind::ParkingBrake, ItemState::Done)
            .last()
            .copied();
        check(set.is_none_or(|set| Some(set) > pedal), || {
            "set before the pedal is firm".to_owned()
        })
    }

    fn pressed(&self) -> Holds {
        if !self.plan.kind.is_pressed() || !self.replaces() {
            return Ok(());
        }
        let one = |step| self.step(step).first().copied();
        let (bore, press) = (one(Step::BoreLook), one(Step::PressIn));
        check(bore.is_some() && bore < press, || {
            "the bore is not looked at".to_owned()
        })?;
        if self.plan.fitted.sensor != SpeedSensor::None {
            let (photo, side) = (one(Step::EncoderPhoto), one(Step::EncoderSide));
            check(photo.is_some() && photo < side && side < press, || {
                "the encoder's side is not proved".to_owned()
            })?;
        }
        let hub = match self.plan.kind {
            Kind::Pressed => one(Step::PressHub),
            _ => one(Step::HubOn),
        };
        check(press < hub, || "the hub before the bearing".to_owned())
    }

    fn set(&self) -> Holds {
        if self.plan.kind != Kind::Tapered || !self.replaces() {
            return Ok(());
        }
        let one = |step| self.step(step).first().copied();
        let order = [
            Step::TaperLook,
            Step::PackGrease,
            Step::SealIn,
            Step::HubOn,
            Step::TurnSpindleNut,
        ];
        for pair in order.windows(2) {
            let (first, then) = (one(pair[0]), one(pair[1]));
            check(first.is_some() && first < then, || {
                format!("{pair:?} out of order")
            })?;
        }
        let lock = match self.plan.fitted.lock {
            hubslate::trade::vehicle::NutLock::Cotter => one(Step::NutSlot),
            hubslate::trade::vehicle::NutLock::LockNut => one(Step::TurnLockNut),
        };
        check(one(Step::TurnSpindleNut) < lock, || {
            "not locked after it was set".to_owned()
        })?;
        check(lock < one(Step::Stake), || {
            "staked before it is locked".to_owned()
        })
    }

    fn proved(&self) -> Holds {
        if !self.replaces() {
            return Ok(());
        }
        let reads = self.places(
            |planned| matches!(planned.form, Form::Round(set, _) if set.when == When::After),
        );
        check(reads.len() == 3, || "no three cycles after".to_owned())?;
        for at in reads {
            for group in [
                ItemKind::AxleNut,
                ItemKind::SpindleNut,
                ItemKind::LockNut,
                ItemKind::HubBolts,
                ItemKind::Hub,
                ItemKind::Bearing,
                ItemKind::StrutBolts,
                ItemKind::BallJoint,
                ItemKind::TieRod,
            ] {
                let at_planned = self.state(at, group) == ItemState::Done;
                check(at_planned, || {
                    format!("{} with {group:?} loose", self.name(at))
                })?;
            }
            for group in [ItemKind::Wheel, ItemKind::Pads, ItemKind::Stake] {
                let put_on = self.before[at].get(&group) == Some(&ItemState::Done);
                check(!put_on, || {
                    format!("{} with {group:?} on again", self.name(at))
                })?;
            }
        }
        Ok(())
    }

    fn asked(&self) -> Holds {
        let decide = self.step(Step::Decide).first().copied();
        let decide = decide.ok_or("no decision")?;
        let mut wanted = vec![
            Step::RockTwelveSix,
            Step::RockNineThree,
            Step::RockAxial,
            Step::SpinHand,
            Step::OtherSide,
            Step::RigTip,
            Step::RigPush,
            Step::Round,
            Step::SpecPlayLimit,
            Step::HeatHere,
            Step::HeatOther,
            Step::BeforeDriving,
        ];
        let at = &self.plan.corners[0];
        let braked = self.plan.fitted.brake != WheelBrake::None;
        wanted.extend((at.play_felt && braked).then_some(Step::BrakeHeld));
        wanted.extend(match self.plan.kind {
            Kind::BoltedDriven | Kind::Pressed | Kind::PressedFree | Kind::SpindleHub => {
                Some(Step::NutFound)
            }
            Kind::Tapered => Some(Step::LockFound),
            Kind::BoltedFree => None,
        });
        for step in wanted {
            let there = self.step(step).first().is_some_and(|at| *at < decide);
            check(there, || {
                format!("{step:?} is not asked before it is decided")
            })?;
        }
        Ok(())
    }

    fn cautioned(&self) -> Holds {
        for (step, word) in cautions(self.plan, self.corner) {
            for at in self.step(step) {
                // A car that waited is held again by its own words.
                if matches!(step, Step::LiftHold | Step::LiftStand) && self.steps[at].key.nth > 1 {
                    continue;
                }
                let text = step_for(Lang::English, self.steps[at].key, self.plan.build());
                let caution = text.caution.unwrap_or_default();
                check(caution.contains(word), || {
                    format!("{} does not say {word:?}: {caution}", self.name(at))
                })?;
            }
        }
        for step in guarded(self.plan) {
            check(!self.replaces() || !self.step(step).is_empty(), || {
                format!("{step:?} is not among the steps, nor is its caution")
            })?;
        }
        Ok(())
    }
}

/// Steps whose cautions are wanted and that a repair of this kind has to have.
fn guarded(plan: &Plan) -> Vec<Step> {
    match plan.kind {
        Kind::BoltedDriven | Kind::BoltedFree => vec![Step::StripHub, Step::Seat, Step::Offer],
        Kind::SpindleHub => vec![Step::SpindleNutOff, Step::HubOff, Step::HubOn, Step::CapOn],
        Kind::Tapered => vec![
            Step::TaperLook,
            Step::PackGrease,
            Step::CapOn,
            Step::TurnSpindleNut,
        ],
        Kind::PressedFree => vec![
            Step::SpindleNutOff,
            Step::HubOff,
            Step::PressOut,
            Step::PressIn,
            Step::HubOn,
            Step::CapOn,
        ],
        Kind::Pressed => vec![Step::PullHub, Step::PressOut, Step::PressIn, Step::PressHub],
    }
}

/// The cautions of the trade, each by a word that must stand on its step: shops' and technicians'
/// guides, common practice, no source where none is named in the texts.
fn cautions(plan: &Plan, corner: Corner) -> Vec<(Step, &'static str)> {
    let mut all = vec![
        (Step::LiftHold, "chocks alone hold"),
        (Step::LiftStand, "only the jack"),
        (Step::WheelOff, "dust"),
        (Step::SpindleNutOff, "Never reuse a cotter"),
        (Step::HubOff, "No hammer"),
        (Step::StripKnuckle, "inner joint comes apart"),
        (Step::PullHub, "No torch"),
        (Step::PressOut, "No press"),
        (Step::TaperLook, "Never spin a bearing with air"),
        (Step::TaperLook, "as a pair"),
        (Step::PackGrease, "never mix"),
        (Step::PackGrease, "not filled full"),
        (Step::BoreLook, "0.001 in"),
        (Step::PressIn, "Outer ring only"),
        (Step::PressIn, "No hammer, no chill-and-hammer"),
        (Step::PressHub, "Inner ring on its tube"),
        (Step::SnapRingOut, "Glasses"),
        (Step::CapOn, "never by the middle"),
        (Step::ShoesBack, "dust"),
        (Step::DrumOff, "pedal"),
        (Step::DrumOn, "No grease"),
        (Step::NutSlot, "never on to the tighter"),
        (Step::LockFound, "do not drive"),
        (Step::TurnBallJoint, "never back"),
        (Step::TurnTieRod, "never back"),
        (Step::ReleaseBrake, "chocks alone hold"),
        (Step::TurnLugNuts, "starts again at 1"),
        (Step::ProvePedal, "does not move"),
    ];
    all.extend(match plan.kind {
        Kind::BoltedDriven => vec![
            (Step::StripHub, "No hammer"),
            (Step::LoosenLugNuts, "axle nut stays tight"),
        ],
        Kind::BoltedFree if plan.fitted.brake == WheelBrake::Drum => {
            vec![
                (Step::StripHub, "carry no weight"),
                (Step::StripHub, "hanger"),
            ]
        }
        Kind::BoltedFree => vec![
            (Step::StripHub, "No hammer"),
            (Step::Offer, "Never pull it in with the bolts"),
        ],
        Kind::SpindleHub | Kind::PressedFree => vec![
            (Step::LoosenLugNuts, "spindle nut stays tight"),
            (Step::NutFound, "do not drive"),
            (Step::TurnSpindleNut, "Never back the nut off"),
            (Step::HubOn, "Nothing pulled on with the nut"),
        ],
        Kind::Tapered => vec![
            (Step::TurnSpindleNut, "settings differ"),
            (Step::Stake, "Never"),
            (Step::Lower, "locked"),
        ],
        Kind::Pressed => vec![
            (Step::TurnAxleNut, "no impact tool"),
            (Step::LoosenAxleNut, "not be rolled"),
        ],
    });
    if plan.kind == Kind::Pressed && plan.nut == NutPosition::AirBar {
        all.retain(|(step, _)| *step != Step::LoosenAxleNut);
    }
    if plan.fitted.parking == ParkingBrake::Electric && plan.fitted.is_released(corner) {
        all.push((Step::ReleaseBrake, "Key stays off"));
        all.push((Step::SetBrake, "Hands and tools out"));
    }
    if plan.fitted.encoder == Encoder::Ring {
        all.push((Step::EncoderSide, "rust lift"));
    } else {
        all.push((Step::EncoderSide, "magnets"));
    }
    let not_ohms = plan.kind != Kind::BoltedDriven && plan.fitted.sensor != SpeedSensor::Passive;
    all.extend(not_ohms.then_some((Step::RouteSensor, "never by ohms")));
    if plan.start == Start::AtHome {
        all.push((Step::SpecSpindleNut, "No value from memory"));
    }
    all
}

/// The spec that a group of fasteners is turned to.
pub fn spec_of(group: ItemKind) -> SpecItem {
    hubslate::job::turn::spec_item(group).expect("a fastener without a spec")
}
