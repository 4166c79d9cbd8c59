//! What a row of the shop's lists says of a job: its plate, its customer, how it stands.

use crate::exchange::summary::Summary;
use crate::job::entry::Ending;
use crate::text::{self, Lang, Say, ShopWord};
use crate::trade::wheel_end::Phase;

/// The plate of a job, or what stands for it.
pub(in crate::ui::screens) fn plate(lang: Lang, job: &Summary) -> String {
    match job.title() {
        title if title.is_empty() => text::say(lang, Say::NoPlate).to_owned(),
        title => title,
    }
}

/// Customer and vehicle, as far as they are known.
pub(in crate::ui::screens) fn who(lang: Lang, job: &Summary) -> String {
    let name = match job.name.as_str() {
        "" => text::say(lang, Say::NoName),
        name => name,
    };
    let known = [name, job.family.as_str()];
    let known = known.into_iter().filter(|it| !it.is_empty());
    known.collect::<Vec<_>>().join(" · ")
}

/// How far a job is: its ending, or its phase.
pub(in crate::ui::screens) fn state(lang: Lang, job: &Summary) -> String {
    if let Some(ending) = Ending::from_code(&job.ending) {
        return text::ending(lang, ending).0.to_owned();
    }
    let word = if job.tally.van.is_empty() {
        ShopWord::NotBegun
    } else {
        ShopWord::AtTheCar
    };
    let phase = Phase::from_code(&job.phase).map(|phase| text::phase(lang, phase));
    let said = [Some(text::shop_word(lang, word)), phase];
    said.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}
