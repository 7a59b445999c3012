//! Designs a view: planes, boards, openings, roofs.

use super::dice::Dice;
use super::habit::{Habit, Style};
use super::house::{Board, BoardKind, Plane, Top, View};
use super::roofs::{Place, cellar, porch, skylights, top};
use super::shape::{Area, P, Rect, bounds};

/// Sizes that all views of a house share.
#[derive(Clone, Debug)]
pub(crate) struct Sizes {
    pub(super) story: f64,
    stories: usize,
    pub(crate) pitch: f64,
    casing: f64,
    corner: f64,
    band: f64,
    frieze: f64,
    stone: f64,
    water_table: f64,
    pub(super) overhang: f64,
    pub(super) slope: f64,
}

impl Sizes {
    pub(crate) fn of(style: &Style, dice: &mut Dice) -> Self {
        let n = |dice: &mut Dice, low: f64, high: f64| style.n(dice.between(low, high));
        let has = |h: Habit| style.has(h);
        let metric = has(Habit::Metric);
        Sizes {
            story: n(dice, 106.0, 120.0),
            stories: if has(Habit::Stories) { dice.pick(&[2, 2, 2, 3]) } else { 1 },
            pitch: if metric {
                dice.pick(&[100.0, 120.0, 125.0, 150.0, 180.0])
            } else {
                dice.pick(&[4.0, 5.0, 6.0, 7.0, 8.0])
            },
            casing: if has(Habit::Casings) { n(dice, 3.5, 5.5) } else { 0.0 },
            corner: if has(Habit::CornerBoards) { n(dice, 3.5, 6.0) } else { 0.0 },
            band: if has(Habit::Bands) { n(dice, 7.0, 11.0) } else { 0.0 },
            frieze: if has(Habit::Friezes) { n(dice, 6.0, 10.0) } else { 0.0 },
            stone: if has(Habit::Stone) { n(dice, 24.0, 42.0) } else { 0.0 },
            water_table: if dice.odds(0.6) { n(dice, 2.5, 4.0) } else { 0.0 },
            overhang: n(dice, 12.0, 20.0),
            slope: dice.pick(&[5.0, 6.0, 7.0, 8.0, 9.0, 10.0]) / 12.0,
        }
    }

    /// Where siding begins.
    fn sided_from(&self) -> f64 {
        if self.stone > 0.0 { self.stone + self.water_table } else { 0.0 }
    }
}

/// A view of the house.
pub(crate) fn view(style: &Style, sizes: &Sizes, title: String, dice: &mut Dice) -> View {
    let count = if style.has(Habit::Planes) { dice.pick(&[2, 2, 3]) } else { 1 };
    let main = if count == 3 { 1 } else { dice.count(0, count - 1) };
    let mut planes = Vec::new();
    let mut x = 0.0;
    for i in 0..count {
        let wide = if i == main { dice.between(230.0, 420.0) } else { dice.between(130.0, 220.0) };
        let x1 = x + style.n(wide);
        let stories = if i != main && sizes.stories > 1 && dice.odds(0.5) {
            sizes.stories - 1
        } else {
            sizes.stories
        };
        let shift = sizes.pitch * [0.0, 0.4, 0.7][(i + 3 - main) % 3];
        let place = Place { x0: x, x1, ends: [i == 0, i + 1 == count], stories, shift };
        planes.push(plane(style, sizes, &place, i == main, dice));
        x = x1;
    }
    let mut out = View {
        title,
        planes,
        floors: (0..=sizes.stories).map(|s| s as f64 * sizes.story).collect(),
        grade: grade(style, x, dice),
        skylights: Vec::new(),
        cellar: Vec::new(),
        part_of: None,
        room: Rect::new(0.0, 0.0, 0.0, 0.0),
    };
    if style.has(Habit::Skylights) {
        out.skylights = skylights(style, &out.planes, dice);
    }
    if style.has(Habit::Straddling) {
        out.cellar = cellar(style, &out.planes);
    }
    out.room = room(&out);
    out
}

/// A part of a view, drawn again.
pub(crate) fn part(of: &View, at: usize, title: String, plane: usize) -> View {
    let p = of.planes[plane].clone();
    let inside = |r: &&Rect| r.x0 > p.x0 && r.x1 < p.x1;
    let cut = |g: &[P]| {
        let (a, z) = (p.x0 - 30.0, p.x1 + 30.0);
        vec![[a, height(g, a)], [z, height(g, z)]]
    };
    let mut out = View {
        title,
        floors: of.floors.clone(),
        grade: cut(&of.grade),
        skylights: of.skylights.iter().filter(inside).copied().collect(),
        cellar: of.cellar.iter().filter(inside).copied().collect(),
        planes: vec![p],
        part_of: Some(at),
        room: of.room,
    };
    out.room = room(&out);
    out
}

/// Height of a line at a place.
pub(crate) fn height(line: &[P], x: f64) -> f64 {
    for w in line.windows(2) {
        if x >= w[0][0] && x <= w[1][0] {
            return w[0][1] + (x - w[0][0]) / (w[1][0] - w[0][0]) * (w[1][1] - w[0][1]);
        }
    }
    line.last().map_or(0.0, |p| p[1])
}

fn room(view: &View) -> Rect {
    let mut points: Vec<P> = view.grade.clone();
    for p in &view.planes {
        points.extend(&p.outline);
        if let Top::Eave { roof, fascia } = &p.top {
            points.extend(roof);
            points.extend(fascia.corners());
        }
    }
    bounds(&points)
}

fn grade(style: &Style, x1: f64, dice: &mut Dice) -> Vec<P> {
    let fall = if dice.odds(0.5) { 0.0 } else { style.n(dice.between(4.0, 20.0)) };
    let out = style.n(60.0);
    let y = -style.n(8.0);
    let ends = if dice.odds(0.5) { [y, y - fall] } else { [y - fall, y] };
    vec![[-out, ends[0]], [x1 / 2.0, (ends[0] + ends[1]) / 2.0], [x1 + out, ends[1]]]
}

fn plane(style: &Style, sizes: &Sizes, at: &Place, is_main: bool, dice: &mut Dice) -> Plane {
    let soffit = at.stories as f64 * sizes.story;
    let top = top(style, sizes, at, soffit, dice);
    let (x0, x1) = (at.x0, at.x1);
    let mut outline = vec![[x0, 0.0], [x1, 0.0], [x1, soffit], [x0, soffit]];
    if let Top::Gable { peak, .. } = top {
        outline.insert(3, [(x0 + x1) / 2.0, peak]);
    }
    let mut out = Plane {
        x0,
        x1,
        foot: 0.0,
        soffit,
        top,
        outline,
        phase: sizes.sided_from() + at.shift,
        stone: sizes.stone,
        boards: Vec::new(),
        openings: Vec::new(),
        porch: None,
        siding: Area::none(),
        masonry: Area::none(),
    };
    let doors = if is_main { 1 } else { 0 };
    out.openings = super::openings::placed(style, &Rooms::of(style, sizes, at, &out), doors, dice);
    if style.has(Habit::Porch) && is_main && at.stories > 1 {
        out.porch = Some(porch(style, sizes, at, dice));
    }
    finish(&mut out, sizes, at);
    out
}

/// What openings are placed by.
pub(crate) struct Rooms {
    /// From where to where openings may stand, casings included.
    pub(crate) x: [f64; 2],
    pub(crate) stories: usize,
    pub(crate) story: f64,
    pub(crate) casing: f64,
    /// Where siding begins.
    pub(crate) from: f64,
    /// A window may go across the band over the first story.
    pub(crate) band: bool,
    /// Soffit and peak of a gable that has room for a window.
    pub(crate) gable: Option<[f64; 2]>,
}

impl Rooms {
    fn of(style: &Style, sizes: &Sizes, at: &Place, plane: &Plane) -> Self {
        let keep = sizes.corner + style.n(14.0);
        let gable = match plane.top {
            Top::Gable { peak, .. } => Some([plane.soffit + sizes.band, peak]),
            Top::Eave { .. } => None,
        };
        Rooms {
            x: [at.x0 + keep, at.x1 - keep],
            stories: at.stories,
            story: sizes.story,
            casing: sizes.casing,
            from: sizes.sided_from(),
            band: sizes.band > 0.0 && at.stories > 1 && !style.has(Habit::Porch),
            gable,
        }
    }
}

/// Boards, stone, and what is left to side.
fn finish(plane: &mut Plane, sizes: &Sizes, at: &Place) {
    let whole = Area::of(&plane.outline);
    let mut taken = plane.openings.iter().fold(Area::none(), |a, o| a.and(&Area::rect(o.outer)));
    if let Some(p) = &plane.porch {
        taken = taken.and(&Area::rect(p.fascia)).and(&Area::of(&p.roof));
    }
    let (x0, x1) = (at.x0, at.x1);
    let stone = Area::rect(Rect::new(x0, 0.0, x1, sizes.stone));
    if sizes.stone > 0.0 {
        plane.masonry = stone.minus(&taken);
    }
    let mut left = whole.minus(&taken).minus(&stone);
    if sizes.stone == 0.0 {
        left = whole.minus(&taken);
    }
    let mut boards = Vec::new();
    let mut take = |kind: BoardKind, shape: &Area| {
        let area = shape.within(&left);
        if !area.is_empty() {
            left = left.minus(&area);
            boards.push(Board { kind, area });
        }
    };
    if sizes.stone > 0.0 && sizes.water_table > 0.0 {
        let r = Rect::new(x0, sizes.stone, x1, sizes.sided_from());
        take(BoardKind::WaterTable, &Area::rect(r));
    }
    if sizes.frieze > 0.0 {
        take(BoardKind::Frieze, &under_top(plane.top.clone(), at, plane.soffit, sizes, &whole));
    }
    if sizes.corner > 0.0 {
        let tall = plane.soffit * 2.0;
        take(BoardKind::Corner, &Area::rect(Rect::new(x0, 0.0, x0 + sizes.corner, tall)));
        take(BoardKind::Corner, &Area::rect(Rect::new(x1 - sizes.corner, 0.0, x1, tall)));
    }
    if sizes.band > 0.0 {
        for s in 1..at.stories {
            let y = s as f64 * sizes.story;
            take(BoardKind::Band, &Area::rect(Rect::new(x0, y, x1, y + sizes.band)));
        }
        if matches!(plane.top, Top::Gable { .. }) {
            let y = plane.soffit;
            take(BoardKind::Band, &Area::rect(Rect::new(x0, y, x1, y + sizes.band)));
        }
    }
    plane.boards = boards;
    plane.siding = left;
}

/// The strip under a soffit or along rakes.
fn under_top(top: Top, at: &Place, soffit: f64, sizes: &Sizes, whole: &Area) -> Area {
    match top {
        Top::Eave { .. } => Area::rect(Rect::new(at.x0, soffit - sizes.frieze, at.x1, soffit)),
        Top::Gable { peak, .. } => {
            let mid = (at.x0 + at.x1) / 2.0;
            let slope = (peak - soffit) / (mid - at.x0);
            let down = sizes.frieze * (1.0 + slope * slope).sqrt();
            let below = [
                [at.x0, 0.0],
                [at.x1, 0.0],
                [at.x1, soffit - down],
                [mid, peak - down],
                [at.x0, soffit - down],
            ];
            whole.minus(&Area::of(&below))
        }
    }
}
