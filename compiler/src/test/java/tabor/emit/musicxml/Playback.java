package tabor.emit.musicxml;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import tabor.rhythm.Time;

/**
 * What a player of MusicXML does with a document, read from the words of the schema of MusicXML 4.0
 * alone: swing makes the second of two eighths or sixteenths late, notes with dots, in tuplets or
 * tied from before excepted; a single tremolo with so many marks divides its note into the value
 * that they and its flags say.
 */
public final class Playback {
  private record Swing(Time share, String type) {}

  private final List<String> strokes = new ArrayList<>();
  private Time bar = Time.ZERO;
  private long divisions = 1;
  private @Nullable Swing swing;
  private boolean everSwings;

  /** The same of a document that the published schema finds valid; fails for any other. */
  static Playback ofValid(byte[] bytes) throws Exception {
    PublishedSchema.check(bytes);
    return of(bytes);
  }

  /** Places from the start of the document and instruments, rolled strokes included. */
  public static Playback of(byte[] bytes) throws Exception {
    Element root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(bytes))
            .getDocumentElement();
    Playback played = new Playback();
    NodeList measures = root.getElementsByTagName("measure");
    int begins = 0;
    for (int i = 0; i < measures.getLength(); i++) {
      Element measure = (Element) measures.item(i);
      played.measure(measure);
      NodeList repeats = measure.getElementsByTagName("repeat");
      for (int r = 0; r < repeats.getLength(); r++) {
        Element repeat = (Element) repeats.item(r);
        if (repeat.getAttribute("direction").equals("forward")) {
          begins = i;
          continue;
        }
        for (int more = Integer.parseInt(repeat.getAttribute("times")); more > 1; more--) {
          for (int again = begins; again <= i; again++) {
            played.measure((Element) measures.item(again));
          }
        }
      }
    }
    return played;
  }

  public List<String> strokes() {
    return strokes;
  }

  boolean everSwings() {
    return everSwings;
  }

  private void measure(Element measure) {
    Time at = Time.ZERO;
    Time chord = Time.ZERO;
    Time longest = Time.ZERO;
    for (Element element : children(measure)) {
      switch (element.getTagName()) {
        case "attributes" -> {
          String text = text(element, "divisions");
          divisions = text == null ? divisions : Long.parseLong(text);
        }
        case "direction" -> swing(element);
        case "backup" -> at = at.minus(duration(element));
        case "note" -> {
          if (child(element, "grace") != null) {
            continue;
          }
          Time length = duration(element);
          if (child(element, "chord") == null) {
            chord = at;
            at = at.plus(length);
          }
          longest = Time.max(longest, at);
          note(element, chord, length);
        }
        default -> {}
      }
    }
    bar = bar.plus(longest);
  }

  private void swing(Element direction) {
    Element found = descendant(direction, "swing");
    if (found == null) {
      return;
    }
    String first = text(found, "first");
    String second = text(found, "second");
    if (first == null || second == null) {
      swing = null;
      return;
    }
    long a = Long.parseLong(first);
    long b = Long.parseLong(second);
    String type = text(found, "swing-type");
    swing = new Swing(Time.of(a, a + b), type == null ? "eighth" : type);
    everSwings = true;
  }

  private void note(Element note, Time at, Time length) {
    boolean held =
        children(note).stream()
            .anyMatch(e -> e.getTagName().equals("tie") && e.getAttribute("type").equals("stop"));
    Element instrument = child(note, "instrument");
    if (instrument == null) {
      return;
    }
    Time start = swung(note, at);
    Time end = swung(note, at.plus(length));
    Element tremolo = descendant(note, "tremolo");
    long count = 1;
    if (tremolo != null && tremolo.getAttribute("type").equals("single")) {
      int flags = flags(String.valueOf(text(note, "type")));
      long marks = Long.parseLong(tremolo.getTextContent());
      Time value = Time.of(1, 4L << (flags + marks));
      Element ratio = child(note, "time-modification");
      if (ratio != null) {
        value =
            value.times(
                Time.of(
                    Long.parseLong(String.valueOf(text(ratio, "normal-notes"))),
                    Long.parseLong(String.valueOf(text(ratio, "actual-notes")))));
      }
      Time number = length.over(value);
      if (!number.isWhole()) {
        throw new AssertionError("a tremolo of " + number + " strokes");
      }
      count = number.num();
    } else if (held) {
      return;
    }
    for (long i = 0; i < count; i++) {
      Time place = start.plus(end.minus(start).times(i).over(count));
      strokes.add(bar.plus(place) + " " + instrument.getAttribute("id"));
    }
  }

  private Time swung(Element note, Time at) {
    Swing now = swing;
    if (now == null
        || !now.type().equals(text(note, "type"))
        || child(note, "dot") != null
        || child(note, "time-modification") != null) {
      return at;
    }
    Time unit = Time.of(1, now.type().equals("eighth") ? 8 : 16);
    Time pair = unit.times(2);
    return at.mod(pair).equals(unit) ? at.minus(unit).plus(pair.times(now.share())) : at;
  }

  private static int flags(String type) {
    return switch (type) {
      case "eighth" -> 1;
      case "16th" -> 2;
      case "32nd" -> 3;
      case "64th" -> 4;
      case "128th" -> 5;
      case "256th" -> 6;
      default -> 0;
    };
  }

  private Time duration(Element element) {
    return Time.of(Long.parseLong(String.valueOf(text(element, "duration"))), divisions * 4);
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

  private static @Nullable Element child(Element of, String name) {
    return children(of).stream().filter(e -> e.getTagName().equals(name)).findFirst().orElse(null);
  }

  private static @Nullable Element descendant(Element of, String name) {
    NodeList found = of.getElementsByTagName(name);
    return found.getLength() == 0 ? null : (Element) found.item(0);
  }

  private static @Nullable String text(Element of, String name) {
    Element found = child(of, name);
    return found == null ? null : found.getTextContent();
  }
}
