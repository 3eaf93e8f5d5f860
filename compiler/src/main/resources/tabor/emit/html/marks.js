/*
 * The moving mark: a soft bar behind the notes that goes where the sound is. The engraving says where
 * its places stand; between two of them the mark glides, or for readers who want less motion it jumps.
 */
const Marks = (() => {
  const SVG = "http://www.w3.org/2000/svg";
  const views = new WeakMap();
  let shown = null;

  /**
   * The view of a figure within an article: the section's own, or on a chart a copy on its stage.
   *
   * @param figure the number of the figure; -1 for silence, which leaves what is there
   */
  function view(article, figure) {
    const stage = article.querySelector(".stage");
    if (!stage) {
      return figure < 0 ? null : of(article.querySelector(".score svg"));
    }
    if (figure < 0) {
      return null;
    }
    if (stage.dataset.shows !== String(figure)) {
      const original = document.querySelector(`[data-figure="${figure}"] svg`);
      stage.replaceChildren();
      if (original) {
        stage.append(copy(original));
      }
      stage.dataset.shows = String(figure);
    }
    return of(stage.querySelector("svg"));
  }

  /** A copy without the names and words that the original has said already. */
  function copy(original) {
    const svg = original.cloneNode(true);
    svg.querySelectorAll(".mark").forEach((mark) => mark.remove());
    for (const element of [svg, ...svg.querySelectorAll("[id]")]) {
      element.removeAttribute("id");
    }
    svg.setAttribute("aria-hidden", "true");
    return svg;
  }

  /** Places of an engraving in order: `at` in whole notes from the start of its section. */
  function of(svg) {
    if (!svg) {
      return null;
    }
    if (!views.has(svg)) {
      const places = [...svg.querySelectorAll("[data-at]")].map((element) => {
        const system = element.closest("[data-top]");
        return {
          at: Number(element.dataset.at),
          x: Number(element.dataset.x),
          top: Number(system.dataset.top),
          bottom: Number(system.dataset.bottom),
          end: element.dataset.end !== undefined,
        };
      });
      places.sort((a, b) => a.at - b.at || Number(b.end) - Number(a.end));
      views.set(svg, { svg, places, rect: null });
    }
    return views.get(svg);
  }

  /** Puts the mark at a place of a view, in whole notes from the start of the section. */
  function move(view, at, calm) {
    if (!view || view.places.length === 0) {
      clear();
      return;
    }
    if (shown !== view) {
      clear();
      shown = view;
    }
    const { places } = view;
    let low = 0;
    let high = places.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (places[middle].at <= at + 1e-6) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    const here = places[low];
    const next = places[low + 1];
    let x = here.x;
    if (!calm && next && next.top === here.top && next.at > here.at) {
      x += ((next.x - here.x) * (at - here.at)) / (next.at - here.at);
    }
    draw(view, here, x);
  }

  function draw(view, place, x) {
    if (!view.rect) {
      view.rect = document.createElementNS(SVG, "rect");
      view.rect.setAttribute("class", "mark");
      view.svg.prepend(view.rect);
    }
    const height = place.bottom - place.top;
    const width = height * 0.11;
    const attributes = { x: x - width / 2, y: place.top, width, height, rx: width * 0.3 };
    for (const [name, value] of Object.entries(attributes)) {
      view.rect.setAttribute(name, value.toFixed(2));
    }
    if (view.top !== place.top) {
      view.top = place.top;
      const box = view.rect.getBoundingClientRect();
      if (box.top < 0 || box.bottom > innerHeight - 120) {
        view.rect.scrollIntoView({ block: "center", behavior: "auto" });
      }
    }
  }

  /** Takes the mark away. */
  function clear() {
    if (shown && shown.rect) {
      shown.rect.remove();
      shown.rect = null;
      shown.top = undefined;
    }
    shown = null;
  }

  return { view, move, clear };
})();
