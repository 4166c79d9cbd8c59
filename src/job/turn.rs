//! Turning fasteners to their spec: which is next, with what, and what one tap writes.
//!
//! A stage of the spec is gone through for every fastener of the group before the next begins.
//! How far a fastener is follows from the taps at its step since the pass began.

use crate::job::entry::{Carried, EntryId, Event, Moved};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::job::wheel_end::group_items;
use crate::trade::fastening::{
    Fit, Lever, LeverError, Pattern, Spec, SpecBody, SpecItem, Stage, TypedLever, UsableShare,
    Wrench, cross_order, fit, star_order, wrench_setting,
};
use crate::trade::wheel_end::{Form, Item, ItemKind, ItemState, PlannedStep, StepKey};
use crate::units::{Angle, AngleUnit, DecimalMark, Format, System, Typed, TypedAngle, TypedTorque};

/// What is turned at one step, and how far it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Turning {
    /// The step.
    pub step: StepKey,
    /// The fasteners in the order in which they are turned, numbered in that order.
    pub items: Vec<Item>,
    /// Where each of them stands: clockwise from the top or from the top down, from 0.
    pub places: Vec<usize>,
    /// What the spec asks for; empty where there is no figure.
    pub stages: Vec<Stage>,
    /// Which stage is being gone through, from 0; the count of stages when all are done.
    pub stage: usize,
    /// How many fasteners in order have this stage behind them.
    pub done: usize,
    /// How many have it before them.
    left: usize,
    /// How many stages each of them has behind it.
    taps: Vec<usize>,
    /// Whether a mishap stands in the way.
    broken: bool,
    /// The adapter on the wrench.
    lever: Option<Lever>,
    /// Which share of a wrench's range is used.
    share: UsableShare,
    /// The wrench of each torque stage, if one on board fits them all.
    wrenches: Vec<Wrench>,
}

/// What one swing of the handle is counted as, where no angle gauge is on it: a quarter of a flat.
pub const SWING_DEGREES: u8 = 15;

/// The spec that a group is turned to.
pub const fn spec_item(group: ItemKind) -> Option<SpecItem> {
    Some(match group {
        ItemKind::AxleNut => SpecItem::AxleNut,
        ItemKind::HubBolts => SpecItem::HubBolts,
        ItemKind::BracketBolts => SpecItem::BracketBolts,
        ItemKind::CaliperPins => SpecItem::CaliperPins,
        ItemKind::LugNuts => SpecItem::LugNuts,
        ItemKind::SpindleNut => SpecItem::SpindleNut,
        ItemKind::LockNut => SpecItem::LockNut,
        ItemKind::StrutBolts => SpecItem::StrutBolts,
        ItemKind::BallJoint => SpecItem::BallJoint,
        ItemKind::TieRod => SpecItem::TieRod,
        _ => return None,
    })
}

/// The group that a spec is for; none for the play limit.
pub const fn group_of(item: SpecItem) -> Option<ItemKind> {
    Some(match item {
        SpecItem::AxleNut => ItemKind::AxleNut,
        SpecItem::HubBolts => ItemKind::HubBolts,
        SpecItem::BracketBolts => ItemKind::BracketBolts,
        SpecItem::CaliperPins => ItemKind::CaliperPins,
        SpecItem::LugNuts => ItemKind::LugNuts,
        SpecItem::SpindleNut => ItemKind::SpindleNut,
        SpecItem::LockNut => ItemKind::LockNut,
        SpecItem::StrutBolts => ItemKind::StrutBolts,
        SpecItem::BallJoint => ItemKind::BallJoint,
        SpecItem::TieRod => ItemKind::TieRod,
        SpecItem::PlayLimit => return None,
    })
}

/// The step at which the spec of a group is asked for, the one of the same corner first.
pub fn spec_step(steps: &[PlannedStep], planned: &PlannedStep, group: ItemKind) -> Option<StepKey> {
    let item = spec_item(group)?;
    let asks = |step: &&PlannedStep| step.form == Form::Spec(item);
    let here = steps
        .iter()
        .filter(asks)
        .find(|step| step.key.corner == planned.key.corner);
    here.or_else(|| steps.iter().find(asks))
        .map(|step| step.key)
}

impl Turning {
    /// The fasteners of a step as they stand; `None` for a step without a corner.
    pub fn of(sheet: &JobState, planned: &PlannedStep, group: ItemKind) -> Option<Self> {
        let items = group_items(sheet, planned.key.corner?, group);
        let spec = spec_item(group).and_then(|item| sheet.spec(item));
        let stages = spec.map(stages).unwrap_or_default();
        let taps: Vec<usize> = items
            .iter()
            .map(|item| taps(sheet, planned.key, *item))
            .collect();
        let stage = taps.iter().copied().min().unwrap_or(0);
        Some(Self {
            step: planned.key,
            broken: items.iter().any(|item| sheet.open_mishap(*item).is_some()),
            share: sheet.carried().map_or(UsableShare::DEFAULT, Carried::share),
            lever: sheet.lever(planned.key).map(TypedLever::lever),
            places: places(group, items.len(), spec.and_then(pattern)),
            wrenches: spec.map(|spec| fitting(sheet, spec)).unwrap_or_default(),
            stage: stage.min(stages.len()),
            done: taps.iter().take_while(|taps| **taps > stage).count(),
            left: taps.iter().filter(|taps| **taps <= stage).count(),
            items,
            stages,
            taps,
        })
    }

    /// The fastener whose turn it is; `None` when all are at their spec, there is no figure, or
    /// one of them is broken.
    pub fn next(&self) -> Option<Item> {
        self.stages.get(self.stage)?;
        if self.broken {
            return None;
        }
        self.items.get(self.done).copied()
    }

    /// How many stages a fastener has behind it.
    pub fn reached(&self, item: Item) -> Option<usize> {
        let place = self.items.iter().position(|one| *one == item)?;
        self.taps.get(place).copied()
    }

    /// What is asked of the next fastener.
    pub fn asked(&self) -> Option<&Stage> {
        self.stages.get(self.stage)
    }

    /// The torque to which the wrench is set in this stage; an angle follows the torque before it.
    pub fn torque(&self) -> Option<&TypedTorque> {
        self.torques().last()
    }

    fn torques(&self) -> impl Iterator<Item = &TypedTorque> {
        let until = self.stage.saturating_add(1);
        self.stages
            .iter()
            .take(until)
            .filter_map(|stage| match stage {
                Stage::Torque(torque) => Some(torque),
                Stage::Snug | Stage::Angle(_) | Stage::Back(_) => None,
            })
    }

    /// The wrench of this stage.
    pub fn wrench(&self) -> Option<&Wrench> {
        let torques = self.torques().count();
        self.wrenches.get(torques.checked_sub(1)?)
    }

    /// How far so many swings of the handle have turned it, out of the angle that is asked for.
    pub fn swung(&self, swings: u8) -> Option<(Angle, &TypedAngle)> {
        let Some(Stage::Angle(asked)) = self.asked() else {
            return None;
        };
        let swing = Angle::new(f64::from(SWING_DEGREES), AngleUnit::Degree).ok()?;
        Some((swing.times(f64::from(swings)).min(asked.angle()), asked))
    }

    /// The tap that stands before an angle, by which the swings that were counted after it are
    /// known again.
    pub fn before_angle<'a>(&self, sheet: &'a JobState) -> Option<&'a EntryId> {
        let (Stage::Angle(_), item) = (self.asked()?, self.next()?) else {
            return None;
        };
        let last = sheet.holds(&Key::Turned(self.step, item))?;
        Some(&last.id)
    }

    /// Whether a torque wrench clicks in this stage. An angle is turned on with a bar, or with a
    /// wrench that is far beyond its setting and does not click again: it counts as no click.
    pub fn uses_wrench(&self) -> bool {
        matches!(self.asked(), Some(Stage::Torque(_)))
    }

    /// What the wrench is set to, in its own unit, so that the spec's torque arrives; `None`
    /// where no wrench fits or the adapter gives no setting.
    pub fn set_to(&self) -> Option<TypedTorque> {
        let (torque, wrench) = (self.torque()?, self.wrench()?);
        match self.lever {
            None => Some(shown_in_wrench(torque, wrench)),
            Some(lever) => {
                let setting = wrench_setting(torque.torque(), lever).ok()?;
                let shown = PLAIN.torque_in(setting, wrench.unit, 1);
                Typed::parse(&shown.number, wrench.unit).ok()
            }
        }
    }

    /// Why the adapter gives no setting.
    pub fn lever_slip(&self) -> Option<LeverError> {
        wrench_setting(self.torque()?.torque(), self.lever?).err()
    }

    /// Whether an adapter is on the wrench.
    pub const fn has_lever(&self) -> bool {
        self.lever.is_some()
    }

    /// Whether with the adapter the wrench would be set outside its usable range.
    pub fn is_out_of_range(&self) -> bool {
        match (self.set_to(), self.wrench()) {
            (Some(set), Some(wrench)) => !wrench.holds(set.torque(), self.share),
            _ => false,
        }
    }

    /// Whether the pass was begun and is not at its end.
    pub fn is_begun(&self) -> bool {
        self.next().is_some() && (self.stage > 0 || self.left < self.items.len())
    }

    /// Whether the next tap is the last of the step.
    pub fn is_last(&self) -> bool {
        self.stage.saturating_add(1) == self.stages.len() && self.left == 1
    }

    /// What one tap writes: the next fastener at its spec, or one stage nearer to it.
    pub fn tap(&self) -> Option<Event> {
        let item = self.next()?;
        let last_stage = self.stage.saturating_add(1) == self.stages.len();
        let turns_back = matches!(self.asked(), Some(Stage::Back(_)));
        let wrench = self
            .wrench()
            .filter(|_| self.uses_wrench())
            .and_then(|wrench| Some((wrench.name.clone(), self.set_to()?)));
        Some(Event::Moved(Moved {
            step: self.step,
            items: vec![item],
            to: match (last_stage, turns_back) {
                (true, _) => ItemState::Done,
                (false, true) => ItemState::Loosened,
                (false, false) => ItemState::Snug,
            },
            wrench,
        }))
    }
}

fn stages(spec: &Spec) -> Vec<Stage> {
    match &spec.body {
        SpecBody::Torque(body) if spec.fault().is_none() => body.stages.clone(),
        _ => Vec::new(),
    }
}

/// How often a fastener was tapped at a step since its pass began; one that came off, or was
/// loosened at another step, begins again.
fn taps(sheet: &JobState, step: StepKey, item: Item) -> usize {
    sheet.counting().fold(0, |taps, entry| match &entry.what {
        Event::Pass(passed) if *passed == step => 0,
        Event::Moved(moved) if moved.items.contains(&item) && moved.to == ItemState::Off => 0,
        Event::Moved(moved) if moved.items.contains(&item) && moved.to == ItemState::ByHand => taps,
        Event::Moved(moved)
            if moved.items.contains(&item)
                && moved.to == ItemState::Loosened
                && moved.step != step =>
        {
            0
        }
        Event::Moved(moved) if moved.step == step && moved.items.contains(&item) => taps + 1,
        _ => taps,
    })
}

fn pattern(spec: &Spec) -> Option<Pattern> {
    match &spec.body {
        SpecBody::Torque(body) => body.printed.pattern,
        _ => None,
    }
}

/// From the order of the trade, numbered clockwise from 1, to places from 0; where the page goes
/// round the circle or by numbers of its own, one after the other.
fn places(group: ItemKind, count: usize, pattern: Option<Pattern>) -> Vec<usize> {
    let number = u8::try_from(count).unwrap_or(0);
    let order = match group {
        _ if matches!(pattern, Some(Pattern::Round | Pattern::AsNumbered)) => {
            return (0..count).collect();
        }
        ItemKind::LugNuts => star_order(number),
        ItemKind::HubBolts => cross_order(number),
        _ => return (0..count).collect(),
    };
    match order {
        Ok(order) => order
            .iter()
            .map(|place| usize::from(place.saturating_sub(1)))
            .collect(),
        Err(_) => (0..count).collect(),
    }
}

fn fitting(sheet: &JobState, spec: &Spec) -> Vec<Wrench> {
    let Some(carried) = sheet.carried() else {
        return Vec::new();
    };
    let kit = carried.wrenches.as_slice();
    match fit(spec, kit, carried.share()) {
        Fit::Fits { wrenches } => wrenches
            .iter()
            .filter_map(|index| kit.get(*index).cloned())
            .collect(),
        Fit::Lacks { .. } | Fit::NothingToSet => Vec::new(),
    }
}

/// How a setting is told in digits that [`Typed`] reads.
const PLAIN: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};

/// The spec's torque in the wrench's unit, never coarser than the spec gives it.
pub fn shown_in_wrench(torque: &TypedTorque, wrench: &Wrench) -> TypedTorque {
    let shown = PLAIN.typed_in(torque, wrench.unit);
    Typed::parse(&shown.number, wrench.unit).unwrap_or_else(|_| torque.clone())
}

#[cfg(test)]
#[path = "turn/tests.rs"]
pub(crate) mod tests;
