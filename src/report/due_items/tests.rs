use super::*;
use crate::report::sample;
use crate::report::tests::{context, never_says, report, says};

/// Further work is asked by word too, where nobody was to sign.
#[test]
fn who_would_not_sign_for_further_work_is_reported_with_the_witness_and_only_then() {
    let step = StepKey::at(Step::TurnLugNuts, sample::AT);
    let refused = Event::Consent(Consent {
        step,
        scope: Scope::Extra,
        yes: false,
        how: How::Spoken,
        amount: None,
    });
    let mut job = sample::finished(None);
    job.tap(vec![refused]);
    never_says(&context(&report(&job).page_one), &["Refused to sign"]);
    let witness = "N. Bystander".to_owned();
    job.tap(vec![
        Event::Remark(step, Remark::RefusedToSign),
        Event::Person(PersonField::Witness, witness),
    ]);
    let page = context(&report(&job).page_one);
    says(&page, &["Refused to sign, witnessed by N. Bystander."]);
}
