"""What the page asks of the browser: the position, which a person may refuse, a screen that stays on, and
the edges that a tablet's rim or bars cover."""
import json

# Counts the locks that are held.
WAKE_LOCK = """(() => {
  window.locksHeld = 0;
  const request = async () => {
    const lock = new EventTarget();
    ++window.locksHeld;
    lock.release = async () => {
      --window.locksHeld;
      lock.dispatchEvent(new Event('release'));
    };
    return lock;
  };
  Object.defineProperty(navigator, 'wakeLock', { value: { request } });
})()"""


def allow_position(browser, answer):
    """"granted", "denied" or "prompt", for every page."""
    browser.call("Browser.setPermission", permission={"name": "geolocation"}, setting=answer)


def check_wake_lock(page):
    """Of a page that was opened with WAKE_LOCK."""
    for awake, held in ((True, 1), (True, 1), (False, 0), (True, 1), (False, 0)):
        page.value(f"mastwiseKeepAwake({json.dumps(awake)})")
        page.wait(f"locksHeld === {held}", 5)


def check_safe_areas(page):
    """The picture keeps clear of them, and is whole again without them."""
    where = "JSON.stringify(document.getElementById('canvas').getBoundingClientRect())"
    whole = json.loads(page.value(where))
    page.call("Emulation.setSafeAreaInsetsOverride", insets={"top": 24, "left": 40, "bottom": 16, "right": 32})
    page.wait("document.getElementById('canvas').getBoundingClientRect().left === 40", 20)
    clear = json.loads(page.value(where))
    assert (clear["top"], clear["left"]) == (24, 40), clear
    assert clear["bottom"] == whole["bottom"] - 16 and clear["right"] == whole["right"] - 32, (clear, whole)
    page.wait(f"document.getElementById('canvas').width === {clear['width']:.0f}", 20)  # drawn for that size
    page.call("Emulation.setSafeAreaInsetsOverride", insets={})
    page.wait(f"document.getElementById('canvas').width === {whole['width']:.0f}", 20)
