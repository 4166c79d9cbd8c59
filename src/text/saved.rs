//! Words for what is kept as bytes: pictures, voice notes, the room for them, their file.

use super::table::{phrases, sentences};

sentences! {
    /// A key label or a sentence about pictures, voice notes and room.
    pub enum Saved, saved {
        Title => "Photos and voice notes",
        TakeAgain => "Take it again",
        CaptionTitle => "What does it show?",
        AsTheStep => "As the step says",
        OwnWords => "In your own words",
        KeepWords => "Save the words",
        CleanHands => "Words of your own are typed at the desk, with clean hands.",
        Shot => "Photo saved: look, caption, again",
        HoldToTalk => "Hold to talk",
        HoldHint => "Up to 60 s; let go to stop",
        MicAsking => "Asking for the microphone",
        MicAllowed => "The microphone is allowed now. Hold the key again to talk.",
        MicDenied =>
            "The microphone is not allowed. Type the note, or allow it in the browser's settings for this app.",
        MicNone => "No microphone is free here. Type the note.",
        VoiceShort => "Too short, nothing was saved. Hold the key while you talk.",
        VoiceFailed => "The recording failed and was not saved. Say it again or type it.",
        VoiceSaved => "Voice note saved",
        VoiceNotes => "Voice notes",
        VoiceNote => "Voice note",
        Length => "Length",
        Step => "Step",
        When => "When",
        Digest => "Digest",
        CaptionSaid => "Caption",
        PhotoUnreadable => "This photo could not be read. Take it again.",
        NotHere => "Not on this phone",
        PhotoFull =>
            "The phone's storage is full: this photo was not saved. All that you tapped before is saved.",
        VoiceFull =>
            "The phone's storage is full: this voice note was not saved. All you tapped before is saved.",
        MakeRoom =>
            "Export this job with its photos, then delete videos and apps from the phone, and try again.",
        WithoutIt => "Go on without it",
        ExportWith => "Export with photos",
        ExportAllWith => "Export everything with photos",
        NotSent => "Not sent. The job is still only here.",
        NotUnpacked =>
            "This zip was packed by another program in a way that cannot be read here. Nothing was changed.",
        NoRoomImport =>
            "The phone's storage is full: some photos were not saved. The record is complete.",
    }
}

phrases! {
    seconds(n: u8) => "{n} s",
    talking(said: u8, of: u8) => "{said} of {of} s. Let go to stop.",
    room_nearly_full(left: &str) =>
        "The phone's storage is nearly full: {left} left. Export with photos and make room.",
    room_left(left: &str) => "{left} left for this app.",
    photo_wrong(names: &str) => "Left out, since it is not what the record names: {names}",
}
