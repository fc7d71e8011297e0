//! The catalogue: surfaces, fabrics, projector classes and kinds of lamp, each value with its band and its source.

use super::{Angle, Band, Body, Colour, Fed, Gamma, Goods, Idle, Limit, Name, Positive, Size, Uv, Wakes, YesNo};

/// Where a value comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Source {
    /// Read in a published table or data set, named in the note.
    Published,
    /// Common practice, no source.
    Practice,
    /// From memory of the literature.
    Memory,
    /// Invented, typical of its class.
    #[default]
    Invented,
    /// Measured by the owner.
    Measured,
}

choice! { Source as "source" { Published, Practice, Memory, Invented, Measured } }

impl Source {
    /// How a reason names it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Practice => "common practice, no source",
            Self::Memory => "from memory of the literature",
            Self::Invented => "invented, typical",
            Self::Measured => "measured by the owner",
        }
    }
}

noun! {
    /// A matt opaque surface.
    Surface as "surface" {
        /// Unique name.
        name: Name,
        /// Where the value comes from, in words.
        note: String = String::new(),
        /// Where the value comes from.
        source: Source = Source::Invented,
        /// Diffuse reflectance.
        reflectance: Colour,
        /// Factor on it when soaked.
        wet: f64 = 0.6,
        /// Relative doubt of the reflectance: 0.2 means ±20 %.
        doubt: f64 = 0.2,
    }
}

noun! {
    /// A fabric, insect screen or rear film.
    Fabric as "fabric" {
        /// Unique name.
        name: Name,
        /// Where the values come from, in words.
        note: String = String::new(),
        /// Where the values come from.
        source: Source = Source::Invented,
        /// What it is and its values at normal incidence.
        kind: FabricKind,
        /// Whether it is an insect screen, which fills a frame and is not hung as cloth.
        screen: bool = false,
        /// Tint of what it throws back and scatters, 1 for none.
        tint: Colour = Colour::grey(1.0),
        /// Price of a square metre, flat, in your money.
        price: Option<Band> = None,
        /// Width as it comes off the roll.
        roll_width: Option<Size> = None,
        /// Weight of a square metre, flat, g.
        weight_g_m2: Option<Band> = None,
        /// Whether it is sold as flame-retardant; left out where nobody knows.
        flame_retardant: Option<bool> = None,
    }
}

/// What a fabric is, with its values at normal incidence.
#[derive(Clone, Debug, PartialEq)]
pub enum FabricKind {
    /// Tulle, bobbinet, insect screen: thread-to-pitch ratio, reflectance and transmittance of the thread.
    Net {
        /// Thread width over pitch.
        thread: Band,
        /// Share that a thread throws back.
        reflect: Band,
        /// Share that a thread scatters onwards.
        diffuse: Band,
    },
    /// Voile, sheer, sheet: straight through, scattered through, thrown back.
    Cloth {
        /// τ normal-normal.
        through: Band,
        /// τ normal-diffuse.
        diffuse: Band,
        /// ρ.
        reflect: Band,
    },
    /// Rear-projection film by the values of its data sheet.
    Film {
        /// Peak gain.
        gain: Band,
        /// Angle at which the gain is half its peak.
        half_gain_deg: Angle,
        /// τ normal-normal.
        through: Band,
        /// ρ.
        reflect: Band,
    },
}

choice! {
    FabricKind as "kind of fabric" {
        Net { thread: Band, reflect: Band, diffuse: Band },
        Cloth { through: Band, diffuse: Band, reflect: Band },
        Film { gain: Band, half_gain_deg: Angle, through: Band, reflect: Band },
    }
}

/// The shape of a lamp's light.
#[derive(Clone, Debug, PartialEq)]
pub enum SpreadKind {
    /// Alike all around.
    Globe,
    /// Downwards from a hood, by the angle at which it falls to half its peak.
    Hooded {
        /// Angle from straight down to half of the peak.
        half_deg: f64,
    },
    /// A beam along its aim, by the angle at which it falls to half its peak.
    Beam {
        /// Angle from the axis to half of the peak.
        half_deg: f64,
    },
    /// A lit window: alike in luminance from everywhere before it.
    Window,
    /// Alike all around straight down, by a table: pairs of the angle from straight down, degrees, and cd per 1000 lm, with
    /// straight lines between. Only its shape counts: the lamp gives its lumens whatever the table comes to.
    Table {
        /// The pairs, the angles rising by 1° at least; dark below the first and beyond the last.
        cd_per_klm: Vec<(f64, f64)>,
    },
    /// As measured, by a photometric file after IES LM-63.
    File {
        /// A file beside the yard.
        path: String,
    },
}

choice! {
    SpreadKind as "spread" {
        Globe,
        Hooded { half_deg: f64 },
        Beam { half_deg: f64 },
        Window,
        Table { cd_per_klm: Vec<(f64, f64)> },
        File { path: String },
    }
}

noun! {
    /// A kind of lamp.
    LampKind as "kind of lamp" {
        /// Unique name.
        name: Name,
        /// Where the values come from, in words.
        note: String = String::new(),
        /// Where the values come from.
        source: Source = Source::Invented,
        /// What one gives, lm; a whole string of lights counts as one. That of its file where it has one and nothing is said.
        lumens: Option<Band> = None,
        /// The shape of its light.
        spread: SpreadKind = SpreadKind::Globe,
        /// Colour of its light, scaled to luminance 1.
        light: Colour = Colour([1.0, 0.8, 0.55]),
        /// Radius of its bright body.
        radius: Size = Size::metres(0.06),
    }
}

noun! {
    /// A class of projector; no product.
    ProjectorClass as "projector class" {
        /// Unique name.
        name: Name,
        /// Where the values come from, in words.
        note: String = String::new(),
        /// Where the values come from.
        source: Source = Source::Invented,
        /// Lumens printed on the box.
        claimed: Positive,
        /// Real white lumens when new.
        lumens: Band,
        /// Native pixels across and down.
        pixels: (u32, u32),
        /// Pixels that the box claims to take.
        claimed_pixels: (u32, u32) = (1920, 1080),
        /// Distance over picture width, at the widest.
        throw_ratio: Positive,
        /// Distance over picture width, at the narrowest, where it can zoom.
        throw_ratio_tele: Option<Positive> = None,
        /// Nearest distance at which it can be sharp.
        nearest: Size = Size::metres(0.6),
        /// Diameter of the lens opening.
        aperture: Size = Size::metres(0.02),
        /// Built-in lens shift in picture widths and heights; (0, 0.5) puts the lower edge on the lens axis.
        shift: Uv = Uv([0.0, 0.0]),
        /// Full white over full black.
        on_off_contrast: Positive = Positive(500.0),
        /// White over black fields of a checkerboard.
        checker_contrast: Positive = Positive(80.0),
        /// Curve from signal to light: light is the signal to this power, or Srgb.
        gamma: Gamma = Gamma::USUAL,
        /// Light of full red, green and blue together, as a share of white: 1 unless white gets light that no colour gets.
        colour_light: Band = Band::exact(1.0),
        /// Illuminance in a corner over that at the centre.
        corner: Band = Band { low: 0.6, typical: 0.75, high: 0.9 },
        /// Share of light left after 1000 hours.
        left_after_1000_h: Band = Band { low: 0.9, typical: 0.95, high: 1.0 },
        /// What it draws, W.
        watts: Positive = Positive(50.0),
        /// Price of one, in your money.
        price: Option<Band> = None,
        /// Hours that a lamp of it lasts, where it has a lamp that is changed.
        lamp_hours: Option<Positive> = None,
        /// Price of such a lamp, in your money.
        lamp_price: Option<Positive> = None,
        /// What it runs on.
        volts: Fed = Fed::Mains,
        /// What it draws while it starts, in times of what it draws later: common practice, no source.
        inrush: Positive = Positive(1.5),
        /// Air that it may run in, °C, coldest and warmest.
        runs_c: (f64, f64) = RUNS_C,
        /// Its body.
        body: Body = Body::default(),
        /// What it does when power returns.
        wakes: Wakes = Wakes::Unknown,
        /// Whether it plays one file over and over by itself.
        loops: YesNo = YesNo::Unknown,
        /// What it throws at its start and when nothing comes in.
        shows: Idle = Idle::Unknown,
        /// Whether its focus stays where it was set.
        holds_focus: YesNo = YesNo::Unknown,
        /// Time that it must cool before power is cut, s.
        cools_s: f64 = 0.0,
        /// What its USB outlet gives, W, where its maker says so; taken for a plain outlet if left out.
        usb_w: Option<Positive> = None,
    }
}

/// What data sheets of small projectors mostly give, from memory: 0 to 40 °C.
const RUNS_C: (f64, f64) = (0.0, 40.0);

/// All that yards may name without saying it themselves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Catalogue {
    /// Matt opaque surfaces.
    pub surfaces: Vec<Surface>,
    /// Fabrics, insect screens and rear films.
    pub fabrics: Vec<Fabric>,
    /// Projector classes.
    pub projectors: Vec<ProjectorClass>,
    /// Kinds of lamp.
    pub lamp_kinds: Vec<LampKind>,
    /// What else is bought.
    pub goods: Vec<Goods>,
    /// Limits that words and findings are judged by.
    pub limits: Vec<Limit>,
    /// Names of the pictures drawn into the program.
    pub pictures: Vec<String>,
}
