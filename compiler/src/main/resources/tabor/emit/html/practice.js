/*
 * Ways to practise a section: a few of its bars, a tempo that climbs, a tapped tempo. Reads the
 * controls of the drawer; says what they ask for.
 */
const Practice = (() => {
  const { byId } = Ui;
  const SLOWEST = 0.3;
  const FASTEST = 2;
  /** Taps further apart than this many milliseconds begin a new count. */
  const PAUSE = 2500;
  const chosen = new Map();
  let taps = [];

  /** A rate that the page plays. */
  function within(rate) {
    return Math.min(FASTEST, Math.max(SLOWEST, rate));
  }

  // ---- chosen bars --------------------------------------------------------------------------------

  /** Shows the bars of a part that can be chosen. */
  function showBars(index, part) {
    const count = Math.max(0, part.bars.length - 1);
    const bars = chosen.get(index) || [1, count];
    byId("Bars").hidden = count < 2;
    ["From", "To"].forEach((id, end) => {
      const select = byId(id);
      if (select.options.length !== count || select.dataset.of !== String(index)) {
        select.replaceChildren(...Array.from({ length: count }, (_, i) => new Option(i + 1, i + 1)));
        select.dataset.of = index;
      }
      select.value = bars[end];
    });
  }

  /** Takes the chosen bars from the controls; the other end gives way. */
  function chooseBars(index, part, changed) {
    const count = part.bars.length - 1;
    let from = Number(byId("From").value);
    let to = Number(byId("To").value);
    if (from > to) {
      [from, to] = changed === "From" ? [from, from] : [to, to];
    }
    if (from === 1 && to === count) {
      chosen.delete(index);
    } else {
      chosen.set(index, [from, to]);
    }
    showBars(index, part);
    return chosen.get(index) ? Ui.phrase("bars", from, to) : Ui.phrase("all-bars");
  }

  /** What is played of a part: `{ plan, takes }`. */
  function programme(index, part, data) {
    const bars = chosen.get(index);
    if (!bars) {
      return { plan: Timeline.programme(part.legs, part.again || part.legs, data.takes), takes: data.takes };
    }
    const leg = (part.again || part.legs)[0];
    const takes = [Timeline.excerpt(data.takes[leg.take], part.bars[bars[0] - 1], part.bars[bars[1]])];
    takes.sounds = data.sounds;
    const legs = [{ ...leg, take: 0 }];
    return { plan: Timeline.programme(legs, legs, takes), takes };
  }

  // ---- a tempo that climbs ------------------------------------------------------------------------

  /** Suggests a way up to the written tempo. */
  function suggest(written) {
    const from = Math.max(20, Math.round((written * 0.7) / 5) * 5);
    byId("ClimbFrom").value = from;
    byId("ClimbTo").value = Math.round(written);
  }

  /** The rate of each round, counted from 0; null if the tempo does not climb. */
  function speeds(written) {
    if (!byId("Climb").checked) {
      return null;
    }
    const [from, to, by, times] = ["ClimbFrom", "ClimbTo", "ClimbBy", "ClimbTimes"].map((id) => byId(id).valueAsNumber);
    if (!(from > 0 && to > 0 && by > 0 && times >= 1)) {
      Ui.say(Ui.phrase("numbers"), true);
      byId("Climb").checked = false;
      return null;
    }
    return (round) => {
      const steps = Math.floor(round / Math.floor(times));
      const tempo = from <= to ? Math.min(to, from + by * steps) : Math.max(to, from - by * steps);
      return within(tempo / written);
    };
  }

  // ---- a tapped tempo -----------------------------------------------------------------------------

  /** One tap at a time in milliseconds; the tempo of the last few, 0 after the first. */
  function tap(now) {
    if (taps.length > 0 && now - taps[taps.length - 1] > PAUSE) {
      taps = [];
    }
    taps = [...taps, now].slice(-6);
    return taps.length < 2 ? 0 : (60000 * (taps.length - 1)) / (taps[taps.length - 1] - taps[0]);
  }

  // ---- links --------------------------------------------------------------------------------------

  /** What an address asks for after its `#`: a section's name and a tempo, 0 for none. */
  function readLink(hash) {
    const [name, ...rest] = hash.replace(/^#/, "").split("&");
    const tempo = rest.map((each) => /^tempo=(\d+(?:\.\d+)?)$/.exec(each)).find(Boolean);
    let plain = name;
    try {
      plain = decodeURIComponent(name);
    } catch {
      // Not an address of ours.
    }
    return { name: plain, tempo: tempo ? Number(tempo[1]) : 0 };
  }

  return { within, showBars, chooseBars, programme, suggest, speeds, tap, readLink };
})();
