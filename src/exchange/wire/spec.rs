//! Spec specs, instruments and typed numbers as they are stored.

use crate::exchange::json::{Form, Json, Out, Tagged, form, unquoted};
use crate::job::entry::Carried;
use crate::job::kit::{MoreKit, Stand};
use crate::trade::fastening::{
    Printed, Spec, SpecBody, SpecSource, Stage, Thread, TorqueBody, TypedLever, Upkeep, Wrench,
};
use crate::trade::play::{Dial, Way};
use crate::units::double;
use crate::units::{
    Angle, AngleUnit, Decimal, Force, ForceUnit, Length, LengthUnit, Torque, TorqueUnit, Typed,
};
use crate::word::Word;

form!(enum SpecBody {
    Torque = "torque" (it),
    Play = "play" { most, least, way, source },
    NotFound = "not_found" { reason },
});

form!(
    enum Stage {
        Snug = "snug"(),
        Torque = "torque"(it),
        Angle = "angle"(it),
        Back = "back"[angle],
    }
);

form!(TorqueBody { stages, position, conditions, printed(..), source });
form!(Printed {
    count,
    thread,
    class,
    pattern,
    threadlocker
});
form!(SpecSource {
    document,
    page,
    looked_up,
    who,
    override_reason
});
form!(Way { method, place, rig, force("force_n") });
form!(Stand { name, rating });
form!(TypedLever {
    wrench,
    adapter,
    angle
});

/// The body stands beside the item, under its tag.
impl Form for Spec {
    fn read(json: &Json<'_>) -> Option<Self> {
        let mut members = json.map()?.iter();
        let body = members.find_map(|(name, body)| SpecBody::of(&unquoted(name)?, body))?;
        let item = json.field("item")?;
        Some(Self { item, body })
    }

    fn fields(&self, out: &mut Out) {
        out.field("item", &self.item);
        self.body.fields(out);
    }
}

/// The text as typed.
impl Form for Decimal {
    fn read(json: &Json<'_>) -> Option<Self> {
        Self::parse(&json.text()?).ok()
    }

    fn write(&self, out: &mut Out) {
        out.text(self.as_typed());
    }
}

impl<U: Word> Form for Typed<U> {
    fn read(json: &Json<'_>) -> Option<Self> {
        let (number, unit) = (json.field("number")?, json.field("unit")?);
        Some(Self { number, unit })
    }

    fn fields(&self, out: &mut Out) {
        out.field("number", &self.number);
        out.field("unit", &self.unit);
    }
}

/// The text as printed.
impl Form for Thread {
    fn read(json: &Json<'_>) -> Option<Self> {
        Self::parse(&json.text()?).ok()
    }

    fn write(&self, out: &mut Out) {
        out.text(self.as_typed());
    }
}

/// A number in one unit, which the name of its field says.
macro_rules! in_unit {
    ($($quantity:ident $unit:ident $of:ident),*) => {$(
        impl Form for $quantity {
            fn read(json: &Json<'_>) -> Option<Self> {
                Self::new(f64::read(json)?, $unit::$of).ok()
            }

            fn write(&self, out: &mut Out) {
                self.in_unit($unit::$of).write(out);
            }
        }
    )*};
}
in_unit!(Length LengthUnit Millimetre, Force ForceUnit Newton, Angle AngleUnit Degree);

impl Form for Dial {
    fn read(json: &Json<'_>) -> Option<Self> {
        let graduation = json.field("graduation_mm")?;
        let divisions = json.field("divisions_per_turn")?;
        Self::new(graduation, divisions, json.field("kind")?).ok()
    }

    fn fields(&self, out: &mut Out) {
        out.field("graduation_mm", &self.graduation());
        out.field("divisions_per_turn", &self.divisions_per_turn());
        out.field("kind", &self.kind());
    }
}

impl Form for Carried {
    fn read(json: &Json<'_>) -> Option<Self> {
        Some(Self {
            wrenches: json.field("wrenches")?,
            dial: json.field("dial")?,
            more: MoreKit {
                dials: json.field::<Option<_>>("dials")?.unwrap_or_default(),
                stands: json.field::<Option<_>>("stands")?.unwrap_or_default(),
                angle_gauge: json.field("angle_gauge")?,
                share: json.field("share")?,
                dial_error: json.field("dial_error")?,
                angle_due: json.field("angle_due")?,
            },
            dial_due: json.field("dial_due")?,
        })
    }

    fn fields(&self, out: &mut Out) {
        let more = &self.more;
        out.field("wrenches", &self.wrenches);
        out.field("dial", &self.dial);
        if !more.dials.is_empty() {
            out.field("dials", &more.dials);
        }
        if !more.stands.is_empty() {
            out.field("stands", &more.stands);
        }
        out.field("angle_gauge", &more.angle_gauge);
        out.field("share", &more.share);
        out.field("dial_due", &self.dial_due);
        out.field("dial_error", &more.dial_error);
        out.field("angle_due", &more.angle_due);
    }
}

/// Its range as numbers in its own unit.
impl Form for Wrench {
    fn read(json: &Json<'_>) -> Option<Self> {
        let unit = json.field("unit")?;
        Some(Self {
            name: json.field("name")?,
            low: Torque::new(json.field("low")?, unit).ok()?,
            high: Torque::new(json.field("high")?, unit).ok()?,
            unit,
            upkeep: Upkeep {
                graduation: json.field("graduation")?,
                checked: json.field("checked")?,
                clicks: json.field::<Option<_>>("clicks")?.unwrap_or(0),
            },
        })
    }

    fn fields(&self, out: &mut Out) {
        let upkeep = &self.upkeep;
        out.field("name", &self.name);
        out.field("low", &as_marked(self.low, self.unit));
        out.field("high", &as_marked(self.high, self.unit));
        out.field("unit", &self.unit);
        out.field("graduation", &upkeep.graduation);
        out.field("checked", &upkeep.checked);
        out.field("clicks", &Some(upkeep.clicks).filter(|clicks| *clicks > 0));
    }
}

/// The number that stands on the wrench: converting there and back leaves a last bit over, so that
/// the short number is taken wherever it means the same torque.
fn as_marked(torque: Torque, unit: TorqueUnit) -> f64 {
    let exact = torque.in_unit(unit);
    let short: f64 = double(&format!("{exact:.11e}")).unwrap_or(exact);
    if Torque::new(short, unit) == Ok(torque) {
        short
    } else {
        exact
    }
}
