//! Seam rules that could not be kept, and what would help.

use crate::language::Language;
use crate::model::conflict::{BrokenSeamRule, ConflictProof, SeamFault, SeamRemedy};
use crate::units::LengthStyle;

/// The rule that courses cannot keep.
pub fn broken(rule: &BrokenSeamRule, style: LengthStyle) -> String {
    match rule {
        BrokenSeamRule::JointOffStuds { proof } => {
            format!("a joint stands off the studs; {}", sure(*proof))
        }
        BrokenSeamRule::JointsOnOneStud { proof } => {
            format!("joints of near courses stand too near to one another; {}", sure(*proof))
        }
        BrokenSeamRule::NoJointFits => "no joint fits".to_owned(),
        BrokenSeamRule::LaidByCrew => {
            "laid as a crew does, seams are nearer than the stagger".to_owned()
        }
        BrokenSeamRule::Stagger { least, clear_courses, proof, nearest } => {
            let proof = sure(*proof);
            let drawn = nearest.map_or(String::new(), |d| {
                format!("; as drawn, the nearest are {} apart", style.short(d))
            });
            format!(
                "with the seams {} apart sideways and {clear_courses} clear courses between, {proof}{drawn}",
                style.short(*least)
            )
        }
    }
}

/// How sure it is that they cannot.
fn sure(proof: ConflictProof) -> &'static str {
    match proof {
        ConflictProof::NoLayoutExists => "no layout of these courses exists",
        ConflictProof::NoneFound => "no layout was found",
    }
}

/// One broken rule, as it is marked on the sheets.
pub fn fault(lang: Language, fault: &SeamFault, style: LengthStyle) -> String {
    match fault {
        SeamFault::TooNear { courses: [low, high], apart, least } => say!(
            lang,
            "seams of courses {low} and {high} are {} apart, less than {}",
            "las uniones de las hileras {low} y {high} están a {}, menos de {}",
            style.short(*apart),
            style.short(*least)
        ),
        SeamFault::OffStuds { course } => {
            say!(
                lang,
                "course {course}: boards of this length leave a joint no stud to stand on",
                "hilera {course}: con tablas de este largo una junta no cae en ningún montante"
            )
        }
        SeamFault::NoLawfulPlace { course, shortest } => say!(
            lang,
            "course {course}: fixtures, or pieces of at least {}, leave a seam no place that keeps the rules",
            "hilera {course}: los accesorios, o piezas de al menos {}, no dejan a una unión ningún lugar que cumpla las reglas",
            style.short(*shortest)
        ),
    }
}

/// What would help: the settings that work, else those to relax.
pub fn remedies(list: &[SeamRemedy]) -> String {
    if list.is_empty() {
        return "Relax `seams.stagger` or `seams.shortest` in the job.".to_owned();
    }
    let each = list.iter().enumerate().map(|(i, r)| match r {
        SeamRemedy::Stagger { inches } => {
            format!("`seams.stagger = {inches}` is the largest in whole inches that works here")
        }
        SeamRemedy::ClearCourses { courses } => {
            let too = if i > 0 { " too" } else { "" };
            format!("`seams.clear_courses = {courses}` works{too}")
        }
        SeamRemedy::SearchSeams => "Let the search place the seams: `seams.effort`".to_owned(),
        SeamRemedy::LongerBoards => {
            "Take longer boards (`product.length`), or lower `seams.clear_courses`".to_owned()
        }
    });
    format!("{}.", each.collect::<Vec<_>>().join("; "))
}
