package tabor.lsp.editors;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.Vocabulary;
import org.junit.jupiter.api.Test;
import tabor.grammar.TaborLexer;
import tabor.lsp.editors.WordClasses.Role;

/** The words of the editors' grammars are those of the language. */
class EditorGrammarsTest {
  private static final Path EDITORS = Path.of("editors");

  @Test
  void noGrammarIsStale() throws IOException {
    Map<String, String> blocks = new EditorGrammars(WordClasses.ofTheNotation()).blocks();
    for (Map.Entry<String, String> block : blocks.entrySet()) {
      Path file = EDITORS.resolve(block.getKey());
      String written = Files.readString(file);
      String wanted = EditorGrammars.replaced(written, block.getValue());
      if ("write".equals(System.getProperty("tabor.goldens"))) {
        Files.writeString(file, wanted);
      }
      assertThat(Files.readString(file))
          .as("%s; rewrite it with -Dtabor.goldens=write", file)
          .isEqualTo(wanted);
    }
  }

  @Test
  void everyWordOfTheLexerIsInOneClass() {
    WordClasses words = WordClasses.ofTheNotation();
    List<String> all = new ArrayList<>();
    Arrays.stream(Role.values()).forEach(role -> all.addAll(words.of(role)));
    assertThat(all).doesNotHaveDuplicates();
    Vocabulary vocabulary = TaborLexer.VOCABULARY;
    for (int type = 1; type <= vocabulary.getMaxTokenType(); type++) {
      String literal = vocabulary.getLiteralName(type);
      if (literal != null && literal.matches("'[a-z-]+'") && literal.length() > 3) {
        assertThat(all).contains(literal.substring(1, literal.length() - 1));
      }
    }
  }

  @Test
  void aNewWordMakesAGrammarStale() throws IOException {
    Map<Role, List<String>> more = new java.util.EnumMap<>(WordClasses.ofTheNotation().words());
    more.put(Role.WORD, List.of("brandnew"));
    String block = new EditorGrammars(new WordClasses(more)).blocks().get("vim/syntax/tabor.vim");
    String written = Files.readString(EDITORS.resolve("vim/syntax/tabor.vim"));
    assertThat(EditorGrammars.replaced(written, block)).isNotEqualTo(written).contains("brandnew");
  }
}
