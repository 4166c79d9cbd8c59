//! What a decision can have rested on: any figures at all, as they are stored.

use hubslate::job::entry::{Inputs, Proved};
use hubslate::trade::answer::Answer;
use hubslate::trade::play::way::Difference;
use hubslate::trade::play::{
    After, Against, BrakeHeld, Budget, Comparison, Component, Conformity, Evidence, Felt, Figures,
    Ground, Heat, Limit, LimitSource, ReadingFlag, Road, Source, StopSign, Test, WhyNot,
};
use hubslate::trade::vehicle::Corner;
use hubslate::units::{Length, LengthUnit};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

use super::way;

/// A result of any kind with the figures around it.
fn figures() -> impl Strategy<Value = Figures> {
    let parts = (0_u32..90_000, 1_u32..90_000, 0_u32..90_000, 1_u32..90_000);
    let source = select(vec![LimitSource::Manufacturer, LimitSource::House]);
    let recorded = (way(), source, 1_usize..7, 0_u8..10, option::of(1_u32..900));
    (parts, recorded).prop_map(|((play, u, limit, g), (way, source, cycles, kind, dof))| {
        let um = |um: u32| Length::new(f64::from(um) / 1000.0, LengthUnit::Micrometre).unwrap();
        // As they are stored: whole nanometres, and so exactly what reads back.
        let um = |n| Length::new((um(n).mm() * 1e6).round() / 1e6, LengthUnit::Millimetre).unwrap();
        let dof = dof.map(f64::from);
        let least = (play % 3 == 0).then(|| um(u));
        let limit = Limit {
            value: um(limit),
            least,
            way,
            source,
        };
        let comparison = Comparison {
            play: um(play),
            limit,
            u: um(u),
            dof,
            g: f64::from(g) / 1e4,
            cycles,
            beyond_rig: play % 2 == 0,
            conformance: f64::from(g % 1000) / 1e3,
        };
        let conformity = match kind {
            0 => Conformity::ProvenIn(comparison),
            1 => Conformity::InNotProven(comparison),
            2 => Conformity::OutNotProven(comparison),
            3 => Conformity::ProvenOut(comparison),
            4 | 5 => Conformity::MovementSeen {
                comparison,
                proven: kind == 4,
            },
            6 => Conformity::NoMovementSeen { resolution: um(u) },
            8 => Conformity::TightNotProven(comparison),
            9 => Conformity::TightProven(comparison),
            _ => Conformity::NoComparison(WhyNot::ReadingFlag(ReadingFlag::NutSlack)),
        };
        Figures {
            play: um(play),
            cycles,
            budget: Budget {
                components: vec![Component {
                    source: Source::BetweenSets,
                    u: um(u),
                    dof,
                }],
                u_c: um(u),
                dof_eff: dof,
                expanded95: um(u),
                g: f64::from(g) / 1e4,
            },
            limit,
            apart: (kind % 2 == 0).then_some(Difference::Place),
            conformity,
        }
    })
}

pub fn proved() -> impl Strategy<Value = Proved> {
    let not_done = vec(select(Test::ALL), 0..3);
    let outcome = prop_oneof![
        (any::<bool>(), not_done.clone())
            .prop_map(|(proven, not_done)| After::Pass { proven, not_done }),
        vec(select(Against::ALL), 0..3).prop_map(|against| After::Blocked { against }),
        not_done.prop_map(|not_done| After::NotJudged { not_done }),
    ];
    let spun = (select(Answer::ALL), select(Answer::ALL));
    let set = option::of(figures());
    (select(Corner::ALL), 1_u32..9, set, spun, outcome).prop_map(
        |(corner, rules, set, (roughness, noise), outcome)| Proved {
            corner,
            rules,
            set: set.map(Box::new),
            roughness,
            noise,
            outcome,
        },
    )
}

pub fn inputs() -> impl Strategy<Value = Box<Inputs>> {
    let evidence = (
        select(Answer::ALL),
        select(Answer::ALL),
        option::of(select(Felt::ALL)),
        select(BrakeHeld::ALL),
        select(Road::ALL),
        select(Heat::ALL),
        vec(select(StopSign::ALL), 0..3),
        vec(select(Test::ALL), 0..3),
    );
    let grounds = vec(select(Ground::ALL), 0..4);
    (
        vec(figures(), 0..3),
        option::of(figures()),
        evidence,
        grounds,
    )
        .prop_map(|(sets, joined, recorded, rests_on)| {
            let (roughness, noise, felt, brake_held, road, heat, stop_signs, not_done) = recorded;
            let evidence = Evidence {
                spec_apart: felt.map(|_| WhyNot::Way(Difference::Rig)),
                roughness,
                noise,
                felt,
                brake_held,
                road,
                heat,
                stop_signs,
                not_done,
                ..Evidence::nothing()
            };
            Inputs::stored((1..).zip(sets).collect(), joined, evidence, rests_on)
        })
}
