package tabor.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The rooms of the compiler and what each may know: the table of DEVELOPERS.md, held by a test. */
class ArchitectureTest {
  /** No room knows a later one: the order of the table in DEVELOPERS.md. */
  private static final List<String> ROOMS = rooms();

  /** What the tree as written may know of the model: its closed lists. */
  private static final Set<String> LISTS =
      Set.of(
          "tabor.groove.Level",
          "tabor.groove.Loudness",
          "tabor.groove.CountingWords$Named",
          "tabor.groove.PracticeLog$Unit",
          "tabor.groove.Ornament",
          "tabor.groove.Chart$Click");

  private static List<String> rooms() {
    try {
      List<String> rooms = new ArrayList<>();
      for (String line : Files.readAllLines(Path.of("../DEVELOPERS.md"))) {
        Matcher row = Pattern.compile("\\| `tabor\\.([a-z]+)[`.].*").matcher(line);
        if (row.matches() && !rooms.contains(row.group(1))) {
          rooms.add(row.group(1));
        }
      }
      return rooms;
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  /** What an output may use of another: drawings and the font. */
  private static final Map<String, Set<String>> SHARED =
      Map.of(
          "svg", Set.of("engrave", "font"),
          "png", Set.of("engrave", "font"),
          "pdf", Set.of("engrave", "font"),
          "html", Set.of("engrave"),
          "font", Set.of("engrave"));

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("tabor");

  @Test
  void noRoomKnowsALaterOne() {
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : ours()) {
      int room = ROOMS.indexOf(room(one));
      assertThat(room).as("a room of the list for " + one.getName()).isNotNegative();
      for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
        JavaClass other = dependency.getTargetClass();
        if (isOurs(other) && ROOMS.indexOf(room(other)) > room) {
          wrong.add(one.getName() + " -> " + other.getName());
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void theTreeAsWrittenKnowsOnlyListsOfTheModel() {
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : ours()) {
      if (room(one).equals("syntax")) {
        for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
          JavaClass other = dependency.getTargetClass();
          if (isOurs(other) && room(other).equals("groove") && !LISTS.contains(other.getName())) {
            wrong.add(one.getName() + " -> " + other.getName());
          }
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void noOutputKnowsAnother() {
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : ours()) {
      String output = output(one);
      for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
        String other = output(dependency.getTargetClass());
        if (!output.isEmpty()
            && !other.isEmpty()
            && !output.equals(other)
            && !SHARED.getOrDefault(output, Set.of()).contains(other)) {
          wrong.add(one.getName() + " -> " + dependency.getTargetClass().getName());
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void librariesStayInTheirRooms() {
    onlyIn("org.antlr.", "tabor.parse");
    onlyIn("tabor.grammar.Tabor", "tabor.parse");
    onlyIn("tabor.grammar.StatementTexts", "tabor.syntax");
    onlyIn("org.apache.pdfbox.", "tabor.emit.pdf", "tabor.emit.font");
    onlyIn("org.apache.fontbox.", "tabor.emit.pdf", "tabor.emit.font");
    onlyIn("com.pngencoder.", "tabor.emit.png");
    onlyIn("picocli.", "tabor.cli");
    onlyIn("org.commonmark.", "tabor.weave");
    onlyIn("org.asciidoctor.", "tabor.weave.asciidoc");
    onlyIn("javax.sound.", "tabor.emit.midi", "tabor.cli");
    onlyIn("org.eclipse.lsp4j.", "tabor.lsp");
  }

  @Test
  void filesAndStreamsOfTheProcessStayAtTheEdge() {
    onlyIn("java.nio.file.Files", "tabor.cli", "tabor.watch");
    onlyIn("java.io.File", "tabor.cli");
    onlyIn("java.net.", "tabor.cli", "tabor.watch");
    onlyIn("com.sun.net.httpserver.", "tabor.watch");
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : ours()) {
      if (!room(one).equals("cli")) {
        one.getFieldAccessesFromSelf().stream()
            .filter(access -> access.getTargetOwner().getName().equals("java.lang.System"))
            .forEach(access -> wrong.add(access.getDescription()));
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void timeIsNeverFloatingPoint() {
    Set<String> exact = Set.of("rhythm", "pattern", "groove", "resolve", "perform", "notation");
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : ours()) {
      if (!exact.contains(room(one))) {
        continue;
      }
      for (JavaField field : one.getFields()) {
        if (isFloating(field.getRawType())) {
          wrong.add(field.getFullName());
        }
      }
      for (JavaMethod method : one.getMethods()) {
        if (isFloating(method.getRawReturnType())
            || method.getRawParameterTypes().stream().anyMatch(ArchitectureTest::isFloating)) {
          wrong.add(method.getFullName());
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void everyPackageIsOnTheMapAndSaysWhatNullMeans() throws IOException {
    String map = Files.readString(Path.of("../DEVELOPERS.md"));
    Set<String> packages = new TreeSet<>();
    ours().forEach(one -> packages.add(one.getPackageName()));
    for (String name : packages) {
      String last = name.substring(name.lastIndexOf('.'));
      assertThat(map)
          .as(name + " in DEVELOPERS.md")
          .matches(containing("`" + name + "`", "`" + last + "`"));
      Path info = Path.of("src/main/java", name.replace('.', '/'), "package-info.java");
      assertThat(Files.readString(info))
          .as(info.toString())
          .contains("@org.jspecify.annotations.NullMarked");
    }
  }

  private static Predicate<String> containing(String one, String other) {
    return text -> text.contains(one) || text.contains(other);
  }

  private static void onlyIn(String library, String... rooms) {
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : ours()) {
      boolean allowed = List.of(rooms).contains(one.getPackageName());
      for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
        String target = dependency.getTargetClass().getName();
        boolean named = library.endsWith(".") ? target.startsWith(library) : target.equals(library);
        if (named && !allowed) {
          wrong.add(one.getName() + " -> " + target);
        }
      }
    }
    assertThat(wrong).as(library + " outside " + List.of(rooms)).isEmpty();
  }

  private static List<JavaClass> ours() {
    return CLASSES.stream().filter(ArchitectureTest::isOurs).toList();
  }

  private static boolean isOurs(JavaClass one) {
    return one.getPackageName().startsWith("tabor.")
        && !one.getPackageName().startsWith("tabor.grammar");
  }

  private static String room(JavaClass one) {
    return one.getPackageName().split("\\.", -1)[1];
  }

  /** The kind of output that a class belongs to; empty for the other rooms. */
  private static String output(JavaClass one) {
    String name = one.getPackageName();
    return name.startsWith("tabor.emit.") ? name.substring("tabor.emit.".length()) : "";
  }

  private static boolean isFloating(JavaClass type) {
    return type.getName().equals("double") || type.getName().equals("float");
  }
}
