//! What stands under the help of the program and of each command.

/// Under the help of the program.
pub const PROGRAM: &str = "\
Exit codes:
  0  done
  1  the drawing, the job file or the price list cannot be used
  2  wrong usage
  3  done, with warnings, under --strict
  4  the layout breaks a rule of the check: written, every sheet and table marked

NO_COLOR, when set, keeps color off the terminal.

Examples:
  lapwright check house.dxf
  lapwright start house.dxf
  lapwright layout house.dxf --job house.toml
  lapwright takeoff house.dxf --job house.toml --prices prices.csv

The siding maker's instructions and the local code override every figure.";
/// Under the help of `layout`.
pub const LAYOUT: &str = "\
Examples:
  lapwright layout house.dxf --job house.toml --out house-layout
  lapwright layout house.dxf --strict --quiet
  lapwright layout house.dxf --job house.toml --compare-waiting
  lapwright layout lots --out houses
  lapwright layout plan-1.dxf plan-2.dxf --job office.toml --out houses
  lapwright layout - < house.dxf";
/// Under the help of `compare`.
pub const COMPARE: &str = "\
Examples:
  lapwright compare house-layout house-b.dxf --out house-b-changes
  lapwright compare house-layout house-b-layout --prices prices.csv
  lapwright compare house-a.dxf house-b.dxf --format json > changes.json

Walls, openings and fixtures are matched by place and shape. A drawing that was moved on
its sheet or drawn the other hand is the same house.";
/// Under the help of `check`.
pub const CHECK: &str = "\
Example:
  lapwright check house.dxf --job house.toml --out house-check
  lapwright check house.dxf --job house.toml --settings";
/// Under the help of `measure`.
pub const MEASURE: &str = "\
Examples:
  lapwright measure house.dxf --job house.toml
  lapwright layout house.dxf --measured house-measure/measured.csv";
/// Under the help of `start`.
pub const START: &str = "\
Example:
  lapwright start house.dxf
  lapwright check house.dxf --job house.toml --out house-check";
/// Under the help of `layers`.
pub const LAYERS: &str = "\
Examples:
  lapwright layers house.dxf
  lapwright layers house.dxf --suggest > layers.toml";
/// Under the help of `takeoff`.
pub const TAKEOFF: &str = "\
Examples:
  lapwright takeoff house.dxf --job house.toml
  lapwright takeoff house.dxf --explain j-channel
  lapwright takeoff house.dxf --by elevation
  lapwright takeoff house.dxf --prices prices.csv --format csv

A price list begins with its columns, in any order:
  item,unit,price,order multiple,currency
  cartons,carton,412.00,1,USD
  j-channel,piece,9.85,10,USD
Items go by the short names that --format csv lists under id. Panels are bought
by the carton where cartons have a price, else by the piece, else by the square.";
/// Under the help of `template`.
pub const TEMPLATE: &str = "\
Example:
  lapwright template for-the-architect";
/// Under the help of `explain`.
pub const EXPLAIN: &str = "\
Examples:
  lapwright explain
  lapwright explain wall-open";
/// Under the help of `schema`.
pub const SCHEMA: &str = "\
Example:
  lapwright schema job > job.schema.json";
/// Under the help of `completions`.
pub const COMPLETIONS: &str = "\
Example:
  lapwright completions bash > ~/.local/share/bash-completion/completions/lapwright";
/// Under the help of `man`.
pub const MAN: &str = "\
Example:
  lapwright man > lapwright.1 && man ./lapwright.1";
/// Under the help of `page`.
pub const PAGE: &str = "\
Example:
  lapwright page --out lapwright.html

In a checkout of the source, with its feature and the target that it takes:
  rustup target add wasm32-unknown-unknown
  cargo run --release --features page -- page --out lapwright.html";
