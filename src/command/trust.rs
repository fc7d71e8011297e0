//! How far a yard may look for what it names: no further than its own folder, unless its owner says so.

use gauzelight::files::Reach;

/// The option by which an owner says so, for messages.
pub const OPTION: &str = "--files-from-anywhere";

/// What the owner of a yard lets it do.
#[derive(Clone, Copy, Debug, Default, clap::Args)]
pub struct Trust {
    /// Let the yard read pictures and lamp files outside its own folder too; say so only of a yard whose maker you trust
    #[arg(long)]
    files_from_anywhere: bool,
}

impl Trust {
    /// How far the yard may look.
    pub fn reach(self) -> Reach {
        if self.files_from_anywhere { Reach::anywhere() } else { Reach::default() }
    }
}
