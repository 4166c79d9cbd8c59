//! One file of many jobs: a sample with as many notes as make up three hundred entries, under another
//! identity each.

use std::fs::File;
use std::io::{self, BufWriter, Write};
use std::path::Path;

use hubslate::exchange::export::FileWriter;
use hubslate::exchange::wire::{decode, encode};
use hubslate::exchange::{LogKind, read};
use hubslate::job::entry::{Entry, EntryId, Event, LogId};

/// So many entries a job has.
pub const ENTRIES: usize = 300;

/// Writes so many jobs as one file; gives its size in bytes.
pub fn write(path: &Path, jobs: usize) -> io::Result<u64> {
    let template = template();
    let mut out = FileWriter::begin(BufWriter::new(File::create(path)?))?;
    for number in 0..jobs {
        let (log, texts) = job(&template, number);
        out.add(&(LogKind::Job, log, texts), None)?;
    }
    let mut out = out.end()?;
    out.flush()?;
    Ok(out.get_ref().metadata()?.len())
}

/// The texts of the replaced hub, with what is renewed in each taken out.
pub fn template() -> Vec<String> {
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sample/replaced-hub.json");
    let text = std::fs::read_to_string(sample).unwrap();
    let log = read(&text).unwrap().logs.remove(0);
    let texts = log.records.iter().map(|record| record.text.as_str());
    let mut entries: Vec<Entry> = texts.map(|text| decode(text).unwrap()).collect();
    while entries.len() < ENTRIES {
        let (place, last) = (entries.len(), entries.last().unwrap().clone());
        let text = format!("What a technician says of this corner, note {place}.");
        entries.push(Entry {
            id: EntryId(format!("ffffffff-0000-7000-8000-{place:012x}")),
            n: last.n + 1,
            after: vec![last.id],
            what: Event::Note(None, text),
            ..entries[0].clone()
        });
    }
    let mut texts: Vec<String> = entries.iter().map(|entry| encode(entry).unwrap()).collect();
    // The first eight letters of an id are those of its time; here they are a number's.
    let ids: Vec<&str> = entries.iter().map(|entry| &entry.id.0[..8]).collect();
    for text in &mut texts {
        for id in &ids {
            let number = if id.starts_with('f') { "~N" } else { "~0" };
            *text = text.replace(&format!("\"{id}-"), &format!("\"{number}-"));
        }
        *text = text.replace(&format!("\"{}-", &log.id.0[..8]), "\"~0-");
    }
    texts
}

/// The job of a number, out of the template.
pub fn job(template: &[String], number: usize) -> (LogId, Vec<String>) {
    let (plain, note) = (format!("{number:08x}"), format!("f{number:07x}"));
    let renew = |text: &String| text.replace("~0", &plain).replace("~N", &note);
    let texts: Vec<String> = template.iter().map(renew).collect();
    let log = decode(&texts[0]).unwrap().log;
    (log, texts)
}
