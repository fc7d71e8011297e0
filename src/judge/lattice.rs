//! The cells in which a raster is followed, and places spread evenly over one of them.

/// Cells across and down.
pub const RASTER: (usize, usize) = (64, 36);

/// Places of a cell, with the step of their lattice: a Fibonacci lattice, in which no two share a row or a column, so that an edge
/// along the raster is met as finely as one across it.
#[derive(Clone, Copy)]
pub(super) struct Lattice {
    /// How many.
    pub points: usize,
    step: usize,
}

impl Lattice {
    /// To tell where an edge runs through a cell: each place is a ray.
    pub const COARSE: Self = Self { points: 13, step: 8 };
    /// To tell what is drawn in it: each place is a look at the picture.
    pub const FINE: Self = Self { points: 34, step: 21 };

    /// The places in the raster. Each cell's lattice is shifted by its own amount, so that along an edge the cells make up for each
    /// other.
    pub fn of(self, cell: usize) -> impl Iterator<Item = [f32; 2]> {
        let (columns, rows) = RASTER;
        // Two irrational steps (the plastic number's) spread the shifts evenly.
        let shift = [0.754_877_67, 0.569_840_3].map(|step: f64| (step * cell as f64).fract());
        (0..self.points).map(move |i| {
            let at = [i, self.step * i % self.points].map(|k| (k as f64 + 0.5) / self.points as f64);
            let inside = [0, 1].map(|axis| (at[axis] + shift[axis]).fract());
            [
                (((cell % columns) as f64 + inside[0]) / columns as f64) as f32,
                (((cell / columns) as f64 + inside[1]) / rows as f64) as f32,
            ]
        })
    }
}

/// The middle of a cell in the raster.
pub(super) fn middle(cell: usize) -> [f32; 2] {
    let (columns, rows) = RASTER;
    [((cell % columns) as f32 + 0.5) / columns as f32, ((cell / columns) as f32 + 0.5) / rows as f32]
}
