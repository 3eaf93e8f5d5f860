package tabor.build;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.png.PngWriter.Ground;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.Sheet;

/**
 * What is asked for of the outputs.
 *
 * @param only names of the sections wanted; empty for all
 * @param countIn true for a bar of clicks before grooves and steps
 * @param handout how handouts are printed
 * @param ground what lies behind the notes of a picture
 * @param systems true for a drawing (svg) of each system instead of one of each section
 */
public record BuildOptions(
    Set<String> only, boolean countIn, HandoutLook handout, Ground ground, boolean systems) {
  /** Everything, with count-in. */
  public static final BuildOptions ALL = new BuildOptions(Set.of(), true);

  /** Plain handouts and white pictures. */
  public BuildOptions(Set<String> only, boolean countIn) {
    this(only, countIn, HandoutLook.PLAIN, Ground.WHITE, false);
  }

  /** Copies the set. */
  public BuildOptions {
    only = Set.copyOf(only);
  }

  /** The same with other handouts. */
  public BuildOptions withHandout(HandoutLook look) {
    return new BuildOptions(only, countIn, look, ground, systems);
  }

  /** The same for a lesson: who wants a sheet wants its variations, where these stand alone. */
  public BuildOptions in(Lesson lesson) {
    Set<String> names = new HashSet<>(only);
    for (Sheet sheet : lesson.sheets()) {
      if (only.contains(sheet.name())) {
        sheet.grooves().forEach(groove -> names.add(groove.name()));
      }
    }
    return new BuildOptions(names, countIn, handout, ground, systems);
  }

  /** The sections that are wanted, in order; of a sheet that is not, the variations that are. */
  public List<Section> sections(Lesson lesson) {
    List<Section> found = new ArrayList<>();
    for (Section section : lesson.sections()) {
      if (wants(section)) {
        found.add(section);
      } else if (section instanceof Sheet sheet) {
        sheet.grooves().stream().filter(this::wants).forEach(found::add);
      }
    }
    return found;
  }

  /** True if this section is wanted. */
  public boolean wants(Section section) {
    return only.isEmpty() || only.contains(section.name());
  }
}
