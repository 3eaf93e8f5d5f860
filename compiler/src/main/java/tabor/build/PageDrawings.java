package tabor.build;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.MeasuredScore;
import tabor.emit.engrave.TextMetrics;
import tabor.emit.html.Pictures;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.notation.Speller;
import tabor.rhythm.Time;
import tabor.words.Words;

/** The engraver's drawings for the practice page, wide for a desk and paper, narrow for a phone. */
final class PageDrawings implements Pictures {
  /** A page's column at ten pixels a staff space. */
  private static final double WIDE = 86;

  /** A phone's column at about nine pixels a staff space. */
  private static final double NARROW = 40;

  /** Size of the key's letters in staff spaces. */
  private static final double LETTERS = 1.6;

  /** How far the middle of a digit stands above its base line, in sizes of its type. */
  private static final double HALF_DIGIT = 0.36;

  private final Groove.Setting head;
  private final Printing printing;
  private final boolean clean;
  private final TextMetrics font;

  /**
   * Drawings for a lesson; tempo and feel stand where a section's own differ from the lesson's.
   *
   * @param clean true for the notes alone
   */
  PageDrawings(Lesson lesson, boolean clean, TextMetrics font) {
    this(lesson.setting(), Printing.of(lesson), clean, font);
  }

  private PageDrawings(Groove.Setting head, Printing printing, boolean clean, TextMetrics font) {
    this.head = head;
    this.printing = printing;
    this.clean = clean;
    this.font = font;
  }

  /** A section by itself with all its parts; its tempo and feel stand elsewhere. */
  static Score alone(Groove groove, TextMetrics font) {
    return new PageDrawings(groove.setting(), Printing.plain(), false, font).drawn(groove);
  }

  @Override
  public Groove printed(Groove groove) {
    return printing.printed(groove);
  }

  @Override
  public Score score(Groove groove) {
    return drawn(printed(groove));
  }

  private Score drawn(Groove groove) {
    MeasuredScore measured = measured(groove);
    Engraving wide = measured.engrave();
    boolean fits = wide.systems().size() == 1 && wide.whole().width() <= NARROW * 1.1;
    Picture narrow = fits ? null : picture(groove, measured.in(NARROW).engrave());
    return new Score(picture(groove, wide), narrow);
  }

  @Override
  public Key key(List<Groove> grooves) {
    return new Key(key(grooves, WIDE), key(grooves, NARROW));
  }

  private @Nullable Drawing key(List<Groove> grooves, double width) {
    return tabor.emit.engrave.Key.whole(
            grooves, Words.of(head.wording().language()), width, LETTERS, font)
        .orElse(null);
  }

  private MeasuredScore measured(Groove groove) {
    Groove.Setting own = groove.setting();
    Look look = new Look(WIDE, true, false).withTempo(own, head);
    Look blank = printing.look(look, groove);
    Look wanted = clean ? blank.clean() : blank;
    return MeasuredScore.of(Speller.spell(groove, Changes.of(groove).strokes()), wanted, font)
        .silent();
  }

  private static Picture picture(Groove groove, Engraving engraving) {
    List<StaffRow> rows = new ArrayList<>();
    for (Engraving.StaffSystem system : engraving.systems()) {
      List<Moment> moments = new ArrayList<>();
      for (Engraving.Moment moment : system.moments()) {
        Time line = groove.meters().start(moment.bar());
        moments.add(new Moment(line.plus(moment.at()), moment.x()));
      }
      if (!system.moments().isEmpty()) {
        int last = system.moments().get(system.moments().size() - 1).bar();
        Time end = groove.meters().length(last);
        moments.add(new Moment(end, system.drawing().width()));
      }
      rows.add(new StaffRow(system.drawing(), bead(system), moments));
    }
    return new Picture(rows);
  }

  /** The middle of the row of counts; a line over the staff where nothing is counted. */
  private static double bead(Engraving.StaffSystem system) {
    for (Mark mark : system.drawing().marks()) {
      if (mark instanceof Mark.Group group
          && group.classes().contains("counts")
          && !group.marks().isEmpty()
          && group.marks().get(0) instanceof Mark.Words words) {
        return words.y() - words.size() * HALF_DIGIT;
      }
    }
    return Math.max(0.8, system.staffTop() - 1.5);
  }
}
