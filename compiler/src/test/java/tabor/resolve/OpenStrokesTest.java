package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Changes;
import tabor.groove.Groove;

/** Open strokes stay open until a line names a limb. */
class OpenStrokesTest {
  private static final String BACK = "groove back\n snare : . x . x\n";
  private static final String HAT = "step hat\n hihat : xx xx xx xx\n";

  private static String hands(String text) {
    List<Groove> grooves = Compact.compile(text).lesson().grooves();
    return hands(grooves.get(grooves.size() - 1));
  }

  private static String hands(Groove groove) {
    StringBuilder hands = new StringBuilder();
    groove
        .strokes()
        .forEach(
            s ->
                hands
                    .append(hands.isEmpty() ? "" : " ")
                    .append(s.surface().name(), 0, 1)
                    .append(s.limb().letter()));
    return hands.toString();
  }

  @Test
  void aHiHatThatJoinsTakesTheRight() {
    assertThat(hands(BACK)).isEqualTo("sR sR");
    assertThat(hands(BACK + HAT)).isEqualTo("hR hR hR sL hR hR hR hR sL hR");
  }

  @Test
  void whatSpeaksOfALimbFixesWhatItChose() {
    assertThat(hands(BACK + "step a\n accent right at 2\n" + HAT))
        .as("the first snare is fixed, the second still open")
        .isEqualTo("hR hR sR hL hR hR hR hR sL hR");
    assertThat(hands(BACK + "step a\n accent snare at 2\n" + HAT))
        .as("a surface fixes nothing")
        .isEqualTo("hR hR hR sL hR hR hR hR sL hR");
    assertThat(hands(BACK + "step a\n accent hands\n" + HAT)).contains("sL").doesNotContain("sR");
    assertThat(hands(BACK + "step a\n accent all\n" + HAT)).doesNotContain("sR");
    assertThat(hands(BACK + "step a\n kick follows right at 2\n" + HAT)).contains("sR");
    assertThat(hands(BACK + "step a\n right plays tom1 at 2\n drop tom1\n" + HAT))
        .isEqualTo("hR hR hR hR hR hR hR sL hR");
    assertThat(hands(BACK + "step a\n split right between snare and tom1\n" + HAT))
        .contains("sR")
        .contains("tR");
    assertThat(hands(BACK + "step a\n move right from 2 to 3\n" + HAT)).contains("sR");
    assertThat(hands(BACK + "step a\n double right at 2\n" + HAT)).contains("sR hL sR hL");
  }

  /** A line about the hands leaves the feet open, which are dealt when the section ends. */
  @Test
  void whatSpeaksOfTheHandsLeavesTheFeetToTheEnd() {
    String groove = "groove g\n right : h h h h\n kick : x . x .\n hihat.foot : . x . x\n";
    for (String line :
        List.of(
            "accent right at 2",
            "right plays hihat",
            "swap hands\n swap hands",
            "add hihat at 1 with right hand")) {
      assertThat(Compact.compile(groove + " " + line + "\n").lesson().grooves().get(0))
          .as(line)
          .satisfies(
              step ->
                  assertThat(step.strokes())
                      .filteredOn(stroke -> !stroke.limb().isHand())
                      .hasSize(4)
                      .allMatch(stroke -> stroke.hasLimb() && stroke.dealt())
                      .allMatch(
                          stroke ->
                              stroke.limb().isRight() == stroke.surface().name().equals("kick")));
    }
  }

  /** A row of eighths takes turns; a line that speaks of one limb finds just its strokes. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "snare : xx xx . ./ accent left;" + " 0 R snare, 1/8 L snare>, 1/4 R snare, 3/8 L snare>",
        "snare : xx xx . ./ accent right;" + " 0 R snare>, 1/8 L snare, 1/4 R snare>, 3/8 L snare",
        "snare : xx xx . ./ accent right foot, left; 0 R snare, 1/8 L snare>, 1/4 R snare, 3/8"
            + " L snare>",
        "kick : x . x ./ accent right foot; 0 rf kick>, 1/2 rf kick>",
        "kick : x . x ./ snare : xx .. .. ../ accent left; 0 R snare, 0 rf kick, 1/8 L snare>,"
            + " 1/2 rf kick",
        "kick : x . x ./ hihat.foot : . x . x/ accent left foot; 0 rf kick, 1/4 lf"
            + " hihat.foot>, 1/2 rf kick, 3/4 lf hihat.foot>",
        "kick : x . x ./ snare : xx .. .. ../ accent right foot; 0 R snare, 0 rf kick>, 1/8 L"
            + " snare, 1/2 rf kick>",
        "left : . . . n/ snare : .x xx . ./ accent left;"
            + " 1/8 L snare>, 1/4 R snare, 3/8 L snare>, 3/4 L snare.cross>",
        "right foot : k . . ./ snare : xx xx . ./ accent left; 0 R snare, 0 rf kick, 1/8 L"
            + " snare>, 1/4 R snare, 3/8 L snare>",
        "ride : x x x x/ hands : .x .x .x .x; 0 R ride, 1/8 L snare, 1/4 R ride, 3/8 L snare,"
            + " 1/2 R ride, 5/8 L snare, 3/4 R ride, 7/8 L snare",
        "hands : .x .x .x .x/ ride : x x x x; 0 R ride, 1/8 L snare, 1/4 R ride, 3/8 L snare,"
            + " 1/2 R ride, 5/8 L snare, 3/4 R ride, 7/8 L snare",
        "ride : x x x x/ feet : .x .x .x .x; 0 R ride, 1/8 lf hihat.foot, 1/4 R ride, 3/8 lf"
            + " hihat.foot, 1/2 R ride, 5/8 lf hihat.foot, 3/4 R ride, 7/8 lf hihat.foot",
        "tom1 : x. x. x. x./ hands : .x .x .x .x; 0 R tom1, 1/8 L snare, 1/4 R tom1, 3/8 L"
            + " snare, 1/2 R tom1, 5/8 L snare, 3/4 R tom1, 7/8 L snare",
      })
  void aLimbsStrokesAreSeenAsTheyWouldBeDealt(String lines, String strokes) {
    assertThat(Compact.lastOfFine("groove g\n " + lines.replace("/ ", "\n ") + "\n"))
        .isEqualTo(strokes);
  }

  @Test
  void swappedHandsAreFixed() {
    assertThat(hands(BACK + "step a\n swap hands\n")).isEqualTo("sL sL");
    assertThat(hands(BACK + "step a\n swap hands\nstep b\n drop snare at 4\n")).isEqualTo("sL");
  }

  @Test
  void addingWithALimbGivesItThatLimb() {
    assertThat(hands(BACK + "step a\n add snare with left at 2\n")).startsWith("sL");
    assertThat(Compact.last(BACK + "step a\n add snare with left at 2\n"))
        .isEqualTo("1/4 L snare, 3/4 L snare");
    assertThat(Compact.hints(BACK + "step a\n add snare with left at 2\n")).isEmpty();
  }

  @Test
  void aStepsPartOfALimbTakesOutWhatThatLimbWasSeenToPlay() {
    assertThat(hands(BACK + HAT + "step a\n right : d d d d\n")).isEqualTo("rR rR sL rR rR sL");
    assertThat(hands(BACK + HAT + "step a\n right : . s . .\n"))
        .as("the snare at 2 is struck by the right now, and once")
        .isEqualTo("sR sR");
    assertThat(hands(BACK + HAT + "step a\n left : . . . n\n"))
        .isEqualTo("hR hR hR hR hR hR hR sL hR");
  }

  @Test
  void anEitherOfTheHandsIsDealtWhereItStands() {
    String text = "groove g\n hands : xx xx xx xx\nstep a\n ride : x x x x\n";
    assertThat(Compact.compile(text).lesson().grooves().get(0).strokes())
        .allMatch(stroke -> stroke.dealt() && !stroke.open());
    assertThat(Compact.problems("groove g\n hands : xx xx xx xx\nstep a\n drop hands at 2\n"))
        .isEmpty();
    assertThat(hands("groove g\n hands : xx xx xx xx\nstep a\n drop left\n" + HAT))
        .as("the right keeps the snare, so the left has the hi-hat")
        .isEqualTo("sR hL hL sR hL hL sR hL hL sR hL hL");
  }

  @Test
  void takenAndFilledStrokesAreAsOpenAsTheyWere() {
    String hat = "groove hat\n hihat : xx xx xx xx\n";
    assertThat(hands(BACK + hat + "step a\n take snare from back\n"))
        .isEqualTo("hR hR hR sL hR hR hR hR sL hR");
    assertThat(hands(BACK + hat + "step a\n take right from back\n"))
        .as("taken by limb they come fixed, and the hat's right hand is taken out")
        .isEqualTo("sR sR");
    assertThat(hands("groove run\n snare : x . x .\n" + hat + "step a\n fill run in bar 1\n" + HAT))
        .isEqualTo("hR sL hR hR hR hR sL hR hR hR");
  }

  @Test
  void aStrokeWithoutALimbIsToldOnceAndMayBeCured() {
    String crowd = BACK + HAT + "step crowd\n add ride at 2\n";
    assertThat(Compact.problems(crowd)).containsExactly("6 three-hands");
    assertThat(Compact.problems(crowd + "step more\n accent hihat\n"))
        .containsExactly("6 three-hands");
    assertThat(Compact.problems(crowd + "step more\n add tom1 at 2\n"))
        .containsExactly("6 three-hands", "8 three-hands");
    String cured = crowd + "step cured\n drop hihat at 2\n";
    assertThat(Compact.problems(cured)).containsExactly("6 three-hands");
    assertThat(hands(cured)).isEqualTo("hR hR rR sL hR hR hR hR sL hR");
  }

  @Test
  void aChangeOfHandsIsSaidAndNotMarked() {
    List<Groove> grooves = Compact.compile(BACK + HAT).lesson().grooves();
    Changes changes = Changes.of(grooves.get(1));
    assertThat(changes.words()).contains("hands: the snare goes to the left");
    assertThat(changes.strokes()).hasSize(8).allMatch(s -> s.surface().name().equals("hihat"));
  }

  @Test
  void theTempoIsReadAndNoPlayer() {
    String fast = "groove g\n hihat : xxxx xxxx xxxx xxxx\n";
    assertThat(hands("tempo 70\n" + fast)).doesNotContain("hL");
    assertThat(hands("tempo 130\n" + fast)).contains("hR hL hR hL");
    assertThat(hands("tempo 70\n" + fast + "step a\n tempo 130\n")).contains("hR hL hR hL");
  }

  @Test
  void theNearestOfEquallyGoodDealingsIsTaken() {
    // fixed left, then dropped and open again elsewhere: nothing speaks against staying
    String text = BACK + HAT + "step off\n drop hihat\n";
    assertThat(hands(text)).isEqualTo("sR sR");
  }
}
