//! Heads over findings about one subject.

use crate::finding::{Gathered, Severity, Subject};
use crate::language::{Said, said};
use crate::units::counted;

/// What a subject is called.
pub fn subject(subject: Subject) -> Said {
    match subject {
        Subject::Files => said("Files", "Archivos"),
        Subject::Job => said("The job file", "El archivo del trabajo"),
        Subject::Read => said("What was read", "Lo que se leyó"),
        Subject::Linework => said("Linework", "Líneas del dibujo"),
        Subject::Scale => said("Unit and scale", "Unidad y escala"),
        Subject::Elevations => said("Elevations", "Elevaciones"),
        Subject::Walls => said("Walls", "Paredes"),
        Subject::Openings => said("Openings and fixtures", "Aberturas y accesorios"),
        Subject::Corners => said("Corners", "Esquinas"),
        Subject::SmallPieces => said("Small pieces", "Piezas pequeñas"),
        Subject::Seams => said("Seams and movement", "Uniones y dilatación"),
        Subject::Rules => said("Rules of the layout", "Reglas de la distribución"),
        Subject::Order => said("The order", "El pedido"),
    }
}

/// Over what is told together, `info` being the word for what is no warning: `Corners: 2 warnings, 1 note`.
pub fn head(group: &Gathered, info: &str) -> String {
    let of = |severity, word| match group.count(severity) {
        0 => None,
        n => Some(counted(n, word)),
    };
    let counts =
        [of(Severity::Error, "error"), of(Severity::Warning, "warning"), of(Severity::Info, info)];
    let counts: Vec<String> = counts.into_iter().flatten().collect();
    format!("{}: {}", subject(group.subject).en, counts.join(", "))
}
