package tabor.build;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Lesson;
import tabor.groove.Section;

/** Tells what a form of output does not yet play or say of a chart's practice lines. */
final class ChartGaps {
  private ChartGaps() {}

  /** A warning that names the first chart and all words that the form passes over. */
  static Optional<Diagnostic> of(Lesson lesson, Form form) {
    if (form != Form.MUSICXML && form != Form.PDF) {
      return Optional.empty();
    }
    Chart first = null;
    Set<String> words = new LinkedHashSet<>();
    for (Section section : lesson.sections()) {
      if (section instanceof Chart chart) {
        for (Chart.Item item : chart.items()) {
          gaps(item, words);
        }
        first = first == null && !words.isEmpty() ? chart : first;
      }
    }
    if (first == null) {
      return Optional.empty();
    }
    String message =
        "the "
            + form.word()
            + " output leaves out what charts say with "
            + String.join(", ", words);
    return Optional.of(
        Diagnostic.of(Code.PLAYED_DIFFERENTLY, first.heading(), message)
            .in(new Diagnostic.Place(first.name(), null, null))
            .help("Tabor reads and formats these lines, but this output cannot tell them yet"));
  }

  private static void gaps(Chart.Item item, Set<String> words) {
    if (item instanceof Chart.Play play) {
      amount(play.amount(), words);
      extras(play.extras(), words);
    } else if (item instanceof Chart.Trade) {
      words.add("trade");
    } else if (item instanceof Chart.Climb climb) {
      if (climb.seconds() != null) {
        words.add("for");
      }
      extras(climb.extras(), words);
    } else if (item instanceof Chart.Pause) {
      words.add("rest in seconds");
    } else if (item instanceof Chart.Ramp) {
      words.add("tempo … over");
    } else if (item instanceof Chart.SetDynamic) {
      words.add("dynamic");
    } else if (item instanceof Chart.Hold) {
      words.add("hold");
    } else if (item instanceof Chart.Cue) {
      words.add("cue");
    } else if (item instanceof Chart.Mark) {
      words.add("mark");
    } else if (item instanceof Chart.SetClick click) {
      if (!click.beats().isEmpty()) {
        words.add("click at");
      }
      if (click.barsOn() > 0) {
        words.add("click … on … off");
      }
    }
  }

  private static void amount(Chart.Amount amount, Set<String> words) {
    if (amount.bars() > 0) {
      words.add("bars in place of times");
    }
    if (amount.seconds() != null) {
      words.add("for");
    }
  }

  private static void extras(Chart.Extras extras, Set<String> words) {
    if (!extras.without().isEmpty()) {
      words.add("without");
    }
    if (extras.fill() != null) {
      words.add("fill");
    }
  }
}
