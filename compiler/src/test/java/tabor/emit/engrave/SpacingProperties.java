package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.kit.Limb;
import tabor.notation.Speller;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** Distances on the page against distances in time, and what goes over several systems. */
class SpacingProperties {
  private static final List<String> WORDS =
      List.of("x", "xx", "xxx", "xxxx", "x.x", ".x", "x..x", "xxxxx", "xxxxxx", ".", "xxg", "Xxx");

  /** Hands and feet in words that cross each other, without small notes. */
  @Provide
  Arbitrary<Groove> sections() {
    return Arbitraries.longs()
        .map(
            seed -> {
              Random random = new Random(seed);
              int bars = 1 + random.nextInt(6);
              Sketch sketch = Sketch.groove("g").bars(bars);
              List<String> hands = new ArrayList<>();
              List<String> feet = new ArrayList<>();
              for (int bar = 0; bar < bars; bar++) {
                // Bars come again, so that there are equal ones.
                boolean again = bar > 0 && random.nextInt(2) == 0;
                int from = again ? random.nextInt(bar) : -1;
                hands.add(again ? hands.get(from) : bar(random));
                feet.add(again ? feet.get(from) : bar(random));
              }
              return sketch
                  .part(Limb.RIGHT_HAND, "hihat", String.join(" | ", hands))
                  .part(Limb.RIGHT_FOOT, "kick", String.join(" | ", feet))
                  .done();
            });
  }

  private static String bar(Random random) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      words.add(WORDS.get(random.nextInt(WORDS.size())));
    }
    return String.join(" ", words);
  }

  private static Engraving engrave(Groove groove) {
    return Engraver.engrave(Speller.spell(groove), Look.FULL, OpenFont.get());
  }

  @Property(tries = 100)
  void equalTimesStandEquallyFarApartInsideABeat(@ForAll("sections") Groove groove) {
    Meter meter = groove.meter();
    for (Engraving.StaffSystem system : engrave(groove).systems()) {
      Map<Integer, TreeMap<Time, Double>> bars = new TreeMap<>();
      for (Engraving.Moment moment : system.moments()) {
        bars.computeIfAbsent(moment.bar(), none -> new TreeMap<>()).put(moment.at(), moment.x());
      }
      for (TreeMap<Time, Double> bar : bars.values()) {
        for (int beat = 0; beat < meter.beatCount(); beat++) {
          equalTimes(bar.subMap(meter.beatStart(beat), true, meter.beatStart(beat + 1), true));
        }
      }
    }
  }

  private static void equalTimes(Map<Time, Double> places) {
    Map<Time, Double> distances = new TreeMap<>();
    List<Map.Entry<Time, Double>> list = new ArrayList<>(places.entrySet());
    for (int i = 1; i < list.size(); i++) {
      Time time = list.get(i).getKey().minus(list.get(i - 1).getKey());
      double distance = list.get(i).getValue() - list.get(i - 1).getValue();
      Double known = distances.putIfAbsent(time, distance);
      if (known != null) {
        assertThat(distance).as("%s", places).isBetween(known - 0.001, known + 0.001);
      }
    }
  }

  /** A triplet over eighths: the strokes of the triplet stay as far apart as each other. */
  @Test
  void aTripletOverEighthsIsEven() {
    Groove groove =
        Sketch.groove("g")
            .part(Limb.RIGHT_HAND, "hihat", "xxx x x x")
            .part(Limb.RIGHT_FOOT, "kick", "xx x x x")
            .done();
    List<Double> xs =
        engrave(groove).systems().get(0).moments().stream().map(Engraving.Moment::x).toList();
    // 1, a third, the half, two thirds, 2
    double first = xs.get(1) - xs.get(0);
    assertThat(xs.get(3) - xs.get(1)).isBetween(first - 0.001, first + 0.001);
    assertThat(xs.get(4) - xs.get(3)).isBetween(first - 0.001, first + 0.001);
    assertThat(xs.get(2) - xs.get(0)).isBetween(first * 1.5 - 0.001, first * 1.5 + 0.001);
  }

  /** As many strokes in neighbouring bars, at other times: each bar keeps its own distances. */
  @Test
  void barsOfAsManyStrokesAreNotTakenForEqual() {
    Groove groove =
        Sketch.groove("g")
            .bars(3)
            .part(Limb.RIGHT_HAND, "hihat", "x x x x | x..x x x x | x x..x x x")
            .done();
    List<Double> xs = new ArrayList<>();
    for (Engraving.StaffSystem system : engrave(groove).systems()) {
      for (Engraving.Moment moment : system.moments()) {
        if (moment.bar() == 3) {
          xs.add(moment.x());
        }
      }
    }
    // A quarter, three sixteenths, a sixteenth.
    assertThat(xs).hasSize(5);
    assertThat(xs.get(1) - xs.get(0)).isGreaterThan(xs.get(2) - xs.get(1));
    assertThat(xs.get(2) - xs.get(1)).isGreaterThan(xs.get(3) - xs.get(2));
  }

  @Property(tries = 100)
  void equalBarsAreEquallyWide(@ForAll("sections") Groove groove) {
    tabor.notation.Score score = Speller.spell(groove);
    List<BarSpacing> bars =
        score.bars().stream()
            .map(
                bar ->
                    new BarSpacing(
                        new BarColumns(
                            BarPlan.of(bar, true, true, false, OpenFont.get()), groove.meter()),
                        false))
            .toList();
    Engraving engraving = engrave(groove);
    Map<String, Double> widths = new TreeMap<>();
    int line = 0;
    for (Engraving.StaffSystem system : engraving.systems()) {
      line++;
      for (double[] bar : barlines(system)) {
        int number = (int) bar[0];
        // Alike in what they show: the same width at every force.
        String shown =
            line + " " + bars.get(number - 1).width(1) + " " + bars.get(number - 1).width(0);
        Double known = widths.putIfAbsent(shown, bar[1]);
        if (known != null) {
          assertThat(bar[1]).isBetween(known - 0.001, known + 0.001);
        }
      }
    }
  }

  /** Number and width of the bars between two barlines, the last one left out. */
  private static List<double[]> barlines(Engraving.StaffSystem system) {
    List<Integer> numbers =
        system.moments().stream().map(Engraving.Moment::bar).distinct().toList();
    List<Double> lines =
        Shown.of(system.drawing().marks()).stream()
            .filter(piece -> piece.kind().equals("barlines"))
            .map(piece -> piece.box().right())
            .sorted()
            .toList();
    List<double[]> bars = new ArrayList<>();
    for (int i = 1; i + 1 < numbers.size() && i < lines.size(); i++) {
      bars.add(new double[] {numbers.get(i), lines.get(i) - lines.get(i - 1)});
    }
    return bars;
  }

  private static Groove hairpin(boolean grows) {
    Sketch sketch = Sketch.groove("g").bars(12);
    sketch.part(
        Limb.RIGHT_HAND,
        "hihat",
        String.join(" | ", Collections.nCopies(12, "xxxx xxxx xxxx xxxx")));
    sketch.hairpin(
        new Loudness.Hairpin(
            grows, 1, Time.ZERO, 12, Time.of(3, 4), grows ? Loudness.FF : Loudness.PP));
    return sketch.done();
  }

  /** One hairpin from anywhere to anywhere, over as many systems as it takes. */
  @Property(tries = 60)
  void everyHairpinOpensOrClosesThroughAllItsSystems(@ForAll long seed) {
    Random random = new Random(seed);
    int bars = 2 + random.nextInt(14);
    List<String> words = new ArrayList<>();
    for (int bar = 0; bar < bars; bar++) {
      words.add(bar(random) + " x x");
    }
    int first = 1 + random.nextInt(bars);
    int last = first + random.nextInt(bars - first + 1);
    boolean grows = random.nextBoolean();
    Groove groove =
        Sketch.groove("g")
            .meter(Meter.of(6, 4))
            .bars(bars)
            .part(Limb.RIGHT_HAND, "hihat", String.join(" | ", words))
            .hairpin(
                new Loudness.Hairpin(
                    grows, first, Time.ZERO, last, Time.of(5, 4), grows ? Loudness.F : Loudness.P))
            .done();
    List<Double> openings = new ArrayList<>();
    for (Engraving.StaffSystem system : engrave(groove).systems()) {
      List<Mark.Line> lines = new ArrayList<>();
      collect(system.drawing().marks(), lines);
      if (!lines.isEmpty()) {
        assertThat(lines).hasSize(2);
        openings.add(Math.abs(lines.get(0).y1() - lines.get(1).y1()));
        openings.add(Math.abs(lines.get(0).y2() - lines.get(1).y2()));
      }
    }
    if (!grows) {
      Collections.reverse(openings);
    }
    assertThat(openings).isNotEmpty();
    assertThat(openings.get(0)).isZero();
    for (int i = 1; i < openings.size(); i++) {
      if (i % 2 == 0) {
        // The next system goes on where the last one ended.
        assertThat(openings.get(i))
            .isBetween(openings.get(i - 1) - 1e-9, openings.get(i - 1) + 1e-9);
      } else {
        assertThat(openings.get(i)).isGreaterThan(openings.get(i - 1));
      }
    }
  }

  /** From left to right through all systems, each opening beginning where the last one ended. */
  private static List<Double> openings(Engraving engraving) {
    List<Double> openings = new ArrayList<>();
    for (Engraving.StaffSystem system : engraving.systems()) {
      List<Mark.Line> lines = new ArrayList<>();
      collect(system.drawing().marks(), lines);
      assertThat(lines).hasSize(2);
      openings.add(Math.abs(lines.get(0).y1() - lines.get(1).y1()));
      openings.add(Math.abs(lines.get(0).y2() - lines.get(1).y2()));
    }
    return openings;
  }

  private static void collect(List<Mark> marks, List<Mark.Line> lines) {
    for (Mark mark : marks) {
      if (mark instanceof Mark.Group group) {
        if (group.classes().contains("hairpin")) {
          group.marks().forEach(line -> lines.add((Mark.Line) line));
        } else {
          collect(group.marks(), lines);
        }
      }
    }
  }

  @Test
  void aCrescendoOpensOverItsSystems() {
    List<Double> openings = openings(engrave(hairpin(true)));
    assertThat(openings.size()).isGreaterThanOrEqualTo(6);
    assertThat(openings.get(0)).isZero();
    assertThat(openings.get(openings.size() - 1)).isGreaterThan(1);
    for (int i = 2; i < openings.size(); i += 2) {
      assertThat(openings.get(i)).isBetween(openings.get(i - 1) - 1e-9, openings.get(i - 1) + 1e-9);
      assertThat(openings.get(i)).isGreaterThan(openings.get(i - 2));
    }
  }

  @Test
  void aDiminuendoClosesOverItsSystems() {
    List<Double> openings = openings(engrave(hairpin(false)));
    for (int i = 2; i < openings.size(); i++) {
      assertThat(openings.get(i)).isLessThan(openings.get(i - 1) + 1e-9);
    }
    assertThat(openings.get(0)).isGreaterThan(1);
    assertThat(openings.get(openings.size() - 1)).isZero();
  }
}
