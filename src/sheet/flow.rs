//! From blocks to pages: what does not fit on one goes on the next, whole.

use super::{
    Digits, Page, Paper, Setup, Weight,
    draw::{Sketch, Stand},
    font,
    paper::MARGIN,
};

/// Heights of type, points.
pub(super) const SMALL: f64 = 8.0;
pub(super) const BODY: f64 = 9.0;
pub(super) const VALUE: f64 = 11.0;
pub(super) const BIG: f64 = 15.0;
const TITLE: f64 = 20.0;
/// Room below the last line of a page for its foot.
const FOOT: f64 = 15.0;

/// What the title of a part takes, points.
const PART: f64 = 20.0;

/// Height of a row that is written into by hand.
pub(super) const ROW: f64 = 18.0;

/// Share of the width that one of two columns takes, and where the second begins.
pub(super) const HALF: (f64, f64) = (0.485, 0.515);

/// Height of a line of a size.
pub(super) fn line(size: f64) -> f64 {
    1.32 * size
}

/// One column of a block, built from its top downwards.
pub(super) struct Column {
    pub x: f64,
    pub width: f64,
    pub y: f64,
    pub sketch: Sketch,
}

impl Column {
    pub fn new(x: f64, width: f64) -> Self {
        Self { x, width, y: 0.0, sketch: Sketch::default() }
    }

    pub fn gap(&mut self, height: f64) {
        self.y += height;
    }

    /// Text in as many lines as it takes.
    pub fn text(&mut self, says: &str, size: f64, weight: Weight) {
        self.indented(says, size, weight, 0.0);
    }

    pub fn indented(&mut self, says: &str, size: f64, weight: Weight, by: f64) {
        let says = font::kept(says, &mut self.sketch.lost);
        for words in font::wrapped(&says, size, weight, self.width - by) {
            self.y += line(size);
            self.sketch.text([self.x + by, self.y - 0.32 * size], size, weight, Stand::Start, &words);
        }
    }

    /// A title of a block.
    pub fn title(&mut self, says: &str) {
        self.text(says, VALUE, Weight::Bold);
        self.gap(2.0);
    }

    /// A row of cells with a hair line below.
    pub fn row(&mut self, cells: &[(&str, f64, Weight)], widths: &[f64]) {
        self.cells(cells, widths);
        self.rule();
    }

    /// Cells side by side, each as wide as said and wrapped within.
    pub fn cells(&mut self, cells: &[(&str, f64, Weight)], widths: &[f64]) {
        let pad = 3.0;
        let (top, mut x, mut low) = (self.y + 1.0, self.x, self.y);
        for ((says, size, weight), width) in cells.iter().zip(widths) {
            let mut cell = Self { x, width: width - pad, y: top, sketch: Sketch::default() };
            if !says.is_empty() {
                cell.text(says, *size, *weight);
            }
            low = low.max(cell.y);
            self.sketch.extend(cell.sketch);
            x += width;
        }
        self.y = low;
    }

    /// A hair line across.
    pub fn rule(&mut self) {
        self.y += 1.5;
        self.sketch.line(&[[self.x, self.y], [self.x + self.width, self.y]], 0.3, 0.6);
    }

    /// A mark's sign at the left, text beside it, and a value at the right end.
    pub fn measured(&mut self, sign: Option<&str>, says: &str, value: &str) {
        let value = font::kept(value, &mut self.sketch.lost);
        let room = font::width(&value, BIG, Weight::Bold) + 8.0;
        let by = 26.0;
        let top = self.y + 1.0;
        let mut words =
            Self { x: self.x + by, width: (self.width - by - room).max(60.0), y: top, sketch: Sketch::default() };
        words.text(says, BODY, Weight::Regular);
        let base = top + line(BIG) - 0.32 * BIG;
        if let Some(sign) = sign {
            self.sketch.tagged([self.x + 0.5 * Sketch::tag(sign)[0], top + 8.0], sign);
        }
        self.sketch.text([self.x + self.width, base], BIG, Weight::Bold, Stand::End, &value);
        self.y = words.y.max(top + line(BIG)) + 1.0;
        self.sketch.extend(words.sketch);
        self.sketch.line(&[[self.x, self.y], [self.x + self.width, self.y]], 0.3, 0.6);
    }

    /// A label over a value over a remark: what stands in a box.
    pub fn told(&mut self, label: &str, value: &str, remark: &str) {
        self.text(label, SMALL, Weight::Regular);
        let size = if font::width(value, BIG, Weight::Bold) > self.width { VALUE } else { BIG };
        self.text(value, size, Weight::Bold);
        if !remark.is_empty() {
            self.text(remark, SMALL, Weight::Regular);
        }
    }
}

/// Pages as they fill.
pub(super) struct Flow {
    pub setup: Setup,
    yard: String,
    pages: Vec<Page>,
    sketch: Sketch,
    title: String,
    lost: Vec<char>,
    y: f64,
    open: bool,
}

impl Flow {
    pub fn new(setup: Setup, yard: &str) -> Self {
        Self {
            setup,
            yard: yard.to_owned(),
            pages: Vec::new(),
            sketch: Sketch::default(),
            title: String::new(),
            lost: Vec::new(),
            y: 0.0,
            open: false,
        }
    }

    pub fn digits(&self) -> Digits {
        Digits(self.setup.units)
    }

    fn size(&self) -> [f64; 2] {
        self.setup.paper.points()
    }

    /// Width between the margins.
    pub fn width(&self) -> f64 {
        self.size()[0] - 2.0 * MARGIN
    }

    /// A column that begins at a share of the width and takes a share of it.
    pub fn column(&self, from: f64, share: f64) -> Column {
        Column::new(MARGIN + from * self.width(), share * self.width())
    }

    /// One of two columns that are filled one after the other, by itself at the left.
    pub fn half(&self) -> Column {
        self.column(0.0, HALF.0)
    }

    /// Begins the pages of a subject.
    pub fn begin(&mut self, title: &str, remark: &str) {
        self.close();
        self.title = title.to_owned();
        self.open_page(title, remark);
    }

    fn open_page(&mut self, title: &str, remark: &str) {
        self.open = true;
        self.y = MARGIN;
        let mut head = self.column(0.0, 1.0);
        head.text(title, TITLE, Weight::Bold);
        if !remark.is_empty() {
            head.text(remark, BODY, Weight::Regular);
        }
        head.gap(3.0);
        head.sketch.line(&[[head.x, head.y], [head.x + head.width, head.y]], 2.0, 0.0);
        head.gap(3.0);
        self.put(vec![head]);
    }

    fn close(&mut self) {
        if !self.open {
            return;
        }
        let sketch = std::mem::take(&mut self.sketch);
        self.lost.extend(sketch.lost);
        self.pages.push(Page { size: self.size(), title: self.title.clone(), ink: sketch.ink });
        self.open = false;
    }

    fn bottom(&self) -> f64 {
        self.size()[1] - MARGIN - FOOT
    }

    /// What a page without a title has, points.
    pub fn whole(&self) -> f64 {
        self.bottom() - MARGIN
    }

    /// What is left of the page, points.
    pub fn room(&self) -> f64 {
        self.bottom() - self.y
    }

    /// A new page of the same subject where less than so much is left.
    pub fn need(&mut self, height: f64) {
        if self.room() < height {
            self.close();
            let title = format!("{}, continued", self.title);
            self.open_page(&title, "");
        }
    }

    fn put(&mut self, columns: Vec<Column>) {
        let tall = columns.iter().map(|column| column.y).fold(0.0, f64::max);
        for column in columns {
            let mut sketch = column.sketch;
            sketch.shift([0.0, self.y]);
            self.sketch.extend(sketch);
        }
        self.y += tall;
    }

    /// Columns side by side, whole on one page.
    pub fn block(&mut self, columns: Vec<Column>) {
        let tall = columns.iter().map(|column| column.y).fold(0.0, f64::max);
        self.need(tall);
        self.put(columns);
    }

    pub fn gap(&mut self, height: f64) {
        self.y += height;
    }

    /// The title of a part of the work, white on black, with so much room below it.
    pub fn part(&mut self, says: &str, below: f64) {
        self.need(PART + below.min(0.5 * self.whole()));
        self.gap(3.0);
        let mut column = self.column(0.0, 1.0);
        let tall = 14.0;
        column.sketch.area(&Sketch::rectangle([column.x, 0.0], [column.width, tall]), 0.0);
        column.sketch.grey_text(
            [column.x + 5.0, 0.75 * tall],
            10.5,
            Weight::Bold,
            Stand::Start,
            1.0,
            &says.to_uppercase(),
        );
        column.gap(tall + 3.0);
        self.put(vec![column]);
    }

    /// A title with so much room below it.
    pub fn heading(&mut self, says: &str, below: f64) {
        self.need(line(VALUE) + below);
        let mut column = self.column(0.0, 1.0);
        column.gap(3.0);
        column.text(says, 10.0, Weight::Bold);
        self.put(vec![column]);
    }

    /// A blank table to be written into, whole on one page.
    pub fn blank_table(&mut self, heads: &[&str], widths: &[f64], rows: usize) {
        let mut column = self.column(0.0, 1.0);
        let cells: Vec<(&str, f64, Weight)> = heads.iter().map(|head| (*head, SMALL, Weight::Regular)).collect();
        column.row(&cells, widths);
        for _ in 0..rows {
            column.gap(ROW);
            column.rule();
        }
        self.block(vec![column]);
    }

    /// Lines with a dot before each; a line is parted from the next where the page ends.
    pub fn list(&mut self, lines: &[String]) {
        for says in lines {
            let mut column = self.column(0.0, 1.0);
            column.indented(says, BODY, Weight::Regular, 10.0);
            let dot = [column.x + 4.0, 0.62 * line(BODY)];
            column.sketch.area(&Sketch::ring(dot, 1.4), 0.0);
            column.gap(1.5);
            self.block(vec![column]);
        }
    }

    /// All pages with their feet, and what the font lacks.
    pub fn finish(mut self) -> (Vec<Page>, Vec<char>) {
        self.close();
        let count = self.pages.len();
        let [width, height] = self.size();
        let base = height - MARGIN;
        for (index, page) in self.pages.iter_mut().enumerate() {
            let mut foot = Sketch::default();
            foot.line(&[[MARGIN, base - 10.0], [width - MARGIN, base - 10.0]], 0.4, 0.4);
            foot.text([MARGIN, base], SMALL, Weight::Regular, Stand::Start, &self.yard);
            let at = format!("page {} of {count}", index + 1);
            foot.text([width - MARGIN, base], SMALL, Weight::Regular, Stand::End, &at);
            self.lost.extend(foot.lost);
            page.ink.extend(foot.ink);
        }
        self.lost.sort_unstable();
        self.lost.dedup();
        (self.pages, self.lost)
    }

    pub fn is_letter(&self) -> bool {
        self.setup.paper == Paper::Letter
    }
}
