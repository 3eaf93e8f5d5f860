/*
 * What the keys do. The space bar and the arrows belong to the element in focus first; letters and
 * digits can be switched off, for whoever speaks to the computer or touches keys by accident.
 */
const Keys = (() => {
  /** The limb's number for each digit: as the player sits, hands above feet, left before right. */
  const LIMBS = { 1: 1, 2: 0, 3: 3, 4: 2 };
  const SWITCHES = { c: "click", l: "loop", n: "count-in" };

  /** A listener that calls the page's actions by name. */
  function listener(act) {
    return (event) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) {
        return;
      }
      const done = handle(act, event.key, event.target, event.repeat);
      if (done) {
        event.preventDefault();
      }
    };
  }

  /** True if the key was meant for the page. */
  function handle(act, key, target, repeat) {
    const slider = target.id === "tempo";
    if (key === " ") {
      if (target.closest("button, input, summary, a") && !slider) {
        return false; // a button or switch in focus keeps its own space bar
      }
      if (!repeat) {
        act.toggle();
      }
    } else if (key === "Escape") {
      act.stop();
    } else if (key === "ArrowRight" || key === "ArrowLeft") {
      if (slider) {
        return false; // it moves itself
      }
      act.walk(key === "ArrowRight" ? 1 : -1);
    } else if (key === "+" || key === "-") {
      act.nudge(key === "+" ? 1 : -1);
    } else {
      return document.querySelector("#keys-on").checked && single(act, key);
    }
    return true;
  }

  function single(act, key) {
    if (Object.hasOwn(LIMBS, key)) {
      act.flipLimb(LIMBS[key]);
    } else if (Object.hasOwn(SWITCHES, key)) {
      act.flip(SWITCHES[key]);
    } else if (key === "0") {
      act.setRate(1);
    } else {
      return false;
    }
    return true;
  }

  return { listener };
})();
