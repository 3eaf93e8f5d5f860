/*
 * The sounds that are ready, as audio buffers. They are made ahead: in the browser's idle time and in
 * slices of a few milliseconds, so that neither loading nor the first "Play" waits for them.
 */
const Shelf = (() => {
  /** Milliseconds of work at a time; more while somebody waits for it. */
  const SLICE = 6;
  const SLICE_WAITED = 16;
  const ready = new Map();
  /** What is still to be made, each as `{ key, steps }`, begun or not. */
  let queue = [];
  let waiting = [];
  let asleep = true;
  let atOnce = 0;

  const keyOf = (name, take) => name + "/" + take;

  /** Asks for sounds to be made ahead; with `first` before everything that waits. */
  function want(names, first = false) {
    const jobs = [0, 1]
      .flatMap((take) => names.filter((name) => take < Sounds.takes(name)).map((name) => ({ name, take })))
      .map(({ name, take }) => ({ key: keyOf(name, take), name, take }))
      .filter(({ key }) => !ready.has(key))
      .map((job) => queue.find((each) => each.key === job.key) || { ...job, steps: null });
    const others = queue.filter((each) => !jobs.includes(each));
    queue = first ? [...jobs, ...others] : [...queue, ...jobs.filter((job) => !queue.includes(job))];
    wake(first);
  }

  function wake(soon) {
    if (soon) {
      setTimeout(pump);
    } else if (asleep && queue.length > 0) {
      asleep = false;
      if (waiting.length === 0 && "requestIdleCallback" in window) {
        requestIdleCallback(pump, { timeout: 500 });
      } else {
        setTimeout(pump);
      }
    }
  }

  /** Works for a slice, then lets the page breathe. */
  function pump() {
    asleep = true;
    const until = performance.now() + (waiting.length > 0 ? SLICE_WAITED : SLICE);
    while (queue.length > 0 && performance.now() < until) {
      const job = queue[0];
      job.steps = job.steps || Sounds.slices(job.name, job.take);
      const step = job.steps.next();
      if (step.done) {
        queue.shift();
        keep(job.key, step.value);
      }
    }
    wake(false);
  }

  function keep(key, { body, edge }) {
    ready.set(key, { body: buffer(body), edge: edge && buffer(edge) });
    waiting = waiting.filter(({ names, done }) => !isReady(names) || done());
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
      queue = queue.filter((job) => job.key !== key);
      atOnce++;
      keep(key, Sounds.compute(name, take));
    }
    return ready.get(key);
  }

  /** Resolves once each of these sounds has a take; they are made in slices before all others. */
  function prepared(names) {
    return new Promise((done) => {
      if (isReady(names)) {
        done();
      } else {
        waiting.push({ names, done });
        want(names, true);
      }
    });
  }

  function isReady(names) {
    return names.every((name) => ready.has(keyOf(name, 0)));
  }

  return { want, get, prepared, isReady, atOnce: () => atOnce };
})();
