//! The cells in which a raster is followed, and places spread evenly over one of them.

/// The golden section less 1: its multiples lie evenly between whole numbers, however many there are.
pub const GOLDEN: f64 = 0.618_033_988_749_895;
/// Two more such steps (the plastic number's), for places across and down.
pub const PLASTIC: [f64; 2] = [0.754_877_67, 0.569_840_3];

/// Cells across and down.
pub const RASTER: (usize, usize) = (64, 36);

/// Places of a cell at which it is told where an edge runs through it, and the step of their lattice: a Fibonacci lattice, in which no
/// two share a row or a column, so that an edge along the raster is met as finely as one across it.
pub const POINTS: usize = 13;
const STEP: usize = 8;

/// Those places in the raster.
pub fn points(cell: usize) -> impl Iterator<Item = [f32; 2]> {
    (0..POINTS).map(move |i| place(cell, [i, STEP * i % POINTS].map(|k| (k as f64 + 0.5) / POINTS as f64)))
}

/// Places in columns and rows all over a cell, in the raster.
pub fn grid(cell: usize, [columns, rows]: [usize; 2]) -> impl Iterator<Item = [f32; 2]> {
    let at = move |i: usize| [(i % columns) as f64 / columns as f64, (i / columns) as f64 / rows as f64];
    (0..columns * rows).map(move |i| place(cell, at(i)))
}

/// A place inside a cell, 0 to 1 each way. Each cell's are shifted by its own amount, so that along an edge the cells make up for each
/// other.
fn place(cell: usize, at: [f64; 2]) -> [f32; 2] {
    let shift = PLASTIC.map(|step: f64| (step * cell as f64).fract());
    let (columns, rows) = RASTER;
    let inside = [0, 1].map(|axis| (at[axis] + shift[axis]).fract());
    [
        (((cell % columns) as f64 + inside[0]) / columns as f64) as f32,
        (((cell / columns) as f64 + inside[1]) / rows as f64) as f32,
    ]
}

/// The cells beside a cell, left, right, above and below.
pub fn beside(cell: usize) -> impl Iterator<Item = usize> {
    let (columns, rows) = RASTER;
    let (column, row) = (cell % columns, cell / columns);
    let beside = [
        (column > 0).then(|| cell - 1),
        (column + 1 < columns).then_some(cell + 1),
        (row > 0).then(|| cell - columns),
        (row + 1 < rows).then_some(cell + columns),
    ];
    beside.into_iter().flatten()
}

/// The corners of a cell in the raster.
pub fn corners(cell: usize) -> [[f32; 2]; 4] {
    let (columns, rows) = RASTER;
    let (column, row) = (cell % columns, cell / columns);
    [[0, 0], [1, 0], [0, 1], [1, 1]]
        .map(|[right, down]| [(column + right) as f32 / columns as f32, (row + down) as f32 / rows as f32])
}

/// The cell in which a place of the raster lies; `None` off it.
pub fn cell_at(uv: [f64; 2]) -> Option<usize> {
    let (columns, rows) = RASTER;
    let [column, row] = [uv[0] * columns as f64, uv[1] * rows as f64].map(f64::floor);
    let inside = (0.0..columns as f64).contains(&column) && (0.0..rows as f64).contains(&row);
    inside.then(|| row as usize * columns + column as usize)
}

/// The middle of a cell in the raster.
pub fn middle(cell: usize) -> [f32; 2] {
    let (columns, rows) = RASTER;
    [((cell % columns) as f32 + 0.5) / columns as f32, ((cell / columns) as f32 + 0.5) / rows as f32]
}
