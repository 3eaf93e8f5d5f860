package tabor.weave;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.grid.Grid;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;

/**
 * What a block shows, ready to be drawn.
 *
 * @param wish what it asked for
 * @param source the text as written: of the whole, or of the sections it names
 * @param lesson with the sections shown and no others
 */
public record Figure(Wish wish, String source, Lesson lesson) {
  /** A picture of each groove and step, in order; a chart has no staff of its own. */
  public List<Picture> pictures() {
    List<Picture> pictures = new ArrayList<>();
    List<Groove> grooves = lesson.grooves();
    for (Groove groove : grooves) {
      pictures.add(Picture.of(groove, wish, grooves.size() > 1));
    }
    return pictures;
  }

  /** The same with lines of music of another width, in pixels. */
  Figure at(int width) {
    return new Figure(wish.at(width), source, lesson);
  }

  /** The counted grid; lines end with LF. */
  public String grid() {
    return Grid.of(lesson, section -> true);
  }

  /** The names of the sections, for one that stands for the whole. */
  String name() {
    List<Section> sections = lesson.sections();
    return sections.size() == 1 ? sections.get(0).name() : lesson.file();
  }

  /** What it is called: its caption, else its title. */
  String title() {
    return wish.caption().isEmpty() ? lesson.title() : wish.caption();
  }
}
