package tabor.lsp.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What the server's rooms and the compiler's may know of each other. */
class ServerArchitectureTest {
  /** No room knows a later one. */
  private static final List<String> ROOMS =
      List.of("tabor.lsp.transport", "tabor.lsp.startup", "tabor.lsp");

  /** What each room may use beside the JDK and itself; {@code tabor.lsp} may use every room. */
  private static final Map<String, List<String>> LIBRARIES =
      Map.of(
          "tabor.lsp.transport",
              List.of("com.google.gson.", "org.eclipse.lsp4j.jsonrpc.", "org.jspecify."),
          "tabor.lsp.startup", List.of("com.google.gson.", "org.jspecify."));

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .withImportOption(location -> !location.contains("/lt/") && !location.contains("/ct/"))
          .importPackages("tabor");

  @Test
  void noRoomOfTheServerKnowsALaterOne() {
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : CLASSES) {
      int room = ROOMS.indexOf(one.getPackageName());
      for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
        int other = ROOMS.indexOf(dependency.getTargetClass().getPackageName());
        if (other > room) {
          wrong.add(one.getName() + " -> " + dependency.getTargetClass().getName());
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void theEdgesKnowNothingOfLessons() {
    List<String> wrong = new ArrayList<>();
    for (JavaClass one : CLASSES) {
      List<String> allowed = LIBRARIES.get(one.getPackageName());
      if (allowed != null) {
        for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
          String target = dependency.getTargetClass().getBaseComponentType().getName();
          boolean known =
              target.startsWith("java.")
                  || ROOMS.contains(dependency.getTargetClass().getPackageName())
                  || dependency.getTargetClass().getBaseComponentType().isPrimitive()
                  || allowed.stream().anyMatch(target::startsWith);
          if (!known) {
            wrong.add(one.getName() + " -> " + target);
          }
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  /** The compiler's classes are among those that are looked at: there this rule can fail. */
  @Test
  void theProtocolIsKnownInTheServerAlone() {
    assertThat(CLASSES.contain("tabor.compile.Compiler")).isTrue();
    assertThat(users(CLASSES, "org.eclipse.lsp4j.", "tabor.lsp")).isEmpty();
    assertThat(users(CLASSES, "tabor.lsp", "tabor.lsp")).isEmpty();
  }

  @Test
  void aClassThatKnowsTheProtocolOutsideWouldBeFound() {
    JavaClasses fixture = new ClassFileImporter().importClasses(KnowsTheProtocol.class);
    assertThat(users(fixture, "org.eclipse.lsp4j.", "tabor.elsewhere")).hasSize(1);
  }

  /** What the rule is there to find. */
  private static final class KnowsTheProtocol {
    @SuppressWarnings("UnusedMethod")
    private int line(org.eclipse.lsp4j.Position position) {
      return position.getLine();
    }
  }

  /** The classes outside some packages that use a library. */
  private static Set<String> users(Collection<JavaClass> classes, String library, String packages) {
    Set<String> found = new TreeSet<>();
    for (JavaClass one : classes) {
      if (!one.getPackageName().startsWith(packages)) {
        for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
          if (dependency.getTargetClass().getName().startsWith(library)) {
            found.add(one.getName());
          }
        }
      }
    }
    return found;
  }

  @Test
  void noNameIsThatOfTwoRooms() {
    Map<String, Set<String>> rooms = new TreeMap<>();
    for (JavaClass one : CLASSES) {
      if (one.isTopLevelClass() && !one.getSimpleName().equals("package-info")) {
        rooms
            .computeIfAbsent(one.getSimpleName(), name -> new TreeSet<>())
            .add(one.getPackageName());
      }
    }
    rooms.values().removeIf(all -> all.size() == 1);
    assertThat(rooms).isEmpty();
  }

  @Test
  void everyRoomIsOnTheMap() throws IOException {
    String map = Files.readString(Path.of("../DEVELOPERS.md"));
    for (String room : ROOMS) {
      assertThat(map).contains("`" + room + "`");
      Path info = Path.of("src/main/java", room.replace('.', '/'), "package-info.java");
      assertThat(Files.readString(info)).contains("@org.jspecify.annotations.NullMarked");
    }
  }
}
