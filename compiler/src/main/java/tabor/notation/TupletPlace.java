package tabor.notation;

/**
 * Where an event stands in a tuplet.
 *
 * @param tuplet the tuplet
 * @param first true for its first event
 * @param last true for its last event
 */
public record TupletPlace(Tuplet tuplet, boolean first, boolean last) {}
