package tabor.weave.asciidoc;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.asciidoctor.Asciidoctor;
import org.asciidoctor.Options;
import org.asciidoctor.SafeMode;
import org.asciidoctor.log.LogRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One document with everything in it: the machine under Asciidoctor takes long to start. */
class TaborBlockProcessorTest {
  private static final String PAGE =
      """
      = A page

      [tabor,counts,caption="The end"]
      ----
      groove beat
        snare : x . x .
      ----

      [tabor,file=lesson.tabor,section=more,as=both]
      ----
      ----

      [tabor]
      ----
      groove short
        snare : x
      ----

      [tabor,file=../outside.tabor]
      ----
      ----

      [source,java]
      ----
      int x;
      ----
      """;

  @Test
  void blocksBecomeDrawingsAndProblemsAreLogged(@TempDir Path folder) throws IOException {
    Files.writeString(
        folder.resolve("lesson.tabor"),
        "groove beat\n  snare : x . x .\n\nstep more \"And the kick\"\n  add kick at 1\n");
    Path page = Files.writeString(folder.resolve("page.adoc"), PAGE);
    List<LogRecord> log = new ArrayList<>();
    try (Asciidoctor asciidoctor = Asciidoctor.Factory.create()) {
      asciidoctor.registerLogHandler(log::add);
      Options options =
          Options.builder()
              .safe(SafeMode.SAFE)
              .baseDir(folder.toFile())
              .toFile(folder.resolve("page.html").toFile())
              .build();
      asciidoctor.convertFile(page.toFile(), options);
      // Every back end but HTML gets pictures; this one needs nothing else.
      Options other =
          Options.builder()
              .safe(SafeMode.SAFE)
              .backend("docbook5")
              .baseDir(folder.toFile())
              .toFile(folder.resolve("page.xml").toFile())
              .build();
      int before = log.size();
      asciidoctor.convertFile(page.toFile(), other);
      assertThat(log).hasSize(2 * before);
      log.subList(before, log.size()).clear();
    }
    assertThat(Files.readString(folder.resolve("page.xml")))
        .containsPattern("imagedata fileref=\"data:image/png;base64,[A-Za-z0-9+/=]{1000,}\"")
        .contains("<phrase>beat: 1 bar of 4/4")
        .contains("The end");
    String html = Files.readString(folder.resolve("page.html"));
    assertThat(html)
        .contains("<figcaption>The end</figcaption>")
        .contains("step more &quot;And the kick&quot;")
        .contains("<title id=\"Notation2-1-title\">And the kick</title>")
        .contains("bar 1 has 1 beat, but 4/4 has 4 beats")
        .contains("int x;")
        .doesNotContain("narrow");
    assertThat(html.split("<svg ", -1)).hasSize(3);
    assertThat(log.stream().map(LogRecord::getMessage).toList())
        .hasSize(2)
        .anyMatch(message -> message.contains("notation 3:2: bar 1 has 1 beat"))
        .anyMatch(message -> message.contains("../outside.tabor lies outside"));
  }
}
