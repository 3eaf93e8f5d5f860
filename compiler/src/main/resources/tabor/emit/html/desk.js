/*
 * The mixing desk: Web Audio nodes for one context, live or offline. One switch a limb, one for the
 * click; the hi-hat's pole, where a closing stroke ends what rings; a soft ceiling instead of clipping.
 */
const Desk = (() => {
  const CLICK = 4;
  const COUNT = 5;
  const MASTER = 1.5;
  const CEILING = 0.7;
  /** Sounds already computed, by sample rate and name. */
  const shelf = new Map();

  // The tables of General MIDI 2 name keys that silence each other; surfaces of one's own follow them.
  const POLES = { 42: "hihat", 44: "hihat", 46: "hihat", 71: "whistle", 72: "whistle", 73: "guiro",
    74: "guiro", 78: "cuica", 79: "cuica", 80: "triangle", 81: "triangle", 86: "surdo", 87: "surdo" };
  const RINGING = new Set(["hihat.open", "hihat.splash", "key:46"]);

  function pole(sound) {
    return sound.startsWith("hihat") ? "hihat" : POLES[sound.slice(sound.indexOf(":") + 1)];
  }

  /** Amplitude of a MIDI velocity: its square, 40 dB a decade (General MIDI 2's curve, from memory). */
  function amplitude(velocity) {
    return (velocity / 127) ** 2;
  }

  /** Straight up to the ceiling, bent above it, never beyond 1. The input is halved before it. */
  function softCeiling() {
    const points = 8193;
    const curve = new Float32Array(points);
    for (let i = 0; i < points; i++) {
      const x = ((2 * i) / (points - 1) - 1) * 2;
      const over = Math.abs(x) - CEILING;
      const y = over <= 0 ? Math.abs(x) : CEILING + (1 - CEILING) * Math.tanh(over / (1 - CEILING));
      curve[i] = Math.sign(x) * y;
    }
    return curve;
  }

  return class {
    constructor(context) {
      this.context = context;
      this.strokes = 0;
      this.voices = new Set();
      this.rings = new Map();
      const half = context.createGain();
      half.gain.value = MASTER / 2;
      const ceiling = context.createWaveShaper();
      ceiling.curve = softCeiling();
      half.connect(ceiling).connect(context.destination);
      this.buses = [];
      for (let bus = 0; bus <= COUNT; bus++) {
        const gain = context.createGain();
        gain.connect(half);
        this.buses.push(gain);
      }
      this.places = new Map();
    }

    /** Switches a limb (0 to 3: right hand, left hand, right foot, left foot) or the click (4). */
    setSwitch(bus, on) {
      const { gain } = this.buses[bus];
      gain.setTargetAtTime(on ? 1 : 0, this.context.currentTime, 0.004);
    }

    /** The same before anything sounds: at once and exactly. */
    presetSwitch(bus, on) {
      this.buses[bus].gain.value = on ? 1 : 0;
    }

    /** How far each switch is open now, 0 to 1: the limbs, then the click. */
    levels() {
      return this.buses.slice(0, COUNT).map((bus) => Math.round(bus.gain.value * 1000) / 1000);
    }

    /** Computes what an event will need, so that the first stroke is not late. */
    prepare(sound) {
      for (const hard of [0, 1]) {
        this.buffer(sound, hard, 0);
      }
    }

    /** Sounds an event of a timeline at an audio time. */
    play(event, when) {
      if (event.kind === "stroke") {
        this.strike(event.sound, event.velocity, event.limb, when, event.damp);
      } else {
        const bus = event.kind === "count" ? COUNT : CLICK;
        this.strike(event.strong ? "click.strong" : "click", 100, bus, when, 0);
      }
    }

    /** One stroke; `damp` seconds later a hand stops it, 0 for never. */
    strike(sound, velocity, bus, when, damp) {
      const source = this.context.createBufferSource();
      const hard = velocity >= 64 ? 1 : 0;
      source.buffer = this.buffer(sound, hard, this.strokes++ % 2);
      const gain = this.context.createGain();
      gain.gain.value = amplitude(velocity);
      source.connect(gain).connect(this.place(sound, bus));
      source.start(when);
      const voice = { gain, source, when };
      this.voices.add(voice);
      source.onended = () => this.voices.delete(voice);
      if (damp > 0) {
        this.end(voice, when + damp, 0.02);
      }
      const group = pole(sound);
      if (group) {
        const before = this.rings.get(group);
        if (before && before.when < when) {
          // A stroke on open cymbals lets them ring on a little; a closing one does not.
          this.end(before, when, RINGING.has(sound) ? 0.06 : 0.009);
        }
        this.rings.set(group, voice);
      }
    }

    /** Everything falls silent now; what is handed over but not yet due is taken back. */
    silence() {
      const now = this.context.currentTime;
      for (const voice of this.voices) {
        if (voice.when > now) {
          voice.source.stop();
        } else {
          this.end(voice, now, 0.03);
        }
      }
      this.voices.clear();
      this.rings.clear();
    }

    end(voice, when, fall) {
      voice.gain.gain.setTargetAtTime(0, when, fall);
      voice.source.stop(when + fall * 9);
    }

    /** Where a sound stands between the loudspeakers, on its limb's bus. */
    place(sound, bus) {
      const at = Sounds.place(sound) * 0.7;
      const key = bus + "/" + at;
      let node = this.places.get(key);
      if (!node) {
        node = this.context.createStereoPanner();
        node.pan.value = at;
        node.connect(this.buses[bus]);
        this.places.set(key, node);
      }
      return node;
    }

    /** The samples of a sound. Long sounds have one take, short ones two. */
    buffer(sound, hard, take) {
      const rate = this.context.sampleRate;
      const key = [rate, sound, hard, take].join("/");
      let buffer = shelf.get(key);
      if (!buffer) {
        const first = take === 0 ? null : this.buffer(sound, hard, 0);
        if (first && first.duration > 0.7) {
          buffer = first;
        } else {
          const samples = Sounds.compute(sound, rate, hard, take);
          buffer = new AudioBuffer({ length: samples.length, sampleRate: rate, numberOfChannels: 1 });
          buffer.copyToChannel(samples, 0);
        }
        shelf.set(key, buffer);
      }
      return buffer;
    }

    /**
     * Renders a programme to two channels of samples, without a loudspeaker.
     *
     * @param options `rate`, `limbs` (four switches), `click`, `countIn`, `leg`, `sampleRate`
     */
    static async render(plan, options) {
      const { rate = 1, limbs = [1, 1, 1, 1], click = false, countIn = [], leg = 0 } = options;
      const sampleRate = options.sampleRate || 44100;
      const from = plan.legs[leg].start;
      const lead = countIn.length > 0 ? -countIn[0][0] * plan.legs[leg].whole : 0;
      const start = 0.1;
      const seconds = start + (plan.length - from + lead) / rate + 4;
      const context = new OfflineAudioContext(2, Math.ceil(seconds * sampleRate), sampleRate);
      const desk = new this(context);
      limbs.forEach((on, limb) => desk.presetSwitch(limb, on));
      desk.presetSwitch(CLICK, click);
      const clock = new Timeline.Clock(start, from - lead, rate);
      const cursor = new Timeline.Cursor(plan, leg, countIn);
      for (let event = cursor.peek(); event; event = cursor.peek()) {
        desk.play(event, clock.audio(event.time) - event.lead);
        cursor.advance();
      }
      const rendered = await context.startRendering();
      return { start: start + lead / rate, samples: [0, 1].map((c) => rendered.getChannelData(c)) };
    }
  };
})();
