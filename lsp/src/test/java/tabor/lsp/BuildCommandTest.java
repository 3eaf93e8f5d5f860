package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.WorkDoneProgressBegin;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.junit.jupiter.api.Test;

/** What the commands write, where they never write, and what they leave behind. */
class BuildCommandTest {
  private static final String LESSON =
      "groove one\n  hands : rl rl rl rl\n  kick : x . x .\ngroove two\n  hands : r r r r\n";

  private static Object command(Editor editor, String name, Object... arguments) throws Exception {
    return Editor.get(
        editor
            .server
            .getWorkspaceService()
            .executeCommand(new ExecuteCommandParams(name, List.of(arguments))));
  }

  private static Map<String, FileTime> times(Path folder) throws Exception {
    Map<String, FileTime> found = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        found.put(file.getFileName().toString(), Files.getLastModifiedTime(file));
      }
    }
    return found;
  }

  @Test
  void whatIsTheSameKeepsItsTimeStamp() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON);
      command(editor, "tabor.build", editor.uri("a.tabor"));
      Path out = editor.folder.resolve("out");
      FileTime old = FileTime.fromMillis(1_000_000_000_000L);
      for (String name : times(out).keySet()) {
        Files.setLastModifiedTime(out.resolve(name), old);
      }
      editor.replaceAll("a.tabor", LESSON.replace("x . x .", "x . . ."));
      command(editor, "tabor.build", editor.uri("a.tabor"));
      Map<String, FileTime> after = times(out);
      assertThat(after.get("a.one.mid")).isNotEqualTo(old);
      assertThat(after.get("a.two.mid")).isEqualTo(old);
      assertThat(after.keySet()).noneMatch(name -> name.endsWith(".part"));
    }
  }

  @Test
  void whatIsBuiltCanBeReadByWhoeverCanReadAnyNewFile() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON);
      command(editor, "tabor.build", editor.uri("a.tabor"));
      Path built = editor.folder.resolve("out/a.one.mid");
      Path plain = Files.createFile(editor.folder.resolve("plain"));
      assertThat(Files.getPosixFilePermissions(built))
          .isEqualTo(Files.getPosixFilePermissions(plain));
      Set<PosixFilePermission> wide = PosixFilePermissions.fromString("rw-rw-rw-");
      Files.setPosixFilePermissions(built, wide);
      editor.replaceAll("a.tabor", LESSON.replace("x . x .", "x . . ."));
      command(editor, "tabor.build", editor.uri("a.tabor"));
      assertThat(Files.getPosixFilePermissions(built)).isEqualTo(wide);
    }
  }

  @Test
  void whatANeighbourLeftUnderTheSameNameIsNotInTheWay() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON);
      Path out = Files.createDirectory(editor.folder.resolve("out"));
      Path left = out.resolve(".tabor-" + ProcessHandle.current().pid() + "-0.part");
      Files.writeString(left, "left");
      command(editor, "tabor.build", editor.uri("a.tabor"));
      assertThat(out.resolve("a.one.mid")).isNotEmptyFile();
      assertThat(left).hasContent("left");
    }
  }

  @Test
  void wrongArgumentsAreNotTakenForNone() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON);
      String uri = editor.uri("a.tabor");
      assertThatThrownBy(() -> command(editor, "tabor.build", uri, 5))
          .hasMessageContaining("is a folder");
      assertThatThrownBy(() -> command(editor, "tabor.build", uri, "out", "midi"))
          .hasMessageContaining("list of forms");
      assertThat(editor.folder.resolve("out")).doesNotExist();
    }
  }

  @Test
  void noLinkLeadsOutOfTheWorkspaceAndNothingButFilesIsReplaced() throws Exception {
    Path outside = Files.createTempDirectory("tabor-lsp-outside");
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON);
      Files.createSymbolicLink(editor.folder.resolve("away"), outside);
      for (String folder : List.of("away", "away/deeper", "../elsewhere", outside.toString())) {
        assertThatThrownBy(() -> command(editor, "tabor.build", editor.uri("a.tabor"), folder))
            .as(folder)
            .hasMessageContaining("workspace");
      }
      assertThat(outside).isEmptyDirectory();
      Path out = Files.createDirectory(editor.folder.resolve("out"));
      Path target = Files.writeString(outside.resolve("precious.mid"), "precious");
      Files.createSymbolicLink(out.resolve("a.one.mid"), target);
      assertThatThrownBy(() -> command(editor, "tabor.build", editor.uri("a.tabor")))
          .hasMessageContaining("no plain file");
      assertThat(target).hasContent("precious");
      assertThat(Files.isSymbolicLink(out.resolve("a.one.mid"))).isTrue();
    }
  }

  @Test
  void anErrorInOneSectionLeavesTheOthersToBeShown() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON + "groove bad\n  hands : rl\nstep worse \"W\" from bad\n");
      assertThat((String) command(editor, "tabor.showGrid", editor.uri("a.tabor"), "one"))
          .contains("kick");
      assertThat(
              (String) command(editor, "tabor.showGrid", editor.uri("a.tabor"), new Position(4, 3)))
          .contains("snare");
      assertThat((String) command(editor, "tabor.showGrid", editor.uri("a.tabor")))
          .contains("kick");
      for (String section : List.of("bad", "worse")) {
        assertThatThrownBy(() -> command(editor, "tabor.showGrid", editor.uri("a.tabor"), section))
            .as(section)
            .hasMessageContaining("fix them first");
      }
    }
  }

  @Test
  void nothingIsMadeToBeShownOnceTheServerGoesDown() {
    Session session = new Session(Log.NONE, "test", () -> {});
    ShownFiles shown = new ShownFiles(session);
    shown.close();
    assertThatThrownBy(() -> shown.show("late.txt", new byte[] {1}, false))
        .hasMessageContaining("shutting down");
    session.close(Duration.ofMinutes(1));
  }

  @Test
  void whatWasMadeToBeShownGoesWithTheServer() throws Exception {
    Path picture;
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", LESSON);
      picture =
          Uris.path((String) command(editor, "tabor.showSvg", editor.uri("a.tabor"), "one"))
              .orElseThrow();
      assertThat(picture).exists();
    }
    assertThat(Files.exists(picture, LinkOption.NOFOLLOW_LINKS)).isFalse();
    assertThat(picture.getParent()).doesNotExist();
  }

  @Test
  void progressBeginsWhenTheClientHasAgreedAndEndsOnce() throws Exception {
    String can = "{\"window\":{\"workDoneProgress\":true,\"showDocument\":{\"support\":true}}}";
    for (String options : List.of("{}", "{\"showDocument\":false}")) {
      try (Editor editor = Editor.in(Files.createTempDirectory("tabor-lsp-test"), can, options)) {
        editor.open("a.tabor", LESSON);
        command(editor, "tabor.build", editor.uri("a.tabor"));
        command(editor, "tabor.showGrid", editor.uri("a.tabor"));
        // A client that opens answers by itself is not asked to open them too.
        assertThat(editor.showedDocuments).hasSize(options.equals("{}") ? 1 : 0);
        if (!editor.progress.isEmpty()) {
          assertThat(editor.progress.get(0).getValue().getLeft())
              .isInstanceOf(WorkDoneProgressBegin.class);
          assertThat(editor.progress)
              .filteredOn(p -> p.getValue().getLeft() instanceof WorkDoneProgressEnd)
              .hasSize(1);
        }
      }
    }
  }
}
