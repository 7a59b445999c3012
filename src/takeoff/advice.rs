//! What whoever orders should know.

use super::panels::lots;
use crate::job::Job;
use crate::layout::Layout;

/// Sentences for the report, the workbook and the notes.
pub fn advice(layout: &Layout) -> Vec<String> {
    let product = &layout.job.product;
    let mut out = Vec::new();
    out.push(one_lot(&layout.job));
    let over: f64 = lots(layout).iter().map(|l| l.bought() - l.count() - l.spare).sum();
    if over > 0.0 {
        out.push(format!(
            "Whole cartons leave {over} {}s uncut. They are spare too; usually only full cartons are taken back (common practice).",
            product.kind.piece()
        ));
    }
    out.push(
        if !product.system().receivers.has_pockets() {
            format!(
                "Corner boards, casings and friezes must stand out past the boards' butts; the starter piece is {} thick, as the head lap it stands in for. Prime cut ends; caulk and paint as the maker says.",
                layout.job.sheet.lengths.short(layout.job.starter_thickness())
            )
        } else {
        format!(
            "Starter strip, posts and channels must be the make that goes with this {} and its thickness, with a pocket of {}; plain and foam-backed parts are not interchangeable (association manual; IRC R703.11).",
            product.kind.words(),
            layout.job.sheet.lengths.short(layout.job.pocket())
        )
        },
    );
    out.push(
        "Only what the elevations show is counted. Ask for walls they hide: behind porches, in recesses, chimney sides, dormer cheeks."
            .to_owned(),
    );
    out.push(
        "Soffit, fascia, house wrap, sealants, blocks for fixtures that are not drawn, and coil stock are not in this takeoff."
            .to_owned(),
    );
    out
}

/// One production lot for the house (FACTS SD-15).
fn one_lot(job: &Job) -> String {
    let what = job.product.kind.piece();
    let colour = &job.product.color;
    let colour = if colour.is_empty() { String::new() } else { format!(" in {colour}") };
    format!(
        "Order all {what}s{colour} from one production lot for the whole house, spare included: lots differ in colour (ASTM D4756-03, note 2)."
    )
}
