//! The agreed layers, and names with wildcards.

use crate::model::linework::Role;

/// The agreed layers: field order of the US National CAD Standard (discipline, major, minor; the deck's
/// from memory).
pub const AGREED_LAYERS: [(Role, &str); 30] = [
    (Role::Wall, "A-WALL-OTLN"),
    (Role::Bare, "A-WALL-BASE"),
    (Role::Band, "A-WALL-BAND"),
    (Role::Joint, "A-WALL-JNTC"),
    (Role::Window, "A-GLAZ"),
    (Role::Window, "A-GLAZ-*"),
    (Role::Door, "A-DOOR"),
    (Role::Door, "A-DOOR-*"),
    (Role::Roof, "A-ROOF-OTLN"),
    (Role::Roof, "L-SITE-DECK"),
    (Role::MountingBlock, "A-ELEV-MBLK"),
    (Role::Obstacle, "A-ELEV-OBST"),
    (Role::Level, "A-FLOR-LEVL"),
    (Role::Grade, "C-TOPO-PROF"),
    (Role::InsideCorner, "A-WALL-CNRI"),
    (Role::CornerTag, "A-WALL-IDEN"),
    (Role::Frame, "A-ELEV-FRAM"),
    (Role::Title, "A-ELEV-IDEN"),
    (Role::Texture, "A-ELEV-PATT"),
    (Role::Texture, "A-WALL-PATT"),
    (Role::Dimension, "A-ANNO-DIMS"),
    (Role::Ignore, "A-GLAZ-IDEN"),
    (Role::Ignore, "A-DOOR-IDEN"),
    (Role::Ignore, "A-ANNO-*"),
    (Role::Ignore, "DEFPOINTS"),
    (Role::Ignore, "A-DETL*"),
    (Role::Ignore, "A-ROOF*"),
    (Role::Ignore, "A-ELEV"),
    (Role::Ignore, "A-ELEV-OTLN"),
    (Role::Ignore, "Z-*"),
];

/// Whether an agreed layer holds what names things rather than the things: its minor field is that of
/// identification, as `A-GLAZ-IDEN` of window tags.
pub(super) fn is_identification(name: &str) -> bool {
    name.split('-').skip(2).any(|field| field.eq_ignore_ascii_case("IDEN"))
}

/// Whether `name` matches `pattern`, where `*` stands for any run of characters and `?` for one.
pub fn wildcard(pattern: &str, name: &str) -> bool {
    let (p, n): (Vec<char>, Vec<char>) = (pattern.chars().collect(), name.chars().collect());
    let (mut i, mut j, mut star) = (0, 0, None);
    while j < n.len() {
        match p.get(i) {
            Some('*') => {
                star = Some((i, j));
                i += 1;
            }
            Some(c) if *c == '?' || *c == n[j] => {
                i += 1;
                j += 1;
            }
            _ => match star {
                Some((si, sj)) => {
                    i = si + 1;
                    j = sj + 1;
                    star = Some((si, sj + 1));
                }
                None => return false,
            },
        }
    }
    p[i..].iter().all(|c| *c == '*')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wildcards() {
        assert!(wildcard("*", ""));
        assert!(wildcard("a*b*c", "axxbyyc"));
        assert!(!wildcard("a?c", "ac"));
        assert!(!wildcard("a*b", "abc"));
    }
}
