//! What was found at a corner and why, as the customer is shown it.

use crate::drawing::corner as vehicle;
use crate::report::why;
use crate::text;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;
use crate::ui::at::StepContext;
use crate::ui::parts::picture::{drawn, place};
use crate::ui::screens::decide::{customer_bar, word};
use crate::ui::view::prelude::*;

/// Where, what was decided, in the customer's words, and the bar with its limit.
pub fn finding(at: &StepContext, corner: Corner, decision: Decision) -> Node {
    view! {
        <div class="customer__finding">
            {drawn(
                &vehicle::large(&[place(corner)]),
                text::corner_title(at.lang, corner),
                "customer__corner",
            )}
            {word(at.lang, corner, decision)}
        </div>
        <p class="customer__sentence">{text::decision_sentence_customer(at.lang, decision, at.open.plan.kind)}</p>
        {because(at, corner)}
    }
}

/// Why, in words; the readings are drawn only where the decision rests on them.
fn because(at: &StepContext, corner: Corner) -> Option<Node> {
    let decided = at.sheet().decided(corner)?;
    let play = why::rests_on_play(decided);
    let reasons = why::reason_lines(at.lang, decided, !play).join(" ");
    let bar = play.then(|| customer_bar(at, corner));
    Some(view! { <p class="customer__why">{reasons}</p> {bar} })
}
