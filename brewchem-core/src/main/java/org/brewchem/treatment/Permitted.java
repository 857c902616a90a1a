package org.brewchem.treatment;

import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Use;

/** The one place that refuses what may not be dosed into a liquid that people drink. */
final class Permitted {

  private Permitted() {}

  /**
   * Looks at what a step adds.
   *
   * @return a notice where somebody should be told; empty where it is permitted
   * @throws IllegalArgumentException if it is refused, with the reason
   */
  static List<Notice> in(Use use, Treatment step) {
    if (!(step instanceof Addition addition)) {
      return List.of();
    }
    Permission permission = addition.permissionIn(use).orThrow();
    return permission.isNotable()
        ? List.of(Notice.of(TreatmentCode.PERMISSION, permission.subject(), permission.text()))
        : List.of();
  }

  /** The use that a kind of liquid is put to; empty for a plain solution. */
  static Optional<Use> of(String kind) {
    return switch (kind) {
      case "water" -> Optional.of(Use.BREWING_WATER);
      case "mash" -> Optional.of(Use.MASH);
      case "wort" -> Optional.of(Use.WORT);
      case "beer" -> Optional.of(Use.BEER);
      default -> Optional.empty();
    };
  }
}
