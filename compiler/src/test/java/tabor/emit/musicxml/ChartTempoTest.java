package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Chart;
import tabor.groove.Lesson;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.resolve.Options;
import tabor.rhythm.Time;

/**
 * When a reader of the file plays each stroke of a chart, by the words of the schema of MusicXML
 * 4.0 on {@code sound tempo} (quarters a minute from its place on, shifted by its offset), against
 * when Tabor plays it.
 */
class ChartTempoTest {
  private static final String SECTIONS =
      """
      tempo 92
      groove beat
        hihat : xx xx xx xx
        kick  : x  .  x  .
      groove bare
        kick : x . . .
      groove run
        pickup 1 beat
        snare : xxxx | x . . .
      groove six
        time 6/8
        kick : x . | . x
      groove seven
        time 7/8 in 2+2+3
        kick : x . ... | . . x..
      groove long
        time 6/8
        kick : x -
      groove fine
        time 6/8
        snare : ONE:2 | TWO:2
      groove thirds
        snare : xxx:2 xxx:2 | x . . .
      chart c
        tempo 92
        count-in 1 bar
      """;

  /** Beats of quarters unless the line says otherwise: dotted meters count their own beat. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "play beat 4 times",
        "tempo 92 to 60 over 4 bars; play beat 6 times",
        "tempo 60 to 92 over 3 bars; play beat bare 3 times",
        "play beat 2 times; tempo 92 to 61 over 3 bars; play beat 8 times; play bare",
        "tempo 92 to 60 over 2 bars; rest 2 bars; play beat 3 times",
        "tempo 92 to 60 over 2 bars; play run 3 times; play beat 2 times",
        "tempo 92 to 60 over 4 bars; play beat 1 time; play beat 2 times at tempo 100; play beat",
        "tempo 92 to 60 over 3 bars; play six 3 times",
        "tempo 92 to 60 over 3 bars; play seven 3 times; play beat 2 times",
        "tempo 92 to 60 over 3 bars; play thirds 3 times",
        "tempo 92 to 60 over 3 bars; play long 3 times; play six",
        // Too fine for one number of divisions.
        "tempo 92 to 60 over 3 bars; play fine 3 times",
        "tempo 92 to 60 over 3 bars; trade beat 1 bar 3 times; play beat 2 times",
        "tempo 92 to 60 over 4 bars; play beat 5 bars fill bare",
        "tempo 92 to 60 over 2 bars; play beat 2 times; count-in 1 bar; play beat",
        "tempo 92 to 60 over 2 bars; play beat 2 times; tempo 60 to 92 over 2 bars; play beat 4"
            + " times",
        "tempo 92 to 60 over 4 bars; play beat 2 times; count-in 1 bar; play beat 4 times",
        "play beat; count-in 2 bars; tempo 92 to 60 over 2 bars; play beat 4 times",
        "click 1 bar on 1 off; tempo 92 to 60 over 2 bars; play beat 5 times",
      })
  void theFilePlaysWhatTaborPlays(String lines) throws Exception {
    Lesson lesson =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"),
                SECTIONS.replace("ONE", "x".repeat(127)).replace("TWO", "x".repeat(131))
                    + "  "
                    + lines.replace("; ", "\n  ")
                    + "\n",
                Options.NONE)
            .lesson();
    Performance performance = Performer.chart(lesson.charts().get(0));
    TreeSet<Long> expected = new TreeSet<>();
    for (Sound sound : performance.sounds()) {
      if (sound.surface() != null) {
        expected.add(performance.micros(sound.start()));
      }
    }
    byte[] bytes = MusicXml.bytes(lesson, Chart.class::isInstance);
    PublishedSchema.check(bytes);
    List<Double> played = new Reader().read(bytes);
    assertThat(played).as(new String(bytes, StandardCharsets.UTF_8)).hasSameSizeAs(expected);
    int i = 0;
    for (long micros : expected) {
      // The file has two digits after the point.
      assertThat(played.get(i)).as("stroke %d", i).isCloseTo(micros / 1e6, within(0.005));
      i++;
    }
  }

  /** A tempo that is marked is not said again beside it, nor one that stays as it is. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "tempo 92 to 60 over 2 bars/ play beat 4 times; 92, 88, 84, 80, 76, 72, 68, 64, 60",
        "tempo 92 to 92 over 2 bars/ play beat 4 times; 92",
        "play beat/ tempo 92 to 84 over 2 bars/ play beat 4 times;"
            + " 92, 91, 90, 89, 88, 87, 86, 85, 84",
      })
  void eachTempoIsSaidOnce(String lines, String tempi) {
    Lesson lesson =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"),
                SECTIONS.replace("count-in 1 bar", "text \"\"")
                    + "  "
                    + lines.replace("/ ", "\n  ")
                    + "\n",
                Options.NONE)
            .lesson();
    String text =
        new String(MusicXml.bytes(lesson, Chart.class::isInstance), StandardCharsets.UTF_8);
    List<String> found = new ArrayList<>();
    Matcher matcher = Pattern.compile("<sound tempo=\"([^\"]*)\"").matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    assertThat(String.join(", ", found)).isEqualTo(tempi);
    assertThat(text).doesNotContain("<offset>0<");
  }

  /** What a player does with repeats, tempi and notes, in seconds. */
  private static final class Reader {
    private final TreeSet<Double> onsets = new TreeSet<>();
    private double now;
    private double quarters = 120;
    private long divisions = 1;

    List<Double> read(byte[] bytes) throws Exception {
      NodeList measures =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new ByteArrayInputStream(bytes))
              .getElementsByTagName("measure");
      int begins = 0;
      for (int i = 0; i < measures.getLength(); i++) {
        Element measure = (Element) measures.item(i);
        measure(measure);
        NodeList repeats = measure.getElementsByTagName("repeat");
        for (int r = 0; r < repeats.getLength(); r++) {
          Element repeat = (Element) repeats.item(r);
          if (repeat.getAttribute("direction").equals("forward")) {
            begins = i;
            continue;
          }
          for (int more = Integer.parseInt(repeat.getAttribute("times")); more > 1; more--) {
            for (int again = begins; again <= i; again++) {
              measure((Element) measures.item(again));
            }
          }
        }
      }
      List<Double> far = new ArrayList<>();
      for (double onset : onsets) {
        // Places that were added up in another order are one place.
        if (far.isEmpty() || onset - far.get(far.size() - 1) > 1e-6) {
          far.add(onset);
        }
      }
      return far;
    }

    private void measure(Element measure) {
      Map<Time, Double> tempi = new TreeMap<>();
      TreeSet<Time> places = new TreeSet<>();
      Time at = Time.ZERO;
      Time end = Time.ZERO;
      for (Element element : children(measure)) {
        switch (element.getTagName()) {
          case "attributes" -> {
            NodeList own = element.getElementsByTagName("divisions");
            divisions = own.getLength() == 0 ? divisions : number(own.item(0));
          }
          case "direction" -> {
            for (Element child : children(element)) {
              if (child.getTagName().equals("sound") && !child.getAttribute("tempo").isEmpty()) {
                tempi.put(at, Double.valueOf(child.getAttribute("tempo")));
              }
            }
          }
          case "sound" -> {
            NodeList offset = element.getElementsByTagName("offset");
            Time from = offset.getLength() == 0 ? at : at.plus(length(offset.item(0)));
            tempi.put(from, Double.valueOf(element.getAttribute("tempo")));
          }
          case "backup" -> at = at.minus(duration(element));
          case "note" -> {
            if (element.getElementsByTagName("grace").getLength() == 0
                && element.getElementsByTagName("chord").getLength() == 0) {
              if (element.getElementsByTagName("instrument").getLength() > 0) {
                places.add(at);
              }
              at = at.plus(duration(element));
              end = Time.max(end, at);
            }
          }
          default -> {}
        }
      }
      Time last = Time.ZERO;
      TreeSet<Time> all = new TreeSet<>(places);
      all.addAll(tempi.keySet());
      all.add(end);
      for (Time next : all) {
        now += seconds(next.minus(last));
        last = next;
        if (places.contains(next)) {
          onsets.add(now);
        }
        quarters = tempi.getOrDefault(next, quarters);
      }
    }

    private double seconds(Time length) {
      return 4.0 * length.num() / length.den() * 60 / quarters;
    }

    private Time duration(Element element) {
      return length(element.getElementsByTagName("duration").item(0));
    }

    private Time length(Node node) {
      return Time.of(number(node), divisions * 4);
    }

    private static long number(Node node) {
      return Long.parseLong(node.getTextContent());
    }

    private static List<Element> children(Element of) {
      List<Element> found = new ArrayList<>();
      for (Node node = of.getFirstChild(); node != null; node = node.getNextSibling()) {
        if (node instanceof Element element) {
          found.add(element);
        }
      }
      return found;
    }
  }
}
