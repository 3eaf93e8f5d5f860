package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.junit.jupiter.api.Test;

/** Files that use each other: through links, without a folder, unsaved, in chains and circles. */
class FoldersTest {
  private static final String LIBRARY = "pattern six : rlrrll\n";
  private static final String USER = "use \"lib.tabor\"\ngroove g\n  hands play six in eighths\n";

  private static List<String> codes(List<Diagnostic> diagnostics) {
    return diagnostics.stream().map(d -> d.getCode().getLeft()).toList();
  }

  private static Path folder() throws Exception {
    return Files.createTempDirectory("tabor-lsp-test").toRealPath();
  }

  @Test
  void aLookAtTheTextTellsWhetherAFileMayUseAnother() throws Exception {
    Path real = folder();
    Path alone = Files.writeString(real.resolve("alone.tabor"), LIBRARY);
    Path user = Files.writeString(real.resolve("user.tabor"), USER);
    OpenDocuments documents = new OpenDocuments(new RealPaths());
    Workspace workspace = new Workspace(documents, new RealPaths());
    workspace.add(real);
    LaneLibrary library = new LaneLibrary(workspace, new CompiledFiles(workspace));
    assertThat(library.mayUseOthers(user)).isTrue();
    assertThat(library.mayUseOthers(alone)).isFalse();
    assertThat(library.mayUseOthers(real.resolve("gone.tabor"))).isFalse();
    assertThat(library.files()).containsExactlyInAnyOrder(alone, user);
    // A new file is seen by the next request, and this one has one answer.
    Path late = Files.writeString(real.resolve("late.tabor"), USER);
    assertThat(library.files()).hasSize(2);
    assertThat(library.serving(() -> {}).files()).contains(late);
  }

  @Test
  void aFolderThatIsALinkIsTheFolderItLeadsTo() throws Exception {
    Path real = folder();
    Path link = folder().resolve("link");
    Files.createSymbolicLink(link, real);
    Files.writeString(real.resolve("lib.tabor"), LIBRARY);
    Files.writeString(real.resolve("other.tabor"), USER);
    try (Editor editor = Editor.in(link, Editor.MODERN)) {
      assertThat(editor.open("a.tabor", USER)).isEmpty();
      // The same file by its other path is the same text, and what is said of it goes by its name
      // here.
      editor.openQuietly("lib.tabor", LIBRARY);
      editor.replaceAll("lib.tabor", "pattern seven : rlrrllr\n");
      assertThat(codes(editor.publishedFor("a.tabor", null).getDiagnostics()))
          .contains("unknown-name");
      editor.replaceAll("lib.tabor", LIBRARY);
      assertThat(editor.publishedFor("a.tabor", null).getDiagnostics()).isEmpty();
      WorkspaceEdit edit =
          Editor.get(
              editor
                  .server
                  .getTextDocumentService()
                  .rename(
                      new RenameParams(editor.id("lib.tabor"), new Position(0, 9), "sextuplet")));
      assertThat(edit.getChanges().keySet())
          .containsExactlyInAnyOrder(
              editor.uri("lib.tabor"), editor.uri("a.tabor"), editor.uri("other.tabor"));
    }
  }

  @Test
  void aFileOpenedThroughALinkUsesWhatIsOpenByItsRealPath() throws Exception {
    Path real = folder();
    Path link = folder().resolve("link");
    Files.createSymbolicLink(link, real);
    try (Editor editor = Editor.in(real, Editor.MODERN)) {
      editor.open("lib.tabor", LIBRARY);
      assertThat(editor.open("../" + link.getParent().getFileName() + "/link/a.tabor", USER))
          .isEmpty();
    }
  }

  @Test
  void withoutAFolderFilesBesideEachOtherAreSeenBothWays() throws Exception {
    Path beside = folder();
    Files.writeString(beside.resolve("closed.tabor"), USER);
    try (Editor editor = Editor.in(folder(), Editor.MODERN)) {
      String lib = "../" + beside.getFileName() + "/lib.tabor";
      String user = "../" + beside.getFileName() + "/a.tabor";
      editor.open(lib, LIBRARY);
      assertThat(editor.open(user, USER)).isEmpty();
      WorkspaceEdit edit =
          Editor.get(
              editor
                  .server
                  .getTextDocumentService()
                  .rename(new RenameParams(editor.id(lib), new Position(0, 9), "sextuplet")));
      assertThat(edit.getChanges()).hasSize(3);
      editor.replaceAll(lib, "pattern seven : rlrrllr\n");
      assertThat(codes(editor.publishedFor(user, null).getDiagnostics())).contains("unknown-name");
    }
  }

  @Test
  void aChangeThreeFilesAwayReachesAllSavedOrNot() throws Exception {
    try (Editor editor = Editor.start()) {
      Files.writeString(editor.folder.resolve("c.tabor"), "use \"d.tabor\"\nstep c \"C\" from d\n");
      String d = "groove d\n  hands : r r r r\n  kick : x . x .\n";
      editor.open("d.tabor", d);
      editor.open("b.tabor", "use \"c.tabor\"\nstep b \"B\" from c\n");
      assertThat(editor.open("a.tabor", "use \"b.tabor\"\nstep a \"A\" from b\n  drop kick at 3\n"))
          .isEmpty();
      editor.replaceAll("d.tabor", d.replace("x . x .", "x . . ."));
      assertThat(codes(editor.publishedFor("a.tabor", null).getDiagnostics()))
          .containsExactly("nothing-there");
      editor.replaceAll("d.tabor", d);
      assertThat(editor.publishedFor("a.tabor", null).getDiagnostics()).isEmpty();
    }
  }

  @Test
  void aCircleAmongOpenFilesIsToldInEach() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", "use \"b.tabor\"\ngroove a\n  hands : r r r r\n");
      editor.open("b.tabor", "use \"c.tabor\"\ngroove b\n  hands : r r r r\n");
      List<Diagnostic> last =
          editor.open("c.tabor", "use \"a.tabor\"\ngroove c\n  hands : r r r r\n");
      assertThat(codes(last)).contains("use-cycle");
      for (String name : List.of("a.tabor", "b.tabor")) {
        editor.replaceAll(name, editor.text(name) + "# again\n");
        assertThat(codes(editor.diagnostics(name))).as(name).contains("use-cycle");
      }
    }
  }

  @Test
  void settingsTellWhichNotesStandInTheLines() throws Exception {
    JsonObject options = new JsonObject();
    JsonObject kinds = new JsonObject();
    kinds.addProperty("bars", true);
    options.add("inlayHints", kinds);
    for (String set : List.of("{}", options.toString())) {
      try (Editor editor = Editor.in(folder(), Editor.MODERN, set)) {
        String text = "groove a\n  hands : rl rl rl rl\n  next\n  hands : rl rl rl rl\n";
        editor.open("a.tabor", text);
        List<?> hints =
            Editor.get(
                editor
                    .server
                    .getTextDocumentService()
                    .inlayHint(
                        new org.eclipse.lsp4j.InlayHintParams(
                            editor.id("a.tabor"),
                            new org.eclipse.lsp4j.Range(new Position(0, 0), new Position(4, 0)))));
        assertThat(hints).hasSize(set.equals("{}") ? 0 : 1);
      }
    }
  }
}
