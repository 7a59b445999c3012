//! Arguments as typed.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

/// Lays foam-backed lap siding out on a house's elevation drawings.
#[derive(Debug, Parser)]
#[command(name = "lapwright", version, about, max_term_width = 80)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// Commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Lay the house out: sheets, overlay, cut list and takeoff into a folder
    #[command(
        after_help = "Example:\n  lapwright layout house.dxf --job house.toml --out house-layout"
    )]
    Layout(Layout),
    /// Tell what was read, assumed, mended and refused; lay nothing out
    #[command(
        after_help = "Example:\n  lapwright check house.dxf --job house.toml --out house-check"
    )]
    Check(Check),
    /// List the layers with what each is taken for
    Layers(Layers),
    /// Print the quantities
    Takeoff(Takeoff),
    /// Write what an architect needs: an empty DXF with the agreed layers, the convention as a
    /// page, a job file with every setting explained
    Template {
        /// Folder for them, made if need be; files of that name there are not replaced
        dir: PathBuf,
    },
    /// Print the JSON Schema of the job file or of layout.json
    Schema {
        /// Which one
        of: SchemaOf,
    },
    /// Print shell completions
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
    /// Print the manual page
    Man,
}

/// A drawing and its job.
#[derive(Debug, Args)]
pub struct Reading {
    /// The drawing (DXF or SVG); - reads standard input
    pub drawing: PathBuf,
    /// Job file (TOML): title, layers, product, rules
    #[arg(long, value_name = "FILE")]
    pub job: Option<PathBuf>,
    /// A known distance that sets the scale, over the job's: two points in drawing units and the
    /// real length, as "0,0 4877,0 = 16'-0\""
    #[arg(long, value_name = "POINTS = LENGTH")]
    pub known: Option<String>,
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
    /// Exit with 3 when there are warnings
    #[arg(long)]
    pub strict: bool,
}

/// Layers of a drawing.
#[derive(Debug, Args)]
pub struct Layers {
    /// The drawing and its job.
    #[command(flatten)]
    pub reading: Reading,
    /// Print guesses at layers without a role, as a fragment of a job file to edit
    #[arg(long)]
    pub suggest: bool,
}

/// The main job.
#[derive(Debug, Args)]
pub struct Layout {
    /// The drawing and its job.
    #[command(flatten)]
    pub reading: Reading,
    /// Folder for the results; by default the drawing's name with -layout
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Exit with 3 when there are warnings
    #[arg(long)]
    pub strict: bool,
    /// Leave PDF and PNG out, for speed
    #[arg(long)]
    pub no_pictures: bool,
    /// Print nothing but errors
    #[arg(long)]
    pub quiet: bool,
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
}

/// Forms of the takeoff.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// A table of 80 columns
    Table,
    /// JSON
    Json,
    /// CSV
    Csv,
}

/// What a schema is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SchemaOf {
    /// The job file
    Job,
    /// layout.json
    Layout,
}
