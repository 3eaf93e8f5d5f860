package tabor.groove;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.kit.Limits;
import tabor.rhythm.BeatUnit;
import tabor.rhythm.Time;
import tabor.source.Spot;
import tabor.words.Language;

/**
 * How one student plays a lesson. What is null or empty is as the lesson says.
 *
 * @param name unique among the players of a lesson
 * @param title the student's name as printed; null if none is written
 * @param heading where the player stands; of one written in several files the lesson's own
 * @param kit name of the kit that takes the place of every section's own
 * @param leftHanded true to mirror the player; a kit that is left-handed already stays so
 * @param openHanded true to give the stick's hi-hat to the left hand and deal the rest anew
 * @param speed how fast; null for every tempo as written
 * @param limits what this student can do; null for those of the lesson
 * @param sections which sections, in that order; empty for all of them
 * @param counts whether counts are printed; null for as written, as in the next two
 * @param sticking whether the sticking is printed
 * @param changes whether changes are marked
 * @param wishes layout of this student's page
 * @param prose texts at the head of this student's page, in the order written
 * @param words what this student counts with; null for the words of the lesson
 * @param language of this student's page; null for the language of the lesson
 */
public record Player(
    String name,
    @Nullable String title,
    Spot heading,
    @Nullable String kit,
    boolean leftHanded,
    boolean openHanded,
    @Nullable Speed speed,
    @Nullable Limits limits,
    List<Pick> sections,
    @Nullable Boolean counts,
    @Nullable Boolean sticking,
    @Nullable Boolean changes,
    PageWishes wishes,
    List<String> prose,
    @Nullable CountingWords words,
    @Nullable Language language) {
  /** Copies the lists. */
  public Player {
    sections = List.copyOf(sections);
    prose = List.copyOf(prose);
  }

  /** The title, or the name where there is no title. */
  public String caption() {
    return title == null || title.isBlank() ? name : title;
  }

  /**
   * How fast: a share of every tempo written, ladders too; or one tempo for all sections, which
   * leaves ladders.
   *
   * @param share 1 for as written, 4/5 for 80 %; null where a tempo is set
   * @param perMinute beats per minute; null where a share is set
   * @param unit what is counted; null for the beat of each section's own meter
   */
  public record Speed(@Nullable Time share, @Nullable Time perMinute, @Nullable BeatUnit unit) {
    /** Throws unless exactly one is set. */
    public Speed {
      if ((share == null) == (perMinute == null)) {
        throw new IllegalArgumentException("speed " + share + " " + perMinute);
      }
    }
  }

  /**
   * Some sections one after another: the first so many of the lesson, one by name, or all from one
   * to another. A name that the lesson does not have is passed over, a range that lacks an end too.
   *
   * @param first how many from the first; 0 where sections are named
   * @param from the first or only one; null where they are counted
   * @param to the last one; null for one alone
   */
  public record Pick(int first, @Nullable String from, @Nullable String to) {
    /** Throws unless sections are either counted or named. */
    public Pick {
      if ((first > 0) == (from != null)) {
        throw new IllegalArgumentException("sections first " + first + " from " + from);
      }
    }
  }

  /**
   * This player with what is said of the same one elsewhere: this one wins, texts add up, a side or
   * manner of playing said in one of them holds.
   */
  public Player over(Player other) {
    return new Player(
        name,
        title == null ? other.title : title,
        heading,
        kit == null ? other.kit : kit,
        leftHanded || other.leftHanded,
        openHanded || other.openHanded,
        speed == null ? other.speed : speed,
        limits == null ? other.limits : limits,
        sections.isEmpty() ? other.sections : sections,
        counts == null ? other.counts : counts,
        sticking == null ? other.sticking : sticking,
        changes == null ? other.changes : changes,
        wishes.over(other.wishes),
        java.util.stream.Stream.concat(other.prose.stream(), prose.stream()).toList(),
        words == null ? other.words : words,
        language == null ? other.language : language);
  }
}
