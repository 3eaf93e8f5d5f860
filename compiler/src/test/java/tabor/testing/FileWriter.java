package tabor.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Writes a random valid file, section by section. */
final class FileWriter {
  private static final List<String> METERS =
      List.of("4/4", "3/4", "6/8", "12/8", "7/8 in 2+2+3", "5/8", "6/8 in 6", "4/4 in 2", "2/4");
  private static final int[] BEATS = {4, 3, 2, 4, 3, 5, 6, 2, 2};

  private final StringBuilder text = new StringBuilder();
  private final List<String> grooves = new ArrayList<>();
  private final List<String> patterns = new ArrayList<>();
  private final List<String> kits = new ArrayList<>();
  private final Random random;
  private int number;
  private int meter;
  private @Nullable StepWriter steps;

  FileWriter(Random random) {
    this.random = random;
  }

  String text() {
    return text.toString();
  }

  void header() {
    meter = random.nextInt(METERS.size());
    maybe(random, "title \"Saturday class\"\n");
    maybe(random, "by    \"The back row\"   # all of us\n");
    if (meter != 0 || random.nextBoolean()) {
      text.append("time  ").append(METERS.get(meter)).append('\n');
    }
    maybe(random, "tempo " + (50 + random.nextInt(40)) + "\n");
    maybe(random, "feel  swing eighths 60%\n");
    maybe(random, "on    five-piece\n");
    maybe(random, "levels ghost 30 plain 80 accent 110\n");
    maybe(random, "show  counts sticking\n");
    maybe(random, "\n");
  }

  private void maybe(Random dice, String line) {
    if (dice.nextInt(3) == 0) {
      text.append(line);
    }
  }

  private static <T> T one(Random dice, List<T> of) {
    return of.get(dice.nextInt(of.size()));
  }

  private String name(String stem) {
    number++;
    return stem + number;
  }

  /** A section of any kind. */
  void section(Random dice) {
    switch (dice.nextInt(12)) {
      case 0 -> pattern(dice);
      case 1 -> kit(dice);
      case 2 -> chart(dice);
      case 6 -> sheet(dice);
      case 7 -> player(dice);
      case 3, 4, 5 -> groove(dice, 0);
      default -> step(dice);
    }
  }

  private void pattern(Random dice) {
    String name = name("pat");
    StringBuilder places = new StringBuilder();
    int count = 2 + dice.nextInt(7);
    for (int i = 0; i < count; i++) {
      String letter = i % 2 == 0 ? "r" : "l";
      places.append(
          switch (dice.nextInt(7)) {
            case 0 -> letter.toUpperCase(java.util.Locale.ROOT);
            case 1 -> "(" + letter + ")";
            case 2 -> i == 0 ? letter : ".";
            case 3 -> letter + "/";
            case 4 -> "{" + letter + letter + "}";
            default -> letter + (dice.nextInt(4) == 0 ? " " : "");
          });
    }
    text.append("pattern ").append(name).append(" : ").append(places).append('\n');
    patterns.add(name);
  }

  private void kit(Random dice) {
    String name = name("kit");
    text.append("kit ").append(name).append(" like five-piece\n");
    maybe(dice, "  surface gong letter g key 52 staff a5 head x\n");
    maybe(dice, "  surface block key 76\n");
    maybe(dice, "  letter q = ride.bell\n");
    maybe(dice, "  without tom2 plays floor\n");
    maybe(dice, "  left-handed\n");
    maybe(dice, "  place floor 60 cm 50 degrees right 55 cm high\n");
    kits.add(name);
  }

  /** A groove of at least {@code least} bars (0 for a few); returns how many it has. */
  int groove(Random dice, int least) {
    String name = name("g");
    text.append("groove ").append(name);
    text.append(dice.nextBoolean() ? " \"Groove " + number + "\"\n" : "\n");
    int own = dice.nextInt(4) == 0 ? dice.nextInt(METERS.size()) : meter;
    if (own != meter) {
      text.append("  time ").append(METERS.get(own)).append('\n');
    }
    maybe(dice, "  tempo " + (60 + dice.nextInt(30)) + "\n");
    if (!kits.isEmpty() && dice.nextBoolean()) {
      text.append("  on ").append(one(dice, kits)).append('\n');
    }
    maybe(dice, "  text \"" + one(dice, List.of("Low taps.", "Count # aloud", "Relax")) + "\"\n");
    GrooveWriter writer = new GrooveWriter(dice, BEATS[own], patterns);
    int bars = Math.max(least, 1 + dice.nextInt(4));
    text.append(writer.lanes(bars));
    maybe(dice, "  text \"\"\"\n    Over\n      two lines.\n  \"\"\"\n");
    steps = new StepWriter(name, own, BEATS[own], bars, writer.hasHands());
    if (own == meter) {
      grooves.add(name);
    }
    return bars;
  }

  private void step(Random dice) {
    if (steps == null || steps.isSpent()) {
      groove(dice, 0);
      return;
    }
    String name = name("s");
    String title = " \"Step " + number + "\"";
    text.append("step ")
        .append(
            switch (dice.nextInt(3)) {
              case 0 -> name;
              case 1 -> name + title;
              default -> name + title + " from " + steps.last();
            })
        .append('\n')
        .append(steps.edits(dice, steps.meter() == meter ? grooves : List.of()));
    steps.named(name);
  }

  /** Lines that find something in any section, so that the file stays valid. */
  private void sheet(Random dice) {
    if (steps == null) {
      groove(dice, 0);
      return;
    }
    text.append("sheet ").append(name("v")).append(" \"Sheet\" from ").append(steps.last());
    text.append("\n  each accent all\n");
    maybe(dice, "  each ghost all \"Soft\"\n");
    maybe(dice, "  each swap hands\n  and  plain all\n");
    maybe(dice, "  dynamic mf\n");
    maybe(dice, "  goal \"All of them\"\n");
    maybe(dice, "  page 2 columns\n");
  }

  private void player(Random dice) {
    text.append("player ").append(name("p")).append(" \"Mia\"\n");
    maybe(dice, "  on junior\n");
    maybe(dice, "  left-handed\n");
    maybe(dice, "  tempo 80%\n");
    maybe(dice, "  limits hands sixteenths at 75 to 110\n");
    maybe(dice, "  sections g1 to s2 first 3\n");
    maybe(dice, "  page large\n");
    maybe(dice, "  say 1-trip-let\n");
    maybe(dice, "  text \"Look up.\"\n");
  }

  private void chart(Random dice) {
    text.append("chart ").append(name("c")).append(" \"Practice\"\n");
    maybe(dice, "  count-in 1 bar\n");
    maybe(dice, "  click quarters\n");
    maybe(dice, "  tempo 70\n");
    String first = grooves.isEmpty() ? null : one(dice, grooves);
    if (first == null) {
      text.append("  rest 2 bars\n");
      return;
    }
    text.append("  play ").append(first).append(' ').append(one(dice, grooves));
    text.append(
        one(dice, List.of("", " 2 times", " 3 times at tempo 80", " at tempo quarter = 66")));
    text.append('\n');
    maybe(dice, "  hold 2 beats\n");
    maybe(dice, "  rest 1 bar\n");
    maybe(dice, "  rest 20 seconds\n");
    maybe(dice, "  mark \"B\"\n");
    maybe(dice, "  cue \"Now\" in bar 1\n");
    maybe(dice, "  dynamic p\n");
    maybe(dice, "  tempo 92 to 60 over 4 bars\n");
    maybe(dice, "  click 2 bars on 1 off\n");
    text.append("  play ").append(first);
    text.append(one(dice, List.of("", " each 2 times", " 5 bars", " for 1 minute without all")));
    text.append('\n');
    maybe(dice, "  trade " + first + " 1 bar 2 times\n");
    maybe(dice, "  climb " + first + " from 50 to 70 by 10 every 2 times\n");
    maybe(dice, "  text \"Well done.\"\n");
  }
}
