//! The light on open level ground as a page of text.

use gauzelight::{
    judge::{Heavenly, OpenGround},
    units::illuminance,
};
use std::fmt::Write as _;

/// Before the stations.
pub fn text(ground: &OpenGround, feet: bool) -> String {
    let mut page = "open ground\n".to_owned();
    // Writing to a string cannot fail.
    let _ = lines(&mut page, ground, feet);
    page
}

fn lines(page: &mut String, ground: &OpenGround, feet: bool) -> std::fmt::Result {
    let lx = |lx: f64| illuminance(lx, lx, lx, feet).join(", ");
    match &ground.at {
        Some(at) => writeln!(page, "  at                 {} on {}, {}", at.clock, at.date, at.zone)?,
        None => writeln!(page, "  at                 no date: the sky is set by hand")?,
    }
    writeln!(page, "  total              {}", lx(ground.lx))?;
    write!(page, "  by the sky         {}", lx(ground.sky_lx))?;
    if ground.town_lx > 0.0 {
        write!(page, ", of it {} by the glow of towns", lx(ground.town_lx))?;
    }
    writeln!(page)?;
    if let Some(direct) = &ground.direct {
        writeln!(page, "  direct             {}, from the {}", lx(direct.lx), direct.from)?;
    }
    if let Some(sun) = &ground.sun {
        writeln!(page, "  sun                {}", height(sun))?;
    }
    if let Some(moon) = &ground.moon {
        write!(page, "  moon               {}, {:.0} % lit", height(&moon.place), moon.lit * 100.0)?;
        if moon.lx > 0.0 {
            write!(page, ", {} direct and scattered", lx(moon.lx))?;
        }
        writeln!(page)?;
    }
    writeln!(page)
}

fn height(body: &Heavenly) -> String {
    let side = if body.height_deg < 0.0 { "below" } else { "above" };
    format!("{:.1}° {side} the horizon", body.height_deg.abs())
}

#[cfg(test)]
mod tests {
    use super::*;
    use gauzelight::judge::{Direct, MoonReading};

    #[test]
    fn a_moonlit_ground_is_told_in_plain_words() {
        let moon = MoonReading { place: Heavenly { height_deg: 30.0, bearing_deg: 100.0 }, lx: 0.1, lit: 0.9 };
        let direct = Some(Direct { from: "moon".to_owned(), lx: 0.08 });
        let ground =
            OpenGround { at: None, lx: 0.101, sky_lx: 0.021, town_lx: 0.0, direct, sun: None, moon: Some(moon) };
        let page = text(&ground, false);
        for line in [
            "  at                 no date: the sky is set by hand\n",
            "  total              0.10 lx\n",
            "  direct             0.080 lx, from the moon\n",
            "  moon               30.0° above the horizon, 90 % lit, 0.10 lx direct and scattered\n",
        ] {
            assert!(page.contains(line), "{line} in {page}");
        }
    }
}
