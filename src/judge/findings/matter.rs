//! What findings are about.

use super::{
    Case, Finding, bars, box_cold, box_hot, box_window, budget, by_hand, cable, crossed, dazzle, driver, escape, focus,
    fuse, ghost,
    give_away::{day, lamplight},
    glass, grey_box, guard, hidden, idle, in_the_rain, keystone, ladder, leak, lens_behind, lens_seen, lens_through,
    motion, near_lens, neighbour, nets, no_picture, nowhere, outdoor_cable, outshone, overspill, pixels, rain,
    remedy::Attempt,
    room_through, screen, second_tie, sideways, skyward, spill, sunlit, supply, ties, topples, trapezoid, uneven,
    unmeasured, upright, volts, word, wrong_way,
};
use serde::Serialize;

/// Declares the matters, each with its word, with the file that looks for it and proposes remedies, and with what to do about it
/// where a finding knows nothing better.
macro_rules! matters {
    ($( $(#[$meta:meta])* $Matter:ident = $word:literal in $file:ident, $advice:literal; )*) => {
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

            /// What to do about it, as one short sentence without its full stop.
            pub const fn advice(self) -> &'static str {
                match self {
                    $( Self::$Matter => $advice, )*
                }
            }

            pub(super) fn look(self, case: &Case) -> Vec<Finding> {
                match self {
                    $( Self::$Matter => $file::look(case), )*
                }
            }

            pub(super) fn propose(self, case: &Case, finding: &Finding) -> Vec<Attempt> {
                match self {
                    $( Self::$Matter => $file::propose(case, finding).into_iter().map(Attempt::from).collect(), )*
                }
            }
        }
    };
}

matters! {
    /// A picture is missing, black or transparent.
    NoPicture = "no picture" in no_picture, "Put the picture beside the yard, or name another";
    /// Nothing that a station is meant to light gets any of its light.
    Nowhere = "lights nothing" in nowhere, "Aim it at what it is to light";
    /// Something stands between a spot and a figure.
    Hidden = "hidden or dimmed" in hidden, "Move it, the station or the spot out of the line";
    /// What is up in a picture is not up where it lands.
    Sideways = "thrown sideways" in sideways, "Turn the picture, or lay the projector the other way";
    /// The figure is lost or faint from a viewing spot.
    Word = "hard to see" in word, "Bring it nearer, or use a brighter projector";
    /// Some of the figure misses its target.
    Overspill = "beside the target" in overspill, "Set it nearer, or aim it at the middle of its target";
    /// The lens itself shows through a film or a sheet.
    LensThrough = "the lens shows through" in lens_through, "Set the lens out of the line from the eye, or use a denser film";
    /// What lies behind a film or a sheet shows through it.
    RoomThrough = "what is behind shows through" in room_through, "Make it dark behind there, or use a denser film";
    /// Light gets out beside a film.
    Leak = "light beside a film" in leak, "Let the film reach farther";
    /// Glazing bars cut the figure.
    Bars = "glazing bars" in bars, "Take the bars out, if they are only clipped in";
    /// An insect screen takes light.
    Screen = "insect screen" in screen, "Take it out for the season";
    /// Glass throws light back to the street.
    Glass = "reflected by glass" in glass, "Set it or aim it a little aside";
    /// The picture is seen turned left for right.
    WrongWay = "the wrong way round" in wrong_way, "Mirror the picture";
    /// A cloth, or a post that it hangs from, gives itself away by day.
    ShowsByDay = "shows by day" in day, "Hang a darker net, or cover the post";
    /// A cloth, or a post that it hangs from, gives itself away by lamplight.
    ShowsByLamplight = "shows by lamplight" in lamplight, "Hang a darker net, or cover the post";
    /// The word hangs on a value that nobody measured.
    Unmeasured = "not measured" in unmeasured, "Measure it first";
    /// The figure shows a second time on what stands behind a see-through target.
    Ghost = "shows again behind" in ghost, "Aim so that it goes past what is behind, or hang a denser cloth";
    /// A lens shines through a cloth into somebody's eyes.
    LensBehind = "lens seen through cloth" in lens_behind, "Set the lens higher, lower or aside";
    /// The grey box around a figure shows on what lies beside the target.
    Spill = "light beside the target" in spill, "Set it nearer, or use a projector with deeper black";
    /// The grey box around a figure shows on the target.
    GreyBox = "grey box" in grey_box, "Use a projector with deeper black";
    /// A hot spot, or light that falls off.
    Uneven = "uneven" in uneven, "Set it farther back";
    /// The picture lands as a trapezoid.
    Trapezoid = "lands as a trapezoid" in trapezoid, "Stand it squarer on, use lens shift, or draw the picture to suit";
    /// A digital keystone takes pixels and light.
    Keystone = "digital keystone" in keystone, "Stand it squarer on, or use lens shift";
    /// Out of focus.
    Blur = "out of focus" in focus, "Focus it on its target";
    /// Pixels show to who stands nearest.
    Pixels = "pixels show" in pixels, "Set it nearer, or use a projector with more pixels";
    /// Two nets in one line.
    Nets = "net before net" in nets, "Take one of them away";
    /// A tall figure in a wide raster.
    Upright = "better on its side" in upright, "Lay it on its side and set it nearer";
    /// A lens shines into the eyes of people who watch.
    Dazzle = "dazzle" in dazzle, "Set it out of their line of sight, or aim it lower";
    /// A lens outside whose beam people stand can be seen from there.
    LensSeen = "lens in sight" in lens_seen, "Stand a board between its lens and the eye";
    /// A lens blinds who drives past.
    Driver = "glare for a driver" in driver, "Aim it lower, or set it on the other side";
    /// Light on a neighbour's window.
    Neighbour = "light at a neighbour's" in neighbour, "Aim it away from there, or use a dimmer projector";
    /// Light that goes up into the sky.
    Skyward = "light into the sky" in skyward, "Aim it lower";
    /// People walk through a beam near its lens.
    Crossed = "people in the beam" in crossed, "Set it nearer to what it lights, or lead people around it";
    /// A face comes close before a lens.
    NearLens = "face at a lens" in near_lens, "Keep people away from the lens";
    /// The sun by day into a lens or off a mirror.
    Sunlit = "sun into a lens" in sunlit, "Put a cap on the lens by day";
    /// Something covers a window that is a way out.
    Escape = "escape window covered" in escape, "Keep it free: local codes decide";
    /// Mains outdoors that nothing guards.
    Guard = "outdoor mains unguarded" in guard, "Have a licensed electrician fit one, and test it each season";
    /// A supply that rain gets into.
    SupplyRain = "supply in the rain" in in_the_rain, "Bring it indoors, or into a box made for rain";
    /// No fuse at a supply, or one that does not fit.
    Fuse = "fuse at a supply" in fuse, "Put in a fuse that fits cable and load";
    /// A cable that is not made for the mains outdoors.
    OutdoorCable = "cable not made for it" in outdoor_cable, "Take an outdoor cord of 1.5 mm² or 16 AWG: local codes decide";
    /// A cable carries more than it may.
    Cable = "cable overloaded" in cable, "Take a thicker cable";
    /// A supply, or a projector's USB outlet, gives more than it can.
    Supply = "supply overloaded" in supply, "Take a larger supply, or spread the load";
    /// Too little is left of the volts at the end of a cable, or they are the wrong ones.
    Volts = "volts lost or wrong" in volts, "Take a thicker cable, or the right supply";
    /// It gets too warm in a box for its projector.
    BoxHot = "box too warm" in box_hot, "Give the box more air";
    /// A projector stands out in the rain.
    Rain = "out in the rain" in rain, "Put it into a weather box";
    /// It stays too cold in a box for its projector.
    BoxCold = "box too cold" in box_cold, "Close its openings on cold nights";
    /// The pane of a box takes light that is not counted.
    BoxWindow = "box window not counted" in box_window, "Count the pane in the station's box window";
    /// Something else than the picture is thrown when nothing comes in.
    Idle = "shows when idle" in idle, "Set a black background in its menu";
    /// A projector does not start by itself.
    ByHand = "started by hand" in by_hand, "Let its menu start it with the mains";
    /// A station hangs above heads by one mount alone.
    SecondTie = "no second tie above heads" in second_tie, "Give it a second tie to something other than its mount";
    /// A cloth takes more wind than its ties hold.
    Ties = "ties in the wind" in ties, "Give it more ties, or take it in before the gust";
    /// A form or a stand goes over in the wind.
    Topples = "goes over in the wind" in topples, "Weigh it down";
    /// A station takes the eye from another.
    Outshone = "outshone" in outshone, "Let them play in turns";
    /// A floodlight that fires as visitors arrive.
    Motion = "motion floodlight" in motion, "Unplug it or lock it off while the show runs";
    /// Work at a height.
    Ladder = "work at a height" in ladder, "Have somebody hold the ladder, on a dry day";
    /// What is to be bought costs more than may be spent.
    Budget = "over budget" in budget, "Use a cheaper projector, or leave a station for another year";
}
