//! What numbers a job may hold: one table for the check, for errors and for the schema.

use super::root::Job;

/// Findings that `drawing.accept` may name.
pub const ACCEPTABLE: [&str; 3] = ["opening-outside", "opening-too-large", "dimension-disagrees"];

/// A number's range.
#[derive(Clone, Copy, Debug)]
pub struct Range {
    /// Dotted key.
    pub key: &'static str,
    /// The value in force.
    pub(super) value: fn(&Job) -> f64,
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
}

const fn range(key: &'static str, least: f64, most: f64, value: fn(&Job) -> f64) -> Range {
    Range { key, value, least, most }
}

/// A length that may be left out.
fn or_none(given: Option<f64>) -> f64 {
    given.unwrap_or(0.0)
}

/// Every range. Bounds keep arithmetic sound; what is usual stands beside each default. They are
/// of our own choosing: no source.
pub const RANGES: &[Range] = &[
    range("drawing.weld", 0.0, 2.0, |j| j.drawing.weld),
    range("drawing.casing", 0.0, 12.0, |j| j.drawing.casing),
    range("weather.installed_f", -80.0, 200.0, |j| j.weather.installed()),
    range("weather.lowest_f", -80.0, 200.0, |j| j.weather.lowest_f),
    range("weather.highest_f", -80.0, 250.0, |j| j.weather.highest_f),
    range("weather.expansion", 0.0, 0.001, Job::expansion),
    range("product.exposure", 2.0, 48.0, |j| j.product.exposure),
    range("product.faces", 1.0, 12.0, |j| f64::from(j.product.faces)),
    range("product.length", 36.0, 600.0, |j| j.product.length),
    range("product.second_length", 36.0, 600.0, |j| j.product.given.second_length.unwrap_or(150.0)),
    range("product.second_cost", 0.05, 20.0, |j| j.product.given.second_cost.unwrap_or(1.0)),
    range("product.second_carton", 1.0, 1000.0, |j| {
        f64::from(j.product.given.second_carton.unwrap_or(1))
    }),
    range("product.foam_set_back", 0.0, 4.0, |j| j.product.foam_set_back),
    range("product.lap", 0.25, 6.0, |j| j.product.lap.unwrap_or(1.0)),
    range("product.end_gap", 0.0, 1.0, Job::end_gap),
    range("product.face_height", 0.5, 48.0, |j| j.product.face()),
    range("product.hem", 0.0, 4.0, |j| j.product.hem),
    range("product.lock", 0.0, 4.0, |j| j.product.lock),
    range("product.width", 2.0, 48.0, |j| j.product.width.unwrap_or(8.0)),
    range("product.head_lap", 0.0, 12.0, |j| j.product.head_lap.unwrap_or(1.0)),
    range("product.outside_post_set_back", 0.0, 12.0, |j| or_none(j.product.outside_post_set_back)),
    range("product.outside_post_face", 0.0, 24.0, |j| or_none(j.product.outside_post_face)),
    range("product.inside_post_set_back", 0.0, 12.0, |j| or_none(j.product.inside_post_set_back)),
    range("product.inside_post_face", 0.0, 24.0, |j| or_none(j.product.inside_post_face)),
    range("product.angled_outside_post_set_back", 0.0, 12.0, |j| {
        or_none(j.product.angled_outside_post_set_back)
    }),
    range("product.angled_inside_post_set_back", 0.0, 12.0, |j| {
        or_none(j.product.angled_inside_post_set_back)
    }),
    range("product.corner_board", 0.0, 12.0, |j| or_none(j.product.corner_board)),
    range("product.inside_corner_board", 0.0, 12.0, |j| or_none(j.product.inside_corner_board)),
    range("product.thickness", 0.0, 4.0, |j| j.product.thickness.unwrap_or(0.5)),
    range("boards.butt_gap", 0.0, 1.0, |j| j.boards.butt_gap.unwrap_or(0.0)),
    range("boards.stud_spacing", 6.0, 48.0, |j| j.boards.stud_spacing),
    range("boards.first_stud", 0.0, 48.0, |j| j.boards.first_stud),
    range("boards.studs_apart", 1.0, 6.0, |j| f64::from(j.boards.studs_apart)),
    range("boards.starter", 0.0, 4.0, Job::starter_thickness),
    range("product.carton", 1.0, 1000.0, |j| f64::from(j.product.carton)),
    range("courses.datum", -1200.0, 1200.0, |j| j.courses.datum.unwrap_or(0.0)),
    range("courses.hang_below", 0.0, 12.0, |j| j.courses.hang_below),
    range("courses.clear_of_grade", 0.0, 48.0, |j| j.courses.clear_of_grade),
    range("courses.clear_of_roof", 0.0, 24.0, |j| j.clearances().roof),
    range("courses.clear_of_ledge", 0.0, 12.0, |j| j.clearances().ledge),
    range("courses.least_strip", 0.0, 48.0, |j| j.courses.least_strip),
    range("courses.least_width", 0.0, 12.0, |j| j.courses.least_width),
    range("courses.block_shift", 0.0, 4.0, |j| j.courses.block_shift),
    range("courses.notch_clearance", 0.0, 1.0, |j| j.courses.notch_clearance),
    range("courses.stud_spacing", 1.0, 96.0, |j| j.courses.stud_spacing),
    range("courses.slot_spacing", 1.0, 96.0, |j| j.courses.slot_spacing),
    range("courses.lug_spacing", 1.0, 96.0, |j| j.courses.lug_spacing),
    range("courses.weights.strip_over_head", 0.0, 1e6, |j| j.courses.weights.strip_over_head),
    range("courses.weights.strip_under_sill", 0.0, 1e6, |j| j.courses.weights.strip_under_sill),
    range("courses.weights.strip_at_top", 0.0, 1e6, |j| j.courses.weights.strip_at_top),
    range("courses.weights.strip_at_start", 0.0, 1e6, |j| j.courses.weights.strip_at_start),
    range("courses.weights.main_head", 0.0, 1e6, |j| j.courses.weights.main_head),
    range("courses.weights.other_line", 0.0, 1e6, |j| j.courses.weights.other_line),
    range("courses.weights.short_top", 0.0, 1e6, |j| j.courses.weights.short_top),
    range("courses.weights.cut_start", 0.0, 1e6, |j| j.courses.weights.cut_start),
    range("courses.weights.step", 0.0, 1e6, |j| j.courses.weights.step),
    range("courses.weights.left_bare", 0.0, 1e6, |j| j.courses.weights.left_bare),
    range("courses.weights.cut_panel", 0.0, 1e6, |j| j.courses.weights.cut_panel),
    range("seams.shortest", 0.0, 300.0, |j| j.seams.shortest),
    range("seams.stagger", 0.0, 600.0, |j| j.seams.stagger),
    range("seams.clear_courses", 0.0, 12.0, |j| f64::from(j.seams.clear_courses)),
    range("seams.jamb", 0.0, 48.0, |j| j.seams.jamb),
    range("seams.kerf", 0.0, 1.0, |j| j.seams.kerf),
    range("seams.past_obstacle", 0.0, 12.0, |j| j.seams.past_obstacle),
    range("trim.starter", 24.0, 600.0, |j| j.trim.starter),
    range("trim.outside_post", 24.0, 600.0, |j| j.trim.outside_post),
    range("trim.inside_post", 24.0, 600.0, |j| j.trim.inside_post),
    range("trim.j_channel", 24.0, 600.0, |j| j.trim.j_channel),
    range("trim.flexible_channel", 24.0, 600.0, |j| j.trim.flexible_channel),
    range("trim.finish_trim", 24.0, 600.0, |j| j.trim.finish_trim),
    range("trim.drip_cap", 24.0, 600.0, |j| j.trim.drip_cap),
    range("trim.channel_face", 0.0, 6.0, |j| j.trim.channel_face),
    range("trim.tab", 0.0, 6.0, |j| j.trim.tab),
    range("trim.pocket", 0.0, 6.0, Job::pocket),
    range("trim.channel_alone", 0.0, 12.0, Job::channel_alone),
    range("trim.post_top_gap", 0.0, 3.0, |j| j.trim_gaps().post_top),
    range("trim.post_below", 0.0, 3.0, |j| j.trim_gaps().post_below),
    range("trim.post_lap", 0.0, 12.0, |j| j.trim.post_lap),
    range("trim.post_cut_back", 0.0, 12.0, |j| j.trim.post_cut_back),
    range("trim.frieze", 0.0, 24.0, |j| j.trim.frieze),
    range("trim.rake_frieze", 0.0, 24.0, |j| j.trim.rake_frieze),
    range("trim.surround", 0.0, 12.0, |j| j.trim.surround),
    range("trim.corner_cover", 0.0, 12.0, |j| j.trim.corner_cover),
    range("trim.decorative", 24.0, 600.0, |j| j.trim.decorative),
    range("trim.movement_gap", 0.25, 6.0, |j| j.trim.movement_gap),
    range("trim.starter_gap", 0.0, 6.0, |j| j.trim_gaps().starter),
    range("trim.starter_line", -6.0, 6.0, |j| j.trim.starter_line),
    range("trim.drip_cap_past", 0.0, 12.0, |j| j.trim.drip_cap_past),
    range("work.level_check", 1.0, 100.0, |j| f64::from(j.work.level_check)),
    range("fasteners.sheathing", 0.0, 4.0, |j| j.fasteners.sheathing),
    range("fasteners.foam_board", 0.0, 12.0, |j| j.fasteners.foam_board),
    range("fasteners.other_layers", 0.0, 12.0, |j| j.fasteners.other_layers),
    range("fasteners.penetration", 0.0, 6.0, |j| j.fasteners.penetration.unwrap_or(1.25)),
    range("fasteners.shortest", 0.0, 12.0, |j| j.fasteners.shortest.unwrap_or(0.0)),
    range("fasteners.shank", 0.0, 1.0, Job::nail_shank),
    range("fasteners.head", 0.0, 2.0, |j| j.fasteners.head),
    range("fasteners.post_spacing", 1.0, 48.0, |j| j.fasteners.post_spacing.unwrap_or(12.0)),
    range("fasteners.channel_spacing", 1.0, 48.0, |j| j.fasteners.channel_spacing.unwrap_or(12.0)),
    range("fasteners.strip_spacing", 1.0, 48.0, |j| j.fasteners.strip_spacing.unwrap_or(12.0)),
    range("takeoff.area_waste", 0.0, 100.0, |j| j.takeoff.area_waste),
    range("takeoff.nail_spacing", 1.0, 48.0, |j| j.takeoff.nail_spacing),
    range("takeoff.trim_nail_spacing", 1.0, 48.0, |j| j.takeoff.trim_nail_spacing),
    range("takeoff.nail_box", 1.0, 1e6, |j| f64::from(j.takeoff.nail_box)),
    range("takeoff.stand_off", 0.0, 12.0, Job::stand_off),
    range("takeoff.spare", 0.0, 100.0, |j| j.takeoff.spare),
    range("takeoff.trim_spare", 0.0, 100.0, |j| j.takeoff.trim_spare),
    range("takeoff.large_opening", 0.0, 1e6, |j| j.takeoff.large_opening),
    range("takeoff.flashing_roll", 12.0, 12_000.0, |j| j.takeoff.flashing_roll),
    range("takeoff.flashing_lap", 0.0, 6.0, |j| j.takeoff.flashing_lap),
    range("takeoff.door_pan_up", 0.0, 24.0, |j| j.takeoff.door_pan_up),
    range("takeoff.step_exposure", 1.0, 48.0, |j| j.takeoff.step_exposure),
    range("estimate.barrier_width", 12.0, 240.0, |j| j.estimate.barrier_width),
    range("estimate.barrier_length", 120.0, 12_000.0, |j| j.estimate.barrier_length),
    range("estimate.barrier_lap", 0.0, 8.0, |j| j.estimate.barrier_lap),
    range("estimate.barrier_end_lap", 0.0, 48.0, |j| j.estimate.barrier_end_lap),
    range("estimate.tape_roll", 12.0, 12_000.0, |j| j.estimate.tape_roll),
    range("estimate.sealant_bead", 0.0625, 2.0, |j| j.estimate.sealant_bead),
    range("estimate.sealant_cartridge", 1.0, 128.0, |j| j.estimate.sealant_cartridge),
    range("estimate.furring_stock", 24.0, 600.0, |j| j.estimate.furring_stock),
    range("estimate.wrap_fascia", 0.0, 48.0, |j| j.estimate.wrap_fascia),
    range("estimate.wrap_frieze", 0.0, 48.0, |j| j.estimate.wrap_frieze),
    range("estimate.wrap_band", 0.0, 48.0, |j| j.estimate.wrap_band),
    range("estimate.wrap_surround", 0.0, 48.0, |j| j.estimate.wrap_surround),
    range("estimate.coil_width", 1.0, 120.0, |j| j.estimate.coil_width),
    range("estimate.coil_length", 12.0, 12_000.0, |j| j.estimate.coil_length),
    range("estimate.soffit_depth", 0.0, 120.0, |j| j.estimate.soffit_depth),
    range("estimate.rake_soffit_depth", 0.0, 120.0, |j| j.estimate.rake_soffit_depth),
    range("estimate.soffit_cover", 4.0, 48.0, |j| j.estimate.soffit_cover),
    range("estimate.soffit_stock", 24.0, 600.0, |j| j.estimate.soffit_stock),
    range("estimate.fascia", 0.0, 48.0, |j| j.estimate.fascia),
    range("estimate.fascia_stock", 24.0, 600.0, |j| j.estimate.fascia_stock),
    range("estimate.siding_nails_per_pound", 0.0, 1e5, |j| j.estimate.siding_nails_per_pound),
    range("estimate.trim_nails_per_pound", 0.0, 1e5, |j| j.estimate.trim_nails_per_pound),
    range("estimate.tax", 0.0, 100.0, |j| j.estimate.tax),
    range("estimate.shutters", 0.0, 1e6, |j| f64::from(j.estimate.shutters)),
    range("estimate.vents", 0.0, 1e6, |j| f64::from(j.estimate.vents)),
    range("estimate.blocks", 0.0, 1e6, |j| f64::from(j.estimate.blocks)),
];
