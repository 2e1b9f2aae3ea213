"""Figures of the page, printed and not judged: they depend on what else the machine does."""
import gzip
import pathlib
import statistics
import subprocess
import time

# Verbs run on the page's own thread, which cannot start a thread meanwhile: these wait for them.
PREPARE = """(async () => {
  const threads = crossOriginIsolated ? Math.min(4, navigator.hardwareConcurrency) - 1 : 0;
  for (let number = 0; number < threads; ++number) {
    PThread.allocateUnusedWorker();
    await new Promise((ready) => PThread.loadWasmModuleToWorker(PThread.unusedWorkers[number], ready));
  }
})()"""
# The time of a verb in milliseconds.
RUN = """(async () => {
  const words = %s;
  const place = Module._malloc(4 * words.length + 4);
  const texts = words.map((word) => Module._malloc(word.length + 1));
  const memory = Module.wasmMemory.buffer;
  new Int32Array(memory, place, words.length + 1).set([...texts, 0]);
  words.forEach((word, number) => {
    new Uint8Array(memory, texts[number]).set([...word].map((letter) => letter.charCodeAt(0)).concat(0));
  });
  const began = performance.now();
  const failed = Module._main(words.length, place);
  const took = performance.now() - began;
  await new Promise((done) => setTimeout(done, 200));  // its threads go back
  if (failed) throw new Error(words.join(' '));
  return took;
})()"""
# The page without its window, to run verbs on.
NO_WINDOW = """(() => {
  let module;
  Object.defineProperty(window, 'Module', {
    get() { return module; },
    set(made) { made.noInitialRun = true; module = made; },
  });
})()"""
# How long the page works on each frame, and the time between two.
FRAMES = """(() => {
  const draw = window.requestAnimationFrame.bind(window);
  window.frames_ms = [];
  let last = null;
  window.requestAnimationFrame = (callback) => draw((now) => {
    const began = performance.now();
    callback(now);
    window.frames_ms.push([performance.now() - began, last === null ? 0 : now - last]);
    last = now;
  });
})()"""
TIMES = 10


def survey_times(page):
    """Of the practice area's survey, one after the other, in seconds: a browser compiles more as it goes."""
    page.wait("mastwiseHillsReady()")
    page.value(PREPARE)
    return [page.value(RUN % ["mastwise", "survey"]) / 1000 for _ in range(TIMES)]


def native_survey_time(program):
    def one():
        began = time.monotonic()
        subprocess.run([program, "survey"], check=True, stdout=subprocess.DEVNULL)
        return time.monotonic() - began
    return min(one() for _ in range(TIMES))


def print_survey(name, page_s, native_s):
    print(f"survey of the practice area {name}: {page_s[0]:.3f} s at first, {min(page_s):.3f} s at best; natively"
          f" {native_s:.3f} s: {page_s[0] / native_s:.1f} and {min(page_s) / native_s:.1f} times")


def print_frames(page, name):
    frames = page.value("window.frames_ms.splice(0)")
    drawn = [work for work, _ in frames if work > 1.0]  # the others only look for news
    between = [since for _, since in frames if since > 0.0]
    print(f"{name}: {len(drawn)} frames drawn, {statistics.median(drawn):.1f} ms each, the slowest {max(drawn):.1f} ms;"
          f" {statistics.median(between):.1f} ms from one to the next")


def print_size(package):
    """What a server sends that compresses what is not compressed yet."""
    sizes = [len(gzip.compress(file.read_bytes(), 9)) if file.suffix != ".gz" else file.stat().st_size
             for file in pathlib.Path(package).iterdir() if file.suffix not in (".txt", ".json")]
    print(f"{sum(sizes) / 1e6:.1f} MB to download")
