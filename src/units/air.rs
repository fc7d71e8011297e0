//! Temperatures and air flow as people read them: °C with °F beside it for who reads feet; fans are sold by m³/h and by CFM.

/// Cubic metres an hour in one cubic foot a minute.
pub const M3_H_PER_CFM: f64 = 60.0 * 0.3048 * 0.3048 * 0.3048;

/// A temperature to the degree: `-5 °C`, and for who reads feet `-5 °C (23 °F)`.
pub fn temperature(c: f64, feet: bool) -> String {
    let shown = format!("{} °C", whole(c));
    if feet { format!("{shown} ({} °F)", whole(fahrenheit(c))) } else { shown }
}

/// A difference of temperatures to the degree: `10 K`, and for who reads feet `10 K (18 °F)`.
pub fn rise(k: f64, feet: bool) -> String {
    let shown = format!("{} K", whole(k));
    if feet { format!("{shown} ({} °F)", whole(k * 1.8)) } else { shown }
}

/// A flow of air, given in m³/h: `18 m³/h (11 CFM)`.
pub fn air_flow(m3_h: f64) -> String {
    format!("{} m³/h ({} CFM)", whole(m3_h), whole(m3_h / M3_H_PER_CFM))
}

/// Degrees Fahrenheit of degrees Celsius.
pub fn fahrenheit(c: f64) -> f64 {
    1.8 * c + 32.0
}

/// A whole number that is never `-0`.
fn whole(value: f64) -> i64 {
    value.round() as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_reads_feet_gets_fahrenheit_beside_it() {
        assert_eq!(temperature(-5.0, false), "-5 °C");
        assert_eq!(temperature(-5.0, true), "-5 °C (23 °F)");
        assert_eq!(temperature(-0.3, false), "0 °C");
        assert_eq!(rise(10.0, true), "10 K (18 °F)");
        assert_eq!(air_flow(18.0), "18 m³/h (11 CFM)");
        // The fixed points of the scale.
        assert_eq!((fahrenheit(0.0), fahrenheit(100.0), fahrenheit(-40.0)), (32.0, 212.0, -40.0));
    }
}
