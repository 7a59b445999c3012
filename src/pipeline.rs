//! The order of the stages, known here alone.

use std::collections::BTreeMap;

use sha2::{Digest, Sha256};

use crate::course::datum::{Found, search};
use crate::course::halves::reuse;
use crate::course::hang::hung;
use crate::course::mirror::either_hand;
use crate::course::pole_lines::lines;
use crate::course::problem::{make, problem};
use crate::course::runs::courses;
use crate::course::settle::settled;
use crate::course::story_pole::story_pole;
use crate::course::studs::joint_rules;
use crate::course::{edge_work, even, warnings};
use crate::diag::{Notes, Refusal};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::strip::clip_band;
use crate::geom::vocabulary::{Point, Xy};
use crate::job::Job;
use crate::layout::Layout;
use crate::model::course::{PlannedCourse, StoryPole};
use crate::model::drawing::Drawing;
use crate::model::fastening::{Fastening, Movement};
use crate::model::house::{self, House};
use crate::model::linework::{LayerUse, Linework, Scale};
use crate::model::pole::PoleTable;
use crate::model::receiver::Field;
use crate::model::work::WorkOrder;
use crate::outputs::file::OutputFile;
use crate::outputs::set;
use crate::write;
use crate::{extract, joint, normalize, read, receive, seam, takeoff, trim, verify, wording, work};

/// What is told to whoever watches the search for seams.
pub type Watch<'a> = &'a mut dyn FnMut(seam::Progress);

/// What the head of the flow found: enough for `check` and `layers`, and for a layout.
#[derive(Debug)]
pub struct Reading {
    /// The drawing as read.
    pub drawing: Drawing,
    /// Its lines in inches, with roles.
    pub lines: Linework,
    /// The house.
    pub house: House,
}

/// Reads a drawing as far as the house.
///
/// # Errors
/// A [`Refusal`] when the drawing or the job cannot be used; what else was found is in `notes`.
pub fn reading(bytes: &[u8], name: &str, job: &Job, notes: &mut Notes) -> Result<Reading, Refusal> {
    let (mut drawing, mut lines) = (Drawing::default(), Linework::default());
    let house = house_of(bytes, name, job, notes, (&mut drawing, &mut lines))?;
    report_overlay(bytes, notes);
    Ok(Reading { drawing, lines, house })
}

/// What `check` has to show: the drawing as far as it could be read, and the house or why there is
/// none.
#[derive(Debug)]
pub struct Checked {
    /// The drawing as read; empty where the file could not be read at all.
    pub drawing: Drawing,
    /// Its lines in inches; empty where no scale was found.
    pub lines: Linework,
    /// The house, or what stopped the reading.
    pub house: Result<House, Refusal>,
}

/// Reads a drawing as far as it goes; every finding is in `notes`, the one that stopped it too.
/// The bytes are let go as soon as they are read: a large drawing is not held beside its lines.
pub fn checked(bytes: Vec<u8>, name: &str, job: &Job, notes: &mut Notes) -> Checked {
    let mut kept = Drawing { name: name.to_owned(), ..Default::default() };
    let mut lines = Linework::default();
    let house = house_of(bytes, name, job, notes, (&mut kept, &mut lines));
    if let Err(Refusal(stop)) = &house
        && !notes.all().contains(stop)
    {
        notes.push(*stop.clone());
    }
    Checked { drawing: kept, lines, house }
}

/// The head of the flow. What it got as far as is left in `kept` and `lines`; the bytes, where they
/// are its own, are let go once read.
fn house_of(
    bytes: impl AsRef<[u8]>,
    name: &str,
    job: &Job,
    notes: &mut Notes,
    (kept, lines): (&mut Drawing, &mut Linework),
) -> Result<House, Refusal> {
    job.validate()?;
    *kept = read::drawing(bytes.as_ref(), name, &read::Limits::default(), notes)?;
    drop(bytes);
    *lines = normalize::linework(kept, job, notes)?;
    let house = extract::house(lines, job, notes)?;
    notes.refuse_on_error()?;
    Ok(house)
}

/// Reads a drawing and lays the house out.
///
/// # Errors
/// As [`reading`].
pub fn layout(
    bytes: &[u8],
    name: &str,
    job: &Job,
    notes: &mut Notes,
    watch: Watch,
) -> Result<Layout, Refusal> {
    let Reading { lines, house, .. } = reading(bytes, name, job, notes)?;
    let mut out = lay(&house, &lines.scale, job, notes, watch);
    named(&mut out, bytes, name);
    Ok(out)
}

fn named(layout: &mut Layout, bytes: &[u8], name: &str) {
    layout.drawing.name = name.to_owned();
    layout.drawing.sha256 = hex(&Sha256::digest(bytes));
}

/// Reads a drawing and lays out the house, then each zone with lap siding of its own: a set for
/// each, all on one datum, seams and panels by themselves.
///
/// # Errors
/// As [`reading`].
pub fn layouts(
    bytes: &[u8],
    name: &str,
    job: &Job,
    notes: &mut Notes,
    watch: Watch,
) -> Result<Vec<Layout>, Refusal> {
    let Reading { lines, house, .. } = reading(bytes, name, job, notes)?;
    for (i, zone) in job.zone.iter().enumerate() {
        let drawn = house.elevations.iter().flat_map(|e| &e.zones).any(|z| z.zone == zone.name);
        if !drawn {
            let message = format!("the zone {} covers no wall", zone.name);
            let help =
                format!("Draw it on a layer that `zone.{i}.layers` names, or give it a `region`.");
            notes.push(crate::diag::Note::warning("zone-empty", message, &help));
        }
    }
    let mut out = vec![lay(&house, &lines.scale, job, notes, &mut *watch)];
    for i in 0..job.zone.len() {
        let Some(own) = job.for_zone(i, Some(out[0].datum)) else { continue };
        // What was found in reading stands with the house's own set.
        let part = match extract::zone(&lines, &own, i, &mut Notes::default()) {
            Ok(part) => part,
            Err(Refusal(mut why)) => {
                why.severity = crate::diag::Severity::Warning;
                notes.push(*why);
                continue;
            }
        };
        let set = lay(&part, &lines.scale, &own, &mut Notes::default(), &mut *watch);
        out.push(set);
    }
    out.iter_mut().for_each(|l| named(l, bytes, name));
    Ok(out)
}

/// Says of a DXF that its overlay is no copy of it; of an SVG that goes without saying.
fn report_overlay(source: &[u8], notes: &mut Notes) {
    if let (false, Err(why)) = (read::is_svg(source), write::overlay::takes(source)) {
        let message = format!("overlay.dxf is a drawing of its own, on the same origin: {why}");
        let help = "Save the drawing as a text DXF to have the overlay in a copy of it.";
        notes.push(crate::diag::Note::info("overlay-apart", message, help));
    }
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|b| format!("{b:02x}")).collect()
}

/// The layers of a drawing with their roles.
///
/// # Errors
/// When the drawing cannot be read.
pub fn layers(bytes: &[u8], name: &str, job: &Job) -> Result<Vec<LayerUse>, Refusal> {
    let mut notes = Notes::default();
    let drawing = read::drawing(bytes, name, &read::Limits::default(), &mut notes)?;
    Ok(normalize::roles::layer_roles(&drawing, job))
}

/// Guesses at the roles of layers that have none.
///
/// # Errors
/// When the drawing cannot be read.
pub fn suggestions(
    bytes: &[u8],
    name: &str,
    job: &Job,
) -> Result<Vec<crate::model::guess::LayerGuess>, Refusal> {
    let mut notes = Notes::default();
    let drawing = read::drawing(bytes, name, &read::Limits::default(), &mut notes)?;
    let layers = normalize::roles::layer_roles(&drawing, job);
    Ok(normalize::suggest::guesses(&drawing, &layers))
}

/// Every file of a layout, without prices.
///
/// # Errors
/// As [`set::files`].
pub fn outputs(layout: &Layout, source: &[u8], pictures: bool) -> Result<Vec<OutputFile>, Refusal> {
    set::files(layout, &takeoff::quantities(layout), source, pictures)
}

/// Lays a house out. Total: a rule that cannot be kept gives a note and a mark, never an abort.
pub fn lay(house: &House, scale: &Scale, job: &Job, notes: &mut Notes, watch: Watch) -> Layout {
    // The exposure of panels is fixed and the datum free; boards are evened between levels.
    let system = job.siding();
    let evened = system.courses.is_evened();
    let found = if evened { Found::default() } else { search(house, job) };
    let pole = if evened { even::pole(house, job) } else { story_pole(house, &found, job) };
    let settled = settled(house, &pole);
    let house = settled.as_ref().unwrap_or(house);
    let hung = hung(house, &pole, &job.courses);
    let (drawn, house) = (house, hung.as_ref().unwrap_or(house));
    let fields: Vec<Field> = house
        .elevations
        .iter()
        .enumerate()
        .flat_map(|(e, on)| (0..on.walls.len()).map(move |w| (e, w)))
        .map(|(e, w)| receive::field(house, e, w, &pole, (&job.courses, &job.trim)))
        .map(|f| if system.receivers.has_pockets() { f } else { receive::boards::for_boards(f) })
        .collect();
    let walls: Vec<&house::DrawnWall> =
        fields.iter().map(|f| &house.elevations[f.elevation].walls[f.wall]).collect();
    let laid: Vec<Vec<PlannedCourse>> =
        fields.iter().zip(&walls).map(|(f, w)| courses(f, w, &pole, job)).collect();
    let asked = problem(house, &fields, &laid, job);
    let plan = if system.joints.is_on_studs() {
        joint::plan(&asked, &joint_rules(&walls, &laid, job))
    } else {
        either_hand(&asked, |p| seam::plan(p, watch))
    };
    let trims = trim::trims(house, &fields, &pole, job);
    let mut made = make(&walls, &laid, &codes(house, &fields), &plan, job);
    if job.seams.reuse_halves {
        reuse(&mut made, job);
    }
    let mut out = bundle(house, scale, job, &pole);
    let lines = lines(house, &fields, &laid, &pole);
    out.story_pole = PoleTable {
        choices: found.choices,
        tried: found.tried,
        evened: pole.lines,
        divisions: pole.divisions,
        lines,
    };
    for ((field, wall), courses) in fields.iter().zip(&walls).zip(made.courses) {
        let as_drawn = &drawn.elevations[field.elevation].walls[field.wall];
        let shown = shown_wall(wall, as_drawn, field, courses);
        out.elevations[field.elevation].walls.push(shown);
    }
    out.panels = made.panels;
    out.trims = trims;
    out.work = work::work(&out);
    out.fastening = takeoff::fastening(&out);
    out.movement = takeoff::movement(&out);
    out.bound = takeoff::proof(&out, &plan);
    product_notes(job, notes);
    edge_work::tell(&mut out);
    warnings::tell(&out, notes);
    course_notes(&out, notes);
    let style = job.sheet.lengths;
    wording::movement::uncovered(&out.movement, style).into_iter().for_each(|n| notes.push(n));
    let lot = wording::takeoff::advice::advice(&takeoff::one_lot(job), job);
    notes.push(crate::diag::Note::info("one-lot", lot, "Order spare ones with them."));
    out.takeoff = takeoff::lines(&out);
    out.verify = verify::check(&out);
    out.notes = notes.all().to_vec();
    out
}

/// Everything but walls, panels and trims.
fn bundle(house: &House, scale: &Scale, job: &Job, pole: &StoryPole) -> Layout {
    let elevations = house.elevations.iter().map(|e| crate::layout::wall::LaidElevation {
        name: e.name.clone(),
        to_source: e.to_source.as_coeffs(),
        grade: xys(&e.grade),
        walls: Vec::new(),
        backdrop: e.backdrop.clone(),
        zones: e.zones.iter().map(zone_area).collect(),
    });
    Layout {
        format: crate::layout::FORMAT,
        drawing: crate::model::source::Source {
            unit: scale.unit.clone(),
            unit_source: scale.source.clone(),
            inches_per_unit: scale.inches,
            unit_proved: scale.proved,
            ..Default::default()
        },
        zone: house.zone.and_then(|z| job.zone.get(z)).map(|z| z.name.clone()),
        job: job.clone(),
        datum: pole.datum,
        datum_reason: pole.reason.clone(),
        story_pole: PoleTable::default(),
        elevations: elevations.collect(),
        corners: house.corners.clone(),
        panels: Vec::new(),
        bound: crate::layout::bound::Bound::default(),
        trims: Vec::new(),
        work: WorkOrder::default(),
        fastening: Fastening::default(),
        movement: Movement::default(),
        takeoff: Vec::new(),
        verify: crate::layout::verified::Verify::default(),
        notes: Vec::new(),
    }
}

fn zone_area(z: &house::DrawnZone) -> crate::layout::wall::LaidZone {
    crate::layout::wall::LaidZone {
        id: z.id.clone(),
        zone: z.zone.clone(),
        cladding: z.cladding.clone(),
        laid_out: z.laid,
        outline: z.shapes.iter().flat_map(|p| p.rings().map(|r| xys(r))).collect(),
        gross_area: z.gross / 144.0,
        net_area: z.net / 144.0,
    }
}

fn xys(points: &[Point]) -> Vec<Xy> {
    points.iter().map(|p| [p.x, p.y]).collect()
}

/// A wall with its courses; a door's sill stays where it is drawn though siding may hang lower.
fn shown_wall(
    wall: &house::DrawnWall,
    drawn: &house::DrawnWall,
    field: &Field,
    courses: Vec<crate::layout::course::LaidCourse>,
) -> crate::layout::wall::LaidWall {
    let openings: Vec<crate::layout::wall::LaidOpening> = wall
        .openings
        .iter()
        .zip(&drawn.openings)
        .map(|(o, drawn)| crate::layout::from_drawn::opening(o, drawn.sides()))
        .collect();
    let edges = field.edges.iter().map(|e| crate::layout::wall::LaidEdge {
        kind: e.kind,
        from: [e.from.x, e.from.y],
        to: [e.to.x, e.to.y],
        pitch: e.pitch,
        receiver: e.receiver,
        opening: e.opening.and_then(|i| openings.get(i)).map(|o| o.id.clone()),
        tag: e.tag.clone(),
    });
    let holes: Vec<Polygon> =
        wall.openings.iter().map(|o| Polygon::simple(o.outline.clone()).wound()).collect();
    let gross = total_area(&wall.faces);
    let sided =
        crate::geom::boolean::difference(&wall.faces, &crate::geom::boolean::union_all(&holes));
    let mut out = crate::layout::wall::LaidWall {
        id: wall.id.clone(),
        outline: xys(&wall.outline),
        way: wall.way,
        field: field.shapes.iter().flat_map(|p| p.rings().map(|r| xys(r))).collect(),
        gross_area: gross / 144.0,
        net_area: total_area(&sided) / 144.0,
        gable_area: None,
        drawn_exposure: wall.drawn_exposure,
        bands: wall.bands.iter().map(|p| xys(&p.outer)).collect(),
        joints: wall.joints.clone(),
        edges: edges.collect(),
        obstacles: wall
            .obstacles
            .iter()
            .map(|o| crate::layout::wall::LaidObstacle {
                id: o.id.clone(),
                mounting_block: o.mounting_block,
                outline: xys(&o.outline),
            })
            .collect(),
        openings,
        courses,
    };
    out.gable_area = out.rake_foot().map(|foot| {
        let top = out.outline.iter().map(|p| p[1]).fold(foot, f64::max);
        total_area(&clip_band(&sided, foot, top + 1.0)) / 144.0
    });
    out
}

/// The beginnings of piece marks: as few letters of the elevation's name as tell it apart, and the
/// wall's number.
fn codes(house: &House, fields: &[Field]) -> Vec<String> {
    let names: Vec<String> = house
        .elevations
        .iter()
        .map(|e| e.name.to_uppercase().chars().filter(|c| c.is_alphanumeric()).collect())
        .collect();
    const MOST: usize = 3;
    let beginnings = |name: &str| -> Vec<String> {
        let whole: Vec<char> = name.chars().take(MOST).collect();
        (1..=whole.len()).map(|k| whole[..k].iter().collect()).collect()
    };
    let mut shared: BTreeMap<String, usize> = BTreeMap::new();
    for b in names.iter().flat_map(|n| beginnings(n)) {
        *shared.entry(b).or_default() += 1;
    }
    let short = |i: usize| -> String {
        let own = beginnings(&names[i]).into_iter().find(|b| shared.get(b) == Some(&1));
        own.unwrap_or_else(|| format!("E{}-", i + 1))
    };
    // Marks of a zone's set differ from the house's.
    let set = house.zone.map_or(String::new(), |z| format!("Z{}", z + 1));
    fields.iter().map(|f| format!("{set}{}{}", short(f.elevation), f.wall + 1)).collect()
}

/// What must be asked of a product's maker.
fn product_notes(job: &Job, notes: &mut Notes) {
    let p = &job.product;
    let longest = p.stocks().into_iter().fold(0.0, f64::max);
    let ask_from = p.system().end_gap.ask_from.unwrap_or(f64::INFINITY);
    if longest >= ask_from && p.end_gap.is_none() {
        let style = job.sheet.lengths;
        let message = format!(
            "panels of {} are 20 ft or longer: their maker states a larger gap at the ends; the usual {} is taken",
            style.length(longest),
            style.short(job.end_gap())
        );
        let help = "Set `product.end_gap` from the maker's instructions (association manual).";
        notes.push(crate::diag::Note::warning("long-panel-gap", message, help));
    }
}

/// Rules of seams that could not be kept.
fn course_notes(layout: &Layout, notes: &mut Notes) {
    use crate::diag::Note;
    use crate::wording::seams;
    for c in &layout.bound.conflicts {
        let courses: Vec<String> = c.courses.iter().map(|i| (i + 1).to_string()).collect();
        let message = format!(
            "{}: courses {} cannot keep every seam rule: {}",
            c.elevation,
            courses.join(", "),
            seams::broken(&c.rule, layout.job.sheet.lengths)
        );
        let help = seams::remedies(&c.remedies);
        notes.push(Note::warning("seam-rules-conflict", message, &help).on(&c.elevation));
    }
}
