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
    Check(Reading),
    /// List the layers with what each is taken for
    Layers(Layers),
    /// Print the quantities
    Takeoff(Takeoff),
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
    /// Paper of the sheets: ARCH A to D, ANSI A to D, A4 to A1
    #[arg(long, value_name = "NAME")]
    pub paper: Option<String>,
    /// Scale of the elevations, as 1/4" = 1'-0" or 1:50; by default the largest that fits
    #[arg(long, value_name = "SCALE")]
    pub scale: Option<String>,
    /// Where the overlay goes
    #[arg(long, value_enum, default_value_t = Overlay::Source)]
    pub overlay: Overlay,
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
