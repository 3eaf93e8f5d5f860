package tabor.compare;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.format.Formatter;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.resolve.Options;
import tabor.testing.Files;

/** The laws of comparing. */
class CompareProperties {
  private static final List<String> STRUCK = List.of("groove", "step", "variation");

  private static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE);
  }

  private static FileChange changes(String before, String after) {
    return FileComparison.of(compiled(before), compiled(after));
  }

  @Provide
  Arbitrary<String> files() {
    return Files.valid();
  }

  @Property(tries = 150)
  void aFileDoesNotDifferFromItselfNorFromItsFormattedSelf(@ForAll("files") String text) {
    assertThat(ChangeWords.of(changes(text, text))).isEmpty();
    String formatted = Formatter.format(text);
    assertThat(changes(text, formatted).isEmpty()).isTrue();
    assertThat(changes(formatted, text).isEmpty()).isTrue();
  }

  @Property(tries = 150)
  void anotherWayToWriteTheSameStrokesIsNoChange(@ForAll("files") String text) {
    Compiled file = compiled(text);
    List<Groove> kept = WrittenOut.writable(file.lesson());
    Compiled plain = compiled(WrittenOut.of(file.lesson(), kits(file)));
    assertThat(plain.diagnostics()).noneMatch(d -> d.code().word().equals("syntax"));
    List<String> names = kept.stream().map(Groove::name).toList();
    List<SectionChange> found =
        FileComparison.of(file, plain).sections().stream()
            .filter(change -> names.contains(change.label()))
            .toList();
    // What else is not there is taken out, and so a section may stand after another one.
    assertThat(found)
        .allMatch(change -> change.details().stream().allMatch(CompareProperties::isPlace));
    assertThat(found).allMatch(change -> change.strokes().isEmpty() && change.bars().isEmpty());
  }

  private static boolean isPlace(Detail detail) {
    return detail.what().equals("place");
  }

  /** The kits of a file as they are written. */
  private static String kits(Compiled file) {
    return file.syntax().stream()
        .filter(s -> s.passage().text().stripLeading().startsWith("kit "))
        .map(s -> s.passage().text())
        .collect(Collectors.joining());
  }

  /** In a file that is written out every line is one stroke, and so every edit is one change. */
  @Property(tries = 150)
  void anEditIsReportedAsExactlyThat(@ForAll("files") String text, @ForAll long seed) {
    java.util.Random dice = new java.util.Random(seed);
    Compiled file = compiled(text);
    Compiled plain = compiled(WrittenOut.of(file.lesson(), kits(file)));
    List<Groove> grooves =
        plain.lesson().grooves().stream().filter(g -> !g.written().isEmpty()).toList();
    Assume.that(!grooves.isEmpty());
    Groove groove = grooves.get(dice.nextInt(grooves.size()));
    Stroke stroke = groove.written().get(dice.nextInt(groove.written().size()));
    Assume.that(stroke.ornaments().isEmpty());
    boolean drop = dice.nextBoolean();
    Level level = Level.values()[(stroke.level().ordinal() + 1) % 3];
    String line = WrittenOut.line(groove, stroke);
    String other = drop ? "" : WrittenOut.line(groove, stroke.at(level));
    String before = plain.text();
    int section = before.indexOf("groove " + groove.name());
    int at = before.indexOf(line, section);
    Compiled edited =
        compiled(before.substring(0, at) + other + before.substring(at + line.length()));
    FileChange change = FileComparison.of(plain, edited);
    assertThat(change.details()).isEmpty();
    assertThat(change.sections()).hasSize(1);
    SectionChange one = change.sections().get(0);
    assertThat(one.label()).isEqualTo(groove.name());
    assertThat(one.details()).isEmpty();
    assertThat(one.strokes()).hasSize(1);
    StrokeChange found = one.strokes().get(0);
    assertThat(key(found.before())).isEqualTo(key(stroke));
    assertThat(found.after() == null ? "" : key(found.after()))
        .isEqualTo(drop ? "" : key(stroke.at(level)));
  }

  @Property(tries = 150)
  void theReportAppliedToTheOldStrokesGivesTheNew(
      @ForAll("files") String before, @ForAll("files") String after) {
    Compiled old = compiled(before);
    Compiled now = compiled(after);
    FileChange change = FileComparison.of(old, now);
    JsonObject report =
        JsonParser.parseString(
                ChangeReport.json(
                    List.of(new ComparedFile("a.tabor", "b.tabor", change, false, List.of()))))
            .getAsJsonObject();
    JsonObject file = report.getAsJsonArray("files").get(0).getAsJsonObject();
    assertThat(applied(strokes(old.lesson()), file)).isEqualTo(strokes(now.lesson()));
  }

  /** The strokes of every groove and step, each in words. */
  private static Map<String, Set<String>> strokes(Lesson lesson) {
    Map<String, Set<String>> all = new HashMap<>();
    for (Groove groove : lesson.grooves()) {
      Set<String> strokes = new TreeSet<>();
      groove.written().forEach(stroke -> strokes.add(key(stroke)));
      all.put(groove.name(), strokes);
    }
    return all;
  }

  private static String key(Stroke s) {
    return String.join(
        " ",
        String.valueOf(s.bar()),
        s.at().toString(),
        s.limb().words(),
        s.surface().name(),
        s.level().word(),
        s.ornaments().list().stream().map(Ornament::word).toList().toString(),
        s.ornaments().isRolled() ? s.length().toString() : "");
  }

  private static String key(JsonObject s, int bar) {
    List<String> ornaments = new ArrayList<>();
    s.getAsJsonArray("ornaments").forEach(one -> ornaments.add(one.getAsString()));
    return String.join(
        " ",
        String.valueOf(bar),
        s.get("at").getAsString(),
        s.get("limb").getAsString(),
        s.get("surface").getAsString(),
        s.get("level").getAsString(),
        ornaments.toString(),
        s.has("length") ? s.get("length").getAsString() : "");
  }

  /** Carries a report out as docs/version-control.md says. */
  private static Map<String, Set<String>> applied(Map<String, Set<String>> old, JsonObject file) {
    Map<String, Set<String>> all = new HashMap<>(old);
    Map<String, Set<String>> renamed = new HashMap<>();
    for (JsonElement element : file.getAsJsonArray("sections")) {
      JsonObject section = element.getAsJsonObject();
      if (!STRUCK.contains(section.get("kind").getAsString())) {
        continue;
      }
      Set<String> strokes = new TreeSet<>();
      if (section.has("before")) {
        all.remove(section.get("before").getAsString());
        strokes.addAll(old.get(section.get("before").getAsString()));
      }
      change(section, strokes);
      if (!section.get("state").getAsString().equals("gone")) {
        renamed.put(section.get("name").getAsString(), strokes);
      }
    }
    all.putAll(renamed);
    return all;
  }

  private static void change(JsonObject section, Set<String> strokes) {
    Map<Integer, Integer> bars = new HashMap<>();
    for (JsonElement pair : section.getAsJsonArray("bars")) {
      JsonObject bar = pair.getAsJsonObject();
      if (bar.has("before")) {
        bars.put(bar.get("before").getAsInt(), bar.has("after") ? bar.get("after").getAsInt() : -1);
      }
    }
    for (JsonElement one : section.getAsJsonArray("strokes")) {
      JsonObject stroke = one.getAsJsonObject();
      if (stroke.has("before")) {
        JsonObject before = stroke.getAsJsonObject("before");
        assertThat(strokes.remove(key(before, before.get("bar").getAsInt()))).isTrue();
      }
    }
    List<String> left = new ArrayList<>(strokes);
    strokes.clear();
    for (String key : left) {
      int space = key.indexOf(' ');
      int bar = Integer.parseInt(key.substring(0, space));
      strokes.add(bars.getOrDefault(bar, bar) + key.substring(space));
    }
    for (JsonElement one : section.getAsJsonArray("strokes")) {
      JsonObject stroke = one.getAsJsonObject();
      if (stroke.has("after")) {
        JsonObject after = stroke.getAsJsonObject("after");
        assertThat(strokes.add(key(after, after.get("bar").getAsInt()))).isTrue();
      }
    }
  }

  @Property(tries = 100)
  void whatIsAlignedIsEveryIndexOnceInOrder(
      @ForAll("rows") List<Integer> left, @ForAll("rows") List<Integer> right) {
    List<Alignment.Pair> pairs = Alignment.of(left.size(), right.size(), equals(left, right));
    List<Integer> lefts = pairs.stream().map(Alignment.Pair::left).filter(i -> i >= 0).toList();
    List<Integer> rights = pairs.stream().map(Alignment.Pair::right).filter(i -> i >= 0).toList();
    assertThat(lefts).isEqualTo(java.util.stream.IntStream.range(0, left.size()).boxed().toList());
    assertThat(rights)
        .isEqualTo(java.util.stream.IntStream.range(0, right.size()).boxed().toList());
    long met = pairs.stream().filter(Alignment.Pair::isWhole).count();
    assertThat(met).isEqualTo(longestCommon(left, right, 0, 0, new HashMap<>()));
  }

  @Provide
  Arbitrary<List<Integer>> rows() {
    return Arbitraries.integers().between(0, 3).list().ofMaxSize(9);
  }

  private static Alignment.Cost equals(List<Integer> left, List<Integer> right) {
    return new Alignment.Cost() {
      @Override
      public int pair(int a, int b) {
        return left.get(a).equals(right.get(b)) ? 0 : Alignment.NEVER;
      }

      @Override
      public int left(int index) {
        return 1;
      }

      @Override
      public int right(int index) {
        return 1;
      }
    };
  }

  /** The textbook definition, found by trying. */
  private static long longestCommon(
      List<Integer> a, List<Integer> b, int i, int j, Map<List<Integer>, Long> known) {
    if (i == a.size() || j == b.size()) {
      return 0;
    }
    Long found = known.get(List.of(i, j));
    if (found == null) {
      found =
          Math.max(
              longestCommon(a, b, i + 1, j, known),
              Math.max(
                  longestCommon(a, b, i, j + 1, known),
                  a.get(i).equals(b.get(j)) ? 1 + longestCommon(a, b, i + 1, j + 1, known) : 0));
      known.put(List.of(i, j), found);
    }
    return found;
  }
}
