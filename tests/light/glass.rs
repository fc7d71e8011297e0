//! What glass throws back, against Fresnel's formulas and the mirror image.

use crate::lab::{DARK, GAMMA, Lab, RATIO, close, mesh, square_lx, station, v};
use gauzelight::{
    geometry::Outline,
    judge::{Beyond, StationReading},
    light::VeilSort,
    scene::{Band, FabricKind},
};
use std::f64::consts::PI;

const WIDE: f64 = 16.0 / 9.0;

/// Narrow enough that all of it meets the glass, nearly at one angle.
const NARROW: f64 = 20.0;

/// Illuminance square to the axis of the narrow beam.
fn lx(distance: f64) -> f64 {
    square_lx(WIDE, distance) * (NARROW / RATIO).powi(2)
}

/// Transmittance, reflectance and what is lost of one pane of 3 mm float glass: Fresnel's formulas for each polarisation,
/// index 1.52, 0.98 within square on, all reflections between its faces summed.
fn pane(degrees: f64) -> [f64; 3] {
    let angle = degrees.to_radians();
    let inside = (angle.sin() / 1.52).asin();
    let (a, b) = (angle.cos(), inside.cos());
    let within = 0.98_f64.powf(1.0 / b);
    let mut sums = [0.0; 2];
    for face in [((a - 1.52 * b) / (a + 1.52 * b)).powi(2), ((1.52 * a - b) / (1.52 * a + b)).powi(2)] {
        // T = (1 − r)² τ (1 + r²τ² + …), R = r + (1 − r)² τ² r (1 + r²τ² + …), forty times back and forth.
        let rounds: f64 = (0..40).map(|k| (face * within).powi(2 * k)).sum();
        sums[0] += 0.5 * (1.0 - face).powi(2) * within * rounds;
        sums[1] += 0.5 * (face + (1.0 - face).powi(2) * within.powi(2) * face * rounds);
    }
    [sums[0], sums[1], 1.0 - sums[0] - sums[1]]
}

/// A window of one pane in a wall at z = 0 that faces the street, with what else the yard has.
fn window(fields: &str, station: &str) -> Lab {
    glazed("Single", fields, station)
}

fn glazed(glazing: &str, fields: &str, station: &str) -> Lab {
    Lab::edited(
        &format!(
            r#"{DARK} walls: [
                (name: "wall", at: (0, 8.5, 0), width: 4, height: 3, surface: "white", openings: [
                    Window(
                        name: "window", left: 1.4, sill: 1, width: 1.2, height: 1,
                        glazing: {glazing}, room: (depth: 3, reflectance: 0),
                    ),
                ]),
                {fields} {station}"#
        ),
        |yard| {
            for fabric in &mut yard.fabrics {
                if let FabricKind::Film { through, .. } = &mut fabric.kind {
                    *through = Band::exact(0.1);
                }
            }
        },
    )
}

/// Where the glass is.
fn glass_z(lab: &Lab) -> f64 {
    let pane = lab.night.veils.iter().find(|veil| veil.sort == VeilSort::Pane).expect("it is glazed");
    let Outline::Flat(quad) = &pane.outline else { panic!("glass is flat") };
    f64::from(quad.corner.z)
}

fn narrow(place: &str) -> String {
    station("16:9", "white", &format!("{place}, throw_ratio: {NARROW}"))
}

/// All of it, and the one thing that it lands on.
fn only(reading: &StationReading) -> &Beyond {
    assert_eq!(reading.thrown_back.len(), 1, "{:?}", reading.thrown_back);
    &reading.thrown_back[0]
}

#[test]
fn square_on_a_twelfth_comes_back() {
    let plate = r#"(name: "plate", at: (0, 8, 8), width: 4, height: 4, turn_deg: 180, surface: "grey")],"#;
    let lab = window(plate, &narrow("at: (0, 10, 5), aim: (0, 10, 0)"));
    let [through, back, lost] = pane(0.0);
    assert!((back - 0.08).abs() < 0.003, "{back}");
    close(1.0 - through - lost, back, 1e-9);
    let reading = lab.reading();
    let thrown = only(&reading);
    assert_eq!(thrown.thing, "plate");
    close(thrown.share, back, 1e-3);
    let way = 5.0 + 8.0 - 2.0 * glass_z(&lab);
    close(thrown.peak_lx, back * lx(way), 1e-3);
    close(thrown.peak_luminance.expect("it is matt"), 0.5 * back * lx(way) / PI, 1e-3);
}

/// A plate that hides half of where the mirror image of the lens would throw the picture gets half of it.
#[test]
fn it_lands_where_the_mirror_image_would_throw_it() {
    let plate = r#"(name: "plate", at: (-2, 8, 8), width: 4, height: 4, turn_deg: 180, surface: "grey")],"#;
    let reading = window(plate, &narrow("at: (0, 10, 5), aim: (0, 10, 0)")).reading();
    let [_, back, _] = pane(0.0);
    let names: Vec<&str> = reading.thrown_back.iter().map(|b| b.thing.as_str()).collect();
    assert!(names.len() == 2 && names.contains(&"plate") && names.contains(&"out of the yard"), "{names:?}");
    for half in &reading.thrown_back {
        close(half.share, 0.5 * back, 1e-3);
    }
    let sky = reading.thrown_back.iter().find(|b| b.thing == "out of the yard").expect("half of it leaves the yard");
    assert_eq!((sky.peak_lx, sky.peak_luminance), (0.0, None));
}

/// Lens and plate 60° to either side of the normal, each 4 m from the glass; the plate stands square to the light.
#[test]
fn aslant_more_comes_back() {
    let (x, z) = (4.0 * 60_f64.to_radians().sin(), 2.0);
    let plate =
        format!(r#"(name: "plate", at: ({x}, 9, {z}), width: 2, height: 2, turn_deg: -120, surface: "grey")],"#);
    let lab = window(&plate, &narrow(&format!("at: ({}, 10, {z}), aim: (0, 10, 0)", -x)));
    let [_, back, _] = pane(60.0);
    assert!(back > 1.7 * pane(0.0)[1]);
    let reading = lab.reading();
    let thrown = only(&reading);
    assert_eq!(thrown.thing, "plate");
    close(thrown.share, back, 5e-3);
    // From the glass, which may stand a little behind the wall's face, back to the plate's middle: by the mirror image.
    let away = v(2.0 * x as f32, 0.0, 2.0 * (z - glass_z(&lab)) as f32).length();
    // Most comes back where the beam's far edge meets the glass most aslant, 1.4° more than its middle.
    let [_, most, _] = pane(60.0 + (0.49 / NARROW).atan().to_degrees());
    close(thrown.peak_lx, most * lx(f64::from(away)), 5e-3);
    // The same plate turned by 60° lies at a slant in the light, and gets half.
    let turned = plate.replace("-120", "180");
    let reading = window(&turned, &narrow(&format!("at: ({}, 10, {z}), aim: (0, 10, 0)", -x))).reading();
    close(only(&reading).share, back, 5e-3);
    assert!(only(&reading).peak_lx < 0.65 * thrown.peak_lx && only(&reading).peak_lx > 0.45 * thrown.peak_lx);
}

/// Behind a rear film the glass gets what passed the film straight, and throws it back onto the film.
#[test]
fn the_first_glass_may_stand_behind_the_target() {
    let film = r#"], films: [(name: "film", fabric: "film", window: "window")],"#;
    let lab = window(film, &narrow("at: (0, 10, -2.5), aim: \"film\""));
    let reading = lab.reading();
    let thrown = only(&reading);
    assert_eq!((reading.target.as_str(), thrown.thing.as_str()), ("film", "film"));
    let [_, back, _] = pane(0.0);
    close(thrown.share, 0.1 * back, 1e-3);
    let film = f64::from(lab.night.place("film").expect("it hangs").middle.z);
    close(thrown.peak_lx, 0.1 * back * lx(2.5 + 2.0 * glass_z(&lab) - film), 2e-3);
    assert_eq!(thrown.peak_luminance, None, "it is not matt");
}

/// A fold mirror takes its part before the glass does, and glass before the mirror comes first.
#[test]
fn by_way_of_a_mirror() {
    let fold = |more: &str, glazing: &str| {
        let mirror = r#"(name: "mirror", at: (0, 10, 5), width: 1.2, height: 1.2, turn_deg: 135, reflectance: 0.8)"#;
        let fields = format!("{more}], mirrors: [{mirror}],");
        glazed(glazing, &fields, &narrow("at: (3, 10, 5), aim: (0, 10, 0), mirrors: [\"mirror\"]")).reading()
    };
    let [_, back, _] = pane(0.0);
    let reading = fold("", "Single");
    let thrown = only(&reading);
    // Straight back to where it came from.
    assert_eq!(thrown.thing, "mirror");
    close(thrown.share, 0.8 * back, 1e-3);
    let before = r#"(name: "before", at: (1.5, 8.5, 5), width: 4, height: 3, turn_deg: 90, openings: [
        Window(name: "first", left: 1.4, sill: 1, width: 1.2, height: 1),
    ]),"#;
    let reading = fold(before, "Single");
    assert_eq!(only(&reading).thing, "out of the yard");
    close(only(&reading).share, back, 1e-3);
}

/// An insect screen hangs outdoors: from there light passes its mesh twice, and from indoors not at all.
#[test]
fn the_side_counts_where_there_is_a_screen() {
    let [_, back, _] = pane(0.0);
    for (z, wanted) in [(5.0, back * mesh(GAMMA, 0.0).powi(2)), (-2.0, back)] {
        let station = narrow(&format!("at: (0, 10, {z}), aim: (0, 10, 0)"));
        let reading = glazed("Single, screen: \"net\"", "],", &station).reading();
        close(reading.thrown_back.iter().map(|b| b.share).sum(), wanted, 2e-3);
    }
}

#[test]
fn without_glass_nothing_comes_back() {
    let lab = glazed("Unglazed", "],", &narrow("at: (0, 10, 5), aim: (0, 10, 0)"));
    assert!(lab.reading().thrown_back.is_empty());
    let off = narrow("at: (0, 10, 5), aim: (0, 10, 0), on: false");
    assert!(window("],", &off).reading().thrown_back.is_empty());
}
