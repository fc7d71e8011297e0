//! Files as a whole: written so that none is ever half there, and read only where they are files, not too large, and lie
//! where their yard may look.
//!
//! A file is [written](write()) beside its place under a name of its own, settled on the disk, and only then renamed: an old
//! file survives whatever goes wrong on the way. What is no regular file, such as a pipe or a terminal, is written directly.
//!
//! The room must not know what stands in a file.

mod disk;
mod kept;
mod reach;
mod read;
mod target;
mod temporary;
mod write;
mod write_error;

pub use disk::{Disk, System};
pub use kept::Kept;
pub use reach::Reach;
pub(crate) use reach::leads_out;
pub use read::{ReadError, read};
pub use write::{check, make_folder, write, write_new, write_new_on, write_on};
pub use write_error::WriteError;
