//! A job file to start from: every setting with its default, commented out and explained.

use toml::Value;

use super::layers::AGREED_LAYERS;
use super::root::Job;
use super::schema;
use crate::model::linework::Role;

/// Width of comment lines.
const WIDTH: usize = 96;

const HEAD: &str = "\
# A job for Lapwright. Every setting stands here with its default, commented out: take the # before
# a key away to change it. Lengths are inches (150), or texts with their unit (\"12'-6\\\"\", \"3810mm\").
";

/// Settings whose default is to be left out, with a value that shows their form.
const EXAMPLES: &[(&str, &str)] = &[
    ("extends", "\"office.toml\""),
    ("skip", "[\"front-3\", \"front-W2\"]"),
    ("join", "[[\"front-1\", \"front-2\"]]"),
    ("model.drawing", "\"plan-2.dxf\""),
    ("model.variant", "\"B\""),
    ("model.mirrored", "false"),
    ("estimate.price_list", "\"prices.csv\""),
    ("taped", "{}"),
    ("drawing.unit", "\"inch\""),
    ("work.walls", "[]"),
    ("drawing.known", "\"0,0 4877,0 = 16'-0\\\"\""),
    ("courses.datum", "-6.0"),
    ("courses.clear_of_roof", "0.5"),
    ("courses.clear_of_ledge", "0.25"),
    ("trim.post_top_gap", "0.25"),
    ("trim.post_below", "0.75"),
    ("trim.starter_gap", "0.25"),
    ("built.courses", "[1, 5]"),
    ("built.pieces", "[\"F1-6-1\", \"F1-6-2\"]"),
    ("zone.name", "\"gable\""),
    ("zone.layers", "[\"A-WALL-SHNG\"]"),
    ("zone.cladding", "\"shingle\""),
    ("zone.region.bottom", "108.0"),
    ("zone.region.elevation", "\"Front\""),
    ("zone.region.left", "0.0"),
    ("zone.region.right", "240.0"),
    ("zone.region.top", "216.0"),
    ("product.width", "8.25"),
    ("product.head_lap", "1.25"),
    ("product.exposure_least", "6.0"),
    ("product.exposure_most", "7.0"),
    ("product.thickness", "0.3125"),
    ("product.outside_post_set_back", "2.0"),
    ("product.outside_post_face", "3.0"),
    ("product.inside_post_set_back", "1.0"),
    ("product.inside_post_face", "2.0"),
    ("product.angled_outside_post_set_back", "2.6875"),
    ("product.angled_inside_post_set_back", "0.3125"),
    ("product.corner_board", "3.5"),
    ("product.inside_corner_board", "1.0"),
    ("boards.butt_gap", "0.125"),
    ("boards.starter", "0.25"),
    ("product.face_height", "4.0"),
    ("stock.length", "150.0"),
    ("stock.carton", "24"),
    ("stock.cost", "18.5"),
    ("product.second_length", "200.0"),
    ("product.second_cost", "1.3"),
    ("product.second_carton", "18"),
    ("product.lap", "1.25"),
    ("product.end_gap", "0.25"),
    ("seams.reuse_halves", "false"),
    ("weather.installed_f", "60.0"),
    ("weather.expansion", "0.000045"),
    ("fasteners.penetration", "1.25"),
    ("fasteners.shortest", "2.5"),
    ("fasteners.shank", "0.12"),
    ("fasteners.post_spacing", "10.0"),
    ("fasteners.channel_spacing", "10.0"),
    ("fasteners.strip_spacing", "10.0"),
    ("trim.pocket", "1.125"),
    ("trim.channel_alone", "1.0"),
    ("takeoff.stand_off", "0.75"),
    ("sheet.scale", "\"1/4\\\" = 1'-0\\\"\""),
];

/// A job file that says nothing but defaults, each explained by its own documentation.
pub fn text() -> String {
    let words = schema::descriptions();
    let defaults = Value::try_from(Job::default()).unwrap_or(Value::Boolean(false));
    let keys = schema::keys();
    let mut out = HEAD.to_owned();
    // Keys of no table stand before the first one.
    let is_bare = |k: &&String| parent(k).is_none() && keys.iter().all(|o| parent(o) != Some(k));
    for key in keys.iter().filter(is_bare) {
        out.push('\n');
        out.push_str(&comment(words.get(key).map_or("", String::as_str)));
        out.push_str(&format!("#{key} = {}\n", value(key, &defaults)));
    }
    for table in tables(&keys) {
        out.push('\n');
        if table == "zone.product" {
            // Either this or `cladding`; its keys stand under [product] with their words.
            out.push_str(&comment(words.get(&table).map_or("", String::as_str)));
            out.push_str("# [zone.product]\n# kind = \"wood\"\n");
            continue;
        }
        out.push_str(&comment(words.get(&table).map_or("", String::as_str)));
        if table == "zone.stock" {
            // Only with a product of its own.
            out.push_str("# [[zone.stock]]\n# length = 150.0\n");
            continue;
        }
        const LISTS: [&str; 12] = [
            "revision",
            "built",
            "elevation",
            "wall",
            "opening",
            "return",
            "angled",
            "band",
            "movement_joint",
            "zone",
            "zone.region",
            "stock",
        ];
        let list = LISTS.contains(&table.as_str());
        out.push_str(&if list { format!("#[[{table}]]\n") } else { format!("[{table}]\n") });
        for path in keys.iter().filter(|p| parent(p) == Some(&table)) {
            if keys.iter().any(|k| parent(k) == Some(path)) {
                continue;
            }
            out.push_str(&comment(words.get(path).map_or("", String::as_str)));
            let key = path.rsplit('.').next().unwrap_or(path);
            out.push_str(&format!("#{key} = {}\n", value(path, &defaults)));
        }
    }
    out
}

pub(super) fn parent(path: &str) -> Option<&str> {
    path.rsplit_once('.').map(|(table, _)| table)
}

/// Tables in the job's own order, what everyone sets first: those that hold keys of their own.
fn tables(keys: &[String]) -> Vec<String> {
    let holds = |t: &&String| keys.iter().any(|k| parent(k) == Some(t));
    keys.iter().filter(holds).cloned().collect()
}

pub(super) fn value(path: &str, defaults: &Value) -> String {
    let found = path.split('.').try_fold(defaults, |v, key| v.get(key));
    if let Some(example) = EXAMPLES.iter().find(|e| e.0 == path) {
        return example.1.to_owned();
    }
    if let Some(v) = found {
        return v.to_string();
    }
    match path.split_once('.') {
        Some(("layers", role)) => {
            let names = agreed_names(role);
            Value::Array(names.into_iter().map(Value::String).collect()).to_string()
        }
        Some(("elevation", "region")) => "[0.0, 0.0, 480.0, 240.0]".to_owned(),
        Some(("elevation", "layers")) => "[\"front\"]".to_owned(),
        Some(("elevation", "turn")) => "180".to_owned(),
        Some(("elevation", "known")) => "\"100,400 325,400 = 25'-0\\\"\"".to_owned(),
        Some(("elevation", "siding_layer")) => "\"A-WALL-PATT\"".to_owned(),
        Some(("wall" | "opening", "elevation")) => "\"FRONT ELEVATION\"".to_owned(),
        Some(("wall", "outline")) => "[[0.0, 0.0], [240.0, 96.0]]".to_owned(),
        Some(("opening", "outline")) => "[[40.0, 36.0], [76.0, 84.0]]".to_owned(),
        Some(("opening", "kind")) => "\"window\"".to_owned(),
        Some(("elevation", "skip")) => "false".to_owned(),
        Some(("return", "corner")) => "\"front-1/right\"".to_owned(),
        Some(("return", "width")) => "24.0".to_owned(),
        Some(("return", "height")) => "96.0".to_owned(),
        Some(("band", "bottom")) => "96.0".to_owned(),
        Some(("band", "top")) => "104.0".to_owned(),
        Some(("band", "left")) => "0.0".to_owned(),
        Some(("band", "right")) => "240.0".to_owned(),
        Some(("movement_joint", "at")) => "120.0".to_owned(),
        Some(("angled", "wall")) => "\"front-2\"".to_owned(),
        Some(("angled", "width")) => "68.0".to_owned(),
        Some(("angled", "openings")) => "{ front-W1 = 16.0 }".to_owned(),
        _ => "\"\"".to_owned(),
    }
}

/// The agreed layer names of a role, by the role's word; none for a word that is no role.
fn agreed_names(role: &str) -> Vec<String> {
    let word = |r: &Role| serde_json::to_value(r).ok();
    let is = |r: &&(Role, &str)| word(&r.0).is_some_and(|w| w == role);
    AGREED_LAYERS.iter().filter(is).map(|r| r.1.to_owned()).collect()
}

/// Text as comment lines.
pub(super) fn comment(text: &str) -> String {
    let mut out = String::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        if !line.is_empty() && line.chars().count() + word.chars().count() + 3 > WIDTH {
            out.push_str(&format!("# {line}\n"));
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    if !line.is_empty() {
        out.push_str(&format!("# {line}\n"));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::file;

    #[test]
    fn the_job_file_says_the_defaults_commented_out_or_not() {
        let text = text();
        assert_eq!(file::parse(&text, "job.toml").unwrap(), Job::default());
        // A comment line has a blank after its mark, a setting has none.
        let bare: Vec<String> = text
            .lines()
            .map(|l| match l.strip_prefix('#') {
                // No other file is at hand.
                Some(key) if key.starts_with("extends") => String::new(),
                Some(key) if !key.starts_with(' ') => key.to_owned(),
                _ => l.to_owned(),
            })
            .collect();
        // What only boards have is refused for panels, corner boards among it, and a second length
        // beside `[[stock]]`.
        let of_boards = |l: &&String| {
            let keys = [
                "second_",
                "width = 8.25",
                "head_lap",
                "exposure_",
                "thickness",
                "butt_gap",
                "starter = 0.25",
                "corner_board",
                "inside_corner_board",
            ];
            keys.iter().any(|k| l.starts_with(k))
        };
        let e = format!("{:?}", file::parse(&bare.join("\n"), "job.toml").unwrap_err().0.kind);
        let of_boards_alone =
            "OfOtherSiding { key: \"product.exposure_least\", siding: \"foam-backed\" }";
        assert!(e.contains(of_boards_alone), "{e}");
        let bare: Vec<String> = bare.iter().filter(|l| !of_boards(l)).cloned().collect();
        let mut job = file::parse(&bare.join("\n"), "job.toml").unwrap();
        assert_eq!((job.lap(), job.end_gap()), (1.25, 0.25));
        // The usual posts stand as the file's examples say: 2 in back from an outside corner and 1 in from an inside one.
        let set_backs = job.set_backs();
        assert_eq!((set_backs.outside, set_backs.inside), (2.0, 1.0));
        assert_eq!((job.elevation.len(), job.zone.len()), (1, 1));
        assert!(job.drawing.known.is_some() && job.courses.datum.is_some());
        assert_eq!((job.returns.len(), job.angled.len()), (1, 1));
        without_by_hand(&mut job);
        assert_eq!(job.model.variant.as_deref(), Some("B"));
        job.model = Default::default();
        job.drawing = Default::default();
        (job.courses.datum, job.sheet.scale) = (None, None);
        (job.courses.clear_of_roof, job.courses.clear_of_ledge) = (None, None);
        assert_eq!(std::mem::take(&mut job.stocks).len(), 1);
        without_revisions(&mut job);
        (job.product.lap, job.product.end_gap, job.product.face_height) = (None, None, None);
        without_posts(&mut job);
        (job.trim.pocket, job.trim.channel_alone, job.takeoff.stand_off) = (None, None, None);
        let trim = &mut job.trim;
        (trim.post_top_gap, trim.post_below, trim.starter_gap) = (None, None, None);
        job.weather = Default::default();
        job.fasteners = Default::default();
        job.estimate = Default::default();
        let roles = std::mem::take(&mut job.layers);
        for (role, names) in roles {
            assert_eq!(names, Job::default().patterns(role));
        }
        job.trim.colors.clear();
        assert_eq!(job, Job::default());
    }

    /// Takes out the file's examples of revisions, and of what hangs already.
    fn without_revisions(job: &mut Job) {
        assert!(!job.revision.is_empty() && !job.built.is_empty());
        job.revision.clear();
        job.built.clear();
    }

    /// Takes out what the file's examples say of posts.
    fn without_posts(job: &mut Job) {
        let posts = &mut job.product;
        (posts.outside_post_set_back, posts.outside_post_face) = (None, None);
        (posts.inside_post_set_back, posts.inside_post_face) = (None, None);
        posts.angled_outside_post_set_back = None;
        posts.angled_inside_post_set_back = None;
    }

    /// Takes out what the file's examples give by hand.
    fn without_by_hand(job: &mut Job) {
        job.zone.clear();
        job.elevation.clear();
        job.movement_joints.clear();
        assert_eq!((job.skip.len(), job.join.len()), (2, 1));
        assert_eq!((job.walls.len(), job.openings.len()), (1, 1));
        (job.skip, job.join) = (Vec::new(), Vec::new());
        (job.walls, job.openings) = (Vec::new(), Vec::new());
        job.returns.clear();
        job.angled.clear();
        job.bands.clear();
    }

    #[test]
    fn every_key_of_the_schema_is_there_and_explained() {
        let text = text();
        let words = schema::descriptions();
        assert!(words.len() > 70);
        for key in schema::keys() {
            let last = key.rsplit('.').next().unwrap();
            assert!(
                text.contains(&format!("#{last} = ")) || text.contains(&format!("[{key}]")),
                "{key}"
            );
            assert!(words.get(&key).is_some_and(|w| !w.is_empty()), "{key} is not explained");
        }
    }
}
