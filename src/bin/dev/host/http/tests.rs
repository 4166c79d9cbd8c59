use super::*;

/// A folder with an index and a neighbour outside it that must not be reached.
fn folder(name: &str) -> PathBuf {
    let outer = std::env::temp_dir().join(format!("hubslate-http-{name}-{}", std::process::id()));
    let dir = outer.join("inside");
    std::fs::create_dir_all(dir.join("sub folder")).unwrap();
    std::fs::write(outer.join("secret.txt"), "no").unwrap();
    std::fs::write(dir.join("index.html"), "<p>").unwrap();
    std::fs::write(dir.join("sub folder/a.wasm"), "w").unwrap();
    dir.canonicalize().unwrap()
}

#[test]
fn root_is_the_index() {
    let got = answer("GET / HTTP/1.1", false, &folder("root"));
    assert_eq!(
        (got.status, got.kind, got.body),
        ("200 OK", "text/html; charset=utf-8", b"<p>".to_vec())
    );
}

#[test]
fn head_has_the_length_and_no_body() {
    let got = answer("HEAD /index.html HTTP/1.1", false, &folder("head"));
    assert_eq!((got.status, got.length, got.body.len()), ("200 OK", 3, 0));
}

#[test]
fn spaces_and_questions_are_understood() {
    let got = answer(
        "GET /sub%20folder/a.wasm?x=1 HTTP/1.1",
        false,
        &folder("space"),
    );
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
        let got = answer(&format!("GET {path} HTTP/1.1"), false, &dir);
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
        answer("GET /out.txt HTTP/1.1", false, &dir).status,
        "404 Not Found"
    );
}

#[test]
fn other_methods_and_missing_files_are_refused() {
    let dir = folder("refuse");
    assert_eq!(
        answer("POST / HTTP/1.1", false, &dir).status,
        "405 Method Not Allowed"
    );
    assert_eq!(
        answer("GET /gone HTTP/1.1", false, &dir).status,
        "404 Not Found"
    );
}

/// What gives the text "<p>" packed: the bytes that `printf '<p>' | gzip -n9` writes.
const PACKED: [u8; 23] = [
    0x1f, 0x8b, 0x08, 0, 0, 0, 0, 0, 2, 3, 0xb3, 0x29, 0xb0, 0x03, 0, 0xbb, 0xa1, 0x6e, 0x3c, 3, 0,
    0, 0,
];

#[test]
fn a_browser_that_takes_gzip_gets_the_copy_and_others_plain_bytes() {
    let dir = folder("gzip");
    std::fs::write(dir.join("index.html.gz"), PACKED).unwrap();
    let packed = answer("GET / HTTP/1.1", true, &dir);
    assert_eq!((packed.packed, packed.length), (true, PACKED.len()));
    assert_eq!(packed.kind, "text/html; charset=utf-8");
    let mut recorded = String::new();
    let mut reader = flate2::read::GzDecoder::new(packed.body.as_slice());
    std::io::Read::read_to_string(&mut reader, &mut recorded).unwrap();
    assert_eq!(recorded, "<p>");
    let head = answer("HEAD / HTTP/1.1", true, &dir);
    assert_eq!(
        (head.packed, head.length, head.body.len()),
        (true, PACKED.len(), 0)
    );
    let plain = answer("GET / HTTP/1.1", false, &dir);
    assert_eq!((plain.packed, plain.body), (false, b"<p>".to_vec()));
    // A file without a copy is given as it is.
    let alone = answer("GET /sub%20folder/a.wasm HTTP/1.1", true, &dir);
    assert_eq!((alone.packed, alone.body), (false, b"w".to_vec()));
}

#[test]
fn a_copy_that_is_older_than_its_file_is_not_given() {
    let dir = folder("stale");
    let copy = std::fs::File::create(dir.join("index.html.gz")).unwrap();
    copy.set_modified(std::time::UNIX_EPOCH).unwrap();
    assert!(!answer("GET / HTTP/1.1", true, &dir).packed);
}

#[test]
fn what_a_browser_says_of_gzip_is_understood() {
    // RFC 9110, 12.5.3, among others the examples there.
    for yes in [
        "gzip",
        "compress, gzip",
        "*",
        "compress;q=0.5, gzip;q=1.0",
        "br , GZIP ; q=0.1",
    ] {
        assert!(takes_gzip(yes), "{yes}");
    }
    for no in [
        "",
        "br",
        "identity",
        "gzip;q=0",
        "gzip; q=0.000, *",
        "*;q=0",
        "xgzip",
    ] {
        assert!(!takes_gzip(no), "{no}");
    }
}

#[test]
fn a_path_that_is_no_file_leads_home_without_script_or_style() {
    let dir = folder("home");
    for path in ["/gone", "/job/1/where", "/sub%20folder/b.html"] {
        let got = answer(&format!("GET {path} HTTP/1.1"), true, &dir);
        assert_eq!((got.status, got.kind), ("404 Not Found", HTML), "{path}");
        let page = String::from_utf8(got.body).unwrap();
        assert!(page.contains("<a href=\"/\">"), "{page}");
        for word in ["<script", "<style", "style=", "onclick"] {
            assert!(!page.contains(word), "{word}");
        }
    }
}
