//! One projector and a plane: rated lumens, slanting light, and where the lumens go.

use crate::lab::{DARK, Lab, RATIO, close, square_lx, station, v};
use gauzelight::{
    light::{Sides, View, luma},
    scene::{Band, Pose, Positive, Size, Uv},
};
use glam::{DVec3, Quat, Vec3};
use std::f64::consts::PI;

/// Square metres in a square foot.
const FOOT_SQUARED: f64 = 0.3048 * 0.3048;

/// An ideal projector 3 m before the point (0, 10, 0).
fn before(projector: &str, picture: &str, more: &str) -> String {
    format!("{DARK}{}", station(projector, picture, &format!("at: (0, 10, 3), aim: (0, 10, 0), {more}")))
}

#[test]
fn three_thousand_lumens_at_one_metre() {
    let lab = Lab::new(&format!("{DARK}{}", station("16:9", "white", "at: (0, 10, 1), aim: (0, 10, 0), lumens: 3000")));
    // 0.6667 m by 0.375 m is a quarter of a square metre.
    let (x, y) = (1.0 / 3.0, 0.1875);
    for (s, t) in [(0.0, 0.0), (0.999, 0.999), (-0.999, 0.999), (0.5, -0.999)] {
        close(lab.lx(v(s * x, 10.0 + t * y, 0.0), Vec3::Z), 12_000.0, 1e-4);
    }
    for (s, t) in [(1.001, 0.0), (-1.001, 0.0), (0.0, 1.001), (0.0, -1.001)] {
        assert_eq!(lab.lx(v(s * x, 10.0 + t * y, 0.0), Vec3::Z), 0.0);
    }
    assert_eq!(lab.lx(v(0.0, 10.0, 0.0), Vec3::NEG_Z), 0.0, "the back of a plane is dark");
    assert_eq!(lab.lx(v(0.0, 10.0, 2.0), Vec3::NEG_Z), 0.0, "nothing is lit behind the lens");
}

/// Published examples of screen luminance with a surface of gain 1, and two that follow from Φ / A alone.
#[test]
fn screens_of_gain_one() {
    struct Case(f64, f64, &'static str, f64, f64);
    let cases = [
        // Lumens, picture width, format, cd/m², tolerance by the digits that the source gives.
        Case(1000.0, 6.0 * 0.3048, "16:9", 169.2, 5e-4),
        Case(1000.0, 6.0 * 0.3048, "16:9", 49.4 * FOOT_LAMBERT, 1e-3),
        Case(1000.0, (62.5 * FOOT_SQUARED * 16.0 / 9.0).sqrt(), "16:9", 16.0 * FOOT_LAMBERT, 1e-4),
        Case(40_000.0, 23.0, "2.35:1", 16.5 * FOOT_LAMBERT, 3e-3),
        Case(2440.0, (61.0 * FOOT_SQUARED * 16.0 / 9.0).sqrt(), "16:9", 40.0 * FOOT_LAMBERT, 1e-4),
        Case(150.796, (16.0_f64 / 9.0).sqrt(), "16:9", 48.0, 1e-4),
        Case(1000.0, 2.0, "16:9", 141.471, 1e-4),
    ];
    /// One foot-lambert, 1/π cd per square foot, in cd/m².
    const FOOT_LAMBERT: f64 = 3.426_259_1;
    for Case(lumens, width, projector, luminance, tolerance) in cases {
        let z = RATIO * width;
        let wall = r#"walls: [(name: "wall", at: (0, 9.5, 0), width: 1, height: 1, surface: "white")],"#;
        let place = format!("at: (0, 10, {z}), aim: (0, 10, 0), lumens: {lumens}");
        let lab = Lab::new(&format!("{DARK}{wall}{}", station(projector, "white", &place)));
        close(lab.seen(v(0.4, 10.3, 1.2), v(0.1, 10.05, 0.0)), luminance, tolerance);
        close(lab.lx(v(0.1, 10.05, 0.0), Vec3::Z), luminance * PI, tolerance);
    }
}

/// On a plane through the axis turned by φ about the vertical `E(u) = E0 (1 + u tan φ)³ cos φ`,
/// `u = x/z`; 1000 lm, throw ratio 1.5, 16:9, 3 m.
#[test]
fn a_plane_turned_by_thirty_degrees() {
    let lab = Lab::new(&before("16:9", "white", ""));
    let turn = Quat::from_rotation_y(-30_f32.to_radians());
    let (along, normal) = (turn * Vec3::X, turn * Vec3::Z);
    let lx = |s: f64, t: f64| lab.lx(v(0.0, 10.0 + t as f32, 0.0) + s as f32 * along, normal);
    let edge = |lit_by: &dyn Fn(f64) -> f64| {
        let (mut lit, mut dark) = (0.0, 2.0);
        for _ in 0..30 {
            let middle = 0.5 * (lit + dark);
            *(if lit_by(middle) > 0.0 { &mut lit } else { &mut dark }) = middle;
        }
        lit
    };
    let (near, far) = (edge(&|s| lx(s, 0.0)), edge(&|s| lx(-s, 0.0)));
    close(near + far, 2.398_22, 1e-4);
    let height = |s: f64| edge(&|t| lx(s, t)) + edge(&|t| lx(s, -t));
    let (low, high) = (height(0.9999 * near), height(-0.9999 * far));
    close(low, 0.943_44, 3e-4);
    close(high, 1.393_10, 3e-4);
    close(0.5 * (low + high) * (near + far), 2.801_77, 3e-4);
    close(lx(-0.9999 * far, 0.0), 202.70, 3e-4);
    close(lx(0.0, 0.0), 384.90, 1e-4);
    close(lx(0.9999 * near, 0.0), 652.63, 5e-4);
}

#[test]
fn twice_as_far_a_quarter_of_the_light() {
    let lab = Lab::new(&before("16:9", "white", ""));
    let at = |distance: f32| lab.lx(v(0.0, 10.0, 3.0 - distance), Vec3::Z);
    for distance in [0.5, 1.0, 2.0, 4.0, 8.0, 16.0] {
        close(at(distance), square_lx(16.0 / 9.0, f64::from(distance)), 1e-5);
    }
}

/// `∫ E dA` over a plane, in cells of the raster; with the light's slant on the plane or without.
fn flux(lab: &Lab, through: Vec3, normal: Vec3, slanting: bool) -> f64 {
    const CELLS: u32 = 40;
    let lens = &lab.night.beams[0].lens;
    let (from, n) = (lens.at.as_dvec3(), normal.as_dvec3());
    let landing = |i: f64, j: f64| -> DVec3 {
        let way = lens.direction((i / f64::from(CELLS)) as f32, (j / f64::from(CELLS)) as f32).as_dvec3();
        from + way * ((through.as_dvec3() - from).dot(n) / way.dot(n))
    };
    let mut sum = 0.0;
    for (i, j) in (0..CELLS * CELLS).map(|k| (f64::from(k % CELLS), f64::from(k / CELLS))) {
        let [a, b, c, d] = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].map(|(x, y)| landing(i + x, j + y));
        let area = 0.5 * (c - a).cross(d - b).length();
        let point = landing(i + 0.5, j + 0.5).as_vec3();
        let mut square = 0.0;
        lab.night.arrivals(point, normal, Sides::Near, View::default(), |a| square += f64::from(luma(a.square)));
        sum += area * if slanting { lab.lx(point, normal) } else { square };
    }
    sum
}

#[test]
fn every_lumen_lands_whatever_the_plane() {
    let tilts = [(0.0, 0.0), (30.0, 0.0), (-35.0, 0.0), (0.0, 32.0), (20.0, -25.0)];
    for projector in ["16:9", "4:3"] {
        for pose in [Pose::Table, Pose::Upright, Pose::Ceiling] {
            for shift in [[0.0, 0.0], [0.0, 0.5], [-0.3, 0.25]] {
                let lab = Lab::edited(&before(projector, "white", ""), |yard| {
                    (yard.stations[0].pose, yard.stations[0].shift) = (pose, Some(Uv(shift)));
                });
                let axis = -lab.night.beams[0].lens.forward;
                for (turn, lean) in tilts {
                    let tilt =
                        Quat::from_rotation_y(f32::to_radians(turn)) * Quat::from_rotation_x(f32::to_radians(lean));
                    let normal = tilt * axis;
                    close(flux(&lab, v(0.0, 10.0, 0.0), normal, true), 1000.0, 1e-3);
                    // The sum would not come out without the slant, so that it cannot be lost unnoticed.
                    let unslanted = flux(&lab, v(0.0, 10.0, 0.0), normal, false);
                    assert!(unslanted > 1015.0, "{unslanted}");
                }
            }
        }
    }
}

#[test]
fn the_middle_of_a_shifted_picture_lands_on_the_aim() {
    for (pose, up) in [(Pose::Table, Vec3::Y), (Pose::Ceiling, Vec3::NEG_Y), (Pose::Upright, Vec3::X)] {
        for shift in [[0.0, 0.0], [0.0, 0.5], [0.4, -0.5]] {
            let lab = Lab::edited(&before("16:9", "white", ""), |yard| {
                (yard.stations[0].pose, yard.stations[0].shift) = (pose, Some(Uv(shift)));
            });
            let lens = &lab.night.beams[0].lens;
            let off = (lens.direction(0.5, 0.5).normalize() - Vec3::NEG_Z).length();
            assert!(off < 1e-5, "{pose:?}, shift {shift:?}: {off} rad beside the aim");
            assert!((lens.handedness() - 1.0).abs() < 1e-5);
            assert!(lens.up.dot(up) > 0.9, "{pose:?}: up is {}", lens.up);
            let [x, y] = shift.map(|s| s as f32);
            let (x, y) = (0.5 - x, 0.5 + y);
            assert!((lens.direction(x, y).normalize() - lens.forward).length() < 1e-5, "the axis is shifted so far");
        }
    }
}

/// Rated lumens are the mean of nine illuminances, in the middles of a 3 × 3 grid, times the area (ISO/IEC 21118).
#[test]
fn an_uneven_picture_has_its_rated_lumens_by_nine_points() {
    for corner in [0.3, 0.55, 0.8, 1.0, 1.4] {
        let lab = Lab::edited(&before("16:9", "white", ""), |yard| {
            yard.projectors[0].corner = Band::exact(corner);
        });
        let lx = |s: f32, t: f32| lab.lx(v(s, 10.0 + 9.0 / 16.0 * t, 0.0), Vec3::Z);
        let thirds = [-2.0 / 3.0, 0.0, 2.0 / 3.0];
        let nine = thirds.iter().flat_map(|&s| thirds.map(|t| lx(s, t))).sum::<f64>() / 9.0;
        close(nine * 2.0 * 1.125, 1000.0, 1e-4);
        close(lx(0.9999, 0.9999) / lx(0.0, 0.0), corner, 1e-3);
    }
}

/// Black gives `k + g m` of white: 1 / on-off contrast where all is black, 1 / checkerboard contrast on a checkerboard.
#[test]
fn black_is_not_dark() {
    let with = |picture: &str| {
        Lab::edited(&before("16:9", picture, ""), |yard| {
            (yard.projectors[0].on_off_contrast, yard.projectors[0].checker_contrast) =
                (Positive(400.0), Positive(60.0));
        })
    };
    let white = square_lx(16.0 / 9.0, 3.0);
    close(with("white").lx(v(0.2, 10.0, 0.0), Vec3::Z), white, 1e-4);
    close(with("black").lx(v(0.2, 10.0, 0.0), Vec3::Z), white / 400.0, 1e-4);
    let checker = with("checker");
    let field = |column: f32| checker.lx(v((2.0 * column - 3.0) / 4.0, 10.0 + 9.0 / 64.0, 0.0), Vec3::Z);
    let (one, other) = (field(1.0), field(2.0));
    close(one.max(other), white, 1e-4);
    close(one.min(other), white / 60.0, 1e-3);
    // Half is white, as on the checkerboard, but to one side.
    let half = with("left half");
    close(half.lx(v(-0.5, 10.0, 0.0), Vec3::Z), white, 1e-4);
    close(half.lx(v(0.5, 10.0, 0.0), Vec3::Z), white / 60.0, 1e-3);
}

/// Mean and swing of illuminance along the middle of the stripes, over that of white.
fn stripes(lab: &Lab, footprint: f32) -> (f64, f64) {
    const POINTS: u32 = 640;
    let lx = |i: u32| {
        let point = v(-0.75 + 1.5 * (i as f32 + 0.5) / POINTS as f32, 10.0, 0.0);
        let mut sum = 0.0;
        let view = View { footprint, only: None };
        lab.night.arrivals(point, Vec3::Z, Sides::Near, view, |a| sum += f64::from(luma(a.square) * a.toward.z));
        sum
    };
    let white = square_lx(16.0 / 9.0, 3.0);
    let values: Vec<f64> = (0..POINTS).map(|i| lx(i) / white).collect();
    let (low, high) = values.iter().fold((f64::MAX, 0.0_f64), |(a, b), &v| (a.min(v), b.max(v)));
    (values.iter().sum::<f64>() / f64::from(POINTS), high - low)
}

#[test]
fn blur_averages_and_loses_nothing() {
    // A stripe of the 2 m wide picture is 31 mm wide.
    let lab = |aperture: f64, nearest: f64, more: &str| {
        Lab::edited(&before("16:9", "stripes", more), |yard| {
            yard.projectors[0].aperture = Size::metres(aperture);
            yard.projectors[0].nearest = Size::metres(nearest);
        })
    };
    let sharp = lab(0.03, 0.01, "");
    let (mean, swing) = stripes(&sharp, 0.0);
    assert!(swing > 0.9, "in focus on its target: {swing}");
    close(mean, 0.5, 0.01);
    // 30 mm × (3 − 1) / 1 = 60 mm across on a plane 2 m behind the focus.
    let (mean, swing) = stripes(&lab(0.03, 0.01, "focus: 1"), 0.0);
    assert!(swing < 0.12, "{swing}");
    close(mean, 0.5, 0.01);
    // Nearer than the nearest focus it cannot be sharp: 100 mm × (5 − 3) / 5 = 40 mm.
    let (_, swing) = stripes(&lab(0.1, 5.0, ""), 0.0);
    assert!(swing < 0.7, "{swing}");
    // An eye's pixel of four stripes sees their mean.
    let (mean, swing) = stripes(&sharp, 0.125);
    assert!(swing < 0.12, "{swing}");
    close(mean, 0.5, 0.01);
}

#[test]
fn blur_keeps_the_lumens_of_the_picture() {
    for focus in ["", "focus: 1", "focus: 0.5"] {
        let lab = Lab::edited(&before("16:9", "checker", focus), |yard| {
            yard.projectors[0].aperture = Size::metres(0.03);
        });
        close(flux(&lab, v(0.0, 10.0, 0.0), Vec3::Z, true), 500.0, 2e-3);
    }
}

#[test]
fn white_lux_times_area_is_the_lumens() {
    let wall = r#"walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "white")],"#;
    for picture in ["white", "middle"] {
        for pose in ["Table", "Upright", "Ceiling"] {
            let reading = Lab::new(&format!("{wall}{}", before("16:9", picture, &format!("pose: {pose}")))).reading();
            close(reading.mean_on_target_lx.typical * reading.picture.width_m * reading.picture.height_m, 1000.0, 2e-3);
        }
    }
}

#[test]
fn a_shifted_picture_lands_on_a_steep_aim_too() {
    for height in [-0.4f32, 0.1, 3.0] {
        let lab = Lab::new(&format!(
            r#"{DARK} {}"#,
            station("16:9", "white", &format!("at: (0, 13, 0), aim: (0, 10, {height}), shift: (0.2, 0.5)"))
        ));
        let lens = lab.night.beams[0].lens;
        let wanted = v(0.0, 10.0, height) - v(0.0, 13.0, 0.0);
        let off = lens.direction(0.5, 0.5).normalize().angle_between(wanted.normalize());
        assert!(off < 1e-3, "{off} rad beside an aim {height} m from the plumb line");
        assert!((lens.handedness() - 1.0).abs() < 1e-5);
    }
}
