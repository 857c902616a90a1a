package org.brewchem.solution;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.EquilibriumSystem;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.brewchem.internal.WaterProperties;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;
import org.jspecify.annotations.Nullable;

/** The constants of a mixture at a temperature, shared by the work spaces over it. */
final class CompiledMixture {

  /** A species of the system under its name. */
  record Form(
      String name,
      int charge,
      Optional<Component> component,
      Optional<Component> metal,
      int protons,
      int ligandCount,
      int handle) {}

  final EquilibriumSystem system;
  final List<Component> components;
  final Map<Component, Integer> index = new LinkedHashMap<>();
  final Set<Component> metals = new LinkedHashSet<>();
  final Set<Component> ligands = new LinkedHashSet<>();
  final List<Form> forms = new ArrayList<>();
  final double ionProduct;
  final Temperature temperature;
  final Level level;
  private final ActivityRule rule;
  private final Chemistry chemistry;
  private volatile @Nullable List<Notice> notices;

  /**
   * For each ligand by component index its species, first those without a metal by their protons,
   * and what it brings to their charges.
   */
  final int[][] handles;

  final double[][] charges;

  CompiledMixture(Collection<Component> given, Temperature temperature, Chemistry chemistry) {
    components = List.copyOf(given);
    double kelvin = temperature.inKelvin();
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 100);
    this.temperature = temperature;
    this.chemistry = chemistry;
    level = chemistry.level();
    boolean ideal = level == Level.IDEAL;
    rule = chemistry.activityRule();
    double log10IonProduct = chemistry.log10IonProduct(kelvin);
    ionProduct = Math.pow(10, log10IonProduct);
    Set<Component> present = new LinkedHashSet<>(components);
    if (present.size() != components.size()) {
      throw new IllegalArgumentException("components: one stands twice in " + components);
    }

    List<IonPair> pairs = chemistry.pairsAmong(present);
    for (IonPair pair : pairs) {
      pair.metal().ifPresent(metals::add);
      pair.ligand().ifPresent(ligands::add);
    }

    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(
            log10IonProduct,
            ideal ? 0 : WaterProperties.debyeHueckelA(kelvin),
            ideal ? 0 : WaterProperties.debyeHueckelB(kelvin),
            rule.of("H+", 1),
            rule.of("OH-", -1));
    for (Component component : components) {
      int charge = component.chargeWithoutProtons();
      Activity activity = rule.of(component.form(0), charge);
      if (metals.contains(component)) {
        index.put(component, builder.metal(charge, activity));
      } else if (component.protons() > 0 || ligands.contains(component)) {
        ligands.add(component);
        int handle = builder.nextSpecies();
        index.put(component, builder.ligand(charge, activity));
        addForms(builder, component, handle, chemistry, kelvin);
      } else {
        index.put(component, builder.strongIon(charge, activity));
      }
    }
    for (IonPair pair : pairs) {
      int handle =
          builder.species(
              pair.metal().map(this::indexIn).orElse(EquilibriumSystem.NONE),
              pair.ligand().map(this::indexIn).orElse(EquilibriumSystem.NONE),
              pair.protons(),
              pair.ligandCount(),
              pair.constant().log10(kelvin),
              rule.of(pair.product(), pair.charge()));
      forms.add(
          new Form(
              pair.product(),
              pair.charge(),
              pair.ligand(),
              pair.metal(),
              pair.protons(),
              pair.ligandCount(),
              handle));
    }
    system = builder.build();
    handles = new int[components.size()][];
    charges = new double[components.size()][];
    layOut();
  }

  private void layOut() {
    List<List<Form>> own = new ArrayList<>();
    components.forEach(component -> own.add(new ArrayList<>()));
    for (Form form : forms) {
      if (form.component.isPresent() && ligands.contains(form.component.get())) {
        own.get(indexIn(form.component.get())).add(form);
      }
    }
    for (int at = 0; at < handles.length; at++) {
      List<Form> species = own.get(at);
      handles[at] = new int[species.size()];
      charges[at] = new double[species.size()];
      for (int s = 0; s < handles[at].length; s++) {
        Form form = species.get(s);
        handles[at][s] = form.handle;
        charges[at][s] = form.charge - form.metal.map(Component::chargeWithoutProtons).orElse(0);
      }
    }
  }

  List<Notice> notices() {
    List<Notice> ready = notices;
    if (ready == null) {
      ready =
          BalanceNotices.constants(
              chemistry.uncoveredConstants(components, temperature), temperature);
      notices = ready;
    }
    return ready;
  }

  private int indexIn(Component component) {
    return index.getOrDefault(component, EquilibriumSystem.NONE);
  }

  private void addForms(
      EquilibriumSystem.Builder builder,
      Component component,
      int freeHandle,
      Chemistry chemistry,
      double kelvin) {
    forms.add(form(component, 0, freeHandle));
    List<EquilibriumConstant> dissociation = chemistry.constants().of(component);
    double log10Beta = 0;
    for (int protons = 1; protons <= component.protons(); protons++) {
      log10Beta -= dissociation.get(component.protons() - protons).log10(kelvin);
      int charge = component.chargeWithoutProtons() + protons;
      int handle =
          builder.species(
              EquilibriumSystem.NONE,
              indexIn(component),
              protons,
              1,
              log10Beta,
              rule.of(component.form(protons), charge));
      forms.add(form(component, protons, handle));
    }
  }

  private static Form form(Component component, int protons, int handle) {
    return new Form(
        component.form(protons),
        component.chargeWithoutProtons() + protons,
        Optional.of(component),
        Optional.empty(),
        protons,
        1,
        handle);
  }

  int formHandle(Component component, int protons) {
    for (Form form : forms) {
      if (form.metal.isEmpty()
          && form.protons == protons
          && form.component.isPresent()
          && form.component.get().equals(component)) {
        return form.handle;
      }
    }
    throw new IllegalArgumentException(
        component.key() + " has no form with " + protons + " protons in this mixture");
  }

  int strongActivity(Component component) {
    return system.strongGroup(indexIn(component));
  }
}
