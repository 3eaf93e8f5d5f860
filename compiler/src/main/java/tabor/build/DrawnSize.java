package tabor.build;

import java.util.List;
import java.util.Optional;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.lists.Lists;

/**
 * How much of a lesson is drawn at once. Notes take a thousand times as long to draw as to read, so
 * that a text that looks harmless could keep a machine busy for a long time. The bounds lie beyond
 * what is taught from one file: a term of sixty sections of sixteen bars, each bar of two dozen
 * strokes, has 24,000.
 */
public final class DrawnSize {
  /** Pictures and practice pages, which are made of lines. */
  public static final DrawnSize IN_LINES = new DrawnSize(24, false);

  /** Pictures of dots: even a short section fills many, and a title takes lines of its own. */
  public static final DrawnSize IN_DOTS = new DrawnSize(45, false);

  /** Printed pages, on which texts and goals are cut into lines as well. */
  public static final DrawnSize ON_PAGES = new DrawnSize(24, true);

  /** What a person can do about it on the command line. */
  public static final String WAY_OUT =
      "; name some sections with --only, or make several sections or lessons of it";

  /** What a bar costs beside its strokes: empty ones are drawn too. */
  private static final long STROKES_OF_A_BAR = 3;

  /** What a text or a goal costs, however short it is. */
  private static final long STROKES_OF_A_TEXT = 10;

  /** How many characters of texts and goals cost as much as a stroke. */
  private static final long CHARACTERS_OF_A_STROKE = 10;

  /** How many letters of a title cost as much as a stroke in dots. */
  private static final int LETTERS_OF_A_STROKE = 2;

  /** Most strokes of one section that is drawn: four hundred full bars on end. */
  static final long MOST_OF_A_SECTION = 12_000;

  /** Most strokes that are drawn of a lesson, sections, bars and texts counted in. */
  static final long MOST = 30_000;

  /** The same for a page of what was found in many lessons. */
  static final long MOST_FOUND = 60_000;

  /** The same for sections beside what they were before, each side for itself. */
  static final long MOST_COMPARED = 12_000;

  /** The same for one place of a document, which shows sections and not a whole term. */
  static final long MOST_IN_A_DOCUMENT = 12_000;

  private final long strokesOfASection;
  private final boolean withTexts;

  /**
   * What costs how much.
   *
   * @param strokesOfASection what a section costs whatever is in it, in strokes
   * @param withTexts true if texts and goals count
   */
  private DrawnSize(long strokesOfASection, boolean withTexts) {
    this.strokesOfASection = strokesOfASection;
    this.withTexts = withTexts;
  }

  /**
   * Why a lesson is not drawn, in a sentence; empty if it is.
   *
   * @param options which of its sections are wanted
   */
  public Optional<String> refusal(Lesson lesson, BuildOptions options) {
    return refusal(lesson, options, MOST);
  }

  /** Why a lesson is not drawn at one place of a document, in a sentence; empty if it is. */
  public static Optional<String> refusalInADocument(Lesson lesson) {
    return IN_LINES.refusal(lesson, BuildOptions.ALL, MOST_IN_A_DOCUMENT);
  }

  /**
   * Why sections are not drawn beside each other, in a sentence; empty if they are.
   *
   * @param before how some of them were
   * @param after how some of them are: what is more counts
   */
  public static Optional<String> refusal(List<Groove> before, List<Groove> after) {
    Amount one = IN_LINES.amount(before);
    Amount other = IN_LINES.amount(after);
    Amount more = one.cost() > other.cost() ? one : other;
    return more.cost() <= MOST_COMPARED ? Optional.empty() : Optional.of(more.tooMuch());
  }

  /** What a section takes of the most that is drawn at once. */
  long of(Groove groove) {
    long title = this == IN_DOTS ? groove.caption().length() / LETTERS_OF_A_STROKE : 0;
    return strokesOfASection + title + STROKES_OF_A_BAR * groove.bars() + groove.written().size();
  }

  private Optional<String> refusal(Lesson lesson, BuildOptions options, long most) {
    BuildOptions own = options.in(lesson);
    List<Groove> drawn = Lists.filter(lesson.grooves(), own::wants);
    Optional<Groove> tooLong =
        Lists.first(drawn, groove -> groove.written().size() > MOST_OF_A_SECTION);
    if (tooLong.isPresent()) {
      Groove section = tooLong.get();
      return Optional.of(
          tooMuch(section.written().size() + " strokes in section “" + section.name() + "”"));
    }
    Amount amount = amount(drawn);
    if (withTexts) {
      amount.add(lesson.extras().goals());
      amount.add(lesson.extras().teacher());
      own.sections(lesson).forEach(amount::add);
    }
    return amount.cost() <= most ? Optional.empty() : Optional.of(amount.tooMuch());
  }

  private Amount amount(List<Groove> grooves) {
    Amount amount = new Amount();
    amount.sections = grooves.size();
    amount.costOfSections = strokesOfASection * grooves.size();
    for (Groove groove : grooves) {
      amount.strokes += groove.written().size();
      amount.bars += groove.bars();
      amount.costOfNotes += of(groove);
    }
    return amount;
  }

  private static String tooMuch(String amount) {
    return amount + " are too much to draw at once";
  }

  /** What is to be drawn. */
  private static final class Amount {
    private int sections;
    private long strokes;
    private long bars;
    private long texts;
    private long costOfSections;
    private long costOfNotes;
    private long costOfTexts;

    void add(Section section) {
      add(section.prose());
      add(section.page().goals());
      add(section.page().teacher());
    }

    void add(List<String> more) {
      texts += more.size();
      costOfTexts += STROKES_OF_A_TEXT * more.size();
      for (String text : more) {
        costOfTexts += text.length() / CHARACTERS_OF_A_STROKE;
      }
    }

    long cost() {
      return costOfNotes + costOfTexts;
    }

    /** A sentence with what there is most of. */
    String tooMuch() {
      String where = sections == 1 ? "one section" : sections + " sections";
      if (costOfTexts > costOfNotes) {
        return DrawnSize.tooMuch(texts + " texts and goals in " + where);
      }
      if (costOfSections > STROKES_OF_A_BAR * bars + strokes) {
        return DrawnSize.tooMuch(where);
      }
      return DrawnSize.tooMuch(
          (bars > strokes ? bars + " bars" : strokes + " strokes") + " in " + where);
    }
  }
}
