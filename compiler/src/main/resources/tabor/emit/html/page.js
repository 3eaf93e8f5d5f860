/*
 * The page: buttons, keys, the moving mark. Reads the lesson's data from the page itself; remembers
 * nothing and asks nobody.
 */
const Page = (() => {
  const LIMBS = ["right hand", "left hand", "right foot", "left foot"];
  /** How far ahead of the audio clock strokes are handed over, in seconds; more while hidden. */
  const AHEAD = 0.15;
  const AHEAD_HIDDEN = 2.5;
  const TICK = 25;

  const one = (selector, root = document) => root.querySelector(selector);
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const data = JSON.parse(one("#tabor-data").textContent);
  const plans = data.parts.map((part) =>
    Timeline.programme(part.legs, part.again || part.legs, data.takes)
  );
  const calm = matchMedia("(prefers-reduced-motion: reduce)");

  let context = null;
  let desk = null;
  let chosen = 0;
  let rate = 1;
  let running = null;
  let clickTouched = false;
  const sounding = [true, true, true, true];

  // ---- playing ------------------------------------------------------------------------------------

  function open() {
    if (!context) {
      context = new AudioContext({ latencyHint: "interactive" });
      desk = new Desk(context);
      sounding.forEach((on, limb) => desk.presetSwitch(limb, on));
      desk.presetSwitch(4, one("#click").checked);
    }
    return context.resume();
  }

  /** Plays a part from one of its legs. */
  function play(index, leg = 0) {
    stop();
    choose(index);
    const plan = plans[index];
    if (plan.turns === 0) {
      return;
    }
    const run = { plan, index, leg };
    running = run;
    show();
    open().then(
      () => running === run && start(run),
      () => say("This browser does not let the page play.")
    );
  }

  function start(run) {
    const { plan, index, leg } = run;
    for (const take of new Set(plan.legs.map((each) => each.take))) {
      new Set(data.takes[take].strokes.map((stroke) => stroke[1])).forEach((s) => desk.prepare(s));
    }
    const counts = one("#count-in").checked ? data.takes[plan.legs[leg].take].countIn : [];
    const before = counts.length > 0 ? -counts[0][0] * plan.legs[leg].whole : 0;
    run.cursor = new Timeline.Cursor(plan, leg, counts);
    run.cursor.loop = one("#loop").checked;
    run.clock = new Timeline.Clock(context.currentTime + 0.12, plan.legs[leg].start - before, rate);
    run.handed = context.currentTime;
    run.timer = setInterval(() => feed(run), TICK);
    feed(run);
    say("Playing " + data.parts[index].title);
    requestAnimationFrame(() => follow(run));
  }

  /** Hands over what is due soon. What the clock has already passed, after a long sleep, is left out. */
  function feed(run) {
    const now = context.currentTime;
    const until = now + (document.hidden ? AHEAD_HIDDEN : AHEAD);
    let event = run.cursor.peek();
    while (event && run.clock.audio(event.time) - event.lead < until) {
      const when = run.clock.audio(event.time) - event.lead;
      if (when > now - 0.05) {
        desk.play(event, Math.max(when, now));
      }
      run.cursor.advance();
      event = run.cursor.peek();
    }
    run.handed = Math.max(run.handed, until);
    if (!event && now > run.clock.audio(run.plan.length)) {
      stop();
    }
  }

  function stop() {
    const run = running;
    if (!run) {
      return;
    }
    running = null;
    clearInterval(run.timer);
    if (desk) {
      desk.silence();
    }
    Marks.clear();
    all(".rung.current").forEach((rung) => unmark(rung));
    show();
    say("Stopped");
  }

  function toggle(index = chosen) {
    if (running && running.index === index) {
      stop();
    } else {
      play(index);
    }
  }

  /** The rate from 0.5 to 1.5; what has been handed over keeps its time. */
  function setRate(value) {
    rate = Math.min(1.5, Math.max(0.5, value));
    if (running && running.clock) {
      running.clock.change(Math.max(running.handed, context.currentTime), rate);
    }
    show();
  }

  /** One beat a minute more or less than now, at the tempo that sounds or would sound. */
  function nudge(by) {
    const written = leg().tempo;
    setRate((Math.round(written * rate) + by) / written);
  }

  // ---- what the page shows ------------------------------------------------------------------------

  function leg() {
    const plan = plans[chosen];
    const index = running && running.legNow !== undefined ? running.legNow : 0;
    return plan.legs[Math.min(index, plan.legs.length - 1)] || { tempo: 90, unit: "quarters" };
  }

  function choose(index) {
    chosen = Math.min(plans.length - 1, Math.max(0, index));
    if (!clickTouched) {
      one("#click").checked = data.parts[chosen].click;
      setClick();
    }
    show();
  }

  function show() {
    const part = data.parts[chosen];
    all("[data-part]").forEach((element) => {
      const index = Number(element.dataset.part);
      const on = running !== null && running.index === index;
      element.classList.toggle("chosen", index === chosen);
      element.classList.toggle("playing", on);
      all(".play", element).forEach((button) => label(button, on));
    });
    label(one("#play"), running !== null);
    one("#now").textContent = part.title;
    const percent = Math.round(rate * 100);
    const speed = Math.round(leg().tempo * rate * 10) / 10;
    one("#speed").textContent = String(speed);
    one("#speed-words").textContent = leg().unit + " a minute · " + percent + " %";
    one("#tempo").value = String(percent);
    one("#tempo").setAttribute("aria-valuetext", speed + " " + leg().unit + " a minute, " + percent + " per cent");
    LIMBS.forEach((words, limb) => {
      const used = part.limbs.includes(limb);
      one(`[data-limb="${limb}"]`).closest("label").classList.toggle("resting", !used);
    });
  }

  function label(button, on) {
    button.classList.toggle("on", on);
    one(".word", button).textContent = on ? "Stop" : "Play";
  }

  function say(words) {
    one("#status").textContent = words;
  }

  /** Follows the sound with the mark on the notation and the rung of the ladder. */
  function follow(run) {
    if (running !== run) {
      return;
    }
    const late = context.outputLatency || context.baseLatency || 0;
    const position = run.clock.position(context.currentTime - late);
    const from = run.plan.legs[run.leg].start;
    if (position >= from) {
      const turn = Timeline.turnOf(run.plan, Timeline.turnAt(run.plan, position));
      if (turn.index !== run.legNow || turn.time !== run.timeNow) {
        step(run, turn);
      }
      run.at = turn.leg.from + (position - turn.start) / turn.leg.whole;
      Marks.move(run.view, run.at, calm.matches);
    }
    requestAnimationFrame(() => follow(run));
  }

  function unmark(rung) {
    rung.classList.remove("current");
    rung.removeAttribute("aria-current");
    one(".done", rung).textContent = "";
  }

  function look(article, figure) {
    return Marks.view(article, figure, data.figures[figure]);
  }

  function ends(rung) {
    return [Number(rung.dataset.first), Number(rung.dataset.last)];
  }

  /** Another leg or another time through has begun. */
  function step(run, turn) {
    const fresh = turn.index !== run.legNow;
    run.legNow = turn.index;
    run.timeNow = turn.time;
    const article = one(`[data-part="${run.index}"]`);
    all(".rung", article).forEach((rung) => {
      const [first, last] = ends(rung);
      const on = first <= turn.index && turn.index <= last;
      const begin = run.plan.legs[first];
      const end = run.plan.legs[last];
      if (on) {
        const count = end.firstTurn + end.times - begin.firstTurn;
        rung.classList.add("current");
        rung.setAttribute("aria-current", "step");
        one(".done", rung).textContent = turn.within - begin.firstTurn + 1 + " of " + count;
      } else {
        unmark(rung);
      }
    });
    if (fresh) {
      run.view = look(article, turn.leg.figure);
      show();
      if (run.plan.legs.length > 1) {
        say(turn.leg.words);
      }
    }
  }

  // ---- switches -----------------------------------------------------------------------------------

  function setLimb(limb, on) {
    sounding[limb] = on;
    one(`[data-limb="${limb}"]`).checked = on;
    if (desk) {
      desk.setSwitch(limb, on);
    }
  }

  function setClick() {
    if (desk) {
      desk.setSwitch(4, one("#click").checked);
    }
  }

  function setLoop() {
    if (running && running.cursor) {
      running.cursor.loop = one("#loop").checked;
    }
  }

  function flip(id) {
    const box = one("#" + id);
    box.checked = !box.checked;
    box.dispatchEvent(new Event("change"));
  }

  function flipLimb(limb) {
    setLimb(limb, !sounding[limb]);
  }

  /** The part before or after; it plays on there if something was playing. */
  function walk(by) {
    const index = Math.min(plans.length - 1, Math.max(0, chosen + by));
    if (index === chosen) {
      return;
    }
    if (running) {
      play(index);
    } else {
      choose(index);
    }
    const calmly = calm.matches ? "auto" : "smooth";
    one(`[data-part="${index}"]`).scrollIntoView({ block: "nearest", behavior: calmly });
  }

  function begin() {
    document.documentElement.classList.add("plays");
    one(".desk").hidden = false;
    all("[data-part]").forEach((article) => {
      const index = Number(article.dataset.part);
      all(".play", article).forEach((button) => button.addEventListener("click", () => toggle(index)));
      all(".rung", article).forEach((rung) => {
        rung.addEventListener("click", () => play(index, ends(rung)[0]));
      });
      article.addEventListener("pointerdown", () => running || choose(index));
      const drawn = plans[index].legs.find((each) => each.figure >= 0);
      if (drawn) {
        look(article, drawn.figure);
      }
    });
    one("#play").addEventListener("click", () => toggle(running ? running.index : chosen));
    one("#slower").addEventListener("click", () => nudge(-1));
    one("#faster").addEventListener("click", () => nudge(1));
    one("#tempo").addEventListener("input", (event) => setRate(Number(event.target.value) / 100));
    one("#loop").addEventListener("change", setLoop);
    one("#click").addEventListener("change", () => {
      clickTouched = true;
      setClick();
    });
    all("[data-limb]").forEach((box) => {
      box.addEventListener("change", () => setLimb(Number(box.dataset.limb), box.checked));
    });
    // A switch pressed with the mouse gives the space bar back to "play".
    one(".desk").addEventListener("pointerup", (event) => {
      if (event.pointerType === "mouse") {
        setTimeout(() => document.activeElement.blur());
      }
    });
    document.addEventListener("keydown", Keys.listener({ toggle: () => toggle(), stop, walk, nudge, setRate, flip, flipLimb }));
    document.addEventListener("visibilitychange", () => running && running.cursor && feed(running));
    new ResizeObserver(makeRoom).observe(one(".desk"));
    choose(0);
  }

  /** Room at the foot of the page, so that the desk hides nothing. */
  function makeRoom() {
    const desk = one(".desk");
    const fixed = getComputedStyle(desk).position === "fixed";
    document.documentElement.style.setProperty("--desk-room", (fixed ? desk.offsetHeight : 0) + "px");
  }

  if (plans.length > 0) {
    begin();
  }

  /** What tests ask: a part rendered without a loudspeaker, and what sounds now. */
  return {
    render(part, options = {}) {
      const plan = plans[part];
      const first = plan.legs[options.leg || 0];
      const countIn = options.countIn ? data.takes[first.take].countIn : [];
      return Desk.render(plan, { ...options, countIn });
    },
    state: () => ({
      chosen,
      rate,
      playing: running !== null,
      leg: running ? running.legNow : undefined,
      time: running ? running.timeNow : undefined,
      at: running ? running.at : undefined,
      loop: one("#loop").checked,
      sounding: [...sounding],
      levels: desk ? desk.levels() : [],
    }),
  };
})();
