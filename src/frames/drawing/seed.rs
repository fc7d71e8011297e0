//! Chance that falls the same way every time a picture is drawn.

/// A small generator of pseudo-random numbers (the SplitMix64 sequence).
pub(super) struct Seed(u64);

impl Seed {
    pub fn new(start: u64) -> Self {
        Self(start)
    }

    /// A number from 0 up to 1.
    pub fn unit(&mut self) -> f32 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((mixed ^ (mixed >> 31)) >> 40) as f32 / (1u64 << 24) as f32
    }

    /// A number between two others.
    pub fn between(&mut self, low: f32, high: f32) -> f32 {
        low + (high - low) * self.unit()
    }

    /// A number about zero, mostly within 1 of it, in a bell.
    pub fn bell(&mut self) -> f32 {
        (self.unit() + self.unit() + self.unit() - 1.5) * 1.15
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_numbers_and_they_spread() {
        let (mut one, mut two) = (Seed::new(7), Seed::new(7));
        let numbers: Vec<f32> = (0..1000).map(|_| one.unit()).collect();
        assert!(numbers.iter().all(|number| *number == two.unit() && (0.0..1.0).contains(number)));
        let mean = numbers.iter().sum::<f32>() / 1000.0;
        assert!((mean - 0.5).abs() < 0.05, "{mean}");
    }
}
