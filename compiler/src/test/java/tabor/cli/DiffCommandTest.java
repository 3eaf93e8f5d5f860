package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DiffCommandTest {
  private static final String FINE = "groove a\n  kick : x . x .\n";
  private static final String OTHER = "groove a\n  kick : x . x x\n";

  @TempDir private Path folder;

  private String file(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    return file.toString();
  }

  @Test
  void exitCodesSaySameOtherAndUnreadable() throws IOException {
    String a = file("a.tabor", FINE);
    String b = file("b.tabor", "# other words\ngroove a\n  kick : x... . x.:1 .\n");
    String c = file("c.tabor", OTHER);
    assertThat(Ran.of("diff", a, b)).isEqualTo(new Ran(0, "", ""));
    assertThat(Ran.of("diff", a, c))
        .isEqualTo(new Ran(1, "groove a, bar 1: kick added on 4\n", ""));
    Ran missing = Ran.of("diff", a, folder.resolve("none.tabor").toString());
    assertThat(missing.code()).isEqualTo(2);
    assertThat(missing.err()).contains("none.tabor cannot be read").contains("it is not there");
    Files.write(folder.resolve("bad.tabor"), new byte[] {(byte) 0xff});
    assertThat(Ran.of("diff", folder.resolve("bad.tabor").toString(), a).code()).isEqualTo(2);
    assertThat(Ran.of("diff", a).code()).isEqualTo(2);
    assertThat(Ran.of("diff", a, b, c).code()).isEqualTo(2);
    assertThat(Ran.of("diff", "--report", "xml", a, b).code()).isEqualTo(2);
    assertThat(Ran.of("diff", "-", "-").code()).isEqualTo(2);
    assertThat(Ran.of("diff", a, folder.toString()).code()).isEqualTo(2);
  }

  /** Millions of empty lines have nothing to merge, and would be laid over each other for long. */
  @Test
  void mergingTextsOfVeryManyLines() throws IOException {
    String a = file("a.tabor", FINE);
    String most = file("most.tabor", FINE + "\n".repeat(1_000_000 - FINE.split("\n", -1).length));
    Path out = folder.resolve("merged.tabor");
    assertThat(Ran.of("merge", a, a, most, "-o", out.toString()).code()).isZero();
    Files.delete(out);
    for (String end : List.of("\n", "\r", "\r\n")) {
      String more = file("more.tabor", "groove a\n  kick : x . x .\n" + end.repeat(1_000_000));
      Ran ran = Ran.of("merge", a, more, a, "-o", out.toString());
      assertThat(ran.code()).isEqualTo(2);
      assertThat(ran.err())
          .contains(
              "more.tabor has more than 1000000 lines, which are too many to merge; take empty");
      assertThat(out).doesNotExist();
    }
  }

  @Test
  void standardInputIsOneOfTheTwo() throws IOException {
    String a = file("a.tabor", FINE);
    assertThat(Ran.reading(OTHER, "diff", a, "-").out())
        .isEqualTo("groove a, bar 1: kick added on 4\n");
    assertThat(Ran.reading(FINE, "diff", "-", a).code()).isZero();
  }

  @Test
  void foldersAreComparedFileByFile() throws IOException {
    file("old/same.tabor", FINE);
    file("old/week 1/a.tabor", FINE);
    file("old/gone.tabor", FINE);
    file("new/same.tabor", FINE);
    file("new/week 1/a.tabor", OTHER);
    file("new/more.tabor", FINE);
    Ran ran = Ran.of("diff", folder.resolve("old").toString(), folder.resolve("new").toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out().replace(folder.toString(), ""))
        .isEqualTo(
            """
            /old/gone.tabor: is taken out
              groove a is taken out
            /new/more.tabor: is new
              groove a is new
            /new/week 1/a.tabor
              groove a, bar 1: kick added on 4
            """);
    Path empty = Files.createDirectories(folder.resolve("empty"));
    assertThat(Ran.of("diff", empty.toString(), empty.toString())).isEqualTo(new Ran(0, "", ""));
    assertThat(Ran.of("diff", empty.toString(), folder.resolve("new").toString()).out())
        .contains("more.tabor: is new");
  }

  @Test
  void markdownEscapesItsOwnSigns() throws IOException {
    String a = file("a.tabor", "title \"A\"\n" + FINE);
    String b = file("b_c.tabor", "title \"*A* <b>\"\n" + FINE);
    assertThat(Ran.of("diff", "--report", "markdown", a, b).out())
        .contains("b\\_c.tabor")
        .contains("- title \"A\" → \"\\*A\\* \\<b\\>\"");
    assertThat(Ran.of("diff", "--report", "markdown", a, a).out())
        .isEqualTo("The music is the same.\n");
  }

  @Test
  void jsonSaysWhichFilesAndWhetherTheyAreTheSame() throws IOException {
    String a = file("a.tabor", FINE);
    String c = file("c.tabor", OTHER);
    Ran ran = Ran.of("diff", "--report", "json", a, c);
    var report = JsonParser.parseString(ran.out()).getAsJsonObject();
    assertThat(report.get("same").getAsBoolean()).isFalse();
    var file = report.getAsJsonArray("files").get(0).getAsJsonObject();
    assertThat(file.get("before").getAsString()).isEqualTo(a);
    assertThat(file.get("after").getAsString()).isEqualTo(c);
  }

  @Test
  void picturesAreWrittenWhereTheyAreAskedFor() throws IOException {
    String a = file("a.tabor", FINE);
    String c = file("c.tabor", OTHER);
    String out = folder.resolve("out.svg").toString();
    assertThat(Ran.of("diff", "--as", "svg", "-o", out, a, c)).isEqualTo(new Ran(1, "", ""));
    assertThat(Files.readString(Path.of(out))).contains("<svg ").contains("kick added on 4");
    assertThat(Ran.of("diff", "--as", "html", a, c).out()).startsWith("<!DOCTYPE html>");
    assertThat(Ran.of("diff", "--as", "pdf", a, c).code()).isEqualTo(2);
    assertThat(Ran.of("diff", "--as", "midi", a, c).code()).isEqualTo(2);
    assertThat(Ran.of("diff", "-o", out, a, c).code()).isEqualTo(1);
    assertThat(Files.readString(Path.of(out))).isEqualTo("groove a, bar 1: kick added on 4\n");
  }

  @Test
  void whatGitHandsOverEndsWithZero() throws IOException {
    String a = file("a.tabor", FINE);
    String c = file("c.tabor", OTHER);
    assertThat(Ran.of("diff", "lesson.tabor", a, "1", "100644", c, "2", "100644"))
        .isEqualTo(new Ran(0, "lesson.tabor\n  groove a, bar 1: kick added on 4\n", ""));
    assertThat(Ran.of("diff", "lesson.tabor", "/dev/null", ".", ".", c, "2", "100644").out())
        .isEqualTo("lesson.tabor: is new\n  groove a is new\n");
    assertThat(Ran.of("diff", "lesson.tabor", a, "1", "100644", "/dev/null", ".", ".").out())
        .isEqualTo("lesson.tabor: is taken out\n  groove a is taken out\n");
    assertThat(
            Ran.of("diff", "old.tabor", a, "1", "100644", c, "2", "100644", "new.tabor", "renamed")
                .out())
        .isEqualTo(
            "old.tabor is now called new.tabor\nnew.tabor\n  groove a, bar 1: kick added on 4\n");
    Ran unmerged =
        Ran.on(new byte[0], Map.of("GIT_DIFF_PATH_COUNTER", "1"), false, "diff", "lesson.tabor");
    assertThat(unmerged).isEqualTo(new Ran(0, "lesson.tabor: not merged yet\n", ""));
  }

  @Test
  void mergeWritesTheResultAndSaysWhatIsLeft() throws IOException {
    String base = file("base.tabor", "tempo 60\n" + FINE);
    String ours = file("ours.tabor", "tempo 66\n" + FINE);
    String theirs = file("theirs.tabor", "tempo 60\n" + OTHER);
    assertThat(Ran.of("merge", base, ours, theirs)).isEqualTo(new Ran(0, "tempo 66\n" + OTHER, ""));
    String out = folder.resolve("out.tabor").toString();
    assertThat(Ran.of("merge", base, ours, theirs, "-o", out).code()).isZero();
    assertThat(Files.readString(Path.of(out))).isEqualTo("tempo 66\n" + OTHER);
    String other = file("other.tabor", "tempo 70\n" + FINE);
    Ran conflict = Ran.of("merge", "--path", "lesson.tabor", base, ours, other);
    assertThat(conflict.code()).isEqualTo(1);
    assertThat(conflict.out())
        .isEqualTo("<<<<<<< ours\ntempo 66\n=======\ntempo 70\n>>>>>>> theirs\n" + FINE);
    assertThat(conflict.err()).startsWith("lesson.tabor: conflict: the header");
    assertThat(Ran.of("merge", base, ours, folder.resolve("none").toString()).code()).isEqualTo(2);
    assertThat(Ran.of("merge", "--marker-size", "0", base, ours, theirs).code()).isEqualTo(2);
  }

  @Test
  void aGridForGitNeverFails() throws IOException {
    String wrong = "groove a\n  kick : x x\n";
    assertThat(Ran.reading(wrong, "grid", "--for-git", "-")).isEqualTo(new Ran(0, wrong, ""));
    assertThat(Ran.of("grid", "--for-git", folder.resolve("none").toString()).code()).isZero();
    assertThat(Ran.reading(FINE, "grid", "--for-git", "-").out()).contains("bar 1");
  }
}
