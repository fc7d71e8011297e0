//! Light along a ray by source: of many sources few light any one place.

/// Luminance by source, cd/m²; sources that give none take no room.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Lights {
    /// Sources that are told apart.
    sources: usize,
    /// Those that give something, in their order.
    lit: Vec<(u32, f32)>,
}

impl Lights {
    /// Of a list with a value for each source.
    pub fn of(all: &[f32]) -> Self {
        let lit = (0..).zip(all).filter(|(_, light)| **light != 0.0).map(|(source, light)| (source, *light));
        Self { sources: all.len(), lit: lit.collect() }
    }

    /// Sources that are told apart.
    pub fn sources(&self) -> usize {
        self.sources
    }

    /// Makes room for so many sources.
    pub fn widen(&mut self, sources: usize) {
        self.sources = self.sources.max(sources);
    }

    /// What a source gives.
    pub fn at(&self, source: usize) -> f32 {
        self.place(source).map_or(0.0, |at| self.lit[at].1)
    }

    /// Sets what a source gives.
    pub fn set(&mut self, source: usize, light: f32) {
        debug_assert!(source < self.sources, "there are {} sources", self.sources);
        match (self.place(source), light == 0.0) {
            (Ok(at), true) => drop(self.lit.remove(at)),
            (Ok(at), false) => self.lit[at].1 = light,
            (Err(_), true) => {}
            (Err(at), false) => self.lit.insert(at, (source as u32, light)),
        }
    }

    /// What all sources give.
    pub fn all(&self) -> f64 {
        self.lit.iter().map(|(_, light)| f64::from(*light)).sum()
    }

    /// Each source that gives something, with what it gives.
    pub fn each(&self) -> impl Iterator<Item = (usize, f32)> {
        self.lit.iter().map(|(source, light)| (*source as usize, *light))
    }

    fn place(&self, source: usize) -> Result<usize, usize> {
        self.lit.binary_search_by_key(&(source as u32), |(source, _)| *source)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_is_kept_as_it_is_set() {
        let mut all = [0.0, 2.0, 0.0, 3.0];
        let mut lights = Lights::of(&all);
        for (source, light) in [(0, 1.0), (3, 0.0), (1, 5.0), (2, 0.0), (2, 7.0)] {
            all[source] = light;
            lights.set(source, light);
            assert_eq!(lights, Lights::of(&all));
            assert_eq!([0, 1, 2, 3].map(|source| lights.at(source)), all);
        }
        lights.widen(9);
        assert_eq!((lights.sources(), lights.at(8)), (9, 0.0));
        assert_eq!(lights.each().collect::<Vec<_>>(), [(0, 1.0), (1, 5.0), (2, 7.0)]);
    }
}
