//! What a run round a face or a measured rotor said, as it is stored: lengths in millimetres, to a
//! nanometre.

use crate::exchange::json::{Form, Json, Out, form};
use crate::exchange::wire::decided::uncertain;
use crate::job::entry::{
    AgainstLimit, FaceFound, ReachFound, RotorFound, RunoutSpec, ShapeFound, ThicknessSpec,
    WaveFound,
};
use crate::job::runout::Basis;
use crate::trade::play::conformity::Judged;
use crate::trade::runout::Undetermined;

form!(FaceFound {
    corner, run, rules, surface, tir("tir_mm"), closure("closure_mm"),
    shape(by put_shape, get_shape), reach("runout"), against("limit"),
    positions(by put_positions, get_positions), next,
});

form!(RotorFound {
    corner, run, rules, thinnest("thinnest_mm"), place, u("u_mm"), guard_band("guard_band_mm"),
    thickest("thickest_mm"), varies(by put_varies, get_varies), least, variation, next,
} if it uncertain(it.u) && uncertain(it.guard_band));

form!(ShapeFound {
    form, mean("mean_mm"), wobble, warp, rms("rms_mm"), stands_out("stands_out_mm"),
    high_spot("high_deg"), sure_to("sure_to_deg"),
});

form!(WaveFound { reach("mm"), u("u_mm") } if it uncertain(it.u));

form!(ReachFound {
    read("read_mm"), u("u_mm"), scatter("scatter_mm"), dof, estimate("estimate_mm"),
    low("low_mm"), high("high_mm"),
} if it uncertain(it.u) && uncertain(it.scatter));

form!(AgainstLimit<RunoutSpec> { spec(..), judged(by put_judged, get_judged) });
form!(AgainstLimit<ThicknessSpec> { spec(..), judged(by put_judged, get_judged) });

/// The variants that are kept in a box.
macro_rules! boxed {
    ($($found:ident)*) => {$(
        impl Form for Box<$found> {
            fn read(json: &Json<'_>) -> Option<Self> {
                $found::read(json).map(Self::new)
            }

            fn write(&self, out: &mut Out) {
                $found::write(self, out);
            }
        }
    )*};
}
boxed!(FaceFound RotorFound);

fn put_judged(out: &mut Out, judged: &Option<Judged>) {
    if let Some(judged) = judged {
        out.field("result", &judged.result);
        out.field("chance", &judged.conformance);
    }
}

fn get_judged(json: &Json<'_>) -> Option<Option<Judged>> {
    match (json.field("result")?, json.field("chance")?) {
        (Some(result), Some(conformance)) => Some(Some(Judged {
            result,
            conformance,
        })),
        (None, None) => Some(None),
        _ => None,
    }
}

fn put_shape(out: &mut Out, shape: &Result<ShapeFound, Undetermined>) {
    put_or_open(out, "shape", shape);
}

fn get_shape(json: &Json<'_>) -> Option<Result<ShapeFound, Undetermined>> {
    get_or_open(json, "shape")
}

fn put_varies(out: &mut Out, varies: &Result<ReachFound, Undetermined>) {
    put_or_open(out, "varies", varies);
}

fn get_varies(json: &Json<'_>) -> Option<Result<ReachFound, Undetermined>> {
    get_or_open(json, "varies")
}

/// What was found, or why that is open.
fn put_or_open<T: Form>(out: &mut Out, name: &str, found: &Result<T, Undetermined>) {
    match found {
        Ok(found) => out.field(name, found),
        Err(why) => out.field("open", why),
    }
}

fn get_or_open<T: Form>(json: &Json<'_>, name: &str) -> Option<Result<T, Undetermined>> {
    match (json.field(name)?, json.field("open")?) {
        (Some(found), None) => Some(Ok(found)),
        (None, Some(why)) => Some(Err(why)),
        _ => None,
    }
}

impl Form for Undetermined {
    fn read(json: &Json<'_>) -> Option<Self> {
        match &*json.find("why").ok()??.text()? {
            "rank" => {
                let (rank, needed) = (json.field("rank")?, json.field("needed")?);
                (rank <= needed).then_some(Self::Rank { rank, needed })
            }
            "bunched" => {
                let condition = json.field("condition")?;
                Some(Self::Bunched { condition })
            }
            "no_spare" => {
                let more = json.field("more")?;
                Some(Self::NoSpare { more })
            }
            _ => None,
        }
    }

    fn fields(&self, out: &mut Out) {
        match self {
            Self::Rank { rank, needed } => {
                out.code("why", "rank");
                out.field("rank", rank);
                out.field("needed", needed);
            }
            Self::Bunched { condition } => {
                out.code("why", "bunched");
                out.field("condition", condition);
            }
            Self::NoSpare { more } => {
                out.code("why", "no_spare");
                out.field("more", more);
            }
        }
    }
}

/// The rotor on every stud, and what that is told from.
type Positions = Option<(Basis, Vec<(u8, ReachFound)>)>;

/// Studs are stored from 1, as they are shown.
fn put_positions(out: &mut Out, positions: &Positions) {
    let Some((basis, all)) = positions else {
        return;
    };
    out.field("basis", basis);
    if !all.is_empty() {
        out.name("positions");
        out.list(all, |out, (stud, wobble)| {
            out.pair(["stud", "wobble"], (&(stud + 1), wobble));
        });
    }
}

fn get_positions(json: &Json<'_>) -> Option<Positions> {
    let position = |it: &Json<'_>| {
        let stud = it.field::<u8>("stud")?.checked_sub(1)?;
        Some((stud, it.field("wobble")?))
    };
    let all = match json.find("positions").ok()? {
        Some(all) => all.list()?.iter().map(position).collect::<Option<_>>()?,
        None => Vec::new(),
    };
    match (json.field("basis")?, all.is_empty()) {
        (Some(basis), false) => Some(Some((basis, all))),
        (None, true) => Some(None),
        _ => None,
    }
}
