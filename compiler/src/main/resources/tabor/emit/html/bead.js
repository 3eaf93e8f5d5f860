/*
 * The moving mark: a bead that travels along the row of counts, over the notes that sound. The
 * engraving says where its places stand; between two of them the bead glides, or for readers who want
 * less motion it jumps.
 */
const Bead = (() => {
  const SVG = "http://www.w3.org/2000/svg";
  const RADIUS = 9;
  let shown = null;
  let following = true;

  /**
   * The view of a figure within an article: the section's own, or on a chart a copy on its stage.
   *
   * @param figure the number of the figure; -1 for silence, which leaves what is there
   * @param places for each of its drawings its systems: `[height, [at, x, at, x, …]]`, `at` in whole
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
      const original = document.querySelector(`[data-figure="${figure}"]`);
      const drawings = [...original.querySelectorAll(".drawn")].map((drawn) => drawn.cloneNode(true));
      drawings.forEach((drawn) => drawn.querySelectorAll(".bead").forEach((bead) => bead.remove()));
      stage.replaceChildren(...drawings);
      stage.dataset.shows = String(figure);
    }
    return of(stage, places);
  }

  /** The drawings below an element, the wide one and perhaps a narrow one, with their systems. */
  function of(root, places) {
    const drawings = [...root.querySelectorAll(".drawn")].map((drawn, k) => {
      const systems = [...drawn.querySelectorAll("svg")].map((svg, i) => {
        const [height, moments] = (places[k] || [])[i] || [0, []];
        return { svg, height, moments };
      });
      return { drawn, systems: systems.filter((system) => system.moments.length > 0) };
    });
    return { drawings };
  }

  /** Of two drawings the one that the window shows. */
  function visible(view) {
    return view.drawings.find(({ drawn }) => drawn.getBoundingClientRect().width > 0);
  }

  /** Puts the bead at a place of a view, in whole notes from bar 1. */
  function move(view, at, calm) {
    const drawing = view && visible(view);
    if (!drawing || drawing.systems.length === 0) {
      clear();
      return;
    }
    const begun = drawing.systems.filter((system) => system.moments[0] <= at + 1e-4);
    const { svg, height, moments } = begun[begun.length - 1] || drawing.systems[0];
    let low = 0;
    let high = moments.length / 2 - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (moments[2 * middle] <= at + 1e-4) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    const [from, left, to = from, right = left] = moments.slice(2 * low, 2 * low + 4);
    const way = calm || to <= from ? 0 : Math.min(1, Math.max(0, at - from) / (to - from));
    draw(svg, left + (right - left) * way, height);
  }

  function draw(svg, x, y) {
    if (shown === null || shown.ownerSVGElement !== svg) {
      clear();
      shown = document.createElementNS(SVG, "circle");
      shown.setAttribute("class", "bead");
      shown.setAttribute("r", RADIUS);
      shown.setAttribute("cy", y);
      svg.prepend(shown);
      shown.setAttribute("cx", x.toFixed(1));
      bringIntoView(svg);
      return;
    }
    shown.setAttribute("cx", x.toFixed(1));
  }

  /** Where the next system lies behind the edge or the desk, the page follows, if it is to. */
  function bringIntoView(svg) {
    if (!following) {
      return;
    }
    const box = svg.getBoundingClientRect();
    const desk = document.querySelector(".desk").getBoundingClientRect();
    const floor = desk.top > innerHeight / 3 ? desk.top : innerHeight;
    if (box.top < 0 || box.bottom > floor) {
      // What is higher than the room over the desk shows its counts, where the bead is.
      svg.scrollIntoView({ block: box.height > floor ? "start" : "center", behavior: "auto" });
    }
  }

  /** Brings the first line of a view into view, before anything sounds. */
  function face(view) {
    const drawing = view && visible(view);
    if (drawing && drawing.systems.length > 0) {
      // An arrow key may still be scrolling to the part: that ends here, else it would go on past the notes.
      scrollTo({ top: scrollY, behavior: "auto" });
      bringIntoView(drawing.systems[0].svg);
    }
  }

  /** Back into view, after the window or the wish to follow has changed. */
  function stay() {
    if (shown) {
      bringIntoView(shown.ownerSVGElement);
    }
  }

  /** Takes the bead away. */
  function clear() {
    if (shown) {
      shown.remove();
      shown = null;
    }
  }

  return {
    view,
    move,
    face,
    clear,
    /** Whether the page follows the bead. */
    follow(on) {
      following = on;
      stay();
    },
    stay,
  };
})();
