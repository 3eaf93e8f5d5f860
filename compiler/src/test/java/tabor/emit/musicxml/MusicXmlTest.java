package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.nio.file.*;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.groove.*;
import tabor.rhythm.*;
import tabor.testing.Sketch;

class MusicXmlTest {
  @Test
  void show() throws Exception {
    Groove a = Sketch.groove("pads").title("On <the> \u0007 \"snare\"").prose("Low taps,\ntall accents & co").pickup(1)
        .part(RIGHT_HAND, "snare", ". | 'X.x. x{xxx}x x~ - | ''gx '''x x// x^")
        .part(LEFT_HAND, "hihat.open", ".x | . . . .x | . . x .").part(RIGHT_FOOT, "kick", ". | x . . x | . . . .")
        .mark(1, Time.ZERO, Loudness.P).hairpin(new Loudness.Hairpin(true, 1, Time.of(1,4), 2, Time.of(3,8), Loudness.F)).repeats(2).done();
    Groove b = Sketch.groove("b").meter(Meter.of(6,8)).feel(new Feel(Feel.Unit.EIGHTHS, Time.of(62,100))).part(RIGHT_HAND, "ride.bell", "xxx xx").part(LEFT_FOOT,"hihat.foot", ". x").part(LEFT_HAND,"crash","x! .").done();
    Chart c = new Chart("practice", "Practice", a.heading(), List.of(
      new Chart.CountIn(1, a, a.setting().tempo()),
      new Chart.Play(List.of(new Chart.Turn(a, a.setting().tempo(), Feel.STRAIGHT), new Chart.Turn(b, b.setting().tempo(), Feel.STRAIGHT)), 2),
      new Chart.Rest(2, b, b.setting().tempo()),
      new Chart.Climb(a, List.of(a.setting().tempo(), a.setting().tempo().at(Time.of(185,2))), Feel.STRAIGHT, Time.of(5,2), 4, Chart.Every.TIMES)), List.of("practise"));
    Lesson l = new Lesson("x", "Six & eight", "Sat", a.setting(), List.of(a, b, c));
    byte[] bytes = MusicXml.bytes(l, s -> true);
    Files.write(Path.of("/tmp/n1.musicxml"), bytes);
    System.out.println(ReadBack.of(bytes).measures());
  }
}
