//! Telling the other tabs that a log has grown.
//!
//! Only ids of logs go over the channel; the other tab reads the journal itself. Without the
//! channel nothing is lost, the other tab merely sees it later.

use wasm_bindgen::JsCast;
use web_sys::{BroadcastChannel, MessageEvent};

use super::event::Listener;

const NAME: &str = "hubslate";

/// The channel between the tabs; closes when dropped.
///
/// One object both speaks and hears, since a second one in the same page would hear the first.
#[derive(Debug)]
pub struct Tabs {
    channel: Option<(BroadcastChannel, Listener)>,
}

impl Tabs {
    /// Opens the channel and calls `grown` with the id of each log another tab added to.
    pub fn listen(grown: impl Fn(String) + 'static) -> Self {
        let channel = BroadcastChannel::new(NAME).ok().map(|channel| {
            let heard = Listener::new(&channel, "message", move |event| {
                let data = event
                    .dyn_into::<MessageEvent>()
                    .ok()
                    .and_then(|message| message.data().as_string());
                if let Some(log) = data {
                    grown(log);
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
}

impl Drop for Tabs {
    fn drop(&mut self) {
        if let Some((channel, _)) = &self.channel {
            channel.close();
        }
    }
}
