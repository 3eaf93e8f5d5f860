package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Key;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Moving;
import tabor.emit.engrave.TempoPainter;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.Changes;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.notation.Speller;

/**
 * Lays a lesson out as a handout: a line for name and date, title and author, the tempo, the key,
 * then each section in order with number, title, what changed, prose and notes; practice tables;
 * the caution and the page number at the foot.
 */
public final class HandoutMaker {
  /** Margins at the sides, in points: 18 mm, enough for a hole punch. */
  private static final double SIDE = 51;

  private static final double TOP = 45;
  private static final double FOOT = 30;

  private final Lesson lesson;
  private final HandoutLook look;
  private final TextMetrics font;
  private final TextSetter type;

  /** Size of running text, in points. */
  private final double size;

  /** A staff space in points: a staff of 6.9 mm, large 11.6 mm. */
  private final double space;

  private final double width;

  private HandoutMaker(Lesson lesson, HandoutLook look, TextMetrics font) {
    this.lesson = lesson;
    this.look = look;
    this.font = font;
    this.type = new TextSetter(font);
    this.size = look.large() ? 16 : 10.5;
    this.space = look.large() ? 8.2 : 4.9;
    this.width = look.paper().width() - 2 * SIDE;
  }

  /** The handout of a lesson. */
  public static Handout make(Lesson lesson, HandoutLook look, TextMetrics font) {
    return new HandoutMaker(lesson, look, font).run();
  }

  private Handout run() {
    double height = look.paper().height();
    List<String> caution = caution();
    double footSize = footSize();
    double bottom = height - FOOT - footSize * 1.3 * (caution.size() + 1) - size;
    Pager pager = new Pager(SIDE, TOP, bottom);
    pager.section(head(), "");
    int number = 0;
    for (Section section : lesson.sections()) {
      if (section instanceof Groove groove) {
        number++;
        pager.section(groove(groove, number), number + "  " + groove.caption());
      } else if (section instanceof Chart chart) {
        pager.section(chart(chart), chart.caption());
      }
    }
    List<Handout.Sheet> sheets = new ArrayList<>();
    for (int i = 0; i < pager.pages().size(); i++) {
      List<Mark> marks = new ArrayList<>(pager.pages().get(i));
      foot(marks, i, pager.pages().size(), caution);
      sheets.add(new Handout.Sheet(marks));
    }
    String by = lesson.by() == null ? "" : font.showable(lesson.by());
    return new Handout(look.paper(), font.showable(lesson.title()), by, sheets, pager.bookmarks());
  }

  // ---- the head of the first page ----

  private List<Block> head() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(nameAndDate());
    double gap = size * 0.35;
    blocks.add(type.text(lesson.title(), size * 2.1, width, gap, true));
    if (lesson.by() != null && !lesson.by().isBlank()) {
      blocks.add(type.text(lesson.by(), size * 1.1, width, gap, true));
    }
    double base = size * 1.6;
    List<Mark> tempo =
        TempoPainter.mark(lesson.setting().tempo(), lesson.setting().feel(), font, 0, base / space);
    blocks.add(new Block(Moving.by(tempo, 0, 0, space), base + size * 0.5, gap, true));
    double small = space * 0.82;
    double letters = size * 0.82 / small;
    for (Drawing row : Key.rows(lesson.grooves(), width / small, letters, font)) {
      List<Mark> marks = Moving.by(row.marks(), 0, 0, small);
      blocks.add(new Block(marks, row.height() * small, size * 0.4, false));
    }
    blocks.add(new Block(List.of(), 0.1, size * 0.8, false));
    return blocks;
  }

  /** Two lines to write on, at the right of the first page's top. */
  private Block nameAndDate() {
    List<Mark> marks = new ArrayList<>();
    double base = size;
    double x = 0;
    double gap = size * 0.6;
    double room = width * 0.62;
    x = ruled(marks, "Name", x, room, base);
    ruled(marks, "Date", x + gap * 2, width, base);
    return new Block(marks, base + 4, size * 1.2, true);
  }

  private double ruled(List<Mark> marks, String label, double x, double right, double base) {
    marks.add(type.line(label, x, base, size, Mark.Align.LEFT));
    double from = x + type.width(label, size) + size * 0.5;
    marks.add(rule(from, right, base + 2, 0.6));
    return right;
  }

  private static Mark rule(double left, double right, double y, double thickness) {
    return new Mark.Ink(Contour.of(new Box(left, y, right, y + thickness)));
  }

  // ---- sections ----

  /** A rule and a title, with its number, if it has one, in a column of its own. */
  private List<Block> heading(String number, String title) {
    double large = size * 1.35;
    double indent = number.isEmpty() ? 0 : type.width(number, large) + size;
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block(List.of(rule(0, width, 0, 0.5)), 0.5, size * 0.55, true));
    Block text = type.text(title, large, width - indent, size * 0.15, true);
    List<Mark> marks = new ArrayList<>();
    if (!number.isEmpty()) {
      marks.add(type.line(number, 0, large * 0.95, large, Mark.Align.LEFT));
    }
    marks.addAll(Moving.by(text.marks(), indent, 0, 1));
    blocks.add(new Block(marks, text.height(), text.after(), true));
    return blocks;
  }

  private List<Block> groove(Groove groove, int number) {
    List<Block> blocks = new ArrayList<>(heading(Integer.toString(number), groove.caption()));
    Changes changes = look.clean() ? Changes.NONE : Changes.of(groove);
    if (!changes.words().isEmpty()) {
      blocks.add(type.text("Changed: " + changes.text(), size * 0.92, width, size * 0.2, true));
    }
    prose(groove.prose(), blocks);
    boolean ownTempo =
        !groove.setting().tempo().equals(lesson.setting().tempo())
            || !groove.setting().feel().equals(lesson.setting().feel());
    Look full = new Look(width / space, true, true, true, false, ownTempo);
    Engraving engraving =
        Engraver.engrave(
            Speller.spell(groove, changes.strokes()), look.clean() ? full.clean() : full, font);
    List<Engraving.StaffSystem> systems = engraving.systems();
    for (int i = 0; i < systems.size(); i++) {
      Engraving.StaffSystem system = systems.get(i);
      double after = i + 1 < systems.size() ? space * 1.6 : space * 3;
      List<Mark> marks =
          List.of(Mark.Group.of("system", Moving.by(system.drawing().marks(), 0, 0, space)));
      blocks.add(new Block(marks, system.drawing().height() * space, after, false));
    }
    return blocks;
  }

  private void prose(List<String> texts, List<Block> blocks) {
    for (String text : texts) {
      if (!text.isBlank()) {
        blocks.add(type.text(text, size, width, size * 0.45, true));
      }
    }
  }

  private List<Block> chart(Chart chart) {
    List<Block> blocks = new ArrayList<>(heading("", chart.caption()));
    prose(chart.prose(), blocks);
    blocks.addAll(new PracticeTable(type, size, width).of(chart));
    blocks.add(new Block(List.of(), 0.1, size, false));
    return blocks;
  }

  // ---- the foot ----

  private double footSize() {
    return look.large() ? 10 : 7.5;
  }

  private List<String> caution() {
    return look.caution().isBlank() ? List.of() : type.wrap(look.caution(), footSize(), width);
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
    List<String> title1 = type.wrap(title, foot, room);
    if (!title1.isEmpty()) {
      lines.add(type.line(title1.get(0), SIDE, last, foot, Mark.Align.LEFT));
    }
    lines.add(type.line(number, SIDE + width, last, foot, Mark.Align.RIGHT));
    marks.add(Mark.Group.of("foot", lines));
  }
}
