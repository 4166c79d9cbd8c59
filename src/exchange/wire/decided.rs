//! What a decision or a proof rested on, as it is stored: lengths in millimetres, to a nanometre.

use crate::exchange::json::{Form, Json, Out, form};
use crate::job::entry::{Inputs, Proved};
use crate::job::reason::{why_not, why_not_of};
use crate::trade::play::way::Difference;
use crate::trade::play::{
    After, Budget, Comparison, Component, Conformity, Evidence, Figures, Limit, WhyNot,
};
use crate::units::Length;

form!(Component { source, u("u_mm"), dof });
form!(Limit { value("mm"), least("least_mm"), source, way });
form!(Proved { corner, rules, set, roughness("rough"), noise("noisy"), outcome(..) });

impl Form for WhyNot {
    fn read(json: &Json<'_>) -> Option<Self> {
        why_not_of(&json.text()?)
    }

    fn write(&self, out: &mut Out) {
        out.text(why_not(*self));
    }
}

impl Form for Difference {
    fn read(json: &Json<'_>) -> Option<Self> {
        match WhyNot::read(json)? {
            WhyNot::Way(apart) => Some(apart),
            WhyNot::ReadingFlag(_) => None,
        }
    }

    fn write(&self, out: &mut Out) {
        WhyNot::Way(*self).write(out);
    }
}

impl Form for Box<Figures> {
    fn read(json: &Json<'_>) -> Option<Self> {
        Figures::read(json).map(Self::new)
    }

    fn write(&self, out: &mut Out) {
        Figures::write(self, out);
    }
}

impl Form for Inputs {
    fn read(json: &Json<'_>) -> Option<Self> {
        <Box<Self>>::read(json).map(|inputs| *inputs)
    }

    fn fields(&self, out: &mut Out) {
        let evidence = &self.evidence;
        out.name("sets");
        out.list(&self.sets, |out, (set, figures)| {
            out.open();
            out.field("set", set);
            figures.fields(out);
            out.close();
        });
        out.field("together", &self.joined);
        out.field("spec_apart", &evidence.spec_apart);
        out.field("rough", &evidence.roughness);
        out.field("noisy", &evidence.noise);
        out.field("felt", &evidence.felt);
        out.field("brake_held", &evidence.brake_held);
        out.field("road", &evidence.road);
        out.field("heat", &evidence.heat);
        out.field("stop_signs", &evidence.stop_signs);
        out.field("not_done", &evidence.not_done);
        out.field("rests_on", &self.rests_on);
    }
}

impl Form for Box<Inputs> {
    fn read(json: &Json<'_>) -> Option<Self> {
        let sets = json.find("sets").ok()??.list()?.iter();
        let set = |set: &Json<'_>| Some((set.field("set")?, Figures::read(set)?));
        let evidence = Evidence {
            spec_apart: json.field("spec_apart")?,
            roughness: json.field("rough")?,
            noise: json.field("noisy")?,
            felt: json.field("felt")?,
            brake_held: json.field("brake_held")?,
            road: json.field("road")?,
            heat: json.field("heat")?,
            stop_signs: json.field("stop_signs")?,
            not_done: json.field("not_done")?,
            ..Evidence::nothing()
        };
        Some(Inputs::stored(
            sets.map(set).collect::<Option<_>>()?,
            json.field("together")?,
            evidence,
            json.field("rests_on")?,
        ))
    }

    fn write(&self, out: &mut Out) {
        Inputs::write(self, out);
    }
}

/// Nothing is known without uncertainty.
pub(super) fn uncertain(u: Length) -> bool {
    u > Length::ZERO
}

impl Form for Figures {
    fn read(json: &Json<'_>) -> Option<Self> {
        let budget = Budget {
            components: json.field("parts")?,
            u_c: json.field("u_mm").filter(|u| uncertain(*u))?,
            dof_eff: json.field("dof")?,
            expanded95: json.field("expanded_mm").filter(|u| uncertain(*u))?,
            g: json.field("g").filter(|g| *g > 0.0)?,
        };
        let (play, cycles, limit) = (
            json.field("mean_mm")?,
            json.field("cycles")?,
            json.field("limit")?,
        );
        let beyond_rig: Option<bool> = json.field("beyond_rig")?;
        let chance: Option<f64> = json.field("chance")?;
        let comparison = chance.map(|conformance| Comparison {
            play,
            limit,
            u: budget.u_c,
            dof: budget.dof_eff,
            g: budget.g,
            cycles,
            beyond_rig: beyond_rig == Some(true),
            conformance,
        });
        Some(Self {
            play,
            cycles,
            budget,
            limit,
            apart: json.field("apart")?,
            conformity: conformity(json, comparison)?,
        })
    }

    fn fields(&self, out: &mut Out) {
        out.field("mean_mm", &self.play);
        out.field("cycles", &self.cycles);
        out.field("parts", &self.budget.components);
        out.field("u_mm", &self.budget.u_c);
        out.field("dof", &self.budget.dof_eff);
        out.field("expanded_mm", &self.budget.expanded95);
        out.field("g", &self.budget.g);
        out.field("limit", &self.limit);
        out.field("apart", &self.apart);
        out.code("result", self.conformity.code());
        if let Conformity::MovementSeen { proven, .. } = &self.conformity {
            out.field("proven", proven);
        }
        if let Some(comparison) = self.conformity.comparison() {
            out.field("chance", &comparison.conformance);
            out.field("beyond_rig", &comparison.beyond_rig);
        }
        match &self.conformity {
            Conformity::NoMovementSeen { resolution } => out.field("resolution_mm", resolution),
            Conformity::NoComparison(why) => out.field("why", why),
            _ => {}
        }
    }
}

fn conformity(json: &Json<'_>, comparison: Option<Comparison>) -> Option<Conformity> {
    Some(match &*json.find("result").ok()??.text()? {
        "proven_in" => Conformity::ProvenIn(comparison?),
        "in_not_proven" => Conformity::InNotProven(comparison?),
        "out_not_proven" => Conformity::OutNotProven(comparison?),
        "proven_out" => Conformity::ProvenOut(comparison?),
        "tight_not_proven" => Conformity::TightNotProven(comparison?),
        "tight_proven" => Conformity::TightProven(comparison?),
        "movement_seen" => Conformity::MovementSeen {
            comparison: comparison?,
            proven: json.field("proven")?,
        },
        "no_movement_seen" => Conformity::NoMovementSeen {
            resolution: json.field("resolution_mm")?,
        },
        "no_comparison" => Conformity::NoComparison(json.field("why")?),
        _ => return None,
    })
}

/// An outcome has what belongs to it and nothing else.
impl Form for After {
    fn read(json: &Json<'_>) -> Option<Self> {
        let said = (
            json.field("proven")?,
            json.field("against")?,
            json.field("not_done")?,
        );
        match (&*json.find("outcome").ok()??.text()?, said) {
            ("pass", (Some(proven), None, Some(not_done))) => Some(Self::Pass { proven, not_done }),
            ("blocked", (None, Some(against), None)) => Some(Self::Blocked { against }),
            ("not_judged", (None, None, Some(not_done))) => Some(Self::NotJudged { not_done }),
            _ => None,
        }
    }

    fn fields(&self, out: &mut Out) {
        out.code("outcome", self.code());
        match self {
            Self::Pass { proven, not_done } => {
                out.field("proven", proven);
                out.field("not_done", not_done);
            }
            Self::Blocked { against } => out.field("against", against),
            Self::NotJudged { not_done } => out.field("not_done", not_done),
        }
    }
}
