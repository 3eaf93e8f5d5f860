package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.ide.SemanticTokenizer.Token;
import tabor.syntax.SectionSyntax;

/** Colours: every word has one. */
class SemanticTokenizerTest {
  private static List<String> tokens(String text) {
    return inFile(text).stream().map(token -> token.kind() + " " + token.span().in(text)).toList();
  }

  private static List<Token> inFile(String text) {
    Compiled compiled = MemoryFiles.alone(text);
    List<Token> found = new ArrayList<>();
    for (SectionSyntax section : compiled.syntax()) {
      int start = Cursor.startOf(compiled, section);
      for (Token token : SemanticTokenizer.of(section)) {
        found.add(
            new Token(token.span().shift(start), token.kind(), token.given(), token.accent()));
      }
    }
    return found;
  }

  @Test
  void wordsHaveTheirMeaning() {
    assertThat(tokens("groove a \"T\" # first\n  hands : rL (r). - 'l/\n"))
        .containsExactly(
            "KEYWORD groove",
            "SECTION a",
            "TEXT \"T\"",
            "COMMENT # first",
            "LIMB hands",
            "SIGN :",
            "STROKE r",
            "STROKE L",
            "SIGN (",
            "STROKE r",
            "SIGN )",
            "SIGN .",
            "SIGN -",
            "STROKE 'l/");
    assertThat(tokens("step b \"B\"\n  split left ghosted between tom1 and floor at 2& every e\n"))
        .contains(
            "KEYWORD split",
            "LIMB left",
            "VALUE ghosted",
            "KEYWORD between",
            "SURFACE tom1",
            "KEYWORD and",
            "SURFACE floor",
            "KEYWORD at",
            "COUNT 2&");
    assertThat(tokens("on junior\ntempo dotted-quarter = 60\n"))
        .contains("KIT junior", "VALUE dotted-quarter", "NUMBER 60");
    assertThat(tokens("pattern p : rl\ngroove a\n  hands play p in triplets\n"))
        .contains("PATTERN p", "VALUE triplets");
  }

  @Test
  void aBrokenLineIsColouredToo() {
    assertThat(tokens("groove a\n  right plays # nothing\n  add kick 1 3 \"x\n"))
        .contains("KEYWORD plays", "COMMENT # nothing", "KEYWORD add", "NUMBER 1");
  }

  /** No word of the examples is without a colour. */
  @Test
  void everyWordOfTheExamplesIsColoured() throws IOException {
    for (java.nio.file.Path file : CompletionProperties.examples().toList()) {
      String text = Files.readString(file);
      boolean[] coloured = new boolean[text.length()];
      int last = 0;
      for (Token token : inFile(text)) {
        assertThat(token.span().start()).isGreaterThanOrEqualTo(last);
        last = token.span().end();
        for (int i = token.span().start(); i < last; i++) {
          coloured[i] = true;
        }
      }
      for (int i = 0; i < text.length(); i++) {
        if (!Character.isWhitespace(text.charAt(i))) {
          assertThat(coloured[i])
              .as("%s: %s", file, text.substring(i).lines().findFirst())
              .isTrue();
        }
      }
    }
  }
}
