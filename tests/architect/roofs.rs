//! Designs what stands over a plane: roofs, a lower roof, skylights; and windows in the stone.

use super::design::Sizes;
use super::dice::Dice;
use super::habit::{Habit, Style};
use super::house::{Plane, Porch, Top};
use super::shape::{Area, Rect};

/// Where a plane stands.
pub(super) struct Place {
    pub(super) x0: f64,
    pub(super) x1: f64,
    /// Whether it ends the house at left and right.
    pub(super) ends: [bool; 2],
    pub(super) stories: usize,
    pub(super) shift: f64,
}

pub(super) fn top(style: &Style, sizes: &Sizes, at: &Place, soffit: f64, dice: &mut Dice) -> Top {
    let out = at.ends.map(|end| if end { sizes.overhang } else { 0.0 });
    if style.has(Habit::Gables) && dice.odds(0.65) {
        let peak = soffit + (at.x1 - at.x0) / 2.0 * sizes.slope;
        return Top::Gable { peak, out, depth: style.n(8.0) };
    }
    let fascia = Rect::new(at.x0 - out[0], soffit, at.x1 + out[1], soffit + style.n(7.0));
    let rise = style.n(dice.between(54.0, 110.0));
    let hip =
        if dice.odds(0.5) { style.n(rise / style.per_inch() / sizes.slope * 0.5) } else { 0.0 };
    let inset = [at.ends[0], at.ends[1]].map(|end| if end { hip } else { 0.0 });
    let (f, y) = (fascia, fascia.y1 + rise);
    let roof = vec![[f.x0, f.y1], [f.x1, f.y1], [f.x1 - inset[1], y], [f.x0 + inset[0], y]];
    Top::Eave { fascia, roof }
}

pub(super) fn porch(style: &Style, sizes: &Sizes, at: &Place, dice: &mut Dice) -> Porch {
    let foot = style.n(94.0);
    let (mut x0, mut x1) = (at.x0, at.x1);
    match dice.count(0, 2) {
        0 => x1 = at.x0 + style.n((at.x1 - at.x0) * 0.55 / style.per_inch()),
        1 => x0 = at.x1 - style.n((at.x1 - at.x0) * 0.55 / style.per_inch()),
        _ => {}
    }
    // Eaves reach out where the house ends.
    if x0 == at.x0 && at.ends[0] {
        x0 -= sizes.overhang;
    }
    if x1 == at.x1 && at.ends[1] {
        x1 += sizes.overhang;
    }
    let fascia = Rect::new(x0, foot, x1, foot + style.n(6.0));
    let top = sizes.story + style.n(12.0);
    // A hip where the porch ends in the open, none against the next plane.
    let hip = style.n(dice.pick(&[0.0, 10.0, 14.0]));
    let left = if x0 == at.x0 { 0.0 } else { hip };
    let right = if x1 == at.x1 { 0.0 } else { hip };
    let roof = vec![[x0, fascia.y1], [x1, fascia.y1], [x1 - right, top], [x0 + left, top]];
    Porch { fascia, roof }
}

pub(super) fn skylights(style: &Style, planes: &[Plane], dice: &mut Dice) -> Vec<Rect> {
    let mut out = Vec::new();
    for p in planes {
        let Top::Eave { fascia, roof } = &p.top else { continue };
        let (wide, high) = (style.n(24.0), style.n(26.0));
        let y = fascia.y1 + style.n(16.0);
        let (a, z) = (roof[3][0] + style.n(20.0), roof[2][0] - style.n(20.0));
        let count = dice.count(1, 3);
        let step = (z - a) / count as f64;
        if step > wide * 1.5 && roof[2][1] > y + high {
            out.extend((0..count).map(|i| {
                let x = style.n((a + (i as f64 + 0.3) * step) / style.per_inch());
                Rect::new(x, y, x + wide, y + high)
            }));
        }
    }
    out
}

/// Small windows in the stone, where nothing else is.
pub(super) fn cellar(style: &Style, planes: &[Plane]) -> Vec<Rect> {
    let mut out = Vec::new();
    for p in planes.iter().filter(|p| p.stone >= style.n(34.0)) {
        let x = p.x0 + style.n(16.0);
        let r = Rect::new(x, style.n(10.0), x + style.n(26.0), style.n(24.0));
        let clear = Area::rect(r.grown(style.n(4.0)));
        if (clear.within(&p.masonry).size() - clear.size()).abs() < 1.0 {
            out.push(r);
        }
    }
    out
}
