//! A job as a few lines of text that fit into QR symbols: what paper brings to the next phone.
//!
//! ```text
//! HUBSLATE1 1/1 0f3a…            version, which symbol of how many, check
//! J|<job>|<digest>               the job, and the digest of the record behind it
//! N|<plate>                      the plate; on paper only, no entry keeps it
//! V|family|…|studs|5             facts of the vehicle, in pairs
//! K|front_left                   corners
//! S|document|day|who|reason      a source; specs name them by their number, from 1
//! C|item|source|page|stages|position|conditions|count|thread|class|pattern|threadlocker
//! L|item|source|page|most|method|place|rig|newtons
//! X|item|reason                  looked for and not found
//! M|step|state|corner|items      what is loose
//! A|corner|item|name|torque|document
//! B|step|corner|item|kind|part|minutes
//! G|millimetres|divisions|kind   a dial; sets name them by their number, from 1
//! R|corner|when|set|dial|method|place|rig|newtons|round=push>pull#turns|…
//! O|corner|run|surface|places|stud|cleaned|dial|radius|place@angle=needle#turns!left out|…
//! D|corner|which|decision|again|rules|reasons
//! Y|step|yes|how                 the customer's answer to the repair
//! P|corner|number|lot            a part that was fitted
//! T|kind|day|distance            what is due
//! E|ending|who took charge
//! ```
//!
//! Words are the codes of the record, numbers stand as they were typed with the code of their unit
//! behind them (a comma may be their decimal mark, so that lists are parted by `;`), and empty fields at the end of a line are left out. `%` with two hex digits
//! stands for a byte that would be taken for something else. The check is the first 16 hex digits
//! of SHA-256 (FIPS 180-4) over the lines after the first; of several symbols they are joined.
//!
//! A confirmation of the shop goes the same way: its lines begin with `{` and are its entry's own text.

mod line;
mod parts;
mod read;
mod round;
mod write;

pub use parts::{
    Gathered, MOST_BYTES, MOST_SYMBOLS, PaperError, Part, VERSION, confirmation_symbols, gather,
    part, symbols,
};
pub use read::read;
pub use write::write;

use crate::exchange::envelope::sha256_hex;
use crate::job::JobState;
use crate::job::entry::PersonField;
use crate::job::practice::is_practice;
use crate::job::slip::{Slip, facts};

/// What a paper says.
#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    /// The plate, as it is printed beside; kept as a personal fact, so that it can be erased.
    pub plate: Option<String>,
    /// All the rest.
    pub slip: Slip,
}

/// The paper of a job; none of practice, which must not be taken for a job.
pub fn paper(job: &str, digest: &str, sheet: &JobState) -> Option<Paper> {
    if is_practice(sheet) {
        return None;
    }
    let plate = sheet.person(PersonField::Plate);
    Some(Paper {
        plate: plate.filter(|plate| !plate.is_empty()).map(str::to_owned),
        slip: Slip {
            job: job.to_owned(),
            digest: digest.to_owned(),
            facts: facts(sheet),
        },
    })
}

/// The lines that an entry keeps: those of the paper without the plate.
pub fn lines(slip: &Slip) -> Vec<String> {
    let paper = Paper {
        plate: None,
        slip: slip.clone(),
    };
    write(&paper).split('\n').map(str::to_owned).collect()
}

/// The slip of the lines that an entry keeps; `None` if they are not written just so.
pub fn of_lines(version: u32, lines: &[String]) -> Option<Slip> {
    let paper = read(&lines.join("\n")).filter(|_| version == VERSION)?;
    paper.plate.is_none().then_some(paper.slip)
}

/// The check of the lines.
fn check(body: &str) -> String {
    let mut digest = sha256_hex(body.as_bytes());
    digest.truncate(16);
    digest
}
