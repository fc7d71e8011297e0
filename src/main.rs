//! The program: reads the command line and hands over to a command; the window lives here, above the library.

mod command;
#[cfg(feature = "viewer")]
mod viewer;

fn main() -> std::process::ExitCode {
    command::run()
}
