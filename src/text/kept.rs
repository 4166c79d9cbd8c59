//! Words for what is kept as bytes: pictures, voice notes, the room for them, their file.

/// Declares the sayings with a list of them all.
macro_rules! kept_sayings {
    ($($(#[$meta:meta])* $word:ident,)+) => {
        /// A key label or a sentence about pictures, voice notes and room.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Kept { $($(#[$meta])* $word,)+ }

        impl Kept {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

kept_sayings! {
    /// Pictures and voice notes.
    Title,
    /// A second picture instead of this one.
    TakeAgain,
    /// What a picture shows.
    CaptionTitle,
    /// The step's own caption.
    AsTheStep,
    /// A caption in one's own words.
    OwnWords,
    /// Keep the words.
    KeepWords,
    /// Why no words can be typed here.
    CleanHands,
    /// The way to the picture that was just taken.
    Shot,
    /// The key that records while it is held.
    HoldToTalk,
    /// How it is used.
    HoldHint,
    /// The browser is asking.
    MicAsking,
    /// Allowed after the finger left the key.
    MicAllowed,
    /// The microphone is denied.
    MicDenied,
    /// There is no microphone.
    MicNone,
    /// Nothing was said.
    VoiceShort,
    /// The recording broke off.
    VoiceFailed,
    /// A voice note was kept.
    VoiceKept,
    /// The list of voice notes.
    VoiceNotes,
    /// One of them.
    VoiceNote,
    /// How long it is.
    Length,
    /// At which step.
    Step,
    /// When.
    When,
    /// The digest of its bytes.
    Digest,
    /// What a picture shows was said.
    CaptionSaid,
    /// No picture that can be read.
    PictureUnreadable,
    /// Its bytes are on another phone.
    NotHere,
    /// There is no room for a picture.
    PictureFull,
    /// There is no room for a voice note.
    VoiceFull,
    /// What to do about it.
    MakeRoom,
    /// Go on without it.
    WithoutIt,
    /// The note that says why there is no picture.
    NoRoomNote,
    /// The file with its pictures.
    ExportWith,
    /// The key for everything on this phone with its pictures.
    ExportAllWith,
    /// The share sheet was closed.
    NotSent,
    /// A zip that is packed in another way.
    NotUnpacked,
    /// Pictures of a file that do not fit.
    NoRoomImport,
}
