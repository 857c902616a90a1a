/**
 * Quality over many batches: control charts with limits, rules and their rate of false alarms, and
 * targets made from batches that were right.
 *
 * <p>A {@link org.brewchem.quality.ControlSeries} holds one figure of batch after batch, {@link
 * org.brewchem.quality.InControl} says what the process does when nothing disturbs it, and a {@link
 * org.brewchem.quality.ControlChart} compares the two by the {@link
 * org.brewchem.quality.ControlRules} that were chosen. {@link org.brewchem.quality.TargetBand}
 * makes a constraint from one good batch or from several.
 *
 * <p>A {@link org.brewchem.quality.RecordBook} holds the rules of what is entered: batches,
 * titrants and versions of targets. A record is taken whole or not at all. The book keeps nothing
 * on a disk.
 *
 * <p>{@link org.brewchem.quality.LikelyCauses} says where to look first when a batch differs.
 *
 * <p>A signal says that something changed, not what, and not that a batch is unfit.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.quality;

import org.jspecify.annotations.NullMarked;
