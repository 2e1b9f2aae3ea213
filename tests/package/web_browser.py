"""Debian's Chromium, headless, by its DevTools protocol over pipes, and a static server for a folder."""
import base64
import fcntl
import functools
import http.server
import json
import os
import pathlib
import subprocess
import sys
import threading
import time


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


class Patient(http.server.ThreadingHTTPServer):
    """Ignores a page that closes before it has loaded everything."""

    def handle_error(self, request, client_address):
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)


class Server:
    """Serves a folder on this machine until stop()."""

    def __init__(self, folder, port=0):
        self.http = Patient(
            ("127.0.0.1", port), functools.partial(Quiet, directory=folder))
        self.port = self.http.server_address[1]
        self.address = f"http://127.0.0.1:{self.port}/"
        threading.Thread(target=self.http.serve_forever, daemon=True).start()

    def stop(self):
        self.http.shutdown()
        self.http.server_close()


class Browser:
    """A browser with one profile, on a small disk of its own if `disk_mb` is given. Every wait has an end:
    then TimeoutError."""

    def __init__(self, profile, width, height, disk_mb=None):
        from_us, to_browser = os.pipe()
        from_browser, to_us = os.pipe()

        def as_3_and_4():
            high = [fcntl.fcntl(end, fcntl.F_DUPFD, 100) for end in (from_us, to_us)]  # none of them is 3 or 4
            os.dup2(high[0], 3)
            os.dup2(high[1], 4)

        pathlib.Path(profile).mkdir()
        on_disk = ["unshare", "--user", "--map-root-user", "--mount", "sh", "-c",
                   f'mount -t tmpfs -o size={disk_mb}m none "$0" && exec "$@"', profile] if disk_mb else []
        self.process = subprocess.Popen(
            on_disk + ["chromium", "--headless=new", "--no-sandbox", "--remote-debugging-pipe", "--no-first-run",
             f"--user-data-dir={profile}", f"--window-size={width},{height}", "--use-angle=swiftshader",
             "--enable-unsafe-swiftshader", "--disable-background-networking", "--touch-events=enabled"],
            preexec_fn=as_3_and_4, pass_fds=(3, 4), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(from_us)
        os.close(to_us)
        self.write, self.read = to_browser, from_browser
        self.number, self.answers, self.news = 0, {}, []
        self.changed = threading.Condition()
        self.size = (width, height)
        threading.Thread(target=self._listen, daemon=True).start()

    def _listen(self):
        kept = b""
        while piece := os.read(self.read, 1 << 16):
            *whole, kept = (kept + piece).split(b"\0")
            with self.changed:
                for one in map(json.loads, whole):
                    if "id" in one:
                        self.answers[one["id"]] = one
                    else:
                        self.news.append(one)
                self.changed.notify_all()
        os.close(self.read)

    def send(self, method, session=None, **parameters):
        """The number of the answer, for answer()."""
        with self.changed:
            self.number += 1
            said = {"id": self.number, "method": method, "params": parameters}
            if session:
                said["sessionId"] = session
            os.write(self.write, json.dumps(said).encode() + b"\0")
            return self.number

    def answer(self, number, method, seconds=60):
        with self.changed:
            if not self.changed.wait_for(lambda: number in self.answers, seconds):
                raise TimeoutError(method)
            answer = self.answers.pop(number)
        if "error" in answer:
            raise RuntimeError(f"{method}: {answer['error']}")
        return answer["result"]

    def call(self, method, session=None, seconds=60, **parameters):
        return self.answer(self.send(method, session, **parameters), method, seconds)

    def open(self, address, at=None, first=""):
        """A page at the address, of a browser that is at this latitude and longitude, to 12 m. `first` is run
        before the page's own scripts."""
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        page = Page(self, target, session)
        page.call("Runtime.enable")
        page.call("Page.enable")
        page.call("Emulation.setDeviceMetricsOverride", width=self.size[0], height=self.size[1],
                  deviceScaleFactor=1, mobile=True)
        page.call("Emulation.setTouchEmulationEnabled", enabled=True, maxTouchPoints=5)
        if at:
            self.call("Browser.grantPermissions", permissions=["geolocation"])
            page.call("Emulation.setGeolocationOverride", latitude=at[0], longitude=at[1], accuracy=12)
        if first:
            page.call("Page.addScriptToEvaluateOnNewDocument", source=first)
        page.call("Page.navigate", url=address)
        return page

    def stop(self):
        try:
            self.call("Browser.close", seconds=10)
            self.process.wait(20)
        except Exception:  # it may be gone already
            self.process.kill()
        os.close(self.write)


class Page:
    def __init__(self, browser, target, session):
        self.browser, self.target, self.session = browser, target, session

    def call(self, method, **parameters):
        return self.browser.call(method, self.session, **parameters)

    def value(self, text):
        """What the page's JavaScript says, waited for."""
        result = self.call("Runtime.evaluate", expression=text, awaitPromise=True, returnByValue=True)
        if "exceptionDetails" in result:
            raise RuntimeError(json.dumps(result["exceptionDetails"])[:500])
        return result["result"].get("value")

    def wait(self, text, seconds=120):
        """Until the expression is true; its value."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            if value := self.value(text):
                return value
            time.sleep(0.1)
        raise TimeoutError(text)

    def tap(self, x, y, held_s=0.08):
        """A tap that the page must show an answer to."""
        before = self.pixels()
        # A page that is slow to hear the first would take it for a long press if we waited for that.
        touches = [self.browser.send("Input.dispatchTouchEvent", self.session, type="touchStart",
                                     touchPoints=[{"x": x, "y": y}])]
        time.sleep(held_s)
        touches.append(self.browser.send("Input.dispatchTouchEvent", self.session, type="touchEnd", touchPoints=[]))
        for touch in touches:
            self.browser.answer(touch, "Input.dispatchTouchEvent")
        self.settle(before)

    def drag(self, start, end, steps):
        """A finger from one point to the other, at about 60 steps a second."""
        for step in range(steps + 1):
            x, y = (a + (b - a) * step / steps for a, b in zip(start, end))
            self.call("Input.dispatchTouchEvent", type="touchMove" if step else "touchStart", touchPoints=[{"x": x, "y": y}])
            time.sleep(1 / 60)
        self.call("Input.dispatchTouchEvent", type="touchEnd", touchPoints=[])

    def settle(self, before, seconds=30):
        """Until the page looks different from before, and then stays the same for a moment."""
        end = time.monotonic() + seconds
        now = self.pixels()
        while now == before:
            if time.monotonic() > end:
                raise AssertionError("no answer to a touch")
            time.sleep(0.1)
            now = self.pixels()
        while time.monotonic() < end:
            time.sleep(0.4)
            last, now = now, self.pixels()
            if now == last:
                return

    def tap_on(self, selector):
        """Taps the middle of an element of the page."""
        where = json.loads(self.wait(f"""(() => {{ const one = document.querySelector('{selector}');
            return one && one.offsetParent !== null && JSON.stringify(one.getBoundingClientRect()); }})()""", 20))
        self.tap(where["x"] + where["width"] / 2, where["y"] + where["height"] / 2)

    def pick(self, selector, file):
        """What a person's choice of a file for this input does."""
        root = self.call("DOM.getDocument")["root"]["nodeId"]
        node = self.call("DOM.querySelector", nodeId=root, selector=selector)["nodeId"]
        self.call("DOM.setFileInputFiles", nodeId=node, files=[os.path.abspath(file)])

    def pixels(self):
        return base64.b64decode(self.call("Page.captureScreenshot", format="png")["data"])

    def picture(self, file):
        pathlib.Path(file).write_bytes(self.pixels())

    def console(self):
        """What the page has written to its console, and its errors."""
        said = []
        with self.browser.changed:
            for one in self.browser.news:
                if one["method"] == "Runtime.consoleAPICalled":
                    said.append(" ".join(str(part.get("value", part.get("description")))
                                         for part in one["params"]["args"]))
                if one["method"] == "Runtime.exceptionThrown":
                    said.append(json.dumps(one["params"]["exceptionDetails"])[:800])
        return said
