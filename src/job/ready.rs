//! What stands between a packed job and leaving: specs, wrenches, pictures of pages.

use crate::job::entry::{Carried, Event, KitItem};
use crate::job::key::Key;
use crate::job::plan::plan;
use crate::job::sheet::JobState;
use crate::job::wheel_end::wheel_end;
use crate::trade::fastening::{Fit, Spec, SpecBody, SpecItem, UsableShare, Wrench, fit};
use crate::trade::wheel_end::{Step, StepKey};

/// How far one spec is before leaving.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadySpec {
    /// What it is for.
    pub item: SpecItem,
    /// Where it is asked.
    pub step: StepKey,
    /// The spec, if it is there; "not found" counts as one.
    pub spec: Option<Spec>,
    /// Which wrench is for it.
    pub fit: Fit,
    /// Whether a picture of its page was kept.
    pub photographed: bool,
}

impl ReadySpec {
    /// Whether it was looked for and not found.
    pub fn is_not_found(&self) -> bool {
        let body = self.spec.as_ref().map(|spec| &spec.body);
        matches!(body, Some(SpecBody::NotFound { .. }))
    }

    /// Whether it gives a figure.
    pub fn is_given(&self) -> bool {
        self.spec.is_some() && !self.is_not_found()
    }
}

/// What the kit lacks, as it was last told.
pub fn missing(sheet: &JobState) -> &[KitItem] {
    match sheet.holds(&Key::Missing).map(|entry| &entry.what) {
        Some(Event::Missing(items)) => items,
        _ => &[],
    }
}

/// The specs that the work needs, each with the step that asks for it.
pub fn specs(sheet: &JobState) -> Vec<(Step, SpecItem)> {
    wheel_end(sheet).specs(&plan(sheet))
}

/// Every spec that the work needs, in the order in which they are looked up.
pub fn ready_specs(sheet: &JobState) -> Vec<ReadySpec> {
    let kit: &[Wrench] = sheet
        .carried()
        .map_or(&[], |carried| carried.wrenches.as_slice());
    let share = sheet.carried().map_or(UsableShare::DEFAULT, Carried::share);
    specs(sheet)
        .into_iter()
        .map(|(step, item)| {
            let step = StepKey::once(step);
            let spec = sheet.spec(item).cloned();
            ReadySpec {
                item,
                step,
                fit: spec
                    .as_ref()
                    .map_or(Fit::NothingToSet, |spec| fit(spec, kit, share)),
                photographed: sheet.photos(step).next().is_some(),
                spec,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fold;

    #[test]
    fn before_any_spec_all_six_are_open() {
        let specs = ready_specs(&fold([]));
        assert_eq!(specs.len(), 6);
        assert!(
            specs
                .iter()
                .all(|spec| !spec.is_given() && !spec.photographed)
        );
        assert!(!specs.iter().any(ReadySpec::is_not_found));
    }
}
