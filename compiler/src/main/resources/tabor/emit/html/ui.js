/*
 * Small helpers of the page. A label is only touched where it differs: an engine that sees the text
 * under a pressed pointer replaced forgets the click.
 */
const Ui = (() => {
  const one = (selector, root = document) => root.querySelector(selector);
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const byId = (id) => document.getElementById(id);
  let fading = 0;

  /** Sets the words of an element. */
  function text(element, words) {
    if (element.textContent !== words) {
      element.textContent = words;
    }
  }

  /** Sets the value of a control that nobody is typing into. */
  function value(control, words) {
    if (control.value !== words && document.activeElement !== control) {
      control.value = words;
    }
  }

  /** Sets an attribute where it differs. */
  function attribute(element, name, words) {
    if (element.getAttribute(name) !== words) {
      element.setAttribute(name, words);
    }
  }

  /**
   * Says something where it is seen and read aloud. It goes after a while, unless it must `stay` until
   * the next thing is said.
   */
  function say(words, stay = false) {
    const line = byId("Status");
    clearTimeout(fading);
    text(line, words);
    line.classList.toggle("stays", stay);
    if (!stay) {
      fading = setTimeout(() => text(line, ""), 4000);
    }
  }

  const script = byId("Data");
  const words = script ? JSON.parse(script.textContent).words : {};

  /** A phrase in the language of the page; {0}, {1} … stand for what goes into it. */
  function phrase(key, ...parts) {
    return words[key].replace(/\{(\d)\}/g, (_, i) => parts[i]);
  }

  return { one, all, byId, text, value, attribute, say, phrase };
})();
