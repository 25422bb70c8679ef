"""How fast the bench's page is ready and how smoothly it turns, on a slow telephone: run by hand after a build.

    mkdocs build -f course/mkdocs.yml --strict
    python tests/benchmarks/bench_page.py course/site

Chromium has no graphics card here and its processor is slowed four times. The page itself notes when its first pictures
stand. Each knob is turned in every frame; besides the frames that were shown, the page's own work for each is printed, which
other work on the machine does not lengthen as much.
"""

import functools
import http.server
import statistics
import sys
import threading
from pathlib import Path

from playwright.sync_api import CDPSession, Page, sync_playwright

SETTING = "set=reaction&tuning=1112kHz&coupling=10uH&reaction=60pF&feed=gentle"
TELEPHONE = {"width": 390, "height": 800}
SLOWED = 4
FRAMES = 240
UNSIZED = 300  # pixels: how wide a canvas is that nobody has measured
READY = f"""(function look() {{
  const view = document.querySelector("#whole-bench .close-view");
  requestAnimationFrame(view && view.width !== {UNSIZED} ? () => performance.mark("ready") : look);
}})()"""
TURN = """([knob, frames]) => new Promise(done => {
  const input = document.querySelector(`#whole-bench-${knob}`), middle = (Number(input.min) + Number(input.max)) / 2;
  const reach = Number(input.max) - middle, lengths = [];
  let n = 0, last = performance.now();
  const turn = now => {
    lengths.push(now - last);
    last = now;
    if (n++ === frames) return done(lengths.slice(5));
    input.valueAsNumber = middle + 0.5 * reach * Math.sin(n / 40);
    input.dispatchEvent(new Event("input", {bubbles: true}));
    requestAnimationFrame(turn);
  };
  requestAnimationFrame(turn);
})"""

TAKEN = "['navigation', 'resource'].flatMap(kind => performance.getEntriesByType(kind)).map(file => file.encodedBodySize)"


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


def main(site: Path) -> None:
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://127.0.0.1:{server.server_port}/bench.html#{SETTING}"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=["--no-sandbox"])
        for slowed in (1, SLOWED):
            page = browser.new_context(viewport=TELEPHONE, has_touch=True).new_page()
            devtools = page.context.new_cdp_session(page)
            devtools.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
            devtools.send("Performance.enable", {"timeDomain": "threadTicks"})
            page.add_init_script(READY)
            report(page, devtools, address, slowed)
            page.context.close()
        browser.close()
    server.shutdown()


def report(page: Page, devtools: CDPSession, address: str, slowed: int) -> None:
    """Print what one telephone does."""
    page.goto(address)
    page.wait_for_selector("#whole-bench[data-read=yes]")
    ready = page.evaluate("performance.getEntriesByName('ready')[0].startTime")
    taken = page.evaluate(TAKEN)
    print(f"processor slowed {slowed} times: ready after {ready / 1e3:.2f} s, {sum(taken) / 1e3:.0f} kB in {len(taken)} files")
    for knob in ("tuning", "coupling", "throttle"):
        before = working(devtools)
        lengths = page.evaluate(TURN, [knob, FRAMES])
        work = 1e3 * (working(devtools) - before) / FRAMES
        print(
            f"  {knob:9} {1e3 / statistics.mean(lengths):5.1f} frames a second, median {statistics.median(lengths):5.1f} ms, "
            f"longest {max(lengths):4.0f} ms, work {work:4.1f} ms a frame"
        )


def working(devtools: CDPSession) -> float:
    """Seconds that the page's thread has worked."""
    figures = devtools.send("Performance.getMetrics")["metrics"]
    return next(figure["value"] for figure in figures if figure["name"] == "TaskDuration")


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "course/site"))
