//! What a run or a measurement can have said: any values at all, as they are stored.

use hubslate::job::entry::{
    AgainstLimit, Event, FaceFound, ReachFound, RotorFound, ShapeFound, WaveFound,
};
use hubslate::job::runout::Basis;
use hubslate::trade::play::conformity::Judged;
use hubslate::trade::play::uncertainty::Guarded;
use hubslate::trade::runout::{Form, Next, RotorNext, Undetermined};
use hubslate::units::{Angle, Length};

use super::bench::{runout_spec, thickness_spec};
use super::*;

/// Whole nanometres, and so exactly what reads back.
fn nanometres() -> impl Strategy<Value = Length> {
    (1_u32..90_000_000)
        .prop_map(|nm| Length::new(f64::from(nm) / 1e6, LengthUnit::Millimetre).unwrap())
}

/// The same of an angle, in thousandths of a degree.
fn degrees() -> impl Strategy<Value = Angle> {
    (0_u32..360_000).prop_map(|one| Angle::new(f64::from(one) / 1e3, AngleUnit::Degree).unwrap())
}

fn reach() -> impl Strategy<Value = ReachFound> {
    let lengths = (nanometres(), nanometres(), nanometres(), nanometres());
    let dof = option::of(1_u32..900);
    (lengths, nanometres(), nanometres(), dof).prop_map(
        |((read, u, scatter, estimate), low, high, dof)| ReachFound {
            read,
            u,
            scatter,
            dof: dof.map(f64::from),
            estimate,
            low,
            high,
        },
    )
}

fn against<C: std::fmt::Debug>(
    spec: impl Strategy<Value = C>,
) -> impl Strategy<Value = AgainstLimit<C>> {
    let judged = (select(Guarded::ALL), 0_u32..=1000).prop_map(|(result, chance)| Judged {
        result,
        conformance: f64::from(chance) / 1e3,
    });
    (spec, option::of(judged)).prop_map(|(spec, judged)| AgainstLimit { spec, judged })
}

fn why_open() -> impl Strategy<Value = Undetermined> {
    prop_oneof![
        (0_usize..5).prop_map(|rank| Undetermined::Rank { rank, needed: 5 }),
        (31_u32..900).prop_map(|condition| Undetermined::Bunched {
            condition: f64::from(condition),
        }),
        (1_usize..3).prop_map(|more| Undetermined::NoSpare { more }),
    ]
}

fn shape() -> impl Strategy<Value = ShapeFound> {
    let wave = || (nanometres(), nanometres()).prop_map(|(reach, u)| WaveFound { reach, u });
    let lengths = (nanometres(), nanometres(), option::of(nanometres()));
    let angles = (option::of(degrees()), option::of(degrees()));
    let waves = (wave(), option::of(wave()));
    (select(Form::ALL), lengths, angles, waves).prop_map(
        |(form, (mean, rms, stands_out), (high_spot, sure_to), (wobble, warp))| ShapeFound {
            form,
            mean,
            wobble,
            warp,
            rms,
            stands_out,
            high_spot,
            sure_to,
        },
    )
}

fn face() -> impl Strategy<Value = FaceFound> {
    let of = (
        select(Corner::ALL),
        1_u8..=255,
        1_u32..9,
        select(Surface::ALL),
    );
    let shape = prop_oneof![shape().prop_map(Ok), why_open().prop_map(Err)];
    let read = (nanometres(), option::of(nanometres()));
    let positions = (select(Basis::ALL), vec((0_u8..10, reach()), 1..4));
    let reached = (option::of(reach()), option::of(against(runout_spec())));
    let next = select(Next::ALL);
    (of, read, shape, reached, option::of(positions), next).prop_map(
        |(of, (tir, closure), shape, (reach, against), positions, next)| {
            let (corner, run, rules, surface) = of;
            FaceFound {
                corner,
                run,
                rules,
                surface,
                tir,
                closure,
                shape,
                reach,
                against,
                positions,
                next,
            }
        },
    )
}

fn rotor() -> impl Strategy<Value = RotorFound> {
    let of = (select(Corner::ALL), 1_u8..=255, 1_u32..9, 1_u8..=24);
    let read = (nanometres(), nanometres(), nanometres(), nanometres());
    let varies = prop_oneof![reach().prop_map(Ok), why_open().prop_map(Err)];
    let limit = || option::of(against(thickness_spec()));
    (of, read, varies, limit(), limit(), select(RotorNext::ALL)).prop_map(
        |(of, (thinnest, thickest, u, guard_band), varies, least, variation, next)| {
            let (corner, run, rules, place) = of;
            RotorFound {
                corner,
                run,
                rules,
                thinnest,
                place,
                u,
                guard_band,
                thickest,
                varies,
                least,
                variation,
                next,
            }
        },
    )
}

pub(super) fn found() -> impl Strategy<Value = Event> {
    prop_oneof![
        face().prop_map(|found| Event::FaceFound(Box::new(found))),
        rotor().prop_map(|found| Event::RotorFound(Box::new(found))),
    ]
}
