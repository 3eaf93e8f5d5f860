/*
 * When each sound is due. A *take* is one section played once, its places in whole notes; a *leg*
 * plays a take a number of times at one tempo; a *programme* is legs one after another. Positions are
 * seconds at the written tempo from the start of the programme; a clock turns them into audio time.
 * Every time is worked out from its place, never from the time before it, so that nothing drifts.
 * Nothing here knows of Web Audio or of the page.
 */
const Timeline = (() => {
  /**
   * Lays legs out one after another.
   *
   * @param first what is played the first time: objects with `take`, `whole` (seconds a whole note
   *     lasts) and `times`
   * @param again what is played each time after that, in a loop
   * @param takes the takes that the legs name by number
   */
  function programme(first, again, takes) {
    const round = row(first, takes);
    return { ...round, again: again === first ? round : row(again, takes) };
  }

  function row(legs, takes) {
    let start = 0;
    let turn = 0;
    const laid = legs.map((leg) => {
      const take = takes[leg.take];
      const length = take.length * leg.whole;
      const names = takes.sounds || [];
      const placed = { ...leg, start, firstTurn: turn, length, events: events(take, leg, names), from: take.from };
      start += length * leg.times;
      turn += leg.times;
      return placed;
    });
    return { legs: laid, length: start, turns: turn };
  }

  /**
   * Strokes and clicks of one turn, in the order in which they sound: `at` in seconds from its start.
   * `lead` is how many seconds a grace note sounds before its place (below zero: after it), whatever
   * the tempo.
   *
   * @param names of the sounds, where a take names them by number
   */
  function events(take, leg, names) {
    const strokes = take.strokes.map(([at, sound, velocity, limb, lead, damp]) => ({
      kind: "stroke",
      at: at * leg.whole,
      sound: names[sound] || sound,
      velocity,
      limb,
      lead: lead || 0,
      damp: (damp || 0) * leg.whole,
    }));
    const clicks = take.clicks.map(([at, mark]) => click("click", at * leg.whole, mark));
    const counts = take.counts.map(([at, mark]) => click("count", at * leg.whole, mark));
    return strokes.concat(clicks, counts).sort((a, b) => a.at - a.lead - (b.at - b.lead));
  }

  /** `level` 2 on the first beat of a bar, 1 on another beat, 0 between; `written` if a chart asks for it. */
  function click(kind, at, mark) {
    return { kind, at, level: mark & 3, written: mark >= 4, lead: 0, damp: 0 };
  }

  /**
   * A few bars of a take as a take of their own.
   *
   * @param from where they begin, in whole notes from bar 1
   * @param to where they end
   */
  function excerpt(take, from, to) {
    const start = from - take.from;
    const end = to - take.from;
    const cut = (list) =>
      list.filter(([at]) => at >= start - 1e-7 && at < end - 1e-7).map(([at, ...rest]) => [at - start, ...rest]);
    const head = take.countIn.length === 0 ? [] : countIn(take);
    return { from, length: to - from, strokes: cut(take.strokes), clicks: cut(take.clicks), counts: [], countIn: head };
  }

  /** The whole bar of a count-in: what stops before a pickup is continued, for bars without one. */
  function countIn(take) {
    const beats = take.countIn.length;
    const bar = take.clicks.filter(([, mark]) => (mark & 3) > 0);
    const first = bar.findIndex(([, mark]) => (mark & 3) === 2);
    const next = bar.findIndex(([, mark], i) => i > first && (mark & 3) === 2);
    const ticks = next > first ? bar.slice(first, next) : bar.slice(first);
    if (first < 0 || ticks.length < beats) {
      return take.countIn;
    }
    const length = next > first ? bar[next][0] - bar[first][0] : take.length + take.from;
    return ticks.map(([at, mark]) => [at - bar[first][0] - length, mark & 3]);
  }

  /** The turn with this number, counted on through every round of the programme. */
  function turnOf(plan, number) {
    const round = number < plan.turns ? 0 : 1 + Math.floor((number - plan.turns) / plan.again.turns);
    const row = round === 0 ? plan : plan.again;
    const before = round === 0 ? 0 : plan.length + (round - 1) * row.length;
    const within = round === 0 ? number : (number - plan.turns) % row.turns;
    const index = lastAtOrBefore(row.legs, within, (leg) => leg.firstTurn);
    const leg = row.legs[index];
    const time = within - leg.firstTurn;
    return { leg, index, within, time, start: before + leg.start + time * leg.length };
  }

  /** The number of the turn that sounds at a position. */
  function turnAt(plan, position) {
    const past = position - plan.length;
    const row = past < 0 ? plan : plan.again;
    const round = past < 0 ? 0 : Math.floor(past / row.length);
    const rest = past < 0 ? position : past - round * row.length;
    const leg = row.legs[lastAtOrBefore(row.legs, rest, (each) => each.start)];
    const time = Math.floor((rest - leg.start) / leg.length + 1e-9);
    const within = leg.firstTurn + Math.min(leg.times - 1, Math.max(0, time));
    return (past < 0 ? 0 : plan.turns + round * row.turns) + within;
  }

  function lastAtOrBefore(list, value, key) {
    let low = 0;
    let high = list.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (key(list[middle]) <= value + 1e-9) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /** Which time through the whole programme a turn belongs to, from 0. */
  function roundOf(plan, turn) {
    return turn < plan.turns ? 0 : 1 + Math.floor((turn - plan.turns) / plan.again.turns);
  }

  /** Walks through a programme from the start of a leg, after an optional count-in. */
  class Cursor {
    /**
     * @param plan the programme
     * @param legIndex the leg to start with
     * @param countIn clicks before it as `[at, mark]`, in whole notes, all below zero
     */
    constructor(plan, legIndex, countIn) {
      const leg = plan.legs[legIndex];
      this.plan = plan;
      this.endless = false;
      this.before = countIn.map(([at, mark]) => {
        const event = click("count", at * leg.whole, mark);
        return { ...event, time: leg.start + event.at, round: 0, start: leg.start };
      });
      this.turn = leg.firstTurn;
      this.next = 0;
      this.lastTurn = plan.turns;
    }

    /** Round and round, or to the end of the round that has begun. */
    set loop(on) {
      this.endless = on;
      const { turns, again } = this.plan;
      this.lastTurn = turns + roundOf(this.plan, this.turn) * again.turns;
    }

    get loop() {
      return this.endless;
    }

    /** Where the last round ends, as a position; only without a loop. */
    get end() {
      const rounds = roundOf(this.plan, this.lastTurn - 1);
      return this.plan.length + rounds * this.plan.again.length;
    }

    /** The next event with its `time`, a position; null at the end. Does not move on. */
    peek() {
      if (this.before.length > 0) {
        return this.before[0];
      }
      for (;;) {
        if (!this.endless && this.turn >= this.lastTurn) {
          return null;
        }
        const turn = turnOf(this.plan, this.turn);
        if (this.next < turn.leg.events.length) {
          const event = turn.leg.events[this.next];
          const round = roundOf(this.plan, this.turn);
          return { ...event, time: turn.start + event.at, round, start: turn.start };
        }
        if (this.plan.again.legs.every((leg) => leg.events.length === 0)) {
          return null;
        }
        this.turn++;
        this.next = 0;
      }
    }

    /** Moves on to the event after. */
    advance() {
      if (this.before.length > 0) {
        this.before.shift();
      } else {
        this.next++;
      }
    }
  }

  /** Turns positions into audio time at a rate that may change while it runs. */
  class Clock {
    /** @param audio the audio time at which `position` is due; `rate` 1 is the written tempo */
    constructor(audio, position, rate) {
      this.marks = [{ audio, position, rate }];
    }

    /** The audio time of a position still ahead. */
    audio(position) {
      const mark = this.marks[this.marks.length - 1];
      return mark.audio + (position - mark.position) / mark.rate;
    }

    /** The position that sounds at an audio time. */
    position(audio) {
      let mark = this.marks[0];
      for (const each of this.marks) {
        if (each.audio <= audio) {
          mark = each;
        }
      }
      return mark.position + (audio - mark.audio) * mark.rate;
    }

    /** From this audio time on the rate is another; what is due before keeps its time. */
    change(audio, rate) {
      const mark = { audio, position: this.position(audio), rate };
      if (this.marks[this.marks.length - 1].audio >= audio) {
        this.marks.pop();
      }
      this.marks.push(mark);
      if (this.marks.length > 4) {
        this.marks.shift();
      }
    }
  }

  return { programme, excerpt, turnOf, turnAt, Cursor, Clock };
})();
