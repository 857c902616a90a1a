package org.brewchem.treatment;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Saturation;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Solute;
import org.brewchem.substance.Use;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/** So much of a substance into a liquid, which grows by the volume of a liquid reagent. */
final class Addition implements Treatment {

  private static final int DIGITS = 4;

  private final Solute solute;
  private final String name;
  private final Traced moles;
  private final Traced growth;
  private final Scale<?> scale;
  private final double stated;
  private final List<Caution> cautions;
  private final List<Notice> notices;
  private final Function<Use, Permission> permission;
  private final @Nullable Contents known;
  private final @Nullable Contents prepared;

  private Addition(
      Solute solute,
      String name,
      Traced moles,
      Traced growth,
      Scale<?> scale,
      double stated,
      List<Caution> cautions,
      List<Notice> notices,
      Function<Use, Permission> permission,
      @Nullable Contents known,
      @Nullable Contents prepared) {
    this.solute = solute;
    this.name = name;
    this.moles = moles;
    this.growth = growth;
    this.scale = scale;
    this.stated = stated;
    this.cautions = cautions;
    this.notices = notices;
    this.permission = permission;
    this.known = known;
    this.prepared = prepared;
  }

  /** Moles of a bare solute per litre of the liquid before. */
  static Addition of(Solute solute, AmountConcentration amount) {
    return new Addition(
        solute,
        solute.name(),
        Traced.exact(amount.inMolesPerLitre()),
        Traced.exact(0),
        Scales.MILLIMOLES_PER_LITRE,
        amount.inMillimolesPerLitre(),
        Handling.cautionsOf(solute),
        List.of(),
        use -> Permissions.of(solute, use),
        null,
        null);
  }

  /** Moles by the label per litre of the liquid before, shown as they are measured out. */
  static Addition of(Supply supply, double molesPerLitre) {
    return supply.byVolume()
        ? of(
            supply,
            molesPerLitre,
            Scales.MILLILITRES_PER_HECTOLITRE,
            molesPerLitre * supply.litresPerMole().orElseThrow() * 1e5)
        : of(
            supply,
            molesPerLitre,
            Scales.GRAMS_PER_HECTOLITRE,
            molesPerLitre * supply.gramsPerMole() * 100);
  }

  private static Addition of(Supply supply, double molesPerLitre, Scale<?> scale, double stated) {
    return new Addition(
        supply.compound(),
        supply.name(),
        supply.moles(molesPerLitre),
        supply.litres(molesPerLitre),
        scale,
        stated,
        supply.cautions(),
        supply.notices(),
        supply::permissionIn,
        null,
        null);
  }

  /** The same addition, which starts from equal contents that a search has at hand. */
  Addition preparedFor(Contents contents, Contents equal) {
    return new Addition(
        solute, name, moles, growth, scale, stated, cautions, notices, permission, contents, equal);
  }

  /** The same addition into a liquid of which there is not quite as much as was thought. */
  Addition times(Traced ratio) {
    return new Addition(
        solute,
        name,
        moles.times(ratio),
        growth.times(ratio),
        scale,
        stated,
        cautions,
        notices,
        permission,
        known,
        prepared);
  }

  /** The same addition, of which the carbon dioxide leaves the liquid: its metal stays. */
  Addition withoutCarbonDioxide() {
    Map<Component, Double> rest = new LinkedHashMap<>(solute.components());
    rest.remove(Component.CARBONATE);
    Map<Component, Double> stays = Collections.unmodifiableMap(rest);
    Solute degassed =
        new Solute() {
          @Override
          public String name() {
            return name;
          }

          @Override
          public Map<Component, Double> components() {
            return stays;
          }
        };
    return new Addition(
        degassed,
        name + ", its carbon dioxide gone",
        moles,
        growth,
        scale,
        stated,
        cautions,
        notices,
        permission,
        known,
        prepared);
  }

  /** The same addition, after which a mineral is to form: what it supersaturates is not said. */
  Treatment withoutSaturation() {
    Addition same = this;
    return new Treatment() {
      @Override
      public Contents on(Contents before) {
        return same.added(before);
      }

      @Override
      public String text() {
        return same.text();
      }

      @Override
      public List<Caution> cautions() {
        return same.cautions();
      }
    };
  }

  /**
   * The same addition to a mash: its grain's acid takes up lime and chalk, which water would not.
   */
  Treatment intoMash() {
    Set<Component> brings = solute.components().keySet();
    boolean base =
        brings.contains(Component.CARBONATE)
            || brings.stream().allMatch(component -> component.chargeWithoutProtons() > 0);
    return base ? withoutSaturation() : this;
  }

  /** Moles really added per litre of the liquid before. */
  Traced moles() {
    return moles;
  }

  /** Litres added per litre of the liquid before. */
  Traced growth() {
    return growth;
  }

  /** Whether the substance may be dosed into a liquid that people drink. */
  Permission permissionIn(Use use) {
    return permission.apply(use);
  }

  @Override
  public Contents on(Contents before) {
    Contents after = added(before);
    double perKilogram = moles.value() / (1 + growth.value()) / before.kilogramsPerLitre();
    return after.withNotices(Saturation.notices(after, solute, perKilogram));
  }

  private Contents added(Contents before) {
    Contents diluted = before == known && prepared != null ? prepared : before;
    Traced share = Traced.exact(1);
    if (growth.value() > 0) {
      double part = 1 / (1 + growth.value());
      share = Traced.linear(part, new Traced[] {growth}, new double[] {-part * part});
      diluted = diluted.mixed(Contents.pure(before.temperature(), before.chemistry()), share);
    }
    Traced perKilogram = moles.times(share).times(1 / before.kilogramsPerLitre());
    Map<Component, Traced> added = new LinkedHashMap<>();
    solute
        .components()
        .forEach((component, count) -> added.put(component, perKilogram.times(count)));
    Step step =
        Step.of("addition of " + name, scale, Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("to the liquid as it was before this step" + anion(), "")
            .notices(notices)
            .found(Traced.exact(stated));
    return diluted.plus(added).withBasis(List.of(step)).withNotices(notices);
  }

  /** The anion that an acid leaves, mg per litre of the liquid before. */
  private String anion() {
    if (!(solute instanceof Acid acid) || acid.component().formula().isEmpty()) {
      return "";
    }
    double milligrams =
        1000 * moles.value() * acid.component().formula().get().molarMass().inGramsPerMole();
    return ", leaves "
        + NumberText.significant(milligrams, DIGITS)
        + " mg/L of "
        + acid.component().name();
  }

  @Override
  public String text() {
    double rounded = Double.parseDouble(NumberText.significant(stated, DIGITS));
    return NumberText.plain(rounded) + " " + scale.symbol() + " of " + name;
  }

  @Override
  public List<Caution> cautions() {
    return cautions;
  }

  @Override
  public String toString() {
    return text();
  }
}
