package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;

/** Where names are given and used, and how they are changed; the cursor is marked §. */
class ReferencesTest {
  private static String renamed(String marked, String to) {
    String text = marked.replace("§", "");
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    Compiled compiled = files.compiled("a.tabor");
    List<TextEdit> edits = new ArrayList<>();
    for (References.Place place : Rename.places(compiled, marked.indexOf('§'), to, files)) {
      edits.add(new TextEdit(place.span(), to));
    }
    return TextEdit.apply(TextEdit.inOrder(edits), text);
  }

  @Test
  void namesOfSectionsPatternsAndKits() {
    String text =
        "kit mine like five-piece\n"
            + "pattern six : rlrrll\n"
            + "groove a\n"
            + "  on mine\n"
            + "  hands play six in triplets\n"
            + "step b \"a\" from a\n"
            + "  take kick from a\n"
            + "chart c\n"
            + "  play a b 2 times\n"
            + "  climb a from 50 to 60 by 5 every 2 times\n";
    assertThat(renamed(text.replace("from a\n  take", "from §a\n  take"), "start"))
        .isEqualTo(
            text.replace("groove a", "groove start")
                .replace("from a\n", "from start\n")
                .replace("play a", "play start")
                .replace("climb a", "climb start"));
    assertThat(renamed(text.replace("pattern six", "pattern s§ix"), "run"))
        .isEqualTo(text.replace("six", "run"));
    assertThat(renamed(text.replace("on mine", "on §mine"), "ours"))
        .isEqualTo(text.replace("mine", "ours"));
  }

  @Test
  void onlyFilesThatUseAnotherAreCompiledToFindThoseThatUseThisOne() {
    MemoryFiles files =
        new MemoryFiles()
            .put("lib.tabor", "pattern six : rlrrll\n")
            .put("user.tabor", "use \"lib.tabor\"\ngroove g\n  hands play six in eighths\n")
            .put("other.tabor", "pattern six : rrllrl\n");
    Compiled compiled = files.compiled("lib.tabor");
    assertThat(References.references(compiled, 9, files)).isNotEmpty();
    assertThat(files.asked).contains("user.tabor").doesNotContain("other.tabor");
  }

  @Test
  void aSheetIsRenamedInTheNamesOfItsVariations() {
    String text =
        "groove a\n  kick : r . . .\nsheet s \"S\" from a\n  each add kick at 2 3 4\n"
            + "step b from s-2\n  take kick from s-3\ngroove s-1\n  kick : r r . .\n"
            + "chart c\n  play s s-1 s-3 each 2 times\n  trade s-2 1 bar fill s-3\n";
    String renamed =
        text.replace("sheet s", "sheet kicks")
            .replace("s-2", "kicks-2")
            .replace("s-3", "kicks-3")
            .replace("play s ", "play kicks ");
    assertThat(renamed(text.replace("sheet s", "sheet §s"), "kicks")).isEqualTo(renamed);
    assertThat(renamed(text.replace("from s-2", "from §s-2"), "kicks")).isEqualTo(renamed);
  }

  @Test
  void aPlayerIsRenamedWhereItStands() {
    String text = "player mia \"Mia\"\n  on junior\ngroove mia\n  kick : r . . .\n";
    assertThat(renamed(text.replace("player mia", "player m§ia"), "ben"))
        .isEqualTo(text.replace("player mia", "player ben"));
  }

  @Test
  void surfacesAndLettersOfAKit() {
    String text =
        "kit mine like five-piece\n  surface gong letter g key 52\non mine\n"
                .replace("on mine\n", "")
            + "groove a\n"
            + "  on mine\n"
            + "  right : g(g)G g. 'g .\n"
            + "  gong : r . . .\n"
            + "step b \"B\"\n"
            + "  drop gong at 1\n";
    assertThat(renamed(text.replace("drop gong", "drop §gong"), "bowl"))
        .isEqualTo(text.replace("gong", "bowl"));
    assertThat(renamed(text.replace("letter g", "letter §g"), "z"))
        .isEqualTo(text.replace("letter g", "letter z").replace("g(g)G g. 'g .", "z(z)z z. 'z ."));
  }

  @Test
  void anotherKitKeepsItsOwnSurfaceOfThatName() {
    String text =
        "kit one like five-piece\n"
            + "  surface gong key 52\n"
            + "kit two like five-piece\n"
            + "  surface gong key 53\n"
            + "groove a\n"
            + "  on one\n"
            + "  §gong : r . . .\n"
            + "groove b\n"
            + "  on two\n"
            + "  gong : r . . .\n";
    assertThat(renamed(text, "bowl"))
        .isEqualTo(
            text.replace("§", "")
                .replaceFirst("surface gong", "surface bowl")
                .replaceFirst("  gong : ", "  bowl : "));
  }

  @Test
  void aNameThatCannotBeIsRefused() {
    String text = "groove §a\n  hands : r r r r\ngroove b\n  hands : r r r r\n";
    assertThatThrownBy(() -> renamed(text, "b")).hasMessageContaining("already");
    assertThatThrownBy(() -> renamed(text, "Two Words")).hasMessageContaining("lower-case");
    assertThatThrownBy(() -> renamed(text, "at")).hasMessageContaining("word of the notation");
    assertThatThrownBy(() -> renamed("§groove a\n", "x-1"))
        .hasMessageContaining("no name of yours");
  }
}
