package tabor.build;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.TextMetrics;
import tabor.emit.html.Pictures;
import tabor.emit.svg.SvgWriter;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.notation.Speller;
import tabor.rhythm.Time;

/**
 * The engraver's drawings for the page that plays, wide for a desk and paper, narrow for a phone.
 */
final class PageDrawings implements Pictures {
  /** A page's column at ten pixels a staff space. */
  private static final double WIDE = 86;

  /** A phone's column at about nine pixels a staff space. */
  private static final double NARROW = 40;

  /** Size of the key's letters in staff spaces. */
  private static final double LETTERS = 1.6;

  /** How far the moving mark reaches beyond the staff, in staff spaces. */
  private static final double REACH = 1.6;

  private static final int UNIT = SvgWriter.UNIT;

  private final Groove.Setting head;
  private final boolean clean;
  private final TextMetrics font;

  /**
   * Drawings for a lesson; tempo and feel stand where a section's own differ from the lesson's.
   *
   * @param clean true for the notes alone
   */
  PageDrawings(Lesson lesson, boolean clean, TextMetrics font) {
    this.head = lesson.setting();
    this.clean = clean;
    this.font = font;
  }

  @Override
  public Score score(Groove groove) {
    Engraving wide = engrave(groove, WIDE);
    boolean fits = wide.systems().size() == 1 && wide.whole().width() <= NARROW * 1.1;
    Picture narrow = fits ? null : picture(groove, engrave(groove, NARROW), "narrow");
    return new Score(picture(groove, wide, "wide"), narrow);
  }

  @Override
  public Key key(List<Groove> grooves) {
    return new Key(key(grooves, WIDE, "key-wide"), key(grooves, NARROW, "key-narrow"));
  }

  private String key(List<Groove> grooves, double width, String name) {
    return tabor.emit.engrave.Key.whole(grooves, width, LETTERS, font)
        .map(drawing -> SvgWriter.element(drawing, name))
        .orElse("");
  }

  private Engraving engrave(Groove groove, double width) {
    Groove.Setting own = groove.setting();
    boolean tempo = !own.tempo().equals(head.tempo()) || !own.feel().equals(head.feel());
    Look look = new Look(width, true, true, true, false, tempo);
    Look wanted = clean ? look.clean() : look;
    return Engraver.engrave(Speller.spell(groove, Changes.of(groove).strokes()), wanted, font);
  }

  private static Picture picture(Groove groove, Engraving engraving, String kind) {
    String svg = SvgWriter.element(engraving.whole(), groove.name() + "-" + kind);
    return new Picture(svg, places(groove, engraving));
  }

  private static List<Place> places(Groove groove, Engraving engraving) {
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < engraving.systems().size(); i++) {
      Engraving.StaffSystem system = engraving.systems().get(i);
      double staff = engraving.topOf(i) + system.staffTop();
      double top = (staff - REACH) * UNIT;
      double bottom = (staff + 4 + REACH) * UNIT;
      for (Engraving.Moment moment : system.moments()) {
        Time line = groove.meter().bar().times(moment.bar() - 1L);
        places.add(new Place(line.plus(moment.at()), moment.x() * UNIT, top, bottom));
      }
      if (!system.moments().isEmpty()) {
        int last = system.moments().get(system.moments().size() - 1).bar();
        Time end = groove.meter().bar().times(last);
        places.add(new Place(end, system.drawing().width() * UNIT, top, bottom));
      }
    }
    return places;
  }
}
