//! A job that names two pictures and a voice note, with their bytes.

use hubslate::exchange::bundle::{Wanted, wanted_in};
use hubslate::exchange::sha256_hex;
use hubslate::job::entry::{Event, Photo, Voice};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{Step, StepKey};

use crate::random_jobs::RandomJob;

/// The bytes of two pictures; what they show is nobody's business here.
pub const PICTURES: [&[u8]; 2] = [b"\xff\xd8\xff\xe0 a stand", b"\xff\xd8\xff\xe0 a wire"];
/// The bytes of a voice note.
pub const VOICE: &[u8] = b"\x1a\x45\xdf\xa3 somebody talks";

/// The job.
pub struct Zipped {
    /// Its file.
    pub text: String,
    /// Its bytes, by digest.
    pub saved: Vec<(Wanted, Vec<u8>)>,
}

pub fn job() -> Zipped {
    let mut job = RandomJob::begin(11, "van-3");
    let steps = [Step::StandPhoto, Step::SensorPhoto];
    for (step, bytes) in steps.into_iter().zip(PICTURES) {
        job.tap(vec![Event::Photo(Photo {
            step: StepKey::at(step, Corner::FrontLeft),
            sha256: sha256_hex(bytes),
            mime: "image/jpeg".to_owned(),
            width: 4,
            height: 3,
        })]);
    }
    job.tap(vec![Event::Voice(Voice {
        step: StepKey::at(Step::SpinHand, Corner::FrontLeft),
        sha256: sha256_hex(VOICE),
        mime: "audio/webm;codecs=opus".to_owned(),
        seconds: 7,
    })]);
    let text = job.file();
    let all = [PICTURES[0], PICTURES[1], VOICE];
    let bytes = |wanted: &Wanted| {
        let found = all.iter().find(|bytes| sha256_hex(bytes) == wanted.sha256);
        found.unwrap().to_vec()
    };
    let saved = wanted_in(&text).into_iter().map(|one| {
        let bytes = bytes(&one);
        (one, bytes)
    });
    Zipped {
        saved: saved.collect(),
        text,
    }
}
