package org.brewchem.substance;

import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;

/**
 * The table of what may be dosed into which liquid: food acids, bases and brewing salts, and what
 * nobody may drink.
 *
 * <p>It is short and recalled from Regulation (EC) No 1333/2008, Regulation (EU) No 231/2012 and
 * title 21 of the Code of Federal Regulations (see docs/sources.md). It keeps chemicals of the
 * laboratory and poisons out of what people drink, and is no legal advice: local law has the last
 * word.
 */
public final class Permissions {

  private static final Map<Key, Map<Use, Row>> ROWS = read();

  private record Key(boolean component, String substance) {}

  private record Row(Permission.Standing standing, Provenance provenance) {}

  private Permissions() {}

  private static Map<Key, Map<Use, Row>> read() {
    Map<Key, Map<Use, Row>> rows = new HashMap<>();
    for (ResourceTable.Row row : ResourceTable.read("reagent-uses.csv")) {
      boolean component = row.text("kind").equals("component");
      String substance =
          component
              ? row.species("substance")
              : (row.text("kind").equals("gas") ? "gas " : "") + row.text("substance");
      Map<Use, Row> ofSubstance =
          rows.computeIfAbsent(new Key(component, substance), key -> new EnumMap<>(Use.class));
      for (String use : row.text("uses").split("; ", -1)) {
        if (ofSubstance.put(Use.of(use), new Row(standing(row), row.provenance())) != null) {
          throw new IllegalStateException(row.place() + ": a second row for " + use);
        }
      }
    }
    return rows;
  }

  private static Permission.Standing standing(ResourceTable.Row row) {
    String permitted = row.text("permitted");
    return switch (permitted) {
      case "yes" -> Permission.Standing.PERMITTED;
      case "varies" -> Permission.Standing.LAWS_DIFFER;
      case "no" -> Permission.Standing.REFUSED;
      default -> throw new IllegalStateException(row.place() + ": permitted " + permitted);
    };
  }

  /**
   * Returns what is known about a solute in a liquid. A solute that the library does not name is
   * refused when it brings a component of a poison, such as oxalate; otherwise its use is not
   * stated, unless it says so itself ({@link Solute#statedUses()}).
   *
   * @param solute the solute, found in the table by its name and by the components that it brings
   * @param use the liquid
   * @return the permission, which may be a refusal
   */
  public static Permission of(Solute solute, Use use) {
    Objects.requireNonNull(use, "use");
    return of(solute.name(), solute, use, solute.statedUses());
  }

  /**
   * Returns what is known about a gas in a liquid.
   *
   * @param gas the gas
   * @param use the liquid
   * @return the permission
   */
  public static Permission of(Gas gas, Use use) {
    Objects.requireNonNull(use, "use");
    return of(gas.name(), row(new Key(false, "gas " + gas.name()), use), use, Map.of());
  }

  static Permission of(String subject, Solute solute, Use use, Map<Use, String> stated) {
    Optional<Row> row = row(new Key(false, solute.name()), use);
    if (row.filter(known -> known.standing == Permission.Standing.REFUSED).isEmpty()) {
      row = brought(solute, use).or(() -> row(new Key(false, solute.name()), use));
    }
    return of(subject, row, use, stated);
  }

  private static Optional<Row> brought(Solute solute, Use use) {
    return solute.components().keySet().stream()
        .flatMap(component -> row(new Key(true, component.key()), use).stream())
        .findFirst();
  }

  private static Optional<Row> row(Key key, Use use) {
    return Optional.ofNullable(ROWS.getOrDefault(key, Map.of()).get(use));
  }

  private static Permission of(
      String subject, Optional<Row> row, Use use, Map<Use, String> stated) {
    Optional<Provenance> provenance = row.map(Row::provenance);
    Permission.Standing known = row.map(Row::standing).orElse(Permission.Standing.NOT_STATED);
    String basis = stated.get(use);
    if (known != Permission.Standing.REFUSED && basis != null) {
      return new Permission(
          subject,
          use,
          Permission.Standing.STATED_BY_CALLER,
          "stated by the caller: " + basis,
          provenance);
    }
    String reason =
        provenance
            .map(Provenance::note)
            .orElse(
                "its use is not stated, and the library does not know it; find out whether it is"
                    + " permitted, and do not taste it before");
    return new Permission(subject, use, known, reason, provenance);
  }

  /**
   * Adds a use to those that a caller has stated.
   *
   * @throws IllegalArgumentException if the basis is blank, or the library refuses the use
   */
  static Map<Use, String> stating(
      String subject, Solute solute, Map<Use, String> before, Use use, String basis) {
    Checks.notBlank("basis of the use of " + subject, basis);
    of(subject, solute, use, Map.of()).orThrow();
    Map<Use, String> copy = new EnumMap<>(Use.class);
    copy.putAll(before);
    copy.put(use, basis);
    return Collections.unmodifiableMap(copy);
  }
}
