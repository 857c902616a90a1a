/** Checks against values printed in the literature, one class per subject. */
@NullMarked
package org.brewchem.checks.published;

import org.jspecify.annotations.NullMarked;
