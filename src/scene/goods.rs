//! Goods: what a show needs beside projectors and fabrics.

use super::{Band, Name, Positive, Source};

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
    /// Gaffer tape.
    GafferTape,
    /// Weather box.
    WeatherBox,
    /// Fan for a weather box.
    Fan,
    /// Cable by the metre; its conductor is in `mm2`.
    Cable,
    /// Mains lead for outdoors.
    MainsLead,
    /// 12 V supply.
    Supply,
    /// Battery with its charger.
    Battery,
    /// Fuse holder with its fuse.
    FuseHolder,
    /// Media player.
    Player,
    /// Memory stick.
    MemoryStick,
    /// Lamp for a projector whose class gives no price of one.
    SpareBulb,
}

choice! {
    GoodsKind as "kind of goods" {
        Mirror, GroundMount, Stand, Shelf, Bracket, Hanger, TreeMount, SecondTie, Stake, Tie, Hook, HemWeight, Ballast, BlackCloth, GafferTape, WeatherBox, Fan, Cable, MainsLead, Supply, Battery, FuseHolder, Player, MemoryStick, SpareBulb,
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
            Self::Tie => "tie",
            Self::Hook => "hook",
            Self::HemWeight => "hem weight",
            Self::Ballast => "ballast",
            Self::BlackCloth => "black cloth",
            Self::GafferTape => "gaffer tape",
            Self::WeatherBox => "weather box",
            Self::Fan => "fan",
            Self::Cable => "cable",
            Self::MainsLead => "mains lead",
            Self::Supply => "12 V supply",
            Self::Battery => "battery",
            Self::FuseHolder => "fuse holder",
            Self::Player => "media player",
            Self::MemoryStick => "memory stick",
            Self::SpareBulb => "spare bulb",
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

impl Sold {
    /// Its sign; none for pieces.
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Piece => "",
            Self::Metre => "m",
            Self::SquareMetre => "m²",
            Self::Kilogram => "kg",
        }
    }
}

noun! {
    /// Something bought beside projectors and fabrics.
    Goods as "goods" {
        /// Unique name.
        name: Name,
        /// Where the price comes from, in words.
        note: String = String::new(),
        /// Where the price comes from.
        source: Source = Source::Invented,
        /// What it is for; the first of a kind is what a list takes, the yard's own before the catalogue's.
        kind: GoodsKind,
        /// What its price is for.
        sold: Sold = Sold::Piece,
        /// Its price, in your money.
        price: Band,
        /// Conductor of a cable, mm².
        mm2: Option<Positive> = None,
    }
}
