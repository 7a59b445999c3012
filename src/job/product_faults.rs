//! What of a product contradicts itself, or is of another kind.

use super::product::Product;
use super::ranges::Fault;
use super::siding::system::UsualSize;
use super::{Job, second};
use crate::geom::tol::CUT;

/// What of a product contradicts itself, or is of another kind.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let p = &job.product;
    let mut out = Vec::new();
    let mut fault = |keys: &[&str], message: String| {
        out.push(Fault { keys: keys.iter().map(|k| (*k).to_owned()).collect(), message });
    };
    if let Some(height) = p.face_height {
        let stands = f64::from(p.faces) * height;
        if (stands - p.exposure).abs() > CUT {
            fault(
                &["product.face_height", "product.exposure", "product.faces"],
                format!(
                    "`product.face_height` is {height} and `product.faces` {}: a course of {stands}, but `product.exposure` is {}",
                    p.faces, p.exposure
                ),
            );
        }
    }
    out.extend(second::faults(p));
    out.extend(match p.kind.system().usual {
        UsualSize::Board(_) => of_boards(p),
        UsualSize::Panel(_) => of_panels(p),
    });
    let mut fault = |keys: &[&str], message: String| {
        out.push(Fault { keys: keys.iter().map(|k| (*k).to_owned()).collect(), message });
    };
    if !p.has_foam() && p.foam_set_back != 0.0 {
        fault(
            &["product.foam_set_back", "product.kind"],
            format!(
                "`product.foam_set_back` is of foam-backed siding; `{}` has no foam",
                p.kind.key()
            ),
        );
    }
    out
}

/// What only boards have, given for panels.
fn of_panels(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.width", p.width),
        ("product.head_lap", p.head_lap),
        ("product.exposure_least", p.exposure_least),
        ("product.exposure_most", p.exposure_most),
        ("product.thickness", p.thickness),
    ];
    let given = given.into_iter().filter(|(_, v)| v.is_some());
    given.map(|(key, _)| says_nothing(p, key)).collect()
}

fn says_nothing(p: &Product, key: &str) -> Fault {
    Fault {
        keys: vec![key.to_owned(), "product.kind".to_owned()],
        message: format!("`{key}` says nothing about `{}`", p.kind.key()),
    }
}

/// What only panels have, given for boards; exposures that the width cannot give.
fn of_boards(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.faces", p.faces != 1),
        ("product.face_height", p.face_height.is_some()),
        ("product.lap", p.lap.is_some()),
        ("product.hem", p.hem != 0.0),
        ("product.lock", p.lock != 0.0),
    ];
    let given = given.into_iter().filter(|(_, v)| *v);
    let mut out: Vec<Fault> = given.map(|(key, _)| says_nothing(p, key)).collect();
    let (least, most) = p.limits();
    let room = p.width.unwrap_or(0.0) - p.head_lap.unwrap_or(0.0);
    let mut fault = |key: &str, holds: bool, what: &str| {
        if !holds {
            let keys = [key, "product.exposure", "product.width", "product.kind"];
            let message = format!("`{key}` {what}");
            out.push(Fault { keys: keys.map(str::to_owned).to_vec(), message });
        }
    };
    let near = 1e-9;
    fault(
        "product.exposure_most",
        most <= room + near,
        &format!("is {most}; the head lap leaves {room} of the board's width"),
    );
    fault(
        "product.exposure",
        p.exposure >= least - near && p.exposure <= most + near,
        &format!("is {}; it must lie between {least} and {most}, its limits", p.exposure),
    );
    fault("product.exposure_least", least >= 1.0, &format!("is {least}; 1 is the least"));
    out
}
