//! Numbers of findings against what a person gets on paper from the same yard.

use super::{
    Lit,
    yards::{Provoked, all},
};
use gauzelight::judge::findings::{Finding, Matter};

fn found(matter: Matter) -> Finding {
    let provoked: &Provoked = all().find(|one| one.matter == matter).unwrap();
    Lit::parse(provoked.yard).findings().into_iter().find(|finding| finding.matter == matter).unwrap()
}

fn near(found: f64, on_paper: f64, share: f64) {
    assert!((found / on_paper - 1.0).abs() < share, "{found} against {on_paper} on paper");
}

/// Similar triangles: an opening `D` sharp at `zf` blurs `D |z − zf| / zf` at `z`, where a pixel is `w1 z / columns` wide.
#[test]
fn blur_is_that_of_similar_triangles() {
    // A compact LED (45 mm, 1.3 : 1, 1280 pixels) sharp at 1.2 m; the top of its figure is 3.29 m away along its axis.
    let blur = 0.045 * (3.29 - 1.2) / 1.2;
    near(found(Matter::Blur).number, blur / (3.29 / 1.3 / 1280.0), 0.02);
}

/// Light of a lens at an eye in its beam: Φ TR² a / r², by nine-point evenness brighter in the middle, through two nets.
#[test]
fn a_lens_behind_a_net_is_as_bright_as_on_paper() {
    let provoked = all().find(|one| one.matter == Matter::LensBehind).unwrap();
    let lit = Lit::parse(provoked.yard);
    let figure = lit.case().reading(0).unwrap().spots[0].sight.as_ref().unwrap().figure_lx.typical;
    let bare = 300.0 * 1.3_f64.powi(2) * (16.0 / 9.0) / 8.5_f64.powi(2);
    // Evenness 0.65 in the corners: 1 / (1 − 0.35 · 8/27) in the middle (DERIVED from the nine points of ISO/IEC 21118).
    let even = 1.0 / (1.0 - 0.35 * 8.0 / 27.0);
    let nets = 0.86_f64.powi(4);
    near(found(Matter::LensBehind).number * figure, bare * even * nets, 0.06);
}

/// A net of tulle passes (1 − γ)² = 0.74; a white wall 1.06 m on takes that at (r / (r + gap))², and throws back ρ.
#[test]
fn a_second_picture_is_as_bright_as_on_paper() {
    let provoked = all().find(|one| one.matter == Matter::Ghost).unwrap();
    let lit = Lit::parse(provoked.yard);
    let wall = lit.catalogue.surface("plaster, white").unwrap().reflectance.0[1];
    // Seen past the net's edge as it is, and through the net by 0.74: it is between the two.
    let passes = 0.86_f64.powi(2);
    let on_wall = passes * (2.7_f64 / 3.76).powi(2) * wall;
    let net = 0.55 * (1.0 - passes);
    let number = found(Matter::Ghost).number;
    assert!(number > 0.8 * passes * on_wall / net && number < 1.1 * on_wall / net, "{number}");
}

/// Two gourds are lit by one station that is meant for one of them: the other is not missed.
#[test]
fn one_station_lights_two_forms() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/owl_night.ron");
    let text = std::fs::read_to_string(path).unwrap();
    let missed = |text: &str| {
        let found = Lit::parse(text).findings();
        found.iter().any(|finding| finding.matter == Matter::Overspill && finding.of == "Gourds")
    };
    assert!(!missed(&text));
    let [first, second] =
        ["Gourd(name: \"right gourd\", at: (\"-1.13 m\"", "Gourd(name: \"right gourd\", at: (\"-6.13 m\""];
    assert!(text.contains(first) && missed(&text.replace(first, second)));
}

/// Sides of a picture on a plane that leans away by V are as long as they are far: `(cos V + y sin V)` turned about, so far over
/// near is `(cos V + y sin V) / (cos V − y sin V)` with half the picture's height y at unit depth.
#[test]
fn a_trapezoid_is_that_of_its_angle() {
    // A compact LED (1.3 : 1, 16 : 9) that looks up by atan(2.3 / 3).
    let (sin, cos) = (2.3_f64 / 3.0).atan().sin_cos();
    let y = 0.5 / 1.3 * 9.0 / 16.0;
    near(found(Matter::Trapezoid).number, (cos + y * sin) / (cos - y * sin), 1e-3);
}
