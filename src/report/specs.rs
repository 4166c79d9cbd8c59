//! Spec specs in lines: the value as printed, the other unit, how, and where it was read.

use chrono::NaiveDate;

use crate::text::{self, Lang, ReportWord, Say};
use crate::trade::fastening::{
    Condition, Spec, SpecBody, SpecItem, SpecSource, Stage, Thread, TorqueBody,
};
use crate::trade::play::{Limit, LimitSource, Way};
use crate::trade::vehicle::Fixing;
use crate::units::{Format, Length, LengthUnit, System};

/// A spec's value with its unit as it was printed; "not found" is a value.
pub fn spec_value(lang: Lang, format: Format, spec: &Spec) -> String {
    match &spec.body {
        SpecBody::Torque(body) => stages(lang, format, body, false),
        SpecBody::Play {
            most,
            least: Some(least),
            ..
        } => text::window(
            lang,
            &format.typed(least).line(),
            &format.typed(most).line(),
        ),
        SpecBody::Play { most, .. } => format.typed(most).line(),
        SpecBody::NotFound { .. } => text::say(lang, Say::SpecNotFound).to_owned(),
    }
}

/// The same value in the other unit; `None` where there is no value.
pub fn spec_twin(lang: Lang, format: Format, spec: &Spec) -> Option<String> {
    match &spec.body {
        SpecBody::Torque(body) => Some(stages(lang, format, body, true)),
        SpecBody::Play {
            most,
            least: Some(least),
            ..
        } => Some(text::window(
            lang,
            &format.typed_twin(least).line(),
            &format.typed_twin(most).line(),
        )),
        SpecBody::Play { most, .. } => Some(format.typed_twin(most).line()),
        SpecBody::NotFound { .. } => None,
    }
}

/// Everything a spec says, label by label, its value first.
pub fn spec_lines(
    lang: Lang,
    format: Format,
    spec: &Spec,
    fixing: Fixing,
) -> Vec<(String, String)> {
    let word = |word| text::report(lang, word).to_owned();
    let mut value = spec_value(lang, format, spec);
    if let Some(twin) = spec_twin(lang, format, spec) {
        value = format!("{value} {}", text::also_value(lang, &twin));
    }
    let mut lines = vec![(text::spec_item(lang, spec.item, fixing).to_owned(), value)];
    match &spec.body {
        SpecBody::Torque(body) => {
            if let Some(position) = body.position {
                lines.push((
                    word(ReportWord::Place),
                    text::nut_position(lang, position).to_owned(),
                ));
            }
            let context = torque_conditions(lang, spec.item, body);
            if !context.is_empty() {
                lines.push((word(ReportWord::Condition), context.join(", ")));
            }
            lines.push((word(ReportWord::Source), source_line(lang, &body.source)));
        }
        SpecBody::Play { way, source, .. } => {
            lines.extend(way_lines(lang, format, way));
            lines.push((word(ReportWord::Source), source_line(lang, source)));
        }
        SpecBody::NotFound { reason } => {
            lines.push((word(ReportWord::Source), reason.clone()));
        }
    }
    lines
}

/// What a page says beside the figure: conditions, fasteners, order; for the axle nut also that
/// it does not say whether the prevailing torque is in the figure.
pub fn torque_conditions(lang: Lang, item: SpecItem, body: &TorqueBody) -> Vec<String> {
    let says = |condition| body.conditions.contains(&condition);
    let conditions = body.conditions.iter().map(|it| text::condition(lang, *it));
    let mut context: Vec<String> = conditions.map(str::to_owned).collect();
    let running = says(Condition::PrevailingIncluded) || says(Condition::PrevailingExtra);
    if item == SpecItem::AxleNut && !running {
        context.push(text::prevailing_torque_unknown(lang).to_owned());
    }
    let printed = &body.printed;
    let count = printed.count.map(|count| count.to_string());
    let thread = printed.thread.as_ref().map(Thread::as_typed);
    let class = printed.class.map(|class| text::property_class(lang, class));
    let fasteners = text::fasteners(
        lang,
        &count.unwrap_or_default(),
        thread.unwrap_or_default(),
        class.unwrap_or_default(),
    );
    context.extend((!fasteners.is_empty()).then_some(fasteners));
    let grade = printed.threadlocker.as_ref();
    context.extend(grade.map(|grade| text::threadlocker(lang, grade)));
    context.extend(printed.pattern.map(|it| text::pattern(lang, it).to_owned()));
    context
}

/// How a play is taken, label by label.
pub fn way_lines(lang: Lang, format: Format, way: &Way) -> Vec<(String, String)> {
    let word = |word| text::report(lang, word).to_owned();
    let mut lines = vec![
        (
            word(ReportWord::Method),
            text::method(lang, way.method).to_owned(),
        ),
        (
            word(ReportWord::Place),
            text::place(lang, way.place).to_owned(),
        ),
    ];
    if let Some(rig) = way.rig {
        lines.push((word(ReportWord::Rig), text::rig(lang, rig).to_owned()));
    }
    let force = way.force.map(|force| {
        format!("{} {}", format.force(force, 0).line(), {
            text::also_value(lang, &format.other().force(force, 0).line())
        })
    });
    lines.push((
        word(ReportWord::Force),
        force.unwrap_or_else(|| word(ReportWord::ByHand)),
    ));
    lines
}

/// Where a spec was read, if it gives a value.
pub fn spec_source(spec: &Spec) -> Option<&SpecSource> {
    match &spec.body {
        SpecBody::Torque(body) => Some(&body.source),
        SpecBody::Play { source, .. } => Some(source),
        SpecBody::NotFound { .. } => None,
    }
}

/// Where a spec was read: document, page, day and who.
pub fn source_line(lang: Lang, source: &SpecSource) -> String {
    let line = text::source_line(
        lang,
        &source.document,
        &source.page,
        &source.looked_up.to_string(),
        &source.who,
    );
    match &source.override_reason {
        Some(reason) => format!("{line}. {}", text::override_reason(lang, reason)),
        None => line,
    }
}

/// That a spec was taken over from an earlier job, if it was looked up before `job_day`.
pub fn not_looked_up(lang: Lang, spec: &Spec, job_day: NaiveDate) -> Option<String> {
    let looked_up = spec_source(spec)?.looked_up;
    (looked_up < job_day).then(|| text::not_looked_up(lang, &looked_up.to_string()))
}

/// A limit's value: the spec's as printed, the house limit by the figure it is known under.
pub fn limit_value(lang: Lang, format: Format, limit: &Limit, spec: Option<&Spec>) -> String {
    // A recorded limit is rounded to a nanometre.
    let nanometre = Length::millimetres(1e-6);
    let is_of = |spec: &&Spec| match spec.limit() {
        Some(Ok(of)) => limit.is_manufacturers() && of.value.minus(limit.value).abs() <= nanometre,
        _ => false,
    };
    if let Some(spec) = spec.filter(is_of) {
        return spec_value(lang, format, spec);
    }
    let most = match (limit.source, format.system) {
        (LimitSource::House, System::Us) => {
            format.length_in(limit.value, LengthUnit::Inch, 3).line()
        }
        (LimitSource::House, System::Metric) => format.length(limit.value, 2).line(),
        (LimitSource::Manufacturer, _) => format.length(limit.value, 3).line(),
    };
    match limit.least {
        Some(least) => text::window(lang, &format.length(least, 3).line(), &most),
        None => most,
    }
}

fn stages(lang: Lang, format: Format, body: &TorqueBody, twin: bool) -> String {
    let context = body
        .stages
        .iter()
        .map(|it| stage_line(lang, format, it, twin));
    context.collect::<Vec<_>>().join(" + ")
}

/// One stage in words, in its own unit or in the other one.
pub fn stage_line(lang: Lang, format: Format, stage: &Stage, twin: bool) -> String {
    match stage {
        Stage::Snug => text::until_it_sits(lang).to_owned(),
        Stage::Torque(torque) if twin => format.typed_twin(torque).line(),
        Stage::Torque(torque) => format.typed(torque).line(),
        Stage::Angle(angle) => format.typed(angle).line(),
        Stage::Back(Some(angle)) => text::back_by(lang, &format.typed(angle).line()),
        Stage::Back(None) => text::back_until_loose(lang).to_owned(),
    }
}
