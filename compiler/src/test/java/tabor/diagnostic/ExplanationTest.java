package tabor.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tabor.build.Form;
import tabor.compile.Compiled;
import tabor.resolve.Options;
import tabor.testing.DiagnosticPage;

/** Every code has a page; its example shows that code and no other, and its fix shows none. */
class ExplanationTest {
  @ParameterizedTest
  @EnumSource(Code.class)
  void pageHasAHeadingASummaryAndAFix(Code code) {
    String page = DiagnosticPage.of(code).text();
    assertThat(page).startsWith("# " + code.word() + "\n\n").contains("\n## Fix\n");
    assertThat(new Explanation(code, page).summary()).endsWith(".").doesNotContain("`");
  }

  @ParameterizedTest
  @EnumSource(
      value = Code.class,
      mode = EnumSource.Mode.EXCLUDE,
      // Bytes that are no text cannot be shown in one; the other is about a player asked for.
      names = {"NOT_UTF8", "PLAYED_DIFFERENTLY"})
  void exampleShowsItsCodeAndTheFixShowsNone(Code code) {
    DiagnosticPage page = DiagnosticPage.of(code);
    assertThat(codes(page.example(Options.NONE))).containsExactly(code);
    assertThat(codes(page.fixed(Options.NONE))).isEmpty();
  }

  @Test
  void whatAPlayerAskedForChanges() {
    DiagnosticPage page = DiagnosticPage.of(Code.PLAYED_DIFFERENTLY);
    Options openHanded = new Options(null, false, true, null, null);
    assertThat(codes(page.example(openHanded))).containsExactly(Code.PLAYED_DIFFERENTLY);
    assertThat(codes(page.fixed(openHanded))).isEmpty();
  }

  @Test
  void noPageIsLeftOver() throws IOException {
    Set<String> known = new LinkedHashSet<>();
    for (Code code : Code.values()) {
      known.add(code.word() + ".md");
    }
    try (Stream<Path> pages = Files.list(DiagnosticPage.FOLDER)) {
      assertThat(pages.map(page -> page.getFileName().toString())).isSubsetOf(known);
    }
  }

  private static Set<Code> codes(Compiled compiled) {
    List<Diagnostic> all = new ArrayList<>(compiled.diagnostics());
    if (!compiled.hasErrors()) {
      Form.MIDI.warning(compiled.lesson()).ifPresent(all::add);
    }
    Set<Code> codes = new LinkedHashSet<>();
    all.forEach(diagnostic -> codes.add(diagnostic.code()));
    return codes;
  }
}
