//! Entities one after another: what all share, and those of several parts.

use std::collections::BTreeMap;

use opendwg::object::{Entity, EntityCommon, EntityList, Insert, LinetypeRef, Object, Viewport};
use opendwg::{Drawing, Handle};

use super::pairs::Pairs;
use super::{curves, hatch, style, words};

/// Names by handles, as entities refer to them.
pub(super) struct Names {
    pub(super) layers: BTreeMap<Handle, String>,
    pub(super) linetypes: BTreeMap<Handle, String>,
    pub(super) blocks: BTreeMap<Handle, String>,
}

/// Entities written as pairs.
pub(super) struct Writer<'a> {
    source: &'a Drawing,
    names: &'a Names,
    pairs: Pairs,
    /// Whether they stand on the active sheet.
    on_sheet: bool,
    /// Windows of the sheet so far.
    windows: i64,
    texts_lost: usize,
}

impl<'a> Writer<'a> {
    pub(super) fn new(source: &'a Drawing, names: &'a Names, pairs: Pairs) -> Self {
        Writer { source, names, pairs, on_sheet: false, windows: 0, texts_lost: 0 }
    }

    pub(super) fn pairs(&mut self) -> &mut Pairs {
        &mut self.pairs
    }

    /// The pairs, and how many texts could not be decoded.
    pub(super) fn done(self) -> (Pairs, usize) {
        (self.pairs, self.texts_lost)
    }

    /// All entities of a block; `on_sheet` where it is the active sheet.
    pub(super) fn all(&mut self, block: Handle, on_sheet: bool) {
        (self.on_sheet, self.windows) = (on_sheet, 0);
        let source = self.source;
        for handle in source.entities_in(block) {
            if let Some(object) = source.get(handle) {
                self.one(object);
            }
        }
    }

    fn one(&mut self, object: &Object) {
        let Object::Entity { common, entity } = object else { return };
        // The marks round a block's entities are written with the block.
        if matches!(entity, Entity::Block(_) | Entity::EndBlk | Entity::SeqEnd) {
            return;
        }
        let name = object.type_name();
        if let Entity::Unknown(bits) = entity
            && matches!(&*name, "TEXT" | "MTEXT")
        {
            match Some(bits).filter(|_| name == "MTEXT").and_then(words::paragraph_of_bits) {
                Some(text) => {
                    self.pairs.text(0, "MTEXT");
                    self.common(common);
                    words::paragraph(&mut self.pairs, &text);
                }
                None => self.texts_lost += 1,
            }
            return;
        }
        let word = word(entity).unwrap_or(&name);
        self.pairs.text(0, word);
        self.common(common);
        match entity {
            Entity::Insert(insert) => {
                self.insert(insert);
                self.attributes(insert);
            }
            Entity::MInsert(array) => {
                self.insert(&array.insert);
                self.pairs.int(70, array.columns);
                self.pairs.int(71, array.rows);
                self.pairs.float(44, array.column_spacing);
                self.pairs.float(45, array.row_spacing);
                self.attributes(&array.insert);
            }
            Entity::Viewport(window) => self.viewport(window),
            _ => {
                curves::groups(&mut self.pairs, entity);
                if let Some(vertices) = entity.polyline_vertices() {
                    self.vertices(vertices);
                }
                words::groups(&mut self.pairs, entity);
                hatch::groups(&mut self.pairs, entity);
            }
        }
    }

    fn common(&mut self, common: &EntityCommon) {
        let pairs = &mut self.pairs;
        pairs.handle(5, common.obj.handle);
        pairs.text(8, self.names.layers.get(&common.layer).map_or("0", String::as_str));
        if self.on_sheet {
            pairs.int(67, 1);
        }
        match &common.linetype {
            LinetypeRef::ByLayer => {}
            LinetypeRef::ByBlock => pairs.text(6, "BYBLOCK"),
            LinetypeRef::Continuous => pairs.text(6, "CONTINUOUS"),
            LinetypeRef::Handle(h) => {
                pairs.text(6, self.names.linetypes.get(h).map_or("BYLAYER", String::as_str));
            }
        }
        style::color(pairs, &common.color, false);
        style::weight(pairs, common.lineweight);
        if common.invisible {
            pairs.int(60, 1);
        }
    }

    fn insert(&mut self, insert: &Insert) {
        let pairs = &mut self.pairs;
        if insert.seqend.is_some() {
            pairs.int(66, 1);
        }
        pairs.text(2, self.names.blocks.get(&insert.block).map_or("", String::as_str));
        pairs.point(10, insert.insertion);
        let [x, y, z] = insert.scale;
        pairs.float(41, x);
        pairs.float(42, y);
        pairs.float(43, z);
        pairs.angle(50, insert.rotation);
        pairs.extrusion(insert.extrusion);
    }

    /// What an insertion's attributes say, up to their end mark.
    fn attributes(&mut self, insert: &Insert) {
        if insert.seqend.is_none() {
            return;
        }
        for handle in owned(&insert.attribs) {
            match self.source.get(*handle) {
                Some(Object::Entity { common, entity: Entity::Attrib(attribute) }) => {
                    self.pairs.text(0, "ATTRIB");
                    self.common(common);
                    words::attribute(&mut self.pairs, attribute);
                }
                Some(_) => self.texts_lost += 1,
                None => {}
            }
        }
        self.pairs.text(0, "SEQEND");
    }

    fn vertices(&mut self, list: &EntityList) {
        for handle in owned(list) {
            if let Some(Object::Entity { common, entity }) = self.source.get(*handle) {
                self.pairs.text(0, "VERTEX");
                self.common(common);
                curves::vertex(&mut self.pairs, entity);
            }
        }
        self.pairs.text(0, "SEQEND");
    }

    fn viewport(&mut self, window: &Viewport) {
        // The first one of a sheet is the sheet itself (DXF reference, group 69).
        self.windows += 1;
        let pairs = &mut self.pairs;
        pairs.int(69, self.windows);
        pairs.point(10, window.center);
        pairs.float(40, window.width);
        pairs.float(41, window.height);
        pairs.flat(12, window.view_center);
        pairs.point(17, window.view_target);
        pairs.float(45, window.view_height);
        pairs.angle(51, window.twist_angle);
    }
}

/// Handles of the parts; the library has made one list of the older chains.
fn owned(list: &EntityList) -> &[Handle] {
    match list {
        EntityList::Owned(handles) => handles,
        EntityList::Linked { .. } => &[],
    }
}

/// The type as a DXF names it, where the library's name is another.
fn word(entity: &Entity) -> Option<&'static str> {
    Some(match entity {
        Entity::Insert(_) | Entity::MInsert(_) => "INSERT",
        Entity::Polyline2d(_)
        | Entity::Polyline3d(_)
        | Entity::PolyfaceMesh(_)
        | Entity::PolygonMesh(_) => "POLYLINE",
        Entity::Face3d(_) => "3DFACE",
        Entity::Dimension(d) => words::dimension_word(d),
        Entity::MultiLeader(_) => "MULTILEADER",
        _ => return None,
    })
}
