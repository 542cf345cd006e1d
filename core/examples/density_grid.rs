//! Packing density by both formulas, total and air-filled porosity over a grid as CSV, for the outside checks.
//! Density in g/cm³, clay and silt in percent, water as a share of the volume.

use pitface_core::error::Fault;
use pitface_core::soil::density::{PackingFormula, air_filled, packing, total_porosity};

fn main() -> Result<(), Fault> {
    println!("bulk_density,clay,silt,water,packing_clay,packing_clay_silt,porosity,air_filled");
    for hundredths in (80..=190).step_by(5) {
        let bulk_density = f64::from(hundredths) / 100.0;
        for clay in (0..=60).step_by(6) {
            let (clay, silt) = (f64::from(clay), f64::from(100 - clay) / 3.0);
            let [by_clay, by_both] = [PackingFormula::Clay, PackingFormula::ClaySilt]
                .map(|formula| packing(formula, bulk_density, clay, silt));
            let porosity = total_porosity(bulk_density)?;
            let water = porosity * clay / 100.0;
            let air = air_filled(bulk_density, water)?.share;
            let (by_clay, by_both) = (by_clay?.g_per_cm3, by_both?.g_per_cm3);
            println!("{bulk_density},{clay},{silt},{water},{by_clay},{by_both},{porosity},{air}");
        }
    }
    Ok(())
}
