package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.resolve.Options;

/** Whole grooves and fills against the hands that a drummer gives them. */
class HandsTest {
  @TestFactory
  Stream<DynamicTest> theFirstHalf() throws IOException {
    return cases("hands-1.tabor");
  }

  @TestFactory
  Stream<DynamicTest> theOtherHalf() throws IOException {
    return cases("hands-2.tabor");
  }

  @TestFactory
  Stream<DynamicTest> theThirdFile() throws IOException {
    return cases("hands-3.tabor");
  }

  @TestFactory
  Stream<DynamicTest> theFourthFile() throws IOException {
    return cases("hands-4.tabor");
  }

  private static Stream<DynamicTest> cases(String file) throws IOException {
    String text;
    try (InputStream in = HandsTest.class.getResourceAsStream(file)) {
      assertThat(in).isNotNull();
      text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    List<DynamicTest> tests = new ArrayList<>();
    for (String section : text.split("\n(?=groove )", -1)) {
      String name = section.lines().findFirst().orElse("");
      if (name.startsWith("groove ")) {
        tests.add(DynamicTest.dynamicTest(name.substring(7), () -> check(section)));
      }
    }
    assertThat(tests).hasSizeGreaterThan(20);
    return tests.stream();
  }

  private static void check(String section) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("hands.tabor"), section, Options.NONE);
    assertThat(compiled.diagnostics()).noneMatch(one -> one.severity() == Severity.ERROR);
    Groove groove = compiled.lesson().grooves().get(0);
    List<String> both = new ArrayList<>();
    String hands = hands(groove, both);
    assertThat(hands).isEqualTo(said(section, "# hands ").replace(" ", ""));
    String said = said(section, "# both ");
    List<String> pairs = said.isEmpty() ? List.of() : List.of(said.split("; "));
    for (int i = 0; i < both.size(); i++) {
      assertThat(both.get(i)).isEqualTo(pairs.size() == 1 ? pairs.get(0) : pairs.get(i));
    }
  }

  private static String said(String section, String label) {
    return section
        .lines()
        .map(String::strip)
        .filter(line -> line.startsWith(label))
        .map(line -> line.substring(label.length()))
        .findFirst()
        .orElse("");
  }

  /** One letter for each place where a hand strikes. */
  static String hands(Groove groove, List<String> both) {
    StringBuilder letters = new StringBuilder();
    List<Stroke> strokes = groove.strokes().stream().filter(s -> s.limb().isHand()).toList();
    for (int i = 0; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      Stroke next = i + 1 < strokes.size() ? strokes.get(i + 1) : null;
      if (next != null && next.bar() == stroke.bar() && next.at().equals(stroke.at())) {
        letters.append('B');
        both.add(stroke.surface().name() + " " + next.surface().name());
        i++;
      } else {
        letters.append(stroke.limb().letter());
      }
    }
    return letters.toString();
  }
}
