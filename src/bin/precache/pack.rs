//! A gzip copy beside each text of the build, made once here instead of at each request.

use std::fs;
use std::io;
use std::num::NonZeroU64;
use std::path::{Path, PathBuf};

use zopfli::{Format, Options};

/// What the name of a copy ends in, after the name of its file.
pub const END: &str = ".gz";

/// What grows smaller: pictures are packed already.
const PACKED: [&str; 7] = ["html", "js", "css", "wasm", "json", "svg", "webmanifest"];

/// Writes the copies of all files below a folder. The same file gives the same copy.
///
/// # Errors
/// The path that could not be read or written, with the reason.
pub fn pack(dir: &Path) -> Result<(), (PathBuf, io::Error)> {
    for entry in fs::read_dir(dir).map_err(at(dir))? {
        let path = entry.map_err(at(dir))?.path();
        let end = path.extension().and_then(|end| end.to_str());
        if path.is_dir() {
            pack(&path)?;
        } else if end.is_some_and(|end| PACKED.contains(&end)) {
            let copy = packed(&fs::read(&path).map_err(at(&path))?).map_err(at(&path))?;
            let mut name = path.clone().into_os_string();
            name.push(END);
            fs::write(&name, copy).map_err(at(&path))?;
        }
    }
    Ok(())
}

/// The bytes as gzip (RFC 1952), without a name and a time.
fn packed(bytes: &[u8]) -> io::Result<Vec<u8>> {
    let mut out = Vec::new();
    // More rounds take longer and gain one part in five hundred.
    let options = Options {
        iteration_count: NonZeroU64::MIN,
        ..Options::default()
    };
    zopfli::compress(options, Format::Gzip, bytes, &mut out)?;
    Ok(out)
}

fn at(path: &Path) -> impl Fn(io::Error) -> (PathBuf, io::Error) {
    let path = path.to_path_buf();
    move |why| (path.clone(), why)
}

#[cfg(test)]
mod tests {
    use std::io::Read as _;

    use super::*;

    #[test]
    fn a_copy_says_what_its_file_says_and_photos_have_none() {
        let dir = std::env::temp_dir().join(format!("hubslate-pack-{}", std::process::id()));
        fs::create_dir_all(dir.join("icons")).unwrap();
        let text = "a { color: red; }\n".repeat(400);
        fs::write(dir.join("a.css"), &text).unwrap();
        fs::write(dir.join("icons/a.svg"), "<svg/>").unwrap();
        fs::write(dir.join("icons/a.png"), "p").unwrap();
        pack(&dir).unwrap();
        let copy = fs::read(dir.join("a.css.gz")).unwrap();
        assert!(copy.len() * 10 < text.len(), "{}", copy.len());
        let mut again = String::new();
        let mut reader = flate2::read::GzDecoder::new(copy.as_slice());
        reader.read_to_string(&mut again).unwrap();
        assert_eq!(again, text);
        pack(&dir).unwrap();
        assert_eq!(fs::read(dir.join("a.css.gz")).unwrap(), copy);
        assert!(dir.join("icons/a.svg.gz").exists());
        assert!(!dir.join("icons/a.png.gz").exists() && !dir.join("a.css.gz.gz").exists());
    }
}
