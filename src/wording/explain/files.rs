//! Codes of files and folders.

use super::entry::Explanation;
use crate::finding::files::FileCode;

pub(super) fn explanation(code: FileCode) -> &'static Explanation {
    match code {
        FileCode::FileUnreadable => &FILE_UNREADABLE,
        FileCode::OutFailed => &OUT_FAILED,
        FileCode::OutRefused => &OUT_REFUSED,
        FileCode::HousesAlike => &HOUSES_ALIKE,
        FileCode::NoHouses => &NO_HOUSES,
        FileCode::OneHouseAlone => &ONE_HOUSE_ALONE,
        FileCode::WriteFailed => &WRITE_FAILED,
        FileCode::ThreadsMissing => &THREADS_MISSING,
        FileCode::PageNotMade => &PAGE_NOT_MADE,
        FileCode::LayoutFormat => &LAYOUT_FORMAT,
        FileCode::LayoutUnreadable => &LAYOUT_UNREADABLE,
        FileCode::NoLayoutFolder => &NO_LAYOUT_FOLDER,
        FileCode::LayoutNotKept => &LAYOUT_NOT_KEPT,
        FileCode::StockUnreadable => &STOCK_UNREADABLE,
        FileCode::TicksUnreadable => &TICKS_UNREADABLE,
        FileCode::OverlayApart => &OVERLAY_APART,
    }
}

const FILE_UNREADABLE: Explanation = Explanation {
    title: "A file cannot be read",
    cause: "The drawing, the job file or the price list is not there, or the system does not let it be read. What the system says is given.",
    remedy: "Check the path, and that you may read the file.",
    example: "lapwright check no-such-house.dxf",
};
const OUT_FAILED: Explanation = Explanation {
    title: "Results cannot be written",
    cause: "The system refuses to write: no space, no permission, a folder that is a file further up. A folder of results is exchanged as a whole, so that an earlier one is left as it was.",
    remedy: "Check free space and that you may write there.",
    example: "lapwright takeoff house.dxf > /dev/full",
};
const OUT_REFUSED: Explanation = Explanation {
    title: "Results would replace something else",
    cause: "The place for results is a file, the folder you are in, holds what the run reads, the results of another drawing, or files that Lapwright did not write or that were changed since. Its own files are known by their list, lapwright-files.sha256. Nothing of that is replaced, and nothing is written.",
    remedy: "Give a folder of its own with --out, new, empty or of an earlier layout. --replace goes over edited files and over whatever has the name of a result; it keeps everything else.",
    example: "lapwright layout house.dxf --out .",
};
const HOUSES_ALIKE: Explanation = Explanation {
    title: "Two houses would have one folder",
    cause: "Of many houses each gets a folder with the name of its drawing or job, and two are called alike; some systems take capitals and small letters for the same.",
    remedy: "Rename one of them, or lay them out in two calls with folders of their own.",
    example: "lapwright layout north/plan.dxf south/plan.dxf --out houses",
};
const NO_HOUSES: Explanation = Explanation {
    title: "There is nothing to lay out",
    cause: "The folder or the list holds no drawing, and no job that names its drawing by `model.drawing`. Folders inside a folder are not looked into.",
    remedy: "Give drawings, jobs that name theirs, or a folder that holds some.",
    example: "lapwright layout empty-folder --out houses",
};
const ONE_HOUSE_ALONE: Explanation = Explanation {
    title: "An option is for one house",
    cause: "Several houses are given with an option that prints something of one.",
    remedy: "Give one drawing, or leave the option out.",
    example: "lapwright layout a.dxf b.dxf --compare-waiting",
};
const WRITE_FAILED: Explanation = Explanation {
    title: "A result cannot be made into its format",
    cause: "What makes PDF, PNG or the workbook reported an error. No drawing is known that leads to it: it is a fault of the program.",
    remedy: "Please report this with the drawing. --no-pictures leaves PDF and PNG out.",
    example: "lapwright layout house.dxf --no-pictures    (goes on without PDF and PNG)",
};
const THREADS_MISSING: Explanation = Explanation {
    title: "The system gives no threads",
    cause: "The workbook's sheets are written in threads of their own, all at once. A limit of processes or of memory leaves none to be had. Nothing was written; everything else works with one thread.",
    remedy: "Raise the limit of processes (`ulimit -u`), or end other programs of the same user, and run again. `lapwright takeoff` prints the quantities without a workbook.",
    example: "ulimit -u 20; lapwright layout house.dxf",
};
const PAGE_NOT_MADE: Explanation = Explanation {
    title: "The page that holds the program is not made",
    cause: "The page is made in a checkout of the program's source: the library is built anew for a browser. This program was built without the feature that does it, the source is not here, or the build failed. Nothing was written.",
    remedy: "In a checkout, run `cargo run --release --features page -- page --out lapwright.html`. The target `wasm32-unknown-unknown` must be installed: `rustup target add wasm32-unknown-unknown`.",
    example: "lapwright page --out lapwright.html",
};
const NO_LAYOUT_FOLDER: Explanation = Explanation {
    title: "A folder holds no layout",
    cause: "`compare`, or `layout --keep`, was given a folder without a layout.json: it was not written by `lapwright layout`, or the file was taken away. The layout of a zone with siding of its own stands in a folder beside that of the house, and both are read.",
    remedy: "Give the folder that `lapwright layout` wrote. `compare` takes a drawing too.",
    example: "lapwright compare house-check house.dxf",
};
const LAYOUT_NOT_KEPT: Explanation = Explanation {
    title: "Nothing can be held of the earlier layout",
    cause: "`layout --keep` holds seams, panels and marks of walls that did not change. That asks for panels of one stock length, laid by the same settings and on the same hand. Boards, several stock lengths and reuse of ripped halves are laid anew as a whole. Nothing was written.",
    remedy: "Give the job that the earlier layout was laid by, or lay the drawing out without --keep and compare the two.",
    example: "lapwright layout house-b.dxf --job other.toml --keep house-layout",
};
const STOCK_UNREADABLE: Explanation = Explanation {
    title: "A list of what lies on the site cannot be read",
    cause: "The list given with --stock is not UTF-8, lacks a column, or a cell of it is no length, no count or no factory end; or a length is longer than a panel, or that of a panel with one factory end; or a quotation mark stays open. Line and column are given. Nothing was written.",
    remedy: "Give a CSV with the columns length, count and, if you like, factory end (left, right, none; both for whole panels).",
    example: "length,count,factory end\n12'-6\",31,both\n64 1/2,3,right",
};
const TICKS_UNREADABLE: Explanation = Explanation {
    title: "Saved ticks cannot be used",
    cause: "The file under `ticks` of `[[built]]` is none that the page of a layout saved, or it is of another drawing than the earlier layout: its marks would name other pieces. Nothing was written.",
    remedy: "Give the file that the page of that layout saved, and the layout's folder with --keep.",
    example: "[[built]]\nticks = \"house-ticks.json\"",
};
const LAYOUT_FORMAT: Explanation = Explanation {
    title: "A file is no layout of this version",
    cause: "A file read as a layout does not say the format that this version reads and writes: it was written by an older or newer version, or is something else.",
    remedy: "Lay the drawing out again with `lapwright layout`.",
    example: "{ \"format\": \"lapwright-layout/1\" }",
};
const LAYOUT_UNREADABLE: Explanation = Explanation {
    title: "A layout is damaged",
    cause: "A file says that it is a layout, but it is no whole JSON, or a field is missing or of the wrong form. Line and column are given where there are any.",
    remedy: "The file was cut short or changed: lay the drawing out again with `lapwright layout`.",
    example: "{ \"format\": \"lapwright-layout/2\", \"elevations\": [",
};
const OVERLAY_APART: Explanation = Explanation {
    title: "The overlay is no copy of the drawing",
    cause: "The overlay is put into a copy of the drawing's own bytes where it can be. A DWG, a binary DXF, or a DXF whose section of entities does not end, takes none: overlay.dxf is then a drawing of its own, on the same origin, with the lines of the elevations on a layer beneath.",
    remedy: "Save the drawing as a text DXF to have the overlay in a copy of it. Else attach overlay.dxf to the drawing as a reference.",
    example: "lapwright layout binary.dxf",
};
