//! From the first line of a request to the file it means.

use std::path::{Component, Path, PathBuf};

use super::headers;

/// What goes back to the browser.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Status code and its phrase.
    pub status: &'static str,
    /// MIME type of the body.
    pub kind: &'static str,
    /// Whether the body is the gzip copy of the file.
    pub packed: bool,
    /// What the page of the folder may load; nothing where there is no such page.
    pub policy: Option<String>,
    /// Length of the whole body in bytes, also where only the head was asked for.
    pub length: usize,
    /// The file; empty where only the head was asked for.
    pub body: Vec<u8>,
}

/// Where an address that means no file leads: home, without a script or a style.
const NOT_FOUND: &str = "<!doctype html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n\
    <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
    <title>Not found</title>\n<p>There is no such page here.</p>\n\
    <p><a href=\"/\">Open Hubslate</a></p>\n</html>\n";

/// Answers one request line with a file below `dir`; `gzip` says whether its copy may be given.
pub fn answer(request: &str, gzip: bool, dir: &Path) -> Answer {
    let mut words = request.split(' ');
    let (method, target) = (
        words.next().unwrap_or_default(),
        words.next().unwrap_or_default(),
    );
    let whole = match method {
        "GET" | "HEAD" => find(target, gzip, dir),
        _ => refusal("405 Method Not Allowed"),
    };
    let page = std::fs::read_to_string(dir.join("index.html"));
    let whole = Answer {
        policy: page.ok().and_then(|page| headers::policy(&page)),
        ..whole
    };
    match method {
        "HEAD" => Answer {
            body: Vec::new(),
            ..whole
        },
        _ => whole,
    }
}

fn find(target: &str, gzip: bool, dir: &Path) -> Answer {
    let Some(path) = below(target) else {
        return refusal("400 Bad Request");
    };
    let mut file = dir.join(path);
    if file.is_dir() {
        file.push("index.html");
    }
    // A link inside the folder may point out of it.
    let inside = file.canonicalize().is_ok_and(|real| real.starts_with(dir));
    let copy = gzip.then(|| copy_of(&file)).flatten();
    let packed = copy.is_some();
    match copy.map_or_else(|| std::fs::read(&file), Ok) {
        Ok(body) if inside => Answer {
            packed,
            ..whole("200 OK", kind(&file), body)
        },
        _ => whole("404 Not Found", HTML, NOT_FOUND.into()),
    }
}

/// The gzip copy that the build left beside a file, unless the file was changed since.
fn copy_of(file: &Path) -> Option<Vec<u8>> {
    let mut name = file.as_os_str().to_owned();
    name.push(".gz");
    let copy = Path::new(&name);
    // A copy is a file of the build; nobody links to one.
    let real = std::fs::symlink_metadata(copy).ok()?;
    let made = real.modified().ok()?;
    let changed = std::fs::metadata(file).ok()?.modified().ok()?;
    let fits = real.is_file() && changed <= made;
    fits.then(|| std::fs::read(copy).ok()).flatten()
}

/// Whether a browser that says so in `Accept-Encoding` takes gzip (RFC 9110, 12.5.3): by name, or
/// as one of all others, and not with a weight of zero.
pub fn takes_gzip(said: &str) -> bool {
    let offers = said.split(',').map(|offer| {
        let (name, weight) = offer.split_once(';').unwrap_or((offer, ""));
        let (_, weight) = weight.split_once('=').unwrap_or(("", "1"));
        let never = weight.trim().parse::<f32>().is_ok_and(|it| it <= 0.0);
        (name.trim().to_ascii_lowercase(), !never)
    });
    let offers: Vec<(String, bool)> = offers.collect();
    let of = |names: &[&str]| {
        let named = offers
            .iter()
            .find(|(name, _)| names.contains(&name.as_str()));
        named.map(|(_, takes)| *takes)
    };
    of(&["gzip", "x-gzip"])
        .or_else(|| of(&["*"]))
        .unwrap_or(false)
}

fn refusal(status: &'static str) -> Answer {
    let body = format!("{status}\n").into_bytes();
    whole(status, "text/plain; charset=utf-8", body)
}

fn whole(status: &'static str, kind: &'static str, body: Vec<u8>) -> Answer {
    Answer {
        status,
        kind,
        packed: false,
        policy: None,
        length: body.len(),
        body,
    }
}

const HTML: &str = "text/html; charset=utf-8";

/// The relative path that `target` means, if it stays below the folder.
fn below(target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = PathBuf::from(decoded(path)?);
    path.components()
        .all(|part| matches!(part, Component::Normal(_)))
        .then_some(path)
}

fn decoded(text: &str) -> Option<String> {
    let mut bytes = text.bytes();
    let mut out = Vec::new();
    while let Some(byte) = bytes.next() {
        if byte == b'%' {
            let pair = [bytes.next()?, bytes.next()?];
            out.push(u8::from_str_radix(std::str::from_utf8(&pair).ok()?, 16).ok()?);
        } else {
            out.push(byte);
        }
    }
    String::from_utf8(out).ok()
}

/// The MIME type by the end of the name.
fn kind(file: &Path) -> &'static str {
    match file.extension().and_then(|end| end.to_str()) {
        Some("html") => HTML,
        Some("js" | "mjs") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("jpg" | "jpeg") => "image/jpeg",
        Some("ico") => "image/x-icon",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests;
