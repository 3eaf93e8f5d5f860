/*
 * What the keys do. The space bar and the arrows belong to the element in focus first; letters and
 * digits can be switched off, for whoever speaks to the computer or touches keys by accident.
 */
const Keys = (() => {
  /** The limb's number for each digit: as the player sits, hands above feet, left before right. */
  const LIMBS = { 1: 1, 2: 0, 3: 3, 4: 2 };
  const SWITCHES = { c: "Click", l: "Loop", n: "CountIn" };

  /** A listener that calls the page's actions by name. */
  function listener(act) {
    return (event) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) {
        return;
      }
      if (handle(act, event.key, event.target, event.repeat)) {
        event.preventDefault();
      }
    };
  }

  /** True if the key was meant for the page. */
  function handle(act, key, target, repeat) {
    const own = target.closest("button, input, select, summary, a");
    const typed = own && own.matches("select, input[type=number]");
    const slider = own && own.matches("input[type=range]");
    if (key === "Escape") {
      act.leave();
    } else if (typed) {
      return false;
    } else if (key === " ") {
      if (own && !slider) {
        return false; // a button or switch in focus keeps its own space bar
      }
      if (!repeat) {
        act.toggle();
      }
    } else if (key === "ArrowRight" || key === "ArrowLeft") {
      if (slider) {
        return false; // it moves itself
      }
      act.walk(key === "ArrowRight" ? 1 : -1);
    } else if (key === "+" || key === "-") {
      act.nudge(key === "+" ? 1 : -1);
    } else {
      return document.getElementById("KeysOn").checked && single(act, key, repeat);
    }
    return true;
  }

  function single(act, key, repeat) {
    if (Object.hasOwn(LIMBS, key)) {
      act.flipLimb(LIMBS[key]);
    } else if (Object.hasOwn(SWITCHES, key)) {
      act.flip(SWITCHES[key]);
    } else if (key === "0") {
      act.written();
    } else if (key === "t" && !repeat) {
      act.tap();
    } else if (key === "f" && !repeat) {
      act.big();
    } else {
      return false;
    }
    return true;
  }

  return { listener };
})();
