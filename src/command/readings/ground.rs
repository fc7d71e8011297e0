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
        None => writeln!(page, "  at                 no clock: the evening has plain numbers")?,
    }
    writeln!(page, "  in all             {}", lx(ground.lx))?;
    write!(page, "  by the sky         {}", lx(ground.sky_lx))?;
    if ground.town_lx > 0.0 {
        write!(page, ", of it {} by the glow of towns", lx(ground.town_lx))?;
    }
    writeln!(page)?;
    if let Some(straight) = &ground.straight {
        writeln!(page, "  straight           {} from the {}", lx(straight.lx), straight.from)?;
    }
    if let Some(sun) = &ground.sun {
        writeln!(page, "  sun                {}", height(sun))?;
    }
    if let Some(moon) = &ground.moon {
        write!(page, "  moon               {}, {:.0} % lit", height(&moon.place), moon.lit * 100.0)?;
        if moon.lx > 0.0 {
            write!(page, ", {} in all, straight and by way of the sky", lx(moon.lx))?;
        }
        writeln!(page)?;
    }
    writeln!(page)
}

fn height(body: &Heavenly) -> String {
    let side = if body.height_deg < 0.0 { "below" } else { "above" };
    format!("{:.1}° {side} the horizon", body.height_deg.abs())
}
