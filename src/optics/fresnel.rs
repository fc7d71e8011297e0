//! Clear plates and mirrors by Fresnel's formulas.

use super::pile::Slab;

/// Share of a beam reflected where air meets a clear body of refractive index `index`, per polarisation (across and
/// along the plane of incidence), `cos` being the cosine of the angle from the normal on the air side.
pub fn reflectance(cos: f64, index: f64) -> [f64; 2] {
    let inside = refracted(cos, index);
    let across = (cos - index * inside) / (cos + index * inside);
    let along = (index * cos - inside) / (index * cos + inside);
    [across * across, along * along]
}

/// A clear plate, per polarisation, all reflections between its two surfaces included:
/// `T = τ(1−r)²/(1−r²τ²)`, `R = r(1 + τT)`.
///
/// `internal` is the share that the glass passes between its surfaces at normal incidence; the way through it grows as
/// 1/cos θ in the glass.
pub fn plate(cos: f64, index: f64, internal: f64) -> [Slab; 2] {
    let passed = internal.powf(1.0 / refracted(cos, index));
    reflectance(cos, index).map(|r| {
        if r >= 1.0 {
            return Slab::even(0.0, 1.0);
        }
        let through = passed * (1.0 - r).powi(2) / (1.0 - (r * passed).powi(2));
        Slab::even(through, r * (1.0 + passed * through))
    })
}

/// Reflectance of a mirror silvered behind its glass, unpolarised: `r + (1−r)²τ²ρ/(1 − rτ²ρ)`, with `silver` the
/// reflectance ρ of the metal against the glass.
pub fn silvered(cos: f64, index: f64, internal: f64, silver: f64) -> f64 {
    let there_and_back = internal.powf(2.0 / refracted(cos, index));
    let whole = reflectance(cos, index).map(|r| {
        let metal = there_and_back * silver;
        if r >= 1.0 { 1.0 } else { r + (1.0 - r).powi(2) * metal / (1.0 - r * metal) }
    });
    0.5 * (whole[0] + whole[1])
}

/// Cosine of the angle inside the clear body, by Snell's law.
fn refracted(cos: f64, index: f64) -> f64 {
    (1.0 - (1.0 - cos * cos) / (index * index)).max(0.0).sqrt()
}
