package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.CountingWords;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Part;
import tabor.kit.Kit;
import tabor.lists.Lists;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.Ref;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;

/** Reads what is said for the printed page. */
final class PageReader {
  private PageReader() {}

  /**
   * What a section says for the page.
   *
   * @param from the wishes that it takes over
   * @param kit what its blank parts are named on; null for a chart, which has none
   * @param hands whose hands texts speak of, and how
   * @param lineStarts the bars before which the writer began a line
   */
  static PageNotes of(
      SectionSyntax syntax,
      PageWishes from,
      @Nullable Kit kit,
      HandWords hands,
      List<Integer> lineStarts,
      Problems problems) {
    PageWishes wishes = from;
    boolean newPage = false;
    List<String> goals = new ArrayList<>();
    List<String> teacher = new ArrayList<>();
    boolean sticking = false;
    List<Part> parts = new ArrayList<>();
    int blankBars = 0;
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof SettingStatement.Page page) {
        newPage |= page.kind().value() == SettingStatement.PageKind.NEW;
        wishes = wished(wishes, page);
      } else if (statement instanceof SettingStatement.Goal goal) {
        goals.add(hands.in(goal.text().value()));
      } else if (statement instanceof SettingStatement.Teacher text) {
        teacher.add(hands.in(text.text().value()));
      } else if (statement instanceof PartStatement.BlankBars blank) {
        blankBars = blank.bars().whole();
      } else if (statement instanceof PartStatement.BlankPart blank) {
        sticking |= blank.targets().isEmpty();
        if (kit != null) {
          parts.addAll(Parts.of(line, blank.targets(), kit, problems));
        }
      }
    }
    return new PageNotes(wishes, newPage, goals, teacher, sticking, parts, blankBars, lineStarts);
  }

  /** The wishes after a line that states one; of each kind the last one counts. */
  static PageWishes wished(PageWishes before, SettingStatement.Page page) {
    Num number = page.number();
    Integer value = number == null ? null : Integer.valueOf(number.whole());
    return switch (page.kind().value()) {
      case A4 -> new PageWishes(PageWishes.Paper.A4, false, null, null).over(before);
      case LETTER -> new PageWishes(PageWishes.Paper.LETTER, false, null, null).over(before);
      case LARGE -> new PageWishes(null, true, null, null).over(before);
      case BARS -> new PageWishes(null, false, value, null).over(before);
      case COLUMNS -> new PageWishes(null, false, null, value).over(before);
      case NEW -> before;
    };
  }

  /** The counting words after a line that chooses some. */
  static CountingWords said(CountingWords before, SettingStatement.Say say) {
    Ref<Integer> division = say.division();
    if (division != null) {
      return before.with(division.value(), Lists.map(say.syllables(), Ref::value));
    }
    Ref<CountingWords.Named> set = say.set();
    return set == null ? before : before.with(set.value());
  }

  /** Says where empty staves stand beside parts: the one takes the place of the other. */
  static void checkBlank(SectionSyntax syntax, Problems problems) {
    Line blank = null;
    Line part = null;
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.BlankBars) {
        blank = line;
      } else if (statement instanceof PartStatement.Lane
          || statement instanceof PartStatement.Played) {
        part = line;
      }
    }
    if (blank != null && part != null) {
      Line later = blank.start() > part.start() ? blank : part;
      Line other = later == blank ? part : blank;
      problems.incomplete();
      problems.add(
          problems
              .make(
                  Code.SYNTAX,
                  later,
                  later.statement().span(),
                  "empty staves stand in place of parts, but this groove has both")
              .label(other.spot(), "here")
              .help("write two grooves, or leave one part empty: blank kick"));
    }
  }
}
