//! Which edges of a drawing siding stands at (FACTS OT-25), in words.

use super::Job;

impl Job {
    /// Where siding ends at openings and corners: at the drawn edges, or as far off them as casings,
    /// surrounds and corner covers put it. One sentence.
    pub fn edges_as_drawn(&self) -> String {
        let style = self.sheet.lengths;
        let board = self.product.kind.is_board();
        let (what, corner) =
            if board { ("Boards", "corner boards") } else { ("Channels", "corner posts") };
        let (casing, surround) = (self.drawing.casing, self.trim.surround);
        let round: Vec<String> = [(casing, "the casing"), (surround, "the surround")]
            .iter()
            .filter(|(w, _)| *w > 0.0)
            .map(|(w, name)| format!("{name}, {}", style.short(*w)))
            .collect();
        let openings = if round.is_empty() {
            let verb = if board { "butt against" } else { "follow" };
            format!("{what} {verb} the drawn edge of openings")
        } else {
            format!(
                "{what} stand {} outside the drawn edge of openings: {}",
                style.short(casing + surround),
                round.join("; ")
            )
        };
        let cover = self.trim.corner_cover;
        if cover > 0.0 {
            return format!(
                "{openings}. {} stand at the drawn corner, and siding ends {} from it, at the edge of the covers.",
                if board { "Corner boards" } else { "Corner posts" },
                style.short(cover)
            );
        }
        format!("{openings}; {corner} stand at the drawn corner.")
    }
}
