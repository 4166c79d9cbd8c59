//! What is said where no program of ours runs: the page before it has loaded, the panel of a crash,
//! the worker without a network, the manifest; and the help of the command.
//!
//! The files in `public` say it themselves; `tests/tidy/outside.rs` holds them to these rows, in both
//! directions.

use super::table::sentences;

sentences! {
    /// A text of a file in `public`, or the help of the command.
    pub enum Outside, outside {
        PAGE {
            Name => "Hubslate",
            Loading => "Loading…",
            NoScript =>
                "Hubslate needs JavaScript and WebAssembly: allow them for this site in the browser's settings, then reload.",
            CrashTitle => "Hubslate has stopped",
            CrashSay =>
                "A fault in the program stopped it. Every tap that was confirmed is saved on this phone.",
            CrashReloadSay =>
                "Reload, and the job opens at the step where it was. If it stops again at the same place, save your data to a file first.",
            CrashReload => "Reload",
            CrashSave => "Save all my data to a file",
        }
        CRASH {
            CrashSaved =>
                "${count} entries saved to ${link.download}. Photos stay on the phone.",
            CrashSavedInPart =>
                "Not everything could be read (${all.problems.join(\"; \")}). The rest is in ${link.download}.",
        }
        WORKER {
            NoCopy => "Hubslate: no copy on this phone",
            NoSignal => "Hubslate cannot open without a signal",
            NoSignalWhy =>
                "This browser dropped the app's own files, and there is no network to fetch them again.",
            NoSignalSafe =>
                "This says nothing about your jobs: they are stored apart. Do not clear the data of this site.",
            NoSignalThen => "Get a signal, then",
            NoSignalOpen => "open Hubslate again",
        }
        MANIFEST {
            Description =>
                "The slate a mobile wheel-bearing technician works from, in a driveway with no signal",
        }
        COMMAND {
            Help => "\
hubslate verify [--json] FILES…          compute every digest, reading, uncertainty and decision again
hubslate merge [--json] FILES… -o OUT    the union of the files in one file; OUT.zip with photos
hubslate erase JOB FILES… -o OUT         the same, with one job's customer data erased; and
               [--also WORDS]            complaint,notes,signatures,photos emptied as well
hubslate calendar FILES… -o OUT          what is due, as a calendar file (.ics)
hubslate table FILES… -o OUT             one row a job, for a spreadsheet (.csv)
hubslate invoices FILES… -o OUT          invoices, credit notes and accounts, for the books (.csv)
hubslate lines FILES… -o OUT             one entry a line, for a data warehouse (.jsonl)
hubslate lines FILES… --parquet DIR      the same in typed columns, a folder a shop and month

One line a file; a bad file never stops the rest. JOB is the id of a job or how it begins.
Ends with 0 if all is well, with 1 if a file differs or is refused, with 2 if nothing was done:
the command line is not understood, or OUT cannot be written.",
        }
    }
}
