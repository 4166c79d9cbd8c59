//! Between the shop and its vans: the shop's settings in force, confirmations, and what leaves a van.

use crate::exchange::confirmation::{held_in, not_held};
use crate::exchange::day::{Vehicles, logs_of_day, may_let_go, news_for_vans, news_of};
use crate::exchange::erase;
use crate::exchange::export::Log;
use crate::exchange::wire::decode;
use crate::exchange::{LogKind, SavedText};
use crate::job::entry::{Confirmation, Event, LogId, Shop};
use crate::job::flow::{CONFIRMATIONS_LOG, SHOP_LOG, held, last_by};
use crate::job::{JobState, kit};
use crate::map::OrderedSet;
use crate::platform::clock;
use crate::trade::money::TaxRule;
use crate::ui::files::saved_texts;
use crate::ui::state::App;
use crate::units::Decimal;

/// The setting that names the shop's settings in force, by their entry.
const IN_FORCE: &str = "shop";
/// The setting that names those that a file brought last.
const OFFERED: &str = "shop_offered";

/// The shop's settings that an entry noted.
fn noted(sheet: &JobState, id: &str) -> Option<Shop> {
    let mut entries = sheet.entries().iter();
    match &entries.find(|entry| entry.id.0 == id)?.what {
        Event::Shop(shop) => Some((**shop).clone()),
        _ => None,
    }
}

impl App {
    /// Reads the shop's settings in force and the shop's confirmations.
    pub async fn read_flow(self) {
        let shelf = self.shelf();
        if let Some(id) = shelf.setting(IN_FORCE) {
            let sheet = self.read_log(SHOP_LOG).await;
            self.shop.set(noted(&sheet, &id).unwrap_or_default());
        }
        let confirmations = self.read_log(CONFIRMATIONS_LOG).await;
        self.held
            .set(held(&confirmations, &self.device()).into_iter().collect());
    }

    /// What this device would send out as the shop's settings: those in force, with name, contact,
    /// currency, tax, warranty and the wrench rule that it works by.
    pub async fn shop_here(self) -> Shop {
        let settings = self.settings.get_untracked();
        let percent = Decimal::parse(&settings.tax_percent).ok();
        Shop {
            name: settings.shop_name,
            contact: settings.contact,
            currency: settings.currency,
            tax: percent.map(|percent| TaxRule {
                percent,
                rounding: settings.tax_rounding,
            }),
            warranty: settings.warranty,
            share: self.van_kit().await.more.share,
            ..self.shop.get_untracked()
        }
    }

    /// Notes the shop's settings, which are in force here from now on; false if they were not kept.
    pub async fn keep_shop(self, shop: Shop) -> bool {
        let log = LogId(SHOP_LOG.to_owned());
        let whats = vec![Event::Shop(Box::new(shop.clone()))];
        if !self.append_to(log, whats).await {
            return false;
        }
        let sheet = self.read_log(SHOP_LOG).await;
        if let Some(entry) = last_by(&sheet, &self.device()) {
            self.shelf().set_setting(IN_FORCE, &entry.id.0);
        }
        self.shop.set(shop);
        true
    }

    /// Remembers what a file brought as the shop's settings, until they are taken.
    pub fn offer_shop(self, id: &str) {
        self.shelf().set_setting(OFFERED, id);
    }

    /// The settings that a file brought last, if others are in force here.
    pub async fn offered_shop(self) -> Option<(String, Shop)> {
        let shelf = self.shelf();
        let id = shelf.setting(OFFERED)?;
        if shelf.setting(IN_FORCE).as_ref() == Some(&id) {
            return None;
        }
        let shop = noted(&self.read_log(SHOP_LOG).await, &id)?;
        Some((id, shop))
    }

    /// Takes over what a file brought; what the shop has not set stays as it is here.
    pub async fn take_shop(self, id: &str, shop: Shop) {
        self.settings.update(|settings| {
            if !shop.name.is_empty() {
                settings.shop_name.clone_from(&shop.name);
            }
            if !shop.contact.is_empty() {
                settings.contact.clone_from(&shop.contact);
            }
            if !shop.currency.is_empty() {
                settings.currency.clone_from(&shop.currency);
            }
            if !shop.warranty.is_empty() {
                settings.warranty.clone_from(&shop.warranty);
            }
            if let Some(tax) = &shop.tax {
                tax.percent.as_typed().clone_into(&mut settings.tax_percent);
                settings.tax_rounding = tax.rounding;
            }
        });
        let shelf = self.shelf();
        self.settings
            .with_untracked(|settings| settings.write(&shelf));
        let mut carried = self.van_kit().await;
        if shop.share.is_some() && carried.more.share != shop.share {
            carried.more.share = shop.share;
            let log = LogId(kit::LOG.to_owned());
            self.append_to(log, vec![Event::Carried(carried)]).await;
        }
        shelf.set_setting(IN_FORCE, id);
        self.shop.set(shop);
        self.let_go_old().await;
    }

    /// The logs of a day file for a van with their texts; of the shop's settings only those in force,
    /// of other jobs what the vans are to learn of them.
    pub async fn day(self, chosen: &[String], van: &str) -> Vec<Log> {
        let here = self.shop_here().await;
        let shelf = self.shelf();
        let known = shelf.setting(IN_FORCE).is_some();
        if !known || here != self.shop.get_untracked() {
            self.keep_shop(here).await;
        }
        let logs = shelf.logs().await;
        let logs = self
            .jobs
            .with_untracked(|jobs| logs_of_day(jobs, chosen, &logs));
        let in_force = shelf.setting(IN_FORCE).unwrap_or_default();
        let mut whole = Vec::new();
        for log in logs {
            let mut texts = saved_texts(&shelf, &log).await;
            if log == SHOP_LOG {
                texts.retain(|saved| saved.id == in_force);
            }
            whole.push(log_of(&log, texts.iter()));
        }
        let sent: OrderedSet<String> = whole.iter().map(|(_, log, _)| log.0.clone()).collect();
        let news = self.news(van).await.into_iter();
        whole.extend(news.filter(|(_, log, _)| !sent.contains(&log.0)));
        whole
    }

    /// What the vans are to learn of jobs that they have: who was erased, what was followed up here.
    async fn news(self, van: &str) -> Vec<Log> {
        let (shelf, device, now) = (self.shelf(), self.device(), clock::now().utc_ms);
        let logs = self
            .jobs
            .with_untracked(|jobs| news_for_vans(jobs, &device, van, now));
        let mut news = Vec::new();
        for log in logs {
            let texts = saved_texts(&shelf, &log).await;
            let new = news_of(&texts, &device);
            if !new.is_empty() {
                news.push(log_of(&log, new));
            }
        }
        news
    }

    /// Everything that no confirmation holds, by log; practice is nobody's business, and of what came
    /// from the shop only what this device added to it.
    pub async fn since_confirmation(self) -> Vec<Log> {
        let shelf = self.shelf();
        let practice: OrderedSet<String> = self.jobs.with_untracked(|jobs| {
            let practice = jobs.iter().filter(|job| job.practice);
            OrderedSet::from_iter(practice.map(|job| job.log.clone()))
        });
        let (held, device) = (self.held.get_untracked(), self.device());
        let mut open = Vec::new();
        for log in shelf.logs().await {
            if practice.contains(&log) {
                continue;
            }
            let texts = saved_texts(&shelf, &log).await;
            let mut new = not_held(&log, &texts, &held);
            if [SHOP_LOG, CONFIRMATIONS_LOG].contains(&log.as_str()) {
                let mine =
                    |saved: &SavedText| decode(&saved.text).is_ok_and(|it| it.device == device);
                new.retain(|saved| mine(saved));
            }
            if !new.is_empty() {
                open.push(log_of(&log, new));
            }
        }
        open
    }

    /// Writes a confirmation for these logs as they are here, with what was followed up of older jobs;
    /// gives the logs of its file.
    pub async fn confirmation_with_news(self, logs: &[String]) -> Vec<Log> {
        let news = self.news("").await;
        let mut all: OrderedSet<String> = logs.iter().cloned().collect();
        all.extend(news.iter().map(|(_, log, _)| log.0.clone()));
        let all: Vec<String> = all.into_iter().collect();
        let confirmation = self.confirmation(&all).await;
        confirmation.into_iter().chain(news).collect()
    }

    /// Writes a confirmation for these logs as they are here, and for no other; gives its log.
    pub async fn confirmation(self, logs: &[String]) -> Option<Log> {
        let shelf = self.shelf();
        let mut lines = Vec::new();
        for log in logs.iter().filter(|log| *log != CONFIRMATIONS_LOG) {
            lines.extend(held_in(
                &LogId(log.clone()),
                &saved_texts(&shelf, log).await,
            ));
        }
        let what = Event::Confirmation(Confirmation { held: lines });
        if !self
            .append_to(LogId(CONFIRMATIONS_LOG.to_owned()), vec![what])
            .await
        {
            return None;
        }
        let sheet = self.read_log(CONFIRMATIONS_LOG).await;
        let id = &last_by(&sheet, &self.device())?.id;
        let texts = saved_texts(&shelf, CONFIRMATIONS_LOG).await;
        let last = texts.iter().filter(|saved| saved.id == id.0);
        Some(log_of(CONFIRMATIONS_LOG, last))
    }

    /// Lets the persons of old jobs go that the shop has, if the shop wants that; gives how many
    /// jobs that were. A device that gave a confirmation is a shop and lets nothing go.
    pub async fn let_go_old(self) -> usize {
        let Some(days) = self.shop.with_untracked(|shop| shop.keep_days) else {
            return 0;
        };
        // An unread job may be of any of these cars.
        if self
            .jobs
            .with_untracked(|jobs| jobs.iter().any(|job| job.too_long > 0))
        {
            return 0;
        }
        let (shelf, lines, device) = (self.shelf(), self.held.get_untracked(), self.device());
        let confirmations = self.read_log(CONFIRMATIONS_LOG).await;
        if lines.is_empty() || last_by(&confirmations, &device).is_some() {
            return 0;
        }
        let (jobs, now) = (self.jobs.get_untracked(), clock::now().utc_ms);
        let (open, mut gone) = (Vehicles::open(&jobs), Vec::new());
        for job in jobs.iter().filter(|job| may_let_go(job, &open, days, now)) {
            let texts = saved_texts(&shelf, &job.log).await;
            if texts.is_empty() || !not_held(&job.log, &texts, &lines).is_empty() {
                continue;
            }
            let Ok(emptied) = erase::let_go(&texts) else {
                continue;
            };
            if shelf.replace(&emptied).await.is_ok() {
                gone.push(job.log.clone());
            }
        }
        self.lines(&gone, Vec::new()).await;
        if !gone.is_empty() {
            self.read_list();
        }
        gone.len()
    }
}

fn log_of<'a>(log: &str, texts: impl IntoIterator<Item = &'a SavedText>) -> Log {
    let texts = texts.into_iter().map(|saved| saved.text.clone()).collect();
    (LogKind::of(log), LogId(log.to_owned()), texts)
}
