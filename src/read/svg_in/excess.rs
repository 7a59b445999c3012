//! What an SVG may ask for at most: neither the XML parser nor the resolver of styles and uses bounds
//! what a file of some kilobytes makes of it. The figures are of our own choosing: no source.

use crate::finding::Refusal;
use crate::finding::drawing::{DrawingFinding, SvgExcess};

/// Most levels of elements in elements, uses counted through.
pub(super) const LEVELS: usize = 400;
/// Most attributes of one element: each is compared with those before it.
pub(super) const ATTRIBUTES: usize = 200;
/// Most attributes of all elements.
pub(super) const ALL_ATTRIBUTES: usize = 4_000_000;
/// Most namespaces declared: an element that declares one takes over all that are in force.
pub(super) const NAMESPACES: usize = 100;
/// Most elements that declare a namespace.
pub(super) const DECLARING: usize = 1_000_000;
/// Most entities declared.
pub(super) const ENTITIES: usize = 1_000;
/// Most references to entities: each is looked for among those declared.
pub(super) const REFERENCES: usize = 200_000;
/// Most letters that entities stand for, references counted out.
pub(super) const ENTITY_LETTERS: usize = 16_000_000;
/// Most comparisons of style rules with elements.
pub(super) const STYLES: usize = 300_000_000;
/// Most letters of attributes that are handed on, uses counted out.
pub(super) const LETTERS_OF_ATTRIBUTES: usize = 200_000_000;
/// Most letters of texts that are measured, uses counted out.
pub(super) const LETTERS: usize = 500_000;

/// Letters of one text that are measured: where it stands shows in the first of them.
pub(super) const LETTERS_OF_TEXT: usize = 1_000;

/// A refusal for one of these.
pub(super) fn refused(of: SvgExcess, most: usize, line: Option<usize>) -> Refusal {
    Refusal::new(DrawingFinding::SvgTooBig { of, most, line })
}
