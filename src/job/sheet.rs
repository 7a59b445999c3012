//! Paper, scale and how lengths are written.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::language::SheetLanguage;
use crate::units::LengthStyle;

/// Paper.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct SheetRules {
    /// Paper: `ARCH A` to `ARCH D`, `ANSI A` to `ANSI D`, `A4` to `A1`. Default ARCH B.
    pub paper: String,
    /// Scale as written on the sheet (`1/4" = 1'-0"`, `1:50`); left out, picked to fit.
    pub scale: Option<String>,
    /// `feet`: architectural scales, lengths in feet and inches. `mm`: metric scales, lengths in
    /// millimeters, areas in square meters.
    pub lengths: LengthStyle,
    /// Language of the sheets: `en`, `es` (Spanish), or `both`: each sentence in English and under it in Spanish.
    /// `both` needs ARCH B, ANSI B, A3 or larger. Names, marks, tables, workbook, report and findings stay as they are.
    pub language: SheetLanguage,
}

impl Default for SheetRules {
    fn default() -> Self {
        SheetRules {
            paper: "ARCH B".to_owned(),
            scale: None,
            lengths: LengthStyle::Feet,
            language: SheetLanguage::En,
        }
    }
}
