package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.audiveris.proxymusic.Barline;
import org.audiveris.proxymusic.ScorePartwise.Part.Measure;
import org.junit.jupiter.api.Test;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Loudness;
import tabor.groove.PageNotes;
import tabor.groove.Section;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Goldens;
import tabor.testing.Sketch;

class MusicXmlTest {
  /** A bit of everything: nested tuplets, grace notes, rolls over a barline, signs, a hairpin. */
  private static Groove signs() {
    return Sketch.groove("signs")
        .title("Every sign <once> & \"quoted\" \u0007")
        .prose("Low taps,\ntall accents.")
        .pickup(1)
        .part(RIGHT_HAND, "snare", ". | 'X.x. x{xxx}x x x~ | - ''gx '''x x//")
        .part(LEFT_HAND, "hihat.open", ".x | . . . . | . . . .")
        .part(RIGHT_FOOT, "kick", ". | x . . x | . . . .")
        .mark(1, Time.ZERO, Loudness.P)
        .hairpin(new Loudness.Hairpin(true, 1, Time.of(1, 4), 2, Time.of(3, 8), Loudness.F))
        .done();
  }

  private static Groove six() {
    return Sketch.groove("six")
        .meter(Meter.of(6, 8))
        .part(RIGHT_HAND, "ride.bell", "xxx xx")
        .part(LEFT_HAND, "crash", "x! .")
        .part(LEFT_FOOT, "hihat.foot", ". x")
        .done();
  }

  private static Lesson lesson(Section... sections) {
    return new Lesson(
        "lesson", "Saturday <class>", "The hall & co", six().setting(), List.of(sections));
  }

  private static String text(Section... sections) {
    byte[] bytes = MusicXml.bytes(lesson(sections), s -> true);
    PublishedSchema.check(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private static ReadBack read(Section... sections) {
    return ReadBack.of(MusicXml.bytes(lesson(sections), s -> true));
  }

  @Test
  void everySign() {
    Goldens.check("tabor/emit/musicxml/signs.musicxml", text(signs()));
  }

  /** A long part is written in pieces: every measure stands once and in order. */
  @Test
  void measuresOfALongPart() {
    Groove six = six();
    Groove[] many = new Groove[300];
    Arrays.fill(many, six);
    ReadBack read = read(many);
    List<Measure> measures = read.score().getPart().get(0).getMeasure();
    assertThat(measures)
        .extracting(Measure::getNumber)
        .isEqualTo(IntStream.rangeClosed(1, 300).mapToObj(Integer::toString).toList());
    assertThat(read.measures())
        .extracting(ReadBack.Read::onsets)
        .containsOnly(read(six).measures().get(0).onsets());
  }

  /** Hands and feet of a line: voice 1, stems up, and no other voice. */
  @Test
  void aLineIsOneVoice() {
    Sketch sketch =
        Sketch.groove("a")
            .part(RIGHT_HAND, "snare", "x. x. x x")
            .part(RIGHT_FOOT, "kick", ".x .x . .");
    String two = text(sketch.done());
    String text = text(sketch.inLine().done());
    assertThat(text).doesNotContain("<voice>2", "<stem>down", "<backup>");
    assertThat(text.split("<stem>up", -1)).hasSize(1 + 6);
    assertThat(two).contains("<voice>2", "<stem>down", "<backup>");
  }

  @Test
  void chartsAreWrittenWithRepeats() {
    Groove six = six();
    Chart chart =
        new Chart(
            "practice",
            "Practice",
            six.heading(),
            List.of(
                new Chart.CountIn(1, six, six.setting().tempo()),
                new Chart.Play(
                    List.of(new Chart.Turn(six, six.setting().tempo(), Feel.STRAIGHT)), 4),
                new Chart.Rest(2, six, six.setting().tempo()),
                new Chart.Climb(
                    six,
                    List.of(
                        six.setting().tempo().at(Time.of(50)),
                        six.setting().tempo().at(Time.of(105, 2))),
                    Feel.STRAIGHT,
                    Time.of(5, 2),
                    3,
                    Chart.Every.TIMES,
                    null,
                    Chart.Extras.NONE)),
            List.of(),
            PageNotes.NONE);
    String text = text(chart);
    Goldens.check("tabor/emit/musicxml/chart.musicxml", text);
    List<Measure> measures =
        ReadBack.of(text.getBytes(StandardCharsets.UTF_8)).score().getPart().get(0).getMeasure();
    assertThat(measures.stream().map(MusicXmlTest::times)).containsExactly(0L, 4L, 0L, 0L, 3L, 3L);
  }

  private static long times(Measure measure) {
    return measure.getNoteOrBackupOrForward().stream()
        .filter(element -> element instanceof Barline)
        .map(element -> ((Barline) element).getRepeat())
        .filter(repeat -> repeat != null && repeat.getTimes() != null)
        .mapToLong(repeat -> repeat.getTimes().longValue())
        .sum();
  }

  @Test
  void aPickupOutsideTheRepeatIsPlayedOnce() {
    Groove signs = signs();
    Chart chart =
        new Chart(
            "c",
            null,
            signs.heading(),
            List.of(
                new Chart.Play(
                    List.of(new Chart.Turn(signs, signs.setting().tempo(), Feel.STRAIGHT)), 4)),
            List.of(),
            PageNotes.NONE);
    List<ReadBack.Read> measures = read(chart).measures();
    assertThat(measures.stream().map(ReadBack.Read::number)).containsExactly("null", "1", "2");
    String text = text(chart);
    assertThat(text.indexOf("direction=\"forward\""))
        .isGreaterThan(text.indexOf("<measure number=\"2\""));
  }

  @Test
  void aChartTooLongToWriteSaysSo() {
    Groove six = six();
    Chart chart =
        new Chart(
            "c",
            null,
            six.heading(),
            List.of(new Chart.Rest(1025, six, six.setting().tempo())),
            List.of(),
            PageNotes.NONE);
    assertThat(read(chart).measures()).hasSize(1);
    assertThat(text(chart)).contains("too long to be written out");
  }

  @Test
  void anEmptyLessonIsOneBarOfRest() {
    assertThat(read().measures()).hasSize(1);
    assertThat(read().measures().get(0).length()).isEqualTo(Time.ONE);
  }

  @Test
  void whatXmlCannotHoldIsShown() {
    assertThat(XmlCharacters.of("a\u0007b\u007fc\u0085d\ufffee\ud800f\r\ng"))
        .isEqualTo("a\u2407b\u2421c\ufffdd\ufffde\ufffdf\ng");
  }

  @Test
  void tempoIsToldInQuarters() {
    assertThat(text(six()))
        .contains("<beat-unit>quarter</beat-unit>", "<beat-unit-dot", "tempo=\"135\"");
  }

  @Test
  void unequalBeatsAreASum() {
    Meter seven = new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8)));
    Groove groove = Sketch.groove("g").meter(seven).part(RIGHT_HAND, "ride", "xx xx xxx").done();
    assertThat(text(groove)).contains("<beats>2+2+3</beats>", "<beat-type>8</beat-type>");
    assertThat(text(six())).contains("<beats>6</beats>");
    Meter five = new Meter(5, 4, Meter.of(5, 4).beats(), List.of(3, 2));
    Groove grouped = Sketch.groove("g").meter(five).part(RIGHT_HAND, "ride", "x x x x x").done();
    assertThat(text(grouped)).contains("<beats>3+2</beats>", "<beat-type>4</beat-type>");
  }

  @Test
  void swingIsToldInSmallestNumbers() {
    Groove swung =
        Sketch.groove("swung")
            .feel(new Feel(Feel.Unit.EIGHTHS, Time.of(62, 100)))
            .part(RIGHT_HAND, "ride", "xx xx xx xx")
            .done();
    assertThat(text(swung, six()))
        .contains("<first>31</first>", "<second>19</second>", "<swing-type>eighth</swing-type>")
        .contains("swing eighths 62%")
        // the section after it plays straight again
        .contains("<straight/>");
  }

  @Test
  void repeatedBarsStartAndStop() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "x x x x | x x x x | xx x x x")
            .repeats(2)
            .done();
    String text = text(groove);
    assertThat(text)
        .containsSubsequence(
            "<measure number=\"2\" text=\"2\">",
            "<measure-repeat type=\"start\">1</measure-repeat>",
            "<measure number=\"3\" text=\"3\">",
            "<measure-repeat type=\"stop\">");
    assertThat(read(groove).measures().get(1).onsets()).hasSize(4);
  }

  @Test
  void hairpinsOpenAndCloseAndEndOnTheirDynamic() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "x x x x | x x x x")
            .mark(1, Time.ZERO, Loudness.P)
            .hairpin(new Loudness.Hairpin(true, 1, Time.of(1, 4), 1, Time.of(3, 4), Loudness.FF))
            .hairpin(new Loudness.Hairpin(false, 1, Time.of(3, 4), 2, Time.of(1, 2), Loudness.PP))
            .done();
    String text = text(groove);
    assertThat(text)
        .containsSubsequence(
            "<p/>",
            "<wedge type=\"crescendo\" number=\"1\"/>",
            "<wedge type=\"stop\" number=\"1\"/>",
            "<ff/>",
            "<wedge type=\"diminuendo\" number=\"2\"/>",
            "<wedge type=\"stop\" number=\"2\"/>",
            "<pp/>");
    assertThat(text.split("<wedge ", -1)).hasSize(5);
  }

  @Test
  void measuresAreNumberedThroughAndShowTheirOwnNumbers() {
    String text = text(signs(), six());
    assertThat(text)
        .containsSubsequence(
            "<measure number=\"1\" implicit=\"yes\">",
            "<measure number=\"2\" text=\"1\">",
            "<measure number=\"3\" text=\"2\">",
            "<measure number=\"4\" text=\"1\">");
  }

  @Test
  void linesOfLyricsAreNumberedWithoutGaps() {
    assertThat(text(signs())).contains("<lyric number=\"2\" name=\"count\"");
    Groove feet =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "x . . .")
            .part(LEFT_FOOT, "kick", ". x . .")
            .done();
    assertThat(text(feet))
        .contains(
            "<lyric number=\"1\" name=\"sticking\"",
            "<lyric number=\"2\" name=\"sticking\"",
            "<lyric number=\"3\" name=\"count\"");
  }

  private static Chart.Play four(Groove groove) {
    return new Chart.Play(
        List.of(new Chart.Turn(groove, groove.setting().tempo(), Feel.STRAIGHT)), 4);
  }

  @Test
  void countInAndClickStandOutsideTheRepeat() {
    Groove signs = signs();
    Chart counted =
        Sketch.chart(
            new Chart.CountIn(2, signs, signs.setting().tempo()),
            new Chart.SetClick(Chart.Click.EIGHTHS),
            four(signs));
    assertThat(text(counted))
        .containsSubsequence(
            "Count in 2 bars", "click on eighths", "<rest ", "direction=\"forward\"")
        .containsOnlyOnce("click on eighths");
    List<ReadBack.Read> measures = read(counted).measures();
    // The count-in leaves the last beat to the pickup.
    assertThat(measures.stream().map(ReadBack.Read::length))
        .startsWith(Time.ONE, Time.of(3, 4), Time.of(1, 4), Time.ONE);
    Chart bare = Sketch.chart(new Chart.SetClick(Chart.Click.ON), four(six()));
    assertThat(text(bare))
        .containsSubsequence("click on", "</measure>", "direction=\"forward\"", "times=\"3\"")
        .containsOnlyOnce("click on");
  }

  @Test
  void graceNotesHaveTheirSlashAndTheirHands() {
    String text = text(signs());
    assertThat(text).doesNotContain("slash=\"no\"");
    assertThat(text.split("<grace ", -1)).hasSize(1 + 1 + 2 + 3);
    assertThat(text.substring(text.lastIndexOf("<grace ")))
        .as("the last of the ruff is the left hand's")
        .containsSubsequence("<text>l</text>", "<text>R</text>");
  }

  @Test
  void whoMadeItIsNoComposer() {
    assertThat(text(six())).contains("<creator type=\"author\">The hall &amp; co</creator>");
  }

  @Test
  void surfacesOfOneKeyAreDifferentInstruments() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "hihat.open", "x . . .")
            .part(LEFT_HAND, "hihat.half", ". x . .")
            .done();
    assertThat(read(groove).measures().get(0).onsets())
        .containsExactly("0 P1-hihat.open", "1/4 P1-hihat.half");
  }

  @Test
  void placesTooFineForOneNumberOfDivisionsHaveTheirOwn() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "x".repeat(1001) + " x".repeat(3) + " | x x x x")
            .part(LEFT_HAND, "floor", ". . . . | . xxx . " + "x".repeat(1003))
            .done();
    List<ReadBack.Read> measures = read(groove).measures();
    assertThat(measures.get(0).onsets()).hasSize(1004).contains("1/4004 P1-snare");
    assertThat(measures.get(1).onsets()).hasSize(4 + 3 + 1003).contains("1/3 P1-floor");
  }
}
