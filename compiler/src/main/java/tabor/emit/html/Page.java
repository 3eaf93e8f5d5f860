package tabor.emit.html;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.words.Language;

/**
 * A lesson's page, before it is written. All texts are raw; drawings are markup.
 *
 * @param title of the lesson
 * @param by who made it; null if nobody is named
 * @param facts meter, tempo, feel and kit in a few words each
 * @param key the note heads in use
 * @param blocks the sections in order
 * @param head for whom the page is: the name, what is other than written, texts; empty for nobody
 *     in particular
 * @param caution the line above the first section; empty to leave it out
 * @param language of its fixed words
 * @param data what the script plays; its parts are those of the blocks
 */
public record Page(
    String title,
    @Nullable String by,
    List<String> facts,
    Pictures.Key key,
    List<Block> blocks,
    List<String> head,
    String caution,
    Language language,
    PlayData data) {
  /** Copies the lists. */
  public Page {
    facts = List.copyOf(facts);
    blocks = List.copyOf(blocks);
    head = List.copyOf(head);
  }

  /** The same with names of its sections that are unique among themselves and in another page. */
  Page namedForPlayers() {
    Map<String, Integer> times = new HashMap<>();
    List<Block> named = new ArrayList<>();
    List<PlayData.Part> parts = new ArrayList<>();
    for (int i = 0; i < blocks.size(); i++) {
      PlayData.Part part = data.parts().get(i);
      int time = times.merge(part.name(), 1, Integer::sum);
      String name = "play-" + part.name() + (time == 1 ? "" : "-" + time);
      parts.add(part.named(name));
      named.add(blocks.get(i).named(name));
    }
    return new Page(
        title,
        by,
        facts,
        key,
        named,
        head,
        caution,
        language,
        new PlayData(data.takes(), data.figures(), parts));
  }

  /** One section of the page. */
  public sealed interface Block {
    /** The same by another name. */
    Block named(String other);
  }

  /**
   * A groove or step.
   *
   * @param part its index among the parts
   * @param number counted among the sections that are no charts, from 1, as on the printed page; of
   *     a variation its sheet's, a point and its own
   * @param name its name in the source, fit for an anchor
   * @param title as written, else the name
   * @param changed what is new, in words; empty for a groove
   * @param facts what differs from the head of the lesson: its own tempo and the like
   * @param prose texts in order
   * @param figure its drawing
   */
  public record Lesson(
      int part,
      String number,
      String name,
      String title,
      List<String> changed,
      List<String> facts,
      List<String> prose,
      Figure figure)
      implements Block {
    /** Copies the lists. */
    public Lesson {
      changed = List.copyOf(changed);
      facts = List.copyOf(facts);
      prose = List.copyOf(prose);
    }

    @Override
    public Lesson named(String other) {
      return new Lesson(part, number, other, title, changed, facts, prose, figure);
    }
  }

  /**
   * A chart.
   *
   * @param part its index among the parts
   * @param name its name in the source, fit for an anchor
   * @param title as written, else the name
   * @param prose texts in order
   * @param others drawings of sections that it plays and that stand nowhere else on the page
   * @param rows what happens, line by line
   */
  public record Practice(
      int part, String name, String title, List<String> prose, List<Figure> others, List<Row> rows)
      implements Block {
    /** Copies the lists. */
    public Practice {
      prose = List.copyOf(prose);
      others = List.copyOf(others);
      rows = List.copyOf(rows);
    }

    @Override
    public Practice named(String other) {
      return new Practice(part, other, title, prose, others, rows);
    }
  }

  /**
   * A drawing.
   *
   * @param number by which the script finds it
   * @param title of what it shows
   * @param score the drawing itself
   * @param bars the same in words, bar by bar
   */
  public record Figure(int number, String title, Pictures.Score score, List<String> bars) {
    /** Copies the list. */
    public Figure {
      bars = List.copyOf(bars);
    }
  }

  /**
   * A line of a chart.
   *
   * @param mark the rehearsal mark that it begins at; empty for none
   * @param titles the sections that are played, as the teacher called them
   * @param words what happens, or what follows the titles
   * @param cue what is called there; empty for nothing
   * @param holds true if the last stroke is held
   * @param rungs where it may be entered; several make a ladder
   */
  public record Row(
      String mark, List<String> titles, String words, String cue, boolean holds, List<Rung> rungs) {
    /** A line without sections. */
    static Row of(String words) {
      return new Row("", List.of(), words, "", false, List.of());
    }

    /** The same where a rehearsal mark and a cue stand. */
    Row at(String otherMark, String otherCue) {
      return new Row(otherMark, titles, words, otherCue, holds, rungs);
    }

    /** The same as what holds the last stroke. */
    Row held() {
      return new Row(mark, titles, words, cue, true, rungs);
    }

    /** Copies the lists. */
    public Row {
      titles = List.copyOf(titles);
      rungs = List.copyOf(rungs);
    }
  }

  /**
   * A place where a chart may be entered.
   *
   * @param first the leg it starts with
   * @param last the last leg that belongs to it
   * @param words the tempo
   * @param count how many times something is played there, 1 or more
   */
  public record Rung(int first, int last, String words, int count) {}
}
