package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Files;
import java.util.List;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.ApplyWorkspaceEditParams;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.junit.jupiter.api.Test;

/** Clients that can do little are given what they can show; all are given the same music. */
class ClientsTest {
  private static Editor plain() throws Exception {
    return Editor.in(Files.createTempDirectory("tabor-lsp-test"), "{}");
  }

  @Test
  void aHoverIsPlainWhereMarkdownWouldShowItsSigns() throws Exception {
    try (Editor editor = plain()) {
      editor.open("a.tabor", "groove a\n  hands : rl rl rl rl\n  kick : x x x x\n");
      Hover hover =
          Editor.get(
              editor
                  .server
                  .getTextDocumentService()
                  .hover(new HoverParams(editor.id("a.tabor"), new Position(1, 14))));
      assertThat(hover.getContents().getRight().getKind()).isEqualTo("plaintext");
      assertThat(hover.getContents().getRight().getValue())
          .doesNotContain("**", "```")
          .contains("      2 2&\nkick  r ·");
    }
  }

  @Test
  void symbolsAreFlatAndOtherPlacesStandInTheMessage() throws Exception {
    try (Editor editor = plain()) {
      List<org.eclipse.lsp4j.Diagnostic> found =
          editor.open("a.tabor", "groove a\n  right : d d d d\n  snare : r . . .\n");
      assertThat(found.get(0).getRelatedInformation()).isNull();
      assertThat(found.get(0).getMessage().getLeft()).contains("\nline 2: ");
      List<SymbolInformation> symbols =
          Editor.get(
                  editor
                      .server
                      .getTextDocumentService()
                      .documentSymbol(new DocumentSymbolParams(editor.id("a.tabor"))))
              .stream()
              .map(Either::getLeft)
              .toList();
      assertThat(symbols)
          .extracting(SymbolInformation::getName)
          .containsExactly("a", "right", "snare");
      assertThat(symbols.get(1).getContainerName()).isEqualTo("a");
      assertThat(symbols.get(1).getLocation().getUri()).isEqualTo(editor.uri("a.tabor"));
    }
  }

  private static List<Either<Command, CodeAction>> fixes(Editor editor) throws Exception {
    return fixes(editor, new Range(new Position(1, 10), new Position(1, 10)));
  }

  private static List<Either<Command, CodeAction>> fixes(Editor editor, Range range)
      throws Exception {
    CodeActionContext context = new CodeActionContext(List.of());
    context.setOnly(List.of("quickfix"));
    return Editor.get(
        editor
            .server
            .getTextDocumentService()
            .codeAction(new CodeActionParams(editor.id("a.tabor"), range, context)));
  }

  @Test
  void aClientWithoutActionsIsGivenCommandsThatChangeTheText() throws Exception {
    try (Editor editor = plain()) {
      editor.open("a.tabor", "groove a\n  hands : rl rl rl\n");
      Command first = fixes(editor).get(0).getLeft();
      Editor.get(
          editor
              .server
              .getWorkspaceService()
              .executeCommand(new ExecuteCommandParams(first.getCommand(), first.getArguments())));
      ApplyWorkspaceEditParams asked = editor.awaitEdit();
      assertThat(
              Editor.apply(
                  editor.text("a.tabor"), asked.getEdit().getChanges().get(editor.uri("a.tabor"))))
          .isEqualTo("groove a\n  hands : rl rl rl .\n");
    }
  }

  @Test
  void aFixIsTriedWhenItIsChosenAndNotOnAnotherText() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", "groove a\n  hands : rl rl rl\n");
      CodeAction listed = fixes(editor).get(0).getRight();
      assertThat(listed.getEdit()).isNull();
      CodeAction whole =
          Editor.get(editor.server.getTextDocumentService().resolveCodeAction(listed));
      assertThat(whole.getEdit()).isNotNull();
      editor.replaceAll("a.tabor", "groove a\n  hands : rl rl rl rl\n");
      assertThatThrownBy(
              () -> Editor.get(editor.server.getTextDocumentService().resolveCodeAction(listed)))
          .isInstanceOf(ExecutionException.class)
          .hasMessageContaining("the text was changed");
    }
  }

  @Test
  void whatIsTriedOnlyWhenChosenIsRefusedWithItsReason() throws Exception {
    // Too long to try all that is listed; the last fixed bar has nothing where the step takes away.
    String last =
        "groove a\n  kick  : x . x\n  hihat : x x x x\nstep b \"B\" from a\n  drop kick at 2\n# ";
    String text =
        "groove c\n  kick : x . x\ngroove d\n  kick : x . x\ngroove e\n  kick : x . x\n"
            + last
            + "-".repeat(130_000)
            + "\n";
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", text);
      List<CodeAction> all =
          fixes(editor, new Range(new Position(0, 0), new Position(10, 0))).stream()
              .map(Either::getRight)
              .filter(one -> one.getTitle().equals("Fill the bar with rests"))
              .toList();
      assertThat(all)
          .extracting(CodeAction::getIsPreferred)
          .containsExactly(true, true, true, null);
      CodeAction listed = all.get(3);
      assertThatThrownBy(
              () -> Editor.get(editor.server.getTextDocumentService().resolveCodeAction(listed)))
          .hasMessageContaining("Nothing was changed: “Fill the bar with rests” would bring up")
          .hasMessageContaining("(b, bar 1, count 2: ");
      // In a short text it is known beforehand, and not offered.
      editor.replaceAll("a.tabor", last);
      assertThat(fixes(editor)).isEmpty();
    }
  }

  @Test
  void aFixNamesTheProblemThatItRemovesAndNoOtherAtItsPlace() throws Exception {
    try (Editor editor = Editor.start()) {
      List<Diagnostic> two =
          editor.open(
              "a.tabor",
              "groove a\n  hihat : x x x x\nstep b \"B\" from a\n  ride : x x x x\n"
                  + "  drop ride at 1 3\n  add snare at 2 4\n");
      assertThat(two).extracting(Diagnostic::getRange).containsOnly(two.get(0).getRange());
      assertThat(two).hasSize(2);
      CodeActionContext context = new CodeActionContext(two);
      context.setOnly(List.of("quickfix"));
      List<Either<Command, CodeAction>> offered =
          Editor.get(
              editor
                  .server
                  .getTextDocumentService()
                  .codeAction(
                      new CodeActionParams(editor.id("a.tabor"), two.get(0).getRange(), context)));
      assertThat(offered)
          .extracting(one -> one.getRight().getTitle(), one -> one.getRight().getDiagnostics())
          .contains(
              tuple("Leave out 2", two.subList(0, 1)), tuple("Leave out 4", two.subList(1, 2)));
    }
  }

  @Test
  void workspaceSymbolsAreFoundWithoutRegardToCase() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", "groove pad \"On the Snare\"\n  hands : r r r r\n");
      for (String query : List.of("PAD", "on the snare", "SNARE")) {
        assertThat(
                Editor.get(
                        editor
                            .server
                            .getWorkspaceService()
                            .symbol(new WorkspaceSymbolParams(query)))
                    .getRight())
            .as(query)
            .hasSize(1);
      }
    }
  }

  @Test
  void aNameThatTheLanguageNeedsIsRefusedInWords() throws Exception {
    try (Editor editor = Editor.start()) {
      editor.open("a.tabor", "groove one\n  hands : r r r r\n");
      assertThatThrownBy(
              () ->
                  Editor.get(
                      editor
                          .server
                          .getTextDocumentService()
                          .rename(
                              new RenameParams(
                                  editor.id("a.tabor"), new Position(0, 8), "Two Words"))))
          .hasMessageContaining("is not one");
    }
  }

  @Test
  void aClientThatIsDeadAlreadyTakesTheServerWithIt() throws Exception {
    Process gone = new ProcessBuilder("true").start();
    gone.waitFor();
    // The client's end stays open: only its process is gone.
    java.io.PipedOutputStream toServer = new java.io.PipedOutputStream();
    java.io.PipedInputStream in = new java.io.PipedInputStream(toServer, 1 << 16);
    String initialize =
        RawClient.INITIALIZE.replace(
            "\"capabilities\"", "\"processId\":" + gone.pid() + ",\"capabilities\"");
    toServer.write(RawClient.framed(initialize).getBytes(java.nio.charset.StandardCharsets.UTF_8));
    toServer.flush();
    assertThat(Connection.serve(in, java.io.OutputStream.nullOutputStream(), Log.NONE, "test"))
        .isEqualTo(1);
  }
}
