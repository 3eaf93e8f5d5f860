package tabor.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tabor.build.Form;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/** Every code has a page; its example shows that code and no other, and its fix shows none. */
class ExplanationTest {
  private static final Path PAGES = Path.of("../docs/diagnostics");
  private static final Path LESSON = Path.of("lesson.tabor");
  private static final Pattern BLOCK =
      Pattern.compile("^```tabor ?(\\S*)\\n(.*?)^```$", Pattern.DOTALL | Pattern.MULTILINE);

  private static String page(Code code) throws IOException {
    return Files.readString(PAGES.resolve(code.word() + ".md"));
  }

  @ParameterizedTest
  @EnumSource(Code.class)
  void pageHasAHeadingASummaryAndAFix(Code code) throws IOException {
    String page = page(code);
    assertThat(page).startsWith("# " + code.word() + "\n\n").contains("\n## Fix\n");
    assertThat(new Explanation(code, page).summary()).endsWith(".").doesNotContain("`");
  }

  @ParameterizedTest
  @EnumSource(
      value = Code.class,
      mode = EnumSource.Mode.EXCLUDE,
      // Bytes that are no text cannot be shown in one; the other is about a player asked for.
      names = {"NOT_UTF8", "PLAYED_DIFFERENTLY"})
  void exampleShowsItsCodeAndTheFixShowsNone(Code code) throws IOException {
    String page = page(code);
    String example = page.substring(page.indexOf("\n## Example\n"), page.indexOf("\n## Fix\n"));
    String fix = page.substring(page.indexOf("\n## Fix\n"));
    assertThat(codes(example, Options.NONE)).containsExactly(code);
    assertThat(codes(fix, Options.NONE)).isEmpty();
  }

  @Test
  void whatAPlayerAskedForChanges() throws IOException {
    String page = page(Code.PLAYED_DIFFERENTLY);
    Options openHanded = new Options(null, false, true, null, null);
    assertThat(codes(page.substring(0, page.indexOf("\n## Fix\n")), openHanded))
        .containsExactly(Code.PLAYED_DIFFERENTLY);
    assertThat(codes(page.substring(page.indexOf("\n## Fix\n")), openHanded)).isEmpty();
  }

  @Test
  void noPageIsLeftOver() throws IOException {
    Set<String> known = new LinkedHashSet<>();
    for (Code code : Code.values()) {
      known.add(code.word() + ".md");
    }
    try (Stream<Path> pages = Files.list(PAGES)) {
      assertThat(pages.map(page -> page.getFileName().toString())).isSubsetOf(known);
    }
  }

  /** The codes of the block without a name, with the named ones as the files it can use. */
  private static Set<Code> codes(String part, Options options) {
    Map<Path, String> files = new HashMap<>();
    Matcher blocks = BLOCK.matcher(part);
    while (blocks.find()) {
      Path name = blocks.group(1).isEmpty() ? LESSON : Path.of(blocks.group(1));
      files.put(name, blocks.group(2));
    }
    Loader loader =
        (user, written) -> {
          Path path = Path.of(written);
          String text = files.get(path);
          return text != null
              ? Loader.Found.text(path, text)
              : Loader.Found.trouble(
                  path, written.startsWith("..") ? Loader.Trouble.OUTSIDE : Loader.Trouble.MISSING);
        };
    Compiled compiled =
        new Compiler(loader).compile(LESSON, files.getOrDefault(LESSON, ""), options);
    List<Diagnostic> all = new ArrayList<>(compiled.diagnostics());
    if (!compiled.hasErrors()) {
      Form.MIDI.warning(compiled.lesson()).ifPresent(all::add);
    }
    Set<Code> codes = new LinkedHashSet<>();
    all.forEach(diagnostic -> codes.add(diagnostic.code()));
    return codes;
  }
}
