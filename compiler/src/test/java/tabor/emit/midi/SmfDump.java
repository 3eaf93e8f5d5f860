package tabor.emit.midi;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a Standard MIDI File byte by byte and says what is in it, one event a line. Written from
 * the specification (RP-001, 1996), not from the writer; throws on whatever the specification
 * forbids.
 */
public final class SmfDump {
  /**
   * An event.
   *
   * @param track 0-based
   * @param tick ticks from the start
   * @param status first byte; FF for meta events
   * @param type of a meta event, else the first data byte
   * @param data what follows
   */
  public record Event(int track, long tick, int status, int type, byte[] data) {
    String text() {
      if (status != 0xFF) {
        int channel = (status & 0x0F) + 1;
        String what =
            switch (status & 0xF0) {
              case 0x80 -> "off";
              case 0x90 -> data[0] == 0 ? "off" : "on";
              case 0xA0 -> "pressure";
              case 0xC0 -> "program";
              default -> String.format("status %02X", status);
            };
        return what + " ch " + channel + " " + type + (data.length > 0 ? " " + data[0] : "");
      }
      String words = new String(data, StandardCharsets.UTF_8);
      return switch (type) {
        case 0x01 -> "text \"" + words + "\"";
        case 0x03 -> "name \"" + words + "\"";
        case 0x06 -> "marker \"" + words + "\"";
        case 0x2F -> "end";
        case 0x51 -> "tempo " + number(data);
        case 0x58 ->
            "meter "
                + data[0]
                + "/"
                + (1 << data[1])
                + " clocks "
                + data[2]
                + " per quarter "
                + data[3];
        default -> throw new IllegalStateException("meta " + type);
      };
    }

    boolean isOn() {
      return (status & 0xF0) == 0x90 && data[0] != 0;
    }

    boolean isOff() {
      return (status & 0xF0) == 0x80 || ((status & 0xF0) == 0x90 && data[0] == 0);
    }
  }

  private final byte[] bytes;
  private int at;
  private int end;
  private int format;
  private int division;
  private int tracks;
  private final List<Event> events = new ArrayList<>();

  private SmfDump(byte[] bytes) {
    this.bytes = bytes;
    this.end = bytes.length;
  }

  public static SmfDump of(byte[] bytes) {
    SmfDump dump = new SmfDump(bytes);
    dump.read();
    return dump;
  }

  public int format() {
    return format;
  }

  public int division() {
    return division;
  }

  public int tracks() {
    return tracks;
  }

  public List<Event> events() {
    return events;
  }

  /** Header, then every track with its events: tick and what happens. */
  public String text() {
    StringBuilder text = new StringBuilder();
    text.append("format ").append(format).append(", tracks ").append(tracks);
    text.append(", division ").append(division).append('\n');
    int track = -1;
    for (Event event : events) {
      if (event.track() != track) {
        track = event.track();
        text.append("track ").append(track).append('\n');
      }
      text.append(String.format("%7d %s%n", event.tick(), event.text()).replace("\r", ""));
    }
    return text.toString();
  }

  private void read() {
    chunk("MThd");
    check(long4() == 6, "header length");
    format = number(2);
    tracks = number(2);
    division = number(2);
    check(division > 0 && division < 0x8000, "division");
    for (int i = 0; i < tracks; i++) {
      chunk("MTrk");
      long length = long4();
      check(at + length <= bytes.length, "chunk length");
      end = (int) (at + length);
      track(i);
      check(at == end, "end of track is the last event");
      end = bytes.length;
    }
    check(at == bytes.length, "nothing after the last track");
  }

  private void track(int index) {
    long tick = 0;
    int running = 0;
    while (true) {
      tick += variable();
      int status = bytes[at] & 0xFF;
      if (status >= 0x80) {
        at++;
      } else {
        check(running != 0, "running status");
        status = running;
      }
      if (status == 0xFF) {
        running = 0;
        int type = number(1);
        byte[] data = take((int) variable());
        check(type == 0x51 ? data.length == 3 : type != 0x58 || data.length == 4, "meta length");
        events.add(new Event(index, tick, status, type, data));
        if (type == 0x2F) {
          return;
        }
      } else {
        check(status < 0xF0, "no system messages");
        running = status;
        int first = number(1);
        int more = (status & 0xF0) == 0xC0 || (status & 0xF0) == 0xD0 ? 0 : 1;
        byte[] data = take(more);
        check(first < 0x80 && (more == 0 || data[0] >= 0), "data bytes");
        events.add(new Event(index, tick, status, first, data));
      }
    }
  }

  /** A variable-length quantity: at most four bytes, in the shortest form. */
  private long variable() {
    long value = 0;
    for (int i = 0; i < 4; i++) {
      int next = number(1);
      check(i > 0 || next != 0x80, "shortest form");
      value = (value << 7) | (next & 0x7F);
      if (next < 0x80) {
        return value;
      }
    }
    throw new IllegalStateException("variable-length quantity of more than four bytes at " + at);
  }

  private void chunk(String name) {
    check(new String(take(4), StandardCharsets.US_ASCII).equals(name), name);
  }

  private long long4() {
    return number(4) & 0xFFFF_FFFFL;
  }

  private int number(int count) {
    return number(take(count));
  }

  private static int number(byte[] data) {
    int value = 0;
    for (byte one : data) {
      value = (value << 8) | (one & 0xFF);
    }
    return value;
  }

  private byte[] take(int count) {
    check(at + count <= end, "within the chunk");
    byte[] taken = java.util.Arrays.copyOfRange(bytes, at, at + count);
    at += count;
    return taken;
  }

  private void check(boolean fine, String what) {
    if (!fine) {
      throw new IllegalStateException("not a Standard MIDI File: " + what + " at byte " + at);
    }
  }
}
