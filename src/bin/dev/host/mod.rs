//! What `cargo run -- …` understands, and which room does it.

mod browsers;
mod cache;
// The server says what the build tells other hosts to say.
#[path = "../../precache/headers.rs"]
mod headers;
mod http;
mod order;
mod python;
mod serve;
mod site;
mod split;
mod step;
mod tools;
mod trouble;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use order::Order;
use trouble::HostError;

/// Reads the command line, carries it out, and ends with one plain sentence if it cannot.
pub fn main() -> ExitCode {
    if split::is_called() {
        return split::main();
    }
    match order::read(std::env::args().skip(1)).and_then(carry_out) {
        Ok(()) => ExitCode::SUCCESS,
        Err(trouble) => {
            eprintln!("{trouble}");
            ExitCode::FAILURE
        }
    }
}

fn carry_out(order: Order) -> Result<(), HostError> {
    match order {
        Order::Help => {
            println!("{}", order::HELP);
            Ok(())
        }
        Order::Build { dir } => site::build(site::APP, &dir),
        Order::Floor { dir } => site::build(site::FLOOR, &dir),
        Order::Intake { dir } => site::build(site::INTAKE, &dir),
        Order::Browsers => browsers::ready(),
        // The last line is the interpreter, for whoever runs this in a script.
        Order::Python => python::ready().map(|python| println!("{}", python.display())),
        Order::Tools => tools::ready().map(|_| ()),
        Order::Serve { dir, port, build } => {
            let dir = dir.unwrap_or_else(|| root().join("dist"));
            // The port is taken first: nobody should wait for a build to hear that it is not free.
            let doors = serve::open(port)?;
            if build {
                site::build(site::APP, &dir)?;
            }
            serve::run(doors, &dir, port)
        }
    }
}

/// The project's folder: where Cargo.toml lies.
fn root() -> PathBuf {
    std::env::var_os("CARGO_MANIFEST_DIR")
        .map(PathBuf::from)
        .unwrap_or_else(|| Path::new(env!("CARGO_MANIFEST_DIR")).to_path_buf())
}
