package tabor.body;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Position;
import tabor.kit.Surface;

/**
 * Where everything stands around the seated player, as points in whole centimetres. The usual
 * places are facts of the surfaces; a kit section may say otherwise. A left-handed player's kit is
 * mirrored.
 */
public final class KitPlaces {
  /** Where a kit's own surface stands that says nothing of its place: on the right. */
  private static final Position OWN = new Position(75, 55, 90);

  /** Hands that are this close side by side do not count as crossed, in centimetres. */
  static final int SIDE_BY_SIDE = 10;

  private final Kit kit;
  private final boolean mirrored;
  private final Map<String, Point> points = new ConcurrentHashMap<>();

  /** The sections of a file are mostly played on one kit. */
  private static volatile KitPlaces latest = new KitPlaces(Kits.FIVE_PIECE, false);

  private KitPlaces(Kit kit, boolean mirrored) {
    this.kit = kit;
    this.mirrored = mirrored;
  }

  /** The places as the player finds them: mirrored for a left-handed one. */
  public static KitPlaces of(Kit kit) {
    return of(kit, kit.leftHanded());
  }

  @SuppressWarnings("ReferenceEquality") // another object costs a new table, and nothing else
  private static KitPlaces of(Kit kit, boolean mirrored) {
    KitPlaces places = latest;
    if (places.kit != kit || places.mirrored != mirrored) {
      places = new KitPlaces(kit, mirrored);
      latest = places;
    }
    return places;
  }

  /** The places as the source speaks of them, before a left-handed player is mirrored. */
  static KitPlaces written(Kit kit) {
    return of(kit, false);
  }

  /**
   * A point in centimetres.
   *
   * @param x to the right of the player's middle
   * @param y in front of the player
   * @param z above the floor
   */
  public record Point(int x, int y, int z) {
    /** Distance in whole centimetres, rounded to the nearest. */
    public int to(Point other) {
      long dx = (long) x - other.x;
      long dy = (long) y - other.y;
      long dz = (long) z - other.z;
      return (int) Math.round(StrictMath.sqrt((double) (dx * dx + dy * dy + dz * dz)));
    }
  }

  /** Where a surface is struck; a surface that the kit lacks is struck where its stand-in is. */
  public Point of(Surface surface) {
    return points.computeIfAbsent(surface.name(), name -> point(surface));
  }

  /** Distance between two surfaces in whole centimetres. */
  public int distance(Surface from, Surface to) {
    return from.name().equals(to.name()) ? 0 : of(from).to(of(to));
  }

  /**
   * True if the right hand on the one and the left on the other cross: more than so far that they
   * are side by side. A right hand over the left on the snare is how people sit.
   */
  boolean crosses(Surface right, Surface left) {
    return left.sort() != Surface.Sort.SNARE && of(right).x() + SIDE_BY_SIDE < of(left).x();
  }

  private Point point(Surface written) {
    Surface struck = kit.struck(written);
    Position position = position(struck == null ? written : struck);
    double angle = StrictMath.toRadians(mirrored ? -position.degrees() : position.degrees());
    return new Point(
        (int) Math.round(position.distance() * StrictMath.sin(angle)),
        (int) Math.round(position.distance() * StrictMath.cos(angle)),
        position.height());
  }

  private Position position(Surface surface) {
    Position known = kit.position(surface);
    return known == null ? OWN : known;
  }
}
