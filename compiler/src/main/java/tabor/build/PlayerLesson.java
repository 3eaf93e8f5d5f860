package tabor.build;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tabor.emit.pdf.HandoutLook;
import tabor.groove.Chart;
import tabor.groove.ChartCut;
import tabor.groove.CountingWords;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Player;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.resolve.HandWords;
import tabor.words.Language;

/** A lesson as one student gets it. */
public final class PlayerLesson {
  private PlayerLesson() {}

  /**
   * The lesson with the sections, the page and the words of a student, its file named after the
   * student too: {@code LESSON.mia}. Empty if no section of it is left.
   *
   * @param lesson worked out with the options of this student
   */
  public static Optional<Lesson> of(Lesson lesson, Player player) {
    List<Section> sections = sections(lesson, player);
    if (sections.isEmpty()) {
      return Optional.empty();
    }
    Lesson.Extras extras = lesson.extras();
    CountingWords words = player.words();
    Language language = player.language();
    return Optional.of(
        new Lesson(
            lesson.file() + "." + player.name(),
            lesson.title(),
            lesson.by(),
            lesson.setting(),
            sections.stream().map(section -> onPage(section, player.wishes())).toList(),
            new Lesson.Extras(
                player.wishes().over(extras.wishes()),
                extras.goals(),
                extras.teacher(),
                extras.log(),
                words == null ? extras.words() : words,
                language == null ? extras.language() : language,
                extras.players(),
                head(lesson, player),
                null)));
  }

  /** The name, then the texts for this student. */
  private static List<String> head(Lesson lesson, Player player) {
    List<String> head = new ArrayList<>(List.of(player.caption()));
    head.addAll(texts(lesson, player));
    return head;
  }

  private static List<String> texts(Lesson lesson, Player player) {
    boolean leftHanded = lesson.setting().kit().leftHanded() || player.leftHanded();
    Language written = player.language() == null ? lesson.extras().language() : player.language();
    HandWords hands = new HandWords(leftHanded, () -> written == null ? Language.EN : written);
    return player.prose().stream().map(hands::in).toList();
  }

  /** Whose page it is, for the handout of a lesson that was made for a student. */
  public static HandoutLook.Reader reader(Lesson lesson, Player player, HandoutLook.Reader asked) {
    return new HandoutLook.Reader(
        player.caption(), texts(lesson, player), asked.teacher(), asked.paperAsked());
  }

  private static List<Section> sections(Lesson lesson, Player player) {
    if (player.sections().isEmpty()) {
      return lesson.sections();
    }
    Map<String, Section> named = new LinkedHashMap<>();
    Set<String> alone = new HashSet<>();
    for (Player.Pick pick : player.sections()) {
      List<Section> found = picked(lesson, pick);
      found.forEach(section -> named.put(section.name(), section));
      if (pick.from() != null && pick.to() == null) {
        alone.add(pick.from());
      }
    }
    Set<String> left = names(named.values());
    List<Section> kept = new ArrayList<>();
    for (Section section : named.values()) {
      if (!(section instanceof Chart chart)) {
        kept.add(section);
      } else {
        Optional<Chart> cut = ChartCut.of(chart, left);
        if (cut.isPresent()) {
          kept.add(cut.get());
        } else if (alone.contains(section.name())) {
          // Somebody wanted this chart by its name, and nothing that it plays.
          kept.add(section);
        }
      }
    }
    for (Chart chart : lesson.charts()) {
      if (!named.containsKey(chart.name())) {
        ChartCut.of(chart, left).ifPresent(kept::add);
      }
    }
    return kept;
  }

  private static List<Section> picked(Lesson lesson, Player.Pick pick) {
    List<Section> all = lesson.sections();
    if (pick.from() == null) {
      return all.subList(0, Math.min(pick.first(), all.size()));
    }
    if (pick.to() == null) {
      return lesson.section(pick.from()).map(List::of).orElse(List.of());
    }
    int from = index(all, pick.from());
    int to = index(all, pick.to());
    if (from < 0 || to < 0) {
      return List.of();
    }
    return all.subList(Math.min(from, to), Math.max(from, to) + 1);
  }

  private static int index(List<Section> all, String name) {
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).name().equals(name)) {
        return i;
      }
    }
    return -1;
  }

  private static Set<String> names(Collection<Section> sections) {
    Set<String> names = new HashSet<>();
    for (Section section : sections) {
      if (section instanceof Groove groove) {
        names.add(groove.name());
      } else if (section instanceof Sheet sheet) {
        sheet.grooves().forEach(groove -> names.add(groove.name()));
      }
    }
    return names;
  }

  /** A section on the page of a student, whose wishes win. */
  private static Section onPage(Section section, PageWishes wishes) {
    if (wishes.equals(PageWishes.NONE)) {
      return section;
    }
    PageNotes old = section.page();
    PageNotes page =
        new PageNotes(
            wishes.over(old.wishes()),
            old.newPage(),
            old.goals(),
            old.teacher(),
            old.blankSticking(),
            old.blankParts(),
            old.blankBars(),
            old.lineStarts());
    if (section instanceof Groove one) {
      return one.on(page);
    }
    if (section instanceof Sheet one) {
      return new Sheet(
          one.name(), one.title(), one.heading(), one.base(), one.variations(), one.prose(), page);
    }
    Chart one = (Chart) section;
    return new Chart(one.name(), one.title(), one.heading(), one.items(), one.prose(), page);
  }
}
