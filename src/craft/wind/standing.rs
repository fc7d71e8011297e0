//! What stands and could go over: forms, and stations on stands.

use super::{Air, Beaufort, GRAVITY, Rules, speed};
use crate::{
    craft::is_outdoors,
    scene::{Form, Mount, Station, Yard},
    units::border,
};
use serde::Serialize;

/// Pull of rounded bodies and of boxes over pressure times outline: a cylinder across the wind, a ball at the speeds of wind on
/// small things, a box; from memory of the literature.
const CYLINDER: f64 = 1.2;
const BALL: f64 = 0.5;
const BOX: f64 = 1.3;
/// A form is taken for a hollow shell, kg for a square metre of its outline: invented, to be on the safe side.
const SHELL_KG_M2: f64 = 3.0;
/// A standing figure: its outline over the square of its height, how high the middle of that is, and half its foot over its
/// height; as it is drawn.
const FIGURE: [f64; 3] = [0.233, 0.43, 0.132];
/// A rounded foot stands on less than its width: half of that over the whole, common practice, no source.
const ROUND_FOOT: f64 = 0.25;
/// A form whose foot is higher than that hangs, or stands on what the yard does not know, m.
const STANDS_BELOW_M: f64 = 1.0;

/// A projector in a box that nothing is known of, as the wind meets it, m²: 35 by 25 cm. Common practice, no source.
const FRONT_M2: f64 = 0.0875;
/// A light stand with a small projector on it, kg, and how far from its middle it tips, m: feet on a circle of 40 cm radius,
/// of which the edge between two is half as far. Common practice, no source.
const STAND_KG: f64 = 4.0;
const STAND_TIPS_M: f64 = 0.2;

/// Pull on a station's box over the pressure, m²: on its larger side, as the wind comes from anywhere.
pub(super) fn box_drag_m2(station: &Station) -> f64 {
    let known = station.shelter.as_ref();
    let front = known.map(|shelter| shelter.height.0.m * shelter.width.0.m.max(shelter.depth.0.m));
    BOX * front.unwrap_or(FRONT_M2)
}

/// What the gust does to something that stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StandWind {
    /// Its name.
    pub name: String,
    /// Whether it is a station on a stand rather than a form.
    pub is_station: bool,
    /// Pull of the gust, N.
    #[serde(serialize_with = "border::light")]
    pub load_n: f64,
    /// How high it takes hold above the foot, m.
    #[serde(serialize_with = "border::lengths")]
    pub lever_m: f64,
    /// Its own weight as taken, kg.
    #[serde(serialize_with = "border::light")]
    pub own_kg: f64,
    /// Weight put on its foot, kg.
    #[serde(serialize_with = "border::light")]
    pub ballast_kg: f64,
    /// From its middle to the edge over which it would go, m.
    #[serde(serialize_with = "border::lengths")]
    pub tips_m: f64,
    /// What holds it over what overturns it.
    #[serde(serialize_with = "border::light")]
    pub holds: f64,
    /// How often it should.
    #[serde(serialize_with = "border::light")]
    pub should: f64,
    /// Weight on its foot with which it holds as often as it should, kg.
    #[serde(serialize_with = "border::light")]
    pub ballast_needed_kg: f64,
    /// The gust in which it just holds as often as it should, m/s: it is taken in before that.
    #[serde(serialize_with = "border::light")]
    pub down_m_s: f64,
    /// The mean wind that such a gust comes in.
    pub down_mean: Beaufort,
}

/// A body as the wind meets it.
struct Body {
    /// Pull over pressure, m².
    drag_m2: f64,
    lever_m: f64,
    own_kg: f64,
    tips_m: f64,
}

impl Body {
    /// A form, by its largest outline and its drag.
    fn form(outline_m2: f64, drag: f64, lever_m: f64, tips_m: f64) -> Self {
        Self { drag_m2: drag * outline_m2, lever_m, own_kg: SHELL_KG_M2 * outline_m2, tips_m }
    }

    fn in_wind(&self, name: &str, is_station: bool, ballast_kg: f64, (air, rules): (Air, Rules)) -> StandWind {
        let should = rules.hold_factor;
        let holding = |kg: f64| (self.own_kg + kg) * GRAVITY * self.tips_m;
        let load_n = self.drag_m2 * air.pressure_pa();
        let overturns = load_n * self.lever_m;
        let needed = should * overturns / (GRAVITY * self.tips_m) - self.own_kg;
        let most = holding(ballast_kg) / (should * self.drag_m2 * self.lever_m);
        let down_m_s = speed(air.density, most);
        StandWind {
            name: name.to_owned(),
            is_station,
            load_n,
            lever_m: self.lever_m,
            own_kg: self.own_kg,
            ballast_kg,
            tips_m: self.tips_m,
            holds: if overturns > 0.0 { holding(ballast_kg) / overturns } else { f64::INFINITY },
            should,
            ballast_needed_kg: needed.max(0.0),
            down_m_s,
            down_mean: Beaufort::of_gust(down_m_s),
        }
    }
}

/// All forms that stand, and all stations on stands in the open.
pub fn stands(yard: &Yard, air: Air, rules: Rules) -> Vec<StandWind> {
    let wind = (air, rules);
    let shown = |name: &str| !yard.is_hidden(name);
    let forms = yard
        .forms
        .iter()
        .filter(|form| shown(&form.name().0))
        .filter_map(|form| Some(body(form)?.in_wind(&form.name().0, false, form.ballast_kg(), wind)));
    let on_stand = |s: &&Station| s.mount == Mount::Stand && shown(&s.name.0) && is_outdoors(yard, s);
    let stations = yard.stations.iter().filter(on_stand).map(|station| {
        let lever_m = station.at.0[1].m.max(0.1);
        let stand = Body { drag_m2: box_drag_m2(station), lever_m, own_kg: STAND_KG, tips_m: STAND_TIPS_M };
        stand.in_wind(&station.name.0, true, station.ballast_kg, wind)
    });
    forms.chain(stations).collect()
}

/// A form as the wind meets it; `None` of one that hangs.
fn body(form: &Form) -> Option<Body> {
    let foot = |at: &crate::scene::Point| at.0[1].m < STANDS_BELOW_M;
    let ellipse = |width: f64, height: f64| std::f64::consts::FRAC_PI_4 * width * height;
    let body = match form {
        Form::Figure(figure) => {
            let height = figure.height.0.m;
            let [outline, middle, foot] = FIGURE;
            Body::form(outline * height * height, CYLINDER, middle * height, foot * height)
        }
        Form::Bag(bag) => {
            let (width, height, depth) = (bag.width.0.m, bag.height.0.m, bag.depth.0.m);
            Body::form(width.max(depth) * height, CYLINDER, 0.5 * height, 0.5 * depth.min(width))
        }
        Form::Gourd(gourd) => {
            let (width, height) = (gourd.width.0.m, gourd.height.0.m);
            Body::form(ellipse(width, height), BALL, 0.5 * height, ROUND_FOOT * width)
        }
        Form::Globe(globe) if foot(&globe.at) => {
            let across = globe.diameter.0.m;
            Body::form(ellipse(across, across), BALL, 0.5 * across, ROUND_FOOT * across)
        }
        Form::Globe(_) => return None,
        Form::Turned(turned) => {
            let (mut outline, mut moment) = (0.0, 0.0);
            let first = turned.profile.first()?;
            for pair in turned.profile.windows(2) {
                let rise = pair[1].height.m - pair[0].height.m;
                let strip = rise * (pair[0].radius.m + pair[1].radius.m);
                outline += strip;
                moment += strip * (0.5 * (pair[0].height.m + pair[1].height.m) - first.height.m);
            }
            let radius = turned.profile.iter().map(|point| point.radius.m).fold(0.0, f64::max);
            let tips = if first.radius.m > 0.0 { first.radius.m } else { 2.0 * ROUND_FOOT * radius };
            Body::form(outline, CYLINDER, moment / outline.max(f64::MIN_POSITIVE), tips)
        }
    };
    Some(body)
}
