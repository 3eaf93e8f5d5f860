package tabor.merge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Texts so long that whatever looks at each line for each other one would take many minutes. The
 * limit is no measure: what takes time in proportion to a text is done in seconds.
 */
class LongMergeTest {
  private static final Duration MINUTES = Duration.ofMinutes(2);

  private static String lines(int count, IntFunction<String> line) {
    return IntStream.range(0, count).mapToObj(line).collect(Collectors.joining("\n", "", "\n"));
  }

  private static String merged(String base, String ours, String theirs) {
    return assertTimeoutPreemptively(
        MINUTES,
        () -> {
          Merged merged = Merger.merge(base, ours, theirs, Merger.Markers.USUAL);
          assertThat(merged.conflicts()).isEmpty();
          return merged.text();
        });
  }

  @Test
  void manySections() {
    String base = lines(60_000, i -> "groove g" + i + "\n  kick : x");
    String ours = base.replace("groove g5\n", "groove g5\n  tempo 70\n");
    String theirs = base + "groove last\n  kick : x\n";
    assertThat(merged(base, ours, theirs)).isEqualTo(ours + "groove last\n  kick : x\n");
  }

  @Test
  void manySectionsUnderNewNamesOnBothSides() {
    String base = lines(20_000, i -> "groove g" + i + "\n  kick : x");
    String ours = lines(20_000, i -> "groove h" + i + "\n  kick : x");
    assertThat(merged(base, ours, base)).isEqualTo(ours);
    assertThat(merged(base, base, ours)).isEqualTo(ours);
  }

  @Test
  void manyCommentsThatChangedTheirPlaces() {
    String base = "groove g\n" + lines(60_000, i -> "  # " + i);
    String ours = "groove g\n" + lines(60_000, i -> "  # " + (59_999 - i));
    assertThat(merged(base, ours, base).lines().sorted()).isEqualTo(ours.lines().sorted().toList());
  }

  @Test
  void manyNewLinesOnBothSides() {
    String base = "groove g\n";
    String text = lines(60_000, i -> "  # " + new Random(i).nextInt());
    assertThat(merged(base, base + text, base + text)).isEqualTo(base + text);
  }
}
