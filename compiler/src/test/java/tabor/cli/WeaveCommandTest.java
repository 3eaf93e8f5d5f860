package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WeaveCommandTest {
  private static final String BEAT = "groove beat\n  snare : x . x .\n";

  /** Long ago, and later with each file, so that a file's time tells whether it has changed. */
  private long time = 1_700_000_000_000L;

  @TempDir Path work;

  private Path docs;
  private Path out;

  @BeforeEach
  void folders() throws IOException {
    docs = Files.createDirectory(work.resolve("docs"));
    out = work.resolve("out");
  }

  private Path write(String name, String text) throws IOException {
    Path file = docs.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    time += 10_000;
    Files.setLastModifiedTime(file, FileTime.fromMillis(time));
    return file;
  }

  private static String block(String info, String text) {
    return "```tabor " + info + "\n" + text + "```\n";
  }

  private Ran weave(String... more) {
    List<String> words =
        Stream.concat(Stream.of("weave", docs.toString(), "-o", out.toString()), Stream.of(more))
            .toList();
    return Ran.of(words.toArray(String[]::new));
  }

  /** Every file but the index, with its content. */
  private static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        if (!file.getFileName().toString().equals(Weave.INDEX)) {
          files.put(
              folder.relativize(file).toString().replace('\\', '/'),
              new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1));
        }
      }
    }
    return files;
  }

  @Test
  void pagesLinkToPagesAndOtherFilesComeAlong() throws IOException {
    write("index.md", "[a](sub/a.md#x) [gone](gone.md) [web](https://example.org/a.md)\n");
    write("sub/a.md", "[up](../index.md)\n");
    write("sub/photo.bin", "bytes");
    write(".hidden/x.md", "no");
    Ran ran = weave();
    assertThat(ran.code()).as(ran.err()).isEqualTo(ExitCode.FINE);
    assertThat(ran.out()).isEqualTo("2 documents woven into " + out + "\n");
    Map<String, String> files = files(out);
    assertThat(files).containsOnlyKeys("index.html", "sub/a.html", "sub/photo.bin");
    assertThat(files.get("index.html"))
        .contains("<a href=\"sub/a.html#x\">")
        .contains("<a href=\"gone.md\">")
        .contains("<a href=\"https://example.org/a.md\">");
    assertThat(files.get("sub/a.html")).contains("<a href=\"../index.html\">");
  }

  @Test
  void aPageAddedLaterIsLinkedTo() throws IOException {
    write("index.md", "[a](a.md)\n");
    weave();
    assertThat(files(out).get("index.html")).contains("href=\"a.md\"");
    write("a.md", "here\n");
    weave();
    assertThat(files(out).get("index.html")).contains("href=\"a.html\"");
  }

  @Test
  void picturesGoToOneFolderAndMarkdownPointsThere() throws IOException {
    write("sub/deep/a.md", block("", BEAT));
    weave("--to", "markdown");
    Map<String, String> files = files(out);
    String picture =
        files.keySet().stream().filter(n -> n.startsWith("pictures/")).findFirst().orElseThrow();
    assertThat(files.get("sub/deep/a.md")).contains("](../../" + picture + ")");
    assertThat(files.get(picture)).contains("prefers-color-scheme: dark").contains("<desc");
  }

  @Test
  void onlyWhatIsTouchedIsWovenAgain() throws IOException {
    write("lesson.tabor", "use \"part.tabor\"\n" + BEAT);
    write("part.tabor", "pattern row : rlrl\n");
    write("a.md", block("file=lesson.tabor", ""));
    write("b.md", block("", BEAT));
    write("c.md", "plain\n");
    weave();
    Map<String, String> first = files(out);
    assertThat(weave().out()).isEqualTo("0 documents woven into " + out + ", 3 unchanged\n");

    write("b.md", block("", BEAT.replace("x .", "x x")));
    assertThat(weave().out()).startsWith("1 document woven").contains("2 unchanged");
    Files.setLastModifiedTime(docs.resolve("lesson.tabor"), FileTime.fromMillis(1));
    assertThat(weave().out()).as("the same content").startsWith("0 documents woven");
    write("part.tabor", "pattern row : rrll\n");
    assertThat(weave().out()).as("a file in use").startsWith("1 document woven");
    write("b.md", block("", BEAT));
    weave();
    assertThat(files(out)).containsEntry("b.html", first.get("b.html"));

    Files.writeString(out.resolve("c.html"), "spoilt");
    assertThat(weave().out()).as("an output").startsWith("1 document woven");
    Files.delete(out.resolve("c.html"));
    assertThat(weave().out()).startsWith("1 document woven");
    assertThat(weave("--force").out()).startsWith("3 documents woven");
  }

  @Test
  void aSecondRunAfterEditsGivesTheBytesOfAFreshOne() throws IOException {
    write("a.md", block("", BEAT) + block("as=player", BEAT));
    write("b.md", "`tabor: RlrrLrll`\n");
    write("old.md", block("", BEAT.replace("snare", "kick")));
    weave("--to", "markdown");
    Files.delete(docs.resolve("old.md"));
    write("a.md", block("as=both", BEAT + "step s\n  add kick at 2\n"));
    weave("--to", "markdown");
    Map<String, String> edited = files(out);
    Path other = work.resolve("fresh");
    Ran.of("weave", docs.toString(), "-o", other.toString(), "--to", "markdown");
    assertThat(edited).isEqualTo(files(other));
  }

  /** The usual words go past the command line parser; with one more they do not. */
  @Test
  void theUsualWordsDoWhatTheSpelledOutOnesDo() throws IOException {
    write("a.md", block("", BEAT) + "[b](b.md)\n");
    write("b.md", block("", "groove x\n  hnads : r\n"));
    Ran plain = weave();
    Map<String, String> made = files(out);
    Path other = work.resolve("spelled-out");
    Ran spelledOut =
        Ran.of(
            "weave",
            "-o",
            other.toString(),
            docs.toString(),
            "--to",
            "html",
            "--pictures",
            "pictures");
    assertThat(plain.code()).isEqualTo(1);
    assertThat(spelledOut.code()).isEqualTo(1);
    assertThat(spelledOut.err()).isEqualTo(plain.err()).isNotEmpty();
    assertThat(spelledOut.out().replace(other.toString(), out.toString())).isEqualTo(plain.out());
    assertThat(files(other)).isEqualTo(made).containsKey("a.html");
  }

  @Test
  void aFolderOfLessonsCanBeNamedAnywhereOnTheLine() throws IOException {
    Path lessons = Files.createDirectory(work.resolve("lessons"));
    Files.writeString(lessons.resolve("l.tabor"), BEAT);
    write("a.md", block("file=../lessons/l.tabor", ""));
    assertThat(weave().err()).contains("lies outside the folder");
    Ran after = weave("--lessons", work.toString());
    assertThat(after.code()).as(after.err()).isZero();
    Map<String, String> made = files(out);
    String to = work.resolve("to").toString();
    Ran before = Ran.of("weave", "--lessons", work.toString(), "-o", to, docs.toString());
    assertThat(before.out()).isEqualTo("1 document woven into " + to + "\n");
    assertThat(files(work.resolve("to"))).isEqualTo(made);

    assertThat(weave("--lessons", work.resolve("none").toString()))
        .matches(ran -> ran.code() == ExitCode.USAGE && ran.err().contains("there is none called"));
    assertThat(weave("--lessons").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Ran.of("weave", "-o", to).code()).isEqualTo(ExitCode.USAGE);
    assertThat(Ran.of("weave", docs.toString(), "-o", to, "-o", to).code())
        .as("twice")
        .isEqualTo(ExitCode.USAGE);
  }

  /** The index is added to, and written anew before it grows far beyond what it says. */
  @Test
  void theIndexFollowsManyEditsAndStaysSmall() throws IOException {
    for (int i = 0; i < 5; i++) {
      write("p" + i + ".md", "page " + i + "\n");
    }
    weave();
    Path index = out.resolve(Weave.INDEX);
    long size = Files.size(index);
    for (int i = 0; i < 12; i++) {
      write("p" + i % 5 + ".md", "edit " + i + "\n");
      assertThat(weave().out()).isEqualTo("1 document woven into " + out + ", 4 unchanged\n");
      assertThat(Files.readString(out.resolve("p" + i % 5 + ".html"))).contains("edit " + i);
      assertThat(Files.size(index)).isLessThan(size * 2);
    }
    Files.delete(docs.resolve("p3.md"));
    assertThat(weave().out()).isEqualTo("0 documents woven into " + out + ", 4 unchanged\n");
    assertThat(files(out)).doesNotContainKey("p3.html");
    assertThat(Files.readString(index)).doesNotContain("p3.html");
  }

  @Test
  void aRunThatWasBrokenOffGoesOnWhereItStopped() throws IOException {
    for (int i = 0; i < 5; i++) {
      write("p" + i + ".md", "page " + i + "\n");
    }
    weave();
    Path index = out.resolve(Weave.INDEX);
    String whole = Files.readString(index);
    // The last unit's lines were cut in the middle of a word.
    Files.writeString(index, whole.substring(0, whole.lastIndexOf("unit\t") + 7));
    assertThat(weave().out()).isEqualTo("1 document woven into " + out + ", 4 unchanged\n");
    assertThat(weave().out()).isEqualTo("0 documents woven into " + out + ", 5 unchanged\n");
    Files.writeString(index, "nonsense");
    assertThat(weave().out()).startsWith("5 documents woven");
  }

  @Test
  void aProblemKeepsItsDocumentFromBeingWrittenAndFailsTheBuild() throws IOException {
    write("good.md", block("", BEAT));
    write("bad.md", "x\n\n" + block("", "groove beat\n  snare : x . x\n"));
    Ran ran = weave();
    assertThat(ran.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(ran.err())
        .contains(docs.resolve("bad.md") + ":5:11: error: ")
        .contains("tabor: nothing is written for " + docs.resolve("bad.md"));
    assertThat(files(out)).containsOnlyKeys("good.html");

    Ran going = weave("--keep-going");
    assertThat(going.code()).isEqualTo(ExitCode.FINE);
    assertThat(going.err()).contains("bad.md:5:11: error: ");
    assertThat(files(out).get("bad.html")).contains("class=\"tabor-problem\"");
    assertThat(weave("--keep-going").err()).as("said each time").contains("bad.md:5:11: error: ");
    assertThat(weave().code()).isEqualTo(ExitCode.ERRORS);
  }

  /** Not woven again only to say so. */
  @Test
  void aWarningIsSaidAgainByRunsThatChangeNothing() throws IOException {
    write("a.md", block("", "pattern idle : rl\n" + BEAT));
    write("sub/lesson.tabor", "pattern other : rl\n" + BEAT);
    write("b.md", block("file=sub/lesson.tabor", ""));
    Ran first = weave();
    assertThat(first.code()).isEqualTo(ExitCode.FINE);
    assertThat(first.err()).contains("a.md:2:9: warning: ", "lesson.tabor:1:9: warning: ", "\n");
    Ran second = weave();
    assertThat(second.out()).isEqualTo("0 documents woven into " + out + ", 2 unchanged\n");
    assertThat(second.err()).isEqualTo(first.err());

    write("sub/lesson.tabor", BEAT);
    Ran third = weave();
    assertThat(third.out()).startsWith("1 document woven").contains("1 unchanged");
    assertThat(third.err()).contains("a.md:2:9").doesNotContain("lesson.tabor");
    assertThat(weave().err()).isEqualTo(third.err());
  }

  /** What is said names files as they were typed. */
  @Test
  void aWarningIsSaidOfTheDocumentAsItIsNamedNow() throws IOException {
    write("a.md", block("", "pattern idle : rl\n" + BEAT));
    assertThat(weave().err()).startsWith(docs.resolve("a.md") + ":2:9: ");
    Path otherwise = docs.resolve("../docs");
    Ran ran = Ran.of("weave", otherwise.toString(), "-o", out.toString());
    assertThat(ran.err()).startsWith(otherwise.resolve("a.md") + ":2:9: ");
  }

  @Test
  void nothingOutsideIsReadOrWritten() throws IOException {
    Files.writeString(work.resolve("secret.tabor"), BEAT);
    Files.writeString(work.resolve("secret.md"), "secret\n");
    Files.createSymbolicLink(docs.resolve("link.tabor"), work.resolve("secret.tabor"));
    Files.createSymbolicLink(docs.resolve("link.md"), work.resolve("secret.md"));
    write("a.md", block("file=../secret.tabor", "") + "\n" + block("file=link.tabor", ""));
    write("ok.md", "fine\n");
    Ran ran = weave();
    assertThat(ran.err())
        .contains("../secret.tabor lies outside the folder")
        .contains("link.tabor is a link that leads out of the folder");
    assertThat(files(out)).containsOnlyKeys("ok.html");

    Files.createDirectory(work.resolve("elsewhere"));
    write("sub/b.md", "b\n");
    Files.delete(docs.resolve("a.md"));
    Files.createSymbolicLink(out.resolve("sub"), work.resolve("elsewhere"));
    Ran outside = weave();
    assertThat(outside.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(outside.err()).contains("a link leads out of");
    assertThat(work.resolve("elsewhere")).isEmptyDirectory();
  }

  @Test
  void aLessonIsWorkedOutForTheOneWhomABlockIsFor() throws IOException {
    write("class.tabor", "player mia \"Mia\"\n  left-handed\n");
    write("one.tabor", "use \"class.tabor\"\ngroove beat\n  hihat : x x x x\n");
    write(
        "a.md",
        block("file=one.tabor as=grid", "") + "\n" + block("file=one.tabor as=grid for=mia", ""));
    assertThat(weave("--to", "markdown").code()).isZero();
    assertThat(files(out).get("a.md")).containsSubsequence("hands    R", "hands    L");
    // What the class file says is part of the page.
    write("class.tabor", "player mia \"Mia\"\n  tempo 60\n");
    assertThat(weave("--to", "markdown").out()).startsWith("1 document woven");
    assertThat(files(out).get("a.md"))
        .doesNotContain("hands    L")
        .containsSubsequence("quarter = 90", "quarter = 60");
  }

  @Test
  void lessonsBesideTheDocumentsAreReadWhereTheirFolderIsNamed() throws IOException {
    Files.createDirectories(work.resolve("course/lessons"));
    Files.writeString(work.resolve("course/lessons/one.tabor"), BEAT);
    Files.writeString(work.resolve("secret.tabor"), BEAT);
    docs = work.resolve("course/site");
    write("a.md", block("file=../lessons/one.tabor", ""));
    assertThat(weave().err()).contains("lies outside the folder");
    String course = work.resolve("course").toString();
    Ran ran = weave("--lessons", course);
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(files(out)).containsOnlyKeys("a.html");
    write("a.md", block("file=../../secret.tabor", ""));
    assertThat(weave("--lessons", course).err()).contains("lies outside the folder " + course);
    assertThat(weave("--lessons", course + "/none").code()).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void theOutputFolderMayLieAmongTheDocuments() throws IOException {
    write("a.md", "a\n");
    out = docs.resolve("site");
    weave();
    weave();
    assertThat(files(out)).containsOnlyKeys("a.html");
  }

  @Test
  void wordsThatMakeNoSense() throws IOException {
    write("a.md", "a\n");
    assertThat(Ran.of("weave", docs.toString()).err()).contains("-o");
    assertThat(weave("--to", "pdf").err()).contains("markdown or html, not pdf");
    assertThat(weave("--check").code()).isEqualTo(ExitCode.USAGE);
    assertThat(weave("--pictures", "../up").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Ran.of("weave", docs.toString(), "-o", docs.toString()).err())
        .contains("--in-place");
    assertThat(Ran.of("weave", work.resolve("none").toString(), "-o", "x").err())
        .contains("is not there");
    write("a.markdown", "clash\n");
    assertThat(weave().err()).contains("would both be written to");
  }

  @Test
  void inPlaceRenewsAndChecks() throws IOException {
    Path page = write("a.md", "text\n\n" + block("", BEAT) + "\nend\n");
    assertThat(Ran.of("weave", docs.toString(), "--in-place", "--check").code())
        .isEqualTo(ExitCode.ERRORS);
    assertThat(files(docs)).containsOnlyKeys("a.md");
    assertThat(Ran.of("weave", docs.toString(), "--in-place").code()).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(page)).contains("```\n\n![beat").endsWith("\n\nend\n");
    assertThat(files(docs)).hasSize(2);
    Ran check = Ran.of("weave", docs.toString(), "--in-place", "--check");
    assertThat(check.out()).isEqualTo("everything is up to date\n");
    assertThat(check.code()).isEqualTo(ExitCode.FINE);
    Files.writeString(page, Files.readString(page).replace("x . x .", "x x x ."));
    Ran stale = Ran.of("weave", docs.toString(), "--in-place", "--check");
    assertThat(stale.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(stale.out()).contains(page + " is out of date");
  }
}
