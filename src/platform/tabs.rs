//! Telling the other tabs that a log has grown or was thrown away.
//!
//! Only ids of logs go over the channel; the other tab reads the journal itself. Without the
//! channel nothing is lost, the other tab merely sees it later.

use wasm_bindgen::JsCast;
use web_sys::{BroadcastChannel, MessageEvent};

use super::event::Listener;

const NAME: &str = "hubslate";
/// Stands before the id of a log that was thrown away; no id has a space.
const GONE: &str = "gone ";

/// What another tab did to a log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Heard {
    /// It added to it.
    Grown(String),
    /// It threw it away.
    Gone(String),
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
                match data.as_deref().map(|said| (said, said.strip_prefix(GONE))) {
                    Some((_, Some(log))) => hear(Heard::Gone(log.to_owned())),
                    Some((log, None)) => hear(Heard::Grown(log.to_owned())),
                    None => {}
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
}

impl Drop for Tabs {
    fn drop(&mut self) {
        if let Some((channel, _)) = &self.channel {
            channel.close();
        }
    }
}
