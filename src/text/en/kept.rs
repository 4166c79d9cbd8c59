//! English for pictures, voice notes, the room for them and their file.

use crate::job::caption::CaptionWord;
use crate::text::kept::Kept;

pub(in crate::text) fn kept(word: Kept) -> &'static str {
    match word {
        Kept::Title => "Pictures and voice notes",
        Kept::TakeAgain => "Take it again",
        Kept::CaptionTitle => "What does it show?",
        Kept::AsTheStep => "As the step says",
        Kept::OwnWords => "In your own words",
        Kept::KeepWords => "Keep the words",
        Kept::CleanHands => "Words of your own are typed at the desk, with clean hands.",
        Kept::Shot => "Picture kept: look, caption, again",
        Kept::HoldToTalk => "Hold to talk",
        Kept::HoldHint => "Up to 60 s; let go to stop",
        Kept::MicAsking => "Asking for the microphone",
        Kept::MicAllowed => "The microphone is allowed now. Hold the key again to talk.",
        Kept::MicDenied => {
            "The microphone is not allowed. Type the note, or allow it in the browser's settings for this app."
        }
        Kept::MicNone => "No microphone is free here. Type the note.",
        Kept::VoiceShort => "Too short, nothing was kept. Hold the key while you talk.",
        Kept::VoiceFailed => "The recording failed and was not kept. Say it again or type it.",
        Kept::VoiceKept => "Voice note kept",
        Kept::VoiceNotes => "Voice notes",
        Kept::VoiceNote => "Voice note",
        Kept::Length => "Length",
        Kept::Step => "Step",
        Kept::When => "When",
        Kept::Digest => "Digest",
        Kept::CaptionSaid => "Caption",
        Kept::PictureUnreadable => "This picture could not be read. Take it again.",
        Kept::NotHere => "Not on this phone",
        Kept::PictureFull => {
            "The phone's storage is full: this picture was not kept. All that you tapped before is kept."
        }
        Kept::VoiceFull => {
            "The phone's storage is full: this voice note was not kept. All that you tapped before is kept."
        }
        Kept::MakeRoom => {
            "Take this job along with its pictures, then delete films and apps from the phone, and try again."
        }
        Kept::WithoutIt => "Go on without it",
        Kept::NoRoomNote => "No picture: the phone's storage was full.",
        Kept::ExportWith => "Export with pictures",
        Kept::ExportAllWith => "Export everything with pictures",
        Kept::NotSent => "Not sent. The job is still only here.",
        Kept::NotUnpacked => {
            "This zip was packed by another program in a way that cannot be read here. Nothing was changed."
        }
        Kept::NoRoomImport => {
            "The phone's storage is full: some pictures were not taken. The record is whole."
        }
    }
}

pub(in crate::text) fn caption_word(word: CaptionWord) -> &'static str {
    match word {
        CaptionWord::AsFound => "As found",
        CaptionWord::Damage => "Damage",
        CaptionWord::Rust => "Rust",
        CaptionWord::Leak => "Leak",
        CaptionWord::Heat => "Marks of heat",
        CaptionWord::Thread => "Thread",
        CaptionWord::OldPart => "Old part",
        CaptionWord::NewPart => "New part",
        CaptionWord::PartLabel => "Label of the part",
        CaptionWord::StandAndGround => "Stand and ground",
        CaptionWord::Chocks => "Chocks",
        CaptionWord::WireRoute => "Way of the wire",
        CaptionWord::PlateSeat => "How the plate sits",
        CaptionWord::Seat => "Seat in the knuckle",
        CaptionWord::LampsOn => "Lamps",
        CaptionWord::Odometer => "Odometer",
        CaptionWord::DialReading => "Dial",
        CaptionWord::Finished => "Finished work",
        CaptionWord::AsLeft => "As it is left",
    }
}

pub(in crate::text) fn seconds(n: u8) -> String {
    format!("{n} s")
}

pub(in crate::text) fn talking(said: u8, of: u8) -> String {
    format!("{said} of {of} s. Let go to stop.")
}

pub(in crate::text) fn lost_logs(count: usize) -> String {
    let what = if count == 1 {
        "A job or list".to_owned()
    } else {
        format!("{count} jobs or lists")
    };
    format!(
        "{what} that this phone had kept cannot be found: the browser lost the data. Import the files that you exported, or ask the shop."
    )
}

pub(in crate::text) fn room_nearly_full(left: &str) -> String {
    format!("The phone's storage is nearly full: {left} left. Export with pictures and make room.")
}

pub(in crate::text) fn room_left(left: &str) -> String {
    format!("{left} left for this app.")
}

pub(in crate::text) fn pictures_taken(n: usize) -> String {
    match n {
        1 => "1 picture or voice note came with it.".to_owned(),
        n => format!("{n} pictures and voice notes came with it."),
    }
}

pub(in crate::text) fn picture_wrong(names: &str) -> String {
    format!("Left out, since it is not what the record names: {names}")
}
