package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.FileChangeType;
import org.eclipse.lsp4j.FileEvent;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.junit.jupiter.api.Test;

/** Encodings, long and many files, files that must not be read, requests that are given up. */
class RobustTest {
  private static final String BAD = "groove a\n  hands : rl rl rl\n";

  @Test
  void aFileThatIsClosedHasNoDiagnostics() throws Exception {
    try (Editor editor = Editor.start()) {
      assertThat(editor.open("a.tabor", "groove a\n  snar : x\n")).isNotEmpty();
      editor.close("a.tabor");
      assertThat(editor.publishedFor("a.tabor", null).getDiagnostics()).isEmpty();
    }
  }

  @Test
  void positionsCountAsNegotiated() throws Exception {
    String text = "groove a \"😀é\" # 😀\n  text \"😀\" # ok\n  hands : rl rl rl\n";
    for (String word : List.of("utf-8", "utf-16", "utf-32")) {
      Path folder = Files.createTempDirectory("tabor-lsp-test");
      String capabilities = "{\"general\":{\"positionEncodings\":[\"" + word + "\"]}}";
      try (Editor editor = Editor.in(folder, capabilities)) {
        assertThat(editor.initialized.getCapabilities().getPositionEncoding()).isEqualTo(word);
        editor.openQuietly("a.tabor", text);
        // Takes the title away: up to the closing quote, as that encoding counts it.
        int end = word.equals("utf-8") ? 17 : word.equals("utf-16") ? 14 : 13;
        editor.send(
            "a.tabor",
            List.of(
                new TextDocumentContentChangeEvent(
                    new Range(new Position(0, 8), new Position(0, end)), "")));
        assertThat(editor.diagnostics("a.tabor")).as(word).hasSize(1);
        Hover hover =
            Editor.get(
                editor
                    .server
                    .getTextDocumentService()
                    .hover(new HoverParams(editor.id("a.tabor"), new Position(0, 7))));
        assertThat(hover.getContents().getRight().getValue()).startsWith("a\n1 bar");
      }
    }
  }

  @Test
  void aClientThatPullsIsNotPushed() throws Exception {
    Path folder = Files.createTempDirectory("tabor-lsp-test");
    try (Editor editor = Editor.in(folder, "{\"textDocument\":{\"diagnostic\":{}}}")) {
      editor.openQuietly("a.tabor", BAD);
      DocumentDiagnosticParams params = new DocumentDiagnosticParams(editor.id("a.tabor"));
      DocumentDiagnosticReport first =
          Editor.get(editor.server.getTextDocumentService().diagnostic(params));
      assertThat(first.getLeft().getItems()).hasSize(1);
      params.setPreviousResultId(first.getLeft().getResultId());
      assertThat(Editor.get(editor.server.getTextDocumentService().diagnostic(params)).isRight())
          .isTrue();
      editor.replaceAll("a.tabor", BAD.replace("rl rl rl", "rl rl rl rl"));
      assertThat(
              Editor.get(editor.server.getTextDocumentService().diagnostic(params))
                  .getLeft()
                  .getItems())
          .isEmpty();
    }
  }

  @Test
  void fourMebibytesAndFiveHundredFilesAreServed() throws Exception {
    try (Editor editor = Editor.start()) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; text.length() < (4 << 20) - 2000; i++) {
        text.append("groove g").append(i).append("\n  text \"").append("prose ".repeat(200));
        text.append("\"\n  hands : rl rl rl rl\n");
      }
      assertThat(editor.open("long.tabor", text.toString())).isEmpty();
      editor.replace("long.tabor", text.length() - 3, text.length() - 1, "");
      assertThat(editor.diagnostics("long.tabor")).hasSize(1);
      editor.close("long.tabor");
      for (int i = 0; i < 500; i++) {
        editor.openQuietly("f" + i + ".tabor", BAD);
      }
      assertThat(editor.diagnostics("f499.tabor")).hasSize(1);
      editor.replaceAll("f0.tabor", "groove a\n  hands : r r r r\n");
      assertThat(editor.diagnostics("f0.tabor")).isEmpty();
    }
  }

  @Test
  void editsInAnyOrderAndOutsideTheTextAreTakenIn() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", "groove a\n");
      editor.send(
          "a.tabor",
          List.of(
              new TextDocumentContentChangeEvent(
                  new Range(new Position(77, 9), new Position(3, 500)), "  hands : rl rl\n"),
              new TextDocumentContentChangeEvent(
                  new Range(new Position(1, 15), new Position(1, 3)), "ands : r r r"),
              new TextDocumentContentChangeEvent(
                  new Range(new Position(-1, -4), new Position(0, -2)), "# top\n")));
      List<Diagnostic> found = editor.diagnostics("a.tabor");
      assertThat(found).hasSize(1);
      assertThat(found.get(0).getRange().getStart().getLine()).isEqualTo(2);
    }
  }

  @Test
  void onlyTheFoldersTreeIsRead() throws Exception {
    Path outside = Files.createTempDirectory("tabor-lsp-outside");
    Files.writeString(outside.resolve("lib.tabor"), "pattern six : rlrrll\n");
    try (Editor editor = Editor.start()) {
      Files.createSymbolicLink(editor.folder.resolve("link.tabor"), outside.resolve("lib.tabor"));
      String play = "groove g\n  hands play six in eighths\n";
      for (String use :
          List.of(
              "../" + outside.getFileName() + "/lib.tabor", outside + "/lib.tabor", "link.tabor")) {
        String name = "u" + use.length() + ".tabor";
        assertThat(editor.open(name, "use \"" + use + "\"\n" + play))
            .extracting(d -> d.getCode().getLeft())
            .as(use)
            .contains("use-outside", "unknown-name");
      }
    }
  }

  @Test
  void aChangeOnDiskReachesThoseWhoUseTheFile() throws Exception {
    try (Editor editor = Editor.start()) {
      Path lib = editor.folder.resolve("lib.tabor");
      Files.writeString(lib, "pattern six : rlrrll\n");
      String text = "use \"lib.tabor\"\ngroove g\n  hands play six in eighths\n";
      assertThat(editor.open("a.tabor", text)).isEmpty();
      Files.writeString(lib, "pattern five : rlrrl\n");
      editor
          .server
          .getWorkspaceService()
          .didChangeWatchedFiles(
              new DidChangeWatchedFilesParams(
                  List.of(new FileEvent(lib.toUri().toString(), FileChangeType.Changed))));
      assertThat(editor.publishedFor("a.tabor", null).getDiagnostics()).isNotEmpty();
    }
  }

  @Test
  void aRequestThatIsGivenUpOrFailsLeavesTheServerAlive() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", BAD);
      for (int i = 0; i < 20; i++) {
        CompletableFuture<Hover> hover =
            editor
                .server
                .getTextDocumentService()
                .hover(new HoverParams(editor.id("a.tabor"), new Position(1, 12)));
        hover.cancel(true);
      }
      CompletableFuture<Hover> missing =
          editor
              .server
              .getTextDocumentService()
              .hover(new HoverParams(editor.id("never-opened.tabor"), new Position(0, 0)));
      assertThat(missing.handle((answer, error) -> error != null).get()).isTrue();
      assertThat(
              Editor.get(
                  editor
                      .server
                      .getTextDocumentService()
                      .hover(new HoverParams(editor.id("a.tabor"), new Position(1, 3)))))
          .isNotNull();
    } catch (CancellationException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aHandlerThatThrowsFailsThatRequestOnly() {
    Scheduler scheduler = new Scheduler(Log.NONE);
    CompletableFuture<Object> first =
        scheduler.submit(
            Scheduler.Lane.READING,
            wanted -> {
              throw new StackOverflowError();
            });
    CompletableFuture<String> second =
        scheduler.submit(Scheduler.Lane.READING, wanted -> "still here");
    assertThat(second.join()).isEqualTo("still here");
    assertThat(first).isCompletedExceptionally();
    assertThat(scheduler.close(Duration.ofMinutes(1))).isTrue();
  }
}
