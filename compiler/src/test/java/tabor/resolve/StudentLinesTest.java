package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.PageWishes;
import tabor.groove.Player;
import tabor.kit.Limits;
import tabor.rhythm.BeatUnit;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.words.Language;

/** What section 3 of the page on teaching says of players, and a lesson as one of them plays it. */
class StudentLinesTest {
  private static final String BEAT = "groove g\n hihat : rr rr rr rr\n snare : . l . l\n";

  private static Player player(String lines) {
    Compiled compiled = Compact.compile("player mia \"Mia\"\n" + lines + BEAT);
    assertThat(compiled.diagnostics()).as(lines).isEmpty();
    return compiled.lesson().extras().players().get(0);
  }

  private static Groove played(String header, Options options) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("s.tabor"), header + BEAT, options);
    assertThat(compiled.diagnostics().stream().filter(d -> d.severity().ordinal() == 0)).isEmpty();
    return compiled.lesson().grooves().get(0);
  }

  private static Groove played(String header, String lines) {
    return played(header, Options.NONE.of(player(lines)));
  }

  @Test
  void nothingIsSaidOfAPlayerWithoutLines() {
    Player mia = player("");
    assertThat(mia.name()).isEqualTo("mia");
    assertThat(mia.title()).isEqualTo("Mia");
    assertThat(mia.kit()).isNull();
    assertThat(mia.leftHanded()).isFalse();
    assertThat(mia.openHanded()).isFalse();
    assertThat(mia.speed()).isNull();
    assertThat(mia.limits()).isNull();
    assertThat(mia.sections()).isEmpty();
    assertThat(mia.counts()).isNull();
    assertThat(mia.sticking()).isNull();
    assertThat(mia.changes()).isNull();
    assertThat(mia.wishes()).isEqualTo(PageWishes.NONE);
    assertThat(mia.prose()).isEmpty();
    assertThat(mia.words()).isNull();
    assertThat(mia.language()).isNull();
    assertThat(Options.NONE.of(mia)).isEqualTo(Options.NONE);
  }

  @Test
  void kitAndSide() {
    Player mia = player(" on junior\n left-handed\n");
    assertThat(mia.kit()).isEqualTo("junior");
    assertThat(mia.leftHanded()).isTrue();
    assertThat(mia.openHanded()).isFalse();
    assertThat(player(" open-handed\n").openHanded()).isTrue();
    List<Diagnostic> wrong =
        Compact.compile("player mia \"Mia\"\n on junor\n" + BEAT).diagnostics();
    assertThat(wrong).hasSize(1);
    assertThat(wrong.get(0).code().word()).isEqualTo("unknown-name");
    assertThat(wrong.get(0).help()).contains("junior");
  }

  @Test
  void tempoAsAShareOrAsANumber() {
    assertThat(player(" tempo 80%\n").speed())
        .isEqualTo(new Player.Speed(Time.of(4, 5), null, null));
    assertThat(player(" tempo 72\n").speed()).isEqualTo(new Player.Speed(null, Time.of(72), null));
    assertThat(player(" tempo half = 40\n").speed())
        .isEqualTo(new Player.Speed(null, Time.of(40), BeatUnit.HALF));
  }

  @Test
  void sectionsByNameByRangeAndFromTheFirst() {
    assertThat(player(" sections pad to quiet last\n").sections())
        .containsExactly(new Player.Pick(0, "pad", "quiet"), new Player.Pick(0, "last", null));
    assertThat(player(" sections a b\n sections first 3\n").sections())
        .as("said twice: the last wins")
        .containsExactly(new Player.Pick(3, null, null));
  }

  @Test
  void limitsInTheWordsOfATempo() {
    // Sixteenths at 75: four in a beat, 75 beats a minute: 5 a second; at 110: 22/3.
    Limits limits = player(" limits hands sixteenths at 75 to 110\n").limits();
    assertThat(limits.hands()).isEqualTo(new Limits.Range(Time.of(5), Time.of(22, 3)));
    assertThat(limits.feet()).isEqualTo(Limits.DEFAULT.feet());
    // Triplets at 100: 300 a minute; eighths at 120 and 150: 240 and 300 a minute.
    Limits more =
        player(" limits feet triplets at 100 to 120\n limits doubles eighths at 120 to 150\n")
            .limits();
    assertThat(more.feet()).isEqualTo(new Limits.Range(5, 6));
    assertThat(more.doubles()).isEqualTo(new Limits.Range(4, 5));
    assertThat(player(" limits hands 6 to 9 reach 200 to 300\n").limits())
        .isEqualTo(
            new Limits(
                new Limits.Range(6, 9),
                Limits.DEFAULT.feet(),
                Limits.DEFAULT.doubles(),
                new Limits.Range(200, 300)));
  }

  @Test
  void whatAPlayersLimitsDoNotSayIsAsTheHeaderSays() {
    Compiled compiled =
        Compact.compile("limits feet 3 to 4\nplayer mia \"Mia\"\n limits hands 6 to 9\n" + BEAT);
    Limits both = compiled.lesson().extras().players().get(0).limits();
    assertThat(both.feet()).isEqualTo(new Limits.Range(3, 4));
    assertThat(both.hands()).isEqualTo(new Limits.Range(6, 9));
    assertThat(Compact.problems("player mia \"Mia\"\n limits anna hands 6 to 9\n" + BEAT))
        .as("a player is one person")
        .containsExactly("2 syntax");
  }

  @Test
  void whatIsShown() {
    Player counts = player(" show counts\n");
    assertThat(counts.counts()).isTrue();
    assertThat(counts.sticking()).isFalse();
    assertThat(counts.changes()).isNull();
    Player sticking = player(" show sticking changes\n");
    assertThat(sticking.counts()).isFalse();
    assertThat(sticking.sticking()).isTrue();
    assertThat(sticking.changes()).isTrue();
    assertThat(player(" show counts no-changes\n").changes()).isFalse();
    Player none = player(" show none\n");
    assertThat(none.counts()).isFalse();
    assertThat(none.sticking()).isFalse();
    assertThat(none.changes()).isFalse();
  }

  @Test
  void thePage() {
    Player mia =
        player(
            " page large\n page letter\n page 2 columns\n text \"Look up.\"\n text \"Slowly.\"\n"
                + " language de\n say threes trip let\n say twos und\n");
    assertThat(mia.wishes()).isEqualTo(new PageWishes(PageWishes.Paper.LETTER, true, null, 2));
    assertThat(mia.prose()).containsExactly("Look up.", "Slowly.");
    assertThat(mia.language()).isEqualTo(Language.DE);
    assertThat(mia.words().of(3)).containsExactly("trip", "let");
    assertThat(mia.words().of(2)).containsExactly("und");
  }

  @Test
  void everyTempoIsPlayedSlower() {
    Tempo slow = played("tempo 100\n", " tempo 80%\n").setting().tempo();
    assertThat(slow).isEqualTo(new Tempo(Time.of(1, 4), Time.of(80)));
    assertThat(played("tempo half = 50\n", " tempo 80%\n").setting().tempo())
        .isEqualTo(new Tempo(Time.of(1, 2), Time.of(40)));
    assertThat(played("tempo half = 50\n", " tempo 72\n").setting().tempo())
        .as("a bare number counts what the section counts")
        .isEqualTo(new Tempo(Time.of(1, 2), Time.of(72)));
    assertThat(played("tempo half = 50\n", " tempo quarter = 72\n").setting().tempo())
        .isEqualTo(new Tempo(Time.of(1, 4), Time.of(72)));
  }

  @Test
  void showIsForThePlayerAlone() {
    Groove plain = played("show sticking no-changes\n", "");
    assertThat(plain.setting().showCounts()).isFalse();
    assertThat(plain.setting().showSticking()).isTrue();
    assertThat(plain.setting().showChanges()).isFalse();
    Groove mia = played("show sticking no-changes\n", " show counts changes\n");
    assertThat(mia.setting().showCounts()).isTrue();
    assertThat(mia.setting().showSticking()).isFalse();
    assertThat(mia.setting().showChanges()).isTrue();
  }

  @Test
  void wordsAndLanguageArePrintedOnly() {
    Groove mia = played("say threes trip let\n", " say threes ta ti\n");
    assertThat(mia.setting().wording().printed().of(3)).containsExactly("ta", "ti");
    assertThat(mia.setting().wording().read().of(3)).containsExactly("trip", "let");
    Groove german = played("language fr\nsay threes trip let\n", " language de\n");
    assertThat(german.setting().wording().language()).isEqualTo(Language.DE);
    assertThat(german.setting().wording().printed().of(3)).containsExactly("trip", "let");
    assertThat(played("language fr\n", " say threes ta ti\n").setting().wording().language())
        .isEqualTo(Language.FR);
  }

  @Test
  void whatIsAskedForWinsOverThePlayer() {
    Player mia =
        player(" on junior\n left-handed\n open-handed\n tempo 80%\n limits hands 1 to 2\n");
    Options own = Options.NONE.of(mia);
    assertThat(own.on()).isEqualTo("junior");
    assertThat(own.leftHanded()).isTrue();
    assertThat(own.openHanded()).isTrue();
    assertThat(own.tempo()).isNull();
    assertThat(own.view().speed()).isEqualTo(new Player.Speed(Time.of(4, 5), null, null));
    Options asked = new Options("four-piece", false, false, Time.of(60), "adult").of(mia);
    assertThat(asked.on()).isEqualTo("four-piece");
    assertThat(asked.tempo()).isEqualTo(Time.of(60));
    assertThat(asked.player()).as("the player's own limits hold").isNull();
    assertThat(asked.view().speed()).isNull();
    assertThat(new Options(null, true, false, null, "adult").of(player("")).player())
        .isEqualTo("adult");
    assertThat(new Options(null, true, true, null, null).of(player("")))
        .isEqualTo(new Options(null, true, true, null, null));
  }

  @Test
  void onePlayersPartOfALessonIsKnownFromAnothers() {
    Options plain = Options.NONE;
    List<Options> all =
        List.of(
            plain,
            new Options("junior", false, false, null, null),
            new Options(null, true, false, null, null),
            new Options(null, false, true, null, null),
            new Options(null, false, false, Time.of(60), null),
            new Options(null, false, false, null, "adult"),
            plain.of(player(" tempo 80%\n")),
            plain.of(player(" limits hands 1 to 2\n")),
            plain.of(player(" show counts changes\n")),
            plain.of(player(" show sticking changes\n")),
            plain.of(player(" show counts no-changes\n")),
            plain.of(player(" say threes trip let\n")),
            plain.of(player(" language de\n")));
    assertThat(all).doesNotHaveDuplicates();
    assertThat(plain.of(player(" tempo 80%\n"))).isEqualTo(plain.of(player(" tempo 80%\n")));
    assertThat(plain.of(player(" say threes trip let\n")))
        .isEqualTo(plain.of(player(" say threes trip let\n")));
  }

  @Test
  void theHandsOfTextsFollowThePlayer() {
    String words = "[right] [left] [Right] [Left] [Kick] [right";
    assertThat(hands(false).in(words)).isEqualTo("right left Right Left [Kick] [right");
    assertThat(hands(true).in(words)).isEqualTo("left right Left Right [Kick] [right");
    assertThat(hands(true).in("right")).isEqualTo("right");
  }

  private static HandWords hands(boolean leftHanded) {
    return new HandWords(leftHanded, () -> Language.EN);
  }
}
