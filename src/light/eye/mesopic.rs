//! Luminance as an eye weighs it between day and night.

/// Mesopic luminance, cd/m², of a photopic one and a ratio S/P of scotopic to photopic light (CIE 191:2010):
///
/// `Lm = (m Lp + (1 − m) Ls V′₀) / (m + (1 − m) V′₀)`, `V′₀ = 683/1699`, `Ls = Lp S/P`, `m = 0.7670 + 0.3334 log₁₀ Lm` within 0 to 1,
///
/// solved by going round from m = 0.5. From 5 cd/m² on it is the photopic luminance; light of S/P = 1 stays what it is.
pub fn mesopic(photopic: f64, scotopic_ratio: f64) -> f64 {
    const ROUNDS: usize = 200;
    const V0: f64 = 683.0 / 1699.0;
    if photopic <= 0.0 {
        return 0.0;
    }
    let mixed = |m: f64| photopic * (m + (1.0 - m) * scotopic_ratio * V0) / (m + (1.0 - m) * V0);
    let mut m = 0.5;
    for _ in 0..ROUNDS {
        let next = cones(mixed(m));
        if (next - m).abs() < 1e-12 {
            return mixed(next);
        }
        m = next;
    }
    mixed(m)
}

/// How far an eye sees by its cones, which tell colours: the factor m of CIE 191:2010 at a mesopic luminance, cd/m². 0 below 0.005 and 1
/// from 5 on. Of light of S/P = 1 the mesopic luminance is the photopic one.
pub fn cones(luminance: f64) -> f64 {
    (0.7670 + 0.3334 * luminance.max(f64::MIN_POSITIVE).log10()).clamp(0.0, 1.0)
}
