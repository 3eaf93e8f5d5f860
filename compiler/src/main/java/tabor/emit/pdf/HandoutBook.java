package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.FilledText;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.PracticeLog;

/**
 * Several lessons as one document: a first page with the contents and the key of all of them, then
 * each lesson from a new page on, page numbers running on, and one log at the end.
 */
public final class HandoutBook extends HandoutPart {
  private final List<Lesson> lessons;
  private final String cover;

  /** How the lessons are printed, each with its own wishes over it. */
  private final HandoutLook each;

  private HandoutBook(List<Lesson> lessons, String cover, HandoutLook asked, TextMetrics font) {
    // A document has one paper: that of its first lesson, if nobody asked for one.
    super(asked.of(lessons.get(0)), lessons.get(0).setting(), font);
    this.lessons = lessons;
    this.cover = cover;
    HandoutLook.Reader reader = asked.reader();
    this.each =
        new HandoutLook(
            look.paper(),
            asked.large(),
            asked.clean(),
            asked.caution(),
            asked.note(),
            asked.columns(),
            new HandoutLook.Reader(reader.name(), List.of(), reader.teacher(), true));
  }

  /**
   * The document of some lessons, one or more.
   *
   * @param cover its title; empty for none
   * @param look how it is printed; texts of the reader stand on the first page
   */
  public static Handout make(
      List<Lesson> lessons, String cover, HandoutLook look, TextMetrics font) {
    return new HandoutBook(lessons, cover, look, font).run(look.reader().texts());
  }

  private Handout run(List<String> texts) {
    List<HandoutMaker> makers = new ArrayList<>();
    List<Pager> parts = new ArrayList<>();
    for (Lesson lesson : lessons) {
      HandoutMaker maker = new HandoutMaker(lesson, each.of(lesson), font);
      makers.add(maker);
      parts.add(maker.inBook());
    }
    HandoutMaker front = new HandoutMaker(titled(), each.of(lessons.get(0)), font);
    Pager end = end(front);
    int before = contents(front, texts, starts(parts, 0)).pages().size();
    List<Integer> starts = starts(parts, before);
    Pager contents = contents(front, texts, starts);
    int all = starts.get(parts.size()) + (end == null ? 0 : end.pages().size());
    List<Handout.Sheet> sheets = new ArrayList<>(front.sheets(contents, 0, all));
    List<Handout.Bookmark> bookmarks = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      int start = starts.get(i);
      sheets.addAll(makers.get(i).sheets(parts.get(i), start, all));
      bookmarks.add(new Handout.Bookmark(lessons.get(i).title(), start, 45));
      for (Handout.Bookmark one : parts.get(i).bookmarks()) {
        bookmarks.add(new Handout.Bookmark(one.title(), start + one.sheet(), one.y()));
      }
    }
    if (end != null) {
      sheets.addAll(front.sheets(end, starts.get(parts.size()), all));
    }
    return new Handout(
        look.paper(), font.showable(title()), by(), words.language(), sheets, bookmarks);
  }

  /** The page, from 0, that each part starts on, and the one after the last. */
  private static List<Integer> starts(List<Pager> parts, int before) {
    List<Integer> starts = new ArrayList<>();
    int page = before;
    for (Pager part : parts) {
      starts.add(page);
      page += part.pages().size();
    }
    starts.add(page);
    return starts;
  }

  private String title() {
    return cover.isBlank()
        ? lessons.stream().map(Lesson::title).collect(Collectors.joining(" · "))
        : cover;
  }

  private String by() {
    List<String> names =
        lessons.stream()
            .map(Lesson::by)
            .filter(by -> by != null && !by.isBlank())
            .distinct()
            .toList();
    return font.showable(String.join(", ", names));
  }

  /** A lesson for the foot of the first page and the last. */
  private Lesson titled() {
    Lesson first = lessons.get(0);
    return new Lesson(first.file(), title(), null, first.setting(), List.of());
  }

  private Pager contents(HandoutMaker front, List<String> texts, List<Integer> starts) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(front.nameAndDate());
    String head = cover.isBlank() ? words.text("page.contents") : cover;
    blocks.add(type.text(head, size * 2.6, width, size * 0.6, true, Face.BOLD));
    if (!by().isEmpty()) {
      blocks.add(type.text(by(), size * 1.1, width, size * 0.6, true));
    }
    for (String text : texts) {
      blocks.add(type.text(text, size, width, size * 0.5, true));
    }
    blocks.add(new Block(List.of(), 0.1, size, false));
    for (int i = 0; i < lessons.size(); i++) {
      blocks.add(row(lessons.get(i).title(), Integer.toString(starts.get(i) + 1)));
    }
    blocks.add(new Block(List.of(), 0.1, size * 1.4, false));
    List<Groove> grooves = lessons.stream().flatMap(one -> one.grooves().stream()).toList();
    blocks.addAll(front.key(grooves));
    Pager pager = front.pager();
    pager.section(blocks);
    return pager.done();
  }

  private Block row(String title, String page) {
    double large = size * 1.15;
    double room = width - type.width(page, large) - size * 2;
    String clipped = FilledText.clip(title, large, room, Face.REGULAR, font);
    double y = size * 1.5;
    List<Mark> marks = new ArrayList<>();
    marks.add(type.line(clipped, 0, y, large, Mark.Align.LEFT));
    marks.add(type.line(page, width, y, large, Mark.Align.RIGHT));
    marks.add(Mark.Line.rule(0, y + size * 0.5, width, y + size * 0.5, 0.4));
    return new Block(marks, y + size * 0.6, 0, false);
  }

  /** The longest log of the lessons, for the goals of all of them; null if none has one. */
  private @Nullable Pager end(HandoutMaker front) {
    PracticeLog longest = null;
    List<String> goals = new ArrayList<>();
    for (Lesson lesson : lessons) {
      PracticeLog log = lesson.extras().log();
      longest = log != null && (longest == null || log.rows() > longest.rows()) ? log : longest;
      goals.addAll(WrittenOn.goals(lesson));
    }
    if (longest == null) {
      return null;
    }
    Pager pager = front.pager();
    pager.section(written.log(longest, goals.stream().distinct().toList(), width));
    return pager.done();
  }
}
