//! Serving a built folder to this computer only.
//!
//! It answers GET and HEAD for files below one folder and nothing else, and it tells browsers to
//! ask again every time, so that a new build is seen at once.

use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, Ipv6Addr, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::time::Duration;

use super::headers;
use super::http::{self, Answer};
use super::trouble::HostError;

/// A browser that opens a connection and then says nothing must not hold a thread for ever.
const PATIENCE: Duration = Duration::from_secs(30);
/// No request of a browser for one of our files has more lines than this.
const LINES: usize = 200;

/// Takes the port on both loopback addresses; "localhost" may mean either.
///
/// # Errors
/// [`HostError::PortTaken`] if another program has it.
pub fn open(port: u16) -> Result<Vec<TcpListener>, HostError> {
    let four = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
    let first = TcpListener::bind(four).map_err(|_| HostError::PortTaken { port })?;
    let six = SocketAddr::from((Ipv6Addr::LOCALHOST, port));
    // A computer without IPv6 has only the first.
    Ok(std::iter::once(first)
        .chain(TcpListener::bind(six))
        .collect())
}

/// Serves `dir` until the program is stopped.
///
/// # Errors
/// [`HostError::File`] if there is no index.html in `dir`.
pub fn run(doors: Vec<TcpListener>, dir: &Path, port: u16) -> Result<(), HostError> {
    let dir = dir
        .canonicalize()
        .map_err(|why| HostError::file("serve", dir, &why))?;
    let index = dir.join("index.html");
    if let Err(why) = std::fs::metadata(&index) {
        return Err(HostError::file("serve", &index, &why));
    }
    print_how_to_use(&dir, port);
    std::thread::scope(|scope| {
        for door in &doors {
            let dir = &dir;
            scope.spawn(move || welcome(door, dir));
        }
    });
    Ok(())
}

fn welcome(door: &TcpListener, dir: &Path) {
    for guest in door.incoming().flatten() {
        let dir = dir.to_path_buf();
        // A guest that leaves in the middle is no trouble of ours.
        std::thread::spawn(move || drop(attend(guest, &dir)));
    }
}

fn attend(stream: TcpStream, dir: &Path) -> std::io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut reader = BufReader::new(stream.try_clone()?);
    let mut out = stream;
    loop {
        let mut head = String::new();
        if reader.read_line(&mut head)? == 0 {
            return Ok(());
        }
        let (mut lines, mut gzip) = (0, false);
        let mut line = String::new();
        while reader.read_line(&mut line)? > 2 {
            lines += 1;
            if LINES < lines {
                return Ok(());
            }
            if let Some(("accept-encoding", said)) = field(&line.to_ascii_lowercase()) {
                gzip |= http::takes_gzip(said);
            }
            line.clear();
        }
        let answer = http::answer(head.trim_end(), gzip, dir);
        // A refused request may have a body, which must not be read as the next request.
        let go_on = matches!(answer.status, "200 OK" | "404 Not Found");
        out.write_all(&bytes(answer))?;
        if !go_on {
            return Ok(());
        }
    }
}

/// Name and value of a line of a request's head.
fn field(line: &str) -> Option<(&str, &str)> {
    let (name, value) = line.split_once(':')?;
    Some((name.trim(), value.trim()))
}

fn bytes(answer: Answer) -> Vec<u8> {
    let mut all = format!(
        "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nVary: Accept-Encoding\r\n",
        answer.status, answer.kind, answer.length
    );
    let packed = answer.packed.then_some(("Content-Encoding", "gzip"));
    let policy = answer.policy.as_deref().map(|it| (headers::POLICY, it));
    for (name, value) in headers::BESIDE.into_iter().chain(packed).chain(policy) {
        all.push_str(&format!("{name}: {value}\r\n"));
    }
    all.push_str("\r\n");
    let mut all = all.into_bytes();
    all.extend(answer.body);
    all
}

fn print_how_to_use(dir: &Path, port: u16) {
    println!(
        "\nHubslate is at http://localhost:{port} (stop with Ctrl-C).\n\
         \n\
         On a phone: copy the files of {} to any static web host that gives HTTPS, open the\n\
         address once while there is a signal, and choose \"Add to home screen\" in the browser's menu.\n\
         It must be HTTPS: on a plain address a phone's browser refuses the service worker that\n\
         opens the app without a signal, lasting storage, the sensors and the wake lock.\n\
         An Android phone on a cable can also use this computer: `adb reverse tcp:{port} tcp:{port}`,\n\
         then http://localhost:{port} on the phone.",
        dir.display()
    );
}

#[cfg(test)]
mod tests {
    use std::io::Read as _;

    use super::*;

    const PAGE: &str = "<meta http-equiv=\"Content-Security-Policy\" content=\"script-src 'self' \
                        'sha256-abc'\"><p>home</p>";

    /// What a guest on a real connection gets for this head.
    fn asked(name: &str, head: &str) -> String {
        let dir =
            std::env::temp_dir().join(format!("hubslate-serve-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&dir).unwrap();
        std::fs::write(dir.join("index.html"), PAGE).unwrap();
        std::fs::write(dir.join("index.html.gz"), "packed").unwrap();
        let dir = dir.canonicalize().unwrap();
        let door = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let at = door.local_addr().unwrap();
        let served = std::thread::spawn(move || attend(door.accept().unwrap().0, &dir));
        let mut guest = TcpStream::connect(at).unwrap();
        guest.write_all(head.as_bytes()).unwrap();
        guest.shutdown(std::net::Shutdown::Write).unwrap();
        let mut got = String::new();
        guest.read_to_string(&mut got).unwrap();
        served.join().unwrap().unwrap();
        got
    }

    #[test]
    fn every_answer_carries_the_policy_of_the_page_and_is_not_saved() {
        let home = asked("home", "GET / HTTP/1.1\r\nHost: x\r\n\r\n");
        let gone = asked("gone", "GET /gone HTTP/1.1\r\n\r\n");
        assert!(home.starts_with("HTTP/1.1 200 OK\r\n"), "{home}");
        assert!(gone.starts_with("HTTP/1.1 404 Not Found\r\n"), "{gone}");
        for got in [&home, &gone] {
            for line in [
                "Content-Security-Policy: script-src 'self' 'sha256-abc'; frame-ancestors 'none'",
                "X-Content-Type-Options: nosniff",
                "Referrer-Policy: no-referrer",
                "Cache-Control: no-cache",
                "Content-Type: text/html; charset=utf-8",
                "Vary: Accept-Encoding",
            ] {
                assert!(got.contains(&format!("\r\n{line}\r\n")), "{line} in {got}");
            }
        }
        assert!(home.ends_with(&format!("\r\n\r\n{PAGE}")), "{home}");
        assert!(!home.contains("Content-Encoding"));
    }

    #[test]
    fn the_packed_copy_goes_to_whom_asks_for_it_and_the_next_request_is_asked_again() {
        let head = "GET / HTTP/1.1\r\nACCEPT-ENCODING: br, GZIP\r\n\r\nGET / HTTP/1.1\r\n\r\n";
        let got = asked("packed", head);
        assert_eq!(got.matches("Content-Encoding: gzip\r\n").count(), 1);
        assert!(got.contains("Content-Length: 6\r\n") && got.contains("\r\n\r\npackedHTTP/1.1"));
        assert!(got.ends_with(PAGE), "{got}");
    }
}
