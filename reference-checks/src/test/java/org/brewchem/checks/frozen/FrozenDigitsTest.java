package org.brewchem.checks.frozen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** No result of the library moves unnoticed. */
class FrozenDigitsTest {

  private static final int SHOWN = 40;

  static List<FrozenRoom> rooms() {
    return FrozenDigits.rooms();
  }

  @ParameterizedTest
  @MethodSource("rooms")
  void everyDigitIsWhatItWas(FrozenRoom room) {
    List<String> differences = FrozenComparison.differences(room.frozen(), room.computed());
    assertEquals(
        "",
        differences.stream().limit(SHOWN).collect(Collectors.joining("\n")),
        room.name()
            + ": "
            + differences.size()
            + " differences; if they are meant, write the files as DEVELOPERS.md says and a line"
            + " under Numbers in docs/changelog.md");
  }

  @Test
  void thereAreEnoughInputsAndFigures() {
    List<FrozenFigure> all = rooms().stream().flatMap(room -> room.frozen().stream()).toList();
    assertEquals(17219, all.size());
    assertEquals(813, all.stream().map(FrozenFigure::input).distinct().count());
    assertTrue(all.stream().filter(figure -> figure.uncertainty().isPresent()).count() > 1000);
  }
}
