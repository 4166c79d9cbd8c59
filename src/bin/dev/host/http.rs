//! From the first line of a request to the file it means.

use std::path::{Component, Path, PathBuf};

/// What goes back to the browser.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Status code and its phrase.
    pub status: &'static str,
    /// MIME type of the body.
    pub kind: &'static str,
    /// Length of the file in bytes, also where only the head was asked for.
    pub length: usize,
    /// The file; empty where only the head was asked for.
    pub body: Vec<u8>,
}

/// Answers one request line with a file below `dir`.
pub fn answer(request: &str, dir: &Path) -> Answer {
    let mut words = request.split(' ');
    let (method, target) = (
        words.next().unwrap_or_default(),
        words.next().unwrap_or_default(),
    );
    let whole = match method {
        "GET" | "HEAD" => find(target, dir),
        _ => refusal("405 Method Not Allowed"),
    };
    match method {
        "HEAD" => Answer {
            body: Vec::new(),
            ..whole
        },
        _ => whole,
    }
}

fn find(target: &str, dir: &Path) -> Answer {
    let Some(path) = below(target) else {
        return refusal("400 Bad Request");
    };
    let mut file = dir.join(path);
    if file.is_dir() {
        file.push("index.html");
    }
    // A link inside the folder may point out of it.
    let inside = file.canonicalize().is_ok_and(|real| real.starts_with(dir));
    match std::fs::read(&file) {
        Ok(body) if inside => Answer {
            status: "200 OK",
            kind: kind(&file),
            length: body.len(),
            body,
        },
        _ => refusal("404 Not Found"),
    }
}

fn refusal(status: &'static str) -> Answer {
    let body = format!("{status}\n").into_bytes();
    Answer {
        status,
        kind: "text/plain; charset=utf-8",
        length: body.len(),
        body,
    }
}

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
        Some("html") => "text/html; charset=utf-8",
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
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    /// A folder with an index and a neighbour outside it that must not be reached.
    fn folder(name: &str) -> PathBuf {
        let outer =
            std::env::temp_dir().join(format!("hubslate-http-{name}-{}", std::process::id()));
        let dir = outer.join("inside");
        std::fs::create_dir_all(dir.join("sub folder")).unwrap();
        std::fs::write(outer.join("secret.txt"), "no").unwrap();
        std::fs::write(dir.join("index.html"), "<p>").unwrap();
        std::fs::write(dir.join("sub folder/a.wasm"), "w").unwrap();
        dir.canonicalize().unwrap()
    }

    #[test]
    fn root_is_the_index() {
        let got = answer("GET / HTTP/1.1", &folder("root"));
        assert_eq!(
            (got.status, got.kind, got.body),
            ("200 OK", "text/html; charset=utf-8", b"<p>".to_vec())
        );
    }

    #[test]
    fn head_has_the_length_and_no_body() {
        let got = answer("HEAD /index.html HTTP/1.1", &folder("head"));
        assert_eq!((got.status, got.length, got.body.len()), ("200 OK", 3, 0));
    }

    #[test]
    fn spaces_and_questions_are_understood() {
        let got = answer("GET /sub%20folder/a.wasm?x=1 HTTP/1.1", &folder("space"));
        assert_eq!((got.status, got.kind), ("200 OK", "application/wasm"));
    }

    #[test]
    fn nothing_outside_the_folder_is_given() {
        let dir = folder("escape");
        for path in [
            "/../secret.txt",
            "/%2e%2e/secret.txt",
            "/sub%20folder/../../secret.txt",
            "//etc/passwd",
        ] {
            let got = answer(&format!("GET {path} HTTP/1.1"), &dir);
            assert_eq!(got.status, "400 Bad Request", "{path}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_folder_is_not_followed() {
        let dir = folder("link");
        let link = dir.join("out.txt");
        let _ = std::fs::remove_file(&link);
        std::os::unix::fs::symlink(dir.join("../secret.txt"), &link).unwrap();
        assert_eq!(
            answer("GET /out.txt HTTP/1.1", &dir).status,
            "404 Not Found"
        );
    }

    #[test]
    fn other_methods_and_missing_files_are_refused() {
        let dir = folder("refuse");
        assert_eq!(
            answer("POST / HTTP/1.1", &dir).status,
            "405 Method Not Allowed"
        );
        assert_eq!(answer("GET /gone HTTP/1.1", &dir).status, "404 Not Found");
    }
}
