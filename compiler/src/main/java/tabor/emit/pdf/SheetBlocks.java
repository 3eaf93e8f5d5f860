package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.LineWishes;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.BlankParts;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Loudness;
import tabor.groove.PageNotes;
import tabor.groove.Part;
import tabor.groove.Sheet;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.notation.Speller;
import tabor.rhythm.Time;

/**
 * A sheet on paper: rows of variations one after another, as many to a row as fit, each with its
 * number above it; clef and meter stand at the start of a row only.
 */
final class SheetBlocks extends HandoutPart {
  SheetBlocks(Lesson lesson, HandoutLook look, TextMetrics font) {
    super(look, lesson.setting(), font);
  }

  /** True if the variations can follow each other in one row: with one meter and no pickup. */
  static boolean fits(Sheet sheet) {
    Groove.Setting first = sheet.grooves().get(0).setting();
    return Lists.all(
        sheet.grooves(),
        groove ->
            groove.pickup().equals(Time.ZERO)
                && groove.meters().size() == 1
                && groove.hairpins().isEmpty()
                && groove.setting().equals(first));
  }

  /** The rows of the variations, without the heading and without the parts that are left empty. */
  List<Block> of(Sheet sheet) {
    List<Part> blank = sheet.page().blankParts();
    List<Groove> all = Lists.map(sheet.grooves(), one -> BlankParts.of(one, blank));
    Engraving whole = engrave(List.of(all), LineWishes.NONE).get(0);
    List<List<Groove>> rows = rows(all, whole);
    int most = Math.max(1, Lists.most(rows, row -> bars(row)));
    LineWishes lines = new LineWishes(most, Set.of());
    List<Engraving> engravings = engrave(rows, lines);
    for (List<List<Groove>> next = whole(rows, engravings);
        next.size() > rows.size();
        next = whole(rows, engravings)) {
      rows = next;
      engravings = engrave(rows, lines);
    }
    List<Block> blocks = new ArrayList<>();
    int number = 1;
    for (int i = 0; i < rows.size(); i++) {
      List<Engraving.StaffSystem> systems = engravings.get(i).systems();
      for (int part = 0; part < systems.size(); part++) {
        blocks.add(row(sheet, rows.get(i), number, systems.get(part), i + 1 == rows.size()));
      }
      number += rows.get(i).size();
    }
    return blocks;
  }

  private static int bars(List<Groove> row) {
    return row.stream().mapToInt(Groove::bars).sum();
  }

  /** The variations that stand whole in each system of the sheet, drawn as one section. */
  private static List<List<Groove>> rows(List<Groove> all, Engraving whole) {
    int most = Math.max(1, Lists.most(whole.systems(), system -> bars(system)));
    List<List<Groove>> rows = new ArrayList<>();
    List<Groove> row = new ArrayList<>();
    for (Groove groove : all) {
      if (!row.isEmpty() && bars(row) + groove.bars() > most) {
        rows.add(List.copyOf(row));
        row.clear();
      }
      row.add(groove);
    }
    rows.add(List.copyOf(row));
    return rows;
  }

  /** The rows that take several systems parted, so that no variation goes over to the next line. */
  private static List<List<Groove>> whole(List<List<Groove>> rows, List<Engraving> engravings) {
    List<List<Groove>> parted = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      List<Groove> row = rows.get(i);
      List<Engraving.StaffSystem> systems = engravings.get(i).systems();
      int fit = row.size();
      if (systems.size() > 1) {
        int room = bars(systems.get(0));
        fit = 1;
        while (fit < row.size() && bars(row.subList(0, fit + 1)) <= room) {
          fit++;
        }
      }
      parted.add(List.copyOf(row.subList(0, fit)));
      if (fit < row.size()) {
        parted.add(List.copyOf(row.subList(fit, row.size())));
      }
    }
    return parted;
  }

  private static int bars(Engraving.StaffSystem system) {
    return (int) system.moments().stream().mapToInt(m -> m.bar()).distinct().count();
  }

  private List<Engraving> engrave(List<List<Groove>> rows, LineWishes lines) {
    Look full = new Look(width / space, true, false).withLines(lines).withEnding(Look.Ending.FINAL);
    Look own = look.clean() ? full.clean() : full;
    return Engraver.engrave(
        Lists.map(rows, row -> Speller.spell(joined(row), changed(row))),
        Lists.map(rows, row -> own),
        font);
  }

  /** Variations one after another, as one section. */
  private static Groove joined(List<Groove> row) {
    Groove first = row.get(0);
    List<Stroke> strokes = new ArrayList<>();
    List<Loudness.Mark> marks = new ArrayList<>();
    int bars = 0;
    for (Groove groove : row) {
      for (Stroke stroke : groove.strokes()) {
        strokes.add(later(stroke, bars));
      }
      for (Loudness.Mark mark : groove.marks()) {
        marks.add(new Loudness.Mark(mark.bar() + bars, mark.at(), mark.loudness()));
      }
      bars += groove.bars();
    }
    return new Groove(
        first.name(),
        null,
        first.heading(),
        null,
        first.setting(),
        bars,
        Time.ZERO,
        strokes,
        strokes,
        first.plays(),
        marks,
        List.of(),
        List.of(),
        Set.of(),
        PageNotes.NONE);
  }

  private static Stroke later(Stroke stroke, int bars) {
    return stroke.moved(stroke.bar() + bars, stroke.at(), stroke.length(), stroke.slot());
  }

  /** The strokes that differ from the base, where they stand in the row. */
  private Set<Stroke> changed(List<Groove> row) {
    Set<Stroke> changed = new HashSet<>();
    int bars = 0;
    for (Groove groove : row) {
      if (!look.clean() && groove.setting().showChanges()) {
        for (Stroke stroke : Changes.of(groove).strokes()) {
          changed.add(later(stroke, bars));
        }
      }
      bars += groove.bars();
    }
    return changed;
  }

  /** A row: numbers and captions, and the staff below them. */
  private Block row(
      Sheet sheet, List<Groove> row, int first, Engraving.StaffSystem system, boolean last) {
    double labels = size * 1.1;
    List<Mark> marks = new ArrayList<>();
    marks.add(Mark.Group.of("system", Mark.moved(system.drawing().marks(), 0, labels, space)));
    int bar = 1;
    for (int i = 0; i < row.size(); i++) {
      int here = bar;
      double x =
          system.moments().stream()
              .filter(moment -> moment.bar() == here)
              .mapToDouble(Engraving.Moment::x)
              .min()
              .orElse(-1);
      if (x >= 0) {
        String number = Integer.toString(first + i);
        double left = x * space - size * 0.3;
        marks.add(type.line(number, left, size * 0.95, size * 1.1, Mark.Align.LEFT, Face.BOLD));
        String caption = sheet.variations().get(first + i - 1).caption();
        if (caption != null && !caption.isBlank()) {
          double after = left + type.width(number, size * 1.1, Face.BOLD) + size * 0.5;
          marks.add(
              type.line(caption, after, size * 0.95, size * 0.9, Mark.Align.LEFT, Face.ITALIC));
        }
      }
      bar += row.get(i).bars();
    }
    double height = labels + system.drawing().height() * space;
    return Block.notes(marks, height, last ? space * 3 : space * 1.6);
  }
}
