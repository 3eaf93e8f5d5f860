package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.notation.StickingLetters;
import tabor.notation.Written;
import tabor.words.Words;

/**
 * The key: every note head that a lesson uses, in its place on a staff, with its name, and the
 * signs that go with heads. A key is always printed, since kits differ (Weinberg 1994). Sizes in
 * staff spaces.
 */
public final class Key {
  private final TextMetrics font;
  private final Words words;
  private final double width;
  private final double size;

  private Key(TextMetrics font, Words words, double width, double size) {
    this.font = font;
    this.words = words;
    this.width = width;
    this.size = size;
  }

  /**
   * The rows of the key of these sections; none if they hold no stroke.
   *
   * @param words the language
   * @param width of a row at most
   * @param size of the letters
   */
  public static List<Drawing> rows(
      List<Groove> grooves, Words words, double width, double size, TextMetrics font) {
    return new Key(font, words, width, size).of(grooves);
  }

  /** The rows under one another; empty if the sections hold no stroke. */
  public static Optional<Drawing> whole(
      List<Groove> grooves, Words words, double width, double size, TextMetrics font) {
    List<Drawing> rows = rows(grooves, words, width, size, font);
    if (rows.isEmpty()) {
      return Optional.empty();
    }
    List<Mark> marks = new ArrayList<>();
    List<String> said = new ArrayList<>();
    double y = 0;
    double wide = 0;
    for (Drawing row : rows) {
      marks.addAll(Mark.moved(row.marks(), 0, y, 1));
      y += row.height() + size * 0.4;
      wide = Math.max(wide, row.width());
      said.add(row.words());
    }
    return Optional.of(new Drawing(wide, y, words.text("key.title"), words.list(said), marks));
  }

  /** Room for the clef, and between the staff and the signs beside it. */
  private static final double START = 3;

  /** Size of the letters of hands: a little larger than under the notes, as heads are here. */
  private static final double LETTER = 2.2;

  /** {@code low} is where its marks end, below the top of the staff or of the signs. */
  private record Cell(String label, List<Mark> marks, double width, double low) {}

  private List<Drawing> of(List<Groove> grooves) {
    Map<String, Surface> used = new LinkedHashMap<>();
    Set<Ornament> ornaments = new LinkedHashSet<>();
    boolean ghosts = false;
    boolean accents = false;
    boolean both = false;
    for (Groove groove : grooves) {
      both |= groove.setting().showSticking() && StickingLetters.sayBoth(groove);
      for (Stroke stroke : groove.strokes()) {
        used.put(stroke.surface().name(), stroke.surface());
        ornaments.addAll(stroke.ornaments().list());
        ghosts |= stroke.level() == Level.GHOST;
        accents |= stroke.level() == Level.ACCENT;
      }
    }
    List<Surface> surfaces = new ArrayList<>(used.values());
    surfaces.sort(
        (a, b) -> {
          int byPlace = Integer.compare(a.place().halfSpaces(), b.place().halfSpaces());
          return byPlace != 0 ? byPlace : a.name().compareTo(b.name());
        });
    if (surfaces.isEmpty()) {
      return List.of();
    }
    List<Cell> cells = new ArrayList<>();
    for (Surface surface : surfaces) {
      cells.add(surface(surface));
    }
    List<Cell> signs = signs(ornaments, ghosts, accents);
    if (both) {
      signs.add(letter(StickingLetters.BOTH, words.text("key.both")));
    }
    double beside = START + width(cells) + START + width(signs);
    if (!signs.isEmpty() && beside <= width) {
      return List.of(row(cells, true, signs));
    }
    List<Drawing> drawings = new ArrayList<>(rows(cells, true));
    if (!signs.isEmpty()) {
      drawings.addAll(rows(signs, false));
    }
    return drawings;
  }

  private static double width(List<Cell> cells) {
    return Lists.sum(cells, Cell::width);
  }

  private Cell cell(String label, List<Mark> marks, double low) {
    String shown = font.showable(label);
    double text = font.width(shown, size);
    return new Cell(shown, marks, Math.max(6.5, text + 2.2), low);
  }

  /** A letter as it stands under the notes, here at the height of a head. */
  private Cell letter(String letter, String label) {
    double text = font.width(letter, LETTER);
    return cell(
        label,
        List.of(new Mark.Words(letter, 0, LETTER * 0.36, LETTER, Mark.Align.MIDDLE, text)),
        1);
  }

  /** A head around x = 0 on the staff. */
  private Cell surface(Surface surface) {
    List<Mark> marks = new ArrayList<>();
    Sign head = Heads.of(surface.head(), Written.Type.QUARTER);
    double y = 4 - surface.place().halfSpaces() / 2.0;
    double half = head.box().width() / 2;
    for (double ledger = -1; ledger >= y; ledger--) {
      marks.add(ledger(half, ledger));
    }
    for (double ledger = 5; ledger <= y; ledger++) {
      marks.add(ledger(half, ledger));
    }
    marks.add(new Mark.Glyph(head, -half, y, 1));
    String sign =
        switch (surface.hihat()) {
          case OPEN, SPLASH -> "pictOpen";
          case HALF -> "pictHalfOpen2";
          case CLOSED, CHICK, NONE -> "";
        };
    if (!sign.isEmpty()) {
      Sign over = Sign.of(sign);
      double foot = surface.isFoot() ? y + 1.8 : Math.min(y, 0) - 0.9;
      marks.add(new Mark.Glyph(over, -over.box().width() / 2, foot, 1));
    }
    double low = y + (surface.isFoot() && !sign.isEmpty() ? 2.2 : 0.5);
    return cell(words.surface(surface), marks, low);
  }

  private static Mark ledger(double half, double y) {
    return Mark.Line.rule(-half - 0.35, y, half + 0.35, y, 0.16);
  }

  private List<Cell> signs(Set<Ornament> ornaments, boolean ghosts, boolean accents) {
    List<Cell> cells = new ArrayList<>();
    if (accents) {
      cells.add(cell(words.text("key.accent"), List.of(middle("articAccentAbove", 0, 1)), 1));
    }
    if (ghosts) {
      Sign paren = Sign.of("noteheadParenthesisLeft");
      double half = Sign.of("noteheadBlack").box().width() / 2;
      cells.add(
          cell(
              words.text("key.ghost"),
              List.of(
                  middle("noteheadBlack", 0, 1),
                  new Mark.Glyph(paren, -half - 0.1 - paren.box().width(), 0, 1),
                  new Mark.Glyph(Sign.of("noteheadParenthesisRight"), half + 0.1, 0, 1)),
              1));
    }
    for (Ornament ornament : Ornament.values()) {
      if (ornaments.contains(ornament)) {
        cells.add(cell(words.text("key." + ornament.word()), sign(ornament), 1));
      }
    }
    return cells;
  }

  private static List<Mark> sign(Ornament ornament) {
    return switch (ornament) {
      case FLAM, DRAG, RUFF -> small(ornament.graceNotes());
      case DIDDLE -> stemmed("tremolo1");
      case OPEN_ROLL -> stemmed("tremolo2");
      case ROLL -> stemmed("tremolo3");
      case BUZZ -> stemmed("buzzRoll");
      case CHOKE -> List.of(middle("pictChokeCymbal", 0.4, 1));
      case RIMSHOT ->
          List.of(
              middle("noteheadBlack", 0, 1),
              new Mark.Glyph(
                  Sign.of("rimShotSlash"), -Sign.of("noteheadBlack").box().width() / 2, 0, 1));
    };
  }

  private static List<Mark> stemmed(String sign) {
    double half = Sign.of("noteheadBlack").box().width() / 2;
    return List.of(
        middle("noteheadBlack", 0.6, 1),
        Mark.Line.rule(half - 0.065, -2, half - 0.065, 0.5, 0.13),
        new Mark.Glyph(Sign.of(sign), half - 0.065, -0.95, 1));
  }

  private static List<Mark> small(int count) {
    Sign head = Sign.of("noteheadBlack");
    double half = head.box().width() / 2;
    List<Mark> marks = new ArrayList<>();
    marks.add(new Mark.Glyph(head, 0.3, 0.4, 1));
    double width = head.box().width() * 0.64;
    double end = -1.9;
    double first = 0;
    for (int i = 0; i < count; i++) {
      double x = 0.3 - 0.45 - width - (count - 1 - i) * 0.95;
      double stem = x + width;
      first = i == 0 ? stem : first;
      marks.add(new Mark.Glyph(head, x, 0.4, 0.64));
      marks.add(Mark.Line.rule(stem - 0.05, end, stem - 0.05, 0.3, 0.1));
      if (i == count - 1 && count > 1) {
        marks.add(new Mark.Ink(Contour.band(first - 0.1, end + 0.15, stem, end + 0.15, 0.3)));
        marks.add(new Mark.Ink(Contour.band(first - 0.1, end + 0.6, stem, end + 0.6, 0.3)));
      }
    }
    if (count == 1) {
      marks.add(new Mark.Glyph(Sign.of("flag8thUp"), first - 0.1, end, 0.5));
    }
    marks.add(new Mark.Glyph(Sign.of("graceNoteSlashStemUp"), first, end, 0.64));
    return Mark.moved(marks, half - 0.5, 0, 1);
  }

  private static Mark middle(String name, double y, double scale) {
    Sign sign = Sign.of(name);
    return new Mark.Glyph(sign, -sign.box().width() / 2 - sign.box().left(), y, scale);
  }

  /** Cells side by side in as many rows as they need, on a staff or on none. */
  private List<Drawing> rows(List<Cell> cells, boolean staff) {
    double most = width - (staff ? START : 0);
    int rows = ends(cells, most).size();
    // As many rows as needed, and these about equally long.
    double least = width(cells) / rows;
    double room = most;
    for (int i = 0; i < 20; i++) {
      double narrower = (least + room) / 2;
      if (ends(cells, narrower).size() > rows) {
        least = narrower;
      } else {
        room = narrower;
      }
    }
    List<Drawing> drawings = new ArrayList<>();
    int start = 0;
    for (int end : ends(cells, room)) {
      drawings.add(row(cells.subList(start, end), staff, List.of()));
      start = end;
    }
    return drawings;
  }

  /** Where rows of a width end. */
  private static List<Integer> ends(List<Cell> cells, double room) {
    List<Integer> ends = new ArrayList<>();
    double used = 0;
    for (int i = 0; i < cells.size(); i++) {
      if (used > 0 && used + cells.get(i).width() > room) {
        ends.add(i);
        used = 0;
      }
      used += cells.get(i).width();
    }
    ends.add(cells.size());
    return ends;
  }

  /** One row, on a staff or on none; signs beside the staff stand at the height of its middle. */
  private Drawing row(List<Cell> cells, boolean staff, List<Cell> signs) {
    List<Mark> marks = new ArrayList<>();
    double top = staff ? 3.2 : 2.4;
    double start = staff ? START : 0;
    double used = start + width(cells);
    if (staff) {
      List<Mark> lines = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        lines.add(Mark.Line.rule(0, i, used, i, 0.12));
      }
      marks.add(Mark.Group.of("staff", lines));
      marks.add(new Mark.Glyph(Sign.of("unpitchedPercussionClef1"), 0.7, 2, 1));
    }
    // Labels stand on one line, close under what stands lowest.
    double low = Lists.largest(cells, Cell::low);
    double base = (staff ? Math.max(4.3, low) : low) + 0.4 + size;
    List<Mark> labels = new ArrayList<>();
    labels(cells, start, 0, base, marks, labels);
    labels(signs, used + START, 2, base, marks, labels);
    marks.add(Mark.Group.of("key", labels));
    List<String> said = new ArrayList<>(Lists.map(cells, Cell::label));
    said.addAll(Lists.map(signs, Cell::label));
    double right = signs.isEmpty() ? used : used + START + width(signs);
    return new Drawing(
        Math.max(right, 1),
        top + base + size * 0.3,
        words.text("key.title"),
        words.list(said),
        Mark.moved(marks, 0, top, 1));
  }

  /** Cells from a place on, their marks at one height and their labels on one line. */
  private void labels(
      List<Cell> cells, double from, double y, double base, List<Mark> marks, List<Mark> labels) {
    double x = from;
    for (Cell cell : cells) {
      double middle = x + cell.width() / 2;
      marks.addAll(Mark.moved(cell.marks(), middle, y, 1));
      double text = font.width(cell.label(), size);
      labels.add(new Mark.Words(cell.label(), middle, base, size, Mark.Align.MIDDLE, text));
      x += cell.width();
    }
  }
}
