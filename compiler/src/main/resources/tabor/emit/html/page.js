/*
 * The page: what is shown, and what its buttons, switches and keys do. Reads the lesson's data from
 * the page itself; remembers nothing and asks nobody.
 */
const Page = (() => {
  const LIMBS = ["right-hand", "left-hand", "right-foot", "left-foot"];
  const { one, all, byId, text, value, attribute, say, phrase } = Ui;
  const data = JSON.parse(byId("Data").textContent);
  const articles = all("[data-part]");
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const small = matchMedia("(max-width: 40rem), (max-height: 30rem)");
  let chosen = 0;
  let clickTouched = false;

  data.takes.sounds = data.sounds;
  Sounds.learn(data.timbres);

  // ---- playing ------------------------------------------------------------------------------------

  /** Plays a part from one of its legs. */
  function play(index, leg = 0) {
    choose(index);
    const part = data.parts[index];
    const { plan, takes } = Practice.programme(index, part, data);
    if (plan.turns === 0) {
      Player.halt();
      say(phrase("nothing"), true);
      return;
    }
    Player.play(index, plan, takes, leg, Practice.speeds(plan.legs[leg].tempo));
  }

  function stop() {
    if (Player.running()) {
      Player.halt();
      say(phrase("stopped"));
    }
  }

  function toggle(index = chosen) {
    const run = Player.running();
    if (run && run.index === index) {
      stop();
    } else {
      play(index);
    }
  }

  /** After a change that only a new start can follow. */
  function again() {
    const run = Player.running();
    if (run) {
      play(run.index);
    }
  }

  function setRate(rate) {
    Player.setRate(Practice.within(rate));
    show();
  }

  /** So many beats per minute in place of the tempo that sounds or would sound. */
  function setTempo(tempo) {
    if (tempo > 0) {
      setRate(tempo / leg().tempo);
      say(phrase("tempo", speed()));
    } else {
      show();
    }
  }

  /** One beat a minute more or less than now. */
  function nudge(by) {
    setTempo(Math.round(leg().tempo * Player.rate()) + by);
  }

  function tap() {
    const tempo = Practice.tap(performance.now());
    if (tempo > 0) {
      setTempo(Math.round(tempo));
    } else {
      say(phrase("tap-on"));
    }
  }

  // ---- what the page shows ------------------------------------------------------------------------

  function leg() {
    const run = Player.running();
    const legs = data.parts[chosen].legs;
    const index = run && run.index === chosen && run.legNow !== undefined ? run.legNow : 0;
    return legs[Math.min(index, legs.length - 1)] || { tempo: 90, unit: "" };
  }

  function speed() {
    return Math.round(leg().tempo * Player.rate() * 10) / 10;
  }

  function choose(index) {
    chosen = Math.min(data.parts.length - 1, Math.max(0, index));
    const part = data.parts[chosen];
    if (!clickTouched) {
      byId("Click").checked = part.click;
      byId("ClickAs").value = part.click ? "written" : "beats";
      setClick();
    }
    Practice.showBars(chosen, part);
    if (!byId("Climb").checked) {
      Practice.suggest(leg().tempo);
    }
    Shelf.want(soundsOf(part));
    show();
    BigView.fit();
  }

  function soundsOf(part) {
    const numbers = part.legs.flatMap((each) => data.takes[each.take].strokes.map((stroke) => stroke[1]));
    return ["click.strong", "click", ...new Set(numbers.map((number) => data.sounds[number]))];
  }

  function show() {
    const run = Player.running();
    const part = data.parts[chosen];
    articles.forEach((article, index) => {
      const on = run !== null && run.index === index;
      article.classList.toggle("chosen", index === chosen);
      article.classList.toggle("playing", on);
      label(byId("Play" + index), on);
    });
    label(byId("Play"), run !== null);
    value(byId("Jump"), String(chosen));
    const percent = Math.round(Player.rate() * 100) + " %";
    value(byId("Bpm"), String(speed()));
    attribute(byId("Bpm"), "aria-label", phrase("tempo-label", leg().unit));
    text(byId("Unit"), phrase("per-minute", leg().unit, percent));
    value(byId("Tempo"), String(Math.round(Player.rate() * 100)));
    attribute(byId("Tempo"), "aria-valuetext", phrase("of-written", percent));
    const tempo = Player.rate() === 1 ? "" : "&tempo=" + speed();
    attribute(byId("Link"), "href", "#" + encodeURIComponent(part.name) + tempo);
    LIMBS.forEach((words, limb) => {
      one(`[data-limb="${limb}"]`).closest("label").classList.toggle("resting", !part.limbs.includes(limb));
    });
  }

  function label(button, on) {
    button.classList.toggle("on", on);
    text(one(".word", button), phrase(on ? "stop" : "play"));
  }

  /** Something began or ended. */
  function changed() {
    if (!Player.running()) {
      Bead.clear();
      all(".rung.current").forEach(unmark);
      byId("Ladder").replaceChildren();
      text(byId("Mark"), "");
      text(byId("Cue"), "");
    }
    show();
  }

  function started(run) {
    say(phrase("playing", data.parts[run.index].title));
    // During the count-in the reader finds the place.
    const shown = run.plan.legs.slice(run.leg).find((each) => each.figure >= 0);
    Bead.face(shown && look(run.index, shown.figure));
    requestAnimationFrame(() => follow(run));
  }

  /** Follows the sound with the bead on the notation and the rung of the ladder. */
  function follow(run) {
    if (Player.running() !== run) {
      return;
    }
    const position = Player.position(run);
    if (position >= run.plan.legs[run.leg].start) {
      const turn = Timeline.turnOf(run.plan, Timeline.turnAt(run.plan, position));
      if (turn.index !== run.legNow || turn.time !== run.timeNow) {
        step(run, turn);
      }
      run.at = turn.leg.from + (position - turn.start) / turn.leg.whole;
      Bead.move(run.view, run.at, calm.matches);
    }
    requestAnimationFrame(() => follow(run));
  }

  function look(index, figure) {
    return Bead.view(articles[index], figure, data.figures[figure]);
  }

  /** Another leg or another time through has begun. */
  function step(run, turn) {
    const fresh = turn.index !== run.legNow;
    run.legNow = turn.index;
    run.timeNow = turn.time;
    if (fresh) {
      run.view = look(run.index, turn.leg.figure) || run.view;
      showLadder(run, turn);
      show();
      BigView.fit();
      const news = [turn.leg.words, turn.leg.mark, turn.leg.cue].filter(Boolean).join(". ");
      if (run.plan.legs.length > 1 && news !== run.said) {
        run.said = news;
        say(news);
      }
      text(byId("Mark"), turn.leg.mark || "");
      text(byId("Cue"), turn.leg.cue || "");
    }
    all(`.rung[data-of="${run.index}"]`).forEach((rung) => mark(rung, turn));
  }

  /** The ladder that is being climbed stands over the desk, whatever part of the page is in view. */
  function showLadder(run, turn) {
    const ladders = all(".ladder", articles[run.index]);
    const own = ladders.find((ladder) => all(".rung", ladder).some((rung) => holds(rung, turn.index)));
    const strip = byId("Ladder");
    if (!own || own.childElementCount < 2) {
      strip.replaceChildren();
    } else if (strip.dataset.of !== run.index + "/" + ladders.indexOf(own) || strip.childElementCount === 0) {
      strip.replaceChildren(...own.cloneNode(true).children);
      strip.dataset.of = run.index + "/" + ladders.indexOf(own);
    }
  }

  function holds(rung, index) {
    return Number(rung.dataset.first) <= index && index <= Number(rung.dataset.last);
  }

  function mark(rung, turn) {
    if (!holds(rung, turn.index)) {
      unmark(rung);
      return;
    }
    rung.classList.add("current");
    attribute(rung, "aria-current", "step");
    text(one(".done", rung), phrase("of", turn.leg.through + turn.time, rung.dataset.count));
    if (rung.closest("#Ladder")) {
      rung.scrollIntoView({ block: "nearest", inline: "nearest" });
    }
  }

  function unmark(rung) {
    rung.classList.remove("current");
    rung.removeAttribute("aria-current");
    text(one(".done", rung), "");
  }

  // ---- switches -----------------------------------------------------------------------------------

  function setLimb(limb, on) {
    Player.set("limbs", Player.settings.limbs.map((was, i) => (i === limb ? on : was)));
    one(`[data-limb="${limb}"]`).checked = on;
    say(phrase(on ? "on" : "off", phrase(LIMBS[limb])));
  }

  function setClick() {
    Player.set("clickAs", byId("ClickAs").value);
    Player.set("click", byId("Click").checked);
  }

  function flip(id) {
    byId(id).checked = !byId(id).checked;
    byId(id).dispatchEvent(new Event("change"));
  }

  /** The part before or after, or any; it plays on there if something was playing. */
  function go(index) {
    if (index < 0 || index >= data.parts.length) {
      say(phrase(index < 0 ? "first" : "last"));
      return;
    }
    if (Player.running()) {
      play(index);
    } else {
      choose(index);
      say(phrase("number-of", index + 1, data.parts.length, data.parts[index].title));
    }
    const behavior = calm.matches ? "auto" : "smooth";
    articles[index].scrollIntoView({ block: "start", behavior });
  }

  function big(on = !BigView.isOn()) {
    BigView.set(on);
    say(phrase(on ? "big" : "small"));
  }

  /** Escape: out of the drawer, out of the big view, else stop. */
  function leave() {
    if (!byId("Drawer").hidden) {
      drawer(false);
      byId("More").focus();
    } else if (BigView.isOn()) {
      big(false);
    } else {
      stop();
    }
  }

  function drawer(open) {
    byId("Drawer").hidden = !open;
    byId("More").setAttribute("aria-expanded", String(open));
    document.documentElement.classList.toggle("more", open);
  }

  /** Goes where the address points. */
  function followLink() {
    const { name, tempo } = Practice.readLink(location.hash);
    const index = data.parts.findIndex((part) => part.name === name);
    if (index >= 0) {
      choose(index);
      if (tempo > 0) {
        setTempo(tempo);
      }
      articles[index].scrollIntoView({ block: "start" });
    }
  }

  /** Room at the foot of the page, so that the desk hides nothing. */
  function makeRoom() {
    document.documentElement.style.setProperty("--desk-room", one(".desk").offsetHeight + "px");
    BigView.fit();
  }

  /** What Controls wires to buttons, switches and keys. */
  const actions = {
    play, toggle, again, stop, setRate, setTempo, nudge, tap, setLimb, setClick, flip, go, big, leave, drawer,
    written: () => {
      setRate(1);
      say(phrase("written", speed()));
    },
    walk: (by) => go(chosen + by),
    flipLimb: (limb) => setLimb(limb, !Player.settings.limbs[limb]),
    touchClick: () => (clickTouched = true),
    chosen: () => chosen,
    choose,
  };

  if (data.parts.length > 0) {
    Player.hook({ changed, started, said: say, sped: () => { show(); say(phrase("tempo", speed())); } });
    Controls.wire(actions, data, articles);
    if (small.matches && byId("Key")) {
      byId("Key").open = false;
    }
    new ResizeObserver(makeRoom).observe(one(".desk"));
    addEventListener("resize", () => {
      BigView.fit();
      Bead.stay();
    });
    addEventListener("hashchange", followLink);
    addEventListener("beforeprint", () => byId("Key") && (byId("Key").open = true));
    choose(0);
    followLink();
  }

  /** What tests ask: a part rendered without a loudspeaker, and what sounds now. */
  return {
    render(part, options = {}) {
      const { plan, takes } = Practice.programme(part, data.parts[part], data);
      const first = plan.legs[options.leg || 0];
      const countIn = options.countIn ? takes[first.take].countIn : [];
      return Desk.render(plan, { ...options, countIn });
    },
    state() {
      const run = Player.running();
      const desk = Player.desk();
      return {
        chosen,
        rate: Player.rate(),
        playing: run !== null,
        leg: run ? run.legNow : undefined,
        time: run ? run.timeNow : undefined,
        round: run ? run.round : undefined,
        at: run ? run.at : undefined,
        loop: Player.settings.loop,
        sounding: [...Player.settings.limbs],
        levels: desk ? desk.levels() : [],
        struck: desk ? desk.struck : 0,
        voices: desk ? desk.voices.size : 0,
        context: Player.context() ? Player.context().state : "none",
        wait: run && run.answered ? run.answered - run.asked : undefined,
      };
    },
  };
})();
