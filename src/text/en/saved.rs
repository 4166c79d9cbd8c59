//! English for pictures, voice notes, the room for them and their file.

use crate::job::caption::CaptionWord;

pub(in crate::text) fn caption_word(word: CaptionWord) -> &'static str {
    match word {
        CaptionWord::AsFound => "As found",
        CaptionWord::Damage => "Damage",
        CaptionWord::Rust => "Rust",
        CaptionWord::Leak => "Leak",
        CaptionWord::Heat => "Heat marks",
        CaptionWord::Thread => "Thread",
        CaptionWord::OldPart => "Old part",
        CaptionWord::NewPart => "New part",
        CaptionWord::PartLabel => "Part label",
        CaptionWord::StandAndGround => "Jack stand and ground",
        CaptionWord::Chocks => "Chocks",
        CaptionWord::WireRoute => "Wire routing",
        CaptionWord::PlateSeat => "Splash shield seat",
        CaptionWord::Seat => "Seat in the knuckle",
        CaptionWord::WarningLightsOn => "Warning lights",
        CaptionWord::Odometer => "Odometer",
        CaptionWord::DialReading => "Dial",
        CaptionWord::Finished => "Finished work",
        CaptionWord::AsLeft => "As it is left",
    }
}

pub(in crate::text) fn lost_logs(count: usize) -> String {
    let what = if count == 1 {
        "A job or list".to_owned()
    } else {
        format!("{count} jobs or lists")
    };
    format!(
        "{what} that this phone had saved cannot be found: the browser lost the data. Import the files that you exported, or ask the shop."
    )
}

pub(in crate::text) fn photos_taken(n: usize) -> String {
    match n {
        1 => "1 photo or voice note came with it.".to_owned(),
        n => format!("{n} photos and voice notes came with it."),
    }
}
