package tabor.lsp;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import tabor.lsp.transport.JsonText;
import tabor.source.Span;

/**
 * What a position's {@code character} counts. Positions outside the text are moved to the nearest
 * place in it, as the protocol asks for characters and as clients expect for lines.
 */
enum PositionEncoding {
  UTF_16("utf-16"),
  UTF_8("utf-8"),
  UTF_32("utf-32");

  private final String word;

  PositionEncoding(String word) {
    this.word = word;
  }

  /** As the protocol calls it. */
  String word() {
    return word;
  }

  /** The first of the client's list that we know; UTF-16 if there is none. */
  static PositionEncoding choose(List<String> offered) {
    return offered.stream()
        .map(PositionEncoding::of)
        .flatMap(Optional::stream)
        .findFirst()
        .orElse(UTF_16);
  }

  private static Optional<PositionEncoding> of(String word) {
    return Arrays.stream(values()).filter(encoding -> encoding.word.equals(word)).findFirst();
  }

  /** The offset of a position. */
  int offset(TextLines lines, Position position) {
    if (position.getLine() < 0) {
      return 0;
    }
    if (position.getLine() >= lines.lineCount()) {
      return lines.length();
    }
    int start = lines.lineStart(position.getLine());
    int end = lines.lineEnd(position.getLine());
    int wanted = Math.max(0, position.getCharacter());
    if (this == UTF_16) {
      return wanted > end - start ? end : start + wanted;
    }
    String text = lines.text();
    int at = start;
    int units = 0;
    while (at < end) {
      int point = text.codePointAt(at);
      units += width(point);
      if (units > wanted) {
        return at;
      }
      at += Character.charCount(point);
    }
    return end;
  }

  /** The position of an offset. */
  Position position(TextLines lines, int offset) {
    int inside = Math.max(0, Math.min(offset, lines.length()));
    int line = lines.lineOf(inside);
    int start = lines.lineStart(line);
    return new Position(line, units(lines.text(), start, inside));
  }

  /** The range of a span. */
  Range range(TextLines lines, Span span) {
    return new Range(position(lines, span.start()), position(lines, span.end()));
  }

  /** The span of a range; a range written backwards is read forwards. */
  Span span(TextLines lines, Range range) {
    int a = offset(lines, range.getStart());
    int b = offset(lines, range.getEnd());
    return new Span(Math.min(a, b), Math.max(a, b));
  }

  /** Writes a range. */
  static JsonText write(JsonText json, Range range) {
    write(json.add("{\"start\":"), range.getStart());
    return write(json.add(",\"end\":"), range.getEnd()).add("}");
  }

  /** Writes a position. */
  static JsonText write(JsonText json, Position at) {
    return json.position(at.getLine(), at.getCharacter());
  }

  /** How many units a stretch of text has. */
  int units(String text, int start, int end) {
    if (this == UTF_16) {
      return end - start;
    }
    int units = 0;
    for (int at = start; at < end; ) {
      int point = text.codePointAt(at);
      units += width(point);
      at += Character.charCount(point);
    }
    return units;
  }

  private int width(int point) {
    return switch (this) {
      case UTF_16 -> Character.charCount(point);
      case UTF_8 -> point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
      case UTF_32 -> 1;
    };
  }
}
