package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;
import tabor.testing.Onsets;
import tabor.timbre.Timbres;

/** What the page plays is what is written, to the millisecond. */
class PageSoundTest extends PageInBrowser {
  @Test
  void everyLimbSoundsWhereItIsWritten() {
    for (Limb limb : Limb.values()) {
      List<Double> expected = expected(ANSWER, limb, 1);
      List<Double> heard = heard(1, 1, limb);
      // Grace notes are checked on their own; here each written stroke must be met.
      for (double time : expected) {
        assertThat(heard)
            .as("%s at %s in %s", limb.words(), time, heard)
            .anySatisfy(onset -> assertThat(onset).isCloseTo(time, within(0.001)));
      }
      if (limb != Limb.RIGHT_HAND) {
        assertThat(heard).as(limb.words()).hasSameSizeAs(expected);
      }
    }
  }

  @Test
  void allLimbsTogetherSoundAtEveryPlaceAndNowhereElse() {
    TreeSet<Double> places = new TreeSet<>();
    Stream.of(Limb.values()).forEach(limb -> places.addAll(expected(FEET, limb, 1)));
    List<Double> heard = heard(0, 1, Limb.values());
    assertClose(heard, List.copyOf(places));
  }

  @Test
  void halfTheTempoDoublesEveryDistance() {
    assertClose(heard(0, 0.5, Limb.RIGHT_HAND), expected(FEET, Limb.RIGHT_HAND, 0.5));
    assertClose(heard(0, 1.5, Limb.LEFT_HAND), expected(FEET, Limb.LEFT_HAND, 1.5));
  }

  @Test
  void swingIsHeard() {
    List<Double> expected = new ArrayList<>();
    for (int beat = 0; beat < 4; beat++) {
      expected.add(beat * 60 / 96.0);
      expected.add((beat + 0.62) * 60 / 96.0);
    }
    assertClose(heard(8, 1, Limb.RIGHT_HAND), expected);
  }

  @Test
  void aMutedLimbIsSilentAndTheOthersAreNot() {
    for (Limb limb : List.of(Limb.RIGHT_HAND, Limb.LEFT_HAND, Limb.RIGHT_FOOT)) {
      Limb[] others = Stream.of(Limb.values()).filter(l -> l != limb).toArray(Limb[]::new);
      TreeSet<Double> places = new TreeSet<>();
      Stream.of(others).forEach(other -> places.addAll(expected(FEET, other, 1)));
      assertClose(heard(0, 1, others), List.copyOf(places));
    }
    assertThat(heard(0, 1, Limb.LEFT_FOOT)).as("a limb that does not play").isEmpty();
  }

  @Test
  void aGraceNoteComesJustBeforeItsMainStrokeAtAnyTempo() {
    for (double rate : new double[] {0.5, 1, 1.5}) {
      double main = expected(FLAM, Limb.LEFT_HAND, rate).get(1);
      List<Double> small = heard(2, rate, Limb.RIGHT_HAND);
      assertThat(small).hasSize(1);
      assertThat(main - small.get(0)).isBetween(0.025, 0.030);
    }
  }

  @Test
  void countInAndClickAreHeardOnTheBeats() {
    List<Double> heard = onsets("{limbs: [0, 0, 0, 0], click: true, countIn: true}", 0);
    List<Double> beats = new ArrayList<>();
    for (int i = -4; i < 4; i++) {
      beats.add(i * 60 / 96.0);
    }
    assertClose(heard, beats);
  }

  @Test
  void nothingClipsWhenAllLimbsAccent() {
    Object peak =
        browser.driver.executeAsyncScript(
            "const done = arguments[0]; Page.render(1, {click: true, countIn: true}).then((r) =>"
                + " done(Math.max(...r.samples.map((c) => c.reduce((m, x) =>"
                + " Math.max(m, Math.abs(x)), 0)))));");
    assertThat(((Number) peak).doubleValue()).isBetween(0.5, 0.9999);
  }

  /** On the page of a lesson that uses only some, the table is taught anew with all of them. */
  @Test
  void everySoundBeginsAtOnceEndsInSilenceAndIsLikeNoOther() {
    Object findings =
        browser.run(
            """
            Sounds.learn(JSON.parse(arguments[0]));
            const found = [];
            const mix = (n) => {
              const { body, edge } = Sounds.compute(n, 0);
              return [n, body.map((x, i) => x + (edge ? edge[i] : 0))];
            };
            const all = Sounds.names().map(mix);
            const dot = (a, b) => {
              let s = 0;
              for (let i = 0; i < Math.min(a.length, b.length); i++) s += a[i] * b[i];
              return s;
            };
            for (const [n, a] of all) {
              const top = a.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
              if (Math.abs(top - Sounds.entry(n).peak) > 1e-4) found.push(n + ' peak ' + top);
              if (a[0] !== 0 || Math.abs(a[a.length - 1]) > 1e-9) found.push(n + ' has a sharp edge');
              if (a.findIndex((x) => Math.abs(x) > top * 0.1) > 44) found.push(n + ' is late');
              for (const [m, b] of all) {
                const like = dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
                if (n < m && !(Math.abs(like) < 0.7)) found.push(n + ' is like ' + m + ' ' + like);
              }
            }
            return found;
            """,
            Timbres.json(Timbres.names()));
    assertThat((List<?>) findings).isEmpty();
  }

  @Test
  void theFootEndsAnOpenHiHatAndAHandAChokedCymbal() {
    // Energy of the hand alone, from a tenth of a second after the second beat to the third.
    String energy =
        "const done = arguments[1]; Page.render(arguments[0], {limbs: [1, 0, 0, 0]}).then((r) => {"
            + " const at = (s) => Math.round((r.start + s) * 44100);"
            + " done(r.samples[0].slice(at(0.725), at(1.25)).reduce((s, x) => s + x * x, 0)); });";
    double open = ((Number) browser.driver.executeAsyncScript(energy, 4)).doubleValue();
    double closed = ((Number) browser.driver.executeAsyncScript(energy, 5)).doubleValue();
    double choked = ((Number) browser.driver.executeAsyncScript(energy, 6)).doubleValue();
    double crash = ((Number) browser.driver.executeAsyncScript(energy, 7)).doubleValue();
    assertThat(closed).isLessThan(open / 1000);
    assertThat(choked).isLessThan(crash / 1000);
  }

  @Test
  void tenMinutesOfLoopDoNotDrift() {
    // Turn 239 of a one-bar section at 96 begins at 239 * 2.5 s; the last hi-hat of it 7/8 later.
    Object times =
        browser.run(
            "const data = JSON.parse(document.querySelector('#Data').textContent);const plan"
                + " = Timeline.programme(data.parts[0].legs, data.parts[0].legs, data.takes);const"
                + " cursor = new Timeline.Cursor(plan, 0, []); cursor.loop = true;const clock = new"
                + " Timeline.Clock(0.1, 0, 1); const found = [];while (cursor.turn < 240) { const e"
                + " = cursor.peek(); if (cursor.turn === 239 && e.kind === 'stroke' && e.limb ==="
                + " 0) found.push(clock.audio(e.time)); cursor.advance(); } return found;");
    List<Double> expected = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      expected.add(0.1 + 239 * 2.5 + i * 2.5 / 8);
    }
    List<Double> found = ((List<?>) times).stream().map(t -> ((Number) t).doubleValue()).toList();
    assertThat(found).hasSize(8);
    for (int i = 0; i < 8; i++) {
      assertThat(found.get(i)).isCloseTo(expected.get(i), within(1e-6));
    }
  }

  @Test
  void aChangeOfTempoKeepsThePlaceAndMovesWhatComesAfter() {
    Object found =
        browser.run(
            "const c = new Timeline.Clock(10, 0, 1); c.change(14, 0.5); c.change(18, 2);return"
                + " [c.position(12), c.position(16), c.position(20), c.audio(8), c.audio(10)];");
    assertThat(found.toString()).isEqualTo("[2, 5, 10, 19, 20]");
  }

  @Test
  void aLoopGoesRoundWithoutItsPickup() {
    Object found =
        browser.run(
            "const take = (from, length) => ({from, length, clicks: [], counts: [], countIn: [],"
                + " strokes: [[0, 'kick', 78, 2]]});const leg = (take) => ({take, whole: 2, times:"
                + " 1});const plan = Timeline.programme([leg(0)], [leg(1)], [take(-0.25, 1.25),"
                + " take(0, 1)]);const cursor = new Timeline.Cursor(plan, 0, [[-0.75, 2], [-0.5,"
                + " 1], [-0.25, 1]]);cursor.loop = true; const times = [];for (let i = 0; i < 6;"
                + " i++) { times.push(cursor.peek().time); cursor.advance(); }return"
                + " times.concat(Timeline.turnAt(plan, 2.4), Timeline.turnAt(plan, 2.6),"
                + " Timeline.turnAt(plan, 4.6), Timeline.turnOf(plan, 2).leg.from);");
    assertThat(found.toString()).isEqualTo("[-1.5, -1, -0.5, 0, 2.5, 4.5, 0, 1, 2, 0]");
  }

  /** Where a limb's written strokes are due, in seconds from the start of the section. */
  private static List<Double> expected(Groove groove, Limb limb, double rate) {
    Time whole = groove.setting().tempo().secondsPerWhole();
    return groove.strokes().stream()
        .filter(stroke -> stroke.limb() == limb)
        .map((Stroke stroke) -> groove.position(stroke).times(whole))
        .map(time -> (double) time.num() / time.den() / rate)
        .toList();
  }

  private static List<Double> heard(int part, double rate, Limb... limbs) {
    List<Integer> on = new ArrayList<>(List.of(0, 0, 0, 0));
    for (Limb limb : limbs) {
      on.set(limb.ordinal(), 1);
    }
    return onsets("{limbs: " + on + ", rate: " + rate + "}", part);
  }

  /** Renders a part without a loudspeaker; onsets in seconds from its first barline. */
  private static List<Double> onsets(String options, int part) {
    Object answer =
        browser.driver.executeAsyncScript(
            "const done = arguments[1];"
                + "Page.render(arguments[0], "
                + options
                + ").then(({start, samples: [l, r]}) => {"
                + " const bytes = new Uint8Array(l.map((x, i) => x + r[i]).buffer); let text = '';"
                + " for (let i = 0; i < bytes.length; i += 32768)"
                + "  text += String.fromCharCode(...bytes.subarray(i, i + 32768));"
                + " done([start, btoa(text)]); });",
            part);
    List<?> pair = (List<?>) answer;
    double start = ((Number) pair.get(0)).doubleValue();
    float[] samples = Onsets.samples((String) pair.get(1));
    return Onsets.of(samples, RATE, 0.015).stream().map(onset -> onset - start).toList();
  }

  private static void assertClose(List<Double> heard, List<Double> expected) {
    assertThat(heard).as("heard %s, expected %s", heard, expected).hasSameSizeAs(expected);
    for (int i = 0; i < expected.size(); i++) {
      assertThat(heard.get(i)).isCloseTo(expected.get(i), within(0.001));
    }
  }
}
