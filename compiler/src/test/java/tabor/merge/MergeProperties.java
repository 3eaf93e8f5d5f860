package tabor.merge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import tabor.format.Formatter;
import tabor.testing.Files;

/** The laws of merging. */
class MergeProperties {
  private static Merged merge(String base, String ours, String theirs) {
    return Merger.merge(base, ours, theirs, Merger.Markers.USUAL);
  }

  @Provide
  Arbitrary<String> files() {
    return Arbitraries.oneOf(
        Files.valid(), Files.valid().map(text -> text.replace("\n", "\r\n")), broken());
  }

  /** Lines in any order, with what nobody can read among them. */
  private static Arbitrary<String> broken() {
    return Arbitraries.of(
            "groove a",
            "groove a",
            "step",
            "step b",
            "kick : x",
            "add kick at 1",
            "add kick at 1",
            "<<<<<<< ours",
            "text \"\"\"",
            "\"",
            "# note",
            "# note",
            "",
            "",
            "title \"x\"",
            "chart c",
            "play a",
            "tempo 90",
            "tempo 91",
            "pattern p : rl",
            "kit k",
            "  surface",
            "\uFEFF")
        .list()
        .ofMaxSize(14)
        .map(lines -> String.join("\n", lines));
  }

  @Property(tries = 150)
  void whatOnlyOneSideChangedIsTakenOver(
      @ForAll("files") String base, @ForAll long seed, @ForAll @IntRange(max = 6) int edits) {
    String edited = new RandomEdits(seed, "o").edited(base, edits);
    assertThat(merge(base, edited, base)).isEqualTo(new Merged(edited, List.of(), 0, List.of()));
    assertThat(merge(base, base, edited)).isEqualTo(new Merged(edited, List.of(), 0, List.of()));
  }

  @Property(tries = 80)
  void whatBothChangedAlikeIsTakenOnce(
      @ForAll("files") String base, @ForAll long seed, @ForAll @IntRange(max = 6) int edits) {
    String edited = new RandomEdits(seed, "o").edited(base, edits);
    assertThat(merge(base, edited, edited)).isEqualTo(new Merged(edited, List.of(), 0, List.of()));
  }

  @Property(tries = 80)
  void anyTextTakesTheOthersPlaceWhole(
      @ForAll("files") String base, @ForAll("files") String other) {
    assertThat(merge(base, other, base).text()).isEqualTo(other);
    assertThat(merge(base, base, other).text()).isEqualTo(other);
    assertThat(merge(base, other, other).text()).isEqualTo(other);
  }

  @Property(tries = 100)
  void theSidesMayChangePlacesButForOrder(
      @ForAll("valid") String base,
      @ForAll long one,
      @ForAll long other,
      @ForAll @IntRange(max = 4) int edits) {
    String ours = new RandomEdits(one, "o").edited(base, edits);
    String theirs = new RandomEdits(other, "t").edited(base, edits);
    Merged there = merge(base, ours, theirs);
    Merged back = merge(base, theirs, ours);
    assertThat(there.marked()).isEqualTo(back.marked());
    if (there.conflicts().isEmpty() && back.conflicts().isEmpty()) {
      assertThat(counts(there.text())).isEqualTo(counts(back.text()));
    }
  }

  @Property(tries = 150)
  void noLineIsLostOrDoubled(
      @ForAll("valid") String base,
      @ForAll long one,
      @ForAll long other,
      @ForAll @IntRange(max = 4) int edits) {
    String ours = new RandomEdits(one, "o").edited(base, edits);
    String theirs = new RandomEdits(other, "t").edited(base, edits);
    Merged merged = merge(base, ours, theirs);
    Map<String, Integer> was = counts(base);
    Map<String, Integer> our = counts(ours);
    Map<String, Integer> their = counts(theirs);
    Map<String, Integer> all = counts(merged.text());
    Set<String> lines = new HashSet<>(was.keySet());
    lines.addAll(our.keySet());
    lines.addAll(their.keySet());
    for (String line : lines) {
      int b = was.getOrDefault(line, 0);
      int o = our.getOrDefault(line, 0);
      int t = their.getOrDefault(line, 0);
      int m = all.getOrDefault(line, 0);
      // What each side did to a line of its own: two of three equal lines may be changed, one by
      // each.
      int both = Math.max(0, o + t - b);
      if (isMoved(line, base, ours) || isMoved(line, base, theirs)) {
        // For its sections it is a line taken out and one added, which both may have added.
        assertThat(m)
            .as(line)
            .isBetween(Math.min(1, Math.min(o, t)), merged.conflicts().isEmpty() ? o + t : m);
      } else if (!merged.conflicts().isEmpty()) {
        // Between markers a line may stand twice; none may be missing.
        int least = b == 0 ? Math.min(1, o + t) : Math.min(b, Math.min(o, t));
        assertThat(m).as(line).isGreaterThanOrEqualTo(Math.min(least, both));
      } else if (o == b || t == b) {
        assertThat(m).as(line).isEqualTo(o == b ? t : o);
      } else {
        assertThat(m)
            .as(line)
            .isBetween(Math.min(both, Math.min(o, t)), Math.max(both, Math.max(o, t)));
      }
    }
    if (merged.conflicts().isEmpty()) {
      all.keySet().removeAll(lines);
      assertThat(all).isEmpty();
    }
  }

  /** True if a line of the base stands in a section in which it did not. */
  private static boolean isMoved(String line, String base, String side) {
    Set<String> before = sections(line, base);
    return !before.isEmpty() && !before.containsAll(sections(line, side));
  }

  /** The beginnings of the headings of the sections that a line stands in. */
  private static Set<String> sections(String line, String text) {
    Set<String> found = new HashSet<>();
    String heading = "";
    for (String one : Formatter.format(text).lines().toList()) {
      if (!one.isBlank() && !one.startsWith(" ")) {
        heading = one.replaceFirst("^(\\S+ \\S+).*", "$1");
      }
      if (counts(one).containsKey(line)) {
        found.add(heading);
      }
    }
    return found;
  }

  @Provide
  Arbitrary<String> valid() {
    return Files.valid();
  }

  /** How often each line stands in a text; layout and what a merge writes to steps left out. */
  private static Map<String, Integer> counts(String text) {
    Map<String, Integer> counts = new HashMap<>();
    for (String line : Formatter.format(text).lines().toList()) {
      String said = line.strip().replaceAll("\\s+", " ");
      if (said.startsWith("step ")) {
        said = said.replaceAll(" from \\S+", "");
      }
      // A comment is merged apart from the statement that it stands behind.
      for (String part : said.split("#", -1)) {
        if (!part.isBlank()) {
          counts.merge(part.strip(), 1, Integer::sum);
        }
      }
    }
    return counts;
  }

  /** Two people, two lines: what comes out is the text in which both edits were made. */
  @Property(tries = 200)
  void editsOfDifferentLinesCommute(
      @ForAll("valid") String base,
      @ForAll int one,
      @ForAll int other,
      @ForAll @IntRange(max = 3) int how,
      @ForAll @IntRange(max = 3) int otherHow) {
    List<String> lines = base.lines().toList();
    List<Integer> free = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      boolean plain =
          line.matches("  \\S.*") && !line.contains("\"\"\"") && !line.contains("two lines");
      if (plain && !line.startsWith("  text")) {
        free.add(i);
      }
    }
    Assume.that(free.size() >= 2);
    int first = free.get(Math.floorMod(one, free.size()));
    int second = free.get(Math.floorMod(other, free.size()));
    Assume.that(first != second);
    // The lower one first: it moves nothing that stands above it.
    String both =
        first > second
            ? edit(edit(lines, first, how, "o"), second, otherHow, "t")
            : edit(edit(lines, second, otherHow, "t"), first, how, "o");
    Merged merged = merge(base, edit(lines, first, how, "o"), edit(lines, second, otherHow, "t"));
    assertThat(merged.conflicts()).isEmpty();
    boolean sameGap = Math.abs(first - second) == 1 && (how == 2 || otherHow == 2);
    if (sameGap) {
      assertThat(counts(merged.text())).isEqualTo(counts(both));
    } else {
      assertThat(merged.text()).isEqualTo(both);
    }
  }

  private static String edit(List<String> lines, int at, int how, String mark) {
    return String.join("\n", edited(lines, at, how, mark)) + "\n";
  }

  private static String edit(String text, int at, int how, String mark) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    return edit(lines, at, how, mark);
  }

  /**
   * Changes a line without moving the others: those taken out leave a mark that goes in the end.
   */
  private static List<String> edited(List<String> lines, int at, int how, String mark) {
    List<String> edited = new ArrayList<>(lines);
    switch (how) {
      case 0 -> edited.set(at, lines.get(at) + "  # " + mark);
      case 1 -> edited.set(at, "    " + lines.get(at).strip());
      case 2 -> edited.set(at, lines.get(at) + "\n  text \"" + mark + "\"");
      default -> edited.set(at, lines.get(at).replaceFirst("\\d+", "8" + mark.length()));
    }
    return edited;
  }
}
