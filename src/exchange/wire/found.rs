//! What a run round a face or a measured rotor said, as it is stored: lengths in millimetres, to a
//! nanometre.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::word;
use crate::exchange::wire::decided::{length, mm, uncertain};
use crate::exchange::wire::{runout, thickness};
use crate::job::entry::{AgainstLimit, FaceFound, ReachFound, RotorFound, ShapeFound, WaveFound};
use crate::job::runout::Basis;
use crate::trade::play::conformity::Judged;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::{Form, Next, RotorNext, Surface, Undetermined};
use crate::trade::vehicle::Corner;
use crate::units::{Angle, AngleUnit};

/// What a run said.
#[derive(Serialize, Deserialize)]
pub(super) struct FaceText {
    corner: String,
    run: u8,
    rules: u32,
    surface: String,
    tir_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    closure_mm: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    shape: Option<ShapeText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    open: Option<OpenText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    runout: Option<ReachText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    limit: Option<AgainstText<runout::CardText>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    basis: Option<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    positions: Vec<PositionText>,
    next: String,
}

/// What a measurement of a rotor said.
#[derive(Serialize, Deserialize)]
pub(super) struct RotorText {
    corner: String,
    run: u8,
    rules: u32,
    thinnest_mm: f64,
    place: u8,
    u_mm: f64,
    guard_band_mm: f64,
    thickest_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    varies: Option<ReachText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    open: Option<OpenText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    least: Option<AgainstText<thickness::CardText>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    variation: Option<AgainstText<thickness::CardText>>,
    next: String,
}

#[derive(Serialize, Deserialize)]
struct ShapeText {
    form: String,
    mean_mm: f64,
    wobble: WaveText,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    warp: Option<WaveText>,
    rms_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    stands_out_mm: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    high_deg: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sure_to_deg: Option<f64>,
}

#[derive(Serialize, Deserialize)]
struct WaveText {
    mm: f64,
    u_mm: f64,
}

#[derive(Serialize, Deserialize)]
struct ReachText {
    read_mm: f64,
    u_mm: f64,
    scatter_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    dof: Option<f64>,
    estimate_mm: f64,
    low_mm: f64,
    high_mm: f64,
}

#[derive(Serialize, Deserialize)]
struct PositionText {
    stud: u8,
    wobble: ReachText,
}

#[derive(Serialize, Deserialize)]
struct AgainstText<C> {
    #[serde(flatten)]
    card: C,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    result: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    chance: Option<f64>,
}

#[derive(Serialize, Deserialize)]
#[serde(tag = "why", rename_all = "snake_case")]
enum OpenText {
    Rank { rank: usize, needed: usize },
    Bunched { condition: f64 },
    NoSpare { more: usize },
}

/// The stored form of what a run said.
pub(super) fn lower_face(found: &FaceFound) -> FaceText {
    let position = |(stud, wobble): &(u8, ReachFound)| PositionText {
        stud: stud + 1,
        wobble: lower_reach(wobble),
    };
    let (basis, positions) = found.positions.as_ref().map_or_else(
        || (None, Vec::new()),
        |(basis, all)| {
            let all = all.iter().map(position).collect();
            (Some(basis.code().to_owned()), all)
        },
    );
    FaceText {
        corner: found.corner.code().to_owned(),
        run: found.run,
        rules: found.rules,
        surface: found.surface.code().to_owned(),
        tir_mm: mm(found.tir),
        closure_mm: found.closure.map(mm),
        shape: found.shape.as_ref().ok().map(lower_shape),
        open: found.shape.as_ref().err().map(lower_open),
        runout: found.reach.as_ref().map(lower_reach),
        limit: lower_against(found.against.as_ref(), runout::lower_card),
        basis,
        positions,
        next: found.next.code().to_owned(),
    }
}

/// The stored form of what a rotor said.
pub(super) fn lower_rotor(found: &RotorFound) -> RotorText {
    RotorText {
        corner: found.corner.code().to_owned(),
        run: found.run,
        rules: found.rules,
        thinnest_mm: mm(found.thinnest),
        place: found.place,
        u_mm: mm(found.u),
        guard_band_mm: mm(found.guard_band),
        thickest_mm: mm(found.thickest),
        varies: found.varies.as_ref().ok().map(lower_reach),
        open: found.varies.as_ref().err().map(lower_open),
        least: lower_against(found.least.as_ref(), thickness::lower_card),
        variation: lower_against(found.variation.as_ref(), thickness::lower_card),
        next: found.next.code().to_owned(),
    }
}

fn lower_shape(shape: &ShapeFound) -> ShapeText {
    let degrees = |angle: Angle| angle.in_unit(AngleUnit::Degree);
    let wave = |wave: &WaveFound| WaveText {
        mm: mm(wave.reach),
        u_mm: mm(wave.u),
    };
    ShapeText {
        form: shape.form.code().to_owned(),
        mean_mm: mm(shape.mean),
        wobble: wave(&shape.wobble),
        warp: shape.warp.as_ref().map(wave),
        rms_mm: mm(shape.rms),
        stands_out_mm: shape.stands_out.map(mm),
        high_deg: shape.high_spot.map(degrees),
        sure_to_deg: shape.sure_to.map(degrees),
    }
}

fn lower_reach(reach: &ReachFound) -> ReachText {
    ReachText {
        read_mm: mm(reach.read),
        u_mm: mm(reach.u),
        scatter_mm: mm(reach.scatter),
        dof: reach.dof,
        estimate_mm: mm(reach.estimate),
        low_mm: mm(reach.low),
        high_mm: mm(reach.high),
    }
}

fn lower_against<C, T>(
    against: Option<&AgainstLimit<C>>,
    card: impl Fn(&C) -> T,
) -> Option<AgainstText<T>> {
    let against = against?;
    Some(AgainstText {
        card: card(&against.card),
        result: against.judged.map(|judged| judged.result.code().to_owned()),
        chance: against.judged.map(|judged| judged.conformance),
    })
}

const fn lower_open(why: &Undetermined) -> OpenText {
    match *why {
        Undetermined::Rank { rank, needed } => OpenText::Rank { rank, needed },
        Undetermined::Bunched { condition } => OpenText::Bunched { condition },
        Undetermined::NoSpare { more } => OpenText::NoSpare { more },
    }
}

/// What the stored form says of a run, if every word of it is known and no uncertainty is zero.
pub(super) fn raise_face(stored: FaceText) -> Option<FaceFound> {
    let shape = match (stored.shape, stored.open) {
        (Some(shape), None) => Ok(raise_shape(&shape)?),
        (None, Some(open)) => Err(raise_open(open)?),
        _ => return None,
    };
    let position = |one: &PositionText| {
        let stud = one.stud.checked_sub(1)?;
        Some((stud, raise_reach(&one.wobble)?))
    };
    let positions = stored.positions.iter().map(position);
    let positions: Vec<_> = positions.collect::<Option<_>>()?;
    let basis = word(stored.basis, Basis::from_code)?;
    Some(FaceFound {
        corner: Corner::from_code(&stored.corner)?,
        run: stored.run,
        rules: stored.rules,
        surface: Surface::from_code(&stored.surface)?,
        tir: length(stored.tir_mm)?,
        closure: maybe(stored.closure_mm, length)?,
        shape,
        reach: maybe(stored.runout.as_ref(), raise_reach)?,
        against: maybe(stored.limit, |it| raise_against(it, runout::raise_card))?,
        positions: match (basis, positions.is_empty()) {
            (Some(basis), false) => Some((basis, positions)),
            (None, true) => None,
            _ => return None,
        },
        next: Next::from_code(&stored.next)?,
    })
}

/// What the stored form says of a rotor, if every word of it is known and no uncertainty is zero.
pub(super) fn raise_rotor(stored: RotorText) -> Option<RotorFound> {
    let card = |it| raise_against(it, thickness::raise_card);
    Some(RotorFound {
        corner: Corner::from_code(&stored.corner)?,
        run: stored.run,
        rules: stored.rules,
        thinnest: length(stored.thinnest_mm)?,
        place: stored.place,
        u: uncertain(stored.u_mm)?,
        guard_band: uncertain(stored.guard_band_mm)?,
        thickest: length(stored.thickest_mm)?,
        varies: match (stored.varies, stored.open) {
            (Some(reach), None) => Ok(raise_reach(&reach)?),
            (None, Some(open)) => Err(raise_open(open)?),
            _ => return None,
        },
        least: maybe(stored.least, card)?,
        variation: maybe(stored.variation, card)?,
        next: RotorNext::from_code(&stored.next)?,
    })
}

/// What is not there is well; what is there must be understood.
fn maybe<T, V>(stored: Option<T>, raise: impl FnOnce(T) -> Option<V>) -> Option<Option<V>> {
    match stored {
        None => Some(None),
        Some(stored) => raise(stored).map(Some),
    }
}

fn raise_shape(stored: &ShapeText) -> Option<ShapeFound> {
    let angle = |degrees| Angle::new(degrees, AngleUnit::Degree).ok();
    let wave = |wave: &WaveText| {
        Some(WaveFound {
            reach: length(wave.mm)?,
            u: uncertain(wave.u_mm)?,
        })
    };
    Some(ShapeFound {
        form: Form::from_code(&stored.form)?,
        mean: length(stored.mean_mm)?,
        wobble: wave(&stored.wobble)?,
        warp: maybe(stored.warp.as_ref(), wave)?,
        rms: length(stored.rms_mm)?,
        stands_out: maybe(stored.stands_out_mm, length)?,
        high_spot: maybe(stored.high_deg, angle)?,
        sure_to: maybe(stored.sure_to_deg, angle)?,
    })
}

fn raise_reach(stored: &ReachText) -> Option<ReachFound> {
    Some(ReachFound {
        read: length(stored.read_mm)?,
        u: uncertain(stored.u_mm)?,
        scatter: uncertain(stored.scatter_mm)?,
        dof: stored.dof,
        estimate: length(stored.estimate_mm)?,
        low: length(stored.low_mm)?,
        high: length(stored.high_mm)?,
    })
}

fn raise_against<T, C>(
    stored: AgainstText<T>,
    card: impl FnOnce(T) -> Option<C>,
) -> Option<AgainstLimit<C>> {
    let judged = match (stored.result, stored.chance) {
        (Some(result), Some(conformance)) => Some(Judged {
            result: Guarded::from_code(&result)?,
            conformance,
        }),
        (None, None) => None,
        _ => return None,
    };
    Some(AgainstLimit {
        card: card(stored.card)?,
        judged,
    })
}

fn raise_open(stored: OpenText) -> Option<Undetermined> {
    Some(match stored {
        OpenText::Rank { rank, needed } if rank <= needed => Undetermined::Rank { rank, needed },
        OpenText::Rank { .. } => return None,
        OpenText::Bunched { condition } => Undetermined::Bunched { condition },
        OpenText::NoSpare { more } => Undetermined::NoSpare { more },
    })
}
