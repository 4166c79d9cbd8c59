//! Serving a built folder to this computer only.
//!
//! It answers GET and HEAD for files below one folder and nothing else, and it tells browsers to
//! ask again every time, so that a new build is seen at once.

use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, Ipv6Addr, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::time::Duration;

use super::http::{self, Answer};
use super::trouble::Trouble;

/// A browser that opens a connection and then says nothing must not hold a thread for ever.
const PATIENCE: Duration = Duration::from_secs(30);
/// No request of a browser for one of our files has more lines than this.
const LINES: usize = 200;

/// Takes the port on both loopback addresses; "localhost" may mean either.
///
/// # Errors
/// [`Trouble::PortTaken`] if another program has it.
pub fn open(port: u16) -> Result<Vec<TcpListener>, Trouble> {
    let four = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
    let first = TcpListener::bind(four).map_err(|_| Trouble::PortTaken { port })?;
    let six = SocketAddr::from((Ipv6Addr::LOCALHOST, port));
    // A computer without IPv6 has only the first.
    Ok(std::iter::once(first)
        .chain(TcpListener::bind(six))
        .collect())
}

/// Serves `dir` until the program is stopped.
///
/// # Errors
/// [`Trouble::File`] if there is no index.html in `dir`.
pub fn run(doors: Vec<TcpListener>, dir: &Path, port: u16) -> Result<(), Trouble> {
    let dir = dir
        .canonicalize()
        .map_err(|why| Trouble::file("serve", dir, &why))?;
    let index = dir.join("index.html");
    if let Err(why) = std::fs::metadata(&index) {
        return Err(Trouble::file("serve", &index, &why));
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
        let mut lines = 0;
        let mut line = String::new();
        while reader.read_line(&mut line)? > 2 {
            lines += 1;
            if LINES < lines {
                return Ok(());
            }
            line.clear();
        }
        let answer = http::answer(head.trim_end(), dir);
        // A refused request may have a body, which must not be read as the next request.
        let go_on = matches!(answer.status, "200 OK" | "404 Not Found");
        out.write_all(&bytes(answer))?;
        if !go_on {
            return Ok(());
        }
    }
}

fn bytes(answer: Answer) -> Vec<u8> {
    let mut all = format!(
        "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
         X-Content-Type-Options: nosniff\r\n\r\n",
        answer.status, answer.kind, answer.length
    )
    .into_bytes();
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
