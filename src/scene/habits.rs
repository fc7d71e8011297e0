//! What a projector class does by itself, and how large its body is: what a box is built around and what has to be tried before
//! the first night.

use super::Size;

/// What a projector does when power returns.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Wakes {
    /// It starts.
    ByItself,
    /// It waits for its remote control or a button.
    ByRemote,
    /// Nobody has tried.
    #[default]
    Unknown,
}

choice! { Wakes as "way to start" { ByItself, ByRemote, Unknown } }

/// Something that is so, or not, or that nobody has tried.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum YesNo {
    /// It is so.
    Yes,
    /// It is not.
    No,
    /// Nobody has tried.
    #[default]
    Unknown,
}

choice! { YesNo as "yes or no" { Yes, No, Unknown } }

/// What a projector throws at its start and when nothing comes in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Idle {
    /// Black.
    Nothing,
    /// A maker's sign.
    Logo,
    /// A menu.
    Menu,
    /// All of its raster in blue.
    BlueRectangle,
    /// Nobody has looked.
    #[default]
    Unknown,
}

choice! { Idle as "idle picture" { Nothing, Logo, Menu, BlueRectangle, Unknown } }

noun! {
    /// The body of a projector, lying on its feet.
    Body as "body", all optional {
        /// Across, as it looks.
        width: Size = Size::metres(0.22),
        /// Up.
        height: Size = Size::metres(0.09),
        /// From lens to back.
        depth: Size = Size::metres(0.18),
    }
}
