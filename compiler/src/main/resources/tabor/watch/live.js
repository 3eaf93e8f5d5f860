/* Loads the page again when it has changed, shows where, and shows what is wrong until it is fixed. */
"use strict";
(() => {
  const KEY = "tabor-changed";
  const here = () => decodeURIComponent(location.pathname).replace(/^\//, "");
  const list = here() === "";

  /** The parts of a page in order: what stands directly in its main element. */
  const parts = (page) => [...((page.querySelector("main") || page.body || page).children)];

  /** What a part says and shows; ids of drawings are numbered through the page and do not count. */
  const look = (part) => part.outerHTML.replace(/(id|aria-[a-z]+|data-part|data-figure)="[^"]*"/g, "");

  /** The first part that is other than before. */
  function firstChanged(before, after) {
    const old = parts(before).map(look);
    const fresh = parts(after).map(look);
    const index = fresh.findIndex((text, i) => text !== old[i]);
    return index < 0 && fresh.length < old.length ? fresh.length - 1 : index;
  }

  async function reload() {
    try {
      const answer = await fetch(location.pathname, { cache: "no-store" });
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      const index = firstChanged(document, page);
      sessionStorage.setItem(KEY, JSON.stringify([here(), index, scrollX, scrollY]));
    } catch {
      sessionStorage.removeItem(KEY);
    }
    location.reload();
  }

  /** After loading again: where the reader was, or where the change is if that is out of view. */
  function goBack() {
    const kept = JSON.parse(sessionStorage.getItem(KEY) || "[]");
    sessionStorage.removeItem(KEY);
    if (kept[0] !== here()) {
      return;
    }
    scrollTo(kept[2], kept[3]);
    const part = parts(document)[kept[1]];
    if (part) {
      part.scrollIntoView({ block: "nearest" });
      part.animate([{ outline: "3px solid #c44f1c" }, { outline: "3px solid transparent" }], 1200);
    }
  }

  const box = document.createElement("pre");
  box.id = "TaborProblems";
  box.setAttribute("role", "alert");
  Object.assign(box.style, {
    position: "fixed", zIndex: "9", left: "1rem", right: "1rem", top: "1rem", maxHeight: "45vh", overflow: "auto",
    margin: "0", padding: "0.75rem 1rem", background: "#fff6f0", color: "#1d2426", border: "2px solid #c44f1c",
    borderRadius: "0.4rem", font: "0.85rem/1.4 ui-monospace, 'Liberation Mono', monospace", whiteSpace: "pre-wrap",
  });

  function show(problems) {
    box.textContent = problems.join("\n");
    if (problems.length === 0) {
      box.remove();
    } else if (!box.isConnected) {
      document.body.append(box);
    }
  }

  // The browser would go back to the old place by itself, after us.
  history.scrollRestoration = "manual";
  addEventListener("load", () => requestAnimationFrame(goBack));
  const version = document.getElementById("TaborLive").dataset.version;
  const events = new EventSource("/.tabor/events?since=" + version);
  addEventListener("pagehide", () => events.close());
  events.onmessage = (message) => {
    const { all, paths, problems } = JSON.parse(message.data);
    show(problems);
    if (all || paths.includes(here()) || (list && paths.length > 0)) {
      reload();
    }
  };
})();
