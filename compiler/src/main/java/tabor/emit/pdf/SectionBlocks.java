package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.cores.SpareCores;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.LineWishes;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.MeasuredScore;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.BlankParts;
import tabor.groove.Changes;
import tabor.groove.ChartSigns;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.PageNotes;
import tabor.groove.SectionNumbers;
import tabor.lists.Lists;
import tabor.notation.Speller;

/**
 * The grooves and steps of a handout as blocks: wide ones under each other, system by system,
 * narrow ones side by side as cells.
 */
final class SectionBlocks extends HandoutPart {
  /** The most columns that a page has by itself. */
  private static final int COLUMNS = 3;

  /** Height of a system in staff spaces, as far as rows are chosen by it. */
  private static final double SYSTEM = 15;

  private final Groove.Setting head;
  private final Map<String, ChartSigns> signs;
  private final LessonWishes wishes;
  private final SectionNumbers numbers;
  private final List<Piece> pieces = new ArrayList<>();
  private final Map<List<Integer>, Boolean> narrow = new HashMap<>();

  /** A section with what is drawn of it. */
  private record Piece(
      Groove groove, String number, Changes changes, LineWishes lines, MeasuredScore measured) {}

  /**
   * The sections of a handout.
   *
   * @param lesson its settings are said once for all; its charts say something at some notes
   */
  SectionBlocks(Lesson lesson, LessonWishes wishes, HandoutLook look, TextMetrics font) {
    super(look, lesson.setting(), font);
    this.head = lesson.setting();
    this.signs = ChartSigns.of(lesson);
    this.wishes = wishes;
    this.numbers = lesson.numbers();
  }

  /** The blocks of some sections that follow each other, a list for each row or wide section. */
  List<Row> of(List<Groove> grooves) {
    pieces.clear();
    narrow.clear();
    pieces.addAll(SpareCores.map(grooves, this::piece));
    int most = look.columns() == 0 ? COLUMNS : look.columns();
    List<CellRows.Row> rows = CellRows.of(pieces.size(), most, new Cells());
    List<MeasuredScore> scores = new ArrayList<>();
    for (CellRows.Row row : rows) {
      for (Piece piece : pieces.subList(row.from(), row.to())) {
        MeasuredScore own = piece.measured().in(columnWidth(row.columns()) / space);
        // A cell is one line, whatever would look best.
        boolean cell = row.columns() > 1;
        scores.add(cell ? own.withLines(new LineWishes(piece.groove().bars(), Set.of())) : own);
      }
    }
    List<Engraving> engravings = Engraver.engrave(scores);
    List<Row> found = new ArrayList<>();
    for (CellRows.Row row : rows) {
      boolean newPage = wishes.startsPage(pieces.get(row.from()).groove());
      found.add(
          new Row(
              row.columns() == 1
                  ? wide(pieces.get(row.from()), engravings.get(row.from()))
                  : List.of(cells(row, engravings)),
              newPage));
    }
    return found;
  }

  /** Blocks that belong together, and whether they begin a page. */
  record Row(List<Block> blocks, boolean newPage) {}

  private Piece piece(Groove whole) {
    PageNotes page = whole.page();
    Groove groove = BlankParts.of(whole, page.blankParts());
    Changes changes = look.clean() ? Changes.NONE : Changes.printed(groove);
    Look full =
        new Look(width / space, true, false)
            .withTempo(groove.setting(), head)
            .withLines(wishes.lines(groove))
            .withSigns(signs.getOrDefault(groove.name(), ChartSigns.NONE));
    if (page.blankSticking()) {
      full = full.withBoxes();
    }
    if (page.blankBars() > 0) {
      full = full.withBlankBars();
    }
    Look own = look.clean() ? full.clean() : full;
    return new Piece(
        groove,
        numbers.of(whole),
        changes,
        own.lines(),
        MeasuredScore.of(Speller.spell(groove, changes.strokes()), own, font).silent());
  }

  private double gutter() {
    return size * 1.8;
  }

  private double columnWidth(int columns) {
    return (width - gutter() * (columns - 1)) / columns;
  }

  private final class Cells implements CellRows.Cells {
    @Override
    public boolean fits(int section, int columns) {
      int most = wishes.columns(pieces.get(section).groove());
      if (most > 0 && columns > most) {
        return false;
      }
      Groove groove = pieces.get(section).groove();
      LineWishes lines = pieces.get(section).lines();
      boolean oneLine =
          lines.starts().isEmpty()
              && (lines.barsALine() == 0 || lines.barsALine() >= groove.bars());
      // A hand writes wider than type.
      if (!oneLine || groove.page().blankBars() > 1) {
        return false;
      }
      return narrow.computeIfAbsent(
          List.of(section, columns),
          key -> {
            double room = columnWidth(columns) / space;
            return room >= Look.LEAST && pieces.get(section).measured().in(room).isNarrow();
          });
    }

    @Override
    public double height(int section, int columns) {
      double words = height(words(pieces.get(section), columnWidth(columns)));
      return words + SYSTEM * space;
    }

    private double height(List<Block> blocks) {
      return Lists.sum(blocks, block -> block.height() + block.after());
    }

    @Override
    public boolean beginsRow(int section) {
      return wishes.startsPage(pieces.get(section).groove());
    }
  }

  // ---- words ----

  /** A rule and a title, with its number, if it has one, in a column of its own. */
  List<Block> heading(String number, String title, double room) {
    double large = size * 1.25;
    double indent = number.isEmpty() ? 0 : type.width(number, large, Face.BOLD) + size * 0.8;
    List<Block> blocks = new ArrayList<>();
    Mark rule = Mark.Line.rule(0, 0.25, room, 0.25, 0.5);
    blocks.add(new Block(List.of(rule), 0.5, size * 0.5, true));
    Block text = type.text(title, large, room - indent, size * 0.15, true, Face.BOLD);
    List<Mark> marks = new ArrayList<>();
    if (!number.isEmpty()) {
      marks.add(type.line(number, 0, large * 0.95, large, Mark.Align.LEFT, Face.BOLD));
    }
    marks.addAll(Mark.moved(text.marks(), indent, 0, 1));
    blocks.add(new Block(marks, text.height(), text.after(), true));
    return blocks;
  }

  private List<Block> words(Piece piece, double room) {
    List<Block> blocks = new ArrayList<>(heading(piece.number(), piece.groove().caption(), room));
    if (!piece.changes().words().isEmpty()) {
      String changed =
          words.text(
              "page.changed", String.join(words.text("spoken.next"), piece.changes().words()));
      blocks.add(type.text(changed, size * 0.92, room, size * 0.2, true, Face.ITALIC));
    }
    said(piece.groove(), room, blocks);
    return blocks;
  }

  private static String bookmark(Piece piece) {
    return piece.number() + "  " + piece.groove().caption();
  }

  // ---- notes ----

  private List<Block> wide(Piece piece, Engraving engraving) {
    List<Block> blocks = new ArrayList<>(words(piece, width));
    blocks.set(0, blocks.get(0).marked(List.of(bookmark(piece))));
    List<Engraving.StaffSystem> systems = engraving.systems();
    for (int i = 0; i < systems.size(); i++) {
      Engraving.StaffSystem system = systems.get(i);
      double after = i + 1 < systems.size() ? space * 1.8 : space * 3;
      blocks.add(Block.notes(List.of(marks(system, 0, 0)), height(system), after));
    }
    return blocks;
  }

  private double height(Engraving.StaffSystem system) {
    return system.drawing().height() * space;
  }

  private Mark marks(Engraving.StaffSystem system, double x, double y) {
    return Mark.Group.of("system", Mark.moved(system.drawing().marks(), x, y, space));
  }

  /** Cells side by side: words from the top down, staves on one height. */
  private Block cells(CellRows.Row row, List<Engraving> engravings) {
    double column = columnWidth(row.columns());
    List<Mark> marks = new ArrayList<>();
    List<String> titles = new ArrayList<>();
    double staff = 0;
    for (int i = row.from(); i < row.to(); i++) {
      double x = (i - row.from()) * (column + gutter());
      double y = 0;
      for (Block block : words(pieces.get(i), column)) {
        marks.addAll(Mark.moved(block.marks(), x, y, 1));
        y += block.height() + block.after();
      }
      titles.add(bookmark(pieces.get(i)));
      staff = Math.max(staff, y + engravings.get(i).systems().get(0).staffTop() * space);
    }
    double height = 0;
    for (int i = row.from(); i < row.to(); i++) {
      double x = (i - row.from()) * (column + gutter());
      Engraving.StaffSystem system = engravings.get(i).systems().get(0);
      double y = staff - system.staffTop() * space;
      marks.add(marks(system, x, y));
      height = Math.max(height, y + height(system));
    }
    return Block.notes(marks, height, space * 3).marked(titles);
  }
}
