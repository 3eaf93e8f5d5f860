package tabor.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/** Says what changed, one line for each matter and place. */
public final class ChangeWords {
  /** What a section says for itself alone. */
  private static final Set<String> OWN = Set.of("title", "place", "", Detail.PROSE, Detail.ERRORS);

  /** The sections that changed, by their names. */
  private final Map<String, SectionChange> changed = new HashMap<>();

  ChangeWords(FileChange change) {
    for (SectionChange section : change.sections()) {
      if (section.after() != null && section.state() == SectionChange.State.CHANGED) {
        changed.putIfAbsent(section.after().name(), section);
      }
    }
  }

  /**
   * One line.
   *
   * @param about the section it is about, such as {@code step answer}; empty for the lesson
   * @param text what is said of it, such as {@code , bar 1: kick added on 2&}
   */
  public record Said(String about, String text) {
    @Override
    public String toString() {
      return about + text;
    }
  }

  /** All lines, the lesson first; none where the music is the same. */
  public static List<Said> of(FileChange change) {
    Set<Said> said = new LinkedHashSet<>();
    change.details().forEach(detail -> said.add(new Said("", detail.words())));
    ChangeWords words = new ChangeWords(change);
    change.sections().forEach(section -> said.addAll(words.about(section)));
    return List.copyOf(said);
  }

  /** The lines about one section of this change. */
  List<Said> about(SectionChange section) {
    List<Said> said = new ArrayList<>();
    // What changed in the section that a step comes from may have come with it.
    Groove base = section.after() instanceof Groove groove ? groove.base() : null;
    of(section, base == null ? null : changed.get(base.name()), said);
    return said;
  }

  private static void of(SectionChange section, @Nullable SectionChange base, List<Said> said) {
    String name = section.name();
    switch (section.state()) {
      case NEW -> said.add(new Said(name, " is new"));
      case GONE -> said.add(new Said(name, " is taken out"));
      case CHANGED -> {
        boolean variation = section.isVariation();
        if (section.was() != null && !variation) {
          said.add(new Said(name, " was called " + section.was()));
        }
        List<Detail> details = new ArrayList<>(section.details());
        List<StrokeChange> strokes = new ArrayList<>(section.strokes());
        boolean inherits = false;
        if (base != null) {
          inherits = details.removeIf(detail -> isInherited(detail, base));
          inherits |= strokes.removeIf(stroke -> isInherited(stroke, base));
        }
        details.forEach(detail -> said.add(said(section, detail)));
        BarWords.of(section, strokes).forEach(words -> said.add(new Said(name, ", " + words)));
        if (inherits) {
          String rest = details.isEmpty() && strokes.isEmpty() ? "changed as " : "also changed as ";
          // Said once of a sheet, whose variations all come from one section.
          boolean whole = variation && details.isEmpty() && strokes.isEmpty();
          String who = whole ? name.substring(0, name.lastIndexOf('-')) : name;
          said.add(new Said(who, " " + rest + base.label() + " did"));
        }
      }
    }
  }

  private static boolean isInherited(Detail detail, SectionChange base) {
    return !OWN.contains(detail.what()) && base.details().contains(detail);
  }

  private static boolean isInherited(StrokeChange stroke, SectionChange base) {
    return base.strokes().stream()
        .anyMatch(
            other ->
                isSame(stroke.before(), other.before()) && isSame(stroke.after(), other.after()));
  }

  private static boolean isSame(@Nullable Stroke a, @Nullable Stroke b) {
    if (a == null || b == null) {
      return a == null && b == null;
    }
    return Stroke.areTogether(a, b) && StrokeChange.alike(a, b);
  }

  private static Said said(SectionChange section, Detail detail) {
    if (detail.what().equals(Detail.PROSE)) {
      String how = detail.words().substring(Detail.PROSE.length());
      return new Said("", "prose of " + section.label() + how);
    }
    if (detail.what().equals(Detail.ERRORS)) {
      return new Said(section.name(), " " + detail.words());
    }
    return new Said(section.name(), ": " + detail.words());
  }
}
