package tabor.rhythm;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.testing.RecordEquality;

/** Records of this room that write their own {@code equals}. */
class EqualityTest {
  @Test
  void recordsAreEqualByTheirParts() {
    RecordEquality.check(List.of(Time.of(1, 3), Time.of(2, 3), Time.of(1, 4)));
    RecordEquality.check(
        List.of(
            new Division(0, 1, 2),
            new Division(1, 1, 2),
            new Division(0, 2, 2),
            new Division(0, 1, 3)));
    Division division = new Division(0, 1, 4);
    RecordEquality.check(
        List.of(
            new Slot(division, 0, List.of()),
            new Slot(division, 1, List.of()),
            new Slot(new Division(0, 1, 3), 0, List.of()),
            new Slot(division, 0, List.of(new Slot.Part(0, 2)))));
    RecordEquality.check(List.of(new Slot.Part(0, 2), new Slot.Part(1, 2), new Slot.Part(0, 3)));
    RecordEquality.check(
        List.of(
            Feel.STRAIGHT,
            new Feel(Feel.Unit.SIXTEENTHS, Time.of(1, 2)),
            new Feel(Feel.Unit.EIGHTHS, Time.of(2, 3))));
    RecordEquality.check(
        List.of(
            new Tempo(Time.of(1, 4), Time.of(90)),
            new Tempo(Time.of(3, 8), Time.of(90)),
            new Tempo(Time.of(1, 4), Time.of(60))));
    RecordEquality.check(
        List.of(
            Meter.COMMON,
            Meter.of(3, 4),
            Meter.of(8, 8),
            Meter.of(4, 8),
            new Meter(4, 4, List.of(Time.of(1, 2), Time.of(1, 2))),
            new Meter(4, 4, Meter.COMMON.beats(), List.of(2, 2)),
            new Meter(4, 4, Meter.COMMON.beats(), List.of(3, 1))));
  }
}
