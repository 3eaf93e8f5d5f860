package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionContext;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.CompletionTriggerKind;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensDelta;
import org.eclipse.lsp4j.SemanticTokensDeltaParams;
import org.eclipse.lsp4j.SemanticTokensEdit;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.TextEdit;
import org.junit.jupiter.api.Test;

/** What changes the text or leaves the editor: code actions, formatting, tokens, commands. */
class ActionsTest extends WithEditor {
  private static final FormattingOptions OPTIONS = new FormattingOptions(2, true);

  private List<CodeAction> actions(Position at, String... only) throws Exception {
    CodeActionContext context = new CodeActionContext(List.of());
    if (only.length > 0) {
      context.setOnly(List.of(only));
    }
    return Editor.get(
            documents()
                .codeAction(new CodeActionParams(editor.id("a.tabor"), new Range(at, at), context)))
        .stream()
        .map(either -> either.getRight())
        .toList();
  }

  private String applied(CodeAction action) throws Exception {
    CodeAction whole =
        action.getEdit() == null ? Editor.get(documents().resolveCodeAction(action)) : action;
    return Editor.apply(
        editor.text("a.tabor"), whole.getEdit().getChanges().get(editor.uri("a.tabor")));
  }

  @Test
  void fixesAndRefactoringsAreCodeActions() throws Exception {
    editor.openQuietly("a.tabor", "groove a\n  hands : rl rl rl\n  kick : x .\n");
    List<CodeAction> fixes = actions(new Position(1, 12), "quickfix");
    assertThat(fixes).extracting(CodeAction::getTitle).contains("Fill the bar with rests");
    assertThat(fixes.get(0).getIsPreferred()).isTrue();
    assertThat(applied(fixes.get(0))).isEqualTo("groove a\n  hands : rl rl rl .\n  kick : x .\n");
    // What adds or takes away beats is never done unseen.
    assertThat(actions(new Position(0, 0), "source.fixAll")).isEmpty();
    editor.replaceAll("a.tabor", "groove a\n  snar : x . x .\n  kik : x . x .\n");
    assertThat(actions(new Position(1, 3), "quickfix"))
        .extracting(CodeAction::getTitle)
        .contains("Write “snare”", "Fix every unknown-name in this file that loses nothing");
    assertThat(applied(actions(new Position(0, 0), "source.fixAll").get(0)))
        .isEqualTo("groove a\n  snare : x . x .\n  kick : x . x .\n");
    editor.replaceAll("a.tabor", "groove a\n  hands play paradiddle in sixteenths\n");
    assertThat(actions(new Position(1, 9), "refactor"))
        .extracting(CodeAction::getTitle)
        .contains("Write this part out");
  }

  /**
   * What ends a word differs from client to client, and all say that they were asked: where a line
   * of the examples ends, none is given anything that Enter could take.
   */
  @Test
  void nothingIsOfferedAtTheEndOfALine() throws Exception {
    for (String name : List.of("ghosts-and-doubles", "hands-to-groove", "six-eight")) {
      String text = Files.readString(Path.of("..", "examples", name + ".tabor"));
      editor.openQuietly("a.tabor", text);
      String[] lines = text.split("\n", -1);
      for (int i = 0; i < lines.length; i++) {
        if (!lines[i].isBlank()) {
          CompletionParams params =
              new CompletionParams(
                  editor.id("a.tabor"),
                  new Position(i, lines[i].length()),
                  new CompletionContext(CompletionTriggerKind.Invoked));
          assertThat(Editor.get(documents().completion(params)).getRight().getItems())
              .as(lines[i])
              .isEmpty();
        }
      }
      editor.close("a.tabor");
    }
  }

  /** More text than is compiled for each entry of a list. */
  private static String longText(String first) {
    StringBuilder text = new StringBuilder(first);
    for (int i = 0; text.length() <= 130_000; i++) {
      text.append("groove filler").append(i).append("\n  hands : rlrl rlrl rlrl rlrl\n");
    }
    return text.toString();
  }

  private static final String SHORT = "groove a\n  kick : x . .\n  hihat : xx xx xx xx\n";

  @Test
  void inALongTextAFixThatBringsUpAnotherProblemIsNotOffered() throws Exception {
    editor.openQuietly("a.tabor", longText(SHORT));
    CodeAction fix = actions(new Position(1, 10), "quickfix").get(0);
    assertThat(fix.getTitle()).isEqualTo("Fill the bar with rests");
    assertThat(fix.getIsPreferred()).isTrue();
    assertThat(applied(fix)).startsWith("groove a\n  kick : x . . .\n");
    // Where the bar is whole, the step finds no stroke to leave out.
    editor.replaceAll("a.tabor", longText(SHORT + "step b\n  drop kick at 4\n"));
    assertThat(actions(new Position(1, 10), "quickfix")).isEmpty();
  }

  @Test
  void inALongTextWhatWasNotTriedIsNotPreferred() throws Exception {
    StringBuilder many = new StringBuilder();
    for (int i = 0; i < 5; i++) {
      many.append(SHORT.replace("groove a", "groove a" + i));
    }
    editor.openQuietly("a.tabor", longText(many.toString()));
    CodeActionContext context = new CodeActionContext(List.of());
    context.setOnly(List.of("quickfix"));
    Range all = new Range(new Position(0, 0), new Position(15, 0));
    List<Boolean> preferred =
        Editor.get(documents().codeAction(new CodeActionParams(editor.id("a.tabor"), all, context)))
            .stream()
            .map(either -> either.getRight())
            .filter(action -> action.getTitle().equals("Fill the bar with rests"))
            .map(CodeAction::getIsPreferred)
            .toList();
    assertThat(preferred).containsExactly(true, true, true, null, null);
  }

  /** In a lesson of ordinary size nothing is listed that is refused once it is chosen. */
  @Test
  void whatIsListedIsDone() throws Exception {
    int chosen = 0;
    for (String name : List.of("ballad", "shuffle", "polyrhythm", "play-along")) {
      String good = Files.readString(Path.of("..", "examples", "styles", name + ".tabor"));
      Random dice = new Random(7);
      editor.openQuietly("a.tabor", good);
      for (int i = 0; i < 12; i++) {
        int at = good.indexOf('\n', dice.nextInt(good.length() - 80)) + 5;
        String bad = good.substring(0, at) + good.substring(at + 1);
        editor.replaceAll("a.tabor", bad);
        int line = (int) bad.substring(0, at).chars().filter(c -> c == '\n').count();
        for (CodeAction action : actions(new Position(line, 3))) {
          assertThat(action.getEdit()).isNull();
          assertThat(applied(action)).as(action.getTitle()).isNotEqualTo(bad);
          chosen++;
        }
      }
      editor.close("a.tabor");
    }
    assertThat(chosen).isGreaterThan(30);
  }

  @Test
  void formattingLinesUpBeatUnderBeat() throws Exception {
    String text =
        "groove   a\n hands:rl rlrl r l\nkick : x  . x .\n\n\n\ngroove b\n  kick : x . x .\n";
    editor.openQuietly("a.tabor", text);
    List<? extends TextEdit> whole =
        Editor.get(
            documents().formatting(new DocumentFormattingParams(editor.id("a.tabor"), OPTIONS)));
    String formatted = Editor.apply(text, whole);
    assertThat(formatted)
        .isEqualTo(
            "groove a\n"
                + "  hands : rl rlrl r l\n"
                + "  kick  : x  .    x .\n\n"
                + "groove b\n"
                + "  kick : x . x .\n");
    editor.replaceAll("a.tabor", formatted);
    assertThat(
            Editor.get(
                documents()
                    .formatting(new DocumentFormattingParams(editor.id("a.tabor"), OPTIONS))))
        .isEmpty();
    editor.replaceAll("a.tabor", text);
    List<? extends TextEdit> first =
        Editor.get(
            documents()
                .rangeFormatting(
                    new DocumentRangeFormattingParams(
                        editor.id("a.tabor"),
                        OPTIONS,
                        new Range(new Position(0, 0), new Position(1, 0)))));
    assertThat(Editor.apply(text, first)).isEqualTo(text.replace("groove   a", "groove a"));
  }

  @Test
  void theLineThatWasLeftIsFormatted() throws Exception {
    String text = "groove a\n  hands :rl rl   r l\n  ";
    editor.openQuietly("a.tabor", text);
    List<? extends TextEdit> edits =
        Editor.get(
            documents()
                .onTypeFormatting(
                    new DocumentOnTypeFormattingParams(
                        editor.id("a.tabor"), OPTIONS, new Position(2, 2), "\n")));
    assertThat(Editor.apply(text, edits)).isEqualTo("groove a\n  hands : rl rl r l\n  ");
  }

  private static List<Integer> patched(List<Integer> before, List<SemanticTokensEdit> edits) {
    List<Integer> now = new ArrayList<>(before);
    for (int i = edits.size() - 1; i >= 0; i--) {
      SemanticTokensEdit edit = edits.get(i);
      now.subList(edit.getStart(), edit.getStart() + edit.getDeleteCount()).clear();
      now.addAll(edit.getStart(), edit.getData());
    }
    return now;
  }

  @Test
  void tokensNameTheirWordsAndADeltaGivesTheSame() throws Exception {
    String text =
        "groove a # first\n"
            + "  hands : rL (r). -\n"
            + "step b \"B\"\n"
            + "  split left between tom1 and floor at 2&\n";
    editor.openQuietly("a.tabor", text);
    SemanticTokens full =
        Editor.get(documents().semanticTokensFull(new SemanticTokensParams(editor.id("a.tabor"))));
    List<String> words = new ArrayList<>();
    int line = 0;
    int column = 0;
    for (int i = 0; i < full.getData().size(); i += 5) {
      List<Integer> five = full.getData().subList(i, i + 5);
      line += five.get(0);
      column = five.get(0) == 0 ? column + five.get(1) : five.get(1);
      Range range = new Range(new Position(line, column), new Position(line, column + five.get(2)));
      words.add(five.get(3) + "/" + five.get(4) + " " + Editor.cut(text, range));
    }
    assertThat(words)
        .contains(
            "0/0 groove",
            "1/1 a",
            "12/0 # first",
            "5/0 hands",
            "10/0 r",
            "10/2 L",
            "9/0 \"B\"",
            "0/0 split",
            "5/0 left",
            "4/0 tom1",
            "8/0 2&");
    editor.replace("a.tabor", text.indexOf("tom1"), text.indexOf("tom1") + 4, "snare.cross");
    SemanticTokensDelta delta =
        Editor.get(
                documents()
                    .semanticTokensFullDelta(
                        new SemanticTokensDeltaParams(editor.id("a.tabor"), full.getResultId())))
            .getRight();
    List<Integer> fresh =
        Editor.get(documents().semanticTokensFull(new SemanticTokensParams(editor.id("a.tabor"))))
            .getData();
    assertThat(patched(full.getData(), delta.getEdits())).isEqualTo(fresh);
    assertThat(delta.getEdits().get(0).getData().size()).isLessThan(15);
    for (int first = 0; first < 4; first++) {
      for (int last = first; last < 4; last++) {
        SemanticTokens range =
            Editor.get(
                documents()
                    .semanticTokensRange(
                        new SemanticTokensRangeParams(
                            editor.id("a.tabor"),
                            new Range(new Position(first, 0), new Position(last, 99)))));
        assertThat(range.getData()).isEqualTo(ofLines(fresh, first, last));
      }
    }
  }

  /** The tokens of some lines, by the words of the protocol. */
  private static List<Integer> ofLines(List<Integer> all, int first, int last) {
    List<Integer> found = new ArrayList<>();
    int line = 0;
    for (int i = 0; i < all.size(); i += 5) {
      line += all.get(i);
      if (line >= first && line <= last) {
        List<Integer> five = new ArrayList<>(all.subList(i, i + 5));
        five.set(0, found.isEmpty() ? line : five.get(0));
        found.addAll(five);
      }
    }
    return found;
  }

  private Object command(String name, Object... arguments) throws Exception {
    return Editor.get(
        editor
            .server
            .getWorkspaceService()
            .executeCommand(new ExecuteCommandParams(name, List.of(arguments))));
  }

  @Test
  void commandsShowAndBuild() throws Exception {
    editor.openQuietly("a.tabor", "groove one\n  hands : rl rl rl rl\n  kick : x . x .\n");
    Object grid = command("tabor.showGrid", editor.uri("a.tabor"), "one");
    assertThat((String) grid).contains("kick");
    Object svg = command("tabor.showSvg", editor.uri("a.tabor"), new Position(1, 3));
    assertThat(Files.readString(Uris.path((String) svg).orElseThrow())).contains("<svg");
    command("tabor.build", editor.uri("a.tabor"), "made");
    assertThat(editor.folder.resolve("made")).isDirectoryContaining("glob:**.mid");
    assertThatThrownBy(() -> command("tabor.build", editor.uri("a.tabor"), "/somewhere/else"))
        .hasMessageContaining("workspace");
    assertThatThrownBy(() -> command("tabor.makeTea")).hasMessageContaining("makeTea");
    editor.replaceAll("a.tabor", "groove one\n  hands : rl\n");
    assertThatThrownBy(() -> command("tabor.build", editor.uri("a.tabor")))
        .hasMessageContaining("errors");
    command("tabor.stop");
  }
}
