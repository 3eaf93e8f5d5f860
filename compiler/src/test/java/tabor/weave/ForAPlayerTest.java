package tabor.weave;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Blocks for a player of the lesson, and what only the teacher gets. */
class ForAPlayerTest {
  private static final String CLASS =
      """
      tempo 100
      teacher "Not to be shown"

      groove beat
        hihat : xx xx xx xx
        snare : .  x  .  x
        teacher "Nor this"  # or this

      step loud
        accent snare
        teacher \"""
          Nor these
          two lines
        \"""
        text  "To be shown"

      player mia "Mia"
        left-handed
        tempo    80%
        sections beat

      player ben "Ben"
        sections elsewhere
      """;

  private static Woven weave(String info) {
    String page = "```tabor " + info + "\n" + CLASS + "```\n";
    return Weaver.markdown(Path.of("page.md"), page, Lessons.NONE, Style.BESIDE);
  }

  private static String said(String info) {
    return weave(info).problems().toString();
  }

  @Test
  void aPlayerGetsTheOwnSectionsHandsAndTempo() {
    Woven everybody = weave("as=svg");
    assertThat(everybody.files()).hasSize(2);
    assertThat(everybody.text()).contains("quarter = 100", "1 right hand hi-hat");
    Woven mia = weave("as=svg for=mia");
    assertThat(mia.problems()).isEmpty();
    assertThat(mia.files()).hasSize(1);
    assertThat(mia.text()).contains("quarter = 80", "1 left hand hi-hat");
    assertThat(weave("as=grid for=mia").text())
        .contains("quarter = 80")
        .contains("hands    L  L")
        .doesNotContain("loud");
    Woven page =
        Weaver.html(
            Path.of("page.md"),
            "```tabor as=player for=mia\n" + CLASS + "```\n",
            Lessons.NONE,
            Style.BESIDE);
    assertThat(page.problems()).isEmpty();
    assertThat(page.text()).contains("tabor-player", ">beat<").doesNotContain(">loud<");
  }

  @Test
  void whoeverIsNotThereIsTold() {
    assertThat(said("for=mai")).contains("there is no player mai here", "Did you mean mia?");
    assertThat(said("for=someone")).contains("There is mia, ben.");
    assertThat(said("for=ben")).contains("nothing of it is left for ben");
    assertThat(said("for=mia section=loud")).contains("there is no section loud here");
    String page = "```tabor for=mia\ngroove a\n  kick : x . x .\n```\n";
    Woven none = Weaver.markdown(Path.of("page.md"), page, Lessons.NONE, Style.BESIDE);
    assertThat(none.problems().toString()).contains("there is no player mia", "player mia \"Mia\"");
  }

  @Test
  void theTextThatIsShownHasNothingForTheTeacher() {
    String shown = weave("as=source").text();
    assertThat(shown)
        .doesNotContain("teacher", "or this", "Nor", "two lines")
        .startsWith("```tabor\ntempo 100\n\ngroove beat\n")
        .contains("  snare : .  x  .  x\n\nstep loud\n  accent snare\n  text  \"To be shown\"\n\n")
        .endsWith("  sections elsewhere\n```\n");
    assertThat(weave("as=both section=loud").text())
        .startsWith("```tabor\nstep loud\n  accent snare\n  text  \"To be shown\"\n```\n");
    for (String as : new String[] {"svg", "grid", "player", "source", "both"}) {
      String page = "```tabor as=" + as + "\n" + CLASS + "```\n";
      Woven html = Weaver.html(Path.of("page.md"), page, Lessons.NONE, Style.BESIDE);
      assertThat(html.problems()).isEmpty();
      assertThat(html.text()).doesNotContain("Not to be", "Nor th", "two lines");
    }
  }

  @Test
  void norHasTheBoxOfABlockThatIsWrong() {
    String page = "```tabor\n" + CLASS.replace("groove beat", "groove Beat") + "```\n";
    Woven html = Weaver.html(Path.of("page.md"), page, Lessons.NONE, Style.BESIDE);
    Woven markdown = Weaver.markdown(Path.of("page.md"), page, Lessons.NONE, Style.BESIDE);
    for (Woven woven : new Woven[] {html, markdown}) {
      assertThat(woven.problems()).isNotEmpty();
      assertThat(woven.text())
          .contains("groove Beat", "To be shown", "sections elsewhere")
          .doesNotContain("Not to be", "Nor th", "or this", "two lines", "teacher");
    }
  }
}
