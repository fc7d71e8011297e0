//! Paper made beside the window: the hang sheet, the list, and a card for each station.

use super::{Studio, lighting::Lighting};
use gauzelight::{
    craft::{
        money::{Running, SEASONS},
        shopping::ShoppingList,
    },
    files,
    frames::Shelf,
    judge::findings::{Case, judge},
    picture,
    scene::{Catalogue, Units, Yard},
    sheet::{self, Paper, Setup, Sheet, Subject},
    units::reason,
};
use image::RgbaImage;
use std::{
    fs,
    path::{Path, PathBuf},
    sync::{
        Arc,
        mpsc::{Receiver, TryRecvError, channel},
    },
};

/// What can be printed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Kind {
    /// The hang sheet.
    #[default]
    Sheet,
    /// What is to be bought and packed.
    List,
    /// A frame for each station to throw on its first night.
    Cards,
}

/// Everything that can be printed of a yard.
pub struct Print {
    /// The hang sheet.
    pub sheet: Sheet,
    /// What is to be bought and packed.
    pub list: String,
    /// The cards, by the names of their stations.
    pub cards: Vec<(String, RgbaImage)>,
    /// Counts prints, so that pages are made into textures once.
    pub number: u64,
}

/// A print, or the work on it.
#[derive(Default)]
pub struct Printing {
    /// On what paper, in which units.
    pub setup: Option<Setup>,
    /// The newest.
    pub done: Option<Print>,
    /// What was written last, and where.
    pub written: Option<String>,
    work: Option<Receiver<Print>>,
    /// The yard that it is of.
    of: Option<Arc<Yard>>,
    count: u64,
}

impl Printing {
    /// Takes what has come in; never waits.
    pub fn take(&mut self) -> Result<(), String> {
        match self.work.as_ref().map(Receiver::try_recv) {
            Some(Ok(print)) => (self.done, self.work) = (Some(print), None),
            Some(Err(TryRecvError::Disconnected)) => {
                self.work = None;
                return Err("the paper could not be laid out".to_owned());
            }
            None | Some(Err(TryRecvError::Empty)) => {}
        }
        Ok(())
    }

    /// Whether it is being made.
    pub fn is_at_work(&self) -> bool {
        self.work.is_some()
    }

    /// Whether it is, or will be, of this yard as it stands.
    pub fn is_of(&self, yard: &Arc<Yard>) -> bool {
        self.of.as_ref().is_some_and(|of| Arc::ptr_eq(of, yard))
    }

    fn begin(&mut self, lighting: &Lighting, catalogue: &Catalogue, shelf: &Shelf, spot: usize, setup: Setup) {
        let stand_ins = shelf.stand_ins.clone();
        let (sender, receiver) = channel();
        let (night, yard, catalogue) = (Arc::clone(&lighting.night), Arc::clone(&lighting.yard), catalogue.clone());
        self.of = Some(Arc::clone(&yard));
        self.count += 1;
        let number = self.count;
        std::thread::spawn(move || {
            let yard = Yard { units: setup.units, ..(*yard).clone() };
            let findings = judge(&Case::of(&yard, &catalogue, &night));
            let views = sheet::views(&night, &yard, spot, |_| ());
            let (notes, station_notes) = sheet::brief(&yard, &catalogue, &night);
            let subject = Subject {
                yard: &yard,
                catalogue: &catalogue,
                night: &night,
                stand_ins: &stand_ins,
                findings: &findings,
                views: &views,
                notes: &notes,
                station_notes: &station_notes,
            };
            let sheet = sheet::lay_out(&subject, setup);
            let cards = cards(&yard, &catalogue, &night);
            let list = ShoppingList::planned(&yard, &catalogue, Running::of(&yard, SEASONS)).page(setup.units.style());
            // The card may have been closed meanwhile.
            let _ = sender.send(Print { sheet, list, cards, number });
        });
        (self.setup, self.done, self.work, self.written) = (Some(setup), None, Some(receiver), None);
    }
}

fn cards(yard: &Yard, catalogue: &Catalogue, night: &gauzelight::light::Night) -> Vec<(String, RgbaImage)> {
    let stations = yard.stations.iter().enumerate();
    let card = |(index, station): (usize, &gauzelight::scene::Station)| {
        Some((station.name.0.clone(), sheet::alignment_card(yard, catalogue, night, index)?))
    };
    stations.filter_map(card).collect()
}

impl Studio {
    /// The paper that people of these units have at home.
    fn usual_setup(&self) -> Setup {
        let units = self.yard().units;
        Setup { paper: if units == Units::Feet { Paper::Letter } else { Paper::A4 }, units }
    }

    /// Begins to lay out everything that can be printed, as it was set up last where nothing is said.
    pub(super) fn print(&mut self, setup: Option<Setup>) {
        let setup = setup.or(self.printing.setup).unwrap_or_else(|| self.usual_setup());
        self.printing.begin(&self.lighting, &self.catalogue, &self.papers.shelf, self.spot, setup);
    }

    /// Writes what was printed.
    pub(super) fn write_paper(&mut self, kind: Kind, to: &Path) -> Result<(), String> {
        let now = self.printing.is_of(self.history.yard());
        let print = self.printing.done.as_ref().filter(|_| now).ok_or("It is still being laid out")?;
        let paper = self.printing.setup.map_or(Paper::A4, |setup| setup.paper);
        let is_html = to.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("html"));
        let kept = self.papers.kept(self.yard());
        let failed = |error: files::WriteError| format!("Cannot write the paper: {error}");
        match kind {
            Kind::Sheet => {
                let bytes = if is_html {
                    sheet::html(&print.sheet, paper).into_bytes()
                } else {
                    sheet::pdf(&print.sheet).map_err(|fault| fault.to_string())?
                };
                files::write(to, &bytes, &kept).map_err(failed)?;
            }
            Kind::List => files::write(to, print.list.as_bytes(), &kept).map_err(failed)?,
            Kind::Cards => {
                fs::create_dir_all(to)
                    .map_err(|error| format!("Cannot make the folder {}: {}", to.display(), reason(&error)))?;
                for (index, (name, card)) in print.cards.iter().enumerate() {
                    let file: PathBuf = to.join(sheet::card_file(index, name));
                    let bytes = picture::encoded(card.clone(), image::ImageFormat::Png).map_err(|e| e.to_string())?;
                    files::write(&file, &bytes, &kept).map_err(failed)?;
                }
            }
        }
        let whole = to.canonicalize().unwrap_or_else(|_| to.to_owned());
        self.printing.written = Some(format!("Written: {}", whole.display()));
        Ok(())
    }
}
