//! Goods: what a show needs beside projectors and fabrics.

use super::{Band, Count, Name, Positive, Size, Source, Units};

/// What goods are for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum GoodsKind {
    /// Mirror for a fold mirror.
    Mirror,
    /// What a projector lies on close to the ground.
    GroundMount,
    /// Tripod or stand.
    Stand,
    /// Shelf, or what makes one.
    Shelf,
    /// Wall bracket.
    Bracket,
    /// Hanging mount, under eaves or a beam.
    Hanger,
    /// Strap or clamp for a tree.
    TreeMount,
    /// Safety line for what hangs above heads.
    SecondTie,
    /// Stake for a guy or a foot.
    Stake,
    /// Rope for guys.
    Rope,
    /// Tensioner of a guy.
    Tensioner,
    /// Tie for a cloth.
    Tie,
    /// Hook or eye that a tie goes to.
    Hook,
    /// Weight for a hem.
    HemWeight,
    /// Weight for a foot or a stand.
    Ballast,
    /// Black cloth that hides a lens or a box.
    BlackCloth,
    /// Tape that holds a film on glass or on a frame.
    FilmTape,
    /// Batten for the frame of a film that fills no window.
    FilmFrame,
    /// Gaffer tape.
    GafferTape,
    /// Weather box.
    WeatherBox,
    /// Fan for a weather box.
    Fan,
    /// Wire for low voltage by length; its conductor is in `mm2`.
    Cable,
    /// Mains lead for outdoors with its plug and socket; its conductor is in `mm2`, its `length` beside.
    MainsLead,
    /// Several sockets on one plug, for outdoors; how many is in `ways`.
    SocketBlock,
    /// Box that keeps a plug in a socket dry.
    PlugCover,
    /// Timer for an outlet.
    Timer,
    /// 12 V supply.
    Supply,
    /// Battery with its charger.
    Battery,
    /// Fuse holder.
    FuseHolder,
    /// Fuse.
    Fuse,
    /// Pair of connectors for low voltage.
    Connector,
    /// Media player.
    Player,
    /// Memory stick.
    MemoryStick,
    /// Lamp for a projector whose class gives no price of one.
    SpareBulb,
    /// Ladder.
    Ladder,
}

choice! {
    GoodsKind as "kind of goods" {
        Mirror, GroundMount, Stand, Shelf, Bracket, Hanger, TreeMount, SecondTie, Stake, Rope, Tensioner, Tie, Hook, HemWeight, Ballast, BlackCloth, FilmTape, FilmFrame, GafferTape, WeatherBox, Fan, Cable, MainsLead, SocketBlock, PlugCover, Timer, Supply, Battery, FuseHolder, Fuse, Connector, Player, MemoryStick, SpareBulb, Ladder,
    }
}

impl GoodsKind {
    /// What a person calls it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Mirror => "mirror",
            Self::GroundMount => "ground mount",
            Self::Stand => "stand",
            Self::Shelf => "shelf",
            Self::Bracket => "wall bracket",
            Self::Hanger => "hanging mount",
            Self::TreeMount => "tree mount",
            Self::SecondTie => "second tie",
            Self::Stake => "stake",
            Self::Rope => "rope",
            Self::Tensioner => "tensioner",
            Self::Tie => "tie",
            Self::Hook => "hook",
            Self::HemWeight => "hem weight",
            Self::Ballast => "ballast",
            Self::BlackCloth => "black cloth",
            Self::FilmTape => "film tape",
            Self::FilmFrame => "film frame",
            Self::GafferTape => "gaffer tape",
            Self::WeatherBox => "weather box",
            Self::Fan => "fan",
            Self::Cable => "cable",
            Self::MainsLead => "mains lead",
            Self::SocketBlock => "socket block",
            Self::PlugCover => "plug cover",
            Self::Timer => "timer",
            Self::Supply => "12 V supply",
            Self::Battery => "battery",
            Self::FuseHolder => "fuse holder",
            Self::Fuse => "fuse",
            Self::Connector => "connector",
            Self::Player => "media player",
            Self::MemoryStick => "memory stick",
            Self::SpareBulb => "spare bulb",
            Self::Ladder => "ladder",
        }
    }
}

/// What a price of goods is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sold {
    /// One of them.
    #[default]
    Piece,
    /// A metre.
    Metre,
    /// A square metre.
    SquareMetre,
    /// A kilogram.
    Kilogram,
}

choice! { Sold as "measure of goods" { Piece, Metre, SquareMetre, Kilogram } }

noun! {
    /// Something bought beside projectors and fabrics.
    Goods as "goods" {
        /// Unique name.
        name: Name,
        /// Where the price comes from, in words.
        note: String = String::new(),
        /// Where the price comes from.
        source: Source = Source::Invented,
        /// What it is for; the first of a kind that is sold there is what a list takes, the yard's own before the catalogue's.
        kind: GoodsKind,
        /// What its price is for.
        sold: Sold = Sold::Piece,
        /// Its price, in your money.
        price: Band,
        /// Whose shops sell it so: those of yards in metres, or in feet; both where left out.
        shops: Option<Units> = None,
        /// Conductor of a cable or lead, mm².
        mm2: Option<Positive> = None,
        /// How long a lead is.
        length: Option<Size> = None,
        /// Sockets of a socket block.
        ways: Option<Count> = None,
    }
}
