package tabor.merge;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MergerTest {
  private static final String BASE =
      """
      title  "Six-eight workshop"
      tempo  60

      groove pads "On the snare"
        hands : rl rl rl rl
        kick  : x  .  x  .   # feet quiet
        text  "Low taps."

      step   feet
        add  kick at 2
      """;

  private static Merged merge(String ours, String theirs) {
    return Merger.merge(BASE, ours, theirs, Merger.Markers.USUAL);
  }

  private static String edited(String from, String to) {
    assertThat(BASE).contains(from);
    return BASE.replace(from, to);
  }

  @Test
  void twoNewStepsAtTheEndAreBothKept() {
    Merged merged =
        merge(BASE + "\nstep quick\n  tempo 80\n", BASE + "\nstep loud\n  accent kick at 1\n");
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text())
        .isEqualTo(
            BASE + "\nstep quick\n  tempo 80\n" + "\nstep loud from feet\n  accent kick at 1\n");
    assertThat(merged.notes()).containsExactly("step loud now says from feet, as it was made");
  }

  @Test
  void aTempoHereAndAnEditThere() {
    Merged merged =
        merge(edited("tempo  60", "tempo  66"), edited("at 2\n", "at 2\n  accent kick at 1\n"));
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text())
        .isEqualTo(
            edited("tempo  60", "tempo  66").replace("at 2\n", "at 2\n  accent kick at 1\n"));
  }

  /** Nobody can say which of two equal lines was taken out: two people mean one of them. */
  @Test
  void aLineWrittenTwiceThatBothTakeOutOnceIsLeftOnce() {
    String twice = edited("  add  kick at 2\n", "  add  kick at 2\n  add  kick at 2\n");
    String ours = edited("step   feet\n", "# once is enough\nstep   feet\n");
    for (String theirs : new String[] {BASE, edited("step   feet\n", "step   feet\n# once\n")}) {
      for (Merged merged :
          new Merged[] {
            Merger.merge(twice, ours, theirs, Merger.Markers.USUAL),
            Merger.merge(twice, theirs, ours, Merger.Markers.USUAL)
          }) {
        assertThat(merged.conflicts()).isEmpty();
        assertThat(merged.text()).containsOnlyOnce("  add  kick at 2\n");
      }
    }
  }

  @Test
  void neighbouringLinesDoNotCollide() {
    Merged merged =
        merge(
            edited("hands : rl rl rl rl", "hands : rl rl rl rlrl"),
            edited("kick  : x  .  x  .   # feet", "kick  : x  x  x  x   # feet"));
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text()).contains("rlrl\n  kick  : x  x  x  x   # feet quiet\n");
  }

  @Test
  void oneStatementChangedTwiceStandsBetweenMarkersAlone() {
    Merged merged = merge(edited("tempo  60", "tempo  66"), edited("tempo  60", "tempo  72"));
    assertThat(merged.text())
        .isEqualTo(
            edited("tempo  60\n", "<<<<<<< ours\ntempo  66\n=======\ntempo  72\n>>>>>>> theirs\n"));
    assertThat(merged.conflicts())
        .containsExactly("the header: both sides changed this line: tempo  66");
  }

  @Test
  void theSizeOfTheMarkersIsGits() {
    Merged merged =
        Merger.merge(
            "tempo 60\n", "tempo 61\n", "tempo 62\n", new Merger.Markers(9, "mine", "yours"));
    assertThat(merged.text())
        .isEqualTo("<<<<<<<<< mine\ntempo 61\n=========\ntempo 62\n>>>>>>>>> yours\n");
  }

  @Test
  void aNewLayoutOnOneSideAndAnEditOnTheOther() {
    Merged merged =
        merge(
            edited("  hands : rl rl rl rl\n", "     hands:rl rl  rl rl\n"),
            edited("hands : rl rl rl rl", "hands : rl rl rl RL"));
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text()).contains("     hands : rl rl rl RL\n");
  }

  @Test
  void aCommentAndItsStatementAreMergedApart() {
    Merged merged =
        merge(edited("# feet quiet", "# feet very quiet"), edited("x  .  x  .", "x  .  x  x"));
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text()).contains("  kick  : x  .  x  x   # feet very quiet\n");
  }

  @Test
  void takenOutHereAndChangedThereIsAConflict() {
    Merged merged = merge(edited("  text  \"Low taps.\"\n", ""), edited("Low", "Lower"));
    assertThat(merged.text())
        .contains("<<<<<<< ours\n=======\n  text  \"Lower taps.\"\n>>>>>>> theirs\n");
    Merged section = merge(edited("step   feet\n  add  kick at 2\n", ""), edited("at 2", "at 3"));
    assertThat(section.conflicts())
        .containsExactly("one side changed step feet and the other took it out");
    assertThat(section.text()).contains("=======\n\nstep   feet\n  add  kick at 3\n>>>>>>>");
  }

  @Test
  void bothSayANewThingOfTheSame() {
    Merged merged =
        merge(
            edited("at 2\n", "at 2\n  accent kick at 1\n"),
            edited("at 2\n", "at 2\n  ghost kick at 1\n"));
    assertThat(merged.marked()).isEqualTo(1);
    Merged apart =
        merge(
            edited("at 2\n", "at 2\n  accent kick at 1\n"),
            edited("at 2\n", "at 2\n  accent kick at 2\n"));
    assertThat(apart.conflicts()).isEmpty();
    Merged same =
        merge(
            edited("at 2\n", "at 2\n  accent kick at 1\n"),
            edited("at 2\n", "at 2\n  accent   kick at 1\n"));
    assertThat(same.conflicts()).isEmpty();
    assertThat(same.text()).isEqualTo(edited("at 2\n", "at 2\n  accent kick at 1\n"));
  }

  @Test
  void aSectionRenamedHereAndEditedThere() {
    Merged merged =
        merge(
            edited("step   feet\n", "step   foot\n"),
            edited("at 2\n", "at 2\n  accent kick at 1\n"));
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text()).endsWith("step   foot\n  add  kick at 2\n  accent kick at 1\n");
  }

  @Test
  void aSectionMovedHereAndEditedThere() {
    String moved =
        BASE.replace("\nstep   feet\n  add  kick at 2\n", "")
            .replace("\ngroove", "\nstep   feet\n  add  kick at 2\n\ngroove");
    Merged merged = merge(moved, edited("at 2\n", "at 3\n"));
    assertThat(merged.text()).contains("step   feet\n  add  kick at 3\n\ngroove");
    assertThat(merge(edited("at 2\n", "at 3\n"), moved).text()).isEqualTo(merged.text());
  }

  @Test
  void twoNewSectionsOfOneNameStandBetweenMarkersWhole() {
    Merged merged = merge(BASE + "step a\n  tempo 70\n", BASE + "step a\n  tempo 71\n");
    assertThat(merged.conflicts()).containsExactly("both sides have a new step a");
    assertThat(merged.text())
        .endsWith(
            "<<<<<<< ours\nstep a\n  tempo 70\n=======\nstep a\n  tempo 71\n>>>>>>> theirs\n");
  }

  @Test
  void lineEndsAndMarkFollowTheSideThatChangedThem() {
    String windows = BASE.replace("\n", "\r\n");
    assertThat(merge(windows, edited("tempo  60", "tempo  66")).text())
        .isEqualTo(edited("tempo  60", "tempo  66").replace("\n", "\r\n"));
    assertThat(merge(edited("tempo  60", "tempo  66"), windows).text())
        .isEqualTo(edited("tempo  60", "tempo  66").replace("\n", "\r\n"));
    assertThat(merge("\uFEFF" + BASE, edited("tempo  60", "tempo  66")).text())
        .isEqualTo("\uFEFF" + edited("tempo  60", "tempo  66"));
    String open = BASE.substring(0, BASE.length() - 1);
    Merged end = merge(open, BASE + "step b\n");
    assertThat(end.text()).isEqualTo(BASE + "step b\n");
  }

  @Test
  void aCommentAtTheEndIsNotDoubled() {
    String base = BASE + "\n# the end\n";
    Merged merged =
        Merger.merge(base, base + "step a\n", base + "step b from pads\n", Merger.Markers.USUAL);
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text()).containsOnlyOnce("# the end").contains("step a\n").contains("step b");
  }

  @Test
  void variationsOfASheetAreMergedLineByLine() {
    String sheet = BASE + "\nsheet kicks from pads\n  each add kick at 2\n  goal \"Even\"\n";
    Merged merged =
        Merger.merge(
            sheet,
            sheet.replace("at 2\n  goal", "at 2\n  each add kick at 3\n  goal"),
            sheet.replace("\"Even\"\n", "\"Even\"\n  goal \"Loud\"\n  page new\n"),
            Merger.Markers.USUAL);
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text())
        .endsWith(
            "  each add kick at 2\n  each add kick at 3\n  goal \"Even\"\n  goal \"Loud\"\n"
                + "  page new\n");
  }

  @Test
  void aSheetKeepsTheSectionThatItVaries() {
    Merged merged =
        merge(BASE + "\nstep quick\n  tempo 80\n", BASE + "\nsheet kicks\n  each add kick at 3\n");
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.text()).contains("sheet kicks from feet\n");
    Merged players =
        merge(BASE + "player mia\n  tempo 80%\n", BASE + "player ben\n  left-handed\n");
    assertThat(players.conflicts()).isEmpty();
  }

  @Test
  void differentWishesForThePageStandBesideEachOther() {
    Merged merged = merge("page a4\n" + BASE, "page 2 columns\n" + BASE);
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merge("page a4\n" + BASE, "page letter\n" + BASE).marked()).isEqualTo(1);
  }
}
