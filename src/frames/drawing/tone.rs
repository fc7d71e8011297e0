//! Two shapes of number that every picture is shaded with.

/// From 0 at one value to 1 at another, easing at both ends; the first may be the greater.
pub(super) fn ramp(from: f32, to: f32, value: f32) -> f32 {
    let share = ((value - from) / (to - from)).clamp(0.0, 1.0);
    share * share * (3.0 - 2.0 * share)
}

/// A bell of height one about zero; it is nearly gone at two.
pub(super) fn bump(value: f32) -> f32 {
    (-value * value).exp()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ramp_goes_up_or_down() {
        assert_eq!((ramp(1.0, 3.0, 0.0), ramp(1.0, 3.0, 2.0), ramp(1.0, 3.0, 9.0)), (0.0, 0.5, 1.0));
        assert_eq!((ramp(3.0, 1.0, 4.0), ramp(3.0, 1.0, 1.0)), (0.0, 1.0));
    }
}
