package tabor.lsp.editors;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tabor.lsp.editors.WordClasses.Role;
import tabor.parse.Vocabulary;

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
  void everyWordOfTheLanguageIsInOneClass() {
    WordClasses words = WordClasses.ofTheNotation();
    List<String> all = new ArrayList<>();
    Arrays.stream(Role.values()).forEach(role -> all.addAll(words.of(role)));
    assertThat(all).doesNotHaveDuplicates();
    assertThat(all).containsAll(Vocabulary.keywords());
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
