#!/usr/bin/env python3
"""web_page.py PACKAGE FOLDER TABLE PROGRAM: the page of PACKAGE in headless Chromium, by touch: from its first start to the
first heading, without a network, after a killed tab, with a full disk, turned upright, with the browser's
position, a serial receiver, half a program, and records that go to another tablet. Pictures and data go to
FOLDER. TABLE has stations around 42.5 N, 118.5 W; PROGRAM is Mastwise on this machine, whose times are printed
beside the page's."""
import base64
import contextlib
import json
import os
import pathlib
import shutil
import sqlite3
import sys
import time

import web_figures
import web_system
from web_browser import Browser, Server

# Where the buttons are: `mastwise shot SCREEN --size 1280x800 --dpi 160` shows them.
WIDTH, HEIGHT = 1280, 800
PRACTICE_FIRST, AIM = (138, 747), (224, 505)
HERE, MAP, LOGBOOK = (47, 50), (47, 226), (47, 490)
TO_IMPORT, STEADY, EXPORT_OR_IMPORT = (1148, 237), (519, 138), (1195, 728)
POSITION = (330, 147)
# With buttons of the page below.
RECEIVER = (810, 203)
IMPORT, DOCUMENTS, STATION_TABLE, IMPORT_THIS, DONE = (1174, 682), (640, 125), (640, 158), (958, 682), (1184, 50)
EXPORT_BACKUP, LOOK_AGAIN, FIRST_FILE, HOLD_TO_IMPORT = (188, 386), (1182, 682), (960, 212), (188, 658)


def mark(page, name, seconds=60):
    """When the page reached this point, in seconds after its start."""
    return page.wait(f"(performance.getEntriesByName('mastwise {name}')[0] || {{}}).startTime", seconds) / 1000


def ask_logbook(page, folder, question):
    """The first answer of the logbook as the page's files have it."""
    text = page.value("(() => { let text = ''; for (const byte of Module.FS.readFile('/mastwise/logbook'))"
                      " text += String.fromCharCode(byte); return btoa(text); })()")
    file = pathlib.Path(folder, "logbook")
    file.write_bytes(base64.b64decode(text))
    with contextlib.closing(sqlite3.connect(file)) as logbook:
        return (logbook.execute(question).fetchone() or (None,))[0]


def kept(page, folder):
    """The working state that the app has written."""
    return json.loads(ask_logbook(page, folder, "SELECT value FROM kept WHERE name = 'working state'") or "{}")


def outcomes(page, folder):
    return ask_logbook(page, folder, "SELECT count(*) FROM outcomes")


def is_at(state, latitude, longitude):
    """To a decimeter."""
    at = state.get("at") or (0, 0)
    return abs(at[0] - latitude) < 1e-6 and abs(at[1] - longitude) < 1e-6


def until(what, look, seconds=60):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        with contextlib.suppress(sqlite3.Error):
            if found := look():
                return found
        time.sleep(0.3)
    raise AssertionError(f"never came: {what}")


# Fills the page's share of the disk to the last few kilobytes.
FILL = """(async () => {
  const opening = indexedDB.open('filler', 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore('bytes');
  await new Promise((resolve) => { opening.onsuccess = resolve; });
  let number = 0;
  for (let size = 1 << 20; size >= 1 << 12;) {
    const bytes = new Uint8Array(size);
    for (let at = 0; at < size; at += 1 << 12) crypto.getRandomValues(bytes.subarray(at, at + (1 << 12)));
    const written = await new Promise((resolve) => {
      const transaction = opening.result.transaction('bytes', 'readwrite');
      transaction.oncomplete = () => resolve(true);
      transaction.onabort = () => resolve(false);
      transaction.objectStore('bytes').put(bytes, ++number);
    });
    if (!written) size >>= 2;
  }
  opening.result.close();
  return number;
})()"""
EMPTY = """new Promise((resolve) => {
  indexedDB.deleteDatabase('filler').onsuccess = () => resolve(true);
})"""


# A serial port with a receiver of 9600 baud at 46.5 N, 7.25 E; at other speeds it is noise.
PORT = """(() => {
  const sentence = (fields) => {
    let sum = 0;
    for (const letter of fields) sum ^= letter.charCodeAt(0);
    return '$' + fields + '*' + sum.toString(16).toUpperCase().padStart(2, '0') + '\\r\\n';
  };
  const said = () => {
    const [day, time] = new Date().toISOString().split('T');
    const [year, month, date] = day.split('-');
    return sentence(`GPRMC,${time.replace(/:/g, '').slice(0, 9)},A,4630.000,N,00715.000,E,0.0,,${date}${month}` +
      `${year.slice(2)},,,A`);
  };
  const port = {
    readable: null,
    opened: [],
    async open({ baudRate }) {
      if (this.readable) throw new Error('it is open');
      this.opened.push(baudRate);
      const text = () => (baudRate === 9600 ? said() : '\\u0081\\u0013\\u00f0');
      let timer;
      this.readable = new ReadableStream({
        start(to) { timer = setInterval(() => to.enqueue(new TextEncoder().encode(text())), 200); },
        cancel() { clearInterval(timer); },
      });
    },
    async close() {
      if (this.readable.locked) throw new Error('it is read');
      this.readable = null;
    },
  };
  const serial = new EventTarget();
  let allowed = [];
  serial.getPorts = async () => allowed;
  serial.requestPort = async () => {
    if (!navigator.userActivation.isActive) throw new Error('not touched');
    allowed = [port];
    return port;
  };
  Object.defineProperty(navigator, 'serial', { value: serial });
  window.portOfTest = port;
})()"""


class Trial:
    def __init__(self, package, folder, profile, disk_mb):
        self.package, self.folder = package, folder
        self.server = Server(package)
        self.browser = Browser(f"{folder}/{profile}", WIDTH, HEIGHT, disk_mb)

    def open(self, at=None, first=""):
        page = self.browser.open(self.server.address, at, first)
        return page, mark(page, "started")

    def place(self, page, wanted):
        until(f"the place {wanted}", lambda: kept(page, self.folder).get("place") == wanted)

    def picture(self, page, name):
        page.picture(f"{self.folder}/{name}.png")

    def first_use(self):
        page, started = self.open()
        print(f"first picture in a browser that has just started after {started:.1f} s")
        assert not page.value("crossOriginIsolated"), "the first page is isolated already"
        self.picture(page, "start")
        page.tap(*PRACTICE_FIRST)
        began = time.monotonic()
        self.picture(page, "practice")
        self.place(page, "stations")
        print(f"the practice area's hills after {mark(page, 'hills'):.1f} s")
        print(f"that is {time.monotonic() - began:.1f} s after the touch")
        self.picture(page, "stations")
        self.to_place(page, AIM, "aim")
        self.picture(page, "aim")
        state = until("the heading", lambda: kept(page, self.folder))
        assert state["stop"]["practice"] and state["stop"]["turn"], state
        page.wait("navigator.serviceWorker.ready.then(() => true)")
        return page, state

    # A tab that crashes right after a touch, and then no network.
    def killed(self, page):
        self.to_place(page, HERE, "here")
        with contextlib.suppress(RuntimeError, TimeoutError):
            page.call("Page.crash", seconds=2)
        self.browser.call("Target.closeTarget", targetId=page.target)
        self.server.stop()

    def without_network(self, state):
        page, started = self.open(first=web_figures.FRAMES)
        print(f"picture without a network after {started:.1f} s")
        page.wait("crossOriginIsolated && PThread.runningWorkers.length > 0", 20)
        self.place(page, "here")
        self.picture(page, "again")
        assert kept(page, self.folder)["stop"] == state["stop"], kept(page, self.folder)
        return page

    # A full disk is said, and what waits is saved once there is room.
    def full_disk(self):
        warning = "document.getElementById('warning').textContent"
        page, _ = self.open()
        page.value(FILL)
        page.tap(*PRACTICE_FIRST)
        assert "cannot save" in page.wait(warning), page.value(warning)
        time.sleep(1)
        self.picture(page, "full")
        page.value(EMPTY)
        page.wait(f"{warning} === ''")
        self.place(page, "stations")

    def to_place(self, page, button, place):
        page.tap(*button)
        self.place(page, place)

    def add_file(self, page, file):
        page.wait("!document.getElementById('files').hidden")
        page.pick("#add", str(file))
        page.tap_on("#saved button")

    # Where the browser says, with a table of stations that a person picks; a backup of what came in.
    def exported(self, table):
        page, _ = self.open(at=(42.5, -118.5))
        until("the browser's position", lambda: is_at(kept(page, self.folder), 42.5, -118.5))
        self.picture(page, "position")
        page.tap(*TO_IMPORT)
        self.add_file(page, table)
        for button in (IMPORT, DOCUMENTS, STATION_TABLE, IMPORT_THIS):
            page.tap(*button)
        self.picture(page, "imported")
        page.tap(*DONE)
        self.to_place(page, LOGBOOK, "logbook")
        page.tap(*STEADY)
        until("the outcome", lambda: outcomes(page, self.folder) == 1)
        page.tap(*EXPORT_OR_IMPORT)
        page.wait("!document.getElementById('files').hidden")
        page.tap(*EXPORT_BACKUP)
        page.wait("Module.FS.readdir('/files').some((name) => name.startsWith('mastwise'))", 20)
        saved = pathlib.Path(self.folder, "saved")
        self.browser.call("Browser.setDownloadBehavior", behavior="allow", downloadPath=str(saved))
        page.tap_on("#save")
        self.picture(page, "save")
        page.call("Runtime.evaluate", expression="document.querySelector('#saved a[download^=mastwise]').scrollIntoView()")
        page.tap_on("#saved a[download^=mastwise]")
        return until("the saved file", lambda: [one for one in saved.glob("*") if one.suffix != ".crdownload"])[0]

    # On another tablet, of which a finger picks that backup.
    def imported(self, file):
        page, _ = self.open()
        page.tap(*PRACTICE_FIRST)
        self.to_place(page, LOGBOOK, "logbook")
        assert outcomes(page, self.folder) == 0
        page.tap(*EXPORT_OR_IMPORT)
        self.add_file(page, file)
        page.tap(*LOOK_AGAIN)
        self.picture(page, "import")
        page.tap(*FIRST_FILE)
        page.tap(*HOLD_TO_IMPORT, held_s=4)
        until("the outcome from the other tablet", lambda: outcomes(page, self.folder) == 1)

    # With half of the program, and then without it, the page says so.
    def incomplete(self):
        program = pathlib.Path(self.package, "mastwise.wasm.gz")
        said = "(document.getElementById('message')?.textContent ?? '')"
        os.truncate(program, 1_000_000)
        page = self.browser.open(self.server.address)
        page.wait(f"{said}.startsWith('The program was not loaded. Reload the page.')", 30)
        program.unlink()
        page.call("Page.reload", ignoreCache=True)
        page.wait(f"{said} === 'The server does not have this part of Mastwise: mastwise.wasm.gz'", 30)

    # The browser asks the person, who says no and later yes.
    def refused(self):
        web_system.allow_position(self.browser, "denied")
        page, _ = self.open(first=web_system.WAKE_LOCK)
        time.sleep(3)
        self.picture(page, "refused")
        assert not kept(page, self.folder).get("at"), kept(page, self.folder)
        page.call("Emulation.setGeolocationOverride", latitude=42.5, longitude=-118.5, accuracy=12)
        web_system.allow_position(self.browser, "granted")
        until("the browser's position", lambda: is_at(kept(page, self.folder), 42.5, -118.5))
        web_system.check_wake_lock(page)
        web_system.check_safe_areas(page)

    # The same survey with one thread, with threads and on this machine; the map under a finger.
    def figures(self, program):
        native_s = web_figures.native_survey_time(program)
        for name, isolated in (("with one thread", "false"), ("with threads", "true")):
            page = self.browser.open(self.server.address, first=web_figures.NO_WINDOW)
            page.wait("navigator.serviceWorker.ready.then(() => window.Module && Module.calledRun)")
            page.wait(f"crossOriginIsolated === {isolated}", 5)
            web_figures.print_survey(name, web_figures.survey_times(page), native_s)
            page.call("Page.close")
        self.server.stop()
        # From another port it is a page that this browser has never seen.
        self.server = Server(self.package)
        _, started = self.open()
        print(f"first picture in an open browser after {started:.1f} s")

    # A receiver on a serial port, which a touch lets the page use.
    def serial(self):
        page, _ = self.open(first=PORT)
        page.tap(*PRACTICE_FIRST)
        mark(page, "hills")
        self.to_place(page, HERE, "here")
        page.tap(*POSITION)
        page.tap_on("#connect")
        page.tap(*RECEIVER)
        until("the receiver's position", lambda: is_at(kept(page, self.folder), 46.5, 7.25))
        self.picture(page, "serial")
        opened = page.value("portOfTest.opened.join()")
        assert opened == "4800,9600", opened

    def panned(self, page):
        self.to_place(page, MAP, "map")
        page.value("window.frames_ms.length = 0")
        page.drag((640, 400), (440, 300), steps=60)
        web_figures.print_frames(page, "the map under a finger")
        self.to_place(page, HERE, "here")

    def turned(self, page):
        for name, width, height in (("upright", HEIGHT, WIDTH), ("small", 800, 480), ("level", WIDTH, HEIGHT)):
            page.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1,
                      mobile=True)
            page.wait(f"document.getElementById('canvas').width === {width}"
                      f" && document.getElementById('canvas').height === {height}", 20)
            time.sleep(1)
            self.picture(page, name)


@contextlib.contextmanager
def trial_of(package, folder, profile, disk_mb=None):
    trial = Trial(package, folder, profile, disk_mb)
    try:
        yield trial
    finally:
        trial.browser.stop()
        trial.server.stop()


def main(package, folder, table, program):
    web_figures.print_size(package)
    with trial_of(package, folder, "figures") as trial:
        trial.figures(program)
    with trial_of(package, folder, "first") as trial:
        page, state = trial.first_use()
        trial.killed(page)
        page = trial.without_network(state)
        trial.panned(page)
        trial.turned(page)
        errors = [line for line in page.console() if "rror" in line]
        assert not errors, errors
    with trial_of(package, folder, "refused") as trial:
        trial.refused()
    with trial_of(package, folder, "exported") as trial:
        file = trial.exported(table)
    with trial_of(package, folder, "imported") as trial:
        trial.imported(file)
    with trial_of(package, folder, "serial") as trial:
        trial.serial()
    with trial_of(package, folder, "full", disk_mb=200) as trial:
        trial.full_disk()
    with trial_of(shutil.copytree(package, f"{folder}/broken"), folder, "incomplete") as trial:
        trial.incomplete()


if __name__ == "__main__":
    main(*sys.argv[1:5])
