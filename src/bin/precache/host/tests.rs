use super::*;

/// The test vectors of RFC 4648, section 10.
#[test]
fn base64_is_that_of_rfc_4648() {
    let cases = [
        ("", ""),
        ("f", "Zg=="),
        ("fo", "Zm8="),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg=="),
        ("fooba", "Zm9vYmE="),
        ("foobar", "Zm9vYmFy"),
    ];
    for (plain, coded) in cases {
        assert_eq!(base64(plain.as_bytes()), coded);
    }
}

/// The empty string's SHA-384, as FIPS 180-4 implementations publish it.
#[test]
fn hash_is_in_the_form_of_subresource_integrity() {
    let hash = base64(&Sha384::digest(b""));
    assert_eq!(
        hash,
        "OLBgp1GsljhM2TJ+sbHjaiH9txEUvgdDTAzHv2P24donTt6/529l+9Ua0vFImLlb"
    );
}

fn build(name: &str) -> PathBuf {
    let dir = std::env::temp_dir().join(format!("hubslate-precache-{name}-{}", std::process::id()));
    for folder in ["icons", "sample", "schema"] {
        fs::create_dir_all(dir.join(folder)).unwrap();
        fs::write(dir.join(folder).join("file.json"), folder).unwrap();
    }
    let page = "<meta http-equiv=\"Content-Security-Policy\" content=\"script-src 'wasm-unsafe-eval'; x\">\
                <script src=\"a.js\"></script>\
                <script type=\"module\">start()</script>";
    fs::write(dir.join("index.html"), page).unwrap();
    fs::write(dir.join("a.css"), "a{}").unwrap();
    fs::write(dir.join("icons/hubslate-512.png"), "").unwrap();
    fs::write(dir.join(".hidden"), "").unwrap();
    fs::write(
        dir.join("sw.js"),
        "const VERSION = \"x\";\nconst PRECACHE = [];\nrest\n",
    )
    .unwrap();
    dir
}

fn worker(dir: &Path) -> String {
    fs::read_to_string(dir.join("sw.js")).unwrap()
}

#[test]
fn list_has_every_file_of_the_app_and_no_other() {
    let dir = build("list");
    assert_eq!(write_version(&dir), Ok(3));
    let list = worker(&dir);
    for saved in [
        "[\"./\",\"sha384-",
        "[\"a.css\",\"sha384-",
        "[\"icons/file.json\",\"sha384-",
    ] {
        assert!(list.contains(saved), "{saved} in {list}");
    }
    for left_out in [
        "sw.js",
        "sample",
        "schema",
        "hubslate-512",
        ".hidden",
        "index.html",
        ".gz",
        "_headers",
    ] {
        assert!(!list.contains(left_out), "{left_out} in {list}");
    }
}

#[test]
fn policy_allows_the_inline_script_only() {
    let dir = build("policy");
    write_version(&dir).unwrap();
    let page = fs::read_to_string(dir.join("index.html")).unwrap();
    let hash = base64(&Sha256::digest("start()"));
    assert!(
        page.contains(&format!(
            "script-src 'wasm-unsafe-eval' 'sha256-{hash}'; x\""
        )),
        "{page}"
    );
}

#[test]
fn many_style_sheets_become_one() {
    let dir = build("styles");
    let link = |name: &str| format!("<link rel=\"stylesheet\" href=\"./{name}\"/>");
    let page = fs::read_to_string(dir.join("index.html")).unwrap();
    let page = [page, link("z.css"), link("a.css")].concat();
    fs::write(dir.join("index.html"), page).unwrap();
    fs::write(dir.join("z.css"), "@layer x;").unwrap();
    assert_eq!(write_version(&dir), Ok(3));
    let page = fs::read_to_string(dir.join("index.html")).unwrap();
    let [one] = styles::sheets(&page).try_into().unwrap();
    let text = fs::read_to_string(dir.join(&one)).unwrap();
    assert_eq!(text, "@layer x;a{}");
    assert!(page.contains(&integrity(text.as_bytes())));
    assert!(!dir.join("a.css").exists() && worker(&dir).contains(&one));
}

#[test]
fn a_second_run_changes_nothing() {
    let dir = build("again");
    write_version(&dir).unwrap();
    let (page, list) = (fs::read(dir.join("index.html")).unwrap(), worker(&dir));
    write_version(&dir).unwrap();
    assert_eq!(
        (page, list),
        (fs::read(dir.join("index.html")).unwrap(), worker(&dir))
    );
}

#[test]
fn one_changed_byte_anywhere_is_another_version() {
    let dir = build("byte");
    let version = || {
        write_version(&dir).unwrap();
        worker(&dir).lines().next().unwrap().to_owned()
    };
    let first = version();
    fs::write(dir.join("a.css"), "b{}").unwrap();
    let second = version();
    fs::write(dir.join("sw.js"), worker(&dir).replace("rest", "rust")).unwrap();
    let third = version();
    assert!(first != second && second != third && first != third);
}

#[test]
fn what_is_not_as_expected_is_refused() {
    let dir = build("refuse");
    fs::write(dir.join("sw.js"), "const VERSION = \"x\";\n").unwrap();
    assert_eq!(
        write_version(&dir),
        Err(PrecacheError::NoLine("const PRECACHE = "))
    );
    fs::write(dir.join("index.html"), "<p>").unwrap();
    assert_eq!(write_version(&dir), Err(PrecacheError::NoPolicy));
    fs::remove_file(dir.join("index.html")).unwrap();
    assert!(matches!(
        write_version(&dir),
        Err(PrecacheError::File { .. })
    ));
}

#[test]
fn hosts_are_reported_the_policy_of_the_page_and_to_keep_nothing() {
    let dir = build("headers");
    write_version(&dir).unwrap();
    let hash = base64(&Sha256::digest("start()"));
    let recorded = fs::read_to_string(dir.join("_headers")).unwrap();
    let expected = format!(
        "/*\n  Content-Security-Policy: script-src 'wasm-unsafe-eval' 'sha256-{hash}'; x; \
         frame-ancestors 'none'\n  X-Content-Type-Options: nosniff\n  \
         Referrer-Policy: no-referrer\n  Cache-Control: no-cache\n"
    );
    assert_eq!(recorded, expected);
}

#[test]
fn the_copy_of_the_worker_names_this_version() {
    use std::io::Read as _;
    let dir = build("copies");
    write_version(&dir).unwrap();
    let copy = fs::read(dir.join("sw.js.gz")).unwrap();
    let mut recorded = String::new();
    let mut reader = flate2::read::GzDecoder::new(copy.as_slice());
    reader.read_to_string(&mut recorded).unwrap();
    assert_eq!(recorded, worker(&dir));
}
