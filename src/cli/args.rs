//! Arguments as typed.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

use crate::wording::help;

/// Lays lap siding out on a house's elevation drawings.
#[derive(Debug, Parser)]
#[command(name = "lapwright", version, about, max_term_width = 80, after_help = help::PROGRAM)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// Commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Lay the house out: sheets, overlay, cut list and takeoff into a folder
    #[command(after_help = help::LAYOUT)]
    Layout(Layout),
    /// Tell what was read, assumed, mended and refused, and what a layout of it warns of; write no layout
    #[command(after_help = help::CHECK)]
    Check(Check),
    /// Write a first job file beside the drawing: views, layers, unit, and the questions left
    #[command(after_help = help::START)]
    Start {
        /// The drawing (DXF, DWG, PDF or SVG); the job gets its name, with .toml, and none is ever written over
        drawing: PathBuf,
    },
    /// Write sheets to tape the house by before ordering: each length with the drawn one, a blank, and what an
    /// error of 1/2 in spoils, worst first
    #[command(after_help = help::MEASURE)]
    Measure(Measure),
    /// List the layers with what each is taken for
    #[command(after_help = help::LAYERS)]
    Layers(Layers),
    /// Print the quantities
    #[command(after_help = help::TAKEOFF)]
    Takeoff(Takeoff),
    /// Tell what a revision of the drawing changes, what that does to each wall, what to order more and what is over
    #[command(after_help = help::COMPARE)]
    Compare(Compare),
    /// Write what an architect needs: an empty DXF with the agreed layers, the convention as a page; and what an
    /// office begins with: a quick start, its own file of settings, a job that extends it, a job file with every setting explained
    #[command(after_help = help::TEMPLATE)]
    Template {
        /// Folder for them, made if need be; files of that name there are not replaced if they were
        /// edited or are not Lapwright's
        dir: PathBuf,
        /// Write over files of these names all the same
        #[arg(long)]
        replace: bool,
    },
    /// Make the page that holds the whole program, for a browser without network; in a checkout of the source,
    /// of a program built with the feature `page`
    #[command(after_help = help::PAGE)]
    Page {
        /// The page; a file of that name is not replaced if it was edited or is not Lapwright's
        #[arg(long, value_name = "FILE", default_value = "lapwright.html")]
        out: PathBuf,
        /// Write over it all the same
        #[arg(long)]
        replace: bool,
    },
    /// Explain the code of a finding: why it is raised, what to do, an example; without a code, list all
    #[command(after_help = help::EXPLAIN)]
    Explain {
        /// The code, as it stands beside the finding
        code: Option<String>,
    },
    /// Print the JSON Schema of the job file, of layout.json, of takeoff.json, of saved ticks or of a comparison
    #[command(after_help = help::SCHEMA)]
    Schema {
        /// Which one
        of: SchemaOf,
    },
    /// Print shell completions
    #[command(after_help = help::COMPLETIONS)]
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
    /// Print the manual page
    #[command(after_help = help::MAN)]
    Man,
}

/// A drawing and its job.
#[derive(Debug, Args)]
pub struct Reading {
    /// The drawing (DXF, DWG, PDF or SVG); - reads standard input
    pub drawing: PathBuf,
    /// Job file (TOML): title, layers, product, rules
    #[arg(long, value_name = "FILE")]
    pub job: Option<PathBuf>,
    /// A known distance that sets the scale, over the job's: two points in drawing units and the
    /// real length, as "0,0 4877,0 = 16'-0\""
    #[arg(long, value_name = "POINTS = LENGTH")]
    pub known: Option<String>,
    /// A page of a PDF to read, from 1, over the job's; may be given several times
    #[arg(long, value_name = "PAGE")]
    pub page: Vec<usize>,
    /// Lengths taped on site: the table that `measure` writes, filled in; over the job's [taped]
    #[arg(long, value_name = "FILE")]
    pub measured: Option<PathBuf>,
}

/// What was read.
#[derive(Debug, Args)]
pub struct Check {
    /// The drawing and its job.
    #[command(flatten)]
    pub reading: Reading,
    /// Write problems.svg (the drawing with each finding circled) and check.txt into this folder
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Tell every setting with its value and where it comes from: a file of the job, or the default. Without it,
    /// what the files say is told where one extends another
    #[arg(long)]
    pub settings: bool,
    /// Write over files of these names, though they were edited or are not Lapwright's
    #[arg(long)]
    pub replace: bool,
    /// Exit with 3 when there are warnings
    #[arg(long)]
    pub strict: bool,
}

/// Sheets to tape a house by.
#[derive(Debug, Args)]
pub struct Measure {
    /// The drawing and its job.
    #[command(flatten)]
    pub reading: Reading,
    /// Folder for the sheets and the table; by default the drawing's name with -measure, beside the drawing
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Write over files of these names, though they were edited or are not Lapwright's
    #[arg(long)]
    pub replace: bool,
}

/// Layers of a drawing.
#[derive(Debug, Args)]
pub struct Layers {
    /// The drawing and its job.
    #[command(flatten)]
    pub reading: Reading,
    /// Try guesses at the layers by reading the drawing with each, and print those that lead to a layout
    /// better than none, as a job file to edit
    #[arg(long)]
    pub suggest: bool,
}

/// The main job.
#[derive(Debug, Args)]
pub struct Layout {
    /// The drawing (DXF, DWG, PDF or SVG); - reads standard input. Or a job that names its drawing
    /// (model.drawing). Several of them, folders of them, or lists (.txt, a path a line) are laid out house by
    /// house
    #[arg(required = true, value_name = "DRAWING")]
    pub drawings: Vec<PathBuf>,
    /// Job file (TOML): title, layers, product, rules; of many houses for those without a job of their
    /// own name beside the drawing
    #[arg(long, value_name = "FILE")]
    pub job: Option<PathBuf>,
    /// A known distance that sets the scale, over the job's: two points in drawing units and the
    /// real length, as "0,0 4877,0 = 16'-0\""
    #[arg(long, value_name = "POINTS = LENGTH")]
    pub known: Option<String>,
    /// A page of a PDF to read, from 1, over the job's; may be given several times
    #[arg(long, value_name = "PAGE")]
    pub page: Vec<usize>,
    /// Lengths taped on site, of one house: the table that `measure` writes, filled in; over the job's [taped]
    #[arg(long, value_name = "FILE")]
    pub measured: Option<PathBuf>,
    /// Folder for the results; by default the drawing's name with -layout, beside the drawing, or in
    /// the working folder where nothing can be written there. Of many houses each gets a folder of its name
    /// in it, beside the table of houses and the purchase; by default these two go to houses-layout
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Of many houses: print name, drawing, job and folder of each, a line each, parted by tabs, and lay none
    /// out
    #[arg(long)]
    pub list: bool,
    /// Of many houses: most at work at one time; by default as many as there are cores, 8 at most
    #[arg(long, value_name = "HOUSES")]
    pub at_once: Option<usize>,
    /// Of many houses: write neither the table of houses nor the purchase, as for one machine of several
    #[arg(long)]
    pub houses_alone: bool,
    /// Write over edited files and over whatever has the name of a result; all other files that are
    /// not Lapwright's stay
    #[arg(long)]
    pub replace: bool,
    /// Exit with 3 when there are warnings
    #[arg(long)]
    pub strict: bool,
    /// Paper of the sheets: ARCH A to D, ANSI A to D, A4 to A1
    #[arg(long, value_name = "NAME")]
    pub paper: Option<String>,
    /// Scale of the elevations, as 1/4" = 1'-0" or 1:50; by default the largest that fits
    #[arg(long, value_name = "SCALE")]
    pub scale: Option<String>,
    /// Where the overlay goes
    #[arg(long, value_enum, default_value_t = Overlay::Source)]
    pub overlay: Overlay,
    /// Your own price list (CSV: item, unit, price, order multiple, currency)
    #[arg(long, value_name = "FILE")]
    pub prices: Option<PathBuf>,
    /// Leave PDF and PNG out, for speed
    #[arg(long)]
    pub no_pictures: bool,
    /// Hold seams, panels and marks of walls that did not change since this earlier layout (a folder that
    /// `layout` wrote), lay the others anew with what those panels have left, and tell what that costs in panels
    #[arg(long, value_name = "OLD", conflicts_with = "compare_waiting")]
    pub keep: Option<PathBuf>,
    /// What lies on the site, where the job says under [[built]] what hangs already: a CSV of length, count and
    /// factory end (left, right, none; both for whole panels)
    #[arg(long, value_name = "FILE", requires = "keep")]
    pub stock: Option<PathBuf>,
    /// Print what it costs in panels that fewer offcuts wait at the ends of walls, and write nothing
    #[arg(long)]
    pub compare_waiting: bool,
    /// Print nothing but errors
    #[arg(long)]
    pub quiet: bool,
}

/// Two layouts of a house.
#[derive(Debug, Args)]
pub struct Compare {
    /// The old one: a folder that `layout` wrote, its layout.json, or a drawing, which is laid out in memory by the job
    /// of its name beside it
    pub old: PathBuf,
    /// The new one, likewise
    pub new: PathBuf,
    /// Job file (TOML) for drawings among them, in place of the jobs beside them
    #[arg(long, value_name = "FILE")]
    pub job: Option<PathBuf>,
    /// Write report, JSON, workbook and the sheets with what is changed in clouds into this folder
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Write over edited files and over whatever has the name of a result; all other files that are
    /// not Lapwright's stay
    #[arg(long)]
    pub replace: bool,
    /// Form of what is printed
    #[arg(long, value_enum, default_value_t = Told::Report)]
    pub format: Told,
    /// Letter of the revision; by default that of the new job, or the one after the old job's
    #[arg(long, value_name = "LETTER")]
    pub letter: Option<String>,
    /// Your own price list (CSV: item, unit, price, order multiple, currency)
    #[arg(long, value_name = "FILE")]
    pub prices: Option<PathBuf>,
    /// Leave PDF and PNG out, for speed
    #[arg(long)]
    pub no_pictures: bool,
    /// Exit with 3 when the drawing changes anything
    #[arg(long)]
    pub strict: bool,
    /// Print nothing but errors
    #[arg(long)]
    pub quiet: bool,
}

/// Forms of a comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Told {
    /// A report of 80 columns
    Report,
    /// JSON: `lapwright-compare/1`
    Json,
}

/// The quantities.
#[derive(Debug, Args)]
pub struct Takeoff {
    /// The drawing and its job.
    #[command(flatten)]
    pub reading: Reading,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    pub format: Format,
    /// Tell it by part of the house: what each takes of each line
    #[arg(long, value_enum, default_value_t = By::House)]
    pub by: By,
    /// Tell the basis of one line and what it counts; LINE is its short name or its words
    #[arg(long, value_name = "LINE", conflicts_with_all = ["format", "by"])]
    pub explain: Option<String>,
    /// Your own price list (CSV: item, unit, price, order multiple, currency)
    #[arg(long, value_name = "FILE")]
    pub prices: Option<PathBuf>,
    /// Print nothing but the quantities and errors
    #[arg(long)]
    pub quiet: bool,
}

/// Where the overlay goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Overlay {
    /// Into a copy of the source: overlay.dxf
    Source,
    /// Besides, as a drawing of its own on the same origin: overlay-alone.dxf
    Separate,
}

/// Forms of the takeoff.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// A table of 80 columns
    Table,
    /// JSON: the lines, as layout.json has them
    Json,
    /// CSV: a row a line
    Csv,
}

/// Parts of the house.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum By {
    /// The house as a whole, with what to order
    House,
    /// Each elevation
    Elevation,
    /// Each wall
    Wall,
    /// Walls, and gables above the lowest foot of a rake
    #[value(alias = "zone")]
    Gable,
}

/// What a schema is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SchemaOf {
    /// The job file
    Job,
    /// layout.json
    Layout,
    /// takeoff.json
    Takeoff,
    /// What the page of a layout saves of ticks
    Ticks,
    /// What `compare` writes
    Compare,
}
