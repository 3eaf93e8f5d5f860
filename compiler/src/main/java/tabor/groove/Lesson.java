package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.words.Language;

/**
 * A file, finished.
 *
 * @param file the source's name without its ending
 * @param title as written, else the file's name
 * @param by as written; null if nobody is named
 * @param setting what the header says: what sections start from
 * @param sections in the order of the file; sections with errors are missing
 * @param extras what the header says for the printed page, and the players
 */
public record Lesson(
    String file,
    String title,
    @Nullable String by,
    Groove.Setting setting,
    List<Section> sections,
    Extras extras) {
  /**
   * What the header says for the printed page, and the players.
   *
   * @param wishes layout of the page
   * @param goals of the whole lesson, in the order written
   * @param teacher texts for the teacher alone: printed with {@code --teacher} only, in no other
   *     output, hidden or not
   * @param log the table at the end; null for none
   * @param words what is counted aloud
   * @param language of the fixed words; null where the header says nothing
   * @param players in the order of the files in use, then of the lesson; one for each name
   * @param head what stands at the head of a student's page: the name, then texts; empty for nobody
   *     in particular
   * @param numbers of the sections in the whole lesson, where this is a part of one; null for a
   *     whole one
   */
  public record Extras(
      PageWishes wishes,
      List<String> goals,
      List<String> teacher,
      @Nullable PracticeLog log,
      CountingWords words,
      @Nullable Language language,
      List<Player> players,
      List<String> head,
      @Nullable SectionNumbers numbers) {
    /** Nothing is said. */
    public static final Extras NONE =
        new Extras(
            PageWishes.NONE,
            List.of(),
            List.of(),
            null,
            CountingWords.OURS,
            null,
            List.of(),
            List.of(),
            null);

    /** The same with other lines at the head of the page. */
    public Extras withHead(List<String> lines) {
      return new Extras(wishes, goals, teacher, log, words, language, players, lines, numbers);
    }

    private Extras withNumbers(SectionNumbers all) {
      return new Extras(wishes, goals, teacher, log, words, language, players, head, all);
    }

    /** Copies the lists. */
    public Extras {
      head = List.copyOf(head);
      goals = List.copyOf(goals);
      teacher = List.copyOf(teacher);
      players = List.copyOf(players);
    }
  }

  /** A lesson whose header says nothing for the page, and without players. */
  public Lesson(
      String file,
      String title,
      @Nullable String by,
      Groove.Setting setting,
      List<Section> sections) {
    this(file, title, by, setting, sections, Extras.NONE);
  }

  /** The same with other sections. */
  public Lesson with(List<? extends Section> others) {
    return new Lesson(file, title, by, setting, List.copyOf(others), extras);
  }

  /** Some of its sections, which keep the numbers that they have in the whole lesson. */
  public Lesson only(List<? extends Section> some) {
    return with(some).with(extras.withNumbers(numbers()));
  }

  /** What stands before the titles of its sections. */
  public SectionNumbers numbers() {
    SectionNumbers whole = extras.numbers();
    return whole == null ? SectionNumbers.of(sections) : whole;
  }

  /** The same with a file and a title of another name. */
  public Lesson named(String otherFile, String otherTitle) {
    return new Lesson(otherFile, otherTitle, by, setting, sections, extras);
  }

  /** The same with other things said for the page. */
  public Lesson with(Extras others) {
    return new Lesson(file, title, by, setting, sections, others);
  }

  /** Copies the list. */
  public Lesson {
    sections = List.copyOf(sections);
  }

  /** The grooves, steps and variations of sheets in order. */
  public List<Groove> grooves() {
    List<Groove> found = new ArrayList<>();
    for (Section section : sections) {
      if (section instanceof Groove groove) {
        found.add(groove);
      } else if (section instanceof Sheet sheet) {
        found.addAll(sheet.grooves());
      }
    }
    return found;
  }

  /** The section of a name, else the variation of a sheet; empty if there is none. */
  public Optional<Section> section(String name) {
    Optional<Section> own = Lists.first(sections, one -> one.name().equals(name));
    return own.isPresent()
        ? own
        : sheets().stream()
            .flatMap(sheet -> sheet.grooves().stream())
            .filter(groove -> groove.name().equals(name))
            .map(groove -> (Section) groove)
            .findFirst();
  }

  /** The sheets in order. */
  public List<Sheet> sheets() {
    return Lists.map(Lists.filter(sections, Sheet.class::isInstance), Sheet.class::cast);
  }

  /** The charts in order. */
  public List<Chart> charts() {
    return Lists.map(Lists.filter(sections, Chart.class::isInstance), Chart.class::cast);
  }
}
