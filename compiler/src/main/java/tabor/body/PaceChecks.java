package tabor.body;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import tabor.body.Demands.Grade;
import tabor.diagnostic.Code;
import tabor.groove.Grace;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limits;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** What is too fast or too far at a tempo, by the extreme figure of each limit. */
record PaceChecks(
    Groove groove, Tempo tempo, Time secondsPerWhole, Limits limits, Consumer<Finding> found) {
  /** Hands everything that fails at {@code tempo} to {@code found}. */
  static void each(Groove groove, Tempo tempo, Limits limits, Consumer<Finding> found) {
    if (QuickPace.isEasy(groove, tempo, limits)) {
      return;
    }
    PaceChecks checks = new PaceChecks(groove, tempo, tempo.secondsPerWhole(), limits, found);
    Demands.each(groove, limits, Grade.EXTREME, checks::check);
  }

  private void check(Demand demand) {
    if (!demand.fails(secondsPerWhole)) {
      return;
    }
    Time seconds = demand.seconds(tempo);
    Time lead = Grace.SECONDS.times((long) demand.to().lead() - demand.from().lastLead());
    boolean impossible = demand.kind() != Demand.Kind.SINGLES && !lead.before(seconds);
    if (impossible && !demand.isInside()) {
      add(demand, Code.NO_FREE_HAND, () -> noTime(demand));
      return;
    }
    switch (demand.kind()) {
      case SINGLES -> add(demand, Code.TOO_FAST, () -> singles(demand));
      case DOUBLES -> add(demand, Code.TOO_FAST, () -> doubles(demand, seconds.minus(lead)));
      case REACH -> add(demand, Code.FAR_REACH, () -> reach(demand, seconds.minus(lead)));
    }
  }

  private void add(Demand demand, Code code, Supplier<String> words) {
    Stroke from = demand.from().stroke();
    Stroke to = demand.to().stroke();
    long fits = demand.fastest(tempo.beat()).floor();
    found.accept(
        new Finding(
            code,
            to,
            from.equals(to) ? List.of(to) : List.of(from, to),
            words,
            "it fits up to tempo " + fits + "; or give it to another limb, or leave strokes out",
            demand.limb(),
            demand.needs().over(demand.seconds(tempo))));
  }

  private String noTime(Demand demand) {
    return "the "
        + demand.limb().words()
        + " has no time for the grace notes at "
        + FindingWords.count(groove, demand.to().stroke())
        + ": its last stroke is at "
        + FindingWords.count(groove, demand.from().stroke());
  }

  private String singles(Demand demand) {
    Limits.Range range = demand.limb().isHand() ? limits.hands() : limits.feet();
    return "the "
        + demand.limb().words()
        + " plays "
        + FindingWords.rate(Time.of(2).over(demand.seconds(tempo)))
        + " strokes per second from "
        + FindingWords.count(groove, demand.from().stroke())
        + " to "
        + FindingWords.count(groove, demand.to().stroke())
        + ": "
        + FindingWords.rate(range.extreme())
        + " is the extreme, "
        + FindingWords.rate(range.comfortable())
        + " comfortable";
  }

  private String doubles(Demand demand, Time seconds) {
    String rate = seconds.sign() > 0 ? FindingWords.rate(seconds.inverse()) : "countless";
    return "the "
        + demand.limb().words()
        + (demand.isInside() ? " doubles at " : " strikes twice, ending at ")
        + FindingWords.count(groove, demand.to().stroke())
        + ", as fast as "
        + rate
        + " strokes per second: "
        + FindingWords.rate(limits.doubles().extreme())
        + " is the extreme of a double, "
        + FindingWords.rate(limits.doubles().comfortable())
        + " comfortable";
  }

  private String reach(Demand demand, Time seconds) {
    return "the "
        + demand.limb().words()
        + " has "
        + FindingWords.millis(seconds)
        + " ms from "
        + demand.from().stroke().surface().words()
        + " to "
        + demand.to().stroke().surface().words()
        + " at "
        + FindingWords.count(groove, demand.to().stroke())
        + ": it needs "
        + FindingWords.millis(
            demand
                .needs()
                .minus(Grace.SECONDS.times((long) demand.to().lead() - demand.from().lastLead())))
        + " ms at the very least";
  }

  /** The strokes of a finding that two tempi share, so that only the new ones are told. */
  static List<Object> key(Finding finding) {
    return List.of(finding.code(), finding.strokes());
  }
}
