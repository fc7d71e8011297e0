//! What findings are about.

use super::{
    Case, Finding, bars, box_cold, box_hot, box_window, budget, by_hand, cable, crossed, dazzle, driver, focus, fuse,
    ghost,
    give_away::{day, lamplight},
    glass, grey_box, guard, idle, in_the_rain, ladder, leak, lens_behind, lens_seen, lens_through, motion, near_lens,
    neighbour, nets, outshone, overspill, pixels, rain,
    remedy::Proposal,
    room_through, screen, second_tie, skyward, spill, sunlit, supply, ties, topples, uneven, unmeasured, upright,
    volts, word, wrong_way,
};
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
    /// The lens itself shows through a film or a sheet.
    LensThrough = "the lens shows through" in lens_through;
    /// What lies behind a film or a sheet shows through it.
    RoomThrough = "what is behind shows through" in room_through;
    /// Light gets out beside a film.
    Leak = "light beside a film" in leak;
    /// Glazing bars cut the figure.
    Bars = "glazing bars" in bars;
    /// An insect screen takes light.
    Screen = "insect screen" in screen;
    /// Glass throws light back to the street.
    Glass = "thrown back by glass" in glass;
    /// The picture is seen turned left for right.
    WrongWay = "the wrong way round" in wrong_way;
    /// A cloth, or a post that it hangs from, gives itself away by day.
    ShowsByDay = "shows by day" in day;
    /// A cloth, or a post that it hangs from, gives itself away by lamplight.
    ShowsByLamplight = "shows by lamplight" in lamplight;
    /// The word hangs on a value that nobody measured.
    Unmeasured = "not measured" in unmeasured;
    /// The figure shows a second time on what stands behind a see-through target.
    Ghost = "shows again behind" in ghost;
    /// A lens shines through a cloth into somebody's eyes.
    LensBehind = "lens seen through cloth" in lens_behind;
    /// The grey box around a figure shows on what lies beside the target.
    Spill = "light beside the target" in spill;
    /// The grey box around a figure shows on the target.
    GreyBox = "grey box" in grey_box;
    /// A hot spot, or light that falls off.
    Uneven = "uneven" in uneven;
    /// Out of focus.
    Blur = "out of focus" in focus;
    /// Pixels show to who stands nearest.
    Pixels = "pixels show" in pixels;
    /// Two nets in one line.
    Nets = "net before net" in nets;
    /// A tall figure in a wide raster.
    Upright = "better on its side" in upright;
    /// A lens shines into the eyes of people who watch.
    Dazzle = "dazzle" in dazzle;
    /// A lens outside whose beam people stand can be seen from there.
    LensSeen = "lens in sight" in lens_seen;
    /// A lens blinds who drives past.
    Driver = "glare for a driver" in driver;
    /// Light on a neighbour's window.
    Neighbour = "light at a neighbour's" in neighbour;
    /// Light that goes up into the sky.
    Skyward = "light into the sky" in skyward;
    /// People walk through a beam near its lens.
    Crossed = "people in the beam" in crossed;
    /// A face comes close before a lens.
    NearLens = "face at a lens" in near_lens;
    /// The sun by day into a lens or off a mirror.
    Sunlit = "sun into a lens" in sunlit;
    /// Mains outdoors that nothing guards.
    Guard = "outdoor mains unguarded" in guard;
    /// A supply that rain gets into.
    SupplyRain = "supply in the rain" in in_the_rain;
    /// No fuse at a supply, or one that does not fit.
    Fuse = "fuse at a supply" in fuse;
    /// A cable carries more than it bears.
    Cable = "cable overloaded" in cable;
    /// A supply, or a projector's USB outlet, gives more than it can.
    Supply = "supply overloaded" in supply;
    /// Too little is left of the volts at the end of a cable, or they are the wrong ones.
    Volts = "volts lost or wrong" in volts;
    /// It gets too warm in a box for its projector.
    BoxHot = "box too warm" in box_hot;
    /// A projector stands out in the rain.
    Rain = "out in the rain" in rain;
    /// It stays too cold in a box for its projector.
    BoxCold = "box too cold" in box_cold;
    /// The pane of a box takes light that is not reckoned with.
    BoxWindow = "box window not reckoned with" in box_window;
    /// Something else than the picture is thrown when nothing comes in.
    Idle = "shows when idle" in idle;
    /// A projector does not start by itself.
    ByHand = "started by hand" in by_hand;
    /// A station hangs above heads by one mount alone.
    SecondTie = "no second tie above heads" in second_tie;
    /// A cloth takes more wind than its ties bear.
    Ties = "ties in the wind" in ties;
    /// A form or a stand goes over in the wind.
    Topples = "goes over in the wind" in topples;
    /// A station takes the eye from another.
    Outshone = "outshone" in outshone;
    /// A floodlight that fires as visitors arrive.
    Motion = "motion floodlight" in motion;
    /// Work at a height.
    Ladder = "work at a height" in ladder;
    /// What is to be bought costs more than may be spent.
    Budget = "over budget" in budget;
}
