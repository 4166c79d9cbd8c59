//! What is true of a step wherever it is asked, and how a row of the table of steps says it.

use crate::trade::fastening::SpecItem;
use crate::trade::wheel_end::consequence::{Consequence, GO_ON, STAYS_LOOSE};
use crate::trade::wheel_end::item::ItemKind;
use crate::trade::wheel_end::plan::Sign;
use crate::trade::wheel_end::shown::{CaptionWord, StepDrawing};
use crate::trade::wheel_end::step::{Change, Check, Choice, Form, HoldPoint, Phase};

/// All that is true of a step.
pub struct Row {
    /// The phase it is told under, where its place in the order names no other.
    pub phase: Phase,
    /// How it is answered; a list without its rows, a cycle and a setup as those of the first set.
    pub form: Form,
    /// The rows of its list.
    pub checks: &'static [Check],
    /// What a job adds to its list.
    pub more: More,
    /// The hold points that stand before it.
    pub needs: &'static [HoldPoint],
    /// What doing it does to the loose list.
    pub changes: &'static [Change],
    /// What must be in its place and tight before it; of a reading, before one after the work.
    pub rests_on: &'static [ItemKind],
    /// Whether one screen may tell it together with the step after it.
    pub joins: bool,
    /// What follows from yes.
    pub yes: &'static [Consequence],
    /// What follows from no.
    pub no: &'static [Consequence],
    /// What follows where it was not done: on a question of safety the same as from a no.
    pub not_done: &'static [Consequence],
    /// The hold point that it answers.
    pub proves: Option<HoldPoint>,
    /// What the car does at it.
    pub car: Option<Car>,
    /// Whether it is done at what the wheel covers, though it loosens nothing there.
    pub behind_the_wheel: bool,
    /// Whether a job without it is left unfinished.
    pub must_be_seen: bool,
    /// After what it is asked again.
    pub again: Again,
    /// Of a photo that is asked for only where something went wrong: before the work of which phase.
    pub owed_in: &'static [Phase],
    /// The parts that are bare at it, so that a crack in one is seen.
    pub bare: &'static [ItemKind],
    /// The parts of which the new one is held next to the old one at it.
    pub compares: &'static [ItemKind],
    /// What a photo taken at it commonly shows, the likeliest first; never more than six.
    pub captions: &'static [CaptionWord],
    /// What hands, ears or the dial meet at it on a practice car.
    pub meets: Option<Meets>,
    /// The drawing that it shows.
    pub drawing: Option<StepDrawing>,
}

/// What a job adds to the rows of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum More {
    /// Nothing.
    Nothing,
    /// Before them, the signs of the road that were there before the work.
    Signs,
    /// After them, the looks before driving that were not right.
    WrongLooks,
}

/// What is met at a step: what a practice car answers there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meets {
    /// How many lug nuts turn, as found.
    NutsAsFound,
    /// The same under the wrench, which seats them.
    NutsTried,
    /// Movement felt at the tire.
    Play,
    /// Whether it goes away with the brake held.
    BrakeHeld,
    /// How the old bearing turns.
    OldSpin,
    /// How the new one turns.
    NewSpin,
    /// The wheel across the axle.
    OtherSide,
    /// The nut that holds the hub, as found.
    Nut,
    /// The side that is louder in a swerve.
    Swerve,
    /// Any other sign of the road test.
    Sign(Sign),
    /// The signs that are left on the road after the work.
    RoadAfter,
    /// The temperature of this hub, or of the other side's.
    Heat {
        /// Whether it is this hub.
        here: bool,
    },
    /// The needle while the knuckle is pushed.
    Base,
    /// The needle while the hub is pushed and pulled.
    Needle,
}

/// What the car does at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Car {
    /// It is driven before the work.
    Drives,
    /// It is set down until the tire grips, and raised again.
    Grips,
    /// It waits as it stands while the customer thinks.
    Waits,
    /// It moves after the work.
    Moves,
    /// It is handed over.
    Leaves,
}

/// After what a step is asked again that was answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Again {
    /// After nothing.
    Never,
    /// After the closed wheel end was opened to measure the new part once more.
    Reopened,
    /// The same, and after anything was loosened since.
    Loosened,
}

use CaptionWord as Shows;

const ANY: &[CaptionWord] = &[
    Shows::AsFound,
    Shows::Damage,
    Shows::Rust,
    Shows::Leak,
    Shows::PartLabel,
    Shows::Finished,
];

/// A step of a phase, how it is answered, and what follows where it was not done.
pub(super) const fn form(phase: Phase, form: Form, not_done: &'static [Consequence]) -> Row {
    Row {
        phase,
        form,
        checks: &[],
        more: More::Nothing,
        needs: &[],
        changes: &[],
        rests_on: &[],
        joins: false,
        yes: GO_ON,
        no: GO_ON,
        not_done,
        proves: None,
        car: None,
        behind_the_wheel: false,
        must_be_seen: false,
        again: Again::Never,
        owed_in: &[],
        bare: &[],
        compares: &[],
        captions: ANY,
        meets: None,
        drawing: None,
    }
}

/// Work that one key says is done.
pub(super) const fn act(phase: Phase, not_done: &'static [Consequence]) -> Row {
    form(phase, Form::Do, not_done)
}

/// A question, and what follows from no and from "not done".
pub(super) const fn ask(
    phase: Phase,
    no: &'static [Consequence],
    not_done: &'static [Consequence],
) -> Row {
    form(phase, Form::Ask, not_done).no(no)
}

/// A list that is looked at together.
pub(super) const fn list(
    phase: Phase,
    checks: &'static [Check],
    not_done: &'static [Consequence],
) -> Row {
    let mut row = form(phase, Form::Checks(Vec::new()), not_done);
    row.checks = checks;
    row
}

/// One word out of a list.
pub(super) const fn choice(
    phase: Phase,
    picks: &'static [Choice],
    not_done: &'static [Consequence],
) -> Row {
    form(phase, Form::Choice(picks), not_done)
}

/// A spec.
pub(super) const fn spec(item: SpecItem, not_done: &'static [Consequence]) -> Row {
    form(Phase::Pack, Form::Spec(item), not_done)
}

/// Fasteners that are turned to spec, and the part that they hold.
pub(super) const fn turn(group: ItemKind, part: &'static [ItemKind]) -> Row {
    form(Phase::Tighten, Form::Turn(group), STAYS_LOOSE).rests_on(part)
}

/// What a step does to the loose list: each group, or one item of it by its number, and what it is
/// afterwards.
macro_rules! moves {
    (@) => { None };
    (@ $number:literal) => { Some($number) };
    ($($group:ident $($number:literal)?: $to:ident),+ $(,)?) => {
        &[$($crate::trade::wheel_end::Change {
            group: $crate::trade::wheel_end::ItemKind::$group,
            only: moves!(@ $($number)?),
            to: $crate::trade::wheel_end::ItemState::$to,
        }),+]
    };
}
pub(super) use moves;

impl Row {
    pub(super) const fn more(mut self, more: More) -> Self {
        self.more = more;
        self
    }

    pub(super) const fn needs(mut self, needs: &'static [HoldPoint]) -> Self {
        self.needs = needs;
        self
    }

    pub(super) const fn moves(mut self, changes: &'static [Change]) -> Self {
        self.changes = changes;
        self
    }

    pub(super) const fn rests_on(mut self, groups: &'static [ItemKind]) -> Self {
        self.rests_on = groups;
        self
    }

    pub(super) const fn with_next(mut self) -> Self {
        self.joins = true;
        self
    }

    pub(super) const fn yes(mut self, yes: &'static [Consequence]) -> Self {
        self.yes = yes;
        self
    }

    pub(super) const fn no(mut self, no: &'static [Consequence]) -> Self {
        self.no = no;
        self
    }

    pub(super) const fn proves(mut self, point: HoldPoint) -> Self {
        self.proves = Some(point);
        self
    }

    pub(super) const fn car(mut self, car: Car) -> Self {
        self.car = Some(car);
        self
    }

    pub(super) const fn behind_the_wheel(mut self) -> Self {
        self.behind_the_wheel = true;
        self
    }

    pub(super) const fn must_be_seen(mut self) -> Self {
        self.must_be_seen = true;
        self
    }

    pub(super) const fn again(mut self, again: Again) -> Self {
        self.again = again;
        self
    }

    pub(super) const fn owed_in(mut self, phases: &'static [Phase]) -> Self {
        self.owed_in = phases;
        self
    }

    pub(super) const fn bare(mut self, parts: &'static [ItemKind]) -> Self {
        self.bare = parts;
        self
    }

    pub(super) const fn compares(mut self, parts: &'static [ItemKind]) -> Self {
        self.compares = parts;
        self
    }

    pub(super) const fn meets(mut self, meets: Meets) -> Self {
        self.meets = Some(meets);
        self
    }

    pub(super) const fn photo(mut self, captions: &'static [CaptionWord]) -> Self {
        self.captions = captions;
        self
    }

    pub(super) const fn drawn(mut self, drawing: StepDrawing) -> Self {
        self.drawing = Some(drawing);
        self
    }
}

/// Declares the names of the steps, each with the code it is stored under and its row.
macro_rules! steps {
    ($($name:ident = $code:literal: $row:expr;)+) => {
        $crate::words! {
            /// Every step that a job can ask for.
            pub enum Step { $($name = $code),+ }
        }

        impl Step {
            /// All that is true of this step.
            pub const fn row(self) -> &'static Row {
                match self { $(Self::$name => const { &$row }),+ }
            }
        }
    };
}
pub(super) use steps;
