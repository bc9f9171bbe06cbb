/** What {@code duel} and {@code standings} share: who plays by name, progress, and reporting early on an interrupt. */
package org.pipwright.cli.duel;
