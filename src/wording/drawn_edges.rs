//! Which drawn edges siding stands at, in sentences.

use crate::job::{InsideCorner, Job};
use crate::language::{Language, said};

/// Which drawn edges siding stands at: at the drawn edges of openings and corners, or as far off them
/// as casings, surrounds, corner posts and covers put it. Up to three sentences.
pub fn edges_as_drawn(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    let pockets = job.siding().receivers.has_pockets();
    let what = if pockets {
        said("Channels", "Los canales").of(lang)
    } else {
        said("Boards", "Las tablas").of(lang)
    };
    let (casing, surround) = (job.drawing.casing, job.trim.surround);
    let round: Vec<String> = [
        (casing, said("the casing", "el marco").of(lang)),
        (surround, said("the surround", "el contramarco").of(lang)),
    ]
    .iter()
    .filter(|(w, _)| *w > 0.0)
    .map(|(w, name)| say!(lang, "{name}, {}", "{name}, {}", style.short(*w)))
    .collect();
    let openings = if round.is_empty() {
        let verb = if pockets {
            said("follow", "siguen").of(lang)
        } else {
            said("butt against", "llegan a tope con").of(lang)
        };
        say!(
            lang,
            "{what} {verb} the drawn edge of openings: no casing is given",
            "{what} {verb} el borde dibujado de las aberturas: no se da marco"
        )
    } else {
        say!(
            lang,
            "{what} stand {} outside the drawn edge of openings: {}",
            "{what} van {} por fuera del borde dibujado de las aberturas: {}",
            style.short(casing + surround),
            round.join("; ")
        )
    };
    format!("{openings}. {} {}", ends_at_corners(lang, job), inside_corners(lang, job))
}

/// Where siding ends at outside corners. One sentence.
fn ends_at_corners(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    let (posts, siding, gap) = match job.siding().receivers.has_pockets() {
        true => (
            said("Corner posts", "Los esquineros").of(lang),
            said("panels", "los paneles").of(lang),
            said("end gap", "espacio de extremo").of(lang),
        ),
        false => (
            said("Corner boards", "Las tablas de esquina").of(lang),
            said("boards", "las tablas").of(lang),
            said("gap", "espacio").of(lang),
        ),
    };
    let back = job.set_backs().outside;
    let cover = job.trim.corner_cover;
    if cover > 0.0 && cover >= back {
        return say!(
            lang,
            "{posts} stand at the drawn corner, and siding ends {} from it, at the edge of the covers, which take the place of the posts' set-back.",
            "{posts} van en la esquina dibujada, y el siding termina a {} de ella, en el borde de los cubreesquinas, que hacen las veces del retiro de los esquineros.",
            style.short(cover)
        );
    }
    if back <= 0.0 {
        return say!(
            lang,
            "{posts} have no width in the job: {siding} run to the drawn outside corner, less the {gap}.",
            "{posts} no tienen ancho en el trabajo: {siding} llegan a la esquina exterior dibujada, menos el {gap}."
        );
    }
    say!(
        lang,
        "{posts} stand at the drawn corner; {siding} start {} off it at outside corners, plus the {gap}.",
        "{posts} van en la esquina dibujada; {siding} empiezan a {} de ella en esquinas exteriores, más el {gap}.",
        style.short(back)
    )
}

/// Where siding ends at inside corners. One sentence.
fn inside_corners(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    let back = job.set_backs().inside;
    match job.trim.inside_corner {
        InsideCorner::OneChannel => say!(
            lang,
            "An inside corner has one J-channel: panels run into the corner on the wall sided first, and start {} off it on the other, the depth of the channel.",
            "Una esquina interior lleva un canal J: los paneles llegan a la esquina en la pared que se cubre primero, y en la otra empiezan a {} de ella, el fondo del canal.",
            style.short(back)
        ),
        InsideCorner::TwoChannels => said(
            "An inside corner has two J-channels with their backs in the corner: no set-back.",
            "Una esquina interior lleva dos canales J con la espalda en la esquina: sin retiro.",
        )
        .of(lang)
        .to_owned(),
        InsideCorner::Post if back <= 0.0 => said(
            "At inside corners they run to the drawn corner, less the gap.",
            "En esquinas interiores llegan a la esquina dibujada, menos el espacio.",
        )
        .of(lang)
        .to_owned(),
        InsideCorner::Post => say!(
            lang,
            "At inside corners it is {}.",
            "En esquinas interiores son {}.",
            style.short(back)
        ),
    }
}
