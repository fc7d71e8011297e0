//! The command line: one file a command.

mod ask;
mod card;
mod compare;
mod demo;
mod evening;
pub mod home;
mod hour;
mod judge;
mod list;
mod open;
mod outfit;
#[cfg(feature = "viewer")]
mod pace;
mod progress;
mod readings;
mod sheet;
pub mod skies;
mod stage;
mod still;
mod trust;
mod validate;
mod which;

#[cfg(feature = "viewer")]
pub use {
    stage::{Stage, load},
    still::from_spot,
};

use clap::{CommandFactory as _, Parser, Subcommand};
use gauzelight::{
    files::WriteError,
    judge::findings::Level,
    units::{printable, reason},
};
use std::{
    path::{Path, PathBuf},
    process::ExitCode,
};

/// What went wrong, as a sentence for the person at the terminal.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// The yard has faults; they are already told.
    #[error("")]
    Faults,
    /// The options have a fault.
    #[error("{0}")]
    Options(String),
    /// Nothing went wrong, but there are findings, this one the worst; they are already told.
    #[error("")]
    Judged(Level),
    /// Anything else.
    #[error("{0}")]
    Said(String),
}

impl Failure {
    /// A failure by its words.
    pub fn said(words: impl std::fmt::Display) -> Self {
        Self::Said(words.to_string())
    }

    /// A fault of the options by its words.
    pub fn options(words: impl std::fmt::Display) -> Self {
        Self::Options(words.to_string())
    }

    /// A file that was not written, by what it was to be. One that must not be written over is a fault of the options.
    pub fn unwritten(what: &str, error: &WriteError) -> Self {
        let words = format!("cannot write {what}: {error}");
        match error {
            WriteError::Kept(..) | WriteError::Folder(_) => Self::Options(words),
            _ => Self::Said(words),
        }
    }

    fn code(&self) -> ExitCode {
        match self {
            Self::Faults | Self::Options(_) => ExitCode::from(2),
            Self::Said(_) => ExitCode::from(1),
            Self::Judged(Level::Check) => ExitCode::from(3),
            Self::Judged(Level::Fix) => ExitCode::from(4),
        }
    }
}

/// Writes to standard output. Who closes it has read enough: the work goes on, and ends with the code that it would have had.
pub fn say(text: impl std::fmt::Display) {
    use std::io::Write as _;
    let mut out = std::io::stdout().lock();
    if let Err(error) = writeln!(out, "{text}").and_then(|()| out.flush())
        && error.kind() != std::io::ErrorKind::BrokenPipe
    {
        aside(format_args!("gauzelight: cannot write to standard output: {}", reason(&error)));
        std::process::exit(1);
    }
}

/// Writes to standard error, where hints and faults go: letters only, whatever a yard or an option holds. Where nobody can hear them
/// the work goes on all the same.
pub fn aside(text: impl std::fmt::Display) {
    let lines: Vec<String> = text.to_string().split('\n').map(printable).collect();
    aside_as_it_is(&lines.join("\n"));
}

/// [`aside`] of what was made for a terminal, colours and all.
fn aside_as_it_is(text: &str) {
    use std::io::Write as _;
    let _ = writeln!(std::io::stderr().lock(), "{text}");
}

#[derive(Parser)]
#[command(
    name = "gauzelight",
    version,
    about = "Preview small projectors on cloth, film, forms and walls at true luminance, before anything is hung",
    long_about = "Preview small projectors on cloth, film, forms and walls at true luminance, before anything is hung.\n\n\
        With no command it opens a window on a yard: the one named, or the demo. Where there is no display it writes stills \
        from every viewing spot and the readings into a folder instead.",
    after_help = "Start here:\n  \
        gauzelight                         the demo yard\n  \
        gauzelight ask                     five questions, no yard needed\n  \
        gauzelight still yard.ron --from kerb --out kerb.png\n  \
        gauzelight readings yard.ron\n  \
        gauzelight judge yard.ron\n  \
        gauzelight evening yard.ron --season --plot season.svg\n  \
        gauzelight sheet yard.ron --out yard.pdf\n\n\
        Exit codes: 0 done; 1 could not be done, and why is said; 2 the yard or the options have faults, and each is said; \
        3 done, but judge has findings worth a check, or a still or sheet lacks a file that the yard names; \
        4 done, but judge has findings to fix.",
    args_conflicts_with_subcommands = true
)]
struct Line {
    /// Yard to open; the demo yard where none is named
    yard: Option<PathBuf>,
    /// Folder for what is written where there is no display
    #[arg(long, default_value = "gauzelight-demo")]
    out: PathBuf,
    #[command(flatten)]
    trust: trust::Trust,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Subcommand)]
enum Command {
    /// Five questions about one station; answers size, lux and cd/m², and writes a small yard to go on from
    Ask(Box<ask::Ask>),
    /// Write a picture of a yard at night, from a viewing spot or a free camera
    Still(still::Take),
    /// Print what every station gives: sizes, lux, cd/m² from each viewing spot
    Readings(readings::Readings),
    /// Judge a yard: what is hard to see, what shows through, whom it dazzles, and what would help
    Judge(judge::Judge),
    /// From when on every station is seen well enough: tonight, and night by night over a season
    Evening(evening::Evening),
    /// Compare fabrics, pairs of them, or projectors for a station, before buying any
    Compare(compare::Compare),
    /// What boxes, power and wind ask for, what is seen by day, what to do when, and what to be careful of
    Outfit(outfit::Outfit),
    /// What to buy for a yard: item by item, station by station, off the roll, against the budget; and what to pack with what
    List(list::List),
    /// Write the hang sheet: paper for the day with the ladder, a page for each station
    Sheet(sheet::Hang),
    /// Write an alignment card for each station: a frame to throw on the first night
    Card(card::Card),
    /// Look for faults in a yard, all at once
    Validate(validate::Validate),
    /// Time the live picture on whatever graphics card there is
    #[cfg(feature = "viewer")]
    Pace(pace::Pace),
}

/// Refuses a word that is neither a yard nor a command.
fn found(word: Option<&Path>) -> Result<(), Failure> {
    let line = Line::command();
    let commands: Vec<&str> = line.get_subcommands().map(clap::Command::get_name).collect();
    word.map_or(Ok(()), |word| which::there(word, &commands))
}

/// Reads the command line and runs what it asks for.
pub fn run() -> ExitCode {
    let line = match Line::try_parse() {
        Ok(line) => line,
        Err(error) => return unread(&error),
    };
    let done = match line.command {
        None => found(line.yard.as_deref()).and_then(|()| open::open(line.yard.as_deref(), &line.out, line.trust)),
        Some(Command::Ask(ask)) => ask.run(),
        Some(Command::Still(take)) => take.run(),
        Some(Command::Readings(readings)) => readings.run(),
        Some(Command::Judge(judge)) => judge.run(),
        Some(Command::Evening(evening)) => evening.run(),
        Some(Command::Compare(compare)) => compare.run(),
        Some(Command::Outfit(outfit)) => outfit.run(),
        Some(Command::List(list)) => list.run(),
        Some(Command::Sheet(sheet)) => sheet.run(),
        Some(Command::Card(card)) => card.run(),
        Some(Command::Validate(validate)) => validate.run(),
        #[cfg(feature = "viewer")]
        Some(Command::Pace(pace)) => pace.run(),
    };
    done.map_or_else(|failure| told(&failure), |()| ExitCode::SUCCESS)
}

/// Tells a failure that is not told yet; the code that it ends with.
fn told(failure: &Failure) -> ExitCode {
    if !matches!(failure, Failure::Faults | Failure::Judged(_)) {
        aside(format_args!("gauzelight: {failure}"));
    }
    failure.code()
}

/// Ends on a line that cannot be read. A slip in the name of a command passes for a yard, after which every option is unknown; so the
/// slip is told.
fn unread(error: &clap::Error) -> ExitCode {
    let first = std::env::args_os().nth(1).map(PathBuf::from).filter(|_| error.use_stderr());
    let word = first.filter(|word| {
        let text = word.as_os_str().to_string_lossy();
        !text.is_empty() && !text.starts_with('-') && Line::command().find_subcommand(text.as_ref()).is_none()
    });
    match word.map(|word| found(Some(&word))) {
        Some(Err(failure)) => told(&failure),
        _ => error.exit(),
    }
}
