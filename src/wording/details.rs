//! Words of the details sheet.

use crate::language::{Said, said};

/// The sheet.
pub const DETAILS: Said = said("Details", "Detalles");
/// What it holds.
pub const DESCRIPTION: Said = said(
    "Typical sections of the siding where it starts, ends, laps and is flashed",
    "Cortes típicos del siding donde empieza, termina, traslapa y lleva tapajuntas",
);
/// What its heading says.
pub const TYPICAL: Said = said(
    "typical; dimensions are the job's settings, profiles are for the look. The manufacturer's instructions and the local code come first.",
    "típicos; las medidas son las del trabajo, los perfiles son solo ilustración. Primero valen las instrucciones del fabricante y el código local.",
);

/// Over grade.
pub const STARTER: Said = said("Start over grade", "Arranque sobre el terreno");
/// Over a roof.
pub const ROOF: Said = said("Roof to wall", "Techo contra pared");
/// Low end of a roof.
pub const KICK_OUT: Said =
    said("Low end of a roof, seen from the front", "Extremo bajo de un techo, visto de frente");
/// Under a soffit.
pub const SOFFIT: Said = said("Top under a soffit", "Remate bajo el sofito");
/// Outside corner.
pub const OUTSIDE: Said =
    said("Outside corner, seen from above", "Esquina exterior, vista desde arriba");
/// Inside corner.
pub const INSIDE: Said =
    said("Inside corner, seen from above", "Esquina interior, vista desde arriba");
/// Seam of panels.
pub const SEAM: Said = said("Seam, seen from above", "Unión, vista desde arriba");
/// Joint of boards.
pub const JOINT: Said =
    said("Joint on a stud, seen from above", "Junta sobre montante, vista desde arriba");
/// Under a window.
pub const SILL: Said = said("Sill", "Repisa");
/// Beside an opening.
pub const JAMB: Said = said("Jamb, seen from above", "Jamba, vista desde arriba");
/// Over an opening.
pub const HEAD: Said = said("Head", "Cabezal");
/// Water tab.
pub const TAB: Said = said("Water tab, seen from the front", "Pestaña de agua, vista de frente");
/// Mounting block.
pub const BLOCK: Said = said("Mounting block", "Bloque de montaje");

/// Name of a dimension.
pub const STARTER_LINE: Said = said("snapped line to butt line", "línea de tiza al borde inferior");
/// Name of a dimension.
pub const CLEAR_OF_GRADE: Said = said("clear of grade", "separado del terreno");
/// Name of a dimension.
pub const CLEAR_OF_ROOF: Said = said("clear of the roof", "separado del techo");
/// Name of a dimension, and of the board.
pub const FRIEZE: Said = said("frieze board", "tabla de friso");
/// Name of a dimension.
pub const OVER_CUT: Said = said("room at the cut edge", "holgura en el borde cortado");
/// Name of a dimension.
pub const SET_BACK: Said = said("set-back", "retiro");
/// Name of a dimension.
pub const END_GAP: Said = said("end gap", "espacio de extremo");
/// Name of a dimension.
pub const FACE: Said = said("face", "cara");
/// Name of a dimension.
pub const LAP: Said = said("lap", "traslape");
/// Name of a dimension.
pub const JOINT_GAP: Said = said("gap at the joint", "espacio en la junta");
/// Name of a dimension.
pub const FOAM_SET_BACK: Said = said("foam stops short", "la espuma termina antes");
/// Name of a dimension.
pub const TAB_LENGTH: Said = said("tab", "pestaña");
/// Name of a dimension.
pub const ROUND_BLOCK: Said = said("room round the block", "holgura alrededor del bloque");

/// Note.
pub const BARRIER: Said =
    said("Weather barrier over the sheathing", "Barrera contra el agua sobre el entablado");
/// Note.
pub const BARRIER_OVER_FLASHING: Said = said(
    "Weather barrier laps over the flashing",
    "La barrera contra el agua traslapa sobre el tapajuntas",
);
/// Note.
pub const FOUNDATION: Said = said("Foundation", "Cimiento");
/// Note.
pub const GRADE: Said = said("Finished grade", "Nivel final del terreno");
/// Note.
pub const ROOF_CHANNEL: Said = said("J-channel over the roof", "Canal J sobre el techo");
/// Note.
// TrimFact::StepFlashing.
pub const STEP_FLASHING: Said =
    said("Step flashing, 4\" x 4\" or more", "Tapajuntas escalonado, 4\" x 4\" o más");
/// Title of a detail.
pub const SKIRT: Said = said(
    "Skirt board over a level roof or ledge",
    "Tabla de faldón sobre un techo a nivel o un saliente",
);
/// Note.
pub const SKIRT_BOARD: Said = said(
    "Skirt board, FB on the wall's sheet, ripped to end at the course line",
    "Tabla de faldón, FB en la hoja de la pared, cortada a lo largo para terminar en la línea de la hilera",
);
/// Note.
pub const SKIRT_FLASHING: Said = said(
    "Flashing, up behind board and starter",
    "Tapajuntas, sube por detrás de la tabla y de la tira de inicio",
);
/// Note.
pub const ROOF_OR_LEDGE: Said = said("Roof or ledge", "Techo o saliente");
/// Note.
pub const ROOFING: Said = said("Roofing", "Cubierta del techo");
/// Note.
pub const ROOF_LOW_END: Said = said("Roof, its low end", "Techo, su extremo bajo");
/// Note.
pub const GUTTER: Said = said("Gutter", "Canaleta");
/// Note.
pub const SOFFIT_PANEL: Said = said("Soffit", "Sofito");
/// Note.
pub const JOINT_FLASHING: Said = said(
    "Flashing behind the joint, over the head of the board below",
    "Tapajuntas detrás de la junta, sobre lo alto de la tabla de abajo",
);
/// Note.
pub const FOAM: Said = said("Foam meets foam", "Espuma contra espuma");
/// Note.
pub const SILL_FLASHING: Said = said(
    "Sill flashing, over the barrier below",
    "Tapajuntas de repisa, sobre la barrera de abajo",
);
/// Note.
pub const SILL_CHANNEL: Said = said("J-channel under the sill", "Canal J bajo la repisa");
/// Note.
pub const JAMB_FLASHING: Said =
    said("Jamb flashing, behind the siding", "Tapajuntas de jamba, detrás del siding");
/// Note.
pub const JAMB_CHANNEL: Said = said("J-channel", "Canal J");
/// Note.
pub const HEAD_FLASHING: Said = said(
    "Head flashing or drip cap, under the barrier",
    "Tapajuntas de cabezal o goterón, debajo de la barrera",
);
/// Note.
pub const HEAD_CHANNEL: Said = said(
    "J-channel, with a water tab at each end",
    "Canal J, con una pestaña de agua en cada extremo",
);
/// Note.
pub const TAB_NOTE: Said = said(
    "Tab, bent down over the jamb channel: water runs over, not behind",
    "Pestaña doblada hacia abajo sobre el canal de la jamba: el agua corre por encima, no por detrás",
);
/// Note.
pub const TAB_HEAD: Said = said("Head channel", "Canal del cabezal");
/// Note.
pub const TAB_JAMB: Said = said("Jamb channel", "Canal de la jamba");
/// Note.
pub const BLOCK_NOTE: Said =
    said("Mounting block on the sheathing", "Bloque de montaje sobre el entablado");
/// Note.
pub const BLOCK_FLASHING: Said = said("Flashing over the block", "Tapajuntas sobre el bloque");
