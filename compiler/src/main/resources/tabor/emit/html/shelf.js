/*
 * The sounds that are ready, as audio buffers. They are made ahead: in the browser's idle time and in
 * slices of a few milliseconds, so that neither loading nor the first "Play" waits for them.
 */
const Shelf = (() => {
  const SLICE = 6;
  const ready = new Map();
  const queue = [];
  let work = null;
  let awake = false;
  let atOnce = 0;

  const keyOf = (name, take) => name + "/" + take;

  /** Asks for sounds to be made ahead; with `first` before everything that waits. */
  function want(names, first = false) {
    const jobs = names.flatMap((name) =>
      Array.from({ length: Sounds.takes(name) }, (_, take) => ({ name, take, key: keyOf(name, take) }))
    );
    if (first) {
      queue.unshift(...jobs);
    } else {
      queue.push(...jobs);
    }
    wake(first);
  }

  function wake(soon) {
    if (!awake) {
      awake = true;
      if (!soon && "requestIdleCallback" in window) {
        requestIdleCallback(pump, { timeout: 500 });
      } else {
        setTimeout(pump);
      }
    }
  }

  /** Works for a slice, then lets the page breathe. */
  function pump() {
    awake = false;
    const until = performance.now() + SLICE;
    do {
      if (!work) {
        const job = queue.shift();
        if (!job) {
          return;
        }
        if (ready.has(job.key)) {
          continue;
        }
        work = { key: job.key, steps: Sounds.slices(job.name, job.take) };
      }
      const step = work.steps.next();
      if (step.done) {
        keep(work.key, step.value);
        work = null;
      }
    } while (performance.now() < until);
    wake(false);
  }

  function keep(key, { body, edge }) {
    ready.set(key, { body: buffer(body), edge: edge && buffer(edge) });
  }

  function buffer(samples) {
    const made = new AudioBuffer({ length: samples.length, sampleRate: Sounds.RATE, numberOfChannels: 1 });
    made.copyToChannel(samples, 0);
    return made;
  }

  /** A sound now; one that is not ready is made on the spot. */
  function get(name, take) {
    const key = keyOf(name, take);
    if (!ready.has(key)) {
      if (work && work.key === key) {
        work = null;
      }
      atOnce++;
      keep(key, Sounds.compute(name, take));
    }
    return ready.get(key);
  }

  /** Resolves once these sounds are ready; they are made in slices before all others. */
  function prepared(names) {
    want(names, true);
    return new Promise((done) => {
      const look = () => (isReady(names) ? done() : setTimeout(look));
      look();
    });
  }

  function isReady(names) {
    return names.every((name) =>
      Array.from({ length: Sounds.takes(name) }, (_, take) => keyOf(name, take)).every((key) => ready.has(key))
    );
  }

  return { want, get, prepared, isReady, atOnce: () => atOnce };
})();
