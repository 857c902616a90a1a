/**
 * Studies too long for every build: each a named command with a committed page, a part of it in the
 * build.
 */
@NullMarked
package org.brewchem.checks.study;

import org.jspecify.annotations.NullMarked;
