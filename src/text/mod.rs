//! Every sentence that a person reads, one file a theme.
//!
//! A sentence stands once: in the theme's table beside its English, or, where it is picked by a
//! value, in the language's folder. A missing translation does not compile. Nothing
//! here formats a quantity, a date or an amount; such values come in as text that is already
//! formatted.

mod account;
mod book;
mod conflict;
mod consent;
mod customer;
mod desk;
mod diagnosis;
mod en;
mod flow;
mod ledger;
mod measure;
mod mishap;
mod outside;
mod paper;
mod reading;
mod reason;
mod removed;
mod report;
mod runout;
mod saved;
mod say;
mod screen;
mod shop;
mod step;
mod table;
mod takeover;
#[cfg(test)]
mod tests;
mod thickness;
mod vehicle;
mod verified;

pub use self::{
    account::*, book::*, conflict::*, consent::*, customer::*, desk::*, diagnosis::*, flow::*,
    ledger::*, measure::*, mishap::*, outside::*, paper::*, reading::*, reason::*, removed::*,
    report::*, runout::*, saved::*, say::*, screen::*, shop::*, step::*, takeover::*, thickness::*,
    vehicle::*, verified::*,
};

use crate::job::Repair;
use crate::job::angled::{AngleBy, AngleGauge};
use crate::job::backdate::Ago;
use crate::job::caption::CaptionWord;
use crate::job::car_state::{Leaving, Standing};
use crate::job::caution::Caution;
use crate::job::eased::Eased;
use crate::job::entry::{
    Charge, DueKind, Ending, How, Interruption, KitItem, PaidHow, PersonField, Remark, Scope, Slot,
    VehicleField,
};
use crate::job::kit::KitError;
use crate::job::practice::{Hidden, Met, Outcome};
use crate::job::reason::Rule;
use crate::job::runout::{AngleError, Angles, Basis, RadiusError};
use crate::job::spec_diff::BookNews;
use crate::job::tally::Measure;
use crate::job::thickness::ThicknessInputError;
use crate::job::tip_and_drift::{DriftError, TipError};
use crate::job::typed_spec::SpecInputError;
use crate::trade::answer::Answer;
use crate::trade::damage::{
    CameBackFor, FailureMode, Finding, Inspected, LikelyCause, PartReading,
};
use crate::trade::diagnosis::{Cause, Clue, Complaint, Test as CauseTest};
use crate::trade::fastening::calibration::CheckDue;
use crate::trade::fastening::{
    Condition, MishapKind, Pattern, PropertyClass, Settled, SpecItem, WrenchError,
};
use crate::trade::money::{AmountError, BilledFor, EstimateError, LineKind, TaxRounding};
use crate::trade::play;
use crate::trade::play::budget::Source;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::play::way::Difference;
use crate::trade::play::{
    Conformity, Decision, DialKind, Felt, Ground, LimitSource, Method, Place, ReadingFlag, Rig,
    RoundError, Test,
};
use crate::trade::practice::Named;
use crate::trade::runout::{
    Bound, Form, LeftOut, Next, RotorNext, SeriesError, Surface, ThicknessError, Undetermined,
};
use crate::trade::vehicle::{
    Axle, CheckDigit, Corner, Encoder, Fixing, NutLock, ParkingBrake, Power, Pressing, SpeedSensor,
    VinError, WheelBrake,
};
use crate::trade::wheel_end::{
    Build, Check, Choice, Given, HoldPoint, Item, ItemKind, ItemState, Kind, NotDoneReason,
    NutPosition, Phase, Sign, Step, StepKey,
};
use crate::units::DecimalError;
use crate::words;

words! {
    /// The languages that every text is written in.
    pub enum Lang {
        /// English in US spelling.
        English = "en",
    }
}

/// Writes one public function for each line, which asks the language's own folder.
///
/// A second language is one more arm here and one more folder.
macro_rules! spoken {
    ($($(#[$meta:meta])* $theme:ident::$name:ident($($arg:ident: $kind:ty),*) -> $out:ty;)+) => {
        $(
            $(#[$meta])*
            pub fn $name(lang: Lang, $($arg: $kind),*) -> $out {
                match lang {
                    Lang::English => en::$theme::$name($($arg),*),
                }
            }
        )+
    };
}

spoken! {
    /// What the screen of a step says, where nothing but its name matters.
    steps::step(step: Step) -> StepText;
    /// What the screen of a step says, for steps that differ by how the wheel end is built or by
    /// which time they are asked.
    steps::step_for(key: StepKey, build: Build) -> StepText;

    /// How long ago something was done.
    backdate::ago(ago: Ago) -> &'static str;
    /// The key for what is noted later than it was done.
    backdate::done_earlier() -> &'static str;
    /// What it asks, and what it does.
    backdate::earlier_say() -> &'static str;
    /// The key back to what is done now.
    backdate::not_earlier() -> &'static str;
    /// When the next tap counts as done.
    backdate::counts_as(ago: Ago) -> &'static str;

    /// How a removed part was inspected.
    removed::inspected(inspected: Inspected) -> &'static str;
    /// What is seen on a removed part, in a workshop's words.
    removed::finding(finding: Finding) -> &'static str;
    /// The name of a likely cause, short enough for a row.
    removed::likely_cause(cause: LikelyCause) -> &'static str;
    /// The modes of a cause, and how many of its parts were cut open.
    removed::modes_and_cut(modes: &[FailureMode], cut_open: usize) -> String;
    /// The failure mode that a finding points to, suspected or not.
    removed::points_to(finding: Finding, suspected: bool) -> String;
    /// The likely cause of a finding, and what to change.
    removed::cause_and_change(finding: Finding) -> String;
    /// A finding with all that it points to.
    removed::finding_line(finding: Finding, suspected: bool) -> String;
    /// How the removed part of a corner was inspected, and that nothing was visible.
    removed::part_inspected(corner: Corner, reading: &PartReading) -> String;
    /// The removed part of a corner in one line.
    removed::removed_part_line(corner: Corner, reading: &PartReading) -> String;
    /// Why a job came back.
    ledger::came_back_for(cause: CameBackFor) -> &'static str;
    /// What a customer complains of.
    diagnosis::complaint(complaint: Complaint) -> &'static str;
    /// What could cause it.
    diagnosis::cause(cause: Cause) -> &'static str;
    /// What a test showed.
    diagnosis::clue(clue: Clue) -> &'static str;
    /// What to try.
    diagnosis::cause_test(test: CauseTest) -> &'static str;
    /// What is counted of each van: its title, and out of what.
    ledger::measure(measure: Measure) -> (&'static str, &'static str);
    /// A van by its letters or its phone; all vans where that is empty.
    ledger::van_name(name: &str) -> String;
    /// A van by its letters, or by its number where it has none.
    ledger::van_label(letters: &str, number: usize) -> String;
    /// So many jobs.
    ledger::jobs(n: usize) -> String;
    /// The name of the file of a job list.
    ledger::job_list_file(day: &str) -> String;
    /// The name of the file for the accountant.
    ledger::books_file(day: &str) -> String;
    /// A kind of wheel end at so many corners.
    ledger::work_on(kind: &str, corners: usize) -> String;
    /// When, and by which van, a job is done.
    flow::slot(slot: &Slot) -> String;
    /// The same from texts that may be empty.
    flow::slot_words(day: &str, time: &str, van: &str) -> String;
    /// How much is new since the last confirmation.
    flow::new_since(entries: usize, logs: usize) -> String;
    /// Running numbers that are missing.
    flow::gap(device: &str, by: &str, from: u64, to: u64) -> String;
    /// Entries that a file emptied.
    flow::emptied(n: usize) -> String;
    /// The shop's rule for the re-torque.
    flow::retorque_rule(after: &str, days: u16) -> String;
    /// So many days.
    flow::days(n: u16) -> String;
    /// So many lines.
    flow::lines(n: usize) -> String;
    /// The name of a day file, without its ending.
    flow::day_file_stem(day: &str, van: &str) -> String;
    /// The name of the file of a closed day, without its ending.
    flow::closed_file_stem(day: &str, van: &str) -> String;
    /// The name of a confirmation, without its ending.
    flow::confirmation_file_stem(day: &str) -> String;

    /// The name of a phase.
    words::phase(phase: Phase) -> &'static str;
    /// A row of a list: a statement that is right when it is answered with yes.
    checks::check(check: Check, fixing: Fixing) -> &'static str;
    /// What to do now, where an answer holds something.
    follows::follows(key: StepKey, given: Given, build: Build) -> &'static str;
    /// A caution that only some jobs need.
    follows::caution(of: Caution) -> &'static str;
    /// The heading over that.
    follows::held_title() -> &'static str;
    /// What a key answers of rows that were not touched: so many, work or a list.
    follows::also_rows(rows: usize, done: bool) -> String;
    /// The key of a list, of which so many rows were not touched.
    follows::yes_to(open: usize, all: usize) -> String;
    /// The key that shows what lies below the edge.
    follows::more_below() -> &'static str;
    /// The signs of the road that the repair did not take away.
    follows::still_there(signs: &str) -> String;
    /// The signs of the road that were not tried after the repair.
    follows::not_tried(signs: &str) -> String;
    /// Said of a job that was loosened again after its end.
    follows::open_again() -> &'static str;
    /// The row of a sign that was there before the work.
    words::sign(sign: Sign) -> &'static str;
    /// One word out of a list, as a key label.
    words::pick(pick: Choice) -> &'static str;
    /// Why something was not done.
    words::because(because: NotDoneReason) -> &'static str;
    /// A hold point: its title, and what has to be done first.
    words::hold_point(hold: HoldPoint) -> (&'static str, &'static str);
    /// The name of a group of items, in the plural where there are several.
    words::group(group: ItemKind, fixing: Fixing) -> &'static str;
    /// The name of one item, without its corner.
    words::item(item: Item, fixing: Fixing) -> String;
    /// The name of one item with its corner.
    words::item_at(item: Item, fixing: Fixing) -> String;
    /// How far an item is from being back.
    words::hold_state(hold: ItemState) -> &'static str;
    /// What went wrong with a fastener, as a key label.
    mishap::mishap(kind: MishapKind, fixing: Fixing) -> &'static str;
    /// What is done about it now; of a part, or of a fastener.
    mishap::fix_now(kind: MishapKind, part: bool) -> &'static str;
    /// Why work stops in the middle.
    mishap::interruption(why: Interruption) -> &'static str;
    /// How a corner stands.
    mishap::standing(standing: Standing) -> &'static str;
    /// What is safe while the car is left as it stands.
    mishap::leaving(leaving: Leaving) -> &'static str;
    /// What to do about it.
    mishap::mishap_say(kind: MishapKind, fixing: Fixing) -> &'static str;
    /// The part that commonly mends it.
    mishap::mishap_part(kind: MishapKind, fixing: Fixing) -> &'static str;
    /// What is noted of a step in one tap.
    mishap::remark(remark: Remark) -> &'static str;
    /// A mishap in one line.
    mishap::mishap_line(item: &str, what: &str, part: &str, minutes: u16) -> String;
    mishap::no_adapter() -> &'static str;
    /// How many were found loose at the re-torque.
    mishap::found_loose(count: u8) -> String;
    /// Who did it, and when.
    mishap::who_when(who: &str, when: &str) -> String;
    /// By what an angle was read, known or not, and that the gauge was past its day.
    angle::angled(by: AngleBy) -> &'static str;
    angle::angle_not_recorded() -> &'static str;
    angle::angle_gauge_past(day: &str) -> String;
    /// By what an angle is read at the car.
    angle::angle_next(gauge: AngleGauge) -> String;
    /// A spec with an angle for which there is no gauge, or one past its day; nothing if all is well.
    angle::angle_lacks(item: &str, angle: &str, gauge: AngleGauge) -> Option<String>;
    /// The day by which the angle gauge is to be checked.
    angle::angle_due() -> &'static str;
    /// A corner, in lower case: "front left".
    words::corner(corner: Corner) -> &'static str;
    /// A corner at the head of a line: "Front left".
    words::corner_title(corner: Corner) -> &'static str;
    /// A kind of wheel end.
    words::kind(kind: Kind) -> &'static str;
    /// The key that names the kind in force and opens the questions of it.
    words::wheel_end_is(kind: &str) -> String;
    /// Where the axle nut gets its last torque.
    words::nut_position(nut: NutPosition) -> &'static str;
    /// What brakes a wheel.
    words::wheel_brake(brake: WheelBrake) -> &'static str;
    /// What reads a wheel's speed.
    words::speed_sensor(sensor: SpeedSensor) -> &'static str;
    /// What the sensor reads.
    words::encoder(encoder: Encoder) -> &'static str;
    /// What locks a setting nut.
    words::nut_lock(lock: NutLock) -> &'static str;
    /// How a bearing is pressed.
    words::pressing(pressing: Pressing) -> &'static str;
    /// A thing of the kit.
    words::kit_item(item: KitItem) -> &'static str;
    /// The label of a personal fact.
    words::person_field(field: PersonField) -> &'static str;
    /// The label of a fact of the vehicle.
    words::vehicle_field(field: VehicleField) -> &'static str;
    /// An ending: its title, and what it means.
    words::ending(ending: Ending) -> (&'static str, &'static str);
    /// Who took charge of the vehicle.
    words::charge(charge: Charge) -> &'static str;
    /// What a line of an estimate is for.
    words::line_kind(kind: LineKind) -> &'static str;
    /// What a part of an invoice is for.
    words::billed_for(what: BilledFor) -> &'static str;
    /// Where the tax is rounded.
    words::tax_rounding(rounding: TaxRounding) -> &'static str;
    /// How money came in.
    words::paid_how(how: PaidHow) -> &'static str;
    /// How a yes was given.
    words::how(how: How) -> &'static str;
    /// What a yes is for.
    words::scope(scope: Scope) -> &'static str;
    /// What is due.
    words::due_kind(due: DueKind) -> &'static str;
    /// An answer.
    words::answer(answer: Answer) -> &'static str;
    /// Play as felt by hand.
    words::felt(felt: Felt) -> &'static str;
    /// What a spec spec is about.
    words::spec_item(item: SpecItem, fixing: Fixing) -> &'static str;

    /// A decision as its one word in capitals.
    decide::decision(decision: Decision) -> &'static str;
    /// A decision in the customer's words.
    decide::decision_sentence_customer(decision: Decision, kind: Kind) -> &'static str;
    /// A decision in one line for the technician: what to do now.
    decide::decision_next(decision: Decision) -> &'static str;
    /// What can happen when the customer says no.
    decide::declined_consequence(decision: Decision) -> &'static str;
    /// A corner with its decision: "Front left: REPLACE".
    decide::corner_decision(corner: Corner, decision: Decision) -> String;

    /// What turns under the tip.
    runout::surface(surface: Surface) -> &'static str;
    /// How the places of a run are found.
    runout::angles(angles: Angles) -> &'static str;
    /// Why a typed angle names no place.
    runout::angle_slip(slip: AngleError) -> String;
    /// Why a reading does not count.
    runout::left_out(why: LeftOut) -> &'static str;
    /// What comes next at a face that turns.
    runout::next_at_face(next: Next) -> &'static str;
    /// Why readings are no series.
    runout::series_fault(fault: SeriesError) -> String;
    /// Why the places do not tell the waves.
    runout::undetermined(why: Undetermined) -> String;
    /// A run with its number and what turns.
    runout::run_title(nth: u8, surface: Surface) -> String;
    /// The answer of a run in one sentence: how far, what it looks like, what it says.
    runout::run_answer(runout: &str, form: Form, against: &str) -> String;
    /// What a run-out says against its limit.
    runout::against_limit(result: Guarded, limit: &str) -> String;
    /// Where it is highest, and between which studs.
    runout::high_spot(angle: &str, sure: Option<&str>, studs: Option<(u8, u8)>) -> String;
    /// The alternative text of the drawing.
    runout::polar_alt(runout: &str, form: Form) -> String;

    /// What lies between two ends.
    measure::window(least: &str, most: &str) -> String;
    /// Why a typed number is no angle of a tip.
    measure::tip_slip(slip: TipError) -> String;
    /// Why a typed number is no creep of a needle.
    measure::creep_slip(slip: DriftError) -> String;
    /// Why a typed number is no radius.
    runout::radius_slip(slip: RadiusError) -> String;
    /// What the rotor on every stud is told from.
    runout::basis(basis: Basis) -> &'static str;
    /// How the hub is moved in a method.
    reading::method_how(method: Method) -> &'static str;
    /// How the tip is set at a place.
    reading::place_how(place: Place) -> &'static str;
    /// What is off the car in a setup.
    reading::setup_how(rig: Rig) -> &'static str;
    /// A method on a key.
    reading::method_key(method: Method) -> &'static str;
    /// A place on a key.
    reading::place_key(place: Place) -> &'static str;
    /// A setup on a key.
    reading::setup_key(rig: Rig) -> &'static str;
    /// That readings taken in this way are not compared, and why.
    reading::not_compared(difference: Difference) -> &'static str;
    /// Why rounds make no set.
    reading::set_fault(fault: play::SeriesError) -> String;
    /// The key that repeats the whole reading of the round before.
    reading::same_reading(push: Option<&str>, pull: &str) -> String;
    /// What the screen of a round says where the hub is rocked.
    reading::round_rocked() -> StepText;

    /// What a limit of the thickness is of.
    thickness::bound(bound: Bound) -> &'static str;
    /// The key that opens the form of a limit.
    thickness::type_bound(bound: Bound) -> &'static str;
    /// The rotors of an axle.
    thickness::rotors_of(axle: Axle) -> &'static str;
    /// What comes next at a rotor that was measured.
    thickness::next_of_rotor(next: RotorNext) -> &'static str;
    /// Why readings say nothing of a thickness.
    thickness::thickness_fault(fault: ThicknessError) -> String;
    /// Why a typed number is no thickness.
    thickness::thickness_slip(slip: ThicknessInputError) -> String;
    /// What the thinnest place says against its limit.
    thickness::against_least(result: Guarded, limit: &str) -> String;

    /// A step's name with the corner it is at.
    screen::step_at(name: &str, corner: Corner) -> String;
    /// The key that says no to what was not tapped in a list of questions.
    screen::no_to_rest(open: usize, of: usize) -> String;
    /// How many items are loose; of an incomplete record at least so many.
    screen::loose_count(n: usize, incomplete: bool) -> String;
    /// The same as a number alone.
    screen::loose_number(n: usize, incomplete: bool) -> String;
    /// Something not done, with its reason.
    screen::not_done_because(what: &str, because: &str) -> String;
    /// What is missing from the kit.
    screen::kit_missing(n: usize) -> String;
    /// How many specs are still open.
    screen::specs_open(n: usize) -> String;
    /// The result of an import.
    screen::imported(entries: usize, new: usize) -> String;
    /// How an open job would read safer with a file, a line each.
    screen::eased(job: &str, eased: &Eased) -> Vec<String>;
    /// Records that could not be read and were set aside.
    screen::set_aside(n: usize) -> String;
    /// What a picture shows, as it is offered.
    saved::caption_word(word: CaptionWord) -> &'static str;
    /// How many jobs and lists the browser has lost.
    saved::lost_logs(count: usize) -> String;
    /// How many pictures and voice notes a file brought.
    saved::photos_taken(n: usize) -> String;
    /// The alternative text of the wheel with its fasteners.
    screen::star_alt(done: usize, of: usize) -> String;
    /// How long ago, in days, months or years.
    book::days_ago(days: i64) -> String;
    /// What the spec books of a file brought.
    book::book_came(news: BookNews) -> String;
    /// The name of an exported job, without its ending.
    screen::job_file_stem(date: &str, plate: &str) -> String;
    /// The name of a practice job's file, without its ending.
    screen::practice_file_stem(date: &str, plate: &str) -> String;
    /// The name of a printed report, without its ending.
    screen::report_file_stem(date: &str, plate: &str) -> String;

    /// How the wheels are fixed.
    desk::fixing(fixing: Fixing) -> &'static str;
    /// What drives the vehicle.
    desk::power(power: Power) -> &'static str;
    /// What the parking brake acts on.
    desk::parking_brake(brake: ParkingBrake) -> &'static str;
    /// What the check digit of a VIN says.
    desk::vin_check(check: CheckDigit) -> String;
    /// Why a text is no VIN.
    desk::vin_error(error: VinError) -> String;
    /// Why a typed text is no number.
    desk::decimal_slip(slip: DecimalError) -> String;
    /// Why a typed text is no amount.
    desk::amount_slip(slip: AmountError) -> String;
    /// Why the lines have no sum.
    desk::estimate_fault(fault: EstimateError) -> String;
    /// Why the fields give no spec.
    desk::spec_slip(slip: SpecInputError) -> String;
    /// Why the fields give no instrument.
    desk::kit_slip(slip: KitError) -> String;
    /// A figure far from the usual, and the units in which it would not be.
    desk::doubted(value: &str, low: &str, high: &str, fits: &[String]) -> String;
    /// When a wrench was checked and how often it clicked since.
    desk::wrench_checked(day: &str, clicks: u32) -> String;
    /// Why a wrench is to be checked.
    desk::check_due(due: CheckDue) -> String;
    /// A torque that no wrench on board serves, and why.
    desk::misfit(item: &str, value: &str, why: WrenchError) -> String;
    /// How a doubted value was settled, on a key.
    desk::settled(settled: Settled) -> &'static str;
    /// That a value was doubted and saved, and why: a code, or words.
    desk::override_reason(reason: &str) -> String;
    /// Document, page and day of a spec.
    desk::from_page(document: &str, page: &str, date: &str) -> String;
    /// The invented document of the practice car, and its page.
    desk::practice_document() -> (&'static str, &'static str);

    /// The family of a practice car.
    practice::practice_name(named: Option<Named>) -> &'static str;
    /// What the customer of a practice car says.
    practice::practice_said(named: Option<Named>) -> &'static str;
    /// What is met on a practice car at a step.
    practice::practice_met(met: Met, heat: &str) -> String;
    /// One thing that a practice car had, with its true play and the play that was read.
    practice::practice_had(hidden: Hidden, truth: &str, read: Option<&str>) -> String;
    /// What became of it.
    practice::practice_outcome(outcome: Outcome) -> &'static str;

    /// What is true of the car now, as the large word of page one.
    customer::now(now: Now) -> &'static str;
    /// The same in a sentence.
    customer::now_say(now: Now) -> &'static str;
    /// A reason of a decision in the customer's words.
    customer::why(rule: Rule, of: &str) -> Option<&'static str>;
    /// A warning light that is or was on, and what to do.
    customer::warning_light(warning_light: Choice, lit: Lit) -> String;
    /// Why a new part does not pass, in the customer's words.
    customer::against(against: play::Against) -> &'static str;
    /// A day in words, the month counted from 1.
    customer::day(year: i32, month: u32, day: u32) -> String;
    /// The torque of the wheel's fasteners is checked again: by what, in the customer's words.
    report::retorque_customer(fixing: Fixing, distance: Option<&str>, odometer: Option<&str>, date: Option<&str>) -> String;
    /// Why it is.
    report::retorque_why(fixing: Fixing) -> &'static str;
    /// What was replaced or set, in the customer's words.
    report::repaired_customer(corner: Corner, repair: Repair) -> String;
    /// The same in a few words, and of a bearing that fails its check after it.
    customer::corner_repaired(repair: Repair) -> &'static str;
    customer::corner_fails(repair: Repair) -> &'static str;
    /// What was looked at and put back, in the customer's words.
    report::put_back_customer(corner: Corner) -> String;
    /// What the customer must do about a corner to watch.
    report::recheck_customer(corner: Corner, date: &str) -> String;
    /// A yes with everything that the law of some places asks for.
    report::consent_line(scope: &str, how: &str, name: &str, time: &str) -> String;
    /// The source of a spec.
    report::source_line(document: &str, page: &str, date: &str, who: &str) -> String;
    /// What a corner that is repaired now was like before, in the customer's words.
    report::was_found_customer(decision: Decision) -> &'static str;
    /// How many steps were not done, all named on the technician's pages.
    report::steps_not_done_customer(n: usize) -> String;
    /// The foot of every page: the job's short name and the digest's first characters.
    report::foot(job: &str, digest: &str) -> String;

    /// In which direction the hub is moved.
    measure::method(method: Method) -> &'static str;
    /// Where the tip stands.
    measure::place(place: Place) -> &'static str;
    /// What is off the car while it is measured.
    measure::rig(rig: Rig) -> &'static str;
    /// What a spec asks for beside its figure.
    measure::condition(condition: Condition) -> &'static str;
    /// That the page does not say whether the prevailing torque is in the figure.
    measure::prevailing_torque_unknown() -> &'static str;
    /// A stage without a figure: until it sits.
    measure::until_it_sits() -> &'static str;
    measure::back_until_loose() -> &'static str;
    /// The class marked on a bolt.
    measure::property_class(class: PropertyClass) -> &'static str;
    /// In which order the page has them tightened.
    measure::pattern(pattern: Pattern) -> &'static str;
    /// How many fasteners of which thread and class the page names.
    measure::fasteners(count: &str, thread: &str, class: &str) -> String;
    /// How the tip moves the needle.
    measure::dial_kind(kind: DialKind) -> &'static str;
    /// What was not as it should be while a set was taken, in lower case.
    measure::mark(mark: ReadingFlag) -> &'static str;
    /// Why two ways cannot be compared, in lower case.
    measure::difference(difference: Difference) -> &'static str;
    /// A row of the uncertainty's budget.
    measure::budget_source(source: Source) -> &'static str;
    /// What to do about the largest part of the uncertainty.
    measure::mend_first(source: Source) -> &'static str;
    /// What a set says against its limit.
    measure::conformity(conformity: Conformity) -> &'static str;
    /// Who set a limit, in lower case.
    measure::limit_source(source: LimitSource) -> &'static str;
    /// A limit's short name beside its line.
    measure::limit_name(value: &str, source: LimitSource) -> String;
    /// The same of the lower end of a window.
    measure::least_name(value: &str) -> String;
    /// Why a round gives no play.
    measure::round_error(error: RoundError) -> &'static str;
    /// What a verdict rests on.
    measure::ground(ground: Ground) -> &'static str;
    /// A look or test, in lower case.
    measure::test(test: Test) -> &'static str;
    /// That a test was not done, in the customer's words.
    measure::test_customer(test: Test) -> &'static str;
}
