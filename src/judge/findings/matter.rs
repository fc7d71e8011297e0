//! What findings are about.

use super::{Case, Finding, overspill, remedy::Proposal, word};
use serde::Serialize;

/// Declares the matters, each with its word and with the file that looks for it and proposes remedies.
macro_rules! matters {
    ($( $(#[$meta:meta])* $Matter:ident = $word:literal in $file:ident; )*) => {
        /// What a finding is about, the gravest first.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Matter {
            $( $(#[$meta])* $Matter, )*
        }

        impl Matter {
            /// Every one.
            pub const ALL: &[Self] = &[$( Self::$Matter ),*];

            /// What it is called.
            pub const fn name(self) -> &'static str {
                match self {
                    $( Self::$Matter => $word, )*
                }
            }

            pub(super) fn look(self, case: &Case) -> Vec<Finding> {
                match self {
                    $( Self::$Matter => $file::look(case), )*
                }
            }

            pub(super) fn propose(self, case: &Case, finding: &Finding) -> Vec<Proposal> {
                match self {
                    $( Self::$Matter => $file::propose(case, finding), )*
                }
            }
        }
    };
}

matters! {
    /// The figure is lost or faint from a viewing spot.
    Word = "hard to see" in word;
    /// Some of the figure misses its target.
    Overspill = "beside the target" in overspill;
}
