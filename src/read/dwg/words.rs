//! Texts, attributes and dimensions.

use opendwg::bits::BitReader;
use opendwg::object::{Attrib, DimKind, Dimension, Entity, MText, RawObject, Text};

use super::pairs::Pairs;

/// The pairs of such an entity; none for another.
pub(super) fn groups(pairs: &mut Pairs, entity: &Entity) {
    match entity {
        Entity::Text(text) => line(pairs, text, 73),
        Entity::MText(text) => paragraph(pairs, text),
        Entity::Dimension(dimension) => self::dimension(pairs, dimension),
        _ => {}
    }
}

/// An attribute as an insertion has it.
pub(super) fn attribute(pairs: &mut Pairs, attribute: &Attrib) {
    line(pairs, &attribute.text, 74);
    pairs.text(2, &attribute.tag);
    pairs.int(70, i64::from(attribute.flags));
    // One of several lines holds them as a paragraph, which a DXF embeds in it.
    if let Some(paragraph) = &attribute.mtext {
        pairs.text(101, "Embedded Object");
        pairs.text(1, &paragraph.mtext.contents);
    }
}

/// A line of text; where it stands upright is in group 73, in 74 for an attribute (DXF reference).
fn line(pairs: &mut Pairs, text: &Text, upright: i32) {
    let [.., z] = text.insertion;
    pairs.point(10, text.insertion);
    if let Some([x, y]) = text.alignment {
        pairs.point(11, [x, y, z]);
    }
    pairs.float(40, text.height);
    pairs.text(1, &text.value);
    pairs.angle(50, text.rotation);
    pairs.int(71, text.generation);
    pairs.int(72, text.horizontal_alignment);
    pairs.int(upright, text.vertical_alignment);
    pairs.extrusion(text.extrusion);
}

/// A paragraph, its lines and codes as they stand.
pub(super) fn paragraph(pairs: &mut Pairs, text: &MText) {
    pairs.point(10, text.insertion);
    pairs.point(11, text.x_axis_dir);
    pairs.float(40, text.text_height);
    pairs.int(71, text.attachment);
    pairs.float(44, text.line_spacing_factor);
    pairs.text(1, &text.contents);
    pairs.extrusion(text.extrusion);
}

/// A paragraph that the library keeps as bits, as where its background has a sort of color that it does
/// not know: what comes before that is read. `None` where it is none of R2007 or later, or broken.
pub(super) fn paragraph_of_bits(raw: &RawObject) -> Option<MText> {
    let (strings, bits) = raw.strings.as_ref()?;
    let contents = BitReader::with_bit_limit(strings, *bits).read_tu().ok()?;
    let mut data = BitReader::with_bit_limit(&raw.data, raw.data_bits);
    let insertion = data.read_3bd().ok()?;
    let extrusion = data.read_3bd().ok()?;
    let direction = data.read_3bd().ok()?;
    let [width, _, height] = [data.read_bd(), data.read_bd(), data.read_bd()];
    let mut text = MText::new(insertion, height.ok()?, width.ok()?, &contents);
    text.extrusion = extrusion;
    text.x_axis_dir = direction;
    text.attachment = data.read_bs().ok()?;
    // Between: which way it is written, its drawn height and width, and how its lines stand apart.
    data.read_bs().ok()?;
    data.read_bd().ok()?;
    data.read_bd().ok()?;
    data.read_bs().ok()?;
    text.line_spacing_factor = data.read_bd().ok()?;
    Some(text)
}

/// The type of a dimension as a DXF names it.
pub(super) fn dimension_word(dimension: &Dimension) -> &'static str {
    match dimension.kind {
        DimKind::ArcLength { .. } => "ARC_DIMENSION",
        DimKind::LargeRadial { .. } => "LARGE_RADIAL_DIMENSION",
        _ => "DIMENSION",
    }
}

/// A dimension's points; its sort in group 70 (DXF reference): 0 turned, 1 aligned, 2 and 5 angles,
/// 3 diameter, 4 radius, 6 ordinate.
fn dimension(pairs: &mut Pairs, dimension: &Dimension) {
    let common = &dimension.common;
    let mut put = |sort: i64, at: &[(i32, [f64; 3])]| {
        pairs.int(70, sort);
        at.iter().for_each(|(code, point)| pairs.point(*code, *point));
    };
    match &dimension.kind {
        DimKind::Linear { ext1, ext2, def_point, rotation, .. } => {
            put(0, &[(10, *def_point), (13, *ext1), (14, *ext2)]);
            pairs.angle(50, *rotation);
        }
        DimKind::Aligned { ext1, ext2, def_point, .. } => {
            put(1, &[(10, *def_point), (13, *ext1), (14, *ext2)]);
        }
        DimKind::Angular2Line { line1, line2, .. } => {
            let ([a, b], [c, d]) = (line1, line2);
            put(2, &[(13, *a), (14, *b), (15, *c), (10, *d)]);
        }
        DimKind::Diameter { chord_point, far_chord_point, .. } => {
            put(3, &[(15, *chord_point), (10, *far_chord_point)]);
        }
        DimKind::Radius { center, chord_point, .. } => {
            put(4, &[(10, *center), (15, *chord_point)]);
        }
        DimKind::Angular3Pt { def_point, ext1, ext2, vertex } => {
            put(5, &[(10, *def_point), (13, *ext1), (14, *ext2), (15, *vertex)]);
        }
        DimKind::Ordinate { def_point, feature_location, leader_endpoint, .. } => {
            put(6, &[(10, *def_point), (13, *feature_location), (14, *leader_endpoint)]);
        }
        _ => {}
    }
    pairs.float(42, common.measurement);
    if !common.user_text.is_empty() {
        pairs.text(1, &common.user_text);
    }
    pairs.extrusion(common.extrusion);
}
