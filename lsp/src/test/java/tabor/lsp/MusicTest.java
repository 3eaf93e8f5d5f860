package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.junit.jupiter.api.Test;

/** What needs the music: strokes, counts, names across files. */
class MusicTest extends WithEditor {
  private Marked open(String marked) {
    Marked at = Marked.of(marked);
    editor.openQuietly("a.tabor", at.text());
    return at;
  }

  private String hover(String marked) throws Exception {
    Marked at = open(marked);
    Hover hover = Editor.get(documents().hover(new HoverParams(editor.id("a.tabor"), at.cursor())));
    return hover == null ? "" : hover.getContents().getRight().getValue();
  }

  private List<String> complete(String marked) throws Exception {
    Marked at = open(marked);
    return Editor.get(
            documents().completion(new CompletionParams(editor.id("a.tabor"), at.cursor())))
        .getRight()
        .getItems()
        .stream()
        .map(CompletionItem::getLabel)
        .toList();
  }

  private List<String> cut(String text, List<Location> locations) {
    return locations.stream().map(l -> Editor.cut(text, l.getRange())).toList();
  }

  @Test
  void onlyCountsOfTheBarAreOffered() throws Exception {
    String groove = "groove a\n  hands : rlr rl r rlrl\n  kick : x . x .\n";
    assertThat(complete(groove + "step b \"B\"\n  drop kick at §"))
        .containsExactly("1", "3", "every");
    assertThat(complete(groove + "step b \"B\"\n  accent left at §"))
        .containsExactly("1&", "2&", "4e", "4a", "every");
    assertThat(complete(groove + "step b \"B\"\n  add crash at §"))
        .contains("1", "1&", "1a", "2", "2&", "3", "4", "4e", "4&", "4a", "every")
        .doesNotContain("5");
    assertThat(complete(groove + "  drop hands at 1 §")).contains("1&", "in", "where");
  }

  @Test
  void countsThatReadTwoWaysAreOfferedWithTheirDivision() throws Exception {
    assertThat(complete("groove a\n  hands : rlr r r r\n  kick : x..x . . .\n  add crash at §"))
        .contains("1a/3", "1a/4", "1&/3", "1e", "1&/4")
        .doesNotContain("1a", "1&");
  }

  @Test
  void completionKnowsTheBarsEvenBelowAMistakeInTheSameSection() throws Exception {
    assertThat(complete("groove a\n  kick : x . x .\n  drop kick at §\n  nonsense here\n"))
        .containsExactly("1", "3", "every");
  }

  @Test
  void hoverOnAStrokeShowsItsBeat() throws Exception {
    assertThat(hover("groove a\n  hands : rl r§l rl rl\n  kick : x x x x\n"))
        .contains("left hand, snare", "bar 1, count 2&")
        .contains("      2 2&\nkick  r ·\nsnare r l");
  }

  @Test
  void hoverOnAPartShowsTheBar() throws Exception {
    assertThat(hover("groove a\n  ki§ck : x . x .\n"))
        .contains("kick", "space 1 (F4)", "MIDI key 36")
        .contains("     1 2 3 4\nkick r · r ·");
  }

  @Test
  void hoverOnNamesSaysWhatTheyAre() throws Exception {
    assertThat(hover("groove a\n  hands play parad§iddle in sixteenths\n"))
        .contains("single-paradiddle", "RlrrLrll");
    assertThat(hover("groove a\n  hands : r r r r\nstep b§ \"B\"\n  add kick at 1\n"))
        .contains("**b**: B", "kick");
    assertThat(hover("groove a\n  hands : r r r r\n  sp§lit right between tom1 and floor\n"))
        .contains("split LIMB");
    assertThat(hover("groove a\n  hands : r r r§\n")).contains("**bar-length**");
    assertThat(hover("groove a\n§\n")).isEmpty();
  }

  @Test
  void theHighlightIsTheVerticalSlice() throws Exception {
    Marked at =
        open("groove a\n  hands : rl rl r§l rl\n  kick  : x. .. xx ..\n  hihat.foot : . x . x\n");
    List<String> places =
        Editor.get(
                documents()
                    .documentHighlight(
                        new DocumentHighlightParams(editor.id("a.tabor"), at.cursor())))
            .stream()
            .map(
                h ->
                    h.getRange().getStart().getLine()
                        + ":"
                        + h.getRange().getStart().getCharacter())
            .toList();
    assertThat(places).containsExactlyInAnyOrder("1:17", "2:17");
  }

  @Test
  void namesAreFoundWhereTheyAreGivenAndUsed() throws Exception {
    String marked =
        "groove on§e\n"
            + "  hands : r r r r\n"
            + "step two \"T\" from one\n"
            + "chart c\n"
            + "  play one two 2 times\n";
    Marked at = open(marked);
    ReferenceParams params =
        new ReferenceParams(editor.id("a.tabor"), at.cursor(), new ReferenceContext(true));
    assertThat(cut(at.text(), List.copyOf(Editor.get(documents().references(params)))))
        .containsExactly("one", "one", "one");
    params.setContext(new ReferenceContext(false));
    assertThat(Editor.get(documents().references(params))).hasSize(2);
    Position use = Editor.position(at.text(), at.text().lastIndexOf("one"));
    List<? extends Location> given =
        Editor.get(documents().definition(new DefinitionParams(editor.id("a.tabor"), use)))
            .getLeft();
    assertThat(given).hasSize(1);
    assertThat(given.get(0).getRange().getStart()).isEqualTo(new Position(0, 7));
  }

  @Test
  void aRenameGoesThroughAllFiles() throws Exception {
    editor.openQuietly(
        "lib.tabor", "pattern six : rlrrll\ngroove base\n  hands play six in eighths\n");
    editor.openQuietly("b.tabor", "use \"lib.tabor\"\ngroove g\n  hands play six in eighths\n");
    Marked at = open("use \"lib.tabor\"\nstep s \"S\" from base\n  hands play si§x in eighths\n");
    WorkspaceEdit edit =
        Editor.get(
            documents().rename(new RenameParams(editor.id("a.tabor"), at.cursor(), "sextuple")));
    assertThat(edit.getChanges().keySet())
        .containsExactlyInAnyOrder(
            editor.uri("a.tabor"), editor.uri("b.tabor"), editor.uri("lib.tabor"));
    assertThat(
            Editor.apply(editor.text("lib.tabor"), edit.getChanges().get(editor.uri("lib.tabor"))))
        .isEqualTo("pattern sextuple : rlrrll\ngroove base\n  hands play sextuple in eighths\n");
  }

  @Test
  void aNewNameMustBeOneAndBeFree() throws Exception {
    Marked at = open("groove on§e\n  hands : r r r r\ngroove two\n  hands : r r r r\n");
    for (String bad : List.of("two", "Two", "a--b", "", "1a")) {
      assertThatThrownBy(
              () ->
                  Editor.get(
                      documents().rename(new RenameParams(editor.id("a.tabor"), at.cursor(), bad))))
          .as(bad)
          .isNotNull();
    }
  }

  @Test
  void aLetterOfAKitIsRenamedInTheSectionsPlayedOnIt() throws Exception {
    Marked at =
        open(
            "kit k like five-piece\n  surface gong letter g§ key 52\n"
                + "groove a\n  on k\n  right : g 'g . g^\n"
                + "kit other like five-piece\n  surface box letter g key 60\n"
                + "groove b\n  on other\n  right : g . . .\n");
    WorkspaceEdit edit =
        Editor.get(documents().rename(new RenameParams(editor.id("a.tabor"), at.cursor(), "z")));
    assertThat(Editor.apply(at.text(), edit.getChanges().get(editor.uri("a.tabor"))))
        .isEqualTo(
            "kit k like five-piece\n  surface gong letter z key 52\n"
                + "groove a\n  on k\n  right : z 'z . z^\n"
                + "kit other like five-piece\n  surface box letter g key 60\n"
                + "groove b\n  on other\n  right : g . . .\n");
  }

  private List<String> titles(List<? extends CodeLens> lenses) throws Exception {
    List<String> found = new ArrayList<>();
    for (CodeLens lens : lenses) {
      found.add(Editor.get(documents().resolveCodeLens(lens)).getCommand().getTitle());
    }
    return found;
  }

  @Test
  void lensesAndHintsSayWhatTheCompilerFound() throws Exception {
    Marked at =
        open(
            "groove a\n"
                + "  hands : xx xx xx xx | rl rl rl rl\n"
                + "step b \"B\"\n"
                + "  accent hands at every &\n");
    List<String> lenses =
        titles(Editor.get(documents().codeLens(new CodeLensParams(editor.id("a.tabor")))));
    editor
        .server
        .getWorkspaceService()
        .didChangeConfiguration(
            new DidChangeConfigurationParams(Map.of("tabor", Map.of("inlayHints", true))));
    assertThat(lenses)
        .containsExactly(
            "play",
            "grid",
            "notation",
            "build this file",
            "play",
            "grid",
            "notation",
            "8 strokes changed");
    List<String> hints =
        Editor.get(
                documents()
                    .inlayHint(
                        new InlayHintParams(
                            editor.id("a.tabor"),
                            new Range(new Position(0, 0), new Position(9, 0)))))
            .stream()
            .map(
                hint ->
                    hint.getPosition().getLine()
                        + ":"
                        + hint.getPosition().getCharacter()
                        + " "
                        + hint.getLabel().getLeft())
            .toList();
    assertThat(hints).contains("1:35 RLRLRLRL from Tabor", "3:25 at 1& 2& 3& 4&");
    assertThat(at.offsets()).isEmpty();
  }

  @Test
  void useIsALinkAndItsFileCounts() throws Exception {
    List<Diagnostic> missing =
        editor.open("a.tabor", "use \"lib.tabor\"\ngroove g\n  hands play six in eighths\n");
    assertThat(missing).extracting(d -> d.getCode().getLeft()).contains("unreadable");
    assertThat(Editor.get(documents().documentLink(new DocumentLinkParams(editor.id("a.tabor")))))
        .extracting(link -> link.getTarget())
        .containsExactly(editor.uri("lib.tabor"));
    editor.openQuietly("lib.tabor", "pattern six : rlrrll\n");
    assertThat(editor.publishedFor("a.tabor", null).getDiagnostics()).isEmpty();
    editor.replaceAll("lib.tabor", "pattern seven : rlrrllr\n");
    assertThat(editor.publishedFor("a.tabor", null).getDiagnostics())
        .extracting(d -> d.getCode().getLeft())
        .contains("unknown-name");
  }

  @Test
  void symbolsOfTheWorkspaceAreFound() throws Exception {
    open("groove first\n  hands : r r r r\ngroove second\n  hands : r r r r\n");
    assertThat(
            Editor.get(editor.server.getWorkspaceService().symbol(new WorkspaceSymbolParams("sec")))
                .getRight())
        .extracting(symbol -> symbol.getName())
        .containsExactly("second");
  }

  @Test
  void bothPlacesOfAClashAreTold() throws Exception {
    List<Diagnostic> found =
        editor.open("a.tabor", "groove a\n  right : d d d d\n  snare : r . . .\n");
    Diagnostic clash =
        found.stream()
            .filter(d -> d.getCode().getLeft().equals("limb-conflict"))
            .findFirst()
            .orElseThrow();
    assertThat(clash.getRange().getStart().getLine()).isEqualTo(2);
    assertThat(clash.getRelatedInformation().get(0).getLocation().getRange().getStart().getLine())
        .isEqualTo(1);
    assertThat(
            clash.getCodeDescription() == null
                || clash.getCodeDescription().getHref().endsWith("limb-conflict.md"))
        .isTrue();
  }
}
