//! Codes of a job and its file.

use super::entry::Explanation;
use crate::finding::job::JobCode;

pub(super) fn explanation(code: JobCode) -> &'static Explanation {
    match code {
        JobCode::JobUnreadable => &JOB_UNREADABLE,
        JobCode::NoDrawing => &NO_DRAWING,
        JobCode::NotGiven => &NOT_GIVEN,
        JobCode::OldSpelling => &OLD_SPELLING,
        JobCode::JobValue => &JOB_VALUE,
    }
}

const JOB_UNREADABLE: Explanation = Explanation {
    title: "The job file cannot be read",
    cause: "The file is no TOML, a value has the wrong form (a text where a number is due), or a key is not known: misspelt, or in the wrong table; or a file that it `extends` is not there or extends it in a circle. File, line and column are given, and the key that may be meant.",
    remedy: "Correct the line. `lapwright schema job` lists every key and the form of its value; `lapwright template DIR` writes a job file with every key explained.",
    example: "[product]\nlenght = 150",
};
const NO_DRAWING: Explanation = Explanation {
    title: "A job that names no drawing",
    cause: "A house is given by its job file alone, and that says no `model.drawing`, nor does a file that it extends.",
    remedy: "Name the drawing in the job, from the job's own folder; or give the drawing, and the job with --job.",
    example: "[model]\ndrawing = \"plan-2.dxf\"",
};
const NOT_GIVEN: Explanation = Explanation {
    title: "A job beside the drawing that is not read",
    cause: "A job file stands beside the drawing under its name, as `lapwright start` writes it, but the command names none with --job: product, gaps, layers and all else are defaults.",
    remedy: "Give it with --job. To lay out by the defaults, move the file or give it another name.",
    example: "lapwright layout house.dxf --job house.toml",
};
const OLD_SPELLING: Explanation = Explanation {
    title: "A key or a word is spelled as before",
    cause: "The job file uses a key or a word that was spelled otherwise in an earlier version, or by its British spelling. It is read as the new one.",
    remedy: "Write the new spelling when convenient; the old one is still read.",
    example: "[product]\nkind = \"fibre-cement\"    # now fiber-cement",
};
const JOB_VALUE: Explanation = Explanation {
    title: "A value that no layout can be made with",
    cause: "A value is out of its range, contradicts another, says nothing about the siding that is picked, or names something that there is not. All such values of a job file are listed, each with its line and column.",
    remedy: "Correct the value. Lengths are inches unless they carry a unit.",
    example: "[product]\ncarton = 0",
};
