/*
 * The big view: the chosen section fills the window, its notes as large as they go. Of the two
 * drawings the one that comes out larger is shown; a section that would be small as a whole is as wide
 * as the window instead, and the page follows the bead.
 */
const BigView = (() => {
  const { one, all, byId } = Ui;
  /** A whole section may be smaller by this factor than one as wide as the window. */
  const WHOLE = 0.6;
  const GAP = 12;
  let on = false;

  function size(drawn) {
    const boxes = all("svg", drawn).map((svg) => svg.viewBox.baseVal);
    const width = Math.max(1, ...boxes.map((box) => box.width));
    const height = boxes.reduce((sum, box) => sum + box.height + GAP, 1);
    return { width, height };
  }

  /** Sizes the drawings of the chosen section for the window. */
  function fit() {
    if (!on) {
      return;
    }
    const article = one("article.chosen");
    const stage = one(".stage", article);
    const root = stage && stage.childElementCount > 0 ? stage : one(".score", article);
    all(".fit").forEach((drawn) => drawn.classList.remove("fit"));
    if (!root) {
      return;
    }
    const room = article.getBoundingClientRect();
    const head = one("h2", article).getBoundingClientRect();
    const width = room.width - 48;
    const height = room.height - (head.bottom - room.top) - 24;
    const tries = all(".drawn", root).map((drawn) => {
      const own = size(drawn);
      return { drawn, whole: Math.min(width / own.width, height / own.height), wide: width / own.width };
    });
    const best = tries.reduce((a, b) => (b.whole > a.whole ? b : a), tries[0]);
    if (!best) {
      return;
    }
    const scale = best.whole >= WHOLE * best.wide ? best.whole : best.wide;
    best.drawn.classList.add("fit");
    all("svg", best.drawn).forEach((svg) => {
      svg.style.width = svg.viewBox.baseVal.width * scale + "px";
    });
  }

  /** Goes in or out. */
  function set(wanted) {
    on = wanted;
    document.documentElement.classList.toggle("big", on);
    byId("Big").setAttribute("aria-pressed", String(on));
    if (on) {
      fit();
    } else {
      all(".drawn svg").forEach((svg) => svg.style.removeProperty("width"));
      all(".fit").forEach((drawn) => drawn.classList.remove("fit"));
      one("article.chosen").scrollIntoView({ block: "nearest" });
    }
  }

  return { set, fit, isOn: () => on };
})();
