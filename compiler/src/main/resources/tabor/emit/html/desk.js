/*
 * The mixing desk: Web Audio nodes for one context, live or offline. One switch a limb, one for the
 * click; a level for the kit and one for the clicks; groups of sounds that end one another; a soft
 * ceiling instead of clipping.
 */
const Desk = (() => {
  const CLICK = 4;
  const COUNT = 5;
  const MASTER = 3.8;
  /** The ceiling's table reaches to this amplitude. */
  const REACH = 12;
  const SPREAD = 0.01;
  const LEVELS = { click: [50, 80, 110], count: [100, 100, 110] };

  /** Straight for small values, bent towards 1 and never beyond it. */
  function softCeiling() {
    const points = 16385;
    const curve = new Float32Array(points);
    for (let i = 0; i < points; i++) {
      const x = ((2 * i) / (points - 1) - 1) * REACH;
      curve[i] = x / Math.pow(1 + x ** 4, 0.25);
    }
    return curve;
  }

  return class {
    constructor(context) {
      this.context = context;
      this.voices = new Set();
      this.begin();
      const inlet = context.createGain();
      inlet.gain.value = MASTER / REACH;
      const ceiling = context.createWaveShaper();
      ceiling.curve = softCeiling();
      inlet.connect(ceiling).connect(context.destination);
      this.kit = context.createGain();
      this.clicks = context.createGain();
      this.kit.connect(inlet);
      this.clicks.connect(inlet);
      this.buses = [];
      for (let bus = 0; bus <= COUNT; bus++) {
        const gain = context.createGain();
        gain.connect(bus < CLICK ? this.kit : this.clicks);
        this.buses.push(gain);
      }
      this.places = new Map();
    }

    /** Before the first stroke: each sound counts its strokes from here, and nothing rings. */
    begin() {
      this.variations = new Map();
      this.rings = new Map();
      this.struck = 0;
    }

    /** Switches a limb (0 to 3: right hand, left hand, right foot, left foot) or the click (4). */
    setSwitch(bus, on) {
      this.buses[bus].gain.setTargetAtTime(on ? 1 : 0, this.context.currentTime, 0.004);
    }

    /** The same before anything sounds: at once and exactly. */
    presetSwitch(bus, on) {
      this.buses[bus].gain.value = on ? 1 : 0;
    }

    /** How loud kit and clicks are, each 0 to 1; the square of it is the amplitude. */
    setLevels(kit, clicks) {
      this.kit.gain.setTargetAtTime(kit * kit, this.context.currentTime, 0.01);
      this.clicks.gain.setTargetAtTime(clicks * clicks, this.context.currentTime, 0.01);
    }

    /** How far each switch is open now, 0 to 1: the limbs, then the click. */
    levels() {
      return this.buses.slice(0, COUNT).map((bus) => Math.round(bus.gain.value * 1000) / 1000);
    }

    /** Sounds an event of a timeline at an audio time. */
    play(event, when) {
      if (event.kind === "stroke") {
        this.strike(event.sound, event.velocity, event.limb, when, event.damp);
      } else {
        const sound = event.level === 2 ? "click.strong" : "click";
        const bus = event.kind === "count" ? COUNT : CLICK;
        this.strike(sound, LEVELS[event.kind][event.level], bus, when, 0);
      }
    }

    /** One stroke; `damp` seconds later a hand stops it, 0 for never. */
    strike(sound, velocity, bus, when, damp) {
      const entry = Sounds.entry(sound);
      const { take, step, level } = this.variation(sound);
      const { body, edge } = Shelf.get(sound, take);
      const hardness = velocity / 127;
      const gain = this.context.createGain();
      gain.gain.value = hardness * hardness * level;
      gain.connect(this.place(entry.place, bus));
      const voice = { gain, when, sources: [this.source(body, step, when, gain)] };
      if (edge) {
        const harder = this.context.createGain();
        harder.gain.value = hardness;
        harder.connect(gain);
        voice.sources.push(this.source(edge, step, when, harder));
      }
      this.struck++;
      this.voices.add(voice);
      voice.sources[0].onended = () => this.voices.delete(voice);
      if (damp > 0) {
        this.end(voice, when + damp, 0.02);
      }
      if (entry.group) {
        const before = this.rings.get(entry.group);
        if (before && before.when < when) {
          // A stroke on open cymbals lets them ring on a little; a closing one does not.
          this.end(before, when, entry.rings ? 0.06 : 0.009);
        }
        this.rings.set(entry.group, voice);
      }
    }

    source(buffer, step, when, to) {
      const source = this.context.createBufferSource();
      source.buffer = buffer;
      source.playbackRate.value = step;
      source.connect(to);
      source.start(when);
      return source;
    }

    /** How a stroke differs from the others of its sound: take, pitch and level, counted per sound. */
    variation(sound) {
      let own = this.variations.get(sound);
      if (!own) {
        own = { next: Sounds.random(sound, 1000), count: 0 };
        this.variations.set(sound, own);
      }
      const take = own.count++ % Sounds.takes(sound);
      const step = 1 + SPREAD * (2 * own.next() - 1);
      const level = 1 + SPREAD * (2 * own.next() - 1);
      return { take, step, level };
    }

    /** Everything falls silent now; what is handed over but not yet due is taken back. */
    silence() {
      const now = this.context.currentTime;
      for (const voice of this.voices) {
        if (voice.when > now) {
          voice.sources.forEach((source) => source.stop());
        } else {
          this.end(voice, now, 0.03);
        }
      }
      this.voices.clear();
      this.rings.clear();
    }

    end(voice, when, fall) {
      voice.gain.gain.setTargetAtTime(0, when, fall);
      voice.sources.forEach((source) => source.stop(when + fall * 9));
    }

    /** Where a sound stands between the loudspeakers, on its limb's bus. */
    place(place, bus) {
      const at = place * 0.7;
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

    /**
     * Renders a programme to two channels of samples, without a loudspeaker.
     *
     * @param options `rate`, `limbs` (four switches), `click`, `countIn`, `leg`, `rounds`, and `most`
     *     seconds
     */
    static async render(plan, options) {
      const { rate = 1, limbs = [1, 1, 1, 1], click = false, countIn = [], leg = 0, rounds = 1, most = 1e9 } = options;
      const from = plan.legs[leg].start;
      const lead = countIn.length > 0 ? -countIn[0][0] * plan.legs[leg].whole : 0;
      const start = 0.1;
      const length = plan.length - from + lead + (rounds - 1) * plan.again.length;
      const seconds = Math.min(most, start + length / rate + 4);
      const context = new OfflineAudioContext(2, Math.ceil(seconds * Sounds.RATE), Sounds.RATE);
      const desk = new this(context);
      limbs.forEach((on, limb) => desk.presetSwitch(limb, on));
      desk.presetSwitch(CLICK, click);
      const clock = new Timeline.Clock(start, from - lead, rate);
      const cursor = new Timeline.Cursor(plan, leg, countIn);
      cursor.loop = rounds > 1;
      for (let event = cursor.peek(); event && event.round < rounds; event = cursor.peek()) {
        const when = clock.audio(event.time) - event.lead;
        if (when > seconds) {
          break;
        }
        if (event.kind !== "click" || event.level > 0) {
          desk.play(event, when);
        }
        cursor.advance();
      }
      const rendered = await context.startRendering();
      return { start: start + lead / rate, samples: [0, 1].map((c) => rendered.getChannelData(c)) };
    }
  };
})();
