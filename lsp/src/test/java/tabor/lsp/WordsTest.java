package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.junit.jupiter.api.Test;

/** What needs only the words of the file: completion of keywords and names, outline, signatures. */
class WordsTest extends WithEditor {
  private List<String> complete(String marked) throws Exception {
    Marked at = Marked.of(marked);
    editor.openQuietly("a.tabor", at.text());
    return Editor.get(
            documents().completion(new CompletionParams(editor.id("a.tabor"), at.cursor())))
        .getRight()
        .getItems()
        .stream()
        .map(CompletionItem::getLabel)
        .toList();
  }

  private SignatureHelp sign(String marked) throws Exception {
    Marked at = Marked.of(marked);
    editor.openQuietly("a.tabor", at.text());
    return Editor.get(
        documents().signatureHelp(new SignatureHelpParams(editor.id("a.tabor"), at.cursor())));
  }

  @Test
  void statementsAreOfferedWhereTheyMayStand() throws Exception {
    assertThat(complete("§")).contains("title", "time", "groove", "kit").doesNotContain("climb");
    assertThat(complete("groove a\n  §"))
        .contains("hands", "kick", "pickup", "next")
        .doesNotContain("title", "climb", "count-in");
    assertThat(complete("step a \"A\"\n  §")).doesNotContain("pickup");
    assertThat(complete("chart c\n  §")).contains("climb", "count-in").doesNotContain("split");
    assertThat(complete("kit k like five-piece\n  §"))
        .contains("surface", "without")
        .doesNotContain("split");
  }

  @Test
  void wordsFollowTheForm() throws Exception {
    assertThat(complete("groove a\n  right §")).contains("plays", "play", "foot", ":");
    assertThat(complete("groove a\n  right plays §")).contains("ride", "ride.bell");
    assertThat(complete("groove a\n  right plays ride §")).contains("ghosted", "at", "in", "where");
    assertThat(complete("groove a\n  split left between snare §")).containsExactly("and");
    assertThat(complete("groove a\n  snare : r l r l\n  kick : x . x .\n  accent hands, §"))
        .contains("left", "kick");
    assertThat(complete("groove a\n  drop kick in §")).contains("bar", "bars", "last", "every");
    assertThat(complete("groove a\n  shift kick §")).contains("later", "earlier");
    assertThat(complete("groove a\n  hands play paradi§"))
        .contains("paradiddle", "paradiddle-diddle");
    assertThat(complete("groove a\n  dynamic §")).contains("pp", "ff");
    assertThat(complete("on §")).contains("five-piece", "junior");
    assertThat(complete("# on §")).isEmpty();
    assertThat(complete("title \"on §\"")).isEmpty();
  }

  @Test
  void namesOfTheFileAreOffered() throws Exception {
    String text = "groove a\n  hands : r r r r\npattern p : rl\nstep b \"B\"\n";
    assertThat(complete(text + "chart c\n  play §")).contains("a", "b").doesNotContain("p", "c");
    assertThat(complete(text + "step d from §")).contains("a", "b").doesNotContain("d");
    assertThat(complete(text + "  hands play §")).contains("p");
  }

  @Test
  void lettersOfAPartAreOffered() throws Exception {
    assertThat(complete("groove a\n  right : §")).contains("d", "h", "s", "x").doesNotContain("k");
    assertThat(complete("groove a\n  right foot : §")).contains("k").doesNotContain("d");
    assertThat(complete("groove a\n  hands : rl §")).contains("r", "l", "b").doesNotContain("d");
  }

  @Test
  void nothingIsOfferedBehindWhatIsFinished() throws Exception {
    assertThat(complete("groove a\n  hands : rl rl§")).isEmpty();
    assertThat(complete("groove a\nstep two \"Two\"§")).isEmpty();
  }

  @Test
  void aCompletionTakesThePlaceOfTheWholeWordAroundTheCursor() throws Exception {
    Marked at = Marked.of("groove a\n  right plays ri§de.bell\n");
    editor.openQuietly("a.tabor", at.text());
    for (CompletionItem item :
        Editor.get(documents().completion(new CompletionParams(editor.id("a.tabor"), at.cursor())))
            .getRight()
            .getItems()) {
      assertThat(Editor.apply(at.text(), List.of(item.getTextEdit().getLeft())))
          .isEqualTo("groove a\n  right plays " + item.getLabel() + "\n");
    }
  }

  @Test
  void aCompletionTakesThePlaceOfTheWordBegun() throws Exception {
    Marked at = Marked.of("groove a\n  right plays ri§");
    editor.openQuietly("a.tabor", at.text());
    CompletionItem ride =
        Editor.get(documents().completion(new CompletionParams(editor.id("a.tabor"), at.cursor())))
            .getRight()
            .getItems()
            .stream()
            .filter(item -> item.getLabel().equals("ride"))
            .findFirst()
            .orElseThrow();
    assertThat(Editor.apply(at.text(), List.of(ride.getTextEdit().getLeft())))
        .isEqualTo("groove a\n  right plays ride");
  }

  @Test
  void theSignatureMarksTheWordThatComesNext() throws Exception {
    SignatureHelp help = sign("groove a\n  split left between §");
    String form = help.getSignatures().get(0).getLabel();
    ParameterInformation word =
        help.getSignatures().get(0).getParameters().get(help.getActiveParameter());
    assertThat(form).startsWith("split LIMB");
    assertThat(
            form.substring(
                word.getLabel().getRight().getFirst(), word.getLabel().getRight().getSecond()))
        .isEqualTo("SURFACE");
    assertThat(sign("groove a\n  §")).isNull();
  }

  @Test
  void theOutlineNamesSectionsAndTheirParts() throws Exception {
    String text =
        "title \"T\"\n\n"
            + "groove pads \"On the snare\"\n"
            + "  hands : r r r r\n"
            + "  kick : x . x .\n\n"
            + "chart c\n";
    editor.openQuietly("a.tabor", text);
    List<DocumentSymbol> symbols =
        Editor.get(documents().documentSymbol(new DocumentSymbolParams(editor.id("a.tabor"))))
            .stream()
            .map(either -> either.getRight())
            .toList();
    assertThat(symbols).extracting(DocumentSymbol::getName).containsExactly("pads", "c");
    assertThat(symbols.get(0).getDetail()).isEqualTo("On the snare");
    assertThat(Editor.cut(text, symbols.get(0).getRange()))
        .isEqualTo("groove pads \"On the snare\"\n  hands : r r r r\n  kick : x . x .");
    assertThat(Editor.cut(text, symbols.get(0).getSelectionRange())).isEqualTo("pads");
    assertThat(symbols.get(0).getChildren())
        .extracting(DocumentSymbol::getName)
        .containsExactly("hands", "kick");
    List<FoldingRange> folds =
        Editor.get(documents().foldingRange(new FoldingRangeRequestParams(editor.id("a.tabor"))));
    assertThat(folds).hasSize(1);
    assertThat(folds.get(0).getStartLine()).isEqualTo(2);
    assertThat(folds.get(0).getEndLine()).isEqualTo(4);
  }

  @Test
  void aSelectionGrowsFromStrokeToFile() throws Exception {
    Marked at = Marked.of("groove a\n  hands : rl r§l | r r\n\ngroove b\n");
    editor.openQuietly("a.tabor", at.text());
    SelectionRange range =
        Editor.get(
                documents()
                    .selectionRange(
                        new SelectionRangeParams(editor.id("a.tabor"), List.of(at.cursor()))))
            .get(0);
    List<String> texts = new java.util.ArrayList<>();
    for (; range != null; range = range.getParent()) {
      texts.add(Editor.cut(at.text(), range.getRange()));
    }
    assertThat(texts)
        .containsExactly(
            "l",
            "rl",
            "rl rl",
            "hands : rl rl | r r",
            "groove a\n  hands : rl rl | r r",
            at.text());
  }

  @Test
  void positionsOutsideTheTextAreAnswered() throws Exception {
    editor.openQuietly("a.tabor", "groove a\n");
    for (Position position : List.of(new Position(99, 99), new Position(0, 9999))) {
      Editor.get(documents().completion(new CompletionParams(editor.id("a.tabor"), position)));
    }
  }
}
