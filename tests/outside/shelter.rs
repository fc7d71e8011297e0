//! Air through weather boxes, dew and panes, against published rules and worked examples.

use gauzelight::{
    craft::shelter::{
        air::{self, cfm, flow, mass_flow, standard_density},
        dew, passes,
    },
    scene::{BoxWindow, PaneKind, Size},
    units::M3_H_PER_CFM,
};

fn near(value: f64, wanted: f64, share: f64) {
    assert!((value / wanted - 1.0).abs() <= share, "{value} against {wanted}");
}

/// A maker's sheet of cooling equations: CFM = 1.76 W / ΔT(°C), and 200 W with 10 °C want 35 CFM.
#[test]
fn two_hundred_watts_and_ten_kelvin_want_35_cfm() {
    near(cfm(flow(200.0, 10.0, air::RATED)), 35.0, 0.005);
    for (watts, rise) in [(10.0, 3.0), (60.0, 10.0), (500.0, 25.0)] {
        near(cfm(flow(watts, rise, air::RATED)), 1.76 * watts / rise, 0.01);
        // The same sheet for °F: CFM = 3.16 W / ΔT(°F).
        near(cfm(flow(watts, rise, air::RATED)), 3.16 * watts / (1.8 * rise), 0.01);
    }
}

/// Fan makers' notes on air flow and pressure: CFM = 3160 kW / ΔT(°F).
#[test]
fn a_kilowatt_and_a_degree_fahrenheit_want_3160_cfm() {
    near(cfm(flow(1000.0, 1.0 / 1.8, air::RATED)), 3160.0, 0.01);
}

/// A worked example of forced air cooling of industrial enclosures: 800 W, 3 K, air let in at 35 °C and 98.066 kPa, cp 1005, R 287: 0.265 kg/s.
#[test]
fn eight_hundred_watts_and_three_kelvin_want_0_265_kg_a_second() {
    near(mass_flow(800.0, 3.0), 0.265, 0.002);
    let density = air::density(98_066.0, 35.0);
    near(density, 1.1089, 5e-4);
    near(cfm(flow(800.0, 3.0, density)), 507.0, 0.002);
}

/// The standard atmosphere, ISO 2533 (the values of ISA tables); flow grows as density falls.
#[test]
fn air_is_as_dense_as_in_the_standard_atmosphere() {
    let table =
        [(0.0, 1.2250), (500.0, 1.1673), (1000.0, 1.1116), (1500.0, 1.0581), (2000.0, 1.0065), (3000.0, 0.9091)];
    for (above_sea, density) in table {
        near(standard_density(above_sea), density, 1e-4);
    }
    let more = flow(60.0, 10.0, standard_density(1500.0)) / flow(60.0, 10.0, standard_density(0.0));
    assert!((more - 1.158).abs() < 5e-4, "{more}");
    // Mass carries heat, not volume: the mass is the same at any height.
    near(mass_flow(60.0, 10.0), flow(60.0, 10.0, standard_density(3000.0)) * standard_density(3000.0), 1e-12);
}

/// Common practice, no source: 60 W at 10 °C above outside want about 10.6 CFM in free air.
#[test]
fn sixty_watts_want_about_10_6_cfm() {
    near(cfm(flow(60.0, 10.0, air::RATED)), 10.6, 0.02);
    // The cubic foot is 0.0283168 m³ by definition of the foot.
    near(M3_H_PER_CFM, 1.699, 1e-4);
}

/// The WMO's Magnus formula against another fit that a maker of humidity sensors publishes for -20 to 50 °C, good to 0.083 %:
/// `6.116441 · 10^(7.591386 t / (t + 240.7263))` hPa.
#[test]
fn air_holds_the_water_that_another_formula_gives() {
    for celsius in [-20.0, -10.0, 0.0, 10.0, 20.0, 35.0, 50.0] {
        let other = 6.116_441 * 10f64.powf(7.591_386 * celsius / (celsius + 240.726_3));
        near(dew::over_water(celsius), other, 0.004);
    }
    // Boiling is far outside of what it is for; 20 °C and 23.4 hPa stand in every steam table.
    near(dew::saturation(20.0), 23.39, 0.003);
    // 17.3 g in a cubic metre of saturated air at 20 °C, as tables have it; from memory.
    near(dew::water(20.0, 20.0), 17.3, 0.005);
}

/// Vapour over ice of tables, hPa: -5, -10, -20 and -30 °C (after Goff and Gratch; from memory); and its slope at 0 °C from first
/// principles (Clausius and Clapeyron): `d ln e / dT = L / (R T²)`, 2834 kJ/kg of sublimation, 461.5 J/(kg K).
#[test]
fn frost_falls_from_air_as_tables_have_it() {
    for (celsius, hpa) in [(-5.0, 4.015), (-10.0, 2.597), (-20.0, 1.032), (-30.0, 0.380)] {
        near(dew::saturation(celsius), hpa, 0.005);
    }
    let slope = (dew::saturation(0.0) / dew::saturation(-0.01)).ln() / 0.01;
    near(slope, 2.834e6 / (461.5 * 273.15 * 273.15), 0.003);
    // Rime comes before dew would: at -6 °C and 90 % the frost point is nearer to the air than the dew point, -7.4 °C.
    let point = dew::point(-6.0, 0.9);
    assert!((-6.6..-6.4).contains(&point), "{point}");
    assert_eq!((dew::name(point), dew::name(3.0)), ("frost point", "dew point"));
}

/// Data sheets of acrylic sheet give 92 % light through 3 mm; 3 mm of clear float pass 90 %. From memory.
#[test]
fn panes_pass_what_data_sheets_say() {
    let pane = |pane| BoxWindow { pane, thickness: Size::metres(0.003), ..BoxWindow::default() };
    near(passes(&pane(PaneKind::Acrylic), 1.0), 0.92, 0.005);
    near(passes(&pane(PaneKind::Glass), 1.0), 0.90, 0.006);
}
