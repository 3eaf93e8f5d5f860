package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.report.TextReport;
import tabor.resolve.Options;
import tabor.testing.DiagnosticPage;

/**
 * Each page of docs/diagnostics says what Tabor says of its example, word for word, and what the
 * editor offers. Every fix that it names has been tried. Run once with {@code
 * -Dtabor.goldens=write} to write this part of the pages anew, and read what it says.
 */
class DiagnosticPagesTest {
  /** Trials of the texts of one page. */
  private record Trials(DiagnosticPage page) implements Library {
    @Override
    public Optional<Compiled> file(Path path) {
      return Optional.empty();
    }

    @Override
    public Compiled trial(Path path, String text) {
      return trial(path, text, Options.NONE);
    }

    @Override
    public Compiled trial(Path path, String text, Options options) {
      return page.trial(text, options);
    }

    @Override
    public List<Path> files() {
      return List.of();
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Code.class,
      mode = EnumSource.Mode.EXCLUDE,
      // Bytes that are no text; said by the player's options; said when MIDI is made.
      names = {"NOT_UTF8", "PLAYED_DIFFERENTLY", "ROUNDED_TICKS"})
  void saysWhatTaborSays(Code code) {
    DiagnosticPage page = DiagnosticPage.of(code);
    Compiled compiled = page.example(Options.NONE);
    Set<String> titles = new LinkedHashSet<>();
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      for (QuickFix fix : QuickFixes.of(compiled, diagnostic)) {
        if (QuickFixes.obstacle(compiled, diagnostic, fix, new Trials(page)).isEmpty()) {
          titles.add(fix.title());
        }
      }
    }
    String offered =
        titles.isEmpty()
            ? ""
            : titles.stream()
                .map(title -> "“" + title + "”")
                .collect(Collectors.joining(", ", "Editors offer: ", "."));
    String said = DiagnosticPage.said(new TextReport(false).of(compiled, true), offered);
    if ("write".equals(System.getProperty("tabor.goldens"))) {
      page.write(said);
    }
    assertThat(DiagnosticPage.of(code).said()).isEqualTo(said);
  }
}
