//! The build's last step: joins the style sheets, tells the page's first script what to start, the
//! service worker which files make up this version and the page's security policy which inline
//! script is ours, writes what a host is to say beside the files, and puts a gzip copy beside each
//! text.
//!
//! Trunk calls it with the folder in `TRUNK_STAGING_DIR`; `precache DIR` does the same by hand.
//! Running it again on the same folder changes nothing.

#[cfg(not(target_arch = "wasm32"))]
mod early;
#[cfg(not(target_arch = "wasm32"))]
mod headers;
#[cfg(not(target_arch = "wasm32"))]
mod late;
#[cfg(not(target_arch = "wasm32"))]
mod pack;
#[cfg(not(target_arch = "wasm32"))]
mod styles;

#[cfg(target_arch = "wasm32")]
fn main() {}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    let named = std::env::args_os()
        .nth(1)
        .or_else(|| std::env::var_os("TRUNK_STAGING_DIR"));
    let Some(dir) = named else {
        eprintln!("Name the folder of the build: `precache DIR`.");
        return std::process::ExitCode::FAILURE;
    };
    match host::write_version(std::path::Path::new(&dir)) {
        Ok(files) => {
            println!("{files} files make up this version.");
            std::process::ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("{why}");
            std::process::ExitCode::FAILURE
        }
    }
}

#[cfg(not(target_arch = "wasm32"))]
mod host {
    use std::fmt::{self, Write as _};
    use std::fs;
    use std::path::{Path, PathBuf};

    use sha2::{Digest, Sha256, Sha384};

    use crate::{early, headers, late, pack, styles};

    /// Files for hosts and for people with a signal, and the large icons that a system fetches when it installs
    /// the app; the app itself opens none of them.
    const NOT_KEPT: [&str; 7] = [
        headers::FILE,
        "sw.js",
        "sample/",
        "schema/",
        "icons/hubslate-180.png",
        "icons/hubslate-512.png",
        "icons/hubslate-512-maskable.png",
    ];
    const POLICY: &str = "'wasm-unsafe-eval'";

    /// Why the version could not be written.
    #[derive(Clone, Debug, PartialEq)]
    pub enum PrecacheError {
        /// A file or folder could not be read or written.
        File { path: PathBuf, why: String },
        /// The service worker lacks a line that begins with this text.
        NoLine(&'static str),
        /// The page has no security policy to add the start script to.
        NoPolicy,
        /// The page's first script cannot be told what to start.
        NoStart,
    }

    impl fmt::Display for PrecacheError {
        fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            match self {
                Self::File { path, why } => write!(f, "{}: {why}", path.display()),
                Self::NoLine(start) => write!(f, "sw.js has no line that begins with `{start}`"),
                Self::NoStart => write!(f, "index.html has no start that names glue and program"),
                Self::NoPolicy => write!(f, "index.html has no script-src with {POLICY}"),
            }
        }
    }

    /// Writes the policy into index.html and the list of files into sw.js; gives their number.
    ///
    /// # Errors
    /// [`PrecacheError`] if a file is missing or not as expected.
    pub fn write_version(dir: &Path) -> Result<usize, PrecacheError> {
        let index = dir.join("index.html");
        let page = String::from_utf8_lossy(&read(&index)?).into_owned();
        let page = join_styles(dir, page)?;
        let page = early::early(&page).ok_or(PrecacheError::NoStart)?;
        late::add(dir, &page).map_err(|(path, why)| file_error(&path, &why))?;
        // The page comes first: its own hash is part of the list.
        let page = with_policy(&page)?;
        write(&index, &page)?;
        let lines = headers::lines(&page).ok_or(PrecacheError::NoPolicy)?;
        write(&dir.join(headers::FILE), &lines)?;

        let mut files = Vec::new();
        collect(dir, dir, &mut files)?;
        files.sort();
        let worker = dir.join("sw.js");
        let template = String::from_utf8_lossy(&read(&worker)?).into_owned();
        write(&worker, &with_list(&template, &files)?)?;
        // The copies come last: each is of a file as it stays.
        pack::pack(dir).map_err(|(path, why)| file_error(&path, &why))?;
        Ok(files.len())
    }

    /// Makes one sheet of the page's many; a page with one or none stays as it is.
    fn join_styles(dir: &Path, page: String) -> Result<String, PrecacheError> {
        let sheets = styles::sheets(&page);
        if sheets.len() < 2 {
            return Ok(page);
        }
        let mut whole = String::new();
        for sheet in &sheets {
            whole.push_str(&String::from_utf8_lossy(&read(&dir.join(sheet))?));
            whole.push('\n');
        }
        for sheet in &sheets {
            let path = dir.join(sheet);
            fs::remove_file(&path).map_err(|why| file_error(&path, &why))?;
        }
        let whole = styles::squeezed(&whole);
        let name = format!("base-{}.css", short(&Sha256::digest(&whole)));
        write(&dir.join(&name), &whole)?;
        Ok(styles::with_one(&page, &name, &integrity(whole.as_bytes())))
    }

    fn integrity(bytes: &[u8]) -> String {
        format!("sha384-{}", base64(&Sha384::digest(bytes)))
    }

    /// The first eight bytes in hexadecimal.
    pub fn short(digest: &[u8]) -> String {
        digest.iter().take(8).fold(String::new(), |mut text, byte| {
            let _ = write!(text, "{byte:02x}");
            text
        })
    }

    /// One file of the version: its address and the hash the browser must find.
    type Saved = (String, String);

    fn collect(top: &Path, dir: &Path, files: &mut Vec<Saved>) -> Result<(), PrecacheError> {
        for entry in fs::read_dir(dir).map_err(|why| file_error(dir, &why))? {
            let path = entry.map_err(|why| file_error(dir, &why))?.path();
            let Some(name) = address(top, &path) else {
                continue;
            };
            if path.is_dir() {
                collect(top, &path, files)?;
            } else {
                let hash = integrity(&read(&path)?);
                // Some hosts redirect `index.html` to the folder, and a redirect is never kept.
                let url = if name == "index.html" {
                    "./".to_owned()
                } else {
                    name
                };
                files.push((url, hash));
            }
        }
        Ok(())
    }

    /// The address of `path` below `top`; `None` for what is not kept.
    fn address(top: &Path, path: &Path) -> Option<String> {
        let parts = path.strip_prefix(top).ok()?.components();
        let names: Vec<_> = parts
            .map(|part| part.as_os_str().to_string_lossy().into_owned())
            .collect();
        let mut name = names.join("/");
        let hidden = names.last().is_none_or(|last| last.starts_with('.'));
        if path.is_dir() {
            name.push('/');
        }
        let saved = !hidden && !NOT_KEPT.contains(&name.as_str()) && !name.ends_with(pack::END);
        saved.then(|| name.trim_end_matches('/').to_owned())
    }

    /// The worker with its two lines written. The version covers the worker's own text too: a
    /// change of the worker alone must not share a cache with the version before it.
    fn with_list(worker: &str, files: &[Saved]) -> Result<String, PrecacheError> {
        let mut list = String::from("const PRECACHE = [");
        for (url, hash) in files {
            let _ = write!(list, "[{url:?},{hash:?}],");
        }
        list.push_str("];");
        let unversioned = with_line(worker, "const PRECACHE = ", &list)?;
        let unversioned = with_line(&unversioned, "const VERSION = ", "const VERSION = \"\";")?;
        let version = short(&Sha256::digest(&unversioned));
        with_line(
            &unversioned,
            "const VERSION = ",
            &format!("const VERSION = \"{version}\";"),
        )
    }

    fn with_line(text: &str, start: &'static str, line: &str) -> Result<String, PrecacheError> {
        if !text.lines().any(|old| old.starts_with(start)) {
            return Err(PrecacheError::NoLine(start));
        }
        let new = text
            .lines()
            .map(|old| if old.starts_with(start) { line } else { old });
        Ok(new.flat_map(|line| [line, "\n"]).collect())
    }

    /// The page with the hash of each inline script in its policy, and no other hash.
    fn with_policy(page: &str) -> Result<String, PrecacheError> {
        let (before, after) = page.split_once(POLICY).ok_or(PrecacheError::NoPolicy)?;
        let end = after.find([';', '"']).ok_or(PrecacheError::NoPolicy)?;
        let (_, after) = after.split_at_checked(end).ok_or(PrecacheError::NoPolicy)?;
        let hashes: String = inline_scripts(page)
            .map(|script| format!(" 'sha256-{}'", base64(&Sha256::digest(script))))
            .collect();
        Ok(format!("{before}{POLICY}{hashes}{after}"))
    }

    fn inline_scripts(page: &str) -> impl Iterator<Item = &str> {
        page.split("<script").skip(1).filter_map(|part| {
            let (head, rest) = part.split_once('>')?;
            let (body, _) = rest.split_once("</script>")?;
            (!head.contains("src=")).then_some(body)
        })
    }

    fn base64(bytes: &[u8]) -> String {
        const SIGNS: &[u8; 64] =
            b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
        let mut out = String::new();
        for group in bytes.chunks(3) {
            let word = group
                .iter()
                .fold(0u32, |word, byte| (word << 8) | u32::from(*byte));
            let word = word << (8 * (3 - group.len()));
            for place in 0..4 {
                let sign = SIGNS
                    .get(((word >> (18 - 6 * place)) & 63) as usize)
                    .copied();
                let used = place <= group.len();
                out.push(sign.filter(|_| used).map_or('=', char::from));
            }
        }
        out
    }

    fn read(path: &Path) -> Result<Vec<u8>, PrecacheError> {
        fs::read(path).map_err(|why| file_error(path, &why))
    }

    fn write(path: &Path, text: &str) -> Result<(), PrecacheError> {
        fs::write(path, text).map_err(|why| file_error(path, &why))
    }

    fn file_error(path: &Path, why: &std::io::Error) -> PrecacheError {
        PrecacheError::File {
            path: path.to_path_buf(),
            why: why.to_string(),
        }
    }

    #[cfg(test)]
    mod tests;
}
