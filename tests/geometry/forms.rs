//! Forms are closed, face outwards and have the volume that they should.

use super::yards::*;
use gauzelight::geometry::{Mesh, build};
use gauzelight::scene::{Angle, Form, Gourd, Name, Point, Yard};
use std::f64::consts::PI;

fn mesh(form: Form) -> Mesh {
    let built = build(&Yard { forms: vec![form], ..empty() });
    assert_eq!(built.names.len(), 2, "one name for the form and one for the ground");
    built.solids[0].mesh.clone()
}

fn assert_sound(mesh: &Mesh) {
    assert!(mesh.is_closed());
    assert!(mesh.volume() > 0.0);
    assert!(mesh.longest_edge() <= 0.25);
    let least = mesh.corners().map(|[a, b, c]| (b - a).cross(c - a).length()).fold(f32::MAX, f32::min);
    assert!(least > 1e-9, "a triangle without area: {least}");
}

fn near(value: f32, wanted: f64, within: f64) {
    assert!((f64::from(value) - wanted).abs() < within * wanted, "{value} is not {wanted}");
}

#[test]
fn every_form_is_closed_and_faces_outwards() {
    let urn = [(0.2, 0.0), (0.3, 0.1), (0.3, 0.1), (0.1, 0.4), (0.1, 0.5), (0.35, 0.5), (0.0, 0.9)];
    for form in [figure(30.0), bag(), gourd("gourd", 0.0), globe(0.5), globe(3.0), turned(&urn)] {
        assert_sound(&mesh(form));
    }
}

#[test]
fn a_globe_has_the_volume_of_a_ball() {
    near(mesh(globe(0.6)).volume(), PI / 6.0 * 0.6f64.powi(3), 0.01);
}

#[test]
fn a_bag_has_the_volume_of_a_rounded_box() {
    // 8abc Γ(1 + 1/4)³ / Γ(1 + 3/4)
    near(mesh(bag()).volume(), 1.0 * 1.6 * 0.8 * 0.906_402_5f64.powi(3) / 0.919_062_5, 0.01);
}

#[test]
fn a_turned_cylinder_and_a_cone_have_theirs() {
    near(mesh(turned(&[(0.4, 0.0), (0.4, 1.2)])).volume(), PI * 0.16 * 1.2, 0.01);
    near(mesh(turned(&[(0.0, 0.0), (0.4, 0.0), (0.0, 0.9)])).volume(), PI * 0.16 * 0.3, 0.01);
    near(mesh(turned(&[(0.4, 0.0), (0.0, 0.5), (0.4, 1.0)])).volume(), PI * 0.16 / 3.0, 0.02);
}

#[test]
fn many_forms_alike_are_one_body_in_many_places() {
    let named = |i: usize, form: &Form| match form.clone() {
        Form::Gourd(gourd) => Form::Gourd(Gourd {
            name: Name::of(&format!("gourd {i}")),
            note: format!("the {i}th"),
            at: Point::metres(i as f64, 0.1, 0.3),
            turn_deg: Angle(31.0 * i as f64),
            ballast_kg: i as f64,
            ..gourd
        }),
        other => other,
    };
    let forms = |count: usize| (0..count).map(|i| named(i, &gourd("gourd", 0.0))).collect::<Vec<_>>();
    let few = build(&Yard { forms: forms(4), ..empty() });
    assert!(few.crowds.is_empty() && few.standing() == few.triangles());
    let many = build(&Yard { forms: forms(5), ..empty() });
    let [crowd] = many.crowds.as_slice() else { panic!("{} crowds", many.crowds.len()) };
    assert_eq!((crowd.members.len(), many.solids.len()), (5, 1));
    assert_sound(&crowd.mesh);
    assert_eq!(many.standing() - many.triangles(), 4 * crowd.mesh.triangles.len());
    for (alone, member) in few.solids[..4].iter().zip(&crowd.members) {
        assert_eq!(alone.owner, member.owner);
        let stands: Vec<_> = crowd.mesh.points.iter().map(|p| member.frame.point(*p)).collect();
        assert!(alone.mesh.points == stands, "to the bit as it stood alone");
        assert_eq!(few.places[alone.owner as usize].middle, many.places[alone.owner as usize].middle);
    }
    let mut other = forms(5);
    other[2] = named(2, &globe(0.5));
    assert!(build(&Yard { forms: other, ..empty() }).crowds.is_empty());
}

#[test]
fn a_profile_that_encloses_nothing_is_left_out() {
    for profile in [&[][..], &[(0.3, 0.2)], &[(0.3, 0.2), (0.1, 0.2)], &[(0.0, 0.0), (0.0, 1.0)]] {
        let built = build(&Yard { forms: vec![turned(profile)], ..empty() });
        assert_eq!((built.names.len(), built.solids.len()), (2, 1));
    }
}

#[test]
fn forms_stand_where_they_should() {
    for (form, low, high) in [
        (figure(0.0), 0.0, 1.9),
        (bag(), 0.0, 1.6),
        (globe(0.5), 2.0, 2.5),
        (turned(&[(0.4, 0.1), (0.4, 1.2)]), 0.6, 1.7),
    ] {
        let mesh = mesh(form);
        let heights = || mesh.points.iter().map(|p| p.y);
        assert!((heights().fold(f32::MAX, f32::min) - low).abs() < 2e-3);
        assert!((heights().fold(f32::MIN, f32::max) - high).abs() < 2e-3);
    }
    let gourd = mesh(gourd("gourd", 0.0));
    assert!((gourd.points.iter().map(|p| p.y).fold(f32::MAX, f32::min) - 0.17).abs() < 1e-4);
    let widest = gourd.points.iter().map(|p| p.x.hypot(p.z + 0.6)).fold(0.0, f32::max);
    assert!((widest - 0.18).abs() < 1e-3);
}

#[test]
fn a_figure_is_aimed_at_in_the_face() {
    let built = build(&Yard { forms: vec![figure(0.0)], ..empty() });
    let face = built.place("guardian").expect("it has a name").middle;
    assert!((face.y - 0.86 * 1.9).abs() < 1e-5);
    // Its head lies around that point, deeper to the front, where it faces.
    let head: Vec<_> = built.solids[0].mesh.points.iter().filter(|p| (p.y - face.y).abs() < 0.02).collect();
    let front = head.iter().map(|p| p.z - face.z).fold(f32::MIN, f32::max);
    let back = head.iter().map(|p| face.z - p.z).fold(f32::MIN, f32::max);
    assert!(front > back && back > 0.08, "{front} {back}");
}
