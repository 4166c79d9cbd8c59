//! The bodies of entries as they are stored: each under its tag, words as their stable codes.

use crate::exchange::json::{Form, Json, Out, form};
use crate::exchange::paper;
use crate::job::entry::{
    Caption, Captioned, Consent, Decided, DialSetup, Due, Ended, Event, Gauging, HandedOver,
    Interrupted, Moved, Opened, Paid, Part, Photo, Price, Quantity, Reading, Reply, RunoutReading,
    RunoutSpec, Setup, Signed, Stock, ThicknessReading, ThicknessSpec, Voice,
};
use crate::job::manual_item::Also;
use crate::job::mishap::Mishap;
use crate::job::slip::Slip;
use crate::trade::answer::Answer;
use crate::trade::damage::PartReading;
use crate::trade::wheel_end::{Check, Item, SetName, StepKey};

form!(enum Event {
    Opened = "opened" (it),
    Person = "person" [field, text],
    Erased = "erased" [sha256],
    Said = "said" [text],
    Vehicle = "vehicle" [field, text],
    Corners = "corners" [corners],
    Spec = "spec" (it),
    Missing = "missing" [items],
    Carried = "carried" (it),
    Answered = "answered" [step, reply],
    Moved = "moved" (it),
    Also = "also" (it),
    Lever = "lever" [step, lever],
    Mishap = "mishap" (it),
    Mended = "mended" [item],
    Interrupted = "interrupted" (it),
    Pass = "pass" [step],
    DialSetup = "dial_setup" (it),
    Reading = "reading" (it),
    Decided = "decided" (it),
    Proved = "proved" (it),
    FaceFound = "face_found" (it),
    RotorFound = "rotor_found" (it),
    Price = "price" (it),
    Invoice = "invoice" (it),
    Discount = "discount" (it),
    Refunded = "refunded" (it),
    Paid = "paid" (it),
    Consent = "consent" (it),
    Signed = "signed" (it),
    Photo = "photo" (it),
    Note = "note" [step, text],
    Remark = "remark" [step, remark],
    Part = "part" (it),
    Due = "due" (it),
    HandedOver = "handed_over" (it),
    Ended = "ended" (it),
    Strike = "strike" [hits],
    Runout = "runout" (it),
    RunoutLimit = "runout_limit" (it),
    RemovedPart = "removed_part" [corner, reading(..)],
    CameBackFor = "came_back_for" [cause],
    Complaint = "complaint" [complaint],
    Clue = "clue" [corner, clue, answer],
    Stock = "stock" (it),
    Thickness = "thickness" (it),
    ThicknessLimit = "thickness_limit" (it),
    TipAngle = "tip_angle" [corner, set(..), angle],
    Crept = "crept" [corner, set(..), divisions],
    TipRadius = "tip_radius" [place, radius],
    Voice = "voice" (it),
    Captioned = "captioned" (it),
    FromPaper = "from_paper" (it),
    Slot = "slot" (it),
    Shop = "shop" (it),
    Confirmation = "confirmation" (it),
    Angled = "angled" [step, by],
    LetGo = "let_go" [sha256],
} else Self::Unknown(_));

form!(enum Reply {
    Done = "done" (),
    NotDone = "not_done" [because],
    Said = "said" [answer],
    Felt = "felt" [felt],
    Picked = "picked" [pick],
    Number = "number" [value],
    FoundLoose = "found_loose" [count],
    Checked = "checked" [checks(by put_checks, get_checks)],
});

form!(Opened { start, practice });
form!(Moved { step, items, to, wrench("name" "set") });
form!(Also { item, name, spec("torque" "document") });
form!(Mishap {
    step,
    item,
    kind,
    part,
    minutes
});
form!(Interrupted { step, why, to });
form!(DialSetup { corner, set(..), way });
form!(Reading { corner, set(..), round, side, divisions, turns, dial });
form!(Decided {
    corner,
    nth,
    decision,
    again,
    reasons,
    rules,
    inputs
});
form!(Price {
    repair,
    refit,
    estimate
});
form!(Paid { how, amount });
form!(Consent {
    step,
    scope,
    yes,
    how,
    amount
});
form!(Signed { step, strokes });
form!(Photo {
    step,
    sha256,
    mime,
    width,
    height
});
form!(Voice {
    step,
    sha256,
    mime,
    seconds
});
form!(Part {
    corner,
    number,
    lot
});
form!(Due {
    kind,
    date,
    distance
});
form!(PartReading { inspected, seen(few) });
form!(HandedOver { digest });
form!(Ended { ending, charge });
form!(Stock {
    number,
    have,
    least,
    cores
});
form!(Item {
    corner,
    group,
    number
});
form!(SetName { when, nth("set") });

form!(RunoutReading {
    corner, run, setup(..), place, angle, radius, divisions, turns, dial, left_out,
});
form!(Setup {
    surface,
    places,
    stud,
    cleaned
});
form!(RunoutSpec {
    surface,
    most,
    source
});
form!(ThicknessReading { corner, run, gauging(..), place, thickness });
form!(Gauging { micrometer, places });
form!(ThicknessSpec {
    axle,
    bound,
    value,
    source
});

impl Form for StepKey {
    fn read(json: &Json<'_>) -> Option<Self> {
        Self::from_code(&json.text()?)
    }

    fn write(&self, out: &mut Out) {
        out.text(&self.code());
    }
}

/// The unit says which.
impl Form for Quantity {
    fn read(json: &Json<'_>) -> Option<Self> {
        let distance = Form::read(json).map(Self::Distance);
        distance.or_else(|| Form::read(json).map(Self::Temperature))
    }

    fn write(&self, out: &mut Out) {
        match self {
            Self::Distance(typed) => typed.write(out),
            Self::Temperature(typed) => typed.write(out),
        }
    }
}

/// No word and no text is the step's own caption.
impl Form for Captioned {
    fn read(json: &Json<'_>) -> Option<Self> {
        let caption = match (json.field("word")?, json.field("text")?) {
            (Some(word), None) => Caption::Word(word),
            (None, Some(text)) => Caption::Words(text),
            (None, None) => Caption::Step,
            (Some(_), Some(_)) => return None,
        };
        let sha256 = json.field("sha256")?;
        Some(Self { sha256, caption })
    }

    fn fields(&self, out: &mut Out) {
        out.field("sha256", &self.sha256);
        match &self.caption {
            Caption::Step => {}
            Caption::Word(word) => out.field("word", word),
            Caption::Words(text) => out.field("text", text),
        }
    }
}

impl Form for Slip {
    fn read(json: &Json<'_>) -> Option<Self> {
        let lines: Vec<String> = json.field("lines")?;
        paper::of_lines(json.field("version")?, &lines)
    }

    fn fields(&self, out: &mut Out) {
        out.field("version", &paper::VERSION);
        out.field("lines", &paper::lines(self));
    }
}

/// What was looked at, each with its answer.
fn put_checks(out: &mut Out, checks: &[(Check, Answer)]) {
    out.name("checks");
    out.list(checks, |out, (check, answer)| {
        out.pair(["check", "answer"], (check, answer));
    });
}

fn get_checks(json: &Json<'_>) -> Option<Vec<(Check, Answer)>> {
    let all = json.find("checks").ok()??.list()?.iter();
    all.map(|it| Some((it.field("check")?, it.field("answer")?)))
        .collect()
}
