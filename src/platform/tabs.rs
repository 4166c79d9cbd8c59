//! Telling the other tabs that a log has grown or was thrown away.
//!
//! Only ids of logs go over the channel; the other tab reads the journal itself. Without the
//! channel nothing is lost, the other tab merely sees it later.

use wasm_bindgen::JsCast;
use web_sys::{BroadcastChannel, MessageEvent};

use super::event::Listener;

const NAME: &str = "hubslate";
/// What stands before the id of a log; no id has a space.
const GONE: &str = "gone ";
const OPENED: &str = "opened ";
const HERE: &str = "here ";
const LEFT: &str = "left ";

/// What another tab did to a log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Heard {
    /// It added to it.
    Grown(String),
    /// It threw it away.
    Gone(String),
    /// It opened it, and asks who shows it too.
    Opened(String),
    /// It shows it too.
    Here(String),
    /// It shows it no more.
    Left(String),
}

impl Heard {
    fn of(said: &str) -> Self {
        let log = |head: &str| said.strip_prefix(head).map(str::to_owned);
        let gone = || log(GONE).map(Self::Gone);
        let opened = || log(OPENED).map(Self::Opened);
        let here = || log(HERE).map(Self::Here);
        let left = || log(LEFT).map(Self::Left);
        let headed = gone().or_else(opened).or_else(here).or_else(left);
        headed.unwrap_or_else(|| Self::Grown(said.to_owned()))
    }
}

/// The channel between the tabs; closes when dropped.
///
/// One object both speaks and hears, since a second one in the same page would hear the first.
#[derive(Debug)]
pub struct Tabs {
    channel: Option<(BroadcastChannel, Listener)>,
}

impl Tabs {
    /// Opens the channel and calls `hear` with what each of the other tabs did.
    pub fn listen(hear: impl Fn(Heard) + 'static) -> Self {
        let channel = BroadcastChannel::new(NAME).ok().map(|channel| {
            let heard = Listener::new(&channel, "message", move |event| {
                let data = event
                    .dyn_into::<MessageEvent>()
                    .ok()
                    .and_then(|message| message.data().as_string());
                if let Some(said) = data {
                    hear(Heard::of(&said));
                }
            });
            (channel, heard)
        });
        Self { channel }
    }

    /// Tells the other tabs that this log has grown; call it after the transaction completed.
    pub fn announce(&self, log: &str) {
        if let Some((channel, _)) = &self.channel {
            // A closed channel is the only refusal, and then nobody listens.
            let _ = channel.post_message(&log.into());
        }
    }

    /// Tells the other tabs that this log was thrown away.
    pub fn announce_gone(&self, log: &str) {
        self.announce(&format!("{GONE}{log}"));
    }

    /// Asks the other tabs whether they show this log.
    pub fn announce_opened(&self, log: &str) {
        self.announce(&format!("{OPENED}{log}"));
    }

    /// Tells the other tabs that this one shows the log too.
    pub fn announce_here(&self, log: &str) {
        self.announce(&format!("{HERE}{log}"));
    }

    /// Tells the other tabs that this one shows the log no more.
    pub fn announce_left(&self, log: &str) {
        self.announce(&format!("{LEFT}{log}"));
    }
}

impl Drop for Tabs {
    fn drop(&mut self) {
        if let Some((channel, _)) = &self.channel {
            channel.close();
        }
    }
}
