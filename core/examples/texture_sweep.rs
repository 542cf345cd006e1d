//! Every whole-percent point of the texture triangles as CSV, for the outside checks: sand, silt and clay in percent,
//! the USDA class, and the UK class or, on an edge, the classes that meet there, joined by `|`.

use pitface_core::error::Fault;
use pitface_core::soil::texture::{Fractions, Placed, TextureScheme, place};

fn main() -> Result<(), Fault> {
    println!("sand,silt,clay,usda,uk");
    for sand in 0..=100_u8 {
        for clay in 0..=100 - sand {
            let silt = 100 - sand - clay;
            let at = Fractions::new(sand.into(), silt.into(), clay.into())?;
            let [usda, uk] = [TextureScheme::Usda, TextureScheme::Uk].map(|scheme| names(place(scheme, at)));
            println!("{sand},{silt},{clay},{usda},{uk}");
        }
    }
    Ok(())
}

fn names(placed: Placed) -> String {
    let classes = match placed {
        Placed::Inside(class) => vec![class],
        Placed::Edge(classes) => classes,
    };
    classes.iter().map(|class| class.code()).collect::<Vec<_>>().join("|")
}
