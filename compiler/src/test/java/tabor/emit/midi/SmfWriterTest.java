package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Byte examples, meter and tempo events and the variable-length table of "Standard MIDI Files 1.0"
 * (RP-001, 1996).
 */
class SmfWriterTest {
  private static String hex(byte[] bytes) {
    return HexFormat.ofDelimiter(" ").withUpperCase().formatHex(bytes);
  }

  private static Smf one(long length, Smf.Event... events) {
    Smf.Track empty = new Smf.Track("", List.of());
    return new Smf(96, length, List.of(new Smf.Track("", List.of(events)), empty));
  }

  @Test
  void headerOfFormatOne() {
    Smf.Track empty = new Smf.Track("", List.of());
    // The specification's own example: format 1, four tracks, 96 ticks a quarter note.
    assertThat(hex(SmfWriter.bytes(new Smf(96, 0, List.of(empty, empty, empty, empty)))))
        .startsWith("4D 54 68 64 00 00 00 06 00 01 00 04 00 60 4D 54 72 6B");
  }

  @ParameterizedTest
  @CsvSource({
    "0x00, 00",
    "0x40, 40",
    "0x7F, 7F",
    "0x80, 81 00",
    "0x2000, C0 00",
    "0x3FFF, FF 7F",
    "0x4000, 81 80 00",
    "0x100000, C0 80 00",
    "0x1FFFFF, FF FF 7F",
    "0x200000, 81 80 80 00",
    "0x8000000, C0 80 80 00",
    "0xFFFFFFF, FF FF FF 7F"
  })
  void variableLengthTable(String number, String bytes) {
    long tick = Long.decode(number);
    assertThat(hex(SmfWriter.bytes(one(tick, new Smf.Tempo(tick, 500_000)))))
        .contains("00 FF 03 00 " + bytes + " FF 51 03 07 A1 20 00 FF 2F 00");
  }

  @Test
  void aGapThatNoDeltaTimeCanSayIsFilled() {
    byte[] bytes = SmfWriter.bytes(one(0x3000_0000L, new Smf.Tempo(0x2000_0000L, 500_000)));
    SmfDump dump = SmfDump.of(bytes);
    assertThat(dump.events().stream().filter(e -> e.type() == 0x51))
        .singleElement()
        .matches(e -> e.tick() == 0x2000_0000L);
    assertThat(dump.events().get(dump.events().size() - 1).tick()).isEqualTo(0x3000_0000L);
  }

  @ParameterizedTest
  @CsvSource({
    "4, 2, 24, 04 02 18 08",
    "6, 3, 36, 06 03 24 08",
    "2, 1, 48, 02 01 30 08",
    "7, 4, 6, 07 04 06 08"
  })
  void timeSignatures(int count, int power, int clocks, String data) {
    assertThat(hex(SmfWriter.bytes(one(0, new Smf.Meter(0, count, power, clocks)))))
        .contains("00 FF 58 04 " + data);
  }

  @ParameterizedTest
  @CsvSource({
    "1000000, 0F 42 40",
    "666667, 0A 2C 2B",
    "625000, 09 89 68",
    "428571, 06 8A 1B",
    "333333, 05 16 15"
  })
  void tempi(int micros, String data) {
    assertThat(hex(SmfWriter.bytes(one(0, new Smf.Tempo(0, micros))))).contains("FF 51 03 " + data);
  }

  @Test
  void drumNotesOnChannelTen() {
    assertThat(hex(SmfWriter.bytes(one(960, new Smf.Note(0, 120, 36, 100, false)))))
        .contains("00 99 24 64 78 89 24 00 86 48 FF 2F 00");
  }

  @Test
  void aChokeIsFullKeyPressureAndTheEndOfTheNote() {
    assertThat(hex(SmfWriter.bytes(one(960, new Smf.Note(0, 120, 49, 100, true)))))
        .contains("00 99 31 64 78 A9 31 7F 00 89 31 00 01 A9 31 00 86 47 FF 2F 00");
  }

  @Test
  void theReaderReadsTheSpecificationsExample() {
    // Format 0, with running status: tempo 120, 4/4, three notes on three channels.
    String bytes =
        "4D546864 00000006 0000 0001 0060 4D54726B 0000003B 00FF580404021808 00FF510307A120 00C005"
            + " 00C12E 00C246 00923060 003C60 60914340 60904C20 8140823040 003C40 00814340 00804C40"
            + " 00FF2F00";
    assertThat(SmfDump.of(HexFormat.of().parseHex(bytes.replace(" ", ""))).text())
        .isEqualTo(
            """
            format 0, tracks 1, division 96
            track 0
                  0 meter 4/4 clocks 24 per quarter 8
                  0 tempo 500000
                  0 program ch 1 5
                  0 program ch 2 46
                  0 program ch 3 70
                  0 on ch 3 48 96
                  0 on ch 3 60 96
                 96 on ch 2 67 64
                192 on ch 1 76 32
                384 off ch 3 48 64
                384 off ch 3 60 64
                384 off ch 2 67 64
                384 off ch 1 76 64
                384 end
            """);
  }

  /** Names go to programs as they are: no bell, no escape; letters of any script stay. */
  @Test
  void namesHaveNoControlCharacters() {
    Smf.Track named = new Smf.Track("ö\u0007\u001B[1m\u0085x", List.of());
    // C3 B6 is the UTF-8 of ö.
    assertThat(hex(SmfWriter.bytes(new Smf(96, 0, List.of(named, named)))))
        .contains("FF 03 06 C3 B6 5B 31 6D 78");
  }

  @Test
  void eventsAreWrittenInOrderOfTime() {
    assertThat(
            hex(
                SmfWriter.bytes(
                    one(
                        192,
                        new Smf.Note(96, 10, 38, 100, false),
                        new Smf.Note(0, 10, 36, 100, false)))))
        .contains("00 99 24 64 0A 89 24 00 56 99 26 64 0A 89 26 00");
  }
}
