/*
 * The kit, as arithmetic: the samples of a timbre from its layers, which stand in the page's data
 * (frequencies in hertz, times in seconds). The compiler's sound files are made by the same steps.
 * Nothing here knows of Web Audio or of the page, so that a sound can be computed and measured
 * anywhere; long work is cut into slices by generators.
 */
const Sounds = (() => {
  const RATE = 44100;
  /** A timbre that rings longer than this many seconds has one take, a shorter one two. */
  const LONG = 0.7;
  let table = {};

  /**
   * Repeatable random numbers from 0 to 1: a linear congruential generator modulo 2 to the 32 with a
   * multiplier of our own (see the project's docs).
   */
  function random(name, variant) {
    let state = variant;
    for (let i = 0; i < name.length; i++) {
      state = (Math.imul(state, 31) + name.charCodeAt(i)) | 0;
    }
    const next = () => {
      state = (Math.imul(state, 3066278165) + 297410973) | 0;
      return (state >>> 8) / 16777216;
    };
    next();
    next();
    next();
    return next;
  }

  /** Adds a decaying sine by its recurrence; `tau` is the time in which it falls to 37 %. */
  function mode(out, frequency, gain, tau, phase = 0) {
    if (frequency >= RATE * 0.48) {
      return;
    }
    const turn = (2 * Math.PI * frequency) / RATE;
    const damp = Math.exp(-1 / (tau * RATE));
    const to = Math.min(out.length, Math.ceil(tau * RATE * 9));
    const near = 2 * damp * Math.cos(turn);
    const far = damp * damp;
    let before = (gain / damp) * Math.sin(phase - turn);
    let now = gain * Math.sin(phase);
    for (let i = 0; i < to; i++) {
      out[i] += now;
      const next = near * now - far * before;
      before = now;
      now = next;
    }
  }

  /** Adds a sine that glides down from the pitch of the stroke; `drive` bends its tops. */
  function* skin(out, low, high, glide, gain, tau, drive = 0) {
    const to = Math.min(out.length, Math.ceil(tau * RATE * 9));
    const glideStep = Math.exp(-1 / (glide * RATE));
    const fallStep = Math.exp(-1 / (tau * RATE));
    const top = Math.tanh(drive);
    let bend = (2 * Math.PI * (high - low)) / RATE;
    let fall = 1;
    let phase = 0;
    for (let i = 0; i < to; i++) {
      phase += (2 * Math.PI * low) / RATE + bend;
      const wave = Math.sin(phase) * fall;
      out[i] += gain * (drive > 0 ? Math.tanh(wave * drive) / top : wave);
      bend *= glideStep;
      fall *= fallStep;
      if ((i & 4095) === 4095) {
        yield;
      }
    }
  }

  /** Adds noise between two frequencies, falling with `tau`; `rise` is its attack, `start` a delay. */
  function* noise(out, next, low, high, gain, tau, rise = 0.0002, start = 0) {
    const sides = [filter(low, true), filter(low, true), filter(high, false)];
    const from = Math.round(start * RATE);
    const to = Math.min(out.length, from + Math.ceil(tau * RATE * 9));
    const fallStep = Math.exp(-1 / (tau * RATE));
    const riseStep = Math.exp(-1 / (rise * RATE));
    let fall = 1;
    let missing = 1;
    for (let i = from; i < to; i++) {
      const sample = sides[2](sides[1](sides[0](next() * 2 - 1)));
      out[i] += gain * sample * (fall * (1 - missing));
      fall *= fallStep;
      missing *= riseStep;
      if ((i & 8191) === 8191) {
        yield;
      }
    }
  }

  /** A second-order high-pass or low-pass filter without resonance. */
  function filter(cutoff, high) {
    const turn = (2 * Math.PI * Math.min(cutoff, RATE * 0.45)) / RATE;
    const cos = Math.cos(turn);
    const alpha = Math.sin(turn) * Math.SQRT1_2;
    const all = 1 + alpha;
    const edge = (high ? (1 + cos) / 2 : (1 - cos) / 2) / all;
    const middle = (high ? -(1 + cos) : 1 - cos) / all;
    const back1 = (2 * cos) / all;
    const back2 = (1 - alpha) / all;
    let x1 = 0;
    let x2 = 0;
    let y1 = 0;
    let y2 = 0;
    return (x) => {
      const y = edge * (x + x2) + middle * x1 + back1 * y1 - back2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      return y;
    };
  }

  /** Adds a plate: many modes without harmony; the lowest are weak, the highest die first. */
  function* plate(out, next, low, high, count, gain, tau, slope) {
    const share = gain / Math.sqrt(count);
    for (let k = 0; k < count; k++) {
      const frequency = low * Math.pow(high / low, (k + next()) / count);
      const fall = tau * Math.pow(low / frequency, slope) * (0.6 + 0.8 * next());
      const body = Math.min(1, Math.pow(frequency / (4 * low), 0.8));
      const loud = share * body * (0.4 + 1.2 * next());
      mode(out, frequency, loud, fall, 2 * Math.PI * next());
      yield;
    }
  }

  function* part(name, take, edge) {
    const entry = table[name];
    const out = new Float32Array(Math.ceil(entry.seconds * RATE));
    const next = random(name, 2 * take + (edge ? 1 : 0));
    for (const [where, kind, ...figures] of entry.layers) {
      if ((where === "edge") === edge) {
        if (kind === "mode") {
          mode(out, ...figures);
        } else if (kind === "skin") {
          yield* skin(out, ...figures);
        } else if (kind === "noise") {
          yield* noise(out, next, ...figures);
        } else {
          yield* plate(out, next, ...figures);
        }
        yield;
      }
    }
    const ramp = Math.round(0.00025 * RATE);
    const tail = Math.round(out.length * 0.3);
    for (let i = 0; i < out.length; i++) {
      const left = out.length - 1 - i;
      const end = left < tail ? 0.5 - 0.5 * Math.cos((Math.PI * left) / tail) : 1;
      out[i] = out[i] * Math.min(1, i / ramp) * end;
    }
    return out;
  }

  /**
   * Computes a timbre in slices: a generator that yields between them and returns `{ body, edge }`:
   * what every stroke has, and what is added in proportion to its velocity (null for nothing).
   */
  function* slices(name, take) {
    const body = yield* part(name, take, false);
    const edged = table[name].layers.some(([where]) => where === "edge");
    const edge = edged ? yield* part(name, take, true) : null;
    let top = 0;
    for (let i = 0; i < body.length; i++) {
      top = Math.max(top, Math.abs(body[i] + (edge ? edge[i] : 0)));
    }
    const scale = table[name].peak / top;
    for (let i = 0; i < body.length; i++) {
      body[i] *= scale;
      if (edge) {
        edge[i] *= scale;
      }
    }
    return { body, edge };
  }

  /** The same in one go. */
  function compute(name, take) {
    const work = slices(name, take);
    let step = work.next();
    while (!step.done) {
      step = work.next();
    }
    return step.value;
  }

  return {
    RATE,
    random,
    slices,
    compute,
    /** Gives the timbres of this page. */
    learn: (timbres) => (table = timbres),
    names: () => Object.keys(table),
    entry: (name) => table[name],
    takes: (name) => (table[name].seconds > LONG ? 1 : 2),
  };
})();
