//! One of many houses, from its files to what is kept of it.

use std::path::PathBuf;

use super::before::finished;
use super::pool::unless_it_fails;
use crate::clean::terminal;
use crate::cli::args::Layout;
use crate::cli::house::{House, ready, written};
use crate::cli::loading::Loaded;
use crate::cli::outcome::Outcome;
use crate::cli::terminal::{refused, tell, tell_line, tell_recovered};
use crate::finding::{Finding, Findings, Refusal};
use crate::layout::houses::{HouseFigures, HouseTold, HowItWent};
use crate::pipeline;
use crate::units::LengthStyle;
use crate::wording::findings::words;
use crate::wording::houses as said;
use crate::write::alarm::alarm;

/// How a house ends, the worst last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum End {
    /// Done.
    #[default]
    Done,
    /// Done, with warnings, where they are asked for.
    Warned,
    /// Its layout breaks a rule of the check.
    CheckFailed,
    /// It has no layout.
    Refused,
}

impl End {
    /// The exit code of a run whose worst end this is.
    pub(super) fn code(self) -> u8 {
        match self {
            End::Done => Outcome::Done.code(),
            End::Warned => Outcome::Warned.code(),
            End::CheckFailed => Outcome::CheckFailed.code(),
            End::Refused => 1,
        }
    }
}

/// What became of a house.
pub(super) struct Done {
    /// What is kept of it.
    pub(super) told: HouseTold,
    /// How it ends.
    pub(super) end: End,
    /// The price list of its job.
    pub(super) price_list: Option<PathBuf>,
    /// Lengths as its job writes them.
    pub(super) style: LengthStyle,
    /// Why it was refused, and what else was found.
    refused: Option<(Refusal, Findings)>,
    /// What is told of rules that are broken; empty where none is.
    alarm: String,
}

impl Done {
    /// Tells standard error of what went wrong, and gives what is kept.
    pub(super) fn tell(mut self) -> Self {
        let head = || tell_line(&said::of_house(&terminal(&self.told.name)));
        if let Some((refusal, findings)) = self.refused.take() {
            head();
            refused(&refusal, &findings, self.style);
        }
        if !self.alarm.is_empty() {
            head();
            tell(&std::mem::take(&mut self.alarm));
        }
        self
    }

    /// The same without what is told once: only figures stay.
    fn bare(told: HouseTold, end: End) -> Self {
        let (price_list, style) = (None, LengthStyle::default());
        Done { told, end, price_list, style, refused: None, alarm: String::new() }
    }
}

/// Lays a house out, unless it stands finished in its folder.
pub(super) fn laid(house: &House, a: &Layout) -> Done {
    let job = house.reading.job.as_ref().map_or_else(String::new, |j| j.display().to_string());
    let told = |how, figures| HouseTold {
        name: house.name.clone(),
        drawing: house.reading.drawing.display().to_string(),
        job: job.clone(),
        folder: house.place.folder.display().to_string(),
        how,
        figures,
    };
    let mut findings = Findings::default();
    let made = unless_it_fails(|| figures(house, a, &mut findings));
    match made {
        Some(Ok(f)) => Done {
            price_list: f.price_list,
            style: f.style,
            alarm: f.alarm,
            ..Done::bare(told(f.how, Some(f.figures)), f.end)
        },
        Some(Err((refusal, style))) => {
            let (code, message) = code_and_message(&refusal.0, style);
            let told = told(HowItWent::Refused { code, message }, None);
            Done { refused: Some((refusal, findings)), style, ..Done::bare(told, End::Refused) }
        }
        None => {
            let (code, message) = (said::FAILED_CODE.to_owned(), said::FAILED.to_owned());
            Done::bare(told(HowItWent::Refused { code, message }, None), End::Refused)
        }
    }
}

fn code_and_message(finding: &Finding, style: LengthStyle) -> (String, String) {
    (finding.code().word().to_owned(), words(finding, style).message)
}

/// A house that is laid out, now or before.
struct Figures {
    how: HowItWent,
    figures: HouseFigures,
    end: End,
    price_list: Option<PathBuf>,
    style: LengthStyle,
    alarm: String,
}

// The clock is for the table of houses alone: nothing that is laid out depends on it.
#[expect(clippy::disallowed_methods)]
fn figures(
    house: &House,
    a: &Layout,
    findings: &mut Findings,
) -> Result<Figures, (Refusal, LengthStyle)> {
    let started = std::time::Instant::now();
    if let Some(Refusal(fault)) = &house.fault {
        return Err((Refusal(fault.clone()), LengthStyle::default()));
    }
    tell_recovered(&house.place.folder);
    // An option that does not fit this house's job stops this house alone.
    let ready =
        ready(house, a, findings).and_then(|r| r).map_err(|r| (r, LengthStyle::default()))?;
    let style = ready.loaded.job.sheet.lengths;
    let price_list = ready.loaded.price_list();
    if let Some(figures) = finished(&ready, &house.name) {
        let end = match () {
            () if figures.broken > 0 => End::CheckFailed,
            () if a.strict && figures.warnings > 0 => End::Warned,
            () => End::Done,
        };
        return Ok(Figures {
            how: HowItWent::Before,
            figures,
            end,
            price_list,
            style,
            alarm: String::new(),
        });
    }
    let lay = |l: &Loaded| pipeline::layout(&l.bytes, &l.name, &l.job, findings, &mut |_| {});
    let sets = written(&ready, a, lay).map_err(|r| (r, style))?.sets;
    let end = match Outcome::of(&sets, findings, a.strict) {
        Outcome::Done => End::Done,
        Outcome::Warned => End::Warned,
        Outcome::CheckFailed => End::CheckFailed,
    };
    let alarm = sets.iter().map(|s| alarm(&s.layout)).collect();
    let layouts = std::iter::once(sets.house).chain(sets.zones).map(|s| s.layout);
    let figures = HouseFigures::of(&house.name, layouts);
    let seconds = started.elapsed().as_secs_f64();
    Ok(Figures { how: HowItWent::Laid { seconds }, figures, end, price_list, style, alarm })
}
