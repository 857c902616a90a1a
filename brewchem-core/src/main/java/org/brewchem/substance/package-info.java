/**
 * What is dissolved, what it weighs and how it holds its protons: elements and formulas, ions,
 * acids, bases, salts and minerals, reagents as they are bought, and the constants that go with
 * them.
 *
 * <p>The story starts with a {@link org.brewchem.substance.Component}: a family of species that
 * differ only by protons and share one total concentration, such as all the phosphate of a beer.
 * Whatever is added to a liquid, phosphoric acid, potassium dihydrogen phosphate or a reagent
 * bottle of either, is a {@link org.brewchem.substance.Solute}: it brings so many moles of each
 * component, and the protons follow from the charge balance. A {@link
 * org.brewchem.substance.Formula} gives the molar mass, and every solute is checked against it.
 *
 * <p>Constants are data with a source. A {@link org.brewchem.substance.ConstantSet} names one
 * consistent choice of dissociation constants, a {@link org.brewchem.substance.PairSet} one choice
 * of ion pairs; competing values stand side by side under their sources, one choice is the
 * documented default, and a caller can type others. Every {@link
 * org.brewchem.substance.EquilibriumConstant} read from data carries its {@link
 * org.brewchem.substance.Provenance}.
 *
 * <p>What an acid delivers is not what its formula promises: at pH 8.2 phosphoric acid has given
 * about 1.9 of its three protons. This package knows only the equivalent by definition (molar mass
 * divided by protons); the effective equivalents between two pH values are computed by {@code
 * org.brewchem.solution}.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.substance;

import org.jspecify.annotations.NullMarked;
