//! What a page asks for, counted before it is drawn: forms within forms multiply.

use std::collections::BTreeMap;

use hayro_interpret::hayro_syntax::content::TypedIter;
use hayro_interpret::hayro_syntax::content::ops::TypedInstruction;
use hayro_interpret::hayro_syntax::object::{ObjectIdentifier, Stream};
use hayro_interpret::hayro_syntax::page::{Page, Resources};

use crate::read::limits::Limits;

/// Deepest nesting of forms that is counted; the interpreter goes no deeper than this either.
const DEEPEST: usize = 50;

/// Instructions of forms by their objects; a form is counted once, however often it is drawn.
type Counted = BTreeMap<(u32, i32), usize>;

/// Whether a page has no more instructions than may be read, its forms counted out.
pub(super) fn bearable(page: &Page, limits: &Limits) -> bool {
    let most = limits.instructions;
    instructions(page.typed_operations(), page.resources(), &mut Counted::new(), most, 0) < most
}

/// Instructions of a stream with those of the forms it draws; `most` where there are that many.
fn instructions(
    mut stream: TypedIter,
    resources: &Resources,
    counted: &mut Counted,
    most: usize,
    depth: usize,
) -> usize {
    let mut out = 0usize;
    while let Some(instruction) = stream.next() {
        out += 1;
        if let TypedInstruction::XObject(drawn) = instruction
            && let Some(form) = resources.get_x_object(drawn.0)
        {
            out = out.saturating_add(of_form(&form, resources, counted, most, depth + 1));
        }
        if out >= most {
            return most;
        }
    }
    out
}

fn of_form(
    form: &Stream,
    outer: &Resources,
    counted: &mut Counted,
    most: usize,
    depth: usize,
) -> usize {
    let ObjectIdentifier { obj_number, gen_number } = form.obj_id();
    let key = (obj_number, gen_number);
    if let Some(known) = counted.get(&key) {
        return *known;
    }
    // A form that draws itself is met again before it is counted: it adds nothing here.
    counted.insert(key, 1);
    let is_form = form.dict().get::<hayro_interpret::hayro_syntax::object::Name>("Subtype");
    if depth > DEEPEST || is_form.is_none_or(|n| n.as_ref() != b"Form") {
        return 1;
    }
    let Ok(data) = form.decoded_data() else { return 1 };
    let own = form.dict().get("Resources").map(Resources::new);
    let inner = own.as_ref().unwrap_or(outer);
    let out = instructions(TypedIter::new(data.as_ref()), inner, counted, most, depth);
    counted.insert(key, out);
    out
}
