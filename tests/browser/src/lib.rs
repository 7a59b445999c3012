//! A browser with the page open, and what tests ask of it.

use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU16, Ordering};
use std::time::Duration;

use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder, Locator};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

/// What must be installed, and is told where it is not.
pub const INSTALL: &str = "apt-get install -y chromium chromium-driver; then, in the checkout: cargo run --release --features page -- page --out target/lapwright.html";

/// The project's folder.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().unwrap()
}

/// The page under test.
pub fn page() -> PathBuf {
    let given = std::env::var_os("LAPWRIGHT_PAGE").map(PathBuf::from);
    let path = given.unwrap_or_else(|| root().join("target/lapwright.html"));
    assert!(path.exists(), "no page at {}: {INSTALL}", path.display());
    path.canonicalize().unwrap()
}

/// The command, against whose files those of the page are held.
pub fn command() -> PathBuf {
    let given = std::env::var_os("LAPWRIGHT_COMMAND").map(PathBuf::from);
    let path = given.unwrap_or_else(|| root().join("target/release/lapwright"));
    assert!(path.exists(), "no command at {}: {INSTALL}", path.display());
    path
}

/// A sample drawing.
pub fn sample(name: &str) -> PathBuf {
    root().join("sample-drawings").join(name)
}

/// A browser with a profile and a folder for downloads of its own; ends with it.
pub struct Browser {
    /// The session.
    pub page: Client,
    /// Where downloads go.
    pub downloads: tempfile::TempDir,
    driver: Child,
}

impl Drop for Browser {
    fn drop(&mut self) {
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

static PORT: AtomicU16 = AtomicU16::new(0);

/// The command of Chromium's driver that gives what stands in the console.
#[derive(Debug)]
struct ConsoleLog;

impl WebDriverCompatibleCommand for ConsoleLog {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/se/log", session.unwrap_or_default()))
    }
    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(json!({ "type": "browser" }).to_string()))
    }
}

impl Browser {
    /// Opens the page in a window of this size, by touch or by mouse.
    pub async fn open(width: u32, height: u32, touch: bool) -> Browser {
        let downloads = tempfile::tempdir().unwrap();
        let port =
            20_000 + std::process::id() as u16 % 20_000 + PORT.fetch_add(1, Ordering::Relaxed);
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|e| panic!("chromedriver cannot be started ({e}): {INSTALL}"));
        let mut options = json!({
            "args": ["--headless=new", "--no-sandbox", "--disable-dev-shm-usage", format!("--window-size={width},{height}")],
            "prefs": { "download.default_directory": downloads.path(), "download.prompt_for_download": false },
        });
        if touch {
            options["mobileEmulation"] = json!({ "deviceMetrics": { "width": width, "height": height, "pixelRatio": 2.0, "touch": true } });
        }
        let mut wants = Capabilities::new();
        wants.insert("goog:chromeOptions".into(), options);
        wants.insert("goog:loggingPrefs".into(), json!({ "browser": "ALL" }));
        let mut page = None;
        for _ in 0..100 {
            match ClientBuilder::new(HttpConnector::new())
                .capabilities(wants.clone())
                .connect(&format!("http://localhost:{port}"))
                .await
            {
                Ok(client) => {
                    page = Some(client);
                    break;
                }
                Err(_) => tokio::time::sleep(Duration::from_millis(100)).await,
            }
        }
        let page = page.expect("the driver gives no session");
        let browser = Browser { page, downloads, driver };
        browser.reload().await;
        browser
    }

    /// Opens the page anew, and waits until it has begun.
    pub async fn reload(&self) {
        self.page.goto(&format!("file://{}", page().display())).await.unwrap();
        self.until("return document.body.dataset.ready === 'yes'", 120).await;
    }

    /// What a script gives.
    pub async fn ask(&self, script: &str) -> Value {
        self.page.execute(script, vec![]).await.unwrap_or_else(|e| panic!("{script}: {e}"))
    }

    /// Waits for a script to give true.
    pub async fn until(&self, script: &str, seconds: u64) {
        for _ in 0..seconds * 10 {
            if self.ask(script).await == json!(true) {
                return;
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
        panic!("not within {seconds} s: {script}; the page says: {}", self.state().await);
    }

    /// What the page says of itself.
    pub async fn state(&self) -> String {
        self.text("state").await
    }

    /// The text that a script gives.
    async fn said(&self, script: &str) -> String {
        self.ask(script).await.as_str().unwrap_or_default().to_owned()
    }

    /// The text of an element.
    pub async fn text(&self, id: &str) -> String {
        self.said(&format!("return document.getElementById('{id}').textContent")).await
    }

    /// The job as it stands.
    pub async fn job(&self) -> String {
        self.said("return document.getElementById('job').value").await
    }

    /// Presses a button.
    pub async fn press(&self, id: &str) {
        self.ask(&format!("document.getElementById('{id}').scrollIntoView({{block: 'center'}})"))
            .await;
        self.page
            .find(Locator::Id(id))
            .await
            .unwrap()
            .click()
            .await
            .unwrap_or_else(|e| panic!("{id}: {e}"));
    }

    /// Waits until nothing is at work.
    pub async fn idle(&self) {
        tokio::time::sleep(Duration::from_millis(150)).await;
        self.until("return document.getElementById('busy').hidden", 600).await;
        tokio::time::sleep(Duration::from_millis(150)).await;
        self.until("return document.getElementById('busy').hidden", 600).await;
    }

    /// Gives the page a drawing, then a job.
    pub async fn give(&self, drawing: &Path, job: Option<&Path>) {
        self.page
            .find(Locator::Id("file"))
            .await
            .unwrap()
            .send_keys(&drawing.display().to_string())
            .await
            .unwrap();
        self.idle().await;
        if let Some(job) = job {
            self.page
                .find(Locator::Id("jobfile"))
                .await
                .unwrap()
                .send_keys(&job.display().to_string())
                .await
                .unwrap();
            self.idle().await;
        }
    }

    /// Presses what saves, and waits for the file.
    pub async fn saved(&self, id: &str, name: &str) -> Vec<u8> {
        self.ask(&format!("document.getElementById('{id}').click()")).await;
        let path = self.downloads.path().join(name);
        for _ in 0..300 {
            if let Ok(bytes) = std::fs::read(&path) {
                return bytes;
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
        panic!("{name} was not saved");
    }

    /// Errors that stand in the console.
    pub async fn errors(&self) -> Vec<String> {
        let got = self.page.issue_cmd(ConsoleLog).await.unwrap();
        let all = got.as_array().cloned().unwrap_or_default();
        let bad = all.iter().filter(|m| m["level"] == "SEVERE");
        bad.map(|m| m["message"].as_str().unwrap_or_default().to_owned()).collect()
    }

    /// Ends the session.
    pub async fn close(self) {
        let _ = self.page.clone().close().await;
    }
}
