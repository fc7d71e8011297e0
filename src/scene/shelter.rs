//! Weather boxes: what a station outdoors stands in.

use super::{Angle, Count, Positive, Size};

/// What the walls of a box are made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BoxWall {
    /// A storage box, a pipe, a housing.
    #[default]
    Plastic,
    /// Boards or plywood, painted.
    Plywood,
    /// Painted sheet.
    Metal,
}

choice! { BoxWall as "wall of a box" { Plastic, Plywood, Metal } }

/// How a box looks to the sun.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BoxColour {
    /// White or bright foil.
    White,
    /// Grey, or a colour of middle tone.
    #[default]
    Grey,
    /// Black, dark green, dark brown.
    Dark,
}

choice! { BoxColour as "colour of a box" { White, Grey, Dark } }

/// What a projector in a box looks out through.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PaneKind {
    /// Clear float glass.
    #[default]
    Glass,
    /// Clear acrylic.
    Acrylic,
    /// A hole.
    Open,
}

choice! { PaneKind as "pane" { Glass, Acrylic, Open } }

noun! {
    /// A fan that draws air through a box.
    Fan as "fan" {
        /// Air that it moves with nothing in its way, m³/h.
        flow_m3_h: Positive,
        /// Pressure that it holds with its way shut, Pa.
        pressure_pa: Positive = Positive(25.0),
        /// What it draws, W.
        watts: Positive = Positive(2.0),
    }
}

noun! {
    /// What a projector in a box looks out through.
    BoxWindow as "window of a box", all optional {
        /// What it is.
        pane: PaneKind = PaneKind::Glass,
        /// Thickness of the pane.
        thickness: Size = Size::metres(0.003),
        /// Across.
        width: Size = Size::metres(0.15),
        /// Up.
        height: Size = Size::metres(0.12),
        /// How far it leans off square to the lens axis, its top forward.
        tilt_deg: Angle = Angle(0.0),
    }
}

noun! {
    /// The weather box of a station. Sizes are those inside.
    Shelter as "weather box", all optional {
        /// Across, as the projector looks.
        width: Size = Size::metres(0.4),
        /// Up.
        height: Size = Size::metres(0.3),
        /// From its window to its back.
        depth: Size = Size::metres(0.45),
        /// What its walls are made of.
        wall: BoxWall = BoxWall::Plastic,
        /// Thickness of its walls.
        thickness: Size = Size::metres(0.003),
        /// How it looks to the sun.
        colour: BoxColour = BoxColour::Grey,
        /// How many of its six faces stand free in the air.
        free_faces: Count = Count(5),
        /// The fan that draws air out of it.
        fan: Option<Fan> = None,
        /// Where air comes in, cm² in all; 0 for nowhere.
        inlet_cm2: f64 = 60.0,
        /// Where air goes out, cm² in all; 0 for nowhere.
        outlet_cm2: f64 = 60.0,
        /// Whether a dust filter sits in the inlet.
        filter: bool = false,
        /// Whether grilles or louvres sit before both openings.
        grille: bool = false,
        /// Whether insect mesh sits before both openings.
        mesh: bool = true,
        /// Whether both openings, the inlet low and the outlet high, lie under hoods that reach lower than they do.
        openings_down: bool = true,
        /// What the projector looks out through.
        window: BoxWindow = BoxWindow::default(),
        /// Whether the cable comes in at the bottom, with a loop that hangs lower than the hole.
        drip_loop: bool = true,
        /// What gives heat inside beside projector, fan and the station's loads: a supply, W.
        also_w: f64 = 0.0,
    }
}
