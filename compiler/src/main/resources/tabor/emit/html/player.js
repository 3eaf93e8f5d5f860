/*
 * What plays: one section at a time, handed to the audio clock a little ahead. Tells the page what
 * happens through the hooks that it was given; knows no element of it.
 */
const Player = (() => {
  /** How far ahead of the audio clock strokes are handed over, in seconds; more while hidden. */
  const AHEAD = 0.15;
  const AHEAD_HIDDEN = 2.5;
  const TICK = 25;
  /** Between the reading of the clock and the first sound. */
  const SOON = 0.06;
  /** How long a browser may take to let sound out, in milliseconds. */
  const PATIENCE = 4000;

  const settings = {
    loop: true,
    countIn: true,
    click: false,
    clickAs: "beats",
    limbs: [true, true, true, true],
    alone: false,
    kit: 1,
    clicks: 1,
  };
  let hooks = {};
  let context = null;
  let desk = null;
  let run = null;
  let rate = 1;
  let lock = null;
  let interrupted = false;

  function open() {
    if (!context) {
      context = new AudioContext({ latencyHint: "interactive" });
      context.addEventListener("statechange", watch);
      desk = new Desk(context);
      settings.limbs.forEach((on, limb) => desk.presetSwitch(limb, on && !settings.alone));
      desk.presetSwitch(4, settings.click || settings.alone);
      desk.setLevels(settings.kit, settings.clicks);
    }
    return context.resume();
  }

  /** The system may take the sound away, for a call or an alarm. */
  function watch() {
    if (!run || !run.clock) {
      return;
    }
    if (context.state !== "running") {
      interrupted = true;
      hooks.said(Ui.phrase("interrupted"), true);
      wake();
    } else if (interrupted) {
      interrupted = false;
      hooks.said(Ui.phrase("goes-on"));
    }
  }

  function wake() {
    if (run && run.clock && context.state !== "running") {
      context.resume().catch(() => {});
    }
    if (run && !document.hidden) {
      keepAwake();
    }
  }

  /**
   * Plays a programme from one of its legs.
   *
   * @param index the part it belongs to
   * @param plan laid out by the timeline
   * @param takes by the numbers in the plan
   * @param speeds which rate each round has, or null
   */
  function play(index, plan, takes, leg, speeds) {
    halt();
    const mine = { index, plan, leg, speeds, round: 0, bar: 0, asked: performance.now() };
    run = mine;
    hooks.changed();
    const counts = settings.countIn ? takes[plan.legs[leg].take].countIn : [];
    let opened;
    try {
      opened = open();
    } catch {
      fail(Ui.phrase("no-sound"));
      return;
    }
    mine.cursor = new Timeline.Cursor(plan, leg, counts);
    mine.cursor.loop = settings.loop;
    // The context may take its time to run: until it does its clock stands still, and what is handed
    // over waits for it. The clock is read in a task of its own, after whatever had to be computed.
    // An engine may run long before it says so.
    const late = new Promise((_, no) =>
      setTimeout(() => context.state !== "running" && no(new Error("late")), PATIENCE));
    Promise.race([opened, late]).catch((error) => run === mine && fail(refusal(error)));
    Shelf.prepared(soon(mine))
      .then(() => new Promise((done) => setTimeout(done)))
      .then(() => run === mine && start(mine, counts));
  }

  function refusal(error) {
    return error.message === "late"
      ? Ui.phrase("held-back")
      : Ui.phrase("refuses", error.message);
  }

  /** The sounds of the first moments; the others are made while these sound. */
  function soon(mine) {
    const cursor = new Timeline.Cursor(mine.plan, mine.leg, mine.cursor.before.map((each) => [each.at, each.level]));
    const names = new Set();
    const first = mine.cursor.peek();
    const counted = mine.cursor.before.length > 0;
    if (counted) {
      ["click.strong", "click"].forEach((name) => names.add(name));
    }
    const leg = mine.plan.legs[mine.leg];
    cursor.before = [];
    for (let event = cursor.peek(); event && !counted && event.time < leg.start + 0.4; event = cursor.peek()) {
      if (event.kind === "stroke") {
        names.add(event.sound);
      }
      cursor.advance();
    }
    const rest = mine.plan.legs.flatMap((each) => each.events.map((event) => event.sound)).filter(Boolean);
    Shelf.want([...new Set(rest)], true);
    return first ? [...names] : [];
  }

  function start(mine, counts) {
    const { plan, leg } = mine;
    const before = counts.length > 0 ? -counts[0][0] * plan.legs[leg].whole : 0;
    if (mine.speeds) {
      rate = mine.speeds(0);
    }
    desk.begin();
    mine.clock = new Timeline.Clock(context.currentTime + SOON, plan.legs[leg].start - before, rate);
    mine.handed = context.currentTime;
    mine.timer = setInterval(() => feed(mine), TICK);
    keepAwake();
    feed(mine);
    hooks.started(mine);
  }

  /** Hands over what is due soon. What the clock has already passed, after a long sleep, is left out. */
  function feed(mine) {
    const now = context.currentTime;
    const until = now + (document.hidden ? AHEAD_HIDDEN : AHEAD);
    let event = mine.cursor.peek();
    while (event) {
      if (event.round !== mine.round) {
        newRound(mine, event);
      }
      const when = mine.clock.audio(event.time) - event.lead;
      if (when >= until) {
        break;
      }
      if (isHeard(mine, event) && when > now - 0.05) {
        desk.play(event, Math.max(when, now));
        mine.answered = mine.answered || performance.now();
      }
      mine.cursor.advance();
      event = mine.cursor.peek();
    }
    mine.handed = Math.max(mine.handed, until);
    if (!event && now > mine.clock.audio(mine.cursor.end)) {
      finish();
    }
  }

  /** The next time through: perhaps at another tempo, from its first barline on. */
  function newRound(mine, event) {
    mine.round = event.round;
    if (mine.speeds) {
      const next = mine.speeds(event.round);
      if (next !== rate) {
        mine.clock.change(mine.clock.audio(event.start), next);
        rate = next;
        hooks.sped();
      }
    }
  }

  /** Strokes always are, through their switches; clicks where the chosen kind of click has them. */
  function isHeard(mine, event) {
    if (event.kind !== "click") {
      return true;
    }
    if (event.level === 2) {
      mine.bar++;
    }
    if (!settings.click && !settings.alone) {
      return false;
    }
    switch (settings.clickAs) {
      case "written":
        return event.written;
      case "eighths":
        return true;
      case "gaps":
        return event.level > 0 && (mine.bar - 1) % 3 < 2;
      default:
        return event.level > 0;
    }
  }

  /** Stops at once. */
  function halt() {
    if (end() && desk) {
      desk.silence();
      rest(400);
    }
  }

  /** Comes to its end by itself; the last cymbal rings out. */
  function finish() {
    end();
    hooks.said(Ui.phrase("finished"));
    rest(100);
  }

  function fail(words) {
    end();
    hooks.said(words, true);
  }

  function end() {
    const mine = run;
    if (!mine) {
      return false;
    }
    run = null;
    interrupted = false;
    clearInterval(mine.timer);
    if (lock) {
      lock.release().catch(() => {});
      lock = null;
    }
    hooks.changed();
    return true;
  }

  /** The context rests once nothing sounds any more. */
  function rest(wait) {
    setTimeout(() => {
      if (!run && desk.voices.size === 0) {
        context.suspend().catch(() => {});
      } else if (!run) {
        rest(250);
      }
    }, wait);
  }

  function keepAwake() {
    if (!lock && navigator.wakeLock) {
      const asked = run;
      navigator.wakeLock.request("screen").then(
        (granted) => {
          lock = granted;
          granted.addEventListener("release", () => {
            lock = lock === granted ? null : lock;
          });
          if (run !== asked && !run) {
            granted.release().catch(() => {});
          }
        },
        () => {}
      );
    }
  }

  /** The rate, 1 being the written tempo; what has been handed over keeps its time. */
  function setRate(value) {
    rate = value;
    if (run && run.clock) {
      run.clock.change(Math.max(run.handed, context.currentTime), rate);
    }
  }

  /** Changes a setting; what sounds follows at once. */
  function set(name, value) {
    settings[name] = value;
    if (name === "loop" && run && run.cursor) {
      run.cursor.loop = value;
    }
    if (desk) {
      settings.limbs.forEach((on, limb) => desk.setSwitch(limb, on && !settings.alone));
      desk.setSwitch(4, settings.click || settings.alone);
      desk.setLevels(settings.kit, settings.clicks);
    }
  }

  document.addEventListener("visibilitychange", () => {
    wake();
    if (run && run.clock) {
      feed(run);
    }
  });
  document.addEventListener("pointerdown", wake);

  return {
    settings,
    play,
    halt,
    set,
    setRate,
    hook: (given) => (hooks = given),
    rate: () => rate,
    running: () => run,
    isHeard,
    /** The position that is heard now. */
    position: (mine) =>
      mine.clock.position(context.currentTime - (context.outputLatency || context.baseLatency || 0)),
    desk: () => desk,
    context: () => context,
  };
})();
