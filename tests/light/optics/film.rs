//! Rear-projection film, by brute integration.

use std::f64::consts::PI;

use gauzelight::optics::{Film, FilmError, Rgb, sample_gain};

use super::{at, grey, near};

fn film() -> Film {
    Film::from_gain(1.2, 35.0, grey(0.2), grey(0.05)).unwrap()
}

#[test]
fn gain_is_peak_and_half() {
    let film = film();
    let gain = |degrees: f32| f64::from(sample_gain(&film.gain, (degrees.to_radians() / 2.0).sin()));
    near(gain(0.0), 1.2, 1e-6);
    near(gain(35.0), 0.6, 1e-4);
    near(gain(70.0), 1.2 / 16.0, 1e-4);
    near(at(&film.kappa, 0.0), 1.0, 1e-6);
}

/// What leaves, `∫ L cos θo dωo` over the far side, is τ_nd E at every angle of incidence.
#[test]
fn gain_integrates_to_the_share_scattered() {
    let film = film();
    let wanted = f64::from(film.sheet.faces[0].diffuse.sample(1.0).x);
    for incidence in [0.0_f64, 30.0, 60.0, 80.0] {
        let (sin, cos) = incidence.to_radians().sin_cos();
        let (rings, turns) = (600, 600);
        let mut sum = 0.0;
        for ring in 0..rings {
            let out = (f64::from(ring) + 0.5) / f64::from(rings);
            let out_sin = (1.0 - out * out).sqrt();
            for turn in 0..turns {
                let phi = 2.0 * PI * (f64::from(turn) + 0.5) / f64::from(turns);
                let bend = cos * out + sin * out_sin * phi.cos();
                let gain = sample_gain(&film.gain, (0.5 * (1.0 - bend)).max(0.0).sqrt() as f32);
                sum += f64::from(gain) * out;
            }
        }
        let leaves = at(&film.kappa, incidence) * 2.0 * sum / f64::from(rings * turns);
        near(leaves / wanted, 1.0, 1e-3);
    }
}

/// A gain of 1 in all directions is the perfect diffuser.
#[test]
fn even_gain_is_matt() {
    let film = Film::from_table(&[(0.0, 0.5), (180.0, 0.5)], grey(0.3), grey(0.1)).unwrap();
    near(f64::from(film.sheet.faces[0].diffuse.sample(0.4).x), 0.5, 1e-6);
    for theta in [0.0, 40.0, 85.0] {
        near(at(&film.kappa, theta), 1.0, 1e-5);
    }
}

/// A film that loses nothing is not refused for rounding.
#[test]
fn perfect_diffuser_stands() {
    assert!(Film::from_table(&[(0.0, 1.0)], Rgb::ZERO, Rgb::ZERO).is_ok());
}

#[test]
fn a_film_too_bright_is_refused_with_its_numbers() {
    let error = Film::from_gain(2.5, 45.0, grey(0.2), grey(0.05)).unwrap_err();
    let FilmError::TooBright { needs, left } = error else { panic!("{error:?}") };
    assert!(needs > 1.0 && (left - 0.75).abs() < 1e-6, "{error}");
    for (peak, half) in [(f32::NAN, 30.0), (-1.0, 30.0), (0.0, 30.0), (1.0, 0.0), (1.0, f32::NAN), (1.0, 180.0)] {
        assert!(Film::from_gain(peak, half, Rgb::ZERO, Rgb::ZERO).is_err(), "{peak} {half}");
    }
    assert!(matches!(Film::from_table(&[(0.0, 1.0), (0.0, 0.5)], Rgb::ZERO, Rgb::ZERO), Err(FilmError::Order(_))));
    assert!(Film::from_table(&[], Rgb::ZERO, Rgb::ZERO).is_err());
    assert!(Film::from_gain(1.0, 30.0, grey(1.2), Rgb::ZERO).is_err());
}
