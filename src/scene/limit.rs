//! Limits that words and findings are judged by: each a number with where it comes from, all in one data file.

use super::{Name, Source};

noun! {
    /// A limit.
    Limit as "limit" {
        /// Its name, one of those that the program asks for.
        name: Name,
        /// What it is and where it comes from, in words.
        note: String = String::new(),
        /// Where the value comes from.
        source: Source = Source::Invented,
        /// The number.
        value: f64,
        /// Its unit; empty for a ratio.
        unit: String = String::new(),
    }
}

/// Declares the names of the limits, and the list of all.
macro_rules! limits {
    ($( $(#[$meta:meta])* $NAME:ident = $name:literal; )*) => {
        $( $(#[$meta])* pub const $NAME: &str = $name; )*

        /// Every name, as they stand in the data file.
        pub const ALL: &[&str] = &[$( $NAME ),*];
    };
}

/// The names of the limits; the data file has just these.
pub mod limits {
    limits! {
        /// Brightest tenth of a figure : ground, as seen, from which a figure is faint.
        STANDS_OUT_FAINT = "stands out: faint";
        /// Brightest tenth of a figure : ground, as seen, from which a figure is clear.
        STANDS_OUT_CLEAR = "stands out: clear";
        /// Brightest tenth of a figure : ground, as seen, from which a figure is strong.
        STANDS_OUT_STRONG = "stands out: strong";
        /// Visibility level from which a figure is faint.
        LIGHT_FAINT = "light enough: faint";
        /// Visibility level from which a figure is clear.
        LIGHT_CLEAR = "light enough: clear";
        /// Visibility level from which a figure is strong.
        LIGHT_STRONG = "light enough: strong";
        /// Stroke over the finest that an eye sees, from which a figure is faint.
        DETAIL_FAINT = "fine enough: faint";
        /// Stroke over the finest that an eye sees, from which a figure is clear.
        DETAIL_CLEAR = "fine enough: clear";
        /// Stroke over the finest that an eye sees, from which a figure is strong.
        DETAIL_STRONG = "fine enough: strong";
        /// A figure's light at the eye over that of its strongest rival, from which it is faint.
        HOLDS_FAINT = "holds its own: faint";
        /// A figure's light at the eye over that of its strongest rival, from which it is clear.
        HOLDS_CLEAR = "holds its own: clear";
        /// A figure's light at the eye over that of its strongest rival, from which it is strong.
        HOLDS_STRONG = "holds its own: strong";
        /// Angle beside the figure at which a rival counts by half.
        RIVAL_HALF = "rival counts half";
        /// Angle beside the figure from which on a rival counts by its veil alone.
        RIVAL_NONE = "rival counts no more";
        /// Share of a figure's light that may miss its target.
        FIGURE_MISSES = "figure misses";
        /// Largest size at which a figure's light is asked for.
        LIGHT_SIZE = "light enough: size";
        /// Light of the lens through what it lights, over that of the whole figure.
        LENS_THROUGH = "lens shows through";
        /// Luminance of what lies behind a film or sheet, as it comes through, over the figure's mean.
        ROOM_THROUGH = "what is behind shows through";
        /// Share of the raster's light that may go out beside a film.
        LIGHT_ESCAPES = "light goes out beside a film";
        /// Luminance of a room's lamplight beside a film over the figure's mean.
        LIGHT_ROUND = "lamplight beside a film";
        /// Brightest point of a picture over white.
        BLACK = "black picture";
        /// Share of a figure's light that something in the way may take.
        HIDDEN = "hidden from a spot";
        /// Angle between the way up of a picture and upright, degrees.
        SIDEWAYS = "thrown sideways";
        /// Share of a window to escape by that may be covered.
        ESCAPE = "escape window covered";
        /// Volts that low-voltage wire is made for.
        MADE_FOR = "cable: made for";
        /// Length of a lead for indoors that may lie outdoors, m.
        INDOOR_LEAD = "lead for indoors: outdoors";
        /// Least conductor of a cord for the mains outdoors, mm².
        OUTDOOR_MM2 = "outdoor cord: conductor";
        /// Width of a glazing bar over the figure's strokes.
        BAR_STROKES = "glazing bar over strokes";
        /// Share of light that an insect screen may take.
        SCREEN_TAKES = "insect screen takes";
        /// Light of the lens as it shows in glass, over that of the whole figure.
        GLASS_LENS = "lens shows in glass";
        /// Share of a station's light that glass may throw back.
        GLASS_SHARE = "glass throws back";
        /// Share of the spots that may see a picture turned left for right.
        WRONG_WAY = "seen the wrong way round";
        /// Luminance of an unlit cloth over that of what is behind it, or the other way round, by day.
        SHOWS_BY_DAY = "shows by day";
        /// The same by lamplight.
        SHOWS_BY_LAMPLIGHT = "shows by lamplight";
        /// Most over least of a figure's light.
        UNMEASURED = "known to a factor of";
        /// A second picture behind a see-through target over the figure.
        GHOST = "second picture";
        /// What misses the target and what is there without it, over the latter.
        SPILL = "light beside the target";
        /// The grey box on the target over the target without it.
        GREY_BOX = "grey box";
        /// Brightest tenth of a figure's area over its dimmest, were the picture white.
        UNEVEN = "uneven";
        /// Far side of a picture over its near side, on a flat target.
        TRAPEZOID = "lands as a trapezoid";
        /// Share of the pixels that a digital keystone leaves black.
        KEYSTONE = "digital keystone";
        /// Blur in a projector's own pixels.
        BLUR = "blur";
        /// A pixel over the finest that an eye sees.
        PIXELS = "pixels";
        /// Between two nets in one line.
        NETS = "net before net";
        /// Light of a lens at an eye over the figure's.
        LENS_BEHIND = "lens through cloth";
        /// Light on a figure by a projector on its side over that of one that lies flat.
        UPRIGHT = "better on its side";
        /// Light of a lens at a visitor's eye, lx.
        DAZZLE = "dazzle: lens at an eye";
        /// Angle beside its axis to which a lens shows as a bright spot, degrees.
        LENS_BESIDE = "lens in sight: beside its axis";
        /// Greatest threshold increment for a driver, %.
        DRIVER = "driver: threshold increment";
        /// Luminance of a road along a country lane, cd/m².
        ROAD_COUNTRY = "driver: road, country lane";
        /// Luminance of a road in a suburb, cd/m².
        ROAD_SUBURB = "driver: road, suburb";
        /// Luminance of a road in a town, cd/m².
        ROAD_TOWN = "driver: road, town";
        /// Illuminance of a neighbour's window along a country lane, lx.
        WINDOW_COUNTRY = "neighbour's window: country lane";
        /// Illuminance of a neighbour's window in a suburb, lx.
        WINDOW_SUBURB = "neighbour's window: suburb";
        /// Illuminance of a neighbour's window in a town, lx.
        WINDOW_TOWN = "neighbour's window: town";
        /// The same from 23:00 on along a country lane, lx.
        LATE_COUNTRY = "neighbour's window late: country lane";
        /// The same from 23:00 on in a suburb, lx.
        LATE_SUBURB = "neighbour's window late: suburb";
        /// The same from 23:00 on in a town, lx.
        LATE_TOWN = "neighbour's window late: town";
        /// Share of a raster that may go into the sky along a country lane.
        SKY_COUNTRY = "into the sky: country lane";
        /// Share of a raster that may go into the sky in a suburb.
        SKY_SUBURB = "into the sky: suburb";
        /// Share of a raster that may go into the sky in a town.
        SKY_TOWN = "into the sky: town";
        /// Distance before a lens within which nobody should walk through the beam, m.
        CROSSED = "people in the beam: distance";
        /// Distance before a lens within which no face should come, m.
        FACE = "face at a lens";
        /// Minutes of sun in a lens on one day.
        SUN_MINUTES = "sun in a lens: minutes";
        /// Room between the air in a box and the warmest that its projector may run in, K.
        BOX_ROOM = "box: room to the warmest";
        /// How much warmer than outside the air in a box may get by choice, K.
        BOX_RISE = "box: rise by choice";
        /// Share of light that a box's window may take without being counted.
        BOX_WINDOW = "box window: takes";
        /// Share of rain that reaches a projector without a box.
        RAIN = "rain on a projector";
        /// Share of a raster that is lit when nothing comes in.
        IDLE = "idle picture";
        /// Evenings on which a projector is started by hand.
        BY_HAND = "started by hand";
        /// Height of a lens from which a ladder is wanted, m.
        LADDER = "work at a height";
        /// Share of its volts that the mains may lose on the way.
        DROP_MAINS = "voltage drop: mains";
        /// Share of its volts that low voltage may lose on the way.
        DROP_LOW = "voltage drop: 12 V";
        /// Share of what a supply or cable is rated for that it may carry for hours.
        CONTINUOUS = "power for hours";
        /// A fuse over the current that it carries.
        FUSE_OVER = "fuse over its load";
        /// Second digit of the IP code of what stands in the rain.
        RAIN_CODE = "rain: second digit of the IP code";
        /// Current at which a guard of outdoor mains trips, mA.
        GUARD = "guard of outdoor mains: trips at";
        /// What the USB outlet of a projector gives, W.
        USB = "projector's usb outlet";
        /// How far a supply's volts may be off what a device runs on, as a share of that.
        VOLTS_OFF = "volts: off what a device runs on";
        /// Pull that a tie of a cloth is taken to hold, N.
        TIE_HOLDS = "a tie holds";
        /// What holds a form or a stand over what overturns it, at least.
        OVERTURNS = "holds against the wind";
        /// What hangs higher than that hangs above heads, m.
        ABOVE_HEADS = "above heads";
        /// What all costs over what may be spent.
        BUDGET = "cost over budget";
    }

    /// The steps of each question, from faint to strong.
    pub const LADDERS: [[&str; 3]; 4] = [
        [LIGHT_FAINT, LIGHT_CLEAR, LIGHT_STRONG],
        [DETAIL_FAINT, DETAIL_CLEAR, DETAIL_STRONG],
        [STANDS_OUT_FAINT, STANDS_OUT_CLEAR, STANDS_OUT_STRONG],
        [HOLDS_FAINT, HOLDS_CLEAR, HOLDS_STRONG],
    ];
}
