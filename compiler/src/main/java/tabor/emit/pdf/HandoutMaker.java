package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.FilledText;
import tabor.emit.engrave.Key;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.TempoPainter;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.BlankParts;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.PracticeLog;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.lists.Lists;

/**
 * Lays a lesson out as a handout: a line for name and date, title and author, the tempo, the key,
 * then each section in order with number, title, what changed, prose and notes; practice tables;
 * the caution and the page number at the foot.
 */
public final class HandoutMaker extends HandoutPart {
  private static final double TOP = 45;
  private static final double FOOT = 30;

  private final Lesson lesson;
  private final LessonWishes wishes;
  private final SectionBlocks sections;

  /** A lesson that may be one of several, laid out by {@link HandoutBook}. */
  HandoutMaker(Lesson lesson, HandoutLook look, TextMetrics font) {
    super(look, lesson.setting(), font);
    this.lesson = lesson;
    this.wishes = new LessonWishes(lesson.extras().wishes());
    this.sections = new SectionBlocks(lesson, wishes, look, font);
  }

  /** The handout of a lesson. */
  public static Handout make(Lesson lesson, HandoutLook look, TextMetrics font) {
    return new HandoutMaker(lesson, look.of(lesson), font).run();
  }

  private Handout run() {
    Pager pager = pager();
    pager.head(head());
    body(pager);
    PracticeLog log = lesson.extras().log();
    if (log != null) {
      pager.section(written.log(log, WrittenOn.goals(lesson), width));
    }
    pager.done();
    List<Handout.Sheet> sheets = sheets(pager, 0, pager.pages().size());
    String by = lesson.by() == null ? "" : font.showable(lesson.by());
    return new Handout(
        look.paper(),
        font.showable(lesson.title()),
        by,
        words.language(),
        sheets,
        pager.bookmarks());
  }

  /** The pages of a lesson in a document whose first page says what all have in common. */
  Pager inBook() {
    Pager pager = pager();
    pager.head(title());
    body(pager);
    return pager.done();
  }

  /** An empty page after another, with room for the foot. */
  Pager pager() {
    return new Pager(SIDE, TOP, bottom());
  }

  /** Where the room for blocks ends. */
  private double bottom() {
    double foot = footSize() * 1.3 * (caution().size() + 1);
    return look.paper().height() - FOOT - foot - size;
  }

  private void body(Pager pager) {
    List<Groove> grooves = new ArrayList<>();
    for (Section section : lesson.sections()) {
      if (section instanceof Groove groove) {
        grooves.add(groove);
      } else if (section instanceof Sheet sheet && inRows(sheet)) {
        notes(pager, grooves);
        sheet(pager, sheet);
      } else if (section instanceof Sheet sheet) {
        notes(pager, grooves);
        pager.section(opening(sheet), wishes.startsPage(sheet));
        grooves.addAll(printed(sheet));
        notes(pager, grooves);
      } else if (section instanceof Chart chart) {
        notes(pager, grooves);
        pager.section(chart(chart, bottom() - TOP), wishes.startsPage(chart));
      }
    }
    notes(pager, grooves);
  }

  /**
   * Finished pages with the foot.
   *
   * @param before how many pages the document has before these
   * @param all how many it has
   */
  List<Handout.Sheet> sheets(Pager pager, int before, int all) {
    List<Handout.Sheet> sheets = new ArrayList<>();
    for (int i = 0; i < pager.pages().size(); i++) {
      List<Mark> marks = new ArrayList<>(pager.pages().get(i));
      foot(marks, before + i, all, caution());
      sheets.add(new Handout.Sheet(marks));
    }
    return sheets;
  }

  /** Grooves and steps that follow each other. */
  private void notes(Pager pager, List<Groove> grooves) {
    for (SectionBlocks.Row row : sections.of(grooves)) {
      pager.section(row.blocks(), row.newPage());
    }
    grooves.clear();
  }

  // ---- the head of the first page ----

  private List<Block> head() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(nameAndDate());
    blocks.addAll(title());
    blocks.addAll(key(lesson.grooves()));
    return blocks;
  }

  /** Title, author, what is other than written, goals, tempo. */
  private List<Block> title() {
    List<Block> blocks = new ArrayList<>();
    double gap = size * 0.35;
    blocks.add(type.text(lesson.title(), size * 2.1, width, gap, true, Face.BOLD));
    if (lesson.by() != null && !lesson.by().isBlank()) {
      blocks.add(type.text(lesson.by(), size * 1.1, width, gap, true));
    }
    String note = note();
    if (!note.isBlank()) {
      blocks.add(type.text(note, size, width, gap, true, Face.ITALIC));
    }
    texts(look.reader().texts(), width, blocks);
    blocks.addAll(written.goals(lesson.extras().goals(), width));
    if (look.reader().teacher()) {
      blocks.addAll(written.teacher(lesson.extras().teacher(), width));
    }
    double base = size * 1.6;
    List<Mark> tempo =
        TempoPainter.mark(
            lesson.setting().tempo(), lesson.setting().feel(), words, font, 0, base / space);
    blocks.add(new Block(Mark.moved(tempo, 0, 0, space), base + size * 0.5, gap, true));
    return blocks;
  }

  /** The key of some sections. */
  List<Block> key(List<Groove> grooves) {
    List<Block> blocks = new ArrayList<>();
    double small = space * 0.82;
    double letters = size * 0.82 / small;
    for (Drawing row : Key.rows(grooves, words, width / small, letters, font)) {
      List<Mark> marks = Mark.moved(row.marks(), 0, 0, small);
      blocks.add(new Block(marks, row.height() * small, size * 0.4, false));
    }
    blocks.add(new Block(List.of(), 0.1, size * 0.8, false));
    return blocks;
  }

  /** Two lines to write on, at the right of the first page's top. */
  Block nameAndDate() {
    List<Mark> marks = new ArrayList<>();
    double base = size;
    double x = 0;
    double gap = size * 0.6;
    double room = width * 0.62;
    x = ruled(marks, words.text("page.name"), x, room, base);
    if (!look.reader().name().isBlank()) {
      double from = type.width(words.text("page.name"), size) + size;
      String name =
          FilledText.clip(look.reader().name(), size * 1.15, room - from, Face.BOLD, font);
      marks.add(type.line(name, from, base, size * 1.15, Mark.Align.LEFT, Face.BOLD));
    }
    ruled(marks, words.text("page.date"), x + gap * 2, width, base);
    return new Block(marks, base + 4, size * 1.2, true);
  }

  private double ruled(List<Mark> marks, String label, double x, double right, double base) {
    marks.add(type.line(label, x, base, size, Mark.Align.LEFT));
    double from = x + type.width(label, size) + size * 0.5;
    marks.add(rule(from, right, base + 2, 0.6));
    return right;
  }

  private static Mark rule(double left, double right, double y, double thickness) {
    return Mark.Line.rule(left, y, right, y, thickness);
  }

  /** For whom the page is, if that is not everybody. */
  private String note() {
    String note = look.note().apply(words);
    if (!note.isBlank()) {
      return note;
    }
    return lesson.setting().kit().leftHanded() ? words.text("page.left-handed") : "";
  }

  // ---- sheets ----

  /** What a sheet or chart begins with. */
  private List<Block> opening(Section section) {
    String number = lesson.numbers().of(section);
    List<Block> blocks = new ArrayList<>(sections.heading(number, section.caption(), width));
    String bookmark = (number.isEmpty() ? "" : number + "  ") + section.caption();
    blocks.set(0, blocks.get(0).marked(List.of(bookmark)));
    said(section, width, blocks);
    return blocks;
  }

  /** The variations, with the parts left empty that their sheet leaves empty. */
  private static List<Groove> printed(Sheet sheet) {
    return Lists.map(sheet.grooves(), groove -> BlankParts.on(sheet.page(), groove));
  }

  private static boolean inRows(Sheet sheet) {
    return SheetBlocks.fits(sheet) && !sheet.page().blankSticking();
  }

  /** The heading stays with the first row; between rows a page may end. */
  private void sheet(Pager pager, Sheet sheet) {
    List<Block> blocks = opening(sheet);
    List<Block> rows = new SheetBlocks(lesson, look, font).of(sheet);
    blocks.add(rows.get(0));
    pager.section(blocks, wishes.startsPage(sheet));
    rows.subList(1, rows.size()).forEach(row -> pager.section(List.of(row)));
  }

  // ---- charts ----

  private List<Block> chart(Chart chart, double page) {
    List<Block> blocks = opening(chart);
    blocks.addAll(new PracticeTable(type, words, size * 0.92, width).of(chart));
    double high = Lists.sum(blocks, block -> block.height() + block.after());
    if (high < page) {
      blocks.replaceAll(Block::kept);
    }
    blocks.add(new Block(List.of(), 0.1, size, false));
    return blocks;
  }

  // ---- the foot ----

  private double footSize() {
    return look.large() ? 10 : 7.5;
  }

  private List<String> caution() {
    String caution = look.caution(words);
    return caution.isBlank() ? List.of() : type.wrap(caution, footSize(), width, Face.REGULAR);
  }

  private void foot(List<Mark> marks, int page, int pages, List<String> caution) {
    double foot = footSize();
    double leading = foot * 1.3;
    double y = look.paper().height() - FOOT - leading * caution.size();
    List<Mark> lines = new ArrayList<>();
    lines.add(rule(SIDE, SIDE + width, y - leading * 1.05, 0.4));
    for (int i = 0; i < caution.size(); i++) {
      lines.add(type.line(caution.get(i), SIDE, y + i * leading, foot, Mark.Align.LEFT));
    }
    double last = look.paper().height() - FOOT;
    String title = lesson.title();
    String number = (page + 1) + " / " + pages;
    double room = width - type.width(number, foot) - foot * 2;
    String clipped = FilledText.clip(title, foot, room, Face.REGULAR, font);
    lines.add(type.line(clipped, SIDE, last, foot, Mark.Align.LEFT));
    lines.add(type.line(number, SIDE + width, last, foot, Mark.Align.RIGHT));
    marks.add(Mark.Group.of("foot", lines));
  }
}
