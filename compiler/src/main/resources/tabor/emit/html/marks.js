/*
 * The moving mark: a soft bar behind the notes that goes where the sound is. The engraving says where
 * its places stand; between two of them the mark glides, or for readers who want less motion it jumps.
 */
const Marks = (() => {
  const SVG = "http://www.w3.org/2000/svg";
  let shown = null;

  /**
   * The view of a figure within an article: the section's own, or on a chart a copy on its stage.
   *
   * @param figure the number of the figure; -1 for silence, which leaves what is there
   * @param places for each of its drawings the places in order: `[at, x, top, bottom]`, `at` in whole
   *     notes from bar 1
   */
  function view(article, figure, places) {
    if (figure < 0) {
      return null;
    }
    const stage = article.querySelector(".stage");
    if (!stage) {
      return of(article.querySelector(".score"), places);
    }
    if (stage.dataset.shows !== String(figure)) {
      stage.replaceChildren(...copy(document.querySelector(`[data-figure="${figure}"]`)));
      stage.dataset.shows = String(figure);
    }
    return of(stage, places);
  }

  /** Copies of a figure's drawings without the names and words that the originals have said already. */
  function copy(figure) {
    const copied = figure.cloneNode(true);
    copied.querySelectorAll(".mark, title, desc").forEach((element) => element.remove());
    for (const element of copied.querySelectorAll("[id], [role]")) {
      ["id", "role", "aria-labelledby", "aria-describedby"].forEach((name) => element.removeAttribute(name));
    }
    return copied.children;
  }

  /** The drawings below an element, the wide one and perhaps a narrow one, with their places. */
  function of(root, places) {
    const drawings = [...root.querySelectorAll("svg")].map((svg, k) => ({ svg, places: places[k] || [] }));
    return { drawings };
  }

  /** Of two drawings the one that the width of the window shows. */
  function visible(view) {
    return view.drawings.find(({ svg }) => svg.getBoundingClientRect().width > 0);
  }

  /** Puts the mark at a place of a view, in whole notes from bar 1. */
  function move(view, at, calm) {
    const drawing = view && visible(view);
    if (!drawing || drawing.places.length === 0) {
      clear();
      return;
    }
    const { svg, places } = drawing;
    let low = 0;
    let high = places.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (places[middle][0] <= at + 1e-6) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    const [from, left, top, bottom] = places[low];
    const [to, right, nextTop] = places[low + 1] || places[low];
    let x = left;
    if (!calm && nextTop === top && to > from) {
      x += ((right - left) * Math.min(1, Math.max(0, at - from) / (to - from)));
    }
    draw(svg, x, top, bottom);
  }

  function draw(svg, x, top, bottom) {
    if (shown === null || shown.ownerSVGElement !== svg) {
      clear();
      shown = document.createElementNS(SVG, "rect");
      shown.setAttribute("class", "mark");
      svg.prepend(shown);
    }
    const height = bottom - top;
    const width = height * 0.12;
    const attributes = { x: x - width / 2, y: top, width, height, rx: width * 0.3 };
    for (const [name, value] of Object.entries(attributes)) {
      shown.setAttribute(name, value.toFixed(2));
    }
    if (shown.dataset.top !== String(top)) {
      shown.dataset.top = String(top);
      bringIntoView(shown);
    }
  }

  /** Where the next system lies behind the edge or the desk, the page follows. */
  function bringIntoView(mark) {
    const box = mark.getBoundingClientRect();
    const desk = document.querySelector(".desk").getBoundingClientRect();
    const floor = desk.top > innerHeight / 2 ? desk.top : innerHeight;
    if (box.top < 0 || box.bottom > floor) {
      mark.scrollIntoView({ block: "center", behavior: "auto" });
    }
  }

  /** Takes the mark away. */
  function clear() {
    if (shown) {
      shown.remove();
      shown = null;
    }
  }

  return { view, move, clear };
})();
