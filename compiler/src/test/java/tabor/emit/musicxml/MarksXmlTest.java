package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.rhythm.Time;

/**
 * Where signs stand in a MusicXML file, by the words of its schema (MusicXML 4.0): a direction
 * stands where the note after it starts, later by its offset in divisions.
 */
class MarksXmlTest {
  private static byte[] bytes(String text) {
    Lesson lesson =
        new Compiler(Loader.NONE).compile(Path.of("a.tabor"), text, Options.NONE).lesson();
    byte[] bytes = MusicXml.bytes(lesson, section -> true);
    PublishedSchema.check(bytes);
    return bytes;
  }

  private static String text(String text) {
    return new String(bytes(text), StandardCharsets.UTF_8);
  }

  private static Element root(String text) {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new ByteArrayInputStream(bytes(text)))
          .getDocumentElement();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  /** Dynamics, hairpins and hold signs with measure and place in whole notes. */
  private static List<String> signs(String text) {
    List<String> found = new ArrayList<>();
    NodeList measures = root(text).getElementsByTagName("measure");
    long divisions = 1;
    for (int i = 0; i < measures.getLength(); i++) {
      Time at = Time.ZERO;
      Time chord = Time.ZERO;
      for (Element element : children((Element) measures.item(i))) {
        Long own = number(element, "divisions");
        divisions = own == null ? divisions : own;
        Long length = number(element, "duration");
        Time duration = length == null ? Time.ZERO : Time.of(length, 4 * divisions);
        String place = i + 1 + ":";
        switch (element.getTagName()) {
          case "backup" -> at = at.minus(duration);
          case "note" -> {
            boolean within = first(element, "chord") != null;
            chord = within ? chord : at;
            if (first(element, "fermata") != null) {
              Element instrument = first(element, "instrument");
              found.add(place + chord + " hold " + (instrument == null ? "rest" : id(instrument)));
            }
            at = within ? at : at.plus(duration);
          }
          case "direction" -> {
            Long offset = number(element, "offset");
            Time where = offset == null ? at : at.plus(Time.of(offset, 4 * divisions));
            Element kind = children(children(element).get(0)).get(0);
            if (kind.getTagName().equals("dynamics")) {
              found.add(place + where + " " + children(kind).get(0).getTagName());
            } else if (kind.getTagName().equals("wedge")) {
              found.add(
                  place
                      + where
                      + " "
                      + kind.getAttribute("type")
                      + " "
                      + kind.getAttribute("number"));
            }
          }
          default -> {}
        }
      }
    }
    return found;
  }

  private static String id(Element instrument) {
    return instrument.getAttribute("id").substring("P1-".length());
  }

  private static @Nullable Element first(Element of, String name) {
    return (Element) of.getElementsByTagName(name).item(0);
  }

  private static @Nullable Long number(Element of, String name) {
    Element found = first(of, name);
    return found == null ? null : Long.valueOf(found.getTextContent());
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

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "dynamic p; 1:0 p",
        // In the middle of a quarter.
        "dynamic ff at 1&; 1:1/8 ff",
        "dynamic mp at 4a; 1:15/16 mp",
        "dynamic mf in bar 2; 2:0 mf",
        "dynamic p/ dynamic f at 3 in bar 2; 1:0 p, 2:1/2 f",
        // A hairpin ends on its dynamic.
        "crescendo to f from 1& to 3&; 1:1/8 crescendo 1, 1:5/8 stop 1, 1:5/8 f",
        "crescendo to ff from 3 in bar 1 to 1 in bar 2; 1:1/2 crescendo 1, 2:0 stop 1, 2:0 ff",
        "diminuendo to pp from 1 in bar 2 to 4 in bar 2; 2:0 diminuendo 1, 2:3/4 stop 1, 2:3/4 pp",
        // A dynamic that is written there says it already, one elsewhere does not.
        "crescendo to f from 1 to 3/ dynamic ff at 3; 1:0 crescendo 1, 1:1/2 stop 1, 1:1/2 ff",
        "crescendo to f from 1 to 3/ dynamic p at 3 in bar 2;"
            + " 1:0 crescendo 1, 1:1/2 stop 1, 1:1/2 f, 2:1/2 p",
        "crescendo to f from 1 to 3/ dynamic p at 4;"
            + " 1:0 crescendo 1, 1:1/2 stop 1, 1:1/2 f, 1:3/4 p",
        // One ends, its dynamic stands, the next begins.
        "crescendo to f from 1 to 3/ diminuendo to p from 3 to 4;"
            + " 1:0 crescendo 1, 1:1/2 stop 1, 1:1/2 f, 1:1/2 diminuendo 2, 1:3/4 stop 2, 1:3/4 p",
      })
  void dynamicsAndHairpinsStandWhereTheyAreCounted(String lines, String signs) {
    String text = "groove g\n kick : x x x x | x x x x\n " + lines.replace("/ ", "\n ") + "\n";
    assertThat(String.join(", ", signs(text))).isEqualTo(signs);
    String finer =
        "groove g\n right : h h h h | h h h h\n kick : xx xxxx xxxxx . | xx x x x\n "
            + lines.replace("/ ", "\n ")
            + "\n";
    assertThat(String.join(", ", signs(finer))).as("whatever is played").isEqualTo(signs);
  }

  /** Nothing else there is so fine. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "dynamic p at 2a; 1:7/16 p",
        "crescendo to f from 1e to 3; 1:1/16 crescendo 1, 1:1/2 stop 1, 1:1/2 f",
        "crescendo to f from 1 to 3&; 1:0 crescendo 1, 1:5/8 stop 1, 1:5/8 f",
      })
  void oneBarOfQuarters(String line, String signs) {
    assertThat(String.join(", ", signs("groove g\n kick : x x x x\n " + line + "\n")))
        .isEqualTo(signs);
  }

  @Test
  void inAPickupTheyStandInTheShortMeasure() {
    String text = "groove g\n pickup 2 beats\n kick : x x | x x x x\n ";
    assertThat(signs(text + "dynamic p in bar 0\n")).containsExactly("1:0 p");
    assertThat(signs(text + "dynamic p at 4 in bar 0\n")).containsExactly("1:1/4 p");
    assertThat(signs(text + "dynamic p\n")).containsExactly("2:0 p");
  }

  /** The schema numbers wedges from 1 to 16; we use six. */
  @Test
  void hairpinsTakeTurnsWithSixNumbers() {
    StringBuilder text = new StringBuilder("groove g\n");
    text.append(" bars 7\n ostinato kick : x x x x\n");
    for (int bar = 1; bar <= 7; bar++) {
      text.append(" crescendo to f from 1 in bar ").append(bar).append(" to 3\n");
    }
    assertThat(XmlMatches.all("type=\"crescendo\" number=\"(\\d+)\"", text(text.toString())))
        .containsExactly("1", "2", "3", "4", "5", "6", "1");
    assertThat(XmlMatches.all("type=\"stop\" number=\"(\\d+)\"", text(text.toString())))
        .containsExactly("1", "2", "3", "4", "5", "6", "1");
  }

  /** The hands before the feet, the latest of all, and one sign where several strike. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "right : h h h h/ kick : x . . x; 1:3/4 hold hihat",
        "right : h . . ./ kick : x . x .; 1:1/2 hold kick",
        "right : h h . h/ kick : x . x .; 1:3/4 hold hihat",
        "kick : x . x .; 1:1/2 hold kick",
        "snare : r . . . | . . . .; 1:0 hold snare",
        "snare : r . . . | . r . .; 2:1/4 hold snare",
        "hands : . 'r . .; 1:1/4 hold snare",
        "right : s . h ./ left : . . t .; 1:1/2 hold tom1",
      })
  void theHoldSignStandsOnTheLastStroke(String lines, String sign) {
    String text =
        "groove g\n " + lines.replace("/ ", "\n ") + "\nchart c\n play g\n hold 4 beats\n";
    Lesson lesson =
        new Compiler(Loader.NONE).compile(Path.of("a.tabor"), text, Options.NONE).lesson();
    assertThat(lesson.charts()).hasSize(1);
    List<String> signs = signs(text);
    assertThat(signs).hasSize(1);
    // The groove itself stands before the chart.
    int bars = text.contains("|") ? 2 : 1;
    assertThat(signs.get(0)).isEqualTo(sign.charAt(0) - '0' + bars + sign.substring(1));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "tempo 92; quarter; no; 92; 92",
        "tempo 92.5; quarter; no; 92.5; 92.5",
        "tempo half = 60; half; no; 60; 120",
        "tempo eighth = 180; eighth; no; 180; 90",
        "tempo sixteenth = 200; 16th; no; 200; 50",
        "tempo dotted-quarter = 60; quarter; dot; 60; 90",
        "tempo dotted-half = 40; half; dot; 40; 120",
        "tempo dotted-eighth = 80; eighth; dot; 80; 60",
        "tempo dotted-sixteenth = 80; 16th; dot; 80; 30",
      })
  void aTempoIsMarkedInItsOwnValueAndPlayedInQuarters(
      String line, String unit, String dot, String perMinute, String quarters) {
    String text = text(line + "\ngroove g\n kick : x x x x\n");
    assertThat(XmlMatches.all("<beat-unit>([^<]*)<", text)).containsExactly(unit);
    assertThat(text.contains("<beat-unit-dot/>")).isEqualTo(dot.equals("dot"));
    assertThat(XmlMatches.all("<per-minute>([^<]*)<", text)).containsExactly(perMinute);
    assertThat(XmlMatches.all("<sound tempo=\"([^\"]*)\"", text)).containsExactly(quarters);
  }

  /** The hands' letters stand in the first line below, the feet's in the next. */
  @Test
  void stickingsOfHandsAndFeetHaveTheirOwnLines() {
    String text = text("groove g\n hands : r l r l\n left foot : k . k .\n");
    String lyric = "<lyric number=\"(\\d)\" name=\"sticking\"";
    int feet = text.indexOf("<backup>");
    assertThat(XmlMatches.all(lyric, text.substring(0, feet))).containsExactly("1", "1", "1", "1");
    assertThat(XmlMatches.all(lyric, text.substring(feet))).containsExactly("2", "2");
    assertThat(XmlMatches.all("<lyric number=\"(\\d)\" name=\"count\"", text)).containsOnly("3");
  }

  @Test
  void whatAStepChangedIsInItalicsAndItsTextIsNot() {
    String text =
        text("groove g\n kick : x . . .\nstep s \"More\"\n add kick at 3\n text \"Evenly\"\n");
    assertThat(XmlMatches.all("<rehearsal>([^<]*)<", text)).containsExactly("g", "More");
    assertThat(XmlMatches.all("<words font-style=\"italic\">([^<]*)<", text))
        .singleElement()
        .asString()
        .contains("kick");
    assertThat(XmlMatches.all("<words>([^<]*)<", text)).containsExactly("Evenly");
  }

  /** The names of two kits need not mean one sound. */
  @Test
  void soundsOfOneNameAndTwoKeysAreTwoInstruments() {
    String text =
        text(
            "kit low like five-piece\n surface gong key 52\n"
                + "kit high like five-piece\n surface gong key 57\n"
                + "groove a\n on low\n gong : x . . .\ngroove b\n on high\n gong : x . . .\n");
    assertThat(XmlMatches.all("<score-instrument id=\"([^\"]*)\"", text))
        .containsExactly("P1-gong", "P1-gong-57");
    assertThat(XmlMatches.all("<midi-unpitched>(\\d+)<", text))
        .as("keys from 1")
        .containsExactly("53", "58");
    assertThat(XmlMatches.all("<instrument id=\"([^\"]*)\"", text))
        .containsExactly("P1-gong", "P1-gong-57");
  }
}
