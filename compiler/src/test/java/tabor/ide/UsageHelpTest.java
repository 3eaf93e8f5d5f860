package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.ide.UsageHelp.Usage;

/** The usage of the statement that is being written, and the word that comes next. */
class UsageHelpTest {
  private static List<String> at(String marked) {
    String text = marked.replace("§", "");
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    return UsageHelp.at(files.compiled("a.tabor"), marked.indexOf('§'), files).stream()
        .map(UsageHelpTest::shown)
        .toList();
  }

  private static String shown(Usage usage) {
    if (usage.active() < 0) {
      return usage.usage();
    }
    tabor.source.Span word = usage.words().get(usage.active());
    String text = usage.usage();
    return text.substring(0, word.start()) + "<" + word.in(text) + ">" + text.substring(word.end());
  }

  @Test
  void theWordThatComesNextIsMarked() {
    assertThat(at("groove a\n  split left between §"))
        .containsExactly("split LIMB [ghosted|plain|accented] between <SURFACE> and SURFACE AT");
    assertThat(at("groove a\n  split left between snare and §"))
        .containsExactly("split LIMB [ghosted|plain|accented] between SURFACE and <SURFACE> AT");
    assertThat(at("groove a\n  move kick from 1 to §"))
        .containsExactly("move TARGET from COUNT to <COUNT> [in BARS]");
    assertThat(at("chart c\n  climb a from 50 §"))
        .containsExactly(
            "climb SECTION from T <to> T by D every N times|bars [for N minutes] [without PARTS]"
                + " [fill SECTION]");
    assertThat(at("groove a\n  §")).isEmpty();
  }

  @Test
  void aLineThatMayTurnOutSeveralThingsShowsAllOfThem() {
    assertThat(at("groove a\n  kick §"))
        .containsExactlyInAnyOrder(
            "PART <:> BEATS | BEATS",
            "PART <play> PATTERN [left-lead] in VALUE",
            "SURFACE <follows> LIMB AT");
  }

  @Test
  void amongBeatsTheBeatsComeNext() {
    assertThat(at("groove a\n  right : hh §")).containsExactly("PART : BEATS | <BEATS>");
  }
}
