/*
 * The kit, as arithmetic: each sound is computed once into an array of samples, from struck modes
 * (decaying sines) and shaped noise. Nothing here knows of Web Audio or of the page, so that a sound
 * can be computed and measured anywhere. Frequencies in hertz, times in seconds; the figures were
 * tuned by ear and by spectrogram (no source).
 */
const Sounds = (() => {
  /** Small repeatable random numbers from 0 to 1, so that a sound is the same on every machine. */
  function dice(seed) {
    let state = (seed * 2654435761 + 974711) >>> 0;
    return () => {
      state = (state + 0x6d2b79f5) >>> 0;
      let mixed = Math.imul(state ^ (state >>> 15), state | 1);
      mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
      return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    };
  }

  /** Adds a decaying sine; `tau` is the time in which it falls to 37 %, `phase` in radians. */
  function mode(out, rate, frequency, gain, tau, phase = 0) {
    if (frequency >= rate * 0.48) {
      return;
    }
    const turn = (2 * Math.PI * frequency) / rate;
    const damp = Math.exp(-1 / (tau * rate));
    const to = Math.min(out.length, Math.ceil(tau * rate * 9));
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

  /** Adds a sine that glides from `high` to `low`: a struck skin. */
  function skin(out, rate, low, high, glide, gain, tau, drive = 0) {
    let phase = 0;
    for (let i = 0; i < out.length; i++) {
      const t = i / rate;
      phase += (2 * Math.PI * (low + (high - low) * Math.exp(-t / glide))) / rate;
      const wave = Math.sin(phase) * Math.exp(-t / tau);
      out[i] += gain * (drive > 0 ? Math.tanh(wave * drive) / Math.tanh(drive) : wave);
    }
  }

  /**
   * Adds noise between two frequencies, falling with `tau`; `rise` is the time of its attack, `start`
   * a delay.
   */
  function noise(out, rate, random, low, high, gain, tau, rise = 0.0002, start = 0) {
    const sides = [biquad(rate, low, true), biquad(rate, low, true), biquad(rate, high, false)];
    const from = Math.round(start * rate);
    const to = Math.min(out.length, from + Math.ceil(tau * rate * 9));
    for (let i = from; i < to; i++) {
      const t = (i - from) / rate;
      let sample = random() * 2 - 1;
      for (const side of sides) {
        sample = side(sample);
      }
      out[i] += gain * sample * Math.exp(-t / tau) * (1 - Math.exp(-t / rise));
    }
  }

  /** A second-order high-pass or low-pass filter without resonance. */
  function biquad(rate, cutoff, high) {
    const turn = (2 * Math.PI * Math.min(cutoff, rate * 0.45)) / rate;
    const cos = Math.cos(turn);
    const alpha = Math.sin(turn) * Math.SQRT1_2;
    const edge = high ? (1 + cos) / 2 : (1 - cos) / 2;
    const middle = high ? -(1 + cos) : 1 - cos;
    const all = 1 + alpha;
    let x1 = 0;
    let x2 = 0;
    let y1 = 0;
    let y2 = 0;
    return (x) => {
      const y = (edge * (x + x2) + middle * x1 + 2 * cos * y1 - (1 - alpha) * y2) / all;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      return y;
    };
  }

  /** Adds a plate: many modes without harmony; the lowest are weak, the highest die first. */
  function plate(out, rate, random, low, high, count, gain, tau, slope = 0.6) {
    const share = gain / Math.sqrt(count);
    for (let k = 0; k < count; k++) {
      const frequency = low * Math.pow(high / low, (k + random()) / count);
      const fall = tau * Math.pow(low / frequency, slope) * (0.6 + 0.8 * random());
      const body = Math.min(1, Math.pow(frequency / (4 * low), 0.8));
      const loud = share * body * (0.4 + 1.2 * random());
      mode(out, rate, frequency, loud, fall, 2 * Math.PI * random());
    }
  }

  // ---- the kit; `hard` is 0 for a soft stroke and 1 for a loud one -------------------------------

  function kick(out, rate, random, hard) {
    skin(out, rate, 54, 150 + 50 * hard, 0.022, 1, 0.12, 1.6);
    mode(out, rate, 176, 0.25, 0.03);
    noise(out, rate, random, 1400, 4200, 0.35 + 0.5 * hard, 0.005);
  }

  function snare(out, rate, random, hard) {
    skin(out, rate, 186, 186 + 50 * hard, 0.012, 0.62, 0.055);
    mode(out, rate, 331, 0.4, 0.045);
    mode(out, rate, 476, 0.16, 0.03);
    noise(out, rate, random, 1500, 6500 + 4500 * hard, 0.6 + 0.35 * hard, 0.05 + 0.04 * hard);
    noise(out, rate, random, 3800, 15000, 0.2 + 0.3 * hard, 0.012);
  }

  function cross(out, rate, random, hard) {
    for (const [frequency, gain, tau] of [
      [418, 0.5, 0.022],
      [1130, 0.8, 0.024],
      [1710, 0.6, 0.016],
      [2890, 0.35, 0.009],
    ]) {
      mode(out, rate, frequency, gain, tau);
    }
    noise(out, rate, random, 2000, 7000, 0.3 + 0.3 * hard, 0.003);
  }

  function rimshot(out, rate, random, hard) {
    snare(out, rate, random, hard);
    for (const [frequency, gain, tau] of [
      [512, 0.75, 0.085],
      [947, 0.55, 0.06],
      [1820, 0.45, 0.04],
      [3140, 0.3, 0.02],
    ]) {
      mode(out, rate, frequency, gain, tau);
    }
    noise(out, rate, random, 2500, 15000, 0.8, 0.006);
  }

  function drum(low, tau, bright) {
    return (out, rate, random, hard) => {
      skin(out, rate, low, low * (1.35 + 0.15 * hard), 0.028, 0.9, tau, 0.8);
      for (const [ratio, gain] of [
        [1.59, 0.3],
        [2.14, 0.2],
        [2.3, 0.12],
        [2.92, 0.1],
      ]) {
        mode(out, rate, low * ratio, gain * (0.6 + 0.4 * hard), (tau * 0.55) / ratio);
      }
      noise(out, rate, random, bright, bright * 4, 0.25 + 0.35 * hard, 0.007);
    };
  }

  /** Two cymbals on a pole: `tau` says how far they stand apart. */
  function hats(tau, sizzle, low) {
    return (out, rate, random, hard) => {
      plate(out, rate, random, low, 13500, 48, 0.7, tau, 0.35);
      noise(out, rate, random, 6200, 17000, sizzle * (0.6 + 0.4 * hard), tau * 0.75);
      noise(out, rate, random, 4200, 16000, 0.35 + 0.5 * hard, 0.004);
    };
  }

  function chick(out, rate, random, hard) {
    plate(out, rate, random, 1500, 7500, 40, 0.6, 0.03, 0.4);
    noise(out, rate, random, 1900, 6500, 0.5 + 0.2 * hard, 0.018, 0.0006);
  }

  function footSplash(out, rate, random, hard) {
    plate(out, rate, random, 1300, 9500, 64, 0.7, 0.5, 0.3);
    noise(out, rate, random, 2400, 9500, 0.35 + 0.2 * hard, 0.26, 0.0006);
  }

  function ride(out, rate, random, hard) {
    for (const [frequency, gain, tau] of [
      [2870, 0.7, 0.18],
      [3960, 0.8, 0.15],
      [5230, 0.6, 0.1],
      [7410, 0.35, 0.06],
    ]) {
      mode(out, rate, frequency, gain, tau);
    }
    noise(out, rate, random, 3500, 14000, 0.35 + 0.35 * hard, 0.004);
    plate(out, rate, random, 380, 12500, 96, 0.3 + 0.35 * hard, 1.1, 0.4);
    noise(out, rate, random, 3800, 15000, 0.06 + 0.08 * hard, 0.4);
  }

  function bell(out, rate, random, hard) {
    for (const [frequency, gain, tau] of [
      [823, 0.6, 0.75],
      [1247, 0.5, 0.62],
      [1989, 0.42, 0.5],
      [2764, 0.34, 0.36],
      [3878, 0.26, 0.24],
      [5590, 0.16, 0.14],
    ]) {
      mode(out, rate, frequency, gain, tau);
      mode(out, rate, frequency * 1.0023, gain * 0.4, tau);
    }
    noise(out, rate, random, 3000, 12000, 0.25 + 0.3 * hard, 0.004);
    plate(out, rate, random, 500, 9000, 36, 0.14, 1.1, 0.5);
  }

  function crash(low, tau, body) {
    return (out, rate, random, hard) => {
      plate(out, rate, random, low, 13500, 110, 0.9, tau * 1.5, 0.4);
      noise(out, rate, random, body, 15000, 0.75 + 0.25 * hard, tau * 0.32);
      noise(out, rate, random, 3000, 16000, 0.5, 0.012);
    };
  }

  function china(out, rate, random, hard) {
    crash(240, 0.55, 900)(out, rate, random, hard);
    noise(out, rate, random, 700, 4200, 0.7, 0.14);
    for (let i = 0; i < out.length; i++) {
      out[i] = Math.tanh(1.4 * out[i]);
    }
  }

  // ---- what a kit of one's own may hold -----------------------------------------------------------

  function metal(frequencies, tau) {
    return (out, rate, random, hard) => {
      frequencies.forEach((frequency, k) => {
        mode(out, rate, frequency, 0.7 / (1 + 0.5 * k), tau / (1 + 0.45 * k));
      });
      noise(out, rate, random, 2500, 9000, 0.2 + 0.25 * hard, 0.003);
    };
  }

  function wood(frequency, tau) {
    return (out, rate, random, hard) => {
      mode(out, rate, frequency, 0.9, tau);
      mode(out, rate, frequency * 2.43, 0.35, tau * 0.5);
      noise(out, rate, random, frequency, frequency * 4, 0.15 + 0.2 * hard, 0.003);
    };
  }

  function shake(low, high, tau, rise) {
    return (out, rate, random) => noise(out, rate, random, low, high, 0.9, tau, rise);
  }

  function rattle(low, high, strokes, gap, tau) {
    return (out, rate, random) => {
      for (let k = 0; k < strokes; k++) {
        const gain = k === 0 ? 0.9 : 0.8 * Math.exp((-1.6 * k) / strokes);
        noise(out, rate, random, low, high, gain, tau, 0.0002, k * gap);
      }
    };
  }

  function gong(out, rate, random, hard) {
    for (const [frequency, gain] of [
      [92, 0.8],
      [147, 0.5],
      [211, 0.4],
      [305, 0.3],
    ]) {
      mode(out, rate, frequency, gain, 1.6);
    }
    plate(out, rate, random, 180, 5200, 80, 0.5 + 0.2 * hard, 2.2, 0.5);
    noise(out, rate, random, 400, 5000, 0.2, 0.05);
  }

  // name: [how it is made, seconds, peak at full level, place from left -1 to right 1 as the player sits]
  const TABLE = {
    kick: [kick, 0.8, 0.78, 0],
    snare: [snare, 0.6, 0.62, -0.1],
    "snare.cross": [cross, 0.3, 0.5, -0.1],
    "snare.rimshot": [rimshot, 0.7, 0.74, -0.1],
    hihat: [hats(0.032, 0.7, 3400), 0.35, 0.3, -0.45],
    "hihat.half": [hats(0.17, 0.75, 2700), 1, 0.32, -0.45],
    "hihat.open": [hats(0.42, 0.65, 2500), 1.8, 0.34, -0.45],
    "hihat.foot": [chick, 0.35, 0.3, -0.45],
    "hihat.splash": [footSplash, 1.8, 0.32, -0.45],
    ride: [ride, 3, 0.36, 0.45],
    "ride.bell": [bell, 2.6, 0.36, 0.45],
    crash: [crash(420, 0.95, 1300), 3.4, 0.46, -0.35],
    crash2: [crash(350, 1.15, 1050), 3.8, 0.46, 0.35],
    splash: [crash(900, 0.3, 2600), 1.4, 0.38, -0.15],
    china: [china, 2, 0.36, 0.55],
    cowbell: [metal([571, 853, 1420, 2310], 0.075), 0.6, 0.42, 0.15],
    tom1: [drum(158, 0.2, 900), 1, 0.62, -0.2],
    tom2: [drum(116, 0.24, 800), 1.2, 0.62, 0.15],
    floor: [drum(78, 0.3, 600), 1.5, 0.68, 0.4],
    click: [wood(1320, 0.011), 0.12, 0.4, 0],
    "click.strong": [wood(1980, 0.011), 0.12, 0.46, 0],
  };

  // General MIDI percussion keys that surfaces of one's own may carry; a key missing here sounds as wood.
  const OWN = {
    26: "snare.cross", 27: "click", 31: "click", 32: "click", 33: "click", 34: "click.strong",
    35: "kick", 36: "kick", 37: "snare.cross", 38: "snare", 40: "snare.rimshot", 42: "hihat",
    44: "hihat.foot", 46: "hihat.open", 49: "crash", 51: "ride", 53: "ride.bell", 55: "splash",
    56: "cowbell", 57: "crash2", 59: "ride",
    28: [rattle(900, 6000, 1, 0, 0.02), 0.3, 0.5],
    29: [shake(1200, 7000, 0.06, 0.0008), 0.4, 0.4],
    30: [shake(800, 5000, 0.06, 0.0008), 0.4, 0.4],
    39: [rattle(900, 5200, 4, 0.009, 0.022), 0.4, 0.5],
    41: [drum(68, 0.32, 550), 1.5, 0.66],
    43: [drum(84, 0.28, 620), 1.4, 0.66],
    45: [drum(101, 0.25, 700), 1.2, 0.62],
    47: [drum(118, 0.23, 800), 1.2, 0.62],
    48: [drum(138, 0.21, 850), 1, 0.62],
    50: [drum(162, 0.19, 900), 1, 0.62],
    52: [china, 2, 0.36],
    54: [rattle(6000, 15000, 3, 0.022, 0.035), 0.5, 0.34],
    58: [rattle(1800, 7000, 22, 0.027, 0.012), 1, 0.36],
    60: [drum(402, 0.06, 1800), 0.5, 0.5],
    61: [drum(288, 0.08, 1500), 0.6, 0.5],
    62: [drum(243, 0.04, 1500), 0.4, 0.5],
    63: [drum(226, 0.15, 1200), 0.8, 0.52],
    64: [drum(164, 0.19, 1000), 0.9, 0.54],
    65: [metal([412, 655, 880, 1290], 0.13), 0.8, 0.5],
    66: [metal([291, 463, 622, 912], 0.16), 0.9, 0.5],
    67: [metal([1186, 3010, 5200], 0.16), 0.8, 0.38],
    68: [metal([846, 2150, 3730], 0.18), 0.9, 0.38],
    69: [shake(5000, 13000, 0.045, 0.0009), 0.4, 0.32],
    70: [shake(6500, 15000, 0.03, 0.0007), 0.3, 0.32],
    71: [metal([2310, 2338], 0.09), 0.5, 0.3],
    72: [metal([2205, 2232], 0.24), 1, 0.3],
    73: [rattle(2000, 8000, 5, 0.014, 0.008), 0.4, 0.34],
    74: [rattle(2000, 8000, 14, 0.022, 0.009), 0.7, 0.34],
    75: [wood(2480, 0.03), 0.3, 0.44],
    76: [wood(1010, 0.022), 0.3, 0.46],
    77: [wood(742, 0.026), 0.3, 0.46],
    78: [metal([620, 655], 0.05), 0.4, 0.36],
    79: [metal([402, 431], 0.16), 0.7, 0.36],
    80: [metal([4020, 6350, 9100], 0.05), 0.4, 0.28],
    81: [metal([4020, 4046, 6350, 9100], 0.9), 3, 0.28],
    82: [shake(5500, 14000, 0.035, 0.0009), 0.3, 0.32],
    83: [rattle(5000, 14000, 5, 0.03, 0.04), 0.7, 0.32],
    84: [metal([3100, 3900, 4800, 6100, 7700], 0.8), 2.5, 0.28],
    85: [rattle(1500, 6000, 2, 0.02, 0.01), 0.3, 0.42],
    86: [drum(72, 0.09, 400), 0.7, 0.66],
    87: [drum(66, 0.4, 400), 1.8, 0.66],
    gong: [gong, 4.5, 0.5],
  };

  /** The entry of a sound named by surface, or `key:N` for a surface of one's own. */
  function entry(name) {
    if (Object.hasOwn(TABLE, name)) {
      return TABLE[name];
    }
    const key = name.slice(name.indexOf(":") + 1);
    const own = Object.hasOwn(OWN, key) ? OWN[key] : [wood(480 + 9 * (Number(key) || 0), 0.03), 0.4, 0.46];
    return typeof own === "string" ? TABLE[own] : own;
  }

  /** Place from left (-1) to right (1) as the player sits. */
  function place(name) {
    return entry(name)[3] ?? 0;
  }

  /**
   * Computes a sound.
   *
   * @param name a standard surface, `snare.rimshot`, `click`, `click.strong` or `key:N`
   * @param rate samples a second
   * @param hard 0 for a soft stroke, 1 for a loud one
   * @param take 0, 1, …: the same sound once more, with other noise
   * @return its samples; the first is zero, the last too, and none exceeds the sound's own peak
   */
  function compute(name, rate, hard, take) {
    const [make, seconds, peak] = entry(name);
    const out = new Float32Array(Math.ceil(seconds * rate));
    let seed = take + 1;
    for (let i = 0; i < name.length; i++) {
      seed = (seed * 31 + name.charCodeAt(i)) >>> 0;
    }
    make(out, rate, dice(seed), hard);
    const ramp = Math.round(0.00025 * rate);
    const tail = Math.round(out.length * 0.3);
    let top = 0;
    for (let i = 0; i < out.length; i++) {
      const left = out.length - 1 - i;
      const end = left < tail ? 0.5 - 0.5 * Math.cos((Math.PI * left) / tail) : 1;
      out[i] *= Math.min(1, i / ramp) * end;
      top = Math.max(top, Math.abs(out[i]));
    }
    for (let i = 0; i < out.length; i++) {
      out[i] *= peak / (top || 1);
    }
    return out;
  }

  return { names: Object.keys(TABLE), compute, place };
})();
