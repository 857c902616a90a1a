package org.brewchem.plan;

import java.util.Optional;
import org.brewchem.figure.Constraint;

/**
 * A constraint as it was asked for.
 *
 * @param constraint the constraint
 * @param portion the portion whose water it bounds; empty for every one of them, or all mixed
 * @param together whether it bounds all portions mixed
 * @param downstream the liquid made of that water; empty for the water itself
 */
record Wanted(
    Constraint constraint,
    Optional<String> portion,
    boolean together,
    Optional<Downstream> downstream) {}
