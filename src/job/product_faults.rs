//! What of a product contradicts itself, or is of another kind.

use super::fault::Fault;
use super::product::Product;
use super::root::Job;
use super::siding::system::UsualSize;
use super::trim_style::InsideCorner;
use crate::finding::job_value::ValueFault;
use crate::geom::tol::CUT;
use crate::model::corner::CornerKind;

/// What of a product contradicts itself, or is of another kind.
pub(super) fn faults(job: &Job) -> Vec<Fault> {
    let p = &job.product;
    let mut out: Vec<Fault> = faces_disagree(p).into_iter().collect();
    out.extend(match p.kind.system().usual {
        UsualSize::Board(_) => of_boards(p),
        UsualSize::Panel(_) => of_panels(p),
    });
    if !p.has_foam() && p.foam_set_back != 0.0 {
        out.push(Fault::of_other_siding(p.kind, "product.foam_set_back"));
    }
    out.extend(of_corners(job));
    out
}

/// A post's face that does not cover the panels' ends, and posts that are none: a set-back of posts
/// where J-channels stand.
fn of_corners(job: &Job) -> Vec<Fault> {
    let mut out = Vec::new();
    let faces = [
        ("outside", CornerKind::Outside, job.product.outside_post_face),
        ("inside", CornerKind::Inside, job.product.inside_post_face),
    ];
    for (name, corner, face) in faces {
        let [key, other] = ["set_back", "face"].map(|w| format!("product.{name}_post_{w}"));
        if let Some(face) = face {
            let (value, most) = (job.post_set_back(corner), face - job.end_gap());
            if value > most + 1e-9 {
                let keys = [other.clone(), key.clone()];
                let most = most.max(0.0);
                out.push(Fault::new(keys, ValueFault::TooLargeFor { key, value, most, other }));
            }
        }
    }
    let posts = job.trim.inside_corner == InsideCorner::Post;
    let given = [
        ("product.inside_post_set_back", job.product.inside_post_set_back),
        ("product.inside_post_face", job.product.inside_post_face),
        ("product.angled_inside_post_set_back", job.product.angled_inside_post_set_back),
    ];
    let idle = given.into_iter().filter(|(_, v)| !posts && v.is_some());
    out.extend(idle.map(|(key, _)| {
        let (key, other) = (key.to_owned(), "trim.inside_corner".to_owned());
        let instead = vec!["post".to_owned()];
        Fault::new([key.clone(), other.clone()], ValueFault::ChoiceAgainst { key, other, instead })
    }));
    out
}

fn faces_disagree(p: &Product) -> Option<Fault> {
    let face_height = p.face_height?;
    let makes = f64::from(p.faces) * face_height;
    let (faces, exposure) = (p.faces, p.exposure);
    let keys = ["product.face_height", "product.exposure", "product.faces"];
    ((makes - exposure).abs() > CUT).then(|| {
        Fault::new(keys, ValueFault::FacesDisagree { faces, face_height, makes, exposure })
    })
}

/// What only boards have, given for panels.
fn of_panels(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.width", p.width),
        ("product.head_lap", p.head_lap),
        ("product.exposure_least", p.exposure_least),
        ("product.exposure_most", p.exposure_most),
        ("product.thickness", p.thickness),
        ("product.corner_board", p.corner_board),
        ("product.inside_corner_board", p.inside_corner_board),
    ];
    let given = given.into_iter().filter(|(_, v)| v.is_some());
    given.map(|(key, _)| Fault::of_other_siding(p.kind, key)).collect()
}

/// What only panels have, given for boards; exposures that the width cannot give.
fn of_boards(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.faces", p.faces != 1),
        ("product.face_height", p.face_height.is_some()),
        ("product.lap", p.lap.is_some()),
        ("product.hem", p.hem != 0.0),
        ("product.lock", p.lock != 0.0),
        ("product.outside_post_set_back", p.outside_post_set_back.is_some()),
        ("product.outside_post_face", p.outside_post_face.is_some()),
        ("product.inside_post_set_back", p.inside_post_set_back.is_some()),
        ("product.inside_post_face", p.inside_post_face.is_some()),
        ("product.angled_outside_post_set_back", p.angled_outside_post_set_back.is_some()),
        ("product.angled_inside_post_set_back", p.angled_inside_post_set_back.is_some()),
    ];
    let given = given.into_iter().filter(|(_, v)| *v);
    let mut out: Vec<Fault> = given.map(|(key, _)| Fault::of_other_siding(p.kind, key)).collect();
    let (least, most) = p.limits();
    let leaves = p.width.unwrap_or(0.0) - p.head_lap.unwrap_or(0.0);
    let near = 1e-9;
    let mut push = |key: &str, make: &dyn Fn(String) -> ValueFault| {
        let keys = [key, "product.exposure", "product.width", "product.kind"];
        out.push(Fault::new(keys, make(key.to_owned())));
    };
    if most > leaves + near {
        let make = |key| ValueFault::ExposureOverWidth { key, value: most, leaves };
        push("product.exposure_most", &make);
    }
    let value = p.exposure;
    if value < least - near || value > most + near {
        push("product.exposure", &|key| ValueFault::OutOfRange { key, value, least, most });
    }
    if least < 1.0 {
        let make = |key| ValueFault::TooSmall { key, value: least, least: 1.0 };
        push("product.exposure_least", &make);
    }
    out
}
