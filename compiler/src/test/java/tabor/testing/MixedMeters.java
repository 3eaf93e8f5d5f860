package tabor.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import tabor.rhythm.Time;

/**
 * A random valid file whose one groove, {@code g}, takes two to four meters in turn; a chart,
 * {@code c}, counts it in, plays it and rests. What a test needs to know of it is worked out from
 * the numbers of the signatures alone.
 *
 * @param text the file
 * @param signatures {@code 7/8} for each meter of the round
 * @param beats how many beats a bar of each has
 * @param bars how many bars the groove has, the pickup not counted
 * @param pickup length of bar 0 in whole notes; zero without one
 * @param straight false if it swings
 * @param whole length of a whole note in milliseconds at its tempo
 */
public record MixedMeters(
    String text,
    List<String> signatures,
    List<Integer> beats,
    int bars,
    Time pickup,
    boolean straight,
    double whole) {
  /** How many bars the chart rests. */
  public static final int REST = 3;

  /**
   * A meter.
   *
   * @param written as after {@code time}
   * @param beats how many
   * @param last length of its last beat
   * @param counted what a bare tempo counts
   */
  private record Kind(String written, int beats, Time last, Time counted) {}

  private static final List<Kind> KINDS =
      List.of(
          kind("4/4", 4, Time.of(1, 4)),
          kind("3/4", 3, Time.of(1, 4)),
          kind("2/4", 2, Time.of(1, 4)),
          kind("6/8", 2, Time.of(3, 8)),
          kind("12/8", 4, Time.of(3, 8)),
          kind("5/8", 5, Time.of(1, 8)),
          kind("6/8 in 6", 6, Time.of(1, 8)),
          kind("4/4 in 2", 2, Time.of(1, 2)),
          kind("5/4 grouped 3+2", 5, Time.of(1, 4)),
          kind("7/16", 7, Time.of(1, 16)),
          new Kind("7/8 in 2+2+3", 3, Time.of(3, 8), Time.of(1, 8)),
          new Kind("8/8 in 3+3+2", 3, Time.of(1, 4), Time.of(1, 8)));

  private static final List<String> WORDS =
      List.of("x", ".", "xx", ".x", "x.", "xxx", "X", "(x)", "x-", ".");

  private static Kind kind(String written, int beats, Time beat) {
    return new Kind(written, beats, beat, beat);
  }

  /** All of them. */
  public static Arbitrary<MixedMeters> any() {
    return Arbitraries.longs().map(seed -> of(new Random(seed)));
  }

  private static MixedMeters of(Random random) {
    List<Kind> cycle = new ArrayList<>();
    int size = 2 + random.nextInt(3);
    for (int i = 0; i < size; i++) {
      cycle.add(KINDS.get(random.nextInt(KINDS.size())));
    }
    int bars = 1 + random.nextInt(9);
    boolean pickup = random.nextInt(3) == 0;
    boolean straight = random.nextInt(3) > 0;
    int tempo = 30 + random.nextInt(15);
    StringBuilder text = new StringBuilder();
    text.append("time ")
        .append(cycle.stream().map(Kind::written).collect(Collectors.joining(" ")))
        .append("\ntempo ")
        .append(tempo)
        .append('\n')
        .append(straight ? "" : "feel swing eighths 62%\n")
        .append("groove g\n")
        .append(pickup ? "  pickup 1 beat\n" : "");
    for (String part : List.of("hihat", "snare", "kick")) {
      List<String> written = new ArrayList<>();
      if (pickup) {
        written.add(word(random));
      }
      for (int bar = 1; bar <= bars; bar++) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < cycle.get((bar - 1) % size).beats(); i++) {
          words.add(word(random));
        }
        written.add(String.join(" ", words));
      }
      text.append("  ").append(part).append(" : ").append(String.join(" | ", written)).append('\n');
    }
    text.append("chart c\n  count-in 2 bars\n  click on\n  play g 2 times\n  rest ")
        .append(REST)
        .append(" bars\n");
    Kind first = cycle.get(0);
    return new MixedMeters(
        text.toString(),
        cycle.stream().map(kind -> kind.written().split(" ", 2)[0]).toList(),
        cycle.stream().map(Kind::beats).toList(),
        bars,
        pickup ? first.last() : Time.ZERO,
        straight,
        60_000.0 / tempo * first.counted().den() / first.counted().num());
  }

  private static String word(Random random) {
    return WORDS.get(random.nextInt(WORDS.size()));
  }

  private int index(int bar) {
    return bar < 1 ? 0 : (bar - 1) % signatures.size();
  }

  /** The signature of a bar; bar 0 and those of a count-in have the first. */
  public String signature(int bar) {
    return signatures.get(index(bar));
  }

  /** How many beats a whole bar has. */
  public int beats(int bar) {
    return beats.get(index(bar));
  }

  /** Length of a whole bar in whole notes. */
  public Time length(int bar) {
    String[] numbers = signature(bar).split("/", -1);
    return Time.of(Long.parseLong(numbers[0]), Long.parseLong(numbers[1]));
  }

  /** Length of the first so many bars in whole notes. */
  public Time lengthOf(int first) {
    Time sum = Time.ZERO;
    for (int bar = 1; bar <= first; bar++) {
      sum = sum.plus(length(bar));
    }
    return sum;
  }

  @Override
  public String toString() {
    return text;
  }
}
