//! The usual cautions, once: sheets, report, workbook and whoever climbs read the same sentences.
//! Which of them hang on the siding is a fact of its system.

use crate::job::siding::kind::{Siding, every_caution};
use crate::job::siding::system::Caution;
use crate::language::{Language, Said, said};

const PRECEDENCE: Said = said(
    "The siding manufacturer's instructions and the local code override every figure here.",
    "Las instrucciones del fabricante del siding y el código local mandan sobre toda medida de estas hojas.",
);
const AID_ONLY: Said = said(
    "An aid to layout only: structure, wind, fire separation and water management stay with the licensed designer and the local official.",
    "Es solo una ayuda para el trazado: estructura, viento, separación contra fuego y manejo del agua quedan a cargo del diseñador con licencia y del inspector local.",
);
// SafetyFact::Falls, SafetyFact::Ladders.
const FALLS: Said = said(
    "Falls: protect every edge from 6 ft up. Set the base of an extension ladder out a quarter of its working length, its rails 3 ft above the landing.",
    "Caídas: proteja todo borde desde 6 pies de altura. Separe la base de la escalera de extensión un cuarto de su largo de trabajo, con los largueros 3 pies arriba del descanso.",
);
// SafetyFact::PowerLines.
const POWER_LINES: Said = said(
    "Power lines: keep ladders and scaffolds 10 ft from overhead lines; have the service drop made safe first.",
    "Líneas eléctricas: mantenga escaleras y andamios a 10 pies de las líneas aéreas; primero haga que la compañía eléctrica deje sin peligro la acometida.",
);
// SafetyFact::LeadPaint, SafetyFact::AsbestosSheet.
const OLD_WALLS: Said = said(
    "Before 1978: paint may hold lead; asbestos-cement siding or sheet may lie underneath. Stop, test, and leave it to certified people.",
    "Antes de 1978: la pintura puede tener plomo; debajo puede haber siding o lámina de asbesto-cemento. Pare, haga la prueba y déjelo a personal certificado.",
);
// SafetyFact::EgressWindows.
const BEHIND_WALL: Said = said(
    "Behind the wall: look for wiring, gas and water before nailing. Keep egress windows clear.",
    "Detrás de la pared: busque cables, gas y agua antes de clavar. Deje libres las ventanas de salida de emergencia.",
);

/// What whoever climbs must have read.
pub const BEFORE_CLIMBING: [Said; 4] = [FALLS, POWER_LINES, OLD_WALLS, BEHIND_WALL];

/// What stands on every sheet.
pub fn notice(lang: Language) -> String {
    say!(
        lang,
        "{} {} Cautions: see the cover.",
        "{} {} Advertencias: vea la portada.",
        PRECEDENCE.of(lang),
        AID_ONLY.of(lang)
    )
}

/// Every caution of a set with this siding, in the order they are read.
pub fn all(siding: Siding) -> Vec<Said> {
    let general = [PRECEDENCE, AID_ONLY].into_iter().chain(BEFORE_CLIMBING);
    general.chain(of_siding(siding)).collect()
}

/// Every caution of every kind of siding, each once.
pub fn of_all() -> Vec<Said> {
    let mut out: Vec<Said> = [PRECEDENCE, AID_ONLY].into_iter().chain(BEFORE_CLIMBING).collect();
    out.extend(every_caution().into_iter().map(sentence));
    out
}

/// What cutting and living with a kind can do.
pub fn of_siding(siding: Siding) -> impl Iterator<Item = Said> {
    siding.system().cautions.iter().map(|c| sentence(*c))
}

fn sentence(caution: Caution) -> Said {
    match caution {
        Caution::CuttingVinyl => said(
            "Cutting: eye protection. Cold vinyl is brittle: cut slowly below freezing (32°F).",
            "Al cortar: proteja los ojos. El vinilo frío es quebradizo: corte despacio cuando hiela (menos de 32°F).",
        ),
        // SafetyFact::HeatSoftening.
        Caution::HeatSoftens => said(
            "Heat: vinyl softens at 160 to 165 F. Keep grills and vents away; glass that faces the wall can reflect enough sun to warp it.",
            "Calor: el vinilo se ablanda de 160 a 165 F. Aleje parrillas y salidas de aire caliente; un vidrio frente a la pared puede reflejar sol suficiente para torcerlo.",
        ),
        Caution::CuttingWood => said(
            "Cutting: eye protection; dust mask or collection. Treated or old painted wood: follow its label, never burn offcuts.",
            "Al cortar: proteja los ojos; mascarilla o colector de polvo. Madera tratada o con pintura vieja: siga su etiqueta, nunca queme los sobrantes.",
        ),
        // SafetyFact::LeadPaint.
        Caution::LeadPaint => said(
            "Old walls: before 1978, disturbing more than 20 sq ft of painted outside surface needs a certified lead renovator (EPA, 40 CFR 745).",
            "Paredes viejas: antes de 1978, alterar más de 20 pies cuadrados de superficie exterior pintada requiere un renovador certificado en plomo (EPA, 40 CFR 745).",
        ),
        // SafetyFact::SilicaDust.
        Caution::SilicaDust => said(
            "Silica: fiber-cement dust scars lungs. Cut outdoors, downwind, with shears or a saw with a dust collector of 99 % filter efficiency, blade up to 8 in (29 CFR 1926.1153, Table 1; Cal. 1532.3); limit 50 micrograms a cubic meter over 8 hours. Eye protection; never sweep or blow it dry.",
            "Sílice: el polvo de fibrocemento daña los pulmones. Corte al aire libre, a favor del viento, con cizalla o con sierra con colector de polvo de 99 % de eficiencia, disco de hasta 8 pulg. (29 CFR 1926.1153, Table 1; Cal. 1532.3); límite 50 microgramos por metro cúbico en 8 horas. Proteja los ojos; nunca lo barra ni lo sople en seco.",
        ),
        Caution::SharpEdges => said(
            "Sharp edges: sheet steel cuts. Wear cut-resistant gloves, sleeves and eye protection; carry long panels by two, on edge, not in wind; leave no raw edge in reach (common practice; the manufacturer's instructions take precedence).",
            "Bordes filosos: la lámina de acero corta. Use guantes resistentes a cortes, mangas y protección para los ojos; cargue los paneles largos entre dos, de canto, nunca con viento; no deje bordes vivos al alcance (práctica común; primero valen las instrucciones del fabricante).",
        ),
        Caution::CuttingSteel => said(
            "Cutting: snips, shears, a nibbler or a blade made for sheet steel, never an abrasive wheel: its sparks burn the coating. Ear protection; brush off filings the same day, touch up cut edges and scratches as the manufacturer says (common practice).",
            "Al cortar: tijeras, cizalla, roedora o un disco para lámina de acero, nunca disco abrasivo: sus chispas queman el recubrimiento. Proteja los oídos; quite la rebaba el mismo día, retoque bordes cortados y rayones según diga el fabricante (práctica común).",
        ),
        Caution::Corrosion => said(
            "Corrosion: keep coated steel off copper, lead, wet mortar, and lumber treated with copper preservative; galvanized or stainless steel nails only (common practice; the manufacturer's instructions take precedence).",
            "Corrosión: que el acero recubierto no toque cobre, plomo, mezcla húmeda ni madera tratada con cobre; solo clavos de acero galvanizado o inoxidable (práctica común; primero valen las instrucciones del fabricante).",
        ),
        Caution::MetalConducts => said(
            "Electricity: metal panels and trim conduct. Keep lengths clear of power lines and the service drop; whether the wall must be bonded is for the electrician and the local code.",
            "Electricidad: los paneles y molduras de metal conducen. Aleje los tramos de las líneas eléctricas y de la acometida; si la pared debe conectarse a tierra lo deciden el electricista y el código local.",
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::siding::kind::PanelSiding;

    #[test]
    fn every_siding_has_cautions_of_its_own_after_the_general_ones() {
        for siding in Siding::ALL {
            assert!(of_siding(siding).count() >= 2, "{siding:?}");
            let all = all(siding);
            assert!(all.len() > 6 && BEFORE_CLIMBING.iter().all(|c| all.contains(c)));
        }
    }

    #[test]
    fn figures_are_those_of_the_safety_rules() {
        // 29 CFR 1926.501 (6 ft), 1926.1053 (1 in 4; 3 ft), 1926.451 and .1053 (10 ft); 40 CFR 745 (1978).
        let climb = BEFORE_CLIMBING.map(|c| c.en).join(" ");
        for words in ["6 ft up", "a quarter of its working length", "3 ft above", "10 ft", "1978"] {
            assert!(climb.contains(words), "{words}");
        }
        for words in ["asbestos", "lead", "egress", "wiring, gas and water"] {
            assert!(climb.contains(words), "{words}");
        }
        for words in
            ["manufacturer's", "local code", "licensed", "fire separation", "water management"]
        {
            assert!(notice(Language::English).contains(words), "{words}");
        }
    }

    #[test]
    fn who_cuts_steel_is_told_of_edges_tools_and_contact() {
        let all: Vec<&str> = of_siding(Siding::Panel(PanelSiding::Steel)).map(|c| c.en).collect();
        let all = all.join(" ");
        for word in [
            "gloves",
            "nibbler",
            "abrasive",
            "touch up",
            "copper",
            "treated",
            "conduct",
            "manufacturer",
        ] {
            assert!(all.contains(word), "{word}");
        }
    }
}
