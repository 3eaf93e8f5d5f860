package tabor.compile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.testing.Files;

/** What holds for every file: no exception, and the same outcome by whichever way it is reached. */
class RandomFilesTest {
  private static final Path PATH = Path.of("random.tabor");

  @Provide
  Arbitrary<String> files() {
    return Files.valid();
  }

  @Property(tries = 300)
  void validFilesHaveNoErrors(@ForAll("files") String text) {
    Compiled compiled = fresh(text);
    List<Diagnostic> errors =
        compiled.diagnostics().stream().filter(d -> d.severity() == Severity.ERROR).toList();
    assertThat(errors).as(text).isEmpty();
    for (Groove groove : compiled.lesson().grooves()) {
      assertThat(groove.strokes()).isSortedAccordingTo(Stroke.ORDER);
      for (Stroke stroke : groove.strokes()) {
        assertThat(stroke.bar()).isBetween(groove.firstBar(), groove.bars());
        assertThat(stroke.at().sign()).isNotNegative();
        assertThat(stroke.at()).isLessThan(groove.meter().bar());
        assertThat(stroke.surface().isFoot()).isNotEqualTo(stroke.limb().isHand());
      }
    }
  }

  @Property(tries = 150)
  void anEditedFileIsCompiledAsIfItWereNew(@ForAll("files") String text, @ForAll long seed) {
    Random random = new Random(seed);
    Compiler compiler = new Compiler(Loader.NONE);
    String now = text;
    for (int i = 0; i < 12; i++) {
      Compiled again = compiler.compile(PATH, now, Options.NONE);
      assertThat(described(again)).as(now).isEqualTo(described(fresh(now)));
      now = mutated(now, random);
    }
  }

  /** Two compilers that knew the same go their own ways, and neither sees the other's. */
  @Property(tries = 100)
  void aCompilerGoesOnFromWhatAnotherKnew(@ForAll("files") String text, @ForAll long seed) {
    Random random = new Random(seed);
    Compiler one = new Compiler(Loader.NONE);
    one.compile(PATH, text, Options.NONE);
    Compiler.Known known = one.known();
    Compiler other = new Compiler(Loader.NONE, () -> known);
    String first = text;
    String second = text;
    for (int i = 0; i < 6; i++) {
      first = mutated(first, random);
      second = mutated(second, random);
      assertThat(described(one.compile(PATH, first, Options.NONE)))
          .as(first)
          .isEqualTo(described(fresh(first)));
      assertThat(described(other.compile(PATH, second, Options.NONE)))
          .as(second)
          .isEqualTo(described(fresh(second)));
    }
    Compiler late = new Compiler(Loader.NONE, () -> known);
    assertThat(described(late.compile(PATH, second, Options.NONE)))
        .as(second)
        .isEqualTo(described(fresh(second)));
  }

  @Test
  void whatAnotherCompilerWorkedOutIsNotWorkedOutAgain() {
    String text =
        "kit ours like junior\n"
            + "  without tom1\n\n"
            + "groove a\n"
            + "  hands : rlrl rlrl rlrl rlrl\n\n"
            + "step b\n"
            + "  accent left\n";
    Compiler one = new Compiler(Loader.NONE);
    List<Section> before = one.compile(PATH, text, Options.NONE).lesson().sections();
    Compiler other = new Compiler(Loader.NONE, one::known);
    List<Section> after =
        other.compile(PATH, text + "  accent right\n", Options.NONE).lesson().sections();
    assertThat(after.get(0)).isSameAs(before.get(0));
    assertThat(after.get(1)).isNotSameAs(before.get(1));
  }

  @Test
  void aKitWhoseNameIsTakenIsCheckedHoweverItCameToThat() {
    String second = "kit two like five-piece\n  without tom2 plays floo\n";
    String taken = "kit two like five-piece\n" + second;
    Compiler compiler = new Compiler(Loader.NONE);
    compiler.compile(PATH, "kit one like five-piece\n" + second, Options.NONE);
    Compiled edited = compiler.compile(PATH, taken, Options.NONE);
    assertThat(described(edited)).isEqualTo(described(fresh(taken)));
    assertThat(edited.diagnostics())
        .extracting(one -> one.code().word())
        .containsSubsequence("duplicate-name", "unknown-name");
  }

  @Test
  void whatWasKnownStaysAsItWas() {
    String text = "groove a\n  hands : rlrl rlrl rlrl rlrl\n\nstep b\n  accent left\n\n";
    Compiler one = new Compiler(Loader.NONE);
    List<Section> before = one.compile(PATH, text, Options.NONE).lesson().sections();
    Compiler.Known known = one.known();
    one.compile(PATH, text.replace("rlrl rlrl rlrl rlrl", "rllr rllr rllr rllr"), Options.NONE);
    Compiler late = new Compiler(Loader.NONE, () -> known);
    List<Section> after =
        late.compile(PATH, text + "step c from a\n", Options.NONE).lesson().sections();
    assertThat(after.subList(0, 2)).isEqualTo(before);
    assertThat(after.get(1)).isSameAs(before.get(1));
  }

  @Test
  void whatWasKnownUnderOtherOptionsIsWorkedOutAnew() {
    String text = "tempo 90\ngroove a\n  hands : rlrl rlrl rlrl rlrl\n";
    Compiler one = new Compiler(Loader.NONE);
    one.compile(PATH, text, new Options(null, true, false, Time.of(60), null));
    Compiler other = new Compiler(Loader.NONE, one::known);
    assertThat(described(other.compile(PATH, text, Options.NONE)))
        .isEqualTo(described(fresh(text)));
  }

  /** Any edit of a file: a line out, doubled or moved, characters in, out or changed. */
  static String mutated(String text, Random random) {
    if (text.isEmpty()) {
      return "groove g\n";
    }
    String[] lines = text.split("\n", -1);
    int at = random.nextInt(lines.length);
    switch (random.nextInt(6)) {
      case 0 -> lines[at] = "";
      case 1 -> lines[at] = lines[at] + "\n" + lines[random.nextInt(lines.length)];
      case 2 -> {
        String other = lines[at];
        int to = random.nextInt(lines.length);
        lines[at] = lines[to];
        lines[to] = other;
      }
      default -> {
        int place = random.nextInt(text.length() + 1);
        int end = Math.min(text.length(), place + random.nextInt(4));
        String signs = "rlxRb.(){}'/~=!^:%|- \"#0123&ae\t\r\u00e9\ud83e\udd41";
        StringBuilder some = new StringBuilder();
        for (int i = random.nextInt(3); i > 0; i--) {
          some.append(signs.charAt(random.nextInt(signs.length())));
        }
        return text.substring(0, place) + some + text.substring(end);
      }
    }
    return String.join("\n", lines);
  }

  private static Compiled fresh(String text) {
    return new Compiler(Loader.NONE).compile(PATH, text, Options.NONE);
  }

  private static String described(Compiled compiled) {
    StringBuilder all = new StringBuilder();
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      all.append(diagnostic.code().word())
          .append(' ')
          .append(compiled.span(diagnostic.spot()))
          .append(' ')
          .append(diagnostic.place())
          .append(diagnostic.message())
          .append(diagnostic.help());
      for (Diagnostic.Label label : diagnostic.labels()) {
        all.append(compiled.span(label.spot())).append(label.text());
      }
      for (Diagnostic.Fix fix : diagnostic.fixes()) {
        for (Diagnostic.Edit edit : fix.edits()) {
          all.append(compiled.span(edit.spot())).append(edit.text());
        }
      }
      all.append('\n');
    }
    for (Section section : compiled.lesson().sections()) {
      all.append(section.name()).append(' ').append(section.title()).append('\n');
      if (section instanceof Groove groove) {
        all.append(groove.setting()).append(groove.bars()).append(groove.plays());
        for (Stroke stroke : groove.strokes()) {
          all.append(stroke.bar())
              .append(' ')
              .append(stroke.at())
              .append(stroke.length())
              .append(stroke.limb())
              .append(stroke.surface())
              .append(stroke.level())
              .append(stroke.ornaments())
              .append(stroke.slot())
              .append(compiled.span(stroke.spot()))
              .append('\n');
        }
      }
    }
    return all.toString();
  }
}
