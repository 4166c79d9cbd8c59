//! Running one long child process: say it, say how long it takes, keep its output, say that it still runs.

use std::fs::{self, File};
use std::path::Path;
use std::process::{Command, ExitStatus, Stdio};
use std::time::{Duration, Instant};

use super::cache;
use super::trouble::HostError;

const LOOK_AGAIN: Duration = Duration::from_millis(200);
const SAY_AGAIN: Duration = Duration::from_secs(60);

/// Runs `command`, writing what it prints to a log in the cache.
///
/// # Errors
/// [`HostError::Failed`] with the log and `mend` if it cannot start or ends badly.
pub fn run(step: &str, about: &str, mend: &str, command: &mut Command) -> Result<(), HostError> {
    println!("{step} (about {about}) …");
    let logs = cache::home()?.join("logs");
    fs::create_dir_all(&logs).map_err(|why| HostError::file("make the folder", &logs, &why))?;
    let log = logs.join(format!("{}.log", file_name(step)));
    let out = File::create(&log).map_err(|why| HostError::file("write", &log, &why))?;
    let err = out
        .try_clone()
        .map_err(|why| HostError::file("write", &log, &why))?;
    let begun = Instant::now();
    let child = command.stdin(Stdio::null()).stdout(out).stderr(err).spawn();
    match child.and_then(|mut child| wait(step, &mut child)) {
        Ok(status) if status.success() => {
            println!("{step}: done in {} s.", begun.elapsed().as_secs());
            Ok(())
        }
        _ => Err(failed(step, &log, mend)),
    }
}

fn wait(step: &str, child: &mut std::process::Child) -> std::io::Result<ExitStatus> {
    let begun = Instant::now();
    let mut said = Duration::ZERO;
    loop {
        if let Some(status) = child.try_wait()? {
            return Ok(status);
        }
        let elapsed = begun.elapsed();
        if said + SAY_AGAIN <= elapsed {
            println!(
                "{step}: still running after {} min.",
                elapsed.as_secs() / 60
            );
            said = elapsed;
        }
        std::thread::sleep(LOOK_AGAIN);
    }
}

fn failed(step: &str, log: &Path, mend: &str) -> HostError {
    HostError::Failed {
        step: step.to_owned(),
        log: Some(log.to_path_buf()),
        mend: mend.to_owned(),
    }
}

fn file_name(step: &str) -> String {
    step.chars()
        .map(|c| {
            if c.is_ascii_alphanumeric() || c == '.' {
                c
            } else {
                '-'
            }
        })
        .collect()
}

/// What `program arguments…` prints, if it can be run and ends well.
pub fn answer(program: &str, arguments: &[&str]) -> Option<String> {
    let output = Command::new(program)
        .args(arguments)
        .stdin(Stdio::null())
        .stderr(Stdio::null())
        .output()
        .ok()?;
    let text = String::from_utf8(output.stdout).ok()?;
    output.status.success().then(|| text.trim().to_owned())
}
