package tabor.ide;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.groove.Loudness;
import tabor.groove.Stroke;
import tabor.ide.Catalog.Kind;
import tabor.ide.Form.Label;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.rhythm.NoteValue;
import tabor.source.Span;

/** What could stand at the cursor, the likeliest first. */
public final class Completion {
  private final Situation situation;
  private final Typed typed;
  private final Map<String, Proposal> found = new LinkedHashMap<>();

  private Completion(Situation situation, Typed typed) {
    this.situation = situation;
    this.typed = typed;
  }

  /** The proposals at an offset. */
  public static List<Proposal> at(Compiled compiled, int offset, Library library) {
    Situation situation = Situation.at(compiled, offset, library);
    Typed typed = Typed.of(situation.typed());
    Completion completion = new Completion(situation, typed);
    if (typed.inText()) {
      completion.files();
    } else if (!typed.inComment()) {
      completion.words();
    }
    return List.copyOf(completion.found.values());
  }

  private void words() {
    int colon = typed.words().indexOf(":");
    if (colon >= 0) {
      letters(typed.words().subList(0, colon));
      return;
    }
    for (Phrase phrase : Phrase.ALL) {
      if (!phrase.rooms().contains(Situation.room(situation.cursor().section()))) {
        continue;
      }
      Set<Integer> states = phrase.form().begin();
      for (String word : typed.words()) {
        states = phrase.form().after(states, word);
      }
      for (Label label : phrase.form().next(states)) {
        propose(phrase, label);
      }
    }
  }

  private void propose(Phrase phrase, Label label) {
    if (!label.isPlaceholder()) {
      boolean opens = typed.words().isEmpty() && label.word().equals(phrase.keyword());
      boolean limb = label.word().length() > 4 && Leaves.isLimb(label.word());
      boolean said = label.word().length() > 1 && typed.words().contains(label.word());
      if (!said || limb || label.word().equals("and") || label.word().equals("N")) {
        add(
            label.word(),
            limb ? Proposal.Kind.LIMB : Proposal.Kind.KEYWORD,
            opens ? phrase.meaning() : "");
      }
      return;
    }
    switch (label.word()) {
      case "SURFACE" -> surfaces();
      case "COUNT" -> counts(phrase);
      case "SECTION" -> names(Kind.SECTION, Proposal.Kind.SECTION);
      case "PATTERN" -> patterns();
      case "KIT" -> kits();
      case "VALUE" -> values(phrase);
      case "LOUDNESS" -> {
        for (Loudness loudness : Loudness.values()) {
          add(loudness.word(), Proposal.Kind.VALUE, "");
        }
      }
      case "SYLLABLE" -> {
        add("&", Proposal.Kind.COUNT, "every half beat");
        add("e", Proposal.Kind.COUNT, "");
        add("a", Proposal.Kind.COUNT, "");
        add("beat", Proposal.Kind.COUNT, "");
      }
      case "METER" -> {
        for (String meter : List.of("4/4", "3/4", "2/4", "6/8", "12/8", "5/4", "7/8", "9/8")) {
          add(meter, Proposal.Kind.VALUE, "");
        }
      }
      case "PERCENT" -> add("62%", Proposal.Kind.VALUE, "the share of the first of the pair");
      case "HEAD" -> {
        for (Surface.Head head : Surface.Head.values()) {
          add(head.word(), Proposal.Kind.VALUE, "note head");
        }
      }
      default -> {
        // NAME, TEXT, N and the like are the writer's own.
      }
    }
  }

  private void surfaces() {
    Kit kit = situation.kit();
    for (Surface surface : kit.surfaces().values()) {
      if (kit.struck(surface) != null) {
        char letter = kit.letterOf(surface);
        add(
            surface.name(),
            Proposal.Kind.SURFACE,
            surface.words() + (letter == 0 ? "" : " (" + letter + ")"));
      }
    }
  }

  private void counts(Phrase phrase) {
    if (situation.above().isEmpty()) {
      BarCounts.plain(situation.meter()).forEach(count -> add(count, Proposal.Kind.COUNT, ""));
      return;
    }
    boolean anywhere =
        switch (phrase.keyword()) {
          case "add", "dynamic", "crescendo", "diminuendo", "fill" -> true;
          case "move" -> typed.words().contains("to");
          default -> false;
        };
    if (anywhere) {
      BarCounts.readable(situation.above().get())
          .forEach(count -> add(count, Proposal.Kind.COUNT, ""));
      return;
    }
    List<String> target = target(phrase);
    BarCounts.struck(
            situation.above().get(), stroke -> Targets.matches(stroke, target) && isInBars(stroke))
        .forEach((count, strokes) -> add(count, Proposal.Kind.COUNT, who(strokes)));
  }

  /** The words of the target: those after the verb, or before it where the limb comes first. */
  private List<String> target(Phrase phrase) {
    List<String> words = typed.words();
    List<String> target = new ArrayList<>();
    boolean limbFirst = phrase.keyword().equals("plays");
    if (phrase.keyword().equals("follows")) {
      for (String word : words.subList(words.indexOf("follows") + 1, words.size())) {
        if (List.of("at", "in", "where").contains(word)) {
          break;
        }
        target.add(word);
      }
      return Targets.read(target);
    }
    for (String word : limbFirst ? words : words.subList(1, words.size())) {
      if (List.of("at", "in", "where", "from", "between", "plays", "ghosted", "plain", "accented")
          .contains(word)) {
        break;
      }
      target.add(word);
    }
    return Targets.read(target);
  }

  private boolean isInBars(Stroke stroke) {
    List<String> words = typed.words();
    int bar = words.indexOf("bar");
    if (bar > 0 && bar + 1 < words.size() && words.get(bar + 1).matches("\\d{1,3}")) {
      return stroke.bar() == Integer.parseInt(words.get(bar + 1));
    }
    return true;
  }

  private static String who(List<Stroke> strokes) {
    Set<String> who = new LinkedHashSet<>();
    for (Stroke stroke : strokes) {
      who.add(stroke.limb().words() + ", " + stroke.surface().words());
    }
    return String.join("; ", who);
  }

  private void names(Kind kind, Proposal.Kind as) {
    Compiled compiled = situation.cursor().compiled();
    for (Catalog.Entry entry : Catalog.visible(compiled, situation.library())) {
      boolean below =
          entry.compiled() == compiled
              && kind == Kind.SECTION
              && compiled.span(entry.spot()).start() > situation.lineStart();
      boolean chart = Situation.room(entry.section()) == Phrase.Room.CHART;
      boolean inChart = Situation.room(situation.cursor().section()) == Phrase.Room.CHART;
      if (entry.kind() == kind && !chart && (!below || inChart)) {
        add(entry.name(), as, entry.title() == null ? "" : entry.title());
      }
    }
  }

  private void patterns() {
    names(Kind.PATTERN, Proposal.Kind.PATTERN);
    for (String name : Rudiments.all().keySet()) {
      // The short names are the ones that players say.
      add(name.replaceFirst("^single-(?=paradiddle)", ""), Proposal.Kind.PATTERN, "rudiment");
    }
    Timelines.all().forEach((name, places) -> add(name, Proposal.Kind.PATTERN, places));
    add("euclid", Proposal.Kind.PATTERN, "K strokes over N places, as even as can be");
  }

  private void kits() {
    names(Kind.KIT, Proposal.Kind.KIT);
    Kits.NAMES.forEach(name -> add(name, Proposal.Kind.KIT, "built in"));
  }

  private void values(Phrase phrase) {
    for (NoteValue value : NoteValue.values()) {
      add(value.word(), Proposal.Kind.VALUE, "");
    }
    if (phrase.keyword().equals("shift")) {
      add("beats", Proposal.Kind.VALUE, "");
      add("bars", Proposal.Kind.VALUE, "");
    }
  }

  private void letters(List<String> heading) {
    if (heading.isEmpty()) {
      return;
    }
    List<String> words = Targets.read(heading);
    String subject = words.get(words.size() - 1);
    boolean pattern = heading.get(0).equals("pattern");
    boolean letterKit =
        !pattern && Leaves.isLimb(subject) && !List.of("hands", "feet", "line").contains(subject);
    if (letterKit) {
      boolean foot = subject.endsWith("foot");
      letter("x", "what the " + subject + " plays");
      for (Map.Entry<Character, String> entry : situation.kit().letters().entrySet()) {
        Surface surface = situation.kit().surface(entry.getValue());
        if (surface != null && surface.isFoot() == foot) {
          letter(entry.getKey().toString(), surface.words());
        }
      }
    } else {
      letter("r", "right");
      letter("l", "left");
      letter("b", "both at once");
      letter("x", "either");
      if (subject.equals("line")) {
        letter("k", "right foot");
        letter("p", "left foot");
      }
    }
    letter(".", "silence");
    letter("-", "the stroke before goes on");
  }

  private void letter(String letter, String detail) {
    Span here = new Span(situation.cursor().offset(), situation.cursor().offset());
    found.putIfAbsent(letter, new Proposal(letter, Proposal.Kind.LETTER, detail, here));
  }

  private void files() {
    if (!typed.words().equals(List.of("use"))) {
      return;
    }
    Path self = situation.cursor().compiled().file();
    Path folder = self.getParent();
    if (folder == null) {
      return;
    }
    for (Path file : situation.library().files()) {
      if (file.startsWith(folder) && !file.equals(self)) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        Span inQuotes = new Span(typed.span().start() + 1, typed.span().end());
        found.putIfAbsent(
            name,
            new Proposal(name, Proposal.Kind.FILE, "", inQuotes.shift(situation.lineStart())));
      }
    }
  }

  private void add(String label, Proposal.Kind kind, String detail) {
    found.putIfAbsent(
        label, new Proposal(label, kind, detail, typed.span().shift(situation.lineStart())));
  }
}
