//! What a host says beside every file of the app.

/// The file in which some static hosts look for it.
#[allow(dead_code, reason = "the build writes it, the server does not read it")]
pub const FILE: &str = "_headers";

/// Beside the policy: types are not guessed, no address is told to anybody, and a copy is asked for
/// again each time, so that neither the page nor the worker outlives a new version.
pub const BESIDE: [(&str, &str); 3] = [
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Cache-Control", "no-cache"),
];

/// The name of the header that says what a page may load.
pub const POLICY: &str = "Content-Security-Policy";

/// The policy of the page's own element, and who may show it in a frame, which only a header says.
pub fn policy(page: &str) -> Option<String> {
    let (_, rest) = page.split_once(POLICY)?;
    let (_, rest) = rest.split_once("content=\"")?;
    let (policy, _) = rest.split_once('"')?;
    Some(format!("{policy}; frame-ancestors 'none'"))
}

/// The lines for hosts that read a file of headers.
#[allow(dead_code, reason = "the build writes it, the server does not read it")]
pub fn lines(page: &str) -> Option<String> {
    let policy = policy(page)?;
    let all = [(POLICY, policy.as_str())].into_iter().chain(BESIDE);
    let lines = all.map(|(name, value)| format!("  {name}: {value}\n"));
    Some(format!("/*\n{}", lines.collect::<String>()))
}
