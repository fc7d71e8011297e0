//! Lists of angles: where a direction stands among them, and integrals over them.

/// What an integral over an angle weighs by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Law {
    /// Nothing.
    One,
    /// sin, of an angle from a pole.
    Sine,
    /// cos, of an angle from an equator.
    Cosine,
}

/// Where an angle stands in an ascending list of two and more: the place before it and the share of the way to the next;
/// `None` outside.
pub fn between(list: &[f64], at: f64) -> Option<(usize, f64)> {
    let (first, last) = (list.first()?, list.last()?);
    // A cosine that went there and back.
    const ROUNDING: f64 = 1e-9;
    if at < first - ROUNDING || at > last + ROUNDING {
        return None;
    }
    let i = list.partition_point(|one| *one <= at).clamp(1, list.len() - 1) - 1;
    Some((i, ((at - list[i]) / (list[i + 1] - list[i])).clamp(0.0, 1.0)))
}

/// The weight of each value of a list, so that their sum is `∫ I(a) law(a) da`, `a` in radians, for values that run straight
/// between the angles, given in degrees:
///
/// ```text
/// ∫ sin = cos a − cos b      ∫ (t − a) sin t dt = sin b − sin a − (b − a) cos b
/// ∫ cos = sin b − sin a      ∫ (t − a) cos t dt = cos b − cos a + (b − a) sin b
/// ```
pub fn weights(list: &[f64], law: Law) -> Vec<f64> {
    let mut weights = vec![0.0; list.len()];
    for (i, ends) in list.windows(2).enumerate() {
        let (a, b) = (ends[0].to_radians(), ends[1].to_radians());
        let (whole, first) = match law {
            Law::One => (b - a, 0.5 * (b - a) * (b - a)),
            Law::Sine => (a.cos() - b.cos(), b.sin() - a.sin() - (b - a) * b.cos()),
            Law::Cosine => (b.sin() - a.sin(), b.cos() - a.cos() + (b - a) * b.sin()),
        };
        let second = first / (b - a);
        weights[i] += whole - second;
        weights[i + 1] += second;
    }
    weights
}

/// A lateral angle, degrees, within the ends of a file's list, by the mirror planes that these ends mean; `circle` where the
/// angle runs all around.
pub fn folded(lateral: f64, circle: bool, ends: (f64, f64)) -> f64 {
    let is = |from: f64, to: f64| ends == (from, to);
    if !circle {
        return if is(0.0, 90.0) { lateral.abs() } else { lateral };
    }
    let around = lateral.rem_euclid(360.0);
    let half = around.min(360.0 - around);
    if is(0.0, 90.0) {
        half.min(180.0 - half)
    } else if is(0.0, 180.0) {
        half
    } else if is(90.0, 270.0) && around < 90.0 {
        180.0 - around
    } else if is(90.0, 270.0) && around > 270.0 {
        540.0 - around
    } else {
        around
    }
}
